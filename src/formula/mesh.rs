//! The mesh as a spring along the travel, and the ripple it leaves within one tooth.
//!
//! Method: mesh stiffness of ISO 6336-1 with the rack as a wheel of infinitely many teeth, turned from the
//! line of action to the travel; contact lines of all tooth pairs summed in closed form; ripple from load
//! and from pitch errors added as roots of squares.
//! Limits: unrelieved teeth; real relief softens the ripple, take it as ±40 %. Below 100 N/mm of line load
//! the mesh is softer than said here.

use super::extremes::larger;
use super::gear_geometry::{DEDENDUM, Mesh, overlap_ratio};
use super::{Formula, Note};
use crate::source::Source;
use crate::units::{Angle, Force, Length, Measure, Ratio, Stiffness};

/// Stiffness of one tooth pair at its best place along the travel, N/m per metre of face width.
#[inline]
fn pair_stiffness(mesh: &Mesh) -> f64 {
    let z_n = mesh.virtual_teeth();
    let x = mesh.profile_shift;
    // ISO 6336-1, z_n2 → ∞, x_2 = 0; mm·µm/N
    let q = 0.04723 + 0.15551 / z_n - 0.00635 * x - 0.11654 * x / z_n + 0.00529 * x * x;
    let basic_rack = 1.0 + 0.5 * (1.2 - DEDENDUM);
    let along_action = 0.8 * basic_rack * mesh.cos_helix / q;
    along_action * 1e9 * mesh.cos_alpha * mesh.cos_alpha
}

/// Stiffness of the mesh along the travel. Module 2 mm, 20 teeth, metric helix, 24 mm: 417 N/µm.
pub static MESH_STIFFNESS: Formula<fn(Length, Ratio, Angle, Length, Ratio) -> Stiffness> = Formula {
    note: Note {
        id: "mesh-stiffness",
        title: "stiffness of the mesh along the travel",
        equation: "k_m = c′·(0.75·ε_α + 0.25)·b·cos²α_t, c′ = 0.8·C_B·cos β/q′, q′ = 0.04723 + 0.15551/z_n − 0.00635·x − 0.11654·x/z_n + 0.00529·x² (mm·µm/N)",
        inputs: &[("m_n", "module"), ("z", "teeth"), ("β", "helix"), ("b", "face-width"), ("x", "profile-shift")],
        validity: "Solid steel pinion and rack, 0 ≤ x ≤ 2 (−0.5 with less trust), line load from 100 N/mm; below that the mesh is softer by (w/100 N/mm)^0.25.",
        sources: &[
            Source::memory("ISO 6336-1:2006, mesh stiffness, method B"),
            Source::derived("limit of a rack, and cos²α_t from line of action to travel"),
        ],
    },
    apply: mesh_stiffness,
};
/// Mesh stiffness along the travel from module, teeth, helix angle, face width and profile shift.
pub fn mesh_stiffness(
    module: Length,
    teeth: Ratio,
    helix: Angle,
    face_width: Length,
    profile_shift: Ratio,
) -> Stiffness {
    let mesh = Mesh::of(teeth, helix, profile_shift);
    let pairs = if module.si() > 0.0 { 0.75 * mesh.transverse_ratio() + 0.25 } else { f64::NAN };
    Stiffness::of_si(pair_stiffness(&mesh) * pairs * face_width.si())
}

/// Least length of all contact lines together, in face widths. ε_α 1.615, ε_β 1.277: 1.482.
pub static CONTACT_LINE_MINIMUM: Formula<fn(Ratio, Ratio) -> Ratio> = Formula {
    note: Note {
        id: "contact-line-minimum",
        title: "least length of all contact lines, in face widths",
        equation: "Λ_min = ε_α − (a·c − max(0, a + c − 1))/ε_β, a and c the fractions of ε_α and ε_β; straight: ⌊ε_α⌋",
        inputs: &[("ε_α", "transverse-contact-ratio"), ("ε_β", "overlap-ratio")],
        validity: "ε_α ≥ 1, ε_β ≥ 0; unmodified flanks.",
        sources: &[Source::derived("sum of the trapezoids of all tooth pairs; checked by a count of slices")],
    },
    apply: contact_line_minimum,
};
/// Least contact line from transverse contact ratio and overlap ratio.
#[inline]
pub fn contact_line_minimum(transverse: Ratio, overlap: Ratio) -> Ratio {
    Ratio::of_si(contact_lines(transverse.si(), overlap.si()).0)
}

/// Greatest length of all contact lines together, in face widths. ε_α 1.615, ε_β 1.277: 1.698.
pub static CONTACT_LINE_MAXIMUM: Formula<fn(Ratio, Ratio) -> Ratio> = Formula {
    note: Note {
        id: "contact-line-maximum",
        title: "greatest length of all contact lines, in face widths",
        equation: "Λ_max = ε_α + (min(a, c) − a·c)/ε_β, a and c the fractions of ε_α and ε_β; straight: ⌈ε_α⌉",
        inputs: &[("ε_α", "transverse-contact-ratio"), ("ε_β", "overlap-ratio")],
        validity: "ε_α ≥ 1, ε_β ≥ 0; unmodified flanks.",
        sources: &[Source::derived("sum of the trapezoids of all tooth pairs; checked by a count of slices")],
    },
    apply: contact_line_maximum,
};
/// Greatest contact line from transverse contact ratio and overlap ratio.
#[inline]
pub fn contact_line_maximum(transverse: Ratio, overlap: Ratio) -> Ratio {
    Ratio::of_si(contact_lines(transverse.si(), overlap.si()).1)
}

/// Least and greatest contact line.
#[inline]
fn contact_lines(transverse: f64, overlap: f64) -> (f64, f64) {
    if overlap == 0.0 {
        return (transverse.floor(), transverse.ceil());
    }
    let transverse = if transverse > 0.0 && overlap > 0.0 { transverse } else { f64::NAN };
    let a = transverse.fract();
    let c = overlap.fract();
    let least = transverse - (a * c - (a + c - 1.0).max(0.0)) / overlap;
    let greatest = transverse + (a.min(c) - a * c) / overlap;
    (least, greatest)
}

/// Position ripple within one tooth, peak to peak. Module 2 mm, 20 teeth, 24 mm, 1 kN, no pitch error: straight 1.66 µm, metric helix 0.30 µm.
pub static MESH_RIPPLE: Formula<fn(Force, Length, Ratio, Angle, Length, Ratio, Length) -> Length> = Formula {
    note: Note {
        id: "mesh-ripple",
        title: "position ripple within one tooth",
        equation: "u = √(u_F² + u_p²), u_F = F/(c′·b·cos²α_t)·(1/Λ_min − 1/Λ_max), u_p = f_p straight, f_p/√ε_γ helical",
        inputs: &[
            ("F", "force"),
            ("m_n", "module"),
            ("z", "teeth"),
            ("β", "helix"),
            ("b", "face-width"),
            ("x", "profile-shift"),
            ("f_p", "pitch-deviation"),
        ],
        validity: "f_p is the pitch step of pinion and rack together, √(f_p1² + f_p2²). Unrelieved teeth, ±40 %; transverse contact ratio at least 1. The helical share of the pitch step is an estimate.",
        sources: &[
            Source::derived("contact lines and mesh stiffness"),
            Source::practice("pitch step over √ε_γ for helical teeth"),
        ],
    },
    apply: mesh_ripple,
};
/// Ripple within one tooth from force, tooth data and the pitch step of pinion and rack together.
pub fn mesh_ripple(
    force: Force,
    module: Length,
    teeth: Ratio,
    helix: Angle,
    face_width: Length,
    profile_shift: Ratio,
    pitch_deviation: Length,
) -> Length {
    let mesh = Mesh::of(teeth, helix, profile_shift);
    let transverse = mesh.transverse_ratio();
    let overlap = overlap_ratio(module, helix, face_width).si();
    let (least, greatest) = contact_lines(transverse, overlap);
    let least = if least > 0.0 { least } else { f64::NAN };
    let load = force.si().abs() / (pair_stiffness(&mesh) * face_width.si()) * (1.0 / least - 1.0 / greatest);
    let pairs = if mesh.helical { larger(1.0, transverse + overlap) } else { 1.0 };
    let pitch = pitch_deviation.si() / pairs.sqrt();
    Length::of_si((load * load + pitch * pitch).sqrt())
}
