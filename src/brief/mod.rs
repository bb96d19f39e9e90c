//! The brief: what a machine's axes must do, as its customer writes it down.
//!
//! Method: [`load`] reads a YAML text and tells all its faults at once. What the brief leaves out takes a default
//! out of [`defaults`], and each default that is used becomes an [`Assumption`].
//! Limits: at most 64 axes; an axis is carried by at most one other.

mod along;
mod axis;
mod bed;
mod carrying;
pub mod compose;
pub mod defaults;
mod doubt;
mod duty;
pub mod guide;
mod hanging;
mod load;
mod measuring;
mod misplaced;
mod moves;
mod reader;
mod servo;
mod sides;
mod starter;
mod types;
mod uncertainty;

pub use along::Along;
pub use bed::Bed;
pub use doubt::Doubt;
pub use load::{MOST_AXES, axes_named, load, load_file, text_of, waivers_of_known_rules};
pub use measuring::{Feedback, Mapping, Tilt};
pub use servo::{Contour, Settling};
pub use starter::starter;
pub use types::*;
pub use uncertainty::Uncertainty;

/// The most lines with moves, and the most at standstill, that the work of an axis may have.
pub const MOST_LINES: (usize, usize) = (8, 4);

/// The ids of the drive families a brief may name.
pub const FAMILIES: &[&str] = &["ball-screw", "driven-nut", "straight-rack", "helical-rack", "twin-pinion"];
