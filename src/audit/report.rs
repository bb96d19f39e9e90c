//! The documents of a decision folder: whether they say what the record says.
//!
//! Method: report, pictures and table are written again from the record, in metric or in inch units as the report is, and held
//! against the files byte by byte.
//! Limits: another version of the program may word them anew, so that they are compared only where this version wrote them.

use super::fault::{Checked, Fault};
use super::words;
use crate::record::DecisionRecord;
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
        let Some(found) = content(folder, &name) else {
            let lines = String::from_utf8_lossy(&written).lines().count();
            let expected = words::document_of(lines);
            checked.faults.push(Fault::word(name.clone(), words::document(&name), NOTHING, &expected));
            continue;
        };
        checked.count += 1;
        if found == written {
            continue;
        }
        let (path, one, other) = first_difference(&name, &found, &written);
        checked.faults.push(Fault::word(path, words::document(&name), &one, &other));
    }
    checked
}

/// Where two documents differ first, and how both read there.
fn first_difference(name: &str, found: &[u8], written: &[u8]) -> (String, String, String) {
    let (Ok(found), Ok(written)) = (std::str::from_utf8(found), std::str::from_utf8(written)) else {
        let place = found.iter().zip(written).position(|(one, other)| one != other);
        let place = place.unwrap_or_else(|| found.len().min(written.len()));
        let bytes = |content: &[u8]| format!("{} bytes", content.len());
        return (format!("{name}, byte {}", place + 1), bytes(found), bytes(written));
    };
    let place = found.lines().zip(written.lines()).position(|(one, other)| one != other);
    let place = place.unwrap_or_else(|| found.lines().count().min(written.lines().count()));
    let line = |text: &str| text.lines().nth(place).unwrap_or_default().to_string();
    let (one, other) = excerpts(&line(found), &line(written));
    (format!("{name}, line {}", place + 1), one, other)
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

/// Every document, by its name in the folder; none where the record does not give them.
fn documents(record: &DecisionRecord, units: UnitSystem) -> Vec<(String, Vec<u8>)> {
    crate::report::documents(record, units).unwrap_or_default()
}

/// How many documents differ.
fn compare(folder: &Path, documents: &[(String, Vec<u8>)]) -> usize {
    documents.iter().filter(|(name, written)| content(folder, name).is_some_and(|found| found != *written)).count()
}

fn content(folder: &Path, name: &str) -> Option<Vec<u8>> {
    std::fs::read(folder.join(name)).ok()
}
