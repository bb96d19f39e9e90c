//! Energy of a stop against power integrated over time, and what a ramp of acceleration leaves swinging.
//!
//! Method: the braking move is stepped through from full speed, power at the motor shaft summed by the midpoint rule; the
//! oscillator is one mass on one spring, stepped by the exact turn of its state with the force held over a short step.
//! Both are derived here, no source.

use axiswright::formula::energy;
use axiswright::units::*;
use std::f64::consts::TAU;

/// 300 kg go down at 0.5 m/s and are stopped at 5 m/s² and 100 m/s³ on a lead of 10 mm; 30 % of the weight is balanced.
#[test]
fn the_energy_of_a_stop_is_the_power_at_the_shaft_summed_over_it() {
    let (mass, top, a, j, lead, reduction) = (300.0, 0.5, 5.0, 100.0, 0.01, 2.0);
    let (inertia, weight, balance, friction, drag): (f64, f64, f64, f64, f64) = (2e-3, 2942.0, 0.3, 40.0, 0.5);
    let (back, efficiency, drives) = (0.93, 0.85, 2.0);
    let (ramp, whole) = (a / j, top / a + a / j);
    let deceleration = |t: f64| {
        if t < ramp {
            j * t
        } else if t > whole - ramp {
            j * (whole - t)
        } else {
            a
        }
    };
    let steps = 200_000;
    let step = whole / f64::from(steps);
    let (mut speed, mut way, mut sum) = (top, 0.0, 0.0);
    for index in 0..steps {
        let b = deceleration((f64::from(index) + 0.5) * step);
        let middle = speed - 0.5 * b * step;
        // the slide goes down: the drive pulls up with what brakes, plus the weight, less the friction
        let load = (mass * b + (1.0 - balance) * weight - friction) * middle;
        let turning = TAU * reduction / lead;
        let rotor = inertia * b * turning * middle * turning;
        let lost = drag * TAU / lead * middle;
        sum += (back * load + rotor - lost) * step;
        way += middle * step;
        speed -= b * step;
    }
    let slowing = energy::SLOWING_DISTANCE;
    let distance = (slowing.apply)(Velocity::of_si(top), Acceleration::of_si(a), Jerk::of_si(j));
    assert!((distance.si() - way).abs() < 1e-9, "{} m, summed {way} m", distance.si());
    let found = (energy::STOP_ENERGY.apply)(
        Mass::of_si(mass),
        Velocity::of_si(top),
        MomentOfInertia::of_si(inertia),
        Length::of_si(lead),
        Ratio::of_si(reduction),
        Force::of_si(weight),
        Ratio::of_si(balance),
        Force::of_si(friction),
        Torque::of_si(drag),
        Ratio::of_si(back),
        Ratio::of_si(efficiency),
        distance,
        Ratio::of_si(drives),
    );
    let expected = drives * efficiency * sum;
    assert!((found.si() - expected).abs() < 1e-6 * expected, "{} J, summed {expected} J", found.si());
}

/// What swings on after an acceleration that was built up in the time T, over the give of the whole acceleration.
fn left_swinging(periods: f64) -> f64 {
    let omega = TAU;
    let steps = 20_000;
    let step = periods / f64::from(steps);
    let (mut x, mut v) = (0.0_f64, 0.0_f64);
    let (sin, cos) = (omega * step).sin_cos();
    for index in 0..steps {
        // give at rest under the force of this step, as a share of the whole
        let rest = (f64::from(index) + 0.5) / f64::from(steps);
        let (offset, rate) = (x - rest, v / omega);
        x = rest + offset * cos + rate * sin;
        v = omega * (rate * cos - offset * sin);
    }
    ((x - 1.0).powi(2) + (v / omega).powi(2)).sqrt()
}

/// The source of `jerk-periods` says |sin(π·x)/(π·x)|: all of it after a step, none after a whole period, and beyond one
/// period never more than 22 %.
#[test]
fn a_ramp_of_a_whole_period_leaves_nothing_swinging() {
    for periods in [0.05, 0.3, 0.5, 0.9, 1.0, 1.43, 2.0, 2.7] {
        let x = std::f64::consts::PI * periods;
        let expected = (x.sin() / x).abs();
        let found = left_swinging(periods);
        assert!((found - expected).abs() < 1e-6, "{periods} periods: {found}, {expected}");
        assert!(periods < 1.0 || found < 0.22);
    }
    let found = energy::JERK_PERIODS;
    let periods = (found.apply)(Frequency::of_si(50.0), Acceleration::of_si(5.0), Jerk::of_si(250.0));
    assert!((periods.si() - 1.0).abs() < 1e-12, "5 m/s² at 250 m/s³ take one period of 50 Hz");
}
