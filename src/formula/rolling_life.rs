//! Life and static safety of ball contacts: nut, preloaded pair of nut halves.
//!
//! Method: life falls with the cube of the load; a preloaded pair splits the outer load as two Hertzian
//! springs do; two rows survive together by the product of their Weibull survivals (exponent 10/9).
//! Limits: clean lubrication, full hardness, loads below about 0.5 of the dynamic rating.
//! A life that no load ends is capped at 10⁶ Mrev, hours at 10⁹ h, static safety at 10⁶.

pub use super::rating::{DYNAMIC_RATING, STATIC_RATING, dynamic_rating, static_rating};

use super::duty::{cubic_root, travel_weights};
use super::{Formula, Note, Series};
use crate::source::Source;
use crate::units::{Force, Length, Measure, Ratio, Revolutions, Time, Velocity};

/// Longest life that is told, revolutions.
pub const MOST_REVOLUTIONS: f64 = 1e12;
/// Longest life that is told, s (10⁹ h).
pub const MOST_SECONDS: f64 = 3.6e12;
/// Largest static safety that is told.
pub const MOST_SAFETY: f64 = 1e6;
/// Outer load over preload at which the unloaded half lifts off: 2^(3/2).
pub const LIFT_OFF: f64 = 2.828_427_124_746_190_3;

const LIFE: Source = Source::memory("ISO 3408-5:2006, nominal life; Lundberg and Palmgren 1947");
pub(super) const SPLIT: Source = Source::derived(
    "two Hertzian springs, linearised in load^(2/3): exact at no load and at lift-off, within 2.5 % between",
);

#[inline]
fn capped(value: f64, most: f64) -> f64 {
    if value > most { most } else { value }
}

/// Life of a nut that 90 % (or as the reliability factor says) survive, revolutions.
///
/// Pass dynamic rating, mean load, load factor for shock that the loads do not hold, and reliability factor
/// (1 for 90 %). No load gives the cap of 10⁶ Mrev. Check: 36 kN, 3 kN, 1.2, 1 → 1000 Mrev.
pub static NUT_LIFE: Formula<fn(Force, Force, Ratio, Ratio) -> Revolutions> = Formula {
    note: Note {
        id: "screw-life",
        title: "nominal life of a ball nut",
        equation: "L = a_1·(C_a/(f_w·F_m))³·10⁶ rev",
        inputs: &[
            ("C_a", "dynamic-rating"),
            ("F_m", "mean-load"),
            ("f_w", "load-factor"),
            ("a_1", "reliability-factor"),
        ],
        validity: "mean load up to 0.5 of the rating, clean lubrication, full hardness; capped at 10⁶ Mrev",
        sources: &[LIFE],
    },
    apply: nut_life,
};

/// See [`NUT_LIFE`].
#[inline]
pub fn nut_life(dynamic_rating: Force, mean_load: Force, load_factor: Ratio, reliability_factor: Ratio) -> Revolutions {
    let ratio = dynamic_rating.si() / (load_factor.si() * mean_load.si()).abs();
    Revolutions::of_si(capped(reliability_factor.si() * ratio.powi(3) * 1e6, MOST_REVOLUTIONS))
}

/// Load on the loaded half of a preloaded pair, N.
///
/// Pass the outer load and the preload; signs of the load do not matter. Beyond lift-off, and without preload,
/// the loaded half takes the whole load. Check: 4 kN on 3 kN preload → 5354.5 N.
pub static HALF_LOAD: Formula<fn(Force, Force) -> Force> = Formula {
    note: Note {
        id: "loaded-half",
        title: "load on the loaded half of a preloaded pair",
        equation: "|F| < 2^1.5·F_pr: F_1 = F_pr·(1 + |F|/(2^1.5·F_pr))^1.5; else F_1 = |F|",
        inputs: &[("F", "force"), ("F_pr", "preload")],
        validity: "two equal ball contacts preloaded against each other",
        sources: &[SPLIT],
    },
    apply: half_load,
};

/// See [`HALF_LOAD`].
#[inline]
pub fn half_load(force: Force, preload: Force) -> Force {
    Force::of_si(loaded_half(force.si(), preload.si()))
}

#[inline]
fn loaded_half(force: f64, preload: f64) -> f64 {
    let load = force.abs();
    if load >= LIFT_OFF * preload {
        load
    } else {
        let stretch = 1.0 + load / (LIFT_OFF * preload);
        preload * stretch * stretch.sqrt()
    }
}

/// The loads of both halves under a signed outer load: the half that a positive load presses, and the other.
#[inline]
pub(super) fn halves(force: f64, preload: f64) -> (f64, f64) {
    let loaded = loaded_half(force, preload);
    let other = loaded - force.abs();
    if force < 0.0 { (other, loaded) } else { (loaded, other) }
}

/// The cubic means over the duty of the loads that both halves have in each phase, weighted by travel.
#[inline(always)]
pub(super) fn mean_halves(
    loads: impl Iterator<Item = (f64, f64)>,
    shares: &Series<Ratio>,
    speeds: &Series<Velocity>,
) -> (f64, f64) {
    let (mut first, mut second, mut weights) = (0.0, 0.0, 0.0);
    for ((one, other), weight) in loads.zip(travel_weights(shares.si(), speeds.si())) {
        first += one.abs().powi(3) * weight;
        second += other.abs().powi(3) * weight;
        weights += weight;
    }
    (cubic_root(first, weights), cubic_root(second, weights))
}

/// Life of both halves together, from the load of each over its rating, revolutions.
#[inline]
pub(super) fn pair(first: f64, second: f64, reliability: f64) -> f64 {
    let sum = first.powf(10.0 / 3.0) + second.powf(10.0 / 3.0);
    capped(reliability * sum.powf(-0.9) * 1e6, MOST_REVOLUTIONS)
}

/// Life of a preloaded pair of nut halves over the duty, revolutions.
///
/// Pass the dynamic rating of one half, the preload, forces (signed), shares of time and speeds of all phases, and the
/// reliability factor (1 for 90 %). Without preload each half carries the forces of one sign. No load gives the cap of
/// 10⁶ Mrev. Check: 36 kN, 3 kN, one phase of +4 kN, 1 → 301.1 Mrev.
pub static PAIR_LIFE: Formula<fn(Force, Force, Series<Force>, Series<Ratio>, Series<Velocity>, Ratio) -> Revolutions> =
    Formula {
        note: Note {
            id: "pair-life",
            title: "life of a preloaded pair of nut halves over the duty",
            equation: "L = a_1·(L_A^(−10/9) + L_B^(−10/9))^(−9/10), L_X = (C_a/F_mX)³·10⁶ rev, \
                   F_mX = ∛(Σ F_X,k³·q_k·|v_k| / Σ q_k·|v_k|), F_A,k − F_B,k = F_k, \
                   |F_k| < 2^1.5·F_pr: larger of both = F_pr·(1 + |F_k|/(2^1.5·F_pr))^1.5; else |F_k|",
            inputs: &[
                ("C_a", "dynamic-rating"),
                ("F_pr", "preload"),
                ("F_k", "forces"),
                ("q_k", "shares"),
                ("v_k", "speeds"),
                ("a_1", "reliability-factor"),
            ],
            validity: "rating of one half; loads up to 0.5 of it, clean lubrication, full hardness; capped at 10⁶ Mrev",
            sources: &[LIFE, SPLIT],
        },
        apply: pair_life,
    };

/// See [`PAIR_LIFE`].
pub fn pair_life(
    dynamic_rating: Force,
    preload: Force,
    forces: Series<Force>,
    shares: Series<Ratio>,
    speeds: Series<Velocity>,
    reliability_factor: Ratio,
) -> Revolutions {
    let preload = preload.si();
    let loads = forces.si().iter().map(|force| halves(*force, preload));
    let (first, second) = mean_halves(loads, &shares, &speeds);
    Revolutions::of_si(pair(first / dynamic_rating.si(), second / dynamic_rating.si(), reliability_factor.si()))
}

/// Life of a preloaded pair of nut halves over the duty of one of two drives, revolutions.
///
/// Pass what [`PAIR_LIFE`] takes, and the racking force. Check: 36 kN, no preload, one phase of +3 kN, 1, 1 kN → 729 Mrev.
pub static RACKED_PAIR_LIFE: Formula<
    fn(Force, Force, Series<Force>, Series<Ratio>, Series<Velocity>, Ratio, Force) -> Revolutions,
> = Formula {
    note: Note {
        id: "racked-pair-life",
        title: "life of a preloaded pair of nut halves over the duty, the racking force on top",
        equation: "as pair-life, half A under F_k + F_r, half B under F_k − F_r",
        inputs: &[
            ("C_a", "dynamic-rating"),
            ("F_pr", "preload"),
            ("F_k", "forces"),
            ("q_k", "shares"),
            ("v_k", "speeds"),
            ("a_1", "reliability-factor"),
            ("F_r", "racking-force"),
        ],
        validity: "the whole racking force at every place of the travel and against both halves: the safe side of a force \
                   that grows along the travel and points one way; else as pair-life",
        sources: &[LIFE, SPLIT],
    },
    apply: |rating, preload, forces, shares, speeds, reliability, racking| {
        let (preload, racking) = (preload.si(), racking.si().abs());
        let loads =
            forces.si().iter().map(|force| (halves(force + racking, preload).0, halves(force - racking, preload).1));
        let (first, second) = mean_halves(loads, &shares, &speeds);
        Revolutions::of_si(pair(first / rating.si(), second / rating.si(), reliability.si()))
    },
};

/// Life of a preloaded nut under one constant load, revolutions.
///
/// Pass the dynamic rating of one half, the preload and the load. Check: 36 kN, 3 kN, 4 kN → 301.1 Mrev.
pub static PRELOADED_NUT_LIFE: Formula<fn(Force, Force, Force) -> Revolutions> = Formula {
    note: Note {
        id: "preloaded-nut-life",
        title: "nominal life of a preloaded nut under a constant load",
        equation: "L = (L_1^(−10/9) + L_2^(−10/9))^(−9/10), L_X = (C_a/F_X)³·10⁶ rev; |F| < 2^1.5·F_pr: \
                   F_1 = F_pr·(1 + |F|/(2^1.5·F_pr))^1.5, F_2 = F_1 − |F|; else F_1 = |F|, F_2 = 0",
        inputs: &[("C_a", "dynamic-rating"), ("F_pr", "preload"), ("F", "load")],
        validity: "rating of one half; loads up to 0.5 of it, clean lubrication, full hardness; capped at 10⁶ Mrev",
        sources: &[LIFE, SPLIT],
    },
    apply: preloaded_nut_life,
};

/// See [`PRELOADED_NUT_LIFE`].
#[inline]
pub fn preloaded_nut_life(dynamic_rating: Force, preload: Force, load: Force) -> Revolutions {
    let (first, second) = halves(load.si(), preload.si());
    Revolutions::of_si(pair(first / dynamic_rating.si(), second / dynamic_rating.si(), 1.0))
}

/// Life in working hours at the mean speed of the duty, s; an axis that never moves gives the cap of 10⁹ h.
///
/// Pass life, mean speed and travel for one turn. Check: 1000 Mrev, 8 m/min, 10 mm → 20 833 h.
pub static LIFE_HOURS: Formula<fn(Revolutions, Velocity, Length) -> Time> = Formula {
    note: Note {
        id: "life-hours",
        title: "life in working hours",
        equation: "L_h = L·p/v_m",
        inputs: &[("L", "life"), ("v_m", "mean-speed"), ("p", "travel-per-turn")],
        validity: "everywhere; capped at 10⁹ h",
        sources: &[Source::derived("revolutions over mean speed of rotation")],
    },
    apply: life_hours,
};

/// See [`LIFE_HOURS`].
#[inline]
pub fn life_hours(life: Revolutions, mean_speed: Velocity, travel_per_turn: Length) -> Time {
    Time::of_si(capped(life.si() * travel_per_turn.si() / mean_speed.si().abs(), MOST_SECONDS))
}

/// Static safety of a nut, 1; no load gives the cap of 10⁶.
///
/// Pass the static rating and the largest load on one half. Check: 86 kN, 4.3 kN → 20.
pub static STATIC_SAFETY: Formula<fn(Force, Force) -> Ratio> = Formula {
    note: Note {
        id: "static-safety",
        title: "static safety",
        equation: "s_0 = C_0a/F_1",
        inputs: &[("C_0a", "static-rating"), ("F_1", "peak-half-load")],
        validity: "everywhere; capped at 10⁶",
        sources: &[Source::memory("ISO 3408-5:2006, static axial load rating")],
    },
    apply: static_safety,
};

/// See [`STATIC_SAFETY`].
#[inline]
pub fn static_safety(static_rating: Force, peak_half_load: Force) -> Ratio {
    Ratio::of_si(capped(static_rating.si() / peak_half_load.si().abs(), MOST_SAFETY))
}

const RELIABILITIES: [f64; 6] = [0.90, 0.95, 0.96, 0.97, 0.98, 0.99];
const NUT_FACTORS: [f64; 6] = [1.0, 0.62, 0.53, 0.44, 0.33, 0.21];
const BEARING_FACTORS: [f64; 6] = [1.0, 0.64, 0.55, 0.47, 0.37, 0.25];

fn factor(reliability: Ratio, factors: &[f64; 6]) -> Ratio {
    let wanted = reliability.si();
    for (index, known) in RELIABILITIES.iter().enumerate() {
        if (wanted - known).abs() < 1e-9 {
            return Ratio::of_si(factors[index]);
        }
        if wanted < *known && index > 0 {
            let (low, high) = (RELIABILITIES[index - 1], *known);
            let place = (wanted - low) / (high - low);
            return Ratio::of_si(factors[index - 1] + place * (factors[index] - factors[index - 1]));
        }
        if wanted < *known {
            break;
        }
    }
    Ratio::of_si(f64::NAN)
}

/// Life factor of a ball nut for a reliability between 90 % and 99 %, 1; NaN outside. 97 % → 0.44.
pub static NUT_RELIABILITY_FACTOR: Formula<fn(Ratio) -> Ratio> = Formula {
    note: Note {
        id: "nut-reliability-factor",
        title: "life factor of a ball nut for its reliability",
        equation: "a_1 = 1, 0.62, 0.53, 0.44, 0.33, 0.21 at 90, 95, 96, 97, 98, 99 %, between them linear",
        inputs: &[("Rel", "reliability")],
        validity: "90 % to 99 %; not known outside",
        sources: &[Source::memory("ISO 3408-5:2006, factor for reliability")],
    },
    apply: nut_reliability_factor,
};

/// See [`NUT_RELIABILITY_FACTOR`].
pub fn nut_reliability_factor(reliability: Ratio) -> Ratio {
    factor(reliability, &NUT_FACTORS)
}

/// Life factor of a rolling bearing for a reliability between 90 % and 99 %, 1; NaN outside. 97 % → 0.47.
pub static BEARING_RELIABILITY_FACTOR: Formula<fn(Ratio) -> Ratio> = Formula {
    note: Note {
        id: "bearing-reliability-factor",
        title: "life factor of a rolling bearing for its reliability",
        equation: "a_1 = 1, 0.64, 0.55, 0.47, 0.37, 0.25 at 90, 95, 96, 97, 98, 99 %, between them linear",
        inputs: &[("Rel", "reliability")],
        validity: "90 % to 99 %; not known outside",
        sources: &[Source::memory("ISO 281:2007, factor for reliability")],
    },
    apply: bearing_reliability_factor,
};

/// See [`BEARING_RELIABILITY_FACTOR`].
pub fn bearing_reliability_factor(reliability: Ratio) -> Ratio {
    factor(reliability, &BEARING_FACTORS)
}
