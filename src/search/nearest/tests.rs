//! Each way to the nearest miss against what every configuration misses by.
#![cfg(test)]

use super::{Descent, Look, NOT_EVALUATED, nearest};
use crate::drive::{Demand, Family};
use crate::ledger::Known;
use crate::rule::passes;
use crate::search::ruled_out;
use crate::search::tests::{Trial, every_path, on_all};
use crate::search::{MOST_STAGES, Path, Plan, Setting};

/// What a configuration misses by, stage by stage as they are taken.
fn missed<F: Family>(family: &F, plan: &Plan, path: &Path, sheet: &mut Known) -> f64 {
    plan.order.iter().for_each(|&stage| family.enter(stage, path, sheet));
    let of_place = |rows: &Vec<crate::search::row::Row>| -> f64 {
        let utilisations = rows.iter().map(|row| row.utilisation(sheet)).filter(|utilisation| !passes(*utilisation));
        utilisations.map(|utilisation| if utilisation.is_finite() { utilisation - 1.0 } else { NOT_EVALUATED }).sum()
    };
    plan.rows.iter().map(of_place).fold(0.0, |sum, more| sum + more)
}

struct Ways;

impl Trial for Ways {
    /// Whether something is missed at least, and whether the few have come to the least.
    type Output = (bool, bool);
    fn on<F: Family>(&self, family: &F, demand: &Demand<'_>, setting: &Setting<'_>) -> (bool, bool) {
        let plan = Plan::new(family, demand, setting);
        let mut sheet = Known::default();
        demand.enter(&mut sheet);
        let mut all: Vec<(f64, Path)> = every_path(&family.stages())
            .into_iter()
            .map(|path| (missed(family, &plan, &path, &mut sheet), path))
            .collect();
        let taken = |path: &Path| plan.order.iter().map(|&stage| path[stage]).collect::<Vec<u16>>();
        all.sort_by(|a, b| a.0.total_cmp(&b.0).then_with(|| taken(&a.1).cmp(&taken(&b.1))));
        let (least, path) = all[0];
        let out = ruled_out(family, demand, setting);
        assert_eq!(nearest(family, demand, setting, &[]), Some((path, least)));
        assert_eq!(nearest(family, demand, setting, &out), Some((path, least)));

        let descent = Descent::new(family, &plan, &out);
        // no configuration misses by less than what is counted of it beforehand
        assert!(descent.behind[0] <= least, "{:?} {least}", descent.behind);
        let of = |path: &Path, sheet: &mut Known| missed(family, &plan, path, sheet);
        let (few, reached) = descent.reached_by_a_few(&mut sheet).expect("a path");
        assert_eq!(reached, of(&few, &mut sheet));

        // settled: as good as what it began with or better, and no single choice makes it better
        for pair in 0..plan.stages[0] * plan.stages[1] {
            let mut begun = few;
            begun[plan.order[0]] = (pair / plan.stages[1]) as u16;
            begun[plan.order[1]] = (pair % plan.stages[1]) as u16;
            let (settled, least) = descent.settled(few, pair, &mut sheet);
            assert_eq!(least, of(&settled, &mut sheet));
            assert!(least <= of(&begun, &mut sheet));
            for (place, &stage) in plan.order.iter().enumerate() {
                for choice in 0..plan.stages[place] {
                    let mut other = settled;
                    other[stage] = choice as u16;
                    assert!(of(&other, &mut sheet) >= least, "{other:?} misses by less than {settled:?}");
                }
            }
        }

        // looked at one by one: with any bound that is not below the least, and as often as it may be
        for first in 0..plan.stages[0] {
            let of_first = all.iter().find(|(_, path)| usize::from(path[plan.order[0]]) == first).expect("a path");
            let look = |bound: f64, left: u64, sheet: &mut Known| {
                let mut look = Look { bound, best: None, left };
                descent.choice(0, first, 0.0, &mut [0; MOST_STAGES], sheet, &mut look);
                (look.best, look.left)
            };
            let found = Some((of_first.1, of_first.0));
            assert_eq!(look(f64::INFINITY, u64::MAX, &mut sheet).0, found);
            assert_eq!(look(of_first.0, u64::MAX, &mut sheet).0, found);
            if of_first.0 > 0.0 {
                assert_eq!(look(0.999 * of_first.0, u64::MAX, &mut sheet).0, None);
            }
            let enough = plan.stages.iter().filter(|&&choices| choices > 1).count() as u64;
            assert_eq!(look(f64::INFINITY, enough - 1, &mut sheet), (None, 0));
            let (straight, left) = look(f64::INFINITY, enough, &mut sheet);
            assert_eq!(
                (straight.map(|(path, _)| taken(&path)[1..].to_vec()), left),
                (Some(vec![0; plan.stages.len() - 1]), 0)
            );
        }
        (least > 0.0, reached == least)
    }
}

#[test]
fn the_nearest_miss_is_found_on_every_way() {
    let ways = on_all(&Ways);
    let (missing, at_once) = (ways.iter().filter(|way| way.0).count(), ways.iter().filter(|way| way.1).count());
    assert!(missing > 0 && at_once >= 15, "{ways:?}");
}
