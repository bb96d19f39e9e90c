//! What supply and site leave of a motor: speeds by the voltage, continuous torque by altitude and warmth.
//!
//! Method: the speeds at which the voltage of a motor is used up go with the supply; what a motor gives off as heat goes
//! with the air around it. Limits: a supply above the rated one and a site better than the rated one are not credited.

use super::{Formula, Note};
use crate::source::Source;
use crate::units::*;

/// Ambient temperature for which motors are rated, °C.
const RATED_AMBIENT: f64 = 40.0;
/// Altitude up to which motors are rated, m.
const RATED_ALTITUDE: f64 = 1000.0;
/// Loss of continuous torque for each metre above it.
const LOSS_PER_METRE: f64 = 0.01 / 100.0;

#[inline]
fn at_most_one(value: f64) -> f64 {
    if value > 1.0 { 1.0 } else { value }
}

/// Least supply over the voltage for which a motor is rated, at most 1. 400 V − 10 % of 400 V: 0.9.
pub static VOLTAGE_FACTOR: Formula<fn(Voltage, Ratio, Voltage) -> Ratio> = Formula {
    note: Note {
        id: "voltage-factor",
        title: "least supply voltage over the rated voltage of the motor",
        equation: "x_U = min(1, U·(1 − δ_U)/U_N)",
        inputs: &[("U", "supply-voltage"), ("δ_U", "supply-tolerance"), ("U_N", "rated-voltage")],
        validity: "a supply above the rated voltage is not credited: the bearings and the rotor limit the speed as well",
        sources: &[Source::derived("the direct voltage behind a rectifier goes with the supply")],
    },
    apply: |supply, tolerance, rated| Ratio::of_si(at_most_one(supply.si() * (1.0 - tolerance.si()) / rated.si())),
};

/// A speed at which the voltage is used up, at another voltage. 2500 1/min × 0.9: 2250 1/min.
pub static SPEED_AT_VOLTAGE: Formula<fn(AngularVelocity, Ratio) -> AngularVelocity> = Formula {
    note: Note {
        id: "speed-at-voltage",
        title: "knee or limit speed at the least supply voltage",
        equation: "n = x_U·n_U",
        inputs: &[("n_U", "rated-speed"), ("x_U", "voltage-factor")],
        validity: "the voltage induced in the winding is most of the voltage; the drop over its resistance is left out",
        sources: &[Source::derived("induced voltage goes with the speed")],
    },
    apply: |speed, factor| AngularVelocity::of_si(speed.si() * factor.si()),
};

/// Part of the continuous torque that is left at this altitude and ambient temperature.
///
/// Pass altitude, ambient temperature, and the permissible temperature of the winding. No credit below 1000 m and 40 °C.
/// Check: 2000 m, 50 °C, 145 °C → 0.9·√(95/105) = 0.8561.
pub static SITE_FACTOR: Formula<fn(Length, CelsiusTemperature, CelsiusTemperature) -> Ratio> = Formula {
    note: Note {
        id: "site-factor",
        title: "part of the continuous torque that altitude and ambient temperature leave",
        equation: "x_S = (1 − 0.01·max(0, h − 1000 m)/100 m)·min(1, √((ϑ_w − ϑ_a)/(ϑ_w − 40 °C)))",
        inputs: &[("h", "altitude"), ("ϑ_a", "ambient-temperature"), ("ϑ_w", "winding-temperature")],
        validity: "up to 4000 m; cooling by the air around; not above zero where the air is as warm as the winding may be",
        sources: &[
            Source::memory("IEC 60034-1, rated site: at most 1000 m and 40 °C"),
            Source::practice("1 % less continuous torque for each 100 m above 1000 m"),
            Source::derived("heat of the winding goes with the square of the torque and with its rise over the air"),
        ],
    },
    apply: |altitude, ambient, winding| {
        let above = altitude.si() - RATED_ALTITUDE;
        let thin = 1.0 - LOSS_PER_METRE * if above < 0.0 { 0.0 } else { above };
        let rise = (winding.si() - ambient.si()) / (winding.si() - RATED_AMBIENT);
        Ratio::of_si(thin * at_most_one(if rise < 0.0 { 0.0 } else { rise.sqrt() }))
    },
};

/// A continuous torque at this site. 20 N·m × 0.9: 18 N·m.
pub static TORQUE_AT_SITE: Formula<fn(Torque, Ratio) -> Torque> = Formula {
    note: Note {
        id: "torque-at-site",
        title: "continuous torque at this altitude and ambient temperature",
        equation: "T = x_S·T_r",
        inputs: &[("T_r", "rated-torque"), ("x_S", "site-factor")],
        validity: "torque goes with the current; a winding without saturation",
        sources: &[Source::derived("definition of the factor")],
    },
    apply: |torque, factor| Torque::of_si(torque.si() * factor.si()),
};
