//! Whip speed against a finite-element beam, without and with axial force.

use super::beam::{End, FIXITIES, buckling, eigenvalue_squared};
use super::close;
use axiswright::calc::calculate;
use axiswright::formula::constants::{STEEL_DENSITY, STEEL_YOUNG};
use axiswright::formula::shaft::{hollow_whip_speed, tension_whip_factor};
use axiswright::units::{Force, Length, Measure, Ratio};
use std::f64::consts::{PI, TAU};

const ELEMENTS: usize = 40;

/// Speed in 1/min of a screw of 34.5 mm over 1.5 m from λ².
fn speed(eigenvalue: f64) -> f64 {
    let (d, length) = (0.0345_f64, 1.5_f64);
    let (second_moment, area) = (PI / 64.0 * d.powi(4), PI / 4.0 * d * d);
    let omega = eigenvalue / (length * length) * (STEEL_YOUNG * second_moment / (STEEL_DENSITY * area)).sqrt();
    omega * 60.0 / TAU
}

#[test]
fn whip_speed_agrees_with_finite_elements_for_all_four_fixities() {
    for (ends, left, right) in FIXITIES {
        let given = |name: &str, text: &str| (name.to_string(), text.to_string());
        let arguments = [given("root-diameter", "34.5mm"), given("free-length", "1.5m"), given("ends", ends)];
        let formula = calculate("whip-speed", &arguments).unwrap().value;
        close(ends, formula, speed(eigenvalue_squared(ELEMENTS, (left, right), 0.0)), 1e-5);
    }
}

#[test]
fn a_bored_screw_whips_faster_by_its_radius_of_gyration() {
    let whip = |bore: f64| {
        let length = Length::of_si;
        hollow_whip_speed(length(0.0345), length(bore), length(1.5), Ratio::of_si(15.4182)).si()
    };
    let (outer, inner) = (0.0345_f64, 0.0345 * 0.4_f64);
    let second_moment = PI / 64.0 * (outer.powi(4) - inner.powi(4));
    let area = PI / 4.0 * (outer.powi(2) - inner.powi(2));
    let solid = PI / 64.0 * outer.powi(4) / (PI / 4.0 * outer.powi(2));
    close("bore of 0.4", whip(inner) / whip(0.0), (second_moment / area / solid).sqrt(), 1e-12);
    close("handbook value", whip(inner) / whip(0.0), 1.0770, 0.00005);
}

/// The stated validity: exact for supported ends, within 2.2 % for fixed ones, within 0.3 % for fixed–free, from
/// −0.5 to +2 Euler loads.
#[test]
fn axial_force_changes_the_whip_speed_as_finite_elements_say() {
    for (ends, left, right) in FIXITIES {
        let euler = buckling(ELEMENTS, (left, right));
        let plain = eigenvalue_squared(ELEMENTS, (left, right), 0.0);
        let tolerance = match (left, right) {
            (End::Supported, End::Supported) => 1e-5,
            (_, End::Free) => 0.003,
            _ => 0.022,
        };
        for share in [-0.5, -0.25, 0.25, 0.5, 1.0, 1.5, 2.0] {
            let exact = eigenvalue_squared(ELEMENTS, (left, right), share * euler) / plain;
            let formula = tension_whip_factor(Force::of_si(share * 1e4), Force::of_si(1e4), Ratio::of_si(plain)).si();
            close(&format!("{ends} at {share} Euler loads"), formula, exact, tolerance);
        }
    }
}
