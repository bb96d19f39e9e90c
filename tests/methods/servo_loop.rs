//! The position loop stepped in time: lag, circle, reversal, jerk and settling against the closed forms.
//!
//! Method: two masses on an undamped spring (the slide with a little damping where something has to die away), proportional
//! and integral speed loop set for equal damping of both pole pairs, proportional position loop; solved in time by a library. The
//! formulas are not used inside. Sources: control of a two-mass axis as in textbooks on drives (from memory).

use crate::ode::solve;
use axiswright::formula::dynamics::{circle_error, gain_limit};
use axiswright::formula::servo::*;
use axiswright::units::*;
use std::f64::consts::PI;

/// A two-mass axis with its loops.
struct Axis {
    motor: f64,
    load: f64,
    stiffness: f64,
    gain: f64,
    speed_gain: f64,
    integral: f64,
    scale: bool,
}

impl Axis {
    fn new(stiffness: f64, motor: f64, ratio: f64, scale: bool) -> Axis {
        let load = ratio * motor;
        let mode = (stiffness / load).sqrt();
        let damping = (ratio.sqrt() / 2.0).min(0.7);
        let gain = gain_limit(
            Stiffness::of_si(stiffness),
            Mass::of_si(load),
            Ratio::of_si(ratio),
            Ratio::of_si(if scale { 1.0 } else { 0.0 }),
            Ratio::of_si(0.7),
        );
        Axis {
            motor,
            load,
            stiffness,
            gain: gain.si(),
            speed_gain: 2.0 * damping * mode * motor * (4.0 + ratio - 4.0 * damping * damping).sqrt(),
            integral: motor * mode * mode,
            scale,
        }
    }

    /// State: motor place, motor speed, load place, load speed, integral of the speed error.
    fn rate(&self, state: [f64; 5], wanted: f64, fed: f64, friction: f64) -> [f64; 5] {
        let [xm, vm, xl, vl, sum] = state;
        let place = if self.scale { xl } else { xm };
        let error = self.gain * (wanted - place) + fed - vm;
        let force = self.speed_gain * error + self.integral * sum;
        let spring = self.stiffness * (xm - xl);
        [vm, (force - spring) / self.motor, vl, (spring - friction) / self.load, error]
    }
}

#[test]
fn the_lag_at_constant_speed_is_that_of_the_stepped_axis() {
    let axis = Axis::new(100e6, 1000.0, 2.0, false);
    let speed = 0.2;
    for fed in [0.0, 0.6] {
        let rate = |t: f64, state: [f64; 5]| axis.rate(state, speed * t, fed * speed, 0.0);
        let (t, state) = *solve([0.0, 1.5, 0.01], [0.0; 5], 1e-12, rate).last().expect("a state");
        let lag = speed * t - state[2];
        let formula =
            (FOLLOWING_ERROR.apply)(Velocity::of_si(speed), LoopGain::of_si(axis.gain), Ratio::of_si(fed)).si();
        assert!((lag - formula).abs() < 1e-3 * formula, "fed {fed}: {lag} against {formula}");
    }
}

/// Mean radius of the slide on a circle, both axes alike, once the start has died away.
fn radius(axis: &Axis, speed: f64, radius: f64, fed: f64) -> f64 {
    let turn = speed / radius;
    let rate =
        |t: f64, state: [f64; 5]| axis.rate(state, radius * (turn * t).sin(), fed * speed * (turn * t).cos(), 0.0);
    let (start, round) = (2.0, 2.0 * PI / turn);
    let (mut sine, mut cosine, mut count) = (0.0, 0.0, 0.0);
    let steps = 4000.0;
    for (t, state) in solve([0.0, start + round, round / steps], [0.0; 5], 1e-12, rate) {
        if t >= start && count < steps {
            // the amplitude of the slide at the turning frequency
            sine += state[2] * (turn * t).sin();
            cosine += state[2] * (turn * t).cos();
            count += 1.0;
        }
    }
    2.0 / count * sine.hypot(cosine)
}

/// Within a tenth of the lag of the loop alone; fully fed forward and measured at the motor the circle grows.
#[test]
fn the_circle_of_the_axis_in_time_is_that_of_the_formula() {
    let (speed, round) = (0.1, 0.05);
    for scale in [false, true] {
        for ratio in [0.25, 1.0, 4.0] {
            let axis = Axis::new(100e6, 800.0, ratio, scale);
            let mode = Frequency::of_si((axis.stiffness / axis.load).sqrt() / (2.0 * PI));
            let (v, r, gain) = (Velocity::of_si(speed), Length::of_si(round), LoopGain::of_si(axis.gain));
            let feedback = Ratio::of_si(if scale { 1.0 } else { 0.0 });
            let plain = |fed: f64| circle_error(v, r, gain, Ratio::of_si(fed));
            let formula = |fed: f64| (FED_CIRCLE_ERROR.apply)(plain(fed), v, r, mode, feedback).si();
            for fed in [0.0, 0.5, 1.0] {
                let loss = round - radius(&axis, speed, round, fed);
                let what = format!("scale {scale}, λ {ratio}, fed {fed}: {loss} against {}", formula(fed));
                assert!((loss - formula(fed)).abs() <= 0.1 * formula(0.0), "{what}");
                let judged = (CONTOUR_ERROR.apply)(plain(fed), Length::of_si(formula(fed)));
                assert!(loss.abs() <= 1.1 * judged.si() + 0.02 * formula(0.0), "{what}");
                if fed == 1.0 && !scale {
                    assert!(loss < 0.0 && (loss / formula(fed) - 1.0).abs() < 0.2, "{what}");
                }
            }
        }
    }
}

/// A heavier slide never settles sooner and never follows a circle better, whatever its resonance does.
#[test]
fn settling_and_circle_never_gain_by_mass() {
    for scale in [0.0, 1.0] {
        let mut before = (0.0, [[0.0; 3]; 5]);
        for step in 1..400 {
            let (stiffness, motor) = (Stiffness::of_si(80e6), 1500.0);
            let load = 10.0 * f64::from(step);
            let ratio = Ratio::of_si(load / motor);
            let mode = Frequency::of_si((stiffness.si() / load).sqrt() / (2.0 * PI));
            let gain = gain_limit(stiffness, Mass::of_si(load), ratio, Ratio::of_si(scale), Ratio::of_si(0.7));
            let (a, window) = (Acceleration::of_si(2.0), Length::of_si(1e-6));
            let swing = (JERK_ENVELOPE.apply)(a, Jerk::of_si(100.0), mode);
            let settled = (SETTLING_TIME.apply)(a, gain, window, swing, mode, Ratio::of_si(0.03)).si();
            assert!(settled >= before.0 * (1.0 - 1e-12), "{load} kg settles in {settled} s");
            before.0 = settled;
            for (fed, least) in [0.0, 0.5, 0.9, 0.97, 1.0].into_iter().zip(&mut before.1) {
                // fast against the gain as well, where terms of second order no longer do
                for (speed, least) in [0.02, 0.1, 0.5].into_iter().zip(least) {
                    let (v, r) = (Velocity::of_si(speed), Length::of_si(0.1));
                    let plain = circle_error(v, r, gain, Ratio::of_si(fed));
                    let giving = (FED_CIRCLE_ERROR.apply)(plain, v, r, mode, Ratio::of_si(scale));
                    let circle = (CONTOUR_ERROR.apply)(plain, giving).si();
                    assert!(circle >= *least * (1.0 - 1e-12), "{load} kg, {speed} m/s, fed {fed}: {circle} m");
                    *least = circle;
                }
            }
        }
    }
}

#[test]
fn a_reversal_of_friction_moves_the_stepped_axis_less_than_the_bound() {
    for ratio in [1.0, 2.0, 4.0] {
        let axis = Axis::new(100e6, 1000.0, ratio, false);
        let friction = 300.0;
        // at rest under friction one way, then the other way
        let before = |_: f64, state: [f64; 5]| axis.rate(state, 0.0, 0.0, friction);
        let after = |_: f64, state: [f64; 5]| axis.rate(state, 0.0, 0.0, -friction);
        let (_, still) = *solve([0.0, 1.5, 0.01], [0.0; 5], 1e-12, before).last().expect("a state");
        let turned = solve([0.0, 1.0, 1e-4], still, 1e-12, after);
        let rest = still[2];
        let most = turned.iter().map(|(_, state)| (state[2] - rest).abs()).fold(0.0, f64::max);
        let remaining = turned.last().map_or(f64::NAN, |(_, state)| (state[2] - rest).abs());
        let bound = (REVERSAL_SPIKE.apply)(
            Force::of_si(friction),
            Stiffness::of_si(axis.stiffness),
            Mass::of_si(axis.motor),
            Ratio::of_si(ratio),
            LoopGain::of_si(axis.gain),
        )
        .si();
        assert!(most <= bound && most > 0.5 * bound, "λ {ratio}: {most} against {bound}");
        // with the encoder on the motor the give of the spring stays
        let give = 2.0 * friction / axis.stiffness;
        assert!((remaining - give).abs() < 0.02 * give, "λ {ratio}: {remaining} against {give}");
    }
}

#[test]
fn a_ramp_of_jerk_leaves_the_amplitude_of_a_stepped_slide() {
    let omega = 2.0 * PI * 30.0;
    for (acceleration, jerk) in [(5.0, 500.0), (5.0, 150.0), (2.0, 100.0), (3.0, 45.0)] {
        // the support accelerates by a ramp and stays; the slide hangs on its spring
        let time = acceleration / jerk;
        let push = |t: f64| if t < time { jerk * t } else { acceleration };
        let rate = |t: f64, [x, v]: [f64; 2]| [v, -omega * omega * x - push(t)];
        let states = solve([0.0, time + 0.1, 2e-5], [0.0; 2], 1e-12, rate);
        let after = || states.iter().filter(|(t, _)| *t > time).map(|(_, [x, _])| *x);
        let (high, low) = (after().fold(f64::MIN, f64::max), after().fold(f64::MAX, f64::min));
        let stepped = 0.5 * (high - low);
        let mode = Frequency::of_si(30.0);
        let formula = (JERK_RESIDUE.apply)(Acceleration::of_si(acceleration), Jerk::of_si(jerk), mode).si();
        let envelope = (JERK_ENVELOPE.apply)(Acceleration::of_si(acceleration), Jerk::of_si(jerk), mode).si();
        assert!(4.0 * stepped <= envelope * (1.0 + 1e-3), "{stepped} beside {envelope}");
        assert!((stepped - formula).abs() < 1e-3 * acceleration / omega / omega, "{stepped} against {formula}");
    }
}

/// A proportional loop after a long deceleration, and one mass that swings: the window is reached no later than stated.
#[test]
fn the_stepped_loop_has_settled_by_the_stated_time() {
    let (acceleration, gain, window): (f64, f64, f64) = (2.0, 50.0, 10e-6);
    let residue = 60e-6;
    let (mode, damping) = (30.0, 0.03);
    let settle = |residue: f64| {
        (SETTLING_TIME.apply)(
            Acceleration::of_si(acceleration),
            LoopGain::of_si(gain),
            Length::of_si(window),
            Length::of_si(residue),
            Frequency::of_si(mode),
            Ratio::of_si(damping),
        )
        .si()
    };
    // the error of the loop at the end of the deceleration decays as e' = −K_v·e
    let start = acceleration / (gain * gain);
    let decay = solve([0.0, 1.5, 1e-5], [start], 1e-15, |_, [e]: [f64; 1]| [-gain * e]);
    let t = decay.iter().find(|(_, [e])| *e <= window).map_or(f64::NAN, |(t, _)| *t);
    assert!((t - settle(0.0)).abs() < 2e-5, "{t} against {}", settle(0.0));
    // with the slide swinging as well
    let omega = 2.0 * PI * mode;
    let both = settle(residue);
    let damped = |_: f64, [x, v]: [f64; 2]| [v, -2.0 * damping * omega * v - omega * omega * x];
    let swing = solve([0.0, 1.5, 1e-5], [residue, 0.0], 1e-15, damped);
    let outside = decay.iter().zip(&swing).filter(|((_, [e]), (_, [x, _]))| (e + x).abs() > window);
    let last = outside.fold(None, |_, step| Some(step)).map_or(0.0, |((t, _), _)| *t);
    assert!(last <= both, "{last} s against {both} s");
}
