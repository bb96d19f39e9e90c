//! Holding a load at rest, and stopping it in a buffer.
//!
//! Method: statics without friction; energy balance over the buffer stroke. Limits: nothing is credited for
//! efficiency or friction.

use super::constants::GRAVITY;
use super::{Formula, Note};
use crate::source::Source;
use crate::units::{Angle, Force, Length, Mass, Measure, Ratio, Torque, Velocity};
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
