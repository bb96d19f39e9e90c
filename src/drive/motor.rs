//! The motor stage, the same for every family: it ends at the motor shaft.

use super::demand::Demand;
use super::sides;
use crate::brief::Site;
use crate::catalog::{Catalog, ServoMotor};
use crate::characteristic as ch;
use crate::formula::Series;
use crate::formula::{envelope, gantry, inertia, motor, site, stop, twin};
use crate::ledger::{Characteristic, Figures, Input, Known, Ledger, Origin, PhaseCharacteristic};
use crate::units::*;

/// The motors that are offered: on a horizontal axis those without a brake, which holds nothing there; if the
/// catalogue has none, all.
pub fn options<'a>(demand: &Demand<'_>, catalog: &'a Catalog) -> Vec<&'a ServoMotor> {
    let inclined = demand.axis.inclination.si() > 0.0;
    let wanted: Vec<&ServoMotor> =
        catalog.servo_motors.iter().filter(|motor| inclined || motor.brake_torque.is_none()).collect();
    if wanted.is_empty() { catalog.servo_motors.iter().collect() } else { wanted }
}

/// The price of a motor with its electronics; zero where it is not known.
pub fn price(motor: &ServoMotor) -> f64 {
    let price = motor.price.0 + motor.drive_price.0;
    if price > 0.0 { price } else { 0.0 }
}

/// The price of the cheapest motor that is offered, with its electronics; zero where one is not known.
pub fn least_price(demand: &Demand<'_>, catalog: &Catalog) -> f64 {
    let least = super::price::least(options(demand, catalog).into_iter().map(price));
    if least.is_finite() { least } else { 0.0 }
}

/// Enters supply and site, which are the same for all motors of the machine.
pub fn site<L: Ledger>(site: &Site, sheet: &mut L) {
    let said = |stated: bool| if stated { Origin::Brief } else { Origin::Assumed };
    sheet.given(ch::SUPPLY_VOLTAGE, site.supply_voltage.value, said(site.supply_voltage.stated));
    sheet.given(ch::SUPPLY_TOLERANCE, site.supply_tolerance.value, said(site.supply_tolerance.stated));
    sheet.given(ch::ALTITUDE, site.altitude.value, said(site.altitude.stated));
    sheet.given(ch::AMBIENT_TEMPERATURE, site.ambient_temperature.value, said(site.ambient_temperature.stated));
}

/// Enters what the catalogue says of a motor, and what supply and site leave of it.
#[inline(always)]
pub fn given<L: Ledger>(motor: &ServoMotor, sheet: &mut L) {
    let catalog = Origin::Catalog;
    sheet.given(ch::RATED_VOLTAGE, motor.rated_voltage, catalog);
    sheet.given(ch::VOLTAGE_LIMIT, motor.voltage_limit, catalog);
    sheet.given(ch::WINDING_TEMPERATURE, motor.winding_temperature, catalog);
    sheet.given(ch::WINDING_TIME, motor.winding_time, catalog);
    sheet.given(ch::FRAME_TIME, motor.frame_time, catalog);
    sheet.given(ch::LISTED_RATED_TORQUE, motor.rated_torque, catalog);
    sheet.given(ch::LISTED_STANDSTILL_TORQUE, motor.standstill_torque, catalog);
    sheet.given(ch::RATED_SPEED, motor.rated_speed, catalog);
    sheet.given(ch::MOTOR_PEAK_TORQUE, motor.peak_torque, catalog);
    sheet.given(ch::LISTED_KNEE_SPEED, motor.knee_speed, catalog);
    sheet.given(ch::LISTED_SPEED_LIMIT, motor.speed_limit, catalog);
    sheet.given(ch::FIELD_WEAKENING, Ratio::of_si(if motor.field_weakening { 1.0 } else { 0.0 }), catalog);
    let voltages = (ch::SUPPLY_VOLTAGE, ch::SUPPLY_TOLERANCE, ch::RATED_VOLTAGE);
    sheet.computed(ch::VOLTAGE_FACTOR, &site::VOLTAGE_FACTOR, voltages);
    sheet.computed(ch::KNEE_SPEED, &site::SPEED_AT_VOLTAGE, (ch::LISTED_KNEE_SPEED, ch::VOLTAGE_FACTOR));
    if motor.field_weakening {
        // what ends the speed is not the voltage
        sheet.given(ch::MOTOR_SPEED_LIMIT, motor.speed_limit, catalog);
    } else {
        sheet.computed(ch::MOTOR_SPEED_LIMIT, &site::SPEED_AT_VOLTAGE, (ch::LISTED_SPEED_LIMIT, ch::VOLTAGE_FACTOR));
    }
    let air = (ch::ALTITUDE, ch::AMBIENT_TEMPERATURE, ch::WINDING_TEMPERATURE);
    sheet.computed(ch::SITE_FACTOR, &site::SITE_FACTOR, air);
    sheet.computed(ch::RATED_TORQUE, &site::TORQUE_AT_SITE, (ch::LISTED_RATED_TORQUE, ch::SITE_FACTOR));
    sheet.computed(ch::STANDSTILL_TORQUE, &site::TORQUE_AT_SITE, (ch::LISTED_STANDSTILL_TORQUE, ch::SITE_FACTOR));
    sheet.given(ch::ROTOR_INERTIA, motor.inertia, catalog);
    sheet.given(ch::BRAKE_TORQUE, motor.brake_torque.unwrap_or(Torque::of_si(0.0)), catalog);
    sheet.given(ch::MOTOR_RADIAL_LIMIT, motor.radial_limit, catalog);
    sheet.given(ch::MOTOR_MASS, motor.mass, catalog);
    sheet.given(ch::ENCODER_COUNTS, motor.encoder_counts, catalog);
    sheet.given(ch::MOTOR_PRICE, Money(motor.price.0 + motor.drive_price.0), catalog);
}

/// Works out what a brake has to hold, once forces and ratio are known.
#[inline(always)]
pub fn holding<L: Ledger>(sheet: &mut L) {
    sheet.computed(
        ch::HOLDING_TORQUE,
        &crate::formula::brake::HOLDING_TORQUE,
        (ch::GRAVITY_FORCE, ch::TRAVEL_PER_TURN, ch::REDUCTION),
    );
}

/// Works out the inertias at the motor; `shaft` is the inertia of what turns behind the reduction.
#[inline(always)]
pub fn inertias<L: Ledger>(shaft: Characteristic<MomentOfInertia>, sheet: &mut L) {
    sheet.computed(
        ch::ROTATING_INERTIA,
        &inertia::ROTATING_INERTIA,
        (ch::ROTOR_INERTIA, ch::REDUCTION_INERTIA, shaft, ch::REDUCTION),
    );
    sheet.computed(
        ch::MASS_INERTIA,
        &inertia::MASS_INERTIA,
        (ch::ACCELERATED_MASS, ch::TRAVEL_PER_TURN, ch::REDUCTION),
    );
    sheet.computed(
        ch::LOAD_INERTIA,
        &inertia::LOAD_INERTIA,
        (ch::MASS_INERTIA, ch::REDUCTION_INERTIA, shaft, ch::REDUCTION),
    );
}

/// Whether two motors share a drive, one pressed against the other.
#[inline(always)]
pub fn twin<L: Figures>(sheet: &L) -> bool {
    sheet.read(ch::PINIONS).si() > 1.5
}

/// How many motors the axis has.
#[inline(always)]
pub fn units<L: Figures>(sheet: &L) -> Characteristic<Ratio> {
    if twin(sheet) { ch::DRIVE_UNITS } else { ch::DRIVES }
}

/// The torques that count for power: of two motors what both together make of it, since one takes what the other gives.
#[inline(always)]
pub fn power_torques<L: Ledger>(sheet: &L) -> PhaseCharacteristic<Torque> {
    if twin(sheet) { ch::PHASE_PAIR_TORQUE } else { ch::PHASE_TORQUE }
}

/// The torques that count for peaks: with racking or bias where there is any.
#[inline(always)]
pub fn largest_torques<L: Ledger>(demand: &Demand<'_>, sheet: &L) -> PhaseCharacteristic<Torque> {
    match (demand.two_sided(), twin(sheet)) {
        (true, _) => ch::PHASE_LARGEST_TORQUE,
        (false, true) => ch::PHASE_OWN_TORQUE,
        (false, false) => ch::PHASE_TORQUE,
    }
}

/// The torque of one motor in every phase, from the force of its screw or pinion.
#[inline(always)]
fn torques<L: Ledger>(
    count: usize,
    force: PhaseCharacteristic<Force>,
    torque: PhaseCharacteristic<Torque>,
    sheet: &mut L,
) {
    sheet.computed_all(torque, count, &motor::PHASE_TORQUE, |index| torque_of(force, index));
}

/// What the torque of a phase is worked out of.
type OfTorque = (
    Characteristic<Force>,
    Characteristic<Velocity>,
    Characteristic<Acceleration>,
    Characteristic<Length>,
    Characteristic<Ratio>,
    Characteristic<Ratio>,
    Characteristic<Ratio>,
    Characteristic<Torque>,
    Characteristic<MomentOfInertia>,
);

#[inline(always)]
fn torque_of(force: PhaseCharacteristic<Force>, index: usize) -> OfTorque {
    (
        force.phase(index),
        ch::PHASE_SPEED.phase(index),
        ch::PHASE_ACCELERATION.phase(index),
        ch::TRAVEL_PER_TURN,
        ch::REDUCTION,
        ch::TOTAL_EFFICIENCY,
        ch::TOTAL_BACK_EFFICIENCY,
        ch::DRAG_TORQUE,
        ch::ROTATING_INERTIA,
    )
}

/// Enters a use of the peak torque that is not above the real one: that of the telling phases, without racking. Their forces and
/// the inertias are known; of two pinions none is told.
pub fn glimpse(demand: &Demand<'_>, sheet: &mut Known) {
    for &index in &demand.telling {
        let inputs = torque_of(ch::PHASE_FORCE, index);
        sheet.computed(ch::PHASE_TORQUE.phase(index), &motor::PHASE_TORQUE, inputs);
    }
    torque_use(ch::PHASE_TORQUE.some(&demand.telling), ch::PHASE_TOP_SPEED.some(&demand.telling), sheet);
}

/// Works out how far torques at these speeds use the peak torque of the motor.
#[inline(always)]
fn torque_use<L: Ledger>(torques: impl Input<Series<Torque>>, speeds: impl Input<Series<Velocity>>, sheet: &mut L) {
    let corners = (
        torques,
        speeds,
        ch::TRAVEL_PER_TURN,
        ch::REDUCTION,
        ch::MOTOR_PEAK_TORQUE,
        ch::KNEE_SPEED,
        ch::MOTOR_SPEED_LIMIT,
    );
    if weakens(sheet) {
        sheet.computed(ch::PEAK_TORQUE_USE, &envelope::WEAKENED_TORQUE_USE, corners);
    } else {
        sheet.computed(ch::PEAK_TORQUE_USE, &motor::PEAK_TORQUE_USE, corners);
    }
}

/// The forces of two pinions with their bias.
#[inline(always)]
fn twin_forces<L: Ledger>(count: usize, sheet: &mut L) {
    for index in 0..count {
        let half = (ch::PHASE_FORCE.phase(index), ch::BIAS_FORCE);
        sheet.computed(ch::PHASE_FIRST_FORCE.phase(index), &twin::FIRST_PINION_FORCE, half);
        sheet.computed(ch::PHASE_SECOND_FORCE.phase(index), &twin::SECOND_PINION_FORCE, half);
    }
}

/// The larger torque of two motors, and the one that counts for power.
#[inline(always)]
fn twin_torques<L: Ledger>(demand: &Demand<'_>, sheet: &mut L) {
    for index in 0..demand.phases.len() {
        let both = (ch::PHASE_TORQUE.phase(index), ch::PHASE_SECOND_TORQUE.phase(index));
        sheet.computed(ch::PHASE_OWN_TORQUE.phase(index), &twin::LARGER_TORQUE, both);
        let (first, second) = both;
        let powers = (first, second, ch::PHASE_SPEED.phase(index), ch::SUPPLY_EFFICIENCY);
        sheet.computed(ch::PHASE_PAIR_TORQUE.phase(index), &twin::PAIR_TORQUE, powers);
    }
}

/// Works out the torque of every phase and its peak, once forces, ratio, efficiency and inertia are known.
#[inline(always)]
pub fn peak<L: Ledger>(demand: &Demand<'_>, sheet: &mut L) {
    let count = demand.phases.len();
    let twin = twin(sheet);
    if twin {
        twin_forces(count, sheet);
    }
    let first = if twin { ch::PHASE_FIRST_FORCE } else { ch::PHASE_FORCE };
    torques(count, first, ch::PHASE_TORQUE, sheet);
    if twin {
        torques(count, ch::PHASE_SECOND_FORCE, ch::PHASE_SECOND_TORQUE, sheet);
        twin_torques(demand, sheet);
    }
    sheet.computed(ch::INERTIA_RATIO, &inertia::INERTIA_RATIO, (ch::LOAD_INERTIA, ch::ROTOR_INERTIA));
    // where the sides rack, the largest torque of a phase is more than its own
    if demand.two_sided() {
        sides::racked_torques(demand, sheet);
    }
    let largest = largest_torques(demand, sheet).all(count);
    sheet.computed(ch::PEAK_TORQUE, &motor::PEAK_TORQUE, (largest,));
    let limit = (ch::MOTOR_PEAK_TORQUE, ch::TORQUE_MARGIN, ch::PEAK_TORQUE, ch::HOLDING_TORQUE);
    sheet.computed(ch::SET_TORQUE, &stop::SET_TORQUE, limit);
    torque_use(largest, ch::PHASE_TOP_SPEED.all(count), sheet);
}

/// Whether the motor of this sheet keeps its power above the knee.
#[inline(always)]
fn weakens<L: Ledger>(sheet: &L) -> bool {
    sheet.read(ch::FIELD_WEAKENING).si() > 0.5
}

/// Works out heating and power over the duty, once the torques are known.
#[inline(always)]
pub fn heat<L: Ledger>(demand: &Demand<'_>, sheet: &mut L) {
    let count = demand.phases.len();
    let (torques, shares) = (ch::PHASE_TORQUE.all(count), ch::PHASE_SHARE.all(count));
    let second = ch::PHASE_SECOND_TORQUE.all(count);
    match (twin(sheet), demand.two_sided()) {
        (false, false) => sheet.computed(ch::RMS_TORQUE, &motor::RMS_TORQUE, (torques, shares)),
        (false, true) => {
            sheet.computed(ch::RMS_TORQUE, &gantry::RACKED_RMS_TORQUE, (torques, shares, ch::RACKING_TORQUE))
        }
        (true, false) => sheet.computed(ch::RMS_TORQUE, &twin::WORSE_RMS_TORQUE, (torques, second, shares)),
        (true, true) => {
            let all = (torques, second, shares, ch::RACKING_TORQUE);
            sheet.computed(ch::RMS_TORQUE, &twin::WORSE_RACKED_RMS_TORQUE, all)
        }
    };
    sheet.computed(
        ch::RMS_SPEED,
        &motor::RMS_SPEED,
        (ch::PHASE_RMS_SPEED.all(count), ch::PHASE_SHARE.all(count), ch::TRAVEL_PER_TURN, ch::REDUCTION),
    );
    let curve = (ch::RMS_SPEED, ch::STANDSTILL_TORQUE, ch::RATED_TORQUE, ch::RATED_SPEED);
    if weakens(sheet) {
        sheet.computed(ch::CONTINUOUS_TORQUE, &motor::CONTINUOUS_TORQUE, curve);
    } else {
        sheet.computed(ch::CONTINUOUS_TORQUE, &envelope::UNWEAKENED_CONTINUOUS_TORQUE, curve);
    }
    let (power, units) = (power_torques(sheet), units(sheet));
    sheet.computed(
        ch::PEAK_POWER,
        &motor::PEAK_POWER,
        (power.all(count), ch::PHASE_TOP_SPEED.all(count), ch::TRAVEL_PER_TURN, ch::REDUCTION, units),
    );
    sheet.computed(ch::SUPPLY_POWER, &stop::SUPPLY_POWER, (ch::PEAK_POWER, ch::SUPPLY_EFFICIENCY));
    sheet.computed(
        ch::MEAN_POWER,
        &motor::MEAN_POWER,
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
}
