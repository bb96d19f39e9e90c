//! Life of rolling contacts and its factors of reliability.
//!
//! Sources: G. Lundberg and A. Palmgren, Dynamic Capacity of Rolling Bearings (1947): life falls with the cube of the
//! load, survival follows a Weibull law. Factors of reliability: older editions of ISO 281 (1, 0.62, 0.53, 0.44,
//! 0.33, 0.21), read in a public note on bearing life and remembered to stand in ISO 3408-5:2006; ISO 281:2007 (1,
//! 0.64, 0.55, 0.47, 0.37, 0.25) from memory. ISO/TR 1281-2 (from memory) bases the first on a two-parameter
//! Weibull law of slope 1.5, the second on a three-parameter one with a life of 0.05 that all survive; both are
//! computed here again, which supports the memory.

use super::{near, newton, ratio};
use axiswright::formula::Series;
use axiswright::formula::duty::mean_load;
use axiswright::formula::rolling_life::{
    bearing_reliability_factor, life_hours, nut_life, nut_reliability_factor, pair_life, preloaded_nut_life,
    static_safety,
};
use axiswright::units::{Length, Measure, Velocity};

const RELIABILITY: [f64; 6] = [0.90, 0.95, 0.96, 0.97, 0.98, 0.99];

fn weibull(reliability: f64) -> f64 {
    ((1.0 / reliability).ln() / (1.0_f64 / 0.9).ln()).powf(1.0 / 1.5)
}

#[test]
fn the_nut_factors_are_a_weibull_law_of_slope_one_and_a_half() {
    for (reliability, printed) in RELIABILITY.into_iter().zip([1.0, 0.62, 0.53, 0.44, 0.33, 0.21]) {
        near("printed", nut_reliability_factor(ratio(reliability)).si(), printed, 1e-12);
        near("Weibull", weibull(reliability), printed, 0.005);
    }
}

#[test]
fn the_bearing_factors_are_a_weibull_law_with_a_least_life() {
    for (reliability, printed) in RELIABILITY.into_iter().zip([1.0, 0.64, 0.55, 0.47, 0.37, 0.25]) {
        near("printed", bearing_reliability_factor(ratio(reliability)).si(), printed, 1e-12);
        near("Weibull", 0.95 * weibull(reliability) + 0.05, printed, 0.005);
    }
}

#[test]
fn between_the_printed_reliabilities_the_factor_lies_between_and_outside_there_is_none() {
    let factor = |reliability: f64| nut_reliability_factor(ratio(reliability)).si();
    near("97.5 %", factor(0.975), (0.44 + 0.33) / 2.0, 1e-9);
    for outside in [0.5, 0.89, 0.995, f64::NAN] {
        assert!(factor(outside).is_nan(), "{outside}");
    }
}

#[test]
fn half_the_load_gives_eight_times_the_life() {
    let life = |load: f64| nut_life(newton(36e3), newton(load), ratio(1.2), ratio(1.0)).si();
    near("at 3 kN, Mrev", life(3000.0) / 1e6, 1000.0, 0.5);
    near("ratio", life(1500.0) / life(3000.0), 8.0, 1e-9);
}

#[test]
fn a_thousand_million_turns_at_800_a_minute_last_20_833_hours() {
    let life = nut_life(newton(36e3), newton(3000.0), ratio(1.2), ratio(1.0));
    let hours = life_hours(life, Velocity::of_si(800.0 * 0.01 / 60.0), Length::of_si(0.01));
    near("hours", hours.si() / 3600.0, 20_833.0, 0.5);
}

/// Miner's rule written out: the mean load uses up life as fast as the loads one after the other.
#[test]
fn the_mean_load_uses_up_life_as_its_loads_do() {
    let (loads, turns) = ([4000.0, 2000.0, 1000.0], [150.0, 750.0, 600.0]);
    let mean = mean_load(Series::of_si(&loads), Series::of_si(&turns)).si();
    let used: f64 = loads.iter().zip(turns).map(|(load, turns)| turns * load.powi(3)).sum();
    near("damage", mean.powi(3) * 1500.0 / used, 1.0, 1e-12);
    near("mean load", mean, 2210.42, 0.005);
}

/// Without outer load both halves of a pair carry the preload; two equal rows survive together for 2^(−9/10) =
/// 0.5359 of the life of one (product of two Weibull survivals of slope 10/9).
#[test]
fn a_preloaded_nut_without_load_lasts_0_5359_of_one_half() {
    let pair = preloaded_nut_life(newton(36e3), newton(3000.0), newton(0.0)).si();
    near("share", pair / 1e6 / 12_f64.powi(3), 0.5359, 0.00005);
}

#[test]
fn without_load_life_and_safety_stop_at_their_caps_and_nothing_hides_a_missing_value() {
    near("life", nut_life(newton(36e3), newton(0.0), ratio(1.0), ratio(1.0)).si(), 1e12, 0.0);
    near("pair", preloaded_nut_life(newton(36e3), newton(0.0), newton(0.0)).si(), 1e12, 0.0);
    // what is asked of few comes off the life, not off the cap: 10⁶·36³ rev, of which 99 % reach a fifth, is above it
    let unloaded = |share| {
        let (force, time, speed) = ([36.0], [1.0], [0.1]);
        let (forces, shares, speeds) = (Series::of_si(&force), Series::of_si(&time), Series::of_si(&speed));
        pair_life(newton(36e3), newton(0.0), forces, shares, speeds, ratio(share)).si()
    };
    near("pair at 99 %", unloaded(0.21), 1e12, 0.0);
    near("safety", static_safety(newton(1e5), newton(0.0)).si(), 1e6, 0.0);
    assert!(nut_life(newton(f64::NAN), newton(1.0), ratio(1.0), ratio(1.0)).si().is_nan());
    assert!(preloaded_nut_life(newton(36e3), newton(f64::NAN), newton(1.0)).si().is_nan());
    assert!(preloaded_nut_life(newton(36e3), newton(100.0), newton(f64::NAN)).si().is_nan());
    assert!(static_safety(newton(1e5), newton(f64::NAN)).si().is_nan());
}
