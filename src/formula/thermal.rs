//! Heat: growth of a length, drag heat, warming of a turning screw.
//!
//! Method: linear expansion; drag torque times speed; convection of a turning cylinder. Limits: warming is an
//! estimate of ±50 % because conduction into nut and bearings is left out.

use super::{Formula, Note};
use crate::source::Source;
use crate::units::{AngularVelocity, Expansion, Length, Measure, Power, TemperatureInterval, Torque, Velocity};
use std::f64::consts::{PI, TAU};

/// Growth of a length, m.
///
/// Pass length, rise of temperature and coefficient of expansion. Check: 1 m, 10 K, 11.5 µm/(m·K) → 115 µm.
pub static THERMAL_GROWTH: Formula<fn(Length, TemperatureInterval, Expansion) -> Length> = Formula {
    note: Note {
        id: "thermal-growth",
        title: "growth of a length by temperature",
        equation: "ΔL = α·L·ΔT",
        inputs: &[("L", "length"), ("ΔT", "temperature-rise"), ("α", "expansion")],
        validity: "free to grow, temperature the same along the length",
        sources: &[Source::derived("definition of the coefficient of expansion")],
    },
    apply: thermal_growth,
};

/// See [`THERMAL_GROWTH`].
#[inline]
pub fn thermal_growth(length: Length, temperature_rise: TemperatureInterval, expansion: Expansion) -> Length {
    Length::of_si(expansion.si() * length.si() * temperature_rise.si())
}

/// Mean heat from a drag torque, W.
///
/// Pass drag torque, mean speed and travel for one turn. Check: 0.8 N·m, 15 m/min, 10 mm → 125.66 W.
pub static HEAT_FLOW: Formula<fn(Torque, Velocity, Length) -> Power> = Formula {
    note: Note {
        id: "heat-flow",
        title: "mean heat from a drag torque",
        equation: "P = T_d·2π·v_m/p",
        inputs: &[("T_d", "drag-torque"), ("v_m", "mean-speed"), ("p", "travel-per-turn")],
        validity: "everywhere",
        sources: &[Source::derived("power is torque times angular speed")],
    },
    apply: heat_flow,
};

/// See [`HEAT_FLOW`].
#[inline]
pub fn heat_flow(drag_torque: Torque, mean_speed: Velocity, travel_per_turn: Length) -> Power {
    Power::of_si(drag_torque.si() * TAU * mean_speed.si() / travel_per_turn.si())
}

/// Kinematic viscosity of air at 300 K, m²/s (Incropera and DeWitt, from memory).
const AIR_VISCOSITY: f64 = 15.89e-6;
/// Thermal conductivity of air at 300 K, W/(m·K) (same source).
const AIR_CONDUCTIVITY: f64 = 0.0263;
/// Prandtl number of air at 300 K (same source).
const AIR_PRANDTL: f64 = 0.707;
/// Heat transfer of a bar in still air with radiation, W/(m²·K) (common practice, no source).
const STILL_AIR: f64 = 10.0;

/// Warming of a screw over its surroundings once steady, K.
///
/// Pass mean heat, nominal diameter, travel over which the heat is spread, and mean speed of the screw.
/// Check: 125.66 W, 32 mm, 0.6 m, 1500 1/min → 46 K.
pub static SCREW_WARMING: Formula<fn(Power, Length, Length, AngularVelocity) -> TemperatureInterval> = Formula {
    note: Note {
        id: "screw-warming",
        title: "warming of the screw over its surroundings",
        equation: "ΔT = P/(h·π·d_0·s), h = Nu·k_air/d_0 and at least 10 W/(m²·K), Nu = 0.133·Re^(2/3)·Pr^(1/3), \
                   Re = ω·d_0²/ν_air",
        inputs: &[("P", "heat"), ("d_0", "nominal-diameter"), ("s", "travel"), ("ω", "screw-mean-speed")],
        validity: "steady state, heat spread over the travel, none conducted away: an estimate of ±50 %",
        sources: &[Source::memory("Nusselt number of a turning cylinder as used in thermal models of machine tools")],
    },
    apply: screw_warming,
};

/// See [`SCREW_WARMING`].
#[inline]
pub fn screw_warming(
    heat: Power,
    nominal_diameter: Length,
    travel: Length,
    screw_mean_speed: AngularVelocity,
) -> TemperatureInterval {
    let d = nominal_diameter.si();
    let transfer = convection(d, screw_mean_speed.si());
    TemperatureInterval::of_si(heat.si() / (transfer * PI * d * travel.si()))
}

/// Heat transfer of a cylinder turning in air, W/(m²·K).
#[inline]
fn convection(diameter: f64, speed: f64) -> f64 {
    let reynolds = speed.abs() * diameter * diameter / AIR_VISCOSITY;
    let nusselt = 0.133 * (reynolds * reynolds * AIR_PRANDTL).cbrt();
    let turning = nusselt * AIR_CONDUCTIVITY / diameter;
    if turning < STILL_AIR { STILL_AIR } else { turning }
}
