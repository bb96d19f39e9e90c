//! The move with limited jerk, segment by segment: what it reaches, how long each part takes, how fast it is on the whole.
//!
//! Method: seven segments, symmetric, from rest to rest. Speeding up takes `T_a`: jerk up for `T_j`, constant acceleration
//! for `T_a − 2·T_j`, jerk down for `T_j`; then cruising for `T_v`; slowing down mirrors it.
//!
//! A duty of phases needs constant values. In the two ramps of one acceleration, taken together, every acceleration `a`
//! occurs twice: rising at the speed `a²/2j`, falling at `v_p − a²/2j`, each for the time `da/j`. The mean speed at every
//! acceleration is therefore `v_p/2`, and force and torque are linear in `a` and so in time. Two points of Gauss and
//! Legendre, `a_p·(1 ± 1/√3)/2` with the time `T_j` each, then give every mean up to the third power exactly: the root
//! mean square torque, the cubic mean force weighted by travel, mean power. The constant part has the mean speed
//! `v_p/2` too. Limits: exact as long as the force does not change its sign within a ramp; all four values positive.

use super::{Formula, Note};
use crate::source::Source;
use crate::units::{Acceleration, Jerk, Length, Measure, Time, Velocity};

const KINEMATICS: &[Source] = &[Source::derived("kinematics of constant jerk; checked by numerical integration")];
const INPUTS: &[(&str, &str)] = &[("s", "travel"), ("v", "speed"), ("a", "acceleration"), ("j", "jerk")];
const VALIDITY: &str = "rest to rest, symmetric seven-segment profile; all four positive";

/// A move in its parts, SI units.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Profile {
    /// Speed that is reached.
    pub speed: f64,
    /// Acceleration that is reached.
    pub acceleration: f64,
    /// Time in which the acceleration is built up, and again taken back.
    pub jerk_time: f64,
    /// Time from rest to the speed that is reached.
    pub speeding_time: f64,
    /// Time at that speed.
    pub cruise_time: f64,
}

/// The two accelerations of a ramp over the one that is reached: (1 ± 1/√3)/2.
pub const RAMP_POINTS: [f64; 2] = [0.788_675_134_594_812_9, 0.211_324_865_405_187_08];

impl Profile {
    /// The move over this travel within these limits; a value that is missing makes all missing.
    pub fn new(travel: Length, speed: Velocity, acceleration: Acceleration, jerk: Jerk) -> Profile {
        let (s, v, a, j) = (travel.si(), speed.si(), acceleration.si(), jerk.si());
        if s.is_nan() || v.is_nan() || a.is_nan() || j.is_nan() {
            let nan = f64::NAN;
            return Profile { speed: nan, acceleration: nan, jerk_time: nan, speeding_time: nan, cruise_time: nan };
        }
        let full = v * j >= a * a;
        let (jerk_time, speeding_time) =
            if full { (a / j, v / a + a / j) } else { ((v / j).sqrt(), 2.0 * (v / j).sqrt()) };
        if s >= v * speeding_time {
            let acceleration = if full { a } else { (v * j).sqrt() };
            return Profile { speed: v, acceleration, jerk_time, speeding_time, cruise_time: s / v - speeding_time };
        }
        if s >= 2.0 * a.powi(3) / (j * j) {
            let half = a * a / (2.0 * j);
            let top = (half * half + a * s).sqrt() - half;
            return Profile {
                speed: top,
                acceleration: a,
                jerk_time: a / j,
                speeding_time: top / a + a / j,
                cruise_time: 0.0,
            };
        }
        let time = (s / (2.0 * j)).cbrt();
        Profile {
            speed: j * time * time,
            acceleration: j * time,
            jerk_time: time,
            speeding_time: 2.0 * time,
            cruise_time: 0.0,
        }
    }

    /// Time of the whole move.
    pub fn time(&self) -> f64 {
        2.0 * self.speeding_time + self.cruise_time
    }

    /// Time at the acceleration that is reached, of one speeding up.
    pub fn constant_time(&self) -> f64 {
        let time = self.speeding_time - 2.0 * self.jerk_time;
        // two equal times may differ by their last digit
        if time < 1e-12 * self.speeding_time { 0.0 } else { time }
    }

    /// Root mean square speed of one speeding up.
    pub fn rms_speed(&self) -> f64 {
        let (top, ramp, time) = (self.speed, self.jerk_time, self.speeding_time);
        let rise = self.acceleration * ramp;
        let (slow, fast) = (0.5 * rise, top - 0.5 * rise);
        let rising = rise * rise * ramp / 20.0;
        let falling = ramp * (top * top - top * rise / 3.0) + rising;
        let constant = self.constant_time() * (slow * slow + slow * fast + fast * fast) / 3.0;
        ((rising + constant + falling) / time).sqrt()
    }
}

/// Speed that a move reaches, m/s. 40 mm, 0.5 m/s, 5 m/s², 100 m/s³: 0.339 354 m/s.
pub static REACHED_SPEED: Formula<fn(Length, Velocity, Acceleration, Jerk) -> Velocity> = Formula {
    note: Note {
        id: "reached-speed",
        title: "speed that a move reaches",
        equation: "v·j ≥ a²: T_a = v/a + a/j; else T_a = 2·√(v/j). s ≥ v·T_a: v_p = v; \
                   else s ≥ 2·a³/j²: v_p = √((a²/2j)² + a·s) − a²/2j; else v_p = j·∛(s/2j)²",
        inputs: INPUTS,
        validity: VALIDITY,
        sources: KINEMATICS,
    },
    apply: |travel, speed, acceleration, jerk| Velocity::of_si(Profile::new(travel, speed, acceleration, jerk).speed),
};

/// Acceleration that a move reaches, m/s². 0.8 m, 0.5 m/s, 10 m/s², 100 m/s³: 7.0711 m/s².
pub static REACHED_ACCELERATION: Formula<fn(Length, Velocity, Acceleration, Jerk) -> Acceleration> = Formula {
    note: Note {
        id: "reached-acceleration",
        title: "acceleration that a move reaches",
        equation: "s < v·T_a and s < 2·a³/j²: a_p = j·∛(s/2j); else s ≥ v·T_a and v·j < a²: a_p = √(v·j); else a_p = a",
        inputs: INPUTS,
        validity: VALIDITY,
        sources: KINEMATICS,
    },
    apply: |travel, speed, acceleration, jerk| {
        Acceleration::of_si(Profile::new(travel, speed, acceleration, jerk).acceleration)
    },
};

/// Time in which the acceleration is built up, s. 0.8 m, 0.5 m/s, 5 m/s², 100 m/s³: 0.05 s.
pub static JERK_TIME: Formula<fn(Length, Velocity, Acceleration, Jerk) -> Time> = Formula {
    note: Note {
        id: "jerk-time",
        title: "time in which the acceleration of a move is built up",
        equation: "T_j = a_p/j",
        inputs: INPUTS,
        validity: VALIDITY,
        sources: KINEMATICS,
    },
    apply: |travel, speed, acceleration, jerk| Time::of_si(Profile::new(travel, speed, acceleration, jerk).jerk_time),
};

/// Time from rest to the speed that is reached, s. 0.8 m, 0.5 m/s, 5 m/s², 100 m/s³: 0.15 s.
pub static SPEEDING_TIME: Formula<fn(Length, Velocity, Acceleration, Jerk) -> Time> = Formula {
    note: Note {
        id: "speeding-time",
        title: "time from rest to the speed that a move reaches",
        equation: "T_a = v_p/a_p + a_p/j",
        inputs: INPUTS,
        validity: VALIDITY,
        sources: KINEMATICS,
    },
    apply: |travel, speed, acceleration, jerk| {
        Time::of_si(Profile::new(travel, speed, acceleration, jerk).speeding_time)
    },
};

/// Time at the speed that is reached, s. 0.8 m, 0.5 m/s, 5 m/s², 100 m/s³: 1.45 s.
pub static CRUISE_TIME: Formula<fn(Length, Velocity, Acceleration, Jerk) -> Time> = Formula {
    note: Note {
        id: "cruise-time",
        title: "time of a move at the speed that it reaches",
        equation: "T_v = s/v_p − T_a, at least 0",
        inputs: INPUTS,
        validity: VALIDITY,
        sources: KINEMATICS,
    },
    apply: |travel, speed, acceleration, jerk| Time::of_si(Profile::new(travel, speed, acceleration, jerk).cruise_time),
};

/// Root mean square speed while a move speeds up, m/s. 0.8 m, 0.5 m/s, 5 m/s², 100 m/s³: 0.3068 m/s.
pub static SPEEDING_RMS_SPEED: Formula<fn(Length, Velocity, Acceleration, Jerk) -> Velocity> = Formula {
    note: Note {
        id: "speeding-rms-speed",
        title: "root mean square speed while a move speeds up",
        equation: "u = a_p·T_j: v_q² = [u²·T_j/20 + (T_a − 2·T_j)·(v_p² − v_p·u/2 + u²/4)/3 \
                   + T_j·(v_p² − v_p·u/3 + u²/20)]/T_a",
        inputs: INPUTS,
        validity: VALIDITY,
        sources: KINEMATICS,
    },
    apply: |travel, speed, acceleration, jerk| {
        Velocity::of_si(Profile::new(travel, speed, acceleration, jerk).rms_speed())
    },
};
