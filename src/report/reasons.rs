//! Why this drive and why not the others: sentences that end in the number that decided.
//!
//! Method: a family without an admissible configuration is told by a rule that none of them keeps, with the
//! best figure that any of them reaches; if there is no such rule, by the worst failing rule of the one that
//! misses by least. A family that has admissible configurations and lost is told by its cost.

use super::markup::term;
use super::view::{View, failing, worst_failing};
use super::{figure, obstacles, winner, words};
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
    /// How many configurations are admissible, a sentence; empty where that was not counted.
    count: String,
    text: String,
}

/// How an axis without an admissible drive misses, family by family.
#[derive(Serialize)]
pub struct AxisMiss {
    axis: String,
    conflict: Option<String>,
    ways: Vec<String>,
    families: Vec<Miss>,
}

#[derive(Serialize)]
struct Miss {
    family: String,
    drive: String,
    rules: Vec<Missed>,
}

#[derive(Serialize)]
struct Missed {
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

/// Rules that tell a customer most; where several rule a family out, these are told first.
const TELLING: [&str; 1] = ["screw-whip"];

/// The finding that tells best why no configuration of a family is admissible, and whether it is the best of all.
fn ruling_out(family: &FamilyRecord) -> Option<(&FindingRecord, bool)> {
    let told = TELLING.iter().find_map(|rule| family.ruled_out_by.iter().find(|finding| finding.rule == *rule));
    let of_all = told.or(family.ruled_out_by.first()).map(|finding| (finding, true));
    of_all.or_else(|| family.nearest.as_ref().and_then(worst_failing).map(|finding| (finding, false)))
}

/// Why a cheaper drive lost: advice that it does not follow, else the measure that the machine is chosen by.
pub(super) fn not_cost_alone(view: &View, drive: &CandidateRecord, rival: &CandidateRecord) -> String {
    let unmet = |candidate: &CandidateRecord, rule: &str| {
        candidate.findings.iter().any(|finding| finding.rule == rule && finding.verdict != "pass")
    };
    let advice = rival
        .findings
        .iter()
        .find(|finding| finding.obligation == "should" && finding.verdict != "pass" && !unmet(drive, &finding.rule));
    // advice decided where the rival would be better without what it does not follow
    let bare = |candidate: &CandidateRecord| candidate.merit / (1.0 + candidate.unmet_advice);
    let by_advice = bare(rival) < bare(drive) || !(bare(rival).is_finite() && bare(drive).is_finite());
    if let Some(finding) = advice.filter(|_| by_advice) {
        let title = view.rule_title(&finding.rule);
        return format!("it does not follow the advice “{title}”: {}", view.clause(finding));
    }
    let (own, other) = (drive.merit, rival.merit);
    if own.is_finite() && other.is_finite() && other > own {
        let enough = (3..8).find(|&digits| figure::figure(own, digits) != figure::figure(other, digits)).unwrap_or(8);
        let (own, other) = (figure::figure(own, enough), figure::figure(other, enough));
        let both = |id: &str| Some((view.value_of(rival, id)?, view.value_of(drive, id)?));
        let error = both("tool-error").map(|(theirs, ours)| format!("half band at the tool {theirs} against {ours}"));
        let give = stiffness(view, rival)
            .zip(stiffness(view, drive))
            .map(|(theirs, ours)| format!("stiffness {theirs} against {ours}"));
        let weighed: Vec<String> = [error, give].into_iter().flatten().collect();
        let weighed = if weighed.is_empty() { String::new() } else { format!(": {}", weighed.join(", ")) };
        format!(
            "by the weights of the brief, with advice not met, it comes to {other} against {own}, and less is \
             better{weighed}"
        )
    } else {
        "cost of one axis alone does not decide, part three sets out by what the machine is chosen".into()
    }
}

/// The stiffness of one drive: of two pinions both together.
fn stiffness(view: &View, drive: &CandidateRecord) -> Option<String> {
    view.value_of(drive, "both-pinions-stiffness").or_else(|| view.value_of(drive, "total-stiffness"))
}

/// The one reason that decided for a drive.
pub fn decided(view: &View, axis: &AxisRecord, drive: &CandidateRecord) -> String {
    let other_kind = |family: &&FamilyRecord| words::is_rack(&family.family) != words::is_rack(&drive.family);
    let rivals: Vec<&FamilyRecord> = others(axis, drive).filter(|family| family.configurations > 0).collect();
    let (other, same): (Vec<&FamilyRecord>, Vec<&FamilyRecord>) = rivals.into_iter().partition(other_kind);
    against(view, drive, &other)
        .or_else(|| against(view, drive, &same))
        .unwrap_or_else(|| format!("{}, and no other family was considered.", costs(view, drive)))
}

/// What is told of a drive before other families are looked at.
pub fn undecided(view: &View, drive: &CandidateRecord) -> String {
    format!("{}.", costs(view, drive))
}

fn costs(view: &View, drive: &CandidateRecord) -> String {
    format!("It costs {} over its life", view.money(Some(drive.cost.whole_life)))
}

/// What decided against these families: the cost of the cheapest that would do, or what rules all of them out.
fn against(view: &View, drive: &CandidateRecord, families: &[&FamilyRecord]) -> Option<String> {
    let rivals = families.iter().filter_map(|family| Some((family, family.best.as_ref()?)));
    let cheapest = rivals.min_by(|first, second| first.1.cost.whole_life.total_cmp(&second.1.cost.whole_life));
    if let Some((family, best)) = cheapest {
        let (own, rival) = (drive.cost.whole_life, best.cost.whole_life);
        let (name, rival_money) = (words::family(&family.family), view.money(Some(rival)));
        let (own_money, change) = (view.money(Some(own)), figure::change(Some(rival), Some(own)));
        return Some(if !(rival.is_finite() && own.is_finite()) {
            format!(
                "It costs {own_money} over its life, a {name} {rival_money}: they cannot be compared, since a part has no price \
                 in the catalogue."
            )
        } else if rival >= own {
            format!("It costs {own_money} over its life; a {name} costs {rival_money} ({change}).")
        } else {
            format!(
                "A {name} would cost less over its life ({rival_money} against {own_money}); {}.",
                not_cost_alone(view, drive, best)
            )
        });
    }
    let ruled_out = families.iter().filter_map(|family| Some((family, ruling_out(family)?.0)));
    let (family, finding) = ruled_out.min_by(|first, second| missed_by(first.1).total_cmp(&missed_by(second.1)))?;
    let title = view.rule_title(&finding.rule);
    let name = words::family(&family.family);
    Some(format!("{}. A {name} is out, “{title}”: {}.", costs(view, drive), view.clause(finding)))
}

/// The utilisation by which families are ordered; what could not be worked out comes last.
fn missed_by(finding: &FindingRecord) -> f64 {
    finding.utilisation.filter(|value| value.is_finite()).unwrap_or(f64::MAX)
}

/// In one sentence, what stands in the way of an axis without an admissible drive.
pub fn blocked(view: &View, axis: &AxisRecord) -> String {
    let nearest = axis.families.iter().filter_map(|family| ruling_out(family).map(|(finding, _)| (family, finding)));
    match nearest.min_by(|first, second| missed_by(first.1).total_cmp(&missed_by(second.1))) {
        Some((family, finding)) => {
            let title = view.rule_title(&finding.rule);
            format!("Nearest is a {}: {} (“{title}”).", words::family(&family.family), view.clause(finding))
        }
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
        winner: winner::told(view, axis, drive),
        others: others(axis, drive)
            .map(|family| {
                let (count, text) = why_not(view, family, drive);
                Other { family: words::sentence(&words::family(&family.family)), count, text }
            })
            .collect(),
    }
}

fn why_not(view: &View, family: &FamilyRecord, drive: &CandidateRecord) -> (String, String) {
    let considered = words::several(family.configurations, "configuration", "configurations");
    if family.configurations == 0 {
        let text = "not considered: the brief does not admit it, or the catalogue gives no configuration.";
        return (String::new(), text.into());
    }
    if let Some(best) = family.best.as_ref().filter(|_| family.admissible > 0) {
        let (own, rival) = (drive.cost.whole_life, best.cost.whole_life);
        let verb = if family.admissible == 1 { "is" } else { "are" };
        let count = format!(
            "{} of {considered} {verb} {}.",
            figure::count(family.admissible),
            term("admissible", "admissible")
        );
        let mut text = format!(
            "The best in {} ({}) costs {} over its life, against {} for the drive chosen ({}).",
            term("merit", "merit"),
            view.sizes(best),
            view.money(Some(rival)),
            view.money(Some(own)),
            figure::change(Some(rival), Some(own))
        );
        if rival < own {
            text += &format!(" It was not taken: {}.", not_cost_alone(view, drive, best));
        }
        return (count, text);
    }
    let none = match family.configurations {
        1 => "the one configuration is not admissible.".into(),
        _ => format!("none of {considered} is {}.", term("admissible", "admissible")),
    };
    let number = match ruling_out(family) {
        Some((finding, true)) => {
            let told =
                |finding: &FindingRecord| format!("“{}”: {}", view.rule_title(&finding.rule), view.clause(finding));
            let further = family.ruled_out_by.iter().filter(|other| other.rule != finding.rule).take(2).map(told);
            let all: Vec<String> = std::iter::once(told(finding)).chain(further).collect();
            format!("The best that any of them reaches: {}.", all.join("; "))
        }
        Some((finding, false)) => {
            let missed = family.nearest.as_ref().map_or(0, |nearest| failing(nearest).len());
            let more = match missed.saturating_sub(1) {
                0 => String::new(),
                1 => " It misses one rule more.".into(),
                more => format!(" It misses {more} rules more."),
            };
            format!(
                "The one that misses by least fails “{}”: {}.{more}",
                view.rule_title(&finding.rule),
                view.clause(finding)
            )
        }
        None => String::new(),
    };
    let most = family.excluded_by.iter().max_by_key(|exclusion| exclusion.configurations);
    let most = most.map(|most| {
        format!("{} already fall at “{}”.", figure::count(most.configurations), view.rule_title(&most.rule))
    });
    let told: Vec<String> = std::iter::once(number).chain(most).filter(|told| !told.is_empty()).collect();
    (none, told.join(" "))
}

/// How an axis without an admissible drive misses.
pub fn misses(view: &View, axis: &AxisRecord) -> AxisMiss {
    let considered = axis.families.iter().filter(|family| family.configurations > 0);
    AxisMiss {
        axis: axis.name.clone(),
        conflict: obstacles::conflict(view, axis),
        ways: obstacles::ways(view, axis),
        families: considered.map(|family| miss(view, family)).collect(),
    }
}

/// How many of the rules that a drive misses stand on page one; part two has them all.
const MISSES: usize = 3;

fn miss(view: &View, family: &FamilyRecord) -> Miss {
    let nearest = family.nearest.as_ref();
    let mut findings: Vec<&FindingRecord> = nearest.map(failing).unwrap_or_default();
    if findings.is_empty() {
        findings.extend(family.best_on_chief_rule.as_ref());
    }
    let drive = nearest.map_or_else(
        || "none could be judged".into(),
        |nearest| {
            let binding = nearest.findings.iter().filter(|finding| finding.obligation == "shall").count();
            format!(
                "{}. It misses {} of {binding} {}.",
                view.sizes(nearest),
                findings.len(),
                term("binding-rule", "binding rules")
            )
        },
    );
    Miss {
        family: words::sentence(&words::family(&family.family)),
        drive,
        rules: findings.into_iter().take(MISSES).map(|finding| missed(view, finding)).collect(),
    }
}

fn missed(view: &View, finding: &FindingRecord) -> Missed {
    let (demand, limit) = view.pair(finding);
    Missed {
        rule: view.rule_title(&finding.rule),
        demand: format!("{} {demand}", view.brief_words(&finding.characteristic)),
        limit: format!("{} {limit}", words::sense(&finding.sense)),
        utilisation: figure::utilisation(finding.utilisation),
        remedy: view.rule(&finding.rule).map_or_else(String::new, |rule| super::view::one_line(&rule.remedy)),
    }
}
