//! How often a tooth is loaded over the service life.

use crate::formula::{Formula, Note};
use crate::source::Source;
use crate::units::{Length, Measure, Ratio};
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

/// Load cycles of the most used rack tooth: distance over the usual stroke. 20 000 km by 2 m: 1e7.
pub static RACK_CYCLES: Formula<fn(Length, Length) -> Ratio> = Formula {
    note: Note {
        id: "rack-cycles",
        title: "load cycles of the most used rack tooth",
        equation: "N_2 = s_life/s_u",
        inputs: &[("s_life", "service-distance"), ("s_u", "usual-stroke")],
        validity: "Each place of the rack meets the pinion once a pass; take the shortest stroke that is run often.",
        sources: &[Source::derived("one mesh a pass")],
    },
    apply: rack_cycles,
};
/// Load cycles of a rack tooth from distance run and usual stroke.
#[inline]
pub fn rack_cycles(service_distance: Length, usual_stroke: Length) -> Ratio {
    Ratio::of_si(service_distance.si() / usual_stroke.si())
}
