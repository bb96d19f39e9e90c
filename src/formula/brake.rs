//! Holding a load at rest, and stopping it in a buffer.
//!
//! Method: statics without friction; energy balance over the buffer stroke. Limits: nothing is credited for
//! efficiency or friction.

use super::constants::GRAVITY;
use super::{Formula, Note};
use crate::source::Source;
use crate::units::*;
use std::f64::consts::TAU;

/// Torque at the motor that holds a load, N·m, no safety inside.
///
/// Pass the weight along the axis, travel for one turn, and reduction. Check: 2941.995 N, 10 mm, 1 → 4.6823 N·m.
pub static HOLDING_TORQUE: Formula<fn(Force, Length, Ratio) -> Torque> = Formula {
    note: Note {
        id: "holding-torque",
        title: "torque at the motor that holds the load",
        equation: "T_hold = |F_g|·p/(2π·i)",
        inputs: &[("F_g", "gravity-force"), ("p", "travel-per-turn"), ("i", "reduction")],
        validity: "no friction and no efficiency credited, no safety inside",
        sources: &[Source::derived("energy balance over one turn")],
    },
    apply: holding_torque,
};

/// See [`HOLDING_TORQUE`].
#[inline]
pub fn holding_torque(gravity_force: Force, travel_per_turn: Length, reduction: Ratio) -> Torque {
    Torque::of_si(gravity_force.si().abs() * travel_per_turn.si() / (TAU * reduction.si()))
}

/// Torque rating that a brake needs to hold a mass, N·m.
///
/// Pass mass, inclination, travel for one turn, reduction, and safety. Check: 300 kg, 90°, 10 mm, 1, 1.5 →
/// 7.0235 N·m.
pub static BRAKE_HOLDING_TORQUE: Formula<fn(Mass, Angle, Length, Ratio, Ratio) -> Torque> = Formula {
    note: Note {
        id: "brake-holding-torque",
        title: "brake torque at the motor that holds a mass",
        equation: "T_B = S·|m·g·sin θ|·p/(2π·i)",
        inputs: &[("m", "mass"), ("θ", "angle"), ("p", "travel-per-turn"), ("i", "ratio"), ("S", "safety")],
        validity: "static; no friction, efficiency or counterbalance credited",
        sources: &[Source::derived("energy balance over one turn")],
    },
    apply: brake_holding_torque,
};

/// See [`BRAKE_HOLDING_TORQUE`].
#[inline]
pub fn brake_holding_torque(mass: Mass, angle: Angle, travel_per_turn: Length, ratio: Ratio, safety: Ratio) -> Torque {
    let weight = Force::of_si(mass.si() * GRAVITY * angle.si().sin());
    Torque::of_si(safety.si() * holding_torque(weight, travel_per_turn, ratio).si())
}

/// Stroke of an end buffer that stops an axis, m; NaN where the buffer cannot stop it.
///
/// Pass mass (turning parts as mass included), speed, buffer force, drive force that still pushes,
/// inclination (positive: the axis runs down into the buffer), and buffer efficiency.
/// Check: 800 kg, 1 m/s, 20 kN, 5 kN, 0°, 0.8 → 36.4 mm.
pub static BUFFER_STROKE: Formula<fn(Mass, Velocity, Force, Force, Angle, Ratio) -> Length> = Formula {
    note: Note {
        id: "buffer-stroke",
        title: "stroke of the end buffer",
        equation: "s = ½·m·v²/(η_b·F_b − F_d − m·g·sin θ)",
        inputs: &[
            ("m", "mass"),
            ("v", "speed"),
            ("F_b", "buffer-force"),
            ("F_d", "drive-force"),
            ("θ", "angle"),
            ("η_b", "buffer-efficiency"),
        ],
        validity: "the buffer's mean force exceeds drive force and weight; no stop otherwise, and no value",
        sources: &[Source::derived("energy balance over the stroke")],
    },
    apply: buffer_stroke,
};

/// See [`BUFFER_STROKE`].
#[inline]
pub fn buffer_stroke(
    mass: Mass,
    speed: Velocity,
    buffer_force: Force,
    drive_force: Force,
    angle: Angle,
    buffer_efficiency: Ratio,
) -> Length {
    let weight = mass.si() * GRAVITY * angle.si().sin();
    let net = buffer_efficiency.si() * buffer_force.si() - drive_force.si() - weight;
    Length::of_si(if net <= 0.0 { f64::NAN } else { 0.5 * mass.si() * speed.si().powi(2) / net })
}

const FREE_FALL: &[Source] =
    &[Source::derived("equation of motion of load and turning parts joined stiffly; energy balance checked")];

/// Turning parts as mass on the slide: m_red = J·(2π·i/p)². 80 kg·cm², 10 mm, 1: 3158 kg.
pub static REDUCED_MASS: Formula<fn(MomentOfInertia, Length, Ratio) -> Mass> = Formula {
    note: Note {
        id: "reduced-mass",
        title: "turning parts as mass on the slide",
        equation: "m_red = J_rot·(2π·i/p)²",
        inputs: &[("J_rot", "rotating-inertia"), ("p", "travel-per-turn"), ("i", "reduction")],
        validity: "all turning parts at the motor",
        sources: FREE_FALL,
    },
    apply: |inertia, travel_per_turn, reduction| {
        let turns = TAU * reduction.si() / travel_per_turn.si();
        Mass::of_si(inertia.si() * turns * turns)
    },
};

/// Acceleration of the load while nothing holds it. 2942 N, 300 kg and 3158 kg: 0.8508 m/s².
pub static FALL_ACCELERATION: Formula<fn(Force, Mass, Mass) -> Acceleration> = Formula {
    note: Note {
        id: "fall-acceleration",
        title: "acceleration of the load between loss of power and the grip of the brake",
        equation: "g' = F_g/(m_d + m_red)",
        inputs: &[("F_g", "gravity-force"), ("m_d", "driven-mass"), ("m_red", "reduced-mass")],
        validity: "No friction, no counterbalance, no motor torque credited.",
        sources: FREE_FALL,
    },
    apply: |gravity, driven, reduced| Acceleration::of_si(gravity.si() / (driven.si() + reduced.si())),
};

/// Deceleration by the brake. 12 N·m at full value, 10 mm, 1, 2942 N, 3458 kg: 1.3297 m/s².
pub static BRAKE_DECELERATION: Formula<fn(Torque, Ratio, Length, Ratio, Force, Mass, Mass) -> Acceleration> = Formula {
    note: Note {
        id: "brake-deceleration",
        title: "deceleration of a falling load by the motor brake",
        equation: "a_b = (x_B·T_B·2π·i/p − F_g)/(m_d + m_red)",
        inputs: &[
            ("T_B", "brake-torque"),
            ("x_B", "brake-share"),
            ("p", "travel-per-turn"),
            ("i", "reduction"),
            ("F_g", "gravity-force"),
            ("m_d", "driven-mass"),
            ("m_red", "reduced-mass"),
        ],
        validity: "Not above zero: the brake does not stop the load.",
        sources: FREE_FALL,
    },
    apply: |brake, share, travel_per_turn, reduction, gravity, driven, reduced| {
        let force = share.si() * brake.si() * TAU * reduction.si() / travel_per_turn.si();
        Acceleration::of_si((force - gravity.si()) / (driven.si() + reduced.si()))
    },
};

/// Way from loss of power at full downward speed to standstill. 0.3 m/s, 50 ms, 0.8508 and 1.3297 m/s²: 60.2 mm.
pub static STOPPING_DISTANCE: Formula<fn(Velocity, Time, Acceleration, Acceleration) -> Length> = Formula {
    note: Note {
        id: "stopping-distance",
        title: "way of a falling load until the brake has stopped it",
        equation: "s_b = v·t_B + g'·t_B²/2 + (v + g'·t_B)²/(2·a_b)",
        inputs: &[("v", "speed"), ("t_B", "brake-delay"), ("g'", "fall-acceleration"), ("a_b", "brake-deceleration")],
        validity: "A deceleration not above zero gives no result: the load is not stopped.",
        sources: FREE_FALL,
    },
    apply: |speed, delay, fall, deceleration| {
        let (v, t, g) = (speed.si(), delay.si(), fall.si());
        let reached = v + g * t;
        let way = v * t + 0.5 * g * t * t + reached * reached / (2.0 * deceleration.si());
        Length::of_si(if deceleration.si() > 0.0 { way } else { f64::NAN })
    },
};

/// Work of the brake in that stop. 0.3 m/s, 50 ms, 0.8508 and 1.3297 m/s², 3458 kg in all, 2942 N: 332.7 J.
pub static BRAKE_WORK: Formula<fn(Velocity, Time, Acceleration, Acceleration, Mass, Mass, Force) -> Energy> = Formula {
    note: Note {
        id: "brake-work",
        title: "work that the brake takes up in one stop of a falling load",
        equation: "W_b = (m_d + m_red)·(v + g'·t_B)²/2 + F_g·(v + g'·t_B)²/(2·a_b)",
        inputs: &[
            ("v", "speed"),
            ("t_B", "brake-delay"),
            ("g'", "fall-acceleration"),
            ("a_b", "brake-deceleration"),
            ("m_d", "driven-mass"),
            ("m_red", "reduced-mass"),
            ("F_g", "gravity-force"),
        ],
        validity: "A deceleration not above zero gives no result: the load is not stopped.",
        sources: FREE_FALL,
    },
    apply: |speed, delay, fall, deceleration, driven, reduced, gravity| {
        let reached = speed.si() + fall.si() * delay.si();
        let squared = reached * reached;
        let work = 0.5 * (driven.si() + reduced.si()) * squared + gravity.si() * squared / (2.0 * deceleration.si());
        Energy::of_si(if deceleration.si() > 0.0 { work } else { f64::NAN })
    },
};

/// Stops that the brake bears over its life. 420 kJ, 332.7 J: 1262.
pub static BRAKE_STOPS: Formula<fn(Energy, Energy) -> Ratio> = Formula {
    note: Note {
        id: "brake-stops",
        title: "stops from full downward speed that the brake bears over its life",
        equation: "n_b = W_life/W_b",
        inputs: &[("W_life", "brake-life-energy"), ("W_b", "brake-work")],
        validity: "every stop from full speed; holding alone does not wear the brake",
        sources: &[Source::derived("wear goes with the work of friction")],
    },
    apply: |life, work| Ratio::of_si(life.si() / work.si()),
};

/// Load with which a brake that holds is tested, along the axis. 1.3 and 2942 N: 3825 N.
pub static BRAKE_TEST_LOAD: Formula<fn(Ratio, Force) -> Force> = Formula {
    note: Note {
        id: "brake-test-load",
        title: "load along the axis with which the brake is tested",
        equation: "F_test = x_t·|F_g|",
        inputs: &[("x_t", "brake-test-factor"), ("F_g", "gravity-force")],
        validity: "every brake by itself; the risk assessment says factor, cycle and how far the axis may move",
        sources: TEST,
    },
    apply: |factor, gravity| Force::of_si(factor.si() * gravity.si().abs()),
};

/// The same as torque at the motor. 1.3 and 4.6823 N·m: 6.087 N·m.
pub static BRAKE_TEST_TORQUE: Formula<fn(Ratio, Torque) -> Torque> = Formula {
    note: Note {
        id: "brake-test-torque",
        title: "torque at the motor with which the brake is tested",
        equation: "T_test = x_t·T_hold",
        inputs: &[("x_t", "brake-test-factor"), ("T_hold", "holding-torque")],
        validity: "every brake by itself; the risk assessment says factor, cycle and how far the axis may move",
        sources: TEST,
    },
    apply: |factor, holding| Torque::of_si(factor.si() * holding.si()),
};

const TEST: &[Source] =
    &[Source::memory("holding brakes are tested with about 1.3 times the load at rest; text not found")];

/// Way from loss of power to the grip of the brake. 0.3 m/s, 50 ms, 0.8508 m/s²: 16.06 mm; 0.5 m/s, 60 ms, 9.80665 m/s²: 47.65 mm.
pub static FALL_BEFORE_BRAKE: Formula<fn(Velocity, Time, Acceleration) -> Length> = Formula {
    note: Note {
        id: "fall-before-brake",
        title: "way of a falling load before the brake grips, from full downward speed",
        equation: "s_f = v·t_B + g'·t_B²/2",
        inputs: &[("v", "speed"), ("t_B", "brake-delay"), ("g'", "fall-acceleration")],
        validity: "no friction, no counterbalance, no motor torque credited",
        sources: FREE_FALL,
    },
    apply: |speed, delay, fall| {
        let t = delay.si();
        Length::of_si(speed.si() * t + 0.5 * fall.si() * t * t)
    },
};

/// Way of a load at rest that the drive lets go until the brake has stopped it. 50 ms, 0.8508 and 1.3297 m/s²: 1.744 mm;
/// 60 ms, 9.80665 and 5 m/s²: 52.27 mm.
pub static DROP_FROM_REST: Formula<fn(Time, Acceleration, Acceleration) -> Length> = Formula {
    note: Note {
        id: "drop-from-rest",
        title: "way of a load at rest from loss of power until the brake has stopped it",
        equation: "s_0 = g'·t_B²/2 + (g'·t_B)²/(2·a_b)",
        inputs: &[("t_B", "brake-delay"), ("g'", "fall-acceleration"), ("a_b", "brake-deceleration")],
        validity: "A deceleration not above zero gives no result: the load is not stopped.",
        sources: FREE_FALL,
    },
    apply: |delay, fall, deceleration| {
        let (t, g) = (delay.si(), fall.si());
        let way = 0.5 * g * t * t + (g * t).powi(2) / (2.0 * deceleration.si());
        Length::of_si(if deceleration.si() > 0.0 { way } else { f64::NAN })
    },
};

/// Seconds of a year.
const YEAR: f64 = 31_557_600.0;

/// Stops without power that are expected in service. 12 a year, 10 years: 120.
pub static EXPECTED_STOPS: Formula<fn(Ratio, Time) -> Ratio> = Formula {
    note: Note {
        id: "expected-stops",
        title: "stops without power that are expected in service",
        equation: "n_los = r_e·t_y",
        inputs: &[("r_e", "power-losses"), ("t_y", "service-years")],
        validity: "r_e a year, each from full downward speed",
        sources: &[Source::derived("count over the years of service")],
    },
    apply: |a_year, service| Ratio::of_si(a_year.si() * service.si() / YEAR),
};
