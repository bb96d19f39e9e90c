//! The machine as tables: its axes with the drives chosen, what they cost, and the limits of the machine.

use super::super::view::worst_binding;
use super::super::words;
use super::{Cell, Table, heading};
use crate::record::*;

/// One line an axis.
pub fn axes(record: &DecisionRecord) -> Table {
    let money = record.currency.as_str();
    let head = vec![
        "axis".into(),
        "for".into(),
        "drive".into(),
        "main sizes".into(),
        heading("price to buy", money),
        heading("price over its life", money),
        heading("error required", "µm"),
        heading("error predicted", "µm"),
        heading("repeatability required", "µm"),
        heading("repeatability predicted", "µm"),
        heading("half band at the tool", "µm"),
        heading("first mode", "Hz"),
        "tightest rule".into(),
        "share of its limit in use".into(),
        "parts with invented data".into(),
    ];
    let rows = record.axes.iter().map(row).collect();
    Table { name: "machine", head, rows, summed: vec![4, 5] }
}

fn row(axis: &AxisRecord) -> Vec<Cell> {
    let mut cells = vec![Cell::text(&axis.name), Cell::text(axis.purpose.clone().unwrap_or_default())];
    let Some(drive) = &axis.chosen else {
        cells.push(Cell::text("none is admissible"));
        cells.resize(15, Cell::Empty);
        return cells;
    };
    let tightest = worst_binding(drive);
    let accepted = |quantities: &[&str]| {
        let mut limits = drive.acceptance.iter().flat_map(|plan| &plan.limits);
        limits.find(|limit| quantities.contains(&limit.quantity.as_str()) && limit.over == "travel")
    };
    let (error, repeat) = (accepted(&["A", "E"]), accepted(&["R"]));
    let generic = drive.components.iter().filter(|part| part.generic).count();
    cells.extend([
        Cell::text(words::family(&drive.family)),
        Cell::text(drive.parameters.iter().map(size).collect::<Vec<_>>().join(", ")),
        Cell::number(drive.cost.purchase),
        Cell::number(drive.cost.whole_life),
        Cell::known(error.and_then(|limit| limit.required)),
        Cell::known(error.and_then(|limit| limit.predicted)),
        Cell::known(repeat.and_then(|limit| limit.required)),
        Cell::known(repeat.and_then(|limit| limit.predicted)),
        Cell::known(drive.value("tool-error")),
        Cell::known(drive.value("first-mode")),
        tightest.map_or(Cell::Empty, |finding| Cell::text(&finding.rule)),
        Cell::known(tightest.and_then(|finding| finding.utilisation)),
        Cell::text(format!("{generic} of {}", drive.components.len())),
    ]);
    cells
}

/// A main size as text: "module 2 mm".
fn size(parameter: &Parameter) -> String {
    match &parameter.value {
        ParameterValue::Number { value, unit } if unit == "1" => format!("{} {value}", parameter.name),
        ParameterValue::Number { value, unit } => format!("{} {value} {unit}", parameter.name),
        ParameterValue::Word { value, .. } => format!("{} {value}", parameter.name),
    }
}

/// One line a cost of a drive chosen.
pub fn costs(record: &DecisionRecord) -> Table {
    let head = vec!["axis".into(), "what".into(), "kind".into(), heading("amount", &record.currency)];
    let chosen = record.axes.iter().filter_map(|axis| Some((axis, axis.chosen.as_ref()?)));
    let lines = chosen.flat_map(|(axis, drive)| drive.cost.lines.iter().map(move |line| (axis, line)));
    let rows = lines
        .map(|(axis, line)| {
            vec![Cell::text(&axis.name), Cell::text(&line.item), Cell::text(&line.kind), Cell::number(line.amount)]
        })
        .collect();
    Table { name: "costs", head, rows, summed: Vec::new() }
}

/// One line a limit of the machine.
pub fn limits(record: &DecisionRecord) -> Table {
    let head = ["limit of the machine", "reached", "allowed", "unit", "verdict"].map(String::from).to_vec();
    let row = |limit: &MachineLimit| {
        vec![
            Cell::text(words::machine_limit(&limit.limit)),
            Cell::known(limit.reached),
            Cell::number(limit.allowed),
            Cell::text(match limit.unit.as_str() {
                "" => record.currency.as_str(),
                "1" => "pieces",
                unit => unit,
            }),
            Cell::text(words::verdict(&limit.verdict, "shall")),
        ]
    };
    Table { name: "limits", head, rows: record.machine.limits.iter().map(row).collect(), summed: Vec::new() }
}
