//! Life of a set of axial bearings, preloaded against each other, at the end of a screw or on a driven nut.
//!
//! Method: the rows of both sides split the outer force as two Hertzian springs do; each side has its own cubic mean over
//! the duty, and both survive together by the product of their Weibull survivals (exponent 10/9). A set with more rows on
//! one side is mounted the way it lasts longer, and of the two ends of a screw the worse one counts.
//! Limits: axial load only, both sides of the set equally stiff, clean lubrication.

use super::extremes::larger;
use super::rolling_life::{SPLIT, halves, mean_halves, pair};
use super::{Formula, Note, Series};
use crate::source::Source;
use crate::units::*;

const LIFE: Source = Source::memory("ISO 281:2007, basic rating life of ball bearings and of a set of rows");
const VALIDITY: &str = "axial load only, the whole share of the nearest place of the travel as its cubic mean; both sides of the \
                        set as stiff as each other; clean lubrication; capped at 10⁶ Mrev";
const EQUATION: &str = "L = min over s = ±1 of max over both ways to mount the set of \
                        a_1·(L_A^(−10/9) + L_B^(−10/9))^(−9/10), L_X = (C_X/F_mX)³·10⁶ rev, C_A and C_B are C and C′, \
                        F_mX = ∛(Σ F_X,k³·q_k·|v_k| / Σ q_k·|v_k|), F = F_0 + s·x_m·F_k, F_A,k − F_B,k = F, \
                        |F| < 2^1.5·F_v: larger of both = F_v·(1 + |F|/(2^1.5·F_v))^1.5; else |F|";

/// What both laws read; only the second the racking force.
const INPUTS: &[(&str, &str)] = &[
    ("C", "rating"),
    ("C′", "lesser-rating"),
    ("F_v", "preload"),
    ("F_0", "standing-force"),
    ("x_m", "end-share"),
    ("F_k", "forces"),
    ("q_k", "shares"),
    ("v_k", "speeds"),
    ("a_1", "reliability-factor"),
    ("F_r", "racking-force"),
];

/// Life of the axial bearing set over the duty, revolutions.
///
/// Pass the axial rating of the side with more rows and of the other, the preload, the force that stands on the bearing
/// without any load (stretch or warming of the screw), the share of the force that this bearing takes, forces (signed),
/// shares of time and speeds of all phases, and the reliability factor (1 for 90 %). No load gives the cap of 10⁶ Mrev.
/// Check: 40 kN on either side, 2.9 kN, no standing force, 1, one phase of 5 kN, 1 → 307.6 Mrev.
pub static BEARING_SET_LIFE: Formula<
    fn(Force, Force, Force, Force, Ratio, Series<Force>, Series<Ratio>, Series<Velocity>, Ratio) -> Revolutions,
> = Formula {
    note: Note {
        id: "bearing-set-life",
        title: "life of the axial bearing set over the duty",
        equation: EQUATION,
        inputs: INPUTS.split_at(INPUTS.len() - 1).0,
        validity: VALIDITY,
        sources: &[LIFE, SPLIT],
    },
    apply: |rating, lesser, preload, standing, share, forces, shares, speeds, reliability| {
        let set = Set { rating: rating.si(), lesser: lesser.si(), preload: preload.si(), standing: standing.si() };
        let loads = |force: f64| halves(set.standing + share.si() * force, set.preload);
        set.life(loads, &forces, &shares, &speeds, reliability)
    },
};

/// Life of the axial bearing set of one of two sides of an axis, revolutions.
///
/// Pass what [`BEARING_SET_LIFE`] takes, and the racking force. Check: 40 kN on either side, no preload, no standing
/// force, 1, one phase of no force, 1, 1 kN of racking: 40³ Mrev of each row, together 34 297 Mrev.
pub static RACKED_BEARING_SET_LIFE: Formula<
    fn(Force, Force, Force, Force, Ratio, Series<Force>, Series<Ratio>, Series<Velocity>, Ratio, Force) -> Revolutions,
> = Formula {
    note: Note {
        id: "racked-bearing-set-life",
        title: "life of the axial bearing set over the duty, the racking force on top",
        equation: "as bearing-set-life, side A under F + x_m·F_r, side B under F − x_m·F_r",
        inputs: INPUTS,
        validity: "the whole racking force at every place of the travel and against both sides: the safe side of a force \
                   that grows along the travel and points one way; else as bearing-set-life",
        sources: &[LIFE, SPLIT],
    },
    apply: |rating, lesser, preload, standing, share, forces, shares, speeds, reliability, racking| {
        let set = Set { rating: rating.si(), lesser: lesser.si(), preload: preload.si(), standing: standing.si() };
        let racking = racking.si().abs();
        let outer = |force: f64| set.standing + share.si() * force;
        let loads =
            |force: f64| (halves(outer(force + racking), set.preload).0, halves(outer(force - racking), set.preload).1);
        set.life(loads, &forces, &shares, &speeds, reliability)
    },
};

/// Ratings, preload and standing force of a set, N.
struct Set {
    rating: f64,
    lesser: f64,
    preload: f64,
    standing: f64,
}

impl Set {
    /// From the loads of both sides under a force.
    fn life(
        &self,
        loads: impl Fn(f64) -> (f64, f64),
        forces: &Series<Force>,
        shares: &Series<Ratio>,
        speeds: &Series<Velocity>,
        reliability: Ratio,
    ) -> Revolutions {
        let end = |sign: f64| {
            let of_phases = forces.si().iter().map(|force| loads(sign * force));
            let (first, second) = mean_halves(of_phases, shares, speeds);
            let mounted = |a: f64, b: f64| pair(first / a, second / b, reliability.si());
            let there = mounted(self.rating, self.lesser);
            if self.rating == self.lesser { there } else { larger(there, mounted(self.lesser, self.rating)) }
        };
        let near = end(1.0);
        // without a standing force the other end is the same one turned round
        let worst = if self.standing == 0.0 { near } else { -larger(-near, -end(-1.0)) };
        Revolutions::of_si(worst)
    }
}
