//! Contact stress of pinion and rack flanks after ISO 6336-2.
//!
//! Method: Hertz pressure of the mesh at the pitch point, carried to the inner point of single contact on
//! the pinion of straight teeth. Limits: no tip relief factor of the 2019 edition.

use crate::formula::constants::{STEEL_POISSON, STEEL_YOUNG};
use crate::formula::extremes::larger;
use crate::formula::gear_geometry::Mesh;
use std::f64::consts::PI;

/// Zone factor Z_H of a pinion on a rack. Straight 2.4946; metric helix 2.3770.
pub fn zone_factor(helix: crate::units::Angle) -> f64 {
    use crate::units::{Measure, Ratio};
    zone(&Mesh::of(Ratio::of_si(20.0), helix, Ratio::of_si(0.0)))
}

fn zone(mesh: &Mesh) -> f64 {
    (2.0 * mesh.cos_base_helix / (mesh.cos_alpha * mesh.sin_alpha)).sqrt()
}

/// Elasticity factor Z_E of steel on steel, √Pa: √(E/(2π(1 − ν²))); 189.8 √MPa.
pub fn elasticity_factor() -> f64 {
    (STEEL_YOUNG / (2.0 * PI * (1.0 - STEEL_POISSON * STEEL_POISSON))).sqrt()
}

/// The factors that make stress of a force on flanks.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FlankFactors {
    /// Single pair tooth contact factor Z_B; 1 on the rack.
    pub single_contact: f64,
    /// Zone factor Z_H.
    pub zone: f64,
    /// Elasticity factor Z_E, √Pa.
    pub elasticity: f64,
    /// Square of the contact ratio factor Z_ε.
    pub contact_ratio_squared: f64,
    /// Cosine of the helix angle: 1 over the square of the helix angle factor Z_β.
    pub cos_helix: f64,
}

impl FlankFactors {
    pub(super) fn of(mesh: &Mesh, overlap: f64, on_pinion: bool) -> FlankFactors {
        let ratio = mesh.transverse_ratio();
        let contact =
            if overlap >= 1.0 { 1.0 / ratio } else { (4.0 - ratio) / 3.0 * (1.0 - overlap) + overlap / ratio };
        FlankFactors {
            single_contact: if on_pinion { single_contact(mesh, overlap) } else { 1.0 },
            zone: zone(mesh),
            elasticity: elasticity_factor(),
            contact_ratio_squared: contact,
            cos_helix: mesh.cos_helix,
        }
    }

    /// Square of contact stress over effective force and its area d·b, 1/m²·Pa: (Z_B Z_H Z_E Z_ε Z_β)²/(d·b).
    pub(super) fn stress_squared_per_force(&self, area: f64) -> f64 {
        let factor = self.single_contact * self.zone * self.elasticity;
        factor * factor * self.contact_ratio_squared / self.cos_helix / area
    }
}

/// Z_B: stress at the inner point of single contact over that at the pitch point.
fn single_contact(mesh: &Mesh, overlap: f64) -> f64 {
    if overlap >= 1.0 {
        return 1.0;
    }
    let tip = mesh.tip_diameter / mesh.base_diameter;
    let tan_tip = (tip * tip - 1.0).sqrt();
    let straight = larger(1.0, (mesh.tan_alpha / (tan_tip - 2.0 * PI / mesh.teeth)).sqrt());
    straight - overlap * (straight - 1.0)
}
