//! Buckling load against the finite-element buckling problem.

use super::beam::{FIXITIES, buckling};
use super::close;
use axiswright::calc::calculate;
use axiswright::formula::column::{clamped_column_load, column_load};
use axiswright::formula::constants::STEEL_YOUNG;
use axiswright::units::{Length, Measure, Pressure, Ratio};
use std::f64::consts::PI;

#[test]
fn the_buckling_load_agrees_with_finite_elements_for_all_four_fixities() {
    let (d, length) = (0.0345_f64, 1.5_f64);
    let unit = STEEL_YOUNG * PI / 64.0 * d.powi(4) / (length * length);
    for (ends, left, right) in FIXITIES {
        let given = |name: &str, text: &str| (name.to_string(), text.to_string());
        let arguments = [given("root-diameter", "34.5mm"), given("loaded-length", "1.5m"), given("ends", ends)];
        let formula = calculate("column-load", &arguments).unwrap().value;
        close(ends, formula, buckling(40, (left, right)) * unit, 1e-5);
    }
}

/// A screw held at both ends shares the force of its nut between two springs in parallel: at x the part of length x takes
/// 1 − x/L of it as compression. The nut is tried at 20 000 places, each with Euler's load or Johnson's parabola.
#[test]
fn a_clamped_screw_buckles_at_the_worst_place_of_its_nut() {
    let (factor, strength) = (Ratio::of_si(2.0457), Pressure::of_si(350e6));
    for diameter in [0.0174, 0.0345, 0.0695, 0.1113] {
        for length in [0.2, 0.5, 1.0, 1.5, 2.0, 3.0, 4.0, 6.0] {
            let d = Length::of_si(diameter);
            let at = |place: f64| column_load(d, Length::of_si(place * length), factor, strength).si() / (1.0 - place);
            let searched = (1..20_000).map(|step| at(f64::from(step) / 20_000.0)).fold(f64::INFINITY, f64::min);
            let formula = clamped_column_load(d, Length::of_si(length), factor, strength).si();
            // the nut at the very end, where the stocky part only yields, is missed by one step
            close(&format!("{diameter} m, {length} m"), formula, searched, 1e-4);
        }
    }
}
