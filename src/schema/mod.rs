//! JSON Schemas of the files that people write: brief, choice, catalogue, rule and caution.
//!
//! Method: each schema is made from what the loaders and the guide already say: the tables of `docs/brief.md`, the fields of the
//! kinds of parts, the list of characteristics, the table of units. Draft 07, because that is what editors understand
//! ([decision 0011](../../docs/decisions/0011-schemas.md)).
//! Limits: a schema sees one value, or a few of a group. Sums, bounds of quantities with units and names that have to be there
//! are judged by the loader alone.

mod brief;
mod catalog;
mod choice;
mod rule;
mod shapes;

use schemars::generate::SchemaSettings;
use schemars::{JsonSchema, Schema};

/// One kind of file with its schema.
pub struct FileKind {
    /// Its name: `brief`.
    pub name: &'static str,
    /// What the file is, in words.
    pub words: &'static str,
    /// Makes the schema.
    pub schema: fn() -> Schema,
}

/// Every kind of file.
pub static FILE_KINDS: [FileKind; 5] = [
    FileKind { name: "brief", words: "what the axes of a machine must do", schema: root::<brief::BriefFile> },
    FileKind { name: "choice", words: "drives that someone proposes", schema: root::<choice::ChoiceFile> },
    FileKind { name: "catalog", words: "parts of one kind to choose from", schema: root::<catalog::CatalogFile> },
    FileKind { name: "rule", words: "a limit with its reason", schema: root::<rule::RuleFile> },
    FileKind { name: "caution", words: "what somebody is warned of", schema: root::<rule::CautionFile> },
];

fn root<T: JsonSchema>() -> Schema {
    SchemaSettings::draft07().into_generator().into_root_schema_for::<T>()
}
