//! What a drive and its axis have of what entries of the catalogue are for.

use super::CandidateRecord;
use super::lines::part;
use crate::brief::{Axis, CounterbalanceKind};
use crate::characteristic as ch;
use crate::ledger::Figures;
use crate::search::Worked;

/// A drive that was chosen.
pub struct Has<'h, 's> {
    /// Its axis.
    pub axis: &'h Axis,
    /// The drive worked out.
    pub worked: &'h Worked<'s>,
    /// The drive as it stands in the record.
    pub chosen: &'h CandidateRecord,
}

impl Has<'_, '_> {
    fn above(&self, slot: usize, level: f64) -> bool {
        self.worked.sheet.value(slot) > level
    }

    /// How many ends of a screw a bearing holds.
    fn held_ends(&self) -> f64 {
        [ch::THRUST_ENDS, ch::SUPPORT_ENDS].iter().map(|ends| self.worked.sheet.value(ends.slot)).sum()
    }

    fn kind(&self) -> Option<CounterbalanceKind> {
        self.axis.counterbalance.as_ref().map(|by| by.kind)
    }

    /// Whether the drive has what an entry is for.
    pub fn part(&self, of: &str) -> bool {
        let rack = part(self.chosen, "rack").is_some();
        let nut_unit = part(self.chosen, "nut-unit").is_some();
        let (two, twin) = (self.axis.drives.value > 1, self.above(ch::PINIONS.slot, 1.5));
        match of {
            "any" | "motor" => true,
            "screw" => !rack,
            // a turning screw with a bearing at both ends, or with one end free
            "held-screw" => !rack && !nut_unit && self.held_ends() > 1.5,
            "free-screw" => !rack && !nut_unit && self.held_ends() < 1.5,
            "screw-bearing" => !rack && !nut_unit,
            "nut-unit" | "turning-nut" => nut_unit,
            "rack" | "pinion" => rack,
            "gearbox" => part(self.chosen, "gearbox").is_some(),
            "belt" => self.above(ch::BELTS.slot, 0.0),
            "coupling" => self.above(ch::COUPLINGS.slot, 0.0),
            "stretched-screw" => !rack && self.above(ch::STRETCH.slot, 0.0),
            "hung-weight" => self.above(ch::COUNTERWEIGHT_MASS.slot, 0.0),
            "two-pinions" => twin,
            "two-drives" => two,
            "plain-sides" => two && !twin,
            "paired-sides" => two && twin,
            "brake" => self.above(ch::BRAKE_TORQUE.slot, 0.0),
            "gas-counterbalance" => self.kind() == Some(CounterbalanceKind::Gas),
            "weight-counterbalance" => self.kind() == Some(CounterbalanceKind::Weight),
            "scale" => part(self.chosen, "linear-scale").is_some(),
            _ => false,
        }
    }
}
