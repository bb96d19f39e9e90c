//! The shapes of single values that all schemas share: quantities, texts, words, counts.
//!
//! Method: a quantity refers to one definition for its dimension, which holds pattern, examples and the message of editors. The type
//! stands beside the reference, so that a key may be without value where the loader takes that for left out.
//! Limits: bounds are those of plain numbers.

use crate::units::{Dimension, Sign, pattern};
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde_json::{Map, Value, json};
use std::borrow::Cow;

/// A quantity of a dimension.
pub(super) fn quantity(generator: &mut SchemaGenerator, dimension: Dimension, sign: Sign) -> Schema {
    let name = name_of(dimension, sign);
    if !generator.definitions().contains_key(&name) {
        let units: Vec<&str> =
            dimension.units().map(|unit| unit.name).filter(|name| !["", "1"].contains(name)).collect();
        let examples: Vec<String> = units.iter().map(|unit| format!("1 {unit}")).collect();
        let usual = match (is_plain(dimension), units.is_empty()) {
            (true, true) => "a plain number".to_string(),
            (true, false) => format!("a plain number, or a number and one of {}", units.join(", ")),
            (false, _) => format!("a number and one of {}", units.join(", ")),
        };
        let mut definition = Map::new();
        definition.insert("pattern".into(), pattern(dimension, sign).into());
        definition.insert("patternErrorMessage".into(), format!("{} is needed: {usual}", dimension.words()).into());
        if !examples.is_empty() {
            definition.insert("examples".into(), examples.into());
        }
        generator.definitions_mut().insert(name.clone(), definition.into());
    }
    let types = if is_plain(dimension) { json!(["string", "number"]) } else { json!("string") };
    json_schema!({ "type": types, "allOf": [{ "$ref": format!("#/definitions/{name}") }] })
}

/// Whether a bare number is read.
fn is_plain(dimension: Dimension) -> bool {
    matches!(dimension, Dimension::Ratio | Dimension::Money)
}

/// The name of a dimension among the definitions: `moment-of-inertia`.
pub(super) fn name_of(dimension: Dimension, sign: Sign) -> String {
    let mut name = String::new();
    for letter in format!("{dimension:?}").chars() {
        if letter.is_uppercase() && !name.is_empty() {
            name.push('-');
        }
        name.extend(letter.to_lowercase());
    }
    match sign {
        Sign::Either => format!("{name}-with-sign"),
        Sign::NotNegative => name,
    }
}

/// A text that is not blank; a number is taken as it is written.
pub(super) fn prose() -> Schema {
    json_schema!({ "type": ["string", "number"], "pattern": "\\S", "patternErrorMessage": "a text is needed" })
}

/// One of some words.
pub(super) fn words<'a>(words: impl IntoIterator<Item = &'a str>) -> Schema {
    let words: Vec<&str> = words.into_iter().collect();
    json_schema!({ "type": "string", "enum": words })
}

/// The same schema that admits nothing after the key, which loaders take for a key left out.
pub(super) fn or_nothing(mut schema: Schema) -> Schema {
    if let Some(Value::Array(types)) = schema.get_mut("type") {
        types.push("null".into());
    } else if let Some(of) = schema.get("type").cloned() {
        schema.insert("type".into(), json!([of, "null"]));
    } else if let Some(Value::Array(choices)) = schema.get_mut("anyOf") {
        choices.push(json!({ "type": "null" }));
    }
    if let Some(Value::Array(words)) = schema.get_mut("enum") {
        words.push(Value::Null);
    }
    schema
}

/// The same schema with words for whoever hovers over it.
pub(super) fn described(mut schema: Schema, description: String) -> Schema {
    let mut with = Map::new();
    with.insert("description".into(), description.into());
    with.append(schema.ensure_object());
    with.into()
}

/// A group of keys and no others.
pub(super) fn group(properties: Map<String, Value>, required: Vec<String>) -> Schema {
    json_schema!({ "type": "object", "properties": properties, "required": required, "additionalProperties": false })
}

/// Holds where a key is there with a value.
pub(super) fn stated(key: &str) -> Value {
    json!({ "required": [key], "properties": { key: { "not": { "type": "null" } } } })
}

/// No text has what this asks for.
const NEVER: &str = r"[^\s\S]";

/// Holds where none of some keys has a value. Editors tell the message at a text; that is why texts fail a pattern.
pub(super) fn none_of(keys: &[&str], message: &str) -> Value {
    let nothing = json!({
        "pattern": NEVER,
        "patternErrorMessage": message,
        "not": { "type": ["number", "boolean", "array", "object"] },
    });
    let properties: Map<String, Value> = keys.iter().map(|key| (key.to_string(), nothing.clone())).collect();
    json!({ "properties": properties })
}

/// Declares types that stand for a schema, so that derived schemas may name them.
macro_rules! shapes {
    ($($(#[$doc:meta])* $name:ident = |$generator:ident| $schema:expr;)*) => {$(
        $(#[$doc])*
        pub(super) struct $name;

        impl JsonSchema for $name {
            fn schema_name() -> Cow<'static, str> {
                stringify!($name).into()
            }
            fn inline_schema() -> bool {
                true
            }
            fn json_schema($generator: &mut SchemaGenerator) -> Schema {
                $schema
            }
        }
    )*};
}
pub(super) use shapes;

shapes! {
    /// A text that is not blank.
    Prose = |_generator| prose();
    /// A whole number from 0.
    Count = |_generator| json_schema!({ "type": "integer", "minimum": 0, "maximum": u32::MAX });
    /// A number above 0.
    Factor = |_generator| json_schema!({ "type": "number", "exclusiveMinimum": 0 });
}
