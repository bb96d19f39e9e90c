//! ISO 230-2, the quantities of an axis test, for data in which reversal and scatter are the same everywhere.
//!
//! Source: definitions of ISO 230-2:2014 (from memory; the text was not at hand), evaluated here on made-up data whose
//! means and standard deviations are known in closed form: M = 8, B = 3, s = √2.5 µm → E 11, R 9.3246, A 17.3246 µm.

use super::near;
use axiswright::formula::budget::{bidirectional_accuracy, repeatability, systematic_deviation, tool_error};
use axiswright::units::{Length, Measure};

/// Five runs with mean 0 and standard deviation √2.5: −2, −1, 0, 1, 2.
const RUNS: [f64; 5] = [-2.0, -1.0, 0.0, 1.0, 2.0];
/// Mean bidirectional deviation at the targets: a range of 8.
const MEANS: [f64; 5] = [0.0, 5.0, 8.0, 3.0, 1.0];
const REVERSAL: f64 = 3.0;

/// Mean and estimated standard uncertainty of the runs at one target in one direction.
fn direction(mean: f64, sign: f64) -> (f64, f64) {
    let data: Vec<f64> = RUNS.iter().map(|run| mean + sign * REVERSAL / 2.0 + run).collect();
    let average = data.iter().sum::<f64>() / 5.0;
    let squares: f64 = data.iter().map(|value| (value - average).powi(2)).sum();
    (average, (squares / 4.0).sqrt())
}

fn range(values: impl Iterator<Item = f64> + Clone) -> f64 {
    values.clone().fold(f64::MIN, f64::max) - values.fold(f64::MAX, f64::min)
}

#[test]
fn the_budget_sums_are_what_the_definitions_give() {
    let both: Vec<(f64, f64)> = MEANS.iter().flat_map(|mean| [direction(*mean, 1.0), direction(*mean, -1.0)]).collect();
    let deviation = range(both.iter().map(|(mean, _)| *mean));
    let accuracy = range(both.iter().flat_map(|(mean, s)| [mean + 2.0 * s, mean - 2.0 * s]));
    let repeated = MEANS.iter().fold(0.0_f64, |most, mean| {
        let ((up, s_up), (down, s_down)) = (direction(*mean, 1.0), direction(*mean, -1.0));
        most.max(2.0 * s_up + 2.0 * s_down + (up - down).abs()).max(4.0 * s_up).max(4.0 * s_down)
    });
    let micrometres = |value: f64| Length::of_si(value * 1e-6);
    let (m, b, s) = (micrometres(8.0), micrometres(REVERSAL), micrometres(2.5_f64.sqrt()));
    near("E", systematic_deviation(m, b).si() * 1e6, deviation, 1e-9);
    near("R", repeatability(b, s).si() * 1e6, repeated, 1e-9);
    near("A", bidirectional_accuracy(m, b, s).si() * 1e6, accuracy, 1e-9);
    near("E printed", deviation, 11.0, 1e-9);
    near("R printed", repeated, 9.3246, 0.00005);
    near("A printed", accuracy, 17.3246, 0.00005);
    near("half of A", tool_error(m, b, s).si() * 1e6, accuracy / 2.0, 1e-9);
}
