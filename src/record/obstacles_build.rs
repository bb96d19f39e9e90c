//! What stands in the way of an axis or of the machine, as it stands in the record.

use super::alternatives_build::{drives, name, status, verify};
use super::build::Parts;
use super::obstacles::*;
use crate::drive::Demand;
use crate::inquiry::relax::Change;
use crate::inquiry::{self, MachineObstacle};
use crate::search::{Setting, work_out};
use crate::select::Status;
use crate::units::{Mass, Measure};

/// What stands in the way of an axis without an admissible drive: the conflict, and the ways to relax it.
pub fn of_axis(parts: &Parts<'_>, axis: usize) -> (Vec<String>, Vec<RelaxationRecord>) {
    let carried = parts.searches[axis].carried.weighed;
    let setting = Setting { exhaustive: false, ..parts.settings[axis] };
    let obstacle = inquiry::obstacle(parts.brief, axis, carried, &setting);
    let relaxations = obstacle.relaxations.iter().filter_map(|relaxation| {
        let brief = relaxation.changes.iter().fold(parts.brief.clone(), |brief, change| match change.to {
            Some(value) => change.condition.with(&brief, axis, value),
            None => change.condition.without(&brief, axis),
        });
        let demand = Demand::new(&brief, axis, Mass::of_si(carried));
        let found = &relaxation.found;
        let worked = work_out(found.family, &found.path, &demand, &setting)?;
        Some(RelaxationRecord {
            changes: relaxation.changes.iter().map(change).collect(),
            factor: relaxation.factor,
            drive: name(found.family, &worked),
        })
    });
    let relaxations = relaxations.collect();
    (obstacle.conflict.iter().map(|condition| condition.key().into()).collect(), relaxations)
}

fn change(change: &Change) -> RelaxedRequirement {
    let unit = change.condition.unit();
    // as it would be written: without the last bits of a conversion
    let shown = |value: f64| {
        let shown = value / unit.map_or(1.0, |unit| unit.si);
        (shown * 1e9).round() / 1e9
    };
    RelaxedRequirement {
        requirement: change.condition.key().into(),
        unit: unit.map_or("", |unit| unit.name).into(),
        now: change.now.map(shown),
        to: change.to.map(shown),
    }
}

/// What stands in the way of the machine where every axis has drives: the conflict, and the ways to raise limits.
pub fn of_machine(parts: &Parts<'_>) -> (Vec<String>, Vec<MachineRelaxation>) {
    let nothing = (Vec::new(), Vec::new());
    match parts.choice {
        Some(choice) if choice.picks.is_empty() && choice.status == Status::Infeasible => {}
        Some(_) | None => return nothing,
    }
    let check = verify(parts);
    let MachineObstacle { conflict, relaxations } = inquiry::machine_obstacle(parts.machine, &check);
    let relaxations = relaxations.iter().map(|reached| MachineRelaxation {
        limits: reached.limits.iter().map(|&(key, allowed, least)| raised(key, allowed, least)).collect(),
        status: status(reached.status).into(),
        drives: drives(parts, parts.machine, &reached.picks),
    });
    (conflict.into_iter().map(String::from).collect(), relaxations.collect())
}

fn raised(key: &str, allowed: f64, least: f64) -> RaisedLimit {
    let (unit, si) = super::machine_build::limit_unit(key);
    RaisedLimit { limit: key.into(), unit: unit.into(), allowed: allowed / si, least: least / si }
}
