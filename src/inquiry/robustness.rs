//! How often drives stay admissible when what the brief states is off.
//!
//! Method: in every sample mass, drag of the guides, process forces, temperature swing and stiffness are multiplied by factors
//! of chance; all drives and all axes share the factors of a sample, so that their odds compare. A drive is worked out
//! stage by stage as in the search, and the rule that it breaks first is the one that the search would name. What balances a
//! weight was set for the mass of the brief and stays. The worst utilisation is that of the rules that the factors move:
//! sizes and classes that fit or do not say nothing here.
//! Limits: the factors are independent of each other; mass and drag are off by the same factor on every axis; what the brief does not
//! count as uncertain, such as efficiencies and ratings, is taken as known.

use super::chance::{Chance, factor, wilson};
use super::softened::Softened;
use crate::brief::{Brief, Uncertainty};
use crate::drive::{Demand, Family, WithFamily, with_family};
use crate::ledger::Ledger;
use crate::rule::{Obligation, passes};
use crate::search::{Found, Path, Plan, Setting};
use crate::units::{Mass, Measure, Ratio};
use rayon::prelude::*;
use std::collections::BTreeMap;

/// Samples, if nothing else is said.
pub const SAMPLES: usize = 1000;
/// The seed, if nothing else is said.
pub const SEED: u64 = 1;

/// The shares at which the worst utilisation is told.
const QUANTILES: [f64; 3] = [0.05, 0.5, 0.95];
/// Factors, as so many spreads, that show which rules move.
const PROBES: [f64; 4] = [-3.0, -1.0, 1.0, 3.0];
/// Utilisations closer than this, as a part of themselves, are the same.
const SAME: f64 = 1e-12;

/// Drives of one axis to be tried.
#[derive(Debug, Clone, Copy)]
pub struct Trial<'t> {
    /// The brief.
    pub brief: &'t Brief,
    /// The axis, as place in the brief.
    pub axis: usize,
    /// What it carries, kg.
    pub carried: f64,
    /// What drives are judged by.
    pub setting: &'t Setting<'t>,
    /// How many samples.
    pub samples: usize,
    /// The seed of chance.
    pub seed: u64,
}

/// What came of one drive.
#[derive(Debug, Clone, PartialEq)]
pub struct Odds {
    /// Samples in which it is admissible.
    pub passed: usize,
    /// The interval that holds its probability with 95 %.
    pub interval: (f64, f64),
    /// The rule that it breaks first in most of the other samples.
    pub fails_first: Option<String>,
    /// Its worst utilisation in the best 5 %, 50 % and 95 % of the samples; none where no rule moves.
    pub utilisation: Option<[f64; 3]>,
}

/// By what the values of the brief are multiplied.
#[derive(Debug, Clone, Copy)]
struct Factors {
    mass: f64,
    drag: f64,
    force: f64,
    swing: f64,
    stiffness: f64,
}

impl Factors {
    /// What these normal numbers make of the spreads.
    fn of(normals: [f64; 5], spread: &Uncertainty) -> Factors {
        let [mass, drag, force, swing, stiffness] = normals;
        Factors {
            mass: factor(mass, spread.moved_mass.value.si()),
            drag: factor(drag, spread.guide_friction.value.si()),
            force: factor(force, spread.cutting_force.value.si()),
            swing: factor(swing, spread.temperature_swing.value.si()),
            stiffness: factor(stiffness, spread.stiffness.value.si()),
        }
    }

    /// All five are drawn in every sample, so that a spread of zero leaves the others as they are.
    fn sample(seed: u64, sample: usize, spread: &Uncertainty) -> Factors {
        let mut chance = Chance::of(seed, sample as u64);
        Factors::of(std::array::from_fn(|_| chance.normal()), spread)
    }
}

/// One drive in one sample.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Judgement {
    /// The place in the order of its family of the rule that it breaks first.
    broken: Option<usize>,
    /// The worst utilisation of those that move.
    worst: f64,
}

/// Drives of one family, and the rules in the order in which the search judges them.
struct Group<'f> {
    family: &'static str,
    paths: Vec<&'f Path>,
    rules: Vec<usize>,
    /// For each drive the rules that the factors move.
    moving: Vec<Vec<bool>>,
}

impl Trial<'_> {
    /// The odds of drives of the axis, in their order.
    pub fn run(&self, drives: &[Found]) -> Vec<Odds> {
        let mut lean = self.brief.clone();
        // every sample copies the brief; its text is not needed
        lean.text.clear();
        lean.assumptions.clear();
        let mut groups: BTreeMap<&str, Group<'_>> = BTreeMap::new();
        for found in drives {
            let rules = || self.rules(found.family);
            let group = groups.entry(found.family).or_insert_with(|| Group {
                family: found.family,
                paths: Vec::new(),
                rules: rules(),
                moving: Vec::new(),
            });
            group.paths.push(&found.path);
        }
        for group in groups.values_mut() {
            group.moving = self.moving(&lean, group);
        }
        let spread = &self.brief.uncertainty;
        let samples: Vec<Vec<Vec<Judgement>>> = (0..self.samples)
            .into_par_iter()
            .map(|sample| {
                let factors = Factors::sample(self.seed, sample, spread);
                groups.values().map(|group| self.judge(&lean, group, &factors)).collect()
            })
            .collect();
        let mut next: BTreeMap<&str, usize> = BTreeMap::new();
        drives
            .iter()
            .map(|found| {
                let place = groups.keys().position(|family| *family == found.family).unwrap_or(0);
                let drive = next.entry(found.family).or_insert(0);
                let of_drive: Vec<Judgement> = samples.iter().map(|sample| sample[place][*drive]).collect();
                let group = &groups[found.family];
                let odds = self.odds(&of_drive, group, group.moving[*drive].contains(&true));
                *drive += 1;
                odds
            })
            .collect()
    }

    fn odds(&self, samples: &[Judgement], group: &Group<'_>, moves: bool) -> Odds {
        let passed = samples.iter().filter(|sample| sample.broken.is_none()).count();
        let mut broken = vec![0_usize; group.rules.len()];
        for rule in samples.iter().filter_map(|sample| sample.broken) {
            broken[rule] += 1;
        }
        // of rules that fail as often the one that is judged first
        let most = broken.iter().enumerate().max_by_key(|(place, count)| (**count, std::cmp::Reverse(*place)));
        let most = most.filter(|(_, count)| **count > 0).map(|(place, _)| group.rules[place]);
        let mut worst: Vec<f64> = samples.iter().map(|sample| sample.worst).collect();
        worst.sort_by(f64::total_cmp);
        let quantile = |share: f64| {
            let place = (share * worst.len() as f64).ceil() as usize;
            worst.get(place.saturating_sub(1)).copied().unwrap_or(f64::NAN)
        };
        Odds {
            passed,
            interval: wilson(passed, samples.len()),
            fails_first: most.map(|rule| self.setting.rulebook.rules[rule].id.clone()),
            utilisation: moves.then(|| QUANTILES.map(quantile)),
        }
    }

    /// The binding rules of a family in the order in which the search judges them; those that hold only for other values last.
    fn rules(&self, family: &str) -> Vec<usize> {
        struct Rows<'r, 'a>(&'r Demand<'r>, &'r Setting<'a>);
        impl WithFamily for Rows<'_, '_> {
            type Output = Vec<usize>;
            fn with<F: Family>(self, family: &F) -> Vec<usize> {
                Plan::new(family, self.0, self.1).rows.iter().flatten().map(|row| row.rule).collect()
            }
        }
        let demand = Demand::new(self.brief, self.axis, Mass::of_si(self.carried));
        let (catalog, rules) = (self.setting.catalog, &self.setting.rulebook.rules);
        let mut order = with_family(family, &demand, catalog, Rows(&demand, self.setting)).unwrap_or_default();
        let binding = (0..rules.len()).filter(|&place| {
            let rule = &rules[place];
            rule.obligation == Obligation::Shall && rule.meant_for(family) && !self.setting.waived.contains(&rule.id)
        });
        let others: Vec<usize> = binding.filter(|place| !order.contains(place)).collect();
        order.extend(others);
        order
    }

    /// The rules that factors of all quantities, up and down, move, for each drive of a group.
    fn moving(&self, lean: &Brief, group: &Group<'_>) -> Vec<Vec<bool>> {
        let spread = &self.brief.uncertainty;
        let still = self.utilisations(lean, group, &Factors::of([0.0; 5], spread));
        let mut moving: Vec<Vec<bool>> = group.paths.iter().map(|_| vec![false; group.rules.len()]).collect();
        for quantity in 0..5 {
            for probe in PROBES {
                let mut normals = [0.0; 5];
                normals[quantity] = probe;
                let probed = self.utilisations(lean, group, &Factors::of(normals, spread));
                for ((moves, one), other) in moving.iter_mut().zip(&still).zip(&probed) {
                    for ((moves, one), other) in moves.iter_mut().zip(one).zip(other) {
                        *moves |= differ(*one, *other);
                    }
                }
            }
        }
        moving
    }

    /// The utilisation of every rule by every drive of a group; 0 where a rule does not hold.
    fn utilisations(&self, lean: &Brief, group: &Group<'_>, factors: &Factors) -> Vec<Vec<f64>> {
        struct Enter<'e, 'a> {
            group: &'e Group<'e>,
            demand: &'e Demand<'e>,
            setting: &'e Setting<'a>,
            stiffness: f64,
        }
        impl WithFamily for Enter<'_, '_> {
            type Output = Vec<Vec<f64>>;
            fn with<F: Family>(self, family: &F) -> Self::Output {
                let mut sheet = Softened::by(self.stiffness);
                self.demand.enter(&mut sheet);
                let stages = family.stages().len();
                let rules = &self.setting.rulebook.rules;
                let mut judged = |path: &&Path| {
                    for stage in 0..stages {
                        family.enter(stage, path.as_slice(), &mut sheet);
                    }
                    let of = |&place: &usize| utilisation(&rules[place], &sheet);
                    self.group.rules.iter().map(of).collect()
                };
                self.group.paths.iter().map(&mut judged).collect()
            }
        }
        let shaken = shaken(lean, self.axis, factors);
        let demand = Demand::new(&shaken, self.axis, Mass::of_si(self.carried * factors.mass));
        let work = Enter { group, demand: &demand, setting: self.setting, stiffness: factors.stiffness };
        with_family(group.family, &demand, self.setting.catalog, work).unwrap_or_default()
    }

    fn judge(&self, lean: &Brief, group: &Group<'_>, factors: &Factors) -> Vec<Judgement> {
        let all = self.utilisations(lean, group, factors);
        let of_drive = |(of_rules, moving): (&Vec<f64>, &Vec<bool>)| {
            let moved = of_rules.iter().zip(moving).filter(|(_, moves)| **moves).map(|(utilisation, _)| *utilisation);
            // what cannot be worked out is worse than any number
            let known = |utilisation: f64| if utilisation.is_nan() { f64::INFINITY } else { utilisation };
            let worst = moved.map(known).fold(0.0, |worst: f64, next| if next > worst { next } else { worst });
            Judgement { broken: of_rules.iter().position(|utilisation| !passes(*utilisation)), worst }
        };
        all.iter().zip(&group.moving).map(of_drive).collect()
    }
}

fn utilisation(rule: &crate::rule::Rule, sheet: &impl Ledger) -> f64 {
    if rule.holds(sheet) { rule.utilisation(sheet) } else { 0.0 }
}

fn differ(one: f64, other: f64) -> bool {
    match (one.is_nan(), other.is_nan()) {
        (false, false) => (one - other).abs() > SAME * one.abs(),
        (one, other) => one != other,
    }
}

/// The brief with every value multiplied.
fn shaken(brief: &Brief, axis: usize, factors: &Factors) -> Brief {
    let mut brief = brief.clone();
    let swing = brief.temperature_swing.value.si() * factors.swing;
    brief.temperature_swing.value = Measure::of_si(swing);
    let shaken = &mut brief.axes[axis];
    shaken.moved_mass = Measure::of_si(shaken.moved_mass.si() * factors.mass);
    if let Some(balance) = &mut shaken.counterbalance {
        balance.share = Ratio::of_si(balance.share.si() / factors.mass);
    }
    shaken.guide_friction.value = Ratio::of_si(shaken.guide_friction.value.si() * factors.drag);
    shaken.wiper_force.value = Measure::of_si(shaken.wiper_force.value.si() * factors.drag);
    shaken.cutting_force.value = Measure::of_si(shaken.cutting_force.value.si() * factors.force);
    for line in &mut shaken.duty {
        line.force = Measure::of_si(line.force.si() * factors.force);
    }
    for line in &mut shaken.moves {
        line.force = Measure::of_si(line.force.si() * factors.force);
    }
    brief
}
