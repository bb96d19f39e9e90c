//! Checks of formulas by a second method: count, intersection, generation, or a random search for a contradiction.

mod contact_lines;
mod generated_teeth;
mod rack_drive;
mod tooth_force;

use axiswright::units::{Angle, Length, Measure, Ratio};

/// A length in millimetres.
fn mm(value: f64) -> Length {
    Length::of_si(value * 1e-3)
}

/// A plain number.
fn ratio(value: f64) -> Ratio {
    Ratio::of_si(value)
}

/// No helix.
fn straight() -> Angle {
    Angle::of_si(0.0)
}
