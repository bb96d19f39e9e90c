//! What all axes together make at the tool, direction by direction.

use super::view::View;
use serde::Serialize;

/// One direction of the machine.
#[derive(Debug, Serialize)]
pub struct Direction {
    name: String,
    axes: String,
    error: String,
    growth: String,
}

/// The directions along which a chosen drive moves.
pub fn collect(view: &View) -> Vec<Direction> {
    let directions = &view.record.machine.tool_point;
    let direction = |found: &crate::record::DirectionRecord| Direction {
        name: found.direction.clone(),
        axes: super::words::list(&found.axes),
        error: view.quantity(found.error.value, &found.error.unit),
        growth: view.quantity(found.growth.value, &found.growth.unit),
    };
    directions.iter().map(direction).collect()
}
