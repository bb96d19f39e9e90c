//! A measured axis against what was asked for and what was predicted: evaluation by ISO 230-2.
//!
//! Method: a table of deviations becomes a [`Measurement`]; `evaluate` gives the quantities of ISO 230-2, `verdict`
//! holds them against the brief with the uncertainty as a guard band, `predict` puts the budget of the recommended
//! drive beside them, `diagnose` says what the deviations look like. [`Acceptance`] is all of that as one record;
//! Markdown and chart read it and nothing else.
//! Limits: definitions from memory of the standard; whether a machine is accepted is a matter between customer and
//! supplier.

mod build;
mod causes;
mod chart;
mod diagnose;
mod diagnose_form;
mod document;
pub mod evaluate;
mod fit;
mod likeliest;
mod measured;
mod plan;
mod predict;
mod read;
mod result;
mod shape;
mod table;
mod verdict;
mod words;

pub use build::{Parts, accept};
pub use chart::chart;
pub use document::markdown;
pub use measured::{Measurement, Stretch, Target};
pub use read::{load, parse};
pub use result::*;
