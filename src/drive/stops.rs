//! How an axis comes to rest: by its brake without power, by its drive in an emergency, by its buffer at the end.
//!
//! Method: each from full speed, on the most loaded drive, with all turning parts. Limits: the drive keeps its torque
//! limit, and no counterbalance is credited, though a hanging one moves along; without power a level axis is stopped by
//! friction alone.

use super::defaults::stopping;
use super::demand::Demand;
use super::motor;
use crate::brief::CounterbalanceKind;
use crate::catalog::ServoMotor;
use crate::characteristic as ch;
use crate::formula::{brake, counterbalance, duty, end_stop};
use crate::ledger::{Aside, Ledger, Origin};
use crate::units::*;

/// Enters all three; torque limit, masses and weight are known.
#[inline(always)]
pub fn enter<L: Ledger>(demand: &Demand<'_>, picked: &ServoMotor, sheet: &mut L) {
    let inclined = demand.axis.inclination.si() > 0.0;
    sheet.aside(Aside::Stopping, by_drive);
    slackening(demand, sheet);
    sheet.aside(Aside::Stopping, |sheet| at_rest(inclined, sheet));
    let falls = inclined && picked.brake_torque.is_some();
    sheet.given(ch::BRAKES, Ratio::of_si(if falls { 1.0 } else { 0.0 }), Origin::Catalog);
    if falls {
        fall(sheet);
        wear(picked, sheet);
    } else {
        sheet.absent(ch::FALL_ACCELERATION);
        sheet.absent(ch::BRAKE_DECELERATION);
        sheet.absent(ch::STOPPING_DISTANCE);
        sheet.aside(Aside::Stopping, |sheet| {
            sheet.absent(ch::FALL_BEFORE_BRAKE);
            sheet.absent(ch::DROP_FROM_REST);
        });
        sheet.absent(ch::BRAKE_WORK);
        sheet.absent(ch::BRAKE_ENERGY);
        sheet.absent(ch::BRAKE_LIFE_ENERGY);
        sheet.absent(ch::BRAKE_STOPS);
        sheet.absent(ch::POWER_LOSSES);
        sheet.absent(ch::EXPECTED_STOPS);
    }
    if inclined && demand.two_sided() {
        sheet.computed(ch::WHOLE_GRAVITY_FORCE, &duty::GRAVITY_FORCE, (ch::MOVING_MASS, ch::INCLINATION));
        let whole = (ch::WHOLE_GRAVITY_FORCE, ch::TRAVEL_PER_TURN, ch::REDUCTION);
        sheet.computed(ch::LONE_HOLDING_TORQUE, &brake::HOLDING_TORQUE, whole);
    }
}

/// Works out how hard the drive can stop the axis.
#[inline(always)]
fn by_drive<L: Ledger>(sheet: &mut L) {
    sheet.computed(ch::DRIVE_PUSH, &end_stop::DRIVE_PUSH, (ch::SET_TORQUE, ch::TRAVEL_PER_TURN, ch::REDUCTION));
    let forces = (ch::DRIVE_PUSH, ch::GRAVITY_FORCE, ch::ACCELERATED_MASS, ch::REDUCED_MASS);
    sheet.computed(ch::STOP_DECELERATION, &end_stop::STOP_DECELERATION, forces);
    let upward = (forces.0, forces.1, ch::COUNTERWEIGHT_MASS, forces.2, forces.3);
    sheet.computed(ch::GREATEST_STOP_DECELERATION, &end_stop::GREATEST_STOP_DECELERATION, upward);
}

/// Works out the way to rest, what the buffer bears, and what happens without power or is tested with it.
#[inline(always)]
fn at_rest<L: Ledger>(inclined: bool, sheet: &mut L) {
    sheet.given(ch::STOP_REACTION, stopping::reaction(), Origin::Assumed);
    let stop = (ch::SPEED, ch::STOP_REACTION, ch::STOP_DECELERATION);
    sheet.computed(ch::EMERGENCY_STOP_DISTANCE, &end_stop::EMERGENCY_STOP_DISTANCE, stop);
    let parts = (ch::ACCELERATED_MASS, ch::REDUCED_MASS, ch::SPEED);
    sheet.computed(ch::END_STOP_ENERGY, &end_stop::END_STOP_ENERGY, parts);
    let whole =
        (ch::MOVING_MASS, ch::ACCELERATED_MASS, ch::DRIVEN_MASS, ch::REDUCED_MASS, motor::units(sheet), ch::SPEED);
    sheet.computed(ch::WHOLE_END_STOP_ENERGY, &end_stop::WHOLE_END_STOP_ENERGY, whole);
    sheet.given(ch::BUFFER_SHARE, stopping::buffer_share(), Origin::Assumed);
    sheet.given(ch::BUFFER_EFFICIENCY, stopping::buffer_efficiency(), Origin::Assumed);
    sheet.computed(ch::BUFFER_FORCE, &end_stop::BUFFER_FORCE, (ch::BUFFER_SHARE, ch::DRIVE_PUSH));
    sheet.computed(
        ch::END_STOP_STROKE,
        &end_stop::END_STOP_STROKE,
        (ch::END_STOP_ENERGY, ch::BUFFER_FORCE, ch::BUFFER_EFFICIENCY, ch::DRIVE_PUSH, ch::GRAVITY_FORCE),
    );
    sheet.computed(
        ch::CRASH_FORCE,
        &end_stop::CRASH_FORCE,
        (ch::SPEED, ch::TOTAL_STIFFNESS, ch::REDUCED_MASS, ch::DRIVE_PUSH),
    );
    without_power(inclined, sheet);
}

/// Works out what the hardest stop does to the rope of a counterweight.
#[inline(always)]
fn slackening<L: Ledger>(demand: &Demand<'_>, sheet: &mut L) {
    let (pull, masses) = (ch::GRAVITY_FORCE, (ch::COUNTERWEIGHT_MASS, ch::ACCELERATED_MASS, ch::REDUCED_MASS));
    let hangs = demand.axis.counterbalance.as_ref().is_some_and(|by| by.kind == CounterbalanceKind::Weight);
    if hangs {
        let stop = (ch::SET_TORQUE, ch::BRAKE_TORQUE, ch::TRAVEL_PER_TURN, ch::REDUCTION);
        sheet.computed(
            ch::STOP_ROPE_SLACKENING,
            &counterbalance::STOP_ROPE_SLACKENING,
            (stop.0, stop.1, stop.2, stop.3, pull, masses.0, masses.1, masses.2),
        );
    } else {
        sheet.absent(ch::STOP_ROPE_SLACKENING);
    }
}

/// Enters with what the brake of an inclined axis is tested, or how far a level one runs on.
#[inline(always)]
fn without_power<L: Ledger>(inclined: bool, sheet: &mut L) {
    if inclined {
        sheet.given(ch::BRAKE_TEST_FACTOR, stopping::brake_test_factor(), Origin::Assumed);
        let factor = ch::BRAKE_TEST_FACTOR;
        sheet.computed(ch::BRAKE_TEST_LOAD, &brake::BRAKE_TEST_LOAD, (factor, ch::GRAVITY_FORCE));
        sheet.computed(ch::BRAKE_TEST_TORQUE, &brake::BRAKE_TEST_TORQUE, (factor, ch::HOLDING_TORQUE));
        sheet.absent(ch::COASTING_DECELERATION);
        sheet.absent(ch::COASTING_DISTANCE);
    } else {
        sheet.absent(ch::BRAKE_TEST_FACTOR);
        sheet.absent(ch::BRAKE_TEST_LOAD);
        sheet.absent(ch::BRAKE_TEST_TORQUE);
        let slowing = (ch::FRICTION_FORCE, ch::DRIVEN_MASS, ch::REDUCED_MASS);
        sheet.computed(ch::COASTING_DECELERATION, &end_stop::COASTING_DECELERATION, slowing);
        let way = (ch::SPEED, ch::STOP_REACTION, ch::COASTING_DECELERATION);
        sheet.computed(ch::COASTING_DISTANCE, &end_stop::EMERGENCY_STOP_DISTANCE, way);
    }
}

/// Works out what happens when power is lost at full downward speed.
#[inline(always)]
fn fall<L: Ledger>(sheet: &mut L) {
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
    sheet.aside(Aside::Stopping, |sheet| {
        let before = (ch::SPEED, ch::BRAKE_DELAY, ch::FALL_ACCELERATION);
        sheet.computed(ch::FALL_BEFORE_BRAKE, &brake::FALL_BEFORE_BRAKE, before);
        let rest = (ch::BRAKE_DELAY, ch::FALL_ACCELERATION, ch::BRAKE_DECELERATION);
        sheet.computed(ch::DROP_FROM_REST, &brake::DROP_FROM_REST, rest);
    });
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

/// Works out how often the brake bears that.
#[inline(always)]
fn wear<L: Ledger>(motor: &ServoMotor, sheet: &mut L) {
    // what a brake does not state is not known
    let unknown = Energy::of_si(f64::NAN);
    sheet.given(ch::BRAKE_ENERGY, motor.brake_energy.unwrap_or(unknown), Origin::Catalog);
    sheet.given(ch::BRAKE_LIFE_ENERGY, motor.brake_life_energy.unwrap_or(unknown), Origin::Catalog);
    sheet.computed(ch::BRAKE_STOPS, &brake::BRAKE_STOPS, (ch::BRAKE_LIFE_ENERGY, ch::BRAKE_WORK));
    sheet.given(ch::POWER_LOSSES, stopping::power_losses(), Origin::Assumed);
    sheet.computed(ch::EXPECTED_STOPS, &brake::EXPECTED_STOPS, (ch::POWER_LOSSES, ch::SERVICE_YEARS));
}
