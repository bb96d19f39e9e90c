//! Commands that only look something up: `calc`, `explain`, `catalog`, `new`, help and version.

use crate::run;
use std::io::Read;
use std::process::{Command, Stdio};

#[test]
fn calc_gives_the_fields_of_the_contract_as_json() {
    let run = run(&["calc", "move-time", "travel=1m", "speed=30m/min", "acceleration=5m/s²", "--json"]);
    assert_eq!((run.status, run.err.as_str()), (0, ""));
    let answer: serde_json::Value = serde_json::from_str(&run.out).expect("JSON");
    assert_eq!(answer["formula"], "move-time");
    assert_eq!(answer["unit"], "s");
    // a trapezoid: s/v + v/a = 1/0.5 + 0.5/5 = 2.1 s, by hand
    assert!((answer["value"].as_f64().expect("a number") - 2.1).abs() < 1e-12);
    for field in ["inputs", "validity", "source"] {
        assert!(!answer[field].is_null(), "{field}");
    }
    assert_eq!(answer["within-validity"], true);
}

#[test]
fn calc_prints_text_and_inches_on_request() {
    let metric = run(&["calc", "thermal-growth", "length=1m", "temperature-rise=10K", "expansion=11.5e-6 1/K"]);
    assert_eq!(metric.status, 0, "{}", metric.err);
    assert!(metric.out.contains("115 µm"), "{}", metric.out);
    let inch = run(&[
        "calc",
        "thermal-growth",
        "length=1m",
        "temperature-rise=10K",
        "expansion=11.5e-6 1/K",
        "--units",
        "inch",
    ]);
    // 115 µm over 25.4 µm a mil, exactly 4.527 56
    assert!(inch.out.contains("4.52756 mil"), "{}", inch.out);
}

#[test]
fn a_wrong_call_of_calc_is_the_fault_of_the_input() {
    for arguments in [
        &["calc", "whip-sped", "root-diameter=30mm"][..],
        &["calc", "natural-frequency", "stiffness=100N/µm"],
        &["calc", "natural-frequency", "stiffness=100N/µm", "mass"],
        &["calc", "natural-frequency", "stiffness=100mm", "mass=10kg"],
        &["calc"],
        &["no-such-command"],
        &["calc", "natural-frequency", "--no-such-option"],
    ] {
        let run = run(arguments);
        assert_eq!(run.status, 2, "{arguments:?}: {}", run.err);
        assert_eq!(run.out, "", "{arguments:?}");
        assert!(!run.err.is_empty(), "{arguments:?}");
    }
    assert!(run(&["calc", "whip-sped"]).err.contains("whip-speed"), "the nearest spelling");
}

#[test]
fn a_formula_that_there_is_not_is_answered_by_those_that_share_a_word_with_it() {
    for (asked, meant) in [
        ("euler-force", "`euler-load`"),
        ("buckling", "`euler-load`"),
        ("whip", "`whip-speed`"),
        ("Whip_Speed", "`whip-speed`"),
        ("natural-frequncy", "did you mean `natural-frequency`? `calc --list`"),
    ] {
        let run = run(&["calc", asked]);
        assert_eq!(run.status, 2, "{asked}");
        assert!(run.err.contains(meant), "{asked}: {}", run.err);
    }
    let nothing = run(&["calc", "zzz-qqq-xxx-www"]);
    assert!(nothing.err.contains("is called `zzz-qqq-xxx-www`; `calc --list` shows all"), "{}", nothing.err);
}

#[test]
fn calc_lists_every_formula() {
    let run = run(&["calc", "--list"]);
    assert_eq!(run.status, 0);
    for id in ["move-time", "whip-speed", "column-load", "screw-life", "pinion-diameter"] {
        assert!(run.out.lines().any(|line| line.split(' ').next() == Some(id)), "{id}");
    }
}

#[test]
fn explain_knows_rules_formulas_quantities_families_and_keys() {
    for (name, told) in [
        ("screw-whip", "Rule"),
        ("inertia-ratio", "Rule"),
        ("inertia-ratio", "Quantity"),
        ("whip-speed", "Formula"),
        ("whip-speed", "Quantity"),
        ("helical-rack", "Family"),
        ("carries", "Key of the brief"),
        ("people-below", "Key of the brief"),
        ("people-below", "Caution"),
        ("people-below", "To be read: ISO 13849-1"),
        ("phase-force", "one value for each phase"),
        ("T7", "Word of the trade: Grade"),
        ("speed reserve", "Word of the trade: Speed reserve"),
    ] {
        let run = run(&["explain", name]);
        assert_eq!(run.status, 0, "{name}: {}", run.err);
        assert!(run.out.contains(told), "{name}: {}", run.out);
    }
    let unknown = run(&["explain", "helical-rak"]);
    assert_eq!(unknown.status, 2);
    assert!(unknown.err.contains("did you mean `helical-rack`?"), "{}", unknown.err);
    assert!(run(&["explain"]).out.contains("helical-rack"));
}

#[test]
fn every_name_that_explain_lists_is_explained() {
    let index = run(&["explain"]).out;
    let names: Vec<&str> = index.lines().filter_map(|line| line.strip_prefix("  ")).collect();
    assert!(names.len() > 200, "{}", names.len());
    // one of each twenty, for a run of the program takes its time
    for name in names.iter().step_by(20) {
        assert_eq!(run(&["explain", name]).status, 0, "{name}");
    }
}

#[test]
fn the_catalogue_is_listed_shown_and_checked() {
    let kinds = run(&["catalog", "list"]);
    assert!(
        kinds.status == 0 && kinds.out.contains("ball-screw") && kinds.out.contains("servo-motor"),
        "{}",
        kinds.out
    );
    let motors = run(&["catalog", "list", "servo-motor"]).out;
    let designation = motors.lines().filter_map(|line| line.split_whitespace().next()).find(|word| word.contains("kw"));
    let designation = designation.expect("a motor with its power in its name");
    let shown = run(&["catalog", "show", designation]);
    assert!(shown.status == 0 && shown.out.contains("generic, invented"), "{}", shown.out);
    let unknown = run(&["catalog", "show", &format!("{designation}x")]);
    assert_eq!((unknown.status, unknown.out.as_str()), (2, ""));
    assert!(unknown.err.contains("did you mean"), "{}", unknown.err);
    assert_eq!(run(&["catalog", "list", "servo-moter"]).status, 2);
    let check = run(&["catalog", "check"]);
    let last = check.out.lines().last().expect("a last line");
    assert_eq!(check.status == 0, last.ends_with(" 0 remarks"), "{last}");
}

#[test]
fn a_faulty_catalogue_folder_is_told_with_its_place() {
    let room = tempfile::tempdir().expect("a folder");
    let file = room.path().join("motors.yaml");
    std::fs::write(&file, "kind: servo-motor\nentries: 5\n").expect("a file");
    let run = run(&["catalog", "list", "--catalog", room.path().to_str().expect("a path")]);
    assert_eq!((run.status, run.out.as_str()), (2, ""));
    assert!(run.err.contains("motors.yaml") && !run.err.contains('\u{1b}'), "{}", run.err);
}

#[test]
fn the_starter_brief_is_a_brief() {
    let run = run(&["new"]);
    assert_eq!((run.status, run.err.as_str()), (0, ""));
    axiswright::brief::load("starter.yaml", &run.out).expect("the starter reads without faults");
}

#[test]
fn schemas_are_listed_and_printed_and_an_unknown_one_is_told_with_the_nearest() {
    let all = run(&["schema"]);
    assert_eq!((all.status, all.err.as_str()), (0, ""));
    let names: Vec<&str> = all.out.lines().filter_map(|line| line.split_whitespace().next()).collect();
    assert_eq!(names, ["brief", "choice", "catalog", "rule", "caution"]);
    for name in names {
        let printed = run(&["schema", name]);
        let schema: serde_json::Value = serde_json::from_str(&printed.out).expect("JSON");
        assert_eq!((printed.status, schema["title"].as_str()), (0, Some(name)));
    }
    let unknown = run(&["schema", "breif"]);
    assert_eq!((unknown.status, unknown.out.as_str()), (2, ""));
    assert!(unknown.err.contains("did you mean `brief`?"), "{}", unknown.err);
}

#[test]
fn help_and_version_go_to_stdout() {
    for arguments in [&["--help"][..], &["--version"], &["calc", "--help"]] {
        let run = run(arguments);
        assert_eq!((run.status, run.err.as_str()), (0, ""), "{arguments:?}");
        assert!(!run.out.is_empty());
    }
    assert!(run(&["--version"]).out.contains(env!("CARGO_PKG_VERSION")));
    assert!(run(&["--help"]).out.contains("Exit status"));
}

#[test]
fn a_reader_that_closes_the_pipe_is_no_fault() {
    for arguments in [&["calc", "--list"][..], &["explain"], &["--help"]] {
        let mut child = Command::new(assert_cmd::cargo::cargo_bin("axiswright"))
            .args(arguments)
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .expect("the program runs");
        drop(child.stdout.take());
        let mut err = String::new();
        child.stderr.take().expect("stderr").read_to_string(&mut err).expect("text");
        assert_eq!((child.wait().expect("an end").code(), err.as_str()), (Some(0), ""), "{arguments:?}");
    }
}

#[cfg(target_os = "linux")]
#[test]
fn a_result_that_cannot_be_written_is_not_called_done() {
    let full = std::fs::OpenOptions::new().write(true).open("/dev/full").expect("the device that is always full");
    let output = Command::new(assert_cmd::cargo::cargo_bin("axiswright"))
        .arg("new")
        .stdout(full)
        .stderr(Stdio::piped())
        .output()
        .expect("the program runs");
    assert_eq!(output.status.code(), Some(3));
    assert!(String::from_utf8(output.stderr).expect("text").contains("cannot be written"));
}
