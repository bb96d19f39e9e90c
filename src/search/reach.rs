//! The best that any configuration of a family reaches on each rule, whatever else it fails.
//!
//! Method: the stages are walked from the first on, as far as their choices stay countable, without judging.
//! A rule whose best utilisation is above one rules the family out on its own: no choice of parts keeps it.
//! Limits: rules that are judged in later stages than are walked are not looked at.

use super::{MOST_STAGES, Path, Plan, Setting};
use crate::drive::{Demand, Family};
use crate::ledger::Known;
use crate::rule::passes;

/// Choices that are walked at the most.
const MOST_CHOICES: u64 = 200_000;

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
    let mut sheet = Known::default();
    demand.enter(&mut sheet);
    let mut best: Vec<RuledOut> = Vec::new();
    descend(family, &plan, depth, 0, &mut [0; MOST_STAGES], &mut sheet, &mut best);
    best.retain(|reach| !passes(reach.utilisation));
    best.sort_by(|a, b| b.utilisation.total_cmp(&a.utilisation).then_with(|| a.rule.cmp(&b.rule)));
    best
}

fn descend<F: Family>(
    family: &F,
    plan: &Plan,
    depth: usize,
    stage: usize,
    path: &mut Path,
    sheet: &mut Known,
    best: &mut Vec<RuledOut>,
) {
    if stage == depth {
        return;
    }
    for choice in 0..plan.stages[stage] {
        path[stage] = choice as u16;
        family.enter(stage, path, sheet);
        for row in &plan.rows[stage] {
            let utilisation = row.utilisation(sheet);
            let utilisation = if utilisation.is_nan() { f64::INFINITY } else { utilisation };
            match best.iter_mut().find(|reach| reach.rule == row.rule) {
                Some(reach) if utilisation < reach.utilisation => {
                    (reach.utilisation, reach.path) = (utilisation, *path)
                }
                Some(_) => {}
                None => best.push(RuledOut { rule: row.rule, utilisation, path: *path }),
            }
        }
        descend(family, plan, depth, stage + 1, path, sheet, best);
    }
    path[stage] = 0;
}
