//! A belt drawn point by point, its span stepped as a string, and motor and load as a matrix of two inertias.

use super::{close, mm, ratio};
use axiswright::formula::belt::*;
use axiswright::formula::coupling::*;
use axiswright::units::*;
use std::f64::consts::{PI, TAU};

type Point = (f64, f64);

/// The belt around two pulleys as the convex hull of the points of both circles: longest straight edge, and the angle
/// that the hull follows each circle.
fn drawn(first: f64, second: f64, distance: f64) -> (f64, f64, f64) {
    let count = 40_000;
    let circle = |radius: f64, x: f64| {
        (0..count).map(move |step| {
            let angle = TAU * f64::from(step) / f64::from(count);
            (x + radius * angle.cos(), radius * angle.sin())
        })
    };
    let mut points: Vec<Point> = circle(first, 0.0).chain(circle(second, distance)).collect();
    points.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
    let mut hull: Vec<Point> = Vec::new();
    for pass in [points.clone(), points.into_iter().rev().collect()] {
        let floor = hull.len();
        for point in pass {
            let turns_right = |hull: &[Point]| {
                let (a, b) = (hull[hull.len() - 2], hull[hull.len() - 1]);
                (b.0 - a.0) * (point.1 - b.1) - (b.1 - a.1) * (point.0 - b.0) <= 0.0
            };
            while hull.len() >= floor + 2 && turns_right(&hull) {
                hull.pop();
            }
            hull.push(point);
        }
        hull.pop();
    }
    let edges = || hull.iter().zip(hull.iter().cycle().skip(1)).map(|(a, b)| (a.0 - b.0).hypot(a.1 - b.1));
    let longest = edges().fold(0.0, f64::max);
    let on = |x: f64, radius: f64| {
        let near = hull.iter().filter(|point| ((point.0 - x).hypot(point.1) - radius).abs() < 1e-9).count();
        TAU * near as f64 / f64::from(count)
    };
    (longest, on(0.0, first), on(distance, second))
}

#[test]
fn span_and_teeth_in_mesh_are_those_of_the_drawn_belt() {
    for (pitch, teeth, reduction, distance) in
        [(8.0, 24.0, 2.0, 300.0), (5.0, 24.0, 3.0, 200.0), (14.0, 32.0, 1.0, 500.0), (8.0, 48.0, 0.5, 150.0)]
    {
        let driving = (DRIVING_PULLEY.apply)(mm(pitch), ratio(teeth));
        let driven = (DRIVEN_PULLEY.apply)(driving, ratio(reduction));
        close("circumference", driven.si() * PI, teeth * reduction * pitch * 1e-3, 1e-12);
        let span = (BELT_SPAN.apply)(driving, driven, mm(distance)).si();
        let mesh = (TEETH_IN_MESH.apply)(ratio(teeth), driving, driven, mm(distance)).si();
        let (longest, on_driving, on_driven) = drawn(driving.si() / 2.0, driven.si() / 2.0, distance * 1e-3);
        close("span", span, longest, 2e-4);
        let counts = [on_driving / TAU * teeth, on_driven / TAU * teeth * reduction];
        close("teeth", mesh, if reduction < 1.0 { counts[1] } else { counts[0] }, 1e-3);
    }
    // the example of the series: 298 mm, 11.2 teeth
    let (small, large) = (mm(8.0 * 24.0 / PI), mm(8.0 * 48.0 / PI));
    assert!(((BELT_SPAN.apply)(small, large, mm(300.0)).si() - 0.298).abs() < 5e-4);
    assert!(((TEETH_IN_MESH.apply)(ratio(24.0), small, large, mm(300.0)).si() - 11.2).abs() < 0.05);
}

#[test]
fn a_belt_answers_a_twist_of_the_screw_with_both_spans() {
    // motor pulley held, screw pulley turned by a small angle: each span as a bar of its own, energy by differences
    let (small, large): (f64, f64) = (8e-3 * 24.0 / TAU, 8e-3 * 48.0 / TAU);
    let span = 0.298_438;
    let pretension = 600.0;
    let energy = |angle: f64| {
        let strain = [1.0, -1.0].map(|side| pretension / 600e3 + side * large * angle / span);
        strain.iter().map(|strain| 0.5 * 600e3 * strain * strain * span).sum::<f64>()
    };
    let step = 1e-4;
    let stiffness = (energy(step) - 2.0 * energy(0.0) + energy(-step)) / (step * step);
    let formula = (BELT_STIFFNESS.apply)(LineLoad::of_si(20e6), mm(30.0), mm(span * 1e3), mm(large * 2e3));
    close("stiffness", formula.si(), stiffness, 1e-6);
    assert!((formula.si() - 15_019.0).abs() < 1.0, "{}", formula.si());
    // 20 N·m on the motor are 654 N; at 0.8 of it the spans carry 851 and 196 N and pull twice 523 N on the shaft
    let pull = (BELT_PULL.apply)(Torque::of_si(40.0), mm(large * 2e3));
    close("pull by the motor", pull.si(), 20.0 / small, 1e-9);
    assert!((pull.si() - 654.0).abs() < 1.0);
    let pretension = (BELT_PRETENSION.apply)(ratio(0.8), pull).si();
    let spans = [pretension + pull.si() / 2.0, pretension - pull.si() / 2.0];
    // directions of the two spans at the motor shaft, a to either side of the line of centres
    let tilt = ((large - small) / 0.3).asin();
    let along: f64 = spans.iter().map(|force| force * tilt.cos()).sum();
    let load = (BELT_SHAFT_LOAD.apply)(Force::of_si(pretension), mm(0.3e3 * tilt.cos()), mm(300.0));
    close("shaft load along the line of centres", load.si(), along, 1e-9);
}

/// Frequency of a string by shooting: the least at which it comes back to zero at its end.
fn string(force: f64, mass: f64, length: f64) -> f64 {
    let end = |frequency: f64| {
        let steps = 4000;
        let (mut way, mut slope) = (0.0, 1.0);
        let step = length / f64::from(steps);
        let pull = (TAU * frequency).powi(2) * mass / force;
        for _ in 0..steps {
            let middle = slope - 0.5 * step * pull * way;
            way += step * middle;
            slope = middle - 0.5 * step * pull * way;
        }
        way
    };
    let (mut low, mut high) = (1.0, 150.0);
    for _ in 0..60 {
        let between = 0.5 * (low + high);
        if end(between) > 0.0 { low = between } else { high = between }
    }
    low
}

#[test]
fn the_span_sounds_as_a_string_does() {
    let tone = (SPAN_FREQUENCY.apply)(Force::of_si(500.0), LinearMassDensity::of_si(0.171), mm(298.44)).si();
    close("tone", tone, string(500.0, 0.171, 0.29844), 1e-5);
    assert!((tone - 90.6).abs() < 0.05, "{tone}");
}

/// Largest eigenvalue of M⁻¹·K of motor and load, by power iteration on the 2×2 matrix in their own angles.
fn swing(stiffness: f64, motor: f64, load: f64, reduction: f64) -> f64 {
    // spring at the screw between motor angle / i and screw angle; the load's inertia there is i² that at the motor
    let screw = load * reduction * reduction;
    let matrix = [
        [stiffness / (reduction * reduction * motor), -stiffness / (reduction * motor)],
        [-stiffness / (reduction * screw), stiffness / screw],
    ];
    let mut vector = [1.0, -0.37];
    let mut value = 0.0;
    for _ in 0..200 {
        let next = matrix.map(|row: [f64; 2]| row[0] * vector[0] + row[1] * vector[1]);
        let size = next[0].hypot(next[1]);
        value = size / f64::hypot(vector[0], vector[1]);
        vector = next.map(|part| part / size);
    }
    value.sqrt() / TAU
}

#[test]
fn coupling_resonance_is_the_eigenvalue_of_two_inertias() {
    for (stiffness, motor, load, reduction) in
        [(15e3, 6e-3, 4.08e-3, 1.0), (15e3, 6e-3, 4.08e-3, 2.0), (1090.0, 0.3e-4, 4e-3, 1.5), (3e5, 0.024, 0.01, 1.0)]
    {
        let formula = (COUPLING_RESONANCE.apply)(
            TorsionalStiffness::of_si(stiffness),
            MomentOfInertia::of_si(motor),
            MomentOfInertia::of_si(load),
            ratio(reduction),
        );
        close("resonance", formula.si(), swing(stiffness, motor, load, reduction), 1e-9);
    }
    assert!((swing(15e3, 6e-3, 4.08e-3, 1.0) - 396.0).abs() < 0.5);
}

#[test]
fn the_floor_is_twelve_times_the_gain_that_the_mechanics_allow() {
    use axiswright::formula::dynamics::gain_limit;
    let stiffness = Stiffness::of_si(101.8e6);
    for share in [0.05, 0.1, 0.2, 0.5, 2.0, 8.0] {
        let gain = gain_limit(stiffness, Mass::of_si(share * 3500.0), ratio(share), ratio(0.0), ratio(0.7)).si();
        let floor = (COUPLING_FLOOR.apply)(stiffness, Mass::of_si(3500.0)).si();
        assert!(floor >= 12.0 * gain / TAU * (1.0 - 1e-9), "{floor} at {share}");
    }
    let most = gain_limit(stiffness, Mass::of_si(350.0), ratio(0.1), ratio(0.0), ratio(0.7)).si();
    close("reached", (COUPLING_FLOOR.apply)(stiffness, Mass::of_si(3500.0)).si(), 12.0 * most / TAU, 1e-9);
}
