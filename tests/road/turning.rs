//! Turning points against the whole recommendation on both sides of each: no other source knows the answer.

use crate::small::{self, HORIZONTAL, MACHINE, VERTICAL};
use axiswright::inquiry::Requirement;
use axiswright::pipeline::{Inputs, recommend, recommend_and_ask};
use axiswright::record::{AxisRecord, CandidateRecord, DecisionRecord, Parameter, TurningPoint};

/// Family and the two main sizes of a drive; "none" without one.
fn label(drive: Option<&CandidateRecord>) -> (String, Vec<Parameter>) {
    drive.map_or(("none".into(), Vec::new()), |drive| {
        (drive.family.clone(), drive.parameters.iter().take(2).cloned().collect())
    })
}

/// The drive that the whole recommendation gives an axis where a requirement has this value, as it is told.
fn drive_at(inputs: &Inputs, axis: usize, point: &TurningPoint, told: f64) -> (String, Vec<Parameter>) {
    let requirement = Requirement::named(&point.requirement).expect("a requirement");
    let si = requirement.unit().map_or(1.0, |(_, unit)| unit.si);
    let mut turned = inputs.clone();
    turned.brief = requirement.with(&inputs.brief, axis, told * si);
    label(recommend(&turned, false).axes[axis].chosen.as_ref())
}

/// Checks every turning point of an axis; gives how many there are.
fn check(inputs: &Inputs, record: &DecisionRecord, axis: usize) -> usize {
    let told: &AxisRecord = &record.axes[axis];
    let scope = told.turning_scope.as_ref().expect("turning points were looked for");
    assert!(scope.settled_alone, "{}: the axis is settled alone", told.name);
    for point in told.turning_points.iter().filter(|point| point.requirement != "purchase") {
        let what = format!("{} {} at {} {}", told.name, point.requirement, point.turns_at, point.unit);
        assert!((point.holds_at - point.turns_at).abs() <= scope.resolution * point.now * 1.001, "{what}: narrow");
        let side = |value: f64| (value - point.now).signum();
        assert_eq!(side(point.turns_at), side(0.5 * (point.turns_at + point.holds_at)), "{what}: on one side");
        assert_eq!(
            drive_at(inputs, axis, point, point.holds_at),
            (point.from.clone(), point.from_sizes.clone()),
            "{what}: before"
        );
        assert_eq!(
            drive_at(inputs, axis, point, point.turns_at),
            (point.to.clone(), point.to_sizes.clone()),
            "{what}: beyond"
        );
        let family = point.from != point.to;
        assert_eq!(point.changes, if family { "family" } else { "main-size" }, "{what}");
        assert!(family || point.from_sizes != point.to_sizes, "{what}: something changes");
    }
    told.turning_points.len()
}

#[test]
fn on_both_sides_of_every_turning_point_the_whole_recommendation_agrees() {
    let mut found = 0;
    for text in [HORIZONTAL, VERTICAL] {
        let inputs = small::inputs(text);
        let record = recommend_and_ask(&inputs, false);
        found += check(&inputs, &record, 0);
    }
    assert!(found >= 6, "{found} turning points");
}

/// A machine that may cost a little less than its main sizes can be had for gets what is told.
#[test]
fn a_purchase_limit_just_below_the_turning_point_gives_what_is_told() {
    let inputs = small::inputs(&format!("limits: {{ purchase: 100000 }}{HORIZONTAL}"));
    let record = recommend_and_ask(&inputs, false);
    let mut points = record.axes[0].turning_points.iter().filter(|point| point.requirement == "purchase");
    let point = points.next_back().expect("a turning point of the purchase");
    assert!(point.turns_at < point.holds_at && point.holds_at <= record.machine.purchase.expect("a price") + 1e-6);
    let sides = [(point.holds_at, (&point.from, &point.from_sizes)), (point.turns_at, (&point.to, &point.to_sizes))];
    for (limit, (family, sizes)) in sides {
        assert_eq!(drive_at(&inputs, 0, point, limit), (family.clone(), sizes.clone()), "a limit of {limit}");
    }
    assert!((&point.from, &point.from_sizes) != (&point.to, &point.to_sizes));
}

/// The answer itself is the same whether or not it is asked what would change it.
#[test]
fn asking_changes_nothing_else() {
    let inputs = small::inputs(HORIZONTAL);
    let (plain, mut asked) = (recommend(&inputs, false), recommend_and_ask(&inputs, false));
    assert!(asked.axes.iter().any(|axis| !axis.turning_points.is_empty()));
    for (axis, plain) in asked.axes.iter_mut().zip(&plain.axes) {
        assert_eq!(axis.chosen, plain.chosen);
        assert_eq!(axis.families, plain.families);
    }
    assert_eq!(asked.machine.solver, plain.machine.solver);
    // and again, to the byte
    assert_eq!(asked, recommend_and_ask(&inputs, false));
}

/// An axis that gives way to a limit of the machine tells no turning points.
#[test]
fn an_axis_that_gave_way_to_the_machine_says_so() {
    let record = recommend_and_ask(&small::inputs(MACHINE), false);
    let scopes: Vec<_> = record.axes.iter().map(|axis| axis.turning_scope.as_ref().expect("looked for")).collect();
    for (axis, scope) in record.axes.iter().zip(scopes) {
        assert!(scope.settled_alone || axis.turning_points.is_empty(), "{}", axis.name);
    }
}
