//! Part one: what the customer reads. Decision, machine at a glance, what nearly did not fit, before ordering.
//!
//! Method: sentences of subject, number with unit and limit; the layout is the template's.

use super::assumed::{self, Named};
use super::cautions::{self, Caution};
use super::markup::term;
use super::reasons::{self, AxisMiss, AxisWhy};
use super::robustness::{self, Sentences};
use super::turning;
use super::view::{View, only_fits, worst_first};
use super::{alternatives, figure, obstacles, words};
use crate::record::*;
use serde::Serialize;

/// All that the customer's template needs.
#[derive(Serialize)]
pub struct Customer {
    pub status: String,
    pub doubts: Vec<Named>,
    decisions: Vec<Decision>,
    misses: Vec<AxisMiss>,
    limits: Vec<LimitLine>,
    raise: Vec<String>,
    glance: Vec<Glance>,
    pub whole: Vec<Named>,
    why: Vec<AxisWhy>,
    turning: Vec<String>,
    robust: Option<Sentences>,
    tight: Vec<AxisNotes>,
    assumptions: Vec<Named>,
    of_method: String,
    fitting: &'static str,
    generic: Vec<String>,
    own_rules: Option<String>,
    pub cautions: Vec<Caution>,
    standards: Vec<Named>,
}

#[derive(Serialize)]
struct Decision {
    axis: String,
    task: String,
    drive: String,
    reason: String,
}

#[derive(Serialize)]
struct LimitLine {
    limit: String,
    reached: String,
    allowed: String,
    verdict: &'static str,
}

#[derive(Serialize)]
struct Glance {
    axis: String,
    drive: String,
    sizes: String,
    reserve: String,
    accuracy: String,
    life: String,
    price: String,
}

#[derive(Serialize)]
struct AxisNotes {
    axis: String,
    notes: Vec<String>,
}

impl Customer {
    /// What stands at a glance of each axis that has a drive: its name, and each figure by its name.
    pub fn at_a_glance(&self) -> impl Iterator<Item = (&str, [(&'static str, &str); 6])> {
        self.glance.iter().map(|row| {
            let figures = [
                ("drive", row.drive.as_str()),
                ("main sizes", &row.sizes),
                ("speed reserve", &row.reserve),
                ("accuracy required / predicted", &row.accuracy),
                ("service life", &row.life),
                ("price to buy", &row.price),
            ];
            (row.axis.as_str(), figures)
        })
    }
}

impl Customer {
    /// The same where other families are still looked at: what decided against them is not known.
    pub fn before_others(mut self, view: &View) -> Customer {
        for (decision, axis) in self.decisions.iter_mut().zip(&view.record.axes) {
            if let (Some(drive), [_]) = (&axis.chosen, axis.families.as_slice()) {
                decision.reason = reasons::undecided(view, drive);
            }
        }
        self
    }
}

/// Collects part one.
pub fn collect(view: &View) -> Customer {
    let record = view.record;
    let chosen = || record.axes.iter().filter_map(|axis| axis.chosen.as_ref().map(|drive| (axis, drive)));
    Customer {
        status: status(record),
        doubts: assumed::doubted(view),
        decisions: record.axes.iter().map(|axis| decision(view, axis)).collect(),
        misses: record
            .axes
            .iter()
            .filter(|axis| axis.outcome == Outcome::NothingAdmissible)
            .map(|axis| reasons::misses(view, axis))
            .collect(),
        limits: match record.outcome {
            Outcome::MachineLimit => record.machine.limits.iter().map(|limit| limit_line(view, limit)).collect(),
            Outcome::Chosen | Outcome::NothingAdmissible => Vec::new(),
        },
        glance: chosen().map(|(axis, drive)| glance(view, axis, drive)).collect(),
        whole: if record.outcome == Outcome::Chosen { whole(view) } else { Vec::new() },
        why: record
            .axes
            .iter()
            .filter(|axis| axis.outcome == Outcome::Chosen)
            .map(|axis| reasons::why(view, axis))
            .collect(),
        raise: obstacles::of_machine(view),
        turning: record
            .axes
            .iter()
            .flat_map(|axis| turning::told(view, axis))
            .chain(alternatives::sentences(view))
            .collect(),
        robust: robustness::sentences(view),
        tight: chosen().map(|(axis, drive)| tight(view, axis, drive)).collect(),
        assumptions: assumed::left_open(view),
        of_method: assumed::of_method(view),
        fitting: fitting(view),
        own_rules: super::own_rules::sentence(record),
        generic: chosen().filter_map(|(axis, drive)| generic(axis, drive)).collect(),
        cautions: cautions::of(record),
        standards: cautions::standards(record),
    }
}

fn status(record: &DecisionRecord) -> String {
    let names = |outcome: Outcome| -> Vec<String> {
        record.axes.iter().filter(|axis| axis.outcome == outcome).map(|axis| axis.name.clone()).collect()
    };
    match record.outcome {
        Outcome::Chosen => format!("A drive was chosen for every axis.{}", warm(record)),
        Outcome::NothingAdmissible => {
            let blocked = names(Outcome::NothingAdmissible);
            let which = if blocked.len() == 1 { "axis" } else { "axes" };
            format!(
                "No machine can be recommended: no drive of the catalogue is admissible for {which} {}.",
                words::list(&blocked)
            )
        }
        Outcome::MachineLimit => "No machine can be recommended: every axis has admissible drives, but no set of them \
                                  keeps all limits of the machine."
            .into(),
    }
}

/// That axes keep their accuracy at the reference temperature only, where some do; empty elsewhere.
fn warm(record: &DecisionRecord) -> String {
    let cool = |axis: &&AxisRecord| {
        let judged = axis.chosen.as_ref().and_then(|drive| Some((drive, judged_accuracy(drive)?)));
        judged.is_some_and(|(drive, finding)| only_cool(drive, finding))
    };
    let names: Vec<String> = record.axes.iter().filter(cool).map(|axis| axis.name.clone()).collect();
    match names.as_slice() {
        [] => String::new(),
        [one] => format!(
            " Axis {one} keeps the accuracy asked at the reference temperature only; over the temperature swing its error is larger than asked."
        ),
        several => format!(
            " Axes {} keep the accuracy asked at the reference temperature only; over the temperature swing their errors are larger than asked.",
            words::list(several)
        ),
    }
}

fn requirement<'a>(axis: &'a AxisRecord, key: &str) -> Option<&'a RequirementLine> {
    axis.requirement.iter().find(|line| line.key == key)
}

/// What the axis has to do, in a phrase: "gantry along the mould, 11 m at 50 m/min".
fn task(view: &View, axis: &AxisRecord) -> String {
    let value = |key| requirement(axis, key).map(|line| view.text(&line.value));
    let motion = match (value("travel"), value("speed")) {
        (Some(travel), Some(speed)) => Some(format!("{travel} at {speed}")),
        (travel, speed) => travel.or(speed),
    };
    [axis.purpose.clone(), motion].into_iter().flatten().collect::<Vec<_>>().join(", ")
}

fn decision(view: &View, axis: &AxisRecord) -> Decision {
    let (drive, reason) = match (&axis.chosen, axis.outcome) {
        (Some(drive), _) => (view.drive(drive), reasons::decided(view, axis, drive)),
        (None, Outcome::NothingAdmissible) => ("no drive is admissible".into(), reasons::blocked(view, axis)),
        (None, Outcome::Chosen | Outcome::MachineLimit) => {
            let admissible: u64 = axis.families.iter().map(|family| family.admissible).sum();
            let found = words::several(admissible, "drive is", "drives are");
            ("none chosen".into(), format!("{found} admissible for this axis taken alone."))
        }
    };
    Decision { axis: axis.name.clone(), task: task(view, axis), drive, reason }
}

fn limit_line(view: &View, limit: &MachineLimit) -> LimitLine {
    let (reached, allowed) = if limit.unit.is_empty() {
        (view.money(limit.reached), view.money(Some(limit.allowed)))
    } else {
        figure::pair(limit.reached, Some(limit.allowed), &limit.unit, view.units)
    };
    LimitLine {
        limit: words::sentence(&words::machine_limit(&limit.limit)),
        reached,
        allowed,
        verdict: words::verdict(&limit.verdict, "shall"),
    }
}

/// The characteristics whose rules limit how fast an axis may run.
const SPEEDS: [&str; 6] =
    ["speed", "screw-speed", "circulation-speed", "motor-speed", "pinion-speed", "mean-input-speed"];

fn glance(view: &View, axis: &AxisRecord, drive: &CandidateRecord) -> Glance {
    let speed = worst_first(drive)
        .into_iter()
        .find(|finding| finding.utilisation.is_some() && SPEEDS.contains(&finding.characteristic.as_str()));
    let drives = view.drives(drive);
    let family = words::family(&drive.family);
    Glance {
        axis: axis.name.clone(),
        drive: several(drives, &family, drive.value("drive-units")),
        sizes: view.sizes(drive),
        reserve: match speed {
            Some(finding) => {
                format!("{}, {}", figure::reserve(finding.utilisation), words::spaced(&finding.characteristic))
            }
            None => figure::NOT_KNOWN.into(),
        },
        accuracy: accuracy(view, drive),
        life: life(view, drive),
        price: view.money(Some(drive.cost.purchase)),
    }
}

/// A family with the number of its drives, and with that of its motors where a drive has more than one.
fn several(drives: u64, family: &str, units: Option<f64>) -> String {
    let all = if drives > 1 { format!("{drives} × {family}") } else { words::sentence(family) };
    match units.filter(|units| *units > drives as f64) {
        Some(units) => format!("{all}, {units} motors"),
        None => all,
    }
}

fn judged_accuracy(drive: &CandidateRecord) -> Option<&FindingRecord> {
    drive.findings.iter().find(|finding| finding.characteristic == "accuracy" && finding.limit.is_some())
}

/// Whether the accuracy that is asked is kept, and with the growth by temperature on top is not.
fn only_cool(drive: &CandidateRecord, judged: &FindingRecord) -> bool {
    let Some(growth) = drive.line("thermal-growth").filter(|line| line.unit == judged.unit) else { return false };
    let asked = growth.value.zip(judged.demand).zip(judged.limit);
    asked.is_some_and(|((growth, demand), limit)| demand <= limit && growth + demand > limit)
}

fn accuracy(view: &View, drive: &CandidateRecord) -> String {
    let judged = judged_accuracy(drive);
    let grows = drive.value("thermal-growth").filter(|growth| *growth > 0.0);
    let grown = grows.and_then(|_| view.value_of(drive, "thermal-growth"));
    let grown = grown.map_or(String::new(), |growth| format!(", and {growth} more with temperature"));
    match judged {
        Some(finding) => {
            let (predicted, required) = view.pair(finding);
            let only = if only_cool(drive, finding) { ": kept at the reference temperature only" } else { "" };
            format!("{required} / {predicted}{grown}{only}")
        }
        None => match view.value_of(drive, "accuracy") {
            Some(predicted) => format!("not stated / {predicted}{grown}"),
            None => figure::NOT_KNOWN.into(),
        },
    }
}

/// The share that reaches a nominal life.
const NOMINAL: &str = "90 %";

fn life(view: &View, drive: &CandidateRecord) -> String {
    let rolling = ["screw-life-hours", "bearing-life-hours"];
    let shortest = rolling
        .iter()
        .filter_map(|id| drive.line(id).filter(|line| line.value.is_some()))
        .min_by(|first, second| first.value.unwrap_or(f64::MAX).total_cmp(&second.value.unwrap_or(f64::MAX)));
    match shortest {
        Some(line) => match view.value_of(drive, "reliability").filter(|share| share != NOMINAL) {
            Some(share) => format!("{}, {share} survive", view.line_value(line)),
            None => format!("{}, nominal, {NOMINAL} survive", view.line_value(line)),
        },
        None if words::is_rack(&drive.family) => match view.value_of(drive, "service-hours") {
            Some(hours) => format!("teeth sized for all {hours} of service"),
            None => figure::NOT_KNOWN.into(),
        },
        None => figure::NOT_KNOWN.into(),
    }
}

fn whole(view: &View) -> Vec<Named> {
    let machine = &view.record.machine;
    // error and growth belong together and have one unit
    let lengths = [&machine.tool_point_error, &machine.tool_point_growth];
    let small = lengths.into_iter().flatten().filter_map(|length| length.value).all(|length| length < 0.1);
    let amount = |amount: &Option<Amount>| match amount {
        Some(Amount { value: Some(value), unit }) if unit == "mm" && small => view.quantity(Some(value * 1000.0), "µm"),
        Some(amount) => view.quantity(amount.value, &amount.unit),
        None => figure::NOT_KNOWN.into(),
    };
    let named = |name: &str, value: String| Named { name: name.into(), value };
    let mut lines = vec![
        named("price to buy", view.money(machine.purchase)),
        named(&term("whole-life-cost", "price over its life"), view.money(machine.whole_life_cost)),
        named(
            &format!("{} at the reference temperature", term("error-at-the-tool", "error at the tool")),
            amount(&machine.tool_point_error),
        ),
        named("peak power from the supply", amount(&machine.peak_power)),
    ];
    if machine.tool_point_growth.is_some() {
        lines.insert(3, named("growth with temperature on top", amount(&machine.tool_point_growth)));
    }
    if let Some(models) = machine.motor_models {
        lines.push(named("motor models", models.to_string()));
    }
    if machine.lead_time.is_some() {
        lines.push(named("longest delivery", amount(&machine.lead_time)));
    }
    lines
}

fn tight(view: &View, axis: &AxisRecord, drive: &CandidateRecord) -> AxisNotes {
    let findings = worst_first(drive);
    let binding = findings
        .iter()
        .filter(|finding| finding.obligation == "shall" && finding.verdict == "pass" && !only_fits(finding));
    let mut notes: Vec<String> = binding
        .take(2)
        .map(|finding| {
            let used = figure::utilisation(finding.utilisation);
            let word = term("utilisation", "utilisation");
            format!("“{}”: {} ({word} {used}).", view.rule_title(&finding.rule), view.clause(finding))
        })
        .collect();
    for finding in &findings {
        let head = match (finding.obligation.as_str(), finding.verdict.as_str()) {
            (_, "waived") => waived(view, axis, finding),
            ("should", "fail") => format!("{} not met", term("advice", "Advice")),
            ("should", "not-evaluated") => "Advice that could not be judged".into(),
            _ => continue,
        };
        notes.push(format!("{head}, “{}”: {}.", view.rule_title(&finding.rule), view.clause(finding)));
    }
    AxisNotes { axis: axis.name.clone(), notes }
}

/// Who sets a rule aside, and until when.
fn waived(view: &View, axis: &AxisRecord, finding: &FindingRecord) -> String {
    let here = |waiver: &&WaiverRecord| {
        waiver.rule == finding.rule && waiver.axis.as_ref().is_none_or(|wanted| *wanted == axis.name)
    };
    let head = "Set aside by the brief";
    match view.record.waivers.iter().find(here) {
        Some(WaiverRecord { by, until: Some(until), .. }) => format!("{head} (by {by}, until {until})"),
        Some(WaiverRecord { by, until: None, .. }) => format!("{head} (by {by}, without a date)"),
        None => head.into(),
    }
}

fn generic(axis: &AxisRecord, drive: &CandidateRecord) -> Option<String> {
    let roles: Vec<String> =
        drive.components.iter().filter(|part| part.generic).map(|part| words::role(&part.role)).collect();
    let all = drive.components.len();
    (!roles.is_empty()).then(|| format!("axis {}: {} of {all} parts ({})", axis.name, roles.len(), words::list(&roles)))
}

/// One plain sentence on fitting, where a drive was chosen.
fn fitting(view: &View) -> &'static str {
    let told = |axis: &AxisRecord| axis.chosen.as_ref().is_some_and(|drive| !drive.installation.is_empty());
    if view.record.axes.iter().any(told) {
        "How each drive is fitted, fastened, aligned, lubricated and covered stands in part two under “Installation”, how it is kept under “Upkeep”."
    } else {
        ""
    }
}
