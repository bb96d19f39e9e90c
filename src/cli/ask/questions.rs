//! The questions: which key of the brief each fills, in which words, and when it is asked.

use super::draft::Draft;
use crate::brief::defaults::{self, Preset};

/// What an answer is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// The name of an axis, which is asked for apart.
    Name,
    /// A text of the user's own.
    Words,
    /// Texts with commas between.
    List,
    /// A quantity with its unit, or one of the words that the brief knows.
    Value,
    /// A bare number.
    Number,
}

/// Where a key stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Place {
    /// At the top of the brief.
    Machine,
    /// Under `limits`.
    Limits,
    /// In the axis that is asked for.
    Axis,
}

/// One question.
pub struct Question {
    /// The key of the brief.
    pub key: &'static str,
    /// Where it stands.
    pub place: Place,
    /// What its answer is.
    pub kind: Kind,
    /// The question.
    pub asks: &'static str,
    /// An answer that would do.
    pub example: &'static str,
    /// Whether the brief needs it.
    pub required: bool,
    /// What an empty answer comes to, where the brief has a default for it.
    pub preset: Option<&'static Preset>,
    /// Whether it is asked at all.
    pub when: fn(&Draft) -> bool,
}

impl Question {
    /// The answer as the brief has it: what is true or false there may be answered by yes or no.
    pub fn meant<'a>(&self, answer: &'a str) -> &'a str {
        match (self.key, answer.to_lowercase().as_str()) {
            ("people-below", "yes" | "y") => "true",
            ("people-below", "no" | "n") => "false",
            _ => answer,
        }
    }

    /// The question with an example and with what an empty answer comes to.
    pub fn words(&self) -> String {
        let example = if self.example.is_empty() { String::new() } else { format!(", such as {}", self.example) };
        let empty = match self.preset {
            _ if self.required => String::new(),
            Some(preset) if preset.unit.is_empty() || self.kind == Kind::Number => format!(" [{}]", preset.value),
            Some(preset) => format!(" [{} {}]", preset.value, preset.unit),
            None => " [none]".into(),
        };
        format!("{}{example}{empty}", self.asks)
    }
}

const fn question(key: &'static str, place: Place, kind: Kind, asks: &'static str, example: &'static str) -> Question {
    Question { key, place, kind, asks, example, required: false, preset: None, when: |_| true }
}

const fn needed(key: &'static str, place: Place, kind: Kind, asks: &'static str, example: &'static str) -> Question {
    Question { required: true, ..question(key, place, kind, asks, example) }
}

/// What is asked of the machine.
pub const OF_MACHINE: &[Question] = &[
    needed("machine", Place::Machine, Kind::Words, "Name of the machine", "Router for doors"),
    question("currency", Place::Machine, Kind::Words, "Currency of all amounts", "EUR"),
    Question {
        preset: Some(&defaults::YEARS_IN_SERVICE),
        ..question("years-in-service", Place::Machine, Kind::Number, "Years in service, a bare number", "")
    },
    Question {
        preset: Some(&defaults::HOURS_PER_YEAR),
        ..question("hours-per-year", Place::Machine, Kind::Number, "Hours of work a year, a bare number", "")
    },
    question("environment", Place::Machine, Kind::List, "What surrounds the drives", "chips, coolant"),
    question("purchase", Place::Limits, Kind::Number, "Most that all drives together may cost, a bare number", "20000"),
];

/// What is asked of an axis.
pub const OF_AXIS: &[Question] = &[
    needed("name", Place::Axis, Kind::Name, "", ""),
    question("purpose", Place::Axis, Kind::Words, "What it is for", "moves the gantry"),
    needed("direction", Place::Axis, Kind::Value, "Direction: horizontal, vertical or an angle", "30 deg"),
    needed("travel", Place::Axis, Kind::Value, "Travel", "1.2 m"),
    needed(
        "moved-mass",
        Place::Axis,
        Kind::Value,
        "Mass that it moves, without its drive and what it carries",
        "180 kg",
    ),
    needed("speed", Place::Axis, Kind::Value, "Highest speed", "30 m/min"),
    needed("acceleration", Place::Axis, Kind::Value, "Acceleration", "2 m/s²"),
    Question {
        preset: Some(&defaults::CUTTING_FORCE),
        ..question("cutting-force", Place::Axis, Kind::Value, "Cutting force along it", "400 N")
    },
    Question {
        when: |draft| draft.answered("cutting-force"),
        ..question("cutting-speed", Place::Axis, Kind::Value, "Speed at which it cuts", "6 m/min")
    },
    question("accuracy", Place::Axis, Kind::Value, "Accuracy of positioning over the travel (ISO 230-2)", "0.05 mm"),
    question("repeatability", Place::Axis, Kind::Value, "Repeatability of positioning (ISO 230-2)", "0.02 mm"),
    Question {
        when: |draft| !draft.is_horizontal(),
        ..question("people-below", Place::Axis, Kind::Value, "Can people reach below the raised axis, yes or no", "")
    },
];
