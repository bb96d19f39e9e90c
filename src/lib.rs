//! axiswright: chooses the linear drive of every machine axis from a written brief, and says why.
//!
//! A brief says what the axes must do, a catalogue what there is to choose from, a rulebook what a drive is
//! judged by; [`pipeline::load`] reads all three and tells every fault at once. [`drive`] knows the families:
//! each enters its quantities in a [`ledger`], by formulas that carry their source. [`search`] walks every
//! configuration of every axis in stages, counts what each rule excludes, and keeps what nothing else beats.
//! [`select`] chooses one drive an axis, so that the machine is best and keeps its limits, and proves it.
//! [`inquiry`] asks what would change the answer.
//! [`record`] holds all of it: inputs, assumptions, census, worksheets, findings, costs. [`report`] reads the
//! record and nothing else, and writes for customer, engineer and reviewer. [`acceptance`] evaluates an axis that was
//! measured. The modules below stand in the order
//! of the alphabet; their floors, lowest first: units, source, yaml, formula, ledger and characteristic, brief,
//! catalog, drive, rule, search, select, inquiry, record, report, pipeline, acceptance, calc, audit, schema, cli.
#![forbid(unsafe_code)]
#![warn(missing_docs)]

pub mod acceptance;
pub mod audit;
pub mod brief;
pub mod calc;
pub mod catalog;
pub mod cells;
pub mod characteristic;
pub mod choice;
pub mod cli;
pub mod drive;
pub mod formula;
pub mod inquiry;
pub mod ledger;
pub mod pipeline;
pub mod record;
pub mod report;
pub mod rule;
pub mod schema;
pub mod search;
pub mod select;
pub mod source;
pub mod units;
pub mod yaml;
