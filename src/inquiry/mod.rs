//! What would change the answer: requirements turned up and down, weights, uncertainty, and what to relax.
//!
//! Method: every question is asked of the brief with one or two of its requirements replaced, and answered by the same
//! search, rules and merit as the recommendation. Limits: those that each question states.

mod requirement;

pub use requirement::Requirement;
