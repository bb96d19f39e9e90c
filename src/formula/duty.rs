//! Masses and forces of the duty: what one drive moves, the force in a phase, equivalent forces.
//!
//! Method: Newton's second law along the axis, Coulomb friction, cubic mean weighted by travel.
//! Limits: rigid bodies; friction does not depend on speed; a counterbalance of the gas kind, which adds no
//! mass. Lists of unequal length are read up to the shorter one.

use super::constants::GRAVITY;
use super::{Formula, Note, Series};
use crate::source::Source;
use crate::units::{Acceleration, Angle, Force, Mass, Measure, Ratio, Velocity};

const NEWTON: Source = Source::derived("Newton's second law along the axis");
const CUBIC: Source =
    Source::memory("ISO 3408-5:2006, equivalent load; rolling contact life falls with the cube of load");

/// All mass that an axis moves, kg.
///
/// Pass the slide, what it carries, the riding parts of all drives, and what moves of a cable chain.
/// Check: 500 + 200 + 12 + 5 → 717 kg.
pub static MOVING_MASS: Formula<fn(Mass, Mass, Mass, Mass) -> Mass> = Formula {
    note: Note {
        id: "moving-mass",
        title: "all mass that the axis moves",
        equation: "m = m_0 + m_c + m_r + m_ch",
        inputs: &[("m_0", "moved-mass"), ("m_c", "carried-mass"), ("m_r", "riding-mass"), ("m_ch", "cable-chain-mass")],
        validity: "everywhere",
        sources: &[Source::derived("sum of the parts")],
    },
    apply: moving_mass,
};

/// See [`MOVING_MASS`].
#[inline]
pub fn moving_mass(moved: Mass, carried: Mass, riding: Mass, chain: Mass) -> Mass {
    Mass::of_si(moved.si() + carried.si() + riding.si() + chain.si())
}

/// Share of the moving mass on the most loaded drive, 1.
///
/// Pass the slide, the mass carried, the number of drives, and how far from the middle the carried mass can
/// stand, over the distance of the outer drives. One drive takes all. Never below an equal share.
/// Check: 1000 kg, 500 kg, two drives, reach 0.4 → 0.633 33.
pub static LOAD_SHARE: Formula<fn(Mass, Mass, Ratio, Ratio) -> Ratio> = Formula {
    note: Note {
        id: "load-share",
        title: "share of the moving mass on the most loaded drive",
        equation: "n_d = 1: x_d = 1; else x_d = (m_0/n_d + m_c·(1/n_d + y/B))/(m_0 + m_c), at least 1/n_d",
        inputs: &[("m_0", "moved-mass"), ("m_c", "carried-mass"), ("n_d", "drives"), ("y/B", "carriage-reach")],
        validity: "rigid beam across equally stiff drives, slide mass in the middle; exact for two and three drives, \
                   on the safe side for more; no mass gives the equal share",
        sources: &[Source::derived("equilibrium of a rigid beam on equal springs")],
    },
    apply: load_share,
};

/// See [`LOAD_SHARE`].
#[inline]
pub fn load_share(moved: Mass, carried: Mass, drives: Ratio, reach: Ratio) -> Ratio {
    let (own, load, n, reach) = (moved.si(), carried.si(), drives.si(), reach.si());
    if n < 1.5 {
        return Ratio::of_si(1.0 + 0.0 * (own + load + reach));
    }
    let equal = 1.0 / n;
    let total = own + load;
    let share = if total == 0.0 { equal } else { (own * equal + load * (equal + reach)) / total };
    Ratio::of_si(if share < equal { equal } else { share })
}

/// Moving mass on the most loaded drive, kg.
///
/// Pass the moving mass and the share of that drive. Check: 1500 kg, 0.6 → 900 kg.
pub static DRIVEN_MASS: Formula<fn(Mass, Ratio) -> Mass> = Formula {
    note: Note {
        id: "driven-mass",
        title: "moving mass on the most loaded drive",
        equation: "m_d = x_d·m",
        inputs: &[("m", "moving-mass"), ("x_d", "load-share")],
        validity: "everywhere",
        sources: &[Source::derived("definition of the share")],
    },
    apply: driven_mass,
};

/// See [`DRIVEN_MASS`].
#[inline]
pub fn driven_mass(moving: Mass, share: Ratio) -> Mass {
    Mass::of_si(moving.si() * share.si())
}

/// Force on a drive along the axis, N, positive upward or forward.
///
/// Pass mass, acceleration (positive upward or forward), inclination, friction coefficient, process force
/// (positive when it acts against upward or forward motion), drag of wipers, direction of motion (+1, −1, or
/// 0 at rest, which takes friction out), and the share of the weight that a gas counterbalance carries.
/// Check: 500 kg, 2 m/s², 30°, 0.01, 1000 N, no wipers, +1, no counterbalance → 4494.13 N.
pub static AXIAL_FORCE: Formula<fn(Mass, Acceleration, Angle, Ratio, Force, Force, Ratio, Ratio) -> Force> = Formula {
    note: Note {
        id: "axial-force",
        title: "force on the drive along the axis",
        equation: "F = m·a + m·g·sin θ·(1 − c_b) + σ·(µ·m·g·|cos θ| + F_w) + F_p",
        inputs: &[
            ("m", "mass"),
            ("a", "acceleration"),
            ("θ", "angle"),
            ("µ", "friction"),
            ("F_p", "process-force"),
            ("F_w", "wiper-force"),
            ("σ", "direction"),
            ("c_b", "counterbalance-share"),
        ],
        validity: "rigid body, Coulomb friction; a counterbalance of the gas kind, which adds no mass",
        sources: &[NEWTON],
    },
    apply: axial_force,
};

/// See [`AXIAL_FORCE`].
#[inline]
pub fn axial_force(
    mass: Mass,
    acceleration: Acceleration,
    angle: Angle,
    friction: Ratio,
    process: Force,
    wiper: Force,
    direction: Ratio,
    counterbalance_share: Ratio,
) -> Force {
    let m = mass.si();
    let weight = m * GRAVITY * angle.si().sin() * (1.0 - counterbalance_share.si());
    let drag = friction_force(mass, angle, friction, wiper).si();
    Force::of_si(m * acceleration.si() + weight + direction.si() * drag + process.si())
}

/// Share of the weight that presses square to the axis; an upright axis has none, in spite of rounding.
#[inline]
pub(crate) fn level_share(angle: Angle) -> f64 {
    let share = angle.si().cos().abs();
    if share < 1e-12 { 0.0 } else { share }
}

/// Friction of guides and wipers, N.
///
/// Pass mass, inclination, friction coefficient and the drag of wipers. Check: 600 kg, 0°, 0.005, 60 N → 89.42 N.
pub static FRICTION_FORCE: Formula<fn(Mass, Angle, Ratio, Force) -> Force> = Formula {
    note: Note {
        id: "friction-force",
        title: "friction of guides and wipers",
        equation: "F_f = µ·m·g·|cos θ| + F_w",
        inputs: &[("m", "mass"), ("θ", "angle"), ("µ", "friction"), ("F_w", "wiper-force")],
        validity: "Coulomb friction",
        sources: &[NEWTON],
    },
    apply: friction_force,
};

/// See [`FRICTION_FORCE`].
#[inline]
pub fn friction_force(mass: Mass, angle: Angle, friction: Ratio, wiper: Force) -> Force {
    Force::of_si(friction.si() * mass.si() * GRAVITY * level_share(angle) + wiper.si())
}

/// Weight along the axis, N; nothing is credited for friction.
///
/// Pass mass and inclination. Check: 300 kg, 90° → 2941.995 N.
pub static GRAVITY_FORCE: Formula<fn(Mass, Angle) -> Force> = Formula {
    note: Note {
        id: "gravity-force",
        title: "weight along the axis",
        equation: "F_g = m·g·sin θ",
        inputs: &[("m", "mass"), ("θ", "angle")],
        validity: "everywhere; no friction and no counterbalance credited",
        sources: &[NEWTON],
    },
    apply: gravity_force,
};

/// See [`GRAVITY_FORCE`].
#[inline]
pub fn gravity_force(mass: Mass, angle: Angle) -> Force {
    Force::of_si(mass.si() * GRAVITY * angle.si().sin())
}

/// Largest force of any phase without its sign, and at least the weight that a lost counterbalance leaves, N.
///
/// Pass the forces of all phases and the whole weight along the axis. Check: 3 kN, −4 kN, 1 kN, 2 kN → 4 kN.
pub static PEAK_FORCE: Formula<fn(Series<Force>, Force) -> Force> = Formula {
    note: Note {
        id: "peak-force",
        title: "largest force of any phase, or the weight alone",
        equation: "F_max = max(|F_k|, F_g)",
        inputs: &[("F_k", "forces"), ("F_g", "gravity-force")],
        validity: "the loss of a counterbalance is taken at rest; without one the phases always hold more than the weight",
        sources: &[Source::derived("definition"), Source::practice("loss of the counterbalance is a design case")],
    },
    apply: peak_force,
};

/// See [`PEAK_FORCE`].
#[inline(always)]
pub fn peak_force(forces: Series<Force>, weight: Force) -> Force {
    let most = largest(forces.si());
    Force::of_si(if most > weight.si() { most } else { weight.si() + 0.0 * most })
}

/// Largest absolute value; NaN as soon as one is.
#[inline(always)]
pub(crate) fn largest(values: &[f64]) -> f64 {
    values.iter().fold(0.0, |most: f64, value| if value.abs() > most || value.is_nan() { value.abs() } else { most })
}

/// Cubic mean of loads, N; weights that sum to zero give zero.
///
/// Pass the loads and the revolutions turned under each (any common measure of them).
/// Check: 4 kN at 500 1/min for 30 %, 2 kN at 1500 for 50 %, 1 kN at 3000 for 20 % → 2210.42 N.
pub static MEAN_LOAD: Formula<fn(Series<Force>, Series<Ratio>) -> Force> = Formula {
    note: Note {
        id: "mean-load",
        title: "cubic mean load, weighted by revolutions",
        equation: "F_m = ∛(Σ |F_k|³·w_k / Σ w_k)",
        inputs: &[("F_k", "forces"), ("w_k", "turns")],
        validity: "ball contact; loads of one sign, or a screw without preload taken as one row; no revolutions give zero",
        sources: &[CUBIC],
    },
    apply: mean_load,
};

/// See [`MEAN_LOAD`].
#[inline]
pub fn mean_load(forces: Series<Force>, turns: Series<Ratio>) -> Force {
    Force::of_si(cubic_mean(forces.si().iter().copied().zip(turns.si().iter().copied())))
}

/// Cubic mean of values with weights; zero weights give zero.
#[inline(always)]
pub(crate) fn cubic_mean(pairs: impl Iterator<Item = (f64, f64)>) -> f64 {
    let (mut sum, mut weights) = (0.0, 0.0);
    for (value, weight) in pairs {
        sum += value.abs().powi(3) * weight;
        weights += weight;
    }
    cubic_root(sum, weights)
}

/// The cubic mean of this sum of weighted cubes; zero weights give zero.
#[inline(always)]
pub(crate) fn cubic_root(sum: f64, weights: f64) -> f64 {
    if weights == 0.0 { 0.0 * sum } else { (sum / weights).cbrt() }
}

/// Cubic mean force over the duty, weighted by travel, N; an axis that never moves gives zero.
///
/// Pass forces, shares of time and mean speeds of all phases. Check: 2 kN and 1 kN, 50 % each at the same
/// speed → 1650.96 N.
pub static MEAN_FORCE: Formula<fn(Series<Force>, Series<Ratio>, Series<Velocity>) -> Force> = Formula {
    note: Note {
        id: "mean-force",
        title: "cubic mean force over the duty, weighted by travel",
        equation: "F_m = ∛(Σ |F_k|³·q_k·|v_k| / Σ q_k·|v_k|)",
        inputs: &[("F_k", "forces"), ("q_k", "shares"), ("v_k", "speeds")],
        validity: "ball contact; an axis that never moves gives zero",
        sources: &[CUBIC],
    },
    apply: mean_force,
};

/// See [`MEAN_FORCE`].
#[inline(always)]
pub fn mean_force(forces: Series<Force>, shares: Series<Ratio>, speeds: Series<Velocity>) -> Force {
    Force::of_si(cubic_mean(forces.si().iter().copied().zip(travel_weights(shares.si(), speeds.si()))))
}

/// How much each phase travels: share of time × speed.
#[inline(always)]
pub(crate) fn travel_weights<'a>(shares: &'a [f64], speeds: &'a [f64]) -> impl Iterator<Item = f64> + 'a {
    shares.iter().zip(speeds).map(|(share, speed)| share * speed.abs())
}

/// A force shared equally by the drives, N.
///
/// Pass the force on the axis and the number of drives. Check: 900 N, 2 → 450 N.
pub static PER_DRIVE_FORCE: Formula<fn(Force, Ratio) -> Force> = Formula {
    note: Note {
        id: "per-drive-force",
        title: "share of one drive in a force on the axis",
        equation: "F_1 = F/n_d",
        inputs: &[("F", "force"), ("n_d", "drives")],
        validity: "drives that share equally",
        sources: &[Source::derived("equal shares")],
    },
    apply: per_drive_force,
};

/// See [`PER_DRIVE_FORCE`].
#[inline]
pub fn per_drive_force(force: Force, drives: Ratio) -> Force {
    Force::of_si(force.si() / drives.si())
}
