//! Putting the record together from what was searched and chosen.
//!
//! Method: the chosen drives are worked out again at the mass that they really carry; the best and nearest
//! of each family and the next-best at the mass of the census.

use super::candidate_build::{self, Named};
use super::cautions;
use super::diagrams_build::Subject;
use super::machine_build;
use super::robustness::Field;
use super::workshop::{self, Sources};
use super::*;
use super::{requirement, tool_point};
use crate::brief::Brief;
use crate::catalog::Catalog;
use crate::drive::{self, Demand, Merit};
use crate::inquiry;
use crate::rule::Rulebook;
use crate::search::{AxisSearch, Found, Path, Setting, Worked, work_out};
use crate::select::{Choice, Machine};
use crate::units::{Mass, Measure, significant};

/// Everything the record is built from.
pub struct Parts<'p> {
    /// The brief.
    pub brief: &'p Brief,
    /// The catalogue.
    pub catalog: &'p Catalog,
    /// The rules.
    pub rulebook: &'p Rulebook,
    /// Every axis searched, in the order of the brief.
    pub searches: &'p [AxisSearch],
    /// How each axis was searched.
    pub settings: &'p [Setting<'p>],
    /// The machine that was to be put together.
    pub machine: &'p Machine<'p>,
    /// The choice; none if an axis has no admissible drive.
    pub choice: Option<&'p Choice>,
    /// The turning points of every axis, where they were looked for; none of an axis that gave way to the machine.
    pub turning: Option<&'p [Option<Vec<inquiry::TurningPoint>>]>,
    /// Whether weights and ways to relax are looked for.
    pub asked: bool,
    /// Whether the curves of the pictures are worked out.
    pub pictured: bool,
}

/// Builds the record.
pub fn build(parts: &Parts<'_>) -> DecisionRecord {
    let brief = parts.brief;
    let mut named = Named::default();
    let mut used_waivers = Vec::new();
    let mut chosen_worked = Vec::new();
    let axes: Vec<AxisRecord> = (0..brief.axes.len())
        .map(|axis| axis_record(parts, axis, &mut named, &mut used_waivers, &mut chosen_worked))
        .collect();
    let nothing = axes.iter().any(|axis| axis.outcome == Outcome::NothingAdmissible);
    let outcome = match parts.choice {
        _ if nothing => Outcome::NothingAdmissible,
        Some(choice) if !choice.picks.is_empty() => Outcome::Chosen,
        _ => Outcome::MachineLimit,
    };
    // axes at right angles: the growths add by squares
    let growths: Vec<f64> = axes
        .iter()
        .filter_map(|axis| axis.chosen.as_ref()?.value("thermal-growth"))
        .map(|micrometres| micrometres * 1e-6)
        .collect();
    let directions = match outcome {
        Outcome::Chosen => tool_point::directions(&brief.axes, &axes),
        Outcome::NothingAdmissible | Outcome::MachineLimit => Vec::new(),
    };
    DecisionRecord {
        record: RECORD_VERSION.into(),
        tool: env!("CARGO_PKG_VERSION").into(),
        machine_name: brief.machine.clone(),
        currency: brief.currency.value.clone(),
        inputs: input_files(brief, parts.catalog, parts.rulebook).into_iter().map(|(file, _)| file).collect(),
        outcome,
        asked: Some(parts.asked),
        assumptions: assumptions(parts, &axes),
        doubts: doubts(brief),
        waivers: brief
            .waivers
            .iter()
            .map(|waiver| WaiverRecord {
                rule: waiver.rule.clone(),
                axis: waiver.axis.clone(),
                reason: waiver.reason.clone(),
                by: waiver.by.clone(),
                until: waiver.until.clone(),
                used: used_waivers.iter().any(|(rule, axis): &(String, String)| {
                    *rule == waiver.rule && waiver.axis.as_ref().is_none_or(|wanted| wanted == axis)
                }),
            })
            .collect(),
        machine: machine_build::machine(parts, &chosen_worked, &growths, directions),
        caution_texts: cautions::texts(parts.rulebook, &axes),
        axes,
        rules: machine_build::rules(parts.rulebook, &named),
        own_rules: machine_build::own_rules(parts.rulebook),
        formulas: named.formulas(),
        characteristics: named.characteristics(),
    }
}

fn doubts(brief: &Brief) -> Vec<DoubtRecord> {
    let record = |doubt: &crate::brief::Doubt| DoubtRecord { key: doubt.key.clone(), words: doubt.words.clone() };
    brief.doubts.iter().map(record).collect()
}

fn assumptions(parts: &Parts<'_>, axes: &[AxisRecord]) -> Vec<Assumed> {
    let mut list: Vec<Assumed> = parts
        .brief
        .assumptions
        .iter()
        .map(|assumption| Assumed {
            key: assumption.key.clone(),
            value: assumption.value.clone(),
            unit: assumption.unit.clone(),
            source: assumption.source.clone(),
        })
        .collect();
    let told = |prefix: &str, told: Vec<drive::defaults::Told>| -> Vec<Assumed> {
        told.into_iter()
            .map(|(name, value, unit, source)| Assumed {
                key: format!("{prefix}.{name}"),
                value,
                unit: unit.into(),
                source: source.into(),
            })
            .collect()
    };
    for axis in &parts.brief.axes {
        list.extend(told(&format!("axes.{}", axis.name), drive::defaults::told(axis)));
    }
    let considered = |family: &str| axes.iter().any(|axis| axis.families.iter().any(|other| other.family == family));
    if considered("ball-screw") || considered("driven-nut") {
        list.extend(told("screws", drive::defaults::told_parts(false)));
        list.extend(told("screws", drive::defaults::told_estimates(&parts.catalog.ball_screws)));
    }
    if considered("driven-nut") {
        list.extend(told("driven-nuts", drive::defaults::told_driven_nuts()));
    }
    if considered("straight-rack") || considered("helical-rack") || considered("twin-pinion") {
        list.extend(told("racks", drive::defaults::told_parts(true)));
    }
    if parts.brief.prefer.stated {
        for (name, size, unit, what) in drive::REFERENCES {
            list.push(Assumed {
                key: format!("prefer.{name}.reference"),
                value: significant(size, 6),
                unit: unit.into(),
                source: format!("scale on which {what} is weighed (set by us, the same for all machines)"),
            });
        }
    }
    list
}

fn axis_record(
    parts: &Parts<'_>,
    axis: usize,
    named: &mut Named,
    used_waivers: &mut Vec<(String, String)>,
    chosen_worked: &mut Vec<crate::search::Attributes>,
) -> AxisRecord {
    let (brief, search, setting) = (parts.brief, &parts.searches[axis], &parts.settings[axis]);
    let wanted = &brief.axes[axis];
    let census = Demand::new(brief, axis, Mass::of_si(search.carried.weighed));
    let picked = parts.choice.filter(|choice| !choice.picks.is_empty()).map(|choice| {
        let found = &search_offer(parts, axis, choice.picks[axis]);
        (found.clone(), parts.machine.carried(axis, &choice.picks))
    });
    let subject = Subject { brief, axis, setting, search };
    let (mut chosen, mut told, mut diagrams) = (None, None, None);
    if let Some((found, carried)) = &picked {
        let demand = Demand::new(brief, axis, Mass::of_si(*carried));
        if let Some(worked) = work_out(found.family, &found.path, &demand, setting) {
            for judged in &worked.judged {
                if judged.waived && !crate::rule::passes(judged.utilisation) {
                    used_waivers.push((judged.rule.id.clone(), wanted.name.clone()));
                }
            }
            chosen_worked.push(worked.attributes);
            told = Some(cautions::with_drive(parts, found.family, &worked.sheet));
            diagrams = parts.pictured.then(|| subject.diagrams(Some((found, &worked.sheet))));
            let mut record = candidate_build::candidate(found.family, &worked, named);
            let from = Sources { brief, axis: wanted, catalog: parts.catalog, worked: &worked, chosen: &record };
            let (installation, upkeep) = (workshop::installation(&from), super::upkeep::lines(&from));
            (record.installation, record.upkeep) = (installation, upkeep);
            record.acceptance = Some(super::acceptance::plan(wanted, &record));
            chosen = Some(record);
        }
    }
    let mut at_census = |family: &str, path: &Path| -> Option<CandidateRecord> {
        let worked = work_out(family, path, &census, setting)?;
        Some(candidate_build::candidate(family, &worked, named))
    };
    let families: Vec<FamilyRecord> = search
        .families
        .iter()
        .map(|searched| {
            let best = searched.walk.best.first().and_then(|found| at_census(searched.family, &found.path));
            let nearest = searched.nearest.as_ref().and_then(|path| at_census(searched.family, path));
            let ruled_out_by: Vec<FindingRecord> = searched
                .ruled_out
                .iter()
                .filter_map(|reach| {
                    let rule = &parts.rulebook.rules[reach.rule].id;
                    let worked = at_census(searched.family, &reach.path)?;
                    worked.findings.into_iter().find(|finding| finding.rule == *rule)
                })
                .collect();
            let chief = ruled_out_by.first().or_else(|| nearest.as_ref().and_then(worst_binding)).cloned();
            FamilyRecord {
                family: searched.family.into(),
                configurations: searched.walk.census.configurations,
                admissible: searched.walk.census.admissible,
                best,
                nearest,
                excluded_by: exclusions(parts.rulebook, &searched.walk.census.excluded),
                ruled_out_by,
                best_on_chief_rule: chief,
            }
        })
        .collect();
    let next = next_best(search, picked.as_ref().map(|(found, _)| found), |found| {
        work_out(found.family, &found.path, &census, setting)
    });
    let field = Field { brief, axis, setting, search, next: &next };
    let robustness = picked.as_ref().filter(|_| parts.asked).map(|picked| field.odds(picked));
    let runners_up = next.into_iter().filter_map(|found| at_census(found.family, &found.path)).collect();
    // what excluded configurations is explained too, also where no drive of the record was judged by it
    named.rules.extend(families.iter().flat_map(|family| &family.excluded_by).map(|excluded| excluded.rule.clone()));
    let outcome = match (&chosen, search.offers.is_empty()) {
        (Some(_), _) => Outcome::Chosen,
        (None, true) => Outcome::NothingAdmissible,
        (None, false) => Outcome::MachineLimit,
    };
    let cost_cases = picked.as_ref().map_or(Vec::new(), |(found, _)| {
        let others = search.families.iter().filter(|searched| searched.family != found.family);
        let best = others.filter_map(|searched| searched.walk.best.first());
        let drives: Vec<Found> = std::iter::once(found).chain(best).cloned().collect();
        super::cost_cases::cost_cases(brief, axis, search.carried.weighed, &drives, setting)
    });
    let told = told.unwrap_or_else(|| cautions::without_drive(parts, &census));
    let looked_for = parts.turning.and_then(|turning| turning.get(axis));
    let turning_points = match (looked_for, &picked) {
        (Some(Some(points)), Some((_, carried))) => turning::points(brief, axis, *carried, setting, points),
        _ => Vec::new(),
    };
    let asked = picked.as_ref().filter(|_| parts.asked);
    let (weights, better_alone, other_families) = asked.map_or_else(Default::default, |(found, carried)| {
        super::alternatives_build::weights(parts, axis, found, *carried)
    });
    let by_cost_alone =
        asked.and_then(|(found, carried)| super::alternatives_build::by_cost_alone(parts, axis, found, *carried));
    let (conflict, relaxations) = match outcome {
        Outcome::NothingAdmissible if parts.asked => {
            let (conflict, relaxations) = super::obstacles_build::of_axis(parts, axis);
            (Some(conflict), relaxations)
        }
        Outcome::NothingAdmissible | Outcome::Chosen | Outcome::MachineLimit => Default::default(),
    };
    AxisRecord {
        name: wanted.name.clone(),
        purpose: wanted.purpose.clone(),
        outcome,
        requirement: requirement::lines(wanted),
        chosen,
        runners_up,
        families,
        turning_points,
        turning_scope: looked_for.map(|points| turning::scope(points.as_deref())),
        weights,
        better_alone,
        other_families,
        conflict,
        relaxations,
        undominated: search.offers.len() as u64,
        cost_cases,
        robustness,
        pareto_set: pareto_set(search, |found| work_out(found.family, &found.path, &census, setting)),
        by_cost_alone,
        diagrams: diagrams.or_else(|| parts.pictured.then(|| subject.diagrams(None))),
        carried_mass: CarriedMass {
            axes: wanted.carries.iter().map(|&carried| brief.axes[carried].name.clone()).collect(),
            least: search.carried.least,
            most: search.carried.most,
            weighed: Some(search.carried.weighed),
            chosen: picked.as_ref().map(|(_, carried)| *carried),
        },
        cautions: told,
    }
}

fn search_offer(parts: &Parts<'_>, axis: usize, pick: usize) -> Found {
    parts.machine.offers[axis][pick].found.clone()
}

fn worst_binding(candidate: &CandidateRecord) -> Option<&FindingRecord> {
    candidate.findings.iter().find(|finding| finding.obligation == "shall" && finding.verdict != "pass")
}

fn exclusions(rulebook: &Rulebook, excluded: &[u64]) -> Vec<Exclusion> {
    let mut list: Vec<Exclusion> = rulebook
        .rules
        .iter()
        .zip(excluded)
        .filter(|(_, count)| **count > 0)
        .map(|(rule, &configurations)| Exclusion { rule: rule.id.clone(), configurations })
        .collect();
    list.sort_by(|a, b| b.configurations.cmp(&a.configurations).then_with(|| a.rule.cmp(&b.rule)));
    list
}

/// The offers that no other beats in merit and error at once; of equals the one that comes first.
fn pareto_set<'a>(search: &AxisSearch, work: impl Fn(&Found) -> Option<Worked<'a>>) -> Vec<ParetoPoint> {
    let mut least_error = f64::INFINITY;
    let mut points = Vec::new();
    for offer in &search.offers {
        let attributes = &offer.found.attributes;
        if attributes.error < least_error
            && let Some(worked) = work(&offer.found)
        {
            least_error = attributes.error;
            points.push(ParetoPoint {
                family: offer.found.family.into(),
                parameters: worked.sizes.iter().map(candidate_build::parameter).collect(),
                merit: attributes.merit,
                purchase: attributes.purchase,
                whole_life: attributes.whole_life,
                tool_error: attributes.error * 1e6,
                drive_mass: attributes.mass,
            });
        }
    }
    points
}

/// How many next-best drives are reported.
const NEXT_BEST: usize = 3;

/// The next-best drives, each of another family or main size than those before it.
fn next_best<'a>(
    search: &AxisSearch,
    chosen: Option<&Found>,
    work: impl Fn(&Found) -> Option<Worked<'a>>,
) -> Vec<Found> {
    let mut candidates: Vec<Found> = search.families.iter().flat_map(|family| family.walk.best.clone()).collect();
    candidates.extend(search.families.iter().flat_map(|family| family.walk.front.clone()));
    candidates.sort_by(Found::order);
    candidates.dedup_by(|a, b| a.family == b.family && a.path == b.path);
    let main_sizes = |found: &Found| work(found).map(|worked| worked.sizes.into_iter().take(2).collect::<Vec<_>>());
    let mut seen = Vec::new();
    if let Some(chosen) = chosen {
        seen.push((chosen.family, main_sizes(chosen)));
    }
    let mut next = Vec::new();
    for found in candidates {
        let key = (found.family, main_sizes(&found));
        if next.len() < NEXT_BEST && !seen.contains(&key) {
            seen.push(key);
            next.push(found);
        }
    }
    next
}

/// What was minimised, in words.
pub(super) fn objective_words(brief: &Brief) -> String {
    format!("sum over the axes of {}", Merit::new(&brief.prefer).words())
}
