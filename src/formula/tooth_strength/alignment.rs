//! How evenly a tilted pinion carries over its width.
//!
//! Method: the gap that the tilt of shaft, bearing and mounting opens over the face width, less what wears in, against
//! what the teeth give (ISO 6336-1, method C). Limits: linear gap, no crowning; a crowned pinion does better.

use crate::formula::constants::STEEL_YOUNG;
use crate::formula::gear_geometry::{PRESSURE_ANGLE, smaller};
use crate::formula::{Formula, Note};
use crate::source::Source;
use crate::units::{Angle, Force, Length, Measure, Ratio, Stiffness, TorsionalStiffness};
use std::f64::consts::PI;

/// Part of the gap that case-hardened teeth wear in, and how much at most, m.
const WORN_IN: (f64, f64) = (0.15, 6e-6);
/// Stiffness of the mesh for uneven load over that for even load.
const UNEVEN: f64 = 0.85;

/// Face load factor of a pinion on a tilting shaft.
///
/// 5.97 kN, metric helix, 35 mm of a 32 mm shaft, stiff bearing, 24 mm wide, 417 N/µm: 1.26; mounted to 0.3 mm/m: 1.47.
#[rustfmt::skip]
pub static ALIGNMENT_FACE_LOAD_FACTOR: Formula<
    fn(Force, Angle, Length, Length, TorsionalStiffness, Length, Ratio, Stiffness) -> Ratio,
> = Formula {
    note: Note {
        id: "alignment-face-load-factor",
        title: "face load factor from the tilt of shaft, bearing and mounting",
        equation: "K_Hβ = 1 + q up to q = 1, 2·√q above; q = F_βy·0.85·k_m/(2·F·cos²α_t), F_βy = F_βx − min(0.15·F_βx, 6 µm), F_βx = b·(F_rad·(l_p²/(2·E·I) + l_p/c_t) + f_m), F_rad = F·√(1 + tan²α_t)",
        inputs: &[
            ("F", "force"),
            ("β", "helix-angle"),
            ("l_p", "pinion-overhang"),
            ("d_sh", "output-shaft-diameter"),
            ("c_t", "tilt-stiffness"),
            ("b", "face-width"),
            ("f_m", "mounting-slope"),
            ("k_m", "mesh-stiffness"),
        ],
        validity: "Uncrowned case-hardened teeth, tilt and mounting in the same direction (safe), dynamic factor left out (safe). Above 2 a part of the width does not carry at all.",
        sources: &[
            Source::memory("ISO 6336-1:2006, face load factor, method C"),
            Source::derived("tilt of an overhung shaft on a bearing that gives"),
        ],
    },
    apply: |force, helix, overhang, shaft, tilt, width, mounting, mesh| {
        let (f, l) = (force.si(), overhang.si());
        let tan = PRESSURE_ANGLE.tan() / helix.si().cos();
        let across = 1.0 + tan * tan;
        let inertia = PI * shaft.si().powi(4) / 64.0;
        let slope = f * across.sqrt() * (l * l / (2.0 * STEEL_YOUNG * inertia) + l / tilt.si());
        let gap = width.si() * (slope + mounting.si());
        let left = gap - smaller(WORN_IN.0 * gap, WORN_IN.1);
        // along the line of action the mesh is stiffer by 1/cos²α_t
        let uneven = left * UNEVEN * mesh.si() * across / (2.0 * f);
        Ratio::of_si(if uneven <= 1.0 { 1.0 + uneven } else { 2.0 * uneven.sqrt() })
    },
};
