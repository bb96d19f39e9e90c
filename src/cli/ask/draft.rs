//! The answers so far, and the brief that they make.
//!
//! Method: texts of the user are written in quotes wherever YAML could read them as something else.

use super::questions::{Kind, OF_AXIS, OF_MACHINE, Place, Question};
use crate::brief::compose::{list, value, words};

/// The answers of one axis.
#[derive(Debug, Default)]
pub struct AxisDraft {
    /// Its name.
    pub name: String,
    /// The axes that ride on it.
    pub carries: Vec<String>,
    answers: Vec<(&'static str, String)>,
}

/// All answers.
#[derive(Debug, Default)]
pub struct Draft {
    answers: Vec<(&'static str, String)>,
    /// The axes.
    pub axes: Vec<AxisDraft>,
}

/// Answers that stand in for what has not been asked yet; they are never written.
const STAND_IN: [(&str, &str); 6] = [
    ("machine", "machine"),
    ("direction", "horizontal"),
    ("travel", "1 m"),
    ("moved-mass", "100 kg"),
    ("speed", "10 m/min"),
    ("acceleration", "1 m/s²"),
];

impl Draft {
    /// Notes an answer; an empty one takes the last one back.
    pub fn set(&mut self, question: &Question, answer: &str) {
        let answers = match (question.place, self.axes.last_mut()) {
            (Place::Axis, Some(axis)) => &mut axis.answers,
            _ => &mut self.answers,
        };
        answers.retain(|(key, _)| *key != question.key);
        if !answer.is_empty() {
            answers.push((question.key, answer.into()));
        }
    }

    /// Whether the axis that is asked for has an answer to this.
    pub fn answered(&self, key: &str) -> bool {
        self.axes.last().is_some_and(|axis| find(&axis.answers, key).is_some())
    }

    /// Whether the axis that is asked for lies.
    pub fn is_horizontal(&self) -> bool {
        self.axes.last().is_some_and(|axis| find(&axis.answers, "direction") == Some("horizontal"))
    }

    /// The brief as far as it goes, with stand-ins for what is missing.
    pub fn probe(&self) -> String {
        let mut whole = self.written(true);
        if self.axes.is_empty() {
            whole.push_str("axes:\n  x:\n");
            for question in OF_AXIS {
                whole.push_str(&line("    ", question, find(&stand_ins(), question.key).unwrap_or_default()));
            }
        }
        whole
    }

    /// The brief.
    pub fn text(&self) -> String {
        format!("{HEAD}\n{}\n{FOOT}", self.written(false))
    }

    fn written(&self, stand_in: bool) -> String {
        let stand_ins = if stand_in { stand_ins() } else { Vec::new() };
        let answer = |answers: &[(&'static str, String)], key: &str| {
            find(answers, key).or_else(|| find(&stand_ins, key)).unwrap_or_default().to_string()
        };
        let mut text = String::new();
        let of = |place: Place| OF_MACHINE.iter().filter(move |question| question.place == place);
        for question in of(Place::Machine) {
            text.push_str(&line("", question, &answer(&self.answers, question.key)));
        }
        let limits: String =
            of(Place::Limits).map(|question| line("  ", question, &answer(&self.answers, question.key))).collect();
        if !limits.is_empty() {
            text.push_str(&format!("limits:\n{limits}"));
        }
        if !self.axes.is_empty() {
            text.push_str("axes:\n");
        }
        for axis in &self.axes {
            text.push_str(&format!("  {}:\n", words(&axis.name)));
            for question in OF_AXIS {
                text.push_str(&line("    ", question, &answer(&axis.answers, question.key)));
            }
            if !axis.carries.is_empty() {
                text.push_str(&format!("    carries: {}\n", list(&axis.carries)));
            }
        }
        text
    }
}

fn stand_ins() -> Vec<(&'static str, String)> {
    STAND_IN.map(|(key, value)| (key, value.to_string())).to_vec()
}

fn find<'a>(answers: &'a [(&'static str, String)], key: &str) -> Option<&'a str> {
    answers.iter().find(|(known, _)| *known == key).map(|(_, answer)| answer.as_str())
}

/// One line of the brief; none without an answer.
fn line(indent: &str, question: &Question, answer: &str) -> String {
    if answer.is_empty() {
        return String::new();
    }
    let value = match question.kind {
        Kind::Name => return String::new(),
        Kind::Words => words(answer),
        Kind::Value | Kind::Number => value(answer),
        Kind::List => {
            let items = answer.split(',').map(str::trim).filter(|item| !item.is_empty());
            list(&items.map(String::from).collect::<Vec<_>>())
        }
    };
    format!("{indent}{}: {value}\n", question.key)
}

const HEAD: &str = "\
# yaml-language-server: $schema=brief.schema.json
# That line makes an editor complete keys, once the schema lies beside this file: axiswright schema brief > brief.schema.json
#
# A brief for axiswright, from answers to its questions. Change what you like, then run
#   axiswright recommend this-file.yaml
# Every quantity carries its unit. What is left out takes a default, and the report lists each.";

const FOOT: &str = "\
# More that a brief can say, each explained in docs/brief.md and by `axiswright explain KEY`:
#   of an axis: duty or moves, jerk, overtravel, drives, counterbalance, guide-friction, wiper-force, reversal,
#   cutting-deflection, first-mode, feedback, families; of the machine: limits, prefer, temperature-swing, waivers
";
