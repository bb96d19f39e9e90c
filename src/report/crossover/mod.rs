//! Which drive where, for people: Markdown, a picture and a table, made of the record of a crossover alone.
//!
//! Method: `words` makes sentences and figures, `graph` draws costs over one requirement, `map` the families over two,
//! `canvas` holds what all pictures share. Limits: the picture shows what the nodes show, see the record's resolution.

mod decided;
mod graph;
mod map;
mod strip;
mod words;

pub use strip::{Stretch, strip};

use super::Printer;
use crate::record::{CrossoverRecord, NodeRecord};
use crate::units::UnitSystem;
use std::sync::LazyLock;

static PRINTER: LazyLock<Printer> =
    LazyLock::new(|| Printer::new(&[("crossover.md", include_str!("../templates/crossover.md.j2"))]));

/// The crossover as Markdown, in the units of the reader, with the picture of this name if there is one.
pub fn markdown(record: &CrossoverRecord, units: UnitSystem, picture: Option<&str>) -> String {
    let page = words::Words { record, units }.page(picture);
    super::markup::resolve(&PRINTER.document(&page), |_| false)
}

/// What wins where over one range, a sentence for each place of change.
pub fn sentences(record: &CrossoverRecord, units: UnitSystem) -> Vec<String> {
    words::Words { record, units }.boundaries()
}

/// The picture as SVG, in the units of the reader.
pub fn chart(record: &CrossoverRecord, units: UnitSystem) -> Result<String, String> {
    let words = words::Words { record, units };
    match &record.and {
        Some(and) => map::draw(&words, and),
        None => graph::draw(&words),
    }
}

/// The nodes as CSV, metric: one line for each node and family that was sought there.
pub fn table(record: &CrossoverRecord) -> Result<String, String> {
    let mut writer = csv::Writer::from_writer(Vec::new());
    let heading = |key: &str, unit: &str| if unit.is_empty() { key.to_string() } else { format!("{key} [{unit}]") };
    let mut head = vec![heading(&record.over.requirement, &record.over.unit)];
    head.extend(record.and.iter().map(|and| heading(&and.requirement, &and.unit)));
    head.extend(["family", "best"].map(String::from));
    head.push(heading("purchase", &record.currency));
    head.push(heading("whole-life-cost", &record.currency));
    head.extend(["merit", "main sizes"].map(String::from));
    let fault = |error: csv::Error| format!("the table cannot be written: {error}");
    writer.write_record(&head).map_err(fault)?;
    let number = |value: f64| if value.is_finite() { value.to_string() } else { String::new() };
    let mut line = |node: &NodeRecord, family: Option<&str>, best: bool| {
        let mut cells = vec![node.x.map(number).unwrap_or_default()];
        if record.and.is_some() {
            cells.push(node.y.map(number).unwrap_or_default());
        }
        cells.push(family.unwrap_or("none").into());
        cells.push(if best { "yes" } else { "no" }.into());
        cells.extend([node.purchase, node.whole_life_cost, node.merit].map(number));
        let sizes = super::sizes::sizes_of(family.unwrap_or_default(), &node.parameters, UnitSystem::Metric);
        cells.push(super::markup::resolve(&sizes, |_| false));
        writer.write_record(&cells).map_err(fault)
    };
    for (index, node) in record.nodes.iter().enumerate() {
        line(node, node.family.as_deref(), true)?;
        for curve in record.curves.iter().filter(|curve| node.family.as_ref() != Some(&curve.family)) {
            if let Some(other) = curve.nodes.get(index).filter(|other| other.family.is_some()) {
                line(other, other.family.as_deref(), false)?;
            }
        }
    }
    let bytes = writer.into_inner().map_err(|error| format!("the table cannot be written: {error}"))?;
    String::from_utf8(bytes).map_err(|error| format!("the table is no text: {error}"))
}
