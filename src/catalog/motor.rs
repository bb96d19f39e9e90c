//! Servo motors, linear scales, tables of corrections, and the prices and hours that belong to no single part.

use super::part::{Accept::*, parts};
use crate::units::*;

parts! {
    /// A synchronous servo motor with encoder, its drive electronics, and a holding brake if any.
    ServoMotor, "servo-motor", servo_motors {
        /// Name of the size; the same with and without brake.
        size: String, "text", Words;
        /// Nominal supply voltage for which knee speed and highest speed hold.
        rated_voltage: Voltage, "V", Positive;
        /// Highest nominal supply voltage of the drive electronics.
        voltage_limit: Voltage, "V", Positive;
        /// Rated power.
        rated_power: Power, "kW", Positive;
        /// Rated torque.
        rated_torque: Torque, "N·m", Positive;
        /// Continuous torque at standstill.
        standstill_torque: Torque, "N·m", Positive;
        /// Rated speed.
        rated_speed: AngularVelocity, "1/min", Positive;
        /// Peak torque.
        peak_torque: Torque, "N·m", Positive;
        /// Speed up to which the peak torque is there.
        knee_speed: AngularVelocity, "1/min", Positive;
        /// Whether it keeps its power above knee and rated speed.
        field_weakening: bool, "flag", Any;
        /// Highest speed; without field weakening the speed where no torque is left.
        speed_limit: AngularVelocity, "1/min", Positive;
        /// Temperature that the winding may have: 40 °C and the rise of its thermal class.
        winding_temperature: CelsiusTemperature, "°C", Positive;
        /// Thermal time constant of the winding.
        winding_time: Time, "s", Positive;
        /// Thermal time constant of the frame.
        frame_time: Time, "min", Positive;
        /// Radial force that the shaft end bears at rated speed.
        radial_limit: Force, "N", Positive;
        /// Moment of inertia of the rotor, with the brake if any.
        inertia: MomentOfInertia, "kg·cm²", Positive;
        /// Rated torque of the holding brake; absent without one.
        brake_torque: Option<Torque>, "N·m", Positive;
        /// Energy that the brake takes up in one emergency stop; absent without a brake.
        brake_energy: Option<Energy>, "J", Positive;
        /// Energy that the brake takes up in emergency stops over its life; absent without a brake.
        brake_life_energy: Option<Energy>, "kJ", Positive;
        /// Mass, with the brake if any.
        mass: Mass, "kg", Positive;
        /// Energy that the direct-voltage bus of the drive electronics takes up above its usual voltage.
        bus_energy: Energy, "J", Positive;
        /// Energy that the brake resistor of the drive electronics takes up in one stop.
        resistor_energy: Energy, "J", NotNegative;
        /// Mean power that the brake resistor takes up; zero without one.
        resistor_power: Power, "W", NotNegative;
        /// Price of the motor, with the brake if any.
        price: Money, "nu", Price;
        /// Price of the drive electronics.
        drive_price: Money, "nu", Price;
        /// Encoder counts for one turn.
        encoder_counts: Ratio, "1", Positive;
    }

    /// A linear scale.
    LinearScale, "linear-scale", linear_scales {
        /// Full width of the error band over one metre, for each metre.
        error_per_metre: Ratio, "µm/m", Positive;
        /// Least full width of the error band, however short the travel.
        least_error: Length, "µm", Positive;
        /// Longest measuring length.
        length_limit: Length, "m", Positive;
        /// Highest speed.
        speed_limit: Velocity, "m/s", Positive;
        /// Resolution.
        resolution: Length, "µm", Positive;
        /// Coefficient of thermal expansion.
        expansion: Expansion, "µm/(m·K)", Positive;
        /// Price without its length.
        price_fixed: Money, "nu", Price;
        /// Price of a metre.
        price_per_metre: Money, "nu", Price;
    }

    /// A table of corrections in the control, made from a measurement of the axis.
    ErrorTable, "error-table", error_tables {
        /// Part of a mapped error that is left between the points of the table.
        residual_share: Ratio, "1", Share;
        /// Uncertainty of the measurement (k = 2), whatever the length.
        uncertainty: Length, "µm", NotNegative;
        /// Uncertainty of the measurement (k = 2), for each metre.
        uncertainty_per_metre: Ratio, "µm/m", NotNegative;
        /// Drift from one measurement to the next.
        drift: Length, "µm", NotNegative;
        /// Distance of its points; errors that repeat within twice of it are not mapped.
        spacing: Length, "mm", Positive;
        /// Measuring and entering, whatever the length.
        price_fixed: Money, "nu", Price;
        /// Measuring and entering, for each metre.
        price_per_metre: Money, "nu", Price;
    }

    /// Prices and hours that belong to no single part.
    PriceBasis, "price-basis", prices {
        /// Rolled screw of grade 7 and 32 mm: nut and preparation.
        screw_base: Money, "nu", Positive;
        /// Rolled screw of grade 7 and 32 mm: one metre of thread.
        screw_per_metre: Money, "nu", Positive;
        /// Machining of both ends of a screw of 32 mm.
        screw_ends: Money, "nu", Positive;
        /// Clamp for one end of a standing screw of 32 mm.
        screw_clamp: Money, "nu", Positive;
        /// Radial bearing at the supported end, over the price of a bearing pair of the same bore.
        support_price_share: Ratio, "1", Share;
        /// Pinion: what does not depend on its size.
        pinion_base: Money, "nu", Positive;
        /// Pinion, surface-hardened and ground, of module 1 mm and 20 teeth: what grows with its size.
        pinion_factor: Money, "nu", Positive;
        /// The same for a pinion whose steel is not surface-hardened.
        pinion_soft_factor: Money, "nu", Positive;
        /// Fitting a screw drive: hours whatever its length.
        screw_fitting_hours: Time, "h", NotNegative;
        /// Fitting a screw drive: hours for each metre.
        screw_fitting_hours_per_metre: Time, "h", NotNegative;
        /// Fitting a rack drive: hours whatever its length.
        rack_fitting_hours: Time, "h", NotNegative;
        /// Fitting a rack drive: hours for each metre.
        rack_fitting_hours_per_metre: Time, "h", NotNegative;
        /// One hour of labour.
        labour_rate: Money, "nu", Positive;
        /// Machining the datum of a screw drive, for each metre.
        screw_datum_per_metre: Money, "nu", NotNegative;
        /// Machining the datum of a rack drive, for each metre.
        rack_datum_per_metre: Money, "nu", NotNegative;
        /// Upkeep of a screw drive: hours a year whatever its length.
        screw_upkeep_hours: Time, "h", NotNegative;
        /// Upkeep of a screw drive: hours a year for each metre.
        screw_upkeep_hours_per_metre: Time, "h", NotNegative;
        /// Upkeep of a rack drive: hours a year whatever its length.
        rack_upkeep_hours: Time, "h", NotNegative;
        /// Upkeep of a rack drive: hours a year for each metre.
        rack_upkeep_hours_per_metre: Time, "h", NotNegative;
        /// Lubricant of a screw drive, a year.
        screw_lubricant: Money, "nu", NotNegative;
        /// Lubricant of a rack drive, a year.
        rack_lubricant: Money, "nu", NotNegative;
        /// Covers and wipers of one drive where the brief names no surroundings, for each metre of travel.
        cover_per_metre: Money, "nu", NotNegative;
        /// Efficiency of motor and drive electronics together, supply to shaft.
        drive_efficiency: Ratio, "1", Share;
    }
}
