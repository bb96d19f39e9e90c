//! The best that any configuration of a family reaches on each rule, whatever else it fails.
//!
//! Method: the stages are walked from the first on, as far as their choices stay countable, without judging.
//! A rule whose best utilisation is above one rules the family out on its own: no choice of parts keeps it.
//! A rule that some configuration keeps is of no interest any more, and where no other is left behind a choice, nothing there is
//! walked. A spread of configurations, looked at beforehand, settles most rules.
//! Limits: rules that are judged in later stages than are walked are not looked at.

mod tests;

use super::{MOST_STAGES, Path, Plan, Setting};
use crate::drive::{Demand, Family};
use crate::ledger::Known;
use crate::rule::passes;
use rayon::prelude::*;
use std::sync::atomic::{AtomicBool, Ordering};

/// Choices that are walked at the most.
const MOST_CHOICES: u64 = 200_000;
/// Configurations that are looked at beforehand.
const SPREAD: usize = 256;
/// The fraction of the golden section, whose multiples spread evenly.
const GOLDEN: f64 = 0.618_033_988_749_894_9;

/// A rule that no configuration keeps, and the configuration that comes nearest to it.
#[derive(Debug, Clone, PartialEq)]
pub struct RuledOut {
    /// The place of the rule in the rulebook.
    pub rule: usize,
    /// The best utilisation that any configuration reaches.
    pub utilisation: f64,
    /// The choices that reach it; later stages are at their first choice.
    pub path: Path,
}

/// The rules that no configuration of the family keeps, the worst first.
pub fn ruled_out<F: Family>(family: &F, demand: &Demand<'_>, setting: &Setting<'_>) -> Vec<RuledOut> {
    // in their own order the stages know most of the rules early
    let own = (0..family.stages().len()).collect();
    let plan = Plan::in_order(own, family, demand, setting);
    let mut choices = 1;
    let depth = plan.stages.iter().take_while(|&&stage| {
        choices *= stage as u64;
        choices <= MOST_CHOICES
    });
    let depth = depth.count();
    if plan.stages.contains(&0) {
        return Vec::new();
    }
    let mut axis = Known::default();
    demand.enter(&mut axis);
    axis.leave_out(plan.left_out);
    let kept = setting.rulebook.rules.iter().map(|_| AtomicBool::new(false)).collect();
    let reach = Reach { family, plan: &plan, depth, kept };
    reach.look_about(&mut axis.clone());
    let walked: Vec<Vec<RuledOut>> = (0..plan.stages[0])
        .into_par_iter()
        .map_init(
            || axis.clone(),
            |sheet, choice| {
                let (mut path, mut best) = ([0; MOST_STAGES], Vec::new());
                reach.choose(0, choice, &mut path, sheet, &mut best);
                reach.descend(1, &mut path, sheet, &mut best);
                best
            },
        )
        .collect();
    // in the order of the first choices, so that the first of equals stays
    let mut best = Vec::new();
    walked.into_iter().flatten().for_each(|reached| keep_better(&mut best, reached));
    best.retain(|reached| !reach.is_kept(reached.rule));
    best.sort_by(|a, b| b.utilisation.total_cmp(&a.utilisation).then_with(|| a.rule.cmp(&b.rule)));
    best
}

fn keep_better(best: &mut Vec<RuledOut>, reached: RuledOut) {
    match best.iter_mut().find(|known| known.rule == reached.rule) {
        Some(known) if reached.utilisation < known.utilisation => *known = reached,
        Some(_) => {}
        None => best.push(reached),
    }
}

struct Reach<'r, F> {
    family: &'r F,
    plan: &'r Plan,
    depth: usize,
    /// The rules that some configuration keeps.
    kept: Vec<AtomicBool>,
}

impl<F: Family> Reach<'_, F> {
    fn is_kept(&self, rule: usize) -> bool {
        self.kept[rule].load(Ordering::Relaxed)
    }

    /// Whether a rule that is judged from this stage on is not known to be kept.
    fn open(&self, stage: usize) -> bool {
        self.plan.rows[stage..self.depth].iter().flatten().any(|row| !self.is_kept(row.rule))
    }

    /// Notes which rules a spread of configurations keeps.
    fn look_about(&self, sheet: &mut Known) {
        for number in 0..SPREAD {
            let (mut path, mut share) = ([0; MOST_STAGES], number as f64 * GOLDEN);
            for stage in 0..self.depth {
                share = share.fract();
                let choices = self.plan.stages[stage] as f64;
                self.choose(stage, (share * choices) as usize, &mut path, sheet, &mut Vec::new());
                share = share * choices + number as f64 * GOLDEN;
            }
        }
    }

    /// Enters a choice of a stage and keeps what its open rules come to.
    fn choose(&self, stage: usize, choice: usize, path: &mut Path, sheet: &mut Known, best: &mut Vec<RuledOut>) {
        path[stage] = choice as u16;
        self.family.enter(stage, path, sheet);
        for row in self.plan.rows[stage].iter().filter(|row| !self.is_kept(row.rule)) {
            let utilisation = row.utilisation(sheet);
            if passes(utilisation) {
                self.kept[row.rule].store(true, Ordering::Relaxed);
            } else {
                let utilisation = if utilisation.is_nan() { f64::INFINITY } else { utilisation };
                keep_better(best, RuledOut { rule: row.rule, utilisation, path: *path });
            }
        }
    }

    fn descend(&self, stage: usize, path: &mut Path, sheet: &mut Known, best: &mut Vec<RuledOut>) {
        if stage >= self.depth || !self.open(stage) {
            return;
        }
        for choice in 0..self.plan.stages[stage] {
            self.choose(stage, choice, path, sheet, best);
            self.descend(stage + 1, path, sheet, best);
        }
        path[stage] = 0;
    }
}
