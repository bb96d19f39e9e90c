//! The check of a proposal for people: verdict, what fails, beside what is recommended, what gives way first.
//!
//! Method: made of its record alone, in the words of the report. Limits: worksheets stand in the record only.

use super::assumed::{self, Named};
use super::cautions::{self, Caution};
use super::engineer::{FindingLine, finding_line};
use super::view::{View, failing, worst_binding, worst_first};
use super::{Printer, figure, markup, words};
use crate::record::*;
use crate::units::UnitSystem;
use serde::Serialize;
use std::sync::LazyLock;

static PRINTER: LazyLock<Printer> =
    LazyLock::new(|| Printer::new(&[("proposal.md", include_str!("templates/proposal.md.j2"))]));

/// What is held side by side: characteristic, words, whether less is better.
const BESIDE: [(&str, &str, bool); 8] = [
    ("accuracy", "predicted error of positioning", true),
    ("repeatability", "repeatability R", true),
    ("reversal-error", "reversal B", true),
    ("total-stiffness", "stiffness of one drive", false),
    ("first-mode", "first resonance", false),
    ("drive-mass", "mass of the drives", true),
    ("supply-power", "largest power from the supply", true),
    ("upkeep-cost", "upkeep a year", true),
];

/// Values closer than this share count as the same where it is told what is bought and what given away.
const ALIKE: f64 = 0.005;

#[derive(Serialize)]
struct Page {
    machine: String,
    verdict: String,
    decisions: Vec<Named>,
    axes: Vec<Axis>,
    machine_rows: Vec<MachineRow>,
    cautions: Vec<Caution>,
    doubts: Vec<Named>,
    remarks: Vec<String>,
    choice: String,
    hash: String,
}

#[derive(Serialize)]
struct Axis {
    name: String,
    drive: String,
    word: &'static str,
    purchase: String,
    whole_life: String,
    rank: String,
    given: Vec<Named>,
    own: String,
    open: Vec<Named>,
    failing: Vec<Named>,
    advice: Vec<Named>,
    recommended: String,
    trade: String,
    beside: Vec<Beside>,
    margins: Vec<MarginRow>,
    findings: Vec<FindingLine>,
}

#[derive(Serialize)]
struct Beside {
    what: String,
    proposed: String,
    recommended: String,
    difference: String,
}

#[derive(Serialize)]
struct MarginRow {
    requirement: String,
    now: String,
    holds: String,
    room: String,
    breaks: String,
}

#[derive(Serialize)]
struct MachineRow {
    what: String,
    proposed: String,
    recommended: String,
    limit: String,
}

/// The page as a piece of HTML for a page with a style of its own.
pub fn proposal_piece(record: &ProposalRecord, units: UnitSystem) -> String {
    super::html::piece(&proposal(record, units), &[])
}

/// The check as Markdown, in the units of the reader.
pub fn proposal(record: &ProposalRecord, units: UnitSystem) -> String {
    let view = View { record: &record.proposed, units };
    let axes: Vec<Axis> = record.axes.iter().map(|axis| of_axis(&view, axis)).collect();
    let page = Page {
        machine: record.proposed.machine_name.clone(),
        verdict: verdict(&view, record),
        decisions: record.axes.iter().map(|axis| decision(&view, axis)).collect(),
        axes,
        machine_rows: machine(&view, record),
        cautions: cautions::of(&record.proposed),
        doubts: assumed::doubted(&view),
        remarks: record.remarks.clone(),
        choice: record.choice.name.clone(),
        hash: record.choice.sha256.clone(),
    };
    markup::resolve(&PRINTER.document(&page), |_| false)
}

fn verdict(view: &View, record: &ProposalRecord) -> String {
    let failed: Vec<String> =
        record.axes.iter().filter(|axis| !axis.admissible).map(|axis| axis.name.clone()).collect();
    let limits = view.record.machine.limits.iter().filter(|limit| limit.verdict == "fail");
    let limits: Vec<String> = limits.map(|limit| words::machine_limit(&limit.limit)).collect();
    let others = view.record.axes.iter().filter(|axis| axis.outcome != Outcome::Chosen);
    let others: Vec<String> = others.map(|axis| axis.name.clone()).filter(|name| !failed.contains(name)).collect();
    match (failed.as_slice(), limits.as_slice(), others.as_slice()) {
        ([], [], []) => "The proposal meets the brief.".into(),
        ([], [], others) if failed.is_empty() && !record.meets => {
            format!("The proposal keeps every rule, but the machine has no drive for {}.", words::list(others))
        }
        ([], limits, _) => {
            format!("The proposal keeps every rule, but the machine goes beyond {}.", words::list(limits))
        }
        (failed, [], _) => format!("The proposal does not meet the brief on {}.", words::list(failed)),
        (failed, limits, _) => format!(
            "The proposal does not meet the brief on {}, and the machine goes beyond {}.",
            words::list(failed),
            words::list(limits)
        ),
    }
}

/// One sentence an axis: what decides.
fn decision(view: &View, axis: &ProposedAxis) -> Named {
    let value = match &axis.drive {
        None => "nothing could be worked out.".into(),
        Some(drive) => match failing(drive).as_slice() {
            [] => match worst_binding(drive) {
                Some(finding) => format!(
                    "meets the brief; tightest: {}, {} of the limit.",
                    view.clause(finding),
                    figure::utilisation(finding.utilisation)
                ),
                None => "meets the brief.".into(),
            },
            [finding] => format!("does not meet the brief: {}.", view.clause(finding)),
            [finding, _] => format!("does not meet the brief: {}, and one more rule fails.", view.clause(finding)),
            [finding, rest @ ..] => {
                format!("does not meet the brief: {}, and {} more rules fail.", view.clause(finding), rest.len())
            }
        },
    };
    Named { name: axis.name.clone(), value }
}

fn of_axis(view: &View, axis: &ProposedAxis) -> Axis {
    let drive = axis.drive.as_ref();
    let told = |finding: &FindingRecord| Named {
        name: view.rule_title(&finding.rule),
        value: format!(
            "{}{}. What helps: {}",
            view.clause(finding),
            finding
                .utilisation
                .map_or(String::new(), |used| format!(", {} of the limit", figure::utilisation(Some(used)))),
            view.rule(&finding.rule).map_or(String::new(), |rule| super::view::one_line(&rule.remedy))
        ),
    };
    let unmet = |finding: &&FindingRecord| finding.obligation == "should" && finding.verdict != "pass";
    let findings = drive.map(worst_first).unwrap_or_default();
    let part = |kind: &str| drive.and_then(|drive| drive.components.iter().find(|part| part.role == kind));
    let own: Vec<String> = axis.own.iter().map(|kind| words::role(kind)).collect();
    let beside = drive.zip(axis.recommended.as_ref()).map_or(Vec::new(), |(own, other)| beside(view, own, other));
    Axis {
        name: axis.name.clone(),
        drive: drive.map_or(figure::NOT_KNOWN.into(), |drive| view.drive(drive)),
        word: if axis.admissible { "✔ meets the brief" } else { "✘ fails" },
        purchase: view.money(drive.map(|drive| drive.cost.purchase)),
        whole_life: view.money(drive.map(|drive| drive.cost.whole_life)),
        rank: rank(axis),
        given: axis
            .given
            .iter()
            .map(|part| Named { name: words::role(&part.kind), value: part.designation.clone() })
            .collect(),
        own: if own.is_empty() {
            String::new()
        } else {
            format!("The data of {} stand in the file with the choice.", words::list(&own))
        },
        open: axis
            .left_open
            .iter()
            .filter_map(|kind| Some(Named { name: words::role(kind), value: part(kind)?.designation.clone() }))
            .collect(),
        failing: drive.map(failing).unwrap_or_default().into_iter().map(told).collect(),
        advice: findings.iter().copied().filter(unmet).map(told).collect(),
        recommended: axis.recommended.as_ref().map_or(String::new(), |drive| view.drive(drive)),
        trade: trade(axis),
        beside,
        margins: axis.margins.iter().map(|margin| margin_row(view, margin)).collect(),
        findings: findings.into_iter().map(|finding| finding_line(view, finding)).collect(),
    }
}

fn rank(axis: &ProposedAxis) -> String {
    match axis.better {
        None => "not admissible".into(),
        Some(0) => format!("none of {} is better", figure::count(axis.admissible_drives)),
        Some(better) => {
            format!("{} of {} are better", figure::count(better), figure::count(axis.admissible_drives))
        }
    }
}

/// The values that both drives have, and how far the proposal is from the recommendation.
fn beside(view: &View, own: &CandidateRecord, other: &CandidateRecord) -> Vec<Beside> {
    let money = |what: &str, of: fn(&CandidateRecord) -> f64| Beside {
        what: what.into(),
        proposed: view.money(Some(of(own))),
        recommended: view.money(Some(of(other))),
        difference: figure::change(Some(of(own)), Some(of(other))),
    };
    let mut rows = vec![
        money("price to buy and fit", |drive| drive.cost.purchase),
        money("over its life", |drive| drive.cost.whole_life),
    ];
    rows.extend(BESIDE.iter().filter_map(|(id, what, _)| {
        Some(Beside {
            what: (*what).into(),
            proposed: told(view, own, id)?,
            recommended: told(view, other, id)?,
            difference: figure::change(own.value(id), other.value(id)),
        })
    }));
    let tightest = |drive: &CandidateRecord| {
        worst_binding(drive).map_or(figure::NOT_KNOWN.into(), |finding| figure::utilisation(finding.utilisation))
    };
    rows.push(Beside {
        what: "tightest binding rule".into(),
        proposed: tightest(own),
        recommended: tightest(other),
        difference: String::new(),
    });
    rows.push(Beside {
        what: "measure of the choice, less is better".into(),
        proposed: figure::figure(own.merit, 5),
        recommended: figure::figure(other.merit, 5),
        difference: figure::change(Some(own.merit), Some(other.merit)),
    });
    rows
}

/// A value of a drive, money in whole units.
fn told(view: &View, drive: &CandidateRecord, id: &str) -> Option<String> {
    let line = drive.line(id).filter(|line| line.value.is_some())?;
    Some(if line.unit.is_empty() { view.money(line.value) } else { view.quantity(line.value, &line.unit) })
}

/// What the proposal gives away and what it buys, in a sentence.
fn trade(axis: &ProposedAxis) -> String {
    let Some((own, other)) = axis.drive.as_ref().zip(axis.recommended.as_ref()) else {
        return "Nothing is recommended for this axis to hold it against.".into();
    };
    if own.family == other.family && own.parameters == other.parameters && own.components == other.components {
        return "It is the drive that is recommended.".into();
    }
    let mut compared = vec![
        ("price to buy", own.cost.purchase, other.cost.purchase, true),
        ("cost over its life", own.cost.whole_life, other.cost.whole_life, true),
    ];
    let values = BESIDE.iter().filter_map(|(id, what, less)| Some((*what, own.value(id)?, other.value(id)?, *less)));
    compared.extend(values);
    let differs = |own: f64, other: f64| (own / other - 1.0).abs() > ALIKE;
    let told = |better: bool| -> Vec<String> {
        let of =
            compared.iter().filter(|(_, own, other, less)| differs(*own, *other) && ((own < other) == *less) == better);
        of.map(|(what, own, other, _)| format!("{what} {}", figure::change(Some(*own), Some(*other)))).collect()
    };
    let (buys, gives) = (told(true), told(false));
    let none =
        |list: &[String]| if list.is_empty() { "nothing that is compared here".into() } else { words::list(list) };
    format!("What it buys: {}. What it gives away: {}.", none(&buys), none(&gives))
}

fn margin_row(view: &View, margin: &MarginRecord) -> MarginRow {
    let value = |value: f64| figure::quantity(Some(value), &margin.unit, view.units, 4);
    let open = margin.breaks.is_none();
    MarginRow {
        requirement: words::spaced(&margin.requirement),
        now: value(margin.now),
        holds: if open { format!("{}, not tried further", value(margin.holds_to)) } else { value(margin.holds_to) },
        room: figure::change(Some(margin.holds_to), Some(margin.now)),
        breaks: match &margin.breaks {
            Some(rule) => view.rule_title(rule),
            None => "–".into(),
        },
    }
}

fn machine(view: &View, record: &ProposalRecord) -> Vec<MachineRow> {
    let (own, other) = (&view.record.machine, &record.recommended_machine);
    let limit = |key: &str| {
        own.limits.iter().find(|limit| limit.limit == key).map_or("–".to_string(), |limit| {
            let told = match limit.unit.as_str() {
                "" => view.money(Some(limit.allowed)),
                unit => view.quantity(Some(limit.allowed), unit),
            };
            format!("{told}{}", if limit.verdict == "fail" { ", ✘ exceeded" } else { ", ✔ kept" })
        })
    };
    let amount = |amount: &Option<Amount>| {
        amount.as_ref().map_or(figure::NOT_KNOWN.into(), |amount| view.quantity(amount.value, &amount.unit))
    };
    let models = |count: Option<u32>| count.map_or(figure::NOT_KNOWN.into(), |count| count.to_string());
    let row = |what: &str, key: &str, proposed: String, recommended: String| MachineRow {
        what: what.into(),
        proposed,
        recommended,
        limit: limit(key),
    };
    if own.purchase.is_none() {
        return Vec::new();
    }
    let mut rows = vec![
        row("price to buy all drives", "purchase", view.money(own.purchase), view.money(other.purchase)),
        row("over its life", "", view.money(own.whole_life_cost), view.money(other.whole_life_cost)),
        row("error at the tool", "tool-point-error", amount(&own.tool_point_error), amount(&other.tool_point_error)),
        row("growth with temperature on top", "", amount(&own.tool_point_growth), amount(&other.tool_point_growth)),
        row("largest power", "supply-power", amount(&own.peak_power), amount(&other.peak_power)),
    ];
    rows.push(row("motor models", "motor-models", models(own.motor_models), models(other.motor_models)));
    rows.push(row("gearbox models", "gearbox-models", models(own.gearbox_models), models(other.gearbox_models)));
    rows
}
