//! The error budget of the recommended drive beside what was measured, term by term.
//!
//! Method: every number is a line of the worksheet of the record; its measured counterpart follows the same definition.
//! Limits: the prediction is that of the drive that is recommended; whether it was built is not seen here.

use super::evaluate::{AxisValues, Section, TargetValues, worst_section};
use super::result::{PredictionRecord, TermRecord, known};
use crate::formula::budget;
use crate::record::{AxisRecord, CandidateRecord, DecisionRecord};
use crate::report;
use crate::units::{Dimension, Length, Measure, UnitSystem};

/// What the worksheet of the chosen drive says, in SI units; NaN for what it does not hold.
#[derive(Debug, Clone, Copy)]
pub(super) struct Worksheet<'a> {
    drive: Option<&'a CandidateRecord>,
}

impl<'a> Worksheet<'a> {
    /// The chosen drive of an axis.
    pub fn of(axis: Option<&'a AxisRecord>) -> Worksheet<'a> {
        Worksheet { drive: axis.and_then(|axis| axis.chosen.as_ref()) }
    }

    /// The drive.
    pub fn drive(self) -> Option<&'a CandidateRecord> {
        self.drive
    }

    /// The value of a line of this dimension.
    pub fn value(self, dimension: Dimension, id: &str) -> f64 {
        let line = self.drive.and_then(|drive| drive.line(id));
        let value = line.and_then(|line| {
            let unit = dimension.units().find(|unit| unit.name == line.unit)?;
            line.value.map(|value| value * unit.si)
        });
        value.unwrap_or(f64::NAN)
    }

    /// A length of the worksheet, m.
    pub fn length(self, id: &str) -> f64 {
        self.value(Dimension::Length, id)
    }
}

/// The root mean square of all scatters: what stands for the scatter of the axis.
pub(super) fn typical_scatter(targets: &[TargetValues]) -> f64 {
    let squares: f64 = targets.iter().map(|t| t.scatter_up.si().powi(2) + t.scatter_down.si().powi(2)).sum();
    (squares / (2.0 * targets.len() as f64)).sqrt()
}

/// What was measured, as the terms of a budget are compared with it.
pub(super) struct Counterpart<'a> {
    pub long: bool,
    pub whole: &'a AxisValues,
    pub sections: &'a [Section],
    pub targets: &'a [TargetValues],
    /// Slope of the mean deviation times the travel, m; NaN where no slope stands out.
    pub growth: f64,
}

/// The prediction beside the measurement.
pub(super) fn predict(
    record: &DecisionRecord,
    axis: &str,
    measured: &Counterpart<'_>,
    units: UnitSystem,
) -> PredictionRecord {
    let found = record.axes.iter().find(|found| found.name == axis);
    let sheet = Worksheet::of(found);
    let Some(drive) = sheet.drive() else {
        return PredictionRecord {
            family: None,
            drive: None,
            terms: Vec::new(),
            remark: "No drive was chosen for this axis, so nothing is predicted; the measurement is compared with the \
                     requirement only."
                .into(),
        };
    };
    let on_section = |value: fn(&AxisValues) -> Length| {
        worst_section(measured.sections, value).map_or(f64::NAN, |section| value(&section.values).si())
    };
    let whole = measured.whole;
    let mut terms = Vec::new();
    let mut term = |id: &str, symbol: &str, words: &str, predicted: f64, value: f64| {
        terms.push(TermRecord {
            id: id.into(),
            symbol: symbol.into(),
            words: words.into(),
            predicted: known(predicted * 1e6),
            measured: known(value * 1e6),
            unit: "µm".into(),
        });
    };
    let length = |id: &str| sheet.length(id);
    let (position, reversal) = (length("position-error"), length("reversal-error"));
    term("position-error", "M", "range of the mean deviation", position, whole.mean_range.si());
    term("reversal-error", "B", "largest reversal", reversal, whole.reversal.si());
    term(
        "scatter",
        "s",
        "scatter, root mean square over the targets",
        length("scatter"),
        typical_scatter(measured.targets),
    );
    let systematic = budget::systematic_deviation(Length::of_si(position), Length::of_si(reversal)).si();
    term(
        "systematic-deviation",
        "E",
        "systematic deviation over the measured length",
        systematic,
        whole.systematic.si(),
    );
    if measured.long {
        let mean_range = on_section(|values| values.mean_range);
        term(
            "section-position-error",
            "M",
            "range of the mean deviation on 2 m",
            length("section-position-error"),
            mean_range,
        );
        let accuracy = on_section(|values| values.accuracy);
        term("section-accuracy", "A", "accuracy on 2 m", length("section-accuracy"), accuracy);
        let repeatability = on_section(|values| values.repeatability);
        term("repeatability", "R", "repeatability on 2 m", length("repeatability"), repeatability);
    } else {
        term("repeatability", "R", "repeatability", length("repeatability"), whole.repeatability.si());
        term("accuracy", "A", "accuracy", length("accuracy"), whole.accuracy.si());
    }
    term(
        "thermal-growth",
        "ΔL",
        "growth with temperature over the travel, at the temperature swing of the brief; measured: the slope of all deviations, \
         whatever made it; not in M",
        length("thermal-growth"),
        measured.growth.abs(),
    );
    PredictionRecord {
        family: Some(drive.family.clone()),
        drive: Some(report::drive_words(record, drive, units)),
        terms,
        remark: "The prediction is that of the drive that is recommended for the brief, at 20 °C, for equal reversal and scatter \
                 along the travel. Extremes of a measurement lie some 10 to 15 % above it on R and B. If another drive was \
                 built, compare with the requirement only."
            .into(),
    }
}
