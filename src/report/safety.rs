//! The figures that a risk assessment asks for, in one table a drive.
//!
//! Method: lines of the worksheet, each with the rule that judges it and how far its formula can be trusted. Limits: the
//! figures are information; what is enough is said by the risk assessment and the standards for the machine.

use super::figure;
use super::sheet;
use super::view::View;
use super::words;
use crate::record::CandidateRecord;
use serde::Serialize;

/// One figure.
#[derive(Serialize)]
pub struct SafetyLine {
    what: String,
    value: String,
    judged: String,
    standing: String,
}

/// The figures in the order of a stop: holding, falling, stopping by the drive, running on, the end of the travel.
const FIGURES: [&str; 23] = [
    "gravity-force",
    "holding-torque",
    "lone-holding-torque",
    "brake-torque",
    "brake-test-load",
    "brake-test-torque",
    "drop-from-rest",
    "fall-before-brake",
    "stopping-distance",
    "brake-work",
    "brake-energy",
    "brake-stops",
    "expected-stops",
    "set-torque",
    "drive-push",
    "stop-deceleration",
    "emergency-stop-distance",
    "coasting-distance",
    "whole-end-stop-energy",
    "end-stop-energy",
    "crash-force",
    "buffer-force",
    "end-stop-stroke",
];

/// Figures that say something of an inclined axis only.
const HOLDING: [&str; 4] = ["gravity-force", "holding-torque", "brake-torque", "lone-holding-torque"];

/// The figures that this drive has.
pub fn lines(view: &View, drive: &CandidateRecord) -> Vec<SafetyLine> {
    let line = |id: &&str| {
        let line = drive.line(id)?;
        if HOLDING.contains(id) && line.value == Some(0.0) {
            return None;
        }
        let judged = drive.findings.iter().find(|finding| finding.characteristic == **id && finding.limit.is_some());
        let judged = judged.map_or_else(
            || "–".into(),
            |finding| {
                let (_, limit) = view.pair(finding);
                let verdict = words::verdict(&finding.verdict, &finding.obligation);
                format!("{} {limit}, {verdict}", words::sense(&finding.sense))
            },
        );
        let standing = match line.formula.as_deref().and_then(|id| view.formula(id)) {
            Some(formula) => sheet::standing(&formula.sources),
            None => words::origin(&line.origin).into(),
        };
        // a way without end is entered and has no number
        let value = match line.value {
            None if id.ends_with("-distance") => "not stopped, or not known".into(),
            value => figure::quantity(value, &line.unit, view.units, 3),
        };
        Some(SafetyLine { what: view.words_of(id), value, judged, standing })
    };
    FIGURES.iter().filter_map(line).collect()
}
