//! What stands in the way and what to relax, in words: sentences for page one, tables for the reviewer.

use super::alternatives::drive;
use super::figure;
use super::view::View;
use super::words;
use crate::record::*;
use serde::Serialize;

/// How many ways to relax stand on page one; part three has them all.
const TOLD: usize = 3;

/// What the reviewer's template needs of it.
#[derive(Serialize)]
pub struct Obstacles {
    conflicts: Vec<String>,
    axes: Vec<Vec<String>>,
    machine: Vec<Vec<String>>,
}

/// A requirement by its key, in words.
fn named(key: &str) -> String {
    match key {
        "lead-time" => "delivery time".into(),
        "families" => "kinds of drive".into(),
        "feedback" => "place of measurement".into(),
        "mapping" => "table of corrections".into(),
        other => words::spaced(other),
    }
}

fn value(view: &View, value: Option<f64>, unit: &str) -> String {
    view.quantity(value, unit)
}

/// "speed 45 m/min instead of 60 m/min", or what is dropped.
fn change(view: &View, change: &RelaxedRequirement) -> String {
    let name = named(&change.requirement);
    match (change.now, change.to) {
        (Some(now), Some(to)) => {
            let (now, to) = figure::pair(Some(now), Some(to), &change.unit, view.units);
            format!("{name} {to} instead of {now}")
        }
        (Some(now), None) => format!("no {name} (now {})", value(view, Some(now), &change.unit)),
        (None, _) => format!("any {name}"),
    }
}

fn changes(view: &View, relaxation: &RelaxationRecord) -> String {
    words::list(&relaxation.changes.iter().map(|one| change(view, one)).collect::<Vec<_>>())
}

/// What the brief asks in the words of its requirement, such as "speed 60 m/min".
fn asked(view: &View, axis: &AxisRecord, key: &str) -> String {
    let line = axis.requirement.iter().find(|line| line.key == key);
    let stated = line.map(|line| view.text(&line.value));
    match stated {
        Some(stated) => format!("{} {stated}", named(key)),
        None => named(key),
    }
}

/// The requirements of an axis that no drive keeps together, in one sentence; none where it was not looked for.
pub fn conflict(view: &View, axis: &AxisRecord) -> Option<String> {
    let asked: Vec<String> = axis.conflict.as_ref()?.iter().map(|key| asked(view, axis, key)).collect();
    Some(match asked.as_slice() {
        [] => "No single requirement stands in the way: even the easiest values of all of them admit no drive of the \
               catalogue."
            .into(),
        [one] => format!("One requirement alone is more than any drive of the catalogue gives: {one}."),
        several => format!(
            "No drive of the catalogue keeps these together, whatever else the brief asks: {}. Without any one of them \
             the others could be kept.",
            words::list(several)
        ),
    })
}

/// The ways to relax an axis that change least, a sentence each.
pub fn ways(view: &View, axis: &AxisRecord) -> Vec<String> {
    let mut told: Vec<String> = Vec::new();
    let most = axis.relaxations.iter().map(|relaxation| relaxation.changes.len()).min();
    if most.is_some_and(|fewest| fewest > 2) {
        told.push("No requirement relaxed alone helps, nor any two of those by the same factor.".into());
    }
    told.extend(axis.relaxations.iter().take(TOLD).map(|relaxation| {
        format!(
            "{} would allow a {}, for {}.",
            words::sentence(&changes(view, relaxation)),
            drive(view, &relaxation.drive),
            view.money(Some(relaxation.drive.purchase))
        )
    }));
    if axis.relaxations.is_empty() && axis.conflict.as_ref().is_some_and(|conflict| !conflict.is_empty()) {
        told.push("No way to relax was found within two hundred times what the brief asks.".into());
    }
    told
}

/// Which limits of the machine stand in the way and what would do, a sentence each.
pub fn of_machine(view: &View) -> Vec<String> {
    let machine = &view.record.machine;
    let mut told = Vec::new();
    let limits: Vec<String> = machine.conflict.iter().map(|key| words::machine_limit(key)).collect();
    if view.record.outcome == Outcome::MachineLimit {
        told.push(match limits.as_slice() {
            [] => "No limit of the brief is to blame: no set of drives bears what it has to carry.".into(),
            [one] => format!("What stands in the way: {one}."),
            several => format!("These limits cannot be kept together: {}.", words::list(several)),
        });
    }
    if machine.relaxations.iter().any(|relaxation| relaxation.limits.len() > 1) {
        told.push("No limit raised alone helps.".into());
    }
    told.extend(machine.relaxations.iter().map(|relaxation| {
        let drives: Vec<String> = relaxation
            .drives
            .iter()
            .map(|found| format!("{}: {}", found.axis, words::family(&found.drive.family)))
            .collect();
        format!("{} would do, with {}.", words::sentence(&raised(view, relaxation)), words::list(&drives))
    }));
    told
}

/// Three digits, not below the value: what is told has to do.
fn upward(value: f64) -> f64 {
    if value.is_nan() || value <= 0.0 {
        return value;
    }
    let step = 10_f64.powi(value.log10().floor() as i32 - 2);
    (value / step - 1e-9).ceil() * step
}

fn raised(view: &View, relaxation: &MachineRelaxation) -> String {
    let limit = |limit: &RaisedLimit| {
        let (allowed, least) = match limit.unit.as_str() {
            "" => (view.money(Some(limit.allowed)), view.money(Some(limit.least.ceil()))),
            unit => figure::pair(Some(limit.allowed), Some(upward(limit.least)), unit, view.units),
        };
        format!("{} of {least} instead of {allowed}", words::machine_limit(&limit.limit))
    };
    words::list(&relaxation.limits.iter().map(limit).collect::<Vec<_>>())
}

/// Collects what the reviewer reads.
pub fn collect(view: &View) -> Obstacles {
    let blocked = || view.record.axes.iter().filter(|axis| axis.outcome == Outcome::NothingAdmissible);
    Obstacles {
        conflicts: blocked()
            .filter_map(|axis| Some(format!("Axis {}: {}", axis.name, conflict(view, axis)?)))
            .collect(),
        axes: blocked()
            .flat_map(|axis| {
                axis.relaxations.iter().map(|relaxation| {
                    vec![
                        axis.name.clone(),
                        changes(view, relaxation),
                        relaxation.factor.map_or_else(|| "dropped".into(), |factor| figure::figure(factor, 4)),
                        drive(view, &relaxation.drive),
                        view.money(Some(relaxation.drive.purchase)),
                    ]
                })
            })
            .collect(),
        machine: view
            .record
            .machine
            .relaxations
            .iter()
            .map(|relaxation| {
                let drives = relaxation
                    .drives
                    .iter()
                    .map(|found| format!("{}: {}", found.axis, drive(view, &found.drive)))
                    .collect::<Vec<_>>();
                let proven = if relaxation.status == "optimal" { "proven" } else { "not proven" };
                vec![raised(view, relaxation), drives.join("; "), proven.into()]
            })
            .collect(),
    }
}
