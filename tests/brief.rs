//! Reading a brief: every value, every default, every fault, all at once.
//!
//! Conversions are checked against the exact definitions of NIST Special Publication 811 (inch 25.4 mm, pound
//! 0.453 592 37 kg, standard gravity 9.806 65 m/s²; from memory). The rest checks our own promises.

use axiswright::brief::{
    Axis, Brief, CounterbalanceKind, CuttingDirection, FAMILIES, Feedback, load, load_file, starter,
};
use axiswright::units::{Measure, Money};
use axiswright::yaml::Faults;
use proptest::prelude::*;
use std::path::Path;

/// The least that a brief must say.
const LEAST: &str = "\
machine: Test
axes:
  x:
    direction: horizontal
    travel: 2 m
    moved-mass: 100 kg
    speed: 30 m/min
    acceleration: 2 m/s²
";

/// A brief with three axes, each carrying the next.
const FULL: &str = "\
machine: Trimming gantry
currency: EUR
years-in-service: 12
hours-per-year: 3500
discount-rate: 4 %
energy-price: 0.3
environment: [composite dust, draught]
temperature-swing: 6 K
limits:
  purchase: 60000
  tool-point-error: 0.15 mm
  supply-power: 40 kW
  motor-models: 2
  gearbox-models: 3
  lead-time: 12 weeks
prefer: { whole-life-cost: 5, accuracy: 2, stiffness: 2, upkeep: 1 }
axes:
  long:
    purpose: gantry along the mould
    direction: horizontal
    travel: 11 m
    overtravel: 60 mm
    moved-mass: 1850 kg
    carries: [cross]
    drives: 2
    drive-spacing: 3.6 m
    speed: 50 m/min
    acceleration: 2 m/s²
    jerk: 40 m/s³
    cutting-force: 900 N
    cutting-force-direction: forward
    cutting-speed: 12 m/min
    guide-friction: 0.004
    wiper-force: 80 N
    accuracy: 0.20 mm
    section-accuracy: 0.10 mm
    repeatability: 0.05 mm
    reversal: 0.04 mm
    cutting-deflection: 0.05 mm
    ripple: 0.01 mm
    first-mode: 20 Hz
    feedback: scale
    families: [helical-rack, twin-pinion]
    duty:
      - { share: 15 %, speed: 50 m/min, stroke: 8 m }
      - { share: 55 %, speed: 12 m/min, force: 900 N }
      - { share: 30 %, stand: true, force: 100 N }
  cross:
    direction: 0 deg
    travel: 3.2 m
    moved-mass: 900 lb
    carries: [ram]
    speed: 1000 in/min
    acceleration: 0.3 g
    cutting-force: 200 lbf
  ram:
    direction: vertical
    travel: 0.7 m
    moved-mass: 180 kg
    speed: 20 m/min
    acceleration: 3 m/s²
    counterbalance: { kind: gas, share: 85 % }
    people-below: true
waivers:
  - { rule: inertia-ratio, axis: long, reason: tuned on the prototype, by: drive engineer, until: 2028-02-29 }
  - { rule: ripple, reason: sanded afterwards, by: owner }
";

fn brief(text: &str) -> Brief {
    load("test.yaml", text).unwrap_or_else(|faults| panic!("{faults}"))
}

fn refused(text: &str) -> Faults {
    match load("test.yaml", text) {
        Ok(_) => panic!("this brief should be refused:\n{text}"),
        Err(faults) => faults,
    }
}

/// `LEAST` with more lines for its axis.
fn with_axis_lines(lines: &str) -> String {
    let mut text = LEAST.to_string();
    for line in lines.lines() {
        text.push_str(&format!("    {line}\n"));
    }
    text
}

/// `LEAST` with a line replaced.
fn with_replaced(line: &str, by: &str) -> String {
    assert!(LEAST.contains(line));
    LEAST.replace(line, by)
}

/// Exactly one fault, at this line and key, that says this.
#[track_caller]
fn one_fault(text: &str, line: usize, path: &str, says: &str) {
    let faults = refused(text);
    assert_eq!(faults.len(), 1, "{faults}");
    let fault = faults.iter().next().unwrap();
    assert_eq!((fault.line, fault.path.as_str()), (line, path), "{fault}");
    assert!(fault.message.contains(says) || fault.help.as_deref().is_some_and(|help| help.contains(says)), "{fault}");
}

#[test]
fn every_stated_value_arrives() {
    let brief = brief(FULL);
    assert_eq!((brief.name.as_str(), brief.text.as_str()), ("test.yaml", FULL));
    assert_eq!(brief.machine, "Trimming gantry");
    assert_eq!((brief.currency.value.as_str(), brief.currency.stated), ("EUR", true));
    assert_eq!((brief.years_in_service.value, brief.hours_per_year.value), (12.0, 3500.0));
    assert_eq!((brief.discount_rate.value.si(), brief.energy_price.value), (0.04, Money(0.3)));
    assert_eq!(brief.environment, ["composite dust", "draught"]);
    assert_eq!(brief.temperature_swing.value.si(), 6.0);
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
            ("temperature-swing", "5", "K"),
            ("prefer", "whole-life-cost alone", ""),
            ("axes.x.overtravel", "50", "mm"),
            ("axes.x.drives", "1", ""),
            ("axes.x.jerk", "40", "m/s³"),
            ("axes.x.cutting-force", "0", "N"),
            ("axes.x.guide-friction", "0.005", ""),
            ("axes.x.wiper-force", "40", "N"),
            ("axes.x.feedback", "any", ""),
            ("axes.x.families", "any", ""),
            ("axes.x.duty", "20 % at 30 m/min, 50 % at 15 m/min, 30 % stand", ""),
            ("axes.x.duty.stroke", "1000", "mm"),
        ]
    );
    for assumption in &brief.assumptions {
        assert!(assumption.source.contains("common practice, no source"), "{assumption:?}");
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
fn each_required_key_is_missed_once() {
    for key in ["machine", "axes"] {
        let text = if key == "machine" { LEAST.replace("machine: Test\n", "") } else { "machine: Test\n".into() };
        one_fault(&text, 1, key, "is missing");
    }
    for key in ["direction", "travel", "moved-mass", "speed", "acceleration"] {
        let text: String =
            LEAST.lines().filter(|line| !line.contains(&format!("{key}:"))).map(|line| format!("{line}\n")).collect();
        one_fault(&text, 3, &format!("axes.x.{key}"), "is missing");
    }
}

#[test]
fn quantities_keep_to_their_bounds() {
    let outside = [
        ("travel: 2 m", "travel: 201 m", 5, "must be above 0 m and at most 200 m, but is 201 m"),
        ("travel: 2 m", "travel: 0 mm", 5, "must be above 0 m and at most 200 m, but is 0 m"),
        ("moved-mass: 100 kg", "moved-mass: -3 kg", 6, "above 0 kg and at most 1e6 kg, but is -3 kg"),
        ("speed: 30 m/min", "speed: 11 m/s", 7, "at most 10 m/s, but is 11 m/s"),
        ("acceleration: 2 m/s²", "acceleration: 11 g", 8, "at most 100 m/s², but is 107.873 m/s²"),
        ("direction: horizontal", "direction: 91 deg", 4, "at least 0 deg and at most 90 deg, but is 91 deg"),
        ("direction: horizontal", "direction: -1 deg", 4, "at least 0 deg"),
    ];
    for (line, by, at, says) in outside {
        let key = by.split(':').next().unwrap();
        one_fault(&with_replaced(line, by), at, &format!("axes.x.{key}"), says);
    }
    let lines = [
        ("overtravel: -1 mm", "at least 0 m"),
        ("jerk: 0 m/s³", "above 0"),
        ("guide-friction: 1.5", "at most 1"),
        ("guide-friction: -0.1", "at least 0"),
        ("wiper-force: -1 N", "at least 0"),
        ("cutting-force: -1 N", "at least 0"),
        ("cutting-speed: 0 m/min", "above 0"),
        ("accuracy: 0 mm", "above 0"),
        ("section-accuracy: -0.1 mm", "above 0"),
        ("repeatability: 2 m", "at most 1 m"),
        ("reversal: 0 µm", "above 0"),
        ("cutting-deflection: 0 µm", "above 0"),
        ("ripple: 0 µm", "above 0"),
        ("first-mode: 0 Hz", "above 0"),
    ];
    for (line, says) in lines {
        let key = line.split(':').next().unwrap();
        one_fault(&with_axis_lines(line), 9, &format!("axes.x.{key}"), says);
    }
    let top = [
        ("years-in-service: 0", "must be above 0 and at most 100, but is 0"),
        ("hours-per-year: 9000", "at most 8784, but is 9000"),
        ("discount-rate: 100 %", "at most 99.999 %, but is 100 %"),
        ("discount-rate: -1 %", "at least 0 %"),
        ("energy-price: -0.1", "at least 0"),
        ("temperature-swing: -2 K", "at least 0 K"),
        ("currency: ''", "this text is empty"),
    ];
    for (line, says) in top {
        one_fault(&format!("{LEAST}{line}\n"), 9, line.split(':').next().unwrap(), says);
    }
    let limits = [
        "purchase: 0",
        "tool-point-error: 0 mm",
        "supply-power: -1 kW",
        "motor-models: 0",
        "gearbox-models: 0",
        "lead-time: 0 weeks",
    ];
    for line in limits {
        one_fault(
            &format!("{LEAST}limits: {{ {line} }}\n"),
            9,
            &format!("limits.{}", line.split(':').next().unwrap()),
            "0",
        );
    }
}

#[test]
fn a_bound_itself_is_within_also_in_other_units() {
    for line in ["speed: 600 m/min", "speed: 36000 m/h"] {
        let text = with_replaced("speed: 30 m/min", line);
        if line.contains("m/h") {
            one_fault(&text, 7, "axes.x.speed", "unknown unit `m/h`");
        } else {
            assert!((brief(&text).axes[0].speed.si() - 10.0).abs() < 1e-12);
        }
    }
}

#[test]
fn a_direction_in_wrong_words_is_told() {
    let text = with_replaced("direction: horizontal", "direction: horizonal");
    one_fault(&text, 4, "axes.x.direction", "did you mean `horizontal`?");
    let text = with_replaced("direction: horizontal", "direction: 30");
    one_fault(&text, 4, "axes.x.direction", "`30` has no unit");
}

#[test]
fn the_shares_of_the_duty_are_checked() {
    let duty = |shares: &str| with_axis_lines(&format!("duty:\n{shares}"));
    one_fault(
        &duty("  - { share: 50 %, speed: 5 m/min }\n  - { share: 49.8 %, stand: true }"),
        9,
        "axes.x.duty",
        "the shares add up to 99.8 %, not 100 %",
    );
    // within 0.1 % is near enough
    brief(&duty("  - { share: 33.3 %, speed: 5 m/min }\n  - { share: 66.6 %, stand: true }"));
    let bad = [
        ("{ share: 130 %, speed: 5 m/min }", "axes.x.duty[0].share", "at most 100 %, but is 130 %"),
        ("{ share: 0 %, speed: 5 m/min }", "axes.x.duty[0].share", "above 0 %"),
        ("{ share: 100 %, speed: 31 m/min }", "axes.x.duty[0].speed", "higher than the speed of the axis"),
        ("{ share: 100 %, force: 3 N }", "axes.x.duty[0]", "needs a speed"),
        ("{ share: 100 %, speed: 5 m/min, stroke: 2.1 m }", "axes.x.duty[0].stroke", "longer than the travel"),
        ("{ share: 100 %, speed: 5 m/min, stand: true }", "axes.x.duty[0].speed", "an axis that stands has no speed"),
        ("{ share: 100 %, stroke: 1 m, stand: true }", "axes.x.duty[0].stroke", "an axis that stands has no stroke"),
        ("{ speed: 5 m/min }", "axes.x.duty[0].share", "is missing"),
        ("{ share: 100 %, stand: yes }", "axes.x.duty[0].stand", "`true` or `false` was expected"),
        ("{ share: 100 %, speed: 5 m/min, forces: 3 N }", "axes.x.duty[0].forces", "did you mean `force`?"),
    ];
    for (share, path, says) in bad {
        one_fault(&duty(&format!("  - {share}")), 10, path, says);
    }
    one_fault(&with_axis_lines("duty: []"), 9, "axes.x.duty", "no shares");
    one_fault(
        &duty(&"  - { share: 10 %, speed: 5 m/min }\n".repeat(10)),
        9,
        "axes.x.duty",
        "at most 9 shares with moves",
    );
    one_fault(
        &duty(&"  - { share: 20 %, stand: true }\n".repeat(5)),
        9,
        "axes.x.duty",
        "at most 4 shares at standstill",
    );
    let text = with_axis_lines("cutting-force: 5 N\nduty: [{ share: 100 %, speed: 5 m/min, force: 6 N }]");
    one_fault(&text, 10, "axes.x.duty[0].force", "larger than the cutting-force");
}

/// A brief of three axes with these lists of carried axes.
fn carrying(lists: [&str; 3]) -> String {
    let mut text = String::from("machine: T\naxes:\n");
    for (name, list) in ["long", "cross", "ram"].iter().zip(lists) {
        text.push_str(&format!(
            "  {name}:\n    carries: [{list}]\n    direction: horizontal\n    travel: 1 m\n    moved-mass: 9 kg\n    \
             speed: 1 m/s\n    acceleration: 1 m/s²\n"
        ));
    }
    text
}

#[test]
fn who_carries_whom_is_checked() {
    brief(&carrying(["cross", "ram", ""]));
    one_fault(&carrying(["cros", "", ""]), 4, "axes.long.carries[0]", "did you mean `cross`?");
    one_fault(&carrying(["cros", "", ""]), 4, "axes.long.carries[0]", "there is no axis `cros`");
    one_fault(&carrying(["", "cross", ""]), 11, "axes.cross.carries[0]", "`cross` cannot carry itself");
    one_fault(&carrying(["cross, cross", "", ""]), 4, "axes.long.carries[1]", "`cross` is named twice");
    one_fault(&carrying(["ram", "ram", ""]), 11, "axes.cross.carries[0]", "`ram` is carried by `long` already");
    one_fault(&carrying(["cross", "long", ""]), 4, "axes.long.carries", "a ring: long carries cross carries long");
    one_fault(
        &carrying(["ram", "long", "cross"]),
        4,
        "axes.long.carries",
        "a ring: long carries ram carries cross carries long",
    );
    one_fault(&carrying(["", "ram", "cross"]), 11, "axes.cross.carries", "a ring: cross carries ram carries cross");
}

#[test]
fn two_drives_and_their_spacing_go_together() {
    one_fault(&with_axis_lines("drives: 2"), 9, "axes.x.drives", "two drives need a drive-spacing");
    one_fault(&with_axis_lines("drives: 3"), 9, "axes.x.drives", "1 or 2 drives, not 3");
    one_fault(&with_axis_lines("drives: 0"), 9, "axes.x.drives", "1 or 2 drives, not 0");
    one_fault(&with_axis_lines("drive-spacing: 1 m"), 9, "axes.x.drive-spacing", "no meaning with one drive");
    one_fault(&with_axis_lines("drives: 2\ndrive-spacing: 0 m"), 10, "axes.x.drive-spacing", "above 0");
    brief(&with_axis_lines("drives: 2\ndrive-spacing: 1 m"));
}

#[test]
fn families_are_known_ids() {
    for id in FAMILIES {
        assert_eq!(
            brief(&with_axis_lines(&format!("families: [{id}]"))).axes[0].families.as_deref(),
            Some([id.to_string()].as_slice())
        );
    }
    assert_eq!(brief(&with_axis_lines("families: any")).axes[0].families, None);
    one_fault(&with_axis_lines("families: [ballscrew]"), 9, "axes.x.families[0]", "did you mean `ball-screw`?");
    one_fault(&with_axis_lines("families: []"), 9, "axes.x.families", "no family is named");
    one_fault(&with_axis_lines("families: 3"), 9, "axes.x.families", "a list was expected");
}

#[test]
fn counterbalance_and_directions_fit_the_inclination() {
    let line = "counterbalance: { kind: gas, share: 85 % }";
    one_fault(&with_axis_lines(line), 9, "axes.x.counterbalance", "no weight to balance");
    let vertical = |lines: &str| with_axis_lines(lines).replace("horizontal", "vertical");
    brief(&vertical(line));
    let text = vertical("counterbalance: { kind: gaz, share: 85 % }");
    one_fault(&text, 9, "axes.x.counterbalance.kind", "did you mean `gas`?");
    let text = vertical("counterbalance: { kind: gas, share: 101 % }");
    one_fault(&text, 9, "axes.x.counterbalance.share", "at most 100 %");
    let text = with_axis_lines("cutting-force-direction: forward");
    one_fault(&text, 9, "axes.x.cutting-force-direction", "no cutting-force");
    let text = with_axis_lines("cutting-force: 9 N\ncutting-force-direction: up");
    one_fault(&text, 10, "axes.x.cutting-force-direction", "no up and down");
    brief(&vertical("cutting-force: 9 N\ncutting-force-direction: up"));
    let text = with_axis_lines("cutting-force: 9 N\ncutting-speed: 31 m/min");
    one_fault(&text, 10, "axes.x.cutting-speed", "higher than the speed of the axis");
}

#[test]
fn waivers_name_an_axis_a_reason_a_person_and_a_day() {
    let waiver = |line: &str| format!("{LEAST}waivers:\n  - {line}\n");
    brief(&waiver("{ rule: ripple, axis: x, reason: seen, by: me, until: 2028-02-29 }"));
    let bad = [
        ("{ rule: ripple, axis: y, reason: seen, by: me }", "waivers[0].axis", "there is no axis `y`"),
        ("{ rule: ripple, reason: ' ', by: me }", "waivers[0].reason", "this text is empty"),
        ("{ rule: ripple, reason: seen, by: '' }", "waivers[0].by", "this text is empty"),
        ("{ rule: ripple, by: me }", "waivers[0].reason", "is missing"),
        ("{ rule: ripple, reason: seen }", "waivers[0].by", "is missing"),
        ("{ reason: seen, by: me }", "waivers[0].rule", "is missing"),
        ("{ rule: ripple, reason: seen, by: me, until: 2027-02-29 }", "waivers[0].until", "is not a date"),
        ("{ rule: ripple, reason: seen, by: me, until: 30.6.2027 }", "waivers[0].until", "is not a date"),
        ("{ rule: ripple, reason: seen, by: me, since: 2027-01-01 }", "waivers[0].since", "unknown key"),
    ];
    for (line, path, says) in bad {
        one_fault(&waiver(line), 10, path, says);
    }
}

#[test]
fn weights_are_not_negative_and_not_all_zero() {
    one_fault(&format!("{LEAST}prefer: {{ accuracy: -1 }}\n"), 9, "prefer.accuracy", "from 0 to 1000000, not -1");
    one_fault(&format!("{LEAST}prefer: {{ accuracy: 0 }}\n"), 9, "prefer", "at least one weight must be above 0");
    one_fault(
        &format!("{LEAST}prefer: {{ acuracy: 1, upkeep: 1 }}\n"),
        9,
        "prefer.acuracy",
        "did you mean `accuracy`?",
    );
}

#[test]
fn a_machine_has_axes_with_names() {
    one_fault("machine: T\naxes: {}\n", 2, "axes", "at least one axis");
    one_fault("machine: T\naxes:\n", 2, "axes", "no value");
    one_fault(&LEAST.replace("  x:", "  '':"), 3, "axes.\"\"", "needs a name");
    one_fault("machine: T\naxes:\n  x:\n", 3, "axes.x", "a group of keys");
    one_fault(
        &format!("{LEAST}{}", &LEAST[LEAST.find("  x:").unwrap()..]),
        9,
        "axes.x",
        "given twice, first in line 3",
    );
}

#[test]
fn a_missing_file_is_a_fault_under_its_name_without_folders() {
    let faults = load_file(Path::new("/no such folder/brief.yaml")).unwrap_err();
    let fault = faults.iter().next().unwrap();
    assert_eq!((fault.file.as_str(), fault.line), ("brief.yaml", 0));
    assert_eq!(fault.message, "the file cannot be read: there is no such file");
}

#[test]
fn all_faults_of_a_brief_are_told_in_one_run() {
    let text = "\
machine: ''
currencey: EUR
hours-per-year: many
limits: { purchase: -1 }
axes:
  long:
    direction: horizontal
    travel: 11 kg
    moved-mass: 1850
    carries: [ram, cross]
    speed: 50 m/mn
    acceleration: 2,5 m/s²
    duty:
      - { share: 50 %, speed: 5 m/min }
      - { share: 40 %, stand: true }
  cross:
    direction: vertical
    moved-mass: 3 kg
    speed: 1 m/s
    acceleration: nan m/s²
    carries: [long]
    feedback: skale
waivers:
  - { rule: ripple, axis: crss, reason: seen, by: me }
";
    let faults = refused(text);
    let places: Vec<(usize, &str)> = faults.iter().map(|fault| (fault.line, fault.path.as_str())).collect();
    assert_eq!(
        places,
        [
            (1, "machine"),
            (2, "currencey"),
            (3, "hours-per-year"),
            (4, "limits.purchase"),
            (8, "axes.long.travel"),
            (9, "axes.long.moved-mass"),
            (10, "axes.long.carries"),
            (10, "axes.long.carries[0]"),
            (11, "axes.long.speed"),
            (12, "axes.long.acceleration"),
            (13, "axes.long.duty"),
            (16, "axes.cross.travel"),
            (20, "axes.cross.acceleration"),
            (22, "axes.cross.feedback"),
            (24, "waivers[0].axis"),
        ],
        "{faults}"
    );
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
    for line in starter().lines() {
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
    assert!(brief.axes[1].counterbalance.is_some());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn random_bytes_never_bring_the_loader_down(bytes in proptest::collection::vec(any::<u8>(), 0..300)) {
        let _ = load("random.yaml", &String::from_utf8_lossy(&bytes));
    }

    #[test]
    fn a_damaged_brief_is_read_or_told(
        cuts in proptest::collection::vec((0.0..1.0_f64, 0..12_usize, r"[-0-9a-z :,{}\[\]#%&*\n\t'.²µ]{0,6}"), 1..5),
    ) {
        let mut text: Vec<char> = FULL.chars().collect();
        for (at, length, put) in cuts {
            let start = (at * text.len() as f64) as usize;
            let end = (start + length).min(text.len());
            text.splice(start..end, put.chars());
        }
        let text: String = text.into_iter().collect();
        if let Err(faults) = load("damaged.yaml", &text) {
            prop_assert!(!faults.is_empty());
            prop_assert!(faults.to_string().contains("damaged.yaml"));
        }
    }
}
