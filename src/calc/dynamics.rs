//! Entries of `calc` on dynamics: resonance, loop gain, circle, bow of a turning screw.

use super::Entry;
use super::argument::Argument;
use super::error::Fault;
use super::given::{Given, Outcome};
use crate::formula::{dynamics, shaft, stiffness};
use crate::units::Dimension as D;
use crate::units::{Measure, Ratio};

/// The entries of this file.
pub(super) fn entries() -> Vec<Entry> {
    vec![
        Entry::own(
            &stiffness::NATURAL_FREQUENCY.note,
            &[Argument::positive("stiffness", D::Stiffness), Argument::positive("mass", D::Mass)],
            (D::Frequency, "Hz"),
            |given| Ok(Outcome::of(stiffness::natural_frequency(given.get("stiffness"), given.get("mass")))),
        ),
        Entry::own(
            &dynamics::GAIN_LIMIT.note,
            &[
                Argument::positive("stiffness", D::Stiffness),
                Argument::positive("mass", D::Mass),
                Argument::positive("inertia-ratio", D::Ratio),
                Argument::word("feedback", &["motor", "scale"]),
                Argument::share("margin").or("0.7"),
            ],
            (D::LoopGain, "1/s"),
            gain_limit,
        ),
        Entry::own(
            &dynamics::CIRCLE_ERROR.note,
            &[
                Argument::not_negative("speed", D::Velocity),
                Argument::positive("radius", D::Length),
                Argument::positive("gain", D::LoopGain),
                Argument::share("feedforward").or("0"),
            ],
            (D::Length, "µm"),
            circle_error,
        ),
        Entry::own(
            &shaft::BOW_AMPLIFICATION.note,
            &[
                Argument::not_negative("speed", D::AngularVelocity),
                Argument::positive("whip-speed", D::AngularVelocity),
                Argument::not_negative("damping", D::Ratio).or("0.02"),
            ],
            (D::Ratio, "1"),
            bow_amplification,
        ),
    ]
}

fn gain_limit(given: &Given) -> Result<Outcome, Fault> {
    let feedback = Ratio::of_si(if given.word("feedback") == "scale" { 1.0 } else { 0.0 });
    let ratio: Ratio = given.get("inertia-ratio");
    let gain = dynamics::gain_limit(given.get("stiffness"), given.get("mass"), ratio, feedback, given.get("margin"));
    Ok(Outcome::of(gain)
        .valid_if(ratio.si() >= 0.1, "inertia ratio below 0.1: the value at 0.1 is held")
        .valid_if(ratio.si() <= 8.0, "inertia ratio above 8: continued, falling with the inverse of the ratio"))
}

fn circle_error(given: &Given) -> Result<Outcome, Fault> {
    let error =
        dynamics::circle_error(given.get("speed"), given.get("radius"), given.get("gain"), given.get("feedforward"));
    Ok(Outcome::of(error).valid_if(
        given.value("feedforward") <= 0.9,
        "with nearly full feedforward the speed loop decides, and the circle may grow",
    ))
}

fn bow_amplification(given: &Given) -> Result<Outcome, Fault> {
    let share = given.value("speed") / given.value("whip-speed");
    Ok(Outcome::of(shaft::bow_amplification(given.get("speed"), given.get("whip-speed"), given.get("damping")))
        .step("r", Ratio::of_si(share))
        .valid_if(share <= 2.0, "speed beyond twice the critical speed, where the second mode comes near"))
}
