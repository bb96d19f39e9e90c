//! Checks by a second, independent method: finite elements, numerical integration, direct solution.

mod beam;
mod column;
mod gain;
mod hertz;
mod motion;
mod whip;

/// Asserts that a value lies within a relative tolerance of what the other method gives.
fn close(what: &str, value: f64, other: f64, tolerance: f64) {
    assert!((value - other).abs() <= tolerance * other.abs(), "{what}: {value}, by the other method {other}");
}
