//! The next-best machines, and what the weights do to each axis, as they stand in the record.
//!
//! Method: every machine is worked out at the masses that its drives carry in it.

use super::ParetoPoint;
use super::alternatives::*;
use super::build::Parts;
use super::candidate_build::parameter;
use super::machine_build::error;
use crate::brief::Prefer;
use crate::drive::{Demand, Merit, REFERENCES};
use crate::inquiry;
use crate::search::{Found, Offer, Setting, Worked, admissible, best_on, work_out};
use crate::select::{Machine, Next, NextKind, Status};
use crate::units::{Mass, Measure};

/// How many next-best machines are told.
const NEXT_BEST: usize = 4;

/// The name of a drive that was worked out.
pub(super) fn name(family: &str, worked: &Worked<'_>) -> DriveName {
    DriveName {
        family: family.into(),
        parameters: worked.sizes.iter().map(parameter).collect(),
        purchase: worked.attributes.purchase,
    }
}

/// The drive that is best where nothing but cost, and advice not followed, counts; none where it is the one chosen or costs no
/// less over its life.
pub(super) fn by_cost_alone(parts: &Parts<'_>, axis: usize, chosen: &Found, carried: f64) -> Option<ParetoPoint> {
    let cost = Prefer { whole_life_cost: 1.0, accuracy: 0.0, stiffness: 0.0, upkeep: 0.0, stated: true };
    let setting = Setting { merit: Merit::new(&cost), ..parts.settings[axis] };
    let found = best_on(parts.brief, axis, carried, &setting, None, std::slice::from_ref(chosen))?;
    let demand = Demand::new(parts.brief, axis, Mass::of_si(carried));
    let work = |found: &Found| work_out(found.family, &found.path, &demand, &parts.settings[axis]);
    let (worked, own) = (work(&found)?, work(chosen)?);
    let attributes = &worked.attributes;
    let cheaper = attributes.whole_life < own.attributes.whole_life;
    cheaper.then(|| ParetoPoint {
        family: found.family.into(),
        parameters: worked.sizes.iter().map(parameter).collect(),
        merit: attributes.merit,
        purchase: attributes.purchase,
        whole_life: attributes.whole_life,
        tool_error: attributes.error * 1e6,
        drive_mass: attributes.mass,
    })
}

/// Whether a drive passes all rules at a carried mass.
pub(super) fn verify<'p>(parts: &'p Parts<'_>) -> impl Fn(usize, &Found, f64) -> bool + 'p {
    |axis, found, carried| {
        let demand = Demand::new(parts.brief, axis, Mass::of_si(carried));
        admissible(found.family, &found.path, &demand, &parts.settings[axis])
    }
}

/// The drives of a choice, worked out at what they carry.
pub(super) fn worked<'p>(parts: &Parts<'p>, machine: &Machine<'_>, picks: &[usize]) -> Option<Vec<Worked<'p>>> {
    (0..picks.len())
        .map(|axis| {
            let demand = Demand::new(parts.brief, axis, Mass::of_si(machine.carried(axis, picks)));
            let found = &machine.offers[axis][picks[axis]].found;
            work_out(found.family, &found.path, &demand, &parts.settings[axis])
        })
        .collect()
}

/// The drives of a choice by their names.
pub(super) fn drives(parts: &Parts<'_>, machine: &Machine<'_>, picks: &[usize]) -> Vec<DriveOfMachine> {
    let all = worked(parts, machine, picks).unwrap_or_default();
    let named = all.iter().enumerate().map(|(axis, worked)| DriveOfMachine {
        axis: parts.brief.axes[axis].name.clone(),
        drive: name(machine.offers[axis][picks[axis]].found.family, worked),
    });
    named.collect()
}

/// The next-best machines, and the best of another family.
pub fn next_best(parts: &Parts<'_>) -> Vec<NextMachine> {
    let Some(choice) = parts.choice.filter(|choice| !choice.picks.is_empty()) else { return Vec::new() };
    let Some(chosen) = worked(parts, parts.machine, &choice.picks) else { return Vec::new() };
    let next = parts.machine.next_best(&choice.picks, NEXT_BEST, verify(parts));
    let mut machines: Vec<NextMachine> =
        next.iter().filter_map(|next| record(parts, parts.machine, &choice.picks, &chosen, next)).collect();
    let wide = with_families(parts);
    let other = wide.best_of_other_family(&choice.picks, verify(parts));
    machines.extend(other.and_then(|next| record(parts, &wide, &choice.picks, &chosen, &next)));
    machines
}

/// The machine with the best drives of each family offered as well, beaten or not; whether they bear what they carry shows
/// when a machine is verified.
fn with_families<'p>(parts: &Parts<'p>) -> Machine<'p> {
    let mut wide = parts.machine.clone();
    for (offers, search) in wide.offers.iter_mut().zip(parts.searches) {
        for found in search.families.iter().flat_map(|family| &family.walk.best) {
            let offered = |offer: &Offer| offer.found.family == found.family && offer.found.path == found.path;
            if !offers.iter().any(offered) {
                let (least, most) = (search.carried.least, search.carried.most);
                offers.push(Offer { found: found.clone(), least, most });
            }
        }
    }
    wide
}

fn record(
    parts: &Parts<'_>,
    machine: &Machine<'_>,
    picks: &[usize],
    chosen: &[Worked<'_>],
    next: &Next,
) -> Option<NextMachine> {
    let all = worked(parts, machine, &next.picks)?;
    let sum = |of: fn(&Worked<'_>) -> f64| -> f64 { all.iter().map(of).sum() };
    let squares: f64 = sum(|worked| worked.attributes.error * worked.attributes.error);
    let family = |axis: usize, place: usize| machine.offers[axis][place].found.family;
    let differs_in = next.differs.iter().map(|&axis| {
        let other = family(axis, picks[axis]) != family(axis, next.picks[axis]);
        let (sizes, parts_of) = if other {
            Default::default()
        } else {
            (sizes(&chosen[axis], &all[axis]), roles(&chosen[axis], &all[axis]))
        };
        Difference { axis: parts.brief.axes[axis].name.clone(), family: other, sizes, parts: parts_of }
    });
    Some(NextMachine {
        kind: match next.kind {
            NextKind::NextBest => "next-best".into(),
            NextKind::OtherFamily => "other-family".into(),
        },
        status: status(next.status).into(),
        drives: drives(parts, machine, &next.picks),
        objective: next.objective,
        purchase: sum(|worked| worked.attributes.purchase),
        whole_life_cost: sum(|worked| worked.attributes.whole_life),
        tool_point_error: error(squares.sqrt()),
        differs_in: differs_in.collect(),
    })
}

/// The word of a status in the record.
pub(super) fn status(status: Status) -> &'static str {
    match status {
        Status::Optimal => "optimal",
        Status::Infeasible => "infeasible",
        Status::NotProven => "not-proven",
    }
}

/// The names of the main sizes that differ.
fn sizes(one: &Worked<'_>, other: &Worked<'_>) -> Vec<String> {
    let (one, other): (Vec<_>, Vec<_>) =
        (one.sizes.iter().map(parameter).collect(), other.sizes.iter().map(parameter).collect());
    let missing = |size: &&super::Parameter| !one.contains(size);
    other.iter().filter(missing).map(|size| size.name.clone()).collect()
}

/// The roles of the parts that differ.
fn roles(one: &Worked<'_>, other: &Worked<'_>) -> Vec<String> {
    let same = |part: &crate::drive::Part| {
        one.parts.iter().any(|known| known.role == part.role && known.designation == part.designation)
    };
    let mut roles: Vec<String> =
        other.parts.iter().filter(|part| !same(part)).map(|part| part.role.to_string()).collect();
    roles.sort();
    roles.dedup();
    roles
}

/// What the weights do to the drive of an axis: the ranges, the drive that is better for the axis alone, other families.
pub fn weights(
    parts: &Parts<'_>,
    axis: usize,
    chosen: &Found,
    carried: f64,
) -> (Vec<WeightRange>, Option<DriveName>, Vec<OtherFamily>) {
    let (brief, search) = (parts.brief, &parts.searches[axis]);
    // the same answer, without trying everything
    let setting = Setting { exhaustive: false, ..parts.settings[axis] };
    let mut known: Vec<Found> = search.families.iter().filter_map(|family| family.walk.best.first()).cloned().collect();
    let mut least = f64::INFINITY;
    for offer in &search.offers {
        if offer.found.attributes.error < least {
            least = offer.found.attributes.error;
            known.push(offer.found.clone());
        }
    }
    known.sort_by(Found::order);
    known.dedup_by(|a, b| a.family == b.family && a.path == b.path);
    let demand = Demand::new(brief, axis, Mass::of_si(carried));
    let named = |found: &Found| Some(name(found.family, &work_out(found.family, &found.path, &demand, &setting)?));
    let weights = inquiry::weights(brief, axis, carried, &setting, chosen, &known);
    let key = |weight: usize| REFERENCES[weight].0.to_string();
    let ranges = weights.ranges.iter().map(|range| WeightRange {
        weight: key(range.weight),
        now: range.now,
        from: range.from,
        to: range.to,
        rival_below: range.below.as_ref().and_then(named),
        rival_above: range.above.as_ref().and_then(named),
    });
    let families = weights.families.iter().filter_map(|other| {
        let shares = other.change.map(|(_, shares)| {
            shares.iter().enumerate().map(|(weight, &share)| WeightShare { weight: key(weight), share }).collect()
        });
        Some(OtherFamily {
            drive: named(&other.found)?,
            distance: other.distance,
            change: other.change.map(|(change, _)| change),
            weights: shares.unwrap_or_default(),
        })
    });
    let families = families.collect();
    (ranges.collect(), weights.better_alone.as_ref().and_then(named), families)
}
