//! What would change the answer: requirements turned up and down, weights, uncertainty, and what to relax.
//!
//! Method: every question is asked of the brief with one or two of its requirements replaced, and answered by the same
//! search, rules and merit as the recommendation. Limits: those that each question states.

mod chance;
pub mod condition;
pub mod conflict;
mod crossover;
mod limits;
mod margin;
pub mod relax;
mod requirement;
mod robustness;
mod room;
mod softened;
mod span;
mod steps;
mod turning;
pub mod weights;

pub use condition::Condition;
pub use crossover::{Cause, Change, Crossover, Curve, Row, Sweep};
pub use limits::{MachineObstacle, Reached, machine_obstacle};
pub use margin::{Margin, Placed};
pub use relax::{Obstacle, Relaxation, obstacle};
pub use requirement::Requirement;
pub use robustness::{Odds, SAMPLES, SEED, Trial};
pub use room::Room;
pub use span::{Span, SpanError};
pub use steps::{ANCHORS, FAR_ANCHORS};
pub use turning::{AxisInPlace, RESOLUTION, TurningPoint, Turns, turning_points};
pub use weights::{Weights, weights};
