//! Small texts that mutations begin with: every kind of key and block in as few bytes as it needs.
//!
//! Method: they are cut from the valid ones: one entry of a file of the catalogue, one rule with short words, two rows of a table,
//! a record without everything that it can be without, and with one such thing at a time. Briefs are the shortest, with one key more.
//! A fuzzer prefers small inputs for the same reason: a run takes less, and a mutation hits what matters.

use crate::seeds;
use axiswright::{audit, catalog, rule};
use serde_json::Value;

/// The shortest texts for the target of this name; empty where the others are short.
pub fn small(name: &str) -> Vec<Vec<u8>> {
    let texts = match name {
        "brief" | "opened" => briefs(),
        "decision" => slides(),
        "parts" => catalog::built_in().iter().flat_map(|(_, text)| entries(text)).collect(),
        "rules" => rule::built_in().iter().map(|(_, text)| in_short(text)).collect(),
        "choice" => CHOICES.iter().map(|text| text.to_string()).collect(),
        "record" => records(),
        "table" => tables(),
        "measured" => MEASURED.iter().map(|text| text.to_string()).collect(),
        "form" => forms(),
        _ => Vec::new(),
    };
    texts.into_iter().map(String::into_bytes).collect()
}

/// The keys of an axis that must be there.
const AXIS: &str = "direction: horizontal
travel: 3 m
moved-mass: 9 kg
speed: 9 m/min
acceleration: 1 m/s²";

/// What else a machine may have.
const MACHINE_TOO: &str = "\
currency: EUR
years-in-service: 9
hours-per-year: 99
discount-rate: 6 %
energy-price: 0.2
downtime-cost: 9
environment: [dust, chips]
temperature-swing: 5 K
supply-voltage: 400 V
supply-tolerance: 9 %
altitude: 1 km
ambient-temperature: 30 °C
reliability: 95 %
uncertainty: { moved-mass: 5 %, guide-friction: 9 %, cutting-force: 9 %, temperature-swing: 9 %, stiffness: 9 % }
limits: { purchase: 9000, tool-point-error: 1 mm, supply-power: 9 kW, motor-models: 2, gearbox-models: 2, lead-time: 9 weeks }
prefer: { whole-life-cost: 5, accuracy: 2, stiffness: 2, upkeep: 1 }
waivers: [{ rule: inertia-ratio, axis: x, reason: r, by: b, until: 2027-06-30 }]";

/// What else an axis may have; keys of one line belong together.
const AXIS_TOO: &str = "\
purpose: p
along: y
overtravel: 9 mm
drives: 2; drive-spacing: 1 m; mass-offset: 9 mm; yaw-stiffness: 2e5 kN·m/rad; side-temperature-difference: 1 K; side-correction: 9 %
guide-spacing: 1 m; guide-base: 500 mm
jerk: 9 m/s³
bed: granite
guide-friction: 0.01
wiper-force: 9 N
direction: vertical; counterbalance: { kind: gas, share: 50 %, ripple: 9 % }
direction: 30 deg; counterbalance: { kind: weight, share: 50 % }; people-below: true
cable-chain: { mass-per-metre: 1 kg/m, friction: 0.3 }
cutting-force: 9 N; cutting-force-direction: both; cutting-speed: 1 m/min
duty: [{ share: 50 %, speed: 9 m/min, force: 9 N, stroke: 1 m }, { share: 50 %, stand: true }]
moves: [{ distance: 1 m, speed: 1 m/min, acceleration: 1 m/s², jerk: 9 m/s³, force: 9 N, count-per-hour: 9, dwell: 1 s }, { distance: -1 m, count-per-hour: 9 }]
accuracy: 0.1 mm
section-accuracy: 0.1 mm
repeatability: 9 µm
reversal: 9 µm
cutting-deflection: 9 µm; cutting-force: 9 N
ripple: 9 µm
first-mode: 9 Hz
contour: { speed: 1 m/min, radius: 9 mm, error: 9 µm, feed-forward: 50 % }
settling: { time: 1 s, window: 9 µm }
guide-tilt: 9 arcsec; tool-to-drive: 9 mm; tool-to-scale: 9 mm
guide-waviness: { height: 9 µm, length: 1 m }; guide-base: 500 mm; guide-tilt: 9 arcsec; tool-to-drive: 9 mm
feedback: scale
mapping: table
families: [ball-screw, driven-nut, straight-rack, helical-rack, twin-pinion]
carries: [y]";

/// The shortest briefs, each with one key more.
fn briefs() -> Vec<String> {
    let brief = |machine: &str, more: &str| {
        let given: Vec<&str> = more.split("; ").filter(|line| !line.is_empty()).collect();
        let key = |line: &str| line.split(':').next().map(String::from);
        let axis = AXIS.lines().filter(|line| !given.iter().any(|other| key(other) == key(line)));
        let axis: String = axis.chain(given.iter().copied()).map(|line| format!("    {line}\n")).collect();
        let rider = if more == "carries: [y]" {
            AXIS.lines().map(|line| format!("    {line}\n")).collect()
        } else {
            String::new()
        };
        let rider = if rider.is_empty() { rider } else { format!("  y:\n{rider}") };
        let machine = if machine.is_empty() { String::new() } else { format!("{machine}\n") };
        format!("machine: m\n{machine}axes:\n  x:\n{axis}{rider}")
    };
    let machines = MACHINE_TOO.lines().map(|machine| brief(machine, ""));
    machines.chain(AXIS_TOO.lines().map(|more| brief("", more))).collect()
}

/// Briefs of which a machine is found at once.
fn slides() -> Vec<String> {
    let slide = include_str!("../fuzz/slide.yaml");
    let of = |family: &str| slide.replace("[straight-rack, ball-screw]", &format!("[{family}]"));
    ["straight-rack", "helical-rack", "ball-screw"].map(of).to_vec()
}

/// A file of the catalogue with its first variant, and one file for each of its first and last entries.
fn entries(text: &str) -> Vec<String> {
    let lines: Vec<&str> = text.lines().filter(|line| !line.trim_start().starts_with('#')).collect();
    let (mut head, mut items, mut in_entries, mut variants) = (String::new(), Vec::<String>::new(), false, 0);
    for line in lines {
        let begins = line.starts_with("  - ");
        match in_entries {
            true if begins => items.push(format!("{line}\n")),
            true => items.last_mut().into_iter().for_each(|item| item.push_str(&format!("{line}\n"))),
            false => {
                in_entries = line.starts_with("entries:");
                variants = if line.starts_with(' ') { variants + usize::from(begins) } else { 0 };
                if variants < 2 {
                    head.push_str(&format!("{line}\n"));
                }
            }
        }
    }
    let head = head.replace("generic, invented in realistic size; replace by supplier data before ordering", "generic");
    let last = items.len().saturating_sub(1);
    [0, last].iter().filter_map(|at| items.get(*at)).map(|item| format!("{head}{item}")).collect()
}

/// A rule or caution with its long words cut to their first line.
fn in_short(text: &str) -> String {
    let (mut short, mut folded) = (String::new(), 0);
    for line in text.lines() {
        folded = if !line.starts_with(' ') { usize::from(line.ends_with('>')) } else { folded * 2 };
        if folded < 4 {
            let most = if folded == 2 { 20 } else { line.len() };
            short.extend(line.chars().take(most));
            short.push('\n');
        }
    }
    short
}

const CHOICES: &[&str] = &[
    "axes: { slide: { family: ball-screw } }\n",
    "axes:\n  slide:\n    family: ball-screw\n    parts: { ball-screw: screw-32x20, screw-grade: rolled-t7, linear-scale: none }\n",
    "axes:\n  slide:\n    family: twin-pinion\n    parts: { rack: rack-2-helical, gearbox: planetary-80-standard-i5 }\n",
    "axes:\n  slide:\n    family: driven-nut\n    parts: { nut-unit: x, error-table: none }\n",
    "axes:\n  slide:\n    family: helical-rack\n    parts: { pinion: own }\ncomponents:\n  - kind: pinion\n    basis: b\n    entries: []\n",
    "components:\n  - kind: steel\n    basis: b\n    lead-time: 1 days\n    entries: [{ designation: s }]\naxes: { slide: { family: straight-rack } }\n",
];

const MEASURED: &[&str] = &[
    "target [mm];direction;run;deviation [µm]\n0;up;1;1\n0;down;1;2\n9;up;1;1\n9;down;1;3\n0;up;2;1\n0;down;2;2\n9;up;2;1\n9;down;2;3\n",
    "target,direction,run,deviation\n0 mm,+,1,1 µm\n0.5 m,-,1,2 µm\n",
    "run\ttarget (mm)\tdirection\tdeviation (µm)\n1\t0\tforward\t1,5\n1\t9\tback\t2\n",
    "# c\ntarget mm;direction;run;deviation / mm\n0;↑;1;0,001\n0;↓;1;−0,002\n",
];

/// Two rows of each table with its map.
fn tables() -> Vec<String> {
    let cut = |text: String| {
        let (map, table) = text.split_once("\n=\n").unwrap_or(("", &text));
        let skipped = map.lines().find_map(|line| line.strip_prefix("skip-lines: ")?.parse::<usize>().ok());
        let rows = match map.contains("parts-in: columns") {
            true => table.lines().map(|line| line.split('\t').take(3).collect::<Vec<_>>().join("\t")).collect(),
            false => table.lines().take(skipped.unwrap_or(1) + 3).map(String::from).collect::<Vec<_>>(),
        };
        let map: Vec<&str> = map.lines().filter(|line| !line.starts_with('#')).collect();
        let map = if map.is_empty() { String::new() } else { format!("{}\n=\n", map.join("\n")) };
        format!("{map}{}\n", rows.join("\n"))
    };
    let whole = seeds::seeds("table").into_iter().map(|text| cut(String::from_utf8_lossy(&text).into_owned()));
    let few = [
        "designation,price\nx,9\n",
        "designation;number [%];x\ns;1,5;y\n",
        "columns: { price: P }\nleave-out: [x]\n=\nP;x\n1.000,5;y\n",
    ];
    whole.chain(few.map(String::from)).collect()
}

/// Forms with a name and one field more.
fn forms() -> Vec<String> {
    let field = |line: &str, before: &str| {
        let (key, value) = line.split_once(": ").unwrap_or((line, ""));
        (format!("{before}{key}"), value.to_string())
    };
    let form = |pairs: Vec<(String, String)>| {
        let name = ("axes.0.name".to_string(), "x".to_string());
        form_urlencoded::Serializer::new(String::new()).extend_pairs([name]).extend_pairs(pairs).finish()
    };
    let machine = MACHINE_TOO.lines().map(|line| form(vec![field(line, "")]));
    let axis = AXIS_TOO.lines().map(|more| form(more.split("; ").map(|line| field(line, "axes.0.")).collect()));
    let rows = ["duty.0.share", "duty.1.speed", "moves.0.distance", "counterbalance.kind", "cable-chain.friction"];
    let rows = rows.map(|key| form(vec![(format!("axes.0.{key}"), "5 %".into())]));
    let pages = ["add-axis", "copy-axis 0", "remove-axis 0", "add-row axes.0.duty", "remove-row waivers 0", "keep"];
    let pages = pages.map(|page| form(vec![("page-do".into(), page.into()), ("page-units".into(), "inch".into())]));
    machine.chain(axis).chain(rows).chain(pages).collect()
}

/// A record without everything that it can be without, and the same with each such thing.
fn records() -> Vec<String> {
    let whole = seeds::seeds("record");
    let mut value: Value = serde_json::from_slice(&whole[0]).expect("JSON");
    let mut taken = Vec::new();
    without(&mut value, &mut Vec::new(), &mut taken);
    let bare = value.to_string();
    let with = taken.iter().filter_map(|(path, key, field)| {
        let mut value: Value = serde_json::from_str(&bare).expect("JSON");
        value.pointer_mut(path)?.as_object_mut()?.insert(key.clone(), field.clone());
        Some(value.to_string())
    });
    let with: Vec<String> = with.filter(|text| text.len() < bare.len() + 3000 && is_record(text)).collect();
    std::iter::once(bare.clone()).chain(with).collect()
}

fn is_record(text: &str) -> bool {
    audit::read_bytes("record.json", text.as_bytes()).is_ok()
}

/// A field that was taken out: where, its key and what it was.
type Taken = (String, String, Value);

/// Takes out every field without which it is a record still, the largest groups first.
fn without(whole: &mut Value, at: &mut Vec<String>, taken: &mut Vec<Taken>) {
    let pointer = |at: &[String]| at.iter().map(|step| format!("/{step}")).collect::<String>();
    let path = pointer(at);
    let Some(here) = whole.pointer_mut(&path) else { return };
    let steps: Vec<String> = match here {
        Value::Object(fields) => fields.keys().cloned().collect(),
        Value::Array(items) => {
            let kept = std::mem::take(items);
            let empty = is_record(&whole.to_string());
            if let Some(Value::Array(items)) = whole.pointer_mut(&path) {
                // a list of records is kept with one of them: what stands in it is to be seen too
                *items = if empty && at.len() > 2 { Vec::new() } else { kept.into_iter().take(1).collect() };
            }
            let left = whole.pointer(&path).and_then(Value::as_array).map_or(0, Vec::len);
            (0..left).map(|item| item.to_string()).collect()
        }
        _ => return,
    };
    for step in steps {
        let Some(Value::Object(fields)) = whole.pointer_mut(&path) else {
            at.push(step);
            without(whole, at, taken);
            at.pop();
            continue;
        };
        let Some(field) = fields.get(&step).cloned() else { continue };
        let before = fields.clone();
        fields.shift_remove(&step);
        if is_record(&whole.to_string()) {
            taken.push((path.clone(), step, field));
            continue;
        }
        if let Some(here) = whole.pointer_mut(&path) {
            *here = Value::Object(before);
        }
        at.push(step);
        without(whole, at, taken);
        at.pop();
    }
}

#[test]
fn small_texts_are_small_and_hold_every_key_of_a_brief() {
    let briefs = briefs().concat();
    for key in axiswright::brief::guide::keys() {
        // a key begins a line or stands in braces: `mass` is not in `moved-mass`
        let begins = |before: &str| briefs.contains(&format!("{before}{}: ", key.name));
        assert!([" ", "\n", "{"].into_iter().any(begins) || key.name == "axes", "no small brief has `{}`", key.name);
    }
    for name in ["brief", "parts", "rules", "choice", "record", "table", "measured", "form", "decision"] {
        let small = small(name);
        let mean = |texts: &[Vec<u8>]| texts.iter().map(Vec::len).sum::<usize>() / texts.len();
        let (mean, all) = (mean(&small), mean(&seeds::seeds(name)));
        println!("{name}: {} texts of {mean} bytes, whole ones of {all}", small.len());
        assert!(mean < 2000 && small.iter().all(|text| !text.is_empty()), "{name}: {mean} bytes");
    }
}

#[test]
fn small_texts_are_read() {
    let catalog = catalog::load(&[]).expect("the built-in parts");
    let rules = rule::load(&[]).expect("the built-in rules");
    for text in briefs() {
        let read = axiswright::pipeline::with_brief("brief.yaml", &text, &catalog, &rules);
        assert!(read.is_ok(), "{text}\n{}", read.map(|_| String::new()).unwrap_or_else(|faults| faults.to_string()));
    }
    for (name, text) in catalog::built_in() {
        for text in entries(&text) {
            let read = catalog::load_layers(vec![catalog::built_in(), vec![("own.yaml".into(), text.clone())]]);
            let told = read.map(|_| String::new()).unwrap_or_else(|faults| faults.to_string());
            assert!(told.is_empty(), "{name}\n{text}\n{told}");
        }
    }
    for (name, text) in rule::built_in() {
        let file = vec![("own.yaml".to_string(), in_short(&text))];
        let (rules, cautions) = if name.contains("/cautions/") { (Vec::new(), file) } else { (file, Vec::new()) };
        let told = rule::load_only(rules, cautions).map(|_| String::new()).unwrap_or_else(|faults| faults.to_string());
        assert!(told.is_empty(), "{name}\n{told}\n{}", in_short(&text));
    }
    assert!(records().iter().all(|text| is_record(text)));
}

#[test]
#[ignore = "writes what libFuzzer begins with: a file for each small and each whole text below tests/fuzz/corpus"]
fn corpus() {
    for entry in crate::entries::ENTRIES {
        let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/fuzz/corpus").join(entry.name);
        std::fs::create_dir_all(&folder).expect("a folder");
        for (number, text) in small(entry.name).into_iter().chain(seeds::seeds(entry.name)).enumerate() {
            std::fs::write(folder.join(format!("seed-{number}")), text).expect("a file");
        }
    }
}
