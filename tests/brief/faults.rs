//! Every fault of a brief is told at its line, and all of them in one run.

use super::texts::{LEAST, brief, one_fault, refused, with_axis_lines, with_replaced};
use axiswright::brief::{FAMILIES, load_file};
use axiswright::units::Measure;
use std::path::Path;

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
        ("downtime-cost: -1", "at least 0"),
        ("temperature-swing: -2 K", "at least 0 K"),
        ("supply-voltage: 0 V", "above 0 V"),
        ("supply-tolerance: 60 %", "at most 50 %"),
        ("altitude: 5000 m", "at most 4000 m"),
        ("ambient-temperature: 70 °C", "at most 60 °C"),
        ("ambient-temperature: 313 K", "a temperature in degrees Celsius is needed"),
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
    // a fault in one line does not hide the sum
    let faults = refused(&duty("  - { share: 50 %, speed: 5 kg }\n  - { share: 40 %, stand: true }"));
    let places: Vec<(usize, &str)> = faults.iter().map(|fault| (fault.line, fault.path.as_str())).collect();
    assert_eq!(places, [(9, "axes.x.duty"), (10, "axes.x.duty[0].speed")]);
    one_fault(&with_axis_lines("duty: []"), 9, "axes.x.duty", "no shares");
    one_fault(
        &duty(&"  - { share: 10 %, speed: 5 m/min }\n".repeat(10)),
        9,
        "axes.x.duty",
        "at most 8 shares with moves",
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
    for key in [
        "mass-offset: 10 mm",
        "yaw-stiffness: 1e5 kN·m/rad",
        "side-temperature-difference: 1 K",
        "side-correction: 50 %",
    ] {
        let place = format!("axes.x.{}", key.split(':').next().unwrap());
        one_fault(&with_axis_lines(key), 9, &place, "no meaning with one drive");
        brief(&with_axis_lines(&format!("drives: 2\ndrive-spacing: 1 m\n{key}")));
    }
    let outside = "drives: 2\ndrive-spacing: 1 m\nmass-offset: 501 mm";
    one_fault(&with_axis_lines(outside), 11, "axes.x.mass-offset", "outside of the two drives");
    brief(&with_axis_lines("guide-spacing: 1 m\nguide-base: 800 mm"));
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
fn what_a_tilt_lacks_is_told() {
    let axis = |lines: &str| {
        format!(
            "axes:\n  x:\n    direction: horizontal\n    travel: 2 m\n    moved-mass: 100 kg\n    speed: 30 m/min\n    acceleration: 2 m/s²\n{lines}"
        )
    };
    let told = |lines: &str| -> Vec<(usize, String)> {
        let text = format!("machine: Saw\n{}", axis(lines));
        refused(&text).iter().map(|fault| (fault.line, format!("{} | {}", fault.path, fault.message))).collect()
    };
    let arm = told("    tool-to-drive: 300 mm\n");
    assert_eq!(arm, [(9, "axes.x.tool-to-drive | `tool-to-drive` counts only with a tilt of the guides".into())]);
    let tilt = told("    guide-tilt: 10 arcsec\n");
    assert_eq!(tilt.len(), 1, "{tilt:?}");
    assert!(tilt[0].1.contains("tool-to-drive"), "{tilt:?}");
    let wave = told("    tool-to-drive: 1 m\n    guide-waviness: { height: 8 µm, length: 1.2 m }\n");
    assert_eq!(
        wave,
        [(10, "axes.x.guide-waviness | a waviness of the guides tilts a slide by its `guide-base`".into())]
    );
    let word = told("    mapping: tabel\n    along: w\n");
    assert_eq!(word.len(), 2, "{word:?}");
}

#[test]
fn what_a_contour_or_settling_lacks_is_told() {
    let told = |lines: &str| -> Vec<String> {
        let text = format!(
            "machine: Saw\naxes:\n  x:\n    direction: horizontal\n    travel: 2 m\n    moved-mass: 100 kg\n    speed: 30 m/min\n    acceleration: 2 m/s²\n{lines}"
        );
        refused(&text).iter().map(|fault| format!("{}: {} | {}", fault.line, fault.path, fault.message)).collect()
    };
    let lacking = told("    contour: { speed: 10 m/min, radius: 100 mm }\n");
    assert_eq!(lacking.len(), 1, "{lacking:?}");
    assert!(lacking[0].starts_with("9: axes.x.contour") && lacking[0].contains("error"), "{lacking:?}");
    let fast = told("    contour: { speed: 40 m/min, radius: 100 mm, error: 10 µm }\n");
    assert_eq!(fast, ["9: axes.x.contour.speed | the axis is not as fast as its contour"]);
    let misspelt = told("    settling: { tim: 0.1 s, window: 10 µm }\n");
    assert!(misspelt.iter().any(|fault| fault.contains("tim")), "{misspelt:?}");
    let wrong = told("    settling: { time: 0.1 m, window: -1 µm }\n");
    assert_eq!(wrong.len(), 2, "{wrong:?}");
}
