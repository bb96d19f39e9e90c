//! The tooth forces against an independent calculation, and a random search for a force that rises where it must fall.

use crate::{mm, ratio, straight};
use axiswright::formula::gear_geometry::metric_helix;
use axiswright::formula::tooth_strength::*;
use axiswright::units::{Angle, Force, Length, Measure, Pressure, Stiffness, TorsionalStiffness, Velocity};
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

/// What the forces of one mesh depend on, in millimetres, metres a second and megapascals.
#[derive(Debug, Clone, Copy)]
struct Mesh {
    module: f64,
    teeth: f64,
    helix: Angle,
    shift: f64,
    width: f64,
    pinion: (f64, f64),
    rack: (f64, f64),
    pinion_cycles: f64,
    rack_cycles: f64,
    quality: f64,
    speed: f64,
    face_load: f64,
    reversal: f64,
    root_safety: f64,
}

impl Mesh {
    /// 20 teeth, grade 6, 1 m/s, case-hardened on induction-hardened, K_Hβ 1.3, S_F 1.4.
    fn usual(module: f64, width: f64, helix: Angle) -> Mesh {
        Mesh {
            module,
            teeth: 20.0,
            helix,
            shift: 0.0,
            width,
            pinion: (1500.0, 461.0),
            rack: (1195.78, 369.0),
            pinion_cycles: 1e8,
            rack_cycles: 1e6,
            quality: 6.0,
            speed: 1.0,
            face_load: 1.3,
            reversal: 0.7,
            root_safety: 1.4,
        }
    }

    /// Pinion pitting, pinion root, rack pitting, rack root, kN.
    fn forces(&self) -> [f64; 4] {
        let mpa = |value: f64| Pressure::of_si(value * 1e6);
        let (m, z, x, b) = (mm(self.module), ratio(self.teeth), ratio(self.shift), mm(self.width));
        let (n1, n2) = (ratio(self.pinion_cycles), ratio(self.rack_cycles));
        let (q, v, k, y) =
            (ratio(self.quality), Velocity::of_si(self.speed), ratio(self.face_load), ratio(self.reversal));
        let h = self.helix;
        [
            pinion_pitting_force(m, z, h, x, b, mpa(self.pinion.0), n1, q, v, k),
            pinion_root_force(
                m,
                z,
                h,
                x,
                b,
                (SteelClass::CaseHardened, mpa(self.pinion.1 / self.root_safety)),
                n1,
                q,
                v,
                k,
                y,
            ),
            rack_pitting_force(m, z, h, x, b, mpa(self.rack.0), n2, q, v, k),
            rack_root_force(
                m,
                z,
                h,
                x,
                b,
                (SteelClass::InductionHardened, mpa(self.rack.1 / self.root_safety)),
                n2,
                q,
                v,
                k,
                y,
            ),
        ]
        .map(|force| force.si() / 1e3)
    }

    fn governing(&self) -> f64 {
        self.forces().into_iter().fold(f64::INFINITY, f64::min)
    }
}

fn agree(what: &str, value: f64, printed: f64, tolerance: f64) {
    assert!((value - printed).abs() <= tolerance, "{what}: {value} kN, printed {printed}");
}

/// An independent calculation after ISO 6336:2006 printed these forces in kN; rack cycles 1e6.
///
/// It put the single contact factor of straight teeth on the rack as well (7.63 and 39.39 kN). A rack has its
/// factor at 1, so those two stand corrected.
#[test]
fn forces_of_usual_meshes_agree_with_an_independent_calculation() {
    let helical = metric_helix();
    let table = [
        (2.0, 24.0, helical, [9.56, 6.88, 11.48, 6.32], 0.005),
        (2.0, 24.0, straight(), [6.34, 6.01, 9.47, 5.68], 0.005),
        (3.0, 29.0, helical, [17.41, 12.68, 20.89, 11.65], 0.005),
        (4.0, 39.0, helical, [31.28, 22.79, 37.52, 20.96], 0.005),
        (5.0, 49.0, helical, [49.19, 35.85, 59.00, 32.97], 0.005),
        (5.0, 49.0, straight(), [32.82, 31.40, 48.77, 29.74], 0.005),
        (6.0, 59.0, helical, [71.14, 51.33, 85.30, 47.21], 0.005),
        (8.0, 79.0, helical, [127.1, 89.9, 152.4, 82.7], 0.05),
    ];
    for (module, width, helix, printed, tolerance) in table {
        for (index, (value, printed)) in Mesh::usual(module, width, helix).forces().into_iter().zip(printed).enumerate()
        {
            agree(&format!("module {module}, force {index}"), value, printed, tolerance);
        }
    }
}

/// The same calculation with the rack cycles of 20 000 km by 2 m: 1e7.
#[test]
fn rack_root_governs_lower_at_ten_million_passes() {
    let table = [
        (2.0, 24.0, 5.42, 0.005),
        (3.0, 29.0, 10.0, 0.05),
        (4.0, 39.0, 18.0, 0.05),
        (5.0, 49.0, 28.3, 0.05),
        (6.0, 59.0, 40.6, 0.05),
        (8.0, 79.0, 71.1, 0.05),
    ];
    for (module, width, printed, tolerance) in table {
        let mesh = Mesh { rack_cycles: 1e7, ..Mesh::usual(module, width, metric_helix()) };
        agree(&format!("module {module}"), mesh.governing(), printed, tolerance);
    }
}

#[test]
fn sensitivities_of_a_module_2_mesh_agree_with_an_independent_calculation() {
    let usual = Mesh::usual(2.0, 24.0, metric_helix());
    let rows = [
        (Mesh { face_load: 1.0, ..usual }, 7.86),
        (Mesh { face_load: 1.15, ..usual }, 7.00),
        (Mesh { face_load: 1.6, ..usual }, 5.31),
        (Mesh { face_load: 2.0, ..usual }, 4.40),
        (Mesh { quality: 5.0, ..usual }, 7.03),
        (Mesh { quality: 8.0, ..usual }, 4.73),
        (Mesh { quality: 10.0, ..usual }, 3.30),
        (Mesh { speed: 3.0, ..usual }, 6.05),
        (Mesh { speed: 5.0, ..usual }, 5.83),
        (Mesh { reversal: 1.0, ..usual }, 9.08),
        (Mesh { rack: (1500.0, 461.0), ..usual }, 6.88),
        (Mesh { rack: (740.64, 306.0), ..usual }, 4.33),
        (Mesh { pinion: (740.64, 306.0), rack: (701.25, 293.25), quality: 8.0, ..usual }, 1.27),
        (Mesh { teeth: 15.0, ..usual }, 6.21),
        (Mesh { teeth: 17.0, ..usual }, 6.26),
        (Mesh { teeth: 25.0, ..usual }, 6.39),
        (Mesh { teeth: 30.0, ..usual }, 6.44),
        (Mesh { teeth: 40.0, ..usual }, 6.50),
    ];
    for (mesh, printed) in rows {
        agree(&format!("{mesh:?}"), mesh.governing(), printed, 0.005);
    }
}

/// What is undone in closed form out of lines of the worksheet is what bisection finds on the whole mesh, whatever the steel.
#[test]
fn closed_forms_agree_with_bisection_for_every_class_of_steel() {
    let classes =
        [SteelClass::CaseHardened, SteelClass::InductionHardened, SteelClass::ThroughHardened, SteelClass::Soft];
    for (module, width, helix) in [(2.0, 24.0, metric_helix()), (5.0, 49.0, straight()), (8.0, 79.0, metric_helix())] {
        for (class, cycles, limit) in
            classes.into_iter().flat_map(|class| [2e3, 7e4, 1e6, 1e9].map(|cycles| (class, cycles, 300e6)))
        {
            let (m, z, x, b) = (mm(module), ratio(20.0), ratio(0.0), mm(width));
            let (q, v, k, y, limit) =
                (ratio(7.0), Velocity::of_si(1.5), ratio(1.4), ratio(0.7), Pressure::of_si(limit));
            let mesh = (
                (LOAD_SLOPE.apply)(m, z, helix, x, b, q, v),
                (LOAD_OFFSET.apply)(m, z, helix, x, b, q, v),
                (LIGHT_LOAD_FACTOR.apply)(m, z, helix, x, b, q, v),
            );
            let size = match class {
                SteelClass::CaseHardened | SteelClass::InductionHardened => (ROOT_SIZE_FACTOR_HARDENED.apply)(m),
                SteelClass::ThroughHardened | SteelClass::Soft => (ROOT_SIZE_FACTOR.apply)(m),
            };
            let strength = (ROOT_STRENGTH.apply)(limit, size, ratio(1.0), y);
            let even = (RACK_ROOT_ENDURANCE.apply)(m, z, helix, x, b, strength, class.slip_layer());
            let mounted = (MOUNTED_ENDURANCE.apply)(even, (ROOT_FACE_LOAD_FACTOR.apply)(k, b, m));
            let life = (ROOT_LIFE_FACTOR.apply)(ratio(cycles), class.root_static_cycles());
            let closed = (ROOT_FORCE.apply)(mounted, life, mesh.0, mesh.1, mesh.2, b).si();
            let bisected = rack_root_force(m, z, helix, x, b, (class, limit), ratio(cycles), q, v, k, y).si();
            assert!((closed / bisected - 1.0).abs() < 1e-9, "root, {class:?}, {cycles}: {closed}, {bisected}");
            let limit = Pressure::of_si(4.0 * limit.si());
            let strength = (FLANK_STRENGTH.apply)(limit, ratio(0.92));
            let even = (PINION_FLANK_ENDURANCE.apply)(m, z, helix, x, b, strength);
            let mounted = (MOUNTED_ENDURANCE.apply)(even, k);
            let closed = (FLANK_FORCE.apply)(mounted, ratio(cycles), mesh.0, mesh.1, mesh.2, b).si();
            let bisected = pinion_pitting_force(m, z, helix, x, b, limit, ratio(cycles), q, v, k).si();
            assert!((closed / bisected - 1.0).abs() < 1e-9, "flank, {class:?}, {cycles}: {closed}, {bisected}");
        }
    }
}

/// Worked by hand: module 3 mm, 20 straight teeth, 29 mm, quality 8, 1 m/s, K_Hβ 1.3, Y_M 0.7, with form factors printed
/// for 20 teeth and their rack. Soft rack of 211 MPa, 10⁵ passes: 2·211·0.7·1.0203·87/(1.1119·2.4966)·1.727/1.2261 = 13 304 N
/// felt. Through-hardened pinion of 306 MPa, 10⁷ turns: 2·306·0.7·0.9851·87/(1.4104·1.8893)·0.9762/1.2261 = 10 970 N. Of
/// both 544 N come from speed, and each newton is felt as 1.2093.
#[test]
fn a_soft_rack_and_a_through_hardened_pinion_bear_what_a_hand_calculation_gives() {
    let (m, z, x, b) = (mm(3.0), ratio(20.0), ratio(0.0), mm(29.0));
    let (q, v, k, y) = (ratio(8.0), Velocity::of_si(1.0), ratio(1.3), ratio(0.7));
    let soft = (SteelClass::Soft, Pressure::of_si(211e6));
    let rack = rack_root_force(m, z, straight(), x, b, soft, ratio(1e5), q, v, k, y).si();
    assert!((rack / 10_552.0 - 1.0).abs() < 1e-3, "{rack} N");
    let through = (SteelClass::ThroughHardened, Pressure::of_si(306e6));
    let pinion = pinion_root_force(m, z, straight(), x, b, through, ratio(1e7), q, v, k, y).si();
    assert!((pinion / 8621.0 - 1.0).abs() < 1e-3, "{pinion} N");
}

/// A row of springs across the width, one side of which begins to bear later by the gap: the most loaded against the mean.
#[test]
fn face_load_factor_is_that_of_a_row_of_springs_with_a_gap() {
    let (shaft, overhang, tilt, width, mesh) = (0.032_f64, 0.035, 2.4e5, 0.024, 417e6);
    let tan = 20f64.to_radians().tan() / metric_helix().si().cos();
    for (force, slope) in [(6e3, 0.0), (6e3, 0.3e-3), (2e3, 0.3e-3), (1e3, 0.5e-3)] {
        // tilt of the shaft by the unit force, summed along the overhang
        let steps = 1000;
        let bending = 2.06e11 * std::f64::consts::PI * shaft.powi(4) / 64.0;
        let radial = force * (1.0 + tan * tan).sqrt();
        let bent: f64 = (0..steps)
            .map(|step| (f64::from(step) + 0.5) / f64::from(steps) * overhang)
            .map(|arm| radial * arm / bending * overhang / f64::from(steps))
            .sum();
        let gap = width * (bent + radial * overhang / tilt + slope);
        // 15 % wear in; 0.85 of the mesh stiffness, along the line of action
        let (gap, stiffness) = (0.85 * gap, 0.85 * mesh * (1.0 + tan * tan));
        let slices = 20_000;
        let carried = |approach: f64| {
            let loads = (0..slices).map(|slice| approach - gap * (f64::from(slice) + 0.5) / f64::from(slices));
            stiffness * loads.map(|give| give.max(0.0)).sum::<f64>() / f64::from(slices)
        };
        let (mut low, mut high) = (0.0, 1e-3);
        for _ in 0..60 {
            let middle = 0.5 * (low + high);
            if carried(middle) < force { low = middle } else { high = middle }
        }
        let by_springs = stiffness * low / force;
        let formula = (ALIGNMENT_FACE_LOAD_FACTOR.apply)(
            Force::of_si(force),
            metric_helix(),
            Length::of_si(overhang),
            Length::of_si(shaft),
            TorsionalStiffness::of_si(tilt),
            Length::of_si(width),
            ratio(slope),
            Stiffness::of_si(mesh),
        )
        .si();
        assert!((formula / by_springs - 1.0).abs() < 1e-3, "{force} N, {slope}: {formula}, by springs {by_springs}");
    }
}

/// The force at which the face load factor is worked out lies below what binds, so that a real force is never under-rated.
#[test]
fn no_force_that_a_rule_lets_pass_lies_below_that_of_the_face_load_factor() {
    let (one, none) = (ratio(1.0), Force::of_si(0.0));
    let reference = (ALIGNMENT_FORCE.apply)(
        Force::of_si(30e3),
        Force::of_si(12e3),
        Force::of_si(24e3),
        Force::of_si(15e3),
        one,
        none,
        one,
        mm(24.0),
    )
    .si();
    // root with safety 1.4 up to K 2.1, with 1.8 over people up to 1.66
    for (safety, factor) in [(1.0, 2.9), (1.4, 2.1), (1.8, 1.66)] {
        assert!(reference <= 12e3 / factor / safety, "safety {safety}: {reference} N");
    }
    assert!((ALIGNMENT_FORCE.apply)(Force::of_si(f64::NAN), none, none, none, one, none, one, mm(24.0)).si().is_nan());
}

/// The load sharing factor of the standard jumps at 100 N/mm; a force that grows must never pass again.
#[test]
fn forces_fall_without_a_way_back_through_the_step_at_100_newton_a_millimetre() {
    for (quality, helix) in [(6.0, metric_helix()), (5.0, metric_helix()), (6.0, straight())] {
        let mut last = [f64::INFINITY; 4];
        for step in 0..400 {
            let less = 1.0 - f64::from(step) * 0.002;
            let usual = Mesh::usual(2.0, 24.0, helix);
            let limits = |(contact, bending): (f64, f64)| (contact * less, bending * less);
            let mesh = Mesh { pinion: limits(usual.pinion), rack: limits(usual.rack), quality, ..usual };
            let forces = mesh.forces();
            for (now, before) in forces.iter().zip(last) {
                assert!(*now <= before, "grade {quality}, limits times {less}: {now} kN after {before} kN");
            }
            last = forces;
        }
        assert!(last.iter().all(|force| *force < 2.4), "the search went below 100 N/mm: {last:?}");
    }
}

#[test]
fn what_is_not_known_gives_no_force() {
    let usual = Mesh::usual(2.0, 24.0, metric_helix());
    let unknown = [
        Mesh { quality: 11.0, ..usual },
        Mesh { quality: f64::NAN, ..usual },
        Mesh { speed: f64::NAN, ..usual },
        Mesh { teeth: f64::NAN, ..usual },
        Mesh { teeth: 3.0, ..usual },
        Mesh { face_load: f64::NAN, ..usual },
        Mesh { shift: f64::NAN, ..usual },
        Mesh { width: f64::NAN, ..usual },
        Mesh { module: f64::NAN, ..usual },
    ];
    for mesh in unknown {
        assert!(mesh.forces().into_iter().all(f64::is_nan), "{mesh:?} gives {:?}", mesh.forces());
    }
}

fn meshes() -> impl Strategy<Value = Mesh> {
    let geometry = (1.5..8.0f64, 15u32..41, any::<bool>(), 6.0..12.0f64, 0.25..0.5f64);
    let duty = (2.0..10.0f64, 2.0..10.0f64, 5.0..10.0f64, 0.05..6.0f64, 1.0..2.0f64);
    let steel = (500.0..1500.0f64, 200.0..500.0f64);
    (geometry, duty, steel).prop_map(|(geometry, duty, steel)| {
        let (module, teeth, helical, widths, shift) = geometry;
        Mesh {
            teeth: f64::from(teeth),
            shift: if teeth < 18 { shift } else { 0.0 },
            pinion: steel,
            rack: steel,
            pinion_cycles: 10f64.powf(duty.0),
            rack_cycles: 10f64.powf(duty.1),
            quality: duty.2,
            speed: duty.3,
            face_load: duty.4,
            ..Mesh::usual(module, widths * module, if helical { metric_helix() } else { straight() })
        }
    })
}

/// No force of `harder` is above that of `mesh`, but for rounding.
fn falls(mesh: Mesh, harder: Mesh) -> Result<(), TestCaseError> {
    for (index, (before, after)) in mesh.forces().into_iter().zip(harder.forces()).enumerate() {
        prop_assert!(before > 0.0 && after > 0.0, "{:?} gives {:?}", mesh, mesh.forces());
        prop_assert!(after <= before * (1.0 + 1e-12), "force {}: {} then {}", index, before, after);
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 24, rng_seed: RngSeed::Fixed(0x6336), failure_persistence: None, ..ProptestConfig::default()
    })]

    #[test]
    fn forces_fall_with_cycles(mesh in meshes(), more in 1.0..1e4f64) {
        let harder =
            Mesh { pinion_cycles: mesh.pinion_cycles * more, rack_cycles: mesh.rack_cycles * more, ..mesh };
        falls(mesh, harder)?;
    }

    #[test]
    fn forces_fall_with_the_quality_number(mesh in meshes(), share in 0.0..1.0f64) {
        falls(mesh, Mesh { quality: mesh.quality + share * (10.0 - mesh.quality), ..mesh })?;
    }

    #[test]
    fn forces_fall_with_speed(mesh in meshes(), more in 1.0..20.0f64) {
        falls(mesh, Mesh { speed: mesh.speed * more, ..mesh })?;
    }

    #[test]
    fn forces_fall_with_the_face_load_factor(mesh in meshes(), more in 1.0..1.5f64) {
        falls(mesh, Mesh { face_load: mesh.face_load * more, ..mesh })?;
    }

    #[test]
    fn forces_rise_with_the_stress_limits(mesh in meshes(), less in 0.2..1.0f64) {
        let limits = (mesh.pinion.0 * less, mesh.pinion.1 * less);
        falls(mesh, Mesh { pinion: limits, rack: limits, ..mesh })?;
    }
}
