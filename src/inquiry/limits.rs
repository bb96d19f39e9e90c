//! Which limit of the machine stands in the way where every axis has drives, and the least value of it that would do.
//!
//! Method: the limits that are in conflict are found by deletion, the program of the machine solved each time. Each limit is
//! left out alone and its own quantity made as small as the other limits allow, by the same program with that quantity in
//! place of the merit; the number of models is raised one by one. Where no limit helps alone, all that are amounts are
//! raised by one factor, halved until it is known to half a percent. Exact over the drives that are offered, which must be
//! those that nothing beats in any quantity that is limited. Limits: the delivery time is a rule of each drive, not of the
//! machine; what a drive adds is that at the most it may carry.

use super::conflict::conflict;
use crate::brief::Limits;
use crate::search::{Attributes, Found};
use crate::select::{Machine, Status, needs};
use crate::units::{Length, Measure, Money, Power};

/// The limits of a machine that may be relaxed, in the order in which they are told.
const KEYS: [&str; 5] = ["purchase", "tool-point-error", "supply-power", "motor-models", "gearbox-models"];

/// The least value of a limit at which there is a machine.
#[derive(Debug, Clone, PartialEq)]
pub struct Reached {
    /// The limits that are raised: key, what the brief allows, the least that would do, in SI units.
    pub limits: Vec<(&'static str, f64, f64)>,
    /// Whether it is proven that no less would do.
    pub status: Status,
    /// The column of each axis of the machine that reaches it.
    pub picks: Vec<usize>,
}

/// What stands in the way of a machine.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct MachineObstacle {
    /// Limits that cannot be kept together, none of which can be left out; empty where even without any there is none.
    pub conflict: Vec<&'static str>,
    /// The ways to raise limits, each alone first; all together where none helps alone.
    pub relaxations: Vec<Reached>,
}

/// How closely a common factor is found.
const CLOSE: f64 = 1.005;
/// Doublings of a common factor before it is given up.
const DOUBLINGS: usize = 12;

fn value(limits: &Limits, key: &str) -> Option<f64> {
    match key {
        "purchase" => limits.purchase.map(|limit| limit.0),
        "tool-point-error" => limits.tool_point_error.map(Measure::si),
        "supply-power" => limits.supply_power.map(Measure::si),
        "motor-models" => limits.motor_models.map(f64::from),
        "gearbox-models" => limits.gearbox_models.map(f64::from),
        _ => None,
    }
}

fn with(limits: &Limits, key: &str, value: Option<f64>) -> Limits {
    let mut changed = *limits;
    match key {
        "purchase" => changed.purchase = value.map(Money),
        "tool-point-error" => changed.tool_point_error = value.map(Length::of_si),
        "supply-power" => changed.supply_power = value.map(Power::of_si),
        "motor-models" => changed.motor_models = value.map(|value| value as u32),
        "gearbox-models" => changed.gearbox_models = value.map(|value| value as u32),
        _ => {}
    }
    changed
}

/// What stands in the way of this machine. `verify` works the drive of an axis out at the mass that it really carries.
pub fn machine_obstacle(machine: &Machine<'_>, verify: &dyn Fn(usize, &Found, f64) -> bool) -> MachineObstacle {
    let stated: Vec<&'static str> = KEYS.into_iter().filter(|key| value(&machine.limits, key).is_some()).collect();
    let under = |limits: Limits| Machine { limits, ..machine.clone() }.choose(false, verify);
    let mut possible = |active: &[bool]| {
        let dropped = stated.iter().zip(active).filter(|(_, active)| !**active);
        let limits = dropped.fold(machine.limits, |limits, (key, _)| with(&limits, key, None));
        !under(limits).picks.is_empty()
    };
    let Some(places) = conflict(stated.len(), &mut possible) else { return MachineObstacle::default() };
    let conflict: Vec<&'static str> = places.iter().map(|&place| stated[place]).collect();
    let mut relaxations: Vec<Reached> = conflict.iter().filter_map(|key| alone(machine, key, verify)).collect();
    if relaxations.is_empty() {
        relaxations.extend(together(machine, &stated, &under));
    }
    MachineObstacle { conflict, relaxations }
}

/// The least value of one limit at which the others can be kept.
fn alone(machine: &Machine<'_>, key: &'static str, verify: &dyn Fn(usize, &Found, f64) -> bool) -> Option<Reached> {
    let allowed = value(&machine.limits, key)?;
    let free = with(&machine.limits, key, None);
    let of: fn(&Attributes) -> f64 = match key {
        "purchase" => |attributes| attributes.purchase,
        "tool-point-error" => |attributes| attributes.error * attributes.error,
        "supply-power" => |attributes| attributes.power,
        _ => {
            let axes = machine.offers.len();
            let mut count = allowed as usize + 1;
            while count <= axes {
                let limits = with(&machine.limits, key, Some(count as f64));
                let choice = Machine { limits, ..machine.clone() }.choose(false, verify);
                if !choice.picks.is_empty() {
                    let limits = vec![(key, allowed, count as f64)];
                    return Some(Reached { limits, status: choice.status, picks: choice.picks });
                }
                count += 1;
            }
            return None;
        }
    };
    let mut least = Machine { limits: free, ..machine.clone() };
    // in shares of the limit, so that all numbers of the program are of like size
    let scale = match key {
        "tool-point-error" => allowed * allowed,
        _ => allowed,
    };
    let scale = if scale > 0.0 { scale } else { 1.0 };
    for offer in least.offers.iter_mut().flatten() {
        offer.found.attributes.merit = of(&offer.found.attributes) / scale;
    }
    let choice = least.choose(false, verify);
    if choice.picks.is_empty() {
        return None;
    }
    let needs = needs(machine, &choice.picks);
    let reached = match key {
        "purchase" => needs.purchase,
        "tool-point-error" => needs.error,
        _ => needs.power,
    };
    // of the machines that reach it the best by merit
    let best = Machine { limits: with(&free, key, Some(reached)), ..machine.clone() }.choose(false, verify);
    let picks = if best.picks.is_empty() { choice.picks } else { best.picks };
    Some(Reached { limits: vec![(key, allowed, reached)], status: choice.status, picks })
}

/// All amounts raised by one factor.
fn together(
    machine: &Machine<'_>,
    stated: &[&'static str],
    under: &dyn Fn(Limits) -> crate::select::Choice,
) -> Option<Reached> {
    let counts = ["motor-models", "gearbox-models"];
    let amounts: Vec<&'static str> = stated.iter().copied().filter(|key| !counts.contains(key)).collect();
    let raised = |factor: f64| {
        amounts.iter().fold(machine.limits, |limits, key| {
            let now = value(&machine.limits, key);
            with(&limits, key, now.map(|now| now * factor))
        })
    };
    let (mut no, mut yes) = (1.0, 2.0);
    let mut choice = under(raised(yes));
    for _ in 0..DOUBLINGS {
        if !choice.picks.is_empty() {
            break;
        }
        (no, yes) = (yes, 2.0 * yes);
        choice = under(raised(yes));
    }
    while !choice.picks.is_empty() && yes / no > CLOSE {
        let middle = f64::sqrt(no * yes);
        let there = under(raised(middle));
        if there.picks.is_empty() {
            no = middle;
        } else {
            (yes, choice) = (middle, there);
        }
    }
    if choice.picks.is_empty() {
        return None;
    }
    let limits = amounts.iter().filter_map(|key| value(&machine.limits, key).map(|now| (*key, now, now * yes)));
    Some(Reached { limits: limits.collect(), status: choice.status, picks: choice.picks })
}
