//! Rows worked by hand: moves, phases and energy.

pub const ROWS: &[super::Row] = &[];
