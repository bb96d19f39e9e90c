//! The drives of a decision that were compared, one line a drive.
//!
//! Method: the drive chosen, the next-best, the best or nearest of each family, and those that no other beats; each once.
//! Limits: not every admissible drive, of which there may be millions; the record's census counts them.

use super::super::view::worst_binding;
use super::{Cell, Table, heading};
use crate::record::*;

/// One line before it is written.
struct Row<'r> {
    axis: &'r str,
    standing: &'static str,
    family: &'r str,
    parameters: &'r [Parameter],
    /// Purchase, over its life, merit, half band at the tool in µm.
    figures: [f64; 4],
    tightest: Option<&'r FindingRecord>,
    admissible: bool,
}

/// One line a drive.
pub fn table(record: &DecisionRecord) -> Table {
    let rows: Vec<Row<'_>> = record.axes.iter().flat_map(rows).collect();
    let mut sizes: Vec<(&str, &str)> = Vec::new();
    for parameter in rows.iter().flat_map(|row| row.parameters) {
        let head = (parameter.name.as_str(), unit(&parameter.value));
        if !sizes.contains(&head) {
            sizes.push(head);
        }
    }
    let mut head: Vec<String> = ["axis", "standing", "admissible", "family"].map(String::from).to_vec();
    head.extend(sizes.iter().map(|(name, unit)| heading(name, unit)));
    head.extend([heading("purchase", &record.currency), heading("whole-life-cost", &record.currency)]);
    head.extend(["merit".into(), "half band at the tool [µm]".into()]);
    head.extend(["tightest rule", "utilisation"].map(String::from));
    let line = |row: &Row<'_>| {
        let mut cells = vec![Cell::text(row.axis), Cell::text(row.standing)];
        cells.push(Cell::text(if row.admissible { "yes" } else { "no" }));
        cells.push(Cell::text(row.family));
        cells.extend(sizes.iter().map(|size| cell(row.parameters, size)));
        cells.extend(row.figures.map(Cell::number));
        cells.push(row.tightest.map_or(Cell::Empty, |finding| Cell::text(&finding.rule)));
        cells.push(Cell::known(row.tightest.and_then(|finding| finding.utilisation)));
        cells
    };
    Table { name: "drives compared", head, rows: rows.iter().map(line).collect(), summed: Vec::new() }
}

fn unit(value: &ParameterValue) -> &str {
    match value {
        ParameterValue::Number { unit, .. } => unit,
        ParameterValue::Word { .. } => "",
    }
}

fn cell(parameters: &[Parameter], (name, of): &(&str, &str)) -> Cell {
    let found = parameters.iter().find(|parameter| parameter.name == *name && unit(&parameter.value) == *of);
    match found.map(|parameter| &parameter.value) {
        Some(ParameterValue::Number { value, .. }) => Cell::number(*value),
        Some(ParameterValue::Word { value, .. }) => Cell::text(value),
        None => Cell::Empty,
    }
}

fn rows(axis: &AxisRecord) -> Vec<Row<'_>> {
    let mut rows: Vec<Row<'_>> = axis.chosen.iter().map(|drive| worked(axis, "chosen", true, drive)).collect();
    rows.extend(axis.runners_up.iter().map(|drive| worked(axis, "next-best", true, drive)));
    for family in &axis.families {
        rows.extend(family.best.iter().map(|drive| worked(axis, "best of its family", true, drive)));
        rows.extend(family.nearest.iter().map(|drive| worked(axis, "nearest miss of its family", false, drive)));
    }
    rows.extend(axis.pareto_set.iter().map(|point| Row {
        axis: &axis.name,
        standing: "not beaten in merit and accuracy",
        family: &point.family,
        parameters: &point.parameters,
        figures: [point.purchase, point.whole_life, point.merit, point.tool_error],
        tightest: None,
        admissible: true,
    }));
    let mut kept: Vec<Row<'_>> = Vec::new();
    for row in rows {
        if !kept.iter().any(|other| other.family == row.family && other.parameters == row.parameters) {
            kept.push(row);
        }
    }
    kept
}

fn worked<'r>(axis: &'r AxisRecord, standing: &'static str, admissible: bool, drive: &'r CandidateRecord) -> Row<'r> {
    let error = drive.value("tool-error").unwrap_or(f64::NAN);
    Row {
        axis: &axis.name,
        standing,
        family: &drive.family,
        parameters: &drive.parameters,
        figures: [drive.cost.purchase, drive.cost.whole_life, drive.merit, error],
        tightest: worst_binding(drive),
        admissible,
    }
}
