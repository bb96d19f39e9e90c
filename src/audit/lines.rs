//! Every line of every worksheet, worked out again from the lines that it names.
//!
//! Method: values stand in the record to their last bit, in the unit of their line. A line is worked out by its formula
//! from the values in the record and held against its own. Units round each value by half a last bit on the way out and on the
//! way in; how far that may move the result is found by moving each input by as much, both ways. A value that is not finite
//! stands as null; both not known and without bound are tried for it.
//! Limits: lines that a brief, a catalogue or a default gives have no formula; they are held against the inputs by
//! recommending again. A line whose formula or characteristic this program does not know is told as not checked.

use super::candidates::Placed;
use super::fault::{Checked, Fault, same};
use crate::calc::{NoReplay, Replay};
use crate::characteristic;
use crate::ledger::About;
use crate::record::WorksheetLine;
use std::collections::{BTreeMap, BTreeSet};

/// Roundings of one result: its own unit, out and in, and the last step of the formula.
const ROUNDINGS: f64 = 4.0;
/// By how many last bits an input may be off: its unit, out and in.
const INPUT_BITS: f64 = 2.0;

/// Checks the worksheets of these drives.
pub fn check(drives: &[Placed<'_>]) -> Checked {
    let mut checked = Checked::default();
    let mut unknown: BTreeSet<String> = BTreeSet::new();
    for placed in drives {
        let mut sheet = Sheet { placed, known: BTreeMap::new(), checked: &mut checked, unknown: &mut unknown };
        for line in &placed.drive.worksheet {
            sheet.line(line);
        }
    }
    checked.not_checked.extend(unknown);
    checked
}

struct Sheet<'c, 'r> {
    placed: &'c Placed<'r>,
    /// Value in SI units by id, of the lines so far; NaN where it is null.
    known: BTreeMap<&'r str, f64>,
    checked: &'c mut Checked,
    unknown: &'c mut BTreeSet<String>,
}

impl<'r> Sheet<'_, 'r> {
    fn path(&self, line: &WorksheetLine, field: &str) -> String {
        format!("{}.worksheet[{}].{field}", self.placed.path, line.id)
    }

    fn words(&self, line: &WorksheetLine, rest: &str) -> String {
        format!("{}, worksheet line `{}`{rest}", self.placed.words, line.id)
    }

    fn line(&mut self, line: &'r WorksheetLine) {
        self.checked.count += 1;
        let Some(about) = about(&line.id) else {
            self.unknown.insert(format!("worksheet line `{}`: this program knows no such quantity", line.id));
            return;
        };
        if line.unit != about.unit {
            let fault = Fault::word(self.path(line, "unit"), self.words(line, ": unit"), &line.unit, about.unit);
            self.checked.faults.push(fault);
        }
        let unit = about.display_unit().si;
        if self.known.insert(&line.id, line.value.map_or(f64::NAN, |value| value * unit)).is_some() {
            let what = self.words(line, " stands twice");
            self.checked.faults.push(Fault::number(self.path(line, "id"), what, line.value, None));
        }
        if (line.origin == "formula") != line.formula.is_some() {
            let (has, not) = ("formula", "brief, catalog or assumed");
            let expected = if line.formula.is_some() { has } else { not };
            let fault = Fault::word(self.path(line, "origin"), self.words(line, ": origin"), &line.origin, expected);
            self.checked.faults.push(fault);
        }
        if let Some(formula) = &line.formula {
            self.formula(line, formula, unit);
        }
    }

    fn formula(&mut self, line: &WorksheetLine, formula: &str, unit: f64) {
        let replay = match Replay::of(formula, line.inputs.len()) {
            Ok(replay) => replay,
            Err(NoReplay::UnknownFormula) => {
                self.unknown.insert(format!("formula `{formula}`: this program knows no such formula"));
                return;
            }
            Err(NoReplay::OtherInputs) => {
                let what = self.words(line, &format!(": `{formula}` takes another number of inputs"));
                self.checked.faults.push(Fault::number(self.path(line, "inputs"), what, line.value, None));
                return;
            }
        };
        let mut inputs = Vec::with_capacity(line.inputs.len());
        for input in &line.inputs {
            match self.known.get(input.as_str()) {
                Some(&value) if input != &line.id => inputs.push(value),
                _ => {
                    let what = self.words(line, &format!(": its input `{input}` stands in no line before it"));
                    self.checked.faults.push(Fault::number(self.path(line, "inputs"), what, line.value, None));
                    return;
                }
            }
        }
        let expected = replay.value(&inputs) / unit;
        if !follows(&replay, &mut inputs, line.value, expected, unit) {
            let what = self.words(line, &format!(" does not follow by `{formula}`"));
            let expected = Some(expected).filter(|value| value.is_finite());
            let fault = Fault::number(self.path(line, "value"), what, line.value, expected);
            self.checked.faults.push(fault);
        }
    }
}

/// Whether a value may come out of the formula on these inputs.
fn follows(replay: &Replay, inputs: &mut [f64], found: Option<f64>, expected: f64, unit: f64) -> bool {
    let fits = |expected: f64, slack: f64| match found {
        Some(found) => same(found, expected, ROUNDINGS, expected.abs()) || (found - expected).abs() <= slack,
        None => !expected.is_finite(),
    };
    if fits(expected, 0.0) {
        return true;
    }
    if inputs.iter().any(|value| value.is_nan()) {
        // null stands for what has no bound as well
        for bound in [f64::INFINITY, f64::NEG_INFINITY] {
            let tried: Vec<f64> = inputs.iter().map(|&value| if value.is_nan() { bound } else { value }).collect();
            if fits(replay.value(&tried) / unit, 0.0) {
                return true;
            }
        }
        return false;
    }
    let mut slack = ROUNDINGS * f64::EPSILON * expected.abs();
    for place in 0..inputs.len() {
        let Some(&kept) = inputs.get(place) else { continue };
        let mut most: f64 = 0.0;
        for way in [-1.0, 1.0] {
            if let Some(input) = inputs.get_mut(place) {
                *input = kept * (1.0 + way * INPUT_BITS * f64::EPSILON);
            }
            let moved = (replay.value(inputs) / unit - expected).abs();
            // what is not a number says nothing of how far it moves
            most = if moved > most { moved } else { most };
        }
        if let Some(input) = inputs.get_mut(place) {
            *input = kept;
        }
        slack += most;
    }
    fits(expected, slack)
}

/// What is told of a characteristic by the id of a line; phases are numbered.
fn about(id: &str) -> Option<&'static About> {
    if let Some((_, about)) = characteristic::find(id) {
        return Some(about);
    }
    let (name, phase) = id.rsplit_once('.')?;
    let phase: usize = phase.parse().ok()?;
    let counted = (1..=crate::formula::MOST_PHASES).contains(&phase);
    characteristic::all().find(|about| about.phased && about.id == name).filter(|_| counted)
}
