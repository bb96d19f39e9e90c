//! Energy of the duty: what an hour takes, what braking gives back.
//!
//! Method: energy balance phase by phase at the motor shaft, and of one stop from full speed. Limits: the loss of holding
//! at rest is left out, as in the mean power; what is given back is only useful where the supply or another axis takes it.

use super::{Formula, Note, Series};
use crate::source::Source;
use crate::units::*;
use std::f64::consts::TAU;

const BALANCE: &[Source] = &[Source::derived("energy balance")];

/// Energy of an hour of work, J. 1.848 kW: 1.848 kWh.
pub static ENERGY_PER_HOUR: Formula<fn(Power) -> Energy> = Formula {
    note: Note {
        id: "energy-per-hour",
        title: "electrical energy of all drives of the axis in an hour of work",
        equation: "E_h = P_m·1 h",
        inputs: &[("P_m", "mean-power")],
        validity: "nothing is credited for braking; the loss of holding at rest is left out",
        sources: BALANCE,
    },
    apply: |power| Energy::of_si(power.si() * 3600.0),
};

/// Mean power that braking gives back behind motor and electronics, all drives of an axis, W.
///
/// Pass torques, speeds (both signed) and shares of all phases, travel for one turn, reduction, number of drives, and
/// efficiency. Check: −10 N·m at 0.5 m/s for a tenth of the time, 10 mm, 1, one drive, 0.85 → 267.0 W.
pub static REGENERATED_POWER: Formula<
    fn(Series<Torque>, Series<Velocity>, Series<Ratio>, Length, Ratio, Ratio, Ratio) -> Power,
> = Formula {
    note: Note {
        id: "regenerated-power",
        title: "mean power that braking gives back, all drives of the axis",
        equation: "P_r = n_d·η_e·Σ q_k·max(−T_k·2π·i·v_k/p, 0)",
        inputs: &[
            ("T_k", "torques"),
            ("v_k", "speeds"),
            ("q_k", "shares"),
            ("p", "travel-per-turn"),
            ("i", "reduction"),
            ("n_d", "drives"),
            ("η_e", "efficiency"),
        ],
        validity: "shares sum to 1; for sizing what takes it up, not credited in the energy",
        sources: BALANCE,
    },
    apply: |torques, speeds, shares, travel_per_turn, reduction, drives, efficiency| {
        let turns = TAU * reduction.si() / travel_per_turn.si();
        let mut sum = 0.0;
        for ((torque, speed), share) in torques.si().iter().zip(speeds.si()).zip(shares.si()) {
            let power = torque * speed * turns;
            sum -= if power > 0.0 { 0.0 * share } else { power * share };
        }
        Power::of_si(drives.si() * efficiency.si() * sum)
    },
};

/// Way from full speed to rest, m. 0.5 m/s, 5 m/s², 100 m/s³: 37.5 mm.
pub static SLOWING_DISTANCE: Formula<fn(Velocity, Acceleration, Jerk) -> Length> = Formula {
    note: Note {
        id: "slowing-distance",
        title: "way from full speed to rest in a usual stop",
        equation: "v·j ≥ a²: s_v = v/2·(v/a + a/j); else s_v = v·√(v/j)",
        inputs: &[("v", "speed"), ("a", "acceleration"), ("j", "jerk")],
        validity: "symmetric ramp with limited jerk",
        sources: &[Source::derived("kinematics of constant jerk")],
    },
    apply: |speed, acceleration, jerk| {
        let (v, a, j) = (speed.si(), acceleration.si(), jerk.si());
        Length::of_si(if v * j >= a * a { 0.5 * v * (v / a + a / j) } else { v * (v / j).sqrt() + 0.0 * a })
    },
};

/// Energy that one stop from full speed gives back, downward on an inclined axis, all drives, J; at least zero.
///
/// Check: 300 kg, 0.5 m/s, 60 kg·cm², 10 mm, 1, 2942 N, none balanced, 40 N, 0.5 N·m, 0.95, 0.85, 37.5 mm, one drive →
/// 359.8 J.
pub static STOP_ENERGY: Formula<
    fn(
        Mass,
        Velocity,
        MomentOfInertia,
        Length,
        Ratio,
        Force,
        Ratio,
        Force,
        Torque,
        Ratio,
        Ratio,
        Length,
        Ratio,
    ) -> Energy,
> = Formula {
    note: Note {
        id: "stop-energy",
        title: "largest energy that one stop gives back, all drives of the axis",
        equation: "E_L = m_a·v²/2 + ((1 − c_b)·F_g − F_f)·s_v; \
                   E_s = n_d·η_e·max(η_b·E_L + J_rot·(2π·i·v/p)²/2 − T_d·2π·s_v/p, 0)",
        inputs: &[
            ("m_a", "accelerated-mass"),
            ("v", "speed"),
            ("J_rot", "rotating-inertia"),
            ("p", "travel-per-turn"),
            ("i", "reduction"),
            ("F_g", "gravity-force"),
            ("c_b", "counterbalance-share"),
            ("F_f", "friction-force"),
            ("T_d", "drag-torque"),
            ("η_b", "back-efficiency"),
            ("η_e", "efficiency"),
            ("s_v", "slowing-distance"),
            ("n_d", "drives"),
        ],
        validity: "from full speed, downward where the axis is inclined; loss in the winding left out: the safe side",
        sources: BALANCE,
    },
    apply: |mass, speed, rotating, pitch, reduction, weight, balance, friction, drag, back, efficiency, way, drives| {
        let (v, s) = (speed.si(), way.si());
        let load = 0.5 * mass.si() * v * v + ((1.0 - balance.si()) * weight.si() - friction.si()) * s;
        let turning = TAU * reduction.si() * v / pitch.si();
        let shaft = back.si() * load + 0.5 * rotating.si() * turning * turning - drag.si() * TAU * s / pitch.si();
        let shaft = if shaft < 0.0 { 0.0 } else { shaft };
        Energy::of_si(drives.si() * efficiency.si() * shaft)
    },
};

/// How many periods of the first resonance the acceleration takes to build up: f_1·a/j. 40 Hz, 5 m/s², 100 m/s³: 2.
pub static JERK_PERIODS: Formula<fn(Frequency, Acceleration, Jerk) -> Ratio> = Formula {
    note: Note {
        id: "jerk-periods",
        title: "periods of the first resonance within the time that builds up the acceleration",
        equation: "x_j = f_1·a/j",
        inputs: &[("f_1", "first-mode"), ("a", "acceleration"), ("j", "jerk")],
        validity: "the full acceleration is reached",
        sources: &[Source::derived(
            "an acceleration built up in T_j leaves the amplitude (a/ω²)·|sin(π·f·T_j)/(π·f·T_j)|, zero at f·T_j = 1",
        )],
    },
    apply: |mode, acceleration, jerk| Ratio::of_si(mode.si() * acceleration.si() / jerk.si()),
};
