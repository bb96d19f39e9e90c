//! The record of a crossover: which family wins where, and the only thing that its report reads.
//!
//! Method: as the decision record: kebab-case, values in the unit that stands beside them, null where nothing is known.

use super::{InputFile, Parameter, known, parameters};
use serde::{Deserialize, Serialize};

/// Which family wins where.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct CrossoverRecord {
    /// [`super::RECORD_VERSION`].
    pub record: String,
    /// Version of the program.
    pub tool: String,
    /// Name of the machine.
    pub machine_name: String,
    /// Currency of every amount of money.
    pub currency: String,
    /// The files that went in, with their hashes.
    pub inputs: Vec<InputFile>,
    /// found, or nothing-admissible where no node has an admissible drive.
    pub outcome: String,
    /// The axis.
    pub axis: String,
    /// The families that were considered.
    pub families: Vec<String>,
    /// What is made small, in words.
    pub objective: String,
    /// Whether that is the whole-life cost alone.
    pub cost_alone: bool,
    /// What the axis carries at every node, kg.
    pub carried_mass: f64,
    /// Family of the drive that is recommended for the brief as it stands; none where no machine is.
    pub recommended: Option<String>,
    /// The requirement that is turned.
    pub over: SpanRecord,
    /// A second one.
    pub and: Option<SpanRecord>,
    /// The best drive for the brief as it stands, this axis alone.
    pub present: NodeRecord,
    /// The best drive at every node, row by row.
    pub nodes: Vec<NodeRecord>,
    /// The best drive of every family at every node; over one requirement alone.
    pub curves: Vec<CurveRecord>,
    /// Where the family of the best drive changes, row by row.
    pub boundaries: Vec<BoundaryRecord>,
    /// How fine all this is.
    pub resolution: Resolution,
    /// What was taken for granted, in sentences.
    pub assumptions: Vec<String>,
    /// The titles of the rules that the boundaries name.
    pub rules: Vec<RuleTitle>,
}

/// A requirement and its range.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct SpanRecord {
    /// The key in the brief.
    pub requirement: String,
    /// Unit of all its values.
    pub unit: String,
    /// The least value.
    pub from: f64,
    /// The largest.
    pub to: f64,
    /// What the brief asks; null where it asks nothing.
    pub now: Option<f64>,
    /// "geometric": values at equal ratios, or "even": at equal distances.
    pub spacing: String,
    /// The values.
    pub values: Vec<f64>,
}

/// The best drive at one place.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct NodeRecord {
    /// Value of the first requirement; null where the brief asks nothing.
    pub x: Option<f64>,
    /// Value of the second.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub y: Option<f64>,
    /// Family of the best drive; null where none is admissible.
    pub family: Option<String>,
    /// Its main sizes.
    #[serde(with = "parameters")]
    pub parameters: Vec<Parameter>,
    /// Price to buy and fit.
    #[serde(with = "known")]
    pub purchase: f64,
    /// Price over the years of service.
    #[serde(with = "known")]
    pub whole_life_cost: f64,
    /// What is made small.
    #[serde(with = "known")]
    pub merit: f64,
    /// Whether it is the best of the drives that are best elsewhere on the map, not of the whole catalogue.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub among_known: bool,
}

/// The best drives of one family, node by node.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct CurveRecord {
    /// Id of the family.
    pub family: String,
    /// Its best drive at each value; the family is null where none is admissible.
    pub nodes: Vec<NodeRecord>,
}

/// A place where the family of the best drive changes.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct BoundaryRecord {
    /// Value of the second requirement.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub y: Option<f64>,
    /// Family below; null where none is admissible.
    pub from: Option<String>,
    /// Family above.
    pub to: Option<String>,
    /// The middle of `low` and `high`.
    pub at: f64,
    /// The last value looked at that has the family below.
    pub low: f64,
    /// The first value looked at that has the family above.
    pub high: f64,
    /// "leaves": above, no drive of the family below is admissible and the best breaks `rule`; "enters": below, none of the
    /// family above is; "breaks": above, the drive that is best below breaks `rule`; "merit": the weighing turns.
    pub cause: String,
    /// Id of the rule.
    pub rule: Option<String>,
}

/// How fine a crossover is.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Resolution {
    /// Steps of each range; two changes within one are not seen.
    pub steps: u64,
    /// Width of a boundary as a part of its value.
    pub boundary: f64,
    /// Nodes that were decided by a search of the whole catalogue.
    #[serde(default)]
    pub nodes_in_full: u64,
    /// Nodes that were decided among the drives that are best elsewhere on the map.
    #[serde(default)]
    pub nodes_among_known: u64,
}

/// A rule and what it asks.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct RuleTitle {
    /// Its id.
    pub id: String,
    /// Its title.
    pub title: String,
}
