//! Keys: those of the schemas are those of the loaders and of the guides, no more and no fewer.

use super::loaders::{FULL_BRIEF, RULE, faults, known_keys};
use super::{complaints, data, schema, validator};
use axiswright::brief::{self, guide};
use axiswright::catalog::KINDS;
use serde_json::Value;
use std::collections::BTreeSet;

/// A key that nobody knows and that is near to none.
const UNKNOWN: &str = "qqqqqqqqqqqqqqqqqqqqqqqq: 1";

const AXIS: &str = "/properties/axes/additionalProperties";

/// Groups of the brief: name in the guide, place in the schema, a brief with an unknown key in it.
fn groups() -> Vec<(&'static str, String, String)> {
    let of_machine = ["limits", "prefer", "uncertainty"];
    let of_axis = ["counterbalance", "cable-chain", "contour", "settling", "guide-waviness"];
    let mut groups = vec![
        (guide::MACHINE, String::new(), UNKNOWN.to_string()),
        (guide::AXIS, AXIS.to_string(), format!("axes: {{ x: {{ {UNKNOWN} }} }}")),
        ("waivers", "/properties/waivers/items".to_string(), format!("waivers: [{{ {UNKNOWN} }}]")),
    ];
    for name in of_machine {
        groups.push((name, format!("/properties/{name}"), format!("{name}: {{ {UNKNOWN} }}")));
    }
    for name in of_axis {
        groups.push((
            name,
            format!("{AXIS}/properties/{name}"),
            format!("axes: {{ x: {{ {name}: {{ {UNKNOWN} }} }} }}"),
        ));
    }
    for name in ["duty", "moves"] {
        let probe = format!("axes: {{ x: {{ {name}: [{{ {UNKNOWN} }}] }} }}");
        groups.push((name, format!("{AXIS}/properties/{name}/items"), probe));
    }
    groups
}

/// The keys of a group of a schema, sorted.
fn properties(schema: &Value, place: &str) -> Vec<String> {
    let group = schema.pointer(place).unwrap_or_else(|| panic!("there is no {place}"));
    assert_eq!(group["additionalProperties"], false, "{place}");
    let mut keys: Vec<String> = group["properties"].as_object().expect("properties").keys().cloned().collect();
    keys.sort();
    keys
}

#[test]
fn the_keys_of_a_brief_are_those_of_the_loader_and_of_the_guide() {
    let schema = schema("brief");
    let told = guide::keys();
    let (mut in_schema, groups) = (0, groups());
    for (name, place, probe) in &groups {
        let keys = properties(&schema, place);
        assert_eq!(keys, known_keys("brief", probe), "{name}");
        let mut of_guide: Vec<String> =
            told.iter().filter(|key| key.group == *name).map(|key| key.name.clone()).collect();
        of_guide.sort();
        assert_eq!(keys, of_guide, "{name}");
        in_schema += keys.len();
    }
    // lines of the guide counted without its reader, all tables but that of units
    let page = include_str!("../../docs/brief.md");
    assert_eq!(page.lines().filter(|line| line.starts_with("| `")).count(), in_schema);
    assert_eq!(told.len(), in_schema);
}

#[test]
fn every_key_of_a_brief_is_told_and_held_to_a_shape() {
    let schema = schema("brief");
    for (name, place, _) in groups() {
        let group = schema.pointer(&place).expect("the group");
        for (key, value) in group["properties"].as_object().expect("properties") {
            assert!(value["description"].as_str().is_some_and(|words| words.len() > 10), "{name}.{key}");
            let shaped = ["type", "anyOf"].iter().any(|word| !value[word].is_null());
            assert!(shaped, "{name}.{key} may be anything: {value}");
        }
    }
}

/// The data without what a path of keys and places in lists leads to.
fn without(whole: &Value, path: &[&str]) -> String {
    let mut copy = whole.clone();
    let (last, groups) = path.split_last().expect("a path");
    let pointer: String = groups.iter().map(|step| format!("/{step}")).collect();
    let group = copy.pointer_mut(&pointer).and_then(Value::as_object_mut).unwrap_or_else(|| panic!("no {path:?}"));
    assert!(group.shift_remove(*last).is_some(), "no {path:?}");
    serde_yaml::to_string(&copy).expect("YAML")
}

#[test]
fn a_key_that_the_schema_of_a_brief_requires_is_missed_by_the_loader() {
    let (schema, validator, whole) = (schema("brief"), validator("brief"), data(FULL_BRIEF));
    assert_eq!(complaints(&validator, FULL_BRIEF), Vec::<String>::new());
    assert!(brief::load("probe.yaml", FULL_BRIEF).is_ok(), "{:?}", brief::load("probe.yaml", FULL_BRIEF).err());
    let mut seen = 0;
    for (name, place, _) in groups() {
        let at: &[&str] = match name {
            "" => &[],
            "axes" => &["axes", "x"],
            "counterbalance" => &["axes", "z", "counterbalance"],
            "moves" => &["axes", "z", "moves", "0"],
            "duty" => &["axes", "x", "duty", "0"],
            "waivers" => &["waivers", "0"],
            "limits" => &["limits"],
            "prefer" => &["prefer"],
            "uncertainty" => &["uncertainty"],
            other => &["axes", "x", other],
        };
        let required = schema.pointer(&place).expect("the group")["required"].as_array().expect("a list");
        for key in required.iter().filter_map(Value::as_str) {
            let path: Vec<&str> = at.iter().copied().chain([key]).collect();
            let text = without(&whole, &path);
            assert!(!faults("brief", &text).is_empty(), "{path:?} may be left out");
            assert!(!complaints(&validator, &text).is_empty(), "{path:?}");
            seen += 1;
        }
    }
    assert_eq!(seen, 2 + 5 + 2 + 1 + 3 + 2 + 2 + 1 + 2 + 3, "keys that are required");
}

#[test]
fn a_brief_of_required_keys_alone_is_a_brief() {
    let validator = validator("brief");
    assert_eq!(complaints(&validator, super::loaders::BRIEF), Vec::<String>::new());
    assert!(faults("brief", super::loaders::BRIEF).is_empty());
    let schema = schema("brief");
    let axis = &data(super::loaders::BRIEF)["axes"]["x"];
    let given: BTreeSet<&str> = axis.as_object().expect("a group").keys().map(String::as_str).collect();
    let required = schema.pointer(AXIS).expect("an axis")["required"].as_array().expect("a list");
    assert_eq!(given, required.iter().filter_map(Value::as_str).collect());
}

#[test]
fn a_key_without_a_value_is_as_good_as_left_out_unless_it_is_required() {
    let (schema, validator) = (schema("brief"), validator("brief"));
    let axis = schema.pointer(AXIS).expect("an axis");
    let required: Vec<&str> = axis["required"].as_array().expect("a list").iter().filter_map(Value::as_str).collect();
    for key in axis["properties"].as_object().expect("properties").keys() {
        let text = super::loaders::BRIEF.lines().filter(|line| !line.starts_with(&format!("    {key}:")));
        let text = text.map(|line| format!("{line}\n")).collect::<String>() + &format!("    {key}:\n");
        let fine = !required.contains(&key.as_str());
        assert_eq!(faults("brief", &text).is_empty(), fine, "{key}");
        assert_eq!(complaints(&validator, &text).is_empty(), fine, "{key}");
    }
}

#[test]
fn the_words_of_a_brief_are_those_of_the_loader() {
    let schema = schema("brief");
    let axis = &schema.pointer(AXIS).expect("an axis")["properties"];
    let mut seen = 0;
    for key in ["along", "bed", "cutting-force-direction", "feedback", "mapping"] {
        let text = format!("{}    {key}: qqqq\n", super::loaders::BRIEF);
        assert_eq!(words(&axis[key]), expected(&text), "{key}");
        seen += 1;
    }
    let text = format!("{}    counterbalance: {{ kind: qqqq, share: 1 }}\n", super::loaders::BRIEF);
    assert_eq!(words(&axis["counterbalance"]["properties"]["kind"]), expected(&text));
    assert_eq!(words(&axis["direction"]["anyOf"][0]), ["horizontal", "vertical"]);
    // no other choice of words is made in a brief
    assert_eq!(schema.to_string().matches("\"enum\":[\"").count(), seen + 2 + 2);
}

fn words(shape: &Value) -> Vec<&str> {
    shape["enum"].as_array().expect("words").iter().filter_map(Value::as_str).collect()
}

/// The words that the loader would have taken.
fn expected(text: &str) -> Vec<String> {
    let told = faults("brief", text).into_iter().find_map(|fault| {
        let (_, words) = fault.message.split_once(" is not a choice here; ")?;
        Some(words.trim_end_matches(" was expected").replace(" or ", ", "))
    });
    told.expect("a choice").split(", ").map(String::from).collect()
}

#[test]
fn the_keys_of_every_kind_of_part_are_those_of_the_loader() {
    let schema = schema("catalog");
    assert_eq!(properties(&schema, ""), known_keys("catalog", &format!("kind: steel\n{UNKNOWN}\n")));
    for kind in &KINDS {
        let file = |inner: &str| format!("kind: {}\nbasis: data sheet\nlead-time: 1 weeks\n{inner}\n", kind.name);
        let entry = known_keys("catalog", &file(&format!("entries: [{{ designation: probe, {UNKNOWN} }}]")));
        assert_eq!(properties(&schema, &format!("/definitions/{}", kind.name)), entry, "{}", kind.name);
        let variant = format!("/definitions/{}-variant", kind.name);
        for (place, inner) in [("", UNKNOWN.to_string()), ("/properties/set", format!("set: {{ {UNKNOWN} }}"))] {
            let probe = file(&format!("variants: [{{ suffix: -a, {inner} }}]\nentries: []"));
            assert_eq!(
                properties(&schema, &format!("{variant}{place}")),
                known_keys("catalog", &probe),
                "{}",
                kind.name
            );
        }
        for group in ["times", "plus"] {
            let probe = file(&format!("variants: [{{ suffix: -a, {group}: {{ {UNKNOWN} }} }}]\nentries: []"));
            let known: Vec<String> = known_keys("catalog", &probe).into_iter().filter(|key| !key.is_empty()).collect();
            assert_eq!(properties(&schema, &format!("{variant}/properties/{group}")), known, "{}", kind.name);
        }
    }
}

#[test]
fn a_part_misses_in_the_schema_what_it_misses_in_the_loader() {
    let validator = validator("catalog");
    for kind in &KINDS {
        let text = format!("kind: {}\nbasis: data sheet\nentries: [{{ designation: probe }}]\n", kind.name);
        let missed: BTreeSet<String> = faults("catalog", &text)
            .iter()
            .filter(|fault| fault.message.ends_with("missing"))
            .flat_map(|fault| {
                // the help lists what to add: `lead: … mm`, `basis:` with …
                let help = fault.help.clone().unwrap_or_default();
                let keys = help.split('`').skip(1).step_by(2).filter_map(|piece| piece.split_once(':'));
                keys.map(|(key, _)| key.to_string()).collect::<Vec<_>>()
            })
            .collect();
        let told: BTreeSet<String> = validator
            .iter_errors(&data(&text))
            .filter_map(|error| {
                Some(error.to_string().strip_suffix(" is a required property")?.trim_matches('"').into())
            })
            .collect();
        assert_eq!(told, missed, "{}", kind.name);
    }
}

#[test]
fn the_keys_of_rules_cautions_and_choices_are_those_of_the_loader() {
    let characteristic = "characteristic: travel";
    let rule = schema("rule");
    let rule_with = |from: &str, to: &str| {
        assert!(RULE.contains(from), "{from}");
        RULE.replace(from, to)
    };
    assert_eq!(properties(&rule, ""), known_keys("rule", UNKNOWN));
    for (place, probe) in [
        ("/properties/limit", format!("limit: {{ {characteristic}, {UNKNOWN} }}")),
        ("/definitions/Bound", format!("limit: {{ {characteristic}, at-most: {{ {UNKNOWN} }} }}")),
        ("/properties/when/anyOf/0", format!("when: {{ {UNKNOWN} }}")),
        ("/properties/sources/items", format!("sources: [{{ {UNKNOWN} }}]")),
        (
            "/properties/examples/items",
            rule_with("{ given: { section-accuracy: 40", &format!("{{ {UNKNOWN}, given: {{ section-accuracy: 40")),
        ),
    ] {
        assert_eq!(properties(&rule, place), known_keys("rule", &probe), "{place}");
    }
    let caution = schema("caution");
    let case = "/properties/when/items";
    assert_eq!(properties(&caution, ""), known_keys("caution", UNKNOWN));
    assert_eq!(properties(&caution, case), known_keys("caution", &format!("when: [{{ {UNKNOWN} }}]")));
    let above = format!("when: [{{ above: [{{ {characteristic}, value: 1 m, {UNKNOWN} }}] }}]");
    assert_eq!(properties(&caution, &format!("{case}/properties/above/items")), known_keys("caution", &above));
    let standards = format!("standards: [{{ {UNKNOWN} }}]");
    assert_eq!(properties(&caution, "/properties/standards/items"), known_keys("caution", &standards));
    let choice = schema("choice");
    assert_eq!(properties(&choice, ""), known_keys("choice", UNKNOWN));
    let probe = format!("axes: {{ x: {{ {UNKNOWN}, family: ball-screw }} }}");
    assert_eq!(properties(&choice, "/definitions/Proposal"), known_keys("choice", &probe));
}
