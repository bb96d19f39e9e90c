//! Eigenvalues of uniform beams, and the whip speeds that follow from them.
//!
//! Source: W. T. Thomson, Theory of Vibration with Applications, Appendix D, table of (β l)² of the first mode,
//! as reproduced in a public copy (p. 510): 22.3733 clamped–clamped, 3.5160 clamped–free. The other two rows of
//! the table (9.8696 hinged–hinged, 15.4182 clamped–hinged) are from memory. Each root is found here again from
//! its frequency equation by bisection. Handbook factors of whip speed (0.8 inside): common practice, no source.

use super::{near, ratio};
use axiswright::calc::calculate;
use axiswright::formula::held_beam::{euler_load, held_buckling, rooted_sag, screw_sag};
use axiswright::formula::shaft::{bow_amplification, tension_whip_factor, weight_on_nut, whip_speed};
use axiswright::units::{Angle, AngularVelocity, Force, Length, Measure};
use std::f64::consts::{PI, TAU};

/// The root of a function between two places where its signs differ.
fn root(function: impl Fn(f64) -> f64, mut low: f64, mut high: f64) -> f64 {
    assert!(function(low) * function(high) < 0.0, "no root between {low} and {high}");
    for _ in 0..200 {
        let middle = (low + high) / 2.0;
        if function(low) * function(middle) <= 0.0 { high = middle } else { low = middle }
    }
    (low + high) / 2.0
}

/// Squared eigenvalues out of the frequency equations, with the words for their ends.
fn frequency_equations() -> [(&'static str, f64); 4] {
    [
        ("fixed-free", root(|x| x.cos() * x.cosh() + 1.0, 1.0, 3.0).powi(2)),
        ("supported-supported", root(f64::sin, 3.0, 3.3).powi(2)),
        ("fixed-supported", root(|x| x.tan() - x.tanh(), 3.5, 4.5).powi(2)),
        ("fixed-fixed", root(|x| x.cos() * x.cosh() - 1.0, 4.0, 5.0).powi(2)),
    ]
}

fn per_minute(speed: AngularVelocity) -> f64 {
    speed.si() * 60.0 / TAU
}

fn whip(ends: &str) -> f64 {
    let given = |name: &str, text: &str| (name.to_string(), text.to_string());
    let arguments = [given("root-diameter", "34.5mm"), given("free-length", "1.5m"), given("ends", ends)];
    calculate("whip-speed", &arguments).unwrap().value
}

#[test]
fn the_frequency_equations_give_the_printed_eigenvalues() {
    let printed = [3.5160, 9.8696, 15.4182, 22.3733];
    for ((ends, found), printed) in frequency_equations().into_iter().zip(printed) {
        near(ends, found, printed, 0.00005);
    }
}

#[test]
fn calc_uses_the_exact_eigenvalue_of_every_fixity() {
    for (ends, eigenvalue) in frequency_equations() {
        let by_formula = whip_speed(Length::of_si(0.0345), Length::of_si(1.5), ratio(eigenvalue));
        near(ends, whip(ends) / per_minute(by_formula), 1.0, 1e-9);
    }
}

#[test]
fn a_screw_of_34_5_mm_fixed_and_supported_over_1_5_m_whips_at_2891_a_minute() {
    near("whip", whip("fixed-supported"), 2891.0, 0.5);
}

/// n = f·d/L²·10⁷ 1/min (mm), 0.8 already inside f; common handbook factors, no source.
#[test]
fn the_handbook_factors_of_whip_speed_agree() {
    for ((ends, eigenvalue), printed) in frequency_equations().into_iter().zip([3.4, 9.7, 15.1, 21.9]) {
        let speed = per_minute(whip_speed(Length::of_si(1e-3), Length::of_si(1e-3), ratio(eigenvalue)));
        near(ends, 0.8 * speed / 1e7, printed, 0.05);
    }
}

/// T. Irvine, Natural frequencies of beams subjected to a uniform axial load, rev. C, 2011: the first frequency of a beam
/// on two hinges grows by √(1 + P·L²/(π²·E·I)); the equation is from memory of that paper.
#[test]
fn tension_raises_the_frequency_of_a_hinged_beam_as_irvine_says() {
    let (d, length) = (0.02_f64, 2.0_f64);
    let bending = 2.06e11 * PI / 64.0 * d.powi(4);
    let (bar, solid, long) = (Length::of_si(d), Length::of_si(0.0), Length::of_si(length));
    let hinged = held_buckling(ratio(0.0), ratio(0.0), ratio(1.0));
    let euler = euler_load(bar, solid, long, hinged);
    for force in [-2e3_f64, 0.0, 1.5e3, 6e3] {
        let irvine = (1.0 + force * length * length / (PI * PI * bending)).sqrt();
        near("factor", tension_whip_factor(Force::of_si(force), euler, ratio(9.8696)).si(), irvine, 1e-9);
    }
}

/// Roark, Formulas for Stress and Strain, beams under uniform load (from memory): largest deflection over
/// w·L⁴/(E·I) is 1/8 for a cantilever, 5/384 on two supports, 0.0054 for a propped cantilever and 1/384 clamped;
/// the middle one of three equal supports bears 1.25·w times one span.
#[test]
fn sag_and_weight_on_the_nut_follow_the_beam_tables() {
    let (d, length, steel, gravity, young) = (0.0345_f64, 4.0_f64, 7850.0, 9.80665, 2.06e11);
    let load_over_bending = steel * (PI / 4.0 * d * d) * gravity * length.powi(4) / (young * PI / 64.0 * d.powi(4));
    let (bar, solid, length_of, none) =
        (Length::of_si(d), Length::of_si(0.0), Length::of_si(length), Force::of_si(0.0));
    let (level, euler, rigid) = (Angle::of_si(0.0), Force::of_si(1e4), f64::INFINITY);
    let factor = |first: f64, second: f64| {
        let sag = screw_sag(bar, solid, length_of, ratio(first), ratio(second), ratio(1.0), none, euler, level);
        sag.si() / load_over_bending
    };
    let free = rooted_sag(bar, solid, length_of, ratio(rigid), level).si() / load_over_bending;
    near("cantilever", free, 0.125, 1e-9);
    near("two supports", factor(0.0, 0.0), 5.0 / 384.0, 1e-9);
    near("propped cantilever", factor(rigid, 0.0), 0.0054, 0.00005);
    near("propped on the other side", factor(0.0, rigid), 0.0054, 0.00005);
    near("clamped", factor(rigid, rigid), 1.0 / 384.0, 1e-9);
    let span = length / 2.0;
    let weight = steel * (PI / 4.0 * d * d) * gravity * span;
    near("three supports", weight_on_nut(bar, solid, length_of, ratio(1.0), level).si() / weight, 1.25, 1e-9);
}

/// Thomson, rotating unbalance (from memory): at resonance the amplitude over the eccentricity is 1/(2ζ), far
/// above it tends to 1.
#[test]
fn a_bow_grows_as_a_rotating_unbalance_does() {
    let grown = |share: f64| {
        let speed = |turns: f64| AngularVelocity::of_si(turns);
        bow_amplification(speed(share * 100.0), speed(100.0), ratio(0.05)).si()
    };
    near("at the critical speed", grown(1.0), 10.0, 1e-9);
    near("far above", grown(1000.0), 1.0, 1e-5);
    near("at rest", grown(0.0), 0.0, 0.0);
}
