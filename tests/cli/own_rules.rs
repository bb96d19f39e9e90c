//! Rules of a house: what differs from the built-in ones is told, with who answers for it.

use crate::recommend::{BRIEF, Room};
use serde_json::Value;
use std::fs;

/// The built-in rule of whip with a smaller factor, and a name.
fn stricter() -> String {
    let built_in = fs::read_to_string("rules/screw-whip.yaml").expect("the built-in rule");
    let text = built_in
        .replace("title:", "by: M. Example, drive engineer\ntitle:")
        .replace("factor: 0.8", "factor: 0.7")
        .replace(
            "screw-speed: 2400 1/min, whip-speed: 3200 1/min }, utilisation: 0.9375",
            "screw-speed: 1680 1/min, whip-speed: 3200 1/min }, utilisation: 0.75",
        )
        .replace(
            "screw-speed: 2600 1/min, whip-speed: 3200 1/min }, utilisation: 1.015625",
            "screw-speed: 2800 1/min, whip-speed: 3200 1/min }, utilisation: 1.25",
        );
    assert_ne!(text, built_in);
    text
}

#[test]
fn a_limit_of_the_house_stands_beside_the_built_in_one_with_who_answers_for_it() {
    let room = Room::with(BRIEF);
    fs::write(room.path("rules/screw-whip.yaml"), stricter()).expect("a rule");
    let report = room.recommend(&["--no-turning-points"]);
    assert_eq!(report.status, 0, "{}", report.err);
    let section = report.out.split("### Rules that differ from the built-in ones").nth(1).expect("the section");
    let section = section.split("\n### ").next().expect("its text");
    let line = section.lines().find(|line| line.contains("`screw-whip`")).expect("the rule");
    for said in
        ["limit", "≤ 0.8 · whip-speed", "≤ 0.7 · whip-speed", "M. Example, drive engineer", "`rules/screw-whip.yaml`"]
    {
        assert!(line.contains(said), "{said}: {line}");
    }
    let added = section.lines().find(|line| line.contains("`test-lead`")).expect("a rule that was added");
    assert!(added.contains("added") && added.contains("lead ≤ 10 mm") && added.contains("names nobody"), "{added}");
    assert!(
        report.out.contains(
            "5 rules of this decision are not those built into this program. Answerable, as the files say: M. Example"
        ),
        "page one tells it too"
    );
    let record: Value = serde_json::from_str(&room.recommend(&["--no-turning-points", "--json"]).out).expect("JSON");
    let own = record["own-rules"].as_array().expect("a list");
    assert_eq!(own.len(), 5);
    let whip = own.iter().find(|rule| rule["id"] == "screw-whip").expect("the rule");
    assert_eq!(whip["differs"][0]["what"], "limit");
    assert_eq!(whip["differs"].as_array().map(Vec::len), Some(1), "nothing but the limit differs: {whip}");
}

#[test]
fn a_decision_by_the_built_in_rules_speaks_of_no_others() {
    let record: axiswright::record::DecisionRecord = {
        let rulebook = axiswright::rule::load(&[]).expect("the built-in rules");
        assert_eq!(axiswright::rule::own(&rulebook), Vec::new());
        serde_json::from_str(&fs::read_to_string("tests/data/record.json").expect("a record")).expect("a record")
    };
    let text = axiswright::report::markdown(&record, axiswright::units::UnitSystem::Metric);
    assert!(!text.contains("built into this program") && !text.contains("differ from the built-in"));
}
