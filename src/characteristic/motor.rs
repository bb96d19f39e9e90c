//! The motor, its brake and its heating.

use crate::ledger::{About, Characteristic};
use crate::units::*;

characteristics! {
    after super::stiffness::END;

    RATED_TORQUE: Torque, "rated-torque", "T_N", "N·m", "rated torque of the motor";
    STANDSTILL_TORQUE: Torque, "standstill-torque", "T_0", "N·m", "continuous torque of the motor at standstill";
    RATED_SPEED: AngularVelocity, "rated-speed", "n_N", "1/min", "rated speed of the motor";
    MOTOR_PEAK_TORQUE: Torque, "motor-peak-torque", "T_pk", "N·m", "peak torque of the motor";
    KNEE_SPEED: AngularVelocity, "knee-speed", "n_k", "1/min", "speed up to which the peak torque is there";
    MOTOR_SPEED_LIMIT: AngularVelocity, "motor-speed-limit", "n_max", "1/min", "highest speed of the motor";
    ROTOR_INERTIA: MomentOfInertia, "rotor-inertia", "J_M", "kg·cm²", "inertia of the motor, with its brake if any";
    BRAKE_TORQUE: Torque, "brake-torque", "T_B", "N·m", "rated torque of the motor brake; zero without one";
    MOTOR_MASS: Mass, "motor-mass", "m_M", "kg", "mass of the motor";
    ENCODER_COUNTS: Ratio, "encoder-counts", "N_e", "1", "steps of the motor encoder in one turn";
    SUPPLY_EFFICIENCY: Ratio, "supply-efficiency", "η_s", "1", "efficiency of motor and drive electronics";
    MOTOR_SPEED: AngularVelocity, "motor-speed", "n_M", "1/min", "speed of the motor at top speed of the axis";
    MASS_INERTIA: MomentOfInertia, "mass-inertia", "J_m", "kg·cm²", "driven mass as inertia at the motor";
    LOAD_INERTIA: MomentOfInertia, "load-inertia", "J_L", "kg·cm²", "all inertia beyond the motor, at the motor";
    ROTATING_INERTIA: MomentOfInertia, "rotating-inertia", "J_rot", "kg·cm²", "all turning parts, at the motor";
    INERTIA_RATIO: Ratio, "inertia-ratio", "λ_J", "1", "load inertia over motor inertia";
    DRAG_TORQUE: Torque, "drag-torque", "T_d", "N·m", "drag of nut, bearings or gearbox at screw or pinion";
    PEAK_TORQUE: Torque, "peak-torque", "T_max", "N·m", "largest motor torque of any phase";
    PEAK_TORQUE_USE: Ratio, "peak-torque-use", "x_T", "1", "largest motor torque over what the motor gives at that speed, worst phase";
    TORQUE_MARGIN: Ratio, "torque-margin", "x_m", "1", "torque limit set in the drive over the largest torque of the duty";
    SET_TORQUE: Torque, "set-torque", "T_set", "N·m", "torque limit to set in the drive electronics";
    RMS_TORQUE: Torque, "rms-torque", "T_rms", "N·m", "root mean square motor torque over the duty";
    RMS_SPEED: AngularVelocity, "rms-speed", "n_rms", "1/min", "root mean square motor speed over the duty";
    CONTINUOUS_TORQUE: Torque, "continuous-torque", "T_S1", "N·m", "continuous torque of the motor at its mean duty speed";
    HOLDING_TORQUE: Torque, "holding-torque", "T_hold", "N·m", "torque at the motor that holds the load, no friction credited";
    BRAKE_DELAY: Time, "brake-delay", "t_B", "ms", "time from loss of power to the grip of the brake";
    BRAKE_SHARE: Ratio, "brake-share", "x_B", "1", "part of the rated brake torque that a warm or worn brake still gives";
    REDUCED_MASS: Mass, "reduced-mass", "m_red,r", "kg", "all turning parts as mass on the slide";
    FALL_ACCELERATION: Acceleration, "fall-acceleration", "g'", "m/s²", "acceleration of the load while nothing holds it";
    BRAKE_DECELERATION: Acceleration, "brake-deceleration", "a_b", "m/s²", "deceleration of the falling load by the brake";
    STOPPING_DISTANCE: Length, "stopping-distance", "s_b", "mm", "way from loss of power at full downward speed to standstill";
    BRAKE_WORK: Energy, "brake-work", "W_b", "J", "work of the brake in one stop from full downward speed";
    PEAK_POWER: Power, "peak-power", "P_max", "kW", "largest mechanical power of all drives of the axis";
    SUPPLY_POWER: Power, "supply-power", "P_s", "kW", "largest power that all drives of the axis take from the supply";
    MEAN_POWER: Power, "mean-power", "P_m", "kW", "mean electrical power of all drives of the axis while working";
}
