//! The budget against the evaluation: an axis is made from M, B and s, measured, and evaluated.
//!
//! Where scatter is the same everywhere in the very data, R = B + 4s, E = M + B and A = M + B + 4s hold exactly. Where it
//! is random, the extremes of a finite test lie above. How far was found by a simulation of its own in another language
//! (6000 tests of 5 targets and 5 runs with M 8, B 3, s 0.6 µm): A 13.28, R 6.08, B 3.44 µm in the mean, against 13.4,
//! 5.4 and 3 of the budget.

use crate::{Dice, brief, quantity, record, result, table, term};
use axiswright::acceptance::evaluate::{at_targets, over};
use axiswright::acceptance::parse;
use axiswright::units::Measure;

/// Mean deviations with a range of 8 µm at targets of a short axis.
const MEANS: [(f64, f64); 5] = [(20.0, 0.0), (160.0, 5.0), (300.0, 8.0), (450.0, 3.0), (580.0, 1.0)];

fn mean(target: f64) -> f64 {
    MEANS.iter().find(|(at, _)| *at == target).expect("a target").1
}

fn at() -> Vec<f64> {
    MEANS.iter().map(|(at, _)| *at).collect()
}

/// Five runs with mean 0 and a standard deviation of exactly 1.
fn even_runs(run: usize) -> f64 {
    (run as f64 - 2.0) / 2.5_f64.sqrt()
}

#[test]
fn an_axis_made_from_its_terms_measures_as_the_budget_says() {
    let lines = [
        ("position-error", 8.0, "µm"),
        ("reversal-error", 3.0, "µm"),
        ("scatter", 0.6, "µm"),
        ("repeatability", 5.4, "µm"),
        ("accuracy", 13.4, "µm"),
        ("thermal-growth", 33.0, "µm"),
    ];
    let text = table(&at(), 5, |target, sign, run| mean(target) + sign * 1.5 + 0.6 * even_runs(run));
    let result = result(&brief("600 mm", ""), &record(&lines), &text, None);
    for id in ["position-error", "reversal-error", "scatter", "systematic-deviation", "repeatability", "accuracy"] {
        let (predicted, measured) = term(&result, id);
        assert!((predicted - measured).abs() < 1e-9, "{id}: predicted {predicted}, measured {measured}");
    }
    assert!((quantity(&result, "accuracy") - 13.4).abs() < 1e-9);
    assert!(result.diagnosis.likeliest.is_none(), "nothing is off");
}

#[test]
fn a_long_axis_is_compared_over_the_whole_and_on_two_metres() {
    // a slope of 10 µm/m over 6 m: M 60 over all, 20 on 2 m with targets every 250 mm
    let at: Vec<f64> = (0..25).map(|index| 250.0 * f64::from(index)).collect();
    let text = table(&at, 5, |target, sign, run| 0.01 * target + sign * 2.0 + even_runs(run));
    let lines = [
        ("position-error", 60.0, "µm"),
        ("section-position-error", 20.0, "µm"),
        ("reversal-error", 4.0, "µm"),
        ("scatter", 1.0, "µm"),
        ("repeatability", 8.0, "µm"),
        ("accuracy", 64.0, "µm"),
        ("section-accuracy", 28.0, "µm"),
    ];
    let result = result(&brief("6 m", ""), &record(&lines), &text, None);
    for id in ["position-error", "section-position-error", "systematic-deviation", "repeatability", "section-accuracy"]
    {
        let (predicted, measured) = term(&result, id);
        assert!((predicted - measured).abs() < 1e-9, "{id}: predicted {predicted}, measured {measured}");
    }
    let null = |id: &str| result.values.quantities.iter().any(|q| q.id == id && q.value.is_none());
    assert!(null("accuracy") && null("repeatability"), "not stated over 6 m");
}

#[test]
fn extremes_of_a_short_test_lie_above_the_budget_as_far_as_another_simulation_says() {
    let mut dice = Dice::new(230);
    let tests = 3000;
    let mut sums = [0.0; 3];
    for _ in 0..tests {
        let text = table(&at(), 5, |target, sign, _| mean(target) + sign * 1.5 + 0.6 * dice.normal());
        let values = over(&at_targets(&parse("measured.csv", &text, None).expect("a sound table")));
        for (sum, value) in sums.iter_mut().zip([values.accuracy, values.repeatability, values.reversal]) {
            *sum += value.si() * 1e6 / f64::from(tests);
        }
    }
    // three standard errors of both simulations together: 0.7, 0.5 and 0.3 µm over √3000 and √6000
    for (mean, other, tolerance) in [(sums[0], 13.28, 0.05), (sums[1], 6.08, 0.035), (sums[2], 3.44, 0.02)] {
        assert!((mean - other).abs() < tolerance, "{mean} against {other}");
    }
}
