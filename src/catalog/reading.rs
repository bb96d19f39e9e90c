//! One entry of a file as it is read, seen through one of the file's variants.
//!
//! Method: a file may list `variants`. Each entry then stands for one part a variant: its designation gets the
//! variant's suffix, values under `set` take the place of the entry's or fill them in, those under `times`
//! multiply it, those under `plus` are added after that. A file without variants reads entries as they are.
//! Limits: one list of variants a file; variants do not nest.

use super::part::Field;
use crate::units::{Measure, Time};
use crate::yaml::{Faults, Node};

/// One way in which the entries of a file come.
#[derive(Debug, Clone)]
pub struct Variant<'a> {
    suffix: String,
    set: Option<Node<'a>>,
    times: Vec<(String, f64)>,
    plus: Option<Node<'a>>,
}

impl<'a> Variant<'a> {
    /// Reads a variant of entries that have these fields.
    pub fn read(node: &Node<'a>, fields: &[Field], faults: &mut Faults) -> Option<Variant<'a>> {
        node.only_keys(&["suffix", "set", "times", "plus"], faults);
        let suffix = node.need_text("suffix", faults);
        let keys: Vec<String> = fields.iter().map(Field::key).collect();
        let mut settable: Vec<&str> = keys.iter().map(String::as_str).collect();
        let numbers: Vec<&str> =
            fields.iter().zip(&settable).filter(|(field, _)| field.dimension.is_some()).map(|(_, key)| *key).collect();
        settable.push("lead-time");
        let set = node.get("set");
        if let Some(set) = &set {
            set.only_keys(&settable, faults);
        }
        let mut times = Vec::new();
        if let Some(group) = node.get("times") {
            group.only_keys(&numbers, faults);
            for (key, value) in group.entries(faults) {
                if let Some(factor) = value.number(faults) {
                    if factor > 0.0 {
                        times.push((key, factor));
                    } else {
                        let help = "1 leaves the value of the entry as it is";
                        let message = format!("the factor of `{key}` must be greater than zero");
                        value.fault(faults, message, Some(help.into()));
                    }
                }
            }
        }
        let plus = node.get("plus");
        if let Some(group) = &plus {
            group.only_keys(&numbers, faults);
            for field in fields {
                if let (Some(value), Some(dimension)) = (group.get(&field.key()), field.dimension) {
                    value.quantity_as(dimension, faults);
                }
            }
        }
        Some(Variant { suffix: suffix?, set, times, plus })
    }
}

/// An entry, seen through a variant if the file has any.
#[derive(Debug, Clone)]
pub struct Reading<'a> {
    /// The entry as the file has it.
    pub entry: Node<'a>,
    /// The variant it is seen through.
    pub variant: Option<Variant<'a>>,
    /// The delivery time that the file states for all its entries.
    pub lead_time: Option<Node<'a>>,
    /// The fields that entries of this kind have.
    pub fields: &'static [Field],
}

impl<'a> Reading<'a> {
    /// The value of a key, if there is one.
    pub fn get(&self, key: &str) -> Option<Node<'a>> {
        let set = self.variant.as_ref().and_then(|variant| variant.set.as_ref()).and_then(|set| set.get(key));
        set.or_else(|| self.entry.get(key))
    }

    /// The value of a key; its absence is a fault.
    pub fn need(&self, key: &str, faults: &mut Faults) -> Option<Node<'a>> {
        let wanted = || self.fields.iter().find(|field| field.has_key(key)).map_or("…".into(), Field::written);
        self.get(key).or_else(|| self.entry.need_as(key, &wanted(), faults))
    }

    /// By how much the value of a key is multiplied.
    pub fn factor(&self, key: &str) -> f64 {
        let times = self.variant.iter().flat_map(|variant| &variant.times);
        times.filter(|(name, _)| name == key).map(|(_, factor)| factor).product()
    }

    /// What is added to the value of a key, in SI units.
    pub fn addend<Q: Measure>(&self, key: &str) -> f64 {
        let node = self.variant.as_ref().and_then(|variant| variant.plus.as_ref()).and_then(|plus| plus.get(key));
        // a value that is no quantity was told when the variant was read
        node.and_then(|node| node.quantity::<Q>(&mut Faults::default())).map_or(0.0, Measure::si)
    }

    /// The designation, with the suffix of the variant.
    pub fn designation(&self, faults: &mut Faults) -> Option<String> {
        let node = self.entry.need_as("designation", "with a name of its own", faults)?;
        let name = node.text(faults)?;
        let suffix = self.variant.as_ref().map_or("", |variant| &variant.suffix);
        let designation = format!("{name}{suffix}");
        let plain = |c: char| c.is_alphanumeric() || "-._/+".contains(c);
        if name.is_empty() || !designation.chars().all(plain) {
            let help = "use letters, digits and - . _ / + only, without blanks";
            node.fault(faults, format!("`{designation}` is not a designation"), Some(help.into()));
            return None;
        }
        Some(designation)
    }

    /// The delivery time of the entry, or of the file.
    pub fn lead_time(&self, faults: &mut Faults) -> Option<Time> {
        let Some(node) = self.get("lead-time").or_else(|| self.lead_time.clone()) else {
            self.entry.need_as("lead-time", "… weeks", faults);
            return None;
        };
        let time: Time = node.quantity(faults)?;
        if time.si() < 0.0 {
            let help = "write 0 weeks for what is in stock";
            node.fault(faults, "a delivery time must not be negative", Some(help.into()));
            return None;
        }
        Some(time)
    }
}
