//! How smoothly teeth move a slide: the rhythm of the teeth against the first resonance, run-out, play that varies.
//!
//! Method: kinematics of a pinion that does not run true on a rack that is not straight. Limits: errors taken at
//! their limits; the play is worst where the low place of the pinion meets the low place of the rack.

use super::gear_geometry::PRESSURE_ANGLE;
use super::{Formula, Note};
use crate::source::Source;
use crate::units::*;
use std::f64::consts::PI;

/// Tooth frequency at a speed. 3 m/s, module 2 mm, metric helix: 450 Hz.
pub static TOOTH_FREQUENCY: Formula<fn(Velocity, Length, Angle) -> Frequency> = Formula {
    note: Note {
        id: "tooth-frequency",
        title: "rhythm of the teeth at a speed",
        equation: "f_z = v/p_t, p_t = π·m_n/cos β",
        inputs: &[("v", "speed"), ("m_n", "module"), ("β", "helix-angle")],
        validity: "everywhere",
        sources: &[Source::derived("teeth that pass in a second")],
    },
    apply: |speed, module, helix| Frequency::of_si(speed.si().abs() / transverse_pitch(module, helix)),
};

fn transverse_pitch(module: Length, helix: Angle) -> f64 {
    PI * module.si() / helix.si().cos()
}

/// Speed at which the rhythm of the teeth meets the first resonance. 30 Hz, module 2 mm, metric helix: 12 m/min.
pub static MARKING_SPEED: Formula<fn(Frequency, Length, Angle) -> Velocity> = Formula {
    note: Note {
        id: "marking-speed",
        title: "speed at which the rhythm of the teeth meets the first resonance",
        equation: "v* = f_1·p_t, p_t = π·m_n/cos β",
        inputs: &[("f_1", "first-mode"), ("m_n", "module"), ("β", "helix-angle")],
        validity: "Motor held; the ripple of the teeth is amplified about tenfold there. A position loop takes away only what lies below about its gain over 2π.",
        sources: &[Source::derived("tooth frequency equal to the first resonance")],
    },
    apply: |mode, module, helix| Velocity::of_si(mode.si() * transverse_pitch(module, helix)),
};

/// How far a rhythm is from a resonance. 450 Hz and 30 Hz: 14; 24 Hz and 30 Hz: 0.2.
pub static RESONANCE_DISTANCE: Formula<fn(Frequency, Frequency) -> Ratio> = Formula {
    note: Note {
        id: "resonance-distance",
        title: "how far a rhythm is from the first resonance",
        equation: "x_r = |f_z/f_1 − 1|",
        inputs: &[("f_z", "frequency"), ("f_1", "first-mode")],
        validity: "everywhere",
        sources: &[Source::derived("definition")],
    },
    apply: |frequency, mode| Ratio::of_si((frequency.si() / mode.si() - 1.0).abs()),
};

/// Ripple at the slide near the first resonance. 7 µm at 30 Hz, 35.1 Hz, damping 0.05: 24.8 µm; far above: 7 µm.
pub static RIPPLE_IN_CUT: Formula<fn(Length, Frequency, Frequency, Ratio) -> Length> = Formula {
    note: Note {
        id: "ripple-in-cut",
        title: "ripple at the slide in the cut, the first resonance in it",
        equation: "w_c = w·max(1, 1/√((1 − r²)² + (2·D·r)²)), r = f/f_1",
        inputs: &[("w", "ripple"), ("f", "frequency"), ("f_1", "first-mode"), ("D", "drive-damping")],
        validity: "One mass on a spring, motor held. Above the resonance the ripple fades, and a position loop takes away what lies below its gain over 2π: neither is counted (safe).",
        sources: &[
            Source::derived("amplification of one mass on a spring"),
            Source::practice("damping 0.03 to 0.10 of critical"),
        ],
    },
    apply: |ripple, frequency, mode, damping| {
        let r = frequency.si() / mode.si();
        let (spring, loss) = (1.0 - r * r, 2.0 * damping.si() * r);
        let gain = 1.0 / spring.hypot(loss);
        Length::of_si(ripple.si() * if gain < 1.0 { 1.0 } else { gain })
    },
};

/// How far an overlap ratio is from the nearest whole number, 1 at least. 1.277: 0.277; 0.4: 0.6; 1.9: 0.1.
pub static OVERLAP_EXCESS: Formula<fn(Ratio) -> Ratio> = Formula {
    note: Note {
        id: "overlap-excess",
        title: "how far the overlap ratio is from a whole number",
        equation: "x_β = |ε_β − max(1, round ε_β)|",
        inputs: &[("ε_β", "overlap-ratio")],
        validity: "With a whole overlap ratio the sum of the contact lines does not vary.",
        sources: &[Source::derived("sum of the trapezoids of all tooth pairs")],
    },
    apply: |overlap| {
        let whole = overlap.si().round();
        Ratio::of_si((overlap.si() - if whole < 1.0 { 1.0 } else { whole }).abs())
    },
};

/// Run-out of the teeth about the axis they turn on. F_p 24 µm, seat 10 µm: 31.6 µm.
pub static RUN_OUT: Formula<fn(Length, Length) -> Length> = Formula {
    note: Note {
        id: "pinion-run-out",
        title: "run-out of the pinion about the axis it turns on",
        equation: "F_r = 0.9·F_p + r_s",
        inputs: &[("F_p", "pinion-total-pitch-deviation"), ("r_s", "seat-run-out")],
        validity: "Teeth and seat in the same direction (safe); full range, twice the eccentricity.",
        sources: &[Source::standard(
            "ISO 1328-1:2013, run-out tolerance 0.9 of the total pitch tolerance, as reproduced in several public programs",
        )],
    },
    apply: |pitch, seat| Length::of_si(0.9 * pitch.si() + seat.si()),
};

/// Position error within one turn. Run-out 20 µm, metric helix: 21.4 µm.
pub static RUN_OUT_ERROR: Formula<fn(Length, Angle) -> Length> = Formula {
    note: Note {
        id: "run-out-error",
        title: "position error within one turn of a pinion that does not run true",
        equation: "e_r = F_r/cos α_t",
        inputs: &[("F_r", "pinion-run-out"), ("β", "helix-angle")],
        validity: "peak to peak",
        sources: &[Source::derived("eccentric base circle along the line of action, seen along the travel")],
    },
    apply: |run_out, helix| {
        let tan = transverse_tangent(helix);
        Length::of_si(run_out.si() * (1.0 + tan * tan).sqrt())
    },
};

fn transverse_tangent(helix: Angle) -> f64 {
    PRESSURE_ANGLE.tan() / helix.si().cos()
}

/// By how much the play between the teeth varies. 10 µm in all, straight: 7.28 µm; metric helix: 7.72 µm.
pub static PLAY_VARIATION: Formula<fn(Length, Length, Angle) -> Length> = Formula {
    note: Note {
        id: "play-variation",
        title: "by how much the play between the teeth varies over turn and travel",
        equation: "Δj = 2·tan α_t·(F_r + h_r)",
        inputs: &[("F_r", "pinion-run-out"), ("h_r", "height-waviness"), ("β", "helix-angle")],
        validity: "On top of the play that is set at the tightest place.",
        sources: &[Source::derived("play of two flanks when the centre distance changes")],
    },
    apply: |run_out, waviness, helix| Length::of_si(2.0 * transverse_tangent(helix) * (run_out.si() + waviness.si())),
};

/// One length over another. 24 mm over 42.44 mm: 0.5655.
pub static LENGTH_RATIO: Formula<fn(Length, Length) -> Ratio> = Formula {
    note: Note {
        id: "length-ratio",
        title: "one length over another",
        equation: "x = a/b",
        inputs: &[("a", "first"), ("b", "second")],
        validity: "everywhere",
        sources: &[Source::derived("definition")],
    },
    apply: |first, second| Ratio::of_si(first.si() / second.si()),
};

/// Speed number of the dynamic factor. 3 m/s, 20 teeth: 0.6 m/s.
pub static SPEED_NUMBER: Formula<fn(Velocity, Ratio) -> Velocity> = Formula {
    note: Note {
        id: "speed-number",
        title: "speed number that the dynamic factor is read at",
        equation: "s = v·z/100",
        inputs: &[("v", "speed"), ("z", "teeth")],
        validity: "rack as a wheel of infinitely many teeth",
        sources: &[Source::memory("ISO 6336-1:2006, dynamic factor method C")],
    },
    apply: |speed, teeth| Velocity::of_si(speed.si().abs() * teeth.si() / 100.0),
};
