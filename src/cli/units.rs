//! The option `--units`.

use crate::units::UnitSystem;

/// Units of what people read.
#[derive(Debug, Clone, Copy, PartialEq, Eq, clap::ValueEnum)]
pub enum Units {
    /// Millimetres, newtons, kilograms
    Metric,
    /// Inches, pounds-force, pounds
    #[value(alias = "imperial")]
    Inch,
}

impl Units {
    /// The system of units.
    pub fn system(self) -> UnitSystem {
        match self {
            Units::Metric => UnitSystem::Metric,
            Units::Inch => UnitSystem::Inch,
        }
    }
}
