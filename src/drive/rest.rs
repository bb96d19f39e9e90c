//! What is worked out once a drive passes over its duty: winding, matching of motor and load, and coming to rest.
//!
//! Method: a stage of its own behind the heating, so that the search spends nothing on drives that fall before.
//! Limits: those of the formulas.

use super::defaults;
use super::demand::Demand;
use super::energy::energy;
use super::motor;
use super::stops;
use crate::catalog::ServoMotor;
use crate::characteristic as ch;
use crate::formula::{brake, matching, mesh_motion, overload, regeneration};
use crate::ledger::{Aside, Characteristic, Ledger, Origin};
use crate::units::*;

/// Whether the travel for one turn is a lead that could be chosen otherwise.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Turn {
    /// A screw.
    Lead,
    /// A pinion.
    Pinion,
}

/// Enters the ripple that the slide shows at this rhythm, once its first resonance is known.
#[inline(always)]
pub fn ripple<L: Ledger>(rhythm: Characteristic<Frequency>, sheet: &mut L) {
    sheet.given(ch::DRIVE_DAMPING, defaults::parts::drive_damping(), Origin::Assumed);
    let at = (ch::RIPPLE, rhythm, ch::FIRST_MODE, ch::DRIVE_DAMPING);
    sheet.computed(ch::RIPPLE_IN_CUT, &mesh_motion::RIPPLE_IN_CUT, at);
}

/// Enters the stage; `shaft` is the inertia of what turns behind the reduction.
#[inline(always)]
pub fn enter<L: Ledger>(
    demand: &Demand<'_>,
    shaft: Characteristic<MomentOfInertia>,
    motor: &ServoMotor,
    turn: Turn,
    sheet: &mut L,
) {
    sheet.computed(ch::REDUCED_MASS, &brake::REDUCED_MASS, (ch::ROTATING_INERTIA, ch::TRAVEL_PER_TURN, ch::REDUCTION));
    winding(demand, sheet);
    matching(demand, shaft, turn, sheet);
    stops::enter(demand, motor, sheet);
    energy(demand, sheet);
    regeneration(motor, sheet);
}

/// Works out the winding over single phases, at standstill and in a short run.
#[inline(always)]
fn winding<L: Ledger>(demand: &Demand<'_>, sheet: &mut L) {
    let count = demand.phases.len();
    // sides that rack and pinions with a bias load their motors in every phase
    let torques = motor::largest_torques(demand, sheet).all(count);
    sheet.computed(
        ch::WINDING_HEAT,
        &overload::WINDING_HEAT,
        (
            torques,
            ch::PHASE_SPEED.all(count),
            ch::PHASE_ACCELERATION.all(count),
            ch::LONGEST_RAMP_TIME,
            ch::TRAVEL,
            ch::STANDSTILL_TORQUE,
            ch::RMS_TORQUE,
            ch::CONTINUOUS_TORQUE,
            ch::WINDING_TIME,
        ),
    );
    let standing = (torques, ch::PHASE_SPEED.all(count));
    sheet.computed(ch::STANDING_TORQUE, &overload::STANDING_TORQUE, standing);
    sheet.aside(Aside::Comparing, |sheet| {
        sheet.given(ch::SHORT_TIME, defaults::short_time(), Origin::Assumed);
        sheet.computed(ch::SHORT_TIME_FACTOR, &overload::SHORT_TIME_FACTOR, (ch::SHORT_TIME, ch::FRAME_TIME));
    });
}

/// Works out what ratio and lead would suit the motor, and what an axis of this kind wants.
#[inline(always)]
fn matching<L: Ledger>(demand: &Demand<'_>, shaft: Characteristic<MomentOfInertia>, turn: Turn, sheet: &mut L) {
    sheet.computed(ch::INERTIA_RATIO_TARGET, &matching::INERTIA_RATIO_TARGET, (ch::ACCELERATION,));
    sheet.computed(ch::FIRST_MODE_TARGET, &matching::FIRST_MODE_TARGET, (ch::MOVING_MASS, ch::TRAVEL));
    sheet.aside(Aside::Comparing, |sheet| optimum(demand, shaft, turn, sheet));
}

/// Works out the ratio and the lead that would suit the motor best.
#[inline(always)]
fn optimum<L: Ledger>(demand: &Demand<'_>, shaft: Characteristic<MomentOfInertia>, turn: Turn, sheet: &mut L) {
    let count = demand.phases.len();
    let (accelerations, shares) = (ch::PHASE_ACCELERATION.all(count), ch::PHASE_SHARE.all(count));
    sheet.computed(
        ch::LOAD_RMS_TORQUE,
        &matching::LOAD_RMS_TORQUE,
        (ch::PHASE_FORCE.all(count), accelerations, shares, ch::TRAVEL_PER_TURN, shaft),
    );
    let motion = (accelerations, shares, ch::TRAVEL_PER_TURN);
    sheet.computed(ch::LOAD_RMS_ACCELERATION, &matching::LOAD_RMS_ACCELERATION, motion);
    let load = (ch::LOAD_RMS_TORQUE, ch::LOAD_RMS_ACCELERATION, ch::ROTOR_INERTIA);
    sheet.computed(ch::OPTIMUM_RATIO, &matching::OPTIMUM_RATIO, load);
    match turn {
        Turn::Lead => {
            let inertia = (ch::ROTATING_INERTIA, ch::ACCELERATED_MASS, ch::REDUCTION);
            sheet.computed(ch::OPTIMUM_LEAD, &matching::OPTIMUM_LEAD, inertia);
        }
        Turn::Pinion => sheet.absent(ch::OPTIMUM_LEAD),
    }
}

/// Works out what the drive electronics take up of the energy that braking gives back.
#[inline(always)]
fn regeneration<L: Ledger>(motor: &ServoMotor, sheet: &mut L) {
    let catalog = Origin::Catalog;
    sheet.given(ch::BUS_ENERGY, motor.bus_energy, catalog);
    sheet.given(ch::RESISTOR_ENERGY, motor.resistor_energy, catalog);
    sheet.given(ch::RESISTOR_POWER, motor.resistor_power, catalog);
    // every motor has its own electronics
    let units = super::motor::units(sheet);
    let once = (ch::BUS_ENERGY, ch::RESISTOR_ENERGY, units);
    sheet.computed(ch::STOP_ENERGY_LIMIT, &regeneration::STOP_ENERGY_LIMIT, once);
    sheet.computed(ch::REGENERATION_LIMIT, &regeneration::REGENERATION_LIMIT, (ch::RESISTOR_POWER, units));
}
