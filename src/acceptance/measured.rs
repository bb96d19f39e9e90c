//! What was measured on an axis, sorted: targets in order of position, runs in order of their numbers.

use crate::units::{Length, Measure};
use std::path::PathBuf;

/// One target position with its deviations.
#[derive(Debug, Clone, PartialEq)]
pub struct Target {
    /// The position, counted from the start of the travel.
    pub position: Length,
    /// Deviations when it was approached upward, one a run.
    pub up: Vec<Length>,
    /// Deviations when it was approached downward, one a run.
    pub down: Vec<Length>,
}

/// The deviations of one axis.
#[derive(Debug, Clone, PartialEq)]
pub struct Measurement {
    /// File name, without folders.
    pub name: String,
    /// The text of the file, as it was read.
    pub text: String,
    /// The targets, by position; at least two.
    pub targets: Vec<Target>,
    /// Runs in each direction, the same everywhere; at least one.
    pub runs: usize,
}

impl Measurement {
    /// Distance of the first from the last target.
    pub fn span(&self) -> Length {
        match (self.targets.first(), self.targets.last()) {
            (Some(first), Some(last)) => Length::of_si(last.position.si() - first.position.si()),
            _ => Length::of_si(f64::NAN),
        }
    }

    /// Distances of neighbouring targets, m.
    pub(super) fn gaps(&self) -> Vec<f64> {
        self.targets.windows(2).map(|pair| pair[1].position.si() - pair[0].position.si()).collect()
    }
}

/// Where the travel lies on the scale that the targets are counted on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stretch<'a> {
    /// Name of the axis.
    pub axis: &'a str,
    /// The reading at which the travel begins.
    pub start: Length,
    /// The travel.
    pub travel: Length,
}

/// The file name of a path, as outputs name it.
pub(super) fn file_name(path: &std::path::Path) -> String {
    path.file_name().map_or_else(|| PathBuf::from(path).display().to_string(), |name| name.to_string_lossy().into())
}
