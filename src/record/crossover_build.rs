//! From what a crossover found to its record.
//!
//! Method: the drive of every node is worked out again for its sizes and costs. Limits: none of its own.

use super::candidate_build::parameter;
use super::crossover::*;
use super::{DecisionRecord, Parameter, RECORD_VERSION};
use crate::brief::Brief;
use crate::drive::{Demand, considered};
use crate::inquiry::{Cause, Change, Crossover, Requirement, Span, Sweep};
use crate::search::{Found, work_out};
use crate::units::{Mass, Measure, significant};
use std::collections::BTreeSet;

/// The record of a sweep; `decision` is that of the brief as it stands.
pub fn crossover(sweep: &Sweep<'_>, found: &Crossover, decision: &DecisionRecord) -> CrossoverRecord {
    let brief = sweep.brief;
    let build = Build { sweep };
    let turned = |x: f64, y: Option<f64>| build.turned(x, y);
    let mut nodes = Vec::new();
    let mut boundaries = Vec::new();
    for (index, row) in found.rows.iter().enumerate() {
        let y = found.up.get(index).copied();
        for ((&x, best), &among_known) in found.across.iter().zip(&row.best).zip(&row.among_known) {
            let node = build.node(&turned(x, y), Some(x), y, best.as_ref());
            nodes.push(NodeRecord { among_known, ..node });
        }
        boundaries.extend(row.changes.iter().map(|change| build.boundary(change, y)));
    }
    let curves = found.rows.first().filter(|_| found.up.is_empty()).map_or(Vec::new(), |row| {
        let curve = |curve: &crate::inquiry::Curve| CurveRecord {
            family: curve.family.into(),
            nodes: found
                .across
                .iter()
                .zip(&curve.best)
                .map(|(&x, best)| build.node(&turned(x, None), Some(x), None, best.as_ref()))
                .collect(),
        };
        row.curves.iter().map(curve).collect()
    });
    let axis = &brief.axes[sweep.axis];
    let now = |span: Span| span.requirement.of(brief, sweep.axis);
    let present = build.node(brief, now(sweep.over), sweep.and.and_then(now), found.present.as_ref());
    let rules: BTreeSet<&str> = boundaries.iter().filter_map(|boundary| boundary.rule.as_deref()).collect();
    let rulebook = sweep.setting.rulebook;
    let titles = rules.into_iter().filter_map(|id| rulebook.find(id));
    let titles = titles.map(|rule| RuleTitle { id: rule.id.clone(), title: rule.title.clone() }).collect();
    let recommended = decision.axes.iter().find(|record| record.name == axis.name);
    let recommended = recommended.and_then(|record| record.chosen.as_ref()).map(|drive| drive.family.clone());
    let among_known = nodes.iter().filter(|node| node.among_known).count();
    let resolution = Resolution {
        steps: sweep.steps as u64,
        boundary: found.narrow,
        nodes_in_full: (nodes.len() - among_known) as u64,
        nodes_among_known: among_known as u64,
    };
    let anything = nodes.iter().any(|node| node.family.is_some());
    CrossoverRecord {
        record: RECORD_VERSION.into(),
        tool: decision.tool.clone(),
        machine_name: decision.machine_name.clone(),
        currency: decision.currency.clone(),
        inputs: decision.inputs.clone(),
        outcome: if anything { "found" } else { "nothing-admissible" }.into(),
        axis: axis.name.clone(),
        families: considered(brief, sweep.axis).into_iter().map(String::from).collect(),
        objective: sweep.setting.merit.words(),
        cost_alone: !brief.prefer.stated || brief.prefer.accuracy + brief.prefer.stiffness + brief.prefer.upkeep == 0.0,
        carried_mass: sweep.carried,
        assumptions: assumptions(sweep, recommended.is_some()),
        recommended,
        over: build.span(sweep.over, &found.across),
        and: sweep.and.map(|and| build.span(and, &found.up)),
        present,
        nodes,
        curves,
        boundaries,
        resolution,
        rules: titles,
    }
}

struct Build<'b> {
    sweep: &'b Sweep<'b>,
}

impl Build<'_> {
    fn turned(&self, x: f64, y: Option<f64>) -> Brief {
        let sweep = self.sweep;
        let brief = sweep.over.requirement.with(sweep.brief, sweep.axis, x);
        match (sweep.and, y) {
            (Some(and), Some(y)) => and.requirement.with(&brief, sweep.axis, y),
            _ => brief,
        }
    }

    fn span(&self, span: Span, values: &[f64]) -> SpanRecord {
        SpanRecord {
            requirement: span.requirement.key().into(),
            unit: unit(span.requirement).into(),
            from: span.told(span.from),
            to: span.told(span.to),
            now: span.requirement.of(self.sweep.brief, self.sweep.axis).map(|now| span.told(now)),
            spacing: if span.geometric() { "geometric" } else { "even" }.into(),
            values: values.iter().map(|&value| span.told(value)).collect(),
        }
    }

    fn node(&self, brief: &Brief, x: Option<f64>, y: Option<f64>, best: Option<&Found>) -> NodeRecord {
        let sweep = self.sweep;
        let worked = best.and_then(|found| {
            let demand = Demand::new(brief, sweep.axis, Mass::of_si(sweep.carried));
            work_out(found.family, &found.path, &demand, sweep.setting)
        });
        let sizes: Vec<Parameter> =
            worked.as_ref().map_or(Vec::new(), |worked| worked.sizes.iter().map(parameter).collect());
        let told = |value: fn(&crate::search::Attributes) -> f64| {
            worked.as_ref().map_or(f64::NAN, |worked| value(&worked.attributes))
        };
        NodeRecord {
            x: x.map(|x| sweep.over.told(x)),
            y: y.zip(sweep.and).map(|(y, and)| and.told(y)),
            family: best.map(|found| found.family.into()),
            parameters: sizes,
            purchase: told(|attributes| attributes.purchase),
            whole_life_cost: told(|attributes| attributes.whole_life),
            merit: told(|attributes| attributes.merit),
            among_known: false,
        }
    }

    fn boundary(&self, change: &Change, y: Option<f64>) -> BoundaryRecord {
        let over = self.sweep.over;
        let family = |found: &Option<Found>| found.as_ref().map(|found| String::from(found.family));
        let (cause, rule) = match &change.cause {
            Cause::Leaves(rule) => ("leaves", Some(rule.clone())),
            Cause::Enters(rule) => ("enters", Some(rule.clone())),
            Cause::Breaks(rule) => ("breaks", Some(rule.clone())),
            Cause::Merit => ("merit", None),
        };
        BoundaryRecord {
            y: y.zip(self.sweep.and).map(|(y, and)| and.told(y)),
            from: family(&change.from),
            to: family(&change.to),
            at: over.told(over.middle(change.low, change.high)),
            low: over.told(change.low),
            high: over.told(change.high),
            cause: cause.into(),
            rule,
        }
    }
}

/// The unit in which a requirement is told.
fn unit(requirement: Requirement) -> &'static str {
    match (requirement.unit(), requirement) {
        (Some((_, unit)), _) => unit.name,
        (None, Requirement::YearsInService) => "years",
        (None, _) => "",
    }
}

/// What a requirement takes with it when it is turned.
fn follows(requirement: Requirement) -> Option<&'static str> {
    match requirement {
        Requirement::Travel => {
            Some("Strokes and distances over the whole travel follow it; shorter ones stay within it.")
        }
        Requirement::Speed => {
            Some("Work at full speed follows it; slower work stays slower, and the cutting speed stays within it.")
        }
        Requirement::Acceleration => Some("Moves at full acceleration follow it; the jerk stays as it is."),
        Requirement::CuttingForce => {
            Some("Work with the full cutting force follows it; work with less stays within it.")
        }
        Requirement::YearsInService | Requirement::TemperatureSwing => {
            Some("It is one of the whole machine; it is turned here for this axis.")
        }
        Requirement::MovedMass
        | Requirement::Accuracy
        | Requirement::SectionAccuracy
        | Requirement::Repeatability
        | Requirement::Reversal
        | Requirement::Purchase => None,
    }
}

fn assumptions(sweep: &Sweep<'_>, recommended: bool) -> Vec<String> {
    let axis = &sweep.brief.axes[sweep.axis];
    let mut told = Vec::new();
    if sweep.brief.axes.len() > 1 {
        let kept = if recommended {
            "The other axes stay as recommended for the brief as it stands."
        } else {
            "No machine is recommended for the brief as it stands, so the other axes are taken at the most that they may weigh."
        };
        told.push(kept.to_string());
    }
    if !axis.carries.is_empty() {
        told.push(format!("The axis carries {} kg everywhere.", significant(sweep.carried, 4)));
    }
    told.push(
        "The axis is decided alone: limits of the whole machine on price, power, error at the tool and number of models do \
         not count here; delivery time does."
            .into(),
    );
    for span in std::iter::once(sweep.over).chain(sweep.and) {
        if let Some(words) = follows(span.requirement) {
            told.push(words.into());
        }
    }
    told
}
