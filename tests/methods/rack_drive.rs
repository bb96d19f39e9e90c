//! The rack line and its gearbox against chains of springs, random lines, beams bent step by step and sums.

use crate::{mm, ratio, straight};
use axiswright::formula::gear_accuracy::BACKLASH_AT_RACK;
use axiswright::formula::gear_geometry::{PINION_DIAMETER, metric_helix};
use axiswright::formula::gearbox::*;
use axiswright::formula::rack::*;
use axiswright::units::*;
use std::f64::consts::PI;

const YOUNG: f64 = 2.06e11;

fn near(what: &str, value: f64, expected: f64, tolerance: f64) {
    assert!((value - expected).abs() <= tolerance, "{what}: {value}, expected {expected} ± {tolerance}");
}

/// A rack segment on `count` fasteners, first and last half a pitch from the ends, loaded at one end or at a
/// fastener: way of the loaded point for one newton, and the largest share that one fastener takes.
fn chain(section: f64, pitch: f64, fastener: f64, count: usize, at: Option<usize>) -> (f64, f64) {
    let bar = YOUNG * section / pitch;
    // tridiagonal balance of forces, solved by elimination
    let mut diagonal: Vec<f64> =
        (0..count).map(|i| fastener + bar * (usize::from(i > 0) + usize::from(i + 1 < count)) as f64).collect();
    let mut load = vec![0.0; count];
    load[at.unwrap_or(0)] = 1.0;
    for i in 1..count {
        let share = bar / diagonal[i - 1];
        diagonal[i] -= share * bar;
        load[i] += share * load[i - 1];
    }
    let mut way = vec![0.0; count];
    for i in (0..count).rev() {
        let next = if i + 1 < count { bar * way[i + 1] } else { 0.0 };
        way[i] = (load[i] + next) / diagonal[i];
    }
    let loaded = match at {
        Some(index) => way[index],
        None => way[0] + pitch / 2.0 / (YOUNG * section),
    };
    (loaded, way.into_iter().fold(0.0, f64::max) * fastener)
}

#[test]
fn mount_stiffness_is_the_limit_of_a_chain_of_springs() {
    let (section, per_length) = (456e-6, 250e6 / 0.0625);
    let formula = (MOUNT_STIFFNESS.apply)(Stiffness::of_si(250e6), mm(62.5), Area::of_si(section)).si();
    near("613 N/µm", formula / 1e6, 613.0, 0.5);
    // fasteners of 1 mm pitch, as stiff a length
    let end = 1.0 / chain(section, 0.001, per_length * 0.001, 1000, None).0;
    near("at the end", end / formula, 1.0, 2e-3);
    let inside = 1.0 / chain(section, 0.001, per_length * 0.001, 3001, Some(1500)).0;
    near("inside a long segment", inside / formula, 2.0, 4e-3);
}

#[test]
fn three_fasteners_share_at_a_segment_end_and_five_inside() {
    let (_, end) = chain(456e-6, 0.0625, 250e6, 16, None);
    near("at the end", 1.0 / end, 3.0, 0.05);
    let (_, inside) = chain(456e-6, 0.0625, 250e6, 16, Some(8));
    near("inside, at a fastener", 1.0 / inside, 5.0, 0.05);
}

#[test]
fn slip_force_of_m8_fasteners() {
    let slip = |sharing: f64, embedding: f64| {
        let preload = Force::of_si(32.016e3);
        (SLIP_FORCE.apply)(preload, ratio(0.15), ratio(1.6), ratio(embedding), ratio(sharing)).si() / 1.8 / 1e3
    };
    near("4 without embedding", slip(4.0, 0.0), 6.67, 0.005);
    for (embedding, force) in [(0.05, 6.14), (0.075, 5.87), (0.10, 5.60)] {
        near("4 with embedding", slip(4.0, embedding), force, 0.005);
    }
    near("3 at a segment end", slip(3.0, 0.075), 4.4, 0.05);
    assert_eq!(slip(3.0, 0.7), 0.0);
}

/// A generator of evenly spread numbers from 0 to 1 with a stated seed.
struct Even(u64);

impl Even {
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1u64 << 53) as f64
    }
}

/// Range of the error of a line that 95 % of random lines keep, µm.
fn simulated(segments: usize, segment: f64, joint: f64) -> f64 {
    let mut even = Even(54);
    let mut ranges: Vec<f64> = (0..20_000)
        .map(|_| {
            let (mut place, mut low, mut high) = (0.0, 0.0f64, 0.0f64);
            for index in 0..segments {
                if index > 0 {
                    place += (even.next() - 0.5) * joint;
                    (low, high) = (low.min(place), high.max(place));
                }
                place += (even.next() - 0.5) * segment;
                (low, high) = (low.min(place), high.max(place));
            }
            high - low
        })
        .collect();
    ranges.sort_by(f64::total_cmp);
    ranges[ranges.len() * 95 / 100]
}

fn line_error(travel: f64, segment: f64, joint: f64) -> f64 {
    let um = |value: f64| Length::of_si(value * 1e-6);
    (CUMULATIVE_PITCH_ERROR.apply)(Length::of_si(travel), Length::of_si(1.0), um(segment), um(joint)).si() * 1e6
}

#[test]
fn pitch_error_covers_95_percent_of_random_lines() {
    near("6 segments", line_error(6.0, 36.0, 20.0), 69.6, 0.05);
    for (segments, segment, joint) in [(2, 36.0, 20.0), (6, 36.0, 20.0), (12, 50.0, 10.0), (40, 25.0, 25.0)] {
        let formula = line_error(segments as f64, segment, joint);
        let random = simulated(segments, segment, joint);
        assert!(random <= formula, "{segments} segments: {formula} µm, 95 % of random lines {random} µm");
        assert!(formula < 1.4 * random, "{segments} segments: {formula} µm is far above {random} µm");
    }
}

#[test]
fn pitch_error_grows_with_travel_and_begins_at_nothing() {
    let mut last = 0.0;
    for step in 0..1200 {
        let error = line_error(f64::from(step) * 0.01, 36.0, 0.0);
        assert!(error >= last, "{error} µm after {last} µm at {step} cm");
        last = error;
    }
    assert_eq!(line_error(0.0, 36.0, 20.0), 0.0);
    assert_eq!(line_error(1.0, 36.0, 20.0), 36.0);
}

#[test]
fn length_and_mass_of_a_rack_line() {
    let length = (RACK_LENGTH.apply)(mm(8000.0), mm(60.0), mm(63.66));
    near("length", length.si(), 8.183_66, 1e-9);
    near("mass", (RACK_MASS.apply)(LinearMassDensity::of_si(4.1), length).si(), 33.553, 5e-4);
}

#[test]
fn segment_error_adds_by_squares_to_that_of_a_metre() {
    let half = (SEGMENT_PITCH_ERROR.apply)(Length::of_si(36e-6), Length::of_si(0.5)).si();
    near("half a metre", half * 1e6, 25.5, 0.05);
    near("two halves", f64::hypot(half, half), 36e-6, 1e-15);
}

#[test]
fn pinion_mass_is_that_of_a_steel_disc() {
    // module 3, 20 teeth, metric helix, 29 mm wide; summed over thin rings
    let (radius, width) = (0.063_662 / 2.0, 0.029);
    let rings = 10_000;
    let step = radius / f64::from(rings);
    let by_rings: f64 = (0..rings).map(|ring| 2.0 * PI * (f64::from(ring) + 0.5) * step * step * width * 7850.0).sum();
    let value = (PINION_MASS.apply)(mm(63.662), mm(29.0)).si();
    near("by rings", value, by_rings, 1e-9);
    near("printed", value, 0.725, 0.0005);
}

#[test]
fn gearbox_stiffness_and_play_at_the_reference_circle() {
    // N·m/arcmin, module, N/µm
    for (torsion, module, stiffness) in [(9.0, 2.0, 68.7), (26.0, 3.0, 88.2), (55.0, 4.0, 105.0), (150.0, 5.0, 183.0)] {
        let d = (PINION_DIAMETER.apply)(mm(module), ratio(20.0), metric_helix());
        let torsion = TorsionalStiffness::of_si(torsion * 10_800.0 / PI);
        let value = (GEARBOX_LINEAR_STIFFNESS.apply)(torsion, d).si() / 1e6;
        near(&format!("module {module}"), value, stiffness, if stiffness < 100.0 { 0.05 } else { 0.5 });
    }
    for (module, play) in [(2.0, 6.17), (3.0, 9.26), (4.0, 12.35), (5.0, 15.43), (6.0, 18.52)] {
        let d = (PINION_DIAMETER.apply)(mm(module), ratio(20.0), metric_helix());
        let value = (BACKLASH_AT_RACK.apply)(Angle::of_si(PI / 10_800.0), d).si() * 1e6;
        near(&format!("module {module}"), value, play, 0.005);
    }
}

#[test]
fn output_shaft_bends_as_a_beam_bent_step_by_step() {
    for (overhang, diameter, rigid) in [(35.0, 32.0, 646.0), (42.0, 45.0, 1461.0), (55.0, 60.0, 2056.0)] {
        let tilt = 2.0e5;
        let (l, d): (f64, f64) = (overhang * 1e-3, diameter * 1e-3);
        let bending = YOUNG * PI * d.powi(4) / 64.0;
        // slope and sink along the shaft under one newton at its end
        let steps = 20_000;
        let dx = l / f64::from(steps);
        let (mut slope, mut sink) = (l / tilt, 0.0);
        for step in 0..steps {
            let moment = l - (f64::from(step) + 0.5) * dx;
            sink += (slope + 0.5 * moment / bending * dx) * dx;
            slope += moment / bending * dx;
        }
        let tan = 20f64.to_radians().tan() / metric_helix().si().cos();
        let by_steps = 1.0 / (sink * (1.0 + tan * tan)) / 1e6;
        let stiffness = |tilt: f64| {
            let tilt = TorsionalStiffness::of_si(tilt);
            (OUTPUT_SHAFT_STIFFNESS.apply)(mm(overhang), mm(diameter), tilt, metric_helix()).si() / 1e6
        };
        near("with tilt", stiffness(tilt) / by_steps, 1.0, 1e-6);
        near("without tilt", stiffness(1e15), rigid, 0.5);
    }
}

#[test]
fn stop_torque_leaves_out_what_brakes_the_motor_itself() {
    // 1000 kg on a radius of 21.22 mm behind a ratio of 10; brake of 20 N·m
    let (mass, radius, i, rotating, brake) = (1000.0, 0.021_22, 10.0, 2e-3, 20.0);
    let at_motor = mass * (radius / i) * (radius / i);
    let deceleration = brake * i / radius / (mass + rotating * (i / radius) * (i / radius));
    near("deceleration", deceleration, 6.53, 0.005);
    let inertia = MomentOfInertia::of_si;
    let value = (STOP_TORQUE.apply)(Torque::of_si(brake), inertia(rotating), inertia(at_motor), ratio(i)).si();
    near("torque", value, mass * deceleration * radius, 1e-9);
    near("torque", value, 138.5, 0.05);
}

#[test]
fn radial_capacity_falls_with_life_and_is_capped() {
    let d = mm(42.44);
    let capacity =
        |turns: f64| (RADIAL_CAPACITY.apply)(Force::of_si(4200.0), Length::of_si(turns * PI * 0.042_44), d).si();
    near("at the reference", capacity(1.2e8), 4200.0, 1e-6);
    near("a quarter of it", capacity(3e7), 6366.0, 0.5);
    near("ten times", capacity(1.2e9), 4200.0 / 10f64.powf(0.3), 1e-6);
    assert_eq!(capacity(1e3), 1.6 * 4200.0);
}

#[test]
fn output_torque_is_the_moment_of_the_force() {
    near("torque", (OUTPUT_TORQUE.apply)(Force::of_si(6320.0), mm(42.44), ratio(0.985)).si(), 136.15, 0.005);
}

/// Loss of straight teeth by summing friction along the path of contact, two pairs sharing evenly.
#[test]
fn mesh_efficiency_is_the_sum_of_friction_along_the_path() {
    for teeth in [18.0, 20.0, 30.0] {
        let angle = 20f64.to_radians();
        let base = teeth / 2.0 * angle.cos();
        let pitch = PI * angle.cos();
        let tip: f64 = teeth / 2.0 + 1.0;
        let (end, begin) = ((tip * tip - base * base).sqrt() - base * angle.tan(), -1.0 / angle.sin());
        let steps = 100_000;
        let ds = (end - begin) / f64::from(steps);
        let lost: f64 =
            (0..steps)
                .map(|step| begin + (f64::from(step) + 0.5) * ds)
                .map(|s| {
                    if s - begin < end - begin - pitch || end - s < end - begin - pitch {
                        0.5 * s.abs()
                    } else {
                        s.abs()
                    }
                })
                .sum::<f64>()
                * ds;
        let by_sum = 1.0 - 0.09 * lost / (pitch * base);
        let value = (MESH_EFFICIENCY.apply)(mm(2.0), ratio(teeth), straight(), ratio(0.0), ratio(0.09)).si();
        near(&format!("{teeth} teeth"), value, by_sum, 1e-6);
    }
    let helical = (MESH_EFFICIENCY.apply)(mm(2.0), ratio(20.0), metric_helix(), ratio(0.0), ratio(0.09)).si();
    near("metric helix", helical, 0.9895, 0.00005);
}
