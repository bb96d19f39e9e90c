//! What a configuration costs, part by part, as it stands in the record.

use super::{CostLine, CostRecord};
use crate::characteristic as ch;
use crate::ledger::{Characteristic, Figures};
use crate::search::Worked;
use crate::units::{Measure, Money};

/// The cost of a configuration: what is bought, what comes every year, what is exchanged.
pub fn cost(worked: &Worked<'_>) -> CostRecord {
    let read = |characteristic: Characteristic<Money>| worked.sheet.read(characteristic).si();
    let has = |role: &str| worked.parts.iter().any(|part| part.role == role);
    let belt = worked.sheet.value(ch::BELTS.slot) > 0.0;
    let (element, support, reduction) = if has("nut-unit") {
        ("ball screws with nuts and nut units", "clamps and ends of the screws", "belts")
    } else if has("ball-screw") {
        ("ball screws with nuts", "screw bearings and ends", "couplings or belts")
    } else {
        ("racks and pinions", "rack fasteners, joints and gauge", "gearboxes")
    };
    let purchase = [
        (element, ch::ELEMENT_COST),
        (support, ch::SUPPORT_COST),
        (reduction, ch::REDUCTION_COST),
        ("motors with drive electronics", ch::MOTOR_COST),
        ("linear scales", ch::FEEDBACK_COST),
        ("measuring the axis and entering its table of corrections", ch::TABLE_COST),
        ("covers and wipers", ch::COVER_COST),
        ("machining of datums", ch::DATUM_COST),
        ("fitting and alignment", ch::FITTING_LABOUR_COST),
    ];
    let yearly = [
        ("energy a year", ch::ENERGY_COST),
        ("lubricant a year", ch::LUBRICANT_COST),
        ("lubrication and inspection, labour a year", ch::INSPECTION_COST),
    ];
    let bearings = if has("nut-unit") { "nut units" } else { "screw bearings" };
    let exchange = [
        ("screws with nuts", ch::SCREW_REPLACEMENT),
        (bearings, ch::BEARING_REPLACEMENT),
        (if belt { "belts" } else { "gearboxes" }, ch::REDUCTION_REPLACEMENT),
    ];
    let line =
        |kind: &str, item: String, characteristic| CostLine { item, kind: kind.into(), amount: read(characteristic) };
    let mut lines: Vec<CostLine> = purchase.into_iter().map(|(item, of)| line("purchase", item.into(), of)).collect();
    lines.extend(yearly.into_iter().map(|(item, of)| line("yearly", item.into(), of)));
    let entered = exchange.into_iter().filter(|(_, of)| worked.sheet.line(of.slot).is_some());
    lines.extend(entered.map(|(item, of)| line("exchange", format!("exchange of {item}"), of)));
    CostRecord { purchase: read(ch::PURCHASE_COST), whole_life: read(ch::WHOLE_LIFE_COST), lines }
}
