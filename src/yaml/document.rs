//! A file as a tree of values, with the faults that keep it from being one.
//!
//! Method: `serde_yaml` fills a tree of our own that keeps the order of keys and duplicate keys. Its errors are
//! told again in plain words.
//! Limits: a fault of syntax ends the reading of that file, so it hides the faults after it.

use super::fault::{Fault, Faults};
use super::node::Node;
use super::place::{self, Index, join};
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
        if deepest_bracket(text) > DEEPEST {
            refuse(faults, "brackets are nested too deep", None);
            return None;
        }
        match serde_yaml::from_str::<Tree>(text) {
            Ok(Tree::Nothing) => {
                refuse(faults, "the file is empty", Some("write `key: value` lines"));
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
            let first = place::excerpt(&self.text, twice.first.clone());
            let message = format!("this key is given twice, first in line {}", first.line);
            let help = Some("keep one of the two".to_string());
            faults.push(self.fault(&twice.path, Some(twice.second.clone()), "given a second time here", message, help));
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
            let at = error.utf8_error().valid_up_to();
            let line = 1 + error.as_bytes()[..at].iter().filter(|byte| **byte == b'\n').count();
            faults.push(Fault::of_file(
                name,
                format!("the file is not UTF-8 text (line {line})"),
                Some("save it as UTF-8".into()),
            ));
            None
        }
        Err(error) => {
            faults.missing_file(name, &error);
            None
        }
    }
}

fn deepest_bracket(text: &str) -> usize {
    let (mut depth, mut deepest) = (0_usize, 0);
    for byte in text.bytes() {
        match byte {
            b'[' | b'{' => depth += 1,
            b']' | b'}' => depth = depth.saturating_sub(1),
            _ => {}
        }
        deepest = deepest.max(depth);
    }
    deepest
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

fn syntax_fault(name: &str, text: &str, error: &serde_yaml::Error) -> Fault {
    let whole = error.to_string();
    let location = error.location().map(|location| (location.line(), location.column()));
    let at = |place: Option<(usize, usize)>, message: &str, help: &str| {
        let excerpt = place.map(|(line, column)| {
            let start = place::offset_of(text, line, column);
            place::excerpt(text, start..start)
        });
        let help = if help.is_empty() { None } else { Some(help.to_string()) };
        Fault::of_file(name, message, help).at("", excerpt, "here")
    };
    if let Some(line) = line_with_tab(text) {
        return at(Some(line), "a line is indented with a tab", "indent with blanks");
    }
    if whole.contains("more than one document") {
        let line = text.lines().enumerate().skip(1).filter(|(_, line)| line.starts_with("---")).last();
        let place = line.map(|(index, _)| (index + 1, 1));
        return at(place, "the file holds more than one YAML document", "keep one document a file");
    }
    if whole.contains("repetition limit") {
        return at(None, "aliases repeat too much of the file", "write the values out");
    }
    if whole.contains("recursion limit") {
        return at(location, "the values are nested too deep", "");
    }
    if whole.contains("unknown anchor") {
        return at(location, "an alias (`*name`) has no anchor (`&name`) before it", "put a text with `*` in quotes");
    }
    if whole.contains(BAD_KEY) {
        return at(location, "a key must be one word", "put values with brackets in quotes");
    }
    if whole.contains("control characters") {
        return at(location, "the file holds a control character", "remove it");
    }
    let message = format!("this is not YAML: {}", without_places(&whole));
    at(location, &message, "check colons, quotes, brackets and indentation in this line and the one before")
}

/// The first line that begins with blanks and a tab, with the column of the tab.
fn line_with_tab(text: &str) -> Option<(usize, usize)> {
    text.lines().enumerate().find_map(|(index, line)| {
        let indent = line.len() - line.trim_start_matches([' ', '\t']).len();
        let tab = line[..indent].find('\t')?;
        let rest = &line[indent..];
        if rest.is_empty() || rest.starts_with('#') { None } else { Some((index + 1, tab + 1)) }
    })
}

/// A message of the parser without the places in it.
fn without_places(message: &str) -> String {
    let mut out = String::new();
    let mut rest = message;
    while let Some(at) = rest.find(" at line ") {
        out.push_str(&rest[..at]);
        let after = &rest[at + " at line ".len()..];
        let digits = after.find(|c: char| !c.is_ascii_digit()).unwrap_or(after.len());
        rest = &after[digits..];
        if let Some(column) = rest.strip_prefix(" column ") {
            rest = column.trim_start_matches(|c: char| c.is_ascii_digit());
        }
    }
    out + rest
}

const BAD_KEY: &str = "a key of one word";

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
pub(super) fn key_path(path: &str, key: &str) -> String {
    join(path, key)
}
