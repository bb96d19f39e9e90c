//! Stated values and defaults arrive.
//!
//! Conversions are checked against the exact definitions of NIST Special Publication 811 (inch 25.4 mm, pound
//! 0.453 592 37 kg, standard gravity 9.806 65 m/s²; from memory). The rest checks our own promises.

use super::texts::{FULL, LEAST, brief, with_axis_lines};
use axiswright::brief::{Along, Axis, CounterbalanceKind, CuttingDirection, Feedback, Mapping, load, starter};
use axiswright::units::{Measure, Money};

#[test]
fn every_stated_value_arrives() {
    let brief = brief(FULL);
    assert_eq!((brief.name.as_str(), brief.text.as_str()), ("test.yaml", FULL));
    assert_eq!(brief.machine, "Trimming gantry");
    assert_eq!((brief.currency.value.as_str(), brief.currency.stated), ("EUR", true));
    assert_eq!((brief.years_in_service.value, brief.hours_per_year.value), (12.0, 3500.0));
    assert_eq!((brief.discount_rate.value.si(), brief.energy_price.value), (0.04, Money(0.3)));
    assert_eq!((brief.downtime_cost.value, brief.downtime_cost.stated), (Money(90.0), true));
    assert_eq!(brief.environment, ["composite dust", "draught"]);
    assert_eq!(brief.temperature_swing.value.si(), 6.0);
    assert_eq!(brief.reliability.value.si(), 0.97);
    let spreads = brief.uncertainty.all().map(|(key, spread)| (key, spread.value.si(), spread.stated));
    let wanted = [
        ("moved-mass", 0.04, true),
        ("guide-friction", 0.25, true),
        ("cutting-force", 0.1, true),
        ("temperature-swing", 0.0, true),
        ("stiffness", 0.2, true),
    ];
    assert_eq!(spreads, wanted);
    let site = brief.site;
    assert_eq!((site.supply_voltage.value.si(), site.supply_tolerance.value.si()), (480.0, 0.05));
    assert_eq!((site.altitude.value.si(), site.ambient_temperature.value.si()), (1600.0, 45.0));
    let limits = &brief.limits;
    assert_eq!(limits.purchase, Some(Money(60_000.0)));
    assert_eq!(limits.tool_point_error.map(Measure::si), Some(0.15e-3));
    assert_eq!(limits.supply_power.map(Measure::si), Some(40_000.0));
    assert_eq!((limits.motor_models, limits.gearbox_models), (Some(2), Some(3)));
    assert_eq!(limits.lead_time.map(Measure::si), Some(12.0 * 7.0 * 86_400.0));
    let prefer = &brief.prefer;
    assert_eq!((prefer.whole_life_cost, prefer.accuracy, prefer.stiffness, prefer.upkeep), (5.0, 2.0, 2.0, 1.0));
    assert!(prefer.stated);

    assert_eq!(brief.axes.iter().map(|axis| axis.name.as_str()).collect::<Vec<_>>(), ["long", "cross", "ram"]);
    let long = &brief.axes[0];
    assert_eq!(long.purpose.as_deref(), Some("gantry along the mould"));
    assert_eq!((long.inclination.si(), long.travel.si(), long.overtravel.value.si()), (0.0, 11.0, 0.06));
    assert_eq!((long.moved_mass.si(), long.drives.value), (1850.0, 2));
    assert_eq!(long.drive_spacing.map(Measure::si), Some(3.6));
    assert!((long.speed.si() - 50.0 / 60.0).abs() < 1e-15);
    assert_eq!((long.acceleration.si(), long.jerk.value.si()), (2.0, 40.0));
    assert_eq!((long.cutting_force.value.si(), long.cuts()), (900.0, true));
    assert_eq!(long.cutting_force_direction.value, CuttingDirection::Forward);
    assert!((long.cutting_speed.value.si() - 0.2).abs() < 1e-15);
    assert_eq!((long.guide_friction.value.si(), long.wiper_force.value.si()), (0.004, 80.0));
    let lengths = [
        (long.accuracy, 0.2e-3),
        (long.section_accuracy, 0.1e-3),
        (long.repeatability, 0.05e-3),
        (long.reversal, 0.04e-3),
        (long.cutting_deflection, 0.05e-3),
        (long.ripple.value, 0.01e-3),
    ];
    for (length, wanted) in lengths {
        assert!((length.unwrap().si() - wanted).abs() < 1e-18);
    }
    assert_eq!(long.first_mode.map(Measure::si), Some(20.0));
    assert_eq!(long.feedback, Feedback::Scale);
    let sides = &long.sides;
    assert_eq!((sides.mass_offset.value.si(), sides.yaw_stiffness.value.si()), (0.12, 3e8));
    assert_eq!((sides.temperature_difference.value.si(), sides.guide_base.value.si()), (1.5, 1.2));
    assert!((sides.correction.value.si() - 0.6).abs() < 1e-15);
    assert_eq!(sides.guide_spacing.map(Measure::si), Some(3.4));
    assert_eq!(long.families.as_deref(), Some(["helical-rack".to_string(), "twin-pinion".into()].as_slice()));
    assert!(long.duty_stated);
    assert_eq!(long.duty.iter().map(|share| share.share.si()).collect::<Vec<_>>(), [0.15, 0.55, 0.3]);
    assert_eq!(long.duty[0].stroke.map(Measure::si), Some(8.0));
    assert_eq!(long.duty[1].stroke, None);
    assert_eq!((long.usual_stroke().si(), long.duty[1].force.si()), (5.5, 900.0));
    assert_eq!((long.duty[2].stand, long.duty[2].speed, long.duty[2].force.si()), (true, None, 100.0));

    let ram = &brief.axes[2];
    assert_eq!(ram.inclination.si(), std::f64::consts::FRAC_PI_2);
    let balance = ram.counterbalance.unwrap();
    assert_eq!((balance.kind, balance.share.si(), ram.people_below.value), (CounterbalanceKind::Gas, 0.85, true));

    assert_eq!(brief.waivers.len(), 2);
    let waiver = &brief.waivers[0];
    assert_eq!((waiver.rule.as_str(), waiver.axis.as_deref()), ("inertia-ratio", Some("long")));
    assert_eq!((waiver.reason.as_str(), waiver.by.as_str()), ("tuned on the prototype", "drive engineer"));
    assert_eq!(waiver.until.as_deref(), Some("2028-02-29"));
    assert_eq!((brief.waivers[1].axis.as_deref(), brief.waivers[1].until.as_deref()), (None, None));
}

#[test]
fn inch_units_arrive_in_si() {
    let brief = brief(FULL);
    let cross = &brief.axes[1];
    assert!((cross.moved_mass.si() - 900.0 * 0.453_592_37).abs() < 1e-10);
    assert!((cross.speed.si() - 1000.0 * 0.0254 / 60.0).abs() < 1e-15);
    assert!((cross.acceleration.si() - 0.3 * 9.806_65).abs() < 1e-15);
    assert!((cross.cutting_force.value.si() - 200.0 * 0.453_592_37 * 9.806_65).abs() < 1e-10);
}

#[test]
fn who_carries_whom_is_filled_in_both_ways() {
    let brief = brief(FULL);
    assert_eq!(brief.axes.iter().map(|axis| axis.carries.clone()).collect::<Vec<_>>(), [vec![1], vec![2], vec![]]);
    assert_eq!(brief.axes.iter().map(|axis| axis.carried_by).collect::<Vec<_>>(), [None, Some(0), Some(1)]);
    assert_eq!(brief.from_the_leaves(), [2, 1, 0]);
    assert_eq!((brief.axis("cross"), brief.axis("Cross")), (Some(1), None));
}

#[test]
fn carried_axes_come_before_their_carriers_whatever_the_order_of_the_file() {
    let axis = |name: &str, carries: &str| {
        format!(
            "  {name}: {{ direction: horizontal, travel: 1 m, moved-mass: 9 kg, speed: 1 m/s, acceleration: 1 m/s², \
             carries: [{carries}] }}\n"
        )
    };
    let axes = axis("c", "") + &axis("a", "b, d") + &axis("e", "") + &axis("b", "c") + &axis("d", "");
    let brief = brief(&format!("machine: T\naxes:\n{axes}"));
    let order = brief.from_the_leaves();
    assert_eq!(order.len(), 5);
    for (at, axis) in brief.axes.iter().enumerate() {
        let place = |wanted: usize| order.iter().position(|&axis| axis == wanted).unwrap();
        assert!(axis.carries.iter().all(|&carried| place(carried) < place(at)), "{order:?}");
    }
}

#[test]
fn every_default_that_is_used_is_an_assumption_with_a_source() {
    let brief = brief(LEAST);
    let told: Vec<(&str, &str, &str)> =
        brief.assumptions.iter().map(|a| (a.key.as_str(), a.value.as_str(), a.unit.as_str())).collect();
    assert_eq!(
        told,
        [
            ("currency", "units", ""),
            ("years-in-service", "10", "years"),
            ("hours-per-year", "4000", "h"),
            ("discount-rate", "6", "%"),
            ("energy-price", "0.25", ""),
            ("downtime-cost", "100", ""),
            ("temperature-swing", "5", "K"),
            ("supply-voltage", "400", "V"),
            ("supply-tolerance", "10", "%"),
            ("altitude", "1000", "m"),
            ("ambient-temperature", "40", "°C"),
            ("reliability", "90", "%"),
            ("uncertainty.moved-mass", "5", "%"),
            ("uncertainty.guide-friction", "30", "%"),
            ("uncertainty.cutting-force", "15", "%"),
            ("uncertainty.temperature-swing", "20", "%"),
            ("uncertainty.stiffness", "15", "%"),
            ("prefer", "whole-life-cost alone", ""),
            ("axes.x.overtravel", "50", "mm"),
            ("axes.x.drives", "1", ""),
            ("axes.x.jerk", "40", "m/s³"),
            ("axes.x.cutting-force", "0", "N"),
            ("axes.x.bed", "steel", ""),
            ("axes.x.guide-friction", "0.005", ""),
            ("axes.x.wiper-force", "40", "N"),
            ("axes.x.feedback", "any", ""),
            ("axes.x.mapping", "any", ""),
            ("axes.x.guide-tilt", "0", "arcsec"),
            ("axes.x.families", "any", ""),
            ("axes.x.duty", "20 % at 30 m/min, 50 % at 15 m/min, 30 % stand", ""),
            ("axes.x.duty.stroke", "1000", "mm"),
            ("axes.x.along", "x", ""),
        ]
    );
    for assumption in &brief.assumptions {
        let remembered = ["supply-tolerance", "altitude", "ambient-temperature"].contains(&assumption.key.as_str());
        let standing = if remembered { "from memory" } else { "common practice, no source" };
        assert!(assumption.source.contains(standing), "{assumption:?}");
    }
    let axis = &brief.axes[0];
    assert_eq!((axis.jerk.value.si(), axis.jerk.stated), (40.0, false));
    assert_eq!((axis.overtravel.value.si(), axis.overtravel.stated), (0.05, false));
    assert_eq!((axis.ripple.value, axis.ripple.stated), (None, false));
    assert_eq!((axis.feedback, axis.families.as_ref(), axis.duty_stated), (Feedback::Any, None, false));
    assert_eq!(axis.duty.len(), 3);
    assert!((axis.duty.iter().map(|share| share.share.si()).sum::<f64>() - 1.0).abs() < 1e-15);
    assert_eq!((brief.discount_rate.value.si(), brief.discount_rate.stated), (0.06, false));
}

#[test]
fn an_axis_that_cuts_or_hangs_takes_further_defaults() {
    let text = with_axis_lines("cutting-force: 300 N").replace("horizontal", "30 deg");
    let brief = brief(&text);
    let axis = &brief.axes[0];
    assert!((axis.inclination.si() - std::f64::consts::PI / 6.0).abs() < 1e-15);
    let told = |key: &str| {
        let assumption = brief.assumptions.iter().find(|a| a.key == key).unwrap_or_else(|| panic!("{key}"));
        (assumption.value.as_str(), assumption.unit.as_str())
    };
    assert_eq!(told("axes.x.cutting-force-direction"), ("both", ""));
    assert_eq!(told("axes.x.cutting-speed"), ("7.5", "m/min"));
    assert_eq!(told("axes.x.ripple"), ("10", "µm"));
    assert_eq!(told("axes.x.people-below"), ("false", ""));
    assert_eq!(told("axes.x.duty"), ("20 % at 30 m/min, 50 % at 7.5 m/min with 300 N, 30 % stand", ""));
    assert_eq!(axis.duty[1].force.si(), 300.0);
    assert!((axis.cutting_speed.value.si() - 0.125).abs() < 1e-15);
    assert!((axis.ripple.value.unwrap().si() - 1e-5).abs() < 1e-20);
}

#[test]
fn without_a_cutting_force_the_largest_force_of_the_duty_is_taken() {
    let brief = brief(&with_axis_lines(
        "duty:\n  - { share: 60 %, speed: 5 m/min, force: 0.7 kN }\n  - { share: 40 %, speed: 30 m/min, force: 20 N }",
    ));
    assert!((brief.axes[0].cutting_force.value.si() - 700.0).abs() < 1e-9);
    let assumption = brief.assumptions.iter().find(|a| a.key == "axes.x.cutting-force").unwrap();
    assert_eq!((assumption.value.as_str(), assumption.unit.as_str()), ("700", "N"));
}

#[test]
fn a_full_brief_assumes_nothing_of_what_it_states() {
    let brief = brief(FULL);
    let of_long: Vec<&str> =
        brief.assumptions.iter().map(|a| a.key.as_str()).filter(|key| key.starts_with("axes.long.")).collect();
    assert_eq!(of_long, ["axes.long.duty.stroke"], "the second share states no stroke");
    assert!(brief.assumptions.iter().all(|a| a.key.starts_with("axes.")));
}

#[test]
fn the_starter_brief_reads_and_is_commented() {
    let brief = load("starter.yaml", starter()).unwrap_or_else(|faults| panic!("{faults}"));
    assert_eq!(brief.axes.iter().map(|axis: &Axis| axis.name.as_str()).collect::<Vec<_>>(), ["x", "z"]);
    assert!(starter().matches('#').count() > 30);
}

#[test]
fn the_starter_brief_reads_with_every_example_line_switched_on() {
    let mut text = String::new();
    // the first line is for editors
    for line in starter().lines().skip(1) {
        let bare = line.trim_start();
        // an example line is "# key: value" or "#   - {"; prose has no key of that form
        let is_example = bare.strip_prefix("# ").is_some_and(|rest| {
            let key = rest.split(':').next().unwrap_or("");
            rest.trim_start().starts_with("- {")
                || (rest.contains(':') && !key.contains(' ') && key.chars().all(|c| c.is_ascii_lowercase() || c == '-'))
        });
        if is_example {
            text.push_str(&line.replacen("# ", "", 1));
        } else {
            text.push_str(line);
        }
        text.push('\n');
    }
    let brief = load("starter.yaml", &text).unwrap_or_else(|faults| panic!("{text}\n{faults}"));
    assert_eq!((brief.axes[0].drives.value, brief.waivers.len()), (2, 1));
    assert_eq!(brief.limits.gearbox_models, Some(2));
    assert!(brief.axes[1].counterbalance.is_some() && brief.axes[0].cable_chain.is_some());
    assert!(brief.axes[0].duty.len() == 3 && brief.axes[0].moves.is_empty());
    assert!(brief.axes[1].duty.is_empty() && brief.axes[1].moves.len() == 2);
}

/// Four carriages of 200 N/µm, 0.4 m off the middle: 4·2e8·0.16 N·m/rad.
#[test]
fn the_yaw_stiffness_follows_the_base_of_the_carriages() {
    let lines = "drives: 2\ndrive-spacing: 1 m\nguide-base: 800 mm";
    let brief = brief(&with_axis_lines(lines));
    let stiffness = brief.axes[0].sides.yaw_stiffness;
    assert!((stiffness.value.si() - 1.28e8).abs() < 1.0 && !stiffness.stated);
    let told = brief.assumptions.iter().find(|told| told.key == "axes.x.yaw-stiffness").expect("it is told");
    assert_eq!((told.value.as_str(), told.unit.as_str()), ("128000", "kN·m/rad"));
}

#[test]
fn a_tilt_is_read_with_its_arms() {
    let text = LEAST.replace(
        "    speed:",
        "    guide-base: 0.8 m\n    guide-tilt: 10 arcsec\n    guide-waviness: { height: 8 µm, length: 1.2 m }\n    tool-to-drive: 300 mm\n    mapping: table\n    along: y\n    speed:",
    );
    let brief = brief(&text);
    let axis = &brief.axes[0];
    let tilt = axis.tilt.expect("a tilt is stated");
    let angle = tilt.angle.expect("an angle is stated").si();
    assert!((angle - std::f64::consts::PI / 64_800.0).abs() < 1e-15, "{angle}");
    let (height, length) = tilt.waviness.expect("a waviness is stated");
    assert_eq!((height.si(), length.si()), (8e-6, 1.2));
    assert_eq!((tilt.tool_to_drive.si(), tilt.tool_to_scale.value.si()), (0.3, 0.3));
    assert_eq!((axis.mapping, axis.along.value), (Mapping::Table, Along::Y));
    let told: Vec<&str> = brief.assumptions.iter().map(|a| a.key.as_str()).collect();
    assert!(told.contains(&"axes.x.tool-to-scale"));
    assert!(
        !told.contains(&"axes.x.guide-tilt") && !told.contains(&"axes.x.along") && !told.contains(&"axes.x.mapping")
    );
}

#[test]
fn a_contour_and_a_settling_are_read() {
    let lines = "    contour: { speed: 6 m/min, radius: 80 mm, error: 12 µm }\n    settling: { time: 120 ms, window: 5 µm }\n    speed:";
    let brief = brief(&LEAST.replace("    speed:", lines));
    let axis = &brief.axes[0];
    let contour = axis.contour.expect("a contour");
    let close = |value: f64, expected: f64| assert!((value - expected).abs() < 1e-12, "{value}");
    close(contour.speed.si(), 0.1);
    close(contour.radius.si(), 0.08);
    close(contour.error.si(), 12e-6);
    assert_eq!((contour.feed_forward.value.si(), contour.feed_forward.stated), (0.0, false));
    let settling = axis.settling.expect("a settling");
    close(settling.time.si(), 0.12);
    close(settling.window.si(), 5e-6);
    assert!(brief.assumptions.iter().any(|told| told.key == "axes.x.contour.feed-forward"));
}

#[test]
fn axes_of_which_none_carries_another_are_doubted() {
    let doubts = |text: &str| {
        let brief = load("test.yaml", text).unwrap_or_else(|faults| panic!("{faults}"));
        brief.doubts.into_iter().map(|doubt| doubt.key).collect::<Vec<_>>()
    };
    assert_eq!(doubts(FULL), [""; 0]);
    assert_eq!(doubts(LEAST), [""; 0]);
    let lonely: Vec<&str> = FULL.lines().filter(|line| !line.trim_start().starts_with("carries:")).collect();
    assert_eq!(doubts(&lonely.join("\n")), ["axes"]);
}

#[test]
fn hours_a_year_that_a_day_has_are_doubted() {
    let doubts = |hours: &str| {
        let brief =
            load("test.yaml", &format!("hours-per-year: {hours}\n{LEAST}")).unwrap_or_else(|faults| panic!("{faults}"));
        brief.doubts.into_iter().map(|doubt| doubt.key).collect::<Vec<_>>()
    };
    assert_eq!(doubts("16"), ["hours-per-year"]);
    assert_eq!(doubts("24"), ["hours-per-year"]);
    assert_eq!(doubts("250"), [""; 0]);
}
