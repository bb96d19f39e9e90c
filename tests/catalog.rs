//! Reading the catalogue: faults with their place, variants, layers, and what is printed of it.

use axiswright::catalog::{KINDS, Kind, built_in, check, list, load, load_layers, load_texts, reference, show};
use axiswright::units::Measure;
use axiswright::yaml::{Fault, Faults};

fn text(name: &str, text: &str) -> (String, String) {
    (name.into(), text.into())
}

/// The faults of a file that is put over the built-in catalogue.
fn faults_of(content: &str) -> Vec<Fault> {
    let layers = vec![built_in(), vec![text("mine.yaml", content)]];
    load_layers(layers).err().unwrap_or_default().into_iter().collect()
}

fn the_fault_of(content: &str) -> Fault {
    let faults = faults_of(content);
    assert_eq!(faults.len(), 1, "{}", faults.iter().map(|fault| format!("{fault}\n")).collect::<String>());
    faults.into_iter().next().unwrap()
}

const STEEL: &str = "kind: steel
basis: data sheet of the supplier, 2026-03
lead-time: 0 weeks
entries:
  - { designation: mine, kind: case-hardened, surface-hardness: 60 HRC, contact-limit: 1550 MPa, bending-limit: 480 MPa }
";

#[test]
fn an_unknown_key_is_a_fault_with_the_nearest_spelling() {
    let fault =
        the_fault_of(&STEEL.replace("surface-hardness: 60 HRC", "surface-hardness: 60 HRC, contact-limits: 3 MPa"));
    assert_eq!((fault.file.as_str(), fault.line, fault.path.as_str()), ("mine.yaml", 5, "entries[0].contact-limits"));
    assert!(fault.message.contains("unknown key `contact-limits`"), "{fault}");
    assert_eq!(fault.help.as_deref(), Some("did you mean `contact-limit`?"));
}

#[test]
fn a_wrong_dimension_is_a_fault_that_names_the_right_units() {
    let fault = the_fault_of(&STEEL.replace("1550 MPa", "1550 mm"));
    assert_eq!((fault.line, fault.path.as_str()), (5, "entries[0].contact-limit"));
    assert!(fault.message.contains("a stress or pressure is needed here, in MPa"), "{fault}");
}

#[test]
fn a_bare_number_is_a_fault() {
    assert!(the_fault_of(&STEEL.replace("1550 MPa", "1550")).message.contains("has no unit"));
}

#[test]
fn values_that_cannot_be_are_faults() {
    for (wrong, words) in [("0 MPa", "greater than zero"), ("-5 MPa", "greater than zero"), (".nan", "finite")] {
        let fault = the_fault_of(&STEEL.replace("1550 MPa", wrong));
        assert!(fault.message.contains(words), "{fault}");
        assert_eq!(fault.path, "entries[0].contact-limit");
    }
    let fault = the_fault_of(&STEEL.replace("0 weeks", "-1 weeks"));
    assert!(fault.message.contains("must not be negative"), "{fault}");
    let fault = the_fault_of(&STEEL.replace("kind: case-hardened", "kind: case-hardend"));
    assert_eq!(fault.help.as_deref(), Some("did you mean `case-hardened`?"));
    let fault = the_fault_of(&STEEL.replace("designation: mine", "designation: my steel"));
    assert!(fault.message.contains("is not a designation"), "{fault}");
}

#[test]
fn missing_keys_are_told_all_at_once() {
    let content = "kind: steel\nbasis: generic\nentries:\n  - { designation: mine, kind: soft }\n";
    let faults = faults_of(content);
    assert_eq!(faults.len(), 1, "{faults:?}");
    let told = format!("{}\n{}", faults[0].message, faults[0].help.clone().unwrap_or_default());
    for key in ["surface-hardness", "`contact-limit: … MPa`", "`bending-limit: … MPa`", "`lead-time: … weeks`"] {
        assert!(told.contains(key), "{key}: {told}");
    }
}

#[test]
fn an_unknown_kind_or_a_file_without_provenance_is_a_fault() {
    let fault = the_fault_of(&STEEL.replace("kind: steel", "kind: steal"));
    assert_eq!(fault.help.as_deref(), Some("did you mean `steel`?"));
    let fault = the_fault_of(&STEEL.replace("basis: data sheet of the supplier, 2026-03\n", ""));
    assert!(fault.message.contains("`basis` is missing"), "{fault}");
}

#[test]
fn a_designation_is_there_once_in_a_layer_and_for_one_kind() {
    let twice = vec![built_in(), vec![text("a.yaml", STEEL), text("b.yaml", STEEL)]];
    let faults = load_layers(twice).unwrap_err();
    let fault = faults.iter().next().unwrap();
    assert_eq!((faults.len(), fault.file.as_str(), fault.line), (1, "b.yaml", 5));
    assert!(fault.message.contains("given twice, first in a.yaml"), "{fault}");
    let fault = the_fault_of(&STEEL.replace("designation: mine", "designation: fixed-free"));
    assert!(fault.message.contains("another kind, `end-arrangement`"), "{fault}");
}

#[test]
fn a_rack_grade_must_name_steels_that_are_there() {
    let grade = "kind: rack-grade
basis: data sheet of the supplier
lead-time: 4 weeks
entries:
  - { designation: mine, quality: 6, finish: ground, steel: case-hardend, pinion-steel: case-hardened,
      pitch-error-per-metre: 30 µm, joint-step: 15 µm, height-waviness: 30 µm, segment-length: 1 m, speed-limit-helical: 5 m/s,
      speed-limit-straight: 3 m/s, price-factor: 1, face-load-factor: 1.15, misalignment-share: 0.5, film-factor: 0.92,
      root-roughness: 10 µm }
";
    let fault = the_fault_of(grade);
    assert_eq!((fault.line, fault.path.as_str()), (5, "entries[0].steel"));
    assert_eq!(fault.help.as_deref(), Some("did you mean `case-hardened`?"));
}

#[test]
fn faults_of_several_files_are_told_together() {
    let bad = [text("a.yaml", "kind: steel\n\t- x"), text("b.yaml", &STEEL.replace("480 MPa", "480 kg"))];
    let faults = load_layers(vec![built_in(), bad.to_vec()]).unwrap_err();
    let files: Vec<&str> = faults.iter().map(|fault| fault.file.as_str()).collect();
    assert_eq!(files, ["a.yaml", "b.yaml"]);
}

#[test]
fn an_empty_catalogue_is_at_fault_for_every_kind() {
    let faults = load_texts(vec![]).unwrap_err();
    assert_eq!(faults.len(), KINDS.len());
    let faults = load_texts(vec![text("mine.yaml", STEEL)]).unwrap_err();
    assert_eq!(faults.len(), KINDS.len() - 1);
    assert!(faults.iter().any(|fault| fault.message == "there is no `rack` in the catalogue"));
}

#[test]
fn the_order_of_files_changes_nothing() {
    let forward = load_texts(built_in()).unwrap();
    let mut files = built_in();
    files.reverse();
    let backward = load_texts(files).unwrap();
    assert_eq!(forward, backward);
    assert!(forward.gearboxes.is_sorted_by(|a, b| a.designation < b.designation));
    assert!(forward.ball_screws.is_sorted_by(|a, b| a.designation < b.designation));
}

#[test]
fn a_later_layer_adds_to_replaces_or_clears_a_kind() {
    let with = |content: &str| load_layers(vec![built_in(), vec![text("mine.yaml", content)]]).unwrap();
    let added = with(STEEL);
    assert_eq!(added.steels.len(), 5);
    let mine = added.steel("mine").unwrap();
    assert!(!mine.generic && added.steel("case-hardened").unwrap().generic);
    assert_eq!(added.files.len(), built_in().len() + 1);

    let replaced = with(&STEEL.replace("designation: mine", "designation: case-hardened"));
    assert_eq!(replaced.steels.len(), 4);
    assert!((replaced.steel("case-hardened").unwrap().contact_limit.si() - 1550e6).abs() < 1.0);

    let motors = "kind: servo-motor
basis: data sheet of the supplier
replaces-kind: true
lead-time: 2 weeks
entries:
  - { designation: mine, size: mine, rated-voltage: 400 V, voltage-limit: 480 V, field-weakening: false,
      winding-temperature: 145 °C, winding-time: 50 s, frame-time: 19 min, radial-limit: 700 N,
      bus-energy: 55 J, resistor-energy: 600 J, resistor-power: 50 W, rated-power: 1 kW, rated-torque: 3.18 N·m, standstill-torque: 3.7 N·m,
      rated-speed: 3000 1/min, peak-torque: 11 N·m, knee-speed: 3000 1/min, speed-limit: 5500 1/min,
      inertia: 1.9 kg·cm², mass: 3.2 kg, price: 460, drive-price: 660, encoder-counts: 1048576 }
";
    let only = with(motors);
    assert_eq!(only.servo_motors.len(), 1);
    assert!(only.servo_motors[0].brake_torque.is_none());
    // a name that the dropped parts had is free again, for any kind
    let freed = with(&motors.replace("designation: mine", "designation: servo-1.0kw"));
    assert_eq!(freed.servo_motors.len(), 1);
}

#[test]
fn a_missing_price_is_not_known_and_never_zero() {
    let bearing = "kind: screw-bearing
basis: data sheet of the supplier
lead-time: 2 weeks
entries:
  - { designation: mine, bore: 30 mm, set: pair, rating: 36 kN, static-rating: 76 kN, preload: 3.3 kN,
      stiffness: 900 N/µm, tilt-stiffness: 180 kN·m/rad, speed-limit: 3700 1/min, drag: 0.4 N·m, mass: 0.6 kg }
";
    let catalog = load_layers(vec![built_in(), vec![text("mine.yaml", bearing)]]).unwrap();
    let mine = catalog.screw_bearings.iter().find(|part| part.designation == "mine").unwrap();
    assert!(mine.price.si().is_nan());
    assert!(show(&catalog, "mine").unwrap().contains("not stated"));
    let remarks = check(&catalog);
    assert_eq!(remarks.len(), 1, "{remarks:?}");
    assert_eq!((remarks[0].kind, remarks[0].designation.as_str()), ("screw-bearing", "mine"));
    assert!(remarks[0].message.contains("price is missing"));
    let zero = bearing.replace("mass: 0.6 kg", "mass: 0.6 kg, price: 0");
    assert!(the_fault_of(&zero).message.contains("greater than zero"));
}

#[test]
fn implausible_rows_are_remarked() {
    let spoil = |file: &str, from: &str, to: &str| {
        let mut files = built_in();
        let found = files.iter_mut().find(|(name, content)| name.contains(file) && content.contains(from)).unwrap();
        found.1 = found.1.replacen(from, to, 1);
        let remarks = check(&load_texts(files).unwrap());
        assert!(!remarks.is_empty(), "{to} in {file} went unseen");
        remarks.into_iter().map(|remark| remark.to_string()).collect::<Vec<_>>().join("\n")
    };
    assert!(spoil("servo-motor", "rated-torque: 9.55 N·m", "rated-torque: 9.0 N·m").contains("rated power"));
    assert!(spoil("servo-motor", "inertia: 14 kg·cm²", "inertia: 1400 kg·cm²").contains("inertia"));
    assert!(spoil("ball-screw", "dynamic-rating: 36.2 kN", "dynamic-rating: 362 kN").contains("dynamic rating"));
    assert!(spoil("ball-screw", "root-diameter: 34.5 mm", "root-diameter: 40 mm").contains("root diameter"));
    assert!(spoil("nut-unit", "inertia: 25 kg·cm²", "inertia: 250 kg·cm²").contains("radius of gyration"));
    assert!(spoil("nut-unit", "stiffness: 560 N/µm", "stiffness: 56 N/µm").contains("stiffness"));
    assert!(spoil("couplings", "kind: direct,", "kind: direct, belt-pitch: 8 mm,").contains("no pulley"));
    assert!(spoil("belts", "ratio: 1.5", "ratio: 1.4").contains("whole number"));
    assert!(spoil("belts", "belt-mass: 0.171 kg/m, ", "").contains("needs its distance"));
    assert!(spoil("couplings", "rated-torque: 12 N·m, ", "").contains("rated torque"));
    assert!(spoil("servo-motor", "winding-time: 30 s", "winding-time: 30 min").contains("winding"));
    assert!(spoil("servo-motor", "brake-energy: 28 J, ", "").contains("belong together"));
    assert!(spoil("rack/", "mass-per-length: 4.1 kg/m", "mass-per-length: 8.2 kg/m").contains("mass over"));
    assert!(spoil("gearbox", "stop-torque: 600 N·m", "stop-torque: 200 N·m").contains("stop torque"));
    assert!(spoil("preload", "share: 0.08", "share: 0.3").contains("preload"));
}

#[test]
fn variants_suffix_set_multiply_and_add() {
    let catalog = load(&[]).unwrap();
    let of = |name: &str| catalog.gearboxes.iter().find(|gearbox| gearbox.designation == name).unwrap();
    let (base, variant) = (of("planetary-80-standard-i5"), of("planetary-80-standard-i100"));
    assert_eq!((base.stages, variant.stages), (1, 2));
    assert_eq!(variant.ratio.si(), 100.0);
    assert!((variant.acceleration_torque.si() - 0.7 * 115.0).abs() < 1e-9);
    assert!((variant.play.si() - 7.0 * std::f64::consts::PI / 10_800.0).abs() < 1e-12);
    assert_eq!(variant.torsional_stiffness, base.torsional_stiffness);
}

#[test]
fn faults_in_variants_have_their_place() {
    let with = |variant: &str| {
        let variants = format!("variants:\n  - {variant}\nentries:");
        the_fault_of(&STEEL.replace("entries:", &variants))
    };
    let fault = with("{ suffix: -a, times: { contact-limits: 2 } }");
    assert_eq!((fault.line, fault.path.as_str()), (5, "variants[0].times.contact-limits"));
    assert!(with("{ suffix: -a, times: { surface-hardness: 2 } }").message.contains("unknown key"));
    assert!(with("{ suffix: -a, times: { contact-limit: 0 } }").message.contains("greater than zero"));
    assert!(with("{ suffix: -a, plus: { contact-limit: 2 kg } }").message.contains("MPa"));
    assert!(with("{ sufix: -a, suffix: -b }").message.contains("unknown key `sufix`"));
    assert!(with("{ set: { contact-limit: 5 MPa } }").message.contains("`suffix` is missing"));
}

#[test]
fn a_folder_is_read_to_the_bottom_and_named_without_its_path() {
    let folder = tempfile::tempdir().unwrap();
    let deep = folder.path().join("shop").join("steel");
    std::fs::create_dir_all(&deep).unwrap();
    std::fs::write(deep.join("mine.yaml"), STEEL).unwrap();
    std::fs::write(deep.join("notes.txt"), "not a catalogue file").unwrap();
    let shop = folder.path().join("shop");
    let catalog = load(std::slice::from_ref(&shop)).unwrap();
    assert!(catalog.steel("mine").is_some());
    assert_eq!(catalog.files.last().unwrap().0, "shop/steel/mine.yaml");

    std::fs::write(deep.join("mine.yaml"), STEEL.replace("480", "-480")).unwrap();
    let faults = load(&[shop]).unwrap_err();
    assert_eq!(faults.iter().next().unwrap().file, "shop/steel/mine.yaml");
    let faults: Faults = load(&[folder.path().join("nowhere")]).unwrap_err();
    let fault = faults.iter().next().unwrap();
    assert!(fault.message.contains("no such file or folder"));
    assert_eq!(fault.file, folder.path().join("nowhere").display().to_string(), "the whole path is told");
    let empty = folder.path().join("empty");
    std::fs::create_dir(&empty).unwrap();
    assert!(load(&[empty]).unwrap_err().to_string().contains("no catalogue file"));
}

#[test]
fn every_part_can_be_shown_and_every_kind_listed() {
    let catalog = load(&[]).unwrap();
    let kinds = list(&catalog, None);
    let mut seen = std::collections::BTreeSet::new();
    for kind in &KINDS {
        assert!(kinds.lines().any(|line| line.starts_with(kind.name)));
        let rows = (kind.rows)(&catalog);
        let listed = list(&catalog, Some(kind.name));
        assert_eq!(listed.lines().count(), rows.len() + 1);
        for row in rows {
            assert!(seen.insert(row.designation.clone()), "{} is there twice", row.designation);
            let shown = show(&catalog, &row.designation).unwrap();
            assert!(shown.contains("generic, invented"), "{shown}");
            for field in kind.fields {
                assert!(shown.lines().any(|line| line.starts_with(&field.key())), "{} of {shown}", field.key());
            }
        }
    }
    assert!(show(&catalog, "nothing-like-it").is_none());
    assert!(Kind::find("gearboxes").is_none());
    assert!(list(&catalog, Some("gearboxes")).contains("unknown kind `gearboxes`"));
    let gearbox = show(&catalog, "planetary-110-reduced-i12").unwrap();
    let line = gearbox.lines().find(|line| line.starts_with("play ")).unwrap();
    assert_eq!(line.split_whitespace().take(3).collect::<Vec<_>>(), ["play", "4", "arcmin"]);
}

#[test]
fn every_unit_that_a_kind_shows_fits_its_dimension() {
    for kind in &KINDS {
        for field in kind.fields {
            match field.dimension {
                Some(axiswright::units::Dimension::Money) => assert_eq!(field.unit, "nu"),
                Some(dimension) => {
                    assert!(dimension.units().any(|unit| unit.name == field.unit), "{} {}", kind.name, field.name);
                }
                None => assert!(["text", "count", "flag"].contains(&field.unit), "{} {}", kind.name, field.name),
            }
        }
    }
}

#[test]
fn the_documentation_has_every_key_with_unit_and_words() {
    let page = include_str!("../docs/catalogue.md");
    let page = page.trim_end();
    let tables = reference();
    assert!(page.ends_with(tables.trim_end()), "the tables of docs/catalogue.md are stale; they should be:\n{tables}");
}
