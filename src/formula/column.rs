//! Buckling of the screw under compression.
//!
//! Method: Euler's load for slender columns, Johnson's parabola below the slenderness at which Euler's stress
//! is half the yield strength. Limits: central load, straight bar; no safety inside.

use super::constants::STEEL_YOUNG;
use super::{Formula, Note};
use crate::source::Source;
use crate::units::{Force, Length, Measure, Pressure, Ratio};
use std::f64::consts::{FRAC_PI_4, PI, TAU};

/// Compressive force at which a steel screw buckles, N.
///
/// Pass root diameter, loaded length, buckling factor (¼ fixed–free, 1 supported–supported, 2.0457
/// fixed–supported, 4 fixed–fixed) and yield strength; an infinite yield strength gives Euler alone.
/// Check: 34.5 mm, 1.5 m, 2.0457, no yield → 128 553 N.
pub static COLUMN_LOAD: Formula<fn(Length, Length, Ratio, Pressure) -> Force> = Formula {
    note: Note {
        id: "column-load",
        title: "buckling load of the screw",
        equation: "F_cr = N·π²·E·I/L², I = π·d_r⁴/64; for λ_s = (L/√N)/(d_r/4) < √(2π²·E/S_y): \
                   F_cr = A·(S_y − (S_y·λ_s/2π)²/E)",
        inputs: &[
            ("d_r", "root-diameter"),
            ("L", "loaded-length"),
            ("N", "buckling-factor"),
            ("S_y", "yield-strength"),
        ],
        validity: "solid steel, E 206 GPa, straight and centrally loaded; no safety inside",
        sources: &[
            Source::derived("Euler's column; checked by a finite-element model"),
            Source::memory("J. E. Shigley, Mechanical Engineering Design, Johnson's parabola"),
        ],
    },
    apply: column_load,
};

/// See [`COLUMN_LOAD`].
#[inline]
pub fn column_load(
    root_diameter: Length,
    loaded_length: Length,
    buckling_factor: Ratio,
    yield_strength: Pressure,
) -> Force {
    let (d, length, n, strength) = (root_diameter.si(), loaded_length.si(), buckling_factor.si(), yield_strength.si());
    let area = FRAC_PI_4 * d * d;
    let slenderness = length / n.sqrt() / (d / 4.0);
    let limit = (2.0 * PI * PI * STEEL_YOUNG / strength).sqrt();
    let stress = if slenderness >= limit {
        PI * PI * STEEL_YOUNG / (slenderness * slenderness)
    } else {
        strength - (strength * slenderness / TAU).powi(2) / STEEL_YOUNG
    };
    Force::of_si(area * stress)
}

/// Force at the nut at which the compressed part of a screw with both ends held along its axis buckles, N.
///
/// Pass root diameter, distance of the held ends, buckling factor of the part between end and nut, and yield strength;
/// an infinite yield strength gives Euler alone. The worst place of the nut is taken.
/// Check: 34.5 mm, 4 m, 2.0457, no yield → 122.0 kN; 1.5 m, 350 MPa → 327.2 kN.
pub static CLAMPED_COLUMN_LOAD: Formula<fn(Length, Length, Ratio, Pressure) -> Force> = Formula {
    note: Note {
        id: "clamped-column-load",
        title: "force at the nut at which the compressed part of a screw held at both ends buckles",
        equation: "F_cr = min(27/4·N·π²·E·I/L², S_y·A), I = π·d_r⁴/64, A = π·d_r²/4",
        inputs: &[("d_r", "root-diameter"), ("L", "free-length"), ("N", "buckling-factor"), ("S_y", "yield-strength")],
        validity: "solid steel, E 206 GPa, ends rigid along the axis; a nut at x puts (1 − x/L) of its force as \
                   compression on the part of length x; least at x = 2/3·L, where Johnson's parabola never \
                   gives less than the smaller of the two terms; no pretension, no warming, no safety inside",
        sources: &[Source::derived("share of force by stiffness of the two parts, least over all places of the nut")],
    },
    apply: clamped_column_load,
};

/// See [`CLAMPED_COLUMN_LOAD`].
#[inline]
pub fn clamped_column_load(
    root_diameter: Length,
    free_length: Length,
    buckling_factor: Ratio,
    yield_strength: Pressure,
) -> Force {
    let (d, length) = (root_diameter.si(), free_length.si());
    let euler = buckling_factor.si() * PI * PI * STEEL_YOUNG * PI / 64.0 * d.powi(4) / (length * length);
    let (buckles, yields) = (6.75 * euler, yield_strength.si() * FRAC_PI_4 * d * d);
    Force::of_si(if yields < buckles || yields.is_nan() { yields } else { buckles })
}
