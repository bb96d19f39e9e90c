//! Equivalent forces of teeth against damage that is summed step by step with the forces that teeth bear so often.

use crate::{close, mm, ratio, straight};
use axiswright::formula::Series;
use axiswright::formula::gear_geometry::metric_helix;
use axiswright::formula::tooth_strength::*;
use axiswright::units::*;

/// Its name, the force it bears so often, and the force that stands for a duty.
type Mode = (&'static str, fn(&Mesh, f64) -> f64, fn(&Mesh, &[f64], &[f64]) -> f64);
type Quantities = (Length, Ratio, Angle, Ratio, Length);

/// A mesh of module 2 mm and 20 teeth at 1 m/s, K_Hβ 1.3, grade 6.
#[derive(Clone, Copy)]
struct Mesh {
    teeth: Quantities,
    slope: Ratio,
    offset: Force,
    light: Ratio,
    class: SteelClass,
}

const CONTACT: f64 = 1500e6;
const BENDING: f64 = 461e6;

impl Mesh {
    fn of(helix: Angle) -> Mesh {
        let (m, z, x, b) = (mm(2.0), ratio(20.0), ratio(0.0), mm(24.0));
        let (q, v) = (ratio(6.0), Velocity::of_si(1.0));
        Mesh {
            teeth: (m, z, helix, x, b),
            slope: (LOAD_SLOPE.apply)(m, z, helix, x, b, q, v),
            offset: (LOAD_OFFSET.apply)(m, z, helix, x, b, q, v),
            light: (LIGHT_LOAD_FACTOR.apply)(m, z, helix, x, b, q, v),
            class: SteelClass::CaseHardened,
        }
    }

    /// Force that the pinion flank bears so often, found by bisection and not by the life line in force.
    fn flank(&self, cycles: f64) -> f64 {
        let (m, z, h, x, b) = self.teeth;
        let limit = Pressure::of_si(CONTACT);
        let (q, v, k) = (ratio(6.0), Velocity::of_si(1.0), ratio(1.3));
        pinion_pitting_force(m, z, h, x, b, limit, ratio(cycles), q, v, k).si()
    }

    fn root(&self, cycles: f64) -> f64 {
        let (m, z, h, x, b) = self.teeth;
        let limit = Pressure::of_si(BENDING);
        let (q, v, k, y) = (ratio(6.0), Velocity::of_si(1.0), ratio(1.3), ratio(0.7));
        pinion_root_force(m, z, h, x, b, (self.class, limit), ratio(cycles), q, v, k, y).si()
    }

    fn flank_equivalent(&self, forces: &[f64], shares: &[f64]) -> f64 {
        let (m, z, h, x, b) = self.teeth;
        let even = (PINION_FLANK_ENDURANCE.apply)(m, z, h, x, b, Pressure::of_si(0.92 * CONTACT));
        let bears = (MOUNTED_ENDURANCE.apply)(even, ratio(1.3));
        let speeds = vec![1.0; forces.len()];
        (PINION_FLANK_EQUIVALENT_FORCE.apply)(
            Series::of_si(forces),
            Series::of_si(shares),
            Series::of_si(&speeds),
            bears,
            self.slope,
            self.offset,
            self.light,
            b,
        )
        .si()
    }

    fn root_equivalent(&self, forces: &[f64], shares: &[f64]) -> f64 {
        let (m, z, h, x, b) = self.teeth;
        let strength = (ROOT_STRENGTH.apply)(Pressure::of_si(BENDING), ratio(1.0), ratio(1.0), ratio(0.7));
        let even = (PINION_ROOT_ENDURANCE.apply)(m, z, h, x, b, strength, self.class.slip_layer());
        let bears = (MOUNTED_ENDURANCE.apply)(even, (ROOT_FACE_LOAD_FACTOR.apply)(ratio(1.3), b, m));
        let speeds = vec![1.0; forces.len()];
        (PINION_ROOT_EQUIVALENT_FORCE.apply)(
            Series::of_si(forces),
            Series::of_si(shares),
            Series::of_si(&speeds),
            bears,
            self.class.root_static_cycles(),
            self.slope,
            self.offset,
            self.light,
            b,
        )
        .si()
    }
}

/// How often a force is borne: the cycles at which what is borne has fallen to it.
fn cycles(bears: impl Fn(f64) -> f64, force: f64) -> f64 {
    let (mut few, mut many) = (3.0_f64, 10.0_f64);
    for _ in 0..80 {
        let middle = 0.5 * (few + many);
        if bears(10f64.powf(middle)) > force { few = middle } else { many = middle }
    }
    10f64.powf(0.5 * (few + many))
}

#[test]
fn one_force_alone_stands_for_itself() {
    for helix in [straight(), metric_helix()] {
        let mesh = Mesh::of(helix);
        for force in [300.0, 2399.0, 2500.0, 3500.0, 4000.0, 7000.0, 9000.0, -6000.0] {
            close("flank", mesh.flank_equivalent(&[force], &[1.0]), force.abs(), 1e-12);
            close("root", mesh.root_equivalent(&[force, 0.0], &[0.4, 0.0]), force.abs(), 1e-12);
        }
    }
}

/// Damage of random duties, summed with the cycles that each force may be met, is that of the one force.
#[test]
fn equivalent_forces_do_the_damage_of_the_sum() {
    let mut seed = 6336_u64;
    let mut even = || {
        seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (seed >> 11) as f64 / (1_u64 << 53) as f64
    };
    let classes = [SteelClass::CaseHardened, SteelClass::ThroughHardened, SteelClass::Soft];
    for (helix, class) in [straight(), metric_helix()].into_iter().flat_map(|helix| classes.map(|class| (helix, class)))
    {
        let mesh = Mesh { class, ..Mesh::of(helix) };
        let modes: [Mode; 2] =
            [("flank", Mesh::flank, Mesh::flank_equivalent), ("root", Mesh::root, Mesh::root_equivalent)];
        for (what, bears, equivalent) in modes {
            for _ in 0..12 {
                // between what is borne 10^10 and 10^5 times
                let (least, most) = (bears(&mesh, 0.9e10), bears(&mesh, 1.1e5));
                let forces: Vec<f64> = (0..5).map(|_| least + even() * (most - least)).collect();
                let shares: Vec<f64> = (0..5).map(|_| 0.05 + even()).collect();
                let all: f64 = shares.iter().sum();
                let sum: f64 = forces.iter().zip(&shares).map(|(f, q)| q / all / cycles(|n| bears(&mesh, n), *f)).sum();
                let one = equivalent(&mesh, &forces, &shares);
                close(what, 1.0 / cycles(|n| bears(&mesh, n), one), sum, 1e-6);
                assert!(one >= least && one <= most);
            }
        }
    }
}

/// ISO 6336-6 by hand: limit 1000 MPa, 10⁶ cycles at 1200 MPa and 5·10⁷ at 900 MPa bear a safety of 1.0793 on stress.
#[test]
fn safety_of_two_stress_levels_agrees_with_a_sum_by_hand() {
    let shares = [1e6, 5e7];
    // stress goes with the root of the force: a knee at 1 MN stands for 1000 MPa, forces for squares of stress
    let equivalent = |safety: f64| {
        let forces = [1200.0, 900.0].map(|stress: f64| (safety * stress).powi(2));
        (PINION_FLANK_EQUIVALENT_FORCE.apply)(
            Series::of_si(&forces),
            Series::of_si(&shares),
            Series::of_si(&[1.0, 1.0]),
            Force::of_si(1e6),
            ratio(1.0),
            Force::of_si(0.0),
            ratio(1.0),
            mm(24.0),
        )
        .si()
    };
    let borne = 1e6 * contact_life_factor(5.1e7).powi(2);
    let (mut low, mut high) = (1.0, 2.0);
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if equivalent(middle) < borne { low = middle } else { high = middle }
    }
    close("safety", low, 1.0793, 5e-5);
}

/// A safety belongs on the forces before they are summed; rules put it on the sum.
#[test]
fn a_safety_on_the_sum_is_near_one_on_the_forces() {
    let mesh = Mesh::of(metric_helix());
    let mut worst: f64 = 0.0;
    for rare in [0.001, 0.01, 0.1, 0.5] {
        for peak in [0.8, 1.0, 1.2, 1.5] {
            for usual in [0.3, 0.5, 0.7, 0.8] {
                let knee = mesh.root(3e6);
                let forces = [peak * knee / 1.4, usual * knee / 1.4];
                let raised = forces.map(|force| 1.4 * force);
                let on_sum = 1.4 * mesh.root_equivalent(&forces, &[rare, 1.0 - rare]);
                let on_forces = mesh.root_equivalent(&raised, &[rare, 1.0 - rare]);
                // less on the sum than on the forces would be unsafe
                worst = worst.max(on_forces / on_sum - 1.0);
            }
        }
    }
    assert!(worst < 0.02, "{worst}");
}

fn rack(forces: [f64; 6]) -> f64 {
    // speed up forward, cruise, brake, and the same back; 60 moves an hour each way
    let (m, z, h, x, b) = Mesh::of(metric_helix()).teeth;
    let mesh = Mesh::of(metric_helix());
    let even = (RACK_FLANK_ENDURANCE.apply)(m, z, h, x, b, Pressure::of_si(0.92 * 1196e6));
    let bears = (MOUNTED_ENDURANCE.apply)(even, ratio(1.3));
    (RACK_FLANK_EQUIVALENT_FORCE.apply)(
        Series::of_si(&forces),
        Series::of_si(&[1.0, 0.0, -1.0, -1.0, 0.0, 1.0]),
        Series::of_si(&[60.0; 6]),
        ratio(120.0),
        bears,
        mesh.slope,
        mesh.offset,
        mesh.light,
        b,
    )
    .si()
}

/// A place near the lower end is met speeding up forward and braking back, both with the same flank.
#[test]
fn a_place_of_the_rack_meets_the_forces_of_its_zone_only() {
    close("lower end", rack([6e3, 1e3, -1e3, -1e3, -1e3, 6e3]), 6e3, 1e-9);
    close("upper end", rack([1e3, 1e3, -5e3, -5e3, -1e3, 1e3]), 5e3, 1e-9);
    // half the passes of the middle press one flank, half the other
    let half = rack([1e3, 5e3, -1e3, -1e3, -5e3, 1e3]);
    let one_way = rack([1e3, 5e3, -1e3, -1e3, 5e3, 1e3]);
    close("middle, one flank", one_way, 5e3, 1e-9);
    assert!(half < 0.99 * one_way && half > 0.9 * one_way, "{half} of {one_way}");
}

#[test]
fn what_is_not_known_gives_no_equivalent_force() {
    let mesh = Mesh::of(metric_helix());
    assert!(mesh.flank_equivalent(&[f64::NAN, 1e3], &[0.5, 0.5]).is_nan());
    assert!(mesh.root_equivalent(&[1e3, 1e3], &[0.5, f64::NAN]).is_nan());
    assert_eq!(mesh.flank_equivalent(&[1e3], &[0.0]), 0.0);
}
