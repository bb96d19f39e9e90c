//! One brief has one answer: whatever is skipped, whoever works, in whatever order or units it comes.

use crate::small::{self, MACHINE};
use axiswright::catalog;
use axiswright::pipeline::{Inputs, recommend};
use axiswright::record::{DecisionRecord, MachineRecord, Outcome};
use axiswright::units::{Length, Measure, Money};
use proptest::prelude::*;
use serde_json::Value;

fn json(record: &DecisionRecord) -> String {
    serde_json::to_string_pretty(record).expect("a record is JSON")
}

/// The first lines in which two records differ.
fn assert_same(what: &str, one: &DecisionRecord, other: &DecisionRecord) {
    let (one, other) = (json(one), json(other));
    let differ: Vec<_> = one.lines().zip(other.lines()).filter(|(one, other)| one != other).take(5).collect();
    assert!(one == other, "{what}: {differ:#?}");
}

#[test]
fn the_limits_of_this_machine_bind() {
    let inputs = small::inputs(MACHINE);
    let limited = recommend(&inputs, false);
    let mut free = inputs.clone();
    free.brief.limits = Default::default();
    let free = recommend(&free, false);
    assert_eq!((limited.outcome, free.outcome), (Outcome::Chosen, Outcome::Chosen));
    assert!(limited.machine.solver.objective > free.machine.solver.objective);
}

/// The machine with other masses, speeds, forces, tolerances and limits.
fn varied(scale: [f64; 5], limited: bool) -> Inputs {
    let [mass, speed, acceleration, tolerance, force] = scale;
    let mut inputs = small::inputs(MACHINE);
    for axis in &mut inputs.brief.axes {
        axis.moved_mass *= mass;
        axis.speed *= speed;
        axis.acceleration *= acceleration;
        axis.cutting_force.value *= force;
        axis.accuracy = axis.accuracy.map(|accuracy| accuracy * tolerance);
        for line in &mut axis.duty {
            line.speed = line.speed.map(|given| given * speed);
            line.force *= force;
        }
    }
    let limits = &mut inputs.brief.limits;
    if limited {
        limits.purchase = Some(Money(20_000.0 * tolerance));
        limits.tool_point_error = Some(Length::of_si(80e-6 * tolerance));
        limits.motor_models = Some(2);
    } else {
        *limits = Default::default();
    }
    inputs
}

proptest! {
    #![proptest_config(small::cases(5))]

    #[test]
    fn nothing_that_is_skipped_changes_the_record(
        mass in 0.3..6.0_f64,
        speed in 0.3..1.8_f64,
        acceleration in 0.3..3.0_f64,
        tolerance in 0.6..2.0_f64,
        force in 0.1..5.0_f64,
        limited in any::<bool>(),
    ) {
        let inputs = varied([mass, speed, acceleration, tolerance, force], limited);
        assert_same("exhaustive", &recommend(&inputs, false), &recommend(&inputs, true));
    }
}

#[test]
fn the_number_of_threads_changes_no_byte_and_neither_does_running_again() {
    let inputs = small::inputs(MACHINE);
    let first = recommend(&inputs, false);
    for threads in [1, 2, 5] {
        let pool = rayon::ThreadPoolBuilder::new().num_threads(threads).build().expect("a pool of threads");
        assert_same(&format!("{threads} threads"), &first, &pool.install(|| recommend(&inputs, false)));
    }
}

/// The built-in files with files, entries and variants in another order.
fn shuffled(seed: usize) -> Vec<(String, String)> {
    let mut files = catalog::built_in();
    files.reverse();
    for (place, (_, text)) in files.iter_mut().enumerate() {
        let mut document: Value = serde_yaml::from_str(text).expect("the built-in files are YAML");
        for list in ["entries", "variants"] {
            if let Some(Value::Array(items)) = document.get_mut(list) {
                let by = (seed + place) % items.len();
                items.rotate_left(by);
                items.reverse();
            }
        }
        *text = serde_yaml::to_string(&document).expect("YAML again");
    }
    files
}

#[test]
fn the_order_of_catalogue_files_and_entries_changes_nothing() {
    let mut inputs = small::inputs(MACHINE);
    let mut first = recommend(&inputs, false);
    // the hashes of the files are of their texts
    first.inputs.clear();
    for seed in [3, 11] {
        inputs.catalog = small::cut(catalog::load_texts(shuffled(seed)).expect("shuffled files load"));
        let mut again = recommend(&inputs, false);
        again.inputs.clear();
        assert_same("shuffled", &first, &again);
    }
}

/// Numbers within 1e-9 of each other, everything else equal.
fn assert_near(path: &str, one: &Value, other: &Value) {
    match (one, other) {
        (Value::Number(a), Value::Number(b)) => {
            let (a, b) = (a.as_f64().expect("a number"), b.as_f64().expect("a number"));
            assert!((a - b).abs() <= 1e-9 * a.abs().max(b.abs()), "{path}: {a} and {b}");
        }
        (Value::Array(a), Value::Array(b)) => {
            assert_eq!(a.len(), b.len(), "{path}");
            for (index, (a, b)) in a.iter().zip(b).enumerate() {
                assert_near(&format!("{path}[{index}]"), a, b);
            }
        }
        (Value::Object(a), Value::Object(b)) => {
            assert_eq!(a.keys().collect::<Vec<_>>(), b.keys().collect::<Vec<_>>(), "{path}");
            for (key, a) in a {
                assert_near(&format!("{path}.{key}"), a, &b[key]);
            }
        }
        _ => assert_eq!(one, other, "{path}"),
    }
}

fn value(of: &impl serde::Serialize) -> Value {
    serde_json::to_value(of).expect("a part of a record is JSON")
}

/// The machine in inches and pounds: 25.4 mm, 0.45359237 kg and 4.4482216152605 N are exact.
const INCHES: [(&str, &str); 18] = [
    ("2032 mm/s²", "80 in/s²"),
    ("2540 mm/s²", "100 in/s²"),
    ("30480 mm/min", "1200 in/min"),
    ("20320 mm/min", "800 in/min"),
    ("5080 mm/min", "200 in/min"),
    ("2540 mm/min", "100 in/min"),
    ("0.1016 mm", "0.004 in"),
    ("2032 mm", "80 in"),
    ("1524 mm", "60 in"),
    ("1016 mm", "40 in"),
    ("406.4 mm", "16 in"),
    ("0.127 mm", "0.005 in"),
    ("0.0762 mm", "0.003 in"),
    ("0.0381 mm", "0.0015 in"),
    ("272.155422 kg", "600 lb"),
    ("136.077711 kg", "300 lb"),
    ("45.359237 kg", "100 lb"),
    ("444.8221615260501 N", "100 lbf"),
];

#[test]
fn inches_and_pounds_give_the_same_decision_as_millimetres() {
    let text = INCHES.iter().fold(MACHINE.to_string(), |text, (metric, inch)| text.replace(metric, inch));
    let text = text.replace("14.913997431645405 kW", "20 hp");
    assert!(!text.contains("mm") && !text.contains("kg"), "{text}");
    let metric = recommend(&small::inputs(MACHINE), false);
    let inch = recommend(&small::inputs(&text), false);
    assert_eq!(metric.outcome, inch.outcome);
    assert_near("machine", &value(&metric.machine), &value(&inch.machine));
    for (metric, inch) in metric.axes.iter().zip(&inch.axes) {
        assert_near("chosen", &value(&metric.chosen), &value(&inch.chosen));
        assert_near("families", &value(&metric.families), &value(&inch.families));
        assert_near("runners-up", &value(&metric.runners_up), &value(&inch.runners_up));
    }
}

/// The machine with the drives of the next machines by the names of their axes: the record has them in the order of the brief.
fn by_axis(machine: &MachineRecord) -> MachineRecord {
    let mut machine = machine.clone();
    for next in &mut machine.next_best {
        next.drives.sort_by(|a, b| a.axis.cmp(&b.axis));
        next.differs_in.sort_by(|a, b| a.axis.cmp(&b.axis));
    }
    machine
}

#[test]
fn the_order_of_the_axes_changes_nothing_about_any_of_them() {
    let first = recommend(&small::inputs(MACHINE), false);
    let begin = |name: &str| MACHINE.find(&format!("\n  {name}:\n")).expect("the axis");
    let (portal, slide, ram) = (begin("portal"), begin("slide"), begin("ram"));
    let parts = [&MACHINE[portal..slide], &MACHINE[slide..ram], MACHINE[ram..].trim_end()];
    for order in [[2, 1, 0], [1, 2, 0], [2, 0, 1]] {
        let text = format!("{}{}\n", &MACHINE[..portal], order.map(|place| parts[place]).concat());
        let other = recommend(&small::inputs(&text), false);
        assert_near("machine", &value(&by_axis(&first.machine)), &value(&by_axis(&other.machine)));
        for axis in &first.axes {
            let again = other.axes.iter().find(|again| again.name == axis.name).expect("the same axes");
            assert_near(&axis.name, &value(axis), &value(again));
        }
    }
}
