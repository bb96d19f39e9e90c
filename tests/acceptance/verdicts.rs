//! Verdicts: guard band, what is not required, what was not measured, one run, long axes.
//!
//! Source: ISO 14253-1 (from memory): a limit is proved to be kept where value and expanded uncertainty stay within it.

use crate::{brief, check, record, result, table};
use axiswright::formula::test_plan;
use axiswright::units::{Length, Measure};

const AT: [f64; 6] = [10.0, 130.0, 250.0, 370.0, 490.0, 590.0];

/// E 20 and B 4 µm with runs that are all alike, so A is 20 and R is 4 µm.
fn text() -> String {
    table(&AT, 5, |target, sign, _| 16.0 * (target - 10.0) / 580.0 + 2.0 * sign)
}

fn verdict(requirement: &str, limit: &str, uncertainty: Option<f64>) -> (String, Option<String>) {
    let asked = brief("600 mm", &format!("    {requirement}: {limit}\n"));
    let result = result(&asked, &record(&[]), &text(), uncertainty);
    let check = check(&result, requirement);
    (check.verdict.clone(), check.shown.clone())
}

fn is(found: (String, Option<String>), verdict: &str, shown: &str) {
    assert_eq!((found.0.as_str(), found.1.as_deref()), (verdict, Some(shown)));
}

#[test]
fn the_uncertainty_guards_the_limit() {
    is(verdict("accuracy", "20 µm", None), "pass", "met");
    is(verdict("accuracy", "19.99 µm", None), "fail", "missed");
    is(verdict("accuracy", "22 µm", Some(2.0)), "pass", "met");
    is(verdict("accuracy", "21.99 µm", Some(2.0)), "fail", "within-uncertainty");
    is(verdict("accuracy", "18.01 µm", Some(2.0)), "fail", "within-uncertainty");
    is(verdict("accuracy", "17.99 µm", Some(2.0)), "fail", "missed");
}

#[test]
fn each_requirement_is_held_against_its_own_quantity() {
    is(verdict("repeatability", "4 µm", None), "pass", "met");
    is(verdict("repeatability", "3.9 µm", None), "fail", "missed");
    is(verdict("reversal", "4 µm", None), "pass", "met");
    is(verdict("reversal", "3.9 µm", None), "fail", "missed");
}

#[test]
fn what_is_not_required_is_shown_without_verdict() {
    let result = result(&brief("600 mm", "    reversal: 8 µm\n"), &record(&[]), &text(), None);
    assert_eq!(result.outcome, "pass");
    let accuracy = check(&result, "accuracy");
    assert_eq!((accuracy.verdict.as_str(), accuracy.limit), ("not-required", None));
    assert!((accuracy.value.expect("shown") - 20.0).abs() < 1e-9);
    let nothing = crate::result(&brief("600 mm", ""), &record(&[]), &text(), None);
    assert_eq!(nothing.outcome, "nothing-required");
}

#[test]
fn one_run_leaves_repeatability_open_and_accuracy_of_a_short_axis_too() {
    let one = table(&AT, 1, |target, sign, _| target / 100.0 + sign);
    let asked = brief("600 mm", "    accuracy: 0.1 mm\n    repeatability: 0.1 mm\n    reversal: 0.1 mm\n");
    let result = result(&asked, &record(&[]), &one, None);
    let verdicts = ["accuracy", "repeatability", "reversal"].map(|key| check(&result, key).verdict.clone());
    assert_eq!(verdicts, ["not-evaluated", "not-evaluated", "pass"]);
    assert_eq!(result.outcome, "not-evaluated");
    assert!(check(&result, "repeatability").remark.as_ref().expect("why").contains("one run"));
}

#[test]
fn a_travel_that_was_measured_in_part_can_miss_a_limit_and_not_keep_one() {
    let part = table(&AT[..4], 5, |target, sign, _| 16.0 * (target - 10.0) / 580.0 + 2.0 * sign);
    let asked = |limit: &str| brief("600 mm", &format!("    accuracy: {limit}\n"));
    let open = result(&asked("1 mm"), &record(&[]), &part, None);
    assert_eq!(check(&open, "accuracy").verdict, "not-evaluated");
    assert!(open.remarks.iter().any(|remark| remark.id == "last-end-left-out"));
    let missed = result(&asked("5 µm"), &record(&[]), &part, None);
    assert_eq!(check(&missed, "accuracy").verdict, "fail");
}

#[test]
fn a_long_axis_is_judged_by_e_over_all_and_by_a_and_r_on_its_worst_two_metres() {
    // a bump of 30 µm between 4 and 5 m; elsewhere nothing but a reversal of 2 µm
    let at: Vec<f64> = (0..25).map(|index| 250.0 * f64::from(index)).collect();
    let bump = |target: f64| if (4000.0..=5000.0).contains(&target) { 30.0 } else { 0.0 };
    let text = table(&at, 5, |target, sign, _| bump(target) + sign);
    let asked = brief("6 m", "    accuracy: 40 µm\n    section-accuracy: 31 µm\n    repeatability: 2 µm\n");
    let result = result(&asked, &record(&[]), &text, None);
    let accuracy = check(&result, "accuracy");
    assert_eq!((accuracy.quantity.as_str(), accuracy.verdict.as_str()), ("E", "pass"));
    assert!((accuracy.value.expect("E") - 32.0).abs() < 1e-9);
    let section = check(&result, "section-accuracy");
    assert_eq!((section.quantity.as_str(), section.verdict.as_str()), ("A", "fail"));
    // the first stretch of 2 m that reaches the bump: eight spacings that end at 4 m
    assert!(section.stretch.starts_with("2000 mm to 4000 mm, the worst of 17"), "{}", section.stretch);
    assert_eq!(check(&result, "repeatability").verdict, "pass");
    assert!(result.remarks.iter().any(|remark| remark.id == "long-axis"));
    assert!(result.remarks.iter().any(|remark| remark.id == "thin-section"), "9 targets on 2 m");
}

#[test]
fn one_section_of_a_long_axis_gives_a_and_r_and_leaves_e_open() {
    let at: Vec<f64> = (0..11).map(|index| 1000.0 + 195.0 * f64::from(index)).collect();
    let text = table(&at, 5, |_, sign, _| sign);
    let asked = brief("6 m", "    accuracy: 40 µm\n    section-accuracy: 30 µm\n    repeatability: 9 µm\n");
    let result = result(&asked, &record(&[]), &text, None);
    let verdicts = ["accuracy", "section-accuracy", "repeatability"].map(|key| check(&result, key).verdict.clone());
    assert_eq!(verdicts, ["not-evaluated", "pass", "pass"]);
    assert!(check(&result, "section-accuracy").remark.as_ref().expect("a remark").contains("agreement"));
}

#[test]
fn departures_from_the_plan_are_told_and_refused_nowhere() {
    let ids = |text: &str, travel: &str| -> Vec<String> {
        let result = result(&brief(travel, ""), &record(&[]), text, Some(1.0));
        result.remarks.into_iter().map(|remark| remark.id).collect()
    };
    let sound = [21.0, 133.0, 250.0, 377.0, 490.0, 583.0];
    assert_eq!(ids(&table(&sound, 5, |_, sign, _| sign), "600 mm"), Vec::<String>::new());
    assert_eq!(ids(&table(&[20.0, 300.0, 570.0], 3, |_, sign, _| sign), "600 mm"), ["few-targets", "few-runs"]);
    assert_eq!(ids(&table(&sound, 1, |_, sign, _| sign), "600 mm"), ["one-run"]);
    assert_eq!(ids(&table(&sound, 5, |_, sign, _| 2500.0 * sign), "600 mm"), ["doubtful-deviation"]);
    let gap = [21.0, 33.0, 50.0, 77.0, 490.0, 583.0];
    assert_eq!(ids(&table(&gap, 5, |_, sign, _| sign), "600 mm"), ["wide-gap"]);
    let wide: Vec<f64> = (0..9).map(|index| 100.0 + 470.0 * f64::from(index) + f64::from(index % 2) * 30.0).collect();
    let found = ids(&table(&wide, 1, |_, sign, _| sign), "4 m");
    assert_eq!(found, ["long-axis", "wide-spacing", "one-run"]);
}

/// The targets that a report asks for keep the plan that a measurement is held against.
#[test]
fn the_planned_targets_leave_nothing_to_remark() {
    for (travel, turn) in [(0.7, 0.02), (1.9, 0.01), (6.0, 0.1333)] {
        let length = Length::of_si(travel);
        let at: Vec<f64> =
            test_plan::targets(Length::of_si(0.0), length, test_plan::spacing(length), Length::of_si(turn))
                .into_iter()
                .map(|metres| (metres * 1e5).round() / 1e2)
                .collect();
        let runs = if travel > 2.0 { 1 } else { 5 };
        let text = table(&at, runs, |_, sign, run| sign + 0.2 * run as f64);
        let result = result(&brief(&format!("{travel} m"), ""), &record(&[]), &text, Some(1e-6));
        let told: Vec<&str> = result.remarks.iter().map(|remark| remark.id.as_str()).collect();
        let plan =
            ["few-targets", "wide-spacing", "wide-gap", "even-targets", "first-end-left-out", "last-end-left-out"];
        assert!(plan.iter().all(|id| !told.contains(id)), "{travel} m: {told:?}");
    }
}
