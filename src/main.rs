//! The program: everything else is in the library.
#![forbid(unsafe_code)]

use std::process::ExitCode;

fn main() -> ExitCode {
    axiswright::cli::main()
}
