//! Both sides of what decides: a limit, a factor, a weight, a tolerance, a name.

use super::{SCREW_WHIP, book, faults_of};
use axiswright::characteristic as ch;
use axiswright::ledger::{Ledger, Origin, Worksheet};
use axiswright::rule::{self, Above, Case, FAMILIES, Facts, Level, Rule, Sense};

/// The rule that a changed file makes.
fn changed(from: &str, to: &str) -> Rule {
    assert!(SCREW_WHIP.contains(from), "the rule file has no `{from}`");
    let texts = vec![("mine/screw-whip.yaml".to_string(), SCREW_WHIP.replacen(from, to, 1))];
    let book = rule::load_texts(texts).unwrap_or_else(|faults| panic!("`{to}`: {faults}"));
    book.find("screw-whip").expect("the rule").clone()
}

#[test]
fn what_is_told_without_a_division_is_what_the_division_tells() {
    let below = f64::from_bits(1.0_f64.to_bits() - 1);
    let values = [
        f64::NEG_INFINITY,
        -1.0,
        -0.0,
        0.0,
        f64::MIN_POSITIVE,
        0.25,
        0.5,
        below,
        1.0,
        2.0,
        1e300,
        f64::INFINITY,
        f64::NAN,
    ];
    for (demand, limit) in values.into_iter().flat_map(|demand| values.map(|limit| (demand, limit))) {
        for sense in [Sense::AtMost, Sense::AtLeast] {
            let surely = rule::surely_passes(sense, demand, limit);
            let passes = rule::passes(rule::utilisation(sense, demand, limit));
            assert!(passes || !surely, "{sense:?}: {demand} against {limit} passes without a division only");
            if [demand, limit].iter().all(|value| *value > 0.0 && value.is_finite()) {
                let within = if sense == Sense::AtMost { demand <= limit } else { demand >= limit };
                assert_eq!(surely, within, "{sense:?}: {demand} against {limit}");
            }
        }
    }
}

#[test]
fn a_rule_is_meant_for_each_family_that_it_names_and_for_all_where_it_names_none() {
    let two = changed("[ball-screw]", "[ball-screw, helical-rack]");
    for family in FAMILIES {
        assert_eq!(two.meant_for(family), ["ball-screw", "helical-rack"].contains(&family), "{family}");
    }
    let all = changed("applies-to: [ball-screw]\n", "");
    assert!(FAMILIES.iter().all(|family| all.meant_for(family)));
}

#[test]
fn a_factor_of_zero_is_refused_and_a_small_one_is_not() {
    assert!(faults_of("factor: 0.8", "factor: 0").contains("a factor is above 0, not 0"));
    let tenth = SCREW_WHIP.replace("factor: 0.8", "factor: 0.08");
    let tenth = tenth.replace("2400 1/min", "240 1/min").replace("2600 1/min", "260 1/min");
    let book =
        rule::load_texts(vec![("mine/screw-whip.yaml".into(), tenth)]).unwrap_or_else(|faults| panic!("{faults}"));
    assert_eq!(book.find("screw-whip").map(|rule| rule.factor), Some(0.08));
}

/// An example may differ from what the rule gives by 1 part in 10⁹, of 1 at least.
#[test]
fn an_example_agrees_to_the_ninth_digit_and_no_further() {
    changed("utilisation: 0.9375,", "utilisation: 0.9375000009,");
    assert!(faults_of("utilisation: 0.9375,", "utilisation: 0.9375000012,").contains("gives a utilisation"));
    assert!(faults_of("utilisation: 0.9375,", "utilisation: 0.9374999988,").contains("gives a utilisation"));
    // 102 400/(0.8·3200) = 40
    let far = |utilisation: &str| {
        let to = format!("{{ screw-speed: 102400 1/min, whip-speed: 3200 1/min }}, utilisation: {utilisation},");
        ("{ screw-speed: 2600 1/min, whip-speed: 3200 1/min }, utilisation: 1.015625,", to)
    };
    let (from, to) = far("40.00000003");
    changed(from, &to);
    let (from, to) = far("40.00000005");
    assert!(faults_of(from, &to).contains("gives a utilisation of 40"));
}

#[test]
fn an_advice_weighs_from_nothing_to_all_and_no_further() {
    let advice = |weighs: &str| format!("obligation: should\nweighs: {weighs}");
    for (text, weighs) in [("0 %", 0.0), ("2 %", 0.02), ("100 %", 1.0)] {
        assert_eq!(changed("obligation: shall", &advice(text)).weighs, weighs, "{text}");
    }
    assert_eq!(changed("obligation: shall", "obligation: should").weighs, 0.0);
    for text in ["-1 %", "101 %"] {
        let faults = faults_of("obligation: shall", &advice(text));
        assert!(faults.contains("a weight from 0 % to 100 % was expected"), "{text}: {faults}");
    }
}

#[test]
fn every_word_of_an_id_has_small_letters_and_digits_alone() {
    for name in ["screw-Whip", "sCREW-whip", "screw--whip", "screw-", "screw-whip!", "screw-wh_ip"] {
        let texts = vec![(format!("{name}.yaml"), SCREW_WHIP.to_string())];
        let faults = rule::load_texts(texts).expect_err(name).to_string();
        assert!(faults.contains("no rule id"), "{name}: {faults}");
    }
    let texts = vec![("screw-2.yaml".to_string(), SCREW_WHIP.to_string())];
    assert!(rule::load_texts(texts).is_ok_and(|book| book.find("screw-2").is_some()));
}

/// A level that hangs on another characteristic: 3 m against 1.5 times 1.9, 2.0 and 2.1 m.
#[test]
fn a_caution_holds_above_a_share_of_another_characteristic() {
    let case = Case {
        above: vec![Above { slot: ch::TRAVEL.slot, level: Level::Of(1.5, ch::STOPPING_DISTANCE.slot) }],
        ..Case::default()
    };
    for (other, holds) in [(1.9, true), (2.0, false), (2.1, false), (f64::NAN, true)] {
        let mut sheet = Worksheet::default();
        sheet.keep_given(ch::TRAVEL.slot, 3.0, Origin::Brief);
        sheet.keep_given(ch::STOPPING_DISTANCE.slot, other, Origin::Brief);
        let facts = Facts { family: None, environment: &[], sheet: &sheet };
        assert_eq!(case.holds(&facts), holds, "{other}");
    }
}

/// Nothing is told of rules that stay as they are built in; of one that is changed each thing that is.
#[test]
fn own_rules_are_told_with_what_they_change_and_no_others() {
    assert!(rule::own(&book()).is_empty());
    let own = |from: &str, to: &str| {
        let texts = vec![("mine/screw-whip.yaml".to_string(), SCREW_WHIP.replacen(from, to, 1))];
        let own = rule::own(&rule::load_texts(texts).unwrap_or_else(|faults| panic!("{faults}")));
        assert_eq!(own.len(), 1, "{to}");
        own.into_iter().next().expect("one rule")
    };
    let wider = own("[ball-screw]", "[ball-screw, helical-rack]");
    assert_eq!(wider.differs.len(), 1, "{wider:?}");
    assert!(wider.added.is_none() && wider.differs[0].own.contains("helical"), "{wider:?}");
    // where nothing else differs, the words do
    let words = own("title: The screw stays below its whip speed", "title: The screw stays well below its whip speed");
    assert_eq!(words.differs.iter().map(|aspect| aspect.what).collect::<Vec<_>>(), ["wording"]);
    assert!(words.differs[0].own.contains("well below") && !words.differs[0].built_in.contains("well below"));
}

#[test]
fn a_rule_or_caution_that_is_added_is_told_as_added() {
    const BELT: &str = include_str!("../../rules/cautions/belt.yaml");
    let texts = vec![
        ("mine/own-rule.yaml".to_string(), SCREW_WHIP.to_string()),
        ("mine/cautions/own-belt.yaml".to_string(), BELT.to_string()),
        ("mine/cautions/belt.yaml".to_string(), BELT.replacen("title: ", "title: Mind ", 1)),
    ];
    let own = rule::own(&rule::load_texts(texts).unwrap_or_else(|faults| panic!("{faults}")));
    let told: Vec<(&str, &str, bool, usize)> =
        own.iter().map(|one| (one.what, one.id.as_str(), one.added.is_some(), one.differs.len())).collect();
    assert_eq!(told, [("rule", "own-rule", true, 0), ("caution", "belt", false, 1), ("caution", "own-belt", true, 0)]);
    assert!(own[0].added.as_ref().is_some_and(|limit| limit.starts_with("shall, ") && limit.contains("whip-speed")));
    assert!(own[1].differs[0].own.contains("Mind") && !own[1].differs[0].built_in.contains("Mind"));
}
