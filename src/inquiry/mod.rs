//! What would change the answer: requirements turned up and down, weights, uncertainty, and what to relax.
//!
//! Method: every question is asked of the brief with one or two of its requirements replaced, and answered by the same
//! search, rules and merit as the recommendation. Limits: those that each question states.

mod crossover;
mod requirement;
mod room;
mod span;
mod steps;
mod turning;

pub use crossover::{Cause, Change, Crossover, Curve, Row, Sweep};
pub use requirement::Requirement;
pub use room::Room;
pub use span::{Span, SpanError};
pub use steps::ANCHORS;
pub use turning::{AxisInPlace, RESOLUTION, TurningPoint, Turns, turning_points};
