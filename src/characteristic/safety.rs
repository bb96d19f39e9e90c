//! Figures for the risk assessment: tests of the brake, ways without power, the rigid stop.

use crate::ledger::{About, Characteristic};
use crate::units::*;

characteristics! {
    after super::twin::END;

    BRAKE_TEST_FACTOR: Ratio, "brake-test-factor", "x_t", "1", "load with which a brake is tested over the load at rest";
    BRAKE_TEST_LOAD: Force, "brake-test-load", "F_test", "N", "load along the axis with which each brake is tested";
    BRAKE_TEST_TORQUE: Torque, "brake-test-torque", "T_test", "N·m", "torque at the motor with which each brake is tested";
    FALL_BEFORE_BRAKE: Length, "fall-before-brake", "s_f", "mm", "way from loss of power at full downward speed to the grip of the brake";
    DROP_FROM_REST: Length, "drop-from-rest", "s_fr", "mm", "way from loss of power at rest until the brake has stopped the load";
    COASTING_DECELERATION: Acceleration, "coasting-deceleration", "a_c", "m/s²", "deceleration of the level axis without torque, by friction alone";
    COASTING_DISTANCE: Length, "coasting-distance", "s_c", "mm", "way of the level axis from full speed without torque, by friction alone";
    CRASH_FORCE: Force, "crash-force", "F_cr,x", "N", "force in one drive when the slide runs into a rigid stop at full speed";
}
