//! The position loop: largest gain that the mechanics allow, and the radius error of a circle.
//!
//! Method: two masses on an undamped spring under proportional-integral speed control with equal damping of
//! both pole pairs; the gain is the largest whose load response peaks at no more than 1.05. The curve of gain
//! over √(k/m_M) is replaced by its lower envelope, which never rises with the load. Limits: no sampling, one
//! mode, a margin covers drive lag; state control and notch filters can do better.

use super::{Formula, Note};
use crate::source::Source;
use crate::units::{Length, LoopGain, Mass, Measure, Ratio, Stiffness, Velocity};

/// Inertia ratio, and gain over √(k/m_M) with the encoder on the motor.
const MOTOR: [(f64, f64); 9] = [
    (0.1, 0.245),
    (0.15, 0.263),
    (0.25, 0.274),
    (0.35, 0.273),
    (0.5, 0.265),
    (1.0, 0.233),
    (2.0, 0.185),
    (4.0, 0.121),
    (8.0, 0.072),
];
/// Inertia ratio, and gain over √(k/m_M) with a scale at the slide.
const SCALE: [(f64, f64); 8] =
    [(0.1, 0.138), (0.25, 0.164), (0.5, 0.174), (0.7, 0.176), (1.0, 0.175), (2.0, 0.161), (4.0, 0.119), (8.0, 0.073)];

/// Gain over √(k/m_M): between the points linear in the logarithm of the inertia ratio, held at its first
/// value below, never above it, and falling with the inverse of the ratio beyond the last point.
#[inline]
fn reach(points: &[(f64, f64)], ratio: f64) -> f64 {
    let (first, last) = (points[0], points[points.len() - 1]);
    if ratio <= first.0 {
        return first.1;
    }
    if ratio >= last.0 {
        return last.1 * last.0 / ratio;
    }
    for pair in points.windows(2) {
        if ratio <= pair[1].0 {
            let place = (ratio / pair[0].0).ln() / (pair[1].0 / pair[0].0).ln();
            let value = pair[0].1 + place * (pair[1].1 - pair[0].1);
            return if value > first.1 { first.1 } else { value };
        }
    }
    f64::NAN
}

/// Largest gain of the position loop that the mechanics allow, 1/s.
///
/// Pass stiffness from motor to slide, driven mass, load inertia over motor inertia, feedback (0 for the encoder on the
/// motor, 1 for a scale), and the share of the computed gain that is used.
/// Check: 101.8 N/µm, 598.5 kg, 0.171, motor, 0.7 → 29.2 1/s.
pub static GAIN_LIMIT: Formula<fn(Stiffness, Mass, Ratio, Ratio, Ratio) -> LoopGain> = Formula {
    note: Note {
        id: "gain-limit",
        title: "largest gain of the position loop",
        equation: "K_v = x_K·√(k/m_M)·min(g_0, κ(λ)/√λ), m_M = m/λ, g_0 = 0.245 (motor) or 0.138 (scale)",
        inputs: &[("k", "stiffness"), ("m", "mass"), ("λ", "inertia-ratio"), ("f", "feedback"), ("x_K", "margin")],
        validity: "one spring, inertia ratio 0.1 to 8 by table (below, g_0; beyond, falling with 1/λ), drive lag short \
                   against the resonance",
        sources: &[Source::derived(
            "two-mass axis with proportional-integral speed control, frequency response of the load at most 1.05; swept numerically",
        )],
    },
    apply: gain_limit,
};

/// See [`GAIN_LIMIT`].
#[inline]
pub fn gain_limit(stiffness: Stiffness, mass: Mass, inertia_ratio: Ratio, feedback: Ratio, margin: Ratio) -> LoopGain {
    let ratio = inertia_ratio.si();
    let own = (stiffness.si() * ratio / mass.si()).sqrt();
    let feedback = feedback.si();
    let reach = if feedback < 0.5 { reach(&MOTOR, ratio) } else { reach(&SCALE, ratio) + 0.0 * feedback };
    LoopGain::of_si(margin.si() * own * reach)
}

/// Loss of radius on a circle, m; negative where the circle grows.
///
/// Pass path speed, radius, gain of the position loop, and share of speed that is fed forward.
/// Check: 0.1 m/s, 50 mm, 50 1/s, none → 39.95 µm.
pub static CIRCLE_ERROR: Formula<fn(Velocity, Length, LoopGain, Ratio) -> Length> = Formula {
    note: Note {
        id: "circle-error",
        title: "loss of radius on a circle",
        equation: "ΔR = R·(1 − √(1 + (f·ω/K_v)²)/√(1 + (ω/K_v)²)), ω = v/R",
        inputs: &[("v", "speed"), ("R", "radius"), ("K_v", "gain"), ("f", "feedforward")],
        validity: "both axes with the same gain, speed loop much faster than the position loop; with full feedforward \
                   the fast loop decides and the circle may grow",
        sources: &[Source::derived("first-order position loop driven along a circle")],
    },
    apply: circle_error,
};

/// See [`CIRCLE_ERROR`].
#[inline]
pub fn circle_error(speed: Velocity, radius: Length, gain: LoopGain, feedforward: Ratio) -> Length {
    let radius = radius.si();
    let lag = (speed.si() / radius / gain.si()).powi(2);
    let fed = feedforward.si().powi(2) * lag;
    // (1 − √(1+a)/√(1+b)) = (b − a)/(√(1+b)·(√(1+b) + √(1+a))), without cancellation
    let (outer, inner) = ((1.0 + lag).sqrt(), (1.0 + fed).sqrt());
    Length::of_si(radius * (lag - fed) / (outer * (outer + inner)))
}
