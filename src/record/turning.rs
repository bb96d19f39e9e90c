//! The turning points of an axis as they stand in the record.

use super::candidate_build::parameter;
use super::*;
use crate::inquiry::{self, ANCHORS, FAR_ANCHORS, RESOLUTION, Turns};
use crate::search::{Found, Setting, main_sizes};

/// The nearest value of a requirement at which the answer changes.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct TurningPoint {
    /// The requirement.
    pub requirement: String,
    /// Its unit; empty for plain numbers and money.
    pub unit: String,
    /// What the brief asks now.
    pub now: f64,
    /// The nearest value at which the answer was found to have changed.
    pub turns_at: f64,
    /// The farthest value before it at which the answer was found to hold.
    #[serde(with = "known", default = "known::unknown")]
    pub holds_at: f64,
    /// The family before.
    pub from: String,
    /// The family beyond, or "none" where nothing is admissible.
    pub to: String,
    /// The rule that the drive before fails worst beyond, a limit of the machine that it exceeds ("limits.purchase"), or "cost" where
    /// another is only better.
    pub rule: String,
    /// main-size or family: what changes.
    #[serde(default)]
    pub changes: String,
    /// Main sizes of the drive before.
    #[serde(default = "Vec::new", with = "parameters")]
    pub from_sizes: Vec<Parameter>,
    /// Main sizes of the drive beyond.
    #[serde(default = "Vec::new", with = "parameters")]
    pub to_sizes: Vec<Parameter>,
}

/// How turning points were looked for.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct TurningScope {
    /// Whether the axis alone gets the drive that was chosen; where it gave way to the machine no turning point is told.
    pub settled_alone: bool,
    /// How many times as much, and as little, was searched in full.
    pub anchors: Vec<f64>,
    /// The same of travel and speed.
    pub far_anchors: Vec<f64>,
    /// Relative width to which a change was narrowed.
    pub resolution: f64,
}

/// The scope, where turning points were looked for.
pub fn scope(points: Option<&[inquiry::TurningPoint]>) -> TurningScope {
    TurningScope {
        settled_alone: points.is_some(),
        anchors: ANCHORS.to_vec(),
        far_anchors: FAR_ANCHORS.to_vec(),
        resolution: RESOLUTION,
    }
}

/// The points of an axis that carries this much, kg.
pub fn points(
    brief: &crate::brief::Brief,
    axis: usize,
    carried: f64,
    setting: &Setting<'_>,
    points: &[inquiry::TurningPoint],
) -> Vec<TurningPoint> {
    let sizes = |found: &Found| main_sizes(brief, axis, carried, setting, found).iter().map(parameter).collect();
    let one = |point: &inquiry::TurningPoint| {
        let (unit, si) =
            point.requirement.unit().map_or((point.requirement.plain_unit(), 1.0), |(_, unit)| (unit.name, unit.si));
        TurningPoint {
            requirement: point.requirement.key().into(),
            unit: unit.into(),
            now: point.now / si,
            turns_at: point.turns_at / si,
            holds_at: point.holds_at / si,
            from: point.from.family.into(),
            to: point.to.as_ref().map_or("none", |found| found.family).into(),
            rule: point.rule.clone().unwrap_or_else(|| "cost".into()),
            changes: match point.turns {
                Turns::MainSize => "main-size".into(),
                Turns::Family => "family".into(),
            },
            from_sizes: sizes(&point.from),
            to_sizes: point.to.as_ref().map_or(Vec::new(), sizes),
        }
    };
    points.iter().map(one).collect()
}
