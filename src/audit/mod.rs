//! Auditing a decision: whether its record follows from itself, from its inputs, and from recommending again.
//!
//! Method: first the record alone. Every worksheet line is worked out again by its formula, every finding judged again, every
//! sum added again. Then the inputs are hashed and held against the record. Then the recommendation is made again from
//! the inputs as they are now and compared with the record field by field, and what the differences come to is told.
//! Why a drive was not chosen is answered from the record, and by a search where the record does not know the part.
//! Limits: an audit says that a record follows from its inputs. It does not say that the inputs are true.

mod candidates;
mod compare;
mod consequence;
mod fault;
mod findings;
mod inputs;
mod keys;
mod lines;
mod read;
mod report;
mod sums;
pub mod why_not;
mod words;

pub use compare::{Comparison, Difference, ROUNDING, Weight};
pub use consequence::{Consequence, DriveTold, Turned};
pub use fault::Fault;
pub use inputs::{Given, InputStanding, Standing, Verified, alone, in_folder};
pub use read::{Kept, ReadError, read, read_bytes};
pub use words::words;

use crate::pipeline;
use crate::record::DecisionRecord;
use serde::Serialize;
use std::collections::BTreeMap;

/// The version of the shape of an audit.
pub const AUDIT_VERSION: &str = "axiswright-audit/1";

/// How many were checked.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Counts {
    /// Drives of the record.
    pub drives: u64,
    /// Worksheet lines.
    pub lines: u64,
    /// Findings.
    pub findings: u64,
    /// Sums, counts, outcomes and shares.
    pub sums: u64,
    /// Documents of the folder.
    pub documents: u64,
    /// Values that were compared after recommending again.
    pub values: u64,
}

/// Whether it was recommended again.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case", tag = "done", content = "why")]
pub enum Again {
    /// It was.
    Yes,
    /// It was not wanted.
    NotWanted,
    /// It was not possible: why.
    No(String),
}

/// What an audit found.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Audit {
    /// [`AUDIT_VERSION`].
    pub audit: String,
    /// Whether everything re-derives.
    pub rederives: bool,
    /// Name of the machine.
    pub machine_name: String,
    /// Currency of every amount of money.
    pub currency: String,
    /// The version of the program that wrote the record.
    pub written_by: String,
    /// The version of this program.
    pub audited_by: String,
    /// How many were checked.
    pub checked: Counts,
    /// Every input.
    pub inputs: Vec<InputStanding>,
    /// What does not follow within the record.
    pub faults: Vec<Fault>,
    /// Whether it was recommended again.
    pub recommended_again: Again,
    /// Where the record differs from what comes out now.
    pub differences: Vec<Difference>,
    /// What that comes to, axis by axis.
    pub consequences: Vec<Consequence>,
    /// Parts that were not checked, and why.
    pub not_checked: Vec<String>,
}

/// What the record says by itself: worksheets, findings, sums.
#[derive(Debug, Default)]
pub struct Within {
    /// How many were checked.
    pub counts: Counts,
    /// What does not follow.
    pub faults: Vec<Fault>,
    /// What could not be checked.
    pub not_checked: Vec<String>,
}

/// Checks a record by itself, and the documents that stand beside it.
pub fn within(kept: &Kept) -> Within {
    let record = &kept.record;
    let drives = candidates::candidates(record);
    let documents = kept.folder.as_ref().map(|folder| report::check(folder, record)).unwrap_or_default();
    let checked = [lines::check(&drives), findings::check(record, &drives), sums::check(record, &drives), documents];
    let [lines, findings, sums, documents] = checked.each_ref().map(|checked| checked.count);
    let mut within = Within {
        counts: Counts { drives: drives.len() as u64, lines, findings, sums, documents, values: 0 },
        ..Within::default()
    };
    for checked in checked {
        within.faults.extend(checked.faults);
        within.not_checked.extend(checked.not_checked);
    }
    within
}

/// Recommends again from these inputs, with or without the questions, as the record has them.
pub fn recommend_again(record: &DecisionRecord, inputs: &pipeline::Inputs) -> DecisionRecord {
    match asked(record) {
        true => pipeline::recommend_and_ask(inputs, false),
        false => pipeline::recommend(inputs, false),
    }
}

/// Whether it was asked what would change the answer; older records show it by what they hold.
fn asked(record: &DecisionRecord) -> bool {
    let told = |axis: &crate::record::AxisRecord| {
        axis.turning_scope.is_some() || axis.robustness.is_some() || axis.conflict.is_some()
    };
    let of_machine = !record.machine.conflict.is_empty() || !record.machine.relaxations.is_empty();
    record.asked.unwrap_or_else(|| of_machine || record.axes.iter().any(told))
}

/// The audit of a record with its inputs; `now` is what comes out of them now.
pub fn audit(kept: &Kept, within: Within, verified: &Verified, now: Result<&DecisionRecord, Again>) -> Audit {
    let record = &kept.record;
    let tool = env!("CARGO_PKG_VERSION");
    let (mut counts, mut not_checked) = (within.counts, within.not_checked);
    let (mut differences, mut consequences) = (Vec::new(), Vec::new());
    let recommended_again = match now {
        Ok(now) => {
            let value = serde_json::to_value(now).unwrap_or_default();
            let found = compare::compare(&kept.value, &value, record.tool == tool);
            counts.values = found.values;
            not_checked.extend(not_compared(&found.not_compared));
            differences = found.differences;
            consequences = consequence::consequences(record, now);
            Again::Yes
        }
        Err(why) => why,
    };
    let not_verified = verified.files.iter().filter(|file| file.standing == Standing::NotVerified).count();
    if not_verified > 0 {
        not_checked.push(words::not_verified(not_verified));
    }
    let complete = matches!(recommended_again, Again::Yes | Again::NotWanted);
    let not_wanted = recommended_again == Again::NotWanted;
    let inputs_same = verified.all_same() || (not_wanted && not_verified == verified.files.len());
    Audit {
        audit: AUDIT_VERSION.into(),
        rederives: complete && inputs_same && within.faults.is_empty() && differences.is_empty(),
        machine_name: record.machine_name.clone(),
        currency: record.currency.clone(),
        written_by: record.tool.clone(),
        audited_by: tool.into(),
        checked: counts,
        inputs: verified.files.clone(),
        faults: within.faults,
        recommended_again,
        differences,
        consequences,
        not_checked,
    }
}

fn not_compared(fields: &BTreeMap<String, usize>) -> impl Iterator<Item = String> + '_ {
    fields.iter().map(|(field, places)| words::not_compared(field, *places))
}
