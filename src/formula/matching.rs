//! What ratio and lead would suit the motor best, and what inertia ratio and resonance an axis of its kind wants.
//!
//! Method: the root mean square torque of motor and load together is least where both shares are alike. Limits: losses
//! are left out; the optimum is flat, a ratio 30 % too high costs 3.5 % of torque. Bands are common practice.

use super::{Formula, Note, Series};
use crate::source::Source;
use crate::units::*;
use std::f64::consts::TAU;

const GIBERTI: Source = Source::publication(
    "Giberti, Cinquemani, Legnani, chapter in the collection Mechanical Engineering, pp. 125 and 126, equations 22 to 28",
);

/// Root mean square over the shares; shares that sum to zero give zero.
#[inline]
fn root_mean_square(values: impl Iterator<Item = f64>, shares: &[f64]) -> f64 {
    let (mut sum, mut total) = (0.0, 0.0);
    for (value, share) in values.zip(shares) {
        sum += value * value * share;
        total += share;
    }
    if total == 0.0 { 0.0 * sum } else { (sum / total).sqrt() }
}

/// Root mean square torque of the load at screw, nut or pinion, N·m, without losses.
///
/// Pass forces, accelerations and shares of all phases, travel for one turn, and the inertia of what turns there.
/// Check: 2 kN and 2 m/s² all the time, 10 mm, 25.648 kg·cm² → 6.406 N·m.
pub static LOAD_RMS_TORQUE: Formula<
    fn(Series<Force>, Series<Acceleration>, Series<Ratio>, Length, MomentOfInertia) -> Torque,
> = Formula {
    note: Note {
        id: "load-rms-torque",
        title: "root mean square torque of the load at screw, nut or pinion, without losses",
        equation: "T*_rms = √(Σ q_k·(F_k·p/(2π) + J_s·a_k·2π/p)²/Σ q_k)",
        inputs: &[
            ("F_k", "forces"),
            ("a_k", "accelerations"),
            ("q_k", "shares"),
            ("p", "travel-per-turn"),
            ("J_s", "shaft-inertia"),
        ],
        validity: "efficiencies and drag are left out",
        sources: &[Source::derived("balance of torques on what turns behind the reduction")],
    },
    apply: |forces, accelerations, shares, travel_per_turn, inertia| {
        let radius = travel_per_turn.si() / TAU;
        let torques = forces.si().iter().zip(accelerations.si());
        let torques = torques.map(|(force, acceleration)| force * radius + inertia.si() * acceleration / radius);
        Torque::of_si(root_mean_square(torques, shares.si()))
    },
};

/// Root mean square angular acceleration of screw, nut or pinion, rad/s². 2 m/s² all the time, 10 mm: 1256.6 rad/s².
pub static LOAD_RMS_ACCELERATION: Formula<fn(Series<Acceleration>, Series<Ratio>, Length) -> AngularAcceleration> =
    Formula {
        note: Note {
            id: "load-rms-acceleration",
            title: "root mean square angular acceleration of screw, nut or pinion",
            equation: "α_rms = 2π/p·√(Σ q_k·a_k²/Σ q_k)",
            inputs: &[("a_k", "accelerations"), ("q_k", "shares"), ("p", "travel-per-turn")],
            validity: "rigid drive",
            sources: &[Source::derived("kinematics")],
        },
        apply: |accelerations, shares, travel_per_turn| {
            let mean = root_mean_square(accelerations.si().iter().copied(), shares.si());
            AngularAcceleration::of_si(mean * TAU / travel_per_turn.si())
        },
    };

/// Ratio of least root mean square motor torque, 1.
///
/// Pass the root mean square torque and angular acceleration of the load, and the rotor inertia.
/// Check: 0.25 kg·m² alone at 10 rad/s² is 2.5 N·m, rotor 0.0016 kg·m² → 12.5.
pub static OPTIMUM_RATIO: Formula<fn(Torque, AngularAcceleration, MomentOfInertia) -> Ratio> = Formula {
    note: Note {
        id: "optimum-ratio",
        title: "reduction of least root mean square motor torque",
        equation: "i_opt = √(T*_rms/(J_M·α_rms))",
        inputs: &[("T*_rms", "load-torque"), ("α_rms", "load-acceleration"), ("J_M", "rotor-inertia")],
        validity: "losses and the inertia of the reduction left out; speed limits are not in it; a load without acceleration has none",
        sources: &[GIBERTI],
    },
    apply: |torque, acceleration, rotor| Ratio::of_si((torque.si() / (rotor.si() * acceleration.si())).sqrt()),
};

/// Lead of least motor torque for pure inertia, m. 88.648 kg·cm², 600 kg, 1: 24.15 mm.
pub static OPTIMUM_LEAD: Formula<fn(MomentOfInertia, Mass, Ratio) -> Length> = Formula {
    note: Note {
        id: "optimum-lead",
        title: "lead of least motor torque while accelerating",
        equation: "P_h,opt = 2π·i·√(J_rot/m_d)",
        inputs: &[("J_rot", "rotating-inertia"), ("m_d", "driven-mass"), ("i", "reduction")],
        validity: "inertia alone: no friction, weight or cutting force; speed limits are not in it",
        sources: &[Source::derived(
            "least torque where driven mass and turning parts have the same inertia at the motor",
        )],
    },
    apply: |rotating, mass, reduction| Length::of_si(TAU * reduction.si() * (rotating.si() / mass.si()).sqrt()),
};

/// Acceleration from which an axis counts as dynamic, m/s².
const DYNAMIC: f64 = 5.0;
/// Acceleration below which an axis counts as slow, m/s².
const SLOW: f64 = 1.0;

/// Inertia ratio that suits an axis of this acceleration: 3, 5 or 10.
///
/// Pass the acceleration of the axis. Check: 8 m/s² → 3; 2 m/s² → 5; 0.5 m/s² → 10.
pub static INERTIA_RATIO_TARGET: Formula<fn(Acceleration) -> Ratio> = Formula {
    note: Note {
        id: "inertia-ratio-target",
        title: "inertia ratio that suits an axis of this acceleration",
        equation: "3 from 5 m/s², 10 below 1 m/s², 5 between",
        inputs: &[("a", "acceleration")],
        validity: "a hint for the setting of the loop, no limit of physics",
        sources: &[Source::practice("3 for dynamic axes, 5 in general, 10 for slow ones; where they part is ours")],
    },
    apply: |acceleration| {
        let a = acceleration.si();
        Ratio::of_si(if a >= DYNAMIC {
            3.0
        } else if a < SLOW {
            10.0
        } else {
            5.0 + 0.0 * a
        })
    },
};

/// Moved mass below which a slide is light, and above which it is heavy, kg.
const LIGHT: f64 = 300.0;
const HEAVY: f64 = 2000.0;
/// Travel from which an axis is long, m.
const LONG: f64 = 6.0;

/// First resonance that suits an axis of this moved mass and travel: 60, 40 or 25 Hz.
///
/// Pass moving mass and travel. Check: 200 kg, 1 m → 60 Hz; 1200 kg, 1 m → 40 Hz; 1200 kg, 11 m → 25 Hz.
pub static FIRST_MODE_TARGET: Formula<fn(Mass, Length) -> Frequency> = Formula {
    note: Note {
        id: "first-mode-target",
        title: "first resonance that suits an axis of this moved mass and travel",
        equation: "60 Hz below 300 kg, 40 Hz to 2000 kg, 25 Hz above or from 6 m of travel",
        inputs: &[("m", "mass"), ("s", "travel")],
        validity: "motor held; a hint, what the path asks decides",
        sources: &[Source::practice("60 Hz light slides, 40 Hz to 2 t, 25 Hz heavy ones and long gantries")],
    },
    apply: |mass, travel| {
        let (mass, travel) = (mass.si(), travel.si());
        Frequency::of_si(if mass > HEAVY || travel >= LONG {
            25.0 + 0.0 * (mass + travel)
        } else if mass < LIGHT {
            60.0 + 0.0 * travel
        } else {
            40.0 + 0.0 * (mass + travel)
        })
    },
};
