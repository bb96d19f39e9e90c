//! Why a family or a part was not chosen on an axis: the rules that kept it out and how near it came, or what it costs more.
//!
//! Method: a family is answered from the record alone. A part that no drive of the record has is looked for again: the search
//! runs over every drive that has it, with the brief, the catalogue and the rules of the record.
//! Limits: an answer is of the axis alone, at the mass that it carries in the machine chosen; limits of the machine
//! are not looked at.

mod family;
mod only;
mod part;
mod words;

pub use family::of_family;
pub use part::of_part;
pub use words::words;

/// What is told where the inputs are not those of the record.
pub const OTHER_INPUTS: &str =
    "the inputs are not those of the record (see the audit); the answer is that of the inputs as they are now";

use crate::record::{AxisRecord, CandidateRecord, DecisionRecord, FindingRecord};
use serde::Serialize;

/// How what was asked for stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Stand {
    /// It is in the drive chosen.
    Chosen,
    /// It is in a next-best drive of the record.
    NextBest,
    /// Drives of it are admissible, and another is better.
    Beaten,
    /// No drive of it is admissible.
    NotAdmissible,
    /// The brief leaves its families out, or no drive can have it.
    NotConsidered,
}

/// A number of a drive with its unit.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Figure {
    /// Id of the characteristic.
    pub id: String,
    /// What it is, in words.
    pub words: String,
    /// Its value.
    pub value: Option<f64>,
    /// Its unit.
    pub unit: String,
}

/// A rule and how near a drive comes to it.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Miss {
    /// The rule judged on the drive, both numbers in it.
    #[serde(flatten)]
    pub finding: FindingRecord,
    /// What the rule asks.
    pub title: String,
}

/// A rule and how many configurations it was the first to exclude.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Excluded {
    /// Id of the rule.
    pub rule: String,
    /// What it asks.
    pub title: String,
    /// How many.
    pub configurations: u64,
}

/// A drive as an answer tells it.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Side {
    /// Its family.
    pub family: String,
    /// Its components.
    pub components: Vec<String>,
    /// Price to buy and fit.
    pub purchase: Option<f64>,
    /// Price over the years of service.
    pub whole_life: Option<f64>,
    /// What is made small.
    pub merit: Option<f64>,
    /// What else counts.
    pub figures: Vec<Figure>,
    /// Binding rules that it fails, the worst first.
    pub fails: Vec<Miss>,
}

/// An answer.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Answer {
    /// What was asked for.
    pub asked: String,
    /// The axis.
    pub axis: String,
    /// How it stands.
    pub standing: Stand,
    /// Currency of every amount of money.
    pub currency: String,
    /// What is made small, in words.
    pub objective: String,
    /// Configurations that have it.
    pub configurations: Option<u64>,
    /// Those that pass every binding rule.
    pub admissible: Option<u64>,
    /// The drive chosen on the axis.
    pub chosen: Option<Side>,
    /// The best admissible drive that has it.
    pub best: Option<Side>,
    /// Of how many parts of its kind it has which place, by the best drive with each.
    pub rank: Option<(u64, u64)>,
    /// The drive that has it and misses by least.
    pub nearest: Option<Side>,
    /// Rules that no drive with it keeps, with the best that any reaches; the worst first.
    pub ruled_out_by: Vec<Miss>,
    /// The rules that excluded drives with it, each counted at the first rule it failed.
    pub excluded_by: Vec<Excluded>,
    /// What has to be known beside.
    pub remarks: Vec<String>,
}

/// The characteristics by which drives are held against each other; the smaller the better, except those marked.
const HELD: &[&str] = &[
    "tool-error",
    "accuracy",
    "repeatability",
    "reversal",
    "ripple",
    "deflection",
    "first-mode",
    "total-stiffness",
    "added-mass",
    "supply-power",
    "upkeep-cost",
    "lead-time",
];

impl Answer {
    fn new(record: &DecisionRecord, axis: &AxisRecord, asked: &str, standing: Stand) -> Answer {
        Answer {
            asked: asked.into(),
            axis: axis.name.clone(),
            standing,
            currency: record.currency.clone(),
            objective: record.machine.objective.clone(),
            configurations: None,
            admissible: None,
            chosen: axis.chosen.as_ref().map(|drive| side(record, drive)),
            best: None,
            rank: None,
            nearest: None,
            ruled_out_by: Vec::new(),
            excluded_by: Vec::new(),
            remarks: Vec::new(),
        }
    }
}

fn finite(value: f64) -> Option<f64> {
    value.is_finite().then_some(value)
}

/// A drive of the record.
fn side(record: &DecisionRecord, drive: &CandidateRecord) -> Side {
    let figure = |id: &&str| {
        let line = drive.line(id)?;
        let words = record.characteristics.iter().find(|about| about.id == *id).map(|about| about.words.clone());
        let words = words.unwrap_or_else(|| (*id).to_string());
        Some(Figure { id: (*id).into(), words, value: line.value, unit: line.unit.clone() })
    };
    let failed = drive
        .findings
        .iter()
        .filter(|finding| finding.obligation == "shall" && !matches!(finding.verdict.as_str(), "pass" | "waived"));
    Side {
        family: drive.family.clone(),
        components: drive.components.iter().map(|part| part.designation.clone()).collect(),
        purchase: finite(drive.cost.purchase),
        whole_life: finite(drive.cost.whole_life),
        merit: finite(drive.merit),
        figures: HELD.iter().filter_map(figure).collect(),
        fails: failed.map(|finding| miss(record, finding)).collect(),
    }
}

/// A finding of the record.
fn miss(record: &DecisionRecord, finding: &FindingRecord) -> Miss {
    Miss { title: title(record, &finding.rule), finding: finding.clone() }
}

/// What a rule asks; its id where the record does not list it.
fn title(record: &DecisionRecord, id: &str) -> String {
    record.rules.iter().find(|rule| rule.id == id).map_or_else(|| id.to_string(), |rule| rule.title.clone())
}
