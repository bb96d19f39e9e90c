//! What is settled beforehand of the rules that some configuration keeps, against trying everything.
#![cfg(test)]

use super::{Reach, ruled_out};
use crate::drive::{Demand, Family};
use crate::ledger::Known;
use crate::search::tests::{Trial, every_path, on_all};
use crate::search::{Path, Plan, Setting};
use std::collections::BTreeMap;

struct Spread;

impl Trial for Spread {
    /// The rules that are kept by some configuration, those of them that the spread finds, and those that none keeps.
    type Output = [usize; 3];
    fn on<F: Family>(&self, family: &F, demand: &Demand<'_>, setting: &Setting<'_>) -> [usize; 3] {
        let plan = Plan::in_order((0..family.stages().len()).collect(), family, demand, setting);
        let mut axis = Known::default();
        demand.enter(&mut axis);
        // of each rule the least utilisation, and the first path that has it
        let mut least: BTreeMap<usize, (f64, Path)> = BTreeMap::new();
        let mut sheet = axis.clone();
        for path in every_path(&plan.stages) {
            (0..plan.stages.len()).for_each(|stage| family.enter(stage, &path, &mut sheet));
            for row in plan.rows.iter().flatten() {
                let utilisation = row.utilisation(&sheet);
                let utilisation = if utilisation.is_nan() { f64::INFINITY } else { utilisation };
                let known = least.entry(row.rule).or_insert((f64::INFINITY, path));
                if utilisation < known.0 {
                    *known = (utilisation, path);
                }
            }
        }
        let kept = |rule: usize| least.get(&rule).is_some_and(|(utilisation, _)| crate::rule::passes(*utilisation));
        let rules = setting.rulebook.rules.len();
        let flags = (0..rules).map(|_| std::sync::atomic::AtomicBool::new(false)).collect();
        let reach = Reach { family, plan: &plan, depth: plan.stages.len(), kept: flags };
        for stage in 0..plan.stages.len() {
            assert_eq!(reach.open(stage), plan.rows[stage..].iter().any(|rows| !rows.is_empty()));
        }
        reach.look_about(&mut axis.clone());
        for rule in 0..rules {
            assert!(!reach.is_kept(rule) || kept(rule), "{}", setting.rulebook.rules[rule].id);
        }
        for stage in 0..plan.stages.len() {
            let judged = plan.rows[stage..].iter().flatten();
            assert_eq!(reach.open(stage), judged.into_iter().any(|row| !reach.is_kept(row.rule)));
        }
        let found = ruled_out(family, demand, setting);
        for reached in &found {
            let (utilisation, path) = least[&reached.rule];
            assert_eq!(reached.utilisation, utilisation);
            // the stages behind the one that judges it are left at their first choices
            let judged = plan.rows.iter().position(|rows| rows.iter().any(|row| row.rule == reached.rule));
            let judged = judged.expect("a stage");
            assert_eq!(reached.path[..=judged], path[..=judged]);
            assert!(reached.path[judged + 1..].iter().all(|&choice| choice == 0));
        }
        let out = least.keys().filter(|&&rule| !kept(rule)).count();
        assert_eq!(found.len(), out);
        [rules_kept(&least, &kept), (0..rules).filter(|&rule| reach.is_kept(rule)).count(), out]
    }
}

fn rules_kept(least: &BTreeMap<usize, (f64, Path)>, kept: &dyn Fn(usize) -> bool) -> usize {
    least.keys().filter(|&&rule| kept(rule)).count()
}

#[test]
fn a_spread_settles_most_rules_and_what_is_left_is_walked() {
    let counts = on_all(&Spread);
    let sum = |place: usize| counts.iter().map(|count| count[place]).sum::<usize>();
    let [kept, settled, out] = [0, 1, 2].map(sum);
    assert!(settled <= kept && 10 * settled > 9 * kept && out > 0, "{counts:?}");
}
