//! What a record adds up: costs of a drive, the census of a family, the machine as a whole, shares, outcomes.
//!
//! Method: each sum is added again from its parts in the record. Limits: amounts of single cost lines and counts of single
//! rules are held against the inputs by recommending again.

use super::candidates::Placed;
use super::fault::{Checked, Fault, same};
use crate::record::{AxisRecord, CandidateRecord, DecisionRecord, FamilyRecord, Outcome};

/// Checks every sum of a record.
pub fn check(record: &DecisionRecord, drives: &[Placed<'_>]) -> Checked {
    let mut sums = Sums { checked: Checked::default() };
    for placed in drives {
        sums.cost(placed);
    }
    for axis in &record.axes {
        for family in &axis.families {
            sums.census(axis, family);
        }
        sums.outcome(axis);
        sums.shares(axis);
    }
    sums.machine(record);
    sums.waivers(record);
    sums.checked
}

struct Sums {
    checked: Checked,
}

impl Sums {
    /// A number against the sum of so many parts.
    fn number(
        &mut self,
        path: String,
        what: String,
        found: Option<f64>,
        expected: Option<f64>,
        parts: usize,
        size: f64,
    ) {
        self.checked.count += 1;
        let agrees = match (found, expected) {
            (Some(found), Some(expected)) => same(found, expected, 2.0 + parts as f64, size),
            (found, expected) => found.is_none() && expected.is_none(),
        };
        if !agrees {
            self.checked.faults.push(Fault::number(path, what, found, expected));
        }
    }

    fn word(&mut self, path: String, what: String, found: &str, expected: &str) {
        self.checked.count += 1;
        if found != expected {
            self.checked.faults.push(Fault::word(path, what, found, expected));
        }
    }

    fn total(&mut self, path: String, what: String, found: Option<f64>, parts: &[f64]) {
        let sum: f64 = parts.iter().sum();
        let size: f64 = parts.iter().map(|part| part.abs()).sum();
        self.number(path, what, found, finite(sum), parts.len(), size);
    }

    fn cost(&mut self, placed: &Placed<'_>) {
        let (drive, path, words) = (placed.drive, &placed.path, &placed.words);
        let of = |kind: &str| -> Vec<f64> {
            drive.cost.lines.iter().filter(|line| line.kind == kind).map(|line| line.amount).collect()
        };
        let bought = of("purchase");
        self.total(
            format!("{path}.cost.purchase"),
            format!("{words}: the price to buy is not the sum of its lines"),
            finite(drive.cost.purchase),
            &bought,
        );
        if let Some(annuity) = drive.value("annuity") {
            let yearly = of("yearly").into_iter().map(|amount| amount * annuity);
            let parts: Vec<f64> = bought.iter().copied().chain(yearly).chain(of("exchange")).collect();
            self.total(
                format!("{path}.cost.whole-life"),
                format!(
                    "{words}: the whole-life cost is not the sum of price, yearly lines times annuity and exchanges"
                ),
                finite(drive.cost.whole_life),
                &parts,
            );
        }
        let sheet = [
            ("purchase", drive.cost.purchase, "purchase-cost"),
            ("whole-life", drive.cost.whole_life, "whole-life-cost"),
        ];
        for (field, found, id) in sheet {
            let expected = drive.value(id);
            let what = format!("{words}: the cost is not that of worksheet line `{id}`");
            self.number(
                format!("{path}.cost.{field}"),
                what,
                finite(found),
                expected,
                0,
                expected.unwrap_or(0.0).abs(),
            );
        }
    }

    fn census(&mut self, axis: &AxisRecord, family: &FamilyRecord) {
        let path = format!("axes[{}].families[{}]", axis.name, family.family);
        let words = format!("axis {}, family {}", axis.name, family.family);
        let excluded = family.excluded_by.iter().map(|exclusion| u128::from(exclusion.configurations));
        let expected = excluded.sum::<u128>() + u128::from(family.admissible);
        self.checked.count += 1;
        if expected != u128::from(family.configurations) {
            let what = format!("{words}: excluded and admissible configurations do not add up to all");
            let (found, expected) = (Some(family.configurations as f64), Some(expected as f64));
            self.checked.faults.push(Fault::number(format!("{path}.configurations"), what, found, expected));
        }
        let presence = [
            ("best", family.best.is_some(), family.admissible > 0),
            ("nearest", family.nearest.is_some() && family.admissible > 0, false),
        ];
        for (field, found, expected) in presence {
            let what = format!("{words}: the count of admissible configurations and the drive `{field}` do not agree");
            self.word(format!("{path}.{field}"), what, presence_word(found), presence_word(expected));
        }
        let fails = |drive: &CandidateRecord| drive.findings.iter().any(binding_failure);
        if let Some(best) = &family.best {
            let what = format!("{words}: the best drive fails a binding rule");
            self.word(format!("{path}.best.findings"), what, kept(fails(best)), kept(false));
        }
        if let Some(nearest) = &family.nearest {
            let what = format!("{words}: the nearest drive fails no binding rule");
            self.word(format!("{path}.nearest.findings"), what, kept(fails(nearest)), kept(true));
        }
    }

    fn outcome(&mut self, axis: &AxisRecord) {
        let path = format!("axes[{}]", axis.name);
        let words = format!("axis {}", axis.name);
        let what = format!("{words}: outcome and drive do not agree");
        let chosen = presence_word(axis.chosen.is_some());
        self.word(format!("{path}.outcome"), what, chosen, presence_word(axis.outcome == Outcome::Chosen));
        if let Some(chosen) = &axis.chosen {
            let fails = chosen.findings.iter().any(binding_failure);
            let what = format!("{words}: the drive chosen fails a binding rule");
            self.word(format!("{path}.chosen.findings"), what, kept(fails), kept(false));
        }
    }

    fn shares(&mut self, axis: &AxisRecord) {
        let path = format!("axes[{}]", axis.name);
        for range in &axis.weights {
            self.checked.count += 1;
            if !(range.from <= range.now && range.now <= range.to) {
                let what =
                    format!("axis {}: the share of weight `{}` is not within its range", axis.name, range.weight);
                let place = format!("{path}.weights[{}].now", range.weight);
                self.checked.faults.push(Fault::number(place, what, Some(range.now), None));
            }
        }
        if let Some(robustness) = &axis.robustness {
            for (index, odds) in robustness.drives.iter().enumerate() {
                self.checked.count += 1;
                let passed = odds.probability * robustness.samples as f64;
                let whole = same(passed, passed.round(), 4.0, passed.abs());
                if !(whole && odds.low <= odds.probability && odds.probability <= odds.high) {
                    let what = format!(
                        "axis {}: the share of samples in which drive {} is admissible is no share of {} samples \
                         within its interval",
                        axis.name,
                        index + 1,
                        robustness.samples
                    );
                    let place = format!("{path}.robustness.drives[{index}].probability");
                    let expected = Some(passed.round() / robustness.samples as f64);
                    self.checked.faults.push(Fault::number(place, what, Some(odds.probability), expected));
                }
            }
        }
    }

    fn machine(&mut self, record: &DecisionRecord) {
        let chosen: Option<Vec<&CandidateRecord>> = record.axes.iter().map(|axis| axis.chosen.as_ref()).collect();
        let nothing = record.axes.iter().any(|axis| axis.outcome == Outcome::NothingAdmissible);
        let expected = match (nothing, &chosen) {
            (true, _) => Outcome::NothingAdmissible,
            (false, Some(_)) => Outcome::Chosen,
            (false, None) => Outcome::MachineLimit,
        };
        let what = "the outcome of the machine does not follow from its axes".to_string();
        self.word("outcome".into(), what, outcome_word(record.outcome), outcome_word(expected));
        let Some(chosen) = chosen else { return };
        let machine = &record.machine;
        let sum = |of: fn(&CandidateRecord) -> f64| -> Vec<f64> { chosen.iter().map(|drive| of(drive)).collect() };
        let what = "machine: the price to buy is not the sum over the axes".to_string();
        self.total("machine.purchase".into(), what, machine.purchase, &sum(|drive| drive.cost.purchase));
        let what = "machine: the whole-life cost is not the sum over the axes".to_string();
        self.total(
            "machine.whole-life-cost".into(),
            what,
            machine.whole_life_cost,
            &sum(|drive| drive.cost.whole_life),
        );
        let power = machine.peak_power.as_ref().and_then(|power| power.value);
        let what = "machine: the peak power is not the sum of `supply-power` over the axes".to_string();
        let powers = sum(|drive| drive.value("supply-power").unwrap_or(f64::NAN));
        self.total("machine.peak-power.value".into(), what, power, &powers);
        let weeks = chosen.iter().filter_map(|drive| drive.value("lead-time")).reduce(|a, b| if b > a { b } else { a });
        let lead_time = machine.lead_time.as_ref().and_then(|time| time.value);
        let what = "machine: the delivery time is not the longest of the axes".to_string();
        self.number("machine.lead-time.value".into(), what, lead_time, weeks, 2, weeks.unwrap_or(0.0).abs());
        for limit in &machine.limits {
            let amount = |amount: &Option<crate::record::Amount>| amount.as_ref().and_then(|amount| amount.value);
            let reached = match limit.limit.as_str() {
                "purchase" => machine.purchase,
                "tool-point-error" => amount(&machine.tool_point_error),
                "supply-power" => power,
                "motor-models" => machine.motor_models.map(f64::from),
                "gearbox-models" => machine.gearbox_models.map(f64::from),
                "lead-time" => lead_time,
                _ => continue,
            };
            let path = format!("machine.limits[{}]", limit.limit);
            let what = format!("machine: what is reached on limit `{}` is not what the machine reaches", limit.limit);
            self.number(format!("{path}.reached"), what, limit.reached, reached, 0, reached.unwrap_or(0.0).abs());
            let verdict = match limit.reached {
                None => "not-evaluated",
                Some(reached) if reached <= limit.allowed * (1.0 + 1e-9) => "pass",
                Some(_) => "fail",
            };
            let what = format!("machine: the verdict on limit `{}` does not follow", limit.limit);
            self.word(format!("{path}.verdict"), what, &limit.verdict, verdict);
        }
    }

    fn waivers(&mut self, record: &DecisionRecord) {
        for (index, waiver) in record.waivers.iter().enumerate() {
            let used =
                record.axes.iter().filter(|axis| waiver.axis.as_ref().is_none_or(|name| *name == axis.name)).any(
                    |axis| {
                        let findings = axis.chosen.iter().flat_map(|drive| &drive.findings);
                        findings.into_iter().any(|finding| finding.rule == waiver.rule && finding.verdict == "waived")
                    },
                );
            let what = format!("the waiver of rule `{}`: whether a drive chosen needs it", waiver.rule);
            self.word(format!("waivers[{index}].used"), what, used_word(waiver.used), used_word(used));
        }
    }
}

fn binding_failure(finding: &crate::record::FindingRecord) -> bool {
    finding.obligation == "shall" && !matches!(finding.verdict.as_str(), "pass" | "waived")
}

fn finite(value: f64) -> Option<f64> {
    value.is_finite().then_some(value)
}

fn presence_word(there: bool) -> &'static str {
    if there { "a drive" } else { "no drive" }
}

fn kept(fails: bool) -> &'static str {
    if fails { "fails one" } else { "keeps all" }
}

fn used_word(used: bool) -> &'static str {
    if used { "used" } else { "not used" }
}

fn outcome_word(outcome: Outcome) -> &'static str {
    match outcome {
        Outcome::Chosen => "chosen",
        Outcome::NothingAdmissible => "nothing-admissible",
        Outcome::MachineLimit => "machine-limit",
    }
}
