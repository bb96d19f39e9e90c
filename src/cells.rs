//! A text of rows and separators as cells, each with its place in the text, so that a fault can show it.
//!
//! Method: the `csv` crate reads the rows; the place of a cell is found again in the text. What parts the cells is the
//! semicolon or tab where the first line has one, else the comma.
//! Limits: UTF-8; a comment is a line that begins with `#`.

use crate::yaml::{Fault, Faults};
use std::ops::Range;

/// A cell, without the blanks around it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Cell {
    /// What it holds.
    pub text: String,
    /// Where it stands in the whole text, in bytes.
    pub place: Range<usize>,
}

/// A text that holds a table.
#[derive(Debug, Clone, Copy)]
pub struct Sheet<'a> {
    /// The name by which faults call the file.
    pub name: &'a str,
    /// The whole text, without a byte order mark.
    pub text: &'a str,
    /// What parts the cells.
    pub separator: u8,
    /// Where the table begins, in bytes.
    begin: usize,
}

impl<'a> Sheet<'a> {
    /// A table that begins behind so many lines; the separator is found if none is given.
    pub fn new(name: &'a str, text: &'a str, skipped: usize, separator: Option<u8>) -> Sheet<'a> {
        let begin = text.split_inclusive('\n').take(skipped).map(str::len).sum();
        let rest = text.get(begin..).unwrap_or_default();
        Sheet { name, text, separator: separator.unwrap_or_else(|| found(rest)), begin }
    }

    /// A fault at a place of the table.
    pub fn fault(&self, place: Range<usize>, label: &'static str, message: String, help: Option<String>) -> Fault {
        Fault::in_text(self.name, self.text, place, label, message, help)
    }

    /// The cells of every line that is neither empty nor a comment.
    pub fn records(&self, faults: &mut Faults) -> Vec<Vec<Cell>> {
        let mut reader = csv::ReaderBuilder::new()
            .delimiter(self.separator)
            .has_headers(false)
            .flexible(true)
            .comment(Some(b'#'))
            .trim(csv::Trim::All)
            .from_reader(self.text.as_bytes().get(self.begin..).unwrap_or_default());
        let mut lines = Vec::new();
        for record in reader.records() {
            match record {
                Ok(record) => {
                    let from = self.begin + record.position().map_or(0, |position| position.byte() as usize);
                    let places = self.places(from, record.len());
                    let cells = record.iter().zip(places).map(|(text, place)| Cell { text: text.into(), place });
                    lines.push(cells.collect());
                }
                Err(error) => {
                    let from = self.begin + error.position().map_or(0, |position| position.byte() as usize);
                    let message = format!("this is not a table of cells: {error}");
                    faults.push(self.fault(from..from, "here", message, None));
                }
            }
        }
        lines
    }

    /// Where the cells of a record stand that begins at or behind a byte of the text.
    fn places(&self, from: usize, count: usize) -> Vec<Range<usize>> {
        let bytes = self.text.as_bytes();
        let ends = |at: usize| bytes.get(at).is_none_or(|byte| matches!(byte, b'\n' | b'\r'));
        // the reader counts the empty lines and comments before a record to the record
        let mut at = from.min(bytes.len());
        while at < bytes.len() && (ends(at) || bytes[at] == b'#') {
            while !ends(at) {
                at += 1;
            }
            at += usize::from(at < bytes.len());
        }
        let mut places = Vec::with_capacity(count);
        let mut begin = at;
        let mut quoted = false;
        while places.len() < count {
            let over = at >= bytes.len() || (!quoted && (ends(at) || bytes[at] == self.separator));
            if over {
                places.push(self.trimmed(begin..at.min(bytes.len())));
                at = if ends(at) { at } else { at + 1 };
                begin = at;
            } else {
                quoted ^= bytes[at] == b'"' && (quoted || at == begin);
                at += 1;
            }
        }
        places
    }

    fn trimmed(&self, range: Range<usize>) -> Range<usize> {
        let cell = self.text.get(range.clone()).unwrap_or_default();
        let start = range.start + cell.len() - cell.trim_start().len();
        start..start.max(range.start + cell.trim_end().len())
    }
}

/// The separator of a table: that of its first line.
fn found(text: &str) -> u8 {
    let sound = |line: &&str| !line.trim().is_empty() && !line.starts_with('#');
    let first = text.split(['\n', '\r']).find(sound).unwrap_or("");
    [(';', b';'), ('\t', b'\t')].into_iter().find(|(letter, _)| first.contains(*letter)).map_or(b',', |(_, byte)| byte)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cells_know_their_place_behind_lines_that_are_skipped() {
        let text = "junk \"of the\nsupplier\n\nname; b \n\"x; y\";2\n";
        let sheet = Sheet::new("t.csv", text, 2, None);
        let mut faults = Faults::default();
        let lines = sheet.records(&mut faults);
        assert!(faults.is_empty());
        assert_eq!((sheet.separator, lines.len()), (b';', 2));
        let shown: Vec<&str> = lines.iter().flatten().map(|cell| &text[cell.place.clone()]).collect();
        assert_eq!(shown, ["name", "b", "\"x; y\"", "2"]);
        assert_eq!(lines[1][0].text, "x; y");
    }
}
