//! The winding over shorter times than the duty: overloads, standing under load, short-time and intermittent duty.
//!
//! Method: the winding is one body that warms with the square of the torque and cools with one time constant. Its heat
//! is told as a share of the rise that it may have: 1 is the limit. Limits: one body for the whole rise, which is on the
//! safe side, for a part of the rise is that of the frame and comes much later.

use super::{Formula, Note, Series};
use crate::source::Source;
use crate::units::*;

const FIRST_ORDER: Source = Source::derived("first-order heating equation dθ/dt = (r² − θ)/τ, copper loss only");

/// Longest time of an overload, s, until the winding is as warm as it may be.
///
/// Pass torque over continuous torque, the same of the time before, and the time constant of the winding. No limit, that
/// is infinity, at or below the continuous torque. Check: 3, 0, 60 s → 7.067 s.
pub static OVERLOAD_TIME: Formula<fn(Ratio, Ratio, Time) -> Time> = Formula {
    note: Note {
        id: "overload-time",
        title: "longest time of an overload",
        equation: "t = τ_w·ln((r² − r_0²)/(r² − 1)), r > 1; none where r ≤ 1",
        inputs: &[("r", "torque-ratio"), ("r_0", "ratio-before"), ("τ_w", "winding-time")],
        validity: "r_0 below 1; one body for the whole rise: the safe side",
        sources: &[FIRST_ORDER],
    },
    apply: |ratio, before, time| {
        let (r, b) = (ratio.si() * ratio.si(), before.si() * before.si());
        Time::of_si(if b >= 1.0 {
            0.0 * (r + time.si())
        } else if r <= 1.0 {
            f64::INFINITY + 0.0 * (b + time.si())
        } else {
            time.si() * ((r - b) / (r - 1.0)).ln()
        })
    },
};

/// Largest heat of the winding at the end of any phase over what it may be, 1.
///
/// Pass torques, mean speeds and accelerations of all phases, the longest time of a ramp, the travel, standstill torque,
/// root mean square torque, continuous torque, and the time constant of the winding. A phase with acceleration lasts as long
/// as the longest ramp, one without as long as the whole travel takes; what stands is judged by a rule of its own.
/// Check: 36 N·m for 0.5 s of 12 N·m, before it 6 of 12 N·m, 60 s → 0.3226.
pub static WINDING_HEAT: Formula<
    fn(Series<Torque>, Series<Velocity>, Series<Acceleration>, Time, Length, Torque, Torque, Torque, Time) -> Ratio,
> = Formula {
    note: Note {
        id: "winding-heat",
        title: "largest heat of the winding at the end of any phase over what it may be",
        equation: "r_k = |T_k|/T_0, r_0 = T_rms/T_S1; θ = max(r_0², r_k² − (r_k² − r_0²)·exp(−t_k/τ_w)); \
                   t_k = t_ra with acceleration, s/|v_k| without; phases with v_k = 0 are left out",
        inputs: &[
            ("T_k", "torques"),
            ("v_k", "speeds"),
            ("a_k", "accelerations"),
            ("t_ra", "longest-ramp-time"),
            ("s", "travel"),
            ("T_0", "standstill-torque"),
            ("T_rms", "rms-torque"),
            ("T_S1", "continuous-torque"),
            ("τ_w", "winding-time"),
        ],
        validity: "one body for the whole rise; a cut as long as the travel: the safe side; what holds at rest is held against the torque at standstill by itself",
        sources: &[FIRST_ORDER],
    },
    apply: |torques, speeds, accelerations, ramp, travel, standstill, rms, continuous, time| {
        let before = (rms.si() / continuous.si()).powi(2);
        let mut most = before + 0.0 * (ramp.si() + travel.si() + time.si());
        let motion = speeds.si().iter().zip(accelerations.si());
        for (torque, (speed, acceleration)) in torques.si().iter().zip(motion) {
            let square = (torque / standstill.si()).powi(2);
            // a phase never ends warmer than the larger of its own heat and that before it
            if square <= most || *speed == 0.0 {
                continue;
            }
            let lasts = if *acceleration != 0.0 { ramp.si() } else { (travel.si() / speed).abs() };
            let heat = square - (square - before) * (-lasts / time.si()).exp();
            if heat > most || heat.is_nan() {
                most = heat;
            }
        }
        Ratio::of_si(most)
    },
};

/// Largest torque of any phase in which the motor stands, N·m; 0 where none stands.
///
/// Pass torques and mean speeds of all phases. Check: 5 N·m standing, 9 N·m moving → 5 N·m.
pub static STANDING_TORQUE: Formula<fn(Series<Torque>, Series<Velocity>) -> Torque> = Formula {
    note: Note {
        id: "standing-torque",
        title: "largest torque of the duty at standstill",
        equation: "T_st = max |T_k| over phases with v_k = 0",
        inputs: &[("T_k", "torques"), ("v_k", "speeds")],
        validity: "the motor holds the load, not the brake",
        sources: &[Source::derived("definition")],
    },
    apply: |torques, speeds| {
        let mut most = 0.0;
        for (torque, speed) in torques.si().iter().zip(speeds.si()) {
            if *speed == 0.0 && torque.abs() > most || torque.is_nan() || speed.is_nan() {
                most = torque.abs() + 0.0 * speed;
            }
        }
        Torque::of_si(most)
    },
};

/// By how much a short run from cold may exceed the continuous torque. 10 min, 30 min: 1.878.
pub static SHORT_TIME_FACTOR: Formula<fn(Time, Time) -> Ratio> = Formula {
    note: Note {
        id: "short-time-factor",
        title: "torque of a short run from cold over the continuous torque (duty type S2)",
        equation: "x = √(1/(1 − exp(−t/τ)))",
        inputs: &[("t", "run-time"), ("τ", "frame-time")],
        validity: "cold before, cold again after; copper loss only; the winding is judged apart",
        sources: &[FIRST_ORDER, Source::memory("IEC 60034-1, duty type S2")],
    },
    apply: |run, frame| Ratio::of_si((1.0 / (1.0 - (-run.si() / frame.si()).exp())).sqrt()),
};

/// By how much the torque of a regular duty with pauses may exceed the continuous torque.
///
/// Pass cycle time, the share of it under load, and the time constant. Check: 1 s, 40 %, 30 min → 1.581.
pub static INTERMITTENT_FACTOR: Formula<fn(Time, Ratio, Time) -> Ratio> = Formula {
    note: Note {
        id: "intermittent-factor",
        title: "torque of an intermittent duty over the continuous torque (duty type S3)",
        equation: "x = √((1 − exp(−t_c/τ))/(1 − exp(−ε·t_c/τ)))",
        inputs: &[("t_c", "cycle-time"), ("ε", "load-share"), ("τ", "frame-time")],
        validity: "settled cycles, same cooling at rest as in motion; copper loss only",
        sources: &[FIRST_ORDER, Source::memory("IEC 60034-1, duty type S3")],
    },
    apply: |cycle, share, frame| {
        let cycles = cycle.si() / frame.si();
        Ratio::of_si(((-cycles).exp_m1() / (-share.si() * cycles).exp_m1()).sqrt())
    },
};
