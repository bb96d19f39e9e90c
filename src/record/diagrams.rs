//! What the pictures of an axis are drawn from: curves that no worksheet holds.

use super::{Parameter, known, parameters};
use serde::{Deserialize, Serialize};

/// The curves of one axis.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct DiagramsRecord {
    /// What the motor of the drive chosen gives over its speed; none without a drive.
    pub motor: Option<MotorCurve>,
    /// What drives allow at other travels.
    pub over_travel: OverTravel,
    /// What accuracy costs in each family that has admissible drives.
    pub cost_of_accuracy: Vec<FamilyFront>,
    /// A move from rest to rest.
    pub rapid_move: MoveCurve,
}

/// The drives of one family that no other of it beats in cost and accuracy at once, at the carried mass at which drives are weighed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct FamilyFront {
    /// Id of the family.
    pub family: String,
    /// Half band that each adds at the tool, µm, the largest first.
    pub tool_error: Vec<f64>,
    /// What each costs over the years of service.
    pub whole_life: Vec<f64>,
}

/// Torque of a motor over its speed, at the site and the least supply voltage.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct MotorCurve {
    /// Speeds, 1/min.
    pub speed: Vec<f64>,
    /// Continuous torque at each, N·m.
    pub continuous: Vec<f64>,
    /// Peak torque at each, N·m.
    pub peak: Vec<f64>,
}

/// The same drives over other travels, the rest of the brief as it stands.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct OverTravel {
    /// Travels, m.
    pub travel: Vec<f64>,
    /// The drive chosen first, then the best of every other family, or its nearest miss.
    pub drives: Vec<DriveOverTravel>,
}

/// One drive over other travels.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct DriveOverTravel {
    /// Id of its family.
    pub family: String,
    /// Its main sizes.
    #[serde(with = "parameters")]
    pub parameters: Vec<Parameter>,
    /// Whether it is admissible on the axis as it stands.
    pub admissible: bool,
    /// What it allows at each travel.
    pub at: Vec<AtTravel>,
}

/// What one drive allows at one travel.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct AtTravel {
    /// Speed of the axis at which the first rule on speed would break, m/min.
    #[serde(with = "known")]
    pub speed: f64,
    /// The rule that it would be; empty where the speed is not known.
    pub rule: String,
    /// Stiffness of one drive, N/µm.
    #[serde(with = "known")]
    pub stiffness: f64,
}

/// A move over time.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct MoveCurve {
    /// Its travel, m.
    pub travel: f64,
    /// Times, s.
    pub time: Vec<f64>,
    /// Speed at each, m/min.
    pub speed: Vec<f64>,
    /// Acceleration at each, m/s².
    pub acceleration: Vec<f64>,
}
