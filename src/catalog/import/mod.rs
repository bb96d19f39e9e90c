//! From a supplier's table to a file of the catalogue.
//!
//! Method: a map says which column gives which key. Cells become quantities with their unit out of the cell, the map or
//! the heading. The entries are then read by the loader of the catalogue, whose faults are told at the cell they come
//! from, and judged by the same questions as `catalog check`. A row that is not whole is left out and told; what
//! concerns a whole column, or the map, ends the import.
//! Limits: one kind a table; a key that a table spreads over several columns must be put together before.

mod column;
mod map;
mod number;
mod write;

pub use map::Map;

use super::{Catalog, Kind, Remark, check_some, load};
use crate::cells::{Cell, Sheet};
use crate::yaml::{Document, Fault, Faults};
use column::Placed;
use std::ops::Range;

/// What an import gives.
#[derive(Debug)]
pub struct Import {
    /// The file of the catalogue.
    pub yaml: String,
    /// How many entries it has.
    pub entries: usize,
    /// Why rows were left out, each at its cell.
    pub left_out: Faults,
    /// How many rows were left out.
    pub rows_left_out: usize,
    /// Headings that no key was found for.
    pub unplaced: Vec<String>,
    /// What is odd about the entries.
    pub remarks: Vec<Remark>,
}

/// One row on its way to an entry.
struct Row {
    /// Key and value as YAML, in the order of the kind.
    values: Vec<(String, String)>,
    /// Where each of them stands.
    places: Vec<(String, Range<usize>)>,
    /// Where the row begins.
    place: Range<usize>,
}

/// Imports a table of parts of a kind.
///
/// # Errors
/// All faults that concern the whole: the map, a column that is not there, a required key that nothing gives, a unit
/// that a column lacks, a decimal mark that is not clear, no row that is whole.
pub fn import(
    kind: &'static Kind,
    (name, text): (&str, &str),
    map: Option<&Document>,
    basis: Option<&str>,
) -> Result<Import, Faults> {
    let mut faults = Faults::default();
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let map = map.map_or_else(Map::default, |document| Map::read(document, kind, &mut faults));
    let basis = provenance(name, basis, &map, &mut faults);
    let sheet = Sheet::new(name, text, map.skip_lines, map.separator);
    let mut lines = sheet.records(&mut faults);
    if map.parts_in_columns {
        lines = turned(lines);
    }
    lines.retain(|cells| cells.iter().any(|cell| !cell.text.is_empty()));
    let mut lines = lines.into_iter();
    let Some(head) = lines.next() else {
        faults.push(Fault::of_file(name, "the table is empty", Some("its first line names the columns".into())));
        return Err(faults);
    };
    let units = if map.units_below { lines.next().unwrap_or_default() } else { Vec::new() };
    let lines: Vec<Vec<Cell>> = lines.collect();
    let table = column::Table { sheet: &sheet, map: &map, head: &head, units: &units, lines: &lines };
    let (placed, unplaced) = table.place(kind, &mut faults);
    let decimal = table.decimal(&placed, &mut faults);
    let (Some(basis), Some(decimal)) = (basis, decimal) else { return Err(faults) };
    if !faults.is_empty() {
        return Err(faults);
    }
    let mut left_out = Faults::default();
    let rows = lines.iter().map(|cells| row(&table, &placed, cells, decimal, &mut left_out)).collect::<Vec<_>>();
    let all = rows.len();
    let whole: Vec<Row> = once(&sheet, rows.into_iter().flatten(), &mut left_out);
    let (yaml, entries, catalog) = readable(kind, &sheet, &basis, whole, &mut left_out)?;
    if entries == 0 {
        faults.merge(left_out);
        faults.push(Fault::of_file(name, "no row of the table is whole; nothing is imported", None));
        return Err(faults);
    }
    let remarks = catalog.map_or_else(Vec::new, |catalog| odd(kind, &catalog));
    Ok(Import { yaml, entries, left_out, rows_left_out: all - entries, unplaced, remarks })
}

/// Where the data come from; its absence is a fault, since a reader of a decision must be able to look.
fn provenance(name: &str, basis: Option<&str>, map: &Map, faults: &mut Faults) -> Option<String> {
    let basis = basis.or(map.basis.as_deref()).map(str::trim).unwrap_or_default();
    let wanted = "write `basis` in the map or --basis: supplier's document and its date";
    let message = match basis {
        "" => "nothing says where the data come from",
        basis if basis.starts_with("generic") => "data whose basis begins with `generic` count as invented",
        basis => return Some(basis.into()),
    };
    faults.push(Fault::of_file(name, message, Some(wanted.into())));
    None
}

/// Columns made lines.
fn turned(lines: Vec<Vec<Cell>>) -> Vec<Vec<Cell>> {
    let width = lines.iter().map(Vec::len).max().unwrap_or(0);
    let cell = |line: &Vec<Cell>, column: usize| {
        let end = line.last().map_or(0, |cell| cell.place.end);
        line.get(column).cloned().unwrap_or(Cell { text: String::new(), place: end..end })
    };
    (0..width).map(|column| lines.iter().map(|line| cell(line, column)).collect()).collect()
}

/// One row; none when a cell of it is at fault, or one that is needed is empty.
fn row(
    table: &column::Table<'_>,
    placed: &[Placed<'_>],
    cells: &[Cell],
    decimal: number::Decimal,
    faults: &mut Faults,
) -> Option<Row> {
    let place = cells.first().map_or(0..0, |cell| cell.place.clone());
    let end = cells.last().map_or(0..0, |cell| cell.place.end..cell.place.end);
    let mut row = Row { values: Vec::new(), places: Vec::new(), place };
    let (mut whole, mut missing) = (true, Vec::new());
    let width = table.head.len();
    if let Some(extra) = cells.iter().skip(width).find(|cell| !cell.text.is_empty()) {
        let message = format!("there are {} cells here and {width} headings", cells.len());
        let help = match table.sheet.separator {
            b',' => "a decimal comma parts a number in two where commas part the cells; the part is left out",
            _ => "the part is left out",
        };
        faults.push(table.sheet.fault(extra.place.clone(), "one too many", message, Some(help.into())));
        whole = false;
    }
    for one in placed {
        let cell = cells.get(one.index).filter(|cell| !table.map.is_missing(&cell.text));
        match cell {
            Some(cell) => match table.value(one, cell, decimal) {
                Ok(value) => {
                    row.places.push((one.key.clone(), cell.place.clone()));
                    row.values.push((one.key.clone(), value));
                }
                Err(message) => {
                    whole = false;
                    let message = format!("`{}`: {message}", one.key);
                    faults.push(table.sheet.fault(
                        cell.place.clone(),
                        "this cell",
                        message,
                        LEFT_OUT.map(String::from),
                    ));
                }
            },
            None if one.optional => {}
            None => {
                missing.push((one.key.as_str(), cells.get(one.index).map_or(end.clone(), |cell| cell.place.clone())))
            }
        }
    }
    if let Some((_, place)) = missing.first() {
        let keys: Vec<String> = missing.iter().map(|(key, _)| format!("`{key}`")).collect();
        let message = format!("this part has nothing for {}", keys.join(", "));
        faults.push(table.sheet.fault(place.clone(), "nothing here", message, LEFT_OUT.map(String::from)));
        return None;
    }
    row.values.extend(table.map.values.iter().cloned());
    whole.then_some(row)
}

/// What happens to a part that is not whole.
const LEFT_OUT: Option<&str> = Some("the part is left out");

/// The rows without those whose designation an earlier one has.
fn once(sheet: &Sheet<'_>, rows: impl Iterator<Item = Row>, left_out: &mut Faults) -> Vec<Row> {
    let mut kept: Vec<Row> = Vec::new();
    for row in rows {
        let name = |row: &Row| row.values.iter().find(|(key, _)| key == "designation").map(|(_, name)| name.clone());
        match kept.iter().find(|earlier| name(earlier) == name(&row)) {
            None => kept.push(row),
            Some(first) => {
                let line = 1 + sheet.text.get(..first.place.start).unwrap_or_default().matches('\n').count();
                let place = row.places.iter().find(|(key, _)| key == "designation").map_or(&row.place, |(_, at)| at);
                let message =
                    format!("the designation {} is given twice, first in line {line}", name(&row).unwrap_or_default());
                left_out.push(sheet.fault(place.clone(), "a second time here", message, LEFT_OUT.map(String::from)));
            }
        }
    }
    kept
}

/// The file of rows that the loader of the catalogue takes, how many they are, and the catalogue with them.
fn readable(
    kind: &Kind,
    sheet: &Sheet<'_>,
    basis: &str,
    mut rows: Vec<Row>,
    left_out: &mut Faults,
) -> Result<(String, usize, Option<Catalog>), Faults> {
    loop {
        let entries: Vec<&[(String, String)]> = rows.iter().map(|row| row.values.as_slice()).collect();
        let yaml = write::file(kind, basis, sheet.name, &entries);
        if rows.is_empty() {
            return Ok((yaml, 0, None));
        }
        let layer = vec![(sheet.name.to_string(), yaml.clone())];
        let faults = match load::over_built_in(vec![layer], &[]) {
            Ok(catalog) => return Ok((yaml, rows.len(), Some(catalog))),
            Err(faults) => faults,
        };
        let mut wrong: Vec<usize> = Vec::new();
        for fault in faults.iter() {
            let Some((index, key)) = entry_of(&fault.path).filter(|(index, _)| *index < rows.len()) else {
                // not of a row: of the map's values or of the file as a whole
                return Err(faults);
            };
            let row = &rows[index];
            let place = row.places.iter().find(|(known, _)| *known == key).map_or(&row.place, |(_, place)| place);
            let named = key.is_empty() || fault.message.contains(&format!("`{key}`"));
            let message = if named { fault.message.clone() } else { format!("`{key}`: {}", fault.message) };
            left_out.push(sheet.fault(place.clone(), "this cell", message, LEFT_OUT.map(String::from)));
            wrong.push(index);
        }
        let mut index = 0;
        rows.retain(|_| {
            index += 1;
            !wrong.contains(&(index - 1))
        });
    }
}

/// The number of the entry and the key that the path of a fault names: `entries[3].lead`.
fn entry_of(path: &str) -> Option<(usize, String)> {
    let (index, rest) = path.strip_prefix("entries[")?.split_once(']')?;
    Some((index.parse().ok()?, rest.trim_start_matches('.').to_string()))
}

/// What is odd about the parts of the kind that are not generic: those that came out of this table.
fn odd(kind: &Kind, catalog: &Catalog) -> Vec<Remark> {
    check_some(catalog, &|of, _, generic| of == kind.name && !generic)
}
