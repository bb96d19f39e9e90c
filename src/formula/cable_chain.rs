//! The cable chain: what of it moves, how it drags, what an axis weighs on its carrier with it.
//!
//! Method: a chain fixed at mid travel is half the travel long; of that between nothing and all moves with the slide, half
//! on the mean. Limits: the bend and the fixed run of the cables are left out; the chain runs along the axis.

use super::constants::GRAVITY;
use super::duty::level_share;
use super::{Formula, Note};
use crate::source::Source;
use crate::units::{Angle, Force, Length, LinearMassDensity, Mass, Measure, Ratio};

const HALF: &[Source] = &[Source::derived("a chain of half the travel, fixed at mid travel")];

/// Mass of a cable chain that moves with the slide, on the mean, kg. 3.5 kg/m, 6 m: 5.25 kg.
pub static CABLE_CHAIN_MASS: Formula<fn(LinearMassDensity, Length) -> Mass> = Formula {
    note: Note {
        id: "cable-chain-mass",
        title: "mass of the cable chain that moves with the slide",
        equation: "m_ch = q·s/4",
        inputs: &[("q", "mass-per-metre"), ("s", "travel")],
        validity: "fixed at mid travel; mean over the travel, at the far end twice as much",
        sources: HALF,
    },
    apply: |mass, travel| Mass::of_si(mass.si() * travel.si() / 4.0),
};

/// Friction of a cable chain, N. 0.05, 3.5 kg/m, 6 m, level: 5.148 N.
pub static CABLE_CHAIN_FORCE: Formula<fn(Ratio, LinearMassDensity, Length, Angle) -> Force> = Formula {
    note: Note {
        id: "cable-chain-force",
        title: "friction of the cable chain",
        equation: "F_ch = µ_ch·q·(s/2)·g·|cos θ|",
        inputs: &[("µ_ch", "friction"), ("q", "mass-per-metre"), ("s", "travel"), ("θ", "angle")],
        validity: "the whole moving half lies; Coulomb friction",
        sources: HALF,
    },
    apply: |friction, mass, travel, angle| {
        Force::of_si(friction.si() * mass.si() * travel.si() / 2.0 * GRAVITY * level_share(angle))
    },
};

/// Drag of wipers and cable chain together, N. 40 and 5.1 N: 45.1 N.
pub static DRAG_SUM: Formula<fn(Force, Force) -> Force> = Formula {
    note: Note {
        id: "drag-sum",
        title: "drag of wipers and cable chain together",
        equation: "F_wc = F_w + F_ch",
        inputs: &[("F_w", "wiper-force"), ("F_ch", "cable-chain-force")],
        validity: "everywhere",
        sources: &[Source::derived("sum of the parts")],
    },
    apply: |wipers, chain| Force::of_si(wipers.si() + chain.si()),
};

/// What an axis weighs on its carrier beside its slide, kg. 40 kg, 2 × 25 kg, 3.5 kg/m, 6 m: 100.5 kg.
pub static ADDED_MASS: Formula<fn(Mass, Mass, Ratio, LinearMassDensity, Length) -> Mass> = Formula {
    note: Note {
        id: "added-mass",
        title: "mass of drives, counterweights and cable chain",
        equation: "m_+ = m_D + n_d·m_cb + q·s/2",
        inputs: &[
            ("m_D", "drive-mass"),
            ("m_cb", "counterweight-mass"),
            ("n_d", "drives"),
            ("q", "mass-per-metre"),
            ("s", "travel"),
        ],
        validity: "the counterweight hangs on the carrier; each drive has that of the most loaded one",
        sources: &[Source::derived("sum of the parts")],
    },
    apply: |drive, counterweight, drives, chain, travel| {
        Mass::of_si(drive.si() + drives.si() * counterweight.si() + chain.si() * travel.si() / 2.0)
    },
};
