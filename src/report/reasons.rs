//! Why this drive and why not the others: sentences that end in the number that decided.
//!
//! Method: a family without an admissible configuration is told by the rule that rules most of them out,
//! with the best figure that any of them reaches; if that figure would pass, by the worst failing rule of
//! the one that misses by least. A family that has admissible configurations and lost is told by its cost.

use super::figure;
use super::view::{View, worst_binding, worst_failing};
use super::words;
use crate::record::*;
use serde::Serialize;

/// Why an axis got its drive, and why not the others.
#[derive(Serialize)]
pub struct AxisWhy {
    axis: String,
    winner: String,
    others: Vec<Other>,
}

#[derive(Serialize)]
struct Other {
    family: String,
    text: String,
}

/// How an axis without an admissible drive misses, family by family.
#[derive(Serialize)]
pub struct AxisMiss {
    axis: String,
    families: Vec<Miss>,
}

#[derive(Serialize)]
struct Miss {
    family: String,
    drive: String,
    rule: String,
    demand: String,
    limit: String,
    utilisation: String,
    remedy: String,
}

/// A family that did not give the drive of the axis.
fn others<'a>(axis: &'a AxisRecord, drive: &CandidateRecord) -> impl Iterator<Item = &'a FamilyRecord> {
    let chosen = drive.family.clone();
    axis.families.iter().filter(move |family| family.family != chosen)
}

/// The finding that tells best why no configuration of a family is admissible, and whether it is the best of all.
fn ruling_out(family: &FamilyRecord) -> Option<(&FindingRecord, bool)> {
    let chief = family.best_on_chief_rule.as_ref().filter(|finding| finding.verdict != "pass");
    chief
        .map(|finding| (finding, true))
        .or_else(|| family.nearest.as_ref().and_then(worst_failing).map(|finding| (finding, false)))
}

/// The one reason that decided for a drive.
pub fn decided(view: &View, axis: &AxisRecord, drive: &CandidateRecord) -> String {
    let rivals: Vec<(&FamilyRecord, &CandidateRecord)> =
        others(axis, drive).filter_map(|family| family.best.as_ref().map(|best| (family, best))).collect();
    let cheapest = rivals.iter().min_by(|first, second| first.1.cost.whole_life.total_cmp(&second.1.cost.whole_life));
    if let Some((family, best)) = cheapest {
        let (own, rival) = (drive.cost.whole_life, best.cost.whole_life);
        let name = words::family(&family.family);
        let own_money = view.money(Some(own));
        let change = figure::change(Some(rival), Some(own));
        return if rival >= own {
            format!("It costs {own_money} over its life; a {name} costs {} ({change}).", view.money(Some(rival)))
        } else {
            format!(
                "A {name} alone would cost less over its life ({} against {own_money}); the whole machine decides: \
                 smallest {}.",
                view.money(Some(rival)),
                view.record.machine.objective
            )
        };
    }
    let out = others(axis, drive).filter(|family| family.configurations > 0);
    let closest = out.filter_map(|family| ruling_out(family).map(|(finding, best)| (family, finding, best))).min_by(
        |first, second| {
            let miss =
                |finding: &FindingRecord| finding.utilisation.filter(|value| value.is_finite()).unwrap_or(f64::MAX);
            miss(first.1).total_cmp(&miss(second.1))
        },
    );
    match closest {
        Some((family, finding, _)) => {
            format!("A {} is out: {}.", words::family(&family.family), view.clause(finding))
        }
        None => format!(
            "It costs {} over its life, and no other family was considered.",
            view.money(Some(drive.cost.whole_life))
        ),
    }
}

/// In one sentence, what stands in the way of an axis without an admissible drive.
pub fn blocked(view: &View, axis: &AxisRecord) -> String {
    let nearest = axis.families.iter().filter_map(|family| {
        let finding = family.nearest.as_ref().and_then(worst_failing)?;
        Some((family, finding, finding.utilisation.filter(|value| value.is_finite()).unwrap_or(f64::MAX)))
    });
    match nearest.min_by(|first, second| first.2.total_cmp(&second.2)) {
        Some((family, finding, _)) => format!(
            "Nearest is a {}: {} ({}).",
            words::family(&family.family),
            view.clause(finding),
            view.rule_title(&finding.rule)
        ),
        None => "The catalogue gives no configuration that could be judged.".into(),
    }
}

/// Why an axis got its drive, and why not the others.
pub fn why(view: &View, axis: &AxisRecord) -> AxisWhy {
    let Some(drive) = &axis.chosen else {
        return AxisWhy { axis: axis.name.clone(), winner: String::new(), others: Vec::new() };
    };
    AxisWhy {
        axis: axis.name.clone(),
        winner: winner(view, axis, drive),
        others: others(axis, drive)
            .map(|family| Other {
                family: words::sentence(&words::family(&family.family)),
                text: why_not(view, family, drive),
            })
            .collect(),
    }
}

fn winner(view: &View, axis: &AxisRecord, drive: &CandidateRecord) -> String {
    let binding: Vec<&FindingRecord> = drive.findings.iter().filter(|finding| finding.obligation == "shall").collect();
    let passed = binding.iter().filter(|finding| finding.verdict == "pass").count();
    let waived = binding.iter().filter(|finding| finding.verdict == "waived").count();
    let mut text = match binding.len() - passed - waived {
        0 if waived == 0 => format!("It keeps all {passed} binding rules."),
        0 => format!("It keeps {passed} of {} binding rules; the brief sets {waived} aside.", binding.len()),
        missed => format!("It misses {missed} of {} binding rules.", binding.len()),
    };
    if let Some(finding) = worst_binding(drive) {
        let used = figure::utilisation(finding.utilisation);
        text += &format!(" The tightest uses {used} of its limit: {}.", view.clause(finding));
    }
    let cost = view.money(Some(drive.cost.whole_life));
    text += &format!(" It costs {} to buy and {cost} over its life.", view.money(Some(drive.cost.purchase)));
    let own = axis.families.iter().find(|family| family.family == drive.family);
    let best = own
        .and_then(|family| family.best.as_ref())
        .filter(|best| best.cost.whole_life < drive.cost.whole_life * (1.0 - 1e-9));
    if let Some(best) = best {
        text += &format!(
            " The cheapest of its kind for this axis alone costs {}; the whole machine decides: smallest {}.",
            view.money(Some(best.cost.whole_life)),
            view.record.machine.objective
        );
    }
    text
}

fn why_not(view: &View, family: &FamilyRecord, drive: &CandidateRecord) -> String {
    let considered = words::several(family.configurations, "configuration", "configurations");
    if family.configurations == 0 {
        return "not considered: the brief does not admit it, or the catalogue gives no configuration.".into();
    }
    if let Some(best) = family.best.as_ref().filter(|_| family.admissible > 0) {
        let (own, rival) = (drive.cost.whole_life, best.cost.whole_life);
        let verb = if family.admissible == 1 { "is" } else { "are" };
        let mut text = format!(
            "{} of {considered} {verb} admissible. The best ({}) costs {} over its life, against {} for the drive \
             chosen ({}).",
            figure::count(family.admissible),
            view.sizes(best),
            view.money(Some(rival)),
            view.money(Some(own)),
            figure::change(Some(rival), Some(own))
        );
        if rival < own {
            text += &format!(
                " It was not taken because the whole machine decides: smallest {}.",
                view.record.machine.objective
            );
        }
        return text;
    }
    let none = match family.configurations {
        1 => "the one configuration is not admissible.".into(),
        _ => format!("none of {considered} is admissible."),
    };
    let chief = family.excluded_by.iter().max_by_key(|exclusion| exclusion.configurations);
    let most = chief.map(|chief| {
        format!(" {} fail first at “{}”.", figure::count(chief.configurations), view.rule_title(&chief.rule))
    });
    let number = match ruling_out(family) {
        Some((finding, true)) => format!(" The best that any of them reaches: {}.", view.clause(finding)),
        Some((finding, false)) => format!(" The one that misses by least: {}.", view.clause(finding)),
        None => String::new(),
    };
    format!("{none}{}{number}", most.unwrap_or_default())
}

/// How an axis without an admissible drive misses.
pub fn misses(view: &View, axis: &AxisRecord) -> AxisMiss {
    let miss = |family: &FamilyRecord| {
        let nearest = family.nearest.as_ref();
        let finding = nearest.and_then(worst_failing).or(family.best_on_chief_rule.as_ref());
        let (demand, limit) = finding.map_or_else(
            || (figure::NOT_KNOWN.to_string(), figure::NOT_KNOWN.to_string()),
            |finding| {
                let (demand, limit) = view.pair(finding);
                let what = view.words_of(&finding.characteristic);
                (format!("{what} {demand}"), format!("{} {limit}", words::sense(&finding.sense)))
            },
        );
        Miss {
            family: words::sentence(&words::family(&family.family)),
            drive: nearest.map_or_else(|| "none could be judged".into(), |nearest| view.sizes(nearest)),
            rule: finding.map_or_else(String::new, |finding| view.rule_title(&finding.rule)),
            demand,
            limit,
            utilisation: figure::utilisation(finding.and_then(|finding| finding.utilisation)),
            remedy: finding
                .and_then(|finding| view.rule(&finding.rule))
                .map_or_else(String::new, |rule| super::view::one_line(&rule.remedy)),
        }
    };
    let considered = |family: &&FamilyRecord| family.configurations > 0;
    AxisMiss { axis: axis.name.clone(), families: axis.families.iter().filter(considered).map(miss).collect() }
}
