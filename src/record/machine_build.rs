//! The machine and the rules as they stand in the record.

use super::build::{Parts, objective_words};
use super::candidate_build::Named;
use super::*;
use crate::characteristic;
use crate::rule::{self, Limit, Obligation, Rule, Rulebook};
use crate::search::Attributes;
use crate::select::{Needs, Status, needs};
use crate::units::{Dimension, Measure, Unit, print_rounded};

fn unit(dimension: Dimension, name: &str) -> &'static Unit {
    dimension.units().find(|unit| unit.name == name).expect("the units of machine limits are in the table of units")
}

fn amount(value: f64, dimension: Dimension, name: &str) -> Amount {
    let value = value / unit(dimension, name).si;
    Amount { value: value.is_finite().then_some(value), unit: name.into() }
}

/// An error at the tool, given in metres.
pub(super) fn error(metres: f64) -> Amount {
    amount(metres, Dimension::Length, "mm")
}

/// The unit in which a limit of the machine is told, and how many SI units it holds.
pub(super) fn limit_unit(key: &str) -> (&'static str, f64) {
    let of = |dimension, name| (name, unit(dimension, name).si);
    match key {
        "purchase" => ("", 1.0),
        "tool-point-error" => of(Dimension::Length, "mm"),
        "supply-power" => of(Dimension::Power, "kW"),
        "lead-time" => of(Dimension::Time, "weeks"),
        _ => ("1", 1.0),
    }
}

/// The machine. `chosen` are the attributes of the chosen drives at the mass that they really carry, `growths`
/// their growth with temperature, m.
pub fn machine(
    parts: &Parts<'_>,
    chosen: &[Attributes],
    growths: &[f64],
    tool_point: Vec<DirectionRecord>,
) -> MachineRecord {
    let picks = parts.choice.map(|choice| choice.picks.clone()).unwrap_or_default();
    let have = !picks.is_empty();
    let mut reached: Option<Needs> = None;
    if have {
        let mut needs = needs(parts.machine, &picks);
        let sum = |of: fn(&Attributes) -> f64| -> f64 { chosen.iter().map(of).sum() };
        needs.purchase = sum(|attributes| attributes.purchase);
        needs.whole_life = sum(|attributes| attributes.whole_life);
        needs.power = sum(|attributes| attributes.power);
        needs.error = sum(|attributes| attributes.error * attributes.error).sqrt();
        reached = Some(needs);
    } else if parts.machine.offers.iter().all(|offer| !offer.is_empty()) {
        // what the machine would need with the best drive of every axis, so that the reader sees which limit stands in the way
        reached = Some(needs(parts.machine, &vec![0; parts.machine.offers.len()]));
    }
    let chosen = reached.as_ref().filter(|_| have);
    let finite = |value: f64| value.is_finite().then_some(value);
    let (conflict, relaxations) = super::obstacles_build::of_machine(parts);
    MachineRecord {
        next_best: super::alternatives_build::next_best(parts),
        conflict,
        relaxations,
        purchase: chosen.and_then(|needs| finite(needs.purchase)),
        whole_life_cost: chosen.and_then(|needs| finite(needs.whole_life)),
        tool_point_error: chosen.map(|needs| amount(needs.error, Dimension::Length, "mm")),
        tool_point_growth: chosen.map(|_| {
            let squares: f64 = growths.iter().map(|growth| growth * growth).sum();
            amount(squares.sqrt(), Dimension::Length, "mm")
        }),
        tool_point,
        peak_power: chosen.map(|needs| amount(needs.power, Dimension::Power, "kW")),
        motor_models: chosen.map(|needs| needs.motors),
        gearbox_models: chosen.map(|needs| needs.gearboxes),
        lead_time: chosen.map(|needs| amount(needs.lead_time, Dimension::Time, "weeks")),
        limits: limits(parts, reached.as_ref()),
        objective: objective_words(parts.brief),
        solver: solver(parts),
    }
}

fn solver(parts: &Parts<'_>) -> SolverRecord {
    let columns = parts.machine.offers.iter().map(|offer| offer.len() as u64).sum();
    match parts.choice {
        None => {
            SolverRecord { status: "not-run".into(), objective: None, bound: None, columns, cuts: 0, confirmed: false }
        }
        Some(choice) => SolverRecord {
            status: match choice.status {
                Status::Optimal => "optimal".into(),
                Status::Infeasible => "infeasible".into(),
                Status::NotProven => "not-proven".into(),
            },
            objective: choice.objective,
            bound: choice.bound,
            columns: choice.columns,
            cuts: choice.cuts,
            confirmed: choice.confirmed,
        },
    }
}

fn limits(parts: &Parts<'_>, reached: Option<&Needs>) -> Vec<MachineLimit> {
    let limits = &parts.brief.limits;
    let mut list = Vec::new();
    let mut push = |key: &str, value: Option<f64>, allowed: Option<f64>, unit_name: &str, si: f64| {
        if let Some(allowed) = allowed {
            let verdict = match value {
                None => "not-evaluated",
                Some(value) if value <= allowed * (1.0 + 1e-9) => "pass",
                Some(_) => "fail",
            };
            list.push(MachineLimit {
                limit: key.into(),
                reached: value.filter(|value| value.is_finite()).map(|value| value / si),
                allowed: allowed / si,
                unit: unit_name.into(),
                verdict: verdict.into(),
            });
        }
    };
    let millimetre = unit(Dimension::Length, "mm").si;
    let kilowatt = unit(Dimension::Power, "kW").si;
    let week = unit(Dimension::Time, "weeks").si;
    push("purchase", reached.map(|needs| needs.purchase), limits.purchase.map(|limit| limit.0), "", 1.0);
    let error = limits.tool_point_error.map(|limit| limit.si());
    push("tool-point-error", reached.map(|needs| needs.error), error, "mm", millimetre);
    let power = limits.supply_power.map(|limit| limit.si());
    push("supply-power", reached.map(|needs| needs.power), power, "kW", kilowatt);
    let models = |count: Option<u32>| count.map(f64::from);
    push("motor-models", reached.map(|needs| f64::from(needs.motors)), models(limits.motor_models), "1", 1.0);
    push("gearbox-models", reached.map(|needs| f64::from(needs.gearboxes)), models(limits.gearbox_models), "1", 1.0);
    let lead_time = limits.lead_time.map(|limit| limit.si());
    push("lead-time", reached.map(|needs| needs.lead_time), lead_time, "weeks", week);
    list
}

/// The rules that were judged on any drive of the record.
pub fn rules(rulebook: &Rulebook, named: &Named) -> Vec<RuleRecord> {
    rulebook
        .rules
        .iter()
        .filter(|rule| named.rules.contains(&rule.id))
        .map(|rule| RuleRecord {
            id: rule.id.clone(),
            title: rule.title.clone(),
            obligation: match rule.obligation {
                Obligation::Shall => "shall".into(),
                Obligation::Should => "should".into(),
            },
            limit: limit_words(rule),
            reason: rule.reason.trim().into(),
            remedy: rule.remedy.trim().into(),
            sources: rule
                .sources
                .iter()
                .map(|source| SourceRecord { standing: source.standing.key().into(), citation: source.note.clone() })
                .collect(),
        })
        .collect()
}

/// What is not as it is built in.
pub fn own_rules(rulebook: &Rulebook) -> Vec<OwnRuleRecord> {
    let aspect =
        |aspect: rule::Aspect| AspectRecord { what: aspect.what.into(), built_in: aspect.built_in, own: aspect.own };
    let one = |own: rule::OwnRule| OwnRuleRecord {
        what: own.what.into(),
        id: own.id,
        file: own.file,
        by: own.by,
        added: own.added,
        differs: own.differs.into_iter().map(aspect).collect(),
    };
    rule::own(rulebook).into_iter().map(one).collect()
}

/// A limit in words: "screw-speed ≤ 0.8 · whip-speed".
fn limit_words(rule: &Rule) -> String {
    let demand = characteristic::id(rule.demand);
    let limit = match rule.limit {
        Limit::Of(slot) if rule.factor == 1.0 => characteristic::id(slot),
        Limit::Of(slot) => format!("{} · {}", rule.factor, characteristic::id(slot)),
        Limit::Value(value) => print_rounded(value, characteristic::about(rule.demand).0.display_unit(), 6),
    };
    format!("{demand} {} {limit}", rule.sense.sign())
}
