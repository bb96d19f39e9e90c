//! What the differences come to: for each axis whether the same drive is chosen, what another costs, which verdicts turn.

use crate::record::{AxisRecord, CandidateRecord, DecisionRecord};
use serde::Serialize;

/// What becomes of an axis.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Consequence {
    /// The axis.
    pub axis: String,
    /// Whether the same drive is chosen, part by part.
    pub same_drive: bool,
    /// The drive of the record.
    pub recorded: Option<DriveTold>,
    /// The drive that comes out now.
    pub now: Option<DriveTold>,
    /// By how much the price to buy grows.
    pub purchase_change: Option<f64>,
    /// By how much the whole-life cost grows.
    pub whole_life_change: Option<f64>,
    /// Rules whose verdict on the drive chosen turns, where it is the same drive.
    pub turned: Vec<Turned>,
}

/// A drive in short.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct DriveTold {
    /// Its family.
    pub family: String,
    /// Its components.
    pub components: Vec<String>,
    /// Price to buy and fit.
    pub purchase: Option<f64>,
    /// Price over the years of service.
    pub whole_life: Option<f64>,
}

impl DriveTold {
    /// Of a drive of the record.
    pub fn of(drive: &CandidateRecord) -> DriveTold {
        let finite = |value: f64| value.is_finite().then_some(value);
        DriveTold {
            family: drive.family.clone(),
            components: drive.components.iter().map(|part| part.designation.clone()).collect(),
            purchase: finite(drive.cost.purchase),
            whole_life: finite(drive.cost.whole_life),
        }
    }
}

/// A verdict that turns.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Turned {
    /// The rule.
    pub rule: String,
    /// Its verdict in the record.
    pub recorded: String,
    /// Its verdict now.
    pub now: String,
}

/// What becomes of every axis of the record.
pub fn consequences(recorded: &DecisionRecord, now: &DecisionRecord) -> Vec<Consequence> {
    let other = |axis: &AxisRecord| now.axes.iter().find(|other| other.name == axis.name);
    recorded.axes.iter().map(|axis| consequence(axis, other(axis))).collect()
}

fn consequence(axis: &AxisRecord, now: Option<&AxisRecord>) -> Consequence {
    let (was, is) = (axis.chosen.as_ref(), now.and_then(|axis| axis.chosen.as_ref()));
    let (recorded, now) = (was.map(DriveTold::of), is.map(DriveTold::of));
    let parts =
        |drive: &Option<DriveTold>| drive.as_ref().map(|drive| (drive.family.clone(), drive.components.clone()));
    let same_drive = parts(&recorded) == parts(&now);
    let change = |of: fn(&DriveTold) -> Option<f64>| Some(now.as_ref().and_then(of)? - recorded.as_ref().and_then(of)?);
    let turned = match (was, is) {
        (Some(was), Some(is)) if same_drive => turned(was, is),
        _ => Vec::new(),
    };
    Consequence {
        axis: axis.name.clone(),
        same_drive,
        purchase_change: change(|drive| drive.purchase),
        whole_life_change: change(|drive| drive.whole_life),
        recorded,
        now,
        turned,
    }
}

fn turned(was: &CandidateRecord, is: &CandidateRecord) -> Vec<Turned> {
    let verdict = |drive: &CandidateRecord, rule: &str| {
        let finding = drive.findings.iter().find(|finding| finding.rule == rule);
        finding.map_or_else(|| "not judged".to_string(), |finding| finding.verdict.clone())
    };
    let mut rules: Vec<&str> = was.findings.iter().chain(&is.findings).map(|finding| finding.rule.as_str()).collect();
    rules.sort_unstable();
    rules.dedup();
    let all = rules.into_iter().map(|rule| Turned {
        rule: rule.into(),
        recorded: verdict(was, rule),
        now: verdict(is, rule),
    });
    all.filter(|turned| turned.recorded != turned.now).collect()
}
