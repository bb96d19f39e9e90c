//! How a finished axis is accepted, for the engineer.

use super::view::View;
use super::{figure, words};
use crate::record::CandidateRecord;
use serde::Serialize;

/// The section on acceptance of one drive.
#[derive(Debug, Serialize)]
pub struct Acceptance {
    runs: String,
    targets: String,
    section: Option<String>,
    limits: Vec<LimitLine>,
}

#[derive(Debug, Serialize)]
struct LimitLine {
    quantity: String,
    words: String,
    over: String,
    required: String,
    predicted: String,
}

fn positions(view: &View, positions: &[f64], unit: &str) -> String {
    let shown: Vec<String> = positions.iter().map(|&at| figure::quantity(Some(at), unit, view.units, 6)).collect();
    // the unit once, at the end
    let ending = shown.last().and_then(|last| last.rsplit_once(' ')).map_or("", |(_, unit)| unit);
    let bare: Vec<&str> = shown.iter().map(|at| at.trim_end_matches(ending).trim_end()).collect();
    format!("{} {ending}", bare.join(" · "))
}

/// The section, for a drive that was chosen.
pub fn collect(view: &View, drive: &CandidateRecord) -> Option<Acceptance> {
    let plan = drive.acceptance.as_ref()?;
    let several = |runs: u32| words::several(u64::from(runs), "run", "runs");
    let section = (!plan.section_targets.is_empty()).then(|| {
        format!(
            "On a section of 2 m to be agreed, here in the middle, {} targets, {} in each direction: {}.",
            plan.section_targets.len(),
            several(plan.section_runs),
            positions(view, &plan.section_targets, &plan.unit)
        )
    });
    let limits = plan
        .limits
        .iter()
        .map(|limit| LimitLine {
            quantity: limit.quantity.clone(),
            words: view.words_of(&limit.characteristic),
            over: limit.over.clone(),
            required: limit
                .required
                .map_or_else(|| "not asked for".into(), |value| view.quantity(Some(value), &limit.unit)),
            predicted: view.quantity(limit.predicted, &limit.unit),
        })
        .collect();
    Some(Acceptance {
        runs: format!("{} targets, {} in each direction", plan.targets.len(), several(plan.runs)),
        targets: positions(view, &plan.targets, &plan.unit),
        section,
        limits,
    })
}
