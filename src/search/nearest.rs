//! The configuration that misses by least, for a family of which none is admissible.
//!
//! Method: the shortfall of a configuration is the sum over the binding rules it fails of utilisation minus
//! one. It only grows from stage to stage, and what no configuration keeps is missed by the least that any reaches, so a branch that
//! misses by more than the best found is left. A first bound comes from following the few that miss by least, and from changing single
//! choices as long as that helps. Among equals the smallest first choice is taken,
//! then the first in the order of the stages.
//! Limits: exact as long as no first choice has more behind it than may be looked at; beyond that the answer is the best of
//! what was looked at, which misses by little but perhaps not by least.

mod tests;

use super::{MOST_STAGES, Path, Plan, RuledOut, Setting};
use crate::drive::{Demand, Family};
use crate::ledger::Known;
use crate::rule::passes;
use rayon::prelude::*;

/// What a rule that cannot be worked out counts as a shortfall.
const NOT_EVALUATED: f64 = 1e6;

/// How many configurations are followed for a first bound.
const FEW: usize = 64;

/// How many choices are looked at behind each first one before the best so far has to do.
const MOST_LOOKS: u64 = 10_000;

/// The configuration with the least shortfall that was found, and the shortfall; what rules the family out is known.
pub fn nearest<F: Family>(
    family: &F,
    demand: &Demand<'_>,
    setting: &Setting<'_>,
    ruled_out: &[RuledOut],
) -> Option<(Path, f64)> {
    let plan = Plan::new(family, demand, setting);
    if plan.configurations() == 0 {
        return None;
    }
    let mut axis = Known::default();
    demand.enter(&mut axis);
    axis.leave_out(plan.left_out);
    let descent = Descent::new(family, &plan, ruled_out);
    let reached = descent.reached_by_a_few(&mut axis.clone()).and_then(|few| {
        let pairs = (0..plan.stages[0] * plan.stages[1]).into_par_iter();
        let settled = pairs.map_init(|| axis.clone(), |sheet, pair| Some(descent.settled(few.0, pair, sheet)));
        better(Some(few), settled.reduce(|| None, better))
    });
    let looked = (0..plan.stages[0]).into_par_iter().map_init(
        || axis.clone(),
        |sheet, first| {
            // only what is strictly worse is left, so that ties stay in
            let mut look =
                Look { bound: reached.map_or(f64::INFINITY, |(_, missed)| missed), best: None, left: MOST_LOOKS };
            descent.choice(0, first, 0.0, &mut [0; MOST_STAGES], sheet, &mut look);
            look.best
        },
    );
    looked.reduce(|| None, better).or(reached)
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
    /// What is missed at least from each place on.
    behind: Vec<f64>,
}

/// What is known behind one first choice; nothing of another enters, so that threads change nothing.
struct Look {
    bound: f64,
    best: Miss,
    left: u64,
}

/// By how much a rule of this utilisation is missed.
fn miss(utilisation: f64) -> f64 {
    if utilisation.is_finite() { utilisation - 1.0 } else { NOT_EVALUATED }
}

impl<'n, F: Family> Descent<'n, F> {
    fn new(family: &'n F, plan: &'n Plan, ruled_out: &[RuledOut]) -> Descent<'n, F> {
        let mut behind = vec![0.0; plan.stages.len() + 1];
        for place in (0..plan.stages.len()).rev() {
            let here = ruled_out.iter().filter(|out| plan.rows[place].iter().any(|row| row.rule == out.rule));
            // a hair less, so that rounding cuts nothing that ties
            behind[place] = behind[place + 1] + (1.0 - 1e-9) * here.map(|out| miss(out.utilisation)).sum::<f64>();
        }
        Descent { family, plan, behind }
    }

    /// Of the few that miss by least at each stage the best at the end.
    fn reached_by_a_few(&self, sheet: &mut Known) -> Miss {
        let mut few: Vec<(f64, Path)> = vec![(0.0, [0; MOST_STAGES])];
        for (place, &choices) in self.plan.stages.iter().enumerate() {
            let stage = self.plan.order[place];
            let mut next = Vec::new();
            for &(missed, mut path) in &few {
                for &earlier in &self.plan.order[..place] {
                    self.family.enter(earlier, &path, sheet);
                }
                for choice in 0..choices {
                    path[stage] = choice as u16;
                    self.family.enter(stage, &path, sheet);
                    next.push((missed + self.shortfall(place, sheet), path));
                }
            }
            next.sort_by(|a, b| a.0.total_cmp(&b.0).then_with(|| a.1.cmp(&b.1)));
            next.truncate(FEW);
            few = next;
        }
        few.first().map(|&(missed, path)| (path, missed))
    }

    /// From this path, with other choices of the first two stages, to where no other choice of a single stage misses by less.
    fn settled(&self, from: Path, pair: usize, sheet: &mut Known) -> (Path, f64) {
        let (plan, mut path) = (self.plan, from);
        path[plan.order[0]] = (pair / plan.stages[1]) as u16;
        path[plan.order[1]] = (pair % plan.stages[1]) as u16;
        let mut least = self.shortfall_from(0, 0.0, f64::INFINITY, &path, sheet).unwrap_or(f64::INFINITY);
        loop {
            let before = least;
            // what the stages before this place miss by; another choice of the place does not change it
            let mut earlier = 0.0;
            for (place, &choices) in plan.stages.iter().enumerate() {
                let stage = plan.order[place];
                for choice in 0..choices {
                    if usize::from(path[stage]) == choice {
                        continue;
                    }
                    let mut other = path;
                    other[stage] = choice as u16;
                    if let Some(missed) = self.shortfall_from(place, earlier, least, &other, sheet) {
                        (path, least) = (other, missed);
                    }
                }
                self.family.enter(stage, &path, sheet);
                earlier += self.shortfall(place, sheet);
            }
            if least >= before {
                return (path, least);
            }
        }
    }

    /// The whole shortfall of a path of which the stages before this place are entered and miss by so much; none unless it is
    /// less than this.
    fn shortfall_from(&self, place: usize, earlier: f64, less: f64, path: &Path, sheet: &mut Known) -> Option<f64> {
        let mut missed = earlier;
        for (place, &stage) in self.plan.order.iter().enumerate().skip(place) {
            self.family.enter(stage, path, sheet);
            missed += self.shortfall(place, sheet);
            if missed + self.behind[place + 1] >= less {
                return None;
            }
        }
        Some(missed)
    }

    fn choice(&self, place: usize, choice: usize, missed: f64, path: &mut Path, sheet: &mut Known, look: &mut Look) {
        // a stage that leaves no choice costs none
        if self.plan.stages[place] > 1 {
            if look.left == 0 {
                return;
            }
            look.left -= 1;
        }
        let stage = self.plan.order[place];
        path[stage] = choice as u16;
        self.family.enter(stage, path, sheet);
        let missed = missed + self.shortfall(place, sheet);
        // an equal one that comes later is no better
        let at_least = missed + self.behind[place + 1];
        let mine = look.best.as_ref().is_some_and(|(_, least)| at_least >= *least);
        if mine || at_least > look.bound {
            return;
        }
        let next = place + 1;
        if next == self.plan.stages.len() {
            look.best = Some((*path, missed));
            return;
        }
        for further in 0..self.plan.stages[next] {
            self.choice(next, further, missed, path, sheet, look);
        }
        path[self.plan.order[next]] = 0;
    }

    fn shortfall(&self, place: usize, sheet: &Known) -> f64 {
        self.plan.rows[place]
            .iter()
            .map(|row| row.utilisation(sheet))
            .filter(|&utilisation| !passes(utilisation))
            .map(miss)
            .sum()
    }
}
