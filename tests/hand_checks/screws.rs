//! Rows worked by hand: screws, nuts and their bearings.

pub const ROWS: &[super::Row] = &[];
