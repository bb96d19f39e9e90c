//! The shape of a tooth root and the stress in it after ISO 6336-3.
//!
//! Method: 30° tangent at the root that a rack tool of ISO 53 profile A cuts, on the virtual straight
//! pinion; the rack tooth in closed form, which is the limit of the same equations for infinitely many
//! teeth (they agree within 3e-5 at 200 000 teeth). Lengths in normal modules.

use crate::formula::gear_geometry::{ADDENDUM, DEDENDUM, Mesh, PRESSURE_ANGLE, ROOT_RADIUS};
use crate::formula::{Formula, Note};
use crate::source::Source;
use crate::units::{Angle, Measure, Ratio};
use std::f64::consts::{FRAC_PI_3, FRAC_PI_6, PI};

const ISO_6336_3: Source = Source::memory("ISO 6336-3:2006, form factor and stress correction factor, method B");

/// The root of a tooth under a load, in normal modules.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ToothForm {
    /// Chord at the 30° tangents.
    pub root_chord: f64,
    /// Bending arm of the load.
    pub arm: f64,
    /// Radius of the root fillet at the tangents.
    pub fillet: f64,
    /// Form factor Y_F.
    pub form_factor: f64,
}

impl ToothForm {
    /// Notch parameter q_s.
    pub fn notch(&self) -> f64 {
        self.root_chord / (2.0 * self.fillet)
    }

    /// Stress correction factor Y_S; q_s between 1 and 8.
    pub fn stress_correction(&self) -> f64 {
        let slimness = self.root_chord / self.arm;
        (1.2 + 0.13 * slimness) * self.notch().powf(1.0 / (1.21 + 2.3 / slimness))
    }
}

/// Where the load acts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum LoadPoint {
    Tip,
    SingleContact,
}

/// Root of a pinion tooth, loaded at the tip or at the outer point of single contact.
pub(crate) fn pinion_form(mesh: &Mesh, point: LoadPoint) -> ToothForm {
    let (sin, cos) = PRESSURE_ANGLE.sin_cos();
    let tan = sin / cos;
    let z_n = mesh.virtual_teeth();
    let x = mesh.profile_shift;
    let e = PI / 4.0 - DEDENDUM * tan - (1.0 - sin) * ROOT_RADIUS / cos;
    let g = ROOT_RADIUS - DEDENDUM + x;
    let h = 2.0 / z_n * (PI / 2.0 - e) - FRAC_PI_3;
    // θ = 2·G/z_n·tan θ − H by Newton's method
    let mut theta = FRAC_PI_6;
    for _ in 0..20 {
        let tan_theta = theta.tan();
        let slope = 1.0 - 2.0 * g / z_n * (1.0 + tan_theta * tan_theta);
        let step = (theta - 2.0 * g / z_n * tan_theta + h) / slope;
        theta -= step;
        if step.abs() < 1e-14 {
            break;
        }
    }
    let cos_theta = theta.cos();
    let below = g / cos_theta - ROOT_RADIUS;
    let root_chord = z_n * (FRAC_PI_3 - theta).sin() + 3f64.sqrt() * below;
    let fillet = ROOT_RADIUS + 2.0 * g * g / (cos_theta * (z_n * cos_theta * cos_theta - 2.0 * g));
    let base = z_n * cos;
    let tip = z_n + mesh.tip_diameter - mesh.diameter;
    let load_diameter = match point {
        LoadPoint::Tip => tip,
        LoadPoint::SingleContact => {
            let way = (tip * tip - base * base).sqrt() / 2.0 - PI * cos * (mesh.virtual_ratio() - 1.0);
            2.0 * (way * way + base * base / 4.0).sqrt()
        }
    };
    let alpha = (base / load_diameter).acos();
    let gamma = (PI / 2.0 + 2.0 * x * tan) / z_n + (tan - PRESSURE_ANGLE) - (alpha.tan() - alpha);
    let force_angle = alpha - gamma;
    let arm =
        ((gamma.cos() - gamma.sin() * force_angle.tan()) * load_diameter - z_n * (FRAC_PI_3 - theta).cos() - below)
            / 2.0;
    let form_factor = 6.0 * arm * force_angle.cos() / (root_chord * root_chord * cos);
    ToothForm { root_chord, arm, fillet, form_factor }
}

/// Root of a rack tooth, loaded so far above its datum line.
fn rack_form(height: f64) -> ToothForm {
    let (sin, cos) = PRESSURE_ANGLE.sin_cos();
    let tan = sin / cos;
    let root_chord =
        2.0 * (PI / 4.0 + (DEDENDUM - ROOT_RADIUS) * tan + ROOT_RADIUS / cos - ROOT_RADIUS * FRAC_PI_6.cos());
    let arm = DEDENDUM - ROOT_RADIUS / 2.0 + height - (PI / 4.0 - height * tan) * tan;
    ToothForm { root_chord, arm, fillet: ROOT_RADIUS, form_factor: 6.0 * arm / (root_chord * root_chord) }
}

/// Root of a rack tooth in this mesh, loaded at its outer point of single contact.
pub(crate) fn rack_form_in(mesh: &Mesh) -> ToothForm {
    let (sin, cos) = PRESSURE_ANGLE.sin_cos();
    rack_form(ADDENDUM - (mesh.virtual_ratio() - 1.0) * PI * sin * cos)
}

/// Root of a rack tooth loaded at its tip: Y_F 2.0632, Y_S 1.9659, whatever the pinion.
pub fn rack_tooth_at_tip() -> ToothForm {
    rack_form(ADDENDUM)
}

/// Root of a pinion tooth loaded at the outer point of single contact, from teeth, helix and profile shift.
pub fn pinion_tooth(teeth: Ratio, helix: Angle, profile_shift: Ratio) -> ToothForm {
    pinion_form(&Mesh::of(teeth, helix, profile_shift), LoadPoint::SingleContact)
}

/// Root of a rack tooth loaded at the outer point of single contact with this pinion.
pub fn rack_tooth(teeth: Ratio, helix: Angle, profile_shift: Ratio) -> ToothForm {
    rack_form_in(&Mesh::of(teeth, helix, profile_shift))
}

/// Form factor of a pinion tooth loaded at its tip. Straight, 20 teeth: 2.80; a rack tooth 2.063.
pub static TIP_FORM_FACTOR: Formula<fn(Ratio, Angle, Ratio) -> Ratio> = Formula {
    note: Note {
        id: "tip-form-factor",
        title: "form factor of a tooth loaded at its tip",
        equation: "Y_Fa = 6·(h_Fa/m_n)·cos α_Fan/((s_Fn/m_n)²·cos α_n)",
        inputs: &[("z", "teeth"), ("β", "helix"), ("x", "profile-shift")],
        validity: "ISO 53 profile A, no undercut, at least 4 teeth, helix below 45°. A rack tooth is the limit of infinitely many teeth: 2.0632.",
        sources: &[ISO_6336_3],
    },
    apply: tip_form_factor,
};
/// Form factor for tip load from teeth, helix angle and profile shift.
pub fn tip_form_factor(teeth: Ratio, helix: Angle, profile_shift: Ratio) -> Ratio {
    Ratio::of_si(pinion_form(&Mesh::of(teeth, helix, profile_shift), LoadPoint::Tip).form_factor)
}

/// Stress correction factor of a pinion tooth loaded at its tip. Straight, 20 teeth: 1.55; a rack 1.966.
pub static TIP_STRESS_CORRECTION: Formula<fn(Ratio, Angle, Ratio) -> Ratio> = Formula {
    note: Note {
        id: "tip-stress-correction",
        title: "stress correction factor of a tooth loaded at its tip",
        equation: "Y_Sa = (1.2 + 0.13·L)·q_s^(1/(1.21 + 2.3/L)), L = s_Fn/h_Fa, q_s = s_Fn/(2·ρ_F)",
        inputs: &[("z", "teeth"), ("β", "helix"), ("x", "profile-shift")],
        validity: "ISO 53 profile A, no undercut, q_s from 1 to 8. A rack tooth is the limit of infinitely many teeth: 1.9659.",
        sources: &[ISO_6336_3],
    },
    apply: tip_stress_correction,
};
/// Stress correction factor for tip load from teeth, helix angle and profile shift.
pub fn tip_stress_correction(teeth: Ratio, helix: Angle, profile_shift: Ratio) -> Ratio {
    Ratio::of_si(pinion_form(&Mesh::of(teeth, helix, profile_shift), LoadPoint::Tip).stress_correction())
}

/// The factors that make stress of a force on a root, and what the notch leaves of its strength.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RootFactors {
    /// Form factor Y_F.
    pub form: f64,
    /// Stress correction factor Y_S.
    pub stress_correction: f64,
    /// Helix angle factor Y_β.
    pub helix: f64,
    /// Relative notch sensitivity Y_δ,rel,T.
    pub notch: f64,
}

impl RootFactors {
    pub(super) fn of(form: &ToothForm, mesh: &Mesh, overlap: f64, slip_layer: f64) -> RootFactors {
        // Y_β of the 2006 edition: overlap counts up to 1, helix up to 30°
        let helix = mesh.helix.to_degrees().min(30.0);
        RootFactors {
            form: form.form_factor,
            stress_correction: form.stress_correction(),
            helix: 1.0 - if overlap < 1.0 { overlap } else { 1.0 } * helix / 120.0,
            notch: notch_sensitivity(form, slip_layer),
        }
    }

    /// Root stress over effective force and its area b·m_n: Y_F·Y_S·Y_β/(b·m_n), 1/m².
    pub(super) fn stress_per_force(&self, area: f64) -> f64 {
        self.form * self.stress_correction * self.helix / area
    }
}

/// Relative notch sensitivity Y_δ,rel,T of a steel with this slip layer, m: √(ρ′·χ*) against that of the test gear, q_s 2.5.
fn notch_sensitivity(form: &ToothForm, slip_layer: f64) -> f64 {
    let layer_mm = slip_layer * 1e3;
    (1.0 + (layer_mm * (1.0 + 2.0 * form.notch()) / 5.0).sqrt()) / (1.0 + (1.2 * layer_mm).sqrt())
}
