//! The decision record: everything a reader or an auditor needs, and the only thing the report reads.
//!
//! Method: plain serialisable structs; field names are kebab-case in JSON and stay stable. Values are in the
//! unit that stands beside them; a value that is not known is null. The record carries no clock time, no
//! host name, no absolute path and no thread count: same inputs, same bytes.

mod acceptance;
mod alternatives;
mod alternatives_build;
mod build;
mod candidate;
mod candidate_build;
mod cautions;
mod cost;
mod cost_cases;
mod crossover;
mod crossover_build;
mod diagrams;
mod diagrams_build;
mod explained;
mod has;
mod input_files;
mod known;
mod lines;
mod machine;
mod machine_build;
mod obstacles;
mod obstacles_build;
mod parameters;
mod proposal;
mod requirement;
mod robustness;
mod tool_point;
mod turning;
mod upkeep;
mod workshop;

pub use alternatives::*;
pub use build::{Parts, build};
pub use candidate::*;
pub use candidate_build::finding;
pub use cost_cases::{CostCase, CostOfDrive};
pub use crossover::*;
pub use crossover_build::crossover;
pub use diagrams::*;
pub use explained::*;
pub use input_files::{hash, input_files};
pub use machine::*;
pub use obstacles::*;
pub use proposal::*;
pub use robustness::{OddsRecord, RobustnessRecord, UncertaintyRecord, UtilisationRecord};
pub use turning::{TurningPoint, TurningScope};
pub use workshop::{unknown as unknown_in_line, unknown_surroundings};

use serde::{Deserialize, Serialize};

/// The version of the record's shape.
pub const RECORD_VERSION: &str = "axiswright/1";

/// A quantity as it stands in the record.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Amount {
    /// The value in `unit`; null if not known.
    pub value: Option<f64>,
    /// The unit, as `units` spells it; empty for money and "1" for plain numbers.
    pub unit: String,
}

/// The whole decision.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct DecisionRecord {
    /// [`RECORD_VERSION`].
    pub record: String,
    /// Version of the program.
    pub tool: String,
    /// Name of the machine, as the brief gives it.
    pub machine_name: String,
    /// Currency of every amount of money.
    pub currency: String,
    /// The files that went in, with their hashes.
    pub inputs: Vec<InputFile>,
    /// chosen, nothing-admissible or machine-limit.
    pub outcome: Outcome,
    /// Whether it was asked what would change the answer; none in older records.
    #[serde(default)]
    pub asked: Option<bool>,
    /// Defaults that were used because the brief is silent.
    pub assumptions: Vec<Assumed>,
    /// What the brief states and may not mean.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub doubts: Vec<DoubtRecord>,
    /// Rules that the brief sets aside.
    pub waivers: Vec<WaiverRecord>,
    /// The axes, in the order of the brief.
    pub axes: Vec<AxisRecord>,
    /// The machine as a whole.
    pub machine: MachineRecord,
    /// Every rule that was applied, by id.
    pub rules: Vec<RuleRecord>,
    /// Every rule and caution in force that is not as it is built in, whether it was judged or not.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub own_rules: Vec<OwnRuleRecord>,
    /// Every caution that an axis of this record needs, in the order in which they are told.
    #[serde(default)]
    pub caution_texts: Vec<CautionRecord>,
    /// Every formula that a worksheet of this record names, by id.
    pub formulas: Vec<FormulaRecord>,
    /// Every characteristic that this record names (phases without their number), by id.
    pub characteristics: Vec<CharacteristicRecord>,
}

/// A file that went in.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct InputFile {
    /// brief, catalog or rules.
    pub role: String,
    /// File name, without any folder outside the project's own.
    pub name: String,
    /// SHA-256 of its text, hexadecimal.
    pub sha256: String,
    /// Where a decision folder holds it, with `/` between folders; none in older records.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub file: Option<String>,
    /// Of a catalogue file, the layer that it belongs to: 0 for the built-in one, then one a folder, each laid over those before.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub layer: Option<u32>,
}

/// How it ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Outcome {
    /// A drive was chosen (for an axis), or for every axis (for the machine).
    Chosen,
    /// No drive is admissible.
    NothingAdmissible,
    /// Every axis has admissible drives, but no set of them keeps the limits of the machine.
    MachineLimit,
}

/// A default that was used.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Assumed {
    /// Key path in the brief, or the name of a computed default.
    pub key: String,
    /// The value, as text without its unit.
    pub value: String,
    /// Its unit.
    pub unit: String,
    /// Why this value, and how good the reason is.
    pub source: String,
}

/// Something that the brief states and may not mean.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct DoubtRecord {
    /// Key path in the brief.
    pub key: String,
    /// What is odd, and what it is taken for.
    pub words: String,
}

/// A rule that the brief sets aside.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct WaiverRecord {
    /// Id of the rule.
    pub rule: String,
    /// The axis, or null for all.
    pub axis: Option<String>,
    /// The reason given.
    pub reason: String,
    /// Who decided.
    pub by: String,
    /// Until when, ISO date.
    pub until: Option<String>,
    /// Whether a chosen drive fails the rule and needs the waiver.
    pub used: bool,
}

/// One axis.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct AxisRecord {
    /// Its name.
    pub name: String,
    /// What it is for, if the brief says so.
    pub purpose: Option<String>,
    /// How it ended.
    pub outcome: Outcome,
    /// What the brief asks, as understood: brief key, value, whether the brief states it.
    pub requirement: Vec<RequirementLine>,
    /// The drive that was chosen.
    pub chosen: Option<CandidateRecord>,
    /// The next-best drives, best first.
    pub runners_up: Vec<CandidateRecord>,
    /// What was considered in each family.
    pub families: Vec<FamilyRecord>,
    /// What would change the answer.
    pub turning_points: Vec<TurningPoint>,
    /// How they were looked for; none where they were not.
    #[serde(default)]
    pub turning_scope: Option<TurningScope>,
    /// Over which weights the drive chosen stays the best of the axis alone; empty where the machine decided.
    #[serde(default)]
    pub weights: Vec<WeightRange>,
    /// The drive that is better for the axis alone, where the machine decided for another.
    #[serde(default)]
    pub better_alone: Option<DriveName>,
    /// The best of each other family at the mass carried in the machine chosen, the nearest in merit first.
    #[serde(default)]
    pub other_families: Vec<OtherFamily>,
    /// Requirements that no drive keeps together, none of which can be left out; empty where not even the easiest values
    /// would do, none where it was not looked for.
    #[serde(default)]
    pub conflict: Option<Vec<String>>,
    /// The ways to relax requirements so that a drive is admissible, the least change first.
    #[serde(default)]
    pub relaxations: Vec<RelaxationRecord>,
    /// How many drives of this axis nothing else beats in every respect at once (cost, mass, error, power …).
    pub undominated: u64,
    /// The drives that no other of this axis beats in merit and error at the tool at once, best merit first.
    #[serde(default)]
    pub pareto_set: Vec<ParetoPoint>,
    /// What the drive chosen and the best of each other family cost over their life where hours or discount rate differ.
    #[serde(default)]
    pub cost_cases: Vec<CostCase>,
    /// How often the drive chosen and its rivals stay admissible when what the brief states is off; none without a drive.
    #[serde(default)]
    pub robustness: Option<RobustnessRecord>,
    /// The drive that is best where nothing but cost, and advice not followed, counts, at the mass carried in the machine chosen;
    /// only where it costs less over its life than the one chosen, and where that was asked.
    #[serde(default)]
    pub by_cost_alone: Option<ParetoPoint>,
    /// What its pictures are drawn from.
    #[serde(default)]
    pub diagrams: Option<DiagramsRecord>,
    /// The carried mass at which the census was taken, and the range that its carried axes can have.
    pub carried_mass: CarriedMass,
    /// Ids of the cautions that this axis needs (see `caution-texts`), in order.
    pub cautions: Vec<String>,
}

/// One drive of the Pareto set, measured at the most carried mass.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct ParetoPoint {
    /// Id of the family.
    pub family: String,
    /// Its main sizes.
    #[serde(with = "parameters")]
    pub parameters: Vec<Parameter>,
    /// What is made small.
    #[serde(with = "known")]
    pub merit: f64,
    /// Price to buy and fit.
    #[serde(with = "known")]
    pub purchase: f64,
    /// Price over the years of service.
    #[serde(with = "known")]
    pub whole_life: f64,
    /// Half band that the axis adds at the tool, µm.
    #[serde(with = "known")]
    pub tool_error: f64,
    /// Complete mass of the drives, kg.
    #[serde(with = "known")]
    pub drive_mass: f64,
}

/// What an axis carries.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct CarriedMass {
    /// Names of the axes it carries directly.
    pub axes: Vec<String>,
    /// The least that it may have to carry, kg.
    pub least: f64,
    /// The most that it may have to carry, kg.
    pub most: f64,
    /// Where the census is taken and drives are weighed, kg; at the most where the record does not say.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub weighed: Option<f64>,
    /// What it carries in the machine that was chosen, kg.
    pub chosen: Option<f64>,
}

impl CarriedMass {
    /// Where the census is taken and drives are weighed, kg.
    pub fn census(&self) -> f64 {
        self.weighed.unwrap_or(self.most)
    }

    /// Whether drives are weighed at what the axis carries in the machine chosen, if there is one.
    pub fn settled(&self) -> bool {
        self.chosen.is_none_or(|chosen| (chosen - self.census()).abs() <= 1e-9 * chosen)
    }
}

/// One line of what the brief asks.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct RequirementLine {
    /// Key in the brief.
    pub key: String,
    /// The value, as text with its unit.
    pub value: String,
    /// Whether the brief states it; otherwise it is an assumption.
    pub stated: bool,
}

/// One family on one axis.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct FamilyRecord {
    /// Id of the family.
    pub family: String,
    /// Configurations that the catalogue gives.
    pub configurations: u64,
    /// Configurations that pass every binding rule.
    pub admissible: u64,
    /// The best admissible one.
    pub best: Option<CandidateRecord>,
    /// The one that misses by least, if none is admissible.
    pub nearest: Option<CandidateRecord>,
    /// The rules that excluded the others, each configuration counted once, at the first rule it failed.
    pub excluded_by: Vec<Exclusion>,
    /// Rules that no configuration of the family keeps, the worst first: each with the best that any reaches.
    /// Only where none is admissible; rules that are judged late are not looked at.
    #[serde(default)]
    pub ruled_out_by: Vec<FindingRecord>,
    /// The first of those, else the worst binding finding of the nearest; none where some are admissible.
    pub best_on_chief_rule: Option<FindingRecord>,
}

/// How many configurations a rule excluded.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Exclusion {
    /// Id of the rule.
    pub rule: String,
    /// Configurations that failed it first.
    pub configurations: u64,
}
