//! The one place where text becomes a quantity and back.
//!
//! Method: a quantity is a `uom` type whose value is kept in SI base units. A text is a number, then a
//! unit out of the table in `table`; the table knows the trade's spellings ("1000 in/min", "0.3 g",
//! "5 arcmin"). The expected [`Dimension`] decides what a unit means, so "g" is an acceleration only.
//! Limits: no sums ("1 ft 3 in"), no unit arithmetic beyond the table.

mod measure;
mod pattern;
mod slip;
mod table;
mod text;

pub use measure::*;
pub use pattern::{Sign, pattern};
pub(crate) use slip::nearest;
pub use table::{Dimension, UNITS, Unit};
pub(crate) use text::unit_in;
pub use text::{UnitError, parse, parse_as, print, print_rounded, significant};

/// Whether a report speaks in metric or in inch units.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum UnitSystem {
    /// Millimetres, newtons, kilograms.
    #[default]
    Metric,
    /// Inches, pounds-force, pounds.
    Inch,
}
