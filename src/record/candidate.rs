//! One configuration of a drive as it stands in the record.

use super::parameters;
use serde::{Deserialize, Serialize};

/// One configuration of a drive.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct CandidateRecord {
    /// Id of the family.
    pub family: String,
    /// What it is made of, all drives of the axis together.
    pub components: Vec<ComponentRecord>,
    /// Its main sizes: for screws diameter, lead, grade, ends, preload; for racks module, teeth, helix, quality, ratio.
    #[serde(with = "parameters")]
    pub parameters: Vec<Parameter>,
    /// Every quantity in working order.
    pub worksheet: Vec<WorksheetLine>,
    /// Every rule that was judged, worst first.
    pub findings: Vec<FindingRecord>,
    /// What fitting it asks; only for a drive that was chosen.
    #[serde(default)]
    pub installation: Vec<InstallationLine>,
    /// What keeping it asks; only for a drive that was chosen.
    #[serde(default)]
    pub upkeep: Vec<InstallationLine>,
    /// How it is accepted once it is built in; only for a drive that was chosen.
    #[serde(default)]
    pub acceptance: Option<AcceptancePlan>,
    /// What it costs.
    pub cost: CostRecord,
    /// What is made small, for this configuration: see the machine's objective.
    #[serde(with = "super::known", default = "super::known::unknown")]
    pub merit: f64,
    /// The share by which the merit is raised for advice that is not followed.
    #[serde(default)]
    pub unmet_advice: f64,
}

/// How a finished axis is accepted by ISO 230-2.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct AcceptancePlan {
    /// Target positions over the travel.
    pub targets: Vec<f64>,
    /// Runs in each direction over the travel.
    pub runs: u32,
    /// Target positions on a section of 2 m; empty where the travel is not longer.
    pub section_targets: Vec<f64>,
    /// Runs in each direction on the section.
    pub section_runs: u32,
    /// Unit of the targets.
    pub unit: String,
    /// What is held against what.
    pub limits: Vec<AcceptanceLimit>,
}

/// One quantity of the test: what the brief asks for and what is predicted.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct AcceptanceLimit {
    /// "A", "E", "M", "R" or "B".
    pub quantity: String,
    /// Over what it holds: "travel" or "section of 2 m".
    pub over: String,
    /// The characteristic of the worksheet that predicts it.
    pub characteristic: String,
    /// What the brief asks for.
    pub required: Option<f64>,
    /// What is predicted.
    pub predicted: Option<f64>,
    /// Unit of both.
    pub unit: String,
}

/// One component.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct ComponentRecord {
    /// What it does: screw, nut, end-support, reduction, gearbox, rack, pinion, motor, scale …
    pub role: String,
    /// Its designation in the catalogue.
    pub designation: String,
    /// How many, all drives of the axis together.
    pub count: f64,
    /// Unit of the count: "1" or "m".
    pub unit: String,
    /// Whether the catalogue entry is generic and must be replaced by supplier data before ordering.
    pub generic: bool,
}

/// A main size.
#[derive(Debug, Clone, PartialEq)]
pub struct Parameter {
    /// Its name.
    pub name: String,
    /// A number with a unit, or a word.
    pub value: ParameterValue,
}

/// A main size is a number with a unit or a word.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(untagged)]
pub enum ParameterValue {
    /// A number with its unit.
    Number {
        /// The number.
        value: f64,
        /// Its unit.
        unit: String,
    },
    /// A word, such as a grade; its unit is "1".
    Word {
        /// The word.
        value: String,
        /// Always "1".
        unit: String,
    },
}

/// One line of a worksheet.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct WorksheetLine {
    /// Id of the characteristic; phases are numbered from 1: "phase-force.3".
    pub id: String,
    /// Its symbol.
    pub symbol: String,
    /// Its value in `unit`.
    pub value: Option<f64>,
    /// The unit.
    pub unit: String,
    /// brief, catalog, assumed or formula.
    pub origin: String,
    /// Id of the formula that gave it.
    pub formula: Option<String>,
    /// Ids of the lines that went into the formula, in its order.
    pub inputs: Vec<String>,
}

/// One thing to know or to keep when a drive is fitted, or while it works.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct InstallationLine {
    /// What it belongs to: two sides, rack, bed, alignment, lubrication, covers; running in, inspection, wear, exchange, spares.
    pub group: String,
    /// What it is, in words.
    pub item: String,
    /// Its value in `unit`; none where words say it.
    pub value: Option<f64>,
    /// The unit; empty without a value.
    pub unit: String,
    /// What words say of it; may be empty.
    pub words: String,
    /// Where it comes from.
    pub source: String,
}

/// One rule judged on one configuration.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct FindingRecord {
    /// Id of the rule.
    pub rule: String,
    /// shall or should.
    pub obligation: String,
    /// Id of the characteristic that is judged.
    pub characteristic: String,
    /// at-most or at-least.
    pub sense: String,
    /// Its value, in `unit`.
    pub demand: Option<f64>,
    /// The limit with its factor, in `unit`.
    pub limit: Option<f64>,
    /// The unit of both.
    pub unit: String,
    /// Demand over limit (limit over demand where a lower limit holds); above 1 fails.
    pub utilisation: Option<f64>,
    /// pass, fail, waived or not-evaluated.
    pub verdict: String,
}

/// What a configuration costs; NaN stands for a cost that is not known and is null in JSON.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct CostRecord {
    /// Price to buy and fit.
    #[serde(with = "super::known")]
    pub purchase: f64,
    /// Price over the years of service, discounted.
    #[serde(with = "super::known")]
    pub whole_life: f64,
    /// The parts of the price, and the yearly costs.
    pub lines: Vec<CostLine>,
}

/// One part of the price.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct CostLine {
    /// What it is for, in words.
    pub item: String,
    /// purchase, yearly, or exchange: all exchanges of a part over the years of service at their present value.
    #[serde(default)]
    pub kind: String,
    /// The amount.
    #[serde(with = "super::known")]
    pub amount: f64,
}

impl CandidateRecord {
    /// The line of a characteristic.
    pub fn line(&self, id: &str) -> Option<&WorksheetLine> {
        self.worksheet.iter().find(|line| line.id == id)
    }

    /// The value of a characteristic, in the unit of its line.
    pub fn value(&self, id: &str) -> Option<f64> {
        self.line(id).and_then(|line| line.value)
    }
}
