//! What page one says of the drive that was chosen: what it costs, what must be set, how it stops and is held.
//!
//! Method: made of the record alone, sentence by sentence.

use super::markup::term;
use super::view::{View, worst_binding};
use super::{figure, reasons, words};
use crate::record::*;

/// A drive that is cheaper by less than this share is no other offer.
const VISIBLE: f64 = 0.01;

/// Reserve, cost, what must be set and how it stops and holds, in sentences.
pub fn told(view: &View, axis: &AxisRecord, drive: &CandidateRecord) -> String {
    let binding: Vec<&FindingRecord> = drive.findings.iter().filter(|finding| finding.obligation == "shall").collect();
    let passed = binding.iter().filter(|finding| finding.verdict == "pass").count();
    let waived = binding.iter().filter(|finding| finding.verdict == "waived").count();
    let rules = term("binding-rule", "binding rules");
    let mut text = match binding.len() - passed - waived {
        0 if waived == 0 => format!("It keeps all {passed} {rules}."),
        0 => format!("It keeps {passed} of {} {rules}; the brief sets {waived} aside.", binding.len()),
        missed => format!("It misses {missed} of {} {rules}.", binding.len()),
    };
    if let Some(finding) = worst_binding(drive) {
        let used = figure::utilisation(finding.utilisation);
        text += &format!(" The tightest uses {used} of its limit: {}.", view.clause(finding));
    }
    let cost = view.money(Some(drive.cost.whole_life));
    text += &format!(" It costs {} to buy and {cost} over its life.", view.money(Some(drive.cost.purchase)));
    let cheaper = |other: &&ParetoPoint| other.whole_life < (1.0 - VISIBLE) * drive.cost.whole_life;
    if let Some(other) = axis.by_cost_alone.as_ref().filter(cheaper) {
        text += &format!(
            " By cost alone another drive would do: {}, {}, {} to buy and {} over its life ({}); it adds {} to the error at the tool in place of {}. \
             {} against it.",
            words::family(&other.family),
            view.sizes_of(&other.family, &other.parameters),
            view.money(Some(other.purchase)),
            view.money(Some(other.whole_life)),
            figure::change(Some(other.whole_life), Some(drive.cost.whole_life)),
            figure::quantity(Some(other.tool_error), "µm", view.units, 3),
            view.value_of(drive, "tool-error").unwrap_or_else(|| figure::NOT_KNOWN.into()),
            what_decides(view, axis)
        );
    }
    let motors = units(drive);
    let (of_each, each) =
        if motors > 1 { (format!(" for each of {motors} motors"), " each") } else { Default::default() };
    if let Some(limit) = view.value_of(drive, "set-torque") {
        text += &format!(" The torque limit in the drive electronics must be set to {limit}{of_each}.");
    }
    if let Some(bias) = view.value_of(drive, "bias-torque") {
        text += &format!(
            " The bias of the two pinions of a drive against each other must be set to {bias} at the output of each gearbox."
        );
    }
    let ends = (view.value_of(drive, "emergency-stop-distance"), view.value_of(drive, "whole-end-stop-energy"));
    if let (Some(way), Some(energy)) = ends {
        text += &format!(
            " An emergency stop from full speed at that limit takes {way}{}; a run into the end stop at full speed brings \
             {energy}, all moving and turning parts together.",
            beyond_overtravel(view, axis, drive)
        );
    }
    let held = (view.value_of(drive, "holding-torque"), view.value_of(drive, "brake-torque"));
    if let (Some(way), (Some(hold), Some(brake))) = (view.value_of(drive, "stopping-distance"), held) {
        let of_brakes = if motors > 1 { format!(" of each of {motors} motors") } else { String::new() };
        let drop = view.value_of(drive, "drop-from-rest");
        let dropped = drop.map_or(String::new(), |drop| format!("at rest it catches the load after {drop}, and "));
        text += &format!(
            " The brake{of_brakes} is rated {brake}{each} and has to hold {hold}{each}, friction not counted; when power is lost {dropped}at full speed \
             downward it stops the load within {way}{}.",
            beyond(view, axis, drive, "brake-stop").map_or(String::new(), |longer| format!(", {longer}"))
        );
    }
    // two motors have a brake each
    if motors == 1 && asks(axis, "people-below", "yes") {
        text += " People may be below this axis: most codes then want a second means of holding, or one that is tested in a cycle. \
                 Neither is in these prices.";
    }
    text += &special_pinion(view, drive);
    let own = axis.families.iter().find(|family| family.family == drive.family);
    let best = own
        .and_then(|family| family.best.as_ref())
        .filter(|best| best.cost.whole_life < drive.cost.whole_life * (1.0 - 1e-9));
    if let Some(best) = best {
        text += &format!(
            " The best of its kind for this axis alone costs {}; {}.",
            view.money(Some(best.cost.whole_life)),
            reasons::not_cost_alone(view, drive, best)
        );
    }
    text
}

fn unmet<'a>(drive: &'a CandidateRecord, rule: &str) -> Option<&'a FindingRecord> {
    drive.findings.iter().find(|finding| finding.rule == rule && finding.verdict == "fail")
}

fn asks(axis: &AxisRecord, key: &str, value: &str) -> bool {
    axis.requirement.iter().any(|line| line.key == key && line.value == value)
}

/// That an emergency stop is longer than the overtravel, where it is; empty elsewhere.
fn beyond_overtravel(view: &View, axis: &AxisRecord, drive: &CandidateRecord) -> String {
    beyond(view, axis, drive, "emergency-stop-way").map_or(String::new(), |longer| {
        format!(", {longer}, so that from the end of the travel it ends in the end stop")
    })
}

/// By what a way of this rule is longer than the overtravel, where it is.
fn beyond(view: &View, axis: &AxisRecord, drive: &CandidateRecord, rule: &str) -> Option<String> {
    let finding = unmet(drive, rule)?;
    let stated = axis.requirement.iter().any(|line| line.key == "overtravel" && line.stated);
    let whose = if stated { "" } else { "assumed " };
    let (_, overtravel) = view.pair(finding);
    Some(format!("more than the {whose}overtravel of {overtravel}"))
}

/// That the pinion cannot take the shaft of the gearbox, where it cannot; empty elsewhere.
fn special_pinion(view: &View, drive: &CandidateRecord) -> String {
    let Some(finding) = unmet(drive, "pinion-bore") else { return String::new() };
    let (bore, shaft) = view.pair(finding);
    format!(
        " The pinion is a special part: it has room for a bore of {bore}, and the shaft of the gearbox has {shaft}. Ask the supplier for its \
         price and its time of delivery; the sums here count a standard one."
    )
}

/// What decides against a drive that costs less.
fn what_decides(view: &View, axis: &AxisRecord) -> &'static str {
    match (&axis.better_alone, view.weighs_more_than_cost()) {
        (Some(_), _) => "The machine as a whole decides",
        (None, true) => "The preferences of the brief decide",
        (None, false) => "Advice that it does not follow, and that weighs, decides",
    }
}

/// How many motors a drive has, over all sides and pinions.
fn units(drive: &CandidateRecord) -> u64 {
    let motors = drive.components.iter().find(|part| part.role == "servo-motor");
    motors.map_or(1, |part| part.count.round() as u64)
}
