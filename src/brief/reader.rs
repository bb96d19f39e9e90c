//! Reading values of a brief with their bounds and defaults.

use super::defaults::{Preset, unit_named};
use super::doubt::Doubt;
use super::types::{Assumption, Entry};
use crate::source::Source;
use crate::units::{Measure, Unit, print_rounded, significant, unit_in};
use crate::yaml::{Faults, Node};

/// What a quantity must keep to.
#[derive(Clone, Copy)]
pub(super) struct Bounds {
    least: f64,
    least_is_allowed: bool,
    most: f64,
    unit: &'static str,
}

/// Above 0 and at most so many of a unit.
pub(super) const fn above_zero_to(most: f64, unit: &'static str) -> Bounds {
    Bounds { least: 0.0, least_is_allowed: false, most, unit }
}

/// From 0 and at most so many of a unit.
pub(super) const fn zero_to(most: f64, unit: &'static str) -> Bounds {
    Bounds { least: 0.0, least_is_allowed: true, most, unit }
}

/// From so many and at most so many of a unit.
pub(super) const fn from_to(least: f64, most: f64, unit: &'static str) -> Bounds {
    Bounds { least, least_is_allowed: true, most, unit }
}

/// Collects faults, assumptions and doubts while a brief is read.
pub(super) struct Reader<'f> {
    pub faults: &'f mut Faults,
    pub assumptions: Vec<Assumption>,
    pub doubts: Vec<Doubt>,
}

impl<'f> Reader<'f> {
    /// A reader that has read nothing yet.
    pub fn new(faults: &'f mut Faults) -> Reader<'f> {
        Reader { faults, assumptions: Vec::new(), doubts: Vec::new() }
    }

    /// Notes a default.
    pub fn assume(&mut self, key: String, value: impl Into<String>, unit: &str, source: &Source) {
        self.assumptions.push(Assumption { key, value: value.into(), unit: unit.into(), source: source.to_string() });
    }

    /// A quantity within its bounds.
    pub fn bounded<Q: Measure>(&mut self, node: &Node<'_>, bounds: Bounds) -> Option<Q> {
        let quantity: Q = node.quantity(self.faults)?;
        let unit = unit_named::<Q>(bounds.unit)?;
        let (least, most) = (bounds.least * unit.si, bounds.most * unit.si);
        let value = quantity.si();
        let enough = if bounds.least_is_allowed { value >= least } else { value > least };
        // a value typed as the bound in another unit may miss it by its last binary digit
        if enough && value <= most * (1.0 + 1e-12) {
            self.doubt_thousands(node, 1000.0 * value <= most);
            return Some(quantity);
        }
        // what is too much is told in the unit that the brief uses, where the bound is round in it
        let written = (value > most && node.is_text()).then(|| node.text(self.faults)).flatten();
        let round = |unit: &&Unit| print_rounded(most, unit, 6) == print_rounded(most, unit, 3);
        let shown = written.and_then(|text| unit_in(Q::DIMENSION, &text)).filter(round).unwrap_or(unit);
        let told = |si: f64| print_rounded(si, shown, 6);
        let from = if bounds.least_is_allowed { "at least" } else { "above" };
        let message = format!("must be {from} {} and at most {}, but is {}", told(least), told(most), told(value));
        let bare = unit.name == "%" && !node.is_text() && value * unit.si <= most;
        node.fault(self.faults, message, bare.then(|| format!("is the % missing? write `{} %`", node.written())));
        None
    }

    /// A required quantity within its bounds.
    pub fn need<Q: Measure>(&mut self, group: &Node<'_>, key: &str, bounds: Bounds) -> Option<Q> {
        let node = group.need_in(key, bounds.unit, self.faults)?;
        self.bounded(&node, bounds)
    }

    /// An optional quantity within its bounds.
    pub fn get<Q: Measure>(&mut self, group: &Node<'_>, key: &str, bounds: Bounds) -> Option<Q> {
        self.bounded(&group.get(key)?, bounds)
    }

    /// A quantity within its bounds, or its default.
    pub fn or_preset<Q: Measure>(
        &mut self,
        group: &Node<'_>,
        key: &str,
        bounds: Bounds,
        preset: &Preset,
    ) -> Option<Entry<Q>> {
        match group.get(key) {
            Some(node) => self.bounded(&node, bounds).map(|value| Entry { value, stated: true }),
            None => {
                self.assume(key_below(group, key), significant(preset.value, 6), preset.unit, &preset.source);
                Some(Entry { value: preset.quantity(), stated: false })
            }
        }
    }

    /// A plain number above 0 and at most so many, or its default.
    pub fn number_or_preset(&mut self, group: &Node<'_>, key: &str, most: f64, preset: &Preset) -> Option<Entry<f64>> {
        let Some(node) = group.get(key) else {
            self.assume(key_below(group, key), significant(preset.value, 6), preset.unit, &preset.source);
            return Some(Entry { value: preset.value, stated: false });
        };
        let value = node.number(self.faults)?;
        if value > 0.0 && value <= most {
            self.doubt_thousands(&node, 1000.0 * value <= most);
            return Some(Entry { value, stated: true });
        }
        node.fault(self.faults, format!("must be above 0 and at most {most}, but is {value}"), None);
        None
    }

    /// A text that is not blank.
    pub fn words(&mut self, node: &Node<'_>) -> Option<String> {
        let text = node.text(self.faults)?;
        if text.trim().is_empty() {
            let help = format!("write a text behind `{}`", node.key());
            node.fault(self.faults, "this text is empty", Some(help).filter(|_| !node.key().is_empty()));
            return None;
        }
        Some(text.trim().into())
    }

    /// A required text that is not blank.
    pub fn need_words(&mut self, group: &Node<'_>, key: &str) -> Option<String> {
        let node = group.need(key, self.faults)?;
        self.words(&node)
    }

    /// An optional text that is not blank.
    pub fn get_words(&mut self, group: &Node<'_>, key: &str) -> Option<String> {
        self.words(&group.get(key)?)
    }
}

/// The key path of a key of a group.
pub(super) fn key_below(group: &Node<'_>, key: &str) -> String {
    if group.path().is_empty() { key.into() } else { format!("{}.{key}", group.path()) }
}
