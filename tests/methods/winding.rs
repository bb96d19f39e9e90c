//! The winding of a motor by stepping its heating equation, and the curves of a motor against its loss balance.

use super::close;
use axiswright::formula::Series;
use axiswright::formula::envelope::{UNWEAKENED_CONTINUOUS_TORQUE, WEAKENED_PEAK_TORQUE};
use axiswright::formula::matching::OPTIMUM_RATIO;
use axiswright::formula::motor::{AVAILABLE_PEAK_TORQUE, CONTINUOUS_TORQUE, RMS_TORQUE};
use axiswright::formula::overload::*;
use axiswright::units::*;
use std::f64::consts::{PI, TAU};

/// Heat of the winding after a time under a torque ratio, by steps of the heating equation (Heun).
fn warmed(mut heat: f64, ratio: f64, time: f64, constant: f64) -> f64 {
    let steps = 20_000;
    let step = time / f64::from(steps);
    let slope = |heat: f64| (ratio * ratio - heat) / constant;
    for _ in 0..steps {
        let first = slope(heat);
        heat += step * 0.5 * (first + slope(heat + step * first));
    }
    heat
}

#[test]
fn an_overload_ends_where_the_stepped_winding_reaches_its_limit() {
    for (ratio, before, constant) in [(3.0, 0.0, 60.0), (3.0, 0.6, 60.0), (1.5, 0.8, 30.0), (1.05, 0.0, 120.0)] {
        let (r, r0, tau) = (Ratio::of_si(ratio), Ratio::of_si(before), Time::of_si(constant));
        let time = (OVERLOAD_TIME.apply)(r, r0, tau).si();
        close("limit", warmed(before * before, ratio, time, constant), 1.0, 1e-6);
    }
    // the check value of the derivation: 60 s·ln(9/8)
    let time = (OVERLOAD_TIME.apply)(Ratio::of_si(3.0), Ratio::of_si(0.0), Time::of_si(60.0)).si();
    assert!((time - 7.07).abs() < 0.005, "{time}");
}

#[test]
fn the_heat_of_a_phase_is_that_of_the_stepped_winding() {
    // a ramp of 0.3 s at 30 N·m, a cut over 2 m at 0.1 m/s at 14 N·m; 10 N·m at standstill, 9 N·m at speed
    let heat = |torques: &[f64]| {
        (WINDING_HEAT.apply)(
            Series::of_si(torques),
            Series::of_si(&[0.3, -0.1]),
            Series::of_si(&[2.0, 0.0]),
            Time::of_si(0.3),
            Length::of_si(2.0),
            Torque::of_si(10.0),
            Torque::of_si(6.3),
            Torque::of_si(9.0),
            Time::of_si(45.0),
        )
        .si()
    };
    let before = 0.7 * 0.7;
    close("cut", heat(&[30.0, 14.0]), warmed(before, 1.4, 20.0, 45.0), 1e-7);
    close("ramp", heat(&[30.0, 1.0]), warmed(before, 3.0, 0.3, 45.0), 1e-7);
    close("neither", heat(&[5.0, 1.0]), before, 1e-12);
}

#[test]
fn the_root_mean_square_is_what_a_short_cycle_settles_to() {
    // a cycle of 2 s, far shorter than the winding's 60 s: three phases stepped until the heat repeats
    let phases = [(2.2, 0.3), (0.6, 1.2), (0.0, 0.5)];
    let mut heat = 0.0;
    let mut hottest = 0.0_f64;
    for _ in 0..400 {
        hottest = 0.0;
        for (ratio, time) in phases {
            let steps = 50;
            for _ in 0..steps {
                heat += time / f64::from(steps) * (ratio * ratio - heat) / 60.0;
                hottest = hottest.max(heat);
            }
        }
    }
    let torques: Vec<f64> = phases.iter().map(|(ratio, _)| *ratio).collect();
    let times: Vec<f64> = phases.iter().map(|(_, time)| *time).collect();
    let rms = (RMS_TORQUE.apply)(Series::of_si(&torques), Series::of_si(&times)).si();
    // the ripple of the heat over the cycle is about r²·t/τ = 2 %
    close("settled heat", hottest, rms * rms, 0.03);
}

#[test]
fn short_and_intermittent_duty_come_out_of_the_stepped_frame() {
    // S2: from cold, 10 min at the factor, frame of 30 min, ends at the limit
    let minutes = |value: f64| Time::of_si(60.0 * value);
    let factor = (SHORT_TIME_FACTOR.apply)(minutes(10.0), minutes(30.0)).si();
    close("S2", warmed(0.0, factor, 600.0, 1800.0), 1.0, 1e-6);
    assert!((factor - 1.878).abs() < 5e-4, "{factor}");
    // S3: 10 min, 40 % of it at the factor; settled, the load ends at the limit
    let factor = (INTERMITTENT_FACTOR.apply)(minutes(10.0), Ratio::of_si(0.4), minutes(30.0)).si();
    let (mut heat, mut peak) = (0.0, 0.0);
    for _ in 0..60 {
        peak = warmed(heat, factor, 240.0, 1800.0);
        heat = warmed(peak, 0.0, 360.0, 1800.0);
    }
    close("S3", peak, 1.0, 1e-6);
    // cycles far shorter than the frame: one over the root of the share
    let short = (INTERMITTENT_FACTOR.apply)(Time::of_si(1.0), Ratio::of_si(0.4), minutes(30.0)).si();
    assert!((short - 1.58).abs() < 0.005, "{short}");
}

#[test]
fn the_standing_winding_takes_twice_the_mean_heat() {
    // three currents 120° apart: mean heat over a turn against the worst winding at the worst standstill
    let heat = |angle: f64, winding: f64| (angle + winding * TAU / 3.0).cos().powi(2);
    let turn: Vec<f64> = (0..3600).map(|step| TAU * f64::from(step) / 3600.0).collect();
    let mean = turn.iter().map(|&angle| heat(angle, 0.0)).sum::<f64>() / 3600.0;
    let worst = turn.iter().flat_map(|&angle| [0.0, 1.0, 2.0].map(|winding| heat(angle, winding))).fold(0.0, f64::max);
    let share = (mean / worst).sqrt();
    close("share of the torque", share, 0.5_f64.sqrt(), 1e-9);
    assert!(share > 0.7 && share < 0.72, "the rule motor-standing says 0.7");
}

#[test]
fn the_curves_of_a_motor_meet_at_their_corners() {
    let speed = |per_minute: f64| AngularVelocity::of_si(per_minute * PI / 30.0);
    let (peak, knee, limit) = (Torque::of_si(60.0), speed(2500.0), speed(4500.0));
    let line = |n: f64| (AVAILABLE_PEAK_TORQUE.apply)(speed(n), peak, knee, limit).si();
    let weak = |n: f64| (WEAKENED_PEAK_TORQUE.apply)(speed(n), peak, knee, limit).si();
    for n in [0.0, 1000.0, 2500.0] {
        assert_eq!((line(n), weak(n)), (60.0, 60.0));
    }
    close("line at 3500", line(3500.0), 30.0, 1e-9);
    close("weakened at 3500", weak(3500.0), 42.857, 1e-4);
    assert_eq!(line(4500.0), 0.0);
    close("power at the end is that at the knee", weak(4500.0) * 4500.0, 60.0 * 2500.0, 1e-12);
    // continuous torque: the loss k·T² + c·n² is the same at standstill, at rated speed and between
    let (still, rated, rated_speed) = (Torque::of_si(20.0), Torque::of_si(16.0), speed(3000.0));
    let loss = |torque: f64, n: f64| torque * torque + (400.0 - 256.0) * (n / 3000.0).powi(2);
    for n in [0.0, 800.0, 2000.0, 3000.0, 4200.0] {
        let torque = (UNWEAKENED_CONTINUOUS_TORQUE.apply)(speed(n), still, rated, rated_speed).si();
        close("loss", loss(torque, n), 400.0, 1e-9);
        if n <= 3000.0 {
            let other = (CONTINUOUS_TORQUE.apply)(speed(n), still, rated, rated_speed).si();
            close("up to rated speed both are the same", other, torque, 1e-12);
        }
    }
    let at = |n: f64| (UNWEAKENED_CONTINUOUS_TORQUE.apply)(speed(n), still, rated, rated_speed).si();
    assert!((at(2000.0) - 18.33).abs() < 0.005 && at(5000.1) == 0.0);
}

#[test]
fn the_optimum_ratio_is_where_a_search_finds_the_least_torque() {
    // load of 0.25 kg·m², friction-like torque of changing sign, a profile of three accelerations
    let (load, rotor) = (0.25, 0.0016);
    let profile = [(12.0, 3.0, 0.2), (0.0, 3.0, 0.5), (-15.0, 2.0, 0.16), (0.0, -4.0, 0.14)];
    let mean =
        |value: &dyn Fn(f64, f64) -> f64| profile.iter().map(|&(a, t, q)| q * value(a, t).powi(2)).sum::<f64>().sqrt();
    let star = mean(&|a, t| load * a + t);
    let alpha = mean(&|a, _| a);
    let ratio =
        (OPTIMUM_RATIO.apply)(Torque::of_si(star), AngularAcceleration::of_si(alpha), MomentOfInertia::of_si(rotor))
            .si();
    let torque = |i: f64| mean(&|a, t| (load * a + t) / i + rotor * a * i);
    let least = (100..4000).map(|step| f64::from(step) * 0.01).min_by(|a, b| torque(*a).total_cmp(&torque(*b)));
    close("ratio", ratio, least.unwrap(), 2e-3);
    // inertia alone: √(0.25/0.0016), published as 12.5
    let alone = (OPTIMUM_RATIO.apply)(
        Torque::of_si(load * alpha),
        AngularAcceleration::of_si(alpha),
        MomentOfInertia::of_si(rotor),
    );
    close("inertia alone", alone.si(), 12.5, 1e-12);
}
