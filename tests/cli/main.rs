//! The program as a user runs it: exit status, streams, files.

mod accept;
mod audit;
mod check;
mod comfort;
mod crossover;
mod lookup;
mod own_rules;
mod recommend;
#[path = "../docs_commands/small.rs"]
mod small;
mod tables;
mod why_not;

use assert_cmd::Command;

/// The program, without colour and away from any terminal.
pub fn axiswright() -> Command {
    Command::cargo_bin("axiswright").expect("the program is built")
}

/// The streams of a run, as text.
pub struct Run {
    pub status: i32,
    pub out: String,
    pub err: String,
}

/// Runs the program with these arguments.
pub fn run(arguments: &[&str]) -> Run {
    let output = axiswright().args(arguments).output().expect("the program runs");
    Run {
        status: output.status.code().expect("an exit status"),
        out: String::from_utf8(output.stdout).expect("text"),
        err: String::from_utf8(output.stderr).expect("text"),
    }
}
