//! What is worked out once a drive passes over its duty: winding, matching of motor and load, and coming to rest.
//!
//! Method: a stage of its own behind the heating, so that the search spends nothing on drives that fall before.
//! Limits: those of the formulas.

use super::defaults;
use super::demand::Demand;
use super::energy::energy;
use crate::characteristic as ch;
use crate::formula::{brake, matching, overload};
use crate::ledger::{Characteristic, Ledger, Origin};
use crate::units::*;

/// Whether the travel for one turn is a lead that could be chosen otherwise.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Turn {
    /// A screw.
    Lead,
    /// A pinion.
    Pinion,
}

/// Enters the stage; `shaft` is the inertia of what turns behind the reduction.
#[inline(always)]
pub fn enter<L: Ledger>(demand: &Demand<'_>, shaft: Characteristic<MomentOfInertia>, turn: Turn, sheet: &mut L) {
    sheet.computed(ch::REDUCED_MASS, &brake::REDUCED_MASS, (ch::ROTATING_INERTIA, ch::TRAVEL_PER_TURN, ch::REDUCTION));
    winding(demand, sheet);
    matching(demand, shaft, turn, sheet);
    fall(demand, sheet);
    energy(demand, sheet);
}

/// Works out the winding over single phases, at standstill and in a short run.
#[inline(always)]
fn winding<L: Ledger>(demand: &Demand<'_>, sheet: &mut L) {
    let count = demand.phases.len();
    // two sides that rack against each other load their motors in every phase
    let torques = if demand.two_sided() { ch::PHASE_LARGEST_TORQUE } else { ch::PHASE_TORQUE }.all(count);
    sheet.computed(
        ch::WINDING_HEAT,
        &overload::WINDING_HEAT,
        (
            torques,
            ch::PHASE_SPEED.all(count),
            ch::PHASE_TOP_SPEED.all(count),
            ch::PHASE_ACCELERATION.all(count),
            ch::TRAVEL,
            ch::STANDSTILL_TORQUE,
            ch::RMS_TORQUE,
            ch::CONTINUOUS_TORQUE,
            ch::WINDING_TIME,
        ),
    );
    let standing = (torques, ch::PHASE_SPEED.all(count));
    sheet.computed(ch::STANDING_TORQUE, &overload::STANDING_TORQUE, standing);
    sheet.given(ch::SHORT_TIME, defaults::short_time(), Origin::Assumed);
    sheet.computed(ch::SHORT_TIME_FACTOR, &overload::SHORT_TIME_FACTOR, (ch::SHORT_TIME, ch::FRAME_TIME));
}

/// Works out what ratio and lead would suit the motor, and what an axis of this kind wants.
#[inline(always)]
fn matching<L: Ledger>(demand: &Demand<'_>, shaft: Characteristic<MomentOfInertia>, turn: Turn, sheet: &mut L) {
    let count = demand.phases.len();
    sheet.computed(ch::INERTIA_RATIO_TARGET, &matching::INERTIA_RATIO_TARGET, (ch::ACCELERATION,));
    sheet.computed(ch::FIRST_MODE_TARGET, &matching::FIRST_MODE_TARGET, (ch::MOVING_MASS, ch::TRAVEL));
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
            let inertia = (ch::ROTATING_INERTIA, ch::DRIVEN_MASS, ch::REDUCTION);
            sheet.computed(ch::OPTIMUM_LEAD, &matching::OPTIMUM_LEAD, inertia);
        }
        Turn::Pinion => sheet.absent(ch::OPTIMUM_LEAD),
    }
}

/// Works out what happens when power is lost at full downward speed; on a horizontal axis nothing falls.
#[inline(always)]
fn fall<L: Ledger>(demand: &Demand<'_>, sheet: &mut L) {
    if demand.axis.inclination.si() <= 0.0 {
        sheet.absent(ch::STOPPING_DISTANCE);
        return;
    }
    let masses = (ch::GRAVITY_FORCE, ch::DRIVEN_MASS, ch::REDUCED_MASS);
    sheet.computed(ch::FALL_ACCELERATION, &brake::FALL_ACCELERATION, masses);
    sheet.computed(
        ch::BRAKE_DECELERATION,
        &brake::BRAKE_DECELERATION,
        (
            ch::BRAKE_TORQUE,
            ch::BRAKE_SHARE,
            ch::TRAVEL_PER_TURN,
            ch::REDUCTION,
            ch::GRAVITY_FORCE,
            ch::DRIVEN_MASS,
            ch::REDUCED_MASS,
        ),
    );
    sheet.computed(
        ch::STOPPING_DISTANCE,
        &brake::STOPPING_DISTANCE,
        (ch::SPEED, ch::BRAKE_DELAY, ch::FALL_ACCELERATION, ch::BRAKE_DECELERATION),
    );
    sheet.computed(
        ch::BRAKE_WORK,
        &brake::BRAKE_WORK,
        (
            ch::SPEED,
            ch::BRAKE_DELAY,
            ch::FALL_ACCELERATION,
            ch::BRAKE_DECELERATION,
            ch::DRIVEN_MASS,
            ch::REDUCED_MASS,
            ch::GRAVITY_FORCE,
        ),
    );
}
