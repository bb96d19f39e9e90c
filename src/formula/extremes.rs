//! The larger and the smaller of two numbers. A number that is none (NaN) comes out again, so that no limit is kept by it.

/// The larger of two numbers; NaN if one of them is.
#[inline]
pub(crate) fn larger(a: f64, b: f64) -> f64 {
    if a.is_nan() || b.is_nan() { f64::NAN } else { a.max(b) }
}

/// The smaller of two numbers; NaN if one of them is.
#[inline]
pub(crate) fn smaller(a: f64, b: f64) -> f64 {
    if a.is_nan() || b.is_nan() { f64::NAN } else { a.min(b) }
}
