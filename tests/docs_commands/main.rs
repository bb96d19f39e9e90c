//! README and docs: every command line that they show is run, in the order of its page, and ends as the page says.
//!
//! Method: of each page the lines of every block `sh` that call the program are run in a folder of their own, which holds
//! `docs/examples` and a brief `mine.yaml` made by `new`. A comment `# status 1` behind a command says that it ends so; a
//! redirection into a file is done by the test. A block `diff` changes `mine.yaml`, a block `yaml` whose first line is a
//! comment with the name of a file is that file, and a quotation or a block `text` after a command shows its output: every
//! piece between two `…` has to be there, in this order.
//! Limits: so that a build without optimisation takes seconds, commands that search are given a part of the catalogue
//! (`small.rs`); what a page shows of their answers is then not compared, but for the reports of the examples, which
//! `tests/data/reports` holds. `AXISWRIGHT_DOCS_BINARY=target/release/axiswright` runs that program on the whole catalogue and
//! compares everything, by hand. Lines of other programs, and those in `NOT_RUN`, are not run.

mod page;
mod small;

use page::{Call, Step, plain, steps};
use rayon::prelude::*;
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

/// Lines that are not run, with the reason.
const NOT_RUN: &[(&str, &str)] = &[
    (
        "cargo run --release -- recommend docs/examples/hull-gantry.yaml",
        "the first command of the README: `.ci/run` runs it",
    ),
    ("cargo test", "this is part of it"),
    ("cargo run --release -- serve", "it goes on until it is stopped: `tests/page` starts it"),
    ("cargo install --path .", "it writes into the home of whoever runs the tests; `.ci/run` does it in an empty one"),
];

/// The commands that search the catalogue.
const SEARCHING: [&str; 4] = ["recommend", "check", "accept", "crossover"];

/// README and every page below docs.
fn pages() -> Vec<PathBuf> {
    let mut found = vec![PathBuf::from("README.md")];
    let mut folders = vec![PathBuf::from("docs")];
    while let Some(folder) = folders.pop() {
        for entry in std::fs::read_dir(folder).expect("a folder") {
            let path = entry.expect("an entry").path();
            if path.is_dir() {
                folders.push(path);
            } else if path.extension().is_some_and(|ending| ending == "md") {
                found.push(path);
            }
        }
    }
    found.sort();
    found
}

fn text(path: &Path) -> String {
    std::fs::read_to_string(path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

fn copy(from: &Path, to: &Path) {
    std::fs::create_dir_all(to).expect("a folder");
    for entry in std::fs::read_dir(from).expect("a folder") {
        let path = entry.expect("an entry").path();
        let target = to.join(path.file_name().expect("a name"));
        if path.is_dir() {
            copy(&path, &target);
        } else {
            std::fs::copy(&path, target).expect("a copy");
        }
    }
}

/// A folder in which a page is run.
struct Room {
    folder: tempfile::TempDir,
    /// The program to run, on the whole catalogue, if one is named.
    given: Option<PathBuf>,
}

impl Room {
    fn new() -> Room {
        let folder = tempfile::tempdir().expect("a folder");
        copy(Path::new("docs/examples"), &folder.path().join("docs/examples"));
        small::write(&folder.path().join("small"));
        let given = std::env::var_os("AXISWRIGHT_DOCS_BINARY").map(PathBuf::from);
        let given = given.map(|path| path.canonicalize().expect("the program named is there"));
        let room = Room { folder, given };
        let starter = room.run(&["new".into()]);
        std::fs::write(room.path("mine.yaml"), starter.stdout).expect("a brief");
        room
    }

    fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    fn run(&self, words: &[String]) -> Output {
        let mut command = match &self.given {
            Some(path) => Command::new(path),
            None => Command::new(assert_cmd::cargo::cargo_bin!("axiswright")),
        };
        let (name, rest) = words.split_first().expect("a command");
        command.current_dir(self.folder.path()).arg(name);
        if self.given.is_none() && SEARCHING.contains(&name.as_str()) {
            command.args(["--catalog", "small"]);
        }
        command.args(rest).stdin(std::process::Stdio::null()).output().expect("the program runs")
    }

    /// What the page may show of this command: its output, or the report of an example as it is kept.
    fn may_show(&self, call: &Call, output: &Output) -> Option<String> {
        let hangs_on_parts = SEARCHING.contains(&call.words[0].as_str()) || call.words[0] == "audit";
        let whole = self.given.is_some() || !hangs_on_parts || call.status == 2;
        if whole {
            let of = |bytes: &[u8]| String::from_utf8_lossy(bytes).into_owned();
            return Some(of(&output.stdout) + &of(&output.stderr));
        }
        let example = call.words[1].strip_prefix("docs/examples/")?.strip_suffix(".yaml")?;
        let plainly = call.words[0] == "recommend" && !call.words.iter().any(|word| word == "--rules");
        plainly.then(|| text(Path::new(&format!("tests/data/reports/{example}.txt"))))
    }
}

/// Whether all pieces are in the text, one after the other; else the first that is not.
fn missing<'p>(pieces: &'p [String], text: &str) -> Option<&'p str> {
    let text = plain(text);
    let mut rest = text.as_str();
    for piece in pieces {
        match rest.split_once(piece.as_str()) {
            Some((_, after)) => rest = after,
            None => return Some(piece),
        }
    }
    None
}

/// Runs a page; tells everything that is not as the page says.
fn wrong(path: &Path, steps: &[Step]) -> Vec<String> {
    let room = Room::new();
    let mut wrong = Vec::new();
    let mut output: Option<String> = None;
    for step in steps {
        match step {
            Step::Other(_) => {}
            Step::Run(call) if NOT_RUN.iter().any(|(line, _)| *line == call.line) => {
                let example = call.words.get(1).and_then(|word| word.strip_prefix("docs/examples/"));
                let report = example.map(|name| format!("tests/data/reports/{}", name.replace(".yaml", ".txt")));
                output = report.map(|report| text(Path::new(&report)));
            }
            Step::Run(call) => {
                let done = room.run(&call.words);
                if done.status.code() != Some(call.status) {
                    wrong.push(format!(
                        "{}: `{}` ends with {:?}, not {}: {}",
                        path.display(),
                        call.line,
                        done.status.code(),
                        call.status,
                        String::from_utf8_lossy(&done.stderr)
                    ));
                }
                if let Some(file) = &call.out {
                    std::fs::write(room.path(file), &done.stdout).expect("a file");
                }
                output = room.may_show(call, &done);
            }
            Step::Edit(before, after) => {
                let brief = text(&room.path("mine.yaml"));
                if brief.matches(before.as_str()).count() != 1 {
                    wrong.push(format!("{}: mine.yaml has not once\n{before}", path.display()));
                }
                std::fs::write(room.path("mine.yaml"), brief.replace(before.as_str(), after)).expect("a brief");
            }
            Step::Write(name, content) => std::fs::write(room.path(name), content).expect("a file"),
            Step::Shown(pieces) => {
                if let Some(piece) = output.as_ref().and_then(|output| missing(pieces, output)) {
                    wrong.push(format!(
                        "{}: the output before does not hold, or not in this order:\n{piece}",
                        path.display()
                    ));
                }
            }
        }
    }
    wrong
}

fn runs_something(steps: &[Step]) -> bool {
    steps.iter().any(|step| matches!(step, Step::Run(_)))
}

#[test]
fn every_command_line_of_readme_and_docs_ends_as_its_page_says() {
    let pages: Vec<(PathBuf, Vec<Step>)> =
        pages().into_iter().map(|path| (path.clone(), steps(&text(&path)))).collect();
    let run: Vec<_> = pages.iter().filter(|(_, steps)| runs_something(steps)).collect();
    assert!(run.len() >= 8, "only {} pages show a command", run.len());
    let wrong: Vec<String> = run.par_iter().flat_map(|(path, steps)| wrong(path, steps)).collect();
    assert!(wrong.is_empty(), "{}", wrong.join("\n\n"));
}

#[test]
fn every_line_of_a_shell_is_run_or_named_with_the_reason_why_not() {
    let all: BTreeSet<String> = pages()
        .iter()
        .flat_map(|path| steps(&text(path)))
        .filter_map(|step| match step {
            Step::Run(call) => Some(call.line),
            Step::Other(line) => Some(line),
            _ => None,
        })
        .collect();
    for path in pages() {
        for step in steps(&text(&path)) {
            if let Step::Other(line) = step {
                assert!(NOT_RUN.iter().any(|(known, _)| *known == line), "{}: {line}", path.display());
            }
        }
    }
    for (line, reason) in NOT_RUN {
        assert!(all.contains(*line), "no page has `{line}` ({reason})");
    }
}
