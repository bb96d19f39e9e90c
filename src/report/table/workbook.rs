//! Tables as a workbook (Office Open XML, ISO/IEC 29500), one sheet a table.
//!
//! Method: text is written as text, so nothing that a user named can become a formula; the only formulas are our sums, each with
//! the value that comes out. The time of creation is fixed: the same record gives the same bytes.

use super::{Cell, Table};
use rust_xlsxwriter::{DocProperties, ExcelDateTime, Format, Formula, Workbook, XlsxError};

/// Widest column, in letters.
const WIDEST: usize = 48;

/// The bytes of the workbook.
pub fn write(machine: &str, tables: &[Table]) -> Result<Vec<u8>, XlsxError> {
    let mut book = Workbook::new();
    let fixed = ExcelDateTime::from_ymd(2000, 1, 1)?;
    let title: String = machine.chars().filter(|letter| !letter.is_control()).take(200).collect();
    book.set_properties(&DocProperties::new().set_title(title).set_creation_datetime(&fixed));
    let (bold, plain) = (Format::new().set_bold().set_text_wrap(), Format::new());
    for table in tables {
        let sheet = book.add_worksheet();
        sheet.set_name(table.name)?;
        sheet.set_freeze_panes(1, 0)?;
        for (column, head) in columns(&table.head) {
            sheet.write_string_with_format(0, column, head, &bold)?;
            sheet.set_column_width(column, width(table, column) as f64)?;
        }
        for (row, cells) in (1_u32..).zip(&table.rows) {
            for (column, cell) in columns(cells) {
                match cell {
                    Cell::Text(text) => {
                        sheet.write_string(row, column, text)?;
                    }
                    Cell::Number(value) => {
                        sheet.write_number(row, column, *value)?;
                    }
                    Cell::Empty => {}
                }
            }
        }
        sums(sheet, table, &bold, &plain)?;
    }
    book.save_to_buffer()
}

/// A line below the table that adds up what can be added up.
fn sums(sheet: &mut rust_xlsxwriter::Worksheet, table: &Table, bold: &Format, plain: &Format) -> Result<(), XlsxError> {
    let last = table.rows.len() as u32;
    if table.summed.is_empty() || last == 0 {
        return Ok(());
    }
    sheet.write_string_with_format(last + 1, 0, "together", bold)?;
    for (column, _) in columns(&table.head).filter(|(column, _)| table.summed.contains(&usize::from(*column))) {
        let values: Vec<f64> = table
            .rows
            .iter()
            .filter_map(|row| match row.get(usize::from(column)) {
                Some(Cell::Number(value)) => Some(*value),
                _ => None,
            })
            .collect();
        let first = rust_xlsxwriter::utility::row_col_to_cell(1, column);
        let to = rust_xlsxwriter::utility::row_col_to_cell(last, column);
        let sum: f64 = values.iter().sum();
        let formula = Formula::new(format!("=SUM({first}:{to})")).set_result(sum.to_string());
        sheet.write_formula_with_format(last + 1, column, formula, plain)?;
    }
    Ok(())
}

fn columns<T>(cells: &[T]) -> impl Iterator<Item = (u16, &T)> {
    (0_u16..).zip(cells)
}

/// A width at which the cells of a column can be read.
fn width(table: &Table, column: u16) -> usize {
    let column = usize::from(column);
    let cell = |row: &Vec<Cell>| match row.get(column) {
        Some(Cell::Text(text)) => text.chars().count(),
        Some(Cell::Number(_)) => 10,
        _ => 0,
    };
    let longest = table.rows.iter().map(cell).max().unwrap_or(0);
    let head = table.head.get(column).map_or(0, |head| head.chars().count().min(18));
    longest.max(head).clamp(6, WIDEST) + 2
}
