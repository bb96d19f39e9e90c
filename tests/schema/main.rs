//! The schemas say what the loaders say, as far as a schema can.

mod files;
mod keys;
mod loaders;
mod quantities;
mod refused;

use axiswright::schema::FILE_KINDS;
use jsonschema::Validator;
use serde_json::Value;

/// The schema of a kind of file.
fn schema(kind: &str) -> Value {
    let kind = FILE_KINDS.iter().find(|known| known.name == kind).expect("a kind of file");
    (kind.schema)().to_value()
}

fn validator(kind: &str) -> Validator {
    jsonschema::draft7::new(&schema(kind)).unwrap_or_else(|error| panic!("{kind}: {error}"))
}

/// A YAML text as the data that a schema sees.
fn data(text: &str) -> Value {
    serde_yaml::from_str(text).unwrap_or_else(|error| panic!("{error}\n{text}"))
}

/// What a schema finds wrong, with the place.
fn complaints(validator: &Validator, text: &str) -> Vec<String> {
    validator.iter_errors(&data(text)).map(|error| format!("{}: {error}", error.instance_path())).collect()
}
