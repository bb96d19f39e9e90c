//! Next-best machines, weights and what to relax, as a reader finds them.

use crate::reading::read;
use crate::record;
use axiswright::record::*;
use axiswright::report::markdown;
use axiswright::units::UnitSystem;

fn drive(family: &str, teeth: f64) -> DriveName {
    let teeth = ParameterValue::Number { value: teeth, unit: "1".into() };
    DriveName {
        family: family.into(),
        parameters: vec![Parameter { name: "teeth".into(), value: teeth }],
        purchase: 12_345.0,
    }
}

fn change(requirement: &str, unit: &str, now: f64, to: f64) -> RelaxedRequirement {
    RelaxedRequirement { requirement: requirement.into(), unit: unit.into(), now: Some(now), to: Some(to) }
}

#[test]
fn the_closest_weight_and_the_best_of_another_kind_stand_on_page_one() {
    let mut record = record();
    let share = |from: f64, to: f64, above: Option<DriveName>| WeightRange {
        weight: "accuracy".into(),
        now: 0.2,
        from,
        to,
        rival_below: Some(drive("ball-screw", 20.0)),
        rival_above: above,
    };
    record.axes[0].weights = vec![share(0.05, 0.3, Some(drive("twin-pinion", 15.0))), share(0.1987, 1.0, None)];
    let error = Amount { value: Some(0.0123), unit: "mm".into() };
    record.machine.next_best = vec![NextMachine {
        kind: "other-family".into(),
        status: "optimal".into(),
        drives: vec![DriveOfMachine { axis: "long".into(), drive: drive("twin-pinion", 15.0) }],
        objective: 3.0,
        purchase: 55_000.0,
        whole_life_cost: 66_000.0,
        tool_point_error: error,
        differs_in: vec![Difference { axis: "long".into(), family: true, sizes: vec![], parts: vec![] }],
    }];
    let reading = read(&markdown(&record, UnitSystem::Metric));
    let told = reading.items_under("What would change this");
    // the end that is closest of all: 0.1987 against 0.2
    let weight = told.iter().find(|item| item.contains("weight")).expect("the weight");
    assert!(
        weight.contains("below 19.9 %") && weight.contains("now 20 %") && weight.contains("ball screw"),
        "{weight}"
    );
    let other = told.iter().find(|item| item.contains("another kind")).expect("the machine");
    assert!(other.contains("rack with two pinions on axis long") && other.contains("0.0123 mm"), "{other}");
    let machines = reading.tables_under("Machines that come next");
    assert_eq!(machines[0].len(), 2);
    assert!(machines[0][1].iter().any(|cell| cell == "proven"));
    let weights = reading.tables_under("Sensitivity to the weights");
    assert_eq!(weights[0].len(), 3);
    assert!(weights[0].iter().all(|row| row.len() == weights[0][0].len()));
}

#[test]
fn page_one_says_what_cannot_be_kept_together_and_what_would_help() {
    let mut record = record();
    record.outcome = Outcome::NothingAdmissible;
    let axis = &mut record.axes[0];
    axis.outcome = Outcome::NothingAdmissible;
    axis.chosen = None;
    axis.conflict = Some(vec!["travel".into(), "speed".into()]);
    axis.relaxations = vec![RelaxationRecord {
        changes: vec![change("speed", "m/min", 60.0, 45.0)],
        factor: Some(60.0 / 45.0),
        drive: drive("helical-rack", 20.0),
    }];
    let text = markdown(&record, UnitSystem::Metric);
    let reading = read(&text);
    let told = reading.items_under("What stands in the way");
    let way = told.iter().find(|item| item.starts_with("Speed 45 m/min instead of 60 m/min")).expect("the way");
    assert!(way.contains("helical rack") && way.contains("345 EUR"), "{way}");
    assert!(text.contains("keeps these together"), "the conflict");
    assert!(!text.contains("No requirement relaxed alone helps"));
    let table = reading.tables_under("What to relax");
    assert_eq!(table[0][1][2], "1.333");

    // where it was not looked for nothing is said of it
    record.axes[0].conflict = None;
    record.axes[0].relaxations.clear();
    let text = markdown(&record, UnitSystem::Metric);
    assert!(!text.contains("keeps these together") && !text.contains("stands in the way: even"));
}

#[test]
fn a_limit_of_the_machine_is_told_with_the_least_that_would_do_rounded_up() {
    let mut record = record();
    record.outcome = Outcome::MachineLimit;
    for axis in &mut record.axes {
        axis.outcome = Outcome::MachineLimit;
        axis.chosen = None;
    }
    record.machine.limits = vec![MachineLimit {
        limit: "purchase".into(),
        reached: Some(20_000.0),
        allowed: 9000.0,
        unit: String::new(),
        verdict: "fail".into(),
    }];
    record.machine.conflict = vec!["purchase".into()];
    record.machine.relaxations = vec![MachineRelaxation {
        limits: vec![RaisedLimit { limit: "purchase".into(), unit: String::new(), allowed: 9000.0, least: 9876.2 }],
        status: "optimal".into(),
        drives: vec![DriveOfMachine { axis: "long".into(), drive: drive("helical-rack", 20.0) }],
    }];
    let reading = read(&markdown(&record, UnitSystem::Metric));
    let told = reading.items_under("Which limit of the machine stands in the way");
    assert!(told.iter().any(|item| item.contains("price to buy")), "{told:?}");
    let way = told.iter().find(|item| item.contains("would do")).expect("the way");
    assert!(way.contains("9877 EUR instead of 9000 EUR") && way.contains("long: helical rack"), "{way}");
}
