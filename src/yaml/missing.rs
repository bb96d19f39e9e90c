//! The keys that a group lacks, told as one fault, each with what is to be written behind it.
//!
//! Method: few keys stand in the message itself; many are counted there and listed in the help. Each comes with its unit or words.
//! Limits: a key that is there without a value is a fault of its own.

use super::place::join;
use crate::units::Dimension;

/// More keys than this stand in the help rather than in the message.
const FEW: usize = 4;

/// The keys that are missing in one group.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Missing {
    /// The path of the group.
    group: String,
    /// Each key with what is written behind it.
    keys: Vec<(String, String)>,
}

impl Missing {
    pub fn one(group: &str, key: &str, wanted: &str) -> Missing {
        Missing { group: group.into(), keys: vec![(key.into(), wanted.into())] }
    }

    /// Whether this key of this group is among them.
    pub fn has(&self, group: &str, key: &str) -> bool {
        self.group == group && self.keys.iter().any(|(name, _)| name == key)
    }

    /// Whether both speak of the same group.
    pub fn same_group(&self, other: &Missing) -> bool {
        self.group == other.group
    }

    /// Takes the keys of the other one that are not among these.
    pub fn join(&mut self, other: Missing) {
        for entry in other.keys {
            if !self.keys.iter().any(|(key, _)| *key == entry.0) {
                self.keys.push(entry);
            }
        }
    }

    /// Each key on its own.
    pub fn each(&self) -> impl Iterator<Item = Missing> {
        self.keys.iter().map(|entry| Missing { group: self.group.clone(), keys: vec![entry.clone()] })
    }

    /// The path of the one key, or of the group.
    pub fn path(&self) -> String {
        match self.keys.as_slice() {
            [(key, _)] => join(&self.group, key),
            _ => self.group.clone(),
        }
    }

    pub fn message(&self) -> String {
        let names: Vec<String> = self.keys.iter().map(|(key, _)| format!("`{key}`")).collect();
        match names.as_slice() {
            [key] => format!("the key {key} is missing"),
            [few @ .., last] if names.len() <= FEW => format!("the keys {} and {last} are missing", few.join(", ")),
            _ => format!("{} keys are missing", names.len()),
        }
    }

    pub fn help(&self) -> String {
        let lines: Vec<String> = self.keys.iter().map(|(key, wanted)| line(key, wanted)).collect();
        format!("add {}", lines.join(", "))
    }
}

/// How a key is written; what begins with "with" is described, not written.
pub(super) fn line(key: &str, wanted: &str) -> String {
    if wanted.starts_with("with ") { format!("`{key}:` {wanted}") } else { format!("`{key}: {wanted}`") }
}

/// What is written for a quantity: a number with a unit that fits.
pub(super) fn quantity(dimension: Dimension) -> String {
    in_unit(dimension.units().next().map_or("", |unit| unit.name))
}

/// A number in this unit.
pub(super) fn in_unit(unit: &str) -> String {
    if unit.is_empty() || unit == "1" { "a number".into() } else { format!("… {unit}") }
}

/// Words of which one is to be written.
pub(super) fn one_of<'w>(words: impl IntoIterator<Item = &'w str>) -> String {
    let words: Vec<&str> = words.into_iter().collect();
    match words.split_last() {
        Some((last, rest)) if !rest.is_empty() => format!("{} or {last}", rest.join(", ")),
        Some((last, _)) => (*last).into(),
        None => "…".into(),
    }
}
