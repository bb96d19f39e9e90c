//! What `calc` answers, and what it says to a wrong call.
//!
//! Expected values are hand checks of the equations; works of others stand in the reference tests.

use axiswright::calc::{Answer, CalcError, Fault, Kind, calculate, entries, find};

fn call(line: &str) -> Result<Answer, CalcError> {
    let mut words = line.split_whitespace();
    let id = words.next().unwrap();
    let arguments: Vec<(String, String)> =
        words.map(|word| word.split_once('=').unwrap()).map(|(name, text)| (name.into(), text.into())).collect();
    calculate(id, &arguments)
}

fn value(line: &str) -> f64 {
    call(line).unwrap_or_else(|error| panic!("{error}")).value
}

fn faults(line: &str) -> Vec<Fault> {
    match call(line) {
        Ok(answer) => panic!("an answer where none should be: {answer:?}"),
        Err(error) => error.faults,
    }
}

fn said(line: &str) -> String {
    call(line).expect_err("an answer where none should be").to_string()
}

/// Call, unit, value to its last digit.
const HAND: &[(&str, &str, &str)] = &[
    ("move-time travel=0.8m speed=0.5m/s acceleration=5m/s²", "s", "1.700"),
    ("move-time travel=0.8m speed=0.5m/s acceleration=5m/s² jerk=100m/s³", "s", "1.7500"),
    ("move-time travel=0.8m speed=0.5m/s acceleration=10m/s² jerk=100m/s³", "s", "1.74142"),
    ("move-time travel=0.01m speed=0.5m/s acceleration=5m/s² jerk=100m/s³", "s", "0.147361"),
    ("axial-force mass=300kg acceleration=3m/s² angle=90deg friction=0 direction=+1", "N", "3841.99"),
    (
        "axial-force mass=500kg acceleration=2m/s² angle=30deg friction=0.01 process-force=1000N direction=1",
        "N",
        "4494.13",
    ),
    (
        "axial-force mass=600kg acceleration=0 angle=horizontal friction=0.005 wiper-force=60N direction=-1",
        "N",
        "-89.42",
    ),
    ("mean-load forces=4kN,2kN,1kN turns=150,750,600", "N", "2210.42"),
    ("rms-torque torques=3Nm,-4Nm times=1s,1s", "N·m", "3.5355"),
    ("screw-efficiency lead=10mm ball-circle-diameter=33mm friction=0.005", "1", "0.950260"),
    ("back-driving-efficiency lead=10mm ball-circle-diameter=33mm friction=0.005", "1", "0.947707"),
    ("screw-torque axial-force=5kN lead=10mm efficiency=0.950260", "N·m", "8.3743"),
    ("preload-drag-torque preload=3kN lead=10mm ball-circle-diameter=33mm", "N·m", "0.76868"),
    ("whip-speed root-diameter=34.5mm free-length=1.5m ends=fixed-supported", "1/min", "2891"),
    ("whip-speed root-diameter=34.5mm free-length=1.5m ends=fixed-fixed axial-tension=6.76kN", "1/min", "4251"),
    ("column-load root-diameter=34.5mm loaded-length=1.5m ends=fixed-supported", "N", "128553"),
    ("screw-life dynamic-rating=36kN mean-load=3kN load-factor=1.2", "Mrev", "1000"),
    ("screw-life dynamic-rating=36kN mean-load=3kN load-factor=1.2 reliability=95%", "Mrev", "620"),
    ("preloaded-nut-life dynamic-rating=36kN preload=3kN load=4kN", "Mrev", "301.1"),
    ("preloaded-nut-life dynamic-rating=36kN preload=0 load=4kN", "Mrev", "729"),
    ("dynamic-rating ball-circle-diameter=33mm ball-diameter=6.35mm lead=10mm turns=4", "kN", "36.17"),
    ("dynamic-rating ball-circle-diameter=41mm ball-diameter=6.35mm lead=10mm turns=5", "kN", "49.29"),
    ("dynamic-rating ball-circle-diameter=65mm ball-diameter=9.525mm lead=20mm turns=4 conformity=0.53", "kN", "96.1"),
    ("static-rating ball-circle-diameter=33mm ball-diameter=6.35mm lead=10mm turns=4", "kN", "86.04"),
    ("static-rating ball-circle-diameter=65mm ball-diameter=9.525mm lead=20mm turns=4 conformity=0.56", "kN", "215"),
    ("screw-stiffness core-diameter=34.5mm position=1m thrust-ends=one", "N/µm", "192.57"),
    ("screw-stiffness core-diameter=34.5mm position=0.6m length=1.2m thrust-ends=both", "N/µm", "641.9"),
    ("screw-torsional-stiffness-linear core-diameter=34.5mm length=1.1m lead=10mm", "N/µm", "3955"),
    ("mean-travel-deviation grade=P5 travel=1m", "µm", "40"),
    ("mean-travel-deviation grade=T7 travel=1m", "µm", "347"),
    ("mean-travel-deviation grade=3 travel=900mm", "µm", "21"),
    ("thermal-growth length=1m temperature-rise=10K", "µm", "115"),
    ("bow-amplification speed=2400/min whip-speed=3000/min", "1", "1.771"),
    ("bow-amplification speed=2700/min whip-speed=3000/min damping=0.05", "1", "3.853"),
    ("reflected-inertia mass=600kg travel-per-turn=10mm", "kg·m²", "0.00151982"),
    ("natural-frequency stiffness=101.8N/µm mass=600kg", "Hz", "65.56"),
    ("gain-limit stiffness=101.8N/µm mass=598.5kg inertia-ratio=0.171 feedback=motor", "1/s", "29.2"),
    ("circle-error speed=0.1m/s radius=50mm gain=50/s", "µm", "39.95"),
    ("circle-error speed=0.1m/s radius=50mm gain=50/s feedforward=0.9", "µm", "7.6"),
    ("buffer-stroke mass=800kg speed=1m/s buffer-force=20kN drive-force=5kN", "mm", "36.4"),
    ("buffer-stroke mass=800kg speed=1m/s buffer-force=20kN drive-force=5kN angle=vertical", "mm", "126.8"),
    ("brake-holding-torque mass=300kg angle=90deg travel-per-turn=10mm safety=1.5", "N·m", "7.0235"),
    ("brake-holding-torque mass=300kg angle=vertical travel-per-turn=314.159265mm ratio=10", "N·m", "14.71"),
];

#[test]
fn every_hand_check_is_met_to_its_last_digit() {
    for (line, unit, expected) in HAND {
        let answer = call(line).unwrap_or_else(|error| panic!("{error}"));
        let decimals = expected.split_once('.').map_or(0, |(_, decimals)| decimals.len());
        let half = 0.5 * 10f64.powi(-(decimals as i32));
        let number: f64 = expected.parse().unwrap();
        assert_eq!(answer.unit, *unit, "{line}");
        assert!((answer.value - number).abs() <= half * (1.0 + 1e-9), "{line}: {} instead of {expected}", answer.value);
        assert!(answer.within_validity, "{line}: {:?}", answer.remarks);
    }
}

#[test]
fn every_formula_that_others_rely_on_is_there_with_its_unit() {
    for (line, unit, _) in HAND {
        let entry = find(line.split_whitespace().next().unwrap()).unwrap();
        assert_eq!(entry.unit, *unit);
    }
}

#[test]
fn every_unit_of_the_register_is_in_the_table_of_units() {
    for entry in entries() {
        let known = entry.dimension.units().any(|unit| unit.name == entry.unit);
        assert!(known, "{}: {}", entry.note.id, entry.unit);
    }
}

#[test]
fn no_two_entries_share_an_id_and_none_lacks_what_a_reader_needs() {
    let mut seen = std::collections::BTreeSet::new();
    for entry in entries() {
        let note = entry.note;
        assert!(seen.insert(note.id), "{} twice", note.id);
        assert!(!note.title.is_empty() && !note.equation.is_empty() && !note.validity.is_empty(), "{}", note.id);
        assert!(!note.sources.is_empty(), "{} has no source", note.id);
        assert!(entry.arguments.iter().all(|argument| !argument.name.is_empty()), "{}", note.id);
    }
}

#[test]
fn every_formula_constant_of_the_library_is_in_the_register() {
    fn constants(folder: &std::path::Path, found: &mut Vec<String>) {
        for item in std::fs::read_dir(folder).unwrap() {
            let path = item.unwrap().path();
            if path.is_dir() {
                constants(&path, found);
            } else if path.extension().is_some_and(|extension| extension == "rs") {
                let text = std::fs::read_to_string(&path).unwrap();
                let lines: Vec<&str> = text.lines().collect();
                for (index, line) in lines.iter().enumerate() {
                    if let Some(rest) = line.strip_prefix("pub static ") {
                        let head: String = lines[index..lines.len().min(index + 4)].join(" ");
                        if head.contains("Formula") {
                            found.push(rest.split(':').next().unwrap().into());
                        }
                    }
                }
            }
        }
    }
    let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut found = Vec::new();
    constants(&root.join("src/formula"), &mut found);
    assert!(found.len() > 100, "only {} constants found", found.len());
    let further = std::fs::read_dir(root.join("src/calc/library")).unwrap().map(|item| item.unwrap().path());
    let files = std::iter::once(root.join("src/calc/library.rs")).chain(further);
    let register: String = files.map(|file| std::fs::read_to_string(file).unwrap()).collect();
    let missing: Vec<&String> = found.iter().filter(|name| !register.contains(&format!("::{name},"))).collect();
    assert!(missing.is_empty(), "not in src/calc/library.rs or a file of library/: {missing:?}");
}

#[test]
fn inches_and_millimetres_give_the_same() {
    let metric = value("whip-speed root-diameter=25.4mm free-length=1270mm ends=fixed-fixed");
    let inch = value("whip-speed root-diameter=1in free-length=50in ends=fixed-fixed");
    assert!((metric / inch - 1.0).abs() < 1e-12);
}

#[test]
fn all_faults_of_a_call_come_together_with_the_nearest_spelling() {
    let found = faults("whip-speed root-diametre=30mm free-length=1.5 ends=fixed-suported bore=-1mm");
    assert_eq!(found.len(), 5, "{found:?}");
    let text = said("whip-speed root-diametre=30mm free-length=1.5 ends=fixed-suported bore=-1mm");
    assert!(text.contains("did you mean `root-diameter`?"), "{text}");
    assert!(text.contains("`root-diameter` is missing"), "{text}");
    assert!(text.contains("`1.5` has no unit"), "{text}");
    assert!(text.contains("did you mean `fixed-supported`?"), "{text}");
    assert!(text.contains("`bore` must not be negative, but is -1mm"), "{text}");
}

#[test]
fn an_unknown_formula_is_answered_with_the_nearest() {
    assert!(said("wip-speed root-diameter=3mm").contains("did you mean `whip-speed`?"));
    assert!(!said("quantum-flux x=1").contains("did you mean"));
}

#[test]
fn twice_the_same_argument_is_a_fault() {
    let found = faults("natural-frequency mass=1kg mass=2kg stiffness=1N/µm");
    assert_eq!(found, vec![Fault::Duplicate { name: "mass".into() }]);
}

#[test]
fn wrong_kinds_of_values_are_refused() {
    assert!(said("natural-frequency stiffness=1N/µm mass=3mm").contains("a unit of length, but a mass is needed"));
    assert!(said("natural-frequency stiffness=1N/µm mass=-3kg").contains("must be above zero"));
    assert!(said("natural-frequency stiffness=1N/µm mass=NaN").contains("not a finite number"));
    assert!(said("mean-load forces=1kN,2kN turns=1").contains("must match"));
    assert!(said("mean-load forces=1kN,,2kN turns=1,2,3").contains("forces"));
    assert!(said("mean-load forces=1kN,2kN turns=0,0").contains("must not all be zero"));
    assert!(said("axial-force mass=1kg acceleration=0 angle=0 friction=0 direction=2").contains("+1, −1, or 0"));
    assert!(said("screw-life dynamic-rating=1kN mean-load=1kN reliability=80%").contains("between 90 % and 99 %"));
    assert!(said("screw-torque axial-force=1kN lead=10mm efficiency=1.2").contains("must not exceed 1"));
    assert!(said("screw-stiffness core-diameter=30mm position=1m thrust-ends=both").contains("needs `length`"));
    assert!(said("screw-stiffness core-diameter=30mm position=2m length=1m thrust-ends=both").contains("between"));
    assert!(said("whip-speed root-diameter=30mm bore=30mm free-length=1m ends=fixed-fixed").contains("smaller"));
    let narrow = "dynamic-rating ball-circle-diameter=33mm ball-diameter=6mm lead=10mm turns=4 conformity=0.5";
    assert!(said(narrow).contains("above 0.5"));
}

#[test]
fn grades_are_read_strictly() {
    assert!(said("mean-travel-deviation grade=C5 travel=1m").contains("C grades of JIS"));
    assert!(said("mean-travel-deviation grade=P7 travel=1m").contains("transport grades"));
    assert!(said("mean-travel-deviation grade=P6 travel=1m").contains("P0 to P5"));
    let transport = value("mean-travel-deviation grade=T5 travel=1m");
    assert!((transport - 2.0 * 1000.0 / 300.0 * 23.0).abs() < 1e-6);
    assert_eq!(value("mean-travel-deviation grade=7 travel=1m"), value("mean-travel-deviation grade=t7 travel=1m"));
}

#[test]
fn a_buffer_that_is_too_weak_has_no_stroke() {
    let found = faults("buffer-stroke mass=800kg speed=1m/s buffer-force=5kN drive-force=5kN");
    assert!(matches!(&found[..], [Fault::NoResult { why }] if why.contains("does not stop")), "{found:?}");
}

#[test]
fn a_screw_pressed_beyond_its_euler_load_has_no_whip_speed() {
    let buckled = faults("whip-speed root-diameter=20mm free-length=2m ends=supported-supported axial-tension=-5kN");
    assert!(matches!(&buckled[..], [Fault::NoResult { why }] if why.contains("buckles")), "{buckled:?}");
    let pressed = value("whip-speed root-diameter=20mm free-length=2m ends=supported-supported axial-tension=-1kN");
    let pulled = value("whip-speed root-diameter=20mm free-length=2m ends=supported-supported axial-tension=1kN");
    let plain = value("whip-speed root-diameter=20mm free-length=2m ends=supported-supported");
    assert!(pressed < plain && plain < pulled);
}

#[test]
fn inputs_outside_validity_give_a_value_and_say_so() {
    for line in [
        "whip-speed root-diameter=40mm free-length=0.5m ends=fixed-fixed",
        "column-load root-diameter=40mm loaded-length=0.2m ends=fixed-fixed",
        "screw-life dynamic-rating=10kN mean-load=6kN",
        "gain-limit stiffness=100N/µm mass=500kg inertia-ratio=20 feedback=scale",
        "mean-travel-deviation grade=P3 travel=9m",
        "mean-load forces=1kN,-1kN turns=1,1",
    ] {
        let answer = call(line).unwrap();
        assert!(!answer.within_validity && !answer.remarks.is_empty(), "{line}");
        assert!(answer.to_text().contains("OUTSIDE VALIDITY"), "{line}");
        assert_eq!(answer.to_json()["within-validity"], false, "{line}");
    }
}

#[test]
fn json_holds_the_fields_that_others_rely_on() {
    let json = call("bow-amplification speed=2400/min whip-speed=3000/min").unwrap().to_json();
    for field in ["formula", "value", "unit", "inputs", "validity", "within-validity", "source"] {
        assert!(!json[field].is_null(), "{field}");
    }
    let inputs = json["inputs"].as_array().unwrap();
    let damping = inputs.iter().find(|input| input["name"] == "damping").unwrap();
    assert_eq!(damping["defaulted"], true);
    assert_eq!(damping["value"], 0.02);
    assert_eq!(inputs[0]["value"], 2400.0);
    assert_eq!(inputs[0]["unit"], "1/min");
}

#[test]
fn the_text_shows_equation_inputs_result_validity_and_source() {
    let text = call("whip-speed root-diameter=34.5mm free-length=1.5m ends=fixed-supported").unwrap().to_text();
    for part in [
        "whip-speed: ",
        "n_cr = ",
        "d_r = 34.5 mm",
        "L = 1500 mm",
        "λ² = 15.4182",
        "fixed-supported",
        "Result    2891.22 1/min",
        "Validity",
        "Source",
        "bore",
        "(default)",
    ] {
        assert!(text.contains(part), "{part} is not in\n{text}");
    }
}

#[test]
fn a_formula_without_an_entry_of_its_own_can_be_called_by_its_inputs() {
    let answer = call("holding-torque gravity-force=2941.995N travel-per-turn=10mm reduction=1").unwrap();
    assert!((answer.value - 4.6823).abs() < 0.00005);
    assert!(answer.remarks.iter().any(|remark| remark.contains("not checked")));
    let mean = value("mean-force forces=2kN,1kN shares=0.5,0.5 speeds=1m/s,-1m/s");
    assert!((mean - 1.0).abs() > 0.5, "{mean}");
    assert!(said("mean-force forces=2kN,1kN shares=0.5,0.5 speeds=1m/s").contains("same length"));
}

#[test]
fn usage_names_every_argument_of_every_entry() {
    for entry in entries() {
        let usage = entry.usage();
        for argument in &entry.arguments {
            assert!(usage.contains(&format!("{}=", argument.name)), "{usage}");
            if let Kind::Word(words) = argument.kind {
                assert!(!words.is_empty());
            }
        }
    }
}
