//! What the drive electronics take up of the energy that braking gives back.
//!
//! Method: the capacitors of the direct-voltage bus take what lifts them to their limit, the brake resistor the rest, once in
//! a stop and on the mean. Limits: every drive has electronics of its own; what another axis takes at that moment is not
//! credited.

use super::{Formula, Note};
use crate::source::Source;
use crate::units::*;

const EACH: &[Source] = &[Source::derived("each drive has electronics of its own")];

/// Energy that all drive electronics of an axis take up in one stop. 105 and 1600 J, two drives: 3410 J.
pub static STOP_ENERGY_LIMIT: Formula<fn(Energy, Energy, Ratio) -> Energy> = Formula {
    note: Note {
        id: "stop-energy-limit",
        title: "energy that all drive electronics of the axis take up in one stop",
        equation: "E_lim = n_d·(E_bus + E_R)",
        inputs: &[("E_bus", "bus-energy"), ("E_R", "resistor-energy"), ("n_d", "drives")],
        validity: "bus at its usual voltage and resistor cold before the stop",
        sources: EACH,
    },
    apply: |bus, resistor, drives| Energy::of_si(drives.si() * (bus.si() + resistor.si())),
};

/// Mean power that all brake resistors of an axis take up. 110 W, two drives: 220 W.
pub static REGENERATION_LIMIT: Formula<fn(Power, Ratio) -> Power> = Formula {
    note: Note {
        id: "regeneration-limit",
        title: "mean power that all brake resistors of the axis take up",
        equation: "P_lim = n_d·P_R",
        inputs: &[("P_R", "resistor-power"), ("n_d", "drives")],
        validity: "continuous rating of the resistor",
        sources: EACH,
    },
    apply: |resistor, drives| Power::of_si(drives.si() * resistor.si()),
};
