//! What the position loop and the swinging slide leave behind: lag, contour, reversal, vibration, settling.
//!
//! Method: the two masses of `super::dynamics`, a proportional position loop, speed fed forward by a share. Limits: one mode, no
//! sampling, no notch filter; drive lag is covered by the margin of the gain.

use super::{Formula, Note};
use crate::source::Source;
use crate::units::*;
use std::f64::consts::PI;

const LOOP: Source = Source::derived("proportional position loop; compared with a simulation in time");
const TWO_MASSES: Source =
    Source::derived("two masses on a spring, both pole pairs with equal damping; compared with a simulation in time");

/// Mass at the slide over that of all that turns, seen at the slide. 600 kg, 3500 kg: 0.1714.
pub static MASS_RATIO: Formula<fn(Mass, Mass) -> Ratio> = Formula {
    note: Note {
        id: "mass-ratio",
        title: "mass at the slide over that of all that turns, seen at the slide",
        equation: "λ = m/m_M",
        inputs: &[("m", "driven-mass"), ("m_M", "reduced-mass")],
        validity: "one spring between both",
        sources: &[Source::derived("definition")],
    },
    apply: |load, motor| Ratio::of_si(load.si() / motor.si()),
};

/// Resonance of both masses against each other. 40 Hz, λ 2: 69.28 Hz.
pub static FREE_MODE: Formula<fn(Frequency, Ratio) -> Frequency> = Formula {
    note: Note {
        id: "free-mode",
        title: "resonance of slide and motor against each other, motor free",
        equation: "f_r = f_1·√(1 + λ)",
        inputs: &[("f_1", "first-mode"), ("λ", "mass-ratio")],
        validity: "undamped",
        sources: &[Source::derived("two masses on a spring, free at both ends")],
    },
    apply: |mode, ratio| Frequency::of_si(mode.si() * (1.0 + ratio.si()).sqrt()),
};

/// How far the slide lags behind at a speed. 0.5 m/s, 50 1/s, nothing fed forward: 10 mm; 90 %: 1 mm.
pub static FOLLOWING_ERROR: Formula<fn(Velocity, LoopGain, Ratio) -> Length> = Formula {
    note: Note {
        id: "following-error",
        title: "how far the slide lags behind at a speed",
        equation: "Δ = (1 − f)·v/K_v",
        inputs: &[("v", "speed"), ("K_v", "gain"), ("f", "feedforward")],
        validity: "at constant speed",
        sources: &[LOOP],
    },
    apply: |speed, gain, fed| Length::of_si((1.0 - fed.si()) * speed.si() / gain.si()),
};

/// Damping of both pole pairs that an inertia ratio allows.
fn damping(ratio: f64) -> f64 {
    let most = ratio.sqrt() / 2.0;
    if most > 0.7 { 0.7 } else { most }
}

/// Loss of radius on a circle with the give of the drive in it, m; negative where the circle grows.
///
/// 39.95 µm by the loop alone, 0.1 m/s, 50 mm, 60 Hz, at the motor: 38.5 µm; nothing by the loop: −1.4 µm.
pub static FED_CIRCLE_ERROR: Formula<fn(Length, Velocity, Length, Frequency, Ratio) -> Length> = Formula {
    note: Note {
        id: "fed-circle-error",
        title: "loss of radius on a circle with the give of the drive",
        equation: "ΔR_1 = ΔR_0 − (1 − f_sc)·v²/(R·ω_1²)",
        inputs: &[
            ("ΔR_0", "circle-error"),
            ("v", "speed"),
            ("R", "radius"),
            ("f_1", "first-mode"),
            ("f_sc", "feedback"),
        ],
        validity: "both axes alike, integral action in the speed loop; v/R well below the gain and the first resonance; f_sc is 0 at the motor, 1 with a scale; negative: the circle grows",
        sources: &[Source::derived(
            "a slide that swings outward on its spring beside the lag of the loop; compared with a simulation in time",
        )],
    },
    apply: |plain, speed, radius, mode, feedback| {
        let omega = 2.0 * PI * mode.si();
        let swing = speed.si() * speed.si() / (radius.si() * omega * omega);
        Length::of_si(plain.si() - (1.0 - feedback.si()) * swing)
    },
};

/// The greater of two radius errors in amount. −15 µm and 4 µm: 15 µm.
pub static CONTOUR_ERROR: Formula<fn(Length, Length) -> Length> = Formula {
    note: Note {
        id: "contour-error",
        title: "radius error on a circle, the greater in amount",
        equation: "e_R = max(|ΔR_0|, |ΔR_1|)",
        inputs: &[("ΔR_0", "circle-error"), ("ΔR_1", "fed-circle-error")],
        validity: "of the position loop alone, and with the give of the drive",
        sources: &[Source::derived("definition")],
    },
    apply: |plain, fed| {
        let (plain, fed) = (plain.si().abs(), fed.si().abs());
        Length::of_si(if plain > fed || plain.is_nan() { plain } else { fed })
    },
};

/// Largest deviation when friction turns its sign.
///
/// 300 N, 100 N/µm, 1000 kg, λ 2, 40 1/s: 29.8 µm.
pub static REVERSAL_SPIKE: Formula<fn(Force, Stiffness, Mass, Ratio, LoopGain) -> Length> = Formula {
    note: Note {
        id: "reversal-spike",
        title: "largest deviation when friction turns its sign",
        equation: "x_s = 2·F_f·(1/(K_p·K_v) + 1/k), K_p = 2·D·ω_1·m_M·√(4 + λ − 4·D²), ω_1 = √(k/(λ·m_M)), D = min(0.7, √λ/2)",
        inputs: &[
            ("F_f", "friction"),
            ("k", "stiffness"),
            ("m_M", "reduced-mass"),
            ("λ", "mass-ratio"),
            ("K_v", "gain"),
        ],
        validity: "an upper bound without friction fed forward; play comes on top",
        sources: &[TWO_MASSES],
    },
    apply: |friction, stiffness, motor, ratio, gain| {
        let (ratio, motor, stiffness) = (ratio.si(), motor.si(), stiffness.si());
        let damping = damping(ratio);
        let mode = (stiffness / (ratio * motor)).sqrt();
        let speed_gain = 2.0 * damping * mode * motor * (4.0 + ratio - 4.0 * damping * damping).sqrt();
        Length::of_si(2.0 * friction.si() * (1.0 / (speed_gain * gain.si()) + 1.0 / stiffness))
    },
};

/// What one ramp of jerk leaves swinging. 5 m/s², 500 m/s³, 30 Hz: 120.8 µm.
pub static JERK_RESIDUE: Formula<fn(Acceleration, Jerk, Frequency) -> Length> = Formula {
    note: Note {
        id: "jerk-residue",
        title: "amplitude that one ramp of jerk leaves swinging",
        equation: "x_jr = a/ω_1²·|sin(π·f_1·T)/(π·f_1·T)|, T = a/j",
        inputs: &[("a", "acceleration"), ("j", "jerk"), ("f_1", "first-mode")],
        validity: "undamped; a move has four ramps, of which one ends it",
        sources: &[Source::derived(
            "one mass on a spring under a ramp of acceleration; compared with a simulation in time",
        )],
    },
    apply: |acceleration, jerk, mode| {
        let omega = 2.0 * PI * mode.si();
        let half = 0.5 * omega * acceleration.si() / jerk.si();
        let left = if half == 0.0 { 1.0 } else { (half.sin() / half).abs() };
        Length::of_si(acceleration.si() / (omega * omega) * left)
    },
};

/// Amplitude that the ramps of a move leave swinging at the most, wherever the resonance lies.
///
/// 5 m/s², 500 m/s³, 30 Hz: 4·140.7 µm; 5 m/s², 50 m/s³: 4·140.7/9.425 = 59.7 µm.
pub static JERK_ENVELOPE: Formula<fn(Acceleration, Jerk, Frequency) -> Length> = Formula {
    note: Note {
        id: "jerk-envelope",
        title: "amplitude that the ramps of a move leave swinging at the most",
        equation: "x_je = 4·a/ω_1²·min(1, 1/(π·f_1·T)), T = a/j",
        inputs: &[("a", "acceleration"), ("j", "jerk"), ("f_1", "first-mode")],
        validity: "four ramps that add up; the resonance moves along the travel, so no whole number of periods is counted on",
        sources: &[Source::derived("envelope of the amplitude that a ramp of acceleration leaves, four times")],
    },
    apply: |acceleration, jerk, mode| {
        let omega = 2.0 * PI * mode.si();
        let half = 0.5 * omega * acceleration.si() / jerk.si();
        let left = if half < 1.0 { 1.0 } else { 1.0 / half };
        Length::of_si(4.0 * acceleration.si() / (omega * omega) * left)
    },
};

/// Time from the end of a move until the slide stays in a window.
///
/// 2 m/s², 50 1/s, 10 µm, nothing swinging: 87.6 ms.
pub static SETTLING_TIME: Formula<fn(Acceleration, LoopGain, Length, Length, Frequency, Ratio) -> Time> = Formula {
    note: Note {
        id: "settling-time",
        title: "time from the end of a move until the slide stays in a window",
        equation: "t = max(0, ln(a/(K_v²·w))/K_v) + max(0, ln(x_je/w)/(D·ω_1))",
        inputs: &[
            ("a", "acceleration"),
            ("K_v", "gain"),
            ("w", "window"),
            ("x_je", "jerk-envelope"),
            ("f_1", "first-mode"),
            ("D", "damping"),
        ],
        validity: "lag of the loop and swinging one after the other (safe); w to either side",
        sources: &[LOOP],
    },
    apply: |acceleration, gain, window, residue, mode, damping| {
        let (gain, window) = (gain.si(), window.si());
        let decay = |from: f64, rate: f64| {
            let time = (from / window).ln() / rate;
            if time > 0.0 || time.is_nan() { time } else { 0.0 }
        };
        let lag = if residue.si() == 0.0 {
            0.0 * mode.si() * damping.si()
        } else {
            decay(residue.si(), 2.0 * PI * mode.si() * damping.si())
        };
        Time::of_si(decay(acceleration.si() / (gain * gain), gain) + lag)
    },
};
