//! Factors of tooth strength.
//!
//! ISO 6336-2:2006 and -3:2006, life factors: break points as reproduced in the bevel gear standard GB/T 10062,
//! part on pitting, and a designer's handbook page (contact); root: which steels take which line, and the rows of size, surface
//! and slip layer, as reproduced in a public program for gear rating (read there). Zone and elasticity factor:
//! ISO 6336-2, from memory. Hertz: line contact of a cylinder on a flat, K. L. Johnson, *Contact Mechanics*,
//! Cambridge University Press 1985, section 4.2, from memory.

use crate::{mpa, near, newton, straight};
use axiswright::formula::gear_geometry::metric_helix;
use axiswright::formula::tooth_strength::*;
use axiswright::units::{Length, Measure, Ratio, Time};
use std::f64::consts::PI;

#[test]
fn life_factors_pass_through_the_printed_points() {
    for (cycles, value) in [(1e3, 1.6), (1e5, 1.6), (5e7, 1.0), (1e10, 0.85), (1e12, 0.85)] {
        assert!((contact_life_factor(cycles) - value).abs() < 1e-12, "Z_NT at {cycles}");
    }
    let (hardened, through) = (SteelClass::CaseHardened.root_static_cycles(), SteelClass::Soft.root_static_cycles());
    for (cycles, value) in [(1e2, 2.5), (1e3, 2.5), (3e6, 1.0), (1e10, 0.85), (1e12, 0.85)] {
        let life = (ROOT_LIFE_FACTOR.apply)(Ratio::of_si(cycles), hardened).si();
        assert!((life - value).abs() < 1e-12, "Y_NT hardened at {cycles}");
    }
    for (cycles, value) in [(1e2, 2.5), (1e4, 2.5), (3e6, 1.0), (1e10, 0.85), (1e12, 0.85)] {
        let life = (ROOT_LIFE_FACTOR.apply)(Ratio::of_si(cycles), through).si();
        assert!((life - value).abs() < 1e-12, "Y_NT through-hardened at {cycles}");
    }
}

#[test]
fn life_factors_between_the_points() {
    for (cycles, value) in [(1e6, 1.344), (1e7, 1.129), (1e8, 0.979), (1e9, 0.912)] {
        near(&format!("Z_NT at {cycles}"), contact_life_factor(cycles), value, 0.0005);
    }
    let life =
        |cycles, class: SteelClass| (ROOT_LIFE_FACTOR.apply)(Ratio::of_si(cycles), class.root_static_cycles()).si();
    for (cycles, value) in [(1e5, 1.476), (1e6, 1.134), (1e7, 0.976), (1e8, 0.932)] {
        for class in [SteelClass::CaseHardened, SteelClass::InductionHardened] {
            near(&format!("Y_NT at {cycles}"), life(cycles, class), value, 0.0005);
        }
    }
    // (3·10⁶/N)^0.1607
    for (cycles, value) in [(1e5, 1.727), (1e6, 1.193), (1e7, 0.976), (1e8, 0.932)] {
        for class in [SteelClass::ThroughHardened, SteelClass::Soft] {
            near(&format!("Y_NT at {cycles}"), life(cycles, class), value, 0.0005);
        }
    }
}

#[test]
fn zone_and_elasticity_factors_of_a_rack() {
    near("Z_H straight", zone_factor(straight()), 2.4946, 0.00005);
    near("Z_H metric helix", zone_factor(metric_helix()), 2.3770, 0.00005);
    near("Z_E, √MPa", elasticity_factor() / 1e3, 189.81, 0.005);
}

#[test]
fn pitch_point_stress_is_hertz_line_contact_of_a_cylinder_on_a_flat() {
    // module 3, 20 teeth straight, 29 mm wide, 5 kN
    let (diameter, width, force): (f64, f64, f64) = (0.060, 0.029, 5000.0);
    let gear_way = zone_factor(straight()) * elasticity_factor() * (force / (diameter * width)).sqrt();
    let angle = 20f64.to_radians();
    let radius = diameter / 2.0 * angle.sin();
    let line_load = force / angle.cos() / width;
    let modulus = 2.06e11 / (2.0 * (1.0 - 0.3 * 0.3));
    let hertz_way = (line_load * modulus / (PI * radius)).sqrt();
    assert!((gear_way / hertz_way - 1.0).abs() < 1e-9, "{gear_way} against {hertz_way}");
}

#[test]
fn cycles_of_pinion_and_rack() {
    let distance = Length::of_si(20_000e3);
    let pinion = (PINION_CYCLES.apply)(distance, Length::of_si(0.04244)).si();
    near("pinion", pinion, 1.5e8, 0.05e8);
    assert_eq!((RACK_CYCLES.apply)(Ratio::of_si(400.0), Time::of_si(25_000.0 * 3600.0)).si(), 1e7);
}

#[test]
fn stress_limits_of_the_steels_lie_on_the_lines_of_iso_6336_5_from_memory() {
    let steels = [
        ("case-hardened", 1500.0, 461.0),
        ("induction-hardened", 1195.78, 369.0),
        ("through-hardened", 740.64, 306.0),
        ("soft", 545.0, 211.0),
    ];
    assert_eq!(steels.len(), MATERIALS.len());
    for (name, contact, bending) in steels {
        let steel = material(name).expect("a steel of the table");
        near(name, steel.contact_limit().si(), mpa(contact).si(), 1.0);
        near(name, steel.bending_limit().si(), mpa(bending).si(), 1.0);
    }
    assert!(material("wood").is_none());
}

#[test]
fn the_least_of_four_forces_governs_and_needs_all_four() {
    let least = |forces: [f64; 4]| {
        let [a, b, c, d] = forces.map(newton);
        (LEAST_4.apply)(a, b, c, d).si()
    };
    assert_eq!(least([4.0, 3.0, 2.0, 5.0]), 2.0);
    assert!(least([4.0, f64::NAN, 2.0, 5.0]).is_nan());
}

/// Rows of the tables of size and slip layer.
#[test]
fn size_and_slip_layer_go_by_the_class_of_the_steel() {
    let module = |millimetres: f64| Length::of_si(millimetres * 1e-3);
    for (millimetres, hardened, through) in [
        (3.0, 1.0, 1.0),
        (5.0, 1.0, 1.0),
        (10.0, 0.95, 0.97),
        (25.0, 0.80, 0.88),
        (30.0, 0.80, 0.85),
        (40.0, 0.80, 0.85),
    ] {
        near("Y_X hardened", (ROOT_SIZE_FACTOR_HARDENED.apply)(module(millimetres)).si(), hardened, 1e-9);
        near("Y_X", (ROOT_SIZE_FACTOR.apply)(module(millimetres)).si(), through, 1e-9);
    }
    let layer = |class: SteelClass| class.slip_layer().si() * 1e3;
    near("ρ′ case-hardened", layer(SteelClass::CaseHardened), 0.0030, 1e-9);
    near("ρ′ induction-hardened", layer(SteelClass::InductionHardened), 0.0030, 1e-9);
    // proof stress 600 and 800 MPa; yield point 300 and 400 MPa
    assert!((0.0064..0.0194).contains(&layer(SteelClass::ThroughHardened)));
    assert!((0.0445..0.0833).contains(&layer(SteelClass::Soft)));
}

/// The surface factor is that of a test gear with roots of 10 µm, so it is 1 there for every steel.
#[test]
fn roots_as_smooth_as_those_of_the_test_gears_lose_nothing() {
    for factor in [&ROOT_SURFACE_FACTOR, &ROOT_SURFACE_FACTOR_SOFT] {
        let at = |microns: f64| (factor.apply)(Length::of_si(microns * 1e-6)).si();
        near("Rz 10 µm", at(10.0), 1.0, 0.002);
        assert!(at(0.5) > at(1.5) && at(5.0) > at(10.0) && at(10.0) > at(40.0));
    }
    let at = |factor: &axiswright::formula::Formula<fn(Length) -> Ratio>| (factor.apply)(Length::of_si(40e-6)).si();
    assert!(at(&ROOT_SURFACE_FACTOR_SOFT) > at(&ROOT_SURFACE_FACTOR), "soft steel minds roughness less");
}
