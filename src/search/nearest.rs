//! The configuration that misses by least, for a family of which none is admissible.
//!
//! Method: the shortfall of a configuration is the sum over the binding rules it fails of utilisation minus
//! one. It only grows from stage to stage, so a branch that already misses by more than the best found is
//! left; the answer is exact. A first bound comes from following the few that miss by least. Among equals the smallest path is taken.

use super::{MOST_STAGES, Path, Plan, Setting};
use crate::drive::{Demand, Family};
use crate::ledger::Known;
use crate::rule::passes;
use rayon::prelude::*;
use std::sync::atomic::{AtomicU64, Ordering};

/// What a rule that cannot be worked out counts as a shortfall.
const NOT_EVALUATED: f64 = 1e6;

/// How many configurations are followed for a first bound.
const FEW: usize = 64;

/// The configuration with the least shortfall, and the shortfall.
pub fn nearest<F: Family>(family: &F, demand: &Demand<'_>, setting: &Setting<'_>) -> Option<(Path, f64)> {
    let plan = Plan::new(family, demand, setting);
    if plan.configurations() == 0 {
        return None;
    }
    let mut axis = Known::default();
    demand.enter(&mut axis);
    // a bound shared by all branches: only what is strictly worse is left, so that ties stay in
    let shared = AtomicU64::new(f64::INFINITY.to_bits());
    let descent = Descent { family, plan: &plan, shared: &shared };
    shared.store(descent.reached_by_a_few(&mut axis.clone()).to_bits(), Ordering::Relaxed);
    (0..plan.stages[0])
        .into_par_iter()
        .map_init(
            || axis.clone(),
            |sheet, first| {
                let mut path = [0; MOST_STAGES];
                let mut best = None;
                descent.choice(0, first, 0.0, &mut path, sheet, &mut best);
                best
            },
        )
        .reduce(|| None, better)
}

type Miss = Option<(Path, f64)>;

fn better(a: Miss, b: Miss) -> Miss {
    match (a, b) {
        (Some(a), Some(b)) => Some(if b.1.total_cmp(&a.1).then_with(|| b.0.cmp(&a.0)).is_lt() { b } else { a }),
        (a, None) => a,
        (None, b) => b,
    }
}

struct Descent<'n, F> {
    family: &'n F,
    plan: &'n Plan,
    shared: &'n AtomicU64,
}

impl<F: Family> Descent<'_, F> {
    /// A shortfall that some configuration has: of the few that miss by least at each stage the best at the end.
    fn reached_by_a_few(&self, sheet: &mut Known) -> f64 {
        let mut few: Vec<(f64, Path)> = vec![(0.0, [0; MOST_STAGES])];
        for (stage, &choices) in self.plan.stages.iter().enumerate() {
            let mut next = Vec::with_capacity(few.len() * choices);
            for &(missed, mut path) in &few {
                for &earlier in &self.plan.order[..stage] {
                    self.family.enter(earlier, &path, sheet);
                }
                for choice in 0..choices {
                    path[self.plan.order[stage]] = choice as u16;
                    self.family.enter(self.plan.order[stage], &path, sheet);
                    next.push((missed + self.shortfall(stage, sheet), path));
                }
            }
            next.sort_by(|a, b| a.0.total_cmp(&b.0).then_with(|| a.1.cmp(&b.1)));
            next.truncate(FEW);
            few = next;
        }
        few.first().map_or(f64::INFINITY, |(missed, _)| *missed)
    }

    fn choice(&self, stage: usize, choice: usize, missed: f64, path: &mut Path, sheet: &mut Known, best: &mut Miss) {
        path[self.plan.order[stage]] = choice as u16;
        self.family.enter(self.plan.order[stage], path, sheet);
        let missed = missed + self.shortfall(stage, sheet);
        let mine = best.as_ref().is_some_and(|(_, least)| missed > *least);
        if mine || missed > f64::from_bits(self.shared.load(Ordering::Relaxed)) {
            return;
        }
        let next = stage + 1;
        if next == self.plan.stages.len() {
            *best = better(best.take(), Some((*path, missed)));
            // positive floats order as their bits do
            self.shared.fetch_min(missed.to_bits(), Ordering::Relaxed);
            return;
        }
        for further in 0..self.plan.stages[next] {
            self.choice(next, further, missed, path, sheet, best);
        }
        path[self.plan.order[next]] = 0;
    }

    fn shortfall(&self, stage: usize, sheet: &Known) -> f64 {
        self.plan.rows[stage]
            .iter()
            .map(|row| row.utilisation(sheet))
            .filter(|&utilisation| !passes(utilisation))
            .map(|utilisation| if utilisation.is_finite() { utilisation - 1.0 } else { NOT_EVALUATED })
            .sum()
    }
}
