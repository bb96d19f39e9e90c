//! What can be wrong with a call of `calc`.

use crate::units::{self, UnitError};
use std::fmt;
use thiserror::Error;

/// One fault of a call.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum Fault {
    /// No formula has this id.
    #[error("no formula is called `{id}`{} `calc --list` shows all", meant(.near))]
    UnknownFormula {
        /// What was asked for.
        id: String,
        /// The nearest spelling, or those that share a word with it.
        near: Vec<String>,
    },
    /// The formula has no such argument.
    #[error("`{name}` is no argument of this formula{}; it takes {known}", hint(.nearest))]
    UnknownArgument {
        /// The name given.
        name: String,
        /// The nearest spelling.
        nearest: Option<String>,
        /// The names it has.
        known: String,
    },
    /// A required argument is not there.
    #[error("`{name}` is missing; write {name}={example}{}", worked_out_by(.formulas))]
    Missing {
        /// The argument.
        name: String,
        /// What may stand behind the equals sign.
        example: String,
        /// The formulas that work it out, if they are few.
        formulas: Vec<&'static str>,
    },
    /// An argument is given more than once.
    #[error("`{name}` is given more than once")]
    Duplicate {
        /// The argument.
        name: String,
    },
    /// A text that is not the quantity asked for.
    #[error("`{name}`: {cause}")]
    Unit {
        /// The argument.
        name: String,
        /// Why.
        cause: UnitError,
    },
    /// A word that is not on the list.
    #[error("`{name}` cannot be `{text}`{}; it is one of {words}", hint(.nearest))]
    NotAWord {
        /// The argument.
        name: String,
        /// What was given.
        text: String,
        /// The nearest spelling.
        nearest: Option<String>,
        /// The words there are.
        words: String,
    },
    /// A value that the formula cannot take.
    #[error("`{name}` {why}, but is {text}")]
    OutOfRange {
        /// The argument.
        name: String,
        /// What was given.
        text: String,
        /// What it must be.
        why: String,
    },
    /// Arguments that do not fit together.
    #[error("{why}")]
    Together {
        /// What does not fit.
        why: String,
    },
    /// The formula has no value for these inputs.
    #[error("no result: {why}")]
    NoResult {
        /// Why not.
        why: String,
    },
}

/// Why a call of `calc` gives no answer: all faults of it.
#[derive(Debug, Clone, PartialEq)]
pub struct CalcError {
    /// The formula that was asked for.
    pub formula: String,
    /// What is wrong, in the order of the arguments.
    pub faults: Vec<Fault>,
}

impl CalcError {
    pub(super) fn of(formula: &str, faults: Vec<Fault>) -> CalcError {
        CalcError { formula: formula.into(), faults }
    }
}

impl fmt::Display for CalcError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", self.formula)?;
        for fault in &self.faults {
            write!(f, "\n  {fault}")?;
        }
        Ok(())
    }
}

impl std::error::Error for CalcError {}

fn meant(near: &[String]) -> String {
    let near: Vec<String> = near.iter().map(|name| format!("`{name}`")).collect();
    match near.split_last() {
        Some((only, [])) => format!("; did you mean {only}?"),
        Some((last, rest)) => format!("; did you mean {} or {last}?", rest.join(", ")),
        None => ";".into(),
    }
}

fn worked_out_by(formulas: &[&str]) -> String {
    let named: Vec<String> = formulas.iter().map(|id| format!("`{id}`")).collect();
    match named.as_slice() {
        [] => String::new(),
        [one] => format!("; the formula {one} works it out"),
        several => format!("; the formulas {} work it out", several.join(", ")),
    }
}

fn hint(nearest: &Option<String>) -> String {
    nearest.as_ref().map(|name| format!("; did you mean `{name}`?")).unwrap_or_default()
}

/// The one of some names that this is a slip of the pen for.
pub(super) fn slip<'a>(text: &str, names: impl Iterator<Item = &'a str>) -> Option<&'a str> {
    units::nearest(text, &text.to_lowercase(), names.map(|name| (name, name)), |_, distance| distance <= 2)
}

/// The nearest of some names, if it is near enough to be meant.
pub(super) fn nearest<'a>(text: &str, names: impl Iterator<Item = &'a str>) -> Option<&'a str> {
    let near = |name: &str, distance: usize| distance <= 1 + name.chars().count() / 3;
    units::nearest(text, &text.to_lowercase(), names.map(|name| (name, name)), near)
}
