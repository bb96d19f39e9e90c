//! The answer of `calc`: as text for a person, as JSON for a program.

use super::argument::Kind;
use super::error::Fault;
use super::given::{Given, Outcome, Reading};
use super::{Argument, Entry};
use crate::units::{Dimension, significant};
use serde_json::{Value, json};
use std::fmt::Write;

/// One input as it was used.
#[derive(Debug, Clone, PartialEq)]
pub struct Input {
    /// The argument.
    pub name: &'static str,
    /// Its symbol in the equation, if the equation has it.
    pub symbol: Option<&'static str>,
    /// Its value: a number, a list of numbers, or a word.
    pub value: Value,
    /// The unit of the numbers; empty for words.
    pub unit: &'static str,
    /// Whether nobody gave it and the default stands.
    pub defaulted: bool,
}

/// A number on the way to the result.
#[derive(Debug, Clone, PartialEq)]
pub struct Step {
    /// Its symbol.
    pub symbol: &'static str,
    /// Its value in the unit.
    pub value: f64,
    /// The unit.
    pub unit: &'static str,
}

/// The answer to one call.
#[derive(Debug, Clone, PartialEq)]
pub struct Answer {
    /// The id of the formula.
    pub formula: &'static str,
    /// What it gives, in words.
    pub title: &'static str,
    /// The result in the unit.
    pub value: f64,
    /// The unit of the result.
    pub unit: &'static str,
    /// The inputs as used.
    pub inputs: Vec<Input>,
    /// Numbers on the way.
    pub steps: Vec<Step>,
    /// The equation.
    pub equation: &'static str,
    /// Where it holds.
    pub validity: &'static str,
    /// Whether the inputs lie there.
    pub within_validity: bool,
    /// Why they do not, and what else must be known.
    pub remarks: Vec<String>,
    /// Where the formula comes from.
    pub source: String,
}

/// A value in the most usual unit of its dimension, and that unit.
fn usual(dimension: Dimension, si: f64) -> (f64, &'static str) {
    dimension.units().next().map_or((si, ""), |unit| (tidy(si / unit.si), unit.name))
}

/// A value without the dust of unit conversion: the shortest number within 15 digits.
fn tidy(value: f64) -> f64 {
    format!("{value:.14e}").parse().unwrap_or(value)
}

fn unit_text(unit: &str) -> &str {
    if unit == "1" { "" } else { unit }
}

impl Answer {
    /// Puts an outcome into the unit of its entry.
    pub(super) fn of(entry: &Entry, given: &Given, outcome: Outcome) -> Result<Answer, Fault> {
        if !outcome.value.is_finite() {
            return Err(Fault::NoResult { why: "these inputs give no finite value".into() });
        }
        let unit = entry.dimension.units().find(|unit| unit.name == entry.unit);
        let size = unit.map_or(1.0, |unit| unit.si);
        let within_validity = outcome.outside.is_empty();
        let mut remarks = outcome.outside;
        remarks.extend(outcome.remarks);
        Ok(Answer {
            formula: entry.note.id,
            title: entry.note.title,
            value: outcome.value / size,
            unit: entry.unit,
            inputs: given.read.iter().map(|read| input(entry, &read.argument, &read.reading, read.defaulted)).collect(),
            steps: outcome.steps.into_iter().map(step).collect(),
            equation: entry.note.equation,
            validity: entry.note.validity,
            within_validity,
            remarks,
            source: entry.note.sources.iter().map(|source| source.to_string()).collect::<Vec<_>>().join("; "),
        })
    }

    /// The fields of the answer for a program.
    pub fn to_json(&self) -> Value {
        let inputs: Vec<Value> = self
            .inputs
            .iter()
            .map(|input| {
                json!({ "name": input.name, "value": input.value, "unit": input.unit, "defaulted": input.defaulted })
            })
            .collect();
        let steps: Vec<Value> = self
            .steps
            .iter()
            .map(|step| json!({ "symbol": step.symbol, "value": step.value, "unit": step.unit }))
            .collect();
        json!({
            "formula": self.formula,
            "value": self.value,
            "unit": self.unit,
            "equation": self.equation,
            "inputs": inputs,
            "steps": steps,
            "validity": self.validity,
            "within-validity": self.within_validity,
            "remarks": self.remarks,
            "source": self.source,
        })
    }

    /// The answer for a person: what, equation, inputs, result, validity, source.
    pub fn to_text(&self) -> String {
        let mut text = format!("{}: {}\n\n  {}\n\n", self.formula, self.title, self.equation);
        let width = self.inputs.iter().map(|input| input.name.chars().count()).max().unwrap_or(0);
        for input in &self.inputs {
            let symbol = input.symbol.map(|symbol| format!("{symbol} = ")).unwrap_or_default();
            let note = if input.defaulted { "  (default)" } else { "" };
            let _ = writeln!(text, "  {:width$}  {symbol}{}{note}", input.name, shown(&input.value, input.unit));
        }
        for step in &self.steps {
            let number = format!("{} {}", significant(step.value, 6), unit_text(step.unit));
            let _ = writeln!(text, "  {:width$}  {} = {}", "", step.symbol, number.trim_end());
        }
        let result = format!("{} {}", significant(self.value, 6), unit_text(self.unit));
        let _ = writeln!(text, "\nResult    {}", result.trim_end());
        let _ = writeln!(text, "Validity  {}", self.validity);
        if !self.within_validity {
            let _ = writeln!(text, "          OUTSIDE VALIDITY:");
        }
        for remark in &self.remarks {
            let _ = writeln!(text, "          {remark}");
        }
        let _ = writeln!(text, "Source    {}", self.source);
        text
    }
}

fn input(entry: &Entry, argument: &Argument, reading: &Reading, defaulted: bool) -> Input {
    let symbol = entry.note.inputs.iter().find(|(_, name)| *name == argument.name).map(|(symbol, _)| *symbol);
    let symbol = argument.symbol.or(symbol);
    let dimension = match argument.kind {
        Kind::Value(dimension) | Kind::List(dimension) | Kind::WordOr(_, dimension) => Some(dimension),
        Kind::Word(_) | Kind::Text(_) => None,
    };
    let (value, unit) = match (reading, dimension) {
        (Reading::Value(si), Some(dimension)) => {
            let (value, unit) = usual(dimension, *si);
            (json!(value), unit)
        }
        (Reading::List(values), Some(dimension)) => {
            let values: Vec<f64> = values.iter().map(|si| usual(dimension, *si).0).collect();
            (json!(values), usual(dimension, 0.0).1)
        }
        (Reading::Value(si), None) => (json!(si), ""),
        (Reading::List(values), None) => (json!(values), ""),
        (Reading::Word(word), _) => (json!(word), ""),
    };
    Input { name: argument.name, symbol, value, unit, defaulted }
}

fn step((symbol, si, dimension): (&'static str, f64, Dimension)) -> Step {
    let (value, unit) = usual(dimension, si);
    Step { symbol, value, unit }
}

fn shown(value: &Value, unit: &str) -> String {
    let number = |value: &Value| value.as_f64().map_or_else(String::new, |number| significant(number, 6));
    let text = match value {
        Value::Array(values) => values.iter().map(number).collect::<Vec<_>>().join(", "),
        Value::String(word) => word.clone(),
        other => number(other),
    };
    format!("{text} {}", unit_text(unit)).trim_end().into()
}
