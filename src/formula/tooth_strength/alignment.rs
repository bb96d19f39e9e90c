//! How evenly a tilted pinion carries over its width.
//!
//! Method: the gap that the tilt of shaft, bearing and mounting opens over the face width, less what wears in, against
//! what the teeth give (ISO 6336-1, method C). The force is a third of what the evenly loaded teeth would bear, below every force at which a rule on strength binds up
//! to a factor of 2.1: a lower force makes the factor larger, so this is the safe side.
//! Limits: linear gap; of crowning only that it halves what mounting opens; slope errors of the teeth themselves left out.

use super::endurance::Felt;
use crate::formula::constants::STEEL_YOUNG;
use crate::formula::extremes::{larger, smaller};
use crate::formula::gear_geometry::PRESSURE_ANGLE;
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
        validity: "Case-hardened teeth (softer ones run in more, safe), tilt and mounting in the same direction (safe), dynamic factor left out (safe). Above 2 a part of the width does not carry at all.",
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

/// Part of what the evenly loaded teeth bear, at which the face load factor is worked out.
const PART: f64 = 1.0 / 3.0;

/// Force at which the face load factor is worked out. 30, 12, 24 and 15 kN felt, κ 1.2, nothing at speed: 3.333 kN.
pub static ALIGNMENT_FORCE: Formula<fn(Force, Force, Force, Force, Ratio, Force, Ratio, Length) -> Force> = Formula {
    note: Note {
        id: "alignment-force",
        title: "force at which the face load factor is worked out",
        equation: "F_β = f⁻¹(min E)/3; f = κ·F + F_o, at least K_l·b·100 N/mm (K_l·F below 100 N/mm)",
        inputs: &[
            ("E_H1", "pinion-flank-endurance"),
            ("E_H2", "rack-flank-endurance"),
            ("E_F1", "pinion-root-endurance"),
            ("E_F2", "rack-root-endurance"),
            ("κ", "tooth-load-slope"),
            ("F_o", "tooth-load-offset"),
            ("K_l", "light-load-factor"),
            ("b", "face-width"),
        ],
        validity: "Rules bind at 0.56 to 1 of what the teeth bear as mounted, so not below this force up to a face load factor of 1.7 over people and 2.1 else.",
        sources: &[Source::derived("the gap of mounting counts less the more the teeth give")],
    },
    apply: |pinion_flank, rack_flank, pinion_root, rack_root, slope, offset, light, face_width| {
        let least = smaller(smaller(pinion_flank.si(), rack_flank.si()), smaller(pinion_root.si(), rack_root.si()));
        Force::of_si(PART * Felt::of(slope, offset, light, face_width).force(least))
    },
};

/// Slope by which the mounting opens the teeth. 0.03 mm on 100 mm, 0.05 mm on a metre: 0.3041 mm/m; half of it crowned.
pub static MOUNTING_SLOPE: Formula<fn(Length, Length, Ratio) -> Ratio> = Formula {
    note: Note {
        id: "mounting-slope",
        title: "slope by which the pinion stands off square to the rack, as the teeth feel it",
        equation: "f_m = B_2·√((t_sq/100 mm)² + (t_fl/1 m)²)",
        inputs: &[("t_sq", "pinion-squareness"), ("t_fl", "seat-straightness"), ("B_2", "misalignment-share")],
        validity: "Both at their limits, independent; the seat leans across as much as it may along. B_2 = 1 plain, 0.5 crowned with a checked contact pattern.",
        sources: &[
            Source::derived("tolerances over their lengths, added by squares"),
            Source::standard("ISO 6336-1:2006, table of helix modifications, as reproduced in a public program"),
        ],
    },
    apply: |squareness, straightness, share| {
        Ratio::of_si(share.si() * f64::hypot(squareness.si() / 0.1, straightness.si()))
    },
};

/// Face load factor that the strength takes: of the grade or of the alignment. 1.15 and 1.47: 1.47.
pub static FACE_LOAD_FACTOR: Formula<fn(Ratio, Ratio) -> Ratio> = Formula {
    note: Note {
        id: "face-load-factor",
        title: "face load factor of contact stress, the larger of quality and alignment",
        equation: "K_Hβ = max(K_Hβ,Q, K_Hβ,a)",
        inputs: &[("K_Hβ,Q", "grade-face-load-factor"), ("K_Hβ,a", "alignment-face-load-factor")],
        validity: "The quality counts what crowning itself costs and what no alignment takes away.",
        sources: &[Source::derived("the worse of two bounds of the same thing")],
    },
    apply: |grade, alignment| Ratio::of_si(larger(grade.si(), alignment.si())),
};
