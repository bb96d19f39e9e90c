//! Moves of an hour, counterbalance and cable chain through the whole working out of a drive.
//!
//! Every property is derived here, no source.

use crate::small::{self, HORIZONTAL, VERTICAL};
use axiswright::characteristic as ch;
use axiswright::drive::{BallScrewDrive, Demand, FAMILIES, Family, Phase};
use axiswright::formula::MOST_PHASES;
use axiswright::formula::motion::move_time;
use axiswright::ledger::{Characteristic, Figures, Known, Worksheet};
use axiswright::pipeline::{self, Inputs};
use axiswright::record::Outcome;
use axiswright::search::work_out;
use axiswright::units::*;

/// The first configuration of a family in the small catalogue.
fn sheet(inputs: &Inputs, family: &str) -> Worksheet {
    let (demand, setting) = (small::demand(inputs, 0), small::setting(inputs));
    let path = [0; axiswright::search::MOST_STAGES];
    work_out(family, &path, &demand, &setting).expect("the configuration exists").sheet
}

/// Every figure that is not of a phase is the same, in every family.
fn assert_same(one: &Inputs, other: &Inputs, tolerance: f64) {
    for family in FAMILIES {
        let (one, other) = (sheet(one, family), sheet(other, family));
        for line in one.lines.iter().filter(|line| ch::about(line.slot).1.is_none()) {
            let (a, b) = (line.value, other.value(line.slot));
            let same = (a - b).abs() <= tolerance * a.abs() || a.to_bits() == b.to_bits();
            assert!(same, "{family} {}: {a}, {b}", ch::id(line.slot));
        }
    }
}

fn with_moves(brief: &str, moves: &str) -> String {
    let duty = brief.find("    duty:").expect("a duty");
    format!("{}    moves:\n{moves}", &brief[..duty])
}

fn time(s: f64, v: f64, a: f64, j: f64) -> f64 {
    move_time(Length::of_si(s), Velocity::of_si(v), Acceleration::of_si(a), Jerk::of_si(j)).si()
}

/// 0.5 m at 0.6 m/s for 30 % and 0.3 m at 0.1 m/s for 50 % of an hour, in moves. The counts are what follows from the
/// shares, so figures agree to rounding; 1e-9 leaves room for that.
#[test]
fn moves_that_make_the_same_hour_give_the_same_drive() {
    let counts = [1080.0 / time(0.5, 0.6, 2.5, 50.0), 1800.0 / time(0.3, 0.1, 2.5, 50.0)];
    let unsigned = format!(
        "      - {{ distance: 0.5 m, count-per-hour: {:?} }}\n      \
         - {{ distance: 0.3 m, speed: 6 m/min, force: 800 N, count-per-hour: {:?} }}\n",
        counts[0], counts[1]
    );
    let half = counts.map(|count| count / 2.0);
    let mut signed = String::new();
    for sign in ["", "-"] {
        signed.push_str(&format!("      - {{ distance: {sign}0.5 m, count-per-hour: {:?} }}\n", half[0]));
        signed.push_str(&format!(
            "      - {{ distance: {sign}0.3 m, speed: 6 m/min, force: 800 N, count-per-hour: {:?} }}\n",
            half[1]
        ));
    }
    let duty = small::inputs(HORIZONTAL);
    for moves in [unsigned, signed] {
        assert_same(&duty, &small::inputs(&with_moves(HORIZONTAL, &moves)), 1e-9);
    }
}

/// A dwell only says when in the hour the axis stands. The sum of standing is the same, so not a bit changes.
#[test]
fn a_dwell_written_as_two_or_left_to_the_rest_of_the_hour_changes_nothing() {
    let moves = |dwells: [&str; 3]| {
        let dwell = |text: &str| if text.is_empty() { String::new() } else { format!(", dwell: {text}") };
        with_moves(
            VERTICAL,
            &format!(
                "      - {{ distance: 0.3 m, count-per-hour: 200{} }}\n      - {{ distance: -0.2 m, count-per-hour: \
                 200{} }}\n      - {{ distance: -0.1 m, speed: 4 m/min, force: 500 N, count-per-hour: 200{} }}\n",
                dwell(dwells[0]),
                dwell(dwells[1]),
                dwell(dwells[2])
            ),
        )
    };
    let together = small::inputs(&moves(["2 s", "", ""]));
    for dwells in [["1 s", "1 s", ""], ["", "0.5 s", "1500 ms"], ["", "", ""]] {
        assert_same(&together, &small::inputs(&moves(dwells)), 0.0);
    }
}

/// On a level axis forward and back are the same, but for the order in which sums are rounded.
#[test]
fn a_level_axis_that_moves_the_other_way_round_loads_its_drive_the_same() {
    let moves = |signs: [&str; 2]| {
        let [out, home] = signs;
        small::inputs(&with_moves(
            HORIZONTAL,
            &format!(
                "      - {{ distance: {out}0.8 m, count-per-hour: 100 }}\n      - {{ distance: {home}0.2 m, speed: \
                 6 m/min, force: 800 N, acceleration: 1 m/s², count-per-hour: 400, dwell: 1 s }}\n"
            ),
        ))
    };
    assert_same(&moves(["", "-"]), &moves(["-", ""]), 1e-12);
}

/// Phases of an axis as the demand enters them, with forces for the smallest screw.
fn worked(inputs: &Inputs) -> (Vec<Phase>, Known) {
    let demand = small::demand(inputs, 0);
    let mut sheet = Known::default();
    demand.enter(&mut sheet);
    // size and supports: forces are known once all that rides is
    let family = BallScrewDrive::new(&demand, &inputs.catalog);
    for stage in 0..2 {
        family.enter(stage, &[0; axiswright::search::MOST_STAGES], &mut sheet);
    }
    (demand.phases.clone(), sheet)
}

fn value<Q: Measure>(sheet: &Known, characteristic: Characteristic<Q>) -> f64 {
    sheet.read(characteristic).si()
}

#[test]
fn the_longest_brief_keeps_within_the_phases_that_there_are() {
    let mut duty = String::new();
    for line in 1..=8 {
        duty.push_str(&format!("      - {{ share: 10 %, speed: {line} m/min, stroke: 0.4 m, force: {line}0 N }}\n"));
    }
    for force in 1..=4 {
        duty.push_str(&format!("      - {{ share: 5 %, stand: true, force: {force} N }}\n"));
    }
    let start = VERTICAL.find("    duty:").expect("a duty");
    let balance = "    jerk: 4000 m/s³\n    counterbalance: { kind: gas, share: 80 % }\n    duty:\n";
    let inputs = small::inputs(&format!("{}{balance}{duty}", &VERTICAL[..start]));
    let demand = small::demand(&inputs, 0);
    assert_eq!(demand.phases.len(), 8 * 14 + 4 + 8 + 8 * 4 + 4 * 2);
    assert_eq!(demand.phases.len(), MOST_PHASES, "no more room than is needed, and no less");
    let whole: f64 = demand.phases.iter().map(|phase| phase.share).sum();
    assert!((whole - 1.0).abs() < 1e-12);
}

/// A stroke too short to reach its speed has no cruise; its force acts all the way, in shares and in moves.
#[test]
fn a_short_stroke_cuts_all_the_way() {
    let inputs = small::inputs(&HORIZONTAL.replace("stroke: 0.3 m", "stroke: 2 mm"));
    let (phases, _) = worked(&inputs);
    let short: Vec<&Phase> = phases.iter().filter(|phase| phase.stroke == 0.002).collect();
    assert!(!short.is_empty() && short.iter().all(|phase| phase.process == 800.0));
    assert!(short.iter().all(|phase| phase.acceleration != 0.0), "no cruise");
}

/// A force that lifts a light slide harder than it weighs is no help: the drive has to hold it down.
#[test]
fn a_force_that_outweighs_what_it_helps_against_counts_in_full() {
    let cut = |force: &str| {
        let text = VERTICAL.replace("500 N", force);
        let text = text.replace("    people-below", "    cutting-force-direction: up\n    people-below");
        let (phases, sheet) = worked(&small::inputs(&text));
        let cruise = phases.iter().position(|phase| phase.share > 0.0 && phase.process != 0.0).expect("a cut");
        (
            value(&sheet, ch::PHASE_FORCE.phase(cruise)),
            value(&sheet, ch::GRAVITY_FORCE),
            value(&sheet, ch::FRICTION_FORCE),
        )
    };
    let (force, weight, friction) = cut("500 N");
    assert!((force - weight - friction).abs() < 1e-9, "a help of 500 N is not relied on");
    let (force, weight, friction) = cut("4 kN");
    assert!((force - (weight + friction - 4000.0)).abs() < 1e-9, "{force} N");
}

/// Newton's second law for slide and counterweight: 80 % of the weight hangs on the rope and is accelerated too.
#[test]
fn a_hanging_weight_adds_inertia_and_a_gas_spring_ripple() {
    let with = |balance: &str| {
        let text = VERTICAL.replace("    people-below", &format!("    counterbalance: {balance}\n    people-below"));
        worked(&small::inputs(&text))
    };
    let (phases, none) = worked(&small::inputs(VERTICAL));
    let (weight_phases, weight) = with("{ kind: weight, share: 80 % }");
    let (gas_phases, gas) = with("{ kind: gas, share: 80 %, ripple: 18 % }");
    let mass = value(&none, ch::DRIVEN_MASS);
    let hanging = value(&weight, ch::COUNTERWEIGHT_MASS);
    assert!((hanging - 0.8 * mass).abs() < 1e-9 && value(&gas, ch::COUNTERWEIGHT_MASS) == 0.0);
    for sheet in [&weight, &gas] {
        // neither weighs on the guides, swings with the slide, or is there when it is lost
        assert_eq!(value(sheet, ch::DRIVEN_MASS), mass);
        assert_eq!(value(sheet, ch::FRICTION_FORCE), value(&none, ch::FRICTION_FORCE));
        assert_eq!(value(sheet, ch::GRAVITY_FORCE), value(&none, ch::GRAVITY_FORCE));
        assert!(value(sheet, ch::PEAK_FORCE) >= value(sheet, ch::GRAVITY_FORCE));
    }
    assert_eq!(weight_phases.len(), phases.len());
    let gravity = value(&none, ch::GRAVITY_FORCE);
    for (index, phase) in phases.iter().enumerate() {
        let (plain, hung) = (value(&none, ch::PHASE_FORCE.phase(index)), value(&weight, ch::PHASE_FORCE.phase(index)));
        if phase.process == 0.0 {
            let expected = plain + hanging * phase.acceleration - 0.8 * gravity;
            assert!((hung - expected).abs() < 1e-9 * gravity, "phase {index}: {hung}, {expected}");
        }
    }
    assert!((value(&weight, ch::ROPE_SLACKENING) - 2.0 / 9.80665).abs() < 1e-12);
    assert!(value(&gas, ch::ROPE_SLACKENING).is_nan() && value(&none, ch::GREATEST_BALANCE).is_nan());
    assert!((value(&gas, ch::GREATEST_BALANCE) - 0.8 * 1.18).abs() < 1e-12);
    // over every phase and either end of the ripple, tried one by one, no force is above the peak
    let extremes = gas_phases.iter().filter(|phase| phase.share == 0.0);
    let mut largest = gravity;
    for phase in extremes {
        for balance in [0.8 * 0.82, 0.8 * 1.18] {
            let air = mass * phase.acceleration
                + gravity * (1.0 - balance)
                + phase.direction * value(&gas, ch::FRICTION_FORCE);
            for force in [air + phase.process, air - phase.process] {
                largest = f64::max(largest, force.abs());
            }
        }
    }
    let peak = value(&gas, ch::PEAK_FORCE);
    assert!((peak - largest).abs() < 1e-9 * peak, "{peak} N, tried {largest} N");
}

/// 3.5 kg/m over 6 m: 5.25 kg move on the mean and 5.15 N drag (derived in the notes of the project: 21 N at 4 m/s²).
#[test]
fn a_cable_chain_adds_mass_and_drag() {
    let plain = HORIZONTAL.replace("travel: 0.9 m", "travel: 6 m");
    let chained = plain.replace("    accuracy:", "    cable-chain: { mass-per-metre: 3.5 kg/m }\n    accuracy:");
    let (_, plain) = worked(&small::inputs(&plain));
    let (_, chained) = worked(&small::inputs(&chained));
    let mass = value(&chained, ch::DRIVEN_MASS) - value(&plain, ch::DRIVEN_MASS);
    assert!((mass - 5.25).abs() < 1e-9 && (4.0 * mass - 21.0).abs() < 1e-8);
    let drag = value(&chained, ch::FRICTION_FORCE) - value(&plain, ch::FRICTION_FORCE);
    // and the guides carry the chain: 0.005·5.25·g
    assert!((drag - 0.05 * 3.5 * 3.0 * 9.80665 - 0.005 * 5.25 * 9.80665).abs() < 1e-9, "{drag} N");
}

/// The counterweight hangs on the axis that carries this one, and so does the chain.
#[test]
fn a_carrier_feels_counterweight_and_chain() {
    let text = VERTICAL.replace(
        "    people-below",
        "    counterbalance: { kind: weight, share: 80 % }\n    cable-chain: { mass-per-metre: 4 kg/m }\n    people-below",
    );
    for family in FAMILIES {
        let sheet = sheet(&small::inputs(&text), family);
        let read = |characteristic: Characteristic<Mass>| sheet.read(characteristic).si();
        // of two pinions the driven mass is that of one
        let pinions = if family == "twin-pinion" { 2.0 } else { 1.0 };
        let expected = read(ch::DRIVE_MASS) + 0.8 * pinions * read(ch::DRIVEN_MASS) + 4.0 * 0.25;
        assert!((read(ch::ADDED_MASS) - expected).abs() < 1e-9, "{family}");
    }
}

#[test]
fn the_longest_parts_and_the_sums_of_the_moves_are_told() {
    let moves = "      - { distance: 0.3 m, count-per-hour: 200 }\n      - { distance: -0.3 m, speed: 4 m/min, force: \
                 500 N, count-per-hour: 200 }\n";
    let inputs = small::inputs(&with_moves(VERTICAL, moves));
    let demand: Demand<'_> = small::demand(&inputs, 0);
    let mut sheet = Known::default();
    demand.enter(&mut sheet);
    // 0.4 m/s at 2 m/s² and 40 m/s³; 0.3 m at 1/15 m/s, whose ramp takes 1/30 + 0.05 s but for its jerk: v·j < a²
    assert!((value(&sheet, ch::LONGEST_RAMP_TIME) - 0.25).abs() < 1e-12);
    let (v, j) = (4.0 / 60.0, 40.0_f64);
    let cut = 0.3 / v - 2.0 * (v / j).sqrt();
    assert!((value(&sheet, ch::LONGEST_CUT_TIME) - cut).abs() < 1e-9);
    assert!((value(&sheet, ch::MOVES_PER_HOUR) - 400.0).abs() < 1e-9);
    assert!((value(&sheet, ch::MEAN_STROKE) - 0.3).abs() < 1e-12);
    assert!((value(&sheet, ch::MEAN_SPEED) - 400.0 * 0.3 / 3600.0).abs() < 1e-12);
}

/// The invented tray loader of the documents gets a drive even from the small catalogue, and its moves are told.
#[test]
fn the_tray_loader_of_the_examples_gets_a_drive() {
    let inputs = small::inputs(include_str!("../../docs/examples/tray-loader.yaml"));
    let record = pipeline::recommend(&inputs, false);
    assert_eq!(record.outcome, Outcome::Chosen);
    let axis = &record.axes[0];
    let told = |key: &str| {
        let lines = axis.requirement.iter().filter(|line| line.key == key);
        lines.map(|line| line.value.clone()).collect::<Vec<_>>()
    };
    assert_eq!(told("duty"), [""; 0]);
    assert_eq!(
        told("moves"),
        [
            "120 an hour over 1300 mm up, up to 45 m/min, 3 m/s² and 60 m/s³, then standing 4 s",
            "120 an hour over 1220 mm down, up to 45 m/min, 3 m/s² and 60 m/s³, then standing 1 s",
            "120 an hour over 80 mm down, up to 3 m/min, 1 m/s² and 60 m/s³, against 600 N, then standing 6 s",
        ]
    );
    assert_eq!(told("counterbalance"), ["weight, 70 %"]);
    let chosen = axis.chosen.as_ref().expect("a drive");
    let value = |id: &str| chosen.value(id).unwrap_or_else(|| panic!("{id}"));
    // energy an hour is the mean power over it, and braking downward gives something back
    assert!((value("energy-per-hour") - value("mean-power")).abs() < 1e-9 * value("mean-power"));
    assert!(value("stop-energy") > 0.0 && value("regenerated-power") > 0.0);
    // the motor moves 110 kg and 77 kg on the rope; what brakes it, and what the nut bears, is the whole weight
    assert!(value("counterweight-mass") > 77.0 && value("peak-force") >= value("gravity-force"));
    assert!((value("moves-per-hour") - 360.0).abs() < 1e-6);
    for rule in ["rope-stays-tight", "balance-below-weight", "cable-chain-acceleration", "jerk-excites"] {
        assert!(chosen.findings.iter().any(|finding| finding.rule == rule), "{rule} is not told");
    }
}
