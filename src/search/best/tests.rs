//! What the branches of the first two choices promise and give, against trying everything behind them.
#![cfg(test)]

use super::{Accept, Best, Branch, Dive};
use crate::drive::{Demand, Family, WithFamily};
use crate::ledger::Known;
use crate::search::steps::Steps;
use crate::search::tests::{Trial, every_path, on_all};
use crate::search::{Attributes, Found, Path, Plan, Setting};
use std::cell::RefCell;
use std::sync::atomic::AtomicU64;

/// The admissible configurations of a pair of first choices, best first.
fn behind<F: Family>(family: &F, plan: &Plan, axis: &Known, setting: &Setting<'_>, pair: [u16; 2]) -> Vec<Found> {
    let on_pair = |path: &Path| path[plan.order[0]] == pair[0] && path[plan.order[1]] == pair[1];
    let mut sheet = axis.clone();
    let mut found: Vec<Found> = Vec::new();
    for path in every_path(&family.stages()).into_iter().filter(on_pair) {
        plan.order.iter().for_each(|&stage| family.enter(stage, &path, &mut sheet));
        if plan.rows.iter().flatten().all(|row| row.passed(&sheet)) {
            let unmet = plan.unmet_advice(&sheet);
            let attributes = Attributes::of(family, &path, &sheet, &setting.merit, unmet);
            found.push(Found { family: family.id(), path, attributes });
        }
    }
    found.sort_by(Found::order);
    found
}

/// The best of a family, as the search finds it.
pub fn best_of<F: Family>(family: &F, demand: &Demand<'_>, setting: &Setting<'_>) -> Option<Found> {
    let shared = AtomicU64::new(f64::INFINITY.to_bits());
    Best { demand, setting, shared: &shared, accept: &|_| true }.with(family)
}

struct Branches;

impl Trial for Branches {
    /// Pairs of first choices with and without an admissible configuration, and the shares of the best merit that the bounds
    /// of the former come to, all together.
    type Output = (usize, usize, f64);
    fn on<F: Family>(&self, family: &F, demand: &Demand<'_>, setting: &Setting<'_>) -> (usize, usize, f64) {
        let plan = Plan::new(family, demand, setting);
        let mut axis = Known::default();
        demand.enter(&mut axis);
        let mut counts = (0, 0, 0.0);
        // one sheet for all, so that what another branch has left in it must not count
        let used = RefCell::new(axis.clone());
        for first in 0..plan.stages[0] {
            for second in 0..plan.stages[1] {
                let all = behind(family, &plan, &axis, setting, [first as u16, second as u16]);
                let dive = |bound: f64, accept: Accept<'_>| {
                    let shared = AtomicU64::new(bound.to_bits());
                    let steps = Steps { family, plan: &plan, plainly: false };
                    let dive = Dive { steps, setting, shared: &shared, accept };
                    let pair = dive.pair(first, second, &mut used.borrow_mut());
                    let floor = pair.as_ref().map(|branch: &Branch| branch.floor);
                    (floor, pair.and_then(|branch| dive.branch(branch, &mut used.borrow_mut())))
                };
                let (floor, found) = dive(f64::INFINITY, &|_| true);
                assert_eq!(found.as_ref(), all.first());
                let Some(best) = all.first() else {
                    counts.1 += 1;
                    assert_eq!(dive(1e12, &|_| true).1, None);
                    continue;
                };
                counts.0 += 1;
                let merit = best.attributes.merit;
                let floor = floor.expect("a branch");
                assert!(floor <= merit, "{floor} of {merit}");
                counts.2 += floor / merit;
                // what is as good as the best so far counts, what is worse does not
                assert_eq!(dive(merit, &|_| true).1.as_ref(), Some(best));
                assert_eq!(dive(merit * (1.0 - 1e-6), &|_| true).1, None);
                assert_eq!(dive(floor * (1.0 - 1e-6), &|_| true).0, None, "a bound far below leaves the branch");
                // the best that is accepted, here of the more exact half
                let mut errors: Vec<f64> = all.iter().map(|found| found.attributes.error).collect();
                errors.sort_by(f64::total_cmp);
                let most = errors[errors.len() / 2];
                let exact = |attributes: &Attributes| attributes.error <= most;
                let expected = all.iter().find(|found| exact(&found.attributes));
                assert_eq!(dive(f64::INFINITY, &exact).1.as_ref(), expected);
            }
        }
        counts
    }
}

#[test]
fn each_pair_of_first_choices_gives_the_best_behind_it() {
    let counts = on_all(&Branches);
    let (with, without) = counts.iter().fold((0, 0), |sum, one| (sum.0 + one.0, sum.1 + one.1));
    let shares: f64 = counts.iter().map(|one| one.2).sum();
    assert!(with > 20 && without > 20, "{counts:?}");
    // play is entered late, so that what falls by it alone is in no bound
    assert!(shares > 0.54 * with as f64, "the bounds come to {shares} of {with}: {counts:?}");
}
