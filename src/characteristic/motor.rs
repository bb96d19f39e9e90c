//! The motor, its brake and its heating.

use crate::ledger::{About, Characteristic};
use crate::units::*;

characteristics! {
    after super::stiffness::END;

    SUPPLY_VOLTAGE: Voltage, "supply-voltage", "U", "V", "nominal voltage of the supply";
    SUPPLY_TOLERANCE: Ratio, "supply-tolerance", "δ_U", "1", "by how much the supply voltage may sag while the machine works";
    ALTITUDE: Length, "altitude", "h", "m", "altitude of the site";
    AMBIENT_TEMPERATURE: CelsiusTemperature, "ambient-temperature", "ϑ_a", "°C", "highest temperature of the air around the motors";
    RATED_VOLTAGE: Voltage, "rated-voltage", "U_N", "V", "supply voltage for which the motor is rated";
    VOLTAGE_LIMIT: Voltage, "voltage-limit", "U_lim", "V", "highest nominal supply voltage of the drive electronics";
    VOLTAGE_FACTOR: Ratio, "voltage-factor", "x_U", "1", "least supply voltage over the rated voltage of the motor";
    FIELD_WEAKENING: Ratio, "field-weakening", "n_fw", "1", "one if the motor is built for field weakening, zero if not";
    WINDING_TEMPERATURE: CelsiusTemperature, "winding-temperature", "ϑ_w", "°C", "temperature that the winding may have";
    WINDING_TIME: Time, "winding-time", "τ_w", "s", "thermal time constant of the winding";
    FRAME_TIME: Time, "frame-time", "τ_f", "min", "thermal time constant of the motor's frame";
    SITE_FACTOR: Ratio, "site-factor", "x_S", "1", "part of the continuous torque that altitude and ambient temperature leave";
    LISTED_RATED_TORQUE: Torque, "listed-rated-torque", "T_N,c", "N·m", "rated torque of the motor as listed, at 40 °C and 1000 m";
    LISTED_STANDSTILL_TORQUE: Torque, "listed-standstill-torque", "T_0,c", "N·m", "continuous torque at standstill as listed, at 40 °C and 1000 m";
    LISTED_KNEE_SPEED: AngularVelocity, "listed-knee-speed", "n_k,c", "1/min", "knee speed of the motor as listed, at its rated voltage";
    LISTED_SPEED_LIMIT: AngularVelocity, "listed-speed-limit", "n_max,c", "1/min", "highest speed of the motor as listed, at its rated voltage";
    RATED_TORQUE: Torque, "rated-torque", "T_N", "N·m", "rated torque of the motor at this site";
    STANDSTILL_TORQUE: Torque, "standstill-torque", "T_0", "N·m", "continuous torque of the motor at standstill, at this site";
    RATED_SPEED: AngularVelocity, "rated-speed", "n_N", "1/min", "rated speed of the motor";
    MOTOR_PEAK_TORQUE: Torque, "motor-peak-torque", "T_pk", "N·m", "peak torque of the motor";
    KNEE_SPEED: AngularVelocity, "knee-speed", "n_k", "1/min", "speed up to which the peak torque is there at the least supply voltage";
    MOTOR_SPEED_LIMIT: AngularVelocity, "motor-speed-limit", "n_max", "1/min", "highest speed of the motor at the least supply voltage";
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
    INERTIA_RATIO_TARGET: Ratio, "inertia-ratio-target", "λ_J,w", "1", "inertia ratio that suits an axis of this acceleration";
    DRAG_TORQUE: Torque, "drag-torque", "T_d", "N·m", "drag of nut, bearings or gearbox at screw or pinion";
    PEAK_TORQUE: Torque, "peak-torque", "T_max", "N·m", "largest motor torque of any phase";
    PEAK_TORQUE_USE: Ratio, "peak-torque-use", "x_T", "1", "largest motor torque over what the motor gives at that speed, worst phase";
    TORQUE_MARGIN: Ratio, "torque-margin", "x_m", "1", "torque limit set in the drive over the largest torque of the duty";
    SET_TORQUE: Torque, "set-torque", "T_set", "N·m", "torque limit to set in the drive electronics";
    RMS_TORQUE: Torque, "rms-torque", "T_rms", "N·m", "root mean square motor torque over the duty";
    RMS_SPEED: AngularVelocity, "rms-speed", "n_rms", "1/min", "root mean square motor speed over the duty";
    CONTINUOUS_TORQUE: Torque, "continuous-torque", "T_S1", "N·m", "continuous torque of the motor at its mean duty speed";
    WINDING_HEAT: Ratio, "winding-heat", "θ_w", "1", "largest heat of the winding at the end of any phase over what it may be";
    STANDING_TORQUE: Torque, "standing-torque", "T_st", "N·m", "largest motor torque of the duty at standstill";
    SHORT_TIME: Time, "short-time", "t_S2", "min", "length of a short run from cold";
    SHORT_TIME_FACTOR: Ratio, "short-time-factor", "x_S2", "1", "torque of a short run from cold over the continuous torque, duty type S2";
    LOAD_RMS_TORQUE: Torque, "load-rms-torque", "T*_rms", "N·m", "root mean square torque of the load at screw, nut or pinion, without losses";
    LOAD_RMS_ACCELERATION: AngularAcceleration, "load-rms-acceleration", "α_rms", "rad/s²", "root mean square angular acceleration of screw, nut or pinion";
    OPTIMUM_RATIO: Ratio, "optimum-ratio", "i_opt", "1", "reduction of least root mean square motor torque, speed limits aside";
    OPTIMUM_LEAD: Length, "optimum-lead", "P_h,opt", "mm", "lead of least motor torque while accelerating, speed limits aside";
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
