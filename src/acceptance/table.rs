//! The text of a table to rows of numbers: separator, header, units, cells, and the place of each for faults.
//!
//! Method: rows and the places of their cells come from [`crate::cells`]. Every faulty cell is told, not only the first.
//! Limits: UTF-8; a comment is a line that begins with `#`; where a thousand faults are told the rest is not read.

use crate::cells::{Cell, Sheet};
use crate::units::{Dimension, UnitError, parse_as};
use crate::yaml::{Fault, Faults, nearest};
use std::ops::Range;

/// The columns that a table has, in any order.
const COLUMNS: [&str; 4] = ["target", "direction", "run", "deviation"];
/// A longer first line is no header.
const MOST_COLUMNS: usize = 100;
const TARGET: usize = 0;
const DIRECTION: usize = 1;
const RUN: usize = 2;
const DEVIATION: usize = 3;

/// Words for the direction of approach, and whether they mean upward.
const DIRECTIONS: [(&str, bool); 10] = [
    ("up", true),
    ("down", false),
    ("forward", true),
    ("back", false),
    ("+", true),
    ("-", false),
    ("positive", true),
    ("negative", false),
    ("↑", true),
    ("↓", false),
];

/// One row that holds what it should.
#[derive(Debug, Clone)]
pub(super) struct Row {
    /// Target position, m.
    pub target: f64,
    /// Whether the target was approached upward.
    pub up: bool,
    /// Number of the run.
    pub run: u64,
    /// Deviation, m.
    pub deviation: f64,
    /// Where the target stands in the text.
    pub place: Range<usize>,
}

/// The rows of a table, and whether every row of it could be read.
#[derive(Debug)]
pub(super) struct Rows {
    pub rows: Vec<Row>,
    pub complete: bool,
}

/// A column: where it stands, and the unit that its heading names.
struct Column {
    index: usize,
    place: Range<usize>,
    unit: Option<String>,
}

/// Reads the rows of a table; what is wrong is among the faults.
pub(super) fn rows(name: &str, text: &str, faults: &mut Faults) -> Rows {
    let before = faults.len();
    let reading = Reading { sheet: Sheet::new(name, text, 0, None) };
    let mut lines = reading.sheet.records(faults).into_iter();
    let nothing = Rows { rows: Vec::new(), complete: false };
    let Some(header) = lines.next() else {
        let help = "the first line names the columns: `target [mm],direction,run,deviation [µm]`";
        faults.push(Fault::in_text(name, text, 0..0, "no header", "the file is empty", Some(help.into())));
        return nothing;
    };
    let Some(columns) = reading.header(&header, faults) else { return nothing };
    let lines: Vec<Vec<Cell>> = lines.filter(|cells| cells.iter().any(|cell| !cell.text.is_empty())).collect();
    // units in no cell of a column are one fault of its heading, not one of each row
    for (which, unitless) in [(TARGET, &columns[TARGET]), (DEVIATION, &columns[DEVIATION])] {
        let bare = |cells: &Vec<Cell>| {
            let text = cells.get(unitless.index).map_or("", |cell| cell.text.as_str());
            matches!(reading.length(text, None), Err((_, true)))
        };
        if unitless.unit.is_none() && !lines.is_empty() && lines.iter().all(bare) {
            let help = format!("write the unit in the header: `{} [{}]`", COLUMNS[which], ["mm", "µm"][which / 3]);
            let message = format!("the column `{}` has no unit", COLUMNS[which]);
            faults.push(reading.fault(unitless.place.clone(), "no unit", message, Some(help)));
            return nothing;
        }
    }
    let width = header.len();
    let mut rows = Vec::new();
    // what is said of a table that is wrong throughout is enough
    for cells in lines.iter() {
        if faults.is_full() {
            break;
        }
        rows.extend(reading.row(cells, &columns, width, faults));
    }
    if lines.is_empty() {
        let place = header.first().map_or(0..0, |cell| cell.place.clone());
        let help = "write one line a target, direction and run, such as `0,up,1,0.4`".to_string();
        let message = "the file holds no measured value below its header".to_string();
        faults.push(reading.fault(place, "the header", message, Some(help)));
    }
    Rows { complete: faults.len() == before, rows }
}

/// The word and the unit of a heading: `deviation [µm]`, `deviation (µm)`, `deviation / µm`, `deviation µm`.
fn heading(text: &str) -> (String, Option<String>) {
    let Some(at) = text.find(|letter: char| "[(/".contains(letter) || letter.is_whitespace()) else {
        return (text.to_lowercase(), None);
    };
    let unit = text[at..].trim_matches(|letter: char| "[]()/".contains(letter) || letter.is_whitespace());
    (text[..at].to_lowercase(), (!unit.is_empty()).then(|| unit.to_string()))
}

struct Reading<'a> {
    sheet: Sheet<'a>,
}

impl Reading<'_> {
    fn fault(&self, place: Range<usize>, label: &'static str, message: String, help: Option<String>) -> Fault {
        self.sheet.fault(place, label, message, help)
    }

    /// The four columns, in the order of [`COLUMNS`].
    fn header(&self, cells: &[Cell], faults: &mut Faults) -> Option<[Column; 4]> {
        let before = faults.len();
        if cells.len() > MOST_COLUMNS {
            let place = cells.first().map_or(0..0, |cell| cell.place.clone());
            let message = format!("the first line has {} cells, a table has {} columns", cells.len(), COLUMNS.len());
            faults.push(self.fault(place, "the header", message, None));
            return None;
        }
        let mut found: [Option<Column>; 4] = [None, None, None, None];
        for (index, cell) in cells.iter().enumerate() {
            let (word, unit) = heading(&cell.text);
            let Some(which) = COLUMNS.iter().position(|column| *column == word) else {
                let near = nearest(&word, COLUMNS).map(|near| format!("did you mean `{near}`?"));
                let help = near.unwrap_or_else(|| format!("the columns are {}", COLUMNS.join(", ")));
                let message = format!("unknown column `{}`", cell.text);
                faults.push(self.fault(cell.place.clone(), "not a column", message, Some(help)));
                continue;
            };
            if let Some(spelt) = &unit {
                let wrong = if which == TARGET || which == DEVIATION {
                    parse_as(Dimension::Length, &format!("1 {spelt}")).err().map(|error| error.to_string())
                } else {
                    Some(format!("the column `{word}` takes no unit"))
                };
                if let Some(message) = wrong {
                    faults.push(self.fault(cell.place.clone(), "this unit", message, None));
                }
            }
            if found[which].is_some() {
                let message = format!("the column `{word}` stands twice");
                faults.push(self.fault(cell.place.clone(), "a second time here", message, None));
            } else {
                found[which] = Some(Column { index, place: cell.place.clone(), unit });
            }
        }
        let missing = |which: usize| found[which].is_none().then_some(COLUMNS[which]);
        let missing: Vec<&str> = (0..COLUMNS.len()).filter_map(missing).collect();
        if !missing.is_empty() {
            let message = format!("the header names no column `{}`", missing.join("`, `"));
            let help = "the first line names the columns: `target [mm],direction,run,deviation [µm]`".to_string();
            let place = cells.first().map_or(0..0, |cell| cell.place.clone());
            faults.push(self.fault(place, "the header", message, Some(help)));
        }
        match found {
            [Some(target), Some(direction), Some(run), Some(deviation)] if faults.len() == before => {
                Some([target, direction, run, deviation])
            }
            _ => None,
        }
    }

    /// One row; `None` when a cell of it is at fault.
    fn row(&self, cells: &[Cell], columns: &[Column; 4], width: usize, faults: &mut Faults) -> Option<Row> {
        if let Some(cell) = cells.get(width) {
            let help = if self.sheet.separator == b',' {
                "part the cells by semicolons where numbers have a decimal comma"
            } else {
                "give each row as many cells as the header has"
            };
            let message = format!("this row has {} cells, the header has {width}", cells.len());
            faults.push(self.fault(cell.place.clone(), "one too many", message, Some(help.into())));
            return None;
        }
        let target =
            self.cell(cells, columns, TARGET, faults).and_then(|cell| self.value(cell, &columns[TARGET], faults));
        let up = self.cell(cells, columns, DIRECTION, faults).and_then(|cell| self.direction(cell, faults));
        let run = self.cell(cells, columns, RUN, faults).and_then(|cell| self.run(cell, faults));
        let deviation =
            self.cell(cells, columns, DEVIATION, faults).and_then(|cell| self.value(cell, &columns[DEVIATION], faults));
        let place = cells.get(columns[TARGET].index).map_or(0..0, |cell| cell.place.clone());
        Some(Row { target: target?, up: up?, run: run?, deviation: deviation?, place })
    }

    fn cell<'c>(
        &self,
        cells: &'c [Cell],
        columns: &[Column; 4],
        which: usize,
        faults: &mut Faults,
    ) -> Option<&'c Cell> {
        let cell = cells.get(columns[which].index);
        let end = cells.last().map_or(0..0, |cell| cell.place.clone());
        match cell {
            Some(cell) if !cell.text.is_empty() => Some(cell),
            Some(cell) => {
                let message = format!("`{}` is missing in this row", COLUMNS[which]);
                faults.push(self.fault(cell.place.clone(), "empty", message, None));
                None
            }
            None => {
                let message = format!("this row ends before the column `{}`", COLUMNS[which]);
                faults.push(self.fault(end, "the row ends here", message, None));
                None
            }
        }
    }

    fn value(&self, cell: &Cell, column: &Column, faults: &mut Faults) -> Option<f64> {
        self.length(&cell.text, column.unit.as_deref())
            .map_err(|(message, _)| faults.push(self.fault(cell.place.clone(), "this value", message, None)))
            .ok()
    }

    /// A length in m; else what is wrong, and whether it is the unit alone that is missing.
    fn length(&self, text: &str, heading: Option<&str>) -> Result<f64, (String, bool)> {
        let mut text = text.replace('−', "-");
        if self.sheet.separator != b',' && text.contains(',') {
            if text.contains('.') || text.matches(',').count() > 1 {
                return Err((format!("`{text}` is not a number; write digits without grouping"), false));
            }
            text = text.replace(',', ".");
        }
        let own = parse_as(Dimension::Length, &text);
        match (own, heading) {
            (Err(UnitError::NoUnit { .. }), Some(unit)) => {
                parse_as(Dimension::Length, &format!("{text} {unit}")).map_err(|error| (error.to_string(), false))
            }
            (Ok(value), None) => Ok(value),
            (Ok(value), Some(unit)) => {
                let number = text.trim_start_matches(['+', '-']);
                let end = number.find(|letter: char| !letter.is_ascii_digit() && letter != '.').unwrap_or(0);
                let one = parse_as(Dimension::Length, &format!("1 {}", &number[end..]));
                if one == parse_as(Dimension::Length, &format!("1 {unit}")) {
                    Ok(value)
                } else {
                    Err((format!("`{text}` has a unit of its own, and the header gives `{unit}`"), false))
                }
            }
            (Err(error), _) => Err((error.to_string(), matches!(error, UnitError::NoUnit { .. }))),
        }
    }

    fn direction(&self, cell: &Cell, faults: &mut Faults) -> Option<bool> {
        let word = cell.text.to_lowercase().replace('−', "-");
        let known = DIRECTIONS.iter().find(|(spelling, _)| *spelling == word);
        if known.is_none() {
            let near = nearest(&word, DIRECTIONS.iter().map(|(word, _)| *word).filter(|word| word.len() > 3));
            let near = near.or_else(|| nearest(&word, ["up", "down"]));
            let help = near.map_or_else(
                || "write up or down, forward or back, + or -".to_string(),
                |near| format!("did you mean `{near}`?"),
            );
            let message = format!("`{}` is no direction of approach", cell.text);
            faults.push(self.fault(cell.place.clone(), "not a direction", message, Some(help)));
        }
        known.map(|(_, up)| *up)
    }

    fn run(&self, cell: &Cell, faults: &mut Faults) -> Option<u64> {
        let number = cell.text.parse::<u64>().ok().filter(|number| *number > 0);
        if number.is_none() {
            let message = format!("`{}` is no number of a run; write 1, 2, 3 …", cell.text);
            faults.push(self.fault(cell.place.clone(), "not a run", message, None));
        }
        number
    }
}
