//! Checks of formulas by a second, independent method: finite elements, integration, direct solution, count,
//! generation, or a random search for a contradiction.

mod beam;
mod belt;
mod bow;
mod column;
mod contact_lines;
mod edges;
mod energy;
mod flanks;
mod gain;
mod gantry;
mod generated_teeth;
mod held_screw;
mod hertz;
mod motion;
mod ode;
mod rack_drive;
mod s_curve;
mod screw_springs;
mod servo_axis;
mod servo_loop;
mod spectrum;
mod spectrum_level;
mod stops;
mod test_plan;
mod tooth_force;
mod tooth_properties;
mod twin;
mod whip;
mod winding;

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

/// Asserts that a value lies within a relative tolerance of what the other method gives.
fn close(what: &str, value: f64, other: f64, tolerance: f64) {
    assert!((value - other).abs() <= tolerance * other.abs(), "{what}: {value}, by the other method {other}");
}
