//! What would change the answer: requirements turned up and down, weights, uncertainty, and what to relax.
//!
//! Method: every question is asked of the brief with one or two of its requirements replaced, and answered by the same
//! search, rules and merit as the recommendation. Limits: those that each question states.

mod crossover;
mod requirement;
mod span;

pub use crossover::{Cause, Change, Crossover, Curve, Row, Sweep};
pub use requirement::Requirement;
pub use span::{Span, SpanError};
