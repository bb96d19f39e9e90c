//! What every part of the catalogue has in common: a name, a provenance and a list of fields.
//!
//! Method: `parts!` writes a plain struct with public fields from one declaration and, beside it, the
//! table of its fields (key, unit, what is accepted, words). The loader, `list`, `show` and the check of
//! the documentation all read that table, so a field is named once.
//! Limits: a part is flat; anything nested is a kind of its own.

use super::{Catalog, Lists};
use crate::units::{Dimension, Measure, Time};

/// What values a field accepts beyond being of its dimension.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Accept {
    /// Greater than zero.
    Positive,
    /// Zero or greater.
    NotNegative,
    /// Any finite value.
    Any,
    /// From zero to one.
    Share,
    /// A price: greater than zero, or absent, which means that it is not known.
    Price,
    /// A text that is not empty.
    Words,
    /// One of these words.
    OneOf(&'static [&'static str]),
}

/// One field of a kind of part.
#[derive(Debug, Clone, Copy)]
pub struct Field {
    /// The name of the struct field; the YAML key is the same with hyphens.
    pub name: &'static str,
    /// The unit it is shown in; "text", "count" or "flag" for what is no quantity.
    pub unit: &'static str,
    /// Which values it accepts.
    pub accept: Accept,
    /// Whether it may be left out.
    pub optional: bool,
    /// What it is, in words.
    pub words: &'static str,
}

impl Field {
    /// The key in YAML files: `nominal-diameter`.
    pub fn key(&self) -> String {
        self.name.replace('_', "-")
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
    /// The values of its fields as text, in the order of `FIELDS`; `None` where not known.
    fn shown(&self) -> Vec<Option<String>>;
    /// All parts of this kind.
    fn rows(catalog: &Catalog) -> &[Self];
    /// All parts of this kind, while files are being read.
    fn rows_mut(lists: &mut Lists) -> &mut Vec<Self>;
}

/// A list of parts, or the one part of a kind that has only one.
pub trait Rows<T> {
    /// The parts.
    fn rows(&self) -> &[T];
}

impl<T> Rows<T> for Vec<T> {
    fn rows(&self) -> &[T] {
        self
    }
}

impl Rows<super::PriceBasis> for super::PriceBasis {
    fn rows(&self) -> &[super::PriceBasis] {
        std::slice::from_ref(self)
    }
}

/// A type that a field can have.
pub trait Value: Sized {
    /// Whether the field may be left out whatever it accepts.
    const OPTIONAL: bool = false;
    /// The value as text in the given unit; `None` where it is not known.
    fn shown(&self, unit: &str) -> Option<String>;
}

impl<Q: Measure> Value for Q {
    fn shown(&self, unit: &str) -> Option<String> {
        let si = self.si();
        if !si.is_finite() {
            return None;
        }
        let scale = Q::DIMENSION.units().find(|candidate| candidate.name == unit).map_or(1.0, |found| found.si);
        let number = plain(si / scale);
        let bare = Q::DIMENSION == Dimension::Money || unit == "1";
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
    fn shown(&self, unit: &str) -> Option<String> {
        self.and_then(|value| value.shown(unit))
    }
}

impl Value for String {
    fn shown(&self, _unit: &str) -> Option<String> {
        Some(self.clone())
    }
}

impl Value for u32 {
    fn shown(&self, _unit: &str) -> Option<String> {
        Some(self.to_string())
    }
}

impl Value for bool {
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
            /// Time from order to delivery [weeks].
            pub lead_time: $crate::units::Time,
            $( #[doc = $words] #[doc = concat!("\n\nUnit: ", $unit, ".")] pub $field: $type, )*
        }

        impl $crate::catalog::Part for $name {
            const KIND: &'static str = $kind;
            const WORDS: &'static str = $about;
            const FIELDS: &'static [$crate::catalog::Field] = &[$( $crate::catalog::Field {
                name: stringify!($field),
                unit: $unit,
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
            fn shown(&self) -> Vec<Option<String>> {
                vec![$( $crate::catalog::part::Value::shown(&self.$field, $unit), )*]
            }
            fn rows(catalog: &$crate::catalog::Catalog) -> &[Self] {
                $crate::catalog::part::Rows::rows(&catalog.$list)
            }
            fn rows_mut(lists: &mut $crate::catalog::Lists) -> &mut Vec<Self> {
                &mut lists.$list
            }
        }
    )*};
}
pub(super) use parts;
