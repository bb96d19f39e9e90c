//! The geometry of a pinion on a rack: diameters, undercut, contact ratios, tip thickness.
//!
//! Method: involute teeth of the basic rack ISO 53 profile A (20°, addendum 1, dedendum 1.25, root radius
//! 0.38 modules), worked out in normal modules; the rack carries no profile shift. Against a rack the
//! working pressure angle is always the transverse one and the rolling circle is the reference circle, so
//! profile shift moves the pinion axis and nothing else. The contact ratio of the rack side uses the rack's
//! addendum, shortened by the pinion's profile shift.
//! Limits: no tip shortening, no relief; fewer than four teeth or a helix of 45° and more give no number.

use super::extremes::smaller;
use super::{Formula, Note};
use crate::source::Source;
use crate::units::{Angle, Force, Length, Measure, Ratio};
use std::f64::consts::PI;

/// Normal pressure angle, rad: 20°.
pub(crate) const PRESSURE_ANGLE: f64 = PI / 9.0;
/// Addendum of the basic rack, modules.
pub(crate) const ADDENDUM: f64 = 1.0;
/// Dedendum of the basic rack, modules.
pub(crate) const DEDENDUM: f64 = 1.25;
/// Root radius of the basic rack, modules.
pub(crate) const ROOT_RADIUS: f64 = 0.38;

const ISO_53: Source = Source::memory("ISO 53, basic rack profile A");
const ISO_21771: Source = Source::memory("ISO 21771, geometry of cylindrical involute gears");

/// The helix angle whose transverse pitch is exactly 10/3 of the module: cos β = 0.3 π, β = 19.528 08°.
///
/// The trade writes 19°31'42"; the rounded angle is wrong by 1.6 µm a metre of travel.
pub fn metric_helix() -> Angle {
    Angle::of_si((0.3 * PI).acos())
}

/// A pinion tooth and its mesh with a rack, in normal modules.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Mesh {
    pub teeth: f64,
    pub profile_shift: f64,
    /// Whether the teeth have a helix.
    pub helical: bool,
    /// Helix angle without its hand, rad.
    pub helix: f64,
    pub cos_helix: f64,
    /// Tangent, cosine and sine of the transverse pressure angle.
    pub tan_alpha: f64,
    pub cos_alpha: f64,
    pub sin_alpha: f64,
    pub cos_base_helix: f64,
    pub diameter: f64,
    pub base_diameter: f64,
    pub tip_diameter: f64,
    /// Path of contact on the side of the pinion tip, in base pitches.
    pub tip_part: f64,
    /// Path of contact on the side of the rack tip, in base pitches.
    pub rack_part: f64,
}

impl Mesh {
    #[inline]
    pub(crate) fn of(teeth: Ratio, helix: Angle, profile_shift: Ratio) -> Mesh {
        let x = profile_shift.si();
        let helix = helix.si().abs();
        let sound = teeth.si() >= 4.0 && helix < PI / 4.0;
        let teeth = if sound { teeth.si() } else { f64::NAN };
        let (sin_helix, cos_helix) = helix.sin_cos();
        let tan_alpha = PRESSURE_ANGLE.tan() / cos_helix;
        let cos_alpha = 1.0 / (1.0 + tan_alpha * tan_alpha).sqrt();
        let sin_alpha = tan_alpha * cos_alpha;
        let sin_base_helix = sin_helix * PRESSURE_ANGLE.cos();
        let diameter = teeth / cos_helix;
        let base_diameter = diameter * cos_alpha;
        let tip_diameter = diameter + 2.0 * (ADDENDUM + x);
        let base_pitch = PI / cos_helix * cos_alpha;
        let tip_way =
            ((tip_diameter * tip_diameter - base_diameter * base_diameter).sqrt() - base_diameter * tan_alpha) / 2.0;
        let rack_way = smaller((ADDENDUM - x) / sin_alpha, base_diameter * tan_alpha / 2.0);
        Mesh {
            teeth,
            profile_shift: x,
            helical: helix > 0.0,
            helix,
            cos_helix,
            tan_alpha,
            cos_alpha,
            sin_alpha,
            cos_base_helix: (1.0 - sin_base_helix * sin_base_helix).sqrt(),
            diameter,
            base_diameter,
            tip_diameter,
            tip_part: tip_way / base_pitch,
            rack_part: rack_way / base_pitch,
        }
    }

    /// Transverse contact ratio.
    #[inline]
    pub(crate) fn transverse_ratio(&self) -> f64 {
        self.tip_part + self.rack_part
    }

    /// Contact ratio of the virtual straight teeth.
    #[inline]
    pub(crate) fn virtual_ratio(&self) -> f64 {
        self.transverse_ratio() / (self.cos_base_helix * self.cos_base_helix)
    }

    /// Teeth of the virtual straight pinion.
    #[inline]
    pub(crate) fn virtual_teeth(&self) -> f64 {
        self.teeth / (self.cos_base_helix * self.cos_base_helix * self.cos_helix)
    }
}

/// Reference diameter of the pinion: z·m_n/cos β. Module 2 mm, 20 teeth, metric helix: 42.441 mm.
pub static PINION_DIAMETER: Formula<fn(Length, Ratio, Angle) -> Length> = Formula {
    note: Note {
        id: "pinion-diameter",
        title: "reference diameter of the pinion",
        equation: "d = z·m_n/cos β",
        inputs: &[("m_n", "module"), ("z", "teeth"), ("β", "helix")],
        validity: "Any module; profile shift does not change it. The metric helix is taken as cos β = 0.3·π exactly.",
        sources: &[ISO_21771],
    },
    apply: pinion_diameter,
};
/// Reference diameter of the pinion from normal module, teeth and helix angle.
#[inline]
pub fn pinion_diameter(module: Length, teeth: Ratio, helix: Angle) -> Length {
    Length::of_si(teeth.si() * module.si() / helix.si().cos())
}

/// Travel for one turn of the pinion: π·d. Module 3 mm, 20 teeth, metric helix: 200 mm.
pub static TRAVEL_PER_TURN: Formula<fn(Length) -> Length> = Formula {
    note: Note {
        id: "pinion-travel-per-turn",
        title: "travel for one turn of the pinion",
        equation: "p = π·d",
        inputs: &[("d", "pinion-diameter")],
        validity: "Holds for any profile shift and mounting distance: the rolling circle on a rack is the reference circle.",
        sources: &[Source::derived("rolling of the reference circle on the rack; checked against z·p_t")],
    },
    apply: travel_per_turn,
};
/// Travel for one turn of a pinion of this reference diameter.
#[inline]
pub fn travel_per_turn(pinion_diameter: Length) -> Length {
    Length::of_si(PI * pinion_diameter.si())
}

/// Profile shift below which the pinion is undercut. Straight, 12 teeth: 0.298.
pub static LEAST_PROFILE_SHIFT: Formula<fn(Ratio, Angle) -> Ratio> = Formula {
    note: Note {
        id: "least-profile-shift",
        title: "profile shift below which the pinion is undercut",
        equation: "x_min = 1 − z·sin²α_t/(2·cos β)",
        inputs: &[("z", "teeth"), ("β", "helix")],
        validity: "Cut by a rack-shaped tool of ISO 53 profile A. Negative values mean that the pinion may be shifted inward so far.",
        sources: &[ISO_21771, ISO_53],
    },
    apply: least_profile_shift,
};
/// Least profile shift factor without undercut, from teeth and helix angle.
#[inline]
pub fn least_profile_shift(teeth: Ratio, helix: Angle) -> Ratio {
    Ratio::of_si(ADDENDUM - teeth.si() * sin2_alpha(helix) / (2.0 * helix.si().cos()))
}

/// sin² of the transverse pressure angle.
#[inline]
fn sin2_alpha(helix: Angle) -> f64 {
    let tan = PRESSURE_ANGLE.tan() / helix.si().cos();
    tan * tan / (1.0 + tan * tan)
}

/// Fewest teeth without undercut at a profile shift. Straight, x = 0: 17.10; metric helix: 14.52.
pub static LEAST_TEETH: Formula<fn(Angle, Ratio) -> Ratio> = Formula {
    note: Note {
        id: "least-teeth",
        title: "fewest pinion teeth without undercut",
        equation: "z_min = 2·(1 − x)·cos β/sin²α_t",
        inputs: &[("β", "helix"), ("x", "profile-shift")],
        validity: "Cut by a rack-shaped tool of ISO 53 profile A; not a whole number, the next whole number above is the smallest pinion.",
        sources: &[ISO_21771, ISO_53],
    },
    apply: least_teeth,
};
/// Fewest teeth without undercut, from helix angle and profile shift.
#[inline]
pub fn least_teeth(helix: Angle, profile_shift: Ratio) -> Ratio {
    Ratio::of_si(2.0 * (ADDENDUM - profile_shift.si()) * helix.si().cos() / sin2_alpha(helix))
}

/// Transverse contact ratio of pinion and rack. 20 teeth, x = 0: straight 1.769, metric helix 1.615.
pub static TRANSVERSE_CONTACT_RATIO: Formula<fn(Length, Ratio, Angle, Ratio) -> Ratio> = Formula {
    note: Note {
        id: "transverse-contact-ratio",
        title: "transverse contact ratio of pinion and rack",
        equation: "ε_α = (½·(√(d_a² − d_b²) − d_b·tan α_t) + min((1 − x)·m_n/sin α_t, ½·d_b·tan α_t))/p_bt",
        inputs: &[("m_n", "module"), ("z", "teeth"), ("β", "helix"), ("x", "profile-shift")],
        validity: "x at or above the undercut limit. Below it the cutter takes away involute that the formula still counts, so it gives too much (straight, 12 teeth, x = 0: 1.405 in place of 1.275): such teeth must be refused. At least 4 teeth, helix below 45°; does not depend on the module.",
        sources: &[
            ISO_21771,
            Source::derived(
                "the rack side is the limit of infinitely many teeth; checked by counting the contacts of drawn flanks",
            ),
        ],
    },
    apply: transverse_contact_ratio,
};
/// Transverse contact ratio from module, teeth, helix angle and profile shift.
#[inline]
pub fn transverse_contact_ratio(module: Length, teeth: Ratio, helix: Angle, profile_shift: Ratio) -> Ratio {
    let ratio = Mesh::of(teeth, helix, profile_shift).transverse_ratio();
    Ratio::of_si(if module.si() > 0.0 { ratio } else { f64::NAN })
}

/// Overlap ratio of helical teeth. Module 2 mm, metric helix, 24 mm wide: 1.277.
pub static OVERLAP_RATIO: Formula<fn(Length, Angle, Length) -> Ratio> = Formula {
    note: Note {
        id: "overlap-ratio",
        title: "overlap ratio of helical teeth",
        equation: "ε_β = b·sin β/(π·m_n)",
        inputs: &[("m_n", "module"), ("β", "helix"), ("b", "face-width")],
        validity: "b is the smaller face width of pinion and rack; straight teeth give 0.",
        sources: &[ISO_21771],
    },
    apply: overlap_ratio,
};
/// Overlap ratio from module, helix angle and face width.
#[inline]
pub fn overlap_ratio(module: Length, helix: Angle, face_width: Length) -> Ratio {
    Ratio::of_si(face_width.si() * helix.si().abs().sin() / (PI * module.si()))
}

/// Total contact ratio: how many teeth are engaged on average. 1.615 and 1.277 give 2.892.
pub static TOTAL_CONTACT_RATIO: Formula<fn(Ratio, Ratio) -> Ratio> = Formula {
    note: Note {
        id: "total-contact-ratio",
        title: "total contact ratio",
        equation: "ε_γ = ε_α + ε_β",
        inputs: &[("ε_α", "transverse-contact-ratio"), ("ε_β", "overlap-ratio")],
        validity: "Unmodified teeth, full face width in contact.",
        sources: &[ISO_21771],
    },
    apply: total_contact_ratio,
};
/// Total contact ratio from transverse contact ratio and overlap ratio.
#[inline]
pub fn total_contact_ratio(transverse: Ratio, overlap: Ratio) -> Ratio {
    Ratio::of_si(transverse.si() + overlap.si())
}

/// Normal tooth thickness at the pinion tip, in modules. Straight, 20 teeth: 0.695; x = 0.5: 0.473.
pub static TIP_THICKNESS: Formula<fn(Ratio, Angle, Ratio) -> Ratio> = Formula {
    note: Note {
        id: "tip-thickness",
        title: "tooth thickness at the tip of the pinion, in modules",
        equation: "s_an/m_n = cos β_a·d_a/m_n·((π/2 + 2·x·tan α_n)/z + inv α_t − inv α_at), cos α_at = d_b/d_a, tan β_a = tan β·d_a/d",
        inputs: &[("z", "teeth"), ("β", "helix"), ("x", "profile-shift")],
        validity: "No tip shortening, no thinning for play. A negative value means a pointed tooth. At least 4 teeth, helix below 45°.",
        sources: &[ISO_21771],
    },
    apply: tip_thickness,
};
/// Base diameter of the pinion from module, teeth and helix angle: d·cos α_t.
pub fn base_diameter(module: Length, teeth: Ratio, helix: Angle) -> Length {
    Length::of_si(module.si() * Mesh::of(teeth, helix, Ratio::of_si(0.0)).base_diameter)
}

/// Transverse pressure angle at the tip of the pinion from teeth, helix angle and profile shift.
pub fn tip_pressure_angle(teeth: Ratio, helix: Angle, profile_shift: Ratio) -> Angle {
    let mesh = Mesh::of(teeth, helix, profile_shift);
    Angle::of_si((mesh.base_diameter / mesh.tip_diameter).acos())
}

/// Tip thickness in modules from teeth, helix angle and profile shift.
#[inline]
pub fn tip_thickness(teeth: Ratio, helix: Angle, profile_shift: Ratio) -> Ratio {
    let mesh = Mesh::of(teeth, helix, profile_shift);
    let alpha_tip = tip_pressure_angle(teeth, helix, profile_shift).si();
    let half = (PI / 2.0 + 2.0 * mesh.profile_shift * PRESSURE_ANGLE.tan()) / mesh.teeth;
    let transverse =
        mesh.tip_diameter * (half + mesh.tan_alpha - mesh.tan_alpha.atan() - (alpha_tip.tan() - alpha_tip));
    let tan_tip_helix = mesh.helix.tan() * mesh.tip_diameter / mesh.diameter;
    Ratio::of_si(transverse / (1.0 + tan_tip_helix * tan_tip_helix).sqrt())
}

/// Radial force of the mesh on the shaft: the resultant across the shaft. 1000 N, metric helix: 1072.0 N.
pub static RADIAL_LOAD: Formula<fn(Force, Angle) -> Force> = Formula {
    note: Note {
        id: "radial-load",
        title: "force of the mesh across the pinion shaft",
        equation: "F_rad = F_t·√(1 + tan²α_t)",
        inputs: &[("F_t", "tangential-force"), ("β", "helix")],
        validity: "Resultant of tangential and separating force; the axial force F_t·tan β of helical teeth and its couple are not in it.",
        sources: &[ISO_21771],
    },
    apply: radial_load,
};
/// Radial load on the shaft from tangential force and helix angle.
#[inline]
pub fn radial_load(tangential: Force, helix: Angle) -> Force {
    let tan = PRESSURE_ANGLE.tan() / helix.si().cos();
    Force::of_si(tangential.si() * (1.0 + tan * tan).sqrt())
}
