//! Part two: what the engineer reads, axis by axis.

use super::assumed::Named;
use super::chart::{AxisCharts, Chart};
use super::markup::term;
use super::sheet::{self, Phases, SheetLine};
use super::view::{View, worst_first};
use super::words;
use super::{acceptance, budget, figure};
use crate::record::*;
use serde::Serialize;

/// One axis for the engineer.
#[derive(Serialize)]
pub struct EngineerAxis {
    name: String,
    pictures: Vec<Picture>,
    purpose: String,
    requirement: Vec<Requirement>,
    carried: String,
    drives: Vec<DriveSheet>,
    less: &'static str,
    next: Vec<Next>,
    merit: String,
    pareto: Vec<ParetoLine>,
    cost_cases: Option<super::cost::Cases>,
}

/// One drive that no other beats in merit and in accuracy at once.
#[derive(Serialize)]
struct ParetoLine {
    drive: String,
    merit: String,
    purchase: String,
    whole_life: String,
    error: String,
}

#[derive(Serialize)]
struct Requirement {
    words: String,
    value: String,
    stated: &'static str,
}

/// Everything about one drive: the one chosen, or the nearest of each family where none is admissible.
#[derive(Serialize)]
struct DriveSheet {
    title: String,
    pictures: Vec<Picture>,
    drive: String,
    phases: Option<Phases>,
    findings: Vec<FindingLine>,
    remedies: Vec<Named>,
    teeth: Vec<String>,
    worksheet: Vec<SheetLine>,
    budget: Vec<budget::Term>,
    accuracy_statement: Option<String>,
    servo: Vec<super::servo::ServoLine>,
    acceptance: Option<acceptance::Acceptance>,
    safety: Vec<super::safety::SafetyLine>,
    cost: Vec<super::cost::CostRow>,
    exchange_basis: String,
    parts: Vec<Part>,
    installation: Vec<Fitting>,
    upkeep: Vec<Fitting>,
}

/// One thing to keep when the drive is fitted.
#[derive(Serialize)]
struct Fitting {
    group: String,
    item: String,
    value: String,
    source: String,
}

#[derive(Serialize)]
pub struct FindingLine {
    rule: String,
    id: String,
    must: &'static str,
    characteristic: String,
    demand: String,
    limit: String,
    utilisation: String,
    verdict: &'static str,
}

#[derive(Serialize)]
struct Part {
    role: String,
    designation: String,
    count: String,
    standing: &'static str,
}

#[derive(Serialize)]
struct Next {
    drive: String,
    purchase: String,
    whole_life: String,
    accuracy: String,
    mode: String,
    merit: String,
    tightest: String,
}

/// A picture by its file.
#[derive(Serialize)]
struct Picture {
    file: String,
    title: String,
}

/// Collects part two, with the names of its pictures where they stand beside the report.
pub fn collect(view: &View, pictures: &[AxisCharts]) -> Vec<EngineerAxis> {
    let none = AxisCharts::default();
    let of = |place: usize| pictures.get(place).unwrap_or(&none);
    view.record.axes.iter().enumerate().map(|(place, axis)| collect_axis(view, axis, of(place))).collect()
}

fn named(charts: &[Chart]) -> Vec<Picture> {
    charts.iter().map(|one| Picture { file: one.file.clone(), title: one.title.clone() }).collect()
}

/// The drives of which an axis is told everything, with their titles: the one chosen, else the best or nearest of each family.
pub fn drives_told(axis: &AxisRecord) -> Vec<(String, &CandidateRecord)> {
    if let Some(drive) = &axis.chosen {
        return vec![("The drive chosen".into(), drive)];
    }
    let told = |family: &'_ FamilyRecord| match (&family.best, &family.nearest) {
        (Some(_), _) => format!("Best of its kind: {}", words::family(&family.family)),
        _ => format!("Nearest miss of its kind: {}", words::family(&family.family)),
    };
    let known = axis
        .families
        .iter()
        .filter_map(|one| one.best.as_ref().or(one.nearest.as_ref()).map(|drive| (told(one), drive)));
    known.collect()
}

fn collect_axis(view: &View, axis: &AxisRecord, charts: &AxisCharts) -> EngineerAxis {
    let sheet = |(place, (title, drive)): (usize, (String, &CandidateRecord))| {
        let pictures = charts.drives.get(place).map_or(Vec::new(), |own| named(own));
        DriveSheet { pictures, ..drive_sheet(view, &title, drive) }
    };
    let drives = drives_told(axis).into_iter().enumerate().map(sheet).collect();
    EngineerAxis {
        pictures: named(&charts.axis),
        name: axis.name.clone(),
        purpose: words::sentence(axis.purpose.as_deref().unwrap_or_default()),
        requirement: axis
            .requirement
            .iter()
            .map(|line| Requirement {
                words: words::spaced(&line.key),
                value: view.text(&line.value),
                stated: if line.stated { "brief" } else { "assumed" },
            })
            .collect(),
        carried: carried(view, &axis.carried_mass),
        drives,
        merit: match &axis.chosen {
            Some(drive) if drive.merit.is_finite() => {
                format!("The {} of the drive chosen is {}.", term("merit", "merit"), figure::figure(drive.merit, 5))
            }
            _ => String::new(),
        },
        less: less(axis),
        next: axis.runners_up.iter().map(|drive| next(view, axis.chosen.as_ref(), drive)).collect(),
        cost_cases: super::cost::cases(view, axis),
        pareto: visible(&axis.pareto_set).into_iter().map(|point| pareto(view, point)).collect(),
    }
}

/// Why a next-best drive of less merit was not chosen; empty where there is none.
fn less(axis: &AxisRecord) -> &'static str {
    let beaten = |drive: &&CandidateRecord| axis.runners_up.iter().any(|next| next.merit < drive.merit);
    match axis.chosen.as_ref().filter(beaten) {
        Some(_) => {
            "A drive of less merit than that was passed over for the machine as a whole: the choice counts all axes together and \
             keeps the limits of the machine, such as the number of motor models."
        }
        None => "",
    }
}

/// The least share by which a line of the table is more accurate than the one above it.
const VISIBLE_GAIN: f64 = 0.01;

/// The points whose gain in accuracy a reader can see; the record holds all.
fn visible(points: &[ParetoPoint]) -> Vec<&ParetoPoint> {
    let mut kept: Vec<&ParetoPoint> = Vec::new();
    for point in points {
        if kept.last().is_none_or(|last| point.tool_error <= (1.0 - VISIBLE_GAIN) * last.tool_error) {
            kept.push(point);
        }
    }
    kept
}

fn pareto(view: &View, point: &ParetoPoint) -> ParetoLine {
    let sizes = view.sizes_of(&point.family, &point.parameters);
    ParetoLine {
        drive: format!("{}, {sizes}", words::sentence(&words::family(&point.family))),
        merit: if point.merit.is_finite() { figure::figure(point.merit, 5) } else { figure::NOT_KNOWN.into() },
        purchase: view.money(Some(point.purchase)),
        whole_life: view.money(Some(point.whole_life)),
        error: figure::quantity(Some(point.tool_error), "µm", view.units, 3),
    }
}

fn carried(view: &View, carried: &CarriedMass) -> String {
    if carried.axes.is_empty() {
        return "It carries no other axis.".into();
    }
    let mass = |value: Option<f64>| view.quantity(value, "kg");
    let range = match figure::change(Some(carried.least), Some(carried.most)).as_str() {
        "the same" => format!("{} with their drives", mass(Some(carried.most))),
        _ => format!("{} to {}, depending on the drives they get", mass(Some(carried.least)), mass(Some(carried.most))),
    };
    let chosen = match carried.chosen {
        Some(chosen) => format!("; {} with the drives chosen", mass(Some(chosen))),
        None => String::new(),
    };
    format!("It carries {}: {range}{chosen}.", words::list(&carried.axes))
}

fn drive_sheet(view: &View, title: &str, drive: &CandidateRecord) -> DriveSheet {
    DriveSheet {
        pictures: Vec::new(),
        title: title.into(),
        drive: view.drive(drive),
        phases: sheet::phases(view, drive),
        findings: worst_first(drive).into_iter().map(|finding| finding_line(view, finding)).collect(),
        remedies: worst_first(drive).into_iter().filter_map(|finding| remedy(view, finding)).collect(),
        teeth: super::teeth::notes(view, drive),
        worksheet: sheet::lines(view, drive),
        budget: budget::terms(view, drive),
        accuracy_statement: budget::statement(view, drive),
        servo: super::servo::lines(view, drive),
        acceptance: acceptance::collect(view, drive),
        safety: super::safety::lines(view, drive),
        cost: super::cost::rows(view, drive),
        exchange_basis: super::cost::basis(view, drive),
        parts: drive.components.iter().map(|part| part_line(view, part)).collect(),
        installation: drive.installation.iter().map(|line| fitting(view, line)).collect(),
        upkeep: drive.upkeep.iter().map(|line| fitting(view, line)).collect(),
    }
}

/// What helps against a finding that is not passed.
fn remedy(view: &View, finding: &FindingRecord) -> Option<Named> {
    let rule = view.rule(&finding.rule).filter(|_| finding.verdict != "pass")?;
    Some(Named { name: view.rule_title(&finding.rule), value: super::view::one_line(&rule.remedy) })
}

pub fn finding_line(view: &View, finding: &FindingRecord) -> FindingLine {
    let (demand, limit) = view.pair(finding);
    FindingLine {
        rule: view.rule_title(&finding.rule),
        id: finding.rule.clone(),
        must: words::obligation(&finding.obligation),
        characteristic: view.words_of(&finding.characteristic),
        demand,
        limit: format!("{} {limit}", words::sign(&finding.sense)),
        utilisation: figure::utilisation(finding.utilisation),
        verdict: words::verdict(&finding.verdict, &finding.obligation),
    }
}

fn fitting(view: &View, line: &InstallationLine) -> Fitting {
    let value = line.value.map(|value| match line.unit.as_str() {
        "1" => figure::count(value.round() as u64),
        unit => view.quantity(Some(value), unit),
    });
    let said = Some(line.words.clone()).filter(|words| !words.is_empty());
    let value: Vec<String> = value.into_iter().chain(said).collect();
    Fitting { group: line.group.clone(), item: line.item.clone(), value: value.join(", "), source: line.source.clone() }
}

fn part_line(view: &View, part: &ComponentRecord) -> Part {
    let unit = if part.unit == "1" { "" } else { part.unit.as_str() };
    Part {
        role: words::role(&part.role),
        designation: part.designation.clone(),
        count: figure::quantity(Some(part.count), unit, view.units, 4),
        standing: words::data(part.generic),
    }
}

fn next(view: &View, chosen: Option<&CandidateRecord>, drive: &CandidateRecord) -> Next {
    let against = |value: f64, own: Option<f64>| match own {
        Some(own) => format!("{} ({})", view.money(Some(value)), figure::change(Some(value), Some(own))),
        None => view.money(Some(value)),
    };
    let traded = |id: &str| {
        let Some(shown) = view.value_of(drive, id) else { return figure::NOT_KNOWN.to_string() };
        match chosen.and_then(|chosen| chosen.value(id)) {
            Some(own) => format!("{shown} ({})", figure::change(drive.value(id), Some(own))),
            None => shown,
        }
    };
    Next {
        drive: view.drive(drive),
        purchase: against(drive.cost.purchase, chosen.map(|own| own.cost.purchase)),
        whole_life: against(drive.cost.whole_life, chosen.map(|own| own.cost.whole_life)),
        accuracy: traded("accuracy"),
        mode: traded("first-mode"),
        merit: if drive.merit.is_finite() { figure::figure(drive.merit, 5) } else { figure::NOT_KNOWN.into() },
        tightest: super::view::worst_binding(drive).map_or_else(
            || figure::NOT_KNOWN.into(),
            |finding| format!("{}, {}", figure::utilisation(finding.utilisation), view.rule_title(&finding.rule)),
        ),
    }
}
