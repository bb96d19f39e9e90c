//! Documents that are wrong are refused by schema and loader alike; what no schema can see is refused by the loader alone.

use super::loaders::{faults, right};
use super::{complaints, validator};
use axiswright::schema::FILE_KINDS;

/// Kind of file, what stands in the right text, and the wrong text in its place.
const WRONG: &[(&str, &str, &str)] = &[
    // unknown keys
    ("brief", "travel: 2 m", "travel: 2 m\n    travell: 3 m"),
    ("brief", "machine: a", "machines: b\nmachine: a"),
    ("catalog", "contact-limit:", "contact-limits: 3 MPa, contact-limit:"),
    ("catalog", "kind: steel", "kind: steel\nserie: a"),
    ("rule", "remedy:", "remedies: none\nremedy:"),
    ("rule", "at-most: { factor", "at-most: { faktor: 2, factor"),
    ("caution", "order: 30", "order: 30\nrank: 3"),
    ("choice", "gearbox:", "gearbocks: a, gearbox:"),
    // keys of another kind or family
    ("catalog", "surface-hardness:", "inertia: 3 kg·m², surface-hardness:"),
    ("choice", "parts: { gearbox:", "parts: { ball-screw: screw-32x20, gearbox:"),
    // missing keys
    ("brief", "    travel: 2 m\n", ""),
    ("brief", "machine: a machine\n", ""),
    ("brief", "machine: a machine", "machine:"),
    ("catalog", "basis: data sheet of the supplier, 2026-03\n", ""),
    ("catalog", "lead-time: 0 weeks\n", ""),
    ("catalog", ", bending-limit: 480 MPa", ""),
    ("rule", "reason: Parts are short.\n", ""),
    ("rule", ", note: usual", ""),
    ("caution", "text: Mind the load.\n", ""),
    ("choice", "    family: helical-rack\n", ""),
    ("choice", "    basis: data sheet of the supplier\n", ""),
    // units
    ("brief", "travel: 2 m", "travel: 2 kg"),
    ("brief", "travel: 2 m", "travel: 2"),
    ("brief", "travel: 2 m", "travel: 2,5 m"),
    ("brief", "travel: 2 m", "travel: -2 m"),
    ("brief", "travel: 2 m", "travel: [2 m]"),
    ("brief", "direction: horizontal", "direction: 30"),
    ("catalog", "1550 MPa", "1550"),
    ("catalog", "1550 MPa", "1550 mm"),
    ("catalog", "0 weeks", "-1 weeks"),
    ("rule", "value: 1 µm", "value: 1 kg"),
    ("rule", "section-accuracy: 40 µm", "section-accuracy: 40 kg"),
    ("rule", "{ factor: 0.9, of: required-section-accuracy }", "{ value: 3 kg }"),
    ("caution", "value: 2 m", "value: 2 kg"),
    ("choice", "400 MPa", "400 m"),
    // words
    ("brief", "direction: horizontal", "direction: horizontl"),
    ("brief", "direction: horizontal", "direction: horizontal\n    bed: wood"),
    ("brief", "direction: horizontal", "direction: horizontal\n    families: [ball-screw, chain]"),
    ("brief", "direction: horizontal", "direction: horizontal\n    families: []"),
    ("catalog", "kind: steel", "kind: steal"),
    ("catalog", "case-hardened", "case-hardend"),
    ("rule", "helical-rack]", "rack]"),
    ("rule", "obligation: shall", "obligation: must"),
    ("rule", "kind: practice", "kind: invented"),
    ("rule", "verdict: fail", "verdict: maybe"),
    ("rule", "characteristic: section-accuracy", "characteristic: sektion-accuracy"),
    ("rule", "{ section-accuracy: 40 µm", "{ section-akkuracy: 40 µm"),
    ("rule", "of: required-section-accuracy", "of: travel-time"),
    ("rule", "of: required-section-accuracy", "of: moved-mass"),
    ("caution", "[designer, fitter]", "[designer, painter]"),
    ("caution", "families: [ball-screw]", "families: [screws]"),
    ("caution", "present: [brake-torque]", "present: [phase-force]"),
    ("choice", "family: helical-rack", "family: rack"),
    // numbers
    ("brief", "machine: a", "hours-per-year: 9000\nmachine: a"),
    ("brief", "machine: a", "years-in-service: 0\nmachine: a"),
    ("brief", "machine: a", "discount-rate: 1\nmachine: a"),
    ("brief", "machine: a", "reliability: 0.5\nmachine: a"),
    ("brief", "machine: a", "limits: { motor-models: 1.5 }\nmachine: a"),
    ("brief", "machine: a", "prefer: { accuracy: -1 }\nmachine: a"),
    ("brief", "machine: a", "prefer: { accuracy: much }\nmachine: a"),
    ("brief", "travel: 2 m", "travel: 2 m\n    drives: 3"),
    ("brief", "travel: 2 m", "travel: 2 m\n    guide-friction: 1.5"),
    ("brief", "travel: 2 m", "travel: 2 m\n    people-below: perhaps"),
    ("rule", "factor: 0.9", "factor: 0"),
    ("caution", "order: 30", "order: -1"),
    // what goes together
    ("brief", "travel: 2 m", "travel: 2 m\n    drives: 2"),
    ("brief", "travel: 2 m", "travel: 2 m\n    side-correction: 0.5"),
    ("brief", "travel: 2 m", "travel: 2 m\n    tool-to-drive: 3 mm"),
    ("brief", "travel: 2 m", "travel: 2 m\n    guide-tilt: 3 arcsec"),
    ("brief", "travel: 2 m", "travel: 2 m\n    duty: [{ share: 1 }]"),
    ("brief", "travel: 2 m", "travel: 2 m\n    duty: [{ share: 1, stand: true, speed: 3 m/min }]"),
    (
        "brief",
        "travel: 2 m",
        "travel: 2 m\n    duty: [{ share: 1, speed: 3 m/min }]\n    moves: [{ distance: 1 m, count-per-hour: 1 }]",
    ),
    ("rule", "of: required-section-accuracy", "of: required-section-accuracy, value: 3 mm"),
    ("rule", "at-most: {", "at-least: { value: 1 µm }, at-most: {"),
    ("rule", "obligation: shall", "obligation: shall\nweighs: 5 %"),
    ("rule", "verdict: fail", "verdict: pass"),
    ("rule", "applies-to: [ball-screw, helical-rack]", "applies-to: []"),
    // texts and places
    ("brief", "machine: a machine", "machine: ' '"),
    ("brief", "machine: a", "waivers: [{ rule: a, reason: b, by: c, until: tomorrow }]\nmachine: a"),
    ("brief", "  x:", "  ' ':"),
    ("catalog", "designation: mine", "designation: my steel"),
    ("catalog", "entries:\n  - ", "entries: "),
    (
        "choice",
        "axes:\n  x:\n    family: helical-rack\n    parts: { gearbox: planetary-60-standard-i7, linear-scale: none }\n",
        "axes: {}\n",
    ),
];

#[test]
fn right_documents_are_taken_by_schema_and_loader() {
    for kind in &FILE_KINDS {
        let text = right(kind.name);
        assert_eq!(complaints(&validator(kind.name), text), Vec::<String>::new(), "{}", kind.name);
        let faults = faults(kind.name, text);
        assert!(faults.is_empty(), "{}: {faults:?}", kind.name);
    }
}

#[test]
fn wrong_documents_are_refused_by_schema_and_loader() {
    let validators: Vec<_> = FILE_KINDS.iter().map(|kind| (kind.name, validator(kind.name))).collect();
    let mut passed = Vec::new();
    for (kind, from, to) in WRONG {
        let text = right(kind).replacen(from, to, 1);
        assert_ne!(text, right(kind), "{kind} has no `{from}`");
        let validator = validators.iter().find(|(name, _)| name == kind).map(|(_, validator)| validator);
        if complaints(validator.expect("a validator"), &text).is_empty() {
            passed.push(format!("schema, {kind}: {to}"));
        }
        if faults(kind, &text).is_empty() {
            passed.push(format!("loader, {kind}: {to}"));
        }
    }
    assert!(passed.is_empty(), "taken for right:\n{}", passed.join("\n"));
}

#[test]
fn what_a_schema_cannot_see_is_left_to_the_loader() {
    for (kind, from, to) in [
        ("brief", "travel: 2 m", "travel: 300 m"),
        ("brief", "travel: 2 m", "travel: 2 m\n    carries: [nobody]"),
        ("brief", "travel: 2 m", "travel: 2 m\n    cutting-speed: 60 m/min"),
        ("brief", "travel: 2 m", "travel: 2 m\n    duty: [{ share: 50 %, speed: 3 m/min }]"),
        ("brief", "machine: a", "waivers: [{ rule: a, reason: b, by: c, until: 2027-02-30 }]\nmachine: a"),
        ("catalog", "designation: mine", "designation: fixed-free"),
        ("rule", "utilisation: 2", "utilisation: 3"),
        ("choice", "planetary-60-standard-i7", "planetary-61-standard-i7"),
    ] {
        let text = right(kind).replacen(from, to, 1);
        assert_eq!(complaints(&validator(kind), &text), Vec::<String>::new(), "{kind}: {to}");
        assert!(!faults(kind, &text).is_empty(), "{kind}: {to}");
    }
}
