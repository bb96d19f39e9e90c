//! Buckling load against the finite-element buckling problem.

use super::beam::{FIXITIES, buckling};
use super::close;
use axiswright::calc::calculate;
use axiswright::formula::constants::STEEL_YOUNG;
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
