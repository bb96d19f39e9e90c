//! The stress limits of usual gear steels in the lines of ISO 6336-5.
//!
//! Method: σ = A·HV + B of the quality line, worked out at the hardness named. Limits: from memory of
//! ISO 6336-5:2003; induction values hold only if the root fillet lies inside the
//! hardened layer. Nitrided steel is left out: its life factors follow other lines.

use crate::units::{Length, Measure, Pressure, Ratio};

/// Treatment of a gear steel; it picks the lines of ISO 6336-3.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SteelClass {
    /// Case-hardened; Eh in the words of the standard.
    CaseHardened,
    /// Induction- or flame-hardened, the root with it; IF.
    InductionHardened,
    /// Quenched and tempered; V.
    ThroughHardened,
    /// Normalised structural steel; St.
    Soft,
}

impl SteelClass {
    /// The class of this name, as the catalogue writes it.
    pub fn named(name: &str) -> Option<SteelClass> {
        match name {
            "case-hardened" => Some(SteelClass::CaseHardened),
            "induction-hardened" => Some(SteelClass::InductionHardened),
            "through-hardened" => Some(SteelClass::ThroughHardened),
            "soft" => Some(SteelClass::Soft),
            _ => None,
        }
    }

    /// Whether the surface is hardened.
    pub fn surface_hardened(self) -> bool {
        match self {
            SteelClass::CaseHardened | SteelClass::InductionHardened => true,
            SteelClass::ThroughHardened | SteelClass::Soft => false,
        }
    }

    /// Cycles up to which roots bear no more than at fewer: the first point of the line of Y_NT.
    pub fn root_static_cycles(self) -> Ratio {
        Ratio::of_si(if self.surface_hardened() { 1e3 } else { 1e4 })
    }

    /// Thickness ρ′ of the slip layer: 0.003 mm hardened; 0.0111 mm at a proof stress of 700 MPa; 0.061 mm at a yield
    /// point of 350 MPa, both between two rows of the table on a line in logarithms.
    pub fn slip_layer(self) -> Length {
        Length::of_si(match self {
            SteelClass::CaseHardened | SteelClass::InductionHardened => 3e-6,
            SteelClass::ThroughHardened => 11.1e-6,
            SteelClass::Soft => 61e-6,
        })
    }
}

/// A gear steel and its limits.
#[derive(Debug, Clone, Copy)]
pub struct ToothMaterial {
    /// Its name in `calc`.
    pub name: &'static str,
    /// Treatment, hardness and quality in words.
    pub words: &'static str,
    /// Its treatment.
    pub class: SteelClass,
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
        class: SteelClass::CaseHardened,
        contact_mpa: 1500.0,
        bending_mpa: 461.0,
    },
    ToothMaterial {
        name: "induction-hardened",
        words: "induction-hardened with hard roots, 580 HV, quality MQ",
        class: SteelClass::InductionHardened,
        contact_mpa: 0.541 * 580.0 + 882.0,
        bending_mpa: 369.0,
    },
    ToothMaterial {
        name: "through-hardened",
        words: "through-hardened alloy steel, 280 HV, quality MQ",
        class: SteelClass::ThroughHardened,
        contact_mpa: 1.313 * 280.0 + 373.0,
        bending_mpa: 0.425 * 280.0 + 187.0,
    },
    ToothMaterial {
        name: "soft",
        words: "normalised carbon steel, 200 HV, quality MQ",
        class: SteelClass::Soft,
        contact_mpa: 0.925 * 200.0 + 360.0,
        bending_mpa: 0.240 * 200.0 + 163.0,
    },
];

/// The steel of this name.
pub fn material(name: &str) -> Option<&'static ToothMaterial> {
    MATERIALS.iter().find(|material| material.name == name)
}
