//! A file as a tree of values, with the faults that keep it from being one.
//!
//! Method: `serde_yaml` fills a tree of our own that keeps the order of keys and duplicate keys. Its errors are
//! told again in plain words.
//! Limits: a fault of syntax ends the reading of that file, so it hides the faults after it.

use super::fault::{Fault, Faults};
use super::node::Node;
use super::place::{self, Index, join};
use super::syntax::syntax_fault;
use serde::de::{Deserialize, Deserializer, EnumAccess, MapAccess, SeqAccess, VariantAccess, Visitor};
use std::fmt;
use std::ops::Range;
use std::path::Path;
use std::sync::OnceLock;

const LARGEST: u64 = 16 * 1024 * 1024;
/// More brackets than this that stay open at once are refused before parsing: they cost quadratic time.
const DEEPEST: usize = 1000;

/// A value of a file.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Tree {
    Nothing,
    Flag(bool),
    Number(f64),
    Text(String),
    List(Vec<Tree>),
    Map(Vec<(String, Tree)>),
    Tagged,
}

impl Tree {
    /// What the value is, in plain words.
    pub fn words(&self) -> &'static str {
        match self {
            Tree::Nothing => "nothing",
            Tree::Flag(_) => "`true` or `false`",
            Tree::Number(_) => "a number",
            Tree::Text(_) => "text",
            Tree::List(_) => "a list",
            Tree::Map(_) => "a group of keys",
            Tree::Tagged => "a value with a tag",
        }
    }
}

/// A file that was read: its name, its text and its values.
#[derive(Debug)]
pub struct Document {
    name: String,
    text: String,
    root: Tree,
    index: OnceLock<Index>,
}

impl Document {
    /// Reads a text; `None` when it is no YAML, which is then among the faults.
    pub fn parse(name: &str, text: &str, faults: &mut Faults) -> Option<Document> {
        let text = text.strip_prefix('\u{feff}').unwrap_or(text);
        let refuse = |faults: &mut Faults, message: &str, help: Option<&str>| {
            faults.push(Fault::of_file(name, message, help.map(String::from)));
        };
        if text.len() as u64 > LARGEST {
            refuse(faults, "the file is larger than 16 MiB", None);
            return None;
        }
        if let Some(at) = too_deep(text) {
            let help = Some("close brackets, or put texts with brackets in quotes".into());
            faults.push(Fault::in_text(name, text, at..at + 1, "one too many", "brackets are nested too deep", help));
            return None;
        }
        match serde_yaml::from_str::<Tree>(text) {
            Ok(Tree::Nothing) => {
                let help = Some("write `key: value` lines".into());
                faults.push(Fault::in_text(name, text, 0..0, "nothing is written here", "the file is empty", help));
                None
            }
            Ok(root) => {
                let mut document = Document { name: name.into(), text: text.into(), root, index: OnceLock::new() };
                if drop_twice(&mut document.root) {
                    document.tell_twice(faults);
                }
                Some(document)
            }
            Err(error) => {
                faults.push(syntax_fault(name, text, &error));
                None
            }
        }
    }

    /// The value that holds all others.
    pub fn root(&self) -> Node<'_> {
        Node::new(self, String::new(), String::new(), &self.root)
    }

    /// The name under which faults speak of the file.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// The text of the file, without a byte order mark.
    pub fn text(&self) -> &str {
        &self.text
    }

    pub(super) fn index(&self) -> &Index {
        self.index.get_or_init(|| Index::of(&self.text))
    }

    /// A fault at a byte range.
    pub(super) fn fault(
        &self,
        path: &str,
        range: Option<Range<usize>>,
        label: &'static str,
        message: String,
        help: Option<String>,
    ) -> Fault {
        let excerpt = range.map(|range| place::excerpt(&self.text, range));
        Fault::of_file(&self.name, message, help).at(path, excerpt, label)
    }

    fn tell_twice(&self, faults: &mut Faults) {
        for twice in &self.index().twice {
            faults.push_with(|| {
                let first = place::excerpt(&self.text, twice.first.clone());
                let (often, keep) = match twice.times {
                    2 => ("twice".to_string(), "keep one of the two"),
                    times => (format!("{times} times"), "keep one of them"),
                };
                let message = format!("this key is given {often}, first in line {}", first.line);
                let help = Some(keep.to_string());
                self.fault(&twice.path, Some(twice.second.clone()), "given a second time here", message, help)
            });
        }
        if self.index().twice.is_empty() {
            faults.push(Fault::of_file(&self.name, "a key is given twice in one group", None));
        }
    }
}

/// Reads a file as text under the name faults shall call it; `None` when it cannot be read, which is a fault.
pub fn read_text(path: &Path, name: &str, faults: &mut Faults) -> Option<String> {
    let size = match std::fs::metadata(path) {
        Ok(data) => data.len(),
        Err(error) => {
            faults.missing_file(name, &error);
            return None;
        }
    };
    if size > LARGEST {
        faults.push(Fault::of_file(name, "the file is larger than 16 MiB", None));
        return None;
    }
    match std::fs::read(path).map(String::from_utf8) {
        Ok(Ok(text)) => Some(text),
        Ok(Err(error)) => {
            faults.push(no_utf8(name, error.as_bytes(), error.utf8_error().valid_up_to()));
            None
        }
        Err(error) => {
            faults.missing_file(name, &error);
            None
        }
    }
}

/// The fault of a file whose byte at this place begins no character of UTF-8.
fn no_utf8(name: &str, bytes: &[u8], at: usize) -> Fault {
    let wide = bytes.starts_with(&[0xff, 0xfe]) || bytes.starts_with(&[0xfe, 0xff]);
    let message = if wide { "the file is UTF-16 text, not UTF-8" } else { "the file is not UTF-8 text" };
    let text = String::from_utf8_lossy(bytes);
    let help = "save it as UTF-8: editors offer that as its encoding".to_string();
    // what stands before the place is the same in both
    Fault::in_text(name, &text, at..at + 1, "no character of UTF-8", message, Some(help))
}

/// The bracket that is open inside too many others.
fn too_deep(text: &str) -> Option<usize> {
    let mut depth = 0_usize;
    text.bytes().enumerate().find_map(|(at, byte)| {
        match byte {
            b'[' | b'{' => depth += 1,
            b']' | b'}' => depth = depth.saturating_sub(1),
            _ => {}
        }
        (depth > DEEPEST).then_some(at)
    })
}

/// Drops the later of two equal keys everywhere; whether there were any.
fn drop_twice(tree: &mut Tree) -> bool {
    match tree {
        Tree::Map(entries) => {
            let mut seen = std::collections::BTreeSet::new();
            let before = entries.len();
            entries.retain(|(key, _)| seen.insert(key.clone()));
            let mut any = entries.len() < before;
            for (_, value) in entries {
                any |= drop_twice(value);
            }
            any
        }
        Tree::List(items) => items.iter_mut().map(drop_twice).filter(|found| *found).count() > 0,
        Tree::Nothing | Tree::Flag(_) | Tree::Number(_) | Tree::Text(_) | Tree::Tagged => false,
    }
}

/// What a key has to be, as errors of the parser say it.
pub(super) const BAD_KEY: &str = "a key of one word";

struct Key(String);

impl<'de> Deserialize<'de> for Key {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Key, D::Error> {
        struct Word;
        impl Visitor<'_> for Word {
            type Value = Key;
            fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
                f.write_str(BAD_KEY)
            }
            fn visit_str<E>(self, text: &str) -> Result<Key, E> {
                Ok(Key(text.into()))
            }
        }
        deserializer.deserialize_str(Word)
    }
}

impl<'de> Deserialize<'de> for Tree {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Tree, D::Error> {
        struct Any;
        impl<'de> Visitor<'de> for Any {
            type Value = Tree;
            fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
                f.write_str("any value")
            }
            fn visit_unit<E>(self) -> Result<Tree, E> {
                Ok(Tree::Nothing)
            }
            fn visit_none<E>(self) -> Result<Tree, E> {
                Ok(Tree::Nothing)
            }
            fn visit_bool<E>(self, flag: bool) -> Result<Tree, E> {
                Ok(Tree::Flag(flag))
            }
            fn visit_u64<E>(self, number: u64) -> Result<Tree, E> {
                Ok(Tree::Number(number as f64))
            }
            fn visit_i64<E>(self, number: i64) -> Result<Tree, E> {
                Ok(Tree::Number(number as f64))
            }
            fn visit_u128<E>(self, number: u128) -> Result<Tree, E> {
                Ok(Tree::Number(number as f64))
            }
            fn visit_i128<E>(self, number: i128) -> Result<Tree, E> {
                Ok(Tree::Number(number as f64))
            }
            fn visit_f64<E>(self, number: f64) -> Result<Tree, E> {
                Ok(Tree::Number(number))
            }
            fn visit_str<E>(self, text: &str) -> Result<Tree, E> {
                Ok(Tree::Text(text.into()))
            }
            fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<Tree, A::Error> {
                let mut list = Vec::new();
                while let Some(item) = items.next_element()? {
                    list.push(item);
                }
                Ok(Tree::List(list))
            }
            fn visit_map<A: MapAccess<'de>>(self, mut entries: A) -> Result<Tree, A::Error> {
                let mut map = Vec::new();
                while let Some(Key(key)) = entries.next_key()? {
                    map.push((key, entries.next_value()?));
                }
                Ok(Tree::Map(map))
            }
            fn visit_enum<A: EnumAccess<'de>>(self, tagged: A) -> Result<Tree, A::Error> {
                let (Key(_), value) = tagged.variant()?;
                value.newtype_variant::<Tree>()?;
                Ok(Tree::Tagged)
            }
        }
        deserializer.deserialize_any(Any)
    }
}

/// The path of an item of a list.
pub(super) fn item_path(path: &str, index: usize) -> String {
    format!("{path}[{index}]")
}

/// The path of a key of a mapping.
pub fn key_path(path: &str, key: &str) -> String {
    join(path, key)
}
