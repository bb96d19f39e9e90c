//! What a brief asks of the position loop: a circle, and coming to rest.

use super::defaults;
use super::reader::{Reader, above_zero_to, zero_to};
use super::types::Entry;
use crate::units::{Length, Measure, Ratio, Time, Velocity};
use crate::yaml::Node;

/// A circle that the axis has to follow together with one like it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Contour {
    /// Speed on the path.
    pub speed: Velocity,
    /// Radius.
    pub radius: Length,
    /// Largest error of the radius.
    pub error: Length,
    /// Share of the speed that the control feeds forward.
    pub feed_forward: Entry<Ratio>,
}

/// How soon the axis has to stand still after a move.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Settling {
    /// Time from the end of the move.
    pub time: Time,
    /// Window to either side.
    pub window: Length,
}

/// What the brief asks of contours; `Some(None)` where it asks nothing.
pub(super) fn contour(axis: &Node<'_>, top: Option<Velocity>, reader: &mut Reader<'_>) -> Option<Option<Contour>> {
    let Some(node) = axis.get("contour") else { return Some(None) };
    node.only_keys(&["speed", "radius", "error", "feed-forward"], reader.faults);
    if !node.is_mapping() {
        return None;
    }
    let speed = reader.need::<Velocity>(&node, "speed", above_zero_to(10.0, "m/s"));
    let radius = reader.need::<Length>(&node, "radius", above_zero_to(200.0, "m"));
    let error = reader.need::<Length>(&node, "error", above_zero_to(1.0, "m"));
    let feed_forward = reader.or_preset(&node, "feed-forward", zero_to(100.0, "%"), &defaults::FEED_FORWARD);
    if let (Some(speed), Some(top), Some(place)) = (speed, top, node.get("speed"))
        && speed.si() > top.si() * (1.0 + 1e-12)
    {
        place.fault(
            reader.faults,
            "the axis is not as fast as its contour",
            Some("at most the `speed` of the axis".into()),
        );
        return None;
    }
    Some(Some(Contour { speed: speed?, radius: radius?, error: error?, feed_forward: feed_forward? }))
}

/// What the brief asks of settling; `Some(None)` where it asks nothing.
pub(super) fn settling(axis: &Node<'_>, reader: &mut Reader<'_>) -> Option<Option<Settling>> {
    let Some(node) = axis.get("settling") else { return Some(None) };
    node.only_keys(&["time", "window"], reader.faults);
    if !node.is_mapping() {
        return None;
    }
    let time = reader.need::<Time>(&node, "time", above_zero_to(600.0, "s"));
    let window = reader.need::<Length>(&node, "window", above_zero_to(1.0, "m"));
    Some(Some(Settling { time: time?, window: window? }))
}
