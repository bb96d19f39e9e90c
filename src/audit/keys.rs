//! How the entries of the record's lists are told apart, and how a place is put into words.

use serde_json::Value;
use std::collections::BTreeMap;

/// The fields that tell the entries of a list apart, by the name of the list; entries of other lists are counted.
const KEYS: &[(&str, &[&str])] = &[
    ("axes", &["name"]),
    ("inputs", &["role", "layer", "name"]),
    ("assumptions", &["key"]),
    ("waivers", &["rule", "axis"]),
    ("rules", &["id"]),
    ("own-rules", &["what", "id"]),
    ("differs", &["what"]),
    ("formulas", &["id"]),
    ("characteristics", &["id"]),
    ("caution-texts", &["id"]),
    ("requirement", &["key"]),
    ("families", &["family"]),
    ("excluded-by", &["rule"]),
    ("ruled-out-by", &["rule"]),
    ("components", &["role"]),
    ("worksheet", &["id"]),
    ("findings", &["rule"]),
    ("installation", &["group", "item"]),
    ("upkeep", &["group", "item"]),
    ("lines", &["kind", "item"]),
    ("limits", &["limit", "quantity", "over"]),
    ("tool-point", &["direction"]),
    ("turning-points", &["requirement", "changes", "turns-at"]),
    ("uncertainties", &["quantity"]),
    ("cost-cases", &["key", "value"]),
    ("cost-of-accuracy", &["family"]),
    ("pareto-set", &["family", "parameters"]),
];

/// A value as part of a key: a quantity with its unit, the entries of an object one after another.
fn told(value: &Value) -> String {
    match value {
        Value::String(text) => text.clone(),
        Value::Object(fields) => match (fields.get("value"), fields.get("unit").and_then(Value::as_str)) {
            (Some(value), Some("1")) => told(value),
            (Some(value), Some(unit)) => format!("{} {unit}", told(value)),
            _ => fields.values().map(told).collect::<Vec<_>>().join(", "),
        },
        other => other.to_string(),
    }
}

/// A key for each entry of a list; none where they are counted. Of entries that are told apart by nothing the later ones are numbered.
pub fn of_list(list: &str, entries: &[Value]) -> Option<Vec<String>> {
    let (_, fields) = KEYS.iter().find(|(name, _)| *name == list)?;
    let key = |entry: &Value| -> Option<String> {
        let parts: Vec<String> =
            fields.iter().filter_map(|field| entry.get(field).filter(|value| !value.is_null()).map(told)).collect();
        (!parts.is_empty()).then(|| parts.join(" "))
    };
    let keys: Vec<String> = entries.iter().map(key).collect::<Option<_>>()?;
    let mut met: BTreeMap<&String, usize> = BTreeMap::new();
    let numbered = keys.iter().map(|key| {
        let times = met.entry(key).or_default();
        *times += 1;
        if *times == 1 { key.clone() } else { format!("{key} ({times})") }
    });
    Some(numbered.collect())
}

/// One step into a record.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Step {
    /// A field.
    Field(String),
    /// An entry of a list, by its key.
    Key(String),
    /// An entry of a list, counted from 0.
    Place(usize),
}

/// The path as text: `axes[long].chosen.worksheet[screw-speed].value`.
pub fn path(steps: &[Step]) -> String {
    let mut text = String::new();
    for step in steps {
        match step {
            Step::Field(name) if text.is_empty() => text.push_str(name),
            Step::Field(name) => {
                text.push('.');
                text.push_str(name);
            }
            Step::Key(key) => text.push_str(&format!("[{key}]")),
            Step::Place(place) => text.push_str(&format!("[{place}]")),
        }
    }
    text
}

/// The path in words: "axis long, drive chosen, worksheet line screw-speed, value".
pub fn words(steps: &[Step]) -> String {
    let mut parts: Vec<String> = Vec::new();
    let mut list = "";
    for step in steps {
        match step {
            Step::Field(name) => {
                list = name;
                parts.push(field(name));
            }
            Step::Key(key) => {
                parts.pop();
                parts.push(format!("{} {key}", entry(list)));
            }
            Step::Place(place) => {
                parts.pop();
                parts.push(format!("{} {}", entry(list), place + 1));
            }
        }
    }
    parts.join(", ")
}

fn field(name: &str) -> String {
    match name {
        "chosen" => "drive chosen".into(),
        "best" => "best drive".into(),
        "nearest" => "nearest drive".into(),
        other => other.replace('-', " "),
    }
}

fn entry(list: &str) -> String {
    match list {
        "axes" => "axis".into(),
        "families" => "family".into(),
        "worksheet" => "worksheet line".into(),
        "findings" | "ruled-out-by" => "finding of rule".into(),
        "excluded-by" => "excluded by rule".into(),
        "components" => "component".into(),
        "lines" => "cost line".into(),
        "runners-up" => "next-best drive".into(),
        "pareto-set" => "drive of the cost and accuracy set".into(),
        "next-best" => "next machine".into(),
        "requirement" => "requirement".into(),
        other => other.strip_suffix('s').unwrap_or(other).replace('-', " "),
    }
}

#[cfg(test)]
mod tests {
    use super::of_list;
    use serde_json::json;

    #[test]
    fn drives_of_a_set_are_told_apart_by_family_and_sizes_wherever_they_stand() {
        let drive = |teeth: f64, price: f64| {
            let sizes = json!({"module": {"value": 2.0, "unit": "mm"}, "teeth": {"value": teeth, "unit": "1"}});
            json!({"family": "helical-rack", "parameters": sizes, "purchase": price})
        };
        let keys = |teeth: &[f64]| {
            let drives: Vec<_> = teeth.iter().map(|&teeth| drive(teeth, 1.0)).collect();
            of_list("pareto-set", &drives).expect("keys")
        };
        assert_eq!(keys(&[18.0, 20.0]), ["helical-rack 2.0 mm, 18.0", "helical-rack 2.0 mm, 20.0"]);
        assert_eq!(keys(&[16.0, 18.0, 20.0])[1..], keys(&[18.0, 20.0]));
        assert_eq!(keys(&[18.0, 18.0]), ["helical-rack 2.0 mm, 18.0", "helical-rack 2.0 mm, 18.0 (2)"]);
        assert_eq!(of_list("speed", &[drive(18.0, 1.0)]), None);
    }
}
