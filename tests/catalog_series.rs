//! The built-in catalogue against standards, mechanics and the laws by which it says it was made.
//!
//! What is quoted from a standard here is from memory unless a second source is named; no text was at hand.

use axiswright::catalog::{Catalog, check, load};
use axiswright::units::{Measure, Money};
use std::f64::consts::{PI, TAU};

fn catalog() -> Catalog {
    load(&[]).unwrap_or_else(|faults| panic!("{faults}"))
}

fn mm(length: axiswright::units::Length) -> f64 {
    length.si() * 1e3
}

fn close(value: f64, wanted: f64, tolerance: f64, what: &str) {
    assert!((value - wanted).abs() <= tolerance, "{what}: {value} is not {wanted} within {tolerance}");
}

fn contains(series: &[f64], value: f64) -> bool {
    series.iter().any(|member| (member - value).abs() < 1e-9)
}

/// ISO 3408-2, nominal diameters and nominal leads in mm (from memory).
#[test]
fn screws_have_diameters_and_leads_of_iso_3408_2() {
    let diameters = [6., 8., 10., 12., 16., 20., 25., 32., 40., 50., 63., 80., 100., 125., 160., 200.];
    let leads = [1., 2., 2.5, 3., 4., 5., 6., 8., 10., 12., 16., 20., 25., 32., 40.];
    let catalog = catalog();
    assert_eq!(catalog.ball_screws.len(), 32);
    for screw in &catalog.ball_screws {
        assert!(contains(&diameters, mm(screw.nominal_diameter)), "{}", screw.designation);
        assert!(contains(&leads, mm(screw.lead)), "{}", screw.designation);
    }
}

/// ISO 3408-5 (from memory): C_a and C_0a from geometry, conformity 0.54, contact angle 45 degrees. The tolerance is
/// half the last digit that the catalogue gives: 0.05 kN and 0.5 kN.
#[test]
fn screw_ratings_follow_iso_3408_5() {
    for screw in &catalog().ball_screws {
        let (ball, circle, lead, turns) =
            (mm(screw.ball_diameter), mm(screw.ball_circle_diameter), mm(screw.lead), screw.turns.si());
        let conformity: f64 = 0.54;
        let half = (PI / 4.0).cos();
        let angle = (lead / (PI * circle)).atan();
        let gamma = ball * half / circle;
        let balls = (PI * circle / (ball * angle.cos())).floor();
        let shape = gamma.powf(0.3) * (1.0 - gamma).powf(1.39) / (1.0 + gamma).cbrt();
        let f_c = 9.32 * 10.0 * (1.0 - half / 3.0) * shape * (1.0 / (1.0 - 0.5 / conformity)).powf(0.41);
        let on_screw = f_c * half.powf(0.86) * balls.powf(2.0 / 3.0) * ball.powf(1.8) * angle.cos().powf(1.3);
        let over_nut = ((1.0 - gamma) / (1.0 + gamma)).powf(1.723);
        let dynamic = on_screw * (1.0 + over_nut.powf(10.0 / 3.0)).powf(-0.3) * turns.powf(0.86) / 1e3;
        close(screw.dynamic_rating.expect("stated").si() / 1e3, dynamic, 0.05, &screw.designation);
        let along = 2.0 - 1.0 / conformity;
        let across = 2.0 + ball * half / (circle / 2.0 - ball * half / 2.0);
        let fixed = 27.74 / (along * across).sqrt() * balls * turns * ball.powi(2) * half * angle.cos() / 1e3;
        close(screw.static_rating.expect("stated").si() / 1e3, fixed, 0.5, &screw.designation);
    }
}

/// ISO 3408-3 (from memory): v_300p and v_2πp in µm. v_300p of the grades 1 to 5 equals the standard tolerance IT 1 to
/// IT 5 of ISO 286-1 for 250 to 315 mm: 6, 12 and 23 µm for 1, 3 and 5 (checked against two transcriptions of that table).
#[test]
fn grades_have_the_variations_of_iso_3408_3() {
    let by_300 = [(1, 6.0), (3, 12.0), (5, 23.0), (7, 52.0), (10, 210.0)];
    let by_turn = [(1, 4.0), (3, 6.0), (5, 8.0)];
    for grade in &catalog().screw_grades {
        let of =
            |table: &[(u32, f64)]| table.iter().find(|(number, _)| *number == grade.grade).map(|(_, value)| *value);
        let wanted = of(&by_300).unwrap();
        close(grade.variation_300.si() * 1e6, wanted, 1e-6, &grade.designation);
        // without a value in the standard: a sixth of v_300p, common practice, no source
        let turn = of(&by_turn).unwrap_or(wanted / 6.0);
        close(grade.turn_variation.si() * 1e6, turn, 0.05, &grade.designation);
        assert_eq!(grade.positioning, grade.manufacture == "ground");
    }
}

/// A ring of springs of the axial stiffness on the mean diameter, near 1.6 bores and 3 mm, tilts with k·d_m²/8; seat and
/// housing leave 0.6 to 0.7 of it (common practice, no source). A wider set tilts less in proportion to more than its
/// number.
#[test]
fn tilt_stiffness_of_a_bearing_set_is_that_of_a_ring_of_springs_less_its_seat() {
    let catalog = catalog();
    for bearing in &catalog.screw_bearings {
        let ring = bearing.stiffness.si() * (1.6 * bearing.bore.si() + 3e-3).powi(2) / 8.0;
        let share = bearing.tilt_stiffness.si() / ring;
        let wanted = match bearing.set.as_str() {
            "pair" => 0.58..0.71,
            "triple" => 0.72..0.88,
            _ => 0.81..0.99,
        };
        assert!(wanted.contains(&share), "{}: {share}", bearing.designation);
    }
}

/// Bored and fast screws are their plain size in all but bore, returns, acceleration and price.
#[test]
fn bored_and_fast_screws_are_plain_sizes_with_one_thing_changed() {
    let catalog = catalog();
    let of = |name: &str| catalog.ball_screws.iter().find(|screw| screw.designation == name).unwrap();
    let mut seen = 0;
    for screw in &catalog.ball_screws {
        let Some((plain, kind)) = ["-bored", "-fast"]
            .iter()
            .find_map(|kind| screw.designation.strip_suffix(kind).map(|plain| (of(plain), *kind)))
        else {
            assert!(screw.bore.si() == 0.0 && screw.recirculation != "high-speed", "{}", screw.designation);
            continue;
        };
        seen += 1;
        let mut same = screw.clone();
        same.designation.clone_from(&plain.designation);
        same.price_factor = plain.price_factor;
        if kind == "-bored" {
            let share = screw.bore.si() / screw.root_diameter.si();
            assert!((0.3..0.6).contains(&share), "{}: {share}", screw.designation);
            same.bore = plain.bore;
        } else {
            assert_eq!(screw.recirculation, "high-speed");
            same.recirculation.clone_from(&plain.recirculation);
            same.acceleration_limit = plain.acceleration_limit;
        }
        assert_eq!(&same, plain);
        assert!(screw.price_factor > plain.price_factor);
    }
    assert_eq!(seen, 6);
}

/// ISO 281 (from memory): bearings that share a force carry i^0.7 times as much; a triple has two rows one
/// way and one the other, a quad two either way.
#[test]
fn bearing_sets_carry_more_by_the_rule_of_iso_281() {
    let catalog = catalog();
    let of = |name: &str| catalog.screw_bearings.iter().find(|bearing| bearing.designation == name).unwrap();
    for bore in [12, 17, 20, 25, 30, 40, 50, 60] {
        let sets = ["pair", "triple", "quad"].map(|set| of(&format!("axial-bearing-{bore}-{set}")));
        let [pair, triple, quad] = sets.map(|set| (set.rating.si(), set.lesser_rating.unwrap().si()));
        assert_eq!(pair.0, pair.1);
        close(triple.0 / pair.0, 2.0_f64.powf(0.7), 0.01, "triple");
        close(triple.1 / pair.1, 1.0, 1e-12, "triple, the other way");
        close(quad.0 / pair.0, 2.0_f64.powf(0.7), 0.01, "quad");
        close(quad.1 / quad.0, 1.0, 1e-12, "quad, the other way");
    }
}

/// Modules: ISO 54, first series. Threads: ISO 261, coarse. R_p0.2 of class 12.9: ISO 898-1. All from memory.
#[test]
fn racks_have_standard_modules_and_threads() {
    let modules = [1., 1.25, 1.5, 2., 2.5, 3., 4., 5., 6., 8., 10., 12.];
    let pitches = [(5., 0.8), (6., 1.), (8., 1.25), (10., 1.5), (12., 1.75), (14., 2.), (16., 2.), (20., 2.5)];
    let catalog = catalog();
    assert_eq!(catalog.racks.len(), 14);
    for rack in &catalog.racks {
        assert!(contains(&modules, mm(rack.module)), "{}", rack.designation);
        let (diameter, pitch) = (mm(rack.fastener_diameter), mm(rack.fastener_thread_pitch));
        assert!(pitches.iter().any(|(d, p)| (d - diameter).abs() < 1e-9 && (p - pitch).abs() < 1e-9));
        assert_eq!(rack.fastener_thread, format!("M{diameter:.0}"));
        close(rack.fastener_strength.si(), 1100e6, 1.0, "R_p0.2 of 12.9");
    }
}

/// A rack weighs what its section weighs below the reference line (7850 kg/m³), and costs what its file says.
#[test]
fn racks_follow_their_own_laws() {
    for rack in &catalog().racks {
        let bar = 7850.0 * (rack.section_height - rack.module).si() * rack.section_width.si();
        let share = rack.mass_per_length.si() / bar;
        assert!((0.96..=1.01).contains(&share), "{}: {share}", rack.designation);
        let helical = 96.25 * mm(rack.module).powf(1.35);
        let wanted = if rack.helical { helical } else { helical / 1.1 };
        close(rack.price_per_metre.0 / wanted, 1.0, 5e-4, &rack.designation);
    }
}

/// The undercut limit of a rack-shaped tool, ISO 53 profile A: x_min = 1 - z sin²α_t / (2 cos β) (ISO 21771, from memory).
#[test]
fn no_pinion_is_undercut() {
    let catalog = catalog();
    assert_eq!(catalog.pinions.len(), 24);
    for pinion in &catalog.pinions {
        // metric helix: transverse pitch 10/3 modules, so cos β = 0.3 π
        let cos_helix = if pinion.helical { 0.3 * PI } else { 1.0 };
        let transverse = (20.0_f64.to_radians().tan() / cos_helix).atan();
        let least = 1.0 - f64::from(pinion.teeth) * transverse.sin().powi(2) / (2.0 * cos_helix);
        let shift = pinion.profile_shift.si();
        assert!(shift >= least, "{}: {shift} is below {least}", pinion.designation);
        assert!(shift == 0.0 || shift <= least + 0.11, "{}: more shift than stated", pinion.designation);
    }
}

/// ISO 6336-5, quality MQ, limits in MPa from the hardness (from memory; the contact lines of through hardened steel were
/// read in a printed copy). The catalogue gives whole MPa.
#[test]
fn steels_have_the_limits_of_iso_6336_5() {
    let wanted = [
        ("case-hardened", 1500.0, 461.0),
        ("induction-hardened", 0.541 * 580.0 + 882.0, (0.138 * 580.0 + 290.0_f64).min(369.0)),
        ("alloy-280", 1.313 * 280.0 + 373.0, 0.425 * 280.0 + 187.0),
        ("carbon-200", 0.925 * 200.0 + 360.0, 0.240 * 200.0 + 163.0),
    ];
    let catalog = catalog();
    assert_eq!(catalog.steels.len(), wanted.len());
    for (name, contact, bending) in wanted {
        let steel = catalog.steel(name).unwrap();
        close(steel.contact_limit.si() / 1e6, contact, 0.5, name);
        close(steel.bending_limit.si() / 1e6, bending, 0.5, name);
    }
}

/// P = T ω, exact within half the last digit of the torque; power rate T²/J from 20 to 214 kW/s; stated price laws.
#[test]
fn motors_follow_their_own_laws() {
    let catalog = catalog();
    assert_eq!(catalog.servo_motors.len(), 24);
    let mut rates = Vec::new();
    for motor in &catalog.servo_motors {
        let torque = motor.rated_power.si() / motor.rated_speed.si();
        let digit = 10.0_f64.powf(torque.log10().floor() - 2.0);
        close(motor.rated_torque.si(), torque, 0.5 * digit, &motor.designation);
        let kilowatts = motor.rated_power.si() / 1e3;
        close(motor.drive_price.0, 550.0 + 110.0 * kilowatts, 1e-9, &motor.designation);
        match motor.brake_torque {
            None => {
                // whole units of money
                close(motor.price.0, 350.0 + 110.0 * kilowatts, 0.5 + 1e-9, &motor.designation);
                rates.push(motor.rated_torque.si().powi(2) / motor.inertia.si() / 1e3);
            }
            // a holding brake holds at least the rated torque
            Some(brake) => assert!(brake > motor.rated_torque, "{}", motor.designation),
        }
    }
    rates.sort_by(f64::total_cmp);
    close(rates[0], 20.0, 0.5, "smallest power rate");
    close(rates[rates.len() - 1], 214.0, 0.5, "largest power rate");
}

/// Two motors of one size, with and without brake, are one size.
#[test]
fn every_motor_comes_with_and_without_brake() {
    let catalog = catalog();
    for motor in catalog.servo_motors.iter().filter(|motor| motor.brake_torque.is_none()) {
        let twin = catalog.servo_motors.iter().find(|other| other.size == motor.size && other.brake_torque.is_some());
        let twin = twin.unwrap_or_else(|| panic!("{} has no twin", motor.designation));
        assert!(twin.inertia > motor.inertia && twin.mass > motor.mass && twin.price > motor.price);
        assert_eq!(twin.rated_torque, motor.rated_torque);
    }
}

#[test]
fn gearboxes_follow_their_own_laws() {
    let catalog = catalog();
    assert_eq!(catalog.gearboxes.len(), 6 * 18 * 2);
    let of = |name: &str| catalog.gearboxes.iter().find(|gearbox| gearbox.designation == name).unwrap();
    let (small, large) = (of("planetary-60-standard-i5"), of("planetary-110-standard-i5"));
    // torque grows with the frame to the power 3.2: (110/60)^3.2 = 6.96, the series has 7.14
    let growth = large.acceleration_torque.si() / small.acceleration_torque.si();
    close(growth, 7.14, 0.005, "growth of torque");
    close((110.0_f64 / 60.0).powf(3.2), 6.96, 0.005, "law of growth");
    for frame in [60, 80, 110, 140, 180, 220] {
        let base = of(&format!("planetary-{frame}-standard-i5"));
        close(base.price.0, 600.0 + 4.0 * base.acceleration_torque.si(), 1e-6, &base.designation);
        close(base.no_load_torque.si(), 0.004 * base.acceleration_torque.si(), 1e-9, &base.designation);
        let reduced = of(&format!("planetary-{frame}-reduced-i5"));
        close(reduced.price.0, 1.25 * base.price.0, 1e-6, &reduced.designation);
        assert!(reduced.play < base.play);
        let two = of(&format!("planetary-{frame}-standard-i50"));
        close(two.price.0, 1.35 * base.price.0, 1e-6, &two.designation);
        close((two.play - base.play).si(), 2.0 * PI / 10_800.0, 1e-12, &two.designation);
    }
    for gearbox in &catalog.gearboxes {
        let wanted = if gearbox.stages == 1 { 0.97 } else { 0.94 };
        close(gearbox.efficiency.si(), wanted, 1e-12, &gearbox.designation);
    }
}

/// A belt of 8 mm pitch, 24 and 48 teeth, 30 mm wide, shafts 0.3 m apart, 20 kN a mm of width at unit strain: the free span
/// is √(300² - 30.56²) = 298.4 mm, so c = 2 · 600 kN / 298.4 mm · (61.1 mm)² = 15.02 kN·m/rad (derived by hand).
#[test]
fn a_belt_is_as_stiff_as_its_two_spans() {
    let catalog = catalog();
    let belt = catalog.screw_reductions.iter().find(|belt| belt.designation == "belt-8x30-24-i2").unwrap();
    let (small, large): (f64, f64) = (24.0 * 0.008 / PI, 48.0 * 0.008 / PI);
    let span = (0.3_f64.powi(2) - ((large - small) / 2.0).powi(2)).sqrt();
    close(span, 0.2984, 5e-5, "span");
    assert_eq!(
        (belt.ratio.si(), belt.driving_teeth.unwrap().si(), belt.centre_distance.unwrap().si()),
        (2.0, 24.0, 0.3)
    );
    let force = belt.specific_stiffness.unwrap().si() * belt.belt_width.unwrap().si();
    close(2.0 * force / span * (large / 2.0).powi(2), 15_019.0, 1.0, "stiffness");
    close(belt.pull_per_width.unwrap().si() * belt.belt_width.unwrap().si(), 1350.0, 1e-9, "permissible pull");
}

/// Common practice, no source: every nut unit has screws, runs at near 105 000 mm/min over the diameter, costs more and
/// weighs more the larger it is, and some belt reaches around its nut.
#[test]
fn nut_units_grow_with_their_screws() {
    let catalog = catalog();
    let mut units: Vec<_> = catalog.nut_units.iter().collect();
    units.sort_by(|a, b| a.nominal_diameter.si().total_cmp(&b.nominal_diameter.si()));
    assert_eq!(units.len(), 6);
    for unit in &units {
        let diameter = unit.nominal_diameter.si();
        close(diameter * unit.speed_limit.si() * 60.0 / TAU, 107.0, 3.0, &unit.designation);
        close(unit.stiffness.si() / diameter, 14.0e9, 0.1e9, &unit.designation);
        let screws: Vec<_> =
            catalog.ball_screws.iter().filter(|screw| screw.nominal_diameter.si() == diameter).collect();
        assert!(!screws.is_empty(), "{}", unit.designation);
        for screw in screws {
            let pulleys = catalog.screw_reductions.iter().filter_map(|belt| {
                Some(axiswright::units::Length::of_si(
                    belt.belt_pitch?.si() * belt.driving_teeth?.si() * belt.ratio.si() / PI,
                ))
            });
            assert!(pulleys.clone().any(|pulley| pulley > screw.nut_diameter), "{}", screw.designation);
        }
    }
    for pair in units.windows(2) {
        let (less, more) = (pair[0], pair[1]);
        assert!(less.mass < more.mass && less.inertia < more.inertia && less.drag < more.drag);
        assert!(less.price < more.price && less.speed_limit > more.speed_limit);
    }
}

/// DN, the nominal diameter times the speed, is kept in m·rev/s: 70 000 mm/min let a 20 mm screw turn 3500 1/min.
#[test]
fn circulation_limits_are_speeds_times_diameters() {
    let catalog = catalog();
    let rolled = catalog.screw_grades.iter().find(|grade| grade.designation == "rolled-t7").unwrap();
    let limits = [rolled.circulation_tube, rolled.circulation_deflector, rolled.circulation_end_cap];
    for (limit, speed) in limits.into_iter().zip([2500.0, 3500.0, 3500.0]) {
        close(limit.si() / 0.020 * 60.0, speed, 1e-9, "speed");
    }
    // each screw takes the limit of its own returns; no returns are slower than tubes or faster than those made for it
    for grade in &catalog.screw_grades {
        for screw in &catalog.ball_screws {
            let limit = grade.circulation_limit(screw);
            let wanted = match screw.recirculation.as_str() {
                "tube" => grade.circulation_tube,
                "deflector" => grade.circulation_deflector,
                "end-cap" => grade.circulation_end_cap,
                _ => grade.circulation_high_speed,
            };
            assert_eq!(limit, wanted, "{}, {}", grade.designation, screw.designation);
            assert!(limit >= grade.circulation_tube && limit <= grade.circulation_high_speed);
        }
    }
}

#[test]
fn every_built_in_part_is_generic_and_priced() {
    let catalog = catalog();
    assert!(
        catalog.files.iter().all(|(_, text)| text.contains("basis: generic, invented in realistic size; replace by"))
    );
    assert!(catalog.gearboxes.iter().all(|part| part.generic && part.price > Money(0.0)));
    assert!(catalog.servo_motors.iter().all(|part| part.generic && part.price > Money(0.0)));
    assert_eq!(check(&catalog), []);
}
