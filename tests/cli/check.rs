//! `check`: exit status, the page, the record, and what is said of a choice that is at fault.

use crate::recommend::{BRIEF, Room};
use crate::run;
use serde_json::Value;
use std::fs;
use std::path::Path;

const CHOICE: &str = "\
axes:
  slide:
    family: ball-screw
    parts:
      ball-screw: screw-16x10
      screw-grade: rolled-t7
      screw-support: no-supports
      end-arrangement: fixed-supported
      servo-motor: servo-0.4kw
      linear-scale: none
      error-table: none
";

fn check(room: &Room, choice: &str, more: &[&str]) -> crate::Run {
    fs::write(room.path("choice.yaml"), choice).expect("a file");
    let (brief, choice, rules) = (room.text("brief.yaml"), room.text("choice.yaml"), room.text("rules"));
    let mut arguments = vec!["check", &brief, &choice, "--rules", &rules];
    arguments.extend(more);
    run(&arguments)
}

#[test]
fn a_proposal_is_judged_and_held_beside_the_recommendation() {
    let room = Room::with(BRIEF);
    let told = check(&room, CHOICE, &[]);
    assert!(told.status < 2, "{}", told.err);
    for heading in
        ["# Check of a proposal: Test slide", "### Beside the drive recommended", "### Every rule, worst first"]
    {
        assert!(told.out.contains(heading), "{heading}\n{}", told.out);
    }
    assert!(!told.out.contains("NaN"));
    let json = check(&room, CHOICE, &["--json"]);
    let record: Value = serde_json::from_str(&json.out).expect("JSON");
    assert_eq!(record["record"], "axiswright-check/1");
    assert_eq!(record["meets"].as_bool(), Some(told.status == 0));
    let drive = &record["axes"][0]["drive"];
    let motor = drive["components"].as_array().expect("a list").iter().find(|part| part["role"] == "servo-motor");
    assert_eq!(motor.expect("a motor")["designation"], "servo-0.4kw");
    assert_eq!(check(&room, CHOICE, &["--json", "--threads", "1"]).out, json.out, "the same bytes on one thread");
}

#[test]
fn the_page_of_a_check_tells_what_may_not_be_meant() {
    let told = check(&Room::with(&BRIEF.replace("120 kg", "120.000 kg")), CHOICE, &[]);
    assert!(told.out.contains("“120.000 kg” is taken for “120 kg”"), "{}", told.out);
}

#[test]
fn a_drive_that_is_too_small_fails_with_the_rule_and_by_how_much() {
    let room = Room::with(&BRIEF.replace("moved-mass: 120 kg", "moved-mass: 2400 kg"));
    let told = check(&room, CHOICE, &[]);
    assert_eq!(told.status, 1, "{}", told.err);
    assert!(told.out.contains("The proposal does not meet the brief on slide."), "{}", told.out);
    assert!(told.out.contains("### What fails, axis slide") && told.out.contains("What helps:"));
}

#[test]
fn a_component_given_in_place_counts_and_faults_of_it_are_placed() {
    let room = Room::with(BRIEF);
    let generic = fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("catalog/servo-motor/generic.yaml"));
    let generic = generic.expect("the catalogue");
    let entry = generic
        .split("- { designation: servo-0.4kw,")
        .nth(1)
        .and_then(|rest| rest.split('}').next())
        .expect("an entry");
    let entry = entry.split_whitespace().collect::<Vec<_>>().join(" ");
    let own = format!(
        "components:\n  - kind: servo-motor\n    basis: a data sheet\n    lead-time: 4 weeks\n    entries:\n      - {{ designation: offered, {entry} }}\n"
    );
    let choice = format!("{own}{}", CHOICE.replace("servo-0.4kw", "offered"));
    let of = |run: crate::Run| -> Value { serde_json::from_str(&run.out).expect("JSON") };
    let (own, built_in) = (of(check(&room, &choice, &["--json"])), of(check(&room, CHOICE, &["--json"])));
    let judged = |record: &Value| record["axes"][0]["drive"]["findings"].clone();
    assert_eq!(judged(&own), judged(&built_in), "the same data give the same findings");
    let faulty = check(&room, &choice.replace("rated-voltage: 400 V", "rated-voltage: 400 kg"), &[]);
    assert_eq!((faulty.status, faulty.out.as_str()), (2, ""));
    assert!(faulty.err.contains("choice.yaml:") && faulty.err.contains("rated-voltage"), "{}", faulty.err);
}

#[test]
fn what_is_wrong_with_a_choice_is_told_in_one_run_with_its_places() {
    let room = Room::with(BRIEF);
    let wrong = "axes:\n  slde:\n    family: ball-screw\n  slide:\n    family: ball-screw\n    parts:\n      ball-screw: screw-16x11\n      rack: rack-2-helical\n      servo-motor: rolled-t7\n";
    let told = check(&room, wrong, &[]);
    assert_eq!((told.status, told.out.as_str()), (2, ""));
    for part in [
        "no axis `slde`",
        "did you mean `slide`?",
        "screw-16x11",
        "a drive of the family ball-screw has no rack",
        "there is a `screw-grade` of this name",
    ] {
        assert!(told.err.contains(part), "{part}\n{}", told.err);
    }
    for text in
        ["", "axes: 3\n", "axes: {}\n", "axes:\n  slide: {}\n", "components: 3\naxes:\n  slide: { family: none }\n"]
    {
        let told = check(&room, text, &[]);
        assert_eq!((told.status, told.out.as_str()), (2, ""), "{text}");
        assert!(told.err.contains("choice.yaml"), "{text}: {}", told.err);
    }
}
