//! What the error budget is made of, and what the trade expects of it.

use crate::small;
use axiswright::pipeline::recommend;
use axiswright::record::{CandidateRecord, DecisionRecord, Outcome};

fn long(lines: &str) -> String {
    format!(
        "
machine: Planer
axes:
  long:
    direction: horizontal
    travel: 9 m
    moved-mass: 600 kg
    speed: 40 m/min
    acceleration: 1.5 m/s²
    cutting-force: 300 N
    cutting-speed: 8 m/min
    families: [helical-rack]
{lines}    duty:
      - {{ share: 20 %, speed: 40 m/min }}
      - {{ share: 50 %, speed: 8 m/min, force: 300 N }}
      - {{ share: 30 %, stand: true }}
"
    )
}

fn record(lines: &str) -> DecisionRecord {
    let mut inputs = small::inputs(&long(lines));
    inputs.catalog.rack_grades.retain(|grade| grade.designation == "q5-hardened-ground");
    recommend(&inputs, false)
}

fn chosen(record: &DecisionRecord) -> &CandidateRecord {
    assert_eq!(record.outcome, Outcome::Chosen);
    record.axes[0].chosen.as_ref().expect("a drive")
}

fn micrometres(drive: &CandidateRecord, id: &str) -> f64 {
    drive.value(id).unwrap_or_else(|| panic!("no {id}"))
}

/// Common practice, no source: a long rack of the best grade, mapped and with scales, repeats within 0.005 mm.
#[test]
fn a_long_rack_of_the_best_grade_mapped_and_with_scales_repeats_within_5_micrometres() {
    let record = record("    feedback: scale\n    mapping: table\n");
    let drive = chosen(&record);
    let repeatability = micrometres(drive, "repeatability");
    assert!(repeatability > 1.0 && repeatability <= 5.0, "{repeatability} µm");
}

/// Common practice, no source: the accuracy of a rack axis is the sum of what its parts leave; the budget shows all of them.
#[test]
fn the_budget_of_a_rack_holds_rack_gearbox_and_servo() {
    let record = record("    feedback: motor\n    mapping: none\n");
    let drive = chosen(&record);
    let line = |id: &str| micrometres(drive, id);
    // root of the sum of squares: independent errors (A. Slocum, Precision Machine Design, from memory)
    let squares = line("cumulative-pitch-error").powi(2) + line("run-out-error").powi(2) + line("pitch-step").powi(2);
    assert!((line("position-error") - squares.sqrt()).abs() < 1e-9 * squares.sqrt());
    let gearbox = line("gearbox-play");
    assert!(gearbox > 0.0 && line("play") > gearbox, "the play of the gearbox is part of the play");
    assert!(line("reversal-error") > line("lost-motion"));
    assert!(line("scatter") > line("drive-scatter"));
    // the definitions of ISO 230-2 for equal reversal and scatter along the travel, above 2 m without scatter
    let accuracy = line("position-error") + line("reversal-error");
    assert!((line("accuracy") - accuracy).abs() < 1e-9 * accuracy);
}

/// A table takes a fifth of the error and the uncertainty of its measurement: worked out by hand from the lines before it.
#[test]
fn a_table_of_corrections_leaves_what_its_measurement_leaves() {
    let plain = record("    feedback: motor\n    mapping: none\n");
    let mapped = record("    feedback: motor\n    mapping: table\n");
    let (before, after) = (chosen(&plain), chosen(&mapped));
    let raw = micrometres(before, "long-error");
    assert_eq!(raw.to_bits(), micrometres(after, "long-error").to_bits());
    assert_eq!(raw.to_bits(), micrometres(before, "long-error-left").to_bits());
    // 0.2 of it, 0.6 µm + 1 µm/m on 9 m, 2 µm of drift (common practice, no source)
    let left = ((0.2 * raw).powi(2) + 9.6_f64.powi(2) + 2.0_f64.powi(2)).sqrt();
    assert!((micrometres(after, "long-error-left") - left).abs() < 1e-6 * left);
    assert!(micrometres(after, "position-error") < micrometres(before, "position-error"));
    // reversal and scatter are none of the table's
    for id in ["reversal-error", "scatter", "thermal-growth"] {
        assert_eq!(micrometres(after, id).to_bits(), micrometres(before, id).to_bits(), "{id}");
    }
    let table = after.components.iter().find(|part| part.role == "error-table");
    assert_eq!(table.map(|part| part.count), Some(1.0));
    // 400 and 120 a metre
    assert!((after.cost.purchase - before.cost.purchase - 400.0 - 120.0 * 9.0).abs() < 1e-6);
}

/// E. Abbe's principle: the arm across the measuring line turns tilt into error, and a scale has an arm of its own.
#[test]
fn a_tilt_counts_with_the_arm_of_what_measures() {
    let tilt = "    guide-tilt: 10 arcsec\n    tool-to-drive: 400 mm\n    tool-to-scale: 100 mm\n    mapping: none\n";
    for (feedback, arm) in [("motor", 0.4), ("scale", 0.1)] {
        let level = record(&format!("    feedback: {feedback}\n    mapping: none\n"));
        let tilted = record(&format!("    feedback: {feedback}\n{tilt}"));
        let error = arm * 10.0 * std::f64::consts::PI / 648_000.0 * 1e6;
        assert!((micrometres(chosen(&tilted), "tilt-error") - error).abs() < 1e-6 * error);
        let expected = micrometres(chosen(&level), "position-error").hypot(error);
        assert!((micrometres(chosen(&tilted), "position-error") - expected).abs() < 1e-9 * expected, "{feedback}");
    }
}

/// Axes along one direction add their reversals and their growth in line, the rest by squares; worked out by hand.
#[test]
fn a_direction_adds_its_axes() {
    let one = long("    along: x\n    feedback: motor\n");
    let second = one[one.find("  long:").expect("the axis")..].replace("  long:", "  lower:").replace("9 m\n", "4 m\n");
    let record = recommend(&small::inputs(&format!("{one}{second}")), false);
    let drives: Vec<&CandidateRecord> = record.axes.iter().map(|axis| axis.chosen.as_ref().expect("a drive")).collect();
    assert_eq!(record.machine.tool_point.len(), 1);
    let direction = &record.machine.tool_point[0];
    assert_eq!((direction.direction.as_str(), direction.axes.len()), ("x", 2));
    let half =
        |drive: &CandidateRecord| (micrometres(drive, "position-error") + 4.0 * micrometres(drive, "scatter")) / 2.0;
    let reversal: f64 = drives.iter().map(|drive| micrometres(drive, "reversal-error")).sum();
    let expected = half(drives[0]).hypot(half(drives[1])) + reversal / 2.0;
    let error = direction.error.value.expect("an error") * 1e3;
    assert!((error - expected).abs() < 1e-6 * expected, "{error} against {expected}");
    let growth: f64 = drives.iter().map(|drive| micrometres(drive, "thermal-growth")).sum();
    assert!((direction.growth.value.expect("a growth") * 1e3 - growth).abs() < 1e-6 * growth);
}

/// A tighter circle or a shorter time never gives more drives, and what is chosen keeps what was asked.
#[test]
fn contour_and_settling_are_kept_by_what_is_chosen() {
    let asked = |error: &str, time: &str| {
        format!(
            "    contour: {{ speed: 6 m/min, radius: 200 mm, error: {error} }}\n    settling: {{ time: {time}, window: 20 µm }}\n"
        )
    };
    let admissible = |record: &DecisionRecord| record.axes[0].families[0].admissible;
    let loose = record(&asked("1 mm", "5 s"));
    let drive = chosen(&loose);
    let (circle, settled) = (micrometres(drive, "contour-error"), micrometres(drive, "settling-time"));
    assert!(circle > 0.0 && circle <= 1000.0 && settled > 0.0 && settled <= 5000.0);
    // between what some drives keep and what this one does
    let tight = record(&asked(&format!("{} µm", circle * 0.9), &format!("{} ms", settled * 0.9)));
    assert!(admissible(&tight) < admissible(&loose));
    if tight.outcome == Outcome::Chosen {
        let drive = chosen(&tight);
        assert!(micrometres(drive, "contour-error") <= circle * 0.9 * (1.0 + 1e-9));
        assert!(micrometres(drive, "settling-time") <= settled * 0.9 * (1.0 + 1e-9));
    }
    // v²/(2·R·K_v²) bounds the circle without feed-forward (textbooks on drives, from memory)
    let drive = chosen(&loose);
    let bound = 0.1_f64.powi(2) / (2.0 * 0.2) / micrometres(drive, "loop-gain").powi(2) * 1e6;
    assert!(micrometres(drive, "plain-circle-error") <= bound * (1.0 + 1e-9));
}
