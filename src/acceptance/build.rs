//! Everything together: from a measurement, a brief and a record to the result.

use super::causes::take_apart;
use super::diagnose::{Patient, periods};
use super::evaluate::{AxisValues, Section, TargetValues, at_targets, over, sections, worst_section};
use super::likeliest::likeliest;
use super::measured::{Measurement, Stretch};
use super::plan::{hidden_periods, is_long, remarks};
use super::predict::{Counterpart, Worksheet, predict, typical_scatter};
use super::result::*;
use super::verdict::{Judged, outcome};
use super::words::Words;
use crate::brief::{Axis, Brief};
use crate::record::{DecisionRecord, InputFile};
use crate::units::{Length, Measure, UnitSystem};
use sha2::{Digest, Sha256};

/// What an acceptance is made of.
#[derive(Debug, Clone, Copy)]
pub struct Parts<'a> {
    /// The brief.
    pub brief: &'a Brief,
    /// The axis of it that was measured.
    pub axis: &'a Axis,
    /// The recommendation for the brief.
    pub record: &'a DecisionRecord,
    /// What was measured, counted from the start of the travel.
    pub measurement: &'a Measurement,
    /// Expanded uncertainty of the measurement, if stated.
    pub uncertainty: Option<Length>,
}

/// Works the result out; the units are those of its sentences, numbers stay metric.
pub fn accept(parts: &Parts<'_>, units: UnitSystem) -> Acceptance {
    let words = Words { units };
    let measurement = parts.measurement;
    let stretch = Stretch { axis: &parts.axis.name, start: Length::of_si(0.0), travel: parts.axis.travel };
    let long = is_long(&stretch);
    let targets = at_targets(measurement);
    let whole = over(&targets);
    let sections = if long { sections(&targets) } else { Vec::new() };
    let judged = Judged {
        axis: parts.axis,
        measurement,
        stretch,
        whole: &whole,
        sections: &sections,
        uncertainty: parts.uncertainty.unwrap_or(Length::of_si(0.0)),
        words,
    };
    let checks = judged.checks();
    let sheet = Worksheet::of(parts.record.axes.iter().find(|axis| axis.name == parts.axis.name));
    let periods = periods(sheet);
    let apart = take_apart(measurement, &targets, &periods);
    let patient = Patient {
        measurement,
        targets: &targets,
        whole: &whole,
        parts: &apart,
        periods: &periods,
        sheet,
        swing: parts.brief.temperature_swing.value.si(),
        words,
    };
    let mut remarks = remarks(measurement, &stretch, &sections, parts.uncertainty.is_some(), words);
    remarks.extend(hidden_periods(&periods, &apart.unresolvable, words));
    let mut diagnosis = patient.diagnosis();
    let counterpart = Counterpart {
        long,
        whole: &whole,
        sections: &sections,
        targets: &targets,
        growth: apart.slope().map_or(f64::NAN, |slope| slope * parts.axis.travel.si()),
    };
    let prediction = predict(parts.record, &parts.axis.name, &counterpart, units);
    let terms = [whole.mean_range.si(), whole.reversal.si(), typical_scatter(&targets)].map(|si| si * 1e6);
    diagnosis.likeliest = likeliest(terms, &prediction, &checks, &diagnosis, words);
    let worst = |value: fn(&AxisValues) -> Length| {
        worst_section(&sections, value).map(|section: &Section| quantities(&section.values, false))
    };
    Acceptance {
        acceptance: ACCEPTANCE_VERSION.into(),
        tool: env!("CARGO_PKG_VERSION").into(),
        machine_name: parts.brief.machine.clone(),
        axis: parts.axis.name.clone(),
        travel: millimetres(parts.axis.travel.si()),
        outcome: outcome(&checks).into(),
        inputs: inputs(parts),
        measurement: MeasuredRecord {
            targets: targets.len(),
            runs: measurement.runs,
            first: millimetres(whole.first.si()),
            last: millimetres(whole.last.si()),
            mean_spacing: millimetres(measurement.span().si() / (targets.len() as f64 - 1.0)),
            uncertainty: parts.uncertainty.map(|uncertainty| micrometres(uncertainty.si())),
        },
        values: quantities(&whole, long),
        accuracy_section: worst(|values| values.accuracy),
        repeatability_section: worst(|values| values.repeatability),
        targets: targets.iter().map(target).collect(),
        checks,
        remarks,
        prediction,
        diagnosis,
    }
}

/// The files that went in: those of the record and the measurement.
fn inputs(parts: &Parts<'_>) -> Vec<InputFile> {
    let text = parts.measurement.text.as_bytes();
    let measured = InputFile {
        role: "measured".into(),
        name: parts.measurement.name.clone(),
        sha256: Sha256::digest(text).iter().map(|byte| format!("{byte:02x}")).collect(),
        file: None,
        layer: None,
    };
    std::iter::once(measured).chain(parts.record.inputs.iter().cloned()).collect()
}

fn target(values: &TargetValues) -> TargetRecord {
    let deviation = |length: Length| length.si() * 1e6;
    TargetRecord {
        position: values.position.si() * 1e3,
        mean_up: deviation(values.mean_up),
        mean_down: deviation(values.mean_down),
        scatter_up: known(deviation(values.scatter_up)),
        scatter_down: known(deviation(values.scatter_down)),
        reversal: deviation(values.reversal),
        repeatability: known(deviation(values.repeatability)),
    }
}

/// The quantities in the order in which a test report has them; R and A are not stated over more than 2 m.
fn quantities(values: &AxisValues, beyond_2m: bool) -> ValuesRecord {
    let repeated = |value: Length| if beyond_2m { f64::NAN } else { value.si() };
    let all = [
        ("reversal", "B", "reversal, the largest amount", values.reversal.si()),
        ("mean-reversal", "B̄", "mean reversal", values.mean_reversal.si()),
        ("mean-range", "M", "range of the mean bidirectional deviation", values.mean_range.si()),
        ("systematic-up", "E↑", "systematic deviation upward", values.systematic_up.si()),
        ("systematic-down", "E↓", "systematic deviation downward", values.systematic_down.si()),
        ("systematic", "E", "bidirectional systematic deviation", values.systematic.si()),
        ("repeatability-up", "R↑", "repeatability upward", repeated(values.repeatability_up)),
        ("repeatability-down", "R↓", "repeatability downward", repeated(values.repeatability_down)),
        ("repeatability", "R", "bidirectional repeatability", repeated(values.repeatability)),
        ("accuracy-up", "A↑", "accuracy upward", repeated(values.accuracy_up)),
        ("accuracy-down", "A↓", "accuracy downward", repeated(values.accuracy_down)),
        ("accuracy", "A", "bidirectional accuracy", repeated(values.accuracy)),
    ];
    let quantity = |(id, symbol, words, value): (&str, &str, &str, f64)| QuantityRecord {
        id: id.into(),
        symbol: symbol.into(),
        words: words.into(),
        value: known(value * 1e6),
        unit: "µm".into(),
    };
    ValuesRecord {
        first: millimetres(values.first.si()),
        last: millimetres(values.last.si()),
        targets: values.targets,
        quantities: all.map(quantity).into(),
    }
}
