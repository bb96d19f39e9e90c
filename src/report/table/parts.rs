//! The bill of materials: every part of the drives chosen, axis by axis.
//!
//! Limits: prices stand by group in the costs, not by part: ends, clamps and preparation are priced together with the part
//! that needs them.

use super::super::words;
use super::{Cell, Table};
use crate::record::*;

/// One line a part.
pub fn table(record: &DecisionRecord) -> Table {
    let head = ["axis", "part", "designation", "count", "unit", "data"].map(String::from).to_vec();
    let chosen = record.axes.iter().filter_map(|axis| Some((axis, axis.chosen.as_ref()?)));
    let rows = chosen.flat_map(|(axis, drive)| drive.components.iter().map(|part| row(axis, part))).collect();
    Table { name: "parts", head, rows, summed: Vec::new() }
}

fn row(axis: &AxisRecord, part: &ComponentRecord) -> Vec<Cell> {
    let property = PROPERTIES.contains(&part.role.as_str());
    let (count, unit) = match part.unit.as_str() {
        _ if property => (Cell::Empty, "property"),
        "1" => (Cell::number(part.count), "piece"),
        unit => (Cell::number((part.count * FINEST).round() / FINEST), unit),
    };
    vec![
        Cell::text(&axis.name),
        Cell::text(words::role(&part.role)),
        Cell::text(&part.designation),
        count,
        Cell::text(unit),
        Cell::text(words::data(part.generic)),
    ]
}

/// Entries of the catalogue that say how a part is made or set and cannot be bought by themselves.
const PROPERTIES: [&str; 5] = ["screw-grade", "preload-class", "end-arrangement", "rack-grade", "pinion-bias"];
/// Lengths are told to the millimetre.
const FINEST: f64 = 1e3;
