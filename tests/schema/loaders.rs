//! The loaders, asked for the faults of a text of each kind.

use axiswright::yaml::{Fault, Faults};
use axiswright::{brief, catalog, choice, rule};
use std::path::Path;

pub const BRIEF: &str = "
machine: a machine
axes:
  x:
    direction: horizontal
    travel: 2 m
    moved-mass: 100 kg
    speed: 30 m/min
    acceleration: 2 m/s²
";

/// A brief in which every group stands.
pub const FULL_BRIEF: &str = "
machine: a machine
uncertainty: { stiffness: 10 % }
limits: { purchase: 20000, motor-models: 2 }
prefer: { accuracy: 1 }
waivers:
  - { rule: screw-whip, axis: x, reason: tried, by: somebody, until: 2027-06-30 }
axes:
  x:
    direction: horizontal
    travel: 2 m
    moved-mass: 100 kg
    drives: 2
    drive-spacing: 1 m
    speed: 30 m/min
    acceleration: 2 m/s²
    cable-chain: { mass-per-metre: 2 kg/m }
    contour: { speed: 3 m/min, radius: 100 mm, error: 20 µm }
    settling: { time: 0.1 s, window: 5 µm }
    guide-base: 1 m
    guide-waviness: { height: 3 µm, length: 100 mm }
    tool-to-drive: 300 mm
    bed: steel
    families: [ball-screw]
    duty:
      - { share: 60 %, speed: 30 m/min }
      - { share: 0.4, stand: true }
  z:
    direction: 60 deg
    travel: 500 mm
    moved-mass: 50 kg
    speed: 20 m/min
    acceleration: 0.3 g
    counterbalance: { kind: gas, share: 80 % }
    moves:
      - { distance: 200 mm, count-per-hour: 60 }
      - { distance: -200 mm, count-per-hour: 60 }
";

pub const CATALOG: &str = "
kind: steel
basis: data sheet of the supplier, 2026-03
lead-time: 0 weeks
entries:
  - { designation: mine, kind: case-hardened, surface-hardness: 60 HRC, contact-limit: 1550 MPa, bending-limit: 480 MPa }
";

pub const RULE: &str = "
title: Any 2 m are accurate
applies-to: [ball-screw, helical-rack]
obligation: shall
limit: { characteristic: section-accuracy, at-most: { factor: 0.9, of: required-section-accuracy } }
when: { above: { characteristic: required-section-accuracy, value: 1 µm } }
reason: Parts are short.
remedy: A finer screw.
sources:
  - { kind: practice, note: usual }
examples:
  - { given: { section-accuracy: 40 µm, required-section-accuracy: 0.05 mm }, utilisation: 0.8888888888888888, verdict: pass }
  - { given: { section-accuracy: 90 µm, required-section-accuracy: 0.05 mm }, utilisation: 2, verdict: fail }
";

pub const CAUTION: &str = "
title: Something hangs
order: 30
for: [designer, fitter]
when:
  - { families: [ball-screw], environment: [dust], present: [brake-torque], above: [{ characteristic: travel, value: 2 m }] }
text: Mind the load.
standards:
  - { number: ISO 14118, about: unexpected start-up }
";

pub const CHOICE: &str = "
axes:
  x:
    family: helical-rack
    parts: { gearbox: planetary-60-standard-i7, linear-scale: none }
components:
  - kind: steel
    basis: data sheet of the supplier
    lead-time: 1 weeks
    entries:
      - { designation: mine, kind: soft, surface-hardness: 200 HB, contact-limit: 400 MPa, bending-limit: 200 MPa }
";

/// A text of each kind that is right.
pub fn right(kind: &str) -> &'static str {
    match kind {
        "brief" => BRIEF,
        "catalog" => CATALOG,
        "rule" => RULE,
        "caution" => CAUTION,
        "choice" => CHOICE,
        _ => panic!("{kind} is no kind of file"),
    }
}

/// What the loader of this kind finds wrong with a text.
pub fn faults(kind: &str, text: &str) -> Vec<Fault> {
    let found: Result<(), Faults> = match kind {
        "brief" => brief::load("probe.yaml", text).map(drop),
        "catalog" => {
            catalog::load_layers(vec![catalog::built_in(), vec![("probe.yaml".into(), text.into())]]).map(drop)
        }
        "rule" => rule::load_texts(vec![("mine/probe.yaml".into(), text.into())]).map(drop),
        "caution" => rule::load_texts(vec![("mine/cautions/probe.yaml".into(), text.into())]).map(drop),
        "choice" => {
            let folder = tempfile::tempdir().expect("a folder");
            let path = folder.path().join("probe.yaml");
            std::fs::write(&path, text).expect("a file");
            choice::load(Path::new(&path), &brief::load("brief.yaml", BRIEF).expect("a brief"), &[]).map(drop)
        }
        _ => panic!("{kind} is no kind of file"),
    };
    found.err().map(|faults| faults.into_iter().collect()).unwrap_or_default()
}

/// The keys that the loader knows beside a key that nobody knows, as it tells them itself.
pub fn known_keys(kind: &str, text: &str) -> Vec<String> {
    let faults = faults(kind, text);
    let told = faults.iter().filter_map(|fault| fault.help.as_deref()?.strip_prefix("known here: "));
    let mut keys: Vec<String> = told.flat_map(|list| list.split(", ")).map(String::from).collect();
    keys.sort();
    keys
}
