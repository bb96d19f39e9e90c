//! The report as a reader finds it: read through a Markdown parser, not by matching text.

mod alternatives;
mod outcomes;
mod page;
mod reading;
mod structure;
mod text;
mod words;

use axiswright::record::DecisionRecord;

/// An invented record of three axes and two families, complete in every field.
pub fn record() -> DecisionRecord {
    serde_json::from_str(include_str!("../data/record.json")).expect("the record of the tests is a record")
}
