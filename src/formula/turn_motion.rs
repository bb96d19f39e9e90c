//! How smoothly a screw moves a slide: the rhythm of its turns against the first resonance.
//!
//! Method: kinematics; an error within one turn comes back once a lead. Limits: the first mode with the motor held; a position
//! loop takes away only what lies below about its gain over 2π.

use super::{Formula, Note};
use crate::source::Source;
use crate::units::*;

/// How often the error within one turn comes back at a speed. 6 m/min, lead 10 mm: 10 Hz.
pub static TURN_FREQUENCY: Formula<fn(Velocity, Length) -> Frequency> = Formula {
    note: Note {
        id: "turn-frequency",
        title: "rhythm of the turns of a screw or driven nut at a speed",
        equation: "f_n = v/p",
        inputs: &[("v", "speed"), ("p", "lead")],
        validity: "everywhere",
        sources: &[Source::derived("turns that pass in a second")],
    },
    apply: |speed, lead| Frequency::of_si(speed.si().abs() / lead.si()),
};

/// Speed at which the rhythm of the turns meets the first resonance. 60 Hz, lead 10 mm: 36 m/min.
pub static TURN_MARKING_SPEED: Formula<fn(Frequency, Length) -> Velocity> = Formula {
    note: Note {
        id: "turn-marking-speed",
        title: "speed at which the rhythm of the turns meets the first resonance",
        equation: "v*_n = f_1·p",
        inputs: &[("f_1", "first-mode"), ("p", "lead")],
        validity: "motor held; the error within one turn is amplified about tenfold there",
        sources: &[Source::derived("turn frequency equal to the first resonance")],
    },
    apply: |mode, lead| Velocity::of_si(mode.si() * lead.si()),
};
