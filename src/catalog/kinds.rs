//! The kinds of parts in one table, and what `catalog list` and `catalog show` print of them.

use super::load::Reader;
use super::part::Part;
use super::*;

/// A part as text.
#[derive(Debug, Clone)]
pub struct Row {
    /// The name of the part.
    pub designation: String,
    /// Whether the part is generic.
    pub generic: bool,
    /// Time from order to delivery, as text.
    pub lead_time: String,
    /// The values of its fields, in the order of the kind's fields; `None` where not known.
    pub values: Vec<Option<String>>,
}

/// What there is to know of a kind of part.
pub struct Kind {
    /// Its name, as files write it.
    pub name: &'static str,
    /// What it is, in words.
    pub words: &'static str,
    /// Its fields.
    pub fields: &'static [Field],
    /// All parts of the kind as text.
    pub rows: fn(&Catalog) -> Vec<Row>,
    /// The part of the kind with this designation, as text.
    pub find_row: fn(&Catalog, &str) -> Option<Row>,
    /// Drops every part of the kind but the one with this designation.
    pub keep_only: fn(&mut Catalog, &str),
    pub(super) reader: Reader,
}

const fn kind<P: Part>() -> Kind {
    Kind {
        name: P::KIND,
        words: P::WORDS,
        fields: P::FIELDS,
        rows: |catalog| P::rows(catalog).iter().map(row).collect(),
        find_row: |catalog, designation| {
            P::rows(catalog).iter().find(|part| part.designation() == designation).map(row)
        },
        keep_only: P::keep_only,
        reader: Reader::of::<P>(),
    }
}

fn row<P: Part>(part: &P) -> Row {
    Row {
        designation: part.designation().into(),
        generic: part.generic(),
        lead_time: Value::shown(&part.lead_time(), "weeks").unwrap_or_default(),
        values: part.shown(),
    }
}

/// Every kind of part.
pub static KINDS: [Kind; 25] = [
    kind::<BallScrew>(),
    kind::<ScrewGrade>(),
    kind::<PreloadClass>(),
    kind::<EndArrangement>(),
    kind::<ScrewBearing>(),
    kind::<ScrewSupport>(),
    kind::<NutUnit>(),
    kind::<ScrewReduction>(),
    kind::<Rack>(),
    kind::<RackGrade>(),
    kind::<Pinion>(),
    kind::<Gearbox>(),
    kind::<PinionBias>(),
    kind::<Steel>(),
    kind::<ServoMotor>(),
    kind::<LinearScale>(),
    kind::<ErrorTable>(),
    kind::<BedMaterial>(),
    kind::<Lubrication>(),
    kind::<Surroundings>(),
    kind::<Upkeep>(),
    kind::<Exchange>(),
    kind::<WorkshopLine>(),
    kind::<ExchangePhrase>(),
    kind::<PriceBasis>(),
];

impl Kind {
    /// The kind with this name.
    pub fn find(name: &str) -> Option<&'static Kind> {
        KINDS.iter().find(|kind| kind.name == name)
    }
}

/// How many fields a line of the list shows.
const COLUMNS: usize = 6;
const NOT_KNOWN: &str = "not stated";

/// The kinds with their number of parts, or the parts of one kind, a line each.
///
/// An unknown kind gives a line that names the known ones; ask [`Kind::find`] first to tell it apart.
pub fn list(catalog: &Catalog, kind: Option<&str>) -> String {
    let Some(name) = kind else {
        let lines = KINDS.iter().map(|kind| {
            let rows = (kind.rows)(catalog);
            let generic = rows.iter().filter(|row| row.generic).count();
            vec![kind.name.to_string(), rows.len().to_string(), generic.to_string(), kind.words.trim().to_string()]
        });
        return table(&["kind", "parts", "generic", "what it is"], lines.collect());
    };
    let Some(kind) = Kind::find(name) else {
        let known: Vec<&str> = KINDS.iter().map(|kind| kind.name).collect();
        return format!("unknown kind `{name}`; known are {}\n", known.join(", "));
    };
    let keys: Vec<String> = kind.fields.iter().take(COLUMNS).map(Field::key).collect();
    let mut heads = vec!["designation"];
    heads.extend(keys.iter().map(String::as_str));
    let lines = (kind.rows)(catalog).into_iter().map(|row| {
        let values = row.values.into_iter().take(COLUMNS).map(|value| value.unwrap_or(NOT_KNOWN.into()));
        std::iter::once(row.designation).chain(values).collect()
    });
    table(&heads, lines.collect())
}

/// Everything that the catalogue knows of one part.
pub fn show(catalog: &Catalog, designation: &str) -> Option<String> {
    KINDS.iter().find_map(|kind| {
        let row = (kind.find_row)(catalog, designation)?;
        let standing = if row.generic { "generic, invented; no part that can be ordered" } else { "supplier data" };
        let mut lines = vec![
            ["kind".into(), kind.name.into(), kind.words.trim().into()],
            ["standing".into(), standing.into(), String::new()],
            ["lead-time".into(), row.lead_time, "Time from order to delivery.".into()],
        ];
        for (field, value) in kind.fields.iter().zip(row.values) {
            let money = if field.unit == "nu" { " (currency of the brief)" } else { "" };
            let value = value.map_or(NOT_KNOWN.into(), |value| value + money);
            lines.push([field.key(), value, field.words.trim().into()]);
        }
        let lines = lines.into_iter().map(Vec::from).collect();
        Some(table(&[designation, "", ""], lines))
    })
}

/// The keys of every kind as Markdown, for the documentation.
pub fn reference() -> String {
    let mut out = String::new();
    for kind in &KINDS {
        out.push_str(&format!(
            "### `{}`\n\n{}\n\n| key | unit | accepts | what it is |\n|---|---|---|---|\n",
            kind.name,
            kind.words.trim()
        ));
        for field in kind.fields {
            let left_out = if field.optional { ", or left out" } else { "" };
            let accepts = field.accept.words(field.unit);
            out.push_str(&format!(
                "| `{}` | {} | {accepts}{left_out} | {} |\n",
                field.key(),
                field.unit,
                field.words.trim()
            ));
        }
        out.push('\n');
    }
    out
}

/// Lines in columns, as wide as they need to be.
fn table(heads: &[&str], lines: Vec<Vec<String>>) -> String {
    let length = |text: &str| text.chars().count();
    let mut widths: Vec<usize> = heads.iter().map(|head| length(head)).collect();
    for line in &lines {
        for (width, cell) in widths.iter_mut().zip(line) {
            *width = length(cell).max(*width);
        }
    }
    let mut out = String::new();
    let heads = heads.iter().map(|head| head.to_string()).collect();
    for line in std::iter::once(heads).chain(lines) {
        let mut text = String::new();
        for (cell, width) in line.iter().zip(&widths) {
            text.push_str(cell);
            text.push_str(&" ".repeat(width + 2 - length(cell).min(*width)));
        }
        out.push_str(text.trim_end());
        out.push('\n');
    }
    out
}
