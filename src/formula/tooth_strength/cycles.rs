//! How often a tooth is loaded over the service life.

use crate::formula::{Formula, Note};
use crate::source::Source;
use crate::units::{Length, Measure, Ratio, Time};
use std::f64::consts::PI;

/// Load cycles of a pinion tooth: distance over the circumference. 20 000 km on 42.44 mm: 1.5e8.
pub static PINION_CYCLES: Formula<fn(Length, Length) -> Ratio> = Formula {
    note: Note {
        id: "pinion-cycles",
        title: "load cycles of a pinion tooth",
        equation: "N_1 = s_life/(π·d)",
        inputs: &[("s_life", "service-distance"), ("d", "pinion-diameter")],
        validity: "Every turn loads every tooth once; both directions counted together (safe).",
        sources: &[Source::derived("one mesh a turn")],
    },
    apply: pinion_cycles,
};
/// Load cycles of a pinion tooth from distance run and pinion diameter.
#[inline]
pub fn pinion_cycles(service_distance: Length, pinion_diameter: Length) -> Ratio {
    Ratio::of_si(service_distance.si() / (PI * pinion_diameter.si()))
}

/// Load cycles of the most used rack tooth: the moves of the service life. 400 moves an hour, 25 000 h: 1e7.
pub static RACK_CYCLES: Formula<fn(Ratio, Time) -> Ratio> = Formula {
    note: Note {
        id: "rack-cycles",
        title: "load cycles of the most used rack tooth",
        equation: "N_2 = N_h·t_s/1 h",
        inputs: &[("N_h", "moves-per-hour"), ("t_s", "service-hours")],
        validity: "Each place of the rack meets the pinion once a move; every move is taken to pass the most used place (safe).",
        sources: &[Source::derived("one mesh a pass")],
    },
    apply: rack_cycles,
};
/// Load cycles of a rack tooth from moves in an hour and working hours.
#[inline]
pub fn rack_cycles(moves_per_hour: Ratio, service_hours: Time) -> Ratio {
    Ratio::of_si(moves_per_hour.si() * service_hours.si() / 3600.0)
}
