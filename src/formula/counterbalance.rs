//! What carries part of a weight, and the force that is left for the drive.
//!
//! Method: a hanging weight on a rope over a pulley balances its share of the weight along the axis; the rope pulls with
//! `m_cb·(g − a)`, so the drive accelerates slide and counterweight and lifts the rest. A gas spring adds no mass, but its
//! force changes over the stroke. Limits: rope and pulley without mass and friction, gas without delay; the counterweight
//! is not on the guides and, on its rope, no part of the resonance of the drive.

use super::constants::GRAVITY;
use super::{Formula, Note};
use crate::source::Source;
use crate::units::{Acceleration, Angle, Force, Length, Mass, Measure, Ratio, Torque};
use std::f64::consts::TAU;

const ROPE: Source = Source::derived("Newton's second law for slide and counterweight on one rope");
const LAW: Source = Source::derived("Newton's second law along the axis");

/// Mass of the hanging counterweight of one drive, kg. 85 %, 300 kg, 90°: 255 kg.
pub static COUNTERWEIGHT_MASS: Formula<fn(Ratio, Mass, Angle) -> Mass> = Formula {
    note: Note {
        id: "counterweight-mass",
        title: "mass of the hanging counterweight",
        equation: "m_cb = c_w·m·sin θ",
        inputs: &[("c_w", "counterweight-share"), ("m", "driven-mass"), ("θ", "angle")],
        validity: "a rope that leads straight to the weight; zero where nothing hangs",
        sources: &[ROPE],
    },
    apply: |share, mass, angle| Mass::of_si(share.si() * mass.si() * angle.si().sin()),
};

/// All mass that a drive accelerates, kg. 300 and 255 kg: 555 kg.
pub static ACCELERATED_MASS: Formula<fn(Mass, Mass) -> Mass> = Formula {
    note: Note {
        id: "accelerated-mass",
        title: "all mass that a drive accelerates",
        equation: "m_a = m + m_cb",
        inputs: &[("m", "driven-mass"), ("m_cb", "counterweight-mass")],
        validity: "the rope stays tight",
        sources: &[ROPE],
    },
    apply: |driven, counterweight| Mass::of_si(driven.si() + counterweight.si()),
};

/// How far an acceleration takes the pull out of the rope of a counterweight: a/g. 4.903 m/s²: 0.5.
pub static ROPE_SLACKENING: Formula<fn(Acceleration) -> Ratio> = Formula {
    note: Note {
        id: "rope-slackening",
        title: "part of the rope's pull that the acceleration takes away",
        equation: "x_ro = a/g",
        inputs: &[("a", "acceleration")],
        validity: "the rope pulls with m_cb·(g − a) while the slide is accelerated upward; at 1 it hangs loose",
        sources: &[ROPE],
    },
    apply: |acceleration| Ratio::of_si(acceleration.si() / GRAVITY),
};

/// How far a stop downward takes the pull out of the rope of a counterweight: deceleration over g.
///
/// Pass the set torque limit, the rated torque of the brake, travel for one turn, reduction, the weight along the axis,
/// counterweight, accelerated mass and turning parts as mass. Check: 12 N·m, 8 N·m, 10 mm, 1, 588.4 N, 60, 120 and 350 kg →
/// (7539.8 − 588.4 + 588.4)/(470·9.80665) = 1.6358.
pub static STOP_ROPE_SLACKENING: Formula<fn(Torque, Torque, Length, Ratio, Force, Mass, Mass, Mass) -> Ratio> =
    Formula {
        note: Note {
            id: "stop-rope-slackening",
            title: "part of the rope's pull that a stop of drive or brake takes away",
            equation: "x_rs = (max(T_set, T_B)·2π·i/p − F_g + m_cb·g)/((m_a + m_red)·g)",
            inputs: &[
                ("T_set", "set-torque"),
                ("T_B", "brake-torque"),
                ("p", "travel-per-turn"),
                ("i", "reduction"),
                ("F_g", "gravity-force"),
                ("m_cb", "counterweight-mass"),
                ("m_a", "accelerated-mass"),
                ("m_red", "reduced-mass"),
            ],
            validity: "the slide is stopped on its way down, so the weight flies on upward; drive or brake, not both; no \
                   friction; the brake in full, and not a brake that grips harder than rated; at 1 the rope hangs loose",
            sources: &[ROPE],
        },
        apply: |set, brake, travel_per_turn, reduction, gravity, hanging, accelerated, reduced| {
            // so that a missing value stays missing
            let torque = if brake.si() > set.si() { brake.si() } else { set.si() + 0.0 * brake.si() };
            let push = torque * TAU * reduction.si() / travel_per_turn.si();
            let force = push - gravity.si() + hanging.si() * GRAVITY;
            Ratio::of_si(force / ((accelerated.si() + reduced.si()) * GRAVITY))
        },
    };

/// Largest share of the weight that a counterbalance carries anywhere on the stroke. 85 %, 18 %: 1.003.
pub static GREATEST_BALANCE: Formula<fn(Ratio, Ratio) -> Ratio> = Formula {
    note: Note {
        id: "greatest-balance",
        title: "largest share of the weight that is balanced anywhere on the stroke",
        equation: "c_max = c_b·(1 + r_b)",
        inputs: &[("c_b", "counterbalance-share"), ("r_b", "counterbalance-ripple")],
        validity: "the force varies by the ripple to either side of its mean",
        sources: &[Source::derived("definition of the ripple")],
    },
    apply: |share, ripple| Ratio::of_si(share.si() * (1.0 + ripple.si())),
};

/// Force on one drive in one phase, N, positive upward or forward; of a cutting force the worse is taken.
///
/// Pass accelerated mass, acceleration, weight along the axis, share of it that is balanced, friction, direction of
/// motion, the cutting force (positive against upward or forward motion), and 1 where it may act either way.
/// Check: 555 kg, 3 m/s², 2942 N, 85 %, 60 N, +1, no cutting → 2166.3 N.
pub static PHASE_FORCE: Formula<fn(Mass, Acceleration, Force, Ratio, Force, Ratio, Force, Ratio) -> Force> = Formula {
    note: Note {
        id: "phase-force",
        title: "force on one drive in one phase",
        equation: "F_0 = m_a·a + F_g·(1 − c) + σ·F_f; F = F_0 + F_p, or where that is larger in amount F_0 − w·F_p",
        inputs: &[
            ("m_a", "accelerated-mass"),
            ("a", "phase-acceleration"),
            ("F_g", "gravity-force"),
            ("c", "phase-balance"),
            ("F_f", "friction-force"),
            ("σ", "phase-direction"),
            ("F_p", "phase-drive-process-force"),
            ("w", "cutting-both-ways"),
        ],
        validity: "rigid body, Coulomb friction; a cutting force that would help (w = 0) or may turn (w = 1) is taken \
                   in its worse state: without it, or the other way",
        sources: &[LAW, Source::practice("a cutting force that helps is not relied on")],
    },
    apply: phase_force,
};

/// See [`PHASE_FORCE`].
#[inline]
pub fn phase_force(
    mass: Mass,
    acceleration: Acceleration,
    weight: Force,
    balance: Ratio,
    friction: Force,
    direction: Ratio,
    process: Force,
    both_ways: Ratio,
) -> Force {
    let air = mass.si() * acceleration.si() + weight.si() * (1.0 - balance.si()) + direction.si() * friction.si();
    let (with, other) = (air + process.si(), air - both_ways.si() * process.si());
    // so that a missing value stays missing
    Force::of_si(if with.abs() >= other.abs() { with } else { other })
}
