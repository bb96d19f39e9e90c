//! Part three: what the reviewer reads. Inputs, census, machine program, assumptions, rules, formulas, limits.

use super::alternatives::{self, Alternatives};
use super::assumed::assumed_value;
use super::figure;
use super::obstacles::{self, Obstacles};
use super::own_rules::{self, OwnRule};
use super::robustness::{self, Robustness};
use super::turning;
use super::view::{View, one_line};
use super::words;
use crate::record::*;
use serde::Serialize;

/// All that the reviewer's template needs.
#[derive(Serialize)]
pub struct Reviewer {
    record: String,
    tool: String,
    inputs: Vec<Input>,
    census: Vec<Census>,
    undominated: Vec<String>,
    objective: String,
    solver: Vec<Named>,
    limits: Vec<Limit>,
    turning: Vec<turning::Row>,
    turning_scope: Option<String>,
    alternatives: Alternatives,
    obstacles: Obstacles,
    robustness: Option<Robustness>,
    assumptions: Vec<Assumption>,
    waivers: Vec<Waiver>,
    own_rules: Vec<OwnRule>,
    rules: Vec<Rule>,
    formulas: Vec<Formula>,
    not_calculated: &'static [&'static str],
}

#[derive(Serialize)]
struct Input {
    role: String,
    name: String,
    sha256: String,
}

#[derive(Serialize)]
struct Census {
    axis: String,
    family: String,
    configurations: String,
    admissible: String,
    excluded: String,
}

#[derive(Serialize)]
struct Named {
    name: &'static str,
    value: String,
}

#[derive(Serialize)]
struct Limit {
    limit: String,
    reached: String,
    allowed: String,
    verdict: &'static str,
}

#[derive(Serialize)]
struct Assumption {
    key: String,
    value: String,
    source: String,
}

#[derive(Serialize)]
struct Waiver {
    rule: String,
    axis: String,
    reason: String,
    by: String,
    until: String,
    used: &'static str,
}

#[derive(Serialize)]
struct Rule {
    id: String,
    title: String,
    must: &'static str,
    limit: String,
    reason: String,
    sources: String,
}

#[derive(Serialize)]
struct Formula {
    id: String,
    title: String,
    equation: String,
    validity: String,
    sources: String,
}

/// What this version does not calculate.
const NOT_CALCULATED: &[&str] = &[
    "Jerk at the peaks: means and heating follow the ramps of jerk, but the largest force and torque are those of full \
     acceleration at full speed.",
    "Process damping, chatter and the dynamics of the cutting force: it is constant over a phase.",
    "Compliance, weight and vibration of bed, beams and guides: all stiffness here is that of the drive.",
    "Straightness of the guides and squareness of the axes; tilt of the slides unless the brief states it.",
    "The course of warming over time: temperatures are steady and at their worst.",
    "The electrical network and what several axes exchange over a common bus; cable chains unless the brief states them.",
    "Safety functions, performance levels, crashes into a rigid stop, and stopping distances but those of a falling load, \
     of an emergency stop and of a buffer.",
    "Critical speeds of a standing screw above the first; split pinions; a bias of two pinions that fades with the load.",
    "Sampling, notch filters and higher modes in the position loop; contours other than the circle of the brief.",
    "Prices are estimates of the generic catalogue, not offers.",
];

/// Collects part three.
pub fn collect(view: &View) -> Reviewer {
    let record = view.record;
    let solver = &record.machine.solver;
    let number = |value: Option<f64>| value.map_or_else(|| "none".into(), |value| figure::figure(value, 7));
    Reviewer {
        turning: turning::rows(view),
        turning_scope: turning::scope(view),
        record: record.record.clone(),
        tool: record.tool.clone(),
        inputs: record
            .inputs
            .iter()
            .map(|file| Input {
                role: words::input_role(&file.role),
                name: file.name.clone(),
                sha256: file.sha256.clone(),
            })
            .collect(),
        census: record.axes.iter().flat_map(|axis| census(view, axis)).collect(),
        undominated: record
            .axes
            .iter()
            .map(|axis| {
                let drives = words::several(axis.undominated, "drive", "drives");
                let carried = match axis.carried_mass.axes.is_empty() {
                    true => String::new(),
                    false => format!(
                        "; drives are weighed, and the census is taken, at a carried mass of {}{}",
                        view.quantity(Some(axis.carried_mass.census()), "kg"),
                        why_there(view, &axis.carried_mass)
                    ),
                };
                format!("Axis {}: {drives} that nothing else beats in every respect at once{carried}.", axis.name)
            })
            .collect(),
        objective: view.objective(),
        solver: vec![
            Named { name: "status", value: words::solver_status(&solver.status).into() },
            Named { name: "objective reached", value: number(solver.objective) },
            Named { name: "bound: no machine does better than", value: number(solver.bound) },
            Named { name: "drives offered, all axes", value: figure::count(solver.columns) },
            Named { name: "answers that direct evaluation refused", value: figure::count(solver.cuts) },
            Named { name: "found by the solver of the integer program too", value: confirmed(solver).into() },
        ],
        limits: record.machine.limits.iter().map(|limit| limit_line(view, limit)).collect(),
        alternatives: alternatives::collect(view),
        obstacles: obstacles::collect(view),
        robustness: robustness::collect(view),
        assumptions: record
            .assumptions
            .iter()
            .map(|assumed| Assumption {
                key: assumed.key.clone(),
                value: assumed_value(view, assumed),
                source: one_line(&assumed.source),
            })
            .collect(),
        waivers: record.waivers.iter().map(|waiver| waiver_line(view, waiver)).collect(),
        own_rules: own_rules::rows(view),
        rules: record.rules.iter().map(rule_line).collect(),
        formulas: record.formulas.iter().map(formula_line).collect(),
        not_calculated: NOT_CALCULATED,
    }
}

fn confirmed(solver: &SolverRecord) -> &'static str {
    match (solver.status.as_str(), solver.confirmed) {
        (_, true) => "yes",
        ("optimal" | "infeasible", false) => {
            "not asked: too many drives may stay; the search of the tool proves it alone"
        }
        _ => "no",
    }
}

fn census(view: &View, axis: &AxisRecord) -> Vec<Census> {
    let line = |family: &FamilyRecord| {
        let mut excluded: Vec<&Exclusion> = family.excluded_by.iter().collect();
        excluded.sort_by(|first, second| {
            second.configurations.cmp(&first.configurations).then(first.rule.cmp(&second.rule))
        });
        let excluded = excluded
            .iter()
            .map(|exclusion| {
                format!("{} {}", figure::count(exclusion.configurations), view.rule_title(&exclusion.rule))
            })
            .collect::<Vec<_>>();
        Census {
            axis: axis.name.clone(),
            family: words::family(&family.family),
            configurations: figure::count(family.configurations),
            admissible: figure::count(family.admissible),
            excluded: if excluded.is_empty() { "none".into() } else { excluded.join("; ") },
        }
    };
    axis.families.iter().map(line).collect()
}

fn limit_line(view: &View, limit: &MachineLimit) -> Limit {
    let (reached, allowed) = match limit.unit.as_str() {
        "" => (view.money(limit.reached), view.money(Some(limit.allowed))),
        unit => figure::pair(limit.reached, Some(limit.allowed), unit, view.units),
    };
    Limit {
        limit: words::machine_limit(&limit.limit),
        reached,
        allowed,
        verdict: words::verdict(&limit.verdict, "shall"),
    }
}

fn waiver_line(view: &View, waiver: &WaiverRecord) -> Waiver {
    Waiver {
        rule: view.rule_title(&waiver.rule),
        axis: waiver.axis.clone().unwrap_or_else(|| "all".into()),
        reason: one_line(&waiver.reason),
        by: waiver.by.clone(),
        until: waiver.until.clone().unwrap_or_else(|| "no date".into()),
        used: if waiver.used { "used" } else { "△ not used: nothing needs it, take it out" },
    }
}

fn sources(sources: &[SourceRecord]) -> String {
    let source = |source: &SourceRecord| {
        let standing = words::standing(&source.standing);
        let citation = one_line(&source.citation);
        match citation.is_empty() || citation == standing {
            true => standing,
            false => format!("{citation} ({standing})"),
        }
    };
    sources.iter().map(source).collect::<Vec<_>>().join("; ")
}

fn rule_line(rule: &RuleRecord) -> Rule {
    Rule {
        id: rule.id.clone(),
        title: one_line(&rule.title),
        must: words::obligation(&rule.obligation),
        limit: rule.limit.clone(),
        reason: one_line(&rule.reason),
        sources: sources(&rule.sources),
    }
}

fn formula_line(formula: &FormulaRecord) -> Formula {
    Formula {
        id: formula.id.clone(),
        title: one_line(&formula.title),
        equation: formula.equation.clone(),
        validity: one_line(&formula.validity),
        sources: sources(&formula.sources),
    }
}

/// Why drives are weighed at this mass.
fn why_there(view: &View, carried: &CarriedMass) -> String {
    match carried.chosen {
        None if carried.census() == carried.most => ", the most that it may have to carry".into(),
        None => ", with drives that the axes it carries would have".into(),
        Some(_) if carried.settled() => ", as in the machine chosen".into(),
        Some(chosen) => format!(
            "; the machine chosen so carries {}, and weighing it anew did not settle",
            view.quantity(Some(chosen), "kg")
        ),
    }
}
