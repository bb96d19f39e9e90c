//! Columns of Euler and Johnson.
//!
//! Sources: L. Euler's four cases as in any text on strength of materials, effective length factors 2, 1, 0.7
//! (0.699) and 0.5; an open course on CNC engineering (module 3.2, section 2.6; unreviewed) for one worked number: root 20 mm, 2 m,
//! effective length factor 0.7, E 210 GPa → 8.3 kN; J. E. Shigley, Mechanical Engineering Design (from memory) for
//! the parabola that meets Euler's curve at half the yield strength. Handbook factors of P = m·d⁴/L²·10⁴ N (mm),
//! one half inside: common practice, no source.

use super::{mm, mpa, near, ratio};
use axiswright::calc::calculate;
use axiswright::formula::column::column_load;
use axiswright::units::{Measure, Pressure};

fn euler(diameter: f64, length: f64, factor: f64) -> f64 {
    column_load(mm(diameter), mm(0.0), mm(length), ratio(factor), Pressure::of_si(f64::INFINITY)).si()
}

#[test]
fn the_worked_number_of_the_course_is_met() {
    // the formula has E 206 GPa inside, the course 210
    let load = euler(20.0, 2000.0, 1.0 / (0.7 * 0.7)) * 210.0 / 206.0;
    near("buckling load, kN", load / 1e3, 8.3, 0.05);
}

#[test]
fn the_handbook_factors_of_buckling_agree() {
    let factor = |n: f64| 0.5 * euler(1.0, 1.0, n) / 1e4;
    near("fixed-free", factor(0.25), 1.25, 0.005);
    near("supported-supported", factor(1.0), 5.0, 0.05);
    // the tables take 2 for fixed-supported where the exact factor is 2.0457
    near("fixed-supported, rounded", factor(2.0), 10.0, 0.05);
    near("fixed-fixed", factor(4.0), 20.0, 0.05);
}

#[test]
fn calc_uses_the_exact_factor_of_every_fixity() {
    // fixed-supported: tan x = x between π and 3π/2
    let (mut low, mut high) = (3.2_f64, 4.7_f64);
    for _ in 0..200 {
        let middle = (low + high) / 2.0;
        if middle.tan() < middle { low = middle } else { high = middle }
    }
    let exact = (low / std::f64::consts::PI).powi(2);
    near("fixed-supported", exact, 2.0457, 0.00005);
    let named = [("fixed-free", 0.25), ("supported-supported", 1.0), ("fixed-supported", exact), ("fixed-fixed", 4.0)];
    for (ends, factor) in named {
        let given = |name: &str, text: &str| (name.to_string(), text.to_string());
        let arguments = [given("root-diameter", "34.5mm"), given("loaded-length", "1.5m"), given("ends", ends)];
        let load = calculate("column-load", &arguments).unwrap();
        near(ends, load.value / euler(34.5, 1500.0, factor), 1.0, 1e-7);
    }
}

/// Effective length factors as printed in texts: 2.0, 1.0, 0.7 (0.699), 0.5.
#[test]
fn the_effective_length_factors_agree() {
    near("fixed-supported", 1.0 / 2.045_748_515_94_f64.sqrt(), 0.699, 0.0005);
}

#[test]
fn the_parabola_meets_euler_at_half_the_yield_strength() {
    let strength = 350.0;
    let slenderness = (2.0 * std::f64::consts::PI.powi(2) * 206e3 / strength).sqrt();
    near("slenderness at the meeting", slenderness, 107.8, 0.05);
    let area = std::f64::consts::FRAC_PI_4 * 40.0_f64.powi(2);
    for side in [0.999_999, 1.000_001] {
        let length = side * slenderness * 10.0; // radius of gyration 10 mm for 40 mm
        let stress = column_load(mm(40.0), mm(0.0), mm(length), ratio(1.0), mpa(strength)).si() / area;
        near("stress at the meeting", stress, strength / 2.0, 0.001);
    }
    let stress = column_load(mm(40.0), mm(0.0), mm(500.0), ratio(1.0), mpa(strength)).si() / area;
    near("Johnson at slenderness 50", stress, 312.34, 0.005);
}
