//! Numbers in the units of the reader, as the sentences of an acceptance have them.

use crate::report;
use crate::units::UnitSystem;

/// The units of the reader.
#[derive(Debug, Clone, Copy)]
pub(super) struct Words {
    pub units: UnitSystem,
}

impl Words {
    /// A deviation, given in m, three digits: "3.25 µm".
    pub fn deviation(self, si: f64) -> String {
        report::quantity(Some(si * 1e6), "µm", self.units, 3)
    }

    /// A position or length of travel, given in m: "1250 mm".
    pub fn position(self, si: f64) -> String {
        report::quantity(Some(si * 1e3), "mm", self.units, 6)
    }

    /// A period that was found, given in m, three digits: "107 mm".
    pub fn period(self, si: f64) -> String {
        report::quantity(Some(si * 1e3), "mm", self.units, 3)
    }

    /// A slope, given in m/m: "12.5 µm/m".
    pub fn slope(self, si: f64) -> String {
        report::quantity(Some(si * 1e6), "µm/m", self.units, 3)
    }

    /// A temperature difference, K.
    pub fn kelvin(self, si: f64) -> String {
        report::quantity(Some(si), "K", self.units, 2)
    }

    /// A coefficient of expansion.
    pub fn expansion(self, si: f64) -> String {
        report::quantity(Some(si * 1e6), "µm/(m·K)", self.units, 3)
    }
}

/// A share in percent.
pub(super) fn percent(share: f64) -> String {
    let percent = share * 100.0;
    if percent > 0.0 && percent < 1.0 { "below 1 %".into() } else { format!("{percent:.0} %") }
}

/// "1 target", "5 targets".
pub(super) fn several(count: usize, one: &str) -> String {
    if count == 1 { format!("1 {one}") } else { format!("{count} {one}s") }
}
