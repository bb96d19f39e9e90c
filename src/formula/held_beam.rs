//! A screw between ends that give when tilted: fixity, bending eigenvalue, buckling factor, sag.
//!
//! Method: uniform slender beam; each end is held sideways and turns against a rotational spring. The frequency
//! equation and the stability equation of that beam are solved by regula falsi between the two limits that they cannot
//! leave. Supports that part the beam into equal spans count as pins, and the weaker outer span stands alone, which a
//! real beam that goes on over the support never falls below. Limits: housings and journals count through the spring
//! stiffness alone; shear and rotary inertia are left out (below 0.4 % for a length of 20 diameters or more).

use super::constants::{GRAVITY, STEEL_DENSITY, STEEL_YOUNG};
use super::duty::level_share;
use super::{Formula, Note};
use crate::source::Source;
use crate::units::{Angle, Force, Length, Measure, Ratio, TorsionalStiffness};
use std::f64::consts::{FRAC_PI_2, PI};

const SPRINGS: Source =
    Source::derived("slope and deflection of a uniform beam on rotational springs; checked by a finite-element model");

/// Bending stiffness E·I of a bored round bar of steel, N·m².
#[inline]
pub(super) fn bending_stiffness(root: f64, bore: f64) -> f64 {
    STEEL_YOUNG * PI / 64.0 * (root.powi(4) - bore.powi(4))
}

/// The root of a function that is above zero at `low` and below at `high`.
///
/// Regula falsi with halved ends (Illinois): about ten evaluations, never outside the bounds.
#[inline]
fn root(f: impl Fn(f64) -> f64, mut low: f64, mut high: f64) -> f64 {
    let (mut at_low, mut at_high) = (f(low), f(high));
    // a limit case whose root is the bound itself
    if at_low <= 0.0 {
        return low;
    }
    if at_high >= 0.0 {
        return high;
    }
    let mut side = 0;
    let mut middle = low;
    for _ in 0..80 {
        let next = (low * at_high - high * at_low) / (at_high - at_low);
        if (next - middle).abs() < 1e-13 * next {
            return next;
        }
        middle = next;
        let value = f(middle);
        if value > 0.0 {
            (low, at_low) = (middle, value);
            if side == 1 {
                at_high *= 0.5;
            }
            side = 1;
        } else if value < 0.0 {
            (high, at_high) = (middle, value);
            if side == -1 {
                at_low *= 0.5;
            }
            side = -1;
        } else {
            // the root itself, or not a number, which has to stay one
            return if value == 0.0 { middle } else { f64::NAN };
        }
    }
    middle
}

/// Tilt stiffness of an end against the bending stiffness of its span, 1.
///
/// Pass the tilt stiffness, root diameter, bore, free length and number of spans; no tilt stiffness means supported,
/// infinite means fixed. Check: 115 kN·m/rad, 34.5 mm, 1.5 m → 12.04.
pub static END_FIXITY: Formula<fn(TorsionalStiffness, Length, Length, Length, Ratio) -> Ratio> = Formula {
    note: Note {
        id: "end-fixity",
        title: "tilt stiffness of an end over the bending stiffness of its span",
        equation: "κ = k_φ·L/(n·E·I), I = π/64·(d_r⁴ − d_h⁴)",
        inputs: &[
            ("k_φ", "tilt-stiffness"),
            ("d_r", "root-diameter"),
            ("d_h", "bore"),
            ("L", "free-length"),
            ("n", "spans"),
        ],
        validity: "steel, E 206 GPa; 0 is an end that is only supported, 100 is within 4 % of a rigid one",
        sources: &[Source::derived("rotational spring over E·I/L")],
    },
    apply: end_fixity,
};

/// See [`END_FIXITY`].
#[inline]
pub fn end_fixity(
    tilt: TorsionalStiffness,
    root_diameter: Length,
    bore: Length,
    length: Length,
    spans: Ratio,
) -> Ratio {
    let bending = bending_stiffness(root_diameter.si(), bore.si());
    Ratio::of_si(tilt.si() * length.si() / (spans.si() * bending))
}

/// First bending eigenvalue squared of a beam whose ends give when tilted, 1, referred to the whole length.
///
/// Pass the fixities of both ends and the number of equal spans. Check: 0, 0, 1 → 9.8696; 10, 10, 1 → 17.269.
pub static HELD_EIGENVALUE: Formula<fn(Ratio, Ratio, Ratio) -> Ratio> = Formula {
    note: Note {
        id: "held-eigenvalue-squared",
        title: "bending eigenvalue squared of a screw whose ends give when tilted",
        equation: "λ² = n²·B², least B of κ_1·κ_2·(1 − cos B·cosh B) + (κ_1 + κ_2)·B·(sin B·cosh B − cos B·sinh B) \
                   + 2·B²·sin B·sinh B = 0",
        inputs: &[("κ_1", "first-fixity"), ("κ_2", "second-fixity"), ("n", "spans")],
        validity: "both ends held sideways; from 9.870 (supported) over 15.418 to 22.373 (rigid); with spans pass the \
                   weaker outer span, its support as 0: a lower bound",
        sources: &[
            SPRINGS,
            Source::publication("W. T. Thomson, Theory of Vibration with Applications, Appendix D (the rigid limits)"),
        ],
    },
    apply: held_eigenvalue,
};

/// Eigenvalue B of a rigidly held beam.
const RIGID: f64 = 4.730_040_744_862_704;
/// Eigenvalue B of a rigidly rooted cantilever.
const CANTILEVER: f64 = 1.875_104_068_711_961;

/// See [`HELD_EIGENVALUE`].
#[inline]
pub fn held_eigenvalue(first: Ratio, second: Ratio, spans: Ratio) -> Ratio {
    let (product, sum, one) = both_ends(first.si(), second.si());
    let balance = |b: f64| {
        let ((sine, cosine), (sinh, cosh)) = (b.sin_cos(), (b.sinh(), b.cosh()));
        // over cosh, so that the terms keep to one size
        let held = product * (1.0 - cosine * cosh) + sum * b * (sine * cosh - cosine * sinh);
        (held + one * 2.0 * b * b * sine * sinh) / cosh
    };
    let b = root(balance, PI, RIGID);
    Ratio::of_si((spans.si() * b).powi(2))
}

/// A fixity κ as κ/(1 + κ) and 1/(1 + κ); a rigid end is infinite.
#[inline]
fn shares(fixity: f64) -> (f64, f64) {
    if fixity == f64::INFINITY { (1.0, 0.0) } else { (fixity / (1.0 + fixity), 1.0 / (1.0 + fixity)) }
}

/// κ_1·κ_2, κ_1 + κ_2 and 1, all over (1 + κ_1)·(1 + κ_2).
#[inline]
fn both_ends(first: f64, second: f64) -> (f64, f64, f64) {
    let ((a, a_loose), (b, b_loose)) = (shares(first), shares(second));
    (a * b, a * b_loose + b * a_loose, a_loose * b_loose)
}

/// Buckling factor of a column whose ends give when tilted, 1, referred to the whole length.
///
/// Pass the fixities of both ends and the number of equal spans. Check: 0, 0, 1 → 1; 10, 0, 1 → 1.7302.
pub static HELD_BUCKLING: Formula<fn(Ratio, Ratio, Ratio) -> Ratio> = Formula {
    note: Note {
        id: "held-buckling-factor",
        title: "buckling factor of a screw whose ends give when tilted",
        equation: "N = n²·(u/π)², least u of κ_1·κ_2·(2 − 2·cos u − u·sin u) + (κ_1 + κ_2)·u·(sin u − u·cos u) \
                   + u³·sin u = 0",
        inputs: &[("κ_1", "first-fixity"), ("κ_2", "second-fixity"), ("n", "spans")],
        validity: "both ends held sideways; from 1 (supported) over 2.0457 to 4 (rigid); with spans pass the weaker \
                   outer span, its support as 0: a lower bound",
        sources: &[SPRINGS],
    },
    apply: held_buckling,
};

/// See [`HELD_BUCKLING`].
#[inline]
pub fn held_buckling(first: Ratio, second: Ratio, spans: Ratio) -> Ratio {
    let (product, sum, one) = both_ends(first.si(), second.si());
    let balance = |u: f64| {
        let (sine, cosine) = u.sin_cos();
        product * (2.0 - 2.0 * cosine - u * sine) + sum * u * (sine - u * cosine) + one * u.powi(3) * sine
    };
    let u = root(balance, PI, 2.0 * PI);
    Ratio::of_si((spans.si() * u / PI).powi(2))
}

/// First bending eigenvalue squared of a beam with one free end whose root gives when tilted, 1.
///
/// Pass the fixity of the root. Check: 10 → 2.9678.
pub static ROOTED_EIGENVALUE: Formula<fn(Ratio) -> Ratio> = Formula {
    note: Note {
        id: "rooted-eigenvalue-squared",
        title: "bending eigenvalue squared of a screw with a free end whose root gives when tilted",
        equation: "λ² = B², least B of κ·(1 + cos B·cosh B) = B·(sin B·cosh B − cos B·sinh B)",
        inputs: &[("κ", "fixity")],
        validity: "one end free; 3.516 with a rigid root, zero without any fixity",
        sources: &[SPRINGS],
    },
    apply: rooted_eigenvalue,
};

/// See [`ROOTED_EIGENVALUE`].
#[inline]
pub fn rooted_eigenvalue(fixity: Ratio) -> Ratio {
    let (held, loose) = shares(fixity.si());
    let balance = |b: f64| {
        let ((sine, cosine), (sinh, cosh)) = (b.sin_cos(), (b.sinh(), b.cosh()));
        held * (1.0 + cosine * cosh) - loose * b * (sine * cosh - cosine * sinh)
    };
    Ratio::of_si(root(balance, 0.0, CANTILEVER).powi(2))
}

/// Buckling factor of a column with one free end whose root gives when tilted, 1.
///
/// Pass the fixity of the root. Check: 10 → 0.206 86.
pub static ROOTED_BUCKLING: Formula<fn(Ratio) -> Ratio> = Formula {
    note: Note {
        id: "rooted-buckling-factor",
        title: "buckling factor of a screw with a free end whose root gives when tilted",
        equation: "N = (u/π)², least u of κ·cos u = u·sin u",
        inputs: &[("κ", "fixity")],
        validity: "one end free; 0.25 with a rigid root, zero without any fixity",
        sources: &[SPRINGS],
    },
    apply: rooted_buckling,
};

/// See [`ROOTED_BUCKLING`].
#[inline]
pub fn rooted_buckling(fixity: Ratio) -> Ratio {
    let (held, loose) = shares(fixity.si());
    let balance = |u: f64| held * u.cos() - loose * u * u.sin();
    Ratio::of_si((root(balance, 0.0, FRAC_PI_2) / PI).powi(2))
}

/// Euler's buckling load of a bored steel bar, N.
///
/// Pass root diameter, bore, free length and buckling factor. Check: 34.5 mm, no bore, 1.5 m, 2.0457 → 128 553 N.
pub static EULER_LOAD: Formula<fn(Length, Length, Length, Ratio) -> Force> = Formula {
    note: Note {
        id: "euler-load",
        title: "Euler's buckling load of the screw",
        equation: "F_E = N·π²·E·I/L², I = π/64·(d_r⁴ − d_h⁴)",
        inputs: &[("d_r", "root-diameter"), ("d_h", "bore"), ("L", "free-length"), ("N", "buckling-factor")],
        validity: "steel, E 206 GPa, straight, centrally loaded, slender; no safety inside",
        sources: &[Source::derived("Euler's column; checked by a finite-element model")],
    },
    apply: euler_load,
};

/// See [`EULER_LOAD`].
#[inline]
pub fn euler_load(root_diameter: Length, bore: Length, length: Length, buckling_factor: Ratio) -> Force {
    let bending = bending_stiffness(root_diameter.si(), bore.si());
    Force::of_si(buckling_factor.si() * PI * PI * bending / length.si().powi(2))
}

/// Weight of a bored steel bar over its bending stiffness, 1/m³.
#[inline]
fn weight_over_bending(root: f64, bore: f64) -> f64 {
    STEEL_DENSITY * GRAVITY * 16.0 / (STEEL_YOUNG * (root * root + bore * bore))
}

/// Largest sag of a screw under its own weight between ends that give when tilted, m.
///
/// Pass root diameter, bore, free length, the fixities of both ends, number of spans, axial tension, the Euler load of
/// these ends and the angle of the axis. Check: 34.5 mm, 4 m, level, no tension → 16.7 mm supported, 3.35 mm rigid.
pub static SCREW_SAG: Formula<fn(Length, Length, Length, Ratio, Ratio, Ratio, Force, Force, Angle) -> Length> =
    Formula {
        note: Note {
            id: "screw-sag",
            title: "sag of the screw under its own weight",
            equation: "δ = max_ξ [ξ·(1 − 2ξ² + ξ³)/24 − M_1·ξ·(1 − ξ)·(2 − ξ)/6 − M_2·ξ·(1 − ξ²)/6]·w·l⁴/(E·I)/(1 + F/F_E), \
                   M_i/κ_i + M_i/3 + M_j/6 = 1/24, l = L/n, w = ρ·A·g·cos θ",
            inputs: &[
                ("d_r", "root-diameter"),
                ("d_h", "bore"),
                ("L", "free-length"),
                ("κ_1", "first-fixity"),
                ("κ_2", "second-fixity"),
                ("n", "spans"),
                ("F", "axial-tension"),
                ("F_E", "euler-load"),
                ("θ", "inclination"),
            ],
            validity: "steel, nut ignored, sag small against the length; with spans the weaker outer one alone",
            sources: &[
                SPRINGS,
                Source::memory("Roark, Formulas for Stress and Strain, beams under uniform load (the rigid limits)"),
            ],
        },
        apply: screw_sag,
    };

/// See [`SCREW_SAG`].
#[inline]
pub fn screw_sag(
    root_diameter: Length,
    bore: Length,
    length: Length,
    first: Ratio,
    second: Ratio,
    spans: Ratio,
    axial_tension: Force,
    euler_load: Force,
    inclination: Angle,
) -> Length {
    let (m1, m2) = end_moments(first.si(), second.si());
    // the deepest point lies near the middle, where Newton's method settles in a few steps
    let mut x = 0.5_f64;
    for _ in 0..6 {
        let slope = (1.0 - 6.0 * x * x + 4.0 * x.powi(3)) / 24.0
            - m1 * (2.0 - 6.0 * x + 3.0 * x * x) / 6.0
            - m2 * (1.0 - 3.0 * x * x) / 6.0;
        let curvature = (x * x - x) / 2.0 + m1 * (1.0 - x) + m2 * x;
        x -= slope / curvature;
    }
    let deepest = x * (1.0 - 2.0 * x * x + x.powi(3)) / 24.0
        - m1 * x * (1.0 - x) * (2.0 - x) / 6.0
        - m2 * x * (1.0 - x * x) / 6.0;
    let span = length.si() / spans.si();
    let slack = deepest * weight_over_bending(root_diameter.si(), bore.si()) * span.powi(4);
    Length::of_si(slack * level_share(inclination) / held_up(axial_tension, euler_load))
}

/// Moments that both ends take, over w·l².
#[inline]
fn end_moments(first: f64, second: f64) -> (f64, f64) {
    // M/κ is κ-fold loose; written with κ above the line so that none of 0 and infinity divides
    let (a, b) = (1.0 / 3.0 + 1.0 / first, 1.0 / 3.0 + 1.0 / second);
    match (first == 0.0, second == 0.0) {
        (true, true) => (0.0, 0.0),
        (true, false) => (0.0, 1.0 / (24.0 * b)),
        (false, true) => (1.0 / (24.0 * a), 0.0),
        (false, false) => {
            let whole = a * b - 1.0 / 36.0;
            ((b - 1.0 / 6.0) / (24.0 * whole), (a - 1.0 / 6.0) / (24.0 * whole))
        }
    }
}

/// By how much an axial force holds a sagging beam up: 1 + F/F_E; not a number where it buckles.
#[inline]
fn held_up(axial_tension: Force, euler_load: Force) -> f64 {
    let factor = 1.0 + axial_tension.si() / euler_load.si();
    if factor > 0.0 { factor } else { f64::NAN }
}

/// Sag at the free end of a screw under its own weight, m.
///
/// Pass root diameter, bore, free length, the fixity of the root and the angle of the axis.
/// Check: 34.5 mm, 1 m, rigid, level → 0.628 mm.
pub static ROOTED_SAG: Formula<fn(Length, Length, Length, Ratio, Angle) -> Length> = Formula {
    note: Note {
        id: "rooted-sag",
        title: "sag of a screw with a free end under its own weight",
        equation: "δ = (1/8 + 1/(2·κ))·w·L⁴/(E·I), w = ρ·A·g·cos θ",
        inputs: &[
            ("d_r", "root-diameter"),
            ("d_h", "bore"),
            ("L", "free-length"),
            ("κ", "fixity"),
            ("θ", "inclination"),
        ],
        validity: "steel, nut ignored, sag small against the length",
        sources: &[Source::derived("cantilever under its own weight on a rotational spring")],
    },
    apply: rooted_sag,
};

/// See [`ROOTED_SAG`].
#[inline]
pub fn rooted_sag(root_diameter: Length, bore: Length, length: Length, fixity: Ratio, inclination: Angle) -> Length {
    let case = (0.125 + 0.5 / fixity.si()) * level_share(inclination);
    Length::of_si(case * weight_over_bending(root_diameter.si(), bore.si()) * length.si().powi(4))
}

/// Tilt stiffness of the clamp of a standing screw, N·m/rad.
///
/// Pass root diameter and bore. Check: 34.5 mm, no bore → 415.2 kN·m/rad.
pub static CLAMP_TILT: Formula<fn(Length, Length) -> TorsionalStiffness> = Formula {
    note: Note {
        id: "clamp-tilt-stiffness",
        title: "tilt stiffness of the clamp at one end of a standing screw",
        equation: "k_φ = E·I/d_r",
        inputs: &[("d_r", "root-diameter"), ("d_h", "bore")],
        validity: "the clamp gives as much as a free piece of screw of one root diameter in length",
        sources: &[Source::practice("a clamped seat counts as one diameter of free shaft")],
    },
    apply: clamp_tilt,
};

/// See [`CLAMP_TILT`].
#[inline]
pub fn clamp_tilt(root_diameter: Length, bore: Length) -> TorsionalStiffness {
    TorsionalStiffness::of_si(bending_stiffness(root_diameter.si(), bore.si()) / root_diameter.si())
}
