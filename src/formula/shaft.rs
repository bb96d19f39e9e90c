//! Bending of the screw: whip, weight on the nut, growth of a residual bow.
//!
//! Method: slender uniform beam between its bearings; the eigenvalue λ of cos λ·cosh λ = ±1 or
//! tan λ = tanh λ stands for the fixity of the ends, and λ² is passed: 3.516 fixed–free, 9.870
//! supported–supported, 15.418 fixed–supported, 22.373 fixed–fixed. Limits: the nut's help, shear and rotary
//! inertia are left out (below 0.4 % for a length of 20 diameters or more).

use super::constants::{GRAVITY, STEEL_DENSITY, STEEL_YOUNG};
use super::duty::level_share;
use super::{Formula, Note, Series};
use crate::source::Source;
use crate::units::{Angle, AngularVelocity, Force, Length, Measure, Ratio, Velocity};
use std::f64::consts::{FRAC_PI_4, TAU};

const BEAM: Source = Source::publication(
    "W. T. Thomson, Theory of Vibration with Applications, Appendix D (eigenvalues of uniform beams)",
);

/// First critical speed of a solid steel screw, rad/s.
///
/// Pass root diameter, free length from bearing to bearing, and squared eigenvalue of the ends. No safety is
/// inside. Check: 34.5 mm, 1.5 m, 15.418 → 2891 1/min.
pub static WHIP_SPEED: Formula<fn(Length, Length, Ratio) -> AngularVelocity> = Formula {
    note: Note {
        id: "whip-speed",
        title: "first critical speed of the screw",
        equation: "n_cr = λ²/(2π·L²)·√(E·I/(ρ·A)), I/A = d_r²/16",
        inputs: &[("d_r", "root-diameter"), ("L", "free-length"), ("λ²", "eigenvalue-squared")],
        validity: "solid steel, E 206 GPa, 7850 kg/m³, length of 20 diameters or more, nut ignored; no safety inside",
        sources: &[BEAM],
    },
    apply: whip_speed,
};

/// See [`WHIP_SPEED`].
#[inline]
pub fn whip_speed(root_diameter: Length, free_length: Length, eigenvalue_squared: Ratio) -> AngularVelocity {
    hollow_whip_speed(root_diameter, Length::of_si(0.0), free_length, eigenvalue_squared)
}

/// First critical speed of a bored steel screw, rad/s.
///
/// Pass root diameter, bore, free length and squared eigenvalue of the ends. A bore of 0.4 root diameters
/// raises the speed by 7.70 %.
pub static HOLLOW_WHIP_SPEED: Formula<fn(Length, Length, Length, Ratio) -> AngularVelocity> = Formula {
    note: Note {
        id: "hollow-whip-speed",
        title: "first critical speed of a bored screw",
        equation: "n_cr = λ²/(2π·L²)·√(E·I/(ρ·A)), I/A = (d_r² + d_b²)/16",
        inputs: &[("d_r", "root-diameter"), ("d_b", "bore"), ("L", "free-length"), ("λ²", "eigenvalue-squared")],
        validity: "steel, E 206 GPa, 7850 kg/m³, bore empty, length of 20 diameters or more; no safety inside",
        sources: &[BEAM],
    },
    apply: hollow_whip_speed,
};

/// See [`HOLLOW_WHIP_SPEED`].
#[inline]
pub fn hollow_whip_speed(
    root_diameter: Length,
    bore: Length,
    free_length: Length,
    eigenvalue_squared: Ratio,
) -> AngularVelocity {
    let (d, b, length) = (root_diameter.si(), bore.si(), free_length.si());
    let gyration = (d * d + b * b).sqrt() / 4.0;
    let sound = (STEEL_YOUNG / STEEL_DENSITY).sqrt();
    AngularVelocity::of_si(eigenvalue_squared.si() * gyration * sound / (length * length))
}

/// By how much an axial force changes the critical speed, 1; zero where the screw buckles.
///
/// Pass the axial force (tension positive), the Euler load of the same fixity, and the squared eigenvalue.
/// Check: supported–supported at half the Euler load → 1.224 74.
pub static TENSION_WHIP_FACTOR: Formula<fn(Force, Force, Ratio) -> Ratio> = Formula {
    note: Note {
        id: "tension-whip-factor",
        title: "critical speed under axial force over critical speed without",
        equation: "n/n_0 = √(1 + F/F_cr); fixed–free: times 1 − 0.0355·f + 0.0036·f², f = F/F_cr",
        inputs: &[("F", "axial-tension"), ("F_cr", "buckling-load"), ("λ²", "eigenvalue-squared")],
        validity: "from −0.5 to +2 Euler loads: exact for supported ends, within 2.2 % for fixed ones, within 0.3 % \
                   for fixed–free; zero at and below −1 Euler load",
        sources: &[Source::derived(
            "beam with axial force; the fixed–free correction is fitted to a finite-element model",
        )],
    },
    apply: tension_whip_factor,
};

/// See [`TENSION_WHIP_FACTOR`].
#[inline]
pub fn tension_whip_factor(axial_tension: Force, buckling_load: Force, eigenvalue_squared: Ratio) -> Ratio {
    let share = axial_tension.si() / buckling_load.si();
    if share <= -1.0 {
        return Ratio::of_si(0.0);
    }
    let simple = (1.0 + share).sqrt();
    let free = eigenvalue_squared.si() < 5.0;
    Ratio::of_si(if free {
        simple * (1.0 - 0.0355 * share + 0.0036 * share * share)
    } else {
        simple + 0.0 * eigenvalue_squared.si()
    })
}

/// Weight of the screw that the nut carries sideways, upper value, N.
///
/// Pass root diameter, bore, free length, number of spans and the angle of the axis.
/// Check: 63 mm, no bore, 6 m, 1, level → 900 N.
pub static WEIGHT_ON_NUT: Formula<fn(Length, Length, Length, Ratio, Angle) -> Force> = Formula {
    note: Note {
        id: "screw-weight-on-nut",
        title: "weight of the screw that the nut carries sideways",
        equation: "R = 5/8·ρ·π/4·(d_r² − d_h²)·g·cos θ·L/n",
        inputs: &[
            ("d_r", "root-diameter"),
            ("d_h", "bore"),
            ("L", "free-length"),
            ("n", "spans"),
            ("θ", "inclination"),
        ],
        validity: "steel, stiff nut at mid length; ½ instead of ⅝ for clamped ends; supports that travel along \
                   stand midway between nut and end, so that the nut stands between spans of L/n together",
        sources: &[Source::derived("middle reaction of a beam on three supports")],
    },
    apply: weight_on_nut,
};

/// See [`WEIGHT_ON_NUT`].
#[inline]
pub fn weight_on_nut(
    root_diameter: Length,
    bore: Length,
    free_length: Length,
    spans: Ratio,
    inclination: Angle,
) -> Force {
    let squares = root_diameter.si().powi(2) - bore.si().powi(2);
    let weight = STEEL_DENSITY * FRAC_PI_4 * squares * GRAVITY * level_share(inclination);
    Force::of_si(0.625 * weight * free_length.si() / spans.si())
}

/// Critical speed of a screw under axial force, rad/s. Check: 2891 1/min at a factor of 0.95 → 2746 1/min.
pub static LOADED_WHIP_SPEED: Formula<fn(AngularVelocity, Ratio) -> AngularVelocity> = Formula {
    note: Note {
        id: "loaded-whip-speed",
        title: "first critical speed of the screw under its axial force",
        equation: "n_cr = n_cr0·x_w",
        inputs: &[("n_cr0", "bare-whip-speed"), ("x_w", "whip-factor")],
        validity: "that of the factor",
        sources: &[Source::derived("definition of the factor")],
    },
    apply: |bare, factor| AngularVelocity::of_si(bare.si() * factor.si()),
};

/// How far the speeds at which a nut turns stay from the critical speed of its standing screw, over that speed, 1.
///
/// Pass the highest speed of the axis, the travel for one turn, the critical speed, and the top speed of every phase;
/// phases that stand do not count. Check: 15 and 12 m/min, 20 mm, 500 1/min → 0.2.
pub static WHIP_DISTANCE: Formula<fn(Velocity, Length, AngularVelocity, Series<Velocity>) -> Ratio> = Formula {
    note: Note {
        id: "whip-distance",
        title: "least distance of the nut's speeds from the critical speed of the screw",
        equation: "x_cr = min |v_k/(P_h·n_cr) − 1| over v and every v_k that is not zero",
        inputs: &[("v", "speed"), ("P_h", "lead"), ("n_cr", "whip-speed"), ("v_k", "phase-top-speed")],
        validity: "first bending mode, nut anywhere; the top of a short move counts as if it were held",
        sources: &[Source::derived("ratio of two speeds")],
    },
    apply: whip_distance,
};

/// See [`WHIP_DISTANCE`].
#[inline]
pub fn whip_distance(
    speed: Velocity,
    lead: Length,
    whip_speed: AngularVelocity,
    phase_top_speeds: Series<Velocity>,
) -> Ratio {
    let distance = |speed: f64| (TAU * speed.abs() / lead.si() / whip_speed.si() - 1.0).abs();
    let mut least = distance(speed.si());
    for &top in phase_top_speeds.si().iter().filter(|&&top| top != 0.0) {
        let here = distance(top);
        if here < least || here.is_nan() {
            least = here;
        }
    }
    Ratio::of_si(least)
}

/// By how much a residual bow grows at speed, 1.
///
/// Pass the speed, the critical speed and the damping ratio. At rest zero. Check: r = 0.8, D = 0.02 → 1.771.
pub static BOW_AMPLIFICATION: Formula<fn(AngularVelocity, AngularVelocity, Ratio) -> Ratio> = Formula {
    note: Note {
        id: "bow-amplification",
        title: "growth of a residual bow or unbalance",
        equation: "x/e_0 = r²/√((1 − r²)² + (2·D·r)²), r = n/n_cr",
        inputs: &[("n", "speed"), ("n_cr", "whip-speed"), ("D", "damping")],
        validity: "first bending mode; without damping infinite at the critical speed",
        sources: &[Source::memory("W. T. Thomson, Theory of Vibration with Applications, rotating unbalance")],
    },
    apply: bow_amplification,
};

/// See [`BOW_AMPLIFICATION`].
#[inline]
pub fn bow_amplification(speed: AngularVelocity, whip_speed: AngularVelocity, damping: Ratio) -> Ratio {
    let r = speed.si() / whip_speed.si();
    Ratio::of_si(r * r / (1.0 - r * r).hypot(2.0 * damping.si() * r))
}
