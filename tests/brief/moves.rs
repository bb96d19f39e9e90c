//! Moves of an hour arrive, and every fault of them is told at its line.

use super::texts::{brief, one_fault, refused, with_axis_lines};
use axiswright::units::Measure;

fn moves(lines: &str) -> String {
    with_axis_lines(&format!("moves:\n{lines}"))
}

#[test]
fn a_move_states_what_differs_and_takes_the_rest_from_the_axis() {
    let read = brief(&moves(
        "  - { distance: 0.4 m, speed: 12 m/min, acceleration: 1 m/s², jerk: 10 m/s³, force: 90 N, count-per-hour: 60, dwell: 2 s }\n  \
         - { distance: 1.5 m, count-per-hour: 12.5 }",
    ));
    let axis = &read.axes[0];
    assert!(axis.duty.is_empty() && axis.duty_stated && !axis.signed_moves());
    let [first, second] = axis.moves[..] else { panic!("two moves") };
    assert_eq!((first.distance.si(), first.acceleration.si(), first.jerk.si()), (0.4, 1.0, 10.0));
    assert!((first.speed.si() - 0.2).abs() < 1e-15);
    assert_eq!((first.force.si(), first.count_per_hour, first.dwell.si()), (90.0, 60.0, 2.0));
    assert_eq!((second.speed, second.acceleration, second.jerk), (axis.speed, axis.acceleration, axis.jerk.value));
    assert_eq!((second.force.si(), second.count_per_hour, second.dwell.si()), (0.0, 12.5, 0.0));
    // no cutting force is stated, so the largest of the moves is it
    assert_eq!((axis.cutting_force.value.si(), axis.cutting_force.stated), (90.0, false));
    assert!(!read.assumptions.iter().any(|assumed| assumed.key.starts_with("axes.x.duty")));
}

#[test]
fn signed_moves_come_back() {
    let read =
        brief(&moves("  - { distance: 0.9 m, count-per-hour: 40 }\n  - { distance: -300 mm, count-per-hour: 120 }"));
    assert!(read.axes[0].signed_moves());
    // 36 m forward and 35.97 m back differ by 0.03 m, below a thousandth of 71.97 m
    brief(&moves("  - { distance: 0.9 m, count-per-hour: 40 }\n  - { distance: -299.75 mm, count-per-hour: 120 }"));
    let away = moves("  - { distance: 0.9 m, count-per-hour: 40 }\n  - { distance: -0.3 m, count-per-hour: 100 }");
    one_fault(&away, 9, "axes.x.moves", "in an hour the axis would drift 6000 mm forward");
    one_fault(&away.replace("horizontal", "30 deg"), 9, "axes.x.moves", "would drift 6000 mm up");
    let back = moves("  - { distance: -0.5 m, count-per-hour: 10 }");
    one_fault(&back, 9, "axes.x.moves", "would drift 5000 mm back");
    one_fault(&back.replace("horizontal", "vertical"), 9, "axes.x.moves", "would drift 5000 mm down");
}

#[test]
fn every_value_of_a_move_is_checked_at_its_place() {
    let bad = [
        ("{ count-per-hour: 3 }", "", "`distance` is missing"),
        ("{ distance: 1 m }", "", "needs a count-per-hour"),
        ("{ distance: 0 m, count-per-hour: 3 }", ".distance", "up or forward positive"),
        ("{ distance: 2.1 m, count-per-hour: 3 }", ".distance", "longer than the travel"),
        ("{ distance: -2.1 m, count-per-hour: 3 }", ".distance", "longer than the travel"),
        ("{ distance: 1, count-per-hour: 3 }", ".distance", "has no unit"),
        ("{ distance: 1 m, count-per-hour: 0 }", ".count-per-hour", "must be above 0"),
        ("{ distance: 1 m, count-per-hour: -2 }", ".count-per-hour", "must be above 0"),
        ("{ distance: 1 m, count-per-hour: 3, speed: 31 m/min }", ".speed", "higher than the speed of the axis"),
        ("{ distance: 1 m, count-per-hour: 3, speed: 0 m/min }", ".speed", "above 0"),
        (
            "{ distance: 1 m, count-per-hour: 3, acceleration: 2.1 m/s² }",
            ".acceleration",
            "higher than the acceleration of the axis",
        ),
        ("{ distance: 1 m, count-per-hour: 3, jerk: 41 m/s³ }", ".jerk", "higher than the jerk of the axis"),
        ("{ distance: 1 m, count-per-hour: 3, dwell: -1 s }", ".dwell", "at least 0"),
        ("{ distance: 1 m, count-per-hour: 3, force: -1 N }", ".force", "at least 0"),
        ("{ distance: 1 m, count-per-hour: 3, dwel: 1 s }", ".dwel", "did you mean `dwell`?"),
    ];
    for (line, key, says) in bad {
        let path = if says.contains("is missing") { ".distance" } else { key };
        one_fault(&moves(&format!("  - {line}")), 10, &format!("axes.x.moves[0]{path}"), says);
    }
    let text = with_axis_lines("cutting-force: 5 N\nmoves: [{ distance: 1 m, count-per-hour: 3, force: 6 N }]");
    one_fault(&text, 10, "axes.x.moves[0].force", "of this move is larger than the cutting-force");
    one_fault(&with_axis_lines("moves: []"), 9, "axes.x.moves", "there are no moves");
    one_fault(&with_axis_lines("moves: 3"), 9, "axes.x.moves", "a list was expected");
    let nine = "  - { distance: 1 m, count-per-hour: 1 }\n".repeat(9);
    one_fault(&moves(&nine), 9, "axes.x.moves", "at most 8 moves are possible, not 9");
}

#[test]
fn an_hour_holds_no_more_than_its_seconds() {
    // 1 m at 0.5 m/s, 2 m/s² and 40 m/s³ takes 2 + 0.25 + 0.05 s; with 0.7 s of dwell 3 s, 1200 times an hour
    brief(&moves("  - { distance: 1 m, count-per-hour: 1200, dwell: 0.7 s }"));
    let text = moves("  - { distance: 1 m, count-per-hour: 1260, dwell: 0.7 s }");
    one_fault(&text, 9, "axes.x.moves", "take 3780 s, more than its 3600 s");
    one_fault(&text, 9, "axes.x.moves", "take 180 s away");
}

#[test]
fn an_axis_has_a_duty_or_moves_and_all_faults_are_told_at_once() {
    let both =
        with_axis_lines("duty: [{ share: 100 %, speed: 5 m/min }]\nmoves: [{ distance: 1 m, count-per-hour: 3 }]");
    one_fault(&both, 10, "axes.x.moves", "either `duty` or `moves`, not both");
    let faults = refused(&moves(
        "  - { distance: 3 m, speed: 5 kg, count-per-hour: 2 }\n  - { distance: -1 m, count-per-hour: nine, jerks: 2 m/s³ }",
    ));
    let places: Vec<(usize, &str)> = faults.iter().map(|fault| (fault.line, fault.path.as_str())).collect();
    assert_eq!(
        places,
        [
            (10, "axes.x.moves[0].distance"),
            (10, "axes.x.moves[0].speed"),
            (11, "axes.x.moves[1].count-per-hour"),
            (11, "axes.x.moves[1].jerks"),
        ],
        "{faults}"
    );
}

#[test]
fn a_counterbalance_hangs_or_is_of_gas() {
    let upright = |line: &str| with_axis_lines(line).replace("horizontal", "vertical");
    let balance = |text: &str| brief(text).axes[0].counterbalance.expect("a counterbalance");
    let weight = balance(&upright("counterbalance: { kind: weight, share: 100 % }"));
    assert_eq!((weight.share.si(), weight.ripple.value.si()), (1.0, 0.0));
    let gas = upright("counterbalance: { kind: gas, share: 85 % }");
    assert_eq!((balance(&gas).ripple.value.si(), balance(&gas).ripple.stated), (0.1, false));
    let read = brief(&gas);
    let assumed = read.assumptions.iter().find(|assumed| assumed.key == "axes.x.counterbalance.ripple");
    let assumed = assumed.expect("the ripple is assumed");
    assert_eq!((assumed.value.as_str(), assumed.unit.as_str()), ("10", "%"));
    let stated = balance(&upright("counterbalance: { kind: gas, share: 85 %, ripple: 18 % }"));
    assert_eq!((stated.ripple.value.si(), stated.ripple.stated), (0.18, true));
    let heavy = upright("counterbalance: { kind: weight, share: 110 % }");
    one_fault(&heavy, 9, "axes.x.counterbalance.share", "heavier than its load: a share is at most 100 %");
    let text = upright("counterbalance: { kind: weight, share: 80 %, ripple: 5 % }");
    one_fault(&text, 9, "axes.x.counterbalance.ripple", "a hanging weight has no ripple");
    let text = upright("counterbalance: { kind: gas, share: 80 %, ripple: 51 % }");
    one_fault(&text, 9, "axes.x.counterbalance.ripple", "at most 50 %");
}

#[test]
fn a_cable_chain_has_a_mass_and_a_friction() {
    let read = brief(&with_axis_lines("cable-chain: { mass-per-metre: 3.5 kg/m }"));
    let chain = read.axes[0].cable_chain.expect("a chain");
    assert_eq!((chain.mass_per_metre.si(), chain.friction.value.si(), chain.friction.stated), (3.5, 0.05, false));
    assert!(read.assumptions.iter().any(|assumed| assumed.key == "axes.x.cable-chain.friction"));
    let text = with_axis_lines("cable-chain: { mass-per-metre: 3.5 kg/m, friction: 0.3 }");
    assert_eq!(brief(&text).axes[0].cable_chain.expect("a chain").friction.value.si(), 0.3);
    one_fault(&with_axis_lines("cable-chain: {}"), 9, "axes.x.cable-chain.mass-per-metre", "is missing");
    let text = with_axis_lines("cable-chain: { mass-per-metre: 3.5 kg }");
    one_fault(&text, 9, "axes.x.cable-chain.mass-per-metre", "kg");
    let text = with_axis_lines("cable-chain: { mass-per-metre: 3.5 kg/m, friction: 1.2 }");
    one_fault(&text, 9, "axes.x.cable-chain.friction", "at most 1");
}
