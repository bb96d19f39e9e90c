//! What every part of the catalogue has in common: a name, a provenance and a list of fields.
//!
//! Method: `parts!` writes a plain struct with public fields from one declaration and, beside it, the
//! table of its fields (key, unit, what is accepted, words). The loader, `list`, `show` and the check of
//! the documentation all read that table, so a field is named once.
//! Limits: a part is flat; anything nested is a kind of its own.

use super::reading::Reading;
use super::{Catalog, Lists};
use crate::units::{Dimension, Measure, Time};
use crate::yaml::{Faults, Node};

/// What values a field accepts beyond being of its dimension.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Accept {
    /// Greater than zero.
    Positive,
    /// Zero or greater.
    NotNegative,
    /// Any finite value.
    Any,
    /// Greater than zero, at most one.
    Share,
    /// From zero to one.
    ShareOrZero,
    /// A price: greater than zero, or absent, which means that it is not known.
    Price,
    /// A text that is not empty.
    Words,
    /// One of these words.
    OneOf(&'static [&'static str]),
}

impl Accept {
    /// What is accepted, in words.
    pub fn words(self, unit: &str) -> String {
        match self {
            Accept::Positive | Accept::Price => "greater than zero".into(),
            Accept::NotNegative => "zero or greater".into(),
            Accept::Any if unit == "flag" => "`true` or `false`".into(),
            Accept::Any => "any value".into(),
            Accept::Share => "greater than 0, at most 1".into(),
            Accept::ShareOrZero => "0 to 1".into(),
            Accept::Words => "text".into(),
            Accept::OneOf(words) => words.iter().map(|word| format!("`{word}`")).collect::<Vec<_>>().join(", "),
        }
    }

    /// Whether a quantity is accepted; if not, that is a fault at the value.
    fn admits(self, value: f64, node: &Node<'_>, faults: &mut Faults) -> bool {
        let (fits, wanted) = match self {
            Accept::Positive | Accept::Price => (value > 0.0, "a value greater than zero"),
            Accept::NotNegative => (value >= 0.0, "zero or a greater value"),
            Accept::Share => (value > 0.0 && value <= 1.0, "a share greater than 0, at most 1"),
            Accept::ShareOrZero => ((0.0..=1.0).contains(&value), "a share from 0 to 1"),
            Accept::Any | Accept::Words | Accept::OneOf(_) => (true, ""),
        };
        if !fits {
            let help = match self {
                Accept::Price => Some("leave it out where the price is not known".into()),
                _ => None,
            };
            let message = format!("`{}` must be {wanted}, but is {}", node.key(), node.written());
            node.fault(faults, message, help);
        }
        fits
    }
}

/// One field of a kind of part.
#[derive(Debug, Clone, Copy)]
pub struct Field {
    /// The name of the struct field; the YAML key is the same with hyphens.
    pub name: &'static str,
    /// The unit it is shown in; "text", "count" or "flag" for what is no quantity.
    pub unit: &'static str,
    /// The dimension of a quantity; `None` of what is no quantity.
    pub dimension: Option<Dimension>,
    /// Which values it accepts.
    pub accept: Accept,
    /// Whether it may be left out.
    pub optional: bool,
    /// What it is, in words.
    pub words: &'static str,
}

impl Field {
    /// Whether this is its key.
    pub(super) fn has_key(&self, key: &str) -> bool {
        self.name.bytes().map(|byte| if byte == b'_' { b'-' } else { byte }).eq(key.bytes())
    }

    /// The key in YAML files: `nominal-diameter`.
    pub fn key(&self) -> String {
        self.name.replace('_', "-")
    }

    /// What is written behind the key, for one who left it out.
    pub fn written(&self) -> String {
        match (self.accept, self.unit) {
            (Accept::OneOf(words), _) => words.join(" | "),
            (_, "text") => "…".into(),
            (_, "count") => "a whole number".into(),
            (_, "flag") => "true or false".into(),
            (_, "1" | "") => "a number".into(),
            _ if self.dimension == Some(Dimension::Money) => "a number in your currency".into(),
            (_, unit) => format!("… {unit}"),
        }
    }
}

/// A kind of part that the catalogue holds.
pub trait Part: Clone + Sized + 'static {
    /// The name of the kind, as files write it.
    const KIND: &'static str;
    /// What the kind is, in words.
    const WORDS: &'static str;
    /// Its fields, in the order they are shown.
    const FIELDS: &'static [Field];
    /// The name of the part.
    fn designation(&self) -> &str;
    /// Whether it is generic, that is: no product that can be ordered.
    fn generic(&self) -> bool;
    /// Time from order to delivery.
    fn lead_time(&self) -> Time;
    /// Reads a part; every fault is told, and any fault means no part.
    fn read(reading: &Reading<'_>, generic: bool, faults: &mut Faults) -> Option<Self>;
    /// The values of its fields as text, in the order of `FIELDS`; `None` where not known.
    fn shown(&self) -> Vec<Option<String>>;
    /// All parts of this kind.
    fn rows(catalog: &Catalog) -> &[Self];
    /// All parts of this kind, while files are being read.
    fn rows_mut(lists: &mut Lists) -> &mut Vec<Self>;
    /// Drops every part of this kind but those with this designation.
    fn keep_only(catalog: &mut Catalog, designation: &str);
}

/// A list of parts, or the one part of a kind that has only one.
pub trait Rows<T> {
    /// The parts.
    fn rows(&self) -> &[T];
    /// Drops what is not wanted; what there is only one of stays.
    fn keep(&mut self, wanted: impl Fn(&T) -> bool);
}

impl<T> Rows<T> for Vec<T> {
    fn rows(&self) -> &[T] {
        self
    }
    fn keep(&mut self, wanted: impl Fn(&T) -> bool) {
        self.retain(wanted);
    }
}

impl Rows<super::PriceBasis> for super::PriceBasis {
    fn rows(&self) -> &[super::PriceBasis] {
        std::slice::from_ref(self)
    }
    fn keep(&mut self, _: impl Fn(&super::PriceBasis) -> bool) {}
}

/// A type that a field can have.
pub trait Value: Sized {
    /// Whether the field may be left out whatever it accepts.
    const OPTIONAL: bool = false;
    /// The dimension of a quantity; `None` of what is no quantity.
    const DIMENSION: Option<Dimension> = None;
    /// Reads the value of a key.
    fn read(reading: &Reading<'_>, key: &str, accept: Accept, faults: &mut Faults) -> Option<Self>;
    /// The value as text in the given unit; `None` where it is not known.
    fn shown(&self, unit: &str) -> Option<String>;
}

impl<Q: Measure> Value for Q {
    const DIMENSION: Option<Dimension> = Some(<Q as Measure>::DIMENSION);
    fn read(reading: &Reading<'_>, key: &str, accept: Accept, faults: &mut Faults) -> Option<Q> {
        if accept == Accept::Price && reading.get(key).is_none() {
            return Some(Q::of_si(f64::NAN));
        }
        let node = reading.need(key, faults)?;
        let written: Q = node.quantity(faults)?;
        let value = written.si() * reading.factor(key) + reading.addend::<Q>(key);
        accept.admits(value, &node, faults).then(|| Q::of_si(value))
    }
    fn shown(&self, unit: &str) -> Option<String> {
        let si = self.si();
        if !si.is_finite() {
            return None;
        }
        let scale =
            <Q as Measure>::DIMENSION.units().find(|candidate| candidate.name == unit).map_or(1.0, |found| found.si);
        let number = plain(si / scale);
        let bare = <Q as Measure>::DIMENSION == Dimension::Money || unit == "1";
        Some(if bare { number } else { format!("{number} {unit}") })
    }
}

/// A number with at most nine significant digits and no exponent.
fn plain(value: f64) -> String {
    let rounded: f64 = format!("{value:.8e}").parse().unwrap_or(value);
    format!("{rounded}")
}

impl<Q: Measure> Value for Option<Q> {
    const OPTIONAL: bool = true;
    const DIMENSION: Option<Dimension> = Some(<Q as Measure>::DIMENSION);
    fn read(reading: &Reading<'_>, key: &str, accept: Accept, faults: &mut Faults) -> Option<Option<Q>> {
        match reading.get(key) {
            Some(_) => Q::read(reading, key, accept, faults).map(Some),
            None => Some(None),
        }
    }
    fn shown(&self, unit: &str) -> Option<String> {
        self.and_then(|value| value.shown(unit))
    }
}

impl Value for String {
    fn read(reading: &Reading<'_>, key: &str, accept: Accept, faults: &mut Faults) -> Option<String> {
        let node = reading.need(key, faults)?;
        if let Accept::OneOf(words) = accept {
            let options: Vec<(&str, &str)> = words.iter().map(|word| (*word, *word)).collect();
            return node.choice(&options, faults).map(String::from);
        }
        let text = node.text(faults)?;
        if text.trim().is_empty() {
            node.fault(faults, format!("`{key}` must not be empty"), Some("write a text".into()));
            return None;
        }
        Some(text)
    }
    fn shown(&self, _unit: &str) -> Option<String> {
        Some(self.clone())
    }
}

impl Value for Option<String> {
    const OPTIONAL: bool = true;
    fn read(reading: &Reading<'_>, key: &str, accept: Accept, faults: &mut Faults) -> Option<Option<String>> {
        match reading.get(key) {
            Some(_) => String::read(reading, key, accept, faults).map(Some),
            None => Some(None),
        }
    }
    fn shown(&self, _unit: &str) -> Option<String> {
        self.clone()
    }
}

impl Value for u32 {
    fn read(reading: &Reading<'_>, key: &str, accept: Accept, faults: &mut Faults) -> Option<u32> {
        let node = reading.need(key, faults)?;
        let count = node.count(faults)?;
        accept.admits(f64::from(count), &node, faults).then_some(count)
    }
    fn shown(&self, _unit: &str) -> Option<String> {
        Some(self.to_string())
    }
}

impl Value for bool {
    fn read(reading: &Reading<'_>, key: &str, _accept: Accept, faults: &mut Faults) -> Option<bool> {
        reading.need(key, faults)?.flag(faults)
    }
    fn shown(&self, _unit: &str) -> Option<String> {
        Some(if *self { "true" } else { "false" }.into())
    }
}

/// Declares kinds of parts: `/// words` `Name, "kind", list { /// words` `field: Type, "unit", accept; … }`.
macro_rules! parts {
    ($(
        #[doc = $about:literal]
        $name:ident, $kind:literal, $list:ident {
            $( #[doc = $words:literal] $field:ident: $type:ty, $unit:literal, $accept:expr; )*
        }
    )*) => {$(
        #[doc = $about]
        #[derive(Debug, Clone, PartialEq)]
        pub struct $name {
            /// The name of the part; no other part of the catalogue has it.
            pub designation: String,
            /// Whether the part is generic: invented, to be replaced by a supplier's data before ordering.
            pub generic: bool,
            /// Time from order to delivery, in weeks.
            pub lead_time: $crate::units::Time,
            $( #[doc = $words] #[doc = concat!("\n\nUnit: ", $unit, ".")] pub $field: $type, )*
        }

        impl $crate::catalog::Part for $name {
            const KIND: &'static str = $kind;
            const WORDS: &'static str = $about;
            const FIELDS: &'static [$crate::catalog::Field] = &[$( $crate::catalog::Field {
                name: stringify!($field),
                unit: $unit,
                dimension: <$type as $crate::catalog::part::Value>::DIMENSION,
                accept: $accept,
                optional: <$type as $crate::catalog::part::Value>::OPTIONAL
                    || matches!($accept, $crate::catalog::Accept::Price),
                words: $words,
            }, )*];
            fn designation(&self) -> &str {
                &self.designation
            }
            fn generic(&self) -> bool {
                self.generic
            }
            fn lead_time(&self) -> $crate::units::Time {
                self.lead_time
            }
            fn read(
                reading: &$crate::catalog::reading::Reading<'_>,
                generic: bool,
                faults: &mut $crate::yaml::Faults,
            ) -> Option<Self> {
                let designation = reading.designation(faults);
                let lead_time = reading.lead_time(faults);
                $(
                    let key = stringify!($field).replace('_', "-");
                    let $field = <$type as $crate::catalog::part::Value>::read(reading, &key, $accept, faults);
                )*
                Some($name { designation: designation?, generic, lead_time: lead_time?, $( $field: $field?, )* })
            }
            fn shown(&self) -> Vec<Option<String>> {
                vec![$( $crate::catalog::part::Value::shown(&self.$field, $unit), )*]
            }
            fn rows(catalog: &$crate::catalog::Catalog) -> &[Self] {
                $crate::catalog::part::Rows::rows(&catalog.$list)
            }
            fn rows_mut(lists: &mut $crate::catalog::Lists) -> &mut Vec<Self> {
                &mut lists.$list
            }
            fn keep_only(catalog: &mut $crate::catalog::Catalog, designation: &str) {
                $crate::catalog::part::Rows::keep(&mut catalog.$list, |part| part.designation == designation);
            }
        }
    )*};
}
pub(super) use parts;
