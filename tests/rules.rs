//! The rulebook: every rule of ours is whole, every example comes out, and faults in rule files are told.
//!
//! The expected numbers are those written in the rule files by hand; the arithmetic of the check here is its own.

use axiswright::characteristic as ch;
use axiswright::ledger::{Known, Ledger, Origin};
use axiswright::rule::{self, FAMILIES, Limit, Obligation, Rule, Rulebook, Sense, Verdict, When};
use axiswright::units::parse_as;
use std::collections::BTreeSet;
use std::path::Path;

#[path = "rules/limits.rs"]
mod limits;

fn book() -> Rulebook {
    rule::load(&[]).unwrap_or_else(|faults| panic!("{faults}"))
}

const SCREW_WHIP: &str = include_str!("../rules/screw-whip.yaml");

/// The faults of a rule file made out of the one above by replacing a piece of it.
fn faults_of(from: &str, to: &str) -> String {
    assert!(SCREW_WHIP.contains(from), "the rule file has no `{from}`");
    let text = SCREW_WHIP.replacen(from, to, 1);
    match rule::load_texts(vec![("mine/screw-whip.yaml".into(), text)]) {
        Ok(_) => panic!("no fault was found after `{from}` became `{to}`"),
        Err(faults) => faults.to_string(),
    }
}

fn sheet(values: &[(usize, f64)]) -> Known {
    let mut sheet = Known::default();
    for &(slot, value) in values {
        sheet.keep_given(slot, value, Origin::Brief);
    }
    sheet
}

#[test]
fn every_file_in_the_folder_of_rules_is_a_rule_in_force() {
    let mut names: Vec<String> = std::fs::read_dir("rules")
        .expect("the folder of rules is there")
        .map(|entry| entry.expect("a file"))
        .filter(|entry| entry.path().is_file())
        .map(|entry| entry.file_name().to_string_lossy().into_owned())
        .collect();
    names.sort();
    let book = book();
    let mut files: Vec<&str> = book.files.iter().filter_map(|(name, _)| name.strip_prefix("rules/")).collect();
    files.sort();
    assert_eq!(names, files);
    for ((name, text), rule) in book.files.iter().zip(&book.rules) {
        assert_eq!(*name, format!("rules/{}.yaml", rule.id));
        assert_eq!(*text, std::fs::read_to_string(name).expect("the file is there"));
    }
}

#[test]
fn every_example_comes_out_as_written() {
    for rule in &book().rules {
        for example in &rule.examples {
            let value = |slot: usize| {
                let about = ch::about(slot).0;
                let (_, text) = example.written.iter().find(|(id, _)| id == about.id).expect("the example gives it");
                parse_as(about.dimension, text).expect("the example is written with its unit")
            };
            let limit = match rule.limit {
                Limit::Of(slot) => rule.factor * value(slot),
                Limit::Value(limit) => limit,
            };
            let expected = match rule.sense {
                Sense::AtMost => value(rule.demand) / limit,
                Sense::AtLeast => limit / value(rule.demand),
            };
            let id = &rule.id;
            assert!((expected - example.utilisation).abs() < 1e-9, "{id}: {expected} against {}", example.utilisation);
            let sheet = sheet(&example.given);
            let found = rule.utilisation(&sheet);
            assert!((found - example.utilisation).abs() < 1e-9, "{id}: {found} against {}", example.utilisation);
            assert_eq!(rule::verdict(found), example.verdict, "{id}");
            assert!(rule.holds(&sheet), "{id}: the example is one that the rule does not apply to");
        }
    }
}

#[test]
fn every_rule_is_whole() {
    for rule in &book().rules {
        let id = &rule.id;
        for (what, text) in [("title", &rule.title), ("reason", &rule.reason), ("remedy", &rule.remedy)] {
            assert!(text.split_whitespace().count() >= 4, "{id}: the {what} says nothing: {text}");
        }
        assert!(!rule.title.ends_with('.'), "{id}: a title has no full stop");
        assert!(rule.reason.ends_with('.') && rule.remedy.ends_with('.'), "{id}: reason and remedy are sentences");
        assert!(!rule.sources.is_empty(), "{id} has no source");
        for wanted in [Verdict::Pass, Verdict::Fail] {
            assert!(rule.examples.iter().any(|example| example.verdict == wanted), "{id} has no {wanted:?}");
        }
        for family in &rule.applies_to {
            assert!(FAMILIES.contains(&family.as_str()), "{id}: unknown family {family}");
        }
    }
}

#[test]
fn demand_and_limit_are_of_one_dimension_and_differ() {
    for rule in &book().rules {
        assert!(!ch::about(rule.demand).0.phased, "{}", rule.id);
        if let Limit::Of(slot) = rule.limit {
            assert_eq!(ch::about(slot).0.dimension, ch::about(rule.demand).0.dimension, "{}", rule.id);
            assert_ne!(slot, rule.demand, "{}", rule.id);
        }
    }
}

#[test]
fn no_two_rules_judge_the_same_thing() {
    let mut seen = BTreeSet::new();
    for rule in &book().rules {
        let limit = match rule.limit {
            Limit::Of(slot) => ch::id(slot),
            Limit::Value(value) => value.to_string(),
        };
        // a harder factor where a condition holds, such as people below, is a rule of its own
        let condition = rule.when.map(|when| when.slot());
        assert!(seen.insert((rule.demand, limit, condition)), "{} judges what another rule judges", rule.id);
    }
}

/// The margins agreed for this program, one each; that two of them never multiply is the point of the list.
#[test]
fn every_margin_is_taken_once_and_as_agreed() {
    let book = book();
    let margin = |id: &str| {
        let rule = book.find(id).unwrap_or_else(|| panic!("no rule {id}"));
        match rule.limit {
            Limit::Of(_) => rule.factor,
            Limit::Value(value) => value,
        }
    };
    for (id, expected) in [
        ("screw-whip", 0.8),
        ("ball-circulation", 1.0),
        ("screw-buckling", 0.5),
        ("nut-life", 1.0),
        ("nut-static-safety", 2.0),
        ("nut-static-safety-inclined", 3.5),
        ("motor-top-speed", 0.95),
        ("motor-peak", 0.9),
        ("motor-heating", 0.9),
        ("pinion-pitting", 1.0),
        ("rack-pitting", 1.0),
        ("rack-speed", 1.0),
        ("resonance-floor", 1.0),
        ("motor-standing", 0.7),
        ("motor-winding", 1.0),
    ] {
        assert_eq!(margin(id), expected, "{id}");
    }
    // 1/1.4 on the root, 0.8/1.3 on the brake, 1/1.5 on the coupling, 1/2^1.5 on the preload, rounded to three digits
    for (id, exact) in [
        ("pinion-root", 1.0 / 1.4),
        ("rack-root", 1.0 / 1.4),
        ("holding-brake", 0.8 / 1.3),
        ("coupling-torque", 1.0 / 1.5),
        ("belt-pull", 1.0 / 1.5),
        ("nut-preload", 2f64.powf(-1.5)),
    ] {
        assert!((margin(id) - exact).abs() <= 0.0006, "{id}: {} against {exact}", margin(id));
    }
}

#[test]
fn what_is_not_known_is_never_passed() {
    for rule in &book().rules {
        assert!(!rule.passed(&Known::default()), "{} passes an empty sheet", rule.id);
        assert_eq!(rule::verdict(rule.utilisation(&Known::default())), Verdict::NotEvaluated);
    }
    for (demand, limit) in [(f64::NAN, 1.0), (1.0, f64::NAN), (1.0, 0.0), (1.0, -1.0), (1.0, f64::INFINITY)] {
        assert!(rule::utilisation(Sense::AtMost, demand, limit).is_nan(), "{demand} at most {limit}");
        assert!(rule::utilisation(Sense::AtLeast, limit, demand).is_nan(), "{limit} at least {demand}");
    }
    assert!(!rule::passes(f64::NAN));
    assert!(!rule::passes(f64::INFINITY));
}

#[test]
fn a_limit_may_be_used_up_but_not_exceeded() {
    assert!(rule::passes(1.0) && rule::passes(1.0 + 1e-10) && !rule::passes(1.0 + 1e-8));
    assert_eq!(rule::utilisation(Sense::AtMost, 2.0, 4.0), 0.5);
    assert_eq!(rule::utilisation(Sense::AtLeast, 2.0, 4.0), 2.0);
    assert_eq!(rule::utilisation(Sense::AtMost, 0.0, 4.0), 0.0);
}

#[test]
fn conditions_decide_whether_a_rule_is_judged() {
    let book = book();
    let brake = book.find("holding-brake").expect("rule");
    let level = sheet(&[(ch::INCLINATION.slot, 0.0)]);
    let upright = sheet(&[(ch::INCLINATION.slot, 1.5)]);
    assert!(!brake.applies("ball-screw", &level));
    assert!(brake.applies("ball-screw", &upright));
    assert!(brake.applies("ball-screw", &Known::default()), "what is not known does not excuse");
    let accuracy = book.find("positioning-accuracy").expect("rule");
    assert!(!accuracy.applies("helical-rack", &Known::default()), "nothing was asked");
    assert!(accuracy.applies("helical-rack", &sheet(&[(ch::REQUIRED_ACCURACY.slot, 1e-4)])));
    let whip = book.find("screw-whip").expect("rule");
    assert!(whip.applies("ball-screw", &level) && !whip.applies("helical-rack", &level));
    assert!(book.find("no-such-rule").is_none());
}

#[test]
fn the_slots_of_a_rule_are_demand_limit_and_condition() {
    let book = book();
    let slots = |id: &str| book.find(id).expect("rule").slots().collect::<Vec<_>>();
    assert_eq!(slots("screw-whip"), [ch::SCREW_SPEED.slot, ch::WHIP_SPEED.slot]);
    assert_eq!(slots("screw-sag-limit"), [ch::SCREW_SAG.slot]);
    assert_eq!(slots("holding-brake"), [ch::HOLDING_TORQUE.slot, ch::BRAKE_TORQUE.slot, ch::INCLINATION.slot]);
}

#[test]
fn a_missing_brake_does_not_pass() {
    let book = book();
    let brake = book.find("holding-brake").expect("rule");
    assert!(!brake.passed(&sheet(&[(ch::HOLDING_TORQUE.slot, 3.0), (ch::BRAKE_TORQUE.slot, 0.0)])));
}

#[test]
fn a_later_file_replaces_the_rule_of_the_same_id_and_adds_others() {
    let stricter = SCREW_WHIP
        .replace("factor: 0.8", "factor: 0.5")
        .replace("utilisation: 0.9375, verdict: pass", "utilisation: 1.5, verdict: fail")
        .replace(
            "screw-speed: 2600 1/min, whip-speed: 3200 1/min }, utilisation: 1.015625, verdict: fail",
            "screw-speed: 1200 1/min, whip-speed: 3200 1/min }, utilisation: 0.75, verdict: pass",
        );
    let texts = vec![("mine/screw-whip.yaml".into(), stricter.clone()), ("mine/own-rule.yaml".into(), stricter)];
    let replaced = rule::load_texts(texts).unwrap_or_else(|faults| panic!("{faults}"));
    assert_eq!(replaced.rules.len(), book().rules.len() + 1);
    assert_eq!(replaced.find("screw-whip").map(|rule| rule.factor), Some(0.5));
    assert!(replaced.find("own-rule").is_some());
    assert!(replaced.files.iter().any(|(name, _)| name == "mine/screw-whip.yaml"));
    assert!(!replaced.files.iter().any(|(name, _)| name == "rules/screw-whip.yaml"));
    assert!(replaced.rules.is_sorted_by(|one, other| one.id < other.id));
}

#[test]
fn rules_are_read_from_a_folder_whose_path_stays_out_of_the_rulebook() {
    let folder = tempfile::tempdir().expect("a folder");
    let rules = folder.path().join("own");
    std::fs::create_dir(&rules).expect("a folder");
    std::fs::write(rules.join("own-rule.yaml"), SCREW_WHIP).expect("a file");
    std::fs::write(rules.join("notes.txt"), "not a rule").expect("a file");
    let read = rule::load(std::slice::from_ref(&rules)).unwrap_or_else(|faults| panic!("{faults}"));
    assert!(read.files.iter().any(|(name, _)| name == "own/own-rule.yaml"));
    let faults = rule::load(&[folder.path().join("absent")]).expect_err("the folder is absent").to_string();
    assert!(faults.contains("absent"), "{faults}");
}

#[test]
fn an_id_given_twice_in_one_folder_is_a_fault() {
    let twice = vec![("a/mine.yaml".to_string(), SCREW_WHIP.to_string()), ("a/mine.yml".into(), SCREW_WHIP.into())];
    let faults = rule::load_texts(twice).expect_err("two files, one id").to_string();
    assert!(faults.contains("`mine`") && faults.contains("a/mine.yaml"), "{faults}");
}

#[test]
fn faults_of_a_rule_file_are_told_with_place_and_remedy() {
    let unknown = faults_of("of: whip-speed", "of: whip-sped");
    assert!(unknown.contains("unknown characteristic `whip-sped`"), "{unknown}");
    assert!(unknown.contains("did you mean `whip-speed`?"), "{unknown}");
    assert!(unknown.contains("mine/screw-whip.yaml:4:"), "{unknown}");
    for (from, to, told) in [
        ("of: whip-speed", "of: travel", "`travel` is a length, but `screw-speed` is a speed of rotation"),
        ("characteristic: screw-speed", "characteristic: phase-speed", "one value a phase"),
        ("whip-speed: 3200 1/min", "whip-speed: 3200 N", "`N` is a unit of force"),
        ("whip-speed: 3200 1/min", "lead: 10 mm", "does not use `lead`"),
        ("screw-speed: 2400 1/min, ", "", "not enough to work out a utilisation"),
        ("utilisation: 0.9375", "utilisation: 0.9376", "gives a utilisation of 0.9375, not 0.9376"),
        ("0.9375, verdict: pass", "0.9375, verdict: fail", "gives the verdict `pass`, not `fail`"),
        ("ball-screw", "ballscrew", "did you mean `ball-screw`?"),
        ("[ball-screw]", "[]", "no family is listed"),
        ("obligation: shall", "obligation: must", "shall or should"),
        ("factor: 0.8", "factor: -0.8", "a factor is above 0"),
        ("factor: 0.8", "faktor: 0.8", "did you mean `factor`?"),
        ("at-most", "at-least: { of: travel }, at-most", "not both"),
        ("{ factor: 0.8, of: whip-speed }", "{ factor: 0.8 }", "needs `of`"),
        ("{ factor: 0.8, of: whip-speed }", "{ factor: 0.8, value: 3 1/min }", "a factor goes with `of`"),
        ("{ factor: 0.8, of: whip-speed }", "{ value: 3 mm }", "`mm` is a unit of length"),
        ("kind: practice", "kind: hearsay", "`hearsay` is not a choice"),
        ("title: The screw stays below its whip speed", "title: ''", "`title` is empty"),
        ("obligation: shall", "obligation: shall\nwhen: { stated: lead, above: 3 }", "either `stated` or `above`"),
    ] {
        let faults = faults_of(from, to);
        assert!(faults.contains(told), "`{to}` should be told by `{told}`:\n{faults}");
    }
}

#[test]
fn a_rule_without_reason_remedy_source_or_failing_example_is_a_fault() {
    for key in ["title", "obligation", "limit", "reason", "remedy"] {
        let faults = faults_of(&format!("{key}: "), "other: ");
        assert!(faults.contains(&format!("the key `{key}` is missing")), "{key}:\n{faults}");
    }
    for key in ["sources", "examples"] {
        let faults = faults_of(&format!("{key}:\n"), "other:\n");
        assert!(faults.contains(&format!("the key `{key}` is missing")), "{key}:\n{faults}");
    }
    let failing = SCREW_WHIP.lines().last().expect("the last line is the failing example");
    let faults = faults_of(failing, "");
    assert!(faults.contains("needs an example with the verdict `fail`"), "{faults}");
}

#[test]
fn a_file_name_that_is_no_id_is_a_fault() {
    for name in ["Screw Whip.yaml", "screw_whip.yaml", "-screw.yaml", "2-screw.yaml"] {
        let faults = rule::load_texts(vec![(name.into(), SCREW_WHIP.into())]).expect_err(name).to_string();
        assert!(faults.contains("no rule id"), "{faults}");
    }
}

#[test]
fn all_faults_of_all_files_are_told_in_one_run() {
    let broken = SCREW_WHIP.replace("of: whip-speed", "of: whip-sped").replace("kind: practice", "kind: hearsay");
    let texts = vec![("a/one.yaml".into(), broken.clone()), ("a/two.yaml".into(), broken)];
    let faults = rule::load_texts(texts).expect_err("both are broken");
    assert_eq!(faults.len(), 4, "{faults}");
}

#[test]
fn some_rules_bind_and_some_advise() {
    let book = book();
    for obligation in Obligation::ALL {
        assert!(book.rules.iter().any(|rule| rule.obligation == obligation));
    }
    let conditions = |rule: &&Rule| matches!(rule.when, Some(When::Above(slot, 0.0)) if slot == ch::INCLINATION.slot);
    assert!(book.rules.iter().filter(conditions).count() >= 2);
}

/// Set `AXISWRIGHT_REWRITE` to write the document anew.
#[test]
fn the_document_of_rules_is_what_the_rule_files_give() {
    let path = Path::new("docs/rules.md");
    let described = rule::describe(&book());
    if std::env::var_os("AXISWRIGHT_REWRITE").is_some() {
        std::fs::write(path, &described).expect("the document is written");
    }
    let committed = std::fs::read_to_string(path).unwrap_or_default();
    assert!(committed == described, "docs/rules.md is stale; run with AXISWRIGHT_REWRITE=1 to write it anew");
}
