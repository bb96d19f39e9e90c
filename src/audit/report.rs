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
            checked.faults.push(Fault::word(
                name.clone(),
                words::document(&name),
                NOTHING,
                &words::document_of(written.lines().count()),
            ));
            continue;
        };
        checked.count += 1;
        if found == written {
            continue;
        }
        let place = found.lines().zip(written.lines()).position(|(one, other)| one != other);
        let place = place.unwrap_or_else(|| found.lines().count().min(written.lines().count()));
        let (one, other) =
            (found.lines().nth(place).unwrap_or_default(), written.lines().nth(place).unwrap_or_default());
        let (one, other) = excerpts(one, other);
        let path = format!("{name}, line {}", place + 1);
        checked.faults.push(Fault::word(path, words::document(&name), &one, &other));
    }
    checked
}

/// What is there of a document that is missing.
const NOTHING: &str = "no such file";
/// Letters before the first that differs, and from there on.
const BEFORE: usize = 30;
const FROM: usize = 60;

/// The parts of two lines about the first letter that differs.
fn excerpts(one: &str, other: &str) -> (String, String) {
    let same = one.chars().zip(other.chars()).take_while(|(one, other)| one == other).count();
    let begin = same.saturating_sub(BEFORE);
    let part = |text: &str| {
        let lead = if begin > 0 { "… " } else { "" };
        let kept: String = text.chars().skip(begin).take(same - begin + FROM).collect();
        let rest = if text.chars().count() > same + FROM { " …" } else { "" };
        format!("{lead}{kept}{rest}")
    };
    (part(one), part(other))
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
