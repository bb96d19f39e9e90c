//! How the axis follows and comes to rest, for the engineer.

use super::view::View;
use super::words;
use crate::record::CandidateRecord;
use serde::Serialize;

/// One line.
#[derive(Debug, Serialize)]
pub struct ServoLine {
    name: String,
    value: String,
    limit: String,
}

/// The lines in the order in which they follow from each other.
const LINES: [&str; 14] = [
    "first-mode",
    "free-mode",
    "mass-ratio",
    "loop-gain",
    "feed-forward",
    "top-following-error",
    "cutting-following-error",
    "plain-circle-error",
    "fed-circle-error",
    "contour-error",
    "reversal-spike",
    "jerk-residue",
    "jerk-envelope",
    "settling-time",
];

/// What is told of the position loop.
pub fn lines(view: &View, drive: &CandidateRecord) -> Vec<ServoLine> {
    let line = |id: &str| {
        let line = drive.line(id).filter(|line| line.value.is_some())?;
        let judged = drive.findings.iter().find(|finding| finding.characteristic == id && finding.limit.is_some());
        let limit = judged
            .map_or_else(|| "–".into(), |finding| format!("{} {}", words::sense(&finding.sense), view.pair(finding).1));
        Some(ServoLine { name: view.words_of(id), value: view.quantity(line.value, &line.unit), limit })
    };
    LINES.iter().filter_map(|id| line(id)).collect()
}
