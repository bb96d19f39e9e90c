//! Heat: growth of a length, drag heat, warming of a turning screw.
//!
//! Method: linear expansion; drag torque times speed; convection of a turning cylinder; the screw as a fin that is
//! heated evenly where the nut travels. Limits: warming is an estimate of ±50 % because conduction into nut and bearings
//! is left out.

use super::constants::STEEL_DENSITY;
use super::{Formula, Note};
use crate::source::Source;
use crate::units::{
    AngularVelocity, Expansion, HeatTransfer, Length, Measure, Power, TemperatureInterval, Time, Torque, Velocity,
};
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

/// Conductivity of a ball screw steel, W/(m·K) (bearing steel 40 to 47, from memory).
const STEEL_CONDUCTIVITY: f64 = 45.0;
/// Heat capacity of steel, J/(kg·K) (from memory).
const STEEL_HEAT_CAPACITY: f64 = 460.0;

/// Heat transfer from a bar that turns in air, W/(m²·K).
///
/// Pass nominal diameter and mean speed of the bar; one that stands has the still-air value of 10.
/// Check: 32 mm, 1500 1/min → 45.6 W/(m²·K).
pub static HEAT_TRANSFER: Formula<fn(Length, AngularVelocity) -> HeatTransfer> = Formula {
    note: Note {
        id: "heat-transfer",
        title: "heat transfer from the screw to the air",
        equation: "h = Nu·k_air/d_0 and at least 10 W/(m²·K), Nu = 0.133·Re^(2/3)·Pr^(1/3), Re = ω·d_0²/ν_air",
        inputs: &[("d_0", "nominal-diameter"), ("ω", "screw-mean-speed")],
        validity: "air near 27 °C; still air with radiation is the floor: an estimate of ±50 %",
        sources: &[
            Source::memory("Nusselt number of a turning cylinder as used in thermal models of machine tools"),
            Source::practice("10 W/(m²·K) in still air with radiation"),
        ],
    },
    apply: heat_transfer,
};

/// See [`HEAT_TRANSFER`].
#[inline]
pub fn heat_transfer(nominal_diameter: Length, screw_mean_speed: AngularVelocity) -> HeatTransfer {
    HeatTransfer::of_si(convection(nominal_diameter.si(), screw_mean_speed.si()))
}

/// Heat transfer of a cylinder turning in air, W/(m²·K).
#[inline]
fn convection(diameter: f64, speed: f64) -> f64 {
    let reynolds = speed.abs() * diameter * diameter / AIR_VISCOSITY;
    let nusselt = 0.133 * (reynolds * reynolds * AIR_PRANDTL).cbrt();
    let turning = nusselt * AIR_CONDUCTIVITY / diameter;
    if turning < STILL_AIR { STILL_AIR } else { turning }
}

/// Length over which heat runs along a screw before the air takes it, m.
///
/// Pass nominal diameter, bore and heat transfer. Check: 40 mm, no bore, 20 W/(m²·K) → 150 mm.
pub static FIN_LENGTH: Formula<fn(Length, Length, HeatTransfer) -> Length> = Formula {
    note: Note {
        id: "fin-length",
        title: "length over which heat runs along the screw",
        equation: "l_f = √(λ_s·(d_0² − d_h²)/(4·d_0·h)), λ_s = 45 W/(m·K)",
        inputs: &[("d_0", "nominal-diameter"), ("d_h", "bore"), ("h", "heat-transfer")],
        validity: "steel; heat leaves by the outside alone",
        sources: &[Source::derived("bar that conducts along and sheds heat across, a fin")],
    },
    apply: fin_length,
};

/// See [`FIN_LENGTH`].
#[inline]
pub fn fin_length(nominal_diameter: Length, bore: Length, heat_transfer: HeatTransfer) -> Length {
    let (d, b) = (nominal_diameter.si(), bore.si());
    Length::of_si((STEEL_CONDUCTIVITY * (d * d - b * b) / (4.0 * d * heat_transfer.si())).sqrt())
}

/// Mean warming of a screw over its whole free length once steady, K.
///
/// Pass mean heat, nominal diameter, free length and heat transfer. Check: 125.66 W, 32 mm, 1 m, 45 W/(m²·K) → 27.8 K.
pub static LENGTH_WARMING: Formula<fn(Power, Length, Length, HeatTransfer) -> TemperatureInterval> = Formula {
    note: Note {
        id: "length-warming",
        title: "mean warming of the screw over its free length",
        equation: "ΔT_L = P/(h·π·d_0·L)",
        inputs: &[("P", "heat"), ("d_0", "nominal-diameter"), ("L", "free-length"), ("h", "heat-transfer")],
        validity: "steady state, none conducted into the ends: an estimate of ±50 %",
        sources: &[Source::derived("all heat leaves by the surface of the free length")],
    },
    apply: length_warming,
};

/// See [`LENGTH_WARMING`].
#[inline]
pub fn length_warming(
    heat: Power,
    nominal_diameter: Length,
    free_length: Length,
    heat_transfer: HeatTransfer,
) -> TemperatureInterval {
    TemperatureInterval::of_si(heat.si() / (heat_transfer.si() * PI * nominal_diameter.si() * free_length.si()))
}

/// Mean warming of the zone that the nut travels, over the surroundings, once steady, K.
///
/// Pass mean heat, nominal diameter, stroke, heat transfer, fin length and the mean warming over the free length, which
/// it is never below. Check: 125.66 W, 32 mm, 0.6 m, 45 W/(m²·K), 89.4 mm → 39.4 K.
pub static SCREW_WARMING: Formula<
    fn(Power, Length, Length, HeatTransfer, Length, TemperatureInterval) -> TemperatureInterval,
> = Formula {
    note: Note {
        id: "screw-warming",
        title: "warming of the travelled zone of the screw over its surroundings",
        equation: "ΔT_s = max(ΔT_L, P/(h·π·d_0·s)·(1 − l_f/s·(1 − e^(−s/l_f))))",
        inputs: &[
            ("P", "heat"),
            ("d_0", "nominal-diameter"),
            ("s", "stroke"),
            ("h", "heat-transfer"),
            ("l_f", "fin-length"),
            ("ΔT_L", "length-warming"),
        ],
        validity: "steady state; heat enters evenly over the stroke and runs off into the screw on both sides; none \
                   conducted into nut and bearings: an estimate of ±50 %",
        sources: &[Source::derived("long bar heated evenly over a zone; checked by finite differences")],
    },
    apply: screw_warming,
};

/// See [`SCREW_WARMING`].
#[inline]
pub fn screw_warming(
    heat: Power,
    nominal_diameter: Length,
    stroke: Length,
    heat_transfer: HeatTransfer,
    fin_length: Length,
    length_warming: TemperatureInterval,
) -> TemperatureInterval {
    let (fin, reach) = (fin_length.si(), stroke.si() / fin_length.si());
    // (1 − (1 − e^(−y))/y)/y, which goes to one half for a short stroke
    let share = if reach < 1e-3 { 0.5 - reach / 6.0 } else { (1.0 + (-reach).exp_m1() / reach) / reach };
    let zone = heat.si() / (heat_transfer.si() * PI * nominal_diameter.si() * fin) * share;
    let whole = length_warming.si();
    TemperatureInterval::of_si(if whole > zone || whole.is_nan() { whole } else { zone })
}

/// Time in which a screw gets near its steady temperature, s.
///
/// Pass nominal diameter, bore and heat transfer. Check: 32 mm, no bore, 44.9 W/(m²·K) → 643 s.
pub static WARMING_TIME: Formula<fn(Length, Length, HeatTransfer) -> Time> = Formula {
    note: Note {
        id: "warming-time",
        title: "time constant of the warming of the screw",
        equation: "τ = ρ·c·(d_0² − d_h²)/(4·d_0·h), c = 460 J/(kg·K)",
        inputs: &[("d_0", "nominal-diameter"), ("d_h", "bore"), ("h", "heat-transfer")],
        validity: "63 % of the steady warming after it, 95 % after three times as long; conduction neglected",
        sources: &[Source::derived("heat capacity over heat transfer of a round bar")],
    },
    apply: warming_time,
};

/// See [`WARMING_TIME`].
#[inline]
pub fn warming_time(nominal_diameter: Length, bore: Length, heat_transfer: HeatTransfer) -> Time {
    let (d, b) = (nominal_diameter.si(), bore.si());
    Time::of_si(STEEL_DENSITY * STEEL_HEAT_CAPACITY * (d * d - b * b) / (4.0 * d * heat_transfer.si()))
}
