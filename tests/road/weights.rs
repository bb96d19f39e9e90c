//! Over which weights a drive stays the best: against dense sampling, the linear program, and the search at other weights.

use crate::small::{self, HORIZONTAL, VERTICAL};
use axiswright::drive::{Demand, Merit, REFERENCES};
use axiswright::inquiry::weights::{interval, moved, prefer, shares, smallest_change, weighed, weights};
use axiswright::pipeline::{Inputs, recommend};
use axiswright::search::{Found, Setting, best_on, work_out};
use axiswright::units::{Mass, Measure};
use good_lp::solvers::microlp::microlp;
use good_lp::{Expression, Solution, SolverModel, constraint, variable, variables};
use proptest::prelude::*;

#[test]
fn the_interval_and_the_change_of_a_table_done_by_hand() {
    // Two drives and two weights of 0.5: the first is worse by 0.34 in the first and better by 0.4 in the second. It ties
    // where 0.4 t = 0.34 (1 - t), t = 0.34 / 0.74 = 0.459459; the two weights then move by 0.5 - 0.459459 each.
    let (own, rival) = ([0.60, 0.20], [0.26, 0.60]);
    let (from, to, below, above) = interval(&own, &[rival], &[0.5, 0.5], 1);
    assert!((from - 0.459_459_459).abs() < 1e-9, "{from}");
    assert_eq!((to, below, above), (1.0, Some(0), None));
    let (change, at) = smallest_change(&own, &rival, &[0.5, 0.5]).expect("a change");
    assert!((change - 2.0 * (0.5 - 0.34 / 0.74)).abs() < 1e-12 && (at[1] - 0.34 / 0.74).abs() < 1e-12);
    // three weights: behind by 0.02 now; a share moved from the third to the first gains 0.6 of itself
    let (own, rival) = ([0.5, 0.3, 0.2], [0.2, 0.3, 0.5]);
    let weights = [0.45, 0.033_333_333_333_333_33, 0.516_666_666_666_666_7];
    let (change, _) = smallest_change(&own, &rival, &weights).expect("a change");
    // 0.3 · (0.516667 - 0.45) = 0.02 is missing, over 0.6, times 2 for both weights that move
    assert!((change - 0.066_667).abs() < 1e-6, "{change}");
}

/// The linear program of the smallest change, by the solver.
fn by_program(own: &[f64; 4], rival: &[f64; 4], weights: &[f64; 4]) -> Option<f64> {
    let mut vars = variables!();
    let changed: Vec<_> = (0..4).map(|_| vars.add(variable().min(0.0))).collect();
    let by: Vec<_> = (0..4).map(|_| vars.add(variable().min(0.0))).collect();
    let mut model = vars.minimise(by.iter().copied().sum::<Expression>()).using(microlp);
    model = model.with(constraint!(changed.iter().copied().sum::<Expression>() == 1.0));
    for k in 0..4 {
        model = model.with(constraint!(changed[k] - by[k] <= weights[k]));
        model = model.with(constraint!(changed[k] + by[k] >= weights[k]));
    }
    let worse: Expression = (0..4).map(|k| (rival[k] - own[k]) * changed[k]).sum();
    model = model.with(constraint!(worse <= 0.0));
    model.solve().ok().map(|solution| by.iter().map(|by| solution.value(*by)).sum())
}

fn scores() -> impl Strategy<Value = [f64; 4]> {
    prop::array::uniform4(0.0..1.0_f64)
}

proptest! {
    #![proptest_config(small::cases(200))]

    #[test]
    fn the_interval_is_where_dense_sampling_finds_the_winner(
        table in prop::collection::vec(scores(), 2..12),
        raw in prop::array::uniform4(0.01..1.0_f64),
        weight in 0..4_usize,
    ) {
        let sum: f64 = raw.iter().sum();
        let weights = raw.map(|weight| weight / sum);
        let winner = (0..table.len())
            .min_by(|&a, &b| weighed(&table[a], &weights).total_cmp(&weighed(&table[b], &weights)))
            .expect("some");
        let rivals: Vec<[f64; 4]> = (0..table.len()).filter(|&place| place != winner).map(|place| table[place]).collect();
        let (from, to, ..) = interval(&table[winner], &rivals, &weights, weight);
        prop_assert!(from <= weights[weight] && weights[weight] <= to);
        for step in 0..=2000 {
            let share = f64::from(step) / 2000.0;
            let there = moved(&weights, weight, share);
            let own = weighed(&table[winner], &there);
            let stays = rivals.iter().all(|rival| own <= weighed(rival, &there));
            if (share - from).abs() > 1e-9 && (share - to).abs() > 1e-9 {
                prop_assert_eq!(stays, from < share && share < to, "at {}", share);
            }
        }
    }

    #[test]
    fn the_smallest_change_is_the_optimum_of_the_linear_program(
        own in scores(),
        rival in scores(),
        raw in prop::array::uniform4(0.01..1.0_f64),
    ) {
        let sum: f64 = raw.iter().sum();
        let weights = raw.map(|weight| weight / sum);
        prop_assume!(weighed(&own, &weights) < weighed(&rival, &weights));
        let closed = smallest_change(&own, &rival, &weights);
        let solved = by_program(&own, &rival, &weights);
        prop_assert_eq!(closed.is_some(), solved.is_some());
        if let (Some((change, there)), Some(solved)) = (closed, solved) {
            prop_assert!((change - solved).abs() < 1e-6, "{} {}", change, solved);
            prop_assert!((there.iter().sum::<f64>() - 1.0).abs() < 1e-9 && there.iter().all(|&share| share >= -1e-12));
            prop_assert!((weighed(&own, &there) - weighed(&rival, &there)).abs() < 1e-9);
        }
    }
}

/// The best drive of the only axis with these shares of the weights.
fn best(inputs: &Inputs, shares: [f64; 4]) -> Found {
    let setting = Setting { merit: Merit::new(&prefer(shares)), ..small::setting(inputs) };
    best_on(&inputs.brief, 0, 0.0, &setting, None, &[]).expect("a drive")
}

#[test]
fn a_drive_stays_the_best_just_within_its_weights_and_no_longer_just_outside() {
    for (text, wanted) in [
        (HORIZONTAL, "prefer: { whole-life-cost: 4, accuracy: 1, upkeep: 1 }\n"),
        (VERTICAL, "prefer: { whole-life-cost: 1, accuracy: 1, stiffness: 1, upkeep: 1 }\n"),
        (HORIZONTAL, ""),
    ] {
        let inputs = small::inputs(&format!("{text}{wanted}"));
        let now = shares(&inputs.brief.prefer);
        let winner = best(&inputs, now);
        let found = weights(&inputs.brief, 0, 0.0, &small::setting(&inputs), &winner, &[]);
        assert_eq!(found.better_alone, None);
        assert!(found.ranges.len() >= 3);
        let same = |other: &Found| (other.family, other.path) == (winner.family, winner.path);
        let mut ends = 0;
        for range in &found.ranges {
            assert!(range.from <= range.now && range.now <= range.to, "{range:?}");
            for (end, rival, inward) in [(range.from, &range.below, 1.0), (range.to, &range.above, -1.0)] {
                assert_eq!(rival.is_none(), end == 0.0 || end == 1.0, "{range:?}");
                if let Some(rival) = rival {
                    ends += 1;
                    let inside = best(&inputs, moved(&now, range.weight, end + inward * 1e-4));
                    let outside = best(&inputs, moved(&now, range.weight, end - inward * 1e-4));
                    // an interval may end where it begins: then there is no inside
                    assert!(same(&inside) || (range.now - end).abs() < 1e-4, "{text}{wanted}{range:?}");
                    assert!(!same(&outside), "{text}{wanted}{range:?}");
                    assert!(!same(rival));
                }
            }
            // between the ends the drive wins throughout
            for step in 1..10 {
                let share = range.from + (range.to - range.from) * f64::from(step) / 10.0;
                assert!(same(&best(&inputs, moved(&now, range.weight, share))), "{share} {range:?}");
            }
        }
        assert!(ends >= 3, "{ends}");
        for other in &found.families {
            assert!(other.found.family != winner.family && other.distance >= 0.0);
            if let Some((change, there)) = other.change {
                let setting = |shares| Setting { merit: Merit::new(&prefer(shares)), ..small::setting(&inputs) };
                let demand = Demand::new(&inputs.brief, 0, Mass::of_si(0.0));
                let merit = |found: &Found| {
                    work_out(found.family, &found.path, &demand, &setting(there)).expect("a drive").attributes.merit
                };
                let (own, rival) = (merit(&winner), merit(&other.found));
                assert!((own - rival).abs() < 1e-6 * own.abs(), "{own} {rival} after a change of {change}");
            }
        }
    }
}

#[test]
fn the_tray_loader_keeps_its_drive_just_within_the_weights_told_and_changes_it_just_outside() {
    let inputs = small::inputs(include_str!("../../docs/examples/tray-loader.yaml"));
    let now = shares(&inputs.brief.prefer);
    // the whole road at other weights
    let drive = |shares: [f64; 4]| {
        let mut other = inputs.clone();
        other.brief.prefer = prefer(shares);
        let record = recommend(&other, false);
        let chosen = record.axes[0].chosen.as_ref().expect("a drive").clone();
        (chosen.family, chosen.components)
    };
    let own = drive(now);
    let winner = best(&inputs, now);
    assert_eq!(winner.family, own.0);
    let found = weights(&inputs.brief, 0, 0.0, &small::setting(&inputs), &winner, &[]);
    assert_eq!(found.better_alone, None);
    let mut ends = 0;
    for range in &found.ranges {
        let weight = range.weight;
        for (end, rival, inward) in [(range.from, &range.below, 1.0), (range.to, &range.above, -1.0)] {
            if rival.is_some() {
                ends += 1;
                let name = REFERENCES[weight].0;
                assert_eq!(drive(moved(&now, weight, end + inward * 1e-5)), own, "{name} at {end}");
                assert_ne!(drive(moved(&now, weight, end - inward * 1e-5)), own, "{name} at {end}");
            }
        }
    }
    assert!(ends >= 3, "{ends}");
}
