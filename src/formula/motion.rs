//! Motion of one axis: time of a move, mean speed, distance over the service life, speed of rotation.
//!
//! Method: rigid-body kinematics with constant jerk or constant acceleration per segment.
//! Limits: moves run from rest to rest with equal limits for speeding up and slowing down.

use super::{Formula, Note, Series};
use crate::source::Source;
use crate::units::{Acceleration, AngularVelocity, Jerk, Length, Measure, Ratio, Time, Velocity};
use std::f64::consts::TAU;

/// Time of a move from rest to rest without jerk limit, s.
///
/// Pass travel, top speed and acceleration, all positive. A travel too short for the top speed gives the
/// triangle. Check: 0.8 m, 0.5 m/s, 5 m/s² → 1.700 s.
pub static TRAPEZOID_TIME: Formula<fn(Length, Velocity, Acceleration) -> Time> = Formula {
    note: Note {
        id: "trapezoid-time",
        title: "time of a move with constant acceleration",
        equation: "s ≥ v²/a: t = s/v + v/a; else t = 2·√(s/a)",
        inputs: &[("s", "travel"), ("v", "speed"), ("a", "acceleration")],
        validity: "rest to rest, equal acceleration and deceleration, no jerk limit; no travel takes no time",
        sources: &[Source::derived("kinematics of constant acceleration; checked by numerical integration")],
    },
    apply: trapezoid_time,
};

/// See [`TRAPEZOID_TIME`].
#[inline]
pub fn trapezoid_time(travel: Length, speed: Velocity, acceleration: Acceleration) -> Time {
    move_time(travel, speed, acceleration, Jerk::of_si(f64::INFINITY))
}

/// Time of a move from rest to rest with limited speed, acceleration and jerk, s.
///
/// Pass travel, top speed, acceleration and jerk, all positive; an infinite jerk gives the trapezoid.
/// Check: 0.8 m, 0.5 m/s, 5 m/s², 100 m/s³ → 1.7500 s.
pub static MOVE_TIME: Formula<fn(Length, Velocity, Acceleration, Jerk) -> Time> = Formula {
    note: Note {
        id: "move-time",
        title: "time of a move with limited speed, acceleration and jerk",
        equation: "v·j ≥ a²: T_j = a/j, T_a = v/a + a/j; else T_j = √(v/j), T_a = 2·T_j. \
                   s ≥ v·T_a: t = s/v + T_a; else s ≥ 2·a³/j²: t = 2·(v_p/a + a/j), \
                   v_p = √((a²/2j)² + a·s) − a²/2j; else t = 4·∛(s/2j)",
        inputs: &[("s", "travel"), ("v", "speed"), ("a", "acceleration"), ("j", "jerk")],
        validity: "rest to rest, symmetric seven-segment profile; no travel takes no time",
        sources: &[Source::derived("kinematics of constant jerk; checked by numerical integration")],
    },
    apply: move_time,
};

/// See [`MOVE_TIME`].
pub fn move_time(travel: Length, speed: Velocity, acceleration: Acceleration, jerk: Jerk) -> Time {
    let (s, v, a, j) = (travel.si(), speed.si(), acceleration.si(), jerk.si());
    if s.is_nan() || v.is_nan() || a.is_nan() || j.is_nan() {
        return Time::of_si(f64::NAN);
    }
    let rise = if v * j >= a * a { v / a + a / j } else { 2.0 * (v / j).sqrt() };
    let time = if s >= v * rise {
        s / v + rise
    } else if s >= 2.0 * a.powi(3) / (j * j) {
        let half = a * a / (2.0 * j);
        let peak = (half * half + a * s).sqrt() - half;
        2.0 * (peak / a + a / j)
    } else {
        4.0 * (s / (2.0 * j)).cbrt()
    };
    Time::of_si(time)
}

/// Mean speed over the working time, m/s.
///
/// Pass the share of time and the mean speed of every phase; signs of speed do not matter.
/// Check: 50 % at 0.2 m/s, 50 % at −0.4 m/s → 0.3 m/s.
pub static MEAN_SPEED: Formula<fn(Series<Ratio>, Series<Velocity>) -> Velocity> = Formula {
    note: Note {
        id: "mean-speed",
        title: "mean speed over the working time",
        equation: "v_m = Σ q_k·|v_k|",
        inputs: &[("q_k", "phase-share"), ("v_k", "phase-speed")],
        validity: "the shares sum to 1",
        sources: &[Source::derived("definition of the mean")],
    },
    apply: mean_speed,
};

/// See [`MEAN_SPEED`].
#[inline]
pub fn mean_speed(phase_share: Series<Ratio>, phase_speed: Series<Velocity>) -> Velocity {
    Velocity::of_si(phase_share.si().iter().zip(phase_speed.si()).map(|(q, v)| q * v.abs()).sum())
}

/// Distance travelled over the service life, m.
///
/// Pass the mean speed and the working time over the service life. Check: 0.25 m/s, 1000 h → 900 km.
pub static SERVICE_DISTANCE: Formula<fn(Velocity, Time) -> Length> = Formula {
    note: Note {
        id: "service-distance",
        title: "distance travelled over the service life",
        equation: "s_t = v_m·t_s",
        inputs: &[("v_m", "mean-speed"), ("t_s", "service-hours")],
        validity: "everywhere",
        sources: &[Source::derived("definition of the mean speed")],
    },
    apply: service_distance,
};

/// See [`SERVICE_DISTANCE`].
#[inline]
pub fn service_distance(mean_speed: Velocity, service_hours: Time) -> Length {
    Length::of_si(mean_speed.si() * service_hours.si())
}

/// Speed of rotation of a screw or pinion, rad/s.
///
/// Pass the speed of the axis and the travel for one turn (lead, or pinion circumference).
/// Check: 0.5 m/s, 10 mm → 3000 1/min.
pub static SHAFT_SPEED: Formula<fn(Velocity, Length) -> AngularVelocity> = Formula {
    note: Note {
        id: "shaft-speed",
        title: "speed of rotation of screw or pinion",
        equation: "n = v/p",
        inputs: &[("v", "speed"), ("p", "travel-per-turn")],
        validity: "the travel for one turn is not zero",
        sources: &[Source::derived("definition of the lead")],
    },
    apply: shaft_speed,
};

/// See [`SHAFT_SPEED`].
#[inline]
pub fn shaft_speed(speed: Velocity, travel_per_turn: Length) -> AngularVelocity {
    AngularVelocity::of_si(TAU * speed.si() / travel_per_turn.si())
}

/// Speed of rotation of the motor in front of a reduction, rad/s.
///
/// Pass the speed of screw or pinion and the reduction, motor turns for one turn of the shaft.
/// Check: 300 1/min, 10 → 3000 1/min.
pub static GEARED_SPEED: Formula<fn(AngularVelocity, Ratio) -> AngularVelocity> = Formula {
    note: Note {
        id: "geared-speed",
        title: "speed of rotation of the motor",
        equation: "n_M = i·n",
        inputs: &[("n", "shaft-speed"), ("i", "reduction")],
        validity: "everywhere",
        sources: &[Source::derived("definition of the reduction")],
    },
    apply: geared_speed,
};

/// See [`GEARED_SPEED`].
#[inline]
pub fn geared_speed(shaft_speed: AngularVelocity, reduction: Ratio) -> AngularVelocity {
    AngularVelocity::of_si(shaft_speed.si() * reduction.si())
}
