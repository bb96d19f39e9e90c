//! The stress limits of usual gear steels in the lines of ISO 6336-5.
//!
//! Method: σ = A·HV + B of the quality line, worked out at the hardness named. Limits: from memory of
//! ISO 6336-5:2003; induction values hold only if the root fillet lies inside the
//! hardened layer. Nitrided steel is left out: its life factors follow other lines.

use crate::units::{Measure, Pressure};

/// A gear steel and its limits.
#[derive(Debug, Clone, Copy)]
pub struct ToothMaterial {
    /// Its name in `calc`.
    pub name: &'static str,
    /// Treatment, hardness and quality in words.
    pub words: &'static str,
    /// Allowable contact stress number, MPa.
    contact_mpa: f64,
    /// Nominal bending stress number, MPa.
    bending_mpa: f64,
}

impl ToothMaterial {
    /// Allowable contact stress number.
    pub fn contact_limit(&self) -> Pressure {
        Pressure::of_si(self.contact_mpa * 1e6)
    }
    /// Nominal bending stress number.
    pub fn bending_limit(&self) -> Pressure {
        Pressure::of_si(self.bending_mpa * 1e6)
    }
}

/// The steels that `calc` knows by name.
pub static MATERIALS: &[ToothMaterial] = &[
    ToothMaterial {
        name: "case-hardened",
        words: "case-hardened and ground, 660 to 800 HV, quality MQ",
        contact_mpa: 1500.0,
        bending_mpa: 461.0,
    },
    ToothMaterial {
        name: "induction-hardened",
        words: "induction-hardened with hard roots, 580 HV, quality MQ",
        contact_mpa: 0.541 * 580.0 + 882.0,
        bending_mpa: 369.0,
    },
    ToothMaterial {
        name: "through-hardened",
        words: "through-hardened alloy steel, 280 HV, quality MQ",
        contact_mpa: 1.313 * 280.0 + 373.0,
        bending_mpa: 0.425 * 280.0 + 187.0,
    },
    ToothMaterial {
        name: "soft",
        words: "normalised carbon steel, 200 HV, quality MQ",
        contact_mpa: 0.925 * 200.0 + 360.0,
        bending_mpa: 0.240 * 200.0 + 163.0,
    },
];

/// The steel of this name.
pub fn material(name: &str) -> Option<&'static ToothMaterial> {
    MATERIALS.iter().find(|material| material.name == name)
}
