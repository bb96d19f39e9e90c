//! The map of an import: which column of a supplier's table gives which key of the catalogue, and how it is read.
//!
//! Method: a YAML file, read like every other with all its faults at once. Without a map, columns are found whose
//! headings are the keys themselves.

use super::number::Decimal;
use crate::catalog::{Field, Kind};
use crate::yaml::{Document, Faults, Node};

/// How one column is read.
#[derive(Debug, Clone, PartialEq)]
pub struct Column {
    /// Its heading.
    pub heading: String,
    /// The unit of its numbers, where neither cell nor heading says it.
    pub unit: Option<String>,
    /// By what its numbers are multiplied.
    pub times: f64,
    /// What its words mean, each with the value for the catalogue.
    pub words: Vec<(String, String)>,
}

/// The whole map.
#[derive(Debug, Clone, Default)]
pub struct Map {
    /// What parts the cells.
    pub separator: Option<u8>,
    /// The decimal mark.
    pub decimal: Option<Decimal>,
    /// So many lines stand before the table.
    pub skip_lines: usize,
    /// Whether every part is a column, and the headings stand in the first column.
    pub parts_in_columns: bool,
    /// Whether the line below the headings (or the column behind them) holds units.
    pub units_below: bool,
    /// The columns, by key.
    pub columns: Vec<(String, Column)>,
    /// What all parts share, by key, as it stands in YAML.
    pub values: Vec<(String, String)>,
    /// Headings that are left out knowingly.
    pub leave_out: Vec<String>,
    /// Cells that stand for nothing.
    pub missing: Vec<String>,
    /// Where the data come from.
    pub basis: Option<String>,
}

const KEYS: [&str; 10] = [
    "separator",
    "decimal",
    "skip-lines",
    "parts-in",
    "units-below-headings",
    "columns",
    "values",
    "leave-out",
    "missing",
    "basis",
];
const SEPARATORS: [(&str, u8); 7] =
    [("comma", b','), ("semicolon", b';'), ("tab", b'\t'), ("bar", b'|'), (",", b','), (";", b';'), ("|", b'|')];
const DECIMALS: [(&str, Decimal); 4] =
    [("point", Decimal::Point), ("comma", Decimal::Comma), (".", Decimal::Point), (",", Decimal::Comma)];
/// What usually stands for nothing.
pub const MISSING: [&str; 6] = ["", "-", "–", "—", "n/a", "N/A"];
/// Keys that every kind has besides its own.
const OF_ALL: [&str; 2] = ["designation", "lead-time"];

/// Every key that an entry of a kind may have.
pub fn keys(kind: &Kind) -> Vec<String> {
    OF_ALL.iter().map(|key| key.to_string()).chain(kind.fields.iter().map(Field::key)).collect()
}

impl Map {
    /// Reads a map for parts of a kind.
    pub fn read(document: &Document, kind: &Kind, faults: &mut Faults) -> Map {
        let root = document.root();
        root.only_keys(&KEYS, faults);
        let known = keys(kind);
        let known: Vec<&str> = known.iter().map(String::as_str).collect();
        let mut map = Map {
            separator: root.get("separator").and_then(|node| node.choice(&SEPARATORS, faults)),
            decimal: root.get("decimal").and_then(|node| node.choice(&DECIMALS, faults)),
            skip_lines: root.get("skip-lines").and_then(|node| node.count(faults)).unwrap_or(0) as usize,
            parts_in_columns: root
                .get("parts-in")
                .and_then(|node| node.choice(&[("rows", false), ("columns", true)], faults))
                .unwrap_or(false),
            units_below: root.get("units-below-headings").and_then(|node| node.flag(faults)).unwrap_or(false),
            leave_out: texts(&root, "leave-out", faults),
            missing: texts(&root, "missing", faults),
            basis: root.get("basis").and_then(|node| node.text(faults)),
            ..Map::default()
        };
        if let Some(group) = root.get("columns") {
            group.only_keys(&known, faults);
            for (key, node) in group.entries(faults) {
                map.columns.extend(column(&node, faults).map(|column| (key, column)));
            }
        }
        if let Some(group) = root.get("values") {
            group.only_keys(&known, faults);
            for (key, node) in group.entries(faults) {
                if map.columns.iter().any(|(known, _)| *known == key) {
                    let message = format!("`{key}` is given by a column and by a value; keep one");
                    node.fault(faults, message, None);
                }
                map.values.extend(scalar(&node, faults).map(|value| (key, value)));
            }
        }
        map
    }

    /// Whether a cell stands for nothing.
    pub fn is_missing(&self, cell: &str) -> bool {
        MISSING.contains(&cell) || self.missing.iter().any(|word| word == cell)
    }
}

fn texts(root: &Node<'_>, key: &str, faults: &mut Faults) -> Vec<String> {
    let items = root.get(key).map(|node| node.list(faults)).unwrap_or_default();
    items.iter().filter_map(|item| item.text(faults)).collect()
}

/// A column is its heading, or a group that says more.
fn column(node: &Node<'_>, faults: &mut Faults) -> Option<Column> {
    if !node.is_mapping() {
        return Some(Column { heading: node.text(faults)?, unit: None, times: 1.0, words: Vec::new() });
    }
    node.only_keys(&["column", "unit", "times", "words"], faults);
    let heading = node.need_text("column", faults);
    let unit = node.get("unit").and_then(|unit| unit.text(faults));
    let times = match node.get("times") {
        None => Some(1.0),
        Some(times) => times.number(faults).filter(|factor| {
            if *factor <= 0.0 {
                times.fault(faults, "a factor is above 0", None);
            }
            *factor > 0.0
        }),
    };
    let words = node.get("words").map(|group| group.entries(faults)).unwrap_or_default();
    let words = words.iter().filter_map(|(word, node)| Some((word.clone(), scalar(node, faults)?))).collect();
    Some(Column { heading: heading?, unit, times: times?, words })
}

/// A single value as it stands in YAML: a flag, a number as it is written, or a text in quotes.
fn scalar(node: &Node<'_>, faults: &mut Faults) -> Option<String> {
    let mut none = Faults::default();
    if let Some(flag) = node.flag(&mut none) {
        return Some(flag.to_string());
    }
    let text = node.text(faults)?;
    Some(if node.is_text() { quoted(&text) } else { text })
}

/// A text as YAML, in quotes unless it is plain.
pub fn quoted(text: &str) -> String {
    let plain = |letter: char| letter.is_alphanumeric() || " -._/+·²³µ°%".contains(letter);
    let begins = text.starts_with(|first: char| first.is_alphanumeric());
    let bare = text.parse::<f64>().is_ok() || ["true", "false", "null", "yes", "no", "on", "off"].contains(&text);
    if begins && text.chars().all(plain) && !bare && !text.ends_with(' ') {
        return text.into();
    }
    let mut out = String::from("\"");
    for letter in text.chars() {
        match letter {
            '"' | '\\' => out.extend(['\\', letter]),
            letter if letter.is_control() => out.push_str(&format!("\\u{:04x}", letter as u32)),
            letter => out.push(letter),
        }
    }
    out + "\""
}
