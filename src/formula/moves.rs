//! What the moves of a duty sum up to: the mean stroke and how many moves an hour holds.
//!
//! Method: a phase takes a share of time and belongs to a move of a certain stroke, so its travel over its stroke is the
//! part of a move that it is. Limits: lists of unequal length are read up to the shorter one; no share of time, no weight.

use super::{Formula, Note, Series};
use crate::source::Source;
use crate::units::{Length, Measure, Ratio, Velocity};

/// Mean stroke over the duty, weighted by travel, m.
///
/// Pass shares of time, mean speeds and strokes of all phases, and the stroke to give where nothing moves.
/// Check: 50 % at 0.2 m/s over 1 m, 50 % at −0.1 m/s over 0.4 m → 0.8 m.
pub static MEAN_STROKE: Formula<fn(Series<Ratio>, Series<Velocity>, Series<Length>, Length) -> Length> = Formula {
    note: Note {
        id: "mean-stroke",
        title: "mean stroke over the duty, weighted by travel",
        equation: "s_m = Σ q_k·|v_k|·s_k / Σ q_k·|v_k|",
        inputs: &[("q_k", "phase-share"), ("v_k", "phase-speed"), ("s_k", "phase-stroke"), ("s_u", "usual-stroke")],
        validity: "everywhere; an axis that never moves gives the usual stroke",
        sources: &[Source::derived("mean over the distance travelled")],
    },
    apply: mean_stroke,
};

/// See [`MEAN_STROKE`].
pub fn mean_stroke(shares: Series<Ratio>, speeds: Series<Velocity>, strokes: Series<Length>, usual: Length) -> Length {
    let (mut sum, mut travelled) = (0.0, 0.0);
    for ((share, speed), stroke) in shares.si().iter().zip(speeds.si()).zip(strokes.si()) {
        let travel = share * speed.abs();
        sum += travel * stroke;
        travelled += travel;
    }
    Length::of_si(if travelled == 0.0 { usual.si() + 0.0 * sum } else { sum / travelled + 0.0 * usual.si() })
}

/// How many moves an hour of work holds, 1.
///
/// Pass shares of time, mean speeds and strokes of all phases. Each way counts as a move.
/// Check: 50 % at 0.2 m/s over 1 m, 50 % at −0.1 m/s over 0.4 m → 360 + 450 = 810.
pub static MOVES_PER_HOUR: Formula<fn(Series<Ratio>, Series<Velocity>, Series<Length>) -> Ratio> = Formula {
    note: Note {
        id: "moves-per-hour",
        title: "moves in an hour of work, each way counted",
        equation: "N_h = 3600 s·Σ q_k·|v_k|/s_k",
        inputs: &[("q_k", "phase-share"), ("v_k", "phase-speed"), ("s_k", "phase-stroke")],
        validity: "shares of the working time; a phase without travel counts nothing",
        sources: &[Source::derived("distance travelled over the stroke of a move")],
    },
    apply: moves_per_hour,
};

/// See [`MOVES_PER_HOUR`].
pub fn moves_per_hour(shares: Series<Ratio>, speeds: Series<Velocity>, strokes: Series<Length>) -> Ratio {
    let mut moves = 0.0;
    for ((share, speed), stroke) in shares.si().iter().zip(speeds.si()).zip(strokes.si()) {
        let travel = share * speed.abs();
        moves += if travel == 0.0 { 0.0 * stroke } else { travel / stroke };
    }
    Ratio::of_si(3600.0 * moves)
}
