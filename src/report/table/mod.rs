//! Tables for spreadsheets: plain metric numbers with a point, one unit a column.
//!
//! Method: each table is put together once as cells; CSV and workbook are two ways to write it.
//! Limits: metric whatever the units of the report are, so that the tables of two decisions can be laid side by side.

mod candidates;
mod machine;
mod parts;
mod workbook;

use super::markup::resolve;
use crate::record::DecisionRecord;

/// A cell.
#[derive(Debug, Clone, PartialEq)]
enum Cell {
    Text(String),
    Number(f64),
    Empty,
}

impl Cell {
    /// A text; marks of the glossary, which only a document can link, become plain words.
    fn text(text: impl Into<String>) -> Cell {
        Cell::Text(resolve(&text.into(), |_| false))
    }

    /// A number, or nothing where it is not known.
    fn number(value: f64) -> Cell {
        if value.is_finite() { Cell::Number(value) } else { Cell::Empty }
    }

    fn known(value: Option<f64>) -> Cell {
        value.map_or(Cell::Empty, Cell::number)
    }
}

/// A table.
#[derive(Debug, Clone, PartialEq)]
struct Table {
    /// What the sheet is called.
    name: &'static str,
    head: Vec<String>,
    rows: Vec<Vec<Cell>>,
    /// Columns that are added up in a workbook.
    summed: Vec<usize>,
}

/// The heading of a column with its unit.
fn heading(key: &str, unit: &str) -> String {
    if matches!(unit, "" | "1") { key.into() } else { format!("{key} [{unit}]") }
}

impl Table {
    fn csv(&self) -> Result<String, String> {
        let fault = |error: csv::Error| format!("the table cannot be written: {error}");
        let mut writer = csv::Writer::from_writer(Vec::new());
        writer.write_record(self.head.iter().map(|cell| harmless(cell))).map_err(fault)?;
        for row in &self.rows {
            let cells = row.iter().map(|cell| match cell {
                Cell::Text(text) => harmless(text),
                Cell::Number(value) => value.to_string(),
                Cell::Empty => String::new(),
            });
            writer.write_record(cells).map_err(fault)?;
        }
        let bytes = writer.into_inner().map_err(|error| format!("the table cannot be written: {error}"))?;
        String::from_utf8(bytes).map_err(|error| format!("the table is no text: {error}"))
    }
}

/// A text that a spreadsheet would take for a formula is marked as text.
fn harmless(cell: &str) -> String {
    let formula =
        cell.starts_with(['=', '+', '@', '\t', '\r']) || (cell.starts_with('-') && cell.parse::<f64>().is_err());
    if formula { format!("'{cell}") } else { cell.to_string() }
}

/// The drives of a decision as CSV; what it says when it cannot be written.
pub fn candidates(record: &DecisionRecord) -> Result<String, String> {
    candidates::table(record).csv()
}

/// The parts of the drives chosen as CSV: the bill of materials.
pub fn bill_of_materials(record: &DecisionRecord) -> Result<String, String> {
    parts::table(record).csv()
}

/// All tables as one workbook: the machine, its parts, its costs, its limits, and the drives that were compared.
pub fn workbook(record: &DecisionRecord) -> Result<Vec<u8>, String> {
    let tables = [
        machine::axes(record),
        parts::table(record),
        machine::costs(record),
        machine::limits(record),
        candidates::table(record),
    ];
    workbook::write(&record.machine_name, &tables).map_err(|error| format!("the workbook cannot be written: {error}"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_cell_that_looks_like_a_formula_is_text_and_an_unknown_number_is_empty() {
        let rows = vec![vec![Cell::text("=1+1"), Cell::number(f64::NAN), Cell::number(-2.5)]];
        let table = Table { name: "t", head: vec!["a".into(), "b".into(), "c".into()], rows, summed: Vec::new() };
        assert_eq!(table.csv().as_deref(), Ok("a,b,c\n'=1+1,,-2.5\n"));
    }
}
