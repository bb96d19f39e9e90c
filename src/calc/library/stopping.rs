//! The formulas on holding and stopping.
//!
//! Method: one line a formula, as in the list beside. Limits: none.

use crate::calc::generic::Plain;
use crate::formula::*;

/// Filed as the source files are.
pub(super) static FORMULAS: &[&dyn Plain] = &[
    &brake::HOLDING_TORQUE,
    &brake::REDUCED_MASS,
    &brake::FALL_ACCELERATION,
    &brake::BRAKE_DECELERATION,
    &brake::STOPPING_DISTANCE,
    &brake::BRAKE_WORK,
    &brake::BRAKE_STOPS,
    &brake::EXPECTED_STOPS,
    &brake::BRAKE_HOLDING_TORQUE,
    &brake::BUFFER_STROKE,
    &brake::BRAKE_TEST_LOAD,
    &brake::BRAKE_TEST_TORQUE,
    &brake::FALL_BEFORE_BRAKE,
    &brake::DROP_FROM_REST,
    &end_stop::DRIVE_PUSH,
    &end_stop::STOP_DECELERATION,
    &end_stop::GREATEST_STOP_DECELERATION,
    &end_stop::EMERGENCY_STOP_DISTANCE,
    &end_stop::END_STOP_ENERGY,
    &end_stop::WHOLE_END_STOP_ENERGY,
    &end_stop::BUFFER_FORCE,
    &end_stop::END_STOP_STROKE,
    &end_stop::CRASH_FORCE,
    &end_stop::COASTING_DECELERATION,
];
