//! The files that went into a decision: name, hash, and where the decision folder holds them.
//!
//! Method: the brief; every catalogue file in the order of its layer; every rule and caution that is in force, one file
//! each. A rule that another of its name took the place of is not there. Limits: the text is hashed as it was read.

use super::InputFile;
use crate::brief::Brief;
use crate::catalog::Catalog;
use crate::rule::Rulebook;
use sha2::{Digest, Sha256};

/// SHA-256 of a text, hexadecimal.
pub fn hash(text: &str) -> String {
    Sha256::digest(text.as_bytes()).iter().map(|byte| format!("{byte:02x}")).collect()
}

/// A file that goes in and that no decision folder holds.
pub fn input_of(role: &str, name: &str, text: &str) -> InputFile {
    InputFile { role: role.into(), name: name.into(), sha256: hash(text), file: None, layer: None }
}

/// Every file that goes in, with its text.
pub fn input_files<'i>(brief: &'i Brief, catalog: &'i Catalog, rulebook: &'i Rulebook) -> Vec<(InputFile, &'i str)> {
    let entry = |role: &str, name: &str, text: &'i str, place: String, layer| {
        let file = Some(format!("inputs/{place}"));
        (InputFile { role: role.into(), name: name.into(), sha256: hash(text), file, layer }, text)
    };
    let place = match brief.name.as_str() {
        // the folders beside it
        "catalog" | "rules" => format!("brief-{}", brief.name),
        name => name.into(),
    };
    let mut files = vec![entry("brief", &brief.name, &brief.text, place, None)];
    let layers = catalog.layers.iter().enumerate().flat_map(|(layer, &count)| std::iter::repeat_n(layer as u32, count));
    for ((name, text), layer) in catalog.files.iter().zip(layers) {
        files.push(entry("catalog", name, text, format!("catalog/{layer}-{name}"), Some(layer)));
    }
    let last = |name: &str| name.rsplit('/').next().unwrap_or_default().to_string();
    for (name, text) in &rulebook.files {
        files.push(entry("rules", name, text, format!("rules/{}", last(name)), None));
    }
    for (name, text) in &rulebook.caution_files {
        files.push(entry("rules", name, text, format!("rules/cautions/{}", last(name)), None));
    }
    files
}
