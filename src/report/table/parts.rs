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
    vec![
        Cell::text(&axis.name),
        Cell::text(words::role(&part.role)),
        Cell::text(&part.designation),
        Cell::number(part.count),
        Cell::text(if part.unit == "1" { "piece" } else { &part.unit }),
        Cell::text(words::data(part.generic)),
    ]
}
