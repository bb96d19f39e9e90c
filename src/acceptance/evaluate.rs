//! From deviations to the quantities of ISO 230-2, at each target and for the axis.
//!
//! Method: definitions in `formula::iso_230_2`; here the extremes over the targets are taken. A value that is not
//! defined (scatter of one run, R and A above 2 m of travel) is NaN, and stays NaN through every extreme.

use super::measured::{Measurement, Target};
use crate::formula::{Series, iso_230_2 as iso};
use crate::units::{Length, Measure};
use std::ops::Range;

/// The quantities at one target.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TargetValues {
    /// The target.
    pub position: Length,
    /// Mean deviation upward.
    pub mean_up: Length,
    /// Mean deviation downward.
    pub mean_down: Length,
    /// Mean bidirectional deviation.
    pub mean: Length,
    /// Scatter upward.
    pub scatter_up: Length,
    /// Scatter downward.
    pub scatter_down: Length,
    /// Reversal with its sign.
    pub reversal: Length,
    /// Bidirectional repeatability.
    pub repeatability: Length,
}

/// The quantities of an axis or of a section of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AxisValues {
    /// First target.
    pub first: Length,
    /// Last target.
    pub last: Length,
    /// Number of targets.
    pub targets: usize,
    /// B, the largest amount of the reversal.
    pub reversal: Length,
    /// B̄, the mean reversal with its sign.
    pub mean_reversal: Length,
    /// M, the range of the mean bidirectional deviation.
    pub mean_range: Length,
    /// E↑.
    pub systematic_up: Length,
    /// E↓.
    pub systematic_down: Length,
    /// E.
    pub systematic: Length,
    /// R↑.
    pub repeatability_up: Length,
    /// R↓.
    pub repeatability_down: Length,
    /// R.
    pub repeatability: Length,
    /// A↑.
    pub accuracy_up: Length,
    /// A↓.
    pub accuracy_down: Length,
    /// A.
    pub accuracy: Length,
}

/// The quantities at one target.
pub fn at_target(target: &Target) -> TargetValues {
    let series = |deviations: &[Length]| Series::filled(deviations.len(), |run| deviations[run].si());
    let (up, down): (Series<Length>, Series<Length>) = (series(&target.up), series(&target.down));
    let (mean_up, mean_down) = (iso::mean_deviation(up.clone()), iso::mean_deviation(down.clone()));
    let (scatter_up, scatter_down) = (iso::deviation_scatter(up), iso::deviation_scatter(down));
    let reversal = iso::reversal_at_target(mean_up, mean_down);
    TargetValues {
        position: target.position,
        mean_up,
        mean_down,
        mean: iso::bidirectional_mean(mean_up, mean_down),
        scatter_up,
        scatter_down,
        reversal,
        repeatability: iso::repeatability_at_target(scatter_up, scatter_down, reversal),
    }
}

/// The quantities at every target of a measurement.
pub fn at_targets(measurement: &Measurement) -> Vec<TargetValues> {
    measurement.targets.iter().map(at_target).collect()
}

/// The quantities of the axis over these targets, however long it is.
pub fn over(targets: &[TargetValues]) -> AxisValues {
    use TargetValues as T;
    let greatest = |value: fn(&T) -> Length| Length::of_si(extreme(targets.iter().map(value), |new, old| new > old));
    let least = |value: fn(&T) -> Length| Length::of_si(extreme(targets.iter().map(value), |new, old| new < old));
    let range = |value: fn(&T) -> Length| iso::deviation_range(greatest(value), least(value));
    let upper = |t: &T| iso::band_upper_edge(t.mean_up, t.scatter_up);
    let lower = |t: &T| iso::band_lower_edge(t.mean_up, t.scatter_up);
    let upper_down = |t: &T| iso::band_upper_edge(t.mean_down, t.scatter_down);
    let lower_down = |t: &T| iso::band_lower_edge(t.mean_down, t.scatter_down);
    let both = |up: fn(&T) -> Length, down: fn(&T) -> Length, take: fn(f64, f64) -> bool| {
        Length::of_si(extreme(targets.iter().flat_map(|t| [up(t), down(t)]), take))
    };
    let more: fn(f64, f64) -> bool = |new, old| new > old;
    let less: fn(f64, f64) -> bool = |new, old| new < old;
    let ends = |at: Option<&T>| at.map_or(Length::of_si(f64::NAN), |t| t.position);
    let sum: f64 = targets.iter().map(|t| t.reversal.si()).sum();
    AxisValues {
        first: ends(targets.first()),
        last: ends(targets.last()),
        targets: targets.len(),
        reversal: greatest(|t| Length::of_si(t.reversal.si().abs())),
        mean_reversal: Length::of_si(sum / targets.len() as f64),
        mean_range: range(|t| t.mean),
        systematic_up: range(|t| t.mean_up),
        systematic_down: range(|t| t.mean_down),
        systematic: iso::deviation_range(
            both(|t| t.mean_up, |t| t.mean_down, more),
            both(|t| t.mean_up, |t| t.mean_down, less),
        ),
        repeatability_up: greatest(|t| iso::unidirectional_repeatability(t.scatter_up)),
        repeatability_down: greatest(|t| iso::unidirectional_repeatability(t.scatter_down)),
        repeatability: greatest(|t| t.repeatability),
        accuracy_up: iso::deviation_range(greatest(upper), least(lower)),
        accuracy_down: iso::deviation_range(greatest(upper_down), least(lower_down)),
        accuracy: iso::deviation_range(both(upper, upper_down, more), both(lower, lower_down, less)),
    }
}

/// The extreme of the values; one that is not known, or none at all, gives NaN.
fn extreme(values: impl Iterator<Item = Length>, takes: fn(f64, f64) -> bool) -> f64 {
    let pick = |old: Option<f64>, new: f64| match old {
        None => Some(new),
        Some(old) if old.is_nan() || new.is_nan() => Some(f64::NAN),
        Some(old) => Some(if takes(new, old) { new } else { old }),
    };
    values.map(Length::si).fold(None, pick).unwrap_or(f64::NAN)
}

/// A part of an axis that is longer than 2 m, with what it gives.
#[derive(Debug, Clone, PartialEq)]
pub struct Section {
    /// Its targets among all.
    pub targets: Range<usize>,
    /// Its quantities.
    pub values: AxisValues,
}

/// Every stretch of at most 2 m between two targets that no other such stretch holds.
///
/// R and A never fall when a target is added, so the worst section is among them.
pub fn sections(targets: &[TargetValues]) -> Vec<Section> {
    // a section that is longer by rounding alone is still one of 2 m
    let limit = iso::LONGEST_WHOLE * (1.0 + 1e-9);
    let mut found: Vec<Section> = Vec::new();
    for first in 0..targets.len() {
        let reach = |target: &&TargetValues| target.position.si() - targets[first].position.si() <= limit;
        let end = first + targets[first..].iter().take_while(reach).count();
        let inside_last = found.last().is_some_and(|last| last.targets.end >= end);
        if end - first > 1 && !inside_last {
            found.push(Section { targets: first..end, values: over(&targets[first..end]) });
        }
    }
    found
}

/// The section on which a quantity is largest, the first of several; none where it is not known on every section.
pub fn worst_section(sections: &[Section], value: fn(&AxisValues) -> Length) -> Option<&Section> {
    let known = sections.iter().all(|section| value(&section.values).si().is_finite());
    let larger = |most: &'_ Section, next: &'_ Section| value(&next.values).si() > value(&most.values).si();
    sections.iter().filter(|_| known).fold(None, |most, next| match most {
        Some(most) if !larger(most, next) => Some(most),
        _ => Some(next),
    })
}
