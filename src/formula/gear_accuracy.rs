//! How true a pinion is made, and what gearbox play means at the rack.
//!
//! Method: the tolerance formulas of ISO 1328-1:2013 with the actual diameter and module; the values are
//! not rounded, [`rounded_tolerance`] does what the standard prints. Limits: classes 1 to 11, diameters 5
//! to 15 000 mm, modules 0.5 to 70 mm; the formulas go on smoothly beyond.

use super::{Formula, Note};
use crate::source::Source;
use crate::units::{Angle, Length, Measure, Ratio};

const ISO_1328: Source = Source::standard(
    "ISO 1328-1:2013, formulas (5) and (6) for pitch tolerances, as reproduced in several public programs",
);

/// Step of two classes: √2 a class from class 5.
#[inline]
fn class_factor(class: f64) -> f64 {
    (0.5 * (class - 5.0)).exp2()
}

/// Total pitch deviation (total cumulative) that a class allows. d 42.44 mm, module 2 mm, class 6: 24.1 µm.
pub static TOTAL_PITCH_DEVIATION: Formula<fn(Length, Length, Ratio) -> Length> = Formula {
    note: Note {
        id: "total-pitch-deviation",
        title: "total pitch deviation that the class allows",
        equation: "F_pT = (0.002·d + 0.55·√d + 0.7·m_n + 12)·√2^(A − 5) µm, d and m_n in mm",
        inputs: &[("d", "diameter"), ("m_n", "module"), ("A", "class")],
        validity: "5 mm ≤ d ≤ 15 m, 0.5 mm ≤ m_n ≤ 70 mm, class 1 to 11; not rounded.",
        sources: &[ISO_1328],
    },
    apply: total_pitch_deviation,
};
/// Total pitch deviation from reference diameter, module and class.
pub fn total_pitch_deviation(diameter: Length, module: Length, class: Ratio) -> Length {
    let d = diameter.si() * 1e3;
    let m = module.si() * 1e3;
    Length::of_si((0.002 * d + 0.55 * d.sqrt() + 0.7 * m + 12.0) * class_factor(class.si()) * 1e-6)
}

/// Single pitch deviation that a class allows. d 42.44 mm, module 2 mm, class 6: 8.3 µm.
pub static SINGLE_PITCH_DEVIATION: Formula<fn(Length, Length, Ratio) -> Length> = Formula {
    note: Note {
        id: "single-pitch-deviation",
        title: "single pitch deviation that the class allows",
        equation: "f_pT = (0.001·d + 0.4·m_n + 5)·√2^(A − 5) µm, d and m_n in mm",
        inputs: &[("d", "diameter"), ("m_n", "module"), ("A", "class")],
        validity: "5 mm ≤ d ≤ 15 m, 0.5 mm ≤ m_n ≤ 70 mm, class 1 to 11; not rounded.",
        sources: &[ISO_1328],
    },
    apply: single_pitch_deviation,
};
/// Single pitch deviation from reference diameter, module and class.
pub fn single_pitch_deviation(diameter: Length, module: Length, class: Ratio) -> Length {
    let d = diameter.si() * 1e3;
    let m = module.si() * 1e3;
    Length::of_si((0.001 * d + 0.4 * m + 5.0) * class_factor(class.si()) * 1e-6)
}

/// A tolerance as ISO 1328-1:2013 rounds it: above 10 µm to 1 µm, from 5 µm to 0.5 µm, below to 0.1 µm.
pub fn rounded_tolerance(tolerance: Length) -> Length {
    let um = tolerance.si() * 1e6;
    let step = if um > 10.0 {
        1.0
    } else if um >= 5.0 {
        0.5
    } else {
        0.1
    };
    Length::of_si((um / step).round() * step * 1e-6)
}

/// Play of the gearbox, seen at the rack. 3 arcmin on a pinion of 42.44 mm: 18.5 µm.
pub static BACKLASH_AT_RACK: Formula<fn(Angle, Length) -> Length> = Formula {
    note: Note {
        id: "backlash-at-rack",
        title: "play of the gearbox, seen at the rack",
        equation: "j_g = φ·d/2",
        inputs: &[("φ", "angle"), ("d", "pinion-diameter")],
        validity: "Small angles; the play between the teeth comes on top.",
        sources: &[Source::derived("arc at the reference circle")],
    },
    apply: backlash_at_rack,
};
/// Play at the rack from the play angle at the gearbox output and the pinion diameter.
#[inline]
pub fn backlash_at_rack(angle: Angle, pinion_diameter: Length) -> Length {
    Length::of_si(angle.si() * pinion_diameter.si() / 2.0)
}
