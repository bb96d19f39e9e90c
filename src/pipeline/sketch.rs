//! The answer in a hurry: the best drive of every axis, and of each family, without census and proof.
//!
//! Method: axes are taken from those that carry nothing; the best of all families, or of each, is searched alone, at the mass that
//! the best drives below really have. The machine is the best of each axis; its limits are told, not kept. What comes out is a record like
//! that of [`recommend`](super::recommend), so that the same words can be made of it; its counts mean nothing.
//! Limits: where a limit of the machine binds, or a lighter drive lets the axis below it take a cheaper one, the whole
//! answer may differ. Nothing of a sketch may be kept or signed.

use super::{Inputs, setting, waived_on};
use crate::brief::{Brief, Limits};
use crate::drive::{Demand, Family, WithFamily, considered, with_family};
use crate::record::{DecisionRecord, Parts, build};
use crate::search::{
    AxisSearch, CarriedRange, Census, Coupling, FamilySearch, Found, Offer, Setting, Stop, Walk, best_on,
    explain_briefly,
};
use crate::select::Machine;
use crate::units::{Mass, Measure};
use rayon::prelude::*;
use std::collections::VecDeque;
use std::sync::{Mutex, PoisonError};

/// How many axes are remembered.
const REMEMBERED: usize = 256;
/// How many drives that were best are tried first.
const LIKELY: usize = 64;

/// How far a sketch looks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Look {
    /// For the best drive of each axis; only its family is told of, unless no drive fits.
    Best,
    /// For the best drive of each family, and where a family has none, for what rules it out.
    EachFamily,
}

/// What sketches of one catalogue and rulebook came to before. It changes nothing but the time.
#[derive(Debug, Default)]
pub struct Memory {
    axes: Mutex<VecDeque<(String, Look, AxisSearch)>>,
}

impl Memory {
    /// What was seen of an axis by a look that goes as far, or farther.
    fn of(&self, key: &str, look: Look) -> Option<AxisSearch> {
        let axes = self.axes.lock().unwrap_or_else(PoisonError::into_inner);
        let known = axes.iter().find(|(own, looked, _)| own == key && *looked >= look);
        known.map(|(_, _, search)| search.clone())
    }

    fn keep(&self, key: String, look: Look, search: AxisSearch) {
        let mut axes = self.axes.lock().unwrap_or_else(PoisonError::into_inner);
        axes.retain(|(own, looked, _)| *own != key || *looked > look);
        axes.push_front((key, look, search));
        axes.truncate(REMEMBERED);
    }

    /// Drives that were best of late, the latest first.
    fn likely(&self) -> Vec<Found> {
        let axes = self.axes.lock().unwrap_or_else(PoisonError::into_inner);
        let mut likely: Vec<Found> = Vec::new();
        for found in axes.iter().flat_map(|(_, _, search)| &search.offers).map(|offer| &offer.found) {
            if likely.len() < LIKELY
                && !likely.iter().any(|known| known.family == found.family && known.path == found.path)
            {
                likely.push(found.clone());
            }
        }
        likely
    }
}

/// All that the search of an axis hangs on, as text: the machine, the axis, those that ride on it directly, and what it carries.
fn key(inputs: &Inputs, axis: usize, carried: f64) -> String {
    let brief = &inputs.brief;
    let own = &brief.axes[axis];
    let axes = std::iter::once(own).chain(own.carries.iter().map(|&below| &brief.axes[below])).cloned().collect();
    let waived = waived_on(brief, &own.name);
    let part = Brief {
        name: String::new(),
        text: String::new(),
        machine: String::new(),
        axes,
        waivers: Vec::new(),
        assumptions: Vec::new(),
        doubts: Vec::new(),
        ..brief.clone()
    };
    format!("{part:?} {waived:?} {:x}", carried.to_bits())
}

/// The answer in a hurry; none where it was stopped.
pub fn sketch(inputs: &Inputs, memory: &Memory, look: Look, stop: &Stop) -> Option<DecisionRecord> {
    let brief = &inputs.brief;
    let waived: Vec<Vec<String>> = brief.axes.iter().map(|axis| waived_on(brief, &axis.name)).collect();
    let settings: Vec<Setting<'_>> = waived
        .iter()
        .map(|waived| Setting { stop: Some(stop), ..setting(inputs, Coupling::default(), waived, false) })
        .collect();
    let mut searches: Vec<Option<AxisSearch>> = vec![None; brief.axes.len()];
    for axis in brief.from_the_leaves() {
        let below = brief.axes[axis].carries.iter();
        let carried: f64 = below.map(|&below| weight(inputs, below, searches[below].as_ref())).fold(0.0, |a, b| a + b);
        let key = key(inputs, axis, carried);
        searches[axis] = match memory.of(&key, look) {
            Some(search) => Some(search),
            None => {
                let (search, looked) = looked_at(inputs, axis, carried, look, &memory.likely(), &settings[axis]);
                if stop.asked() {
                    return None;
                }
                memory.keep(key, looked, search.clone());
                Some(search)
            }
        };
    }
    let searches: Vec<AxisSearch> = searches.into_iter().flatten().collect();
    let offers = searches.iter().map(|search| search.offers.clone()).collect();
    let machine = Machine { brief, limits: Limits::default(), offers };
    let complete = machine.offers.iter().all(|offers| !offers.is_empty());
    let choice = complete.then(|| machine.choose(false, |_, _, _| true));
    let whole = Machine { limits: brief.limits, ..machine };
    let record = build(&Parts {
        brief,
        catalog: &inputs.catalog,
        rulebook: &inputs.rulebook,
        searches: &searches,
        settings: &settings,
        machine: &whole,
        choice: choice.as_ref(),
        turning: None,
        asked: false,
        pictured: false,
    });
    (!stop.asked()).then_some(record)
}

/// What an axis weighs on the one that carries it, kg.
fn weight(inputs: &Inputs, axis: usize, search: Option<&AxisSearch>) -> f64 {
    let drive = search.and_then(|search| search.offers.first()).map_or(0.0, |offer| offer.found.attributes.mass);
    let carried = search.map_or(0.0, |search| search.carried.weighed);
    inputs.brief.axes[axis].moved_mass.si() + carried + if drive.is_finite() { drive } else { 0.0 }
}

/// How many configurations a family has.
struct Configurations;

impl WithFamily for Configurations {
    type Output = u64;
    fn with<F: Family>(self, family: &F) -> u64 {
        family.stages().iter().map(|&choices| choices as u64).product()
    }
}

/// One axis searched as far as is wanted, and farther where no drive fits; how far is told beside it.
fn looked_at(
    inputs: &Inputs,
    axis: usize,
    carried: f64,
    look: Look,
    likely: &[Found],
    setting: &Setting<'_>,
) -> (AxisSearch, Look) {
    let brief = &inputs.brief;
    let demand = Demand::new(brief, axis, Mass::of_si(carried));
    if look == Look::Best
        && let Some(found) = best_on(brief, axis, carried, setting, None, likely)
    {
        let family = as_search(found.family, Some(found), &demand, setting);
        return (as_axis(vec![family], carried), Look::Best);
    }
    let families = considered(brief, axis).into_par_iter().map(|family| {
        as_search(family, best_on(brief, axis, carried, setting, Some(family), likely), &demand, setting)
    });
    let mut search = as_axis(families.collect(), carried);
    explain_briefly(brief, axis, &mut search, setting);
    (search, Look::EachFamily)
}

/// The best of a family as a search of it that found nothing else.
fn as_search(family: &'static str, found: Option<Found>, demand: &Demand<'_>, setting: &Setting<'_>) -> FamilySearch {
    let census = Census {
        configurations: with_family(family, demand, setting.catalog, Configurations).unwrap_or(0),
        admissible: u64::from(found.is_some()),
        excluded: vec![0; setting.rulebook.rules.len()],
    };
    let lightest = found.as_ref().map_or(f64::INFINITY, |found| found.attributes.mass);
    let walk = Walk { census, best: found.into_iter().collect(), front: Vec::new(), lightest };
    FamilySearch { family, walk, nearest: None, ruled_out: Vec::new() }
}

/// Such families as the search of an axis.
fn as_axis(families: Vec<FamilySearch>, carried: f64) -> AxisSearch {
    let mut best: Vec<Found> = families.iter().flat_map(|family| family.walk.best.iter().cloned()).collect();
    best.sort_by(Found::order);
    let lightest = best.iter().map(|found| found.attributes.mass).fold(f64::INFINITY, |a, b| if b < a { b } else { a });
    let offers: Vec<Offer> = best.into_iter().map(|found| Offer { found, least: carried, most: carried }).collect();
    AxisSearch { carried: CarriedRange::exactly(carried), families, offers, lightest, gain: 0.0 }
}
