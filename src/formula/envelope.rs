//! The torque that a motor gives over its speed, with field weakening and without.
//!
//! Method: without field weakening the peak torque falls in a straight line from the knee to the speed at which the
//! voltage is used up, and the continuous torque follows the losses; a motor built for field weakening keeps its power
//! above knee and rated speed. Limits: the straight line and the constant power are the usual idealisations.

use super::motor::MOST_USE;
use super::{Formula, Note, Series};
use crate::source::Source;
use crate::units::*;
use std::f64::consts::TAU;

const WEAKENED: Source = Source::derived("constant power at constant voltage and current above the knee");

#[inline]
fn weakened(speed: f64, peak: f64, knee: f64, limit: f64) -> f64 {
    if speed <= knee {
        peak + 0.0 * limit
    } else if speed > limit {
        0.0 * (peak + knee)
    } else {
        peak * knee / speed + 0.0 * limit
    }
}

/// Peak torque of a motor with field weakening at a speed, N·m; zero beyond its speed limit.
///
/// Pass speed, peak torque, knee speed and speed limit. Check: 3500 1/min, 60 N·m, 2500, 4500 → 42.86 N·m.
pub static WEAKENED_PEAK_TORQUE: Formula<fn(AngularVelocity, Torque, AngularVelocity, AngularVelocity) -> Torque> =
    Formula {
        note: Note {
            id: "weakened-peak-torque",
            title: "peak torque of a motor with field weakening at a speed",
            equation: "|n| ≤ n_k: T = T_pk; n_k < |n| ≤ n_max: T = T_pk·n_k/|n|; else T = 0",
            inputs: &[("n", "speed"), ("T_pk", "peak-torque"), ("n_k", "knee-speed"), ("n_max", "speed-limit")],
            validity: "a motor and drive electronics built for field weakening; constant power above the knee",
            sources: &[WEAKENED],
        },
        apply: |speed, peak, knee, limit| Torque::of_si(weakened(speed.si().abs(), peak.si(), knee.si(), limit.si())),
    };

/// Largest motor torque over what a motor with field weakening gives at that speed, 1, worst phase.
///
/// Pass torques and top speeds of all phases, travel for one turn, reduction, peak torque, knee and limit speed.
/// Check: 21.43 N·m at 3500 1/min of a 60 N·m, 2500/4500 1/min motor → 0.5.
pub static WEAKENED_TORQUE_USE: Formula<
    fn(Series<Torque>, Series<Velocity>, Length, Ratio, Torque, AngularVelocity, AngularVelocity) -> Ratio,
> = Formula {
    note: Note {
        id: "weakened-torque-use",
        title: "largest motor torque over what the motor gives at that speed, with field weakening",
        equation: "x_T = max |T_k|/T_pk(i·v̂_k/p)",
        inputs: &[
            ("T_k", "torques"),
            ("v̂_k", "top-speeds"),
            ("p", "travel-per-turn"),
            ("i", "reduction"),
            ("T_pk", "peak-torque"),
            ("n_k", "knee-speed"),
            ("n_max", "speed-limit"),
        ],
        validity: "a phase that needs torque where the motor gives none counts 10⁶",
        sources: &[WEAKENED],
    },
    apply: |torques, top_speeds, travel_per_turn, reduction, peak, knee, limit| {
        let turns = TAU * reduction.si() / travel_per_turn.si();
        let mut most = 0.0;
        for (torque, speed) in torques.si().iter().zip(top_speeds.si()) {
            let there = weakened((speed * turns).abs(), peak.si(), knee.si(), limit.si());
            let share = if *torque == 0.0 { 0.0 * there } else { torque.abs() / there };
            let share = if share > MOST_USE { MOST_USE } else { share };
            if share > most || share.is_nan() {
                most = share;
            }
        }
        Ratio::of_si(most)
    },
};

/// Continuous torque of a motor without field weakening, N·m: the loss balance goes on above rated speed.
///
/// Pass speed, standstill torque, rated torque and rated speed. Zero from the speed at which iron loss alone is all that
/// the motor gives off. Check: 4000 1/min, 20 N·m, 16 N·m, 3000 1/min → √(400 − 144·16/9) = 12 N·m.
pub static UNWEAKENED_CONTINUOUS_TORQUE: Formula<fn(AngularVelocity, Torque, Torque, AngularVelocity) -> Torque> =
    Formula {
        note: Note {
            id: "unweakened-continuous-torque",
            title: "continuous torque of a motor without field weakening at a speed",
            equation: "T = √(T_0² − (T_0² − T_N²)·(n/n_N)²), 0 where the root has no value",
            inputs: &[("n", "speed"), ("T_0", "standstill-torque"), ("T_N", "rated-torque"), ("n_N", "rated-speed")],
            validity: "copper and iron loss shared as at rated speed; the voltage is judged by the peak torque",
            sources: &[Source::derived("loss balance between standstill and rated speed")],
        },
        apply: |speed, standstill, rated, rated_speed| {
            let (t0, tn) = (standstill.si(), rated.si());
            let square = t0 * t0 - (t0 * t0 - tn * tn) * (speed.si() / rated_speed.si()).powi(2);
            Torque::of_si(if square < 0.0 { 0.0 } else { square.sqrt() })
        },
    };
