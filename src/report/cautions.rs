//! The cautions of a record and the standards that they name.
//!
//! Method: each caution stands once with the axes that need it; the texts are those of the record.
//! Limits: what a caution says is no assessment of the risk.

use super::assumed::Named;
use super::words;
use crate::record::{CautionRecord, DecisionRecord};
use serde::Serialize;

/// A caution as it is told.
#[derive(Serialize)]
pub struct Caution {
    pub id: String,
    pub axes: String,
    pub title: String,
    readers: String,
    pub text: String,
    pub standards: String,
}

/// The caution that holds for all axes.
pub const GENERAL: &str = "general";

/// Every caution once with the axes it holds for and the standards to read; that which holds for all comes first.
pub fn of(record: &DecisionRecord) -> Vec<Caution> {
    let texts = &record.caution_texts;
    let mut ids: Vec<&str> = vec![GENERAL];
    ids.extend(texts.iter().map(|caution| caution.id.as_str()).filter(|id| *id != GENERAL));
    for id in record.axes.iter().flat_map(|axis| axis.cautions.iter()) {
        if !ids.contains(&id.as_str()) {
            ids.push(id);
        }
    }
    let of = |id: &str| {
        let axes: Vec<String> = record
            .axes
            .iter()
            .filter(|axis| axis.cautions.iter().any(|known| known == id))
            .map(|axis| axis.name.clone())
            .collect();
        let found = texts.iter().find(|caution| caution.id == id);
        let axes = match (id, axes.as_slice()) {
            (GENERAL, _) => "Always".to_string(),
            (_, []) => return None,
            (_, [one]) => format!("Axis {one}"),
            _ => format!("Axes {}", words::list(&axes)),
        };
        let told = found.map_or_else(
            || (format!("The record carries the caution {id}, but no text of it."), String::new()),
            |caution| (caution.text.clone(), to_be_read(caution)),
        );
        let readers = found.map_or_else(String::new, |caution| words::list(&caution.readers));
        let title = found.map_or_else(|| words::spaced(id), |caution| caution.title.clone());
        Some(Caution { id: id.into(), axes, title, readers, text: told.0, standards: told.1 })
    };
    ids.into_iter().filter_map(of).collect()
}

/// The standards of a caution in one sentence; what they are about stands once, below.
fn to_be_read(caution: &CautionRecord) -> String {
    if caution.standards.is_empty() {
        return String::new();
    }
    let named: Vec<String> = caution.standards.iter().map(|standard| standard.number.clone()).collect();
    format!("To be read: {}.", words::list(&named))
}

/// Every standard that a caution names, once, with what it is about.
pub fn standards(record: &DecisionRecord) -> Vec<Named> {
    let mut named: Vec<Named> = Vec::new();
    for standard in record.caution_texts.iter().flat_map(|caution| &caution.standards) {
        if !named.iter().any(|known| known.name == standard.number) {
            named.push(Named { name: standard.number.clone(), value: standard.about.clone() });
        }
    }
    named.sort_by(|one, other| one.name.cmp(&other.name));
    named
}
