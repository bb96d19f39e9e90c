//! What holds for every pair of pinion and rack, searched for a contradiction; derived from the mechanics, no source.

use crate::{close, mm, ratio, straight};
use axiswright::formula::gear_geometry::metric_helix;
use axiswright::formula::tooth_strength::*;
use axiswright::units::{Angle, Measure, Pressure, Velocity};

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
