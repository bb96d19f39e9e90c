//! `calc`: one formula with its equation, inputs, result, validity and source.

use super::{Answer, Console, Failure, json};
use crate::calc::{self, CalcError};
use crate::report;
use crate::units::UnitSystem;
use clap::Args;
use std::fmt::Write;

/// Work out one formula
#[derive(Args)]
pub struct Calc {
    /// Id of the formula, such as whip-speed
    #[arg(value_name = "FORMULA", required_unless_present = "list")]
    formula: Option<String>,
    /// Arguments, each with its unit: mass=730kg speed="40 m/min"
    #[arg(value_name = "NAME=VALUE")]
    arguments: Vec<String>,
    /// Print the answer as JSON, in the formula's own unit
    #[arg(long)]
    json: bool,
    /// List every formula with its arguments
    #[arg(long, conflicts_with_all = ["formula", "arguments"])]
    list: bool,
    /// Units of the answer for people
    #[arg(long, value_enum, default_value_t = super::units::Units::Metric)]
    units: super::units::Units,
}

impl Calc {
    /// Runs the command.
    pub fn run(&self, console: &mut Console) -> Result<Answer, Failure> {
        let Some(formula) = self.formula.as_deref().filter(|_| !self.list) else {
            console.result(&list(self.json)?)?;
            return Ok(Answer::Yes);
        };
        let mut arguments = Vec::new();
        for argument in &self.arguments {
            let Some((name, value)) = argument.split_once('=') else {
                return Err(Failure::Input(format!(
                    "`{argument}` is no argument; write name=value, such as mass=730kg, and put a value with blanks \
                     in quotes"
                )));
            };
            arguments.push((name.trim().to_string(), value.trim().to_string()));
        }
        let answer =
            calc::calculate(formula, &arguments).map_err(|fault: CalcError| Failure::Input(fault.to_string()))?;
        let text = if self.json { json(&answer.to_json())? } else { self.text(&answer) };
        console.result(&text)?;
        Ok(Answer::Yes)
    }

    fn text(&self, answer: &calc::Answer) -> String {
        let mut text = answer.to_text();
        if self.units.system() == UnitSystem::Inch {
            let _ = writeln!(text, "In inches {}", report::in_units(answer.value, answer.unit, UnitSystem::Inch));
        }
        text
    }
}

fn list(as_json: bool) -> Result<String, Failure> {
    let mut entries: Vec<_> = calc::entries().collect();
    entries.sort_by_key(|entry| entry.note.id);
    if as_json {
        let rows: Vec<_> = entries
            .iter()
            .map(|entry| {
                serde_json::json!({ "formula": entry.note.id, "title": entry.note.title, "unit": entry.unit,
                                    "arguments": entry.arguments.iter().map(|argument| argument.name).collect::<Vec<_>>() })
            })
            .collect();
        return json(&rows);
    }
    let mut text = String::new();
    for entry in entries {
        let unit = if entry.unit.is_empty() { "money" } else { entry.unit };
        let _ = writeln!(text, "{}\n    {}, in {unit}", entry.usage(), entry.note.title);
    }
    Ok(text)
}
