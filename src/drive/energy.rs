//! What a drive takes and gives back over the duty, and what it adds to the axis that carries it.
//!
//! Method: entered with what a drive is asked once it passes over its duty. Limits: those of the formulas.

use super::demand::Demand;
use super::motor;
use crate::characteristic as ch;
use crate::formula::{cable_chain, energy};
use crate::ledger::{Aside, Ledger};

/// Works out energy, regeneration, the time of the jerk in periods, and the mass that the carrier feels.
#[inline(always)]
pub fn energy<L: Ledger>(demand: &Demand<'_>, sheet: &mut L) {
    let count = demand.phases.len();
    let (power, units) = (motor::power_torques(sheet), motor::units(sheet));
    sheet.aside(Aside::Comparing, |sheet| {
        sheet.computed(ch::ENERGY_PER_HOUR, &energy::ENERGY_PER_HOUR, (ch::MEAN_POWER,));
    });
    sheet.computed(
        ch::REGENERATED_POWER,
        &energy::REGENERATED_POWER,
        (
            power.all(count),
            ch::PHASE_SPEED.all(count),
            ch::PHASE_SHARE.all(count),
            ch::TRAVEL_PER_TURN,
            ch::REDUCTION,
            units,
            ch::SUPPLY_EFFICIENCY,
        ),
    );
    sheet.computed(
        ch::STOP_ENERGY,
        &energy::STOP_ENERGY,
        (
            ch::ACCELERATED_MASS,
            ch::SPEED,
            ch::ROTATING_INERTIA,
            ch::TRAVEL_PER_TURN,
            ch::REDUCTION,
            ch::GRAVITY_FORCE,
            ch::COUNTERBALANCE_SHARE,
            ch::FRICTION_FORCE,
            ch::DRAG_TORQUE,
            ch::TOTAL_BACK_EFFICIENCY,
            ch::SUPPLY_EFFICIENCY,
            ch::SLOWING_DISTANCE,
            units,
        ),
    );
    sheet.computed(ch::JERK_PERIODS, &energy::JERK_PERIODS, (ch::FIRST_MODE, ch::ACCELERATION, ch::JERK));
    sheet.computed(
        ch::ADDED_MASS,
        &cable_chain::ADDED_MASS,
        (ch::DRIVE_MASS, ch::COUNTERWEIGHT_MASS, units, ch::CABLE_CHAIN_MASS_PER_METRE, ch::TRAVEL),
    );
}
