//! One axis from its demand to the drives that it offers to the machine.
//!
//! Method: every family is walked at the most that the axis may have to carry, which gives the census. If
//! the carried mass may differ, it is walked at the least as well, and for each drive the intervals of
//! carried mass are worked out within which it passes all rules: sampled, then each edge bisected.
//! Limits: a drive that is admissible only strictly between the least and the most is not found; an interval
//! narrower than a sample step may be missed. What a drive offers is measured at the most.

use super::{
    Coupling, Found, Path, RuledOut, Setting, Walk, admissible, nearest, ruled_out, walk, which_admissible, work_out,
};
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
}

/// One family on one axis.
#[derive(Debug, Clone)]
pub struct FamilySearch {
    /// Id of the family.
    pub family: &'static str,
    /// Census, best and undominated drives at the most carried mass.
    pub walk: Walk,
    /// The drive that misses by least, if none is admissible.
    pub nearest: Option<Path>,
    /// The rules that no configuration keeps, if none is admissible.
    pub ruled_out: Vec<RuledOut>,
}

/// A drive and an interval of carried mass in which it passes all rules.
#[derive(Debug, Clone, PartialEq)]
pub struct Offer {
    /// The drive; its attributes are those at the most carried mass.
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
        let nearest = if walk.census.admissible == 0 && self.below.is_none() {
            nearest(family, self.demand, self.setting)
        } else {
            None
        };
        let ruled_out = if nearest.is_some() { ruled_out(family, self.demand, self.setting) } else { Vec::new() };
        FamilySearch { family: family.id(), walk, nearest: nearest.map(|(path, _)| path), ruled_out }
    }
}

/// Searches an axis.
pub fn search_axis(brief: &Brief, axis: usize, carried: CarriedRange, setting: &Setting<'_>) -> AxisSearch {
    let heavy = Demand::new(brief, axis, Mass::of_si(carried.most));
    let mut families = Vec::new();
    let mut candidates: Vec<Found> = Vec::new();
    for id in considered(brief, axis) {
        let Some(searched) = with_family(id, &heavy, setting.catalog, Search { demand: &heavy, setting, below: None })
        else {
            continue;
        };
        candidates.extend(searched.walk.front.iter().cloned());
        families.push(searched);
    }
    let mut lightest = families.iter().map(|searched| searched.walk.lightest).fold(f64::INFINITY, f64::min);
    let varies = carried.most - carried.least > 1e-9;
    if varies {
        let light = Demand::new(brief, axis, Mass::of_si(carried.least));
        // where no limit makes axes give way to each other and no axis below bears this one, only what is better
        // than the best can matter, as long as the best passes at the least mass too
        let best = candidates.iter().min_by(|a, b| a.order(b)).filter(|_| setting.coupling == Coupling::default());
        let best = best.filter(|best| admissible(best.family, &best.path, &light, setting));
        let below = best.map(|best| best.attributes.merit).filter(|merit| merit.is_finite());
        for id in considered(brief, axis) {
            let searched = with_family(id, &light, setting.catalog, Search { demand: &light, setting, below });
            // without this the set would depend on which branches were left
            let better = |found: &Found| below.is_none_or(|best| found.attributes.merit < best);
            // where branches were left, what remains says nothing of the lightest
            if below.is_none() {
                lightest = searched.iter().map(|searched| searched.walk.lightest).fold(lightest, f64::min);
            }
            let further = searched.into_iter().flat_map(|searched| searched.walk.front).filter(better);
            for mut found in further {
                // everything that a drive offers is measured at the most, so that merits compare
                if let Some(worked) = work_out(id, &found.path, &heavy, setting) {
                    found.attributes = worked.attributes;
                }
                candidates.push(found);
            }
        }
    }
    candidates.sort_by(Found::order);
    candidates.dedup_by(|a, b| a.family == b.family && a.path == b.path);
    let offers = if varies {
        intervals(brief, axis, carried, &candidates, setting)
    } else {
        candidates.into_iter().map(|found| Offer { found, least: carried.least, most: carried.most }).collect()
    };
    AxisSearch { carried, families, offers, lightest }
}

/// Samples between the least and the most carried mass.
const SAMPLES: usize = 16;
/// Halvings of each edge.
const HALVINGS: usize = 24;

/// The carried mass of a sample.
fn sample(carried: CarriedRange, index: usize) -> f64 {
    carried.least + (carried.most - carried.least) * index as f64 / (SAMPLES - 1) as f64
}

/// For each drive the intervals of carried mass within which it passes all rules.
fn intervals(
    brief: &Brief,
    axis: usize,
    carried: CarriedRange,
    candidates: &[Found],
    setting: &Setting<'_>,
) -> Vec<Offer> {
    let mut families: Vec<&'static str> = candidates.iter().map(|found| found.family).collect();
    families.sort_unstable();
    families.dedup();
    let jobs: Vec<(&str, usize)> =
        families.iter().flat_map(|&family| (0..SAMPLES).map(move |index| (family, index))).collect();
    // a family is built and its rules are sorted once for each sample
    let sampled: Vec<Vec<bool>> = jobs
        .par_iter()
        .map(|&(family, index)| {
            let demand = Demand::new(brief, axis, Mass::of_si(sample(carried, index)));
            let paths: Vec<&Path> =
                candidates.iter().filter(|found| found.family == family).map(|found| &found.path).collect();
            which_admissible(family, &paths, &demand, setting)
        })
        .collect();
    let mut seen: Vec<usize> = vec![0; families.len()];
    let mut passing: Vec<[bool; SAMPLES]> = Vec::with_capacity(candidates.len());
    for found in candidates {
        let place = families.binary_search(&found.family).unwrap_or(0);
        let of_sample = |index: usize| sampled[place * SAMPLES + index].get(seen[place]).copied().unwrap_or(false);
        passing.push(std::array::from_fn(of_sample));
        seen[place] += 1;
    }
    let found = candidates.par_iter().zip(passing);
    found.flat_map_iter(|(found, passing)| edges(brief, axis, carried, found, &passing, setting)).collect()
}

/// The intervals of one drive from its samples, each edge bisected.
fn edges(
    brief: &Brief,
    axis: usize,
    carried: CarriedRange,
    found: &Found,
    passing: &[bool; SAMPLES],
    setting: &Setting<'_>,
) -> Vec<Offer> {
    let passes = |mass: f64| {
        let demand = Demand::new(brief, axis, Mass::of_si(mass));
        admissible(found.family, &found.path, &demand, setting)
    };
    let at = |index: usize| sample(carried, index);
    let edge = |mut inside: f64, mut outside: f64| {
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
