//! `audit --why-not`: why a family or a part was not chosen, held against recommending with that part alone.

use crate::audit::SHARED;
use crate::recommend::{Room, impossible};
use crate::run;
use axiswright::catalog::Kind;
use axiswright::pipeline;
use axiswright::record::DecisionRecord;
use serde_json::Value;

/// The answer on the shared folder as JSON.
fn answer(asked: &str) -> Value {
    let run = run(&["audit", &SHARED.room.text("decision"), "--why-not", asked, "--axis", "slide", "--json"]);
    assert_eq!((run.status, run.err.as_str()), (0, ""), "{asked}");
    serde_json::from_str(&run.out).expect("JSON")
}

fn record() -> DecisionRecord {
    serde_json::from_str(&SHARED.text).expect("a record")
}

/// The designation that the drive chosen has in a role.
fn chosen(role: &str) -> String {
    let record = record();
    let drive = record.axes[0].chosen.as_ref().expect("a drive");
    drive.components.iter().find(|part| part.role == role).expect("a part").designation.clone()
}

/// What comes out with this part as the only one of its kind, on the road that `recommend` takes.
fn with_only(kind: &str, designation: &str) -> DecisionRecord {
    let (brief, rules) = (SHARED.room.path("brief.yaml"), SHARED.room.path("rules"));
    let mut inputs = pipeline::load(&brief, &[], &[rules]).expect("the inputs");
    let kind = Kind::find(kind).expect("a kind");
    (kind.keep_only)(&mut inputs.catalog, designation);
    assert_eq!((kind.rows)(&inputs.catalog).len(), 1);
    pipeline::recommend(&inputs, false)
}

#[test]
fn what_was_chosen_and_what_was_not_considered_is_said() {
    for asked in ["ball-screw".to_string(), chosen("servo-motor"), chosen("ball-screw")] {
        assert_eq!(answer(&asked)["standing"], "chosen", "{asked}");
    }
    for asked in ["helical-rack", "rack-2-helical", "generic-prices"] {
        let answer = answer(asked);
        assert_eq!(answer["standing"], "not-considered", "{asked}");
        assert_eq!(answer["remarks"].as_array().expect("remarks").len(), 1, "{asked}: {answer}");
    }
}

#[test]
fn the_best_drive_with_a_part_is_the_one_that_is_recommended_where_there_is_no_other_of_its_kind() {
    let mut beaten = 0;
    for (kind, part) in
        [("servo-motor", "servo-0.4kw"), ("screw-grade", "ground-p3"), ("end-arrangement", "fixed-fixed")]
    {
        let answer = answer(part);
        let other = with_only(kind, part);
        let census = &other.axes[0].families[0];
        assert_eq!(answer["configurations"], census.configurations, "{part}");
        assert_eq!(answer["admissible"], census.admissible, "{part}");
        let counts: u64 = answer["excluded-by"]
            .as_array()
            .expect("rules")
            .iter()
            .map(|rule| rule["configurations"].as_u64().expect("a count"))
            .sum();
        assert_eq!(counts + census.admissible, census.configurations, "{part}");
        match &other.axes[0].chosen {
            Some(drive) => {
                beaten += 1;
                assert_eq!(answer["standing"], "beaten", "{part}");
                let parts: Vec<&str> = drive.components.iter().map(|part| part.designation.as_str()).collect();
                assert_eq!(answer["best"]["components"], Value::from(parts), "{part}");
                assert_eq!(answer["best"]["merit"], drive.merit, "{part}");
                assert_eq!(answer["best"]["purchase"], drive.cost.purchase, "{part}");
                let now = record().axes[0].chosen.as_ref().expect("a drive").merit;
                assert!(drive.merit > now, "{part}");
            }
            None => assert_eq!(answer["standing"], "not-admissible", "{part}"),
        }
    }
    assert!(beaten > 0);
}

#[test]
fn a_part_that_a_drive_may_do_without_is_in_every_drive_that_is_told_of_it() {
    let answer = answer("tape-scale-5");
    let parts = answer["best"]["components"].as_array().or(answer["nearest"]["components"].as_array()).expect("parts");
    assert!(parts.contains(&"tape-scale-5".into()), "{answer}");
    // with this scale as the only one the search may do without any: there are more configurations than with it
    let without = with_only("linear-scale", "tape-scale-5").axes[0].families[0].configurations;
    let with = answer["configurations"].as_u64().expect("a count");
    assert!(with > 0 && with < without, "{with} of {without}");
}

#[test]
fn a_part_that_no_drive_may_have_is_told_with_the_rules_and_both_numbers() {
    // the rules of the tests admit no screw above 16 mm
    let answer = answer("screw-25x10");
    assert_eq!((&answer["standing"], &answer["admissible"]), (&"not-admissible".into(), &0.into()));
    let rule = |list: &str| {
        let rules = answer[list].as_array().or(answer[list]["fails"].as_array()).expect("rules").clone();
        rules.into_iter().find(|rule| rule["rule"] == "test-diameter").expect("the rule of the test")
    };
    for list in ["ruled-out-by", "nearest"] {
        let rule = rule(list);
        assert_eq!(
            (&rule["demand"], &rule["limit"], &rule["unit"]),
            (&25.0.into(), &16.0.into(), &"mm".into()),
            "{list}"
        );
        assert_eq!((&rule["sense"], &rule["utilisation"]), (&"at-most".into(), &1.5625.into()), "{list}");
    }
    let text = run(&["audit", &SHARED.room.text("decision"), "--why-not", "screw-25x10"]);
    assert!(text.out.starts_with("Axis slide: no drive with screw-25x10 is admissible"), "{}", text.out);
    assert!(
        text.out.contains("(test-diameter): `nominal-diameter` reaches 25 mm, at most 16 mm is allowed"),
        "{}",
        text.out
    );
}

#[test]
fn a_family_without_an_admissible_drive_is_told_from_the_record_alone() {
    let room = Room::with(&impossible());
    let run_of = room.recommend(&["--no-turning-points", "--json"]);
    let file = room.text("record.json");
    std::fs::write(&file, &run_of.out).expect("a record");
    let record: DecisionRecord = serde_json::from_str(&run_of.out).expect("a record");
    let family = &record.axes[0].families[0];
    let run_of = |more: &[&str]| run(&[&["audit", &file, "--why-not", "ball-screw"], more].concat());
    let told = run_of(&["--json"]);
    assert_eq!(told.status, 0, "{}", told.err);
    let told: Value = serde_json::from_str(&told.out).expect("JSON");
    assert_eq!(told["standing"], "not-admissible");
    assert_eq!(told["configurations"], family.configurations);
    assert_eq!(told["excluded-by"].as_array().expect("rules").len(), family.excluded_by.len());
    let worst = &family.ruled_out_by[0];
    assert_eq!(
        (&told["ruled-out-by"][0]["rule"], &told["ruled-out-by"][0]["limit"]),
        (&worst.rule.clone().into(), &worst.limit.into())
    );
    let text = run_of(&[]).out;
    assert!(text.contains("Rules that none keeps") && text.contains("The nearest miss: ball-screw"), "{text}");
}

#[test]
fn a_record_without_an_admissible_drive_follows_from_itself_and_what_rules_the_family_out_is_checked() {
    let room = Room::with(&impossible());
    let brief = room.text("brief.yaml");
    let (record, rules) = (room.text("record.json"), room.text("rules"));
    let kept = room.recommend(&["--json"]).out;
    std::fs::write(&record, &kept).expect("a record");
    // with the questions, as the record has them
    let whole = run(&["audit", &record, "--brief", &brief, "--rules", &rules]);
    assert_eq!((whole.status, whole.err.as_str()), (0, ""), "{}", whole.out);
    let mut value: Value = serde_json::from_str(&kept).expect("JSON");
    let worst = &mut value["axes"][0]["families"][0]["ruled-out-by"][0]["utilisation"];
    *worst = (worst.as_f64().expect("a number") * 1.001).into();
    std::fs::write(&record, value.to_string()).expect("a record");
    let changed = run(&["audit", &record, "--record-only"]);
    assert_eq!(changed.status, 1, "{}", changed.out);
    assert!(changed.out.contains("families[ball-screw].ruled-out-by["), "{}", changed.out);
}

#[test]
fn names_that_are_not_there_give_status_two_and_the_nearest_spelling() {
    let decision = SHARED.room.text("decision");
    let cases = [
        (vec!["--why-not", "servo-0.4kv"], "did you mean `servo-0.4kw`?"),
        (vec!["--why-not", "helical-rak"], "did you mean `helical-rack`?"),
        (vec!["--why-not", "servo-0.4kw", "--axis", "slid"], "did you mean `slide`?"),
        (vec!["--axis", "slide"], "--why-not"),
    ];
    for (arguments, wanted) in cases {
        let run = run(&[&["audit", &decision], arguments.as_slice()].concat());
        assert_eq!((run.status, run.out.as_str()), (2, ""), "{arguments:?}");
        assert!(run.err.contains(wanted), "{arguments:?}: {}", run.err);
    }
}
