//! What a choice needs of the machine, against the limits of the brief, by direct evaluation.

use super::Machine;
use crate::units::Measure;

/// Rounding that turns no verdict: relative to the limit.
const TOLERANCE: f64 = 1e-9;
/// Rounding in carried mass, kg.
pub(super) const MASS_TOLERANCE: f64 = 1e-6;

/// What a choice needs, in SI units.
#[derive(Debug, Clone, PartialEq)]
pub struct Needs {
    /// Price to buy.
    pub purchase: f64,
    /// Price over the years of service.
    pub whole_life: f64,
    /// Error at the tool, m.
    pub error: f64,
    /// Peak power of all axes at once, W.
    pub power: f64,
    /// Longest delivery time, s.
    pub lead_time: f64,
    /// Different motor models.
    pub motors: u32,
    /// Different gearbox models.
    pub gearboxes: u32,
    /// Whether every drive stands within its interval of carried mass.
    pub masses: bool,
    /// Each limit of the brief that is exceeded, by its key.
    pub exceeded: Vec<&'static str>,
}

impl Needs {
    /// Whether nothing is exceeded.
    pub fn keep_all(&self) -> bool {
        self.masses && self.exceeded.is_empty()
    }
}

fn distinct(mut models: Vec<u64>) -> u32 {
    models.sort_unstable();
    models.dedup();
    models.len() as u32
}

/// Adds up what a choice needs and compares it with the limits.
pub fn needs(machine: &Machine<'_>, picks: &[usize]) -> Needs {
    let chosen: Vec<_> = picks.iter().zip(&machine.offers).map(|(&pick, offer)| &offer[pick]).collect();
    let sum = |of: fn(&crate::search::Attributes) -> f64| -> f64 {
        chosen.iter().map(|column| of(&column.found.attributes)).sum()
    };
    let masses = (0..picks.len()).all(|axis| {
        let carried = machine.carried(axis, picks);
        carried >= chosen[axis].least - MASS_TOLERANCE && carried <= chosen[axis].most + MASS_TOLERANCE
    });
    let mut needs = Needs {
        purchase: sum(|attributes| attributes.purchase),
        whole_life: sum(|attributes| attributes.whole_life),
        error: sum(|attributes| attributes.error * attributes.error).sqrt(),
        power: sum(|attributes| attributes.power),
        lead_time: chosen
            .iter()
            .map(|column| column.found.attributes.lead_time)
            .fold(0.0, |longest, time| if time > longest { time } else { longest }),
        motors: distinct(chosen.iter().map(|column| column.found.attributes.motor).collect()),
        gearboxes: distinct(
            chosen.iter().map(|column| column.found.attributes.gearbox).filter(|&model| model != 0).collect(),
        ),
        masses,
        exceeded: Vec::new(),
    };
    let limits = &machine.limits;
    let mut compare = |key, reached: f64, allowed: Option<f64>| {
        if let Some(allowed) = allowed {
            let keeps = reached <= allowed * (1.0 + TOLERANCE);
            if !keeps {
                needs.exceeded.push(key);
            }
        }
    };
    compare("purchase", needs.purchase, limits.purchase.map(|limit| limit.0));
    compare("tool-point-error", needs.error, limits.tool_point_error.map(|limit| limit.si()));
    compare("supply-power", needs.power, limits.supply_power.map(|limit| limit.si()));
    compare("motor-models", f64::from(needs.motors), limits.motor_models.map(f64::from));
    compare("gearbox-models", f64::from(needs.gearboxes), limits.gearbox_models.map(f64::from));
    compare("lead-time", needs.lead_time, limits.lead_time.map(|limit| limit.si()));
    needs
}
