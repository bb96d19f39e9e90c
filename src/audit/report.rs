//! The documents of a decision folder: whether they say what the record says.
//!
//! Method: report, pictures and table are written again from the record, in metric or in inch units as the report is, and held
//! against the files byte by byte.
//! Limits: another version of the program may word them anew, so that they are compared only where this version wrote them.

use super::fault::{Checked, Fault};
use super::words;
use crate::record::DecisionRecord;
use crate::report::{CHARTS, candidates, report};
use crate::units::UnitSystem;
use std::path::Path;

/// Checks the documents of a folder.
pub fn check(folder: &Path, record: &DecisionRecord) -> Checked {
    let mut checked = Checked::default();
    if record.tool != env!("CARGO_PKG_VERSION") {
        checked.not_checked.push(words::other_version());
        return checked;
    }
    let metric = documents(record, UnitSystem::Metric);
    let differs = compare(folder, &metric);
    // told in the units that fit better
    let in_inches = || Some(documents(record, UnitSystem::Inch)).filter(|inch| compare(folder, inch) < differs);
    let documents = if differs == 0 { metric } else { in_inches().unwrap_or(metric) };
    for (name, written) in documents {
        let Some(found) = text(folder, &name) else {
            checked.not_checked.push(words::no_document(&name));
            continue;
        };
        checked.count += 1;
        if found == written {
            continue;
        }
        let place = found.lines().zip(written.lines()).position(|(one, other)| one != other);
        let place = place.unwrap_or_else(|| found.lines().count().min(written.lines().count()));
        let line = |text: &str| text.lines().nth(place).unwrap_or_default().to_string();
        let path = format!("{name}, line {}", place + 1);
        checked.faults.push(Fault::word(path, words::document(&name), &line(&found), &line(&written)));
    }
    checked
}

/// Every document, by its name in the folder.
fn documents(record: &DecisionRecord, units: UnitSystem) -> Vec<(String, String)> {
    let report = report(record, units);
    let mut all =
        vec![("recommendation.md".to_string(), report.markdown), ("recommendation.html".to_string(), report.html)];
    all.extend(candidates(record).ok().map(|table| ("candidates.csv".to_string(), table)));
    all.extend(report.charts.into_iter().map(|chart| (format!("{CHARTS}/{}", chart.file), chart.svg)));
    all
}

/// How many documents differ.
fn compare(folder: &Path, documents: &[(String, String)]) -> usize {
    documents.iter().filter(|(name, written)| text(folder, name).is_some_and(|found| found != *written)).count()
}

fn text(folder: &Path, name: &str) -> Option<String> {
    std::fs::read(folder.join(name)).ok().map(|bytes| String::from_utf8_lossy(&bytes).into_owned())
}
