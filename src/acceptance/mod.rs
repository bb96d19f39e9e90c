//! A measured axis against what was asked for and what was predicted: evaluation by ISO 230-2.
//!
//! Method: a table of deviations becomes a [`Measurement`]; `evaluate` gives the quantities of ISO 230-2, `verdict`
//! holds them against the brief with the uncertainty as a guard band, `predict` puts the budget of the recommended
//! drive beside them, `diagnose` says what the deviations look like. [`Acceptance`] is all of that as one record;
//! Markdown and chart read it and nothing else.
//! Limits: definitions from memory of the standard; whether a machine is accepted is a matter between customer and
//! supplier.

pub mod evaluate;
mod measured;
mod read;
mod table;

pub use measured::{Measurement, Stretch, Target};
pub use read::{load, parse};
