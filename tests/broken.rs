//! Files with faults, as users write them: the whole message of each is kept word for word.
//!
//! Every folder of `tests/data/broken/` is one case: the files, the `arguments` of the run from inside the folder, and the `message`
//! that stderr has to be. Where a change is meant, `AXISWRIGHT_REWRITE=1 cargo test --test broken` writes the messages anew; then read
//! what changed.

use assert_cmd::Command;
use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

/// Cases in which no place exists.
const WITHOUT_PLACE: [&str; 2] = [
    // a folder without files has no line
    "parts-empty-folder",
    "rule-empty-folder",
];

fn cases() -> Vec<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data/broken");
    let entries = fs::read_dir(folder).expect("the folder of cases");
    let mut cases: Vec<PathBuf> = entries.map(|entry| entry.expect("an entry").path()).collect();
    cases.sort();
    cases
}

fn name(case: &Path) -> &str {
    case.file_name().and_then(|name| name.to_str()).expect("a name")
}

/// The arguments of a case, parted at blanks.
fn arguments(case: &Path) -> Vec<String> {
    let line = fs::read_to_string(case.join("arguments")).expect("the arguments");
    line.split_whitespace().map(String::from).collect()
}

/// What a case writes to stderr; it ends with status 2 and writes nothing to stdout.
fn told(case: &Path) -> String {
    let mut command = Command::cargo_bin("axiswright").expect("the program is built");
    let output = command.current_dir(case).args(arguments(case)).output().expect("the program runs");
    let message = String::from_utf8(output.stderr).expect("text");
    assert_eq!(output.status.code(), Some(2), "{}:\n{message}", name(case));
    assert!(output.stdout.is_empty(), "{}", name(case));
    message
}

/// Every place of a message, as `file:line:column`.
fn places(message: &str) -> Vec<(&str, usize, usize)> {
    let place = |line: &'_ str| -> Option<(usize, usize)> {
        let mut parts = line.rsplitn(3, ':');
        let column = parts.next()?.parse().ok()?;
        Some((parts.next()?.parse().ok()?, column))
    };
    let lines = message.lines().filter_map(|line| line.trim_start().strip_prefix("--> "));
    lines
        .filter_map(|line| {
            let (at, column) = place(line)?;
            Some((line.split(':').next()?, at, column))
        })
        .collect()
}

fn faults(message: &str) -> usize {
    message.lines().filter(|line| line.starts_with("error: ")).count()
}

/// Runs every case, as many at once as there are cores.
fn all_told(cases: &[PathBuf]) -> Vec<(&PathBuf, String)> {
    let cores = std::thread::available_parallelism().map_or(1, usize::from);
    std::thread::scope(|scope| {
        let parts: Vec<_> = cases
            .chunks(cases.len().div_ceil(cores))
            .map(|part| scope.spawn(move || part.iter().map(|case| (case, told(case))).collect::<Vec<_>>()))
            .collect();
        parts.into_iter().flat_map(|part| part.join().expect("every case is run")).collect()
    })
}

#[test]
fn every_broken_input_is_told_word_for_word_with_its_place() {
    let cases = cases();
    assert!(cases.len() >= 100, "{} cases", cases.len());
    let mut changed = Vec::new();
    for (case, message) in all_told(&cases) {
        if !WITHOUT_PLACE.contains(&name(case)) {
            let places = places(&message);
            assert_eq!(places.len(), faults(&message), "every fault has a place: {}\n{message}", name(case));
            for (file, line, column) in places {
                assert!(case.join(file).is_file() && line > 0 && column > 0, "{}\n{message}", name(case));
            }
        }
        for inner in
            ["panicked", "f64", "String", "Option", "Some(", "None", "expected struct", "src/", "fault of axiswright"]
        {
            assert!(!message.contains(inner), "{} says {inner}:\n{message}", name(case));
        }
        assert!(!message.contains('\u{1b}'), "no colour and no control character of the file: {}", name(case));
        let kept = case.join("message");
        if std::env::var_os("AXISWRIGHT_REWRITE").is_some() {
            fs::write(&kept, &message).expect("the message is written");
        }
        if fs::read_to_string(&kept).unwrap_or_default() != message {
            changed.push(format!("{}:\n{message}", name(case)));
        }
    }
    assert!(changed.is_empty(), "other messages than kept:\n{}", changed.join("\n"));
}

#[test]
fn a_mark_stands_below_the_column_that_is_told() {
    for case in cases() {
        let message = fs::read_to_string(case.join("message")).expect("a message");
        let lines: Vec<&str> = message.lines().collect();
        for (at, place) in lines.iter().enumerate().filter(|(_, line)| line.trim_start().starts_with("--> ")) {
            let Some((_, line, column)) = places(place).first().copied() else { continue };
            let source = lines.get(at + 2).and_then(|source| source.split_once(" | ").or(source.split_once(" |")));
            let (number, source) = source.expect("the line of the file");
            assert_eq!(number.trim().parse(), Ok(line), "{}", name(&case));
            // a line that is cut off begins with dots, and a tab is shown as blanks
            if source.starts_with("...") || source.contains('\u{fffd}') || name(&case) == "brief-tab" {
                continue;
            }
            let marks = lines[at + 3].split_once("| ").expect("the marks").1;
            let first = marks.find('^').expect("a mark");
            assert_eq!(marks[..first].chars().count() + 1, column, "{}:\n{message}", name(&case));
        }
    }
}

#[test]
fn five_mistakes_of_one_brief_are_five_places_of_one_run() {
    let case = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data/broken/brief-five-mistakes");
    let message = told(&case);
    assert_eq!(faults(&message), 5);
    let lines: BTreeSet<usize> =
        places(&message).iter().map(|(file, line, _)| (*file == "brief.yaml", *line).1).collect();
    assert_eq!(lines.into_iter().collect::<Vec<_>>(), [2, 6, 7, 10, 14]);
    assert!(message.ends_with("\n\n5 faults\n"), "{message}");
}

#[test]
fn faults_of_brief_catalogue_rules_choice_and_measured_values_come_in_one_run() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data/broken");
    let files = |case: &str| -> BTreeSet<String> {
        places(&told(&folder.join(case))).iter().map(|(file, _, _)| file.to_string()).collect()
    };
    let of = |names: &[&str]| -> BTreeSet<String> { names.iter().map(|name| name.to_string()).collect() };
    assert_eq!(files("choice-and-brief-at-once"), of(&["brief.yaml", "choice.yaml"]));
    assert_eq!(
        files("parts-and-brief-and-rules-at-once"),
        of(&["brief.yaml", "parts/steel.yaml", "limits/own-limit.yaml"])
    );
    assert_eq!(files("measured-and-brief-at-once"), of(&["brief.yaml", "table.csv"]));
}

/// What the program writes on a terminal, by the `script` of util-linux; `None` where there is none.
fn on_a_terminal(case: &str, no_color: Option<&str>) -> Option<String> {
    let version = std::process::Command::new("script").arg("--version").output().ok()?;
    String::from_utf8_lossy(&version.stdout).contains("util-linux").then_some(())?;
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data/broken").join(case);
    let program = Command::cargo_bin("axiswright").expect("the program is built");
    let line = format!("'{}' {}", program.get_program().to_string_lossy(), arguments(&folder).join(" "));
    let mut script = std::process::Command::new("script");
    script.args(["-qec", &line, "/dev/null"]).current_dir(&folder).env_remove("NO_COLOR");
    if let Some(value) = no_color {
        script.env("NO_COLOR", value);
    }
    let output = script.output().expect("script runs");
    assert_eq!(output.status.code(), Some(2), "{case}");
    Some(String::from_utf8_lossy(&output.stdout).into_owned())
}

#[test]
fn a_terminal_gets_colour_unless_it_is_refused() {
    // that a pipe gets none is held for every case above
    let case = "brief-wrong-dimension";
    let (Some(plain), Some(coloured)) = (on_a_terminal(case, Some("1")), on_a_terminal(case, None)) else {
        eprintln!("no script of util-linux here: terminals are not tested");
        return;
    };
    assert!(coloured.contains("\u{1b}[1;31merror:\u{1b}[0m `axes.long.travel`"), "{coloured}");
    assert!(!plain.contains('\u{1b}'), "{plain}");
    // an empty value refuses nothing
    assert_eq!(on_a_terminal(case, Some("")).as_deref(), Some(coloured.as_str()));
    let without = coloured.replace("\u{1b}[1;31m", "").replace("\u{1b}[1;36m", "").replace("\u{1b}[0m", "");
    assert_eq!(without, plain, "colour adds nothing else");
}
