//! Drives at other loads than the one at which their axis is searched: within which intervals of carried mass they pass, and what
//! they come to where drives are weighed.
//!
//! Method: what a family offers does not hang on the load, so that a family is built once for all its drives and loads. An
//! interval is sampled, then each edge halved. Limits: an interval narrower than a step of the samples may be missed.

use super::{Attributes, CarriedRange, Found, Offer, Path, Plan, Setting, row};
use crate::brief::Brief;
use crate::drive::{Demand, Family, WithFamily, with_family};
use crate::ledger::Known;
use crate::units::{Mass, Measure};
use rayon::prelude::*;

/// Samples between the least and the most carried mass.
const SAMPLES: usize = 16;
/// Halvings of each edge.
const HALVINGS: usize = 24;

/// For each drive the intervals of carried mass within which it passes all rules, in the order of the drives.
pub(super) fn intervals(
    brief: &Brief,
    axis: usize,
    carried: CarriedRange,
    candidates: &[Found],
    setting: &Setting<'_>,
) -> Vec<Offer> {
    let mut families: Vec<&'static str> = candidates.iter().map(|found| found.family).collect();
    families.sort_unstable();
    families.dedup();
    let demand = Demand::new(brief, axis, Mass::of_si(carried.weighed));
    let of_family = |family: &&'static str| {
        let drives = candidates.iter().enumerate().filter(|(_, found)| found.family == *family).collect();
        let intervals = Intervals { demand: &demand, setting, carried, drives };
        with_family(family, &demand, setting.catalog, intervals).unwrap_or_default()
    };
    let mut offers: Vec<Vec<Offer>> = vec![Vec::new(); candidates.len()];
    let found: Vec<Vec<(usize, Vec<Offer>)>> = families.par_iter().map(of_family).collect();
    found.into_iter().flatten().for_each(|(place, of_drive)| offers[place] = of_drive);
    offers.into_iter().flatten().collect()
}

struct Intervals<'s, 'd, 'a> {
    demand: &'d Demand<'d>,
    setting: &'s Setting<'a>,
    carried: CarriedRange,
    /// The drives of the family with their places among all.
    drives: Vec<(usize, &'s Found)>,
}

impl WithFamily for Intervals<'_, '_, '_> {
    type Output = Vec<(usize, Vec<Offer>)>;
    fn with<F: Family>(self, family: &F) -> Self::Output {
        let (binding, order) = (row::binding(family.id(), self.setting), family.order());
        let passes = |path: &Path, mass: f64, demand: &mut Demand<'_>, sheet: &mut Known| {
            demand.carried = Mass::of_si(mass);
            demand.enter(sheet);
            order.iter().for_each(|&stage| family.enter(stage, path, sheet));
            binding.iter().all(|row| row.passed(sheet))
        };
        let drives = self.drives.into_par_iter();
        let at_hand = || (self.demand.clone(), Known::default());
        let found = drives.map_init(at_hand, |(demand, sheet), (place, found)| {
            (place, edges(self.carried, found, |mass| passes(&found.path, mass, demand, sheet)))
        });
        found.collect()
    }
}

/// The carried mass of a sample.
fn sample(carried: CarriedRange, index: usize) -> f64 {
    carried.least + (carried.most - carried.least) * index as f64 / (SAMPLES - 1) as f64
}

/// The intervals of one drive from its samples, each edge halved.
fn edges(carried: CarriedRange, found: &Found, mut passes: impl FnMut(f64) -> bool) -> Vec<Offer> {
    let at = |index: usize| sample(carried, index);
    let passing: [bool; SAMPLES] = std::array::from_fn(|index| passes(at(index)));
    let mut edge = |mut inside: f64, mut outside: f64| {
        for _ in 0..HALVINGS {
            let middle = 0.5 * (inside + outside);
            if passes(middle) { inside = middle } else { outside = middle }
        }
        inside
    };
    let mut offers: Vec<Offer> = Vec::new();
    let mut open: Option<f64> = None;
    let mut before = false;
    for (index, &now) in passing.iter().enumerate() {
        match (before, now) {
            (false, true) => open = Some(if index == 0 { carried.least } else { edge(at(index), at(index - 1)) }),
            (true, false) => {
                if let Some(least) = open.take() {
                    offers.push(Offer { found: found.clone(), least, most: edge(at(index - 1), at(index)) });
                }
            }
            _ => {}
        }
        before = now;
    }
    if let Some(least) = open {
        offers.push(Offer { found: found.clone(), least, most: carried.most });
    }
    offers
}

/// What drives of one family bring to the machine at this demand, whether they pass there or not.
pub(super) fn measured(family: &str, paths: &[Path], demand: &Demand<'_>, setting: &Setting<'_>) -> Vec<Attributes> {
    struct Measured<'s, 'd, 'a> {
        paths: &'s [Path],
        demand: &'d Demand<'d>,
        setting: &'s Setting<'a>,
    }
    impl WithFamily for Measured<'_, '_, '_> {
        type Output = Vec<Attributes>;
        fn with<F: Family>(self, family: &F) -> Self::Output {
            let plan = Plan::new(family, self.demand, self.setting);
            let mut sheet = Known::default();
            self.demand.enter(&mut sheet);
            let measure = |path: &Path| {
                plan.order.iter().for_each(|&stage| family.enter(stage, path, &mut sheet));
                Attributes::of(family, path, &sheet, &self.setting.merit, plan.unmet_advice(&sheet))
            };
            self.paths.iter().map(measure).collect()
        }
    }
    with_family(family, demand, setting.catalog, Measured { paths, demand, setting }).unwrap_or_default()
}
