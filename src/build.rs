//! Tells cargo which folders are built into the program, so that a new file in one of them is seen.
#![forbid(unsafe_code)]

use std::path::Path;

fn main() {
    println!("cargo:rerun-if-changed=src/build.rs");
    for folder in ["catalog", "rules", "src/report/templates", "templates"] {
        if Path::new(folder).exists() {
            println!("cargo:rerun-if-changed={folder}");
        }
    }
}
