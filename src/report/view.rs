//! The record as the templates' builders read it: look-ups by id, and figures in the reader's units.

use super::{figure, inch, words};
use crate::record::*;
use crate::units::UnitSystem;

/// A record and the units it is shown in.
#[derive(Clone, Copy)]
pub struct View<'a> {
    /// The record.
    pub record: &'a DecisionRecord,
    /// The units of the reader.
    pub units: UnitSystem,
}

impl<'a> View<'a> {
    /// The rule with this id.
    pub fn rule(&self, id: &str) -> Option<&'a RuleRecord> {
        self.record.rules.iter().find(|rule| rule.id == id)
    }

    /// The title of a rule, or its id in words.
    pub fn rule_title(&self, id: &str) -> String {
        self.rule(id).map_or_else(|| words::spaced(id), |rule| one_line(rule.title.trim_end_matches('.')))
    }

    /// The formula with this id.
    pub fn formula(&self, id: &str) -> Option<&'a FormulaRecord> {
        self.record.formulas.iter().find(|formula| formula.id == id)
    }

    /// What a characteristic is, in words; phases share those of their characteristic.
    pub fn words_of(&self, id: &str) -> String {
        let base = base(id);
        let known = self.record.characteristics.iter().find(|known| known.id == base);
        known.map_or_else(|| words::spaced(base), |known| known.words.clone())
    }

    /// A value in the reader's units, three digits.
    pub fn quantity(&self, value: Option<f64>, unit: &str) -> String {
        figure::quantity(value, unit, self.units, 3)
    }

    /// The value of a worksheet line: as given, or to three digits where it is worked out.
    pub fn line_value(&self, line: &WorksheetLine) -> String {
        if line.unit.is_empty() {
            return figure::to_the_cent(line.value, &self.record.currency);
        }
        match line.value {
            // a count that is given, such as the steps of an encoder, keeps all its digits
            Some(value) if line.unit == "1" && line.origin != "formula" && value >= 1e6 && value.fract() == 0.0 => {
                figure::count(value.min(1e15) as u64)
            }
            _ => figure::quantity(line.value, &line.unit, self.units, if line.origin == "formula" { 4 } else { 6 }),
        }
    }

    /// The value of a characteristic of a drive, three digits.
    pub fn value_of(&self, candidate: &CandidateRecord, id: &str) -> Option<String> {
        let line = candidate.line(id).filter(|line| line.value.is_some())?;
        Some(self.quantity(line.value, &line.unit))
    }

    /// Demand and limit of a finding, with enough digits to tell them apart.
    pub fn pair(&self, finding: &FindingRecord) -> (String, String) {
        figure::pair(finding.demand, finding.limit, &finding.unit, self.units)
    }

    /// Money in the record's currency.
    pub fn money(&self, amount: Option<f64>) -> String {
        figure::money(amount, &self.record.currency)
    }

    /// Whether more than the cost over the years is weighed.
    pub fn weighs_more_than_cost(&self) -> bool {
        self.record.machine.objective.contains('×')
    }

    /// What was minimised, in the record's currency.
    pub fn objective(&self) -> String {
        self.record.machine.objective.replace("currency", &self.record.currency)
    }

    /// A text of the brief, such as "60 mm", in the reader's units.
    pub fn text(&self, text: &str) -> String {
        inch::shown_text(text, self.units)
    }

    /// A finding as a clause: "the speed of the screw is 2000 1/min, and at most 184 1/min is allowed".
    pub fn clause(&self, finding: &FindingRecord) -> String {
        let (demand, limit) = self.pair(finding);
        let what = self.brief_words(&finding.characteristic);
        // “how far the slide lags behind” takes no article
        let what = what.strip_prefix("how far ").map_or(what.clone(), |far| format!("distance {far}"));
        let is = if PLURAL.iter().any(|word| what.starts_with(word)) { "are" } else { "is" };
        match (finding.demand, finding.limit, finding.sense.as_str()) {
            // a count that may not even be one
            (Some(_), Some(most), "at-most") if what.starts_with("number of ") && most < 1.0 => {
                format!("the {what} {is} {demand}, and none is allowed")
            }
            (Some(_), Some(_), "at-least") => format!("the {what} {is} {demand}, and at least {limit} is needed"),
            (Some(_), Some(_), _) => format!("the {what} {is} {demand}, and at most {limit} is allowed"),
            _ => format!("the {what} could not be worked out"),
        }
    }

    /// What a characteristic is, without the explanation that follows a colon.
    pub fn brief_words(&self, id: &str) -> String {
        let words = self.words_of(id);
        words.split([':', ';']).next().unwrap_or(&words).trim_end().to_string()
    }
}

/// Words of characteristics that stand in the plural.
const PLURAL: [&str; 8] =
    ["teeth", "load cycles", "ends", "working hours", "parts", "rack segments", "fasteners", "turns"];

/// The id of a characteristic without the number of its phase.
pub fn base(id: &str) -> &str {
    match id.rsplit_once('.') {
        Some((base, phase)) if !phase.is_empty() && phase.bytes().all(|byte| byte.is_ascii_digit()) => base,
        _ => id,
    }
}

/// The number of the phase that an id names.
pub fn phase(id: &str) -> Option<usize> {
    let (_, phase) = id.rsplit_once('.')?;
    phase.parse().ok()
}

/// The findings of a drive, worst first; what could not be worked out comes before all.
pub fn worst_first(candidate: &CandidateRecord) -> Vec<&FindingRecord> {
    let mut findings: Vec<&FindingRecord> = candidate.findings.iter().collect();
    findings.sort_by(|first, second| {
        let key = |finding: &FindingRecord| finding.utilisation.filter(|value| value.is_finite()).unwrap_or(f64::MAX);
        key(second).total_cmp(&key(first))
    });
    findings
}

/// Sizes and classes that fit or do not: one that is just allowed is no want of reserve.
const FITS: [&str; 7] =
    ["bearing-bore", "belts", "grade-number", "nut-unit-misfit", "pulley-diameter", "supply-voltage", "teeth"];

/// Whether a finding that is kept is about a size or class, so that it says nothing about reserve.
pub fn only_fits(finding: &FindingRecord) -> bool {
    finding.verdict == "pass" && FITS.contains(&finding.characteristic.as_str())
}

/// The worst binding finding of a drive.
pub fn worst_binding(candidate: &CandidateRecord) -> Option<&FindingRecord> {
    worst_first(candidate).into_iter().find(|finding| finding.obligation == "shall" && !only_fits(finding))
}

/// The worst binding finding that fails.
pub fn worst_failing(candidate: &CandidateRecord) -> Option<&FindingRecord> {
    failing(candidate).into_iter().next()
}

/// The binding findings that fail, worst first.
pub fn failing(candidate: &CandidateRecord) -> Vec<&FindingRecord> {
    let kept = |finding: &FindingRecord| finding.verdict == "pass" || finding.verdict == "waived";
    let failed = |finding: &&FindingRecord| finding.obligation == "shall" && !kept(finding);
    worst_first(candidate).into_iter().filter(failed).collect()
}

/// A text on one line.
pub fn one_line(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}
