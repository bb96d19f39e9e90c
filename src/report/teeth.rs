//! What an engineer asks of a rack first: which of its teeth govern, where it would mark the cut, what screw it beats; and of
//! a screw, where it would mark the cut and how near to its whip speed it turns then.
//!
//! Method: the worst of the findings on strength of teeth; lines of the worksheet in words. Limits: none.

use super::figure;
use super::view::View;
use super::words;
use crate::record::CandidateRecord;

/// The rules on strength of teeth and what each is about.
const TEETH: [(&str, &str); 12] = [
    ("pinion-pitting", "pitting of the pinion"),
    ("rack-pitting", "pitting of the rack"),
    ("pinion-root", "the root of the pinion"),
    ("pinion-root-people", "the root of the pinion"),
    ("rack-root", "the root of the rack"),
    ("rack-root-people", "the root of the rack"),
    ("pinion-flank-peak", "the largest force on the flanks of the pinion"),
    ("rack-flank-peak", "the largest force on the flanks of the rack"),
    ("pinion-root-peak", "the largest force on the roots of the pinion"),
    ("rack-root-peak", "the largest force on the roots of the rack"),
    ("stop-pinion-root", "the roots of the pinion in an emergency stop"),
    ("stop-rack-root", "the roots of the rack in an emergency stop"),
];

/// Sentences on the smooth motion of a screw that cuts.
fn screw_notes(view: &View, drive: &CandidateRecord) -> Vec<String> {
    let mut notes = Vec::new();
    if drive.value("cutting-force").is_none_or(|force| force <= 0.0) {
        return notes;
    }
    if let Some(speed) = view.value_of(drive, "turn-marking-speed") {
        notes.push(format!("Near {speed} the rhythm of the turns meets the first resonance and would mark the cut."));
    }
    let (turning, whip) = (drive.value("cutting-screw-speed"), drive.value("whip-speed"));
    if let (Some(turning), Some(whip), Some(bow)) = (turning, whip, drive.value("bow-in-cut")) {
        notes.push(format!(
            "At cutting speed the screw turns at {} % of its whip speed, and {} % of its bow comes on top.",
            figure::figure(100.0 * turning / whip, 2),
            figure::figure(100.0 * bow, 2)
        ));
    }
    notes
}

/// Sentences on the teeth of a rack drive, or on the turns of a screw.
pub fn notes(view: &View, drive: &CandidateRecord) -> Vec<String> {
    if !words::is_rack(&drive.family) {
        return screw_notes(view, drive);
    }
    let mut notes = Vec::new();
    let judged = drive.findings.iter().filter_map(|finding| {
        let (_, about) = TEETH.iter().find(|(rule, _)| *rule == finding.rule)?;
        Some((finding.utilisation.filter(|value| value.is_finite())?, finding, *about))
    });
    if let Some((used, _, about)) = judged.max_by(|first, second| first.0.total_cmp(&second.0)) {
        let used = figure::utilisation(Some(used));
        notes.push(format!("Of the strength of the teeth, {about} governs: {used} used."));
    }
    let cuts = drive.value("cutting-force").is_some_and(|force| force > 0.0);
    if let (true, Some(speed)) = (cuts, view.value_of(drive, "marking-speed")) {
        notes.push(format!("Near {speed} the rhythm of the teeth meets the first resonance and would mark the cut."));
    }
    if let (Some(travel), Some(core)) =
        (view.value_of(drive, "equal-stiffness-travel"), view.value_of(drive, "reference-core"))
    {
        notes.push(format!(
            "A ball screw with a core of {core}, held at both ends, would be as stiff at a travel of {travel}, and softer beyond."
        ));
    }
    notes
}
