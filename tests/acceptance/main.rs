//! A measured axis: definitions on random data, the budget against simulated axes, causes that were put in and are
//! found again, verdicts, faults of the table, document and chart.

mod causes;
mod definitions;
mod faults;
mod page;
mod simulated;
mod verdicts;

use axiswright::acceptance::{Acceptance, CauseRecord, CheckRecord, Parts, accept, parse};
use axiswright::brief::{self, Brief};
use axiswright::record::{CandidateRecord, DecisionRecord, WorksheetLine};
use axiswright::units::{Length, Measure, UnitSystem};

/// A random number generator of our own, so that a test gives the same data everywhere (xorshift by Marsaglia).
pub struct Dice(u64);

impl Dice {
    pub fn new(seed: u64) -> Dice {
        Dice(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) | 1)
    }

    /// Evenly between 0 and 1.
    pub fn even(&mut self) -> f64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// Normal with mean 0 and standard deviation 1 (Box and Muller).
    pub fn normal(&mut self) -> f64 {
        let radius = (-2.0 * (1.0 - self.even()).ln()).sqrt();
        radius * (std::f64::consts::TAU * self.even()).cos()
    }
}

/// A table of deviations (µm) at targets (mm), from a function of target, direction (1 up, −1 down) and run.
pub fn table(targets: &[f64], runs: usize, mut deviation: impl FnMut(f64, f64, usize) -> f64) -> String {
    let mut text = String::from("target [mm],direction,run,deviation [µm]\n");
    for run in 0..runs {
        for (word, sign) in [("up", 1.0), ("down", -1.0)] {
            for target in targets {
                text.push_str(&format!("{target},{word},{},{}\n", run + 1, deviation(*target, sign, run)));
            }
        }
    }
    text
}

/// A brief of one axis with this travel and these requirements.
pub fn brief(travel: &str, requirements: &str) -> Brief {
    let text = format!(
        "machine: Test machine\ncurrency: EUR\ntemperature-swing: 6 K\naxes:\n  slide:\n    direction: horizontal\n    \
         travel: {travel}\n    moved-mass: 120 kg\n    speed: 15 m/min\n    acceleration: 2 m/s²\n{requirements}"
    );
    brief::load("brief.yaml", &text).expect("a sound brief")
}

/// A record whose drive for the axis has these lines on its worksheet; without lines nothing was chosen.
pub fn record(lines: &[(&str, f64, &str)]) -> DecisionRecord {
    let mut record: DecisionRecord =
        serde_json::from_str(include_str!("../data/record.json")).expect("the record of the tests is a record");
    record.axes.truncate(1);
    record.axes[0].name = "slide".into();
    record.axes[0].chosen = record.axes[0].chosen.take().filter(|_| !lines.is_empty()).map(|drive| CandidateRecord {
        worksheet: lines
            .iter()
            .map(|(id, value, unit)| WorksheetLine {
                id: (*id).into(),
                symbol: "x".into(),
                value: Some(*value),
                unit: (*unit).into(),
                origin: "formula".into(),
                formula: None,
                inputs: Vec::new(),
            })
            .collect(),
        ..drive
    });
    record
}

/// The result for a table.
pub fn result(brief: &Brief, record: &DecisionRecord, text: &str, uncertainty: Option<f64>) -> Acceptance {
    let measurement = parse("measured.csv", text, None).expect("a sound table");
    let parts = Parts {
        brief,
        axis: &brief.axes[0],
        record,
        measurement: &measurement,
        uncertainty: uncertainty.map(|micrometres| Length::of_si(micrometres * 1e-6)),
    };
    accept(&parts, UnitSystem::Metric)
}

pub fn check<'a>(result: &'a Acceptance, requirement: &str) -> &'a CheckRecord {
    result.checks.iter().find(|check| check.requirement == requirement).expect("the check")
}

pub fn cause<'a>(result: &'a Acceptance, id: &str) -> &'a CauseRecord {
    result.diagnosis.causes.iter().find(|cause| cause.id == id).expect("the cause")
}

/// A quantity over all targets, µm.
pub fn quantity(result: &Acceptance, id: &str) -> f64 {
    let found = result.values.quantities.iter().find(|quantity| quantity.id == id);
    found.expect("the quantity").value.expect("a value")
}

/// The predicted and the measured value of a term, µm.
pub fn term(result: &Acceptance, id: &str) -> (f64, f64) {
    let found = result.prediction.terms.iter().find(|term| term.id == id).expect("the term");
    (found.predicted.expect("predicted"), found.measured.expect("measured"))
}
