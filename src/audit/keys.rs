//! How the entries of the record's lists are told apart, and how a place is put into words.

use serde_json::Value;
use std::collections::BTreeSet;

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
];

/// A key for each entry of a list; none where they are counted.
pub fn of_list(list: &str, entries: &[Value]) -> Option<Vec<String>> {
    let (_, fields) = KEYS.iter().find(|(name, _)| *name == list)?;
    let key = |entry: &Value| -> Option<String> {
        let parts: Vec<String> = fields
            .iter()
            .filter_map(|field| match entry.get(field)? {
                Value::String(text) => Some(text.clone()),
                Value::Null => None,
                other => Some(other.to_string()),
            })
            .collect();
        (!parts.is_empty()).then(|| parts.join(" "))
    };
    let keys: Vec<String> = entries.iter().map(key).collect::<Option<_>>()?;
    let different: BTreeSet<&String> = keys.iter().collect();
    (different.len() == keys.len()).then_some(keys)
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
