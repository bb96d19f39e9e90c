//! The machine as a whole as it stands in the record: totals, limits, how the choice was proved.

use super::{Amount, MachineRelaxation, NextMachine};
use serde::{Deserialize, Serialize};

/// The machine as a whole.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct MachineRecord {
    /// Price to buy all drives.
    pub purchase: Option<f64>,
    /// Price over the years of service.
    pub whole_life_cost: Option<f64>,
    /// Error at the tool, all axes together, at the reference temperature.
    pub tool_point_error: Option<Amount>,
    /// Growth with temperature of all axes together at the tool, in service; not part of the error at the tool.
    #[serde(default)]
    pub tool_point_growth: Option<Amount>,
    /// Error and growth at the tool in each direction of the machine.
    #[serde(default)]
    pub tool_point: Vec<DirectionRecord>,
    /// Largest power from the supply, all axes at once.
    pub peak_power: Option<Amount>,
    /// Different motor models.
    pub motor_models: Option<u32>,
    /// Different gearbox models.
    pub gearbox_models: Option<u32>,
    /// Longest delivery time.
    pub lead_time: Option<Amount>,
    /// The limits of the brief against what was reached.
    pub limits: Vec<MachineLimit>,
    /// What was minimised, in words.
    pub objective: String,
    /// How the choice was found and proved.
    pub solver: SolverRecord,
    /// The machines that come next, and the best that differs in the family of a drive.
    #[serde(default)]
    pub next_best: Vec<NextMachine>,
    /// Limits that no machine keeps together, none of which can be left out; where every axis has drives.
    #[serde(default)]
    pub conflict: Vec<String>,
    /// The ways to raise limits so that there is a machine.
    #[serde(default)]
    pub relaxations: Vec<MachineRelaxation>,
}

/// What the axes that move along one direction make at the tool.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct DirectionRecord {
    /// "x", "y" or "z".
    pub direction: String,
    /// The axes that move along it.
    pub axes: Vec<String>,
    /// Half band at the reference temperature: independent parts by squares, reversals in line.
    pub error: Amount,
    /// Growth with temperature in service; one temperature for all axes, so in line.
    pub growth: Amount,
}

/// A limit of the machine.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct MachineLimit {
    /// Key in the brief.
    pub limit: String,
    /// What was reached; null if no machine was chosen.
    pub reached: Option<f64>,
    /// What the brief allows.
    pub allowed: f64,
    /// The unit of both.
    pub unit: String,
    /// pass, fail or not-evaluated.
    pub verdict: String,
}

/// How the choice was found.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct SolverRecord {
    /// optimal, infeasible, not-proven, or not-run (an axis has no admissible drive).
    pub status: String,
    /// What the chosen machine reaches on the objective.
    pub objective: Option<f64>,
    /// No machine can do better than this.
    pub bound: Option<f64>,
    /// Columns of the integer program: drives that were offered, all axes.
    pub columns: u64,
    /// Answers that direct evaluation refused and that were cut off.
    pub cuts: u64,
    /// Whether the solver of the integer program found the same; where many drives may be in a machine as good it is not
    /// asked, and the tool's own search has proved the answer alone.
    #[serde(default)]
    pub confirmed: bool,
}
