//! How a road ends: chosen, nothing admissible, a limit of the machine, a waiver, a rule that cannot be judged.

use crate::small::{self, Entered, HORIZONTAL, IMPOSSIBLE, MACHINE, VERTICAL};
use axiswright::characteristic as ch;
use axiswright::drive::{Demand, FAMILIES, Family, WithFamily, with_family};
use axiswright::pipeline::{self, Inputs, recommend};
use axiswright::record::{CandidateRecord, DecisionRecord, Outcome};
use axiswright::rule;
use axiswright::search::MOST_STAGES;
use std::collections::BTreeSet;

/// The binding rules that a drive misses.
fn missed(drive: &CandidateRecord) -> Vec<(&str, Option<f64>)> {
    let findings = drive.findings.iter().filter(|finding| finding.obligation == "shall" && finding.verdict != "pass");
    findings.map(|finding| (finding.rule.as_str(), finding.utilisation)).collect()
}

#[test]
fn where_nothing_is_admissible_every_family_names_its_nearest_miss() {
    let record = recommend(&small::inputs(IMPOSSIBLE), false);
    assert_eq!(record.outcome, Outcome::NothingAdmissible);
    assert_eq!(record.machine.solver.status, "not-run");
    let axis = &record.axes[0];
    assert_eq!((axis.outcome, axis.chosen.is_some(), axis.runners_up.len()), (Outcome::NothingAdmissible, false, 0));
    assert_eq!(axis.families.iter().map(|family| family.family.as_str()).collect::<Vec<_>>(), FAMILIES);
    for family in &axis.families {
        assert_eq!((family.admissible, family.best.is_some()), (0, false), "{}", family.family);
        let excluded: u64 = family.excluded_by.iter().map(|exclusion| exclusion.configurations).sum();
        assert_eq!(excluded, family.configurations, "{}", family.family);
        let nearest = family.nearest.as_ref().expect("a nearest miss");
        assert_eq!(nearest.family, family.family);
        let missed = missed(nearest);
        assert!(!missed.is_empty(), "{} misses nothing", family.family);
        assert!(missed.iter().all(|(_, utilisation)| utilisation.is_some_and(|value| value > 1.0)), "{missed:?}");
    }
}

#[test]
fn one_axis_without_a_drive_leaves_the_machine_without_an_answer() {
    let begin = IMPOSSIBLE.find("  slide:").expect("the slide");
    let text = format!("{VERTICAL}{}", &IMPOSSIBLE[begin..]);
    let record = recommend(&small::inputs(&text), false);
    assert_eq!(record.outcome, Outcome::NothingAdmissible);
    assert_eq!(record.axes[1].outcome, Outcome::NothingAdmissible);
    assert!(record.axes.iter().all(|axis| axis.chosen.is_none()));
    // the other axis still shows what there is
    assert!(record.axes[0].families.iter().any(|family| family.best.is_some()));
}

/// Each limit of the machine with its verdict.
fn verdicts(record: &DecisionRecord) -> Vec<(&str, &str)> {
    record.machine.limits.iter().map(|limit| (limit.limit.as_str(), limit.verdict.as_str())).collect()
}

#[test]
fn a_limit_of_the_machine_that_nothing_keeps_is_named_with_what_would_be_needed() {
    for (key, limit) in [("purchase", "9000"), ("supply-power", "0.2 kW"), ("tool-point-error", "0.002 mm")] {
        let begin = MACHINE.find("limits:").expect("limits");
        let end = MACHINE.find("axes:").expect("axes");
        let text = format!("{}limits: {{ {key}: {limit}, motor-models: 9 }}\n{}", &MACHINE[..begin], &MACHINE[end..]);
        let record = recommend(&small::inputs(&text), false);
        assert_eq!(record.outcome, Outcome::MachineLimit, "{key}");
        assert_eq!(record.machine.solver.status, "infeasible", "{key}");
        assert!(record.axes.iter().all(|axis| axis.outcome == Outcome::MachineLimit), "{key}");
        let failed: Vec<&str> =
            verdicts(&record).into_iter().filter(|(_, verdict)| *verdict != "pass").map(|(key, _)| key).collect();
        assert_eq!(failed, [key]);
        let limit = record.machine.limits.iter().find(|limit| limit.limit == key).expect("the limit");
        assert!(limit.reached.expect("what the best drives would need") > limit.allowed);
    }
}

fn waiving(text: &str, rule: &str, axis: &str) -> Inputs {
    let axis = if axis.is_empty() { String::new() } else { format!(", axis: {axis}") };
    small::inputs(&format!("{text}waivers: [ {{ rule: {rule}, reason: a trial, by: the owner{axis} }} ]\n"))
}

#[test]
fn a_waiver_is_used_only_by_a_drive_that_fails_its_rule() {
    let strict = recommend(&small::inputs(VERTICAL), false);
    let used = recommend(&waiving(VERTICAL, "holding-brake", "ram"), false);
    assert!(used.waivers[0].used);
    let drive = used.axes[0].chosen.as_ref().expect("a drive");
    let verdict =
        |rule: &str| drive.findings.iter().find(|finding| finding.rule == rule).expect("the finding").verdict.clone();
    assert_eq!(verdict("holding-brake"), "waived");
    // what is made small falls; the cost alone may rise for advice that is followed
    assert!(drive.merit < strict.axes[0].chosen.as_ref().expect("a drive").merit);
    // a rule on racks frees nothing of a screw, and one on an axis nothing of another
    let unused = recommend(&waiving(VERTICAL, "rack-pitting", ""), false);
    assert!(!unused.waivers[0].used);
    assert_eq!(unused.axes[0].chosen, strict.axes[0].chosen);
    let begin = HORIZONTAL.find("  slide:").expect("the slide");
    let both = format!("{VERTICAL}{}", &HORIZONTAL[begin..]);
    let other = recommend(&waiving(&both, "holding-brake", "slide"), false);
    assert!(!other.waivers[0].used);
    assert_eq!(other.axes[0].chosen, strict.axes[0].chosen);
    let all = recommend(&waiving(&both, "holding-brake", ""), false);
    assert!(all.waivers[0].used);
    assert_eq!(all.axes[0].chosen, used.axes[0].chosen);
}

/// A binding rule of the test on one characteristic.
fn rule_on(characteristic: &str, families: &str) -> rule::Rulebook {
    let text = format!(
        "title: A rule of the test\n{families}obligation: shall\n\
         limit: {{ characteristic: {characteristic}, at-most: {{ value: 9000 1/min }} }}\n\
         reason: To try it.\nremedy: None.\nsources: [ {{ kind: practice, note: \"a test, no source\" }} ]\n\
         examples:\n  - {{ given: {{ {characteristic}: 4500 1/min }}, utilisation: 0.5, verdict: pass }}\n  \
         - {{ given: {{ {characteristic}: 18000 1/min }}, utilisation: 2, verdict: fail }}\n"
    );
    rule::load_texts(vec![("rules/test-rule.yaml".into(), text)]).unwrap_or_else(|faults| panic!("{faults}"))
}

#[test]
fn a_rule_that_a_family_could_never_judge_is_refused_with_its_name() {
    let checked = |families: &str| {
        let mut inputs = small::inputs(HORIZONTAL);
        inputs.rulebook = rule_on("screw-speed", families);
        pipeline::check(inputs)
    };
    let faults = checked("").expect_err("racks have no screw");
    let said: Vec<String> = faults.iter().map(|fault| format!("{}: {}", fault.file, fault.message)).collect();
    assert_eq!(said.len(), 1, "one fault names all of them: {said:?}");
    let place = faults.iter().map(|fault| (fault.line, fault.path.as_str())).next();
    assert_eq!(place, Some((3, "limit.characteristic")));
    for family in ["straight-rack", "helical-rack", "twin-pinion"] {
        let named = |line: &String| ["test-rule", "screw-speed", family].iter().all(|word| line.contains(word));
        assert!(said.iter().any(named), "{family}: {said:?}");
    }
    assert!(checked("applies-to: [ball-screw]\n").is_ok());
    // where only screws are asked for, racks need not be able to judge it
    let mut inputs = small::inputs(&HORIZONTAL.replace("    duty:", "    families: [ball-screw]\n    duty:"));
    inputs.rulebook = rule_on("screw-speed", "");
    assert!(pipeline::check(inputs).is_ok());
}

#[test]
fn every_characteristic_is_entered_by_some_family() {
    struct Slots<'s>(&'s Demand<'s>);
    impl WithFamily for Slots<'_> {
        type Output = Vec<usize>;
        fn with<F: Family>(self, family: &F) -> Vec<usize> {
            let last = family.stages().len() - 1;
            let mut slots = Vec::new();
            // with the first feedback and table and the last: the encoder of the motor, and a scale with a table
            let stages = family.stages();
            for [feedback, table] in [[0, 0], [stages[last - 1] - 1, stages[last] - 1]] {
                let mut path = [0; MOST_STAGES];
                (path[last - 1], path[last]) = (feedback as u16, table as u16);
                let entered = Entered::of(family, self.0, &path);
                slots.extend((0..ch::SLOTS).filter(|&slot| entered.stage[slot].is_some()));
            }
            slots
        }
    }
    let mut entered = BTreeSet::new();
    let asked = HORIZONTAL.replace("    ripple:", "    section-accuracy: 0.1 mm\n    ripple:");
    let wide = HORIZONTAL.replace("    speed:", "    guide-spacing: 1 m\n    guide-base: 0.8 m\n    speed:");
    let two = HORIZONTAL.replace("    speed:", "    drives: 2\n    drive-spacing: 2 m\n    speed:");
    let tilted = HORIZONTAL.replace(
        "    speed:",
        "    guide-base: 0.8 m\n    guide-tilt: 9 arcsec\n    guide-waviness: { height: 5 µm, length: 2 m }\n    tool-to-drive: 0.3 m\n    speed:",
    );
    let round = HORIZONTAL.replace(
        "    speed:",
        "    contour: { speed: 3 m/min, radius: 80 mm, error: 1 mm }\n    settling: { time: 9 s, window: 5 µm }\n    speed:",
    );
    let lifted = VERTICAL.replace("    speed:", "    drives: 2\n    drive-spacing: 2 m\n    speed:");
    for text in
        [asked.as_str(), VERTICAL, wide.as_str(), two.as_str(), lifted.as_str(), tilted.as_str(), round.as_str()]
    {
        let inputs = small::inputs(&format!("limits: {{ lead-time: 20 weeks }}{text}"));
        let demand = small::demand(&inputs, 0);
        for id in FAMILIES {
            let slots = with_family(id, &demand, &inputs.catalog, Slots(&demand)).expect("a family");
            entered.extend(slots.into_iter().map(|slot| ch::about(slot).0.id));
        }
    }
    let never: Vec<&str> = ch::all().map(|about| about.id).filter(|id| !entered.contains(id)).collect();
    assert!(never.is_empty(), "{never:?}");
}

#[test]
fn a_waiver_of_a_rule_that_does_not_exist_is_refused_with_the_nearest_name() {
    let text = format!("{VERTICAL}waivers: [ {{ rule: holding-break, reason: a trial, by: the owner }} ]\n");
    let inputs = Inputs { brief: small::brief(&text), catalog: small::catalog(), rulebook: small::rules() };
    let faults = pipeline::check(inputs).expect_err("there is no such rule");
    let fault = faults.iter().next().expect("a fault");
    assert_eq!((faults.len(), fault.file.as_str(), fault.path.as_str()), (1, "test.yaml", "waivers[0].rule"));
    assert_eq!(fault.message, "there is no rule `holding-break` to waive");
    assert_eq!(fault.help.as_deref(), Some("did you mean `holding-brake`?"));
}

#[test]
fn a_waiver_by_a_name_like_no_rule_is_told_where_the_names_stand() {
    let text = format!("{VERTICAL}waivers: [ {{ rule: xyzzyxyzzyxyzzy, reason: a trial, by: the owner }} ]\n");
    let inputs = Inputs { brief: small::brief(&text), catalog: small::catalog(), rulebook: small::rules() };
    let faults = pipeline::check(inputs).expect_err("there is no such rule");
    let help = faults.iter().next().and_then(|fault| fault.help.as_deref()).expect("help");
    assert!(help.contains("axiswright explain"), "{help}");
}
