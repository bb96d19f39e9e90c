//! What a formula of `calc` asks for: names, kinds, defaults and ranges of its arguments.

use crate::units::Dimension;

/// What an argument is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Kind {
    /// A quantity.
    Value(Dimension),
    /// Quantities separated by commas.
    List(Dimension),
    /// One of these words.
    Word(&'static [&'static str]),
    /// One of these words, or a quantity.
    WordOr(&'static [&'static str], Dimension),
    /// A text that the formula reads itself, and an example of it.
    Text(&'static str),
}

/// Whether an argument must be given.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Need {
    /// It must.
    Required,
    /// If not, this text stands for it.
    Default(&'static str),
    /// If not, the formula does without it, and this says how.
    Absent(&'static str),
}

/// What values an argument can take.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Range {
    /// Any finite value.
    Any,
    /// Above zero.
    Positive,
    /// Zero or above.
    NotNegative,
    /// From zero to one.
    Share,
}

/// One argument of a formula.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Argument {
    /// Its name.
    pub name: &'static str,
    /// Its symbol, where the formula's note does not give one to this name.
    pub symbol: Option<&'static str>,
    /// What it is.
    pub kind: Kind,
    /// Whether it must be given.
    pub need: Need,
    /// What values it can take.
    pub range: Range,
}

impl Argument {
    /// A required argument of any finite value.
    pub const fn new(name: &'static str, kind: Kind) -> Argument {
        Argument { name, symbol: None, kind, need: Need::Required, range: Range::Any }
    }

    /// A required quantity of any finite value.
    pub const fn value(name: &'static str, dimension: Dimension) -> Argument {
        Argument::new(name, Kind::Value(dimension))
    }

    /// A required quantity above zero.
    pub const fn positive(name: &'static str, dimension: Dimension) -> Argument {
        Argument { name, symbol: None, kind: Kind::Value(dimension), need: Need::Required, range: Range::Positive }
    }

    /// A required quantity, zero or above.
    pub const fn not_negative(name: &'static str, dimension: Dimension) -> Argument {
        Argument { name, symbol: None, kind: Kind::Value(dimension), need: Need::Required, range: Range::NotNegative }
    }

    /// A required share from zero to one.
    pub const fn share(name: &'static str) -> Argument {
        Argument { name, symbol: None, kind: Kind::Value(Dimension::Ratio), need: Need::Required, range: Range::Share }
    }

    /// A required word out of a list.
    pub const fn word(name: &'static str, words: &'static [&'static str]) -> Argument {
        Argument::new(name, Kind::Word(words))
    }

    /// A required list of quantities.
    pub const fn list(name: &'static str, dimension: Dimension) -> Argument {
        Argument::new(name, Kind::List(dimension))
    }

    /// The same, with a text that stands for it if it is not given.
    pub const fn or(self, default: &'static str) -> Argument {
        Argument { need: Need::Default(default), ..self }
    }

    /// The same, but the formula can do without it; the words say how.
    pub const fn unless(self, absence: &'static str) -> Argument {
        Argument { need: Need::Absent(absence), ..self }
    }

    /// The same, with values in this range.
    pub const fn within(self, range: Range) -> Argument {
        Argument { range, ..self }
    }

    /// The same, with a symbol.
    pub const fn symbol(self, symbol: &'static str) -> Argument {
        Argument { symbol: Some(symbol), ..self }
    }

    /// How it is written in a call: "free-length=…", "[damping=0.02]".
    pub fn usage(&self) -> String {
        match self.need {
            Need::Required => format!("{}={}", self.name, self.example()),
            Need::Default(default) => format!("[{}={default}]", self.name),
            Need::Absent(_) => format!("[{}={}]", self.name, self.example()),
        }
    }

    /// What may stand behind the equals sign.
    pub fn example(&self) -> String {
        match self.kind {
            Kind::Value(dimension) => format!("…{}", unit(dimension)),
            Kind::List(dimension) => format!("…{0},…{0}", unit(dimension)),
            Kind::Word(words) => words.join("|"),
            Kind::WordOr(words, dimension) => format!("{}|…{}", words.join("|"), unit(dimension)),
            Kind::Text(example) => example.into(),
        }
    }

    /// What is wrong with a value, if anything.
    pub(super) fn objection(&self, value: f64) -> Option<&'static str> {
        match self.range {
            Range::Any => None,
            Range::Positive => (value <= 0.0).then_some("must be above zero"),
            Range::NotNegative => (value < 0.0).then_some("must not be negative"),
            Range::Share => (!(0.0..=1.0).contains(&value)).then_some("must lie between 0 and 1"),
        }
    }
}

/// The most usual unit of a dimension, empty for plain numbers.
fn unit(dimension: Dimension) -> &'static str {
    match dimension.units().next().map(|unit| unit.name) {
        Some("1") | None => "",
        Some(name) => name,
    }
}
