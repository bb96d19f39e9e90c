//! Lines of a list for the workshop, each with its source: what fitting asks, and what upkeep asks.

use super::{CandidateRecord, InstallationLine, candidate_build};
use crate::ledger::Origin;
use crate::search::Worked;

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

    /// The line of the worksheet with this id; nothing where it is not there.
    pub fn figure(&mut self, group: &str, item: &str, id: &str, how: &str) {
        let Some((slot, about)) = crate::characteristic::find(id) else { return };
        let Some(line) = self.worked.sheet.line(slot).filter(|line| line.value.is_finite()) else { return };
        let source = match line.note {
            Some(note) => format!("worked out: {}", note.id),
            None if line.origin == Origin::Catalog => "catalogue".into(),
            None => line.origin.word().to_string(),
        };
        let value = candidate_build::shown(slot, line.value);
        self.add(group, item, value, about.unit, how, source);
    }

    /// What a part of the catalogue says in words.
    pub fn words(&mut self, group: &str, item: &str, words: &str, part: &str) {
        let source = format!("catalogue: {part}");
        self.add(group, item, None, "", words, source);
    }
}

/// The designation of the component with this role.
pub fn part<'c>(chosen: &'c CandidateRecord, role: &str) -> Option<&'c str> {
    chosen.components.iter().find(|part| part.role == role).map(|part| part.designation.as_str())
}
