//! Checks against published works: one file for each, with its citation, its printed digits and the
//! tolerance of half the last digit. Disagreements are kept and explained where they stand.

mod agma_example;
mod beam_eigenvalues;
mod cnc_course;
mod constants;
mod engineering_economy;
mod euler_johnson;
mod gear_sheet;
mod iso_1328;
mod iso_230_2;
mod iso_230_2_measured;
mod iso_286;
mod iso_54;
mod iso_6336;
mod iso_undercut;
mod metric_helix;
mod power_screws;
mod rating_life;
mod tooth_form;
mod vdi_2230;

use axiswright::units::{Angle, Force, Length, Measure, Pressure, Ratio};

/// A length in millimetres.
fn mm(value: f64) -> Length {
    Length::of_si(value * 1e-3)
}

/// A plain number.
fn ratio(value: f64) -> Ratio {
    Ratio::of_si(value)
}

/// A stress in megapascals.
fn mpa(value: f64) -> Pressure {
    Pressure::of_si(value * 1e6)
}

/// A force in newtons.
fn newton(value: f64) -> Force {
    Force::of_si(value)
}

/// No helix.
fn straight() -> Angle {
    Angle::of_si(0.0)
}

/// Asserts that a value lies within a tolerance of the printed one.
fn near(what: &str, value: f64, printed: f64, tolerance: f64) {
    assert!((value - printed).abs() <= tolerance * (1.0 + 1e-9), "{what}: {value}, printed {printed} ± {tolerance}");
}
