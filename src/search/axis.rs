//! One axis from its demand to the drives that it offers to the machine.
//!
//! Method: every family is walked at the mass at which drives are weighed, which gives the census: the most that the axis may
//! have to carry, or what it carries in a machine that was chosen before. If the carried mass may differ, it is walked at the
//! least as well, and for each drive the intervals of carried mass are worked out within which it passes all rules.
//! Limits: a drive that is admissible neither at the least nor where drives are weighed is not found.

use super::{Coupling, Found, Path, RuledOut, Setting, Walk, admissible, loads, nearest, ruled_out, walk};
use crate::brief::Brief;
use crate::drive::{Demand, Family, WithFamily, considered, with_family};
use crate::units::{Mass, Measure};
use rayon::prelude::*;

/// What an axis may have to carry, kg.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CarriedRange {
    /// The least.
    pub least: f64,
    /// The most.
    pub most: f64,
    /// Where drives are weighed: from the least to the most.
    pub weighed: f64,
}

impl CarriedRange {
    /// A load that is the same whatever is chosen.
    pub const fn exactly(mass: f64) -> CarriedRange {
        CarriedRange::at_most(mass, mass)
    }

    /// From the least to the most, where drives are weighed.
    pub const fn at_most(least: f64, most: f64) -> CarriedRange {
        CarriedRange { least, most, weighed: most }
    }

    /// Whether the load may differ by more than rounding does.
    pub fn varies(&self) -> bool {
        self.most - self.least > 1e-9
    }
}

/// One family on one axis.
#[derive(Debug, Clone)]
pub struct FamilySearch {
    /// Id of the family.
    pub family: &'static str,
    /// Census, best and undominated drives at the mass where drives are weighed.
    pub walk: Walk,
    /// The drive that misses by least, if none is admissible.
    pub nearest: Option<Path>,
    /// The rules that no configuration keeps, if none is admissible.
    pub ruled_out: Vec<RuledOut>,
}

impl FamilySearch {
    /// The undominated drives of a merit below this; without this choice the set would depend on which branches were left.
    fn better_than(self, below: Option<f64>) -> impl Iterator<Item = Found> {
        self.walk.front.into_iter().filter(move |found| below.is_none_or(|below| found.attributes.merit < below))
    }
}

/// A drive and an interval of carried mass in which it passes all rules.
#[derive(Debug, Clone, PartialEq)]
pub struct Offer {
    /// The drive; its attributes are those at the mass where drives are weighed.
    pub found: Found,
    /// The least carried mass, kg.
    pub least: f64,
    /// The largest carried mass, kg.
    pub most: f64,
}

/// One axis searched.
#[derive(Debug, Clone)]
pub struct AxisSearch {
    /// What it may have to carry.
    pub carried: CarriedRange,
    /// Every family that was considered.
    pub families: Vec<FamilySearch>,
    /// The drives that it offers to the machine, best first.
    pub offers: Vec<Offer>,
    /// The least mass of an admissible drive, offered or not, kg; infinite if there is none.
    pub lightest: f64,
    /// How much better than its best drive at any load this axis may do where it carries less; infinite if that is not known.
    pub gain: f64,
}

struct Search<'s, 'd, 'a> {
    demand: &'d Demand<'d>,
    setting: &'s Setting<'a>,
    below: Option<f64>,
}

impl WithFamily for Search<'_, '_, '_> {
    type Output = FamilySearch;
    fn with<F: Family>(self, family: &F) -> Self::Output {
        let walk = walk(family, self.demand, self.setting, self.below);
        FamilySearch { family: family.id(), walk, nearest: None, ruled_out: Vec::new() }
    }
}

/// Works out for every family without an admissible drive which misses by least, and what rules the family out.
pub fn explain_none(brief: &Brief, axis: usize, search: &mut AxisSearch, setting: &Setting<'_>) {
    explain(brief, axis, search, setting, true);
}

/// The same in a hurry: which misses by least is looked for only where no rule excludes the family on its own.
pub fn explain_briefly(brief: &Brief, axis: usize, search: &mut AxisSearch, setting: &Setting<'_>) {
    explain(brief, axis, search, setting, false);
}

fn explain(brief: &Brief, axis: usize, search: &mut AxisSearch, setting: &Setting<'_>, fully: bool) {
    struct Explain<'s, 'd, 'a> {
        demand: &'d Demand<'d>,
        setting: &'s Setting<'a>,
        fully: bool,
    }
    impl WithFamily for Explain<'_, '_, '_> {
        type Output = (Option<Path>, Vec<RuledOut>);
        fn with<F: Family>(self, family: &F) -> Self::Output {
            if family.stages().contains(&0) {
                return (None, Vec::new());
            }
            let rules = ruled_out(family, self.demand, self.setting);
            let looked = self.fully || rules.is_empty();
            let missing = looked.then(|| nearest(family, self.demand, self.setting, &rules)).flatten();
            (missing.map(|(path, _)| path), rules)
        }
    }
    let demand = Demand::new(brief, axis, Mass::of_si(search.carried.weighed));
    search.families.par_iter_mut().filter(|searched| searched.walk.census.admissible == 0).for_each(|searched| {
        let explain = Explain { demand: &demand, setting, fully };
        if let Some((path, rules)) = with_family(searched.family, &demand, setting.catalog, explain) {
            (searched.nearest, searched.ruled_out) = (path, rules);
        }
    });
}

/// Searches an axis.
pub fn search_axis(brief: &Brief, axis: usize, carried: CarriedRange, setting: &Setting<'_>) -> AxisSearch {
    let weighed = Demand::new(brief, axis, Mass::of_si(carried.weighed));
    let mut families = Vec::new();
    let mut candidates: Vec<Found> = Vec::new();
    for id in considered(brief, axis) {
        let search = Search { demand: &weighed, setting, below: None };
        let Some(searched) = with_family(id, &weighed, setting.catalog, search) else { continue };
        candidates.extend(searched.walk.front.iter().cloned());
        families.push(searched);
    }
    let mut lightest = families.iter().map(|searched| searched.walk.lightest).fold(f64::INFINITY, f64::min);
    let best = candidates.iter().min_by(|a, b| a.order(b)).cloned();
    // the best counts at any load only if it passes at the least mass and at the most
    let robust = best.filter(|best| {
        let passes = |mass: f64| {
            let demand = Demand::new(brief, axis, Mass::of_si(mass));
            admissible(best.family, &best.path, &demand, setting)
        };
        !carried.varies() || passes(carried.least) && passes(carried.most)
    });
    if carried.varies() {
        // where no limit makes axes give way to each other and no axis below bears this one, only what is better
        // than the best can matter
        let uncoupled = setting.coupling == Coupling::default();
        let below = robust.as_ref().filter(|_| uncoupled).map(|best| best.attributes.merit);
        let (further, least) = lighter(brief, axis, carried, below, setting);
        lightest = lightest.min(least);
        candidates.extend(further);
    }
    let offers = offers(brief, axis, carried, candidates, setting);
    let gain = match (&robust, offers.first()) {
        (Some(robust), Some(first)) => robust.attributes.merit - first.found.attributes.merit,
        (None, Some(_)) => f64::INFINITY,
        (_, None) => 0.0,
    };
    AxisSearch { carried, families, offers, lightest, gain }
}

/// The drives that pass at the least carried mass, measured where drives are weighed, and the least mass among them; with a bound only
/// those of a merit below it.
fn lighter(
    brief: &Brief,
    axis: usize,
    carried: CarriedRange,
    below: Option<f64>,
    setting: &Setting<'_>,
) -> (Vec<Found>, f64) {
    let (light, weighed) =
        (Demand::new(brief, axis, Mass::of_si(carried.least)), Demand::new(brief, axis, Mass::of_si(carried.weighed)));
    let below = below.filter(|merit| merit.is_finite());
    let mut lightest = f64::INFINITY;
    let mut found: Vec<Found> = Vec::new();
    for id in considered(brief, axis) {
        let search = Search { demand: &light, setting, below };
        let Some(searched) = with_family(id, &light, setting.catalog, search) else { continue };
        // where branches were left, what remains says nothing of the lightest
        if below.is_none() {
            lightest = lightest.min(searched.walk.lightest);
        }
        let mut lighter: Vec<Found> = searched.better_than(below).collect();
        // everything that a drive offers is measured at one load, so that merits compare
        let paths: Vec<Path> = lighter.iter().map(|found| found.path).collect();
        let measured = loads::measured(id, &paths, &weighed, setting);
        lighter.iter_mut().zip(measured).for_each(|(found, attributes)| found.attributes = attributes);
        found.extend(lighter);
    }
    let least = found.iter().map(|found| found.attributes.mass).fold(lightest, f64::min);
    (found, least)
}

/// What these drives offer, best first.
fn offers(
    brief: &Brief,
    axis: usize,
    carried: CarriedRange,
    mut candidates: Vec<Found>,
    setting: &Setting<'_>,
) -> Vec<Offer> {
    candidates.sort_by(Found::order);
    candidates.dedup_by(|a, b| a.family == b.family && a.path == b.path);
    if carried.varies() {
        loads::intervals(brief, axis, carried, &candidates, setting)
    } else {
        candidates.into_iter().map(|found| Offer { found, least: carried.least, most: carried.most }).collect()
    }
}

/// Lets the mass of the drives count in what an axis offers, as far as other axes may gain by less of it: drives up to that gain
/// worse than the best are offered where they are lighter. Says whether the axes below were searched at the masses that
/// are offered now; if not, all have to be searched again.
pub fn offer_lighter(brief: &Brief, axis: usize, gain: f64, search: &mut AxisSearch, setting: &Setting<'_>) -> bool {
    let setting = Setting { coupling: Coupling { mass: true, ..setting.coupling }, ..*setting };
    let weighed = Demand::new(brief, axis, Mass::of_si(search.carried.weighed));
    let Some(best) = search.offers.first().map(|offer| offer.found.attributes.merit) else { return true };
    // what the best of all offers reaches at less load is counted in the gain of this axis
    let below = Some((best + search.gain + gain) * (1.0 + 1e-9)).filter(|merit| merit.is_finite());
    let mut candidates: Vec<Found> = search.offers.iter().map(|offer| offer.found.clone()).collect();
    for id in considered(brief, axis) {
        let search = Search { demand: &weighed, setting: &setting, below };
        let searched = with_family(id, &weighed, setting.catalog, search);
        candidates.extend(searched.into_iter().flat_map(|searched| searched.better_than(below)));
    }
    if search.carried.varies() {
        candidates.extend(lighter(brief, axis, search.carried, below, &setting).0);
    }
    search.offers = offers(brief, axis, search.carried, candidates, &setting);
    let least = search.offers.iter().map(|offer| offer.found.attributes.mass).fold(f64::INFINITY, f64::min);
    least >= search.lightest
}
