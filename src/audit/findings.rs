//! Every finding judged again: from the worksheet to the demand and the limit, from these to utilisation and verdict.
//!
//! Method: the demand stands in the worksheet; the limit follows from the words of the rule in the record; utilisation and
//! verdict follow from demand and limit by the same arithmetic that the search uses; the waivers are those of the record.
//! Limits: limits that are values stand in the words with six digits; the rules themselves are held against their files by
//! recommending again. Which rules ought to have been judged is found there too.

use super::candidates::Placed;
use super::fault::{Checked, Fault, same};
use crate::record::{DecisionRecord, FindingRecord};
use crate::rule::{Sense, passes, utilisation};
use std::collections::BTreeMap;

/// Checks the findings of these drives.
pub fn check(record: &DecisionRecord, drives: &[Placed<'_>]) -> Checked {
    let rules: BTreeMap<&str, (&str, &str)> =
        record.rules.iter().map(|rule| (rule.id.as_str(), (rule.limit.as_str(), rule.obligation.as_str()))).collect();
    let mut checked = Checked::default();
    for placed in drives {
        let values: BTreeMap<&str, Option<f64>> =
            placed.drive.worksheet.iter().map(|line| (line.id.as_str(), line.value)).collect();
        let units: BTreeMap<&str, &str> =
            placed.drive.worksheet.iter().map(|line| (line.id.as_str(), line.unit.as_str())).collect();
        for finding in &placed.drive.findings {
            checked.count += 1;
            let judge = Judge { record, placed, finding, values: &values, units: &units };
            judge.demand(&mut checked);
            match rules.get(finding.rule.as_str()) {
                Some((limit, obligation)) => {
                    judge.limit(limit, &mut checked);
                    if finding.obligation != *obligation {
                        let (path, what) = judge.place("obligation", "the obligation of the rule is another");
                        checked.faults.push(Fault::word(path, what, &finding.obligation, obligation));
                    }
                }
                None => {
                    let (path, what) = judge.place("rule", "the record does not list the rule");
                    checked.faults.push(Fault::word(path, what, &finding.rule, "a rule of the list `rules`"));
                }
            }
            judge.utilisation(&mut checked);
            judge.verdict(&mut checked);
        }
    }
    for axis in &record.axes {
        for family in &axis.families {
            let place = format!("axes[{}].families[{}]", axis.name, family.family);
            let words = format!("axis {}, family {}", axis.name, family.family);
            for finding in &family.ruled_out_by {
                let path = format!("{place}.ruled-out-by[{}]", finding.rule);
                best_reached(finding, path, &words, &mut checked);
            }
            if let Some(finding) = &family.best_on_chief_rule {
                best_reached(finding, format!("{place}.best-on-chief-rule"), &words, &mut checked);
            }
        }
    }
    checked
}

/// The best that a family reaches on a rule that rules it out: it is not enough.
fn best_reached(finding: &FindingRecord, path: String, words: &str, checked: &mut Checked) {
    checked.count += 1;
    if let Some(expected) = expected_utilisation(finding) {
        let what = format!("{words}, best on rule `{}`: the utilisation is not demand over limit", finding.rule);
        checked.faults.push(Fault::number(
            format!("{path}.utilisation"),
            what,
            finding.utilisation,
            Some(expected).filter(|value| value.is_finite()),
        ));
    }
    if finding.verdict == "pass" || finding.utilisation.is_some_and(passes) {
        let what = format!("{words}, best on rule `{}`: a rule that is kept rules nothing out", finding.rule);
        checked.faults.push(Fault::word(format!("{path}.verdict"), what, &finding.verdict, "fail or not-evaluated"));
    }
}

/// The utilisation that follows from demand and limit, where it is not the one that stands there.
fn expected_utilisation(finding: &FindingRecord) -> Option<f64> {
    let number = |value: Option<f64>| value.unwrap_or(f64::NAN);
    let expected = utilisation(sense(finding)?, number(finding.demand), number(finding.limit));
    let agrees = match finding.utilisation {
        Some(found) => same(found, expected, 4.0, expected.abs()),
        None => !expected.is_finite(),
    };
    (!agrees).then_some(expected)
}

fn sense(finding: &FindingRecord) -> Option<Sense> {
    [Sense::AtMost, Sense::AtLeast].into_iter().find(|sense| sense.word() == finding.sense)
}

struct Judge<'j, 'r> {
    record: &'r DecisionRecord,
    placed: &'j Placed<'r>,
    finding: &'r FindingRecord,
    values: &'j BTreeMap<&'r str, Option<f64>>,
    units: &'j BTreeMap<&'r str, &'r str>,
}

impl Judge<'_, '_> {
    fn place(&self, field: &str, what: &str) -> (String, String) {
        let rule = &self.finding.rule;
        (
            format!("{}.findings[{rule}].{field}", self.placed.path),
            format!("{}, rule `{rule}`: {what}", self.placed.words),
        )
    }

    fn value(&self, id: &str) -> Option<f64> {
        self.values.get(id).copied().flatten()
    }

    fn demand(&self, checked: &mut Checked) {
        let expected = self.value(&self.finding.characteristic);
        if self.finding.demand != expected {
            let (path, what) = self.place("demand", "the demand is not what the worksheet says");
            checked.faults.push(Fault::number(path, what, self.finding.demand, expected));
        }
        let unit = self.units.get(self.finding.characteristic.as_str());
        if let Some(unit) = unit.filter(|unit| **unit != self.finding.unit) {
            let (path, what) = self.place("unit", "the unit is not that of the worksheet");
            checked.faults.push(Fault::word(path, what, &self.finding.unit, unit));
        }
    }

    /// The words of a limit: "screw-speed ≤ 0.8 · whip-speed", "acceleration ≤ 20 m/s²".
    fn limit(&self, words: &str, checked: &mut Checked) {
        let Some(sense) = sense(self.finding) else {
            let (path, what) = self.place("sense", "the sense is no word of ours");
            checked.faults.push(Fault::word(path, what, &self.finding.sense, "at-most or at-least"));
            return;
        };
        let Some((demand, limit)) = words.split_once(&format!(" {} ", sense.sign())) else {
            let (path, what) = self.place("sense", "the rule limits on the other side");
            checked.faults.push(Fault::word(path, what, &self.finding.sense, words));
            return;
        };
        if demand != self.finding.characteristic {
            let (path, what) = self.place("characteristic", "the rule judges another quantity");
            checked.faults.push(Fault::word(path, what, &self.finding.characteristic, demand));
        }
        let (factor, of) = limit.split_once(" · ").unwrap_or(("1", limit));
        let factor: Option<f64> = factor.parse().ok();
        let (expected, roundings) = match (factor, self.values.get(of)) {
            (Some(factor), Some(value)) => {
                // both of one dimension; units of another size are told apart by their factors
                let from = self.units.get(of).copied().unwrap_or_default();
                (value.map(|value| factor * value * ratio(from, &self.finding.unit)), 6.0)
            }
            // a limit that does not exist on this drive has no line
            (Some(_), None) if limit.contains(" · ") => (None, 0.0),
            _ => {
                let number: Option<f64> = limit.split(' ').next().and_then(|number| number.parse().ok());
                // six digits
                (number, 5e-6 / f64::EPSILON)
            }
        };
        let agrees = match (self.finding.limit, expected) {
            (Some(found), Some(expected)) => same(found, expected, roundings, expected.abs()),
            (None, None) => true,
            _ => false,
        };
        if !agrees {
            let (path, what) = self.place("limit", &format!("the limit does not follow from `{words}`"));
            checked.faults.push(Fault::number(path, what, self.finding.limit, expected));
        }
    }

    fn utilisation(&self, checked: &mut Checked) {
        if let Some(expected) = expected_utilisation(self.finding) {
            let (path, what) = self.place("utilisation", "the utilisation is not demand over limit");
            let expected = Some(expected).filter(|value| value.is_finite());
            checked.faults.push(Fault::number(path, what, self.finding.utilisation, expected));
        }
    }

    fn verdict(&self, checked: &mut Checked) {
        let finding = self.finding;
        let of_axis = |axis: &Option<String>| axis.as_ref().is_none_or(|axis| axis == self.placed.axis);
        let waived = self.record.waivers.iter().any(|waiver| waiver.rule == finding.rule && of_axis(&waiver.axis));
        let expected: &[&str] = match finding.utilisation {
            Some(utilisation) if passes(utilisation) => &["pass"],
            _ if waived => &["waived"],
            Some(_) => &["fail"],
            // null stands for not known and for without bound
            None => &["not-evaluated", "fail"],
        };
        if !expected.contains(&finding.verdict.as_str()) {
            let (path, what) = self.place("verdict", "the verdict does not follow from the utilisation");
            checked.faults.push(Fault::word(path, what, &finding.verdict, &expected.join(" or ")));
        }
    }
}

/// How many of the second unit make one of the first, both of one dimension.
fn ratio(from: &str, to: &str) -> f64 {
    if from == to {
        return 1.0;
    }
    let size = |name: &str, dimension: crate::units::Dimension| {
        dimension.units().find(|unit| unit.name == name).map(|unit| unit.si)
    };
    let of = |about: &crate::ledger::About| size(from, about.dimension).zip(size(to, about.dimension));
    let known = crate::characteristic::all().find_map(of);
    known.map_or(f64::NAN, |(from, to)| from / to)
}
