//! The schema of a choice: the drives that someone proposes.
//!
//! Method: keys are those of the derived shapes below; the parts hang on the family, by the list of kinds that each family is
//! joined from. Components given in place have the shape of a file of the catalogue.
//! Limits: whether brief and catalogue know the names is judged by the loader.

use super::catalog::CatalogFile;
use super::shapes::{group, prose, shapes, words};
use crate::brief::FAMILIES;
use crate::catalog::Kind;
use crate::choice::kinds_of;
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde_json::{Map, Value, json};
use std::borrow::Cow;
use std::collections::BTreeMap;

/// A choice: the drives that someone proposes for axes of a brief.
#[derive(JsonSchema)]
#[schemars(rename = "choice", deny_unknown_fields)]
#[allow(dead_code, reason = "a shape, of which there are no values")]
pub(super) struct ChoiceFile {
    /// For each axis that is proposed, by its name: the family and the parts; other axes get what suits the machine with them
    #[schemars(extend("minProperties" = 1))]
    axes: BTreeMap<String, Proposal>,
    /// Parts of a supplier's data sheet, given as a file of the catalogue gives them
    components: Option<Vec<CatalogFile>>,
}

/// What is proposed for one axis.
#[derive(JsonSchema)]
#[schemars(deny_unknown_fields, transform = by_family)]
#[allow(dead_code, reason = "a shape, of which there are no values")]
struct Proposal {
    /// The kind of drive
    family: Family,
    /// The parts by their designations; what is left out is chosen
    parts: Option<Parts>,
}

shapes! {
    /// One of the families.
    Family = |_generator| words(FAMILIES.iter().copied());
    /// The parts of any family.
    Parts = |_generator| json_schema!({ "type": "object" });
}

/// The parts that each family is joined from.
fn by_family(schema: &mut Schema) {
    let rules: Vec<Value> = FAMILIES
        .iter()
        .map(|family| {
            let parts = kinds_of(family).iter().map(|kind| {
                let about = Kind::find(kind).map_or("", |kind| kind.words.trim());
                let without = match *kind {
                    "linear-scale" => " `none` measures at the motor.",
                    "error-table" => " `none` enters no corrections.",
                    _ => "",
                };
                let part = super::shapes::described(prose(), format!("{about}{without}"));
                (kind.to_string(), part.to_value())
            });
            let mut parts = group(parts.collect::<Map<String, Value>>(), Vec::new());
            parts.insert("type".into(), json!(["object", "null"]));
            json!({
                "if": { "properties": { "family": { "const": family } }, "required": ["family"] },
                "then": { "properties": { "parts": parts } },
            })
        })
        .collect();
    schema.insert("allOf".into(), rules.into());
}
