//! The drives of a decision as a table for spreadsheets: metric, one line a drive, plain numbers with a point.
//!
//! Method: the drive chosen, the next-best, the best or nearest of each family, and those that no other beats; each once.
//! Limits: not every admissible drive, of which there may be millions; the record's census counts them.

use super::view::worst_binding;
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

/// The table as CSV; what it says when it cannot be written.
pub fn candidates(record: &DecisionRecord) -> Result<String, String> {
    let rows: Vec<Row<'_>> = record.axes.iter().flat_map(rows).collect();
    let mut sizes: Vec<(&str, &str)> = Vec::new();
    for parameter in rows.iter().flat_map(|row| row.parameters) {
        let head = (parameter.name.as_str(), unit(&parameter.value));
        if !sizes.contains(&head) {
            sizes.push(head);
        }
    }
    let heading = |key: &str, unit: &str| if matches!(unit, "" | "1") { key.into() } else { format!("{key} [{unit}]") };
    let mut head: Vec<String> = ["axis", "standing", "admissible", "family"].map(String::from).to_vec();
    head.extend(sizes.iter().map(|(name, unit)| heading(name, unit)));
    head.extend([heading("purchase", &record.currency), heading("whole-life-cost", &record.currency)]);
    head.extend(["merit".into(), "half band at the tool [µm]".into()]);
    head.extend(["tightest rule", "utilisation"].map(String::from));
    let fault = |error: csv::Error| format!("the table cannot be written: {error}");
    let mut writer = csv::Writer::from_writer(Vec::new());
    writer.write_record(&head).map_err(fault)?;
    let number = |value: f64| if value.is_finite() { value.to_string() } else { String::new() };
    for row in &rows {
        let mut cells: Vec<String> = vec![row.axis.into(), row.standing.into()];
        cells.push(if row.admissible { "yes" } else { "no" }.into());
        cells.push(row.family.into());
        cells.extend(sizes.iter().map(|size| cell(row.parameters, size)));
        cells.extend(row.figures.map(number));
        cells.push(row.tightest.map_or(String::new(), |finding| finding.rule.clone()));
        cells.push(row.tightest.and_then(|finding| finding.utilisation).map_or(String::new(), number));
        writer.write_record(cells.iter().map(|cell| harmless(cell))).map_err(fault)?;
    }
    let bytes = writer.into_inner().map_err(|error| format!("the table cannot be written: {error}"))?;
    String::from_utf8(bytes).map_err(|error| format!("the table is no text: {error}"))
}

/// A text that a spreadsheet would take for a formula is marked as text.
fn harmless(cell: &str) -> String {
    let formula =
        cell.starts_with(['=', '+', '@', '\t', '\r']) || (cell.starts_with('-') && cell.parse::<f64>().is_err());
    if formula { format!("'{cell}") } else { cell.to_string() }
}

fn unit(value: &ParameterValue) -> &str {
    match value {
        ParameterValue::Number { unit, .. } => unit,
        ParameterValue::Word { .. } => "",
    }
}

fn cell(parameters: &[Parameter], (name, of): &(&str, &str)) -> String {
    let found = parameters.iter().find(|parameter| parameter.name == *name && unit(&parameter.value) == *of);
    match found.map(|parameter| &parameter.value) {
        Some(ParameterValue::Number { value, .. }) if value.is_finite() => value.to_string(),
        Some(ParameterValue::Word { value, .. }) => value.clone(),
        _ => String::new(),
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
