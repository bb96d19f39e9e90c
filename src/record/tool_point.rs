//! Error and growth at the tool in each direction of the machine.
//!
//! Method: axes that move along one direction add up there; what is independent by squares, reversals and growth, which
//! have one cause, in line. Limits: directions of the machine are taken as square to each other and slides as level; what
//! a tilt makes across its axis is not counted.

use super::{Amount, AxisRecord, DirectionRecord};
use crate::brief::{Along, Axis};
use crate::formula::{MOST_PHASES, Series, budget};
use crate::units::{Length, Measure};

/// The directions along which a chosen drive moves, in the order x, y, z.
pub fn directions(brief: &[Axis], axes: &[AxisRecord]) -> Vec<DirectionRecord> {
    let along = |wanted: Along| {
        let mut moving: Vec<_> = brief.iter().zip(axes).filter(|(asked, _)| asked.along.value == wanted).collect();
        moving.sort_by(|(_, one), (_, other)| one.name.cmp(&other.name));
        moving.truncate(MOST_PHASES);
        if moving.is_empty() {
            return None;
        }
        // micrometres in the record
        let values = |id: &str| -> Vec<f64> {
            let of = |axis: &AxisRecord| axis.chosen.as_ref().and_then(|drive| drive.value(id));
            moving.iter().map(|(_, axis)| of(axis).map_or(f64::NAN, |value| value * 1e-6)).collect()
        };
        let series = |id: &str| Series::<Length>::of_si(&values(id));
        let error = budget::direction_error(series("position-error"), series("reversal-error"), series("scatter")).si();
        let growth: f64 = values("thermal-growth").iter().sum();
        let amount = |value: f64| Amount { value: value.is_finite().then_some(value * 1e3), unit: "mm".into() };
        Some(DirectionRecord {
            direction: wanted.word().into(),
            axes: moving.iter().map(|(_, axis)| axis.name.clone()).collect(),
            error: amount(error),
            growth: amount(growth),
        })
    };
    Along::WORDS.into_iter().filter_map(|(_, wanted)| along(wanted)).collect()
}
