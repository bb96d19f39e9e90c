//! Cautions: what a reader has to be warned of, when, and where to read on. One file a caution, its id the name of the file.
//!
//! Method: a caution holds where one of its cases holds, and a case where all that it names does: family, words of the
//! surroundings, characteristics that are there or above a value. Without a case it holds always.
//! Limits: a caution is information and no safety concept. It claims no conformity and gives no performance level.

use crate::ledger::{Figures, Worksheet};

/// Who has to know a caution.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Reader {
    /// Who orders and pays.
    Buyer,
    /// Who draws and calculates.
    Designer,
    /// Who mounts and sets to work.
    Fitter,
    /// Who works at the machine.
    Operator,
    /// Who lubricates, inspects and repairs.
    Maintainer,
}

impl Reader {
    /// Every reader with the word used in caution files and records.
    pub const WORDS: [(&'static str, Reader); 5] = [
        ("buyer", Reader::Buyer),
        ("designer", Reader::Designer),
        ("fitter", Reader::Fitter),
        ("operator", Reader::Operator),
        ("maintainer", Reader::Maintainer),
    ];

    /// The word used in caution files and records.
    pub fn word(self) -> &'static str {
        Self::WORDS.iter().find(|(_, reader)| *reader == self).map_or("", |(word, _)| word)
    }
}

/// A standard to read beside a caution.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StandardNamed {
    /// Its number: "ISO 14118".
    pub number: String,
    /// What it is about, in our words.
    pub about: String,
}

/// What a characteristic is held against in a case.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Level {
    /// A value, in the SI unit of the characteristic.
    Value(f64),
    /// A factor times the characteristic in this slot.
    Of(f64, usize),
}

/// A characteristic that has to be above a level; one that is entered and not known counts as above.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Above {
    /// The slot of the characteristic.
    pub slot: usize,
    /// What it has to exceed.
    pub level: Level,
}

/// One case in which a caution holds: all that it names together.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Case {
    /// The families of the drive; none listed means any, and no drive at all.
    pub families: Vec<String>,
    /// Words of the surroundings, of which the brief names one; none listed means any.
    pub environment: Vec<String>,
    /// Slots of characteristics that have to be entered.
    pub present: Vec<usize>,
    /// Characteristics that have to be above a level.
    pub above: Vec<Above>,
}

/// What is known of an axis when its cautions are told.
#[derive(Debug, Clone, Copy)]
pub struct Facts<'f> {
    /// The family of the drive chosen, if any.
    pub family: Option<&'f str>,
    /// What the brief says of the surroundings.
    pub environment: &'f [String],
    /// The worksheet of the drive, or of the axis alone.
    pub sheet: &'f Worksheet,
}

impl Case {
    /// Whether everything it names is so.
    pub fn holds(&self, facts: &Facts<'_>) -> bool {
        let entered = |slot: usize| facts.sheet.line(slot).is_some();
        let above = |above: &Above| {
            let level = match above.level {
                Level::Value(value) => value,
                Level::Of(factor, slot) => factor * facts.sheet.value(slot),
            };
            let value = facts.sheet.value(above.slot);
            // what was to be worked out and is not known does not excuse
            entered(above.slot) && (value > level || value.is_nan() || level.is_nan())
        };
        let said = |word: &String| {
            facts.environment.iter().any(|written| written.to_lowercase().contains(&word.to_lowercase()))
        };
        (self.families.is_empty() || facts.family.is_some_and(|family| self.families.iter().any(|id| id == family)))
            && (self.environment.is_empty() || self.environment.iter().any(said))
            && self.present.iter().all(|&slot| entered(slot))
            && self.above.iter().all(above)
    }
}

/// One caution.
#[derive(Debug, Clone, PartialEq)]
pub struct Caution {
    /// Its id: the name of its file.
    pub id: String,
    /// What it warns of, in a phrase.
    pub title: String,
    /// Its place among the others; less comes first, of equals the id decides.
    pub order: u32,
    /// Who has to know it.
    pub readers: Vec<Reader>,
    /// The cases in which it holds; none means always.
    pub cases: Vec<Case>,
    /// What it says.
    pub text: String,
    /// Standards to read beside it.
    pub standards: Vec<StandardNamed>,
}

impl Caution {
    /// Whether it holds for a drive.
    pub fn holds(&self, facts: &Facts<'_>) -> bool {
        self.cases.is_empty() || self.cases.iter().any(|case| case.holds(facts))
    }
}
