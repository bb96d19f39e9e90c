//! The cautions: every one of ours is whole, each holds when its hazard is there and not otherwise, and faults in caution
//! files are told.
//!
//! The hazards are those of ISO 12100 annex B (mechanical: crushing, drawing in, entanglement, stored energy, gravity; and
//! unexpected start-up) as far as a linear axis has them, read from memory of that annex.

use axiswright::characteristic as ch;
use axiswright::ledger::{Ledger, Origin, Worksheet};
use axiswright::rule::{self, Caution, FAMILIES, Facts, Rulebook};
use std::collections::BTreeSet;

fn book() -> Rulebook {
    rule::load(&[]).unwrap_or_else(|faults| panic!("{faults}"))
}

const BELT: &str = include_str!("../rules/cautions/belt.yaml");

/// The faults of a caution file made out of the one above by replacing a piece of it.
fn faults_of(from: &str, to: &str) -> String {
    assert!(BELT.contains(from), "the caution file has no `{from}`");
    match rule::load_texts(vec![("mine/cautions/belt.yaml".into(), BELT.replacen(from, to, 1))]) {
        Ok(_) => panic!("no fault was found after `{from}` became `{to}`"),
        Err(faults) => faults.to_string(),
    }
}

/// A plain axis: level, short, slow, one drive, nobody below, no cutting, motor feedback.
const PLAIN: [(usize, f64); 7] = [
    (ch::INCLINATION.slot, 0.0),
    (ch::TRAVEL.slot, 0.5),
    (ch::DRIVES.slot, 1.0),
    (ch::PEOPLE_BELOW.slot, 0.0),
    (ch::COUNTERBALANCE_SHARE.slot, 0.0),
    (ch::CUTTING_FORCE.slot, 0.0),
    (ch::WHOLE_END_STOP_ENERGY.slot, 20.0),
];

/// The ids that hold on the plain axis with these values in place of its own.
fn told(family: Option<&str>, environment: &[&str], with: &[(usize, f64)]) -> BTreeSet<String> {
    let mut sheet = Worksheet::default();
    let own = PLAIN.iter().filter(|(slot, _)| !with.iter().any(|(other, _)| other == slot));
    for &(slot, value) in own.chain(with) {
        sheet.keep_given(slot, value, Origin::Brief);
    }
    let environment: Vec<String> = environment.iter().map(|word| word.to_string()).collect();
    let book = book();
    book.cautions_for(&Facts { family, environment: &environment, sheet: &sheet })
        .into_iter()
        .map(|caution| caution.id.clone())
        .collect()
}

#[test]
fn every_file_in_the_folder_of_cautions_is_in_force_and_in_the_record_of_inputs() {
    let mut names: Vec<String> = std::fs::read_dir("rules/cautions")
        .expect("the folder of cautions is there")
        .map(|entry| format!("rules/cautions/{}", entry.expect("a file").file_name().to_string_lossy()))
        .collect();
    names.sort();
    let book = book();
    let mut files: Vec<String> = book.caution_files.iter().map(|(name, _)| name.clone()).collect();
    for ((name, text), caution) in book.caution_files.iter().zip(&book.cautions) {
        assert_eq!(*name, format!("rules/cautions/{}.yaml", caution.id));
        assert_eq!(*text, std::fs::read_to_string(name).expect("the file is there"));
    }
    files.sort();
    assert_eq!(names, files);
}

#[test]
fn every_caution_is_whole_and_claims_no_conformity() {
    let book = book();
    assert!(book.cautions.is_sorted_by_key(|caution| (caution.order, caution.id.clone())));
    for Caution { id, title, text, readers, standards, .. } in &book.cautions {
        assert!(title.split_whitespace().count() >= 2 && !title.ends_with('.'), "{id}: {title}");
        assert!(text.trim().ends_with('.') && text.split_whitespace().count() >= 15, "{id}: {text}");
        assert!(!readers.is_empty(), "{id} is meant for nobody");
        for words in ["conforms", "complies", "compliant", "is safe", "meets the standard", "certified"] {
            assert!(!text.contains(words), "{id} says `{words}`");
        }
        for standard in standards {
            assert!(["ISO ", "IEC "].iter().any(|body| standard.number.starts_with(body)), "{id}: {}", standard.number);
        }
    }
    let general = book.caution("general").expect("the general caution");
    assert!(general.cases.is_empty() && general.text.contains("No conformity"));
}

/// Id of the caution, family, words of the surroundings, values in place of those of the plain axis.
type Hazard<'h> = (&'h str, Option<&'h str>, &'h [&'h str], &'h [(usize, f64)]);

/// Each hazard of a linear axis with the state that brings it; the plain axis must not have it.
#[test]
fn each_hazard_is_told_where_it_is_and_nowhere_else() {
    let upright = (ch::INCLINATION.slot, 1.5);
    let belt = (ch::BELTS.slot, 1.0);
    let screw = Some("ball-screw");
    let plain = told(None, &[], &[]);
    assert_eq!(plain, BTreeSet::from(["general".into(), "stored-energy".into()]));
    let cases: [Hazard<'_>; 20] = [
        ("suspended", None, &[], &[upright]),
        ("suspended", Some("helical-rack"), &[], &[upright]),
        ("people-below", None, &[], &[(ch::PEOPLE_BELOW.slot, 1.0)]),
        ("counterbalance", None, &[], &[(ch::COUNTERBALANCE_SHARE.slot, 0.8)]),
        ("belt", screw, &[], &[upright, belt]),
        ("screw-hangs", screw, &[], &[upright]),
        ("rack-trapping", Some("straight-rack"), &[], &[]),
        ("moving-energy", Some("straight-rack"), &[], &[]),
        ("moving-energy", screw, &[], &[(ch::TRAVEL.slot, 3.0)]),
        ("moving-energy", screw, &[], &[(ch::WHOLE_END_STOP_ENERGY.slot, 500.0)]),
        ("screw-entanglement", screw, &[], &[]),
        ("turning-nut", Some("driven-nut"), &[], &[]),
        ("end-stop-inertia", screw, &[], &[]),
        ("scale-feedback", screw, &[], &[(ch::SCALE_LENGTH_LIMIT.slot, 3.0)]),
        ("play-in-loop", screw, &[], &[(ch::LOOP_PLAY.slot, 5e-6)]),
        ("two-drives", None, &[], &[(ch::DRIVES.slot, 2.0)]),
        ("two-pinions", Some("twin-pinion"), &[], &[]),
        ("dust", None, &["composite Dust"], &[]),
        ("wood", None, &["WOOD chips"], &[]),
        ("cutting", None, &[], &[(ch::CUTTING_FORCE.slot, 100.0)]),
    ];
    for (id, family, environment, with) in cases {
        assert!(told(family, environment, with).contains(id), "{id} is not told");
        assert!(!plain.contains(id), "{id} is told of a plain axis");
    }
    for (id, family, with) in [
        ("belt", screw, vec![belt]),
        ("belt", screw, vec![upright, (ch::BELTS.slot, 0.0)]),
        ("play-in-loop", screw, vec![(ch::LOOP_PLAY.slot, 0.0)]),
        ("rack-trapping", screw, vec![]),
        ("screw-entanglement", Some("driven-nut"), vec![]),
    ] {
        assert!(!told(family, &[], &with).contains(id), "{id} is told without its hazard");
    }
}

#[test]
fn what_was_to_be_worked_out_and_is_not_known_does_not_excuse() {
    let unknown = (ch::LOOP_PLAY.slot, f64::NAN);
    assert!(told(Some("ball-screw"), &[], &[unknown]).contains("play-in-loop"));
}

#[test]
fn every_family_has_a_caution_of_its_own_and_every_caution_can_hold() {
    let book = book();
    for family in FAMILIES {
        let named =
            |caution: &&Caution| caution.cases.iter().any(|case| case.families.iter().any(|named| named == family));
        assert!(book.cautions.iter().any(|caution| named(&caution)), "{family}");
    }
}

#[test]
fn a_later_file_replaces_the_caution_of_the_same_id_and_adds_others() {
    let own = BELT.replace("title: A belt between brake and load", "title: Our belts");
    let folder = tempfile::tempdir().expect("a folder");
    let below = folder.path().join("ours/cautions");
    std::fs::create_dir_all(&below).expect("a folder");
    for name in ["belt.yaml", "our-belt.yaml"] {
        std::fs::write(below.join(name), &own).expect("a file");
    }
    let read = rule::load(&[folder.path().join("ours")]).unwrap_or_else(|faults| panic!("{faults}"));
    assert_eq!(read.cautions.len(), book().cautions.len() + 1);
    assert_eq!(read.caution("belt").map(|caution| caution.title.as_str()), Some("Our belts"));
    assert!(read.caution_files.iter().any(|(name, _)| name == "ours/cautions/our-belt.yaml"), "no path of the machine");
    assert_eq!(read.rules, book().rules);
}

#[test]
fn faults_of_a_caution_file_are_told_with_place_and_remedy() {
    let unknown = faults_of("characteristic: belts", "characteristic: beltz");
    assert!(
        unknown.contains("unknown characteristic `beltz`") && unknown.contains("did you mean `belts`?"),
        "{unknown}"
    );
    assert!(unknown.contains("mine/cautions/belt.yaml:6:"), "{unknown}");
    for (from, to, said) in [
        ("title: A belt between brake and load", "title: ''", "`title` is empty"),
        ("text: >", "txt: >", "did you mean `text`?"),
        ("order: 40", "order: soon", "a whole number"),
        ("for: [designer, maintainer]", "for: [engineer]", "`engineer` is not a choice"),
        ("for: [designer, maintainer]", "for: []", "meant for somebody"),
        ("for: [designer, maintainer]\n", "", "the key `for` is missing"),
        ("ball-screw", "ballscrew", "did you mean `ball-screw`?"),
        ("value: \"0\"", "value: 3 mm", "`mm` is a unit of length"),
        ("value: 0 deg", "of: travel", "`travel` is a length, but `inclination` is an angle"),
        ("value: 0 deg", "factor: 2", "either `value` or `of`"),
        ("value: 0 deg", "factor: 2, value: 0 deg", "a factor goes with `of`"),
        ("families: [ball-screw, driven-nut]", "family: ball-screw", "did you mean `families`?"),
        ("    above:", "    environment: ['']\n    above:", "an empty word"),
        ("    above:", "    present: [phase-speed]\n    above:", "one value a phase"),
        ("number: ISO 12100", "no: ISO 12100", "the key `number` is missing"),
    ] {
        let faults = faults_of(from, to);
        assert!(faults.contains(said), "`{to}` should be told by `{said}`:\n{faults}");
    }
    let bound = rule::load_texts(vec![("mine/cautions/general.yaml".into(), BELT.into())]).expect_err("a condition");
    assert!(bound.to_string().contains("takes no condition"), "{bound}");
    let name = rule::load_texts(vec![("mine/cautions/Belt_1.yaml".into(), BELT.into())]).expect_err("no id");
    assert!(name.to_string().contains("no caution id"), "{name}");
    let empty = "title: Two words\norder: 1\nfor: [buyer]\nwhen: [{}]\ntext: Some words of it.\n";
    let faults = rule::load_texts(vec![("mine/cautions/none.yaml".into(), empty.into())]).expect_err("an empty case");
    assert!(faults.to_string().contains("a case names one of"), "{faults}");
}
