//! The schema of a brief, made from the tables of its guide.
//!
//! Method: the cell `value` of a key begins with what may be written ("length", "share", "list", a choice of words); what follows
//! the comma bounds plain numbers. Groups and lists are the tables named after their key. What hangs on two keys of a group is
//! stated here.
//! Limits: a cell that is not understood gives a value of any shape; a test holds that there is none.

use super::shapes::{described, group, none_of, or_nothing, prose, quantity, stated, words};
use crate::brief::guide::{AXIS, Key, MACHINE, keys};
use crate::brief::{FAMILIES, MOST_AXES, MOST_LINES};
use crate::units::{Dimension, Sign, parse_as};
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde_json::{Map, Value, json};
use std::borrow::Cow;

/// What the guide calls the quantities.
const QUANTITIES: [(&str, Dimension); 18] = [
    ("length", Dimension::Length),
    ("angle", Dimension::Angle),
    ("share", Dimension::Ratio),
    ("ratio", Dimension::Ratio),
    ("amount", Dimension::Money),
    ("time", Dimension::Time),
    ("mass", Dimension::Mass),
    ("speed", Dimension::Velocity),
    ("acceleration", Dimension::Acceleration),
    ("jerk", Dimension::Jerk),
    ("force", Dimension::Force),
    ("power", Dimension::Power),
    ("frequency", Dimension::Frequency),
    ("temperature difference", Dimension::Temperature),
    ("temperature", Dimension::Celsius),
    ("voltage", Dimension::Voltage),
    ("mass a length", Dimension::LinearMassDensity),
    ("moment over angle", Dimension::TorsionalStiffness),
];
/// A day of the calendar as a brief writes it.
const DAY: &str = r"^\s*[0-9]{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12][0-9]|3[01])\s*$";
/// What the guide says of keys that go with two drives only.
const OF_TWO: &str = "only with `drives: 2`";
/// What the guide says of quantities that may be below zero.
const EITHER: &str = "either sign";

/// A brief.
pub(super) struct BriefFile;

impl JsonSchema for BriefFile {
    fn schema_name() -> Cow<'static, str> {
        "brief".into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        let machine = Guide { keys: keys(), generator }.group(MACHINE);
        described(machine, "A brief: what the axes of a machine must do. Every quantity carries its unit.".into())
    }
}

struct Guide<'g> {
    keys: Vec<Key>,
    generator: &'g mut SchemaGenerator,
}

impl Guide<'_> {
    /// The keys of a group, with what hangs on two of them.
    fn group(&mut self, name: &str) -> Schema {
        let keys: Vec<Key> = self.keys.iter().filter(|key| key.group == name).cloned().collect();
        let mut properties = Map::new();
        for key in &keys {
            let shape = self.shape(key);
            let shape = if key.required() { shape } else { or_nothing(shape) };
            properties.insert(key.name.clone(), described(shape, description(key)).to_value());
        }
        let required = keys.iter().filter(|key| key.required()).map(|key| key.name.clone()).collect();
        let mut schema = group(properties, required);
        let rules = match name {
            AXIS => of_axis(&keys),
            "duty" => vec![json!({
                "if": { "properties": { "stand": { "const": true } }, "required": ["stand"] },
                "then": none_of(&["speed", "stroke"], "an axis that stands has no speed and no stroke"),
                "else": stated("speed"),
            })],
            "counterbalance" => vec![json!({
                "if": { "properties": { "kind": { "const": "weight" } }, "required": ["kind"] },
                "then": none_of(&["ripple"], "a hanging weight has no ripple"),
            })],
            _ => Vec::new(),
        };
        if !rules.is_empty() {
            schema.insert("allOf".into(), rules.into());
        }
        schema
    }

    /// What may follow a key.
    fn shape(&mut self, key: &Key) -> Schema {
        let cell = key.cell("value");
        let cell = cell.strip_suffix(", required").unwrap_or(cell);
        if key.name == "families" {
            let one = std::iter::once("any").chain(FAMILIES.iter().copied());
            let list = json_schema!({ "type": "array", "minItems": 1, "items": words(FAMILIES.iter().copied()) });
            return json_schema!({ "anyOf": [words(one), list] });
        }
        let marked: Vec<&str> = cell.split('`').skip(1).step_by(2).collect();
        if let Some((_, quantity)) = cell.split_once(" or an ").filter(|_| !marked.is_empty()) {
            return json_schema!({ "anyOf": [words(marked), self.plain(quantity)] });
        }
        if marked.contains(&"true") {
            return json_schema!({ "type": "boolean" });
        }
        if cell.starts_with('`') {
            return words(marked);
        }
        match cell {
            "group" if key.name == AXIS => {
                let axis = self.group(AXIS);
                json_schema!({
                    "type": "object",
                    "minProperties": 1,
                    "maxProperties": MOST_AXES,
                    "propertyNames": { "pattern": "\\S" },
                    "additionalProperties": axis,
                })
            }
            "group" => self.group(&key.name),
            "list" => {
                let mut list = json_schema!({ "type": "array", "items": self.group(&key.name) });
                let bounds = match key.name.as_str() {
                    "moves" => Some(MOST_LINES.0),
                    "duty" => Some(MOST_LINES.0 + MOST_LINES.1),
                    _ => None,
                };
                if let Some(most) = bounds {
                    list.insert("minItems".into(), 1.into());
                    list.insert("maxItems".into(), most.into());
                }
                list
            }
            "list of texts" => {
                let one = json_schema!({ "type": "string", "pattern": "\\S" });
                json_schema!({ "anyOf": [one, { "type": "array", "items": prose() }] })
            }
            "list of axis names" => json_schema!({ "type": "array", "items": prose() }),
            "count" => json_schema!({ "type": "integer", "minimum": 1, "maximum": u32::MAX }),
            "1 or 2" => json_schema!({ "type": "integer", "enum": [1, 2] }),
            _ => self.plain(cell),
        }
    }

    /// A quantity, number or text with its bounds.
    fn plain(&mut self, cell: &str) -> Schema {
        let (head, bounds) = cell.split_once(", ").unwrap_or((cell, ""));
        match head {
            "text" | "rule id" | "axis name" => prose(),
            "day" => json_schema!({
                "type": "string",
                "pattern": DAY,
                "patternErrorMessage": "a day is needed, such as 2027-06-30",
            }),
            "number" => bounded(json_schema!({ "type": "number", "exclusiveMinimum": 0 }), bounds),
            "weight" => bounded(json_schema!({ "type": "number", "minimum": 0 }), bounds),
            _ => match QUANTITIES.iter().find(|(name, _)| *name == head) {
                Some((_, dimension @ (Dimension::Ratio | Dimension::Money))) => {
                    let mut schema = quantity(self.generator, *dimension, Sign::NotNegative);
                    schema.insert("minimum".into(), 0.into());
                    bounded(schema, bounds)
                }
                Some((_, dimension)) => {
                    let sign = if bounds == EITHER { Sign::Either } else { Sign::NotNegative };
                    quantity(self.generator, *dimension, sign)
                }
                None => json_schema!({}),
            },
        }
    }
}

/// The bounds of plain numbers: "up to 50 %", "0 to below 100 %", "90 to 99 %".
fn bounded(mut schema: Schema, bounds: &str) -> Schema {
    let (least, most) = match bounds.strip_prefix("up to ") {
        Some(most) => ("", most),
        None => bounds.split_once(" to ").unwrap_or_default(),
    };
    let (most, word) = match most.strip_prefix("below ") {
        Some(most) => (most, "exclusiveMaximum"),
        None => (most, "maximum"),
    };
    let unit = most.trim_start_matches(|letter: char| letter.is_ascii_digit() || letter == '.');
    if let Ok(least) = parse_as(Dimension::Ratio, &format!("{least}{unit}")) {
        schema.insert("minimum".into(), least.into());
    }
    if let Ok(most) = parse_as(Dimension::Ratio, most) {
        schema.insert(word.into(), most.into());
    }
    schema
}

/// What is told of a key: what it means, what may be written, its default.
fn description(key: &Key) -> String {
    let mut told = vec![key.meaning().replace(", see below", "")];
    told.extend(Some(key.cell("value")).filter(|cell| !["", "group", "list"].contains(cell)).map(String::from));
    told.extend(match key.cell("default") {
        "" | "none" | "see below" => None,
        "required" => Some("required".to_string()),
        default => Some(format!("default: {default}")),
    });
    told.join("; ")
}

/// What hangs on two keys of an axis.
fn of_axis(keys: &[Key]) -> Vec<Value> {
    let of_two = keys.iter().filter(|key| key.meaning().contains(OF_TWO)).map(|key| key.name.as_str());
    let of_two: Vec<&str> = of_two.chain(["drive-spacing"]).collect();
    vec![
        json!({
            "if": stated("moves"),
            "then": none_of(&["duty"], "an axis states either `duty` or `moves`, not both"),
        }),
        json!({
            "if": { "properties": { "drives": { "const": 2 } }, "required": ["drives"] },
            "then": stated("drive-spacing"),
            "else": none_of(&of_two, "this has no meaning with one drive; write `drives: 2`"),
        }),
        json!({
            "if": { "anyOf": [stated("guide-tilt"), stated("guide-waviness")] },
            "then": stated("tool-to-drive"),
            "else": none_of(&["tool-to-drive", "tool-to-scale"], "this counts only with `guide-tilt` or `guide-waviness`"),
        }),
        json!({ "if": stated("guide-waviness"), "then": stated("guide-base") }),
    ]
}
