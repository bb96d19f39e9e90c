//! Energy of the duty, and what an axis adds to the one that carries it.

use crate::ledger::{About, Characteristic};
use crate::units::*;

characteristics! {
    after super::sides::END;

    ENERGY_PER_HOUR: Energy, "energy-per-hour", "E_h", "kWh", "electrical energy of all drives of the axis in an hour of work";
    REGENERATED_POWER: Power, "regenerated-power", "P_r", "kW", "mean power that braking gives back, all drives of the axis";
    STOP_ENERGY: Energy, "stop-energy", "E_s", "J", "largest energy that one stop gives back, all drives of the axis";
    JERK_PERIODS: Ratio, "jerk-periods", "x_jp", "1", "periods of the first resonance within the time that builds up the acceleration";
    ADDED_MASS: Mass, "added-mass", "m_+", "kg", "drives, counterweights and cable chain of the axis, as its carrier feels them";
}
