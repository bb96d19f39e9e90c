//! Time of a move against a profile built and integrated step by step.
//!
//! Method: for a peak speed, speeding up is jerk up, hold, jerk down; slowing down mirrors it. The peak speed that
//! uses the travel up is found by bisection on the integrated distance, and any travel left is cruised.

use axiswright::formula::motion::{move_time, trapezoid_time};
use axiswright::units::{Acceleration, Jerk, Length, Measure, Time, Velocity};
use proptest::prelude::*;

/// The segments (jerk, time) that speed up to a peak without passing the acceleration.
fn speeding_up(peak: f64, acceleration: f64, jerk: f64) -> [(f64, f64); 3] {
    let ramp = (acceleration / jerk).min((peak / jerk).sqrt());
    let hold = (peak / (jerk * ramp) - ramp).max(0.0);
    [(jerk, ramp), (0.0, hold), (-jerk, ramp)]
}

/// Integrates segments in small steps from rest; gives time, distance, final speed, and the peaks on the way.
fn integrate(segments: &[(f64, f64)]) -> (f64, f64, f64, f64, f64) {
    let (mut time, mut place, mut speed, mut acceleration) = (0.0, 0.0, 0.0, 0.0_f64);
    let (mut most_speed, mut most_acceleration) = (0.0_f64, 0.0_f64);
    const STEPS: usize = 400;
    for (jerk, duration) in segments {
        let step = duration / STEPS as f64;
        for _ in 0..STEPS {
            // a step of Heun's method: the acceleration is linear, the speed quadratic within a step
            let next = acceleration + jerk * step;
            let faster = speed + (acceleration + next) / 2.0 * step;
            place += (speed + faster) / 2.0 * step;
            (acceleration, speed) = (next, faster);
            most_speed = most_speed.max(speed);
            most_acceleration = most_acceleration.max(acceleration.abs());
        }
        time += duration;
    }
    (time, place, speed, most_speed, most_acceleration)
}

/// The time of a move, and the peaks of speed and acceleration on the way.
fn by_integration(travel: f64, speed: f64, acceleration: f64, jerk: f64) -> (f64, f64, f64) {
    let reach = |peak: f64| 2.0 * integrate(&speeding_up(peak, acceleration, jerk)).1;
    let (mut low, mut high) = (0.0, speed);
    if reach(speed) > travel {
        for _ in 0..60 {
            let middle = (low + high) / 2.0;
            if reach(middle) > travel { high = middle } else { low = middle }
        }
    }
    let up = speeding_up(high, acceleration, jerk);
    let (time, _, end, most_speed, most_acceleration) = integrate(&up);
    assert!((end - high).abs() < 1e-9 * high.max(1.0));
    let cruise = ((travel - reach(high)) / high).max(0.0);
    (2.0 * time + cruise, most_speed, most_acceleration)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn the_time_of_a_move_is_that_of_the_integrated_profile(
        travel in 1e-4_f64..20.0, speed in 0.01_f64..3.0, acceleration in 0.1_f64..30.0, jerk in 1.0_f64..3000.0,
    ) {
        let time = move_time(
            Length::of_si(travel), Velocity::of_si(speed), Acceleration::of_si(acceleration), Jerk::of_si(jerk),
        ).si();
        let (integrated, most_speed, most_acceleration) = by_integration(travel, speed, acceleration, jerk);
        prop_assert!((time - integrated).abs() <= 2e-5 * integrated, "{time} s, integrated {integrated} s");
        prop_assert!(most_speed <= speed * (1.0 + 1e-9) && most_acceleration <= acceleration * (1.0 + 1e-9));
    }

    #[test]
    fn without_a_jerk_limit_a_move_is_never_slower(
        travel in 1e-4_f64..20.0, speed in 0.01_f64..3.0, acceleration in 0.1_f64..30.0, jerk in 1.0_f64..3000.0,
    ) {
        let (s, v, a) = (Length::of_si(travel), Velocity::of_si(speed), Acceleration::of_si(acceleration));
        let plain = trapezoid_time(s, v, a).si();
        prop_assert!(plain <= move_time(s, v, a, Jerk::of_si(jerk)).si() * (1.0 + 1e-12));
        let exact = if travel >= speed * speed / acceleration {
            travel / speed + speed / acceleration
        } else {
            2.0 * (travel / acceleration).sqrt()
        };
        prop_assert!((plain - exact).abs() <= 1e-12 * exact);
    }
}

#[test]
fn no_travel_takes_no_time_and_a_missing_value_stays_missing() {
    let time = |s: f64, v: f64, a: f64, j: f64| -> Time {
        move_time(Length::of_si(s), Velocity::of_si(v), Acceleration::of_si(a), Jerk::of_si(j))
    };
    assert_eq!(time(0.0, 0.5, 5.0, 100.0).si(), 0.0);
    for missing in 0..4 {
        let mut given = [0.8, 0.5, 5.0, 100.0];
        given[missing] = f64::NAN;
        assert!(time(given[0], given[1], given[2], given[3]).si().is_nan(), "{given:?}");
    }
}
