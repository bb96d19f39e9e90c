//! What the steel and the finish of a tooth make of its stress limits.
//!
//! Method: the relative factors of ISO 6336-3, method B, one line for each class of steel; the film factor of ISO 6336-2 by
//! finish. Limits: factors from memory of the editions 2006; break points and lines by class were read in a public program
//! that reproduces them. Roots of the stated roughness, not polished, not shot-peened.

use super::factors::root_life_factor;
use crate::formula::extremes::larger;
use crate::formula::{Formula, Note};
use crate::source::Source;
use crate::units::{Length, Measure, Pressure, Ratio};

const ISO_6336_3: Source = Source::standard("ISO 6336-3:2006, method B, as reproduced in a public program");

/// Stress that flanks bear at the knee of their life line. 1500 MPa, 0.92: 1380 MPa.
pub static FLANK_STRENGTH: Formula<fn(Pressure, Ratio) -> Pressure> = Formula {
    note: Note {
        id: "flank-strength",
        title: "contact stress that flanks bear at the knee of their life line",
        equation: "σ_H0 = σ_Hlim·Z_LvR",
        inputs: &[("σ_Hlim", "contact-limit"), ("Z_LvR", "film-factor")],
        validity: "Z_LvR = Z_L·Z_v·Z_R of method C: 0.92 ground, or milled against ground; 0.85 milled on both sides. No work hardening: Z_W = 1.",
        sources: &[Source::memory("ISO 6336-2:2006, film factors, method C"), Source::practice("0.92 with grease")],
    },
    apply: |limit, film| Pressure::of_si(limit.si() * film.si()),
};

/// Size factor of roots of surface-hardened steel. Module 5 mm: 1; 8 mm: 0.97; 30 mm: 0.80.
pub static ROOT_SIZE_FACTOR_HARDENED: Formula<fn(Length) -> Ratio> = Formula {
    note: Note {
        id: "root-size-factor-hardened",
        title: "size factor of roots of case- or induction-hardened steel",
        equation: "Y_X = 1 up to 5 mm, 1.05 − 0.01·m_n/mm above, at least 0.80",
        inputs: &[("m_n", "module")],
        validity: "case-, induction- or flame-hardened",
        sources: &[ISO_6336_3],
    },
    apply: |module| size_factor(module, 0.01, 0.80),
};

/// Size factor of roots of through-hardened or normalised steel. Module 5 mm: 1; 8 mm: 0.982; 30 mm: 0.85.
pub static ROOT_SIZE_FACTOR: Formula<fn(Length) -> Ratio> = Formula {
    note: Note {
        id: "root-size-factor",
        title: "size factor of roots of through-hardened or normalised steel",
        equation: "Y_X = 1 up to 5 mm, 1.03 − 0.006·m_n/mm above, at least 0.85",
        inputs: &[("m_n", "module")],
        validity: "quenched and tempered, or normalised",
        sources: &[ISO_6336_3],
    },
    apply: |module| size_factor(module, 0.006, 0.85),
};

fn size_factor(module: Length, fall: f64, least: f64) -> Ratio {
    let over = module.si() * 1e3 - 5.0;
    Ratio::of_si(if over <= 0.0 { 1.0 } else { larger(1.0 - fall * over, least) })
}

/// Surface factor of the root. 10 µm: 1.002; 16 µm: 0.972; 20 µm: 0.957.
pub static ROOT_SURFACE_FACTOR: Formula<fn(Length) -> Ratio> = Formula {
    note: Note {
        id: "root-surface-factor",
        title: "relative surface factor of roots of hardened or through-hardened steel",
        equation: "Y_R = 1.674 − 0.529·(Rz/µm + 1)^0.1, 1.12 below 1 µm",
        inputs: &[("Rz", "root-roughness")],
        validity: "Rz up to 40 µm; no scratches deeper than twice Rz",
        sources: &[ISO_6336_3],
    },
    apply: |roughness| {
        let microns = roughness.si() * 1e6;
        Ratio::of_si(if microns < 1.0 { 1.12 } else { 1.674 - 0.529 * (microns + 1.0).powf(0.1) })
    },
};

/// Surface factor of the root of normalised steel, which minds roughness less. 10 µm: 1.001; 20 µm: 0.973.
pub static ROOT_SURFACE_FACTOR_SOFT: Formula<fn(Length) -> Ratio> = Formula {
    note: Note {
        id: "root-surface-factor-soft",
        title: "relative surface factor of roots of normalised steel",
        equation: "Y_R = 5.306 − 4.203·(Rz/µm + 1)^0.01, 1.07 below 1 µm",
        inputs: &[("Rz", "root-roughness")],
        validity: "Rz up to 40 µm; no scratches deeper than twice Rz",
        sources: &[ISO_6336_3],
    },
    apply: |roughness| {
        let microns = roughness.si() * 1e6;
        Ratio::of_si(if microns < 1.0 { 1.07 } else { 5.306 - 4.203 * (microns + 1.0).powf(0.01) })
    },
};

/// Root stress that a tooth bears at the knee of its life line. 461 MPa, 1, 1, 0.7: 645.4 MPa.
pub static ROOT_STRENGTH: Formula<fn(Pressure, Ratio, Ratio, Ratio) -> Pressure> = Formula {
    note: Note {
        id: "root-strength",
        title: "root stress that a tooth bears at the knee of its life line, notch left out",
        equation: "σ_F0 = 2·σ_Flim·Y_X·Y_R·Y_M",
        inputs: &[
            ("σ_Flim", "bending-limit"),
            ("Y_X", "root-size-factor"),
            ("Y_R", "root-surface-factor"),
            ("Y_M", "reversal-factor"),
        ],
        validity: "2 is the stress correction of the test gear",
        sources: &[Source::memory("ISO 6336-3:2006, permissible bending stress")],
    },
    apply: root_strength,
};
/// Root stress at the knee from bending limit, size, surface and reversal factor.
#[inline]
pub fn root_strength(limit: Pressure, size: Ratio, surface: Ratio, reversal: Ratio) -> Pressure {
    Pressure::of_si(2.0 * limit.si() * size.si() * surface.si() * reversal.si())
}

/// Life factor of roots. 1e6 cycles: 1.134 hardened, 1.193 through-hardened.
pub static ROOT_LIFE_FACTOR: Formula<fn(Ratio, Ratio) -> Ratio> = Formula {
    note: Note {
        id: "root-life-factor",
        title: "life factor of roots",
        equation: "Y_NT on straight lines in logarithms through (N_F0, 2.5), (3·10⁶, 1.0), (10¹⁰, 0.85), held beyond",
        inputs: &[("N", "cycles"), ("N_F0", "root-static-cycles")],
        validity: "N_F0: 10³ case- or induction-hardened, 10⁴ through-hardened or normalised",
        sources: &[ISO_6336_3],
    },
    apply: |cycles, first| Ratio::of_si(root_life_factor(cycles.si(), first.si())),
};

/// Face load factor of the root from that of the flank. 1.3, 24 mm, module 2 mm: 1.2404.
pub static ROOT_FACE_LOAD_FACTOR: Formula<fn(Ratio, Length, Length) -> Ratio> = Formula {
    note: Note {
        id: "root-face-load-factor",
        title: "face load factor of the root",
        equation: "K_Fβ = K_Hβ^(q²/(1 + q + q²)), q = b/(2.25·m_n)",
        inputs: &[("K_Hβ", "face-load-factor"), ("b", "face-width"), ("m_n", "module")],
        validity: "teeth of 2.25 modules",
        sources: &[Source::memory("ISO 6336-1:2006, face load factor of the root")],
    },
    apply: root_face_load_factor,
};
/// K_Fβ from K_Hβ, face width and module.
#[inline]
pub fn root_face_load_factor(flank: Ratio, face_width: Length, module: Length) -> Ratio {
    let slimness = face_width.si() / (2.25 * module.si());
    // one to the power of anything is one, also of what is not known
    let known = 0.0 * slimness;
    Ratio::of_si(flank.si().powf(slimness * slimness / (1.0 + slimness + slimness * slimness)) + known)
}
