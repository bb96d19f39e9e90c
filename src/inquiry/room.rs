//! What the other axes of a chosen machine leave of its limits for one axis.

use crate::search::Attributes;
use crate::select::Machine;
use crate::units::Measure;

/// Rounding that turns no verdict: relative to the limit.
const TOLERANCE: f64 = 1e-9;

/// What one axis may take while the others stay as they are; infinite where nothing is limited.
#[derive(Debug, Clone, PartialEq)]
pub struct Room {
    /// Price to buy.
    pub purchase: f64,
    /// Square of the error at the tool, m².
    pub squared_error: f64,
    /// Power, W.
    pub power: f64,
    /// Motor models of the other axes, and how many there may be in all.
    pub motors: (Vec<u64>, u32),
    /// Gearbox models of the other axes, and how many there may be in all.
    pub gearboxes: (Vec<u64>, u32),
}

impl Room {
    /// What is left for an axis where these columns are picked.
    pub fn of(machine: &Machine<'_>, picks: &[usize], axis: usize) -> Room {
        let others: Vec<&Attributes> = (0..picks.len())
            .filter(|&other| other != axis)
            .map(|other| &machine.offers[other][picks[other]].found.attributes)
            .collect();
        let limits = &machine.brief.limits;
        let left = |limit: Option<f64>, of: fn(&Attributes) -> f64| {
            limit.map_or(f64::INFINITY, |limit| {
                limit * (1.0 + TOLERANCE) - others.iter().map(|attributes| of(attributes)).sum::<f64>()
            })
        };
        let models = |limit: Option<u32>, of: fn(&Attributes) -> u64| {
            let mut models: Vec<u64> =
                others.iter().map(|attributes| of(attributes)).filter(|&model| model != 0).collect();
            models.sort_unstable();
            models.dedup();
            (models, limit.unwrap_or(u32::MAX))
        };
        Room {
            purchase: left(limits.purchase.map(|limit| limit.0), |attributes| attributes.purchase),
            squared_error: left(limits.tool_point_error.map(|limit| limit.si() * limit.si()), |attributes| {
                attributes.error * attributes.error
            }),
            power: left(limits.supply_power.map(Measure::si), |attributes| attributes.power),
            motors: models(limits.motor_models, |attributes| attributes.motor),
            gearboxes: models(limits.gearbox_models, |attributes| attributes.gearbox),
        }
    }

    /// Whether a drive fits in.
    pub fn takes(&self, drive: &Attributes) -> bool {
        self.exceeded(drive).is_none()
    }

    /// The key of the first limit that a drive exceeds.
    pub fn exceeded(&self, drive: &Attributes) -> Option<&'static str> {
        let fits = |(models, most): &(Vec<u64>, u32), model: u64| {
            let new = model != 0 && models.binary_search(&model).is_err();
            models.len() + usize::from(new) <= *most as usize
        };
        // comparisons that nothing unknown passes
        let kept = [
            ("purchase", drive.purchase <= self.purchase),
            ("tool-point-error", drive.error * drive.error <= self.squared_error),
            ("supply-power", drive.power <= self.power),
            ("motor-models", fits(&self.motors, drive.motor)),
            ("gearbox-models", fits(&self.gearboxes, drive.gearbox)),
        ];
        kept.into_iter().find(|(_, kept)| !kept).map(|(key, _)| key)
    }
}
