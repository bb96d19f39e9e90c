//! What the definitions of ISO 230-2 (from memory) force on any data: inequalities and invariances.
//!
//! Sources: each follows from the definitions by hand. M is a range of means of two members of the set that E is the
//! range of; every mean lies inside its band, so E ≤ A; R_i is the width of the hull of the two bands at a target, and
//! that hull lies inside the hull of all bands, so R ≤ A.

use crate::{Dice, table};
use axiswright::acceptance::evaluate::{AxisValues, TargetValues, at_targets, over, sections, worst_section};
use axiswright::acceptance::parse;
use axiswright::units::{Length, Measure};
use proptest::prelude::*;

/// Deviations by target, direction and run, µm.
type Data = Vec<[Vec<f64>; 2]>;

fn data() -> impl Strategy<Value = Data> {
    (2_usize..9, 2_usize..7).prop_flat_map(|(targets, runs)| {
        let direction = || prop::collection::vec(-40.0..40.0_f64, runs);
        prop::collection::vec((direction(), direction()).prop_map(|(up, down)| [up, down]), targets)
    })
}

fn targets(count: usize) -> Vec<f64> {
    (0..count).map(|index| 17.0 + 130.0 * index as f64 + 7.0 * (index % 3) as f64).collect()
}

fn evaluated(data: &Data) -> (Vec<TargetValues>, AxisValues) {
    let at = targets(data.len());
    let text = table(&at, data[0][0].len(), |target, sign, run| {
        let index = at.iter().position(|known| *known == target).expect("a target");
        data[index][usize::from(sign < 0.0)][run]
    });
    let measurement = parse("measured.csv", &text, None).expect("a sound table");
    let values = at_targets(&measurement);
    let whole = over(&values);
    (values, whole)
}

fn changed(data: &Data, change: impl Fn(f64) -> f64) -> Data {
    data.iter().map(|[up, down]| [up, down].map(|runs| runs.iter().map(|value| change(*value)).collect())).collect()
}

fn list(values: &AxisValues) -> [f64; 11] {
    [
        values.reversal,
        values.mean_range,
        values.systematic_up,
        values.systematic_down,
        values.systematic,
        values.repeatability_up,
        values.repeatability_down,
        values.repeatability,
        values.accuracy_up,
        values.accuracy_down,
        values.accuracy,
    ]
    .map(|value| value.si() * 1e6)
}

fn same(first: [f64; 11], second: [f64; 11]) -> bool {
    first.iter().zip(second).all(|(first, second)| (first - second).abs() < 1e-9)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 150, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn the_quantities_keep_their_order(data in data()) {
        let (_, v) = evaluated(&data);
        let [b, m, e_up, e_down, e, r_up, r_down, r, a_up, a_down, a] = list(&v);
        let dust = 1e-9;
        prop_assert!(m <= e + dust && e <= a + dust, "M {m} E {e} A {a}");
        prop_assert!(b <= r + dust && r <= a + dust, "B {b} R {r} A {a}");
        prop_assert!(e_up <= e + dust && e_down <= e + dust);
        prop_assert!(r_up <= r + dust && r_down <= r + dust);
        prop_assert!(a_up <= a + dust && a_down <= a + dust);
    }

    #[test]
    fn repeatability_at_a_target_is_the_width_of_the_hull_of_its_bands(data in data()) {
        for t in evaluated(&data).0 {
            let edges = [(t.mean_up, t.scatter_up), (t.mean_down, t.scatter_down)]
                .map(|(mean, s)| (mean.si() + 2.0 * s.si(), mean.si() - 2.0 * s.si()));
            let hull = edges[0].0.max(edges[1].0) - edges[0].1.min(edges[1].1);
            prop_assert!((hull - t.repeatability.si()).abs() < 1e-15);
        }
    }

    #[test]
    fn a_constant_added_to_all_changes_nothing(data in data(), constant in -500.0..500.0_f64) {
        let moved = changed(&data, |value| value + constant);
        prop_assert!(same(list(&evaluated(&data).1), list(&evaluated(&moved).1)));
    }

    #[test]
    fn the_same_in_other_sizes_scales(data in data(), factor in 0.1..10.0_f64) {
        let scaled = changed(&data, |value| value * factor);
        let expected = list(&evaluated(&data).1).map(|value| value * factor);
        prop_assert!(same(expected, list(&evaluated(&scaled).1)));
    }

    #[test]
    fn exchanged_directions_exchange_what_belongs_to_one(data in data()) {
        let swapped: Data = data.iter().map(|[up, down]| [down.clone(), up.clone()]).collect();
        let [b, m, e_up, e_down, e, r_up, r_down, r, a_up, a_down, a] = list(&evaluated(&data).1);
        let (_, other) = evaluated(&swapped);
        prop_assert!(same([b, m, e_down, e_up, e, r_down, r_up, r, a_down, a_up, a], list(&other)));
        prop_assert!((other.mean_reversal.si() + evaluated(&data).1.mean_reversal.si()).abs() < 1e-15);
    }

    #[test]
    fn the_order_of_runs_says_nothing(data in data(), turn in 1_usize..6) {
        let turned: Data = data.iter().map(|ways| {
            ways.clone().map(|mut runs| { let by = turn % runs.len(); runs.rotate_left(by); runs })
        }).collect();
        prop_assert!(same(list(&evaluated(&data).1), list(&evaluated(&turned).1)));
    }

    #[test]
    fn runs_that_are_entered_twice_shrink_the_scatter_by_a_known_part(data in data()) {
        let doubled: Data = data.iter().map(|ways| ways.clone().map(|runs| [runs.clone(), runs].concat())).collect();
        let runs = data[0][0].len() as f64;
        let part = ((2.0 * runs - 2.0) / (2.0 * runs - 1.0)).sqrt();
        let (before, after) = (evaluated(&data).1, evaluated(&doubled).1);
        prop_assert!((after.repeatability_up.si() - part * before.repeatability_up.si()).abs() < 1e-15);
        prop_assert!((after.systematic.si() - before.systematic.si()).abs() < 1e-15);
    }

    #[test]
    fn no_stretch_of_two_metres_is_worse_than_the_worst_section(seed in 1_u64..10_000) {
        let mut dice = Dice::new(seed);
        let mut at = 0.0;
        let places: Vec<f64> = (0..14).map(|_| { at += 100.0 + 500.0 * dice.even(); at }).collect();
        let text = table(&places, 3, |_, _, _| 20.0 * dice.normal());
        let values = at_targets(&parse("measured.csv", &text, None).expect("a sound table"));
        let found = sections(&values);
        for (name, value) in [("A", (|v| v.accuracy) as fn(&AxisValues) -> Length), ("R", |v| v.repeatability)] {
            let worst = worst_section(&found, value).expect("a section");
            let length = worst.values.last.si() - worst.values.first.si();
            prop_assert!(length <= 2.0 + 1e-9);
            // every pair of targets within 2 m, by trying them all
            for first in 0..places.len() {
                for last in first + 1..places.len() {
                    if places[last] - places[first] <= 2000.0 {
                        let here = value(&over(&values[first..=last])).si();
                        prop_assert!(here <= value(&worst.values).si() + 1e-15, "{name} from {first} to {last}");
                    }
                }
            }
        }
    }
}

#[test]
fn one_run_has_means_and_no_scatter() {
    let text = table(&[0.0, 100.0], 1, |target, sign, _| target / 50.0 + sign);
    let values = over(&at_targets(&parse("measured.csv", &text, None).expect("a sound table")));
    assert!((values.systematic.si() - 4e-6).abs() < 1e-15 && (values.reversal.si() - 2e-6).abs() < 1e-15);
    assert!(values.repeatability.si().is_nan() && values.accuracy.si().is_nan());
}
