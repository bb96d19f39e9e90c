//! The schema of a file of the catalogue, made from the fields of the kinds of parts.
//!
//! Method: the head of the file is the same for all; what stands in `entries` and `variants` hangs on `kind`, so that an editor
//! offers the keys of that kind.
//! Limits: entries are seen as they are written, before variants change them. Whether a file with variants leaves nothing
//! out is judged by the loader.

use super::shapes::{described, group, or_nothing, prose, quantity, words};
use crate::catalog::{Accept, Field, KINDS, Kind};
use crate::units::{Dimension, Sign};
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde_json::{Map, Value, json};
use std::borrow::Cow;

/// The signs of a designation: none of ASCII but letters, digits and `-._/+`.
const DESIGNATION: &str = r##"^[^\s!"#$%&'()*,:;<=>?@\[\\\]^`{|}~]+$"##;

/// A file of the catalogue.
pub(super) struct CatalogFile;

impl JsonSchema for CatalogFile {
    fn schema_name() -> Cow<'static, str> {
        "catalog".into()
    }

    fn inline_schema() -> bool {
        true
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        let text = || json_schema!({ "type": ["string", "number"] });
        let says = |schema: Schema, words: &str| described(schema, words.into()).to_value();
        let mut head = Map::new();
        let basis = "where the data come from; parts are generic when it begins with the word `generic`";
        head.insert("kind".into(), says(words(KINDS.iter().map(|kind| kind.name)), "the kind of part"));
        head.insert("basis".into(), says(text(), basis));
        head.insert("series".into(), says(or_nothing(text()), "the standard that sizes follow, if any"));
        let of_file = "time from order to delivery of every entry that does not state its own";
        head.insert("lead-time".into(), says(or_nothing(lead_time(generator)), of_file));
        let replaces = or_nothing(json_schema!({ "type": "boolean" }));
        head.insert("replaces-kind".into(), says(replaces, "`true` drops all earlier parts of this kind"));
        let variants = or_nothing(json_schema!({ "type": "array", "items": { "type": "object" } }));
        head.insert("variants".into(), says(variants, "each entry stands for one part a variant"));
        let entries = json_schema!({ "type": "array", "items": { "type": "object" } });
        head.insert("entries".into(), says(entries, "the parts"));
        let mut rules: Vec<Value> = KINDS.iter().map(|kind| of_kind(kind, generator)).collect();
        rules.push(json!({
            "if": { "anyOf": [with("lead-time"), with("variants")] },
            "else": { "properties": { "entries": { "items": { "required": ["lead-time"] } } } },
        }));
        let mut file = group(head, ["kind", "basis", "entries"].map(String::from).into());
        file.insert("allOf".into(), rules.into());
        described(file, "A file of the catalogue: parts of one kind, with their data and where these come from.".into())
    }
}

/// Holds where a key is there with a value.
fn with(key: &str) -> Value {
    super::shapes::stated(key)
}

fn lead_time(generator: &mut SchemaGenerator) -> Schema {
    quantity(generator, Dimension::Time, Sign::NotNegative)
}

/// What entries and variants of a file of this kind hold.
fn of_kind(kind: &Kind, generator: &mut SchemaGenerator) -> Value {
    let entry = entry(kind, generator);
    let variant = variant(kind, generator);
    let variant_name = format!("{}-variant", kind.name);
    let needed: Vec<String> = kind.fields.iter().filter(|field| !field.optional).map(Field::key).collect();
    generator.definitions_mut().insert(kind.name.into(), entry.to_value());
    generator.definitions_mut().insert(variant_name.clone(), variant.to_value());
    json!({
        "if": { "properties": { "kind": { "const": kind.name } }, "required": ["kind"] },
        "then": {
            "properties": {
                "entries": { "items": { "$ref": format!("#/definitions/{}", kind.name) } },
                "variants": { "items": { "$ref": format!("#/definitions/{variant_name}") } },
            },
            "if": with("variants"),
            "else": { "properties": { "entries": { "items": { "required": needed } } } },
        },
    })
}

fn entry(kind: &Kind, generator: &mut SchemaGenerator) -> Schema {
    let mut properties = Map::new();
    let designation = json_schema!({
        "type": ["string", "number"],
        "pattern": DESIGNATION,
        "patternErrorMessage": "a designation has letters, digits and - . _ / + only",
    });
    let name = "the name of the part; no other part of any kind has it";
    properties.insert("designation".into(), described(designation, name.into()).to_value());
    for field in kind.fields {
        let shape = shape(field, generator);
        let shape = if field.optional { or_nothing(shape) } else { shape };
        properties.insert(field.key(), described(shape, description(field)).to_value());
    }
    let own = or_nothing(lead_time(generator));
    properties.insert("lead-time".into(), described(own, "time from order to delivery".into()).to_value());
    described(group(properties, vec!["designation".into()]), kind.words.trim().into())
}

fn description(field: &Field) -> String {
    let unit = match field.unit {
        "text" | "count" | "flag" | "1" => String::new(),
        "nu" => ", in the currency of the brief".into(),
        unit => format!(", shown in {unit}"),
    };
    format!("{}{unit}; {}", field.words.trim().trim_end_matches('.'), field.accept.words(field.unit))
}

fn shape(field: &Field, generator: &mut SchemaGenerator) -> Schema {
    let Some(dimension) = field.dimension else {
        return match (field.unit, field.accept) {
            ("flag", _) => json_schema!({ "type": "boolean" }),
            ("count", accept) => {
                let least = u32::from(accept != Accept::NotNegative && accept != Accept::Any);
                json_schema!({ "type": "integer", "minimum": least, "maximum": u32::MAX })
            }
            (_, Accept::OneOf(choices)) => words(choices.iter().copied()),
            _ => prose(),
        };
    };
    let sign = if field.accept == Accept::Any { Sign::Either } else { Sign::NotNegative };
    let mut schema = quantity(generator, dimension, sign);
    if matches!(dimension, Dimension::Ratio | Dimension::Money) {
        let bounds: &[(&str, u32)] = match field.accept {
            Accept::Positive | Accept::Price => &[("exclusiveMinimum", 0)],
            Accept::NotNegative => &[("minimum", 0)],
            Accept::Share => &[("exclusiveMinimum", 0), ("maximum", 1)],
            Accept::ShareOrZero => &[("minimum", 0), ("maximum", 1)],
            Accept::Any | Accept::Words | Accept::OneOf(_) => &[],
        };
        for (word, bound) in bounds {
            schema.insert((*word).into(), (*bound).into());
        }
    }
    schema
}

fn variant(kind: &Kind, generator: &mut SchemaGenerator) -> Schema {
    let (mut set, mut times, mut plus) = (Map::new(), Map::new(), Map::new());
    for field in kind.fields {
        let key = field.key();
        if let Some(dimension) = field.dimension {
            times.insert(key.clone(), json!({ "type": "number", "exclusiveMinimum": 0 }));
            plus.insert(key.clone(), or_nothing(quantity(generator, dimension, Sign::Either)).to_value());
        }
        set.insert(key, or_nothing(shape(field, generator)).to_value());
    }
    set.insert("lead-time".into(), or_nothing(lead_time(generator)).to_value());
    let part = |properties: Map<String, Value>, words: &str| {
        described(or_nothing(group(properties, Vec::new())), words.into()).to_value()
    };
    let mut properties = Map::new();
    let suffix = described(json_schema!({ "type": ["string", "number"] }), "what the designation ends with".into());
    properties.insert("suffix".into(), suffix.to_value());
    properties.insert("set".into(), part(set, "values that take the place of the entry's or fill them in"));
    properties.insert("times".into(), part(times, "factors by which values of the entry are multiplied"));
    properties.insert("plus".into(), part(plus, "what is added after that"));
    group(properties, vec!["suffix".into()])
}
