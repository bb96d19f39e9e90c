//! Lines of a list for the workshop, each with its source: what fitting asks, and what upkeep asks.

use super::{CandidateRecord, InstallationLine, candidate_build};
use crate::ledger::{Characteristic, Origin};
use crate::search::Worked;
use crate::units::*;

/// Collects lines.
pub struct List<'w, 's> {
    /// The drive.
    pub worked: &'w Worked<'s>,
    /// The lines so far.
    pub lines: Vec<InstallationLine>,
}

impl<'w, 's> List<'w, 's> {
    /// No line yet.
    pub fn new(worked: &'w Worked<'s>) -> List<'w, 's> {
        List { worked, lines: Vec::new() }
    }

    /// Adds a line.
    pub fn add(&mut self, group: &str, item: &str, value: Option<f64>, unit: &str, words: &str, source: String) {
        let (group, item, unit, words) = (group.into(), item.into(), unit.into(), words.into());
        self.lines.push(InstallationLine { group, item, value, unit, words, source });
    }

    /// A line of the worksheet; nothing where it is not there.
    pub fn sheet<Q: Measure>(&mut self, group: &str, item: &str, characteristic: Characteristic<Q>) {
        let slot = characteristic.slot;
        let Some(line) = self.worked.sheet.line(slot).filter(|line| line.value.is_finite()) else { return };
        let about = crate::characteristic::about(slot).0;
        let source = match line.note {
            Some(note) => format!("worked out: {}", note.id),
            None if line.origin == Origin::Catalog => "catalogue".into(),
            None => line.origin.word().to_string(),
        };
        let value = candidate_build::shown(slot, line.value);
        self.add(group, item, value, about.unit, "", source);
    }

    /// A length that a part of the catalogue states.
    pub fn demand(&mut self, group: &str, item: &str, value: Option<Length>, words: &str, part: &str) {
        if let Some(value) = value {
            self.add(group, item, Some(value.si() * 1e3), "mm", words, format!("catalogue: {part}"));
        }
    }

    /// What words say, after a part of the catalogue or, without one, after common practice.
    pub fn words(&mut self, group: &str, item: &str, words: &str, part: &str) {
        let source = if part.is_empty() { "common practice, no source".into() } else { format!("catalogue: {part}") };
        self.add(group, item, None, "", words, source);
    }
}

/// The designation of the component with this role.
pub fn part<'c>(chosen: &'c CandidateRecord, role: &str) -> Option<&'c str> {
    chosen.components.iter().find(|part| part.role == role).map(|part| part.designation.as_str())
}
