//! The form of a brief: which fields it has, what somebody filled in, and the way to the text of a brief and back.

mod draft;
mod edit;
mod place;
mod shape;

pub use draft::{Draft, RIDES_ON, Values, rows};
pub use edit::{Edit, Place};
pub use place::Placed;
pub use shape::{FORM, Field, Group, Input, Section, Shape};
