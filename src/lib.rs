//! axiswright: chooses the linear drive of every machine axis from a written brief, and says why.
//!
//! One road, one direction: a brief, a catalogue and a rulebook go in; a search lists the admissible
//! drives of every axis; a selection chooses for the whole machine; a record keeps all of it; the report
//! reads the record and nothing else.
#![forbid(unsafe_code)]
#![warn(missing_docs)]

pub mod brief;
pub mod calc;
pub mod catalog;
pub mod characteristic;
pub mod cli;
pub mod drive;
pub mod formula;
pub mod ledger;
pub mod pipeline;
pub mod record;
pub mod report;
pub mod rule;
pub mod search;
pub mod select;
pub mod source;
pub mod units;
pub mod yaml;
