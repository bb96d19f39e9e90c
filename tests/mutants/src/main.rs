//! Plants small changes into formulas, rules and search, and tells which of them the tests notice.
//!
//! Method: the tree is copied into a folder of work, and every function body of the three rooms is rewritten so that each small
//! change (a mutant) is a switch that an environment variable throws; so all mutants are built once. Each test then runs alone
//! and tells which mutants it comes by; a mutant is tried with the tests that come by it, the quick ones first. A mutant is caught
//! when a test fails or takes ten times its usual time and ten seconds more. Limits: one change at a time; what stands in
//! constants and macros is not changed; a mutant whose change does not compile is left out and counted.

mod compile;
mod plant;
mod results;
mod run;
mod table;
mod tests;
mod tree;

use std::path::{Path, PathBuf};

/// The rooms whose functions are changed.
pub const ROOMS: [&str; 3] = ["formula", "rule", "search"];

const USAGE: &str = "mutants plant PROJECT WORK [ROOM…]   copies the project and plants all mutants, or those of these rooms
mutants reach WORK [TEST…]   builds tests (all, or lib and the named ones) and runs each alone
mutants run WORK [--sample N] [--seed S] [--survivors] [--seconds S] [--room ROOM] [--first TEST]   tries mutants, N of each room
mutants tell WORK            the table";

fn main() {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = arguments.iter().map(String::as_str).collect();
    match words.as_slice() {
        ["plant", project, work, rooms @ ..] if rooms.iter().all(|room| ROOMS.contains(room)) => {
            compile::plant(Path::new(project), &PathBuf::from(work), if rooms.is_empty() { &ROOMS } else { rooms })
        }
        ["reach", work, named @ ..] => tests::reach(&absolute(work), named),
        ["run", work, options @ ..] => run::run(&absolute(work), &run::Options::read(options)),
        ["tell", work] => print!("{}", table::table(&absolute(work))),
        _ => {
            eprintln!("{USAGE}");
            std::process::exit(2);
        }
    }
}

fn absolute(path: &str) -> PathBuf {
    std::fs::canonicalize(path).expect("a folder of work")
}
