//! The result as Markdown for people, in the manner of the report.
//!
//! Method: Rust builds words and rounds, the template holds the layout, and every text is escaped where it is printed.
//! Limits: the picture is a file beside the document, named only where it is written.

use super::result::*;
use super::words::{Words, percent, several};
use crate::report::{self, Printer};
use crate::units::UnitSystem;
use serde::Serialize;
use std::sync::LazyLock;

static PRINTER: LazyLock<Printer> =
    LazyLock::new(|| Printer::new(&[("acceptance.md", include_str!("templates/acceptance.md.j2"))]));

#[derive(Serialize)]
struct Page<'a> {
    machine: &'a str,
    axis: &'a str,
    status: String,
    likeliest: Option<&'a str>,
    measured: String,
    checks: Vec<CheckRow>,
    check_remarks: Vec<String>,
    columns: Vec<String>,
    quantities: Vec<QuantityRow>,
    remarks: Vec<&'a str>,
    drive: Option<&'a str>,
    prediction: &'a str,
    terms: Vec<TermRow>,
    spread: String,
    causes: Vec<CauseRow>,
    unit: &'static str,
    targets: Vec<TargetRow>,
    picture: Option<&'a str>,
    inputs: Vec<&'a crate::record::InputFile>,
    tool: &'a str,
}

#[derive(Serialize)]
struct CheckRow {
    requirement: String,
    quantity: String,
    stretch: String,
    measured: String,
    guarded: String,
    limit: String,
    utilisation: String,
    verdict: &'static str,
}

#[derive(Serialize)]
struct QuantityRow {
    symbol: String,
    words: String,
    values: Vec<String>,
}

#[derive(Serialize)]
struct TermRow {
    words: String,
    symbol: String,
    predicted: String,
    measured: String,
    change: String,
}

#[derive(Serialize)]
struct CauseRow {
    title: String,
    share: String,
    reading: String,
    looks_like: String,
}

#[derive(Serialize)]
struct TargetRow {
    position: String,
    cells: [String; 6],
}

/// The result as Markdown; `picture`: the file beside it that holds the chart, if there is one.
pub fn markdown(acceptance: &Acceptance, units: UnitSystem, picture: Option<&str>) -> String {
    let view = View { acceptance, units };
    let page = view.page(picture);
    PRINTER.document(&page)
}

struct View<'a> {
    acceptance: &'a Acceptance,
    units: UnitSystem,
}

/// A requirement of the brief in words.
fn requirement(key: &str) -> &'static str {
    match key {
        "accuracy" => "accuracy over the full travel",
        "section-accuracy" => "accuracy on any 2 m",
        "repeatability" => "repeatability",
        "reversal" => "reversal",
        _ => "another requirement",
    }
}

fn verdict(check: &CheckRecord) -> &'static str {
    match (check.verdict.as_str(), check.shown.as_deref()) {
        ("pass", _) => "✔ pass",
        ("fail", Some("within-uncertainty")) => "✘ fail, within the uncertainty",
        ("fail", _) => "✘ fail",
        ("not-required", _) => "– not required",
        _ => "? not evaluated",
    }
}

impl<'a> View<'a> {
    fn amount(&self, value: Option<f64>, unit: &str) -> String {
        value.map_or_else(|| "–".into(), |value| report::quantity(Some(value), unit, self.units, 3))
    }

    /// A value by its number alone, in the unit of the column.
    fn bare(&self, value: Option<f64>) -> String {
        let shown = self.amount(value, "µm");
        shown.split_once(' ').map_or(shown.clone(), |(number, _)| number.into())
    }

    fn page(&self, picture: Option<&'a str>) -> Page<'a> {
        let acceptance = self.acceptance;
        let sections =
            [("worst 2 m for A", &acceptance.accuracy_section), ("worst 2 m for R", &acceptance.repeatability_section)];
        let position = |amount: &crate::record::Amount| report::quantity(amount.value, &amount.unit, self.units, 6);
        let between = |name: &str, values: &ValuesRecord| {
            format!(
                "{name}, {} to {}, {}",
                position(&values.first),
                position(&values.last),
                several(values.targets, "target")
            )
        };
        let mut columns = vec![between("all", &acceptance.values)];
        let mut tables = vec![&acceptance.values];
        for (name, section) in sections {
            if let Some(section) = section {
                columns.push(between(name, section));
                tables.push(section);
            }
        }
        let quantities = acceptance.values.quantities.iter().enumerate().map(|(index, quantity)| QuantityRow {
            symbol: quantity.symbol.clone(),
            words: quantity.words.clone(),
            values: tables.iter().map(|table| self.amount(table.quantities[index].value, &quantity.unit)).collect(),
        });
        let measurement = &acceptance.measurement;
        let uncertainty = match &measurement.uncertainty {
            Some(uncertainty) => {
                format!(
                    "expanded uncertainty {}, the same for every quantity",
                    self.amount(uncertainty.value, &uncertainty.unit)
                )
            }
            None => "no uncertainty stated".into(),
        };
        Page {
            machine: &acceptance.machine_name,
            axis: &acceptance.axis,
            status: self.status(),
            likeliest: acceptance.diagnosis.likeliest.as_ref().map(|likeliest| likeliest.text.as_str()),
            measured: format!(
                "{} from {} to {} of {} of travel, {} in each direction, {uncertainty}",
                several(measurement.targets, "target"),
                position(&measurement.first),
                position(&measurement.last),
                position(&acceptance.travel),
                several(measurement.runs, "run"),
            ),
            checks: acceptance.checks.iter().map(|check| self.check(check)).collect(),
            check_remarks: acceptance
                .checks
                .iter()
                .filter_map(|check| Some(format!("{}: {}", requirement(&check.requirement), check.remark.as_ref()?)))
                .collect(),
            columns,
            quantities: quantities.collect(),
            remarks: acceptance.remarks.iter().map(|remark| remark.text.as_str()).collect(),
            drive: acceptance.prediction.drive.as_deref(),
            prediction: &acceptance.prediction.remark,
            terms: acceptance.prediction.terms.iter().map(|term| self.term(term)).collect(),
            spread: self.amount(acceptance.diagnosis.spread.value, &acceptance.diagnosis.spread.unit),
            causes: acceptance.diagnosis.causes.iter().map(cause).collect(),
            unit: match self.units {
                UnitSystem::Metric => "µm",
                UnitSystem::Inch => "mil",
            },
            targets: acceptance.targets.iter().map(|target| self.target(target)).collect(),
            picture,
            inputs: acceptance
                .inputs
                .iter()
                .filter(|input| input.role == "measured" || input.role == "brief")
                .collect(),
            tool: &acceptance.tool,
        }
    }

    fn status(&self) -> String {
        let checks = &self.acceptance.checks;
        let named = |verdict: &str| -> String {
            let those = checks.iter().filter(|check| check.verdict == verdict);
            those.map(|check| requirement(&check.requirement)).collect::<Vec<_>>().join(", ")
        };
        match self.acceptance.outcome.as_str() {
            "pass" => format!("Every requirement of the brief is met: {}.", named("pass")),
            "fail" => format!("Not met: {}.", named("fail")),
            "not-evaluated" => {
                format!("Open: {} could not be evaluated; nothing that was evaluated fails.", named("not-evaluated"))
            }
            _ => "The brief requires nothing of the position of this axis; what was measured is shown without verdict."
                .into(),
        }
    }

    fn check(&self, check: &CheckRecord) -> CheckRow {
        // value and limit with as many digits as tell them apart
        let (guarded, limit) = match (check.guarded, check.limit) {
            (Some(guarded), Some(limit)) => report::pair(Some(guarded), Some(limit), &check.unit, self.units),
            (guarded, limit) => (self.amount(guarded, &check.unit), self.amount(limit, &check.unit)),
        };
        CheckRow {
            requirement: requirement(&check.requirement).into(),
            quantity: check.quantity.clone(),
            stretch: check.stretch.clone(),
            measured: self.amount(check.value, &check.unit),
            guarded,
            limit,
            utilisation: check.utilisation.map_or_else(|| "–".into(), |value| report::utilisation(Some(value))),
            verdict: verdict(check),
        }
    }

    fn term(&self, term: &TermRecord) -> TermRow {
        // growth is predicted at the end of the temperature swing, and was measured wherever the temperature was
        let alike = term.id != "thermal-growth";
        let both = alike && term.measured.is_some() && term.predicted.is_some_and(|predicted| predicted > 0.0);
        TermRow {
            words: term.words.clone(),
            symbol: term.symbol.clone(),
            predicted: self.amount(term.predicted, &term.unit),
            measured: self.amount(term.measured, &term.unit),
            change: if both { report::change(term.measured, term.predicted) } else { "–".into() },
        }
    }

    fn target(&self, target: &TargetRecord) -> TargetRow {
        let values = [
            Some(target.mean_up),
            Some(target.mean_down),
            target.scatter_up,
            target.scatter_down,
            Some(target.reversal),
            target.repeatability,
        ];
        TargetRow {
            position: Words { units: self.units }.position(target.position * 1e-3),
            cells: values.map(|value| self.bare(value)),
        }
    }
}

fn cause(cause: &CauseRecord) -> CauseRow {
    CauseRow {
        title: cause.title.clone(),
        share: match (cause.state.as_str(), cause.share) {
            ("found", Some(share)) => percent(share),
            ("not-resolvable", _) => "not resolvable".into(),
            _ => "not found".into(),
        },
        reading: cause.reading.clone(),
        looks_like: cause.looks_like.clone(),
    }
}
