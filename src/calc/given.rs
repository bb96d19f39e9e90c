//! Reading the arguments of a call, and what a formula hands back.

use super::argument::{Argument, Kind, Need};
use super::error::{Fault, nearest};
use crate::formula::MOST_PHASES;
use crate::formula::Series;
use crate::units::{Dimension, Measure, Ratio, parse_as};

/// What was read for one argument.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Reading {
    /// A quantity in SI units.
    Value(f64),
    /// Quantities in SI units.
    List(Vec<f64>),
    /// A word, or a text the formula reads itself.
    Word(String),
}

/// An argument with what was read for it.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Read {
    pub(super) argument: Argument,
    pub(super) reading: Reading,
    pub(super) defaulted: bool,
}

/// The arguments of a call, read and within their ranges.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Given {
    pub(super) read: Vec<Read>,
}

/// What a formula hands back.
#[derive(Debug, Clone, PartialEq)]
pub struct Outcome {
    /// The result in SI units.
    pub value: f64,
    /// Why the inputs lie outside the validity; empty if they do not.
    pub outside: Vec<String>,
    /// What else the reader must know.
    pub remarks: Vec<String>,
    /// Numbers on the way: symbol, SI value and dimension.
    pub steps: Vec<(&'static str, f64, Dimension)>,
}

impl Outcome {
    /// A result within validity.
    pub fn of<Q: Measure>(value: Q) -> Outcome {
        Outcome { value: value.si(), outside: Vec::new(), remarks: Vec::new(), steps: Vec::new() }
    }

    /// The same, outside validity unless the condition holds.
    pub fn valid_if(mut self, holds: bool, otherwise: impl Into<String>) -> Outcome {
        if !holds {
            self.outside.push(otherwise.into());
        }
        self
    }

    /// The same, with a number on the way.
    pub fn step<Q: Measure>(mut self, symbol: &'static str, value: Q) -> Outcome {
        self.steps.push((symbol, value.si(), Q::DIMENSION));
        self
    }

    /// The same, with plain numbers on the way.
    pub fn factors(self, factors: impl IntoIterator<Item = (&'static str, f64)>) -> Outcome {
        factors.into_iter().fold(self, |outcome, (symbol, value)| outcome.step(symbol, Ratio::of_si(value)))
    }

    /// The same, with a remark.
    pub fn remark(mut self, words: impl Into<String>) -> Outcome {
        self.remarks.push(words.into());
        self
    }
}

impl Given {
    /// Reads the arguments of a call; all faults at once.
    pub(super) fn read(arguments: &[Argument], texts: &[(String, String)]) -> Result<Given, Vec<Fault>> {
        let mut faults = Vec::new();
        let mut given = Given::default();
        for (position, (name, _)) in texts.iter().enumerate() {
            if texts[..position].iter().any(|(earlier, _)| earlier == name) {
                let fault = Fault::Duplicate { name: name.clone() };
                if !faults.contains(&fault) {
                    faults.push(fault);
                }
            } else if !arguments.iter().any(|argument| argument.name == name) {
                faults.push(Fault::UnknownArgument {
                    name: name.clone(),
                    nearest: nearest(name, arguments.iter().map(|argument| argument.name)).map(String::from),
                    known: arguments.iter().map(|argument| argument.name).collect::<Vec<_>>().join(", "),
                });
            }
        }
        for argument in arguments {
            let text = texts.iter().find(|(name, _)| name == argument.name).map(|(_, text)| text.as_str());
            let (text, defaulted) = match (text, argument.need) {
                (Some(text), _) => (text, false),
                (None, Need::Default(default)) => (default, true),
                (None, Need::Absent(_)) => continue,
                (None, Need::Required) => {
                    let (name, formulas) = (argument.name.into(), super::working_out(argument.name));
                    faults.push(Fault::Missing { name, example: argument.example(), formulas });
                    continue;
                }
            };
            match read(argument, text) {
                Ok(reading) => given.read.push(Read { argument: *argument, reading, defaulted }),
                Err(fault) => faults.push(fault),
            }
        }
        if faults.is_empty() { Ok(given) } else { Err(faults) }
    }

    fn find(&self, name: &str) -> Option<&Reading> {
        self.read.iter().find(|read| read.argument.name == name).map(|read| &read.reading)
    }

    /// Whether an argument is there, by itself or by default.
    pub fn has(&self, name: &str) -> bool {
        self.find(name).is_some()
    }

    /// The SI value of an argument; NaN if it is absent or not a quantity.
    pub fn value(&self, name: &str) -> f64 {
        match self.find(name) {
            Some(Reading::Value(value)) => *value,
            _ => f64::NAN,
        }
    }

    /// A quantity; NaN if it is absent or not a quantity.
    pub fn get<Q: Measure>(&self, name: &str) -> Q {
        Q::of_si(self.value(name))
    }

    /// A quantity, or this SI value where it is absent.
    pub fn get_or<Q: Measure>(&self, name: &str, absent: f64) -> Q {
        Q::of_si(if self.has(name) { self.value(name) } else { absent })
    }

    /// The SI values of a list; empty if it is absent.
    pub fn values(&self, name: &str) -> &[f64] {
        match self.find(name) {
            Some(Reading::List(values)) => values,
            _ => &[],
        }
    }

    /// A list of quantities.
    pub fn series<Q: Measure>(&self, name: &str) -> Series<Q> {
        Series::of_si(self.values(name))
    }

    /// The word of an argument; empty if it is absent or a quantity.
    pub fn word(&self, name: &str) -> &str {
        match self.find(name) {
            Some(Reading::Word(word)) => word,
            _ => "",
        }
    }
}

/// Reads the text of one argument.
fn read(argument: &Argument, text: &str) -> Result<Reading, Fault> {
    let text = text.trim();
    match argument.kind {
        Kind::Value(dimension) => quantity(argument, dimension, text).map(Reading::Value),
        Kind::List(dimension) => list(argument, dimension, text).map(Reading::List),
        Kind::Word(words) => word(argument, words, text).map(Reading::Word),
        Kind::WordOr(words, dimension) => {
            if words.contains(&text) {
                Ok(Reading::Word(text.into()))
            } else if text.starts_with(|first: char| first.is_ascii_alphabetic()) {
                word(argument, words, text).map(Reading::Word)
            } else {
                quantity(argument, dimension, text).map(Reading::Value)
            }
        }
        Kind::Text(_) => Ok(Reading::Word(text.into())),
    }
}

fn quantity(argument: &Argument, dimension: Dimension, text: &str) -> Result<f64, Fault> {
    let name = argument.name;
    let value = number(dimension, text).map_err(|cause| Fault::Unit { name: name.into(), cause })?;
    match argument.objection(value) {
        Some(why) => Err(Fault::OutOfRange { name: name.into(), text: text.into(), why: why.into() }),
        None => Ok(value),
    }
}

/// A quantity; nothing is nothing in any unit, so a plain 0 passes.
fn number(dimension: Dimension, text: &str) -> Result<f64, crate::units::UnitError> {
    if text.parse::<f64>() == Ok(0.0) { Ok(0.0) } else { parse_as(dimension, text) }
}

fn list(argument: &Argument, dimension: Dimension, text: &str) -> Result<Vec<f64>, Fault> {
    let values: Vec<f64> =
        text.split(',').map(|item| quantity(argument, dimension, item.trim())).collect::<Result<_, _>>()?;
    if values.len() > MOST_PHASES {
        return Err(Fault::OutOfRange {
            name: argument.name.into(),
            text: format!("a list of {}", values.len()),
            why: format!("takes at most {MOST_PHASES} values"),
        });
    }
    Ok(values)
}

fn word(argument: &Argument, words: &'static [&'static str], text: &str) -> Result<String, Fault> {
    if words.contains(&text) {
        return Ok(text.into());
    }
    Err(Fault::NotAWord {
        name: argument.name.into(),
        text: text.into(),
        nearest: nearest(text, words.iter().copied()).map(String::from),
        words: words.join(", "),
    })
}
