//! Moments of inertia, all seen at the motor.
//!
//! Method: kinetic energy at equal motor speed; a reduction divides inertia by its square. Limits: rigid parts,
//! steel bars and discs.

use super::constants::STEEL_DENSITY;
use super::{Formula, Note};
use crate::source::Source;
use crate::units::{Length, Mass, Measure, MomentOfInertia, Ratio};
use std::f64::consts::{PI, TAU};

const ENERGY: Source = Source::derived("equal kinetic energy");

/// A moved mass as inertia at the motor, kg·m².
///
/// Pass mass, travel for one turn of screw or pinion, and reduction. Check: 600 kg, 10 mm, 1 → 1.519 82e-3 kg·m².
pub static MASS_INERTIA: Formula<fn(Mass, Length, Ratio) -> MomentOfInertia> = Formula {
    note: Note {
        id: "reflected-inertia",
        title: "moved mass as inertia at the motor",
        equation: "J = m·(p/(2π·i))²",
        inputs: &[("m", "mass"), ("p", "travel-per-turn"), ("i", "reduction")],
        validity: "the reduction is not zero",
        sources: &[ENERGY],
    },
    apply: mass_inertia,
};

/// See [`MASS_INERTIA`].
#[inline]
pub fn mass_inertia(mass: Mass, travel_per_turn: Length, reduction: Ratio) -> MomentOfInertia {
    MomentOfInertia::of_si(mass.si() * (travel_per_turn.si() / (TAU * reduction.si())).powi(2))
}

/// Inertia of a steel screw about its axis, kg·m².
///
/// Pass nominal diameter, bore and length. Check: 40 mm, no bore, 1.3 m → 2.5648e-3 kg·m².
pub static SCREW_INERTIA: Formula<fn(Length, Length, Length) -> MomentOfInertia> = Formula {
    note: Note {
        id: "screw-inertia",
        title: "inertia of the screw",
        equation: "J_s = ρ·L_s·π/32·(d_0⁴ − d_h⁴)",
        inputs: &[("d_0", "nominal-diameter"), ("d_h", "bore"), ("L_s", "length")],
        validity: "steel, 7850 kg/m³; the nominal diameter makes it an upper value",
        sources: &[Source::derived("inertia of a round bar")],
    },
    apply: screw_inertia,
};

/// See [`SCREW_INERTIA`].
#[inline]
pub fn screw_inertia(nominal_diameter: Length, bore: Length, length: Length) -> MomentOfInertia {
    let fourth_powers = nominal_diameter.si().powi(4) - bore.si().powi(4);
    MomentOfInertia::of_si(STEEL_DENSITY * length.si() * PI / 32.0 * fourth_powers)
}

/// Inertia of a solid steel disc such as a pinion, kg·m².
///
/// Pass diameter and width. Check: 42 mm, 25 mm → 0.5995e-4 kg·m².
pub static DISC_INERTIA: Formula<fn(Length, Length) -> MomentOfInertia> = Formula {
    note: Note {
        id: "disc-inertia",
        title: "inertia of a pinion taken as a disc",
        equation: "J = ρ·b·π/32·d⁴",
        inputs: &[("d", "diameter"), ("b", "width")],
        validity: "solid steel, 7850 kg/m³",
        sources: &[Source::derived("inertia of a round bar")],
    },
    apply: disc_inertia,
};

/// See [`DISC_INERTIA`].
#[inline]
pub fn disc_inertia(diameter: Length, width: Length) -> MomentOfInertia {
    screw_inertia(diameter, Length::of_si(0.0), width)
}

/// All turning parts as inertia at the motor, kg·m².
///
/// Pass rotor, reduction (at the motor), screw or pinion (at its own shaft), and reduction.
/// Check: 60, 3, 25.648 kg·cm², 1 → 88.648 kg·cm².
pub static ROTATING_INERTIA: Formula<fn(MomentOfInertia, MomentOfInertia, MomentOfInertia, Ratio) -> MomentOfInertia> =
    Formula {
        note: Note {
            id: "rotating-inertia",
            title: "all turning parts, at the motor",
            equation: "J_rot = J_M + J_g + J_s/i²",
            inputs: &[
                ("J_M", "rotor-inertia"),
                ("J_g", "reduction-inertia"),
                ("J_s", "shaft-inertia"),
                ("i", "reduction"),
            ],
            validity: "the inertia of the reduction is stated at the motor",
            sources: &[ENERGY],
        },
        apply: rotating_inertia,
    };

/// See [`ROTATING_INERTIA`].
#[inline]
pub fn rotating_inertia(
    rotor: MomentOfInertia,
    reduction_inertia: MomentOfInertia,
    shaft_inertia: MomentOfInertia,
    reduction: Ratio,
) -> MomentOfInertia {
    load_inertia(rotor, reduction_inertia, shaft_inertia, reduction)
}

/// All inertia beyond the motor, at the motor, kg·m².
///
/// Pass driven mass as inertia (at the motor), reduction (at the motor), screw or pinion (at its own shaft),
/// and reduction. Check: 15.198, 3, 25.648 kg·cm², 1 → 43.846 kg·cm².
pub static LOAD_INERTIA: Formula<fn(MomentOfInertia, MomentOfInertia, MomentOfInertia, Ratio) -> MomentOfInertia> =
    Formula {
        note: Note {
            id: "load-inertia",
            title: "all inertia beyond the motor, at the motor",
            equation: "J_L = J_m + J_g + J_s/i²",
            inputs: &[
                ("J_m", "mass-inertia"),
                ("J_g", "reduction-inertia"),
                ("J_s", "shaft-inertia"),
                ("i", "reduction"),
            ],
            validity: "the inertia of the reduction is stated at the motor",
            sources: &[ENERGY],
        },
        apply: load_inertia,
    };

/// See [`LOAD_INERTIA`].
#[inline]
pub fn load_inertia(
    mass_inertia: MomentOfInertia,
    reduction_inertia: MomentOfInertia,
    shaft_inertia: MomentOfInertia,
    reduction: Ratio,
) -> MomentOfInertia {
    let shaft = shaft_inertia.si() / reduction.si().powi(2);
    MomentOfInertia::of_si(mass_inertia.si() + reduction_inertia.si() + shaft)
}

/// Load inertia over motor inertia, 1.
///
/// Pass load inertia and rotor inertia, both at the motor. Check: 43.846, 60 kg·cm² → 0.731.
pub static INERTIA_RATIO: Formula<fn(MomentOfInertia, MomentOfInertia) -> Ratio> = Formula {
    note: Note {
        id: "inertia-ratio",
        title: "load inertia over motor inertia",
        equation: "λ_J = J_L/J_M",
        inputs: &[("J_L", "load-inertia"), ("J_M", "rotor-inertia")],
        validity: "the motor has inertia",
        sources: &[Source::derived("definition")],
    },
    apply: inertia_ratio,
};

/// See [`INERTIA_RATIO`].
#[inline]
pub fn inertia_ratio(load: MomentOfInertia, rotor: MomentOfInertia) -> Ratio {
    Ratio::of_si(load.si() / rotor.si())
}
