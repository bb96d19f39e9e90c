//! The motor over the duty: torque of a phase, torque it can give, mean values, power.
//!
//! Method: efficiency acts on transmitted power only, decided phase by phase: it divides while the motor
//! drives and multiplies while the load drives; inertia of turning parts is never divided by efficiency.
//! Limits: speeds of phases are means with their direction; lists of unequal length are read to the shorter.

use super::duty::largest;
use super::{Formula, Note, Series};
use crate::source::Source;
use crate::units::{
    Acceleration, AngularVelocity, Force, Length, Measure, MomentOfInertia, Power, Ratio, Torque, Velocity,
};
use std::f64::consts::TAU;

/// Largest use of the peak torque that is told.
pub const MOST_USE: f64 = 1e6;

/// Torque at the motor in one phase, N·m, positive upward or forward.
///
/// Pass the force on the drive, the mean speed and acceleration with their signs, travel for one turn,
/// reduction, efficiency from motor to slide while driving and while the load drives, drag torque at screw or
/// pinion, and all turning inertia at the motor. At rest neither efficiency nor drag counts.
/// Check: 3 kN, +0.5 m/s, no acceleration, 10 mm, 1, 0.95, 0.947, 0.5 N·m → 5.526 N·m.
pub static PHASE_TORQUE: Formula<
    fn(Force, Velocity, Acceleration, Length, Ratio, Ratio, Ratio, Torque, MomentOfInertia) -> Torque,
> = Formula {
    note: Note {
        id: "phase-torque",
        title: "torque at the motor in one phase",
        equation: "F·v > 0: T_F = F·p/(2π·i·η); F·v < 0: T_F = F·p·η_b/(2π·i); v = 0: T_F = F·p/(2π·i); \
                   T = T_F + sign(v)·T_d/i + J_rot·a·2π·i/p",
        inputs: &[
            ("F", "force"),
            ("v", "speed"),
            ("a", "acceleration"),
            ("p", "travel-per-turn"),
            ("i", "reduction"),
            ("η", "efficiency"),
            ("η_b", "back-efficiency"),
            ("T_d", "drag-torque"),
            ("J_rot", "rotating-inertia"),
        ],
        validity: "rigid drive; at rest no friction is credited",
        sources: &[Source::derived("energy balance; Newton's second law for the turning parts")],
    },
    apply: phase_torque,
};

/// See [`PHASE_TORQUE`].
#[inline]
pub fn phase_torque(
    force: Force,
    speed: Velocity,
    acceleration: Acceleration,
    travel_per_turn: Length,
    reduction: Ratio,
    efficiency: Ratio,
    back_efficiency: Ratio,
    drag_torque: Torque,
    rotating_inertia: MomentOfInertia,
) -> Torque {
    let (force, speed) = (force.si(), speed.si());
    let arm = travel_per_turn.si() / (TAU * reduction.si());
    let power = force * speed;
    let transmitted = if speed == 0.0 {
        force * arm
    } else if power >= 0.0 {
        force * arm / efficiency.si()
    } else {
        force * arm * back_efficiency.si() + 0.0 * power
    };
    let drag = if speed == 0.0 { 0.0 } else { speed.signum() * drag_torque.si() / reduction.si() };
    Torque::of_si(transmitted + drag + rotating_inertia.si() * acceleration.si() / arm)
}

/// Largest torque of any phase without its sign, N·m; no phase gives zero.
///
/// Pass the torques of all phases. Check: 3, −4, 1 N·m → 4 N·m.
pub static PEAK_TORQUE: Formula<fn(Series<Torque>) -> Torque> = Formula {
    note: Note {
        id: "peak-torque",
        title: "largest torque of any phase",
        equation: "T_max = max |T_k|",
        inputs: &[("T_k", "torques")],
        validity: "everywhere",
        sources: &[Source::derived("definition")],
    },
    apply: peak_torque,
};

/// See [`PEAK_TORQUE`].
#[inline(always)]
pub fn peak_torque(torques: Series<Torque>) -> Torque {
    Torque::of_si(largest(torques.si()))
}

const VOLTAGE: Source =
    Source::derived("voltage balance of a synchronous motor without field weakening, taken as a straight line");

/// Peak torque that a motor can give at a speed, N·m; zero at and beyond its speed limit.
///
/// Pass speed, peak torque, knee speed and speed limit. Check: 3500 1/min, 60 N·m, 2500, 4500 → 30 N·m.
pub static AVAILABLE_PEAK_TORQUE: Formula<fn(AngularVelocity, Torque, AngularVelocity, AngularVelocity) -> Torque> =
    Formula {
        note: Note {
            id: "available-peak-torque",
            title: "peak torque of the motor at a speed",
            equation: "|n| ≤ n_k: T = T_pk; n_k < |n| < n_max: T = T_pk·(n_max − |n|)/(n_max − n_k); else T = 0",
            inputs: &[("n", "speed"), ("T_pk", "peak-torque"), ("n_k", "knee-speed"), ("n_max", "speed-limit")],
            validity: "straight voltage line from knee speed to speed limit, no field weakening: the safe side",
            sources: &[VOLTAGE],
        },
        apply: available_peak_torque,
    };

/// See [`AVAILABLE_PEAK_TORQUE`].
#[inline]
pub fn available_peak_torque(
    speed: AngularVelocity,
    peak: Torque,
    knee: AngularVelocity,
    limit: AngularVelocity,
) -> Torque {
    Torque::of_si(available(speed.si().abs(), peak.si(), knee.si(), limit.si()))
}

#[inline(always)]
fn available(speed: f64, peak: f64, knee: f64, limit: f64) -> f64 {
    if speed <= knee {
        peak + 0.0 * limit
    } else if speed >= limit {
        0.0
    } else {
        peak * (limit - speed) / (limit - knee)
    }
}

/// Largest motor torque over what the motor gives at that speed, 1, worst phase.
///
/// Pass torques and top speeds of all phases, travel for one turn, reduction, peak torque, knee speed and
/// speed limit. A phase that needs torque where there is none gives 10⁶.
/// Check: 15 N·m at the knee and 15 N·m at 3500 1/min of a 60 N·m, 2500/4500 1/min motor → 0.5.
pub static PEAK_TORQUE_USE: Formula<
    fn(Series<Torque>, Series<Velocity>, Length, Ratio, Torque, AngularVelocity, AngularVelocity) -> Ratio,
> = Formula {
    note: Note {
        id: "peak-torque-use",
        title: "largest motor torque over what the motor gives at that speed",
        equation: "x_T = max |T_k|/T_pk(i·v̂_k/p)",
        inputs: &[
            ("T_k", "torques"),
            ("v̂_k", "top-speeds"),
            ("p", "travel-per-turn"),
            ("i", "reduction"),
            ("T_pk", "peak-torque"),
            ("n_k", "knee-speed"),
            ("n_max", "speed-limit"),
        ],
        validity: "a phase that needs torque where the motor gives none counts 10⁶",
        sources: &[VOLTAGE],
    },
    apply: peak_torque_use,
};

/// See [`PEAK_TORQUE_USE`].
#[inline(always)]
pub fn peak_torque_use(
    torques: Series<Torque>,
    top_speeds: Series<Velocity>,
    travel_per_turn: Length,
    reduction: Ratio,
    peak: Torque,
    knee: AngularVelocity,
    limit: AngularVelocity,
) -> Ratio {
    let turns = TAU * reduction.si() / travel_per_turn.si();
    let (peak, knee, limit) = (peak.si(), knee.si(), limit.si());
    let mut most = 0.0;
    for (torque, speed) in torques.si().iter().zip(top_speeds.si()) {
        let there = available((speed * turns).abs(), peak, knee, limit);
        let share = if *torque == 0.0 { 0.0 * there } else { torque.abs() / there };
        let share = if share > MOST_USE { MOST_USE } else { share };
        if share > most || share.is_nan() {
            most = share;
        }
    }
    Ratio::of_si(most)
}

/// Root mean square torque over the duty, N·m; shares that sum to zero give zero.
///
/// Pass the torques of all phases, standstill included, and their shares of time.
/// Check: 3 and 4 N·m, half of the time each → 3.5355 N·m.
pub static RMS_TORQUE: Formula<fn(Series<Torque>, Series<Ratio>) -> Torque> = Formula {
    note: Note {
        id: "rms-torque",
        title: "root mean square torque",
        equation: "T_rms = √(Σ T_k²·q_k / Σ q_k)",
        inputs: &[("T_k", "torques"), ("q_k", "shares")],
        validity: "cycles shorter than the thermal time of the winding; standstill and holding torque counted",
        sources: &[Source::derived("copper loss grows with the square of torque")],
    },
    apply: rms_torque,
};

/// See [`RMS_TORQUE`].
#[inline(always)]
pub fn rms_torque(torques: Series<Torque>, shares: Series<Ratio>) -> Torque {
    Torque::of_si(root_mean_square(torques.si(), shares.si()))
}

#[inline(always)]
fn root_mean_square(values: &[f64], weights: &[f64]) -> f64 {
    let (mut sum, mut total) = (0.0, 0.0);
    for (value, weight) in values.iter().zip(weights) {
        sum += value * value * weight;
        total += weight;
    }
    if total == 0.0 { 0.0 * sum } else { (sum / total).sqrt() }
}

/// Root mean square speed of the motor over the duty, rad/s; shares that sum to zero give zero.
///
/// Pass mean speeds and shares of all phases, travel for one turn, and reduction.
/// Check: 0.3 and 0.4 m/s, half of the time each, 10 mm, 1 → 2121 1/min.
pub static RMS_SPEED: Formula<fn(Series<Velocity>, Series<Ratio>, Length, Ratio) -> AngularVelocity> = Formula {
    note: Note {
        id: "rms-speed",
        title: "root mean square motor speed",
        equation: "n_rms = i/p·√(Σ v_k²·q_k / Σ q_k)",
        inputs: &[("v_k", "speeds"), ("q_k", "shares"), ("p", "travel-per-turn"), ("i", "reduction")],
        validity: "speeds are the means of their phases",
        sources: &[Source::derived("iron loss taken to grow with the square of speed")],
    },
    apply: rms_speed,
};

/// See [`RMS_SPEED`].
#[inline(always)]
pub fn rms_speed(
    speeds: Series<Velocity>,
    shares: Series<Ratio>,
    travel_per_turn: Length,
    reduction: Ratio,
) -> AngularVelocity {
    let turns = TAU * reduction.si() / travel_per_turn.si();
    AngularVelocity::of_si(turns * root_mean_square(speeds.si(), shares.si()))
}

/// Torque that a motor gives continuously at a speed, N·m.
///
/// Pass speed, standstill torque, rated torque and rated speed. Above rated speed the power stays.
/// Check: 2000 1/min, 20 N·m, 16 N·m, 3000 1/min → 18.33 N·m.
pub static CONTINUOUS_TORQUE: Formula<fn(AngularVelocity, Torque, Torque, AngularVelocity) -> Torque> = Formula {
    note: Note {
        id: "continuous-torque",
        title: "continuous torque of the motor at a speed",
        equation: "|n| ≤ n_N: T = √(T_0² − (T_0² − T_N²)·(n/n_N)²); else T = T_N·n_N/|n|",
        inputs: &[("n", "speed"), ("T_0", "standstill-torque"), ("T_N", "rated-torque"), ("n_N", "rated-speed")],
        validity: "copper and iron loss shared as at rated speed; above it constant power",
        sources: &[Source::derived("loss balance between standstill and rated speed")],
    },
    apply: continuous_torque,
};

/// See [`CONTINUOUS_TORQUE`].
#[inline]
pub fn continuous_torque(
    speed: AngularVelocity,
    standstill: Torque,
    rated: Torque,
    rated_speed: AngularVelocity,
) -> Torque {
    let (n, t0, tn, nn) = (speed.si().abs(), standstill.si(), rated.si(), rated_speed.si());
    Torque::of_si(if n > nn { tn * nn / n } else { (t0 * t0 - (t0 * t0 - tn * tn) * (n / nn).powi(2)).sqrt() })
}

/// Largest mechanical power of all drives of an axis, W, driving or braking.
///
/// Pass torques and top speeds of all phases, travel for one turn, reduction, and number of drives.
/// Check: 10 N·m at 0.5 m/s, 10 mm, 1, two drives → 6.283 kW.
pub static PEAK_POWER: Formula<fn(Series<Torque>, Series<Velocity>, Length, Ratio, Ratio) -> Power> = Formula {
    note: Note {
        id: "peak-power",
        title: "largest mechanical power of all drives of the axis",
        equation: "P_max = n_d·max |T_k·2π·i·v̂_k/p|",
        inputs: &[
            ("T_k", "torques"),
            ("v̂_k", "top-speeds"),
            ("p", "travel-per-turn"),
            ("i", "reduction"),
            ("n_d", "drives"),
        ],
        validity: "all drives peak together; braking power counts like driving power",
        sources: &[Source::derived("power is torque times angular speed")],
    },
    apply: peak_power,
};

/// See [`PEAK_POWER`].
#[inline(always)]
pub fn peak_power(
    torques: Series<Torque>,
    top_speeds: Series<Velocity>,
    travel_per_turn: Length,
    reduction: Ratio,
    drives: Ratio,
) -> Power {
    let turns = TAU * reduction.si() / travel_per_turn.si();
    let mut most = 0.0;
    for (torque, speed) in torques.si().iter().zip(top_speeds.si()) {
        let power = (torque * speed * turns).abs();
        if power > most || power.is_nan() {
            most = power;
        }
    }
    Power::of_si(drives.si() * most)
}

/// Mean electrical power of all drives of an axis while working, W.
///
/// Pass torques, speeds (both signed) and shares of all phases, travel for one turn, reduction, number of
/// drives, and efficiency of motor and electronics. Nothing is credited for braking.
/// Check: 10 N·m at 0.5 m/s for half of the time, 10 mm, 1, one drive, 0.85 → 1.848 kW.
pub static MEAN_POWER: Formula<
    fn(Series<Torque>, Series<Velocity>, Series<Ratio>, Length, Ratio, Ratio, Ratio) -> Power,
> = Formula {
    note: Note {
        id: "mean-power",
        title: "mean electrical power of all drives of the axis",
        equation: "P_m = n_d/η_e·Σ q_k·max(T_k·2π·i·v_k/p, 0)",
        inputs: &[
            ("T_k", "torques"),
            ("v_k", "speeds"),
            ("q_k", "shares"),
            ("p", "travel-per-turn"),
            ("i", "reduction"),
            ("n_d", "drives"),
            ("η_e", "efficiency"),
        ],
        validity: "shares sum to 1; braking power is lost; the loss of holding at rest is left out",
        sources: &[Source::derived("energy balance over the duty")],
    },
    apply: mean_power,
};

/// See [`MEAN_POWER`].
#[inline(always)]
pub fn mean_power(
    torques: Series<Torque>,
    speeds: Series<Velocity>,
    shares: Series<Ratio>,
    travel_per_turn: Length,
    reduction: Ratio,
    drives: Ratio,
    efficiency: Ratio,
) -> Power {
    let turns = TAU * reduction.si() / travel_per_turn.si();
    let mut sum = 0.0;
    for ((torque, speed), share) in torques.si().iter().zip(speeds.si()).zip(shares.si()) {
        let power = torque * speed * turns;
        sum += if power < 0.0 { 0.0 } else { power * share };
    }
    Power::of_si(drives.si() * sum / efficiency.si())
}
