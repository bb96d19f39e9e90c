//! What holds for every pair of pinion and rack, searched for a contradiction; derived from the mechanics, no source.

use crate::{close, mm, ratio, straight};
use axiswright::formula::gear_geometry::metric_helix;
use axiswright::formula::gearbox_load::PINION_OVERHANG;
use axiswright::formula::mesh::MESH_STIFFNESS;
use axiswright::formula::tooth_strength::*;
use axiswright::units::{Angle, Measure, Pressure, TorsionalStiffness, Velocity};

/// Pinion pitting, rack pitting, pinion root, rack root, N; grade 6, 1 m/s, K_Hβ 1.3.
fn forces(module: f64, teeth: f64, helix: Angle, width: f64) -> [f64; 4] {
    let (m, z, x, b) = (mm(module), ratio(teeth), ratio(0.0), mm(width));
    let mpa = |value: f64| Pressure::of_si(value * 1e6);
    let (n, q, v, k, y) = (ratio(1e8), ratio(6.0), Velocity::of_si(1.0), ratio(1.3), ratio(0.7));
    [
        pinion_pitting_force(m, z, helix, x, b, mpa(1500.0), n, q, v, k),
        rack_pitting_force(m, z, helix, x, b, mpa(1196.0), n, q, v, k),
        pinion_root_force(m, z, helix, x, b, (SteelClass::CaseHardened, mpa(461.0)), n, q, v, k, y),
        rack_root_force(m, z, helix, x, b, (SteelClass::InductionHardened, mpa(369.0)), n, q, v, k, y),
    ]
    .map(|force| force.si())
}

#[test]
fn more_teeth_never_lower_what_flanks_bear() {
    for helix in [straight(), metric_helix()] {
        for module in [1.5, 3.0, 8.0] {
            let mut before = [0.0; 4];
            for teeth in 18..60 {
                let now = forces(module, f64::from(teeth), helix, 10.0 * module);
                assert!(now[0] >= before[0] && now[1] >= before[1], "{teeth} teeth: {now:?} after {before:?}");
                before = now;
            }
        }
    }
}

#[test]
fn a_wider_face_never_lowers_what_teeth_bear() {
    for helix in [straight(), metric_helix()] {
        for module in [1.5, 3.0, 8.0] {
            let mut before = [0.0; 4];
            for step in 0..60 {
                let width = (4.0 + 0.2 * f64::from(step)) * module;
                let now = forces(module, 20.0, helix, width);
                for (now, before) in now.iter().zip(before) {
                    assert!(*now >= before, "module {module}, {width} mm: {now} after {before}");
                }
                before = now;
            }
        }
    }
}

#[test]
fn helical_teeth_bear_no_less_than_straight_ones_of_the_same_size() {
    for module in [1.5, 2.0, 3.0, 5.0, 8.0] {
        for teeth in [18.0, 20.0, 25.0, 40.0] {
            for modules in [9.5, 10.0, 12.0] {
                let helical = forces(module, teeth, metric_helix(), modules * module);
                let straight = forces(module, teeth, straight(), modules * module);
                let least = |forces: [f64; 4]| forces.into_iter().fold(f64::INFINITY, f64::min);
                assert!(least(helical) >= least(straight), "module {module}, {teeth} teeth: {helical:?}, {straight:?}");
            }
        }
    }
}

/// A rack is a wheel of infinitely many teeth: the tooth of a very large pinion is that of the rack.
#[test]
fn a_very_large_pinion_has_the_tooth_of_a_rack() {
    for helix in [straight(), metric_helix()] {
        let large = tip_form_factor(ratio(500_000.0), helix, ratio(0.0)).si();
        close("form", large, rack_tooth_at_tip().form_factor, 1e-4);
        let large = tip_stress_correction(ratio(500_000.0), helix, ratio(0.0)).si();
        close("stress correction", large, rack_tooth_at_tip().stress_correction(), 1e-4);
    }
}

/// What the four parts bear at the knee on an overhung shaft, as the teeth feel it, N: seat and tilt as a drive counts them.
///
/// The force itself steps where the line load falls to 100 N/mm, since the standard takes the sharing there at its worst;
/// a wider face may cross that step downward.
fn mounted(module: f64, helix: Angle, width: f64, (shaft, overhang, tilt): (f64, f64, f64)) -> [f64; 4] {
    let (m, z, x, b) = (mm(module), ratio(20.0), ratio(0.0), mm(width));
    let mpa = |value: f64| Pressure::of_si(value * 1e6);
    let (q, v) = (ratio(6.0), Velocity::of_si(1.0));
    let layer = SteelClass::CaseHardened.slip_layer();
    let even = [
        (PINION_FLANK_ENDURANCE.apply)(m, z, helix, x, b, mpa(1380.0)),
        (RACK_FLANK_ENDURANCE.apply)(m, z, helix, x, b, mpa(1100.0)),
        (PINION_ROOT_ENDURANCE.apply)(m, z, helix, x, b, mpa(645.0), layer),
        (RACK_ROOT_ENDURANCE.apply)(m, z, helix, x, b, mpa(516.0), layer),
    ];
    let slope = (LOAD_SLOPE.apply)(m, z, helix, x, b, q, v);
    let offset = (LOAD_OFFSET.apply)(m, z, helix, x, b, q, v);
    let light = (LIGHT_LOAD_FACTOR.apply)(m, z, helix, x, b, q, v);
    let force = (ALIGNMENT_FORCE.apply)(even[0], even[1], even[2], even[3], slope, offset, light, b);
    let face = (ALIGNMENT_FACE_LOAD_FACTOR.apply)(
        force,
        helix,
        (PINION_OVERHANG.apply)(mm(overhang), b, mm(8.0)),
        mm(shaft),
        TorsionalStiffness::of_si(tilt),
        b,
        ratio(0.3e-3),
        (MESH_STIFFNESS.apply)(m, z, helix, b, x),
    );
    let face = (FACE_LOAD_FACTOR.apply)(ratio(1.15), face);
    let root = (ROOT_FACE_LOAD_FACTOR.apply)(face, b, m);
    [(0, face), (1, face), (2, root), (3, root)]
        .map(|(index, factor)| (MOUNTED_ENDURANCE.apply)(even[index], factor).si())
}

#[test]
fn a_stiffer_shaft_or_bearing_never_lowers_what_mounted_teeth_bear() {
    for (module, width) in [(2.0, 24.0), (4.0, 39.0), (6.0, 59.0)] {
        let mut before = [0.0; 4];
        for step in 0..40 {
            let stiffer = 1.0 + 0.05 * f64::from(step);
            let now = mounted(module, metric_helix(), width, (10.0 * module * stiffer, 20.0 * module, 3e5 * stiffer));
            for (now, before) in now.iter().zip(before) {
                assert!(*now >= before, "module {module}, {stiffer}: {now} after {before}");
            }
            before = now;
        }
    }
}

#[test]
fn a_wider_face_never_lowers_what_mounted_teeth_bear() {
    for helix in [straight(), metric_helix()] {
        for (module, shaft) in [(1.5, (32.0, 35.0, 3e5)), (3.0, (45.0, 42.0, 9e5)), (6.0, (60.0, 55.0, 3e6))] {
            let mut before = [0.0; 4];
            for step in 0..40 {
                let width = (4.0 + 0.2 * f64::from(step)) * module;
                let now = mounted(module, helix, width, shaft);
                for (now, before) in now.iter().zip(before) {
                    assert!(*now >= before, "module {module}, {width} mm: {now} after {before}");
                }
                before = now;
            }
        }
    }
}
