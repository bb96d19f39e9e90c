//! What is told of a choice that someone proposes.

use super::*;
use crate::brief::Brief;
use crate::choice::Choice;
use crate::inquiry::Margin;

/// The version of the record's shape.
pub const PROPOSAL_VERSION: &str = "axiswright-check/1";

/// A choice judged.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct ProposalRecord {
    /// [`PROPOSAL_VERSION`].
    pub record: String,
    /// The file with the choice.
    pub choice: InputFile,
    /// Whether every drive proposed keeps all binding rules, and the machine its limits.
    pub meets: bool,
    /// What is odd about components that the file gives in place.
    pub remarks: Vec<String>,
    /// The axes for which a drive is proposed, in the order of the brief.
    pub axes: Vec<ProposedAxis>,
    /// The whole decision with what is proposed in place; other axes get what suits the machine with it.
    pub proposed: DecisionRecord,
    /// What the machine comes to as recommended.
    pub recommended_machine: MachineTotals,
    /// What was recommended, whether a drive was chosen for every axis.
    pub recommended_outcome: Outcome,
}

/// A machine in figures.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct MachineTotals {
    /// Price to buy all drives.
    pub purchase: Option<f64>,
    /// Price over the years of service.
    pub whole_life_cost: Option<f64>,
    /// Error at the tool, at the reference temperature.
    pub tool_point_error: Option<Amount>,
    /// Growth with temperature on top of it.
    #[serde(default)]
    pub tool_point_growth: Option<Amount>,
    /// Largest power from the supply.
    pub peak_power: Option<Amount>,
    /// Different motor models.
    pub motor_models: Option<u32>,
    /// Different gearbox models.
    pub gearbox_models: Option<u32>,
}

/// What is proposed for one axis, and how it stands.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct ProposedAxis {
    /// Name of the axis.
    pub name: String,
    /// Id of the family.
    pub family: String,
    /// The parts that are named.
    pub given: Vec<GivenPart>,
    /// Kinds of parts of the drive whose data the file itself gives, named or chosen here.
    pub own: Vec<String>,
    /// Kinds of parts that were left open and chosen here.
    pub left_open: Vec<String>,
    /// Whether it keeps every binding rule.
    pub admissible: bool,
    /// The drive with its worksheet and findings.
    pub drive: Option<CandidateRecord>,
    /// The drive that is recommended in its place.
    pub recommended: Option<CandidateRecord>,
    /// How far requirements may grow, the one with the least room first; empty where the drive fails already.
    pub margins: Vec<MarginRecord>,
    /// Admissible drives of the catalogue that are better in the measure of the choice; none where it is not admissible.
    pub better: Option<u64>,
    /// Admissible drives of the catalogue.
    pub admissible_drives: u64,
}

/// A part that is named.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct GivenPart {
    /// Name of its kind.
    pub kind: String,
    /// Its designation; "none" where the drive does without.
    pub designation: String,
    /// Whether the file itself gives its data.
    pub own: bool,
}

/// How far one requirement may grow.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct MarginRecord {
    /// The requirement.
    pub requirement: String,
    /// The unit of both values.
    pub unit: String,
    /// What the brief asks.
    pub now: f64,
    /// Up to where all rules are kept.
    pub holds_to: f64,
    /// The rule that breaks beyond; none where all that was looked at passes.
    pub breaks: Option<String>,
}

/// What was found out of one axis.
pub struct Judged {
    /// The axis, as place in the brief.
    pub axis: usize,
    /// How far requirements may grow.
    pub margins: Vec<Margin>,
    /// Admissible drives that are better.
    pub rank: Option<u64>,
}

/// Puts the record together.
pub fn proposal_record(
    choice: &Choice,
    brief: &Brief,
    mut recommended: DecisionRecord,
    proposed: DecisionRecord,
    judged: Vec<Judged>,
) -> ProposalRecord {
    let axes: Vec<ProposedAxis> = choice
        .proposals
        .iter()
        .zip(judged)
        .map(|(proposal, judged)| {
            let place = &proposed.axes[judged.axis];
            let other = &mut recommended.axes[judged.axis];
            let of_family = place.families.iter().find_map(|one| one.best.as_ref().or(one.nearest.as_ref()));
            ProposedAxis {
                name: brief.axes[judged.axis].name.clone(),
                family: proposal.family.clone(),
                given: proposal.parts.iter().map(given).collect(),
                own: own_kinds(choice, place.chosen.as_ref().or(of_family)),
                left_open: open(proposal, place.chosen.as_ref().or(of_family)),
                admissible: place.chosen.is_some()
                    || place.families.iter().any(|family| family.admissible > 0 && family.best.is_some()),
                drive: place.chosen.clone().or_else(|| of_family.cloned()),
                recommended: other.chosen.take(),
                margins: judged.margins.iter().map(margin).collect(),
                better: judged.rank,
                admissible_drives: other.families.iter().map(|family| family.admissible).sum(),
            }
        })
        .collect();
    let kept = proposed.machine.limits.iter().all(|limit| limit.verdict != "fail");
    let machine = &recommended.machine;
    ProposalRecord {
        record: PROPOSAL_VERSION.into(),
        remarks: choice.remarks.clone(),
        choice: input_files::input_of("choice", &choice.name, &choice.text),
        meets: kept && axes.iter().all(|axis| axis.admissible) && proposed.outcome == Outcome::Chosen,
        recommended_machine: MachineTotals {
            purchase: machine.purchase,
            whole_life_cost: machine.whole_life_cost,
            tool_point_error: machine.tool_point_error.clone(),
            tool_point_growth: machine.tool_point_growth.clone(),
            peak_power: machine.peak_power.clone(),
            motor_models: machine.motor_models,
            gearbox_models: machine.gearbox_models,
        },
        recommended_outcome: recommended.outcome,
        axes,
        proposed,
    }
}

fn given(part: &crate::choice::Named) -> GivenPart {
    GivenPart { kind: part.kind.into(), designation: part.designation.clone(), own: part.own }
}

/// The kinds of parts of a drive whose data stand in the file with the choice.
fn own_kinds(choice: &Choice, drive: Option<&CandidateRecord>) -> Vec<String> {
    let parts = drive.map(|drive| drive.components.as_slice()).unwrap_or_default();
    let own = parts.iter().filter(|part| choice.own.contains(&part.designation));
    own.map(|part| part.role.clone()).collect()
}

/// What was left open and really chosen: kinds of which the drive has a part.
fn open(proposal: &crate::choice::Proposal, drive: Option<&CandidateRecord>) -> Vec<String> {
    let has = |kind: &&str| drive.is_some_and(|drive| drive.components.iter().any(|part| part.role == *kind));
    proposal.open().into_iter().filter(has).map(String::from).collect()
}

fn margin(margin: &Margin) -> MarginRecord {
    let (si, unit) = match margin.requirement.unit() {
        Some((_, unit)) => (unit.si, unit.name),
        None => (1.0, margin.requirement.plain_unit()),
    };
    MarginRecord {
        requirement: margin.requirement.key().into(),
        unit: unit.into(),
        now: margin.now / si,
        holds_to: margin.holds / si,
        breaks: margin.breaks.clone(),
    }
}
