//! What else there is beside the machine that was chosen: the next-best machines, and what the weights do to each axis.

use super::parameters;
use super::{Amount, Parameter, known};
use serde::{Deserialize, Serialize};

/// A drive by its family and main sizes.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct DriveName {
    /// Id of the family.
    pub family: String,
    /// Its main sizes.
    #[serde(with = "parameters")]
    pub parameters: Vec<Parameter>,
    /// Price to buy and fit.
    #[serde(with = "known")]
    pub purchase: f64,
}

/// A drive of a machine.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct DriveOfMachine {
    /// The axis.
    pub axis: String,
    /// The drive.
    #[serde(flatten)]
    pub drive: DriveName,
}

/// In what a drive differs from the one chosen.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Difference {
    /// The axis.
    pub axis: String,
    /// Whether it is of another family.
    pub family: bool,
    /// The main sizes that differ; empty for another family.
    pub sizes: Vec<String>,
    /// The roles of the parts that differ; empty for another family.
    pub parts: Vec<String>,
}

/// A machine that comes after the one chosen.
///
/// Machines are put together of the drives that the axes offer: those that no other of the axis beats in all that counts
/// for the machine. A drive that is beaten is in none of them. The machine of another family may take the best drives of
/// each family as well.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct NextMachine {
    /// next-best, or other-family: the best that has a drive of another family on one axis at least.
    pub kind: String,
    /// optimal or not-proven: whether no machine of these drives comes before it that is not told.
    pub status: String,
    /// Its drives, in the order of the axes.
    pub drives: Vec<DriveOfMachine>,
    /// What it reaches on the objective.
    #[serde(with = "known")]
    pub objective: f64,
    /// Price to buy all drives, at the masses that they carry in it.
    #[serde(with = "known")]
    pub purchase: f64,
    /// Price over the years of service.
    #[serde(with = "known")]
    pub whole_life_cost: f64,
    /// Error at the tool, all axes together.
    pub tool_point_error: Amount,
    /// In what its drives differ from those chosen.
    pub differs_in: Vec<Difference>,
}

/// Over which shares of one weight the drive of an axis stays the best, the others in their proportions.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct WeightRange {
    /// Its key under `prefer`.
    pub weight: String,
    /// Its share of all weights now.
    pub now: f64,
    /// The least share.
    pub from: f64,
    /// The largest share.
    pub to: f64,
    /// The drive that is as good at the least share; none where the drive stays down to nothing.
    pub rival_below: Option<DriveName>,
    /// The drive that is as good at the largest share; none where it stays up to all.
    pub rival_above: Option<DriveName>,
}

/// The best drive of another family, held against the one chosen.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct OtherFamily {
    /// The drive, at the mass that the axis carries in the machine chosen.
    pub drive: DriveName,
    /// By how much its merit is above that of the drive chosen.
    #[serde(with = "known")]
    pub distance: f64,
    /// The smallest sum of changes of the weights' shares that lets it tie; none where no weights do.
    pub change: Option<f64>,
    /// The shares then, by their keys under `prefer`; empty where there are none.
    pub weights: Vec<WeightShare>,
}

/// The share of one weight.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct WeightShare {
    /// Its key under `prefer`.
    pub weight: String,
    /// Its share of all weights.
    pub share: f64,
}
