//! How a finished axis is accepted: targets, runs and limits by ISO 230-2.
//!
//! Method: targets of the plan, shifted by parts of one turn of the drive; limits of the brief beside what is predicted.
//! Limits: the plan is from memory of the standard; what is agreed between customer and supplier takes precedence.

use super::{AcceptanceLimit, AcceptancePlan, CandidateRecord};
use crate::brief::Axis;
use crate::formula::iso_230_2::{LEAST_TARGETS, LONGEST_WHOLE, RUNS};
use crate::formula::test_plan::{is_long, spacing, targets};
use crate::units::{Length, Measure};

/// The plan for a drive that was chosen.
pub fn plan(axis: &Axis, chosen: &CandidateRecord) -> AcceptancePlan {
    let millimetres = |id: &str| chosen.value(id).map_or(f64::NAN, |value| value * 1e-3);
    let period = match millimetres("travel-per-turn") {
        turn if turn > 0.0 => Length::of_si(turn),
        _ => Length::of_si(0.0),
    };
    let shown = |found: Vec<f64>| found.into_iter().map(|metres| (metres * 1e5).round() / 1e2).collect::<Vec<f64>>();
    let long = is_long(axis.travel);
    let whole = targets(Length::of_si(0.0), axis.travel, spacing(axis.travel), period);
    let section = long.then(|| {
        let (length, near) = (Length::of_si(LONGEST_WHOLE), 0.5 * (axis.travel.si() - LONGEST_WHOLE));
        let start = Length::of_si((near * 1e2).round() / 1e2);
        targets(start, length, 1.0 / LEAST_TARGETS, period)
    });
    let asked = |wanted: Option<Length>| wanted.map(|value| value.si() * 1e6);
    let mut limits = Vec::new();
    let mut limit = |quantity: &str, over: &str, id: &str, required: Option<Length>| {
        limits.push(AcceptanceLimit {
            quantity: quantity.into(),
            over: over.into(),
            characteristic: id.into(),
            required: asked(required),
            predicted: chosen.value(id).filter(|value| value.is_finite()),
            unit: "µm".into(),
        });
    };
    let (travel, part) = ("travel", "section of 2 m");
    if long {
        limit("E", travel, "accuracy", axis.accuracy);
        limit("M", travel, "position-error", None);
        limit("B", travel, "reversal-error", axis.reversal);
        limit("A", part, "section-accuracy", axis.section_accuracy);
        limit("R", part, "repeatability", axis.repeatability);
    } else {
        limit("A", travel, "accuracy", axis.accuracy);
        limit("R", travel, "repeatability", axis.repeatability);
        limit("M", travel, "position-error", None);
        limit("B", travel, "reversal-error", axis.reversal);
    }
    AcceptancePlan {
        targets: shown(whole),
        runs: if long { 1 } else { RUNS as u32 },
        section_targets: section.map(shown).unwrap_or_default(),
        section_runs: RUNS as u32,
        unit: "mm".into(),
        limits,
    }
}
