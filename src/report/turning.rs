//! What would change the answer, in words: sentences for the customer, a table for the reviewer.

use super::figure;
use super::view::View;
use super::words;
use crate::record::{AxisRecord, Parameter, TurningPoint};
use serde::Serialize;

/// One row of the table.
#[derive(Serialize)]
pub struct Row {
    axis: String,
    requirement: String,
    now: String,
    holds: String,
    turns: String,
    from: String,
    to: String,
    rule: String,
}

/// "ball screw, 40 mm diameter, 20 mm lead".
fn drive(view: &View, family: &str, sizes: &[Parameter]) -> String {
    let sizes = view.sizes_of(family, sizes);
    if sizes.is_empty() { words::family(family) } else { format!("{}, {sizes}", words::family(family)) }
}

fn quantities(view: &View, point: &TurningPoint) -> (String, String, String) {
    let shown = |value: f64| match (point.requirement.as_str(), point.unit.as_str()) {
        ("purchase", _) => view.money(Some(value)),
        (_, "years") => format!("{} years", figure::figure(value, 4)),
        (_, unit) => figure::quantity(Some(value), unit, view.units, 4),
    };
    (shown(point.now), shown(point.holds_at), shown(point.turns_at))
}

fn requirement(point: &TurningPoint) -> String {
    match point.requirement.as_str() {
        "purchase" => "limit of the price to buy the machine".into(),
        "accuracy" => "accuracy over the full travel".into(),
        "section-accuracy" => "accuracy on any 2 m".into(),
        "reversal" => "reversal value".into(),
        other => words::spaced(other),
    }
}

fn why(view: &View, point: &TurningPoint) -> String {
    match (point.rule.as_str(), point.rule.strip_prefix("limits.")) {
        _ if point.requirement == "purchase" => "the best that costs less".into(),
        ("cost", _) => "the present one would do too, the other is then better by price and preferences".into(),
        (_, Some(limit)) => format!("what no longer holds: the limit of the machine, {}", words::spaced(limit)),
        (rule, None) => format!("what no longer holds: {}", view.rule_title(rule)),
    }
}

/// One sentence for each requirement and side on which the kind of drive changes; where none does, the nearest changes of size.
pub fn told(view: &View, axis: &AxisRecord) -> Vec<String> {
    let Some(scope) = &axis.turning_scope else { return Vec::new() };
    if !scope.settled_alone {
        return vec![format!(
            "Axis {}: its drive was chosen for the sake of the whole machine, so that no single requirement of the axis turns it.",
            axis.name
        )];
    }
    let family: Vec<&TurningPoint> = axis.turning_points.iter().filter(|point| point.changes == "family").collect();
    let chosen = if family.is_empty() { axis.turning_points.iter().collect() } else { family };
    let sentence = |point: &&TurningPoint| {
        let (now, _, turns) = quantities(view, point);
        let side = if point.turns_at < point.now { "below" } else { "above" };
        let then = match (point.to.as_str(), point.rule.strip_prefix("limits.")) {
            ("none", Some(limit)) => {
                format!(
                    "no drive fits into what the other axes leave of the limit of the machine, {}",
                    words::spaced(limit)
                )
            }
            ("none", None) if point.requirement == "purchase" => {
                "no drive in the catalogue for this axis costs less".into()
            }
            ("none", None) => format!("nothing in the catalogue is admissible; {}", why(view, point)),
            (to, _) => format!("{}; {}", drive(view, to, &point.to_sizes), why(view, point)),
        };
        format!("Axis {}, {} {side} {turns} (now {now}): {then}.", axis.name, requirement(point))
    };
    let mut told: Vec<String> = chosen.iter().map(sentence).collect();
    told.extend(sooner(view, axis, &chosen));
    let farthest = scope.anchors.last().copied().unwrap_or(1.0);
    if told.is_empty() {
        told.push(format!(
            "Axis {}: no single requirement, made up to {} times as large or as small, changes its drive.",
            axis.name,
            figure::figure(farthest, 3)
        ));
    }
    told
}

/// What changes the size of the drive before its kind changes, in one sentence.
fn sooner(view: &View, axis: &AxisRecord, told: &[&TurningPoint]) -> Option<String> {
    let side = |point: &TurningPoint| point.turns_at < point.now;
    let of = |point: &TurningPoint| {
        let (_, _, turns) = quantities(view, point);
        format!("{} {} {turns}", requirement(point), if side(point) { "below" } else { "above" })
    };
    let nearer = |point: &&TurningPoint| {
        let further = |other: &&&TurningPoint| other.requirement == point.requirement && side(other) == side(point);
        let same = told.iter().any(|other| std::ptr::eq(*other, *point));
        !same
            && told
                .iter()
                .filter(further)
                .all(|other| (other.turns_at - point.now).abs() > (point.turns_at - point.now).abs())
    };
    let sizes: Vec<String> = axis.turning_points.iter().filter(nearer).map(of).collect();
    (!sizes.is_empty() && !told.is_empty()).then(|| {
        format!(
            "Axis {}, sooner another size of the same kind: {} (part three tells which).",
            axis.name,
            words::list(&sizes)
        )
    })
}

/// Every turning point of every axis.
pub fn rows(view: &View) -> Vec<Row> {
    let of_axis = |axis: &'_ AxisRecord| -> Vec<Row> {
        let row = |point: &TurningPoint| {
            let (now, holds, turns) = quantities(view, point);
            Row {
                axis: axis.name.clone(),
                requirement: requirement(point),
                now,
                holds,
                turns,
                from: drive(view, &point.from, &point.from_sizes),
                to: if point.to == "none" { "none".into() } else { drive(view, &point.to, &point.to_sizes) },
                rule: match (point.rule.as_str(), point.rule.strip_prefix("limits.")) {
                    ("cost", _) => "merit".into(),
                    (_, Some(limit)) => format!("limit of the machine: {}", words::spaced(limit)),
                    (rule, None) => view.rule_title(rule),
                },
            }
        };
        axis.turning_points.iter().map(row).collect()
    };
    view.record.axes.iter().flat_map(of_axis).collect()
}

/// How turning points were looked for, in a sentence.
pub fn scope(view: &View) -> Option<String> {
    let scope = view.record.axes.iter().find_map(|axis| axis.turning_scope.as_ref())?;
    let figures = |anchors: &[f64]| -> Vec<String> { anchors.iter().map(|&times| figure::figure(times, 3)).collect() };
    let (anchors, far) = (figures(&scope.anchors), figures(&scope.far_anchors));
    Some(format!(
        "One requirement of one axis is turned at a time; the other axes, and what the axis carries, stay as they are. The axis is \
         searched in full at {} times the value and at as small a part of it (travel and speed at {}), where the present drive is no longer admissible, and on both sides of each change, which is narrowed to \
         {} % of the value; between those, the best is taken of all drives that came up. A change and a change back between two steps \
         is missed.",
        words::list(&anchors),
        words::list(&far),
        figure::figure(scope.resolution * 100.0, 3)
    ))
}
