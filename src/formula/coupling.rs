//! The torsional resonance of motor and load on the coupling or belt between them, and how high it should lie.
//!
//! Method: two inertias on a spring. The speed loop has to stay clear of that resonance; how fast it has to be follows
//! from the position loop that the axis can have. Limits: no damping; one mode.

use super::{Formula, Note};
use crate::source::Source;
use crate::units::*;
use std::f64::consts::TAU;

/// Torsional resonance of motor and load on coupling or belt.
///
/// Pass stiffness at screw or nut, inertias of motor and load (both at the motor), and reduction.
/// Check: 15 kN·m/rad, 60 and 40.8 kg·cm², 1 → 395.6 Hz.
pub static COUPLING_RESONANCE: Formula<fn(TorsionalStiffness, MomentOfInertia, MomentOfInertia, Ratio) -> Frequency> =
    Formula {
        note: Note {
            id: "coupling-resonance",
            title: "torsional resonance of motor and load on coupling or belt",
            equation: "f_c = √(c_g·(1/J_M + 1/J_L))/(2π·i)",
            inputs: &[
                ("c_g", "reduction-stiffness"),
                ("J_M", "rotor-inertia"),
                ("J_L", "load-inertia"),
                ("i", "reduction"),
            ],
            validity: "the driven mass counts with the load, which is on the safe side; no damping",
            sources: &[Source::derived("two inertias on a spring; eigenvalues of the 2×2 matrix in the tests")],
        },
        apply: |stiffness, motor, load, reduction| {
            let square = stiffness.si() * (1.0 / motor.si() + 1.0 / load.si());
            Frequency::of_si(square.sqrt() / (TAU * reduction.si()))
        },
    };

/// Speed loop over position loop.
const LOOPS: f64 = 4.0;
/// Resonance over speed loop.
const CLEAR: f64 = 3.0;
/// Largest gain of the position loop over √(k/m_red): 0.7·0.245, the lower envelope of `gain-limit`.
const REACH: f64 = 0.7 * 0.245;

/// Resonance that leaves the loops of the axis alone.
///
/// Pass stiffness from motor to slide and turning parts as mass. Check: 101.8 N/µm, 3500 kg → 55.9 Hz.
pub static COUPLING_FLOOR: Formula<fn(Stiffness, Mass) -> Frequency> = Formula {
    note: Note {
        id: "coupling-floor",
        title: "torsional resonance that leaves the loops of the axis alone",
        equation: "f_c,w = 3·4·K_v/(2π), K_v = 0.7·0.245·√(k/m_red)",
        inputs: &[("k", "total-stiffness"), ("m_red", "reduced-mass")],
        validity: "position loop as fast as the mechanics allow (`gain-limit`, encoder on the motor), speed loop four times that",
        sources: &[
            Source::derived("lower envelope of the gain that a two-mass axis allows"),
            Source::practice("speed loop four times the position loop, resonance three times the speed loop"),
        ],
    },
    apply: |stiffness, reduced| Frequency::of_si(CLEAR * LOOPS * REACH * (stiffness.si() / reduced.si()).sqrt() / TAU),
};
