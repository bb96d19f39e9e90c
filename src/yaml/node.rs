//! A value of a file with its key path: what loaders read quantities, words, lists and groups from.
//!
//! Method: every reader takes the list of faults, adds to it and gives `None`, so that the caller can go on and
//! find the next fault. An absent key and a key without a value are the same.

use super::document::{Document, Tree, item_path, key_path};
use super::fault::{Fault, Faults};
use super::missing::{self, Missing};
use super::place;
use super::spelling::{help_for_unknown, meant, nearest};
use crate::units::{Dimension, Measure, UnitError, parse_as};
use std::ops::Range;

/// A value with its key path and its document.
#[derive(Debug, Clone)]
pub struct Node<'a> {
    document: &'a Document,
    path: String,
    key: String,
    value: &'a Tree,
}

impl<'a> Node<'a> {
    pub(super) fn new(document: &'a Document, path: String, key: String, value: &'a Tree) -> Node<'a> {
        Node { document, path, key, value }
    }

    /// The key path, such as `axes.long.travel`; empty at the root.
    pub fn path(&self) -> &str {
        &self.path
    }

    /// The last key of the path; empty at the root and for items of a list.
    pub fn key(&self) -> &str {
        &self.key
    }

    /// The document this value stands in.
    pub fn document(&self) -> &'a Document {
        self.document
    }

    /// Whether this is a group of keys.
    pub fn is_mapping(&self) -> bool {
        matches!(self.value, Tree::Map(_))
    }

    /// Whether this is a list.
    pub fn is_list(&self) -> bool {
        matches!(self.value, Tree::List(_))
    }

    /// Whether this is text.
    pub fn is_text(&self) -> bool {
        matches!(self.value, Tree::Text(_))
    }

    /// Faults every key that is not known, with the nearest known one.
    pub fn only_keys(&self, known: &[&str], faults: &mut Faults) {
        self.only_keys_here(known, |_| None, faults);
    }

    /// The same; of some keys there is other help than a spelling: where they belong, or what is written in their stead.
    pub fn only_keys_here(&self, known: &[&str], other: impl Fn(&str) -> Option<String>, faults: &mut Faults) {
        for (key, _) in self.map(faults) {
            if known.contains(&key.as_str()) {
                continue;
            }
            faults.push_with(|| {
                let help = other(key).unwrap_or_else(|| help_for_unknown(key, known));
                let path = key_path(&self.path, key);
                let place = self.document.index().exactly(&path).and_then(|place| place.key.clone());
                let place = place.or_else(|| self.place());
                let message = format!("unknown key `{key}`");
                self.document.fault(&path, place, "not a known key", message, Some(help))
            });
        }
    }

    /// The value of a key; `None` if the key is absent or has no value.
    pub fn get(&self, key: &str) -> Option<Node<'a>> {
        let Tree::Map(entries) = self.value else { return None };
        let (_, value) = entries.iter().find(|(name, _)| name == key)?;
        if *value == Tree::Nothing {
            return None;
        }
        Some(Node::new(self.document, key_path(&self.path, key), key.into(), value))
    }

    /// The value of a key that must be there; its absence is a fault at this group, unless a key was told that is spelt nearly so.
    pub fn need(&self, key: &str, faults: &mut Faults) -> Option<Node<'a>> {
        self.need_as(key, "…", faults)
    }

    /// The same; a fault says what is to be written behind the key.
    pub fn need_as(&self, key: &str, wanted: &str, faults: &mut Faults) -> Option<Node<'a>> {
        let entries = self.map(faults);
        if let Some(node) = self.get(key) {
            return Some(node);
        }
        if !self.is_mapping() {
            return None;
        }
        if faults.tell_missing(self.document, &self.path, key) {
            return None;
        }
        if entries.iter().any(|(name, _)| name == key) {
            let path = key_path(&self.path, key);
            let place = self.document.index().exactly(&path).and_then(|place| place.key.clone());
            let help = Some(format!("write {}", missing::line(key, wanted)));
            faults.push(self.document.fault(&path, place, "nothing follows", "this key has no value".into(), help));
        } else if !entries.iter().any(|(name, _)| faults.tell(self.document, &key_path(&self.path, name), &meant(key)))
        {
            let label = if self.path.is_empty() { "in this file" } else { "in this group" };
            faults.push_with(|| {
                let excerpt = self.place().map(|range| place::excerpt(self.document.text(), range));
                let missing = Missing::one(&self.path, key, wanted);
                Fault::of_missing(self.document.name(), excerpt, label, missing)
            });
        }
        None
    }

    /// The same for a number in a unit.
    pub fn need_in(&self, key: &str, unit: &str, faults: &mut Faults) -> Option<Node<'a>> {
        self.need_as(key, &missing::in_unit(unit), faults)
    }

    /// The same for one of some words.
    pub fn need_one_of(&self, key: &str, words: &[&str], faults: &mut Faults) -> Option<Node<'a>> {
        self.need_as(key, &missing::one_of(words.iter().copied()), faults)
    }

    /// The value as text; a number is taken as it is written.
    pub fn text(&self, faults: &mut Faults) -> Option<String> {
        match self.value {
            Tree::Text(text) => Some(text.clone()),
            Tree::Number(_) => Some(self.written()),
            _ => self.expected("text", faults),
        }
    }

    /// The value as a quantity; a bare number is a fault unless a plain number or money is wanted.
    pub fn quantity<Q: Measure>(&self, faults: &mut Faults) -> Option<Q> {
        self.quantity_as(Q::DIMENSION, faults).map(Q::of_si)
    }

    /// The value in SI units as a quantity of a dimension that is known only at run time.
    pub fn quantity_as(&self, dimension: Dimension, faults: &mut Faults) -> Option<f64> {
        let result = match self.value {
            Tree::Text(text) => parse_as(dimension, text),
            Tree::Number(number) if !number.is_finite() => Err(UnitError::NotFinite { text: self.written() }),
            Tree::Number(number) if matches!(dimension, Dimension::Ratio | Dimension::Money) => Ok(*number),
            Tree::Number(_) => Err(UnitError::NoUnit { text: self.written(), wanted: dimension }),
            _ => return self.expected(dimension.words(), faults),
        };
        match result {
            Ok(value) => Some(value),
            Err(error) => {
                self.fault(faults, error.to_string(), help_for(&error));
                None
            }
        }
    }

    /// The value as a plain finite number.
    pub fn number(&self, faults: &mut Faults) -> Option<f64> {
        match self.value {
            Tree::Number(number) if number.is_finite() => Some(*number),
            Tree::Number(_) => {
                let message = format!("`{}` is not a finite number", self.written());
                self.fault(faults, message, Some(FINITE.into()));
                None
            }
            Tree::Text(text) if text.contains(',') && text.replace(',', ".").trim().parse::<f64>().is_ok() => {
                self.fault(faults, UnitError::DecimalComma { text: text.clone() }.to_string(), None);
                None
            }
            Tree::Text(text) if text.parse::<f64>().is_ok_and(|number| !number.is_finite()) => {
                self.fault(faults, format!("`{text}` is not a finite number"), Some(FINITE.into()));
                None
            }
            _ => self.expected("a number", faults),
        }
    }

    /// The value as a whole number from 0.
    pub fn count(&self, faults: &mut Faults) -> Option<u32> {
        match self.value {
            Tree::Number(number) if number.fract() == 0.0 && (0.0..=f64::from(u32::MAX)).contains(number) => {
                Some(*number as u32)
            }
            Tree::Number(_) => {
                self.fault(
                    faults,
                    format!("a whole number from 0 was expected, but this is `{}`", self.written()),
                    None,
                );
                None
            }
            _ => self.expected("a whole number", faults),
        }
    }

    /// The value as `true` or `false`.
    pub fn flag(&self, faults: &mut Faults) -> Option<bool> {
        match self.value {
            Tree::Flag(flag) => Some(*flag),
            _ => self.expected(FLAG, faults),
        }
    }

    /// The value as one of some words.
    pub fn choice<T: Copy>(&self, options: &[(&str, T)], faults: &mut Faults) -> Option<T> {
        let word = self.text(faults)?;
        if let Some((_, value)) = options.iter().find(|(name, _)| *name == word) {
            return Some(*value);
        }
        let names: Vec<&str> = options.iter().map(|(name, _)| *name).collect();
        let near = nearest(&word, names.iter().copied()).map(meant);
        let many = names.len() > MANY;
        let list = missing::one_of(names);
        let (message, help) = match near {
            // a long list would hide the one word that is meant
            near if many => (format!("`{word}` is not a choice here"), near.or(Some(format!("write {list}")))),
            near => (format!("`{word}` is not a choice here; {list} was expected"), near),
        };
        self.fault(faults, message, help);
        None
    }

    /// The items of a list; no items and a fault when this is no list.
    pub fn list(&self, faults: &mut Faults) -> Vec<Node<'a>> {
        let Tree::List(items) = self.value else {
            self.expected::<()>("a list", faults);
            return Vec::new();
        };
        let item = |(index, value)| Node::new(self.document, item_path(&self.path, index), String::new(), value);
        items.iter().enumerate().map(item).collect()
    }

    /// The keys and values of a group in the order of the file; none and a fault when this is no group.
    pub fn entries(&self, faults: &mut Faults) -> Vec<(String, Node<'a>)> {
        let node = |(key, value): &'a (String, Tree)| {
            (key.clone(), Node::new(self.document, key_path(&self.path, key), key.clone(), value))
        };
        self.map(faults).iter().map(node).collect()
    }

    /// The file and the line of this value, as a message names another place.
    pub fn told(&self) -> String {
        let fault = self.document.fault(&self.path, self.place(), "", String::new(), None);
        format!("{}, line {}", fault.file, fault.line)
    }

    /// Adds a fault of meaning at this value.
    pub fn fault(&self, faults: &mut Faults, message: impl Into<String>, help: Option<String>) {
        faults.push_with(|| self.document.fault(&self.path, self.place(), "", message.into(), help));
    }

    fn map(&self, faults: &mut Faults) -> &'a [(String, Tree)] {
        match self.value {
            Tree::Map(entries) => entries,
            _ => {
                self.expected::<()>("a group of keys (`key: value` lines)", faults);
                &[]
            }
        }
    }

    fn expected<T>(&self, wanted: &str, faults: &mut Faults) -> Option<T> {
        let found = self.value.words();
        let help = match (wanted, self.value) {
            ("a list", _) => Some("write one `- …` line an item, or all in brackets: `[…, …]`"),
            (FLAG, Tree::Text(text)) => match text.to_lowercase().as_str() {
                "yes" | "on" => Some("write `true`"),
                "no" | "off" => Some("write `false`"),
                _ => None,
            },
            ("a number", Tree::Text(text)) if text.starts_with(|letter: char| letter.is_ascii_digit()) => {
                Some("write the number alone")
            }
            _ => None,
        };
        self.fault(faults, format!("{wanted} was expected, but this is {found}"), help.map(String::from));
        None
    }

    /// Where this value stands; of a group or list its key.
    fn place(&self) -> Option<Range<usize>> {
        let place = self.document.index().find(&self.path)?;
        match (&place.key, self.value) {
            (Some(key), _) if place.holds_more || *self.value == Tree::Nothing => Some(key.clone()),
            // a group without brackets begins with its first key
            (None, Tree::Map(entries)) if place.value.is_empty() => {
                let (first, _) = entries.first()?;
                self.document.index().exactly(&key_path(&self.path, first)).and_then(|place| place.key.clone())
            }
            _ => Some(place.value.clone()),
        }
    }

    /// A single value as it is written in the file.
    pub fn written(&self) -> String {
        match (self.document.index().exactly(&self.path).and_then(|place| place.written.clone()), self.value) {
            (Some(text), _) => text,
            (None, Tree::Number(number)) => number.to_string(),
            (None, value) => value.words().into(),
        }
    }
}

/// More choices than this are listed only where no spelling is near.
const MANY: usize = 8;
const FLAG: &str = "`true` or `false`";
const FINITE: &str = "write an ordinary number, such as 1.5";

/// What to write in place of a quantity that could not be read, where its message does not say so.
fn help_for(error: &UnitError) -> Option<String> {
    match error {
        UnitError::NoUnit { text, wanted } => {
            let ways: Vec<String> = wanted.units().take(3).map(|unit| format!("`{text} {}`", unit.name)).collect();
            let ways = missing::one_of(ways.iter().map(String::as_str));
            Some(format!("write the unit behind the number, for instance {ways}"))
        }
        UnitError::UnknownUnit { wanted: Dimension::Money, .. } => {
            Some("write the number alone; the currency stands once, behind `currency`".into())
        }
        UnitError::NotFinite { .. } => Some(FINITE.into()),
        _ => None,
    }
}

macro_rules! short_ways {
    ($($(#[$doc:meta])* $need:ident $get:ident $read:ident -> $value:ty, $wanted:literal;)*) => {
        impl Node<'_> {$(
            #[doc = concat!("The value of a key that must be there, read by [`Node::", stringify!($read), "`].")]
            pub fn $need(&self, key: &str, faults: &mut Faults) -> Option<$value> {
                self.need_as(key, $wanted, faults)?.$read(faults)
            }
            #[doc = concat!("The value of a key that may be there, read by [`Node::", stringify!($read), "`].")]
            pub fn $get(&self, key: &str, faults: &mut Faults) -> Option<$value> {
                self.get(key)?.$read(faults)
            }
        )*}
    };
}

short_ways! {
    need_text get_text text -> String, "…";
    need_number get_number number -> f64, "a number";
    need_count get_count count -> u32, "a whole number";
    need_flag get_flag flag -> bool, "true or false";
}

impl Node<'_> {
    /// The quantity of a key that must be there.
    pub fn need_quantity<Q: Measure>(&self, key: &str, faults: &mut Faults) -> Option<Q> {
        self.need_as(key, &missing::quantity(Q::DIMENSION), faults)?.quantity(faults)
    }

    /// The quantity of a key that may be there.
    pub fn get_quantity<Q: Measure>(&self, key: &str, faults: &mut Faults) -> Option<Q> {
        self.get(key)?.quantity(faults)
    }

    /// The word of a key that must be there, out of some options.
    pub fn need_choice<T: Copy>(&self, key: &str, options: &[(&str, T)], faults: &mut Faults) -> Option<T> {
        self.need_as(key, &missing::one_of(options.iter().map(|(word, _)| *word)), faults)?.choice(options, faults)
    }

    /// The word of a key that may be there, out of some options.
    pub fn get_choice<T: Copy>(&self, key: &str, options: &[(&str, T)], faults: &mut Faults) -> Option<T> {
        self.get(key)?.choice(options, faults)
    }
}
