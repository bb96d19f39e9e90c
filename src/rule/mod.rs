//! The rulebook: every limit that a drive is judged by, one file a rule; and every caution, one file each.
//!
//! Method: a rule sets one characteristic against a limit, which is a share of another characteristic or a
//! value. Utilisation is demand over limit, so that 1 is just allowed and a larger number says by how much
//! a drive misses. A rule that cannot be worked out is not passed.
//! Limits: no expressions. A rule that needs arithmetic needs a new characteristic, worked out by a
//! formula with a source.

mod caution;
mod caution_read;
mod describe;
mod judge;
mod load;
mod own;
mod read;

pub use caution::{Above, Case, Caution, Facts, Level, Reader, StandardNamed};
pub use describe::{describe, describe_caution, describe_rule};
pub use judge::{Verdict, passes, surely_passes, utilisation, verdict};
pub use load::{built_in, load, load_only, load_texts};
pub use own::{Aspect, OwnRule, own};

use crate::source::Standing;

/// The ids of the drive families that a rule may apply to.
pub const FAMILIES: [&str; 5] = ["ball-screw", "driven-nut", "straight-rack", "helical-rack", "twin-pinion"];

/// How much a rule binds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Obligation {
    /// A drive that fails it is not admissible.
    Shall,
    /// A drive that fails it is admissible, and the report says so.
    Should,
}

impl Obligation {
    /// Every obligation.
    pub const ALL: [Obligation; 2] = [Obligation::Shall, Obligation::Should];

    /// The word used in rule files, records and reports.
    pub fn word(self) -> &'static str {
        match self {
            Obligation::Shall => "shall",
            Obligation::Should => "should",
        }
    }
}

/// On which side of the limit the demand stays.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sense {
    /// The demand does not exceed the limit.
    AtMost,
    /// The demand does not fall below the limit.
    AtLeast,
}

impl Sense {
    /// The word used in rule files and records.
    pub fn word(self) -> &'static str {
        match self {
            Sense::AtMost => "at-most",
            Sense::AtLeast => "at-least",
        }
    }

    /// The sign by which reports show it.
    pub fn sign(self) -> &'static str {
        match self {
            Sense::AtMost => "≤",
            Sense::AtLeast => "≥",
        }
    }
}

/// What the demand is held against.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Limit {
    /// The rule's factor times the characteristic in this slot.
    Of(usize),
    /// A value, in the SI unit of the demand.
    Value(f64),
}

/// When a rule is judged at all.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum When {
    /// Only if the characteristic in this slot was stated, that is, is a number.
    Stated(usize),
    /// Only if the characteristic in this slot is above this SI value, or is not known.
    Above(usize, f64),
}

impl When {
    /// The slot of the characteristic that decides.
    pub fn slot(self) -> usize {
        match self {
            When::Stated(slot) | When::Above(slot, _) => slot,
        }
    }
}

/// Where a rule comes from.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RuleSource {
    /// What kind of support this is.
    pub standing: Standing,
    /// Where to look, or what is remembered or usual.
    pub note: String,
}

/// One case with its outcome, so that a reader sees the rule at work and a test can check it.
#[derive(Debug, Clone, PartialEq)]
pub struct Example {
    /// The values of the case: slot, and value in SI units.
    pub given: Vec<(usize, f64)>,
    /// The same values as they are written in the file.
    pub written: Vec<(String, String)>,
    /// The utilisation that comes out.
    pub utilisation: f64,
    /// The verdict that comes out.
    pub verdict: Verdict,
}

/// One rule.
#[derive(Debug, Clone, PartialEq)]
pub struct Rule {
    /// Its id: the name of its file.
    pub id: String,
    /// What it asks, as a sentence.
    pub title: String,
    /// Who answers for it, if the file says so; rules of a house ought to.
    pub by: Option<String>,
    /// The families it applies to; none listed means all.
    pub applies_to: Vec<String>,
    /// How much it binds.
    pub obligation: Obligation,
    /// How much worse a drive counts that does not follow this advice, as a share; 0 for binding rules.
    pub weighs: f64,
    /// The slot of the characteristic that is judged.
    pub demand: usize,
    /// On which side of the limit the demand stays.
    pub sense: Sense,
    /// The share of the limiting characteristic that may be used; 1 for a limit that is a value.
    pub factor: f64,
    /// What the demand is held against.
    pub limit: Limit,
    /// When it is judged; none means always.
    pub when: Option<When>,
    /// Why the rule is there.
    pub reason: String,
    /// What to do about a drive that fails it.
    pub remedy: String,
    /// Where it comes from.
    pub sources: Vec<RuleSource>,
    /// Cases with their outcome, at least one that passes and one that fails.
    pub examples: Vec<Example>,
}

/// All rules in force.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Rulebook {
    /// The rules, by id.
    pub rules: Vec<Rule>,
    /// The files they were read from, name and text, in the order of `rules`.
    pub files: Vec<(String, String)>,
    /// The cautions, in the order in which they are told.
    pub cautions: Vec<Caution>,
    /// The files they were read from, name and text, in the order of `cautions`.
    pub caution_files: Vec<(String, String)>,
}

impl Rulebook {
    /// The caution with this id.
    pub fn caution(&self, id: &str) -> Option<&Caution> {
        self.cautions.iter().find(|caution| caution.id == id)
    }

    /// The cautions that hold, in the order in which they are told.
    pub fn cautions_for(&self, facts: &Facts<'_>) -> Vec<&Caution> {
        self.cautions.iter().filter(|caution| caution.holds(facts)).collect()
    }

    /// The rule with this id.
    pub fn find(&self, id: &str) -> Option<&Rule> {
        self.rules.binary_search_by(|rule| rule.id.as_str().cmp(id)).ok().map(|index| &self.rules[index])
    }
}
