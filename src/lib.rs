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
//! catalog, drive, rule, search, select, inquiry, record, report, pipeline, acceptance, calc, audit, schema, web, cli.
//!
//! # From Rust
//!
//! A few types are enough: [`Brief`], [`Catalog`], [`Rulebook`], and [`recommend`], which makes a [`DecisionRecord`] of them.
//! `docs/library.md` says what of them is promised to stay.
//!
//! ```
//! use axiswright::record::Outcome;
//! use axiswright::units::UnitSystem;
//! use axiswright::{Inputs, brief, catalog, pipeline, recommend, report, rule};
//!
//! # fn main() -> Result<(), axiswright::Faults> {
//! let text = "
//! machine: Slide
//! axes:
//!   slide:
//!     direction: horizontal
//!     travel: 800 mm
//!     moved-mass: 120 kg
//!     speed: 20 m/min
//!     acceleration: 2 m/s²
//!     families: [straight-rack]
//! ";
//! let inputs = Inputs {
//!     brief: brief::load("slide.yaml", text)?,
//!     catalog: catalog::load(&[])?, // the built-in parts; name folders to lay over them
//!     rulebook: rule::load(&[])?,   // likewise
//! };
//! let inputs = pipeline::check(inputs)?; // do brief, catalogue and rules go together?
//! let record = recommend(&inputs, false);
//!
//! assert_eq!(record.outcome, Outcome::Chosen);
//! let drive = record.axes[0].chosen.as_ref().map(|drive| drive.family.as_str());
//! assert_eq!(drive, Some("straight-rack"));
//! let page = report::markdown(&record, UnitSystem::Metric);
//! assert!(page.starts_with("# Linear drives: Slide"));
//! # Ok(())
//! # }
//! ```
//!
//! Faults are told all at once, each with file, line, column, key and what would be right:
//!
//! ```
//! use axiswright::{Brief, Faults, brief};
//!
//! let read: Result<Brief, Faults> = brief::load("mine.yaml", "machine: Mine\naxes:\n  x: { travel: 3 }\n");
//! let faults = read.unwrap_err();
//! assert!(faults.to_string().contains("`3` has no unit"));
//! assert!(faults.iter().all(|fault| fault.to_string().contains("mine.yaml")));
//! ```
//!
//! One formula, as `axiswright calc` runs it:
//!
//! ```
//! use axiswright::calc::calculate;
//!
//! let arguments = [("length", "11 m"), ("temperature-rise", "6 K")].map(|(name, value)| (name.into(), value.into()));
//! let answer = calculate("thermal-growth", &arguments)?;
//! assert!((answer.value - 759.0).abs() < 1e-9 && answer.unit == "µm");
//! # Ok::<(), axiswright::calc::CalcError>(())
//! ```
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
#[cfg(feature = "serve")]
pub mod web;
pub mod yaml;

pub use brief::Brief;
pub use catalog::Catalog;
pub use pipeline::{Inputs, recommend};
pub use record::DecisionRecord;
pub use rule::Rulebook;
pub use yaml::Faults;
