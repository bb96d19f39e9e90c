//! Rows worked by hand: motors, brakes, belts and stops.

pub const ROWS: &[super::Row] = &[];
