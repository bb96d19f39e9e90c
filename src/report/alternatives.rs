//! The machines that come next and what the weights do, in words: sentences for the customer, tables for the reviewer.

use super::figure;
use super::view::View;
use super::words;
use crate::record::*;
use serde::Serialize;

/// What the reviewer's template needs of it.
#[derive(Serialize)]
pub struct Alternatives {
    machines: Vec<Vec<String>>,
    weights: Vec<Vec<String>>,
    families: Vec<Vec<String>>,
    by_machine: Vec<String>,
}

/// A share in percent.
fn share(value: f64) -> String {
    format!("{} %", figure::figure(value * 100.0, 3))
}

/// A drive in one phrase with its main sizes.
pub fn drive(view: &View, drive: &DriveName) -> String {
    let (family, sizes) = (words::family(&drive.family), view.sizes_of(&drive.family, &drive.parameters));
    if sizes.is_empty() { family } else { format!("{family}, {sizes}") }
}

/// An amount of the objective: money where it is the cost alone.
fn merit(view: &View, value: f64) -> String {
    if view.weighs_more_than_cost() { figure::figure(value, 4) } else { view.money(Some(value)) }
}

/// What would change the answer, for the customer.
pub fn sentences(view: &View) -> Vec<String> {
    let machine = &view.record.machine;
    let mut sentences: Vec<String> = view.record.axes.iter().filter_map(|axis| closest_weight(view, axis)).collect();
    if let Some(next) = machine.next_best.iter().find(|next| next.kind == "other-family") {
        let drives = next.differs_in.iter().filter(|difference| difference.family).filter_map(|difference| {
            let found = next.drives.iter().find(|drive| drive.axis == difference.axis)?;
            Some(format!("a {} on axis {}", words::family(&found.drive.family), difference.axis))
        });
        let drives: Vec<String> = drives.collect();
        let error = &next.tool_point_error;
        sentences.push(format!(
            "The best machine with another kind of drive has {}: {} to buy ({}), {} over its life ({}), error at the \
             tool {}.",
            words::list(&drives),
            view.money(Some(next.purchase)),
            figure::change(Some(next.purchase), machine.purchase),
            view.money(Some(next.whole_life_cost)),
            figure::change(Some(next.whole_life_cost), machine.whole_life_cost),
            view.quantity(error.value, &error.unit),
        ));
    }
    sentences
}

/// The weight of an axis whose end is the closest.
fn closest_weight(view: &View, axis: &AxisRecord) -> Option<String> {
    let chosen = axis.chosen.as_ref()?;
    let ends = axis.weights.iter().flat_map(|range| {
        let below = range.rival_below.as_ref().map(|rival| (range, range.from, rival));
        let above = range.rival_above.as_ref().map(|rival| (range, range.to, rival));
        [below, above]
    });
    let distance = |range: &WeightRange, end: f64| (end - range.now).abs();
    let (range, end, rival) = ends.flatten().min_by(|a, b| distance(a.0, a.1).total_cmp(&distance(b.0, b.1)))?;
    let side = if end < range.now { "below" } else { "above" };
    // as many digits as keep the two apart
    let digits =
        (3..9).find(|&digits| figure::figure(end * 100.0, digits) != figure::figure(range.now * 100.0, digits));
    let percent = |value: f64| format!("{} %", figure::figure(value * 100.0, digits.unwrap_or(9)));
    let rival = if rival.family == chosen.family {
        // of the same kind only what differs
        let differs = rival.parameters.iter().filter(|size| !chosen.parameters.contains(size));
        let sizes = view.sizes_of(&rival.family, &differs.cloned().collect::<Vec<_>>());
        let family = words::family(&rival.family);
        if sizes.is_empty() {
            format!("a {family} of other parts")
        } else {
            format!("a {family} with other sizes ({sizes})")
        }
    } else {
        format!("a {} ({})", words::family(&rival.family), view.sizes_of(&rival.family, &rival.parameters))
    };
    Some(format!(
        "Axis {}: the weight that decides closest is that of {}. With a share {side} {} of all weights (now {}) the \
         axis would get {rival}.",
        axis.name,
        words::spaced(&range.weight),
        percent(end),
        percent(range.now),
    ))
}

/// Collects what the reviewer reads.
pub fn collect(view: &View) -> Alternatives {
    let axes = &view.record.axes;
    Alternatives {
        machines: view.record.machine.next_best.iter().map(|next| machine(view, next)).collect(),
        weights: axes.iter().flat_map(|axis| axis.weights.iter().map(|range| range_line(view, axis, range))).collect(),
        families: axes
            .iter()
            .flat_map(|axis| axis.other_families.iter().map(|other| family_line(view, axis, other)))
            .collect(),
        by_machine: axes
            .iter()
            .filter_map(|axis| {
                let better = axis.better_alone.as_ref()?;
                Some(format!(
                    "Axis {}: taken alone another drive would be better ({}). Limits of the machine, or the axis that \
                     carries this one, decided; weights of the axis alone say nothing.",
                    axis.name,
                    drive(view, better)
                ))
            })
            .collect(),
    }
}

fn machine(view: &View, next: &NextMachine) -> Vec<String> {
    let kind = match next.kind.as_str() {
        "next-best" => "next best",
        "other-family" => "other kind of drive",
        _ => "unknown",
    };
    let differs = next.differs_in.iter().map(|difference| {
        let found = next.drives.iter().find(|drive| drive.axis == difference.axis);
        let words = match (found, difference.family) {
            (Some(found), true) => drive(view, &found.drive),
            (Some(found), false) => within_family(view, difference, &found.drive),
            (None, _) => figure::NOT_KNOWN.into(),
        };
        format!("{}: {words}", difference.axis)
    });
    let error = &next.tool_point_error;
    vec![
        kind.into(),
        differs.collect::<Vec<_>>().join("; "),
        merit(view, next.objective),
        view.money(Some(next.purchase)),
        view.money(Some(next.whole_life_cost)),
        view.quantity(error.value, &error.unit),
        if next.status == "optimal" { "proven".into() } else { "not proven".into() },
    ]
}

/// What differs within a family: the sizes, else the parts.
fn within_family(view: &View, difference: &Difference, drive: &DriveName) -> String {
    let sizes: Vec<Parameter> =
        drive.parameters.iter().filter(|size| difference.sizes.contains(&size.name)).cloned().collect();
    let words = view.sizes_of(&drive.family, &sizes);
    if !words.is_empty() {
        return words;
    }
    let parts: Vec<String> = difference.parts.iter().map(|role| words::role(role)).collect();
    if parts.is_empty() {
        "another choice of the same parts".into()
    } else {
        format!("another {}", words::list(&parts))
    }
}

fn range_line(view: &View, axis: &AxisRecord, range: &WeightRange) -> Vec<String> {
    let rival = |rival: &Option<DriveName>| rival.as_ref().map_or_else(|| "none".into(), |rival| drive(view, rival));
    vec![
        axis.name.clone(),
        words::spaced(&range.weight),
        share(range.now),
        share(range.from),
        share(range.to),
        rival(&range.rival_below),
        rival(&range.rival_above),
    ]
}

fn family_line(view: &View, axis: &AxisRecord, other: &OtherFamily) -> Vec<String> {
    let shares =
        other.weights.iter().map(|weight| format!("{} {}", words::spaced(&weight.weight), share(weight.share)));
    let shares = shares.collect::<Vec<_>>().join(", ");
    vec![
        axis.name.clone(),
        drive(view, &other.drive),
        merit(view, other.distance),
        other.change.map_or_else(|| "no weights do".into(), share),
        if shares.is_empty() { "none".into() } else { shares },
    ]
}
