//! The worksheet of a drive as tables: phases side by side, and every other line in working order.

use super::figure;
use super::view::{View, base, phase};
use super::words;
use crate::record::*;
use serde::Serialize;
use std::collections::BTreeSet;

/// The phases of the duty: how the axis moves, and what its drive feels.
#[derive(Serialize)]
pub struct Phases {
    tables: Vec<PhaseTable>,
    formulas: Vec<PhaseFormula>,
    extremes: bool,
}

/// One table of the phases.
#[derive(Serialize)]
struct PhaseTable {
    title: &'static str,
    heads: Vec<Head>,
    rows: Vec<Vec<String>>,
}

#[derive(Serialize)]
struct Head {
    symbol: String,
    unit: String,
    words: String,
}

#[derive(Serialize)]
struct PhaseFormula {
    symbol: String,
    equation: String,
    standing: String,
}

/// One line of the worksheet.
#[derive(Serialize)]
pub struct SheetLine {
    symbol: String,
    words: String,
    equation: String,
    numbers: String,
    result: String,
    origin: String,
}

/// What tells how the axis moves in a phase; the rest is what the drive feels.
const MOTION: [&str; 10] = [
    "phase-share",
    "phase-direction",
    "phase-speed",
    "phase-rms-speed",
    "phase-top-speed",
    "phase-acceleration",
    "phase-stroke",
    "phase-moves",
    "phase-process-force",
    "phase-balance",
];

/// The phases; none if the record holds none.
pub fn phases(view: &View, drive: &CandidateRecord) -> Option<Phases> {
    let phased: Vec<&WorksheetLine> = drive.worksheet.iter().filter(|line| phase(&line.id).is_some()).collect();
    let last = phased.iter().filter_map(|line| phase(&line.id)).max()?;
    let mut columns: Vec<&WorksheetLine> = Vec::new();
    for line in &phased {
        if !columns.iter().any(|known| base(&known.id) == base(&line.id)) {
            columns.push(line);
        }
    }
    let cell = |column: &WorksheetLine, number: usize| {
        let wanted = format!("{}.{number}", base(&column.id));
        match phased.iter().find(|line| line.id == wanted) {
            Some(line) => phase_value(view, line),
            None => "–".into(),
        }
    };
    // a column without any figure says nothing
    let says = |column: &WorksheetLine| {
        phased.iter().any(|line| base(&line.id) == base(&column.id) && line.value != Some(0.0))
    };
    let (motion, loads): (Vec<&WorksheetLine>, Vec<&WorksheetLine>) =
        columns.iter().filter(|column| says(column)).partition(|column| MOTION.contains(&base(&column.id)));
    let table = |title, columns: Vec<&WorksheetLine>| {
        let rows = (1..=last).map(|number| {
            std::iter::once(number.to_string()).chain(columns.iter().map(|column| cell(column, number))).collect()
        });
        let heads = columns.iter().map(|line| Head {
            symbol: line.symbol.clone(),
            unit: super::inch::shown(0.0, &line.unit, view.units).1.trim_matches('1').into(),
            words: view.words_of(&line.id),
        });
        PhaseTable { title, heads: heads.collect(), rows: rows.collect() }
    };
    let tables = vec![table("Motion by phase", motion), table("Loads by phase", loads)];
    let formulas = columns
        .iter()
        .filter_map(|line| {
            let formula = view.formula(line.formula.as_deref()?)?;
            Some(PhaseFormula {
                symbol: line.symbol.clone(),
                equation: formula.equation.clone(),
                standing: standing(&formula.sources),
            })
        })
        .collect();
    let extremes = phased.iter().any(|line| base(&line.id) == "phase-share" && line.value == Some(0.0));
    Some(Phases { tables, formulas, extremes })
}

/// Digits of a figure of a phase: life goes by the cube of a force, and is told to three digits.
const PHASE_DIGITS: usize = 4;

/// A number alone; its unit stands in the head of the column.
fn phase_value(view: &View, line: &WorksheetLine) -> String {
    match line.value {
        Some(value) if base(&line.id) == "phase-share" => format!("{} %", figure::figure(value * 100.0, PHASE_DIGITS)),
        Some(value) => figure::figure(super::inch::shown(value, &line.unit, view.units).0, PHASE_DIGITS),
        None => figure::NOT_KNOWN.into(),
    }
}

/// Every line that is not of a phase, in working order.
pub fn lines(view: &View, drive: &CandidateRecord) -> Vec<SheetLine> {
    drive
        .worksheet
        .iter()
        .filter(|line| phase(&line.id).is_none())
        .map(|line| {
            let formula = line.formula.as_deref().and_then(|id| view.formula(id));
            let equation = match (formula, &line.formula) {
                (Some(formula), _) => formula.equation.clone(),
                (None, Some(id)) => id.clone(),
                (None, None) => String::new(),
            };
            let origin = match formula {
                Some(formula) => standing(&formula.sources),
                None if line.id == "carried-mass" && line.value != Some(0.0) => "brief, and the drives carried".into(),
                None => words::origin(&line.origin).into(),
            };
            SheetLine {
                symbol: line.symbol.clone(),
                words: view.words_of(&line.id),
                equation,
                numbers: numbers(view, drive, &line.inputs, formula.map_or(&[], |formula| &formula.symbols)),
                result: view.line_value(line),
                origin,
            }
        })
        .collect()
}

/// The numbers put in: "d_r = 34.5 mm, L = 1240 mm"; the phases of one quantity together. Where the equation
/// calls a quantity by another symbol, that comes first: "F = F_c = 900 N".
fn numbers(view: &View, drive: &CandidateRecord, inputs: &[String], symbols: &[String]) -> String {
    let named = |argument: usize, own: &str| match symbols.get(argument) {
        Some(symbol) if symbol != own => format!("{symbol} = {own}"),
        _ => own.to_string(),
    };
    let mut parts: Vec<String> = Vec::new();
    let mut index = 0;
    while let Some(id) = inputs.get(index) {
        let run = inputs[index..].iter().take_while(|other| phase(other).is_some() && base(other) == base(id)).count();
        let line = drive.line(id);
        if run > 1 {
            let symbol = line.map_or_else(|| words::spaced(base(id)), |line| line.symbol.clone());
            parts.push(format!("{} of {run} phases", named(parts.len(), &symbol)));
            index += run;
            continue;
        }
        parts.push(match line {
            Some(line) => format!("{} = {}", named(parts.len(), &line.symbol), view.line_value(line)),
            None => words::spaced(id),
        });
        index += 1;
    }
    parts.join(", ")
}

/// The ids of these lines and of every line that goes into them, directly or through others.
pub fn behind<'a>(drive: &'a CandidateRecord, ids: &[&'a str]) -> BTreeSet<&'a str> {
    let mut found: BTreeSet<&str> = BTreeSet::new();
    let mut open: Vec<&str> = ids.to_vec();
    while let Some(id) = open.pop() {
        if found.insert(id) {
            let inputs = drive.line(id).into_iter().flat_map(|line| &line.inputs);
            open.extend(inputs.map(String::as_str));
        }
    }
    found
}

/// The standings of sources, each once: "standard; from memory, text not at hand".
pub fn standing(sources: &[SourceRecord]) -> String {
    let mut seen: Vec<String> = Vec::new();
    for source in sources {
        let words = words::standing(&source.standing);
        if !seen.contains(&words) {
            seen.push(words);
        }
    }
    seen.join("; ")
}
