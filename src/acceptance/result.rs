//! The result of an acceptance as one record: everything that Markdown, chart and JSON show.
//!
//! Method: plain serialisable structs, kebab-case in JSON; field names stay stable. Values are in the unit that
//! stands beside them, always metric; what is not known or not defined is null. No clock, no host, no path.

use crate::record::{Amount, InputFile};
use serde::Serialize;

/// The version of the shape.
pub const ACCEPTANCE_VERSION: &str = "axiswright-acceptance/1";

/// The whole result.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Acceptance {
    /// [`ACCEPTANCE_VERSION`].
    pub acceptance: String,
    /// Version of the program.
    pub tool: String,
    /// Name of the machine, as the brief gives it.
    pub machine_name: String,
    /// Name of the axis.
    pub axis: String,
    /// Its travel.
    pub travel: Amount,
    /// pass, fail, not-evaluated or nothing-required.
    pub outcome: String,
    /// The files that went in, with their hashes.
    pub inputs: Vec<InputFile>,
    /// What was measured.
    pub measurement: MeasuredRecord,
    /// Quantities over the full measured length; R and A are null above 2 m of travel.
    pub values: ValuesRecord,
    /// Above 2 m of travel: the section on which A is largest.
    pub accuracy_section: Option<ValuesRecord>,
    /// Above 2 m of travel: the section on which R is largest.
    pub repeatability_section: Option<ValuesRecord>,
    /// Quantities at each target.
    pub targets: Vec<TargetRecord>,
    /// What was required, held against what was measured.
    pub checks: Vec<CheckRecord>,
    /// Departures from the usual plan of the test, and other things that a reader must know of the data.
    pub remarks: Vec<Remark>,
    /// What the drive of the recommendation was predicted to reach.
    pub prediction: PredictionRecord,
    /// What the deviations look like.
    pub diagnosis: DiagnosisRecord,
}

/// What was measured.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct MeasuredRecord {
    /// Number of targets.
    pub targets: usize,
    /// Runs in each direction.
    pub runs: usize,
    /// First target, from the start of the travel.
    pub first: Amount,
    /// Last target.
    pub last: Amount,
    /// Mean distance of neighbouring targets.
    pub mean_spacing: Amount,
    /// Expanded uncertainty that guards every limit; null if none was stated.
    pub uncertainty: Option<Amount>,
}

/// Quantities of the axis or of a section.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct ValuesRecord {
    /// First target.
    pub first: Amount,
    /// Last target.
    pub last: Amount,
    /// Number of targets.
    pub targets: usize,
    /// The quantities, by id.
    pub quantities: Vec<QuantityRecord>,
}

/// One quantity of ISO 230-2.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct QuantityRecord {
    /// Its id: reversal, mean-reversal, mean-range, systematic-up …
    pub id: String,
    /// Its symbol: B, B̄, M, E↑ …
    pub symbol: String,
    /// What it is.
    pub words: String,
    /// The value; null where it is not defined.
    pub value: Option<f64>,
    /// Its unit.
    pub unit: String,
}

/// Quantities at a target; deviations in µm.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct TargetRecord {
    /// The target, mm from the start of the travel.
    pub position: f64,
    /// x̄↑.
    pub mean_up: f64,
    /// x̄↓.
    pub mean_down: f64,
    /// s↑.
    pub scatter_up: Option<f64>,
    /// s↓.
    pub scatter_down: Option<f64>,
    /// B_i.
    pub reversal: f64,
    /// R_i.
    pub repeatability: Option<f64>,
}

/// A requirement held against what was measured.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct CheckRecord {
    /// Key in the brief: accuracy, section-accuracy, repeatability, reversal.
    pub requirement: String,
    /// Symbol of the quantity that is judged.
    pub quantity: String,
    /// Where it was taken, in words.
    pub stretch: String,
    /// The measured value; null where it could not be evaluated.
    pub value: Option<f64>,
    /// Value and uncertainty together.
    pub guarded: Option<f64>,
    /// What the brief allows; null if it asks for nothing.
    pub limit: Option<f64>,
    /// The unit of all three.
    pub unit: String,
    /// Guarded value over limit.
    pub utilisation: Option<f64>,
    /// pass, fail, not-evaluated or not-required.
    pub verdict: String,
    /// met, missed or within-uncertainty; null where there is no verdict of pass or fail.
    pub shown: Option<String>,
    /// Why there is no verdict, or what limits it.
    pub remark: Option<String>,
}

/// Something that a reader must know.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Remark {
    /// Its id.
    pub id: String,
    /// In words.
    pub text: String,
}

/// What was predicted.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct PredictionRecord {
    /// Id of the family of the drive; null if none was chosen.
    pub family: Option<String>,
    /// Its main sizes in words.
    pub drive: Option<String>,
    /// Term by term.
    pub terms: Vec<TermRecord>,
    /// What a reader must know of it.
    pub remark: String,
}

/// One term, predicted and measured.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct TermRecord {
    /// Id of the characteristic of the worksheet.
    pub id: String,
    /// Its symbol.
    pub symbol: String,
    /// What it is.
    pub words: String,
    /// Predicted; null if not known.
    pub predicted: Option<f64>,
    /// Measured; null if not defined.
    pub measured: Option<f64>,
    /// The unit of both.
    pub unit: String,
}

/// What the deviations look like.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct DiagnosisRecord {
    /// Standard deviation of all deviations about their mean: the whole of which the causes are shares.
    pub spread: Amount,
    /// The causes that were looked for, largest share first.
    pub causes: Vec<CauseRecord>,
    /// The term that is likeliest behind a misfit.
    pub likeliest: Option<Likeliest>,
}

/// Something that deviations can come from.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct CauseRecord {
    /// Its id.
    pub id: String,
    /// What it is.
    pub title: String,
    /// found, not-found or not-resolvable.
    pub state: String,
    /// The share of the variance of all deviations that it explains; null where not found.
    pub share: Option<f64>,
    /// Its size.
    pub size: Option<Amount>,
    /// What it would look like.
    pub looks_like: String,
    /// What the numbers say.
    pub reading: String,
}

/// The term that is likeliest behind a misfit.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Likeliest {
    /// position-error, reversal-error or scatter.
    pub term: String,
    /// Id of the cause that feeds this term most; null if none was found.
    pub cause: Option<String>,
    /// In words.
    pub text: String,
}

/// An amount in micrometres.
pub(super) fn micrometres(si: f64) -> Amount {
    Amount { value: known(si * 1e6), unit: "µm".into() }
}

/// An amount in millimetres.
pub(super) fn millimetres(si: f64) -> Amount {
    Amount { value: known(si * 1e3), unit: "mm".into() }
}

/// A number that may not be known.
pub(super) fn known(value: f64) -> Option<f64> {
    value.is_finite().then_some(value)
}
