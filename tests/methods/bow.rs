//! A bowed shaft and a slide on a spring, stepped in time: what turning makes of a bow, and a rhythm of a small error.
//!
//! Method: equations of motion of one mass, solved in time until the start has died away; the amplitude is that of the last turns. Source of the equations: W. T. Thomson, Theory of Vibration with Applications (from memory).

use crate::ode::solve;
use axiswright::formula::shaft::bow_amplification;
use axiswright::formula::{mesh_motion::RESONANCE_DISTANCE, turn_motion};
use axiswright::units::*;

/// Largest deflection of `x'' + 2·D·x' + x = drive(t)` in the last turns, natural frequency 1 rad/s, driven at `r` rad/s.
fn settled(r: f64, damping: f64, drive: impl Fn(f64) -> f64) -> f64 {
    // e^-12 of the start is left
    let settle = 12.0 / damping;
    let end = settle + 3.0 * std::f64::consts::TAU / r;
    let rate = |t: f64, [x, v]: [f64; 2]| [v, drive(t) - 2.0 * damping * v - x];
    let states = solve([0.0, end, 0.02 / r], [0.0; 2], 1e-9, rate);
    states.into_iter().filter(|(t, _)| *t > settle).map(|(_, [x, _])| x.abs()).fold(0.0, f64::max)
}

#[test]
fn a_bow_grows_as_a_turning_shaft_stepped_in_time_does() {
    for damping in [0.02, 0.05] {
        for r in [0.3, 0.5, 0.7, 0.8, 0.9, 1.2] {
            // a bow of 1 whose centrifugal force r² turns with the shaft
            let stepped = settled(r, damping, |t| r * r * (r * t).cos());
            let (speed, whip) = (AngularVelocity::of_si(r), AngularVelocity::of_si(1.0));
            let formula = bow_amplification(speed, whip, Ratio::of_si(damping)).si();
            assert!((stepped - formula).abs() < 1e-3 * formula, "r {r}, D {damping}: {stepped} against {formula}");
        }
    }
}

/// What the advice says of a rhythm 30 % off the resonance: doubled at most.
#[test]
fn thirty_percent_off_the_resonance_an_error_is_doubled_at_most() {
    let mode = Frequency::of_si(1.0 / std::f64::consts::TAU);
    let lead = Length::of_si(0.01);
    for r in [0.7, 1.3, 1.6] {
        let speed = Velocity::of_si(r * mode.si() * lead.si());
        let rhythm = (turn_motion::TURN_FREQUENCY.apply)(speed, lead);
        let distance = (RESONANCE_DISTANCE.apply)(rhythm, mode).si();
        assert!((distance - (r - 1.0_f64).abs()).abs() < 1e-12);
        // the slide follows an error of 1 through its spring
        let moved = settled(r, 0.05, |t| (r * t).cos());
        assert!(moved < 2.0, "r {r}: {moved}");
    }
    let at_resonance = settled(1.0, 0.05, f64::cos);
    assert!((at_resonance - 10.0).abs() < 0.01, "{at_resonance}");
    let marking = (turn_motion::TURN_MARKING_SPEED.apply)(mode, lead);
    assert!((marking.si() - mode.si() * lead.si()).abs() < 1e-15);
}
