//! What the brief asks for, held against what was measured.
//!
//! Method: an upper limit is kept where value and expanded uncertainty together stay within it (ISO 14253-1, from
//! memory); it is shown to be missed where the value less the uncertainty is beyond it; between the two neither is
//! shown, and the requirement counts as not met. Limits: one uncertainty for all quantities.

use super::evaluate::{AxisValues, Section, worst_section};
use super::measured::{Measurement, Stretch};
use super::plan::{covers, is_long};
use super::result::{CheckRecord, known};
use super::words::Words;
use crate::brief::Axis;
use crate::formula::iso_230_2 as iso;
use crate::units::{Length, Measure};

/// Two values closer than this part are equal, as for the rules.
const TOLERANCE: f64 = 1e-9;

/// What is judged: the values over all targets and, above 2 m, those of the sections.
pub(super) struct Judged<'a> {
    pub axis: &'a Axis,
    pub measurement: &'a Measurement,
    pub stretch: Stretch<'a>,
    pub whole: &'a AxisValues,
    pub sections: &'a [Section],
    pub uncertainty: Length,
    pub words: Words,
}

/// A value with the place where it was found, or why there is none.
struct Found {
    value: f64,
    stretch: String,
    missing: Option<String>,
}

impl Judged<'_> {
    /// The requirements in the order of the brief.
    pub fn checks(&self) -> Vec<CheckRecord> {
        let long = is_long(&self.stretch);
        let axis = self.axis;
        let covered = covers(self.measurement, &self.stretch);
        let whole = |value: Length| Found {
            value: value.si(),
            stretch: self.between(self.whole),
            missing: value.si().is_nan().then(|| NO_SCATTER.to_string()),
        };
        let accuracy = if long { whole(self.whole.systematic) } else { whole(self.whole.accuracy) };
        let mut checks = vec![self.check("accuracy", if long { "E" } else { "A" }, accuracy, axis.accuracy, covered)];
        // by agreement one section of a long axis may be measured in place of all of them
        let section_covered = if long { self.holds_a_section() } else { covered };
        if long || axis.section_accuracy.is_some() {
            let found = self.on_section(long, |values| values.accuracy);
            checks.push(self.check("section-accuracy", "A", found, axis.section_accuracy, section_covered));
        }
        let repeatability = self.on_section(long, |values| values.repeatability);
        checks.push(self.check("repeatability", "R", repeatability, axis.repeatability, section_covered));
        if long && section_covered && !covered {
            let judged = |check: &&mut CheckRecord| check.verdict == "pass" && check.requirement != "accuracy";
            checks.iter_mut().filter(judged).for_each(|check| check.remark = Some(ONE_SECTION.into()));
        }
        checks.push(self.check("reversal", "B", whole(self.whole.reversal), axis.reversal, covered));
        checks
    }

    fn between(&self, values: &AxisValues) -> String {
        format!("{} to {}", self.words.position(values.first.si()), self.words.position(values.last.si()))
    }

    /// Whether some section is measured over 2 m, as near as one spacing of the plan at each end.
    fn holds_a_section(&self) -> bool {
        let least = (iso::LONGEST_WHOLE - 2.0 * iso::GREATEST_SPACING) * (1.0 - 1e-9);
        self.sections.iter().any(|section| section.values.last.si() - section.values.first.si() >= least)
    }

    /// The value on the worst section, or over all targets where the travel is no longer than one.
    fn on_section(&self, long: bool, value: fn(&AxisValues) -> Length) -> Found {
        let nothing = |why: &str| Found { value: f64::NAN, stretch: "–".into(), missing: Some(why.into()) };
        if self.measurement.runs < 2 {
            return nothing(NO_SCATTER);
        }
        if !long {
            return Found { value: value(self.whole).si(), stretch: self.between(self.whole), missing: None };
        }
        match worst_section(self.sections, value) {
            Some(worst) => Found {
                value: value(&worst.values).si(),
                stretch: format!("{}, the worst of {}", self.between(&worst.values), self.sections.len()),
                missing: None,
            },
            None => nothing("no two targets stand within 2 m of each other"),
        }
    }

    fn check(&self, key: &str, quantity: &str, found: Found, limit: Option<Length>, covered: bool) -> CheckRecord {
        let guarded = iso::guarded_value(Length::of_si(found.value), self.uncertainty).si();
        let limit = limit.map_or(f64::NAN, Length::si);
        let utilisation = guarded / limit;
        let (verdict, shown, remark) = match (limit.is_nan(), found.missing) {
            (true, missing) => ("not-required", None, missing),
            (false, Some(missing)) => ("not-evaluated", None, Some(missing)),
            (false, None) if utilisation > 1.0 + TOLERANCE => {
                let beyond = (found.value - self.uncertainty.si()) / limit > 1.0 + TOLERANCE;
                ("fail", Some(if beyond { "missed" } else { "within-uncertainty" }), None)
            }
            (false, None) if !covered => ("not-evaluated", None, Some(NOT_COVERED.to_string())),
            (false, None) if utilisation <= 1.0 + TOLERANCE => ("pass", Some("met"), None),
            (false, None) => ("not-evaluated", None, Some("the value is not known".to_string())),
        };
        CheckRecord {
            requirement: key.into(),
            quantity: quantity.into(),
            stretch: found.stretch,
            value: known(found.value * 1e6),
            guarded: known(guarded * 1e6),
            limit: known(limit * 1e6),
            unit: "µm".into(),
            utilisation: known(utilisation),
            verdict: verdict.into(),
            shown: shown.map(String::from),
            remark,
        }
    }
}

const NO_SCATTER: &str = "one run in each direction gives no scatter";
const NOT_COVERED: &str = "the part of the travel that was measured keeps the limit, the rest was not measured";
const ONE_SECTION: &str = "on the part of the travel that was measured; that this stands for the rest is a matter of \
                           agreement";

/// The outcome of all checks: one that fails fails the whole; one that could not be judged leaves it open.
pub(super) fn outcome(checks: &[CheckRecord]) -> &'static str {
    let any = |verdict: &str| checks.iter().any(|check| check.verdict == verdict);
    if any("fail") {
        "fail"
    } else if any("not-evaluated") {
        "not-evaluated"
    } else if any("pass") {
        "pass"
    } else {
        "nothing-required"
    }
}
