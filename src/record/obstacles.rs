//! What stands in the way where nothing is admissible, and the ways to relax it.

use super::alternatives::{DriveName, DriveOfMachine};
use serde::{Deserialize, Serialize};

/// A requirement and what it would be.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct RelaxedRequirement {
    /// Its key in the brief.
    pub requirement: String,
    /// The unit of both values; empty for words, money and plain numbers.
    pub unit: String,
    /// What the brief asks; none for words.
    pub now: Option<f64>,
    /// What it would be; none where it is dropped.
    pub to: Option<f64>,
}

/// A way to relax requirements of an axis.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct RelaxationRecord {
    /// What changes, all of it together.
    pub changes: Vec<RelaxedRequirement>,
    /// The largest factor by which a value is eased; none where a requirement is dropped.
    pub factor: Option<f64>,
    /// The best drive that is admissible then.
    pub drive: DriveName,
}

/// A limit of the machine and the least value at which there is a machine.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct RaisedLimit {
    /// Its key in the brief.
    pub limit: String,
    /// The unit of both values.
    pub unit: String,
    /// What the brief allows.
    pub allowed: f64,
    /// The least that would do.
    pub least: f64,
}

/// A way to raise limits of the machine.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct MachineRelaxation {
    /// The limits that are raised, all of them together.
    pub limits: Vec<RaisedLimit>,
    /// optimal where it is proven that no less would do, else not-proven.
    pub status: String,
    /// The machine that reaches it.
    pub drives: Vec<DriveOfMachine>,
}
