//! Where in the text each key and value stands.
//!
//! Method: one walk over the events of `saphyr-parser` gives for every key path the place of its key and of its
//! value. The parser counts characters; places are kept in bytes.
//! Limits: what stands below an alias has no place of its own; the place of the alias is used for it.

use saphyr_parser::{Event, Parser, Span};
use std::collections::HashMap;
use std::ops::Range;

/// A longer line is not shown, bytes; there may be a thousand faults in it.
const LONGEST_LINE: usize = 4000;

/// One line of a file with the part of it that a fault speaks of; no text where the line is too long to be shown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Excerpt {
    pub line: usize,
    pub column: usize,
    pub text: Option<String>,
    pub marked: Range<usize>,
}

/// Cuts the line out of the text in which the byte range begins.
pub(super) fn excerpt(text: &str, range: Range<usize>) -> Excerpt {
    let start = floor(text, range.start.min(text.len()));
    let line_start = text[..start].rfind(['\n', '\r']).map_or(0, |at| at + 1);
    let line_end = text[start..].find(['\n', '\r']).map_or(text.len(), |at| start + at);
    let line = 1 + line_ends(&text.as_bytes()[..line_start]);
    let end = floor(text, range.end.clamp(start, line_end));
    let end = start + text[start..end].trim_end().len();
    // a mark is at least one character wide; at the end of a line it stands behind it
    let end =
        if end > start { end } else { text[start..line_end].chars().next().map_or(start, |c| start + c.len_utf8()) };
    Excerpt {
        line,
        column: 1 + text[line_start..start].chars().count(),
        text: Some(&text[line_start..line_end]).filter(|line| line.len() <= LONGEST_LINE).map(String::from),
        marked: start - line_start..end - line_start,
    }
}

/// How many lines end in a text. There may be thousands of faults, so this has to be quick.
fn line_ends(text: &[u8]) -> usize {
    // sums of bytes over few of them are what a compiler makes wide additions of
    let count = |wanted: u8| -> usize {
        text.chunks(255).map(|some| usize::from(some.iter().map(|byte| u8::from(*byte == wanted)).sum::<u8>())).sum()
    };
    match count(b'\r') {
        0 => count(b'\n'),
        alone => {
            let after = text.get(1..).unwrap_or_default();
            let pair = |(one, next): (&u8, &u8)| u8::from(*one == b'\r') & u8::from(*next == b'\n');
            let pairs = text.chunks(255).zip(after.chunks(255));
            let both: usize =
                pairs.map(|(some, after)| usize::from(some.iter().zip(after).map(pair).sum::<u8>())).sum();
            count(b'\n') + alone - both
        }
    }
}

fn floor(text: &str, mut at: usize) -> usize {
    while !text.is_char_boundary(at) {
        at -= 1;
    }
    at
}

/// The byte at which a line and a column, both from 1, stand.
pub(super) fn offset_of(text: &str, line: usize, column: usize) -> usize {
    let mut start = 0;
    for _ in 1..line {
        match text[start..].find(['\n', '\r']) {
            Some(at) => start += at + if text[start + at..].starts_with("\r\n") { 2 } else { 1 },
            None => return text.len(),
        }
    }
    let line_end = text[start..].find(['\n', '\r']).map_or(text.len(), |at| start + at);
    text[start..line_end].char_indices().nth(column.saturating_sub(1)).map_or(line_end, |(at, _)| start + at)
}

/// The place of a key and its value, in bytes.
#[derive(Debug, Clone)]
pub(super) struct Place {
    pub key: Option<Range<usize>>,
    pub value: Range<usize>,
    /// A single value as it is written, without quotes; `None` for a mapping, a list and an alias.
    pub written: Option<String>,
    /// A mapping or a list rather than a single value.
    pub holds_more: bool,
}

/// A key that is given more than once in one mapping: its path, and the first two places.
#[derive(Debug, Clone)]
pub(super) struct Twice {
    pub path: String,
    pub first: Range<usize>,
    pub second: Range<usize>,
    /// How often it is given.
    pub times: usize,
}

/// The places of a whole text.
#[derive(Debug, Default)]
pub(super) struct Index {
    places: HashMap<String, Place>,
    pub twice: Vec<Twice>,
}

/// Where a key stands first, and what was noted of it when it was given again.
struct Key {
    first: Range<usize>,
    twice: Option<usize>,
}

enum Level {
    Map {
        path: String,
        key: Option<(String, Range<usize>)>,
        keys: HashMap<String, Key>,
    },
    List {
        path: String,
        next: usize,
    },
    /// A mapping or list used as a key, or below one; it has no path.
    Nowhere,
}

impl Index {
    /// Walks the text once.
    pub fn of(text: &str) -> Index {
        let mut index = Index::default();
        let bytes: Vec<usize> = match text.is_ascii() {
            true => Vec::new(),
            false => text.char_indices().map(|(at, _)| at).collect(),
        };
        let byte = |at: usize| match bytes.is_empty() {
            true => at.min(text.len()),
            false => bytes.get(at).copied().unwrap_or(text.len()),
        };
        let mut levels: Vec<Level> = Vec::new();
        let mut parser = Parser::new_from_str(text);
        while let Some(Ok((event, span))) = parser.next_event() {
            let range = |span: Span| byte(span.start.index())..byte(span.end.index());
            match event {
                Event::MappingStart(..) => {
                    let level = match index.enter(&mut levels, range(span), None, true) {
                        Some(path) => Level::Map { path, key: None, keys: HashMap::new() },
                        None => Level::Nowhere,
                    };
                    levels.push(level);
                }
                Event::SequenceStart(..) => {
                    let level = match index.enter(&mut levels, range(span), None, true) {
                        Some(path) => Level::List { path, next: 0 },
                        None => Level::Nowhere,
                    };
                    levels.push(level);
                }
                Event::MappingEnd | Event::SequenceEnd => {
                    levels.pop();
                }
                Event::Scalar(value, ..) => {
                    if let Some(Level::Map { path, key: key @ None, keys }) = levels.last_mut() {
                        let at = range(span);
                        index.note_key(path, &value, keys, &at);
                        *key = Some((value.into_owned(), at));
                    } else {
                        index.enter(&mut levels, range(span), Some(value.into_owned()), false);
                    }
                }
                Event::Alias(_) => {
                    if let Some(Level::Map { key: key @ None, .. }) = levels.last_mut() {
                        *key = Some(("*".into(), range(span)));
                    } else {
                        index.enter(&mut levels, range(span), None, false);
                    }
                }
                Event::DocumentEnd | Event::StreamEnd => break,
                Event::Nothing | Event::StreamStart | Event::DocumentStart(_) => {}
            }
        }
        index
    }

    /// Notes a key, and whether it was given before.
    fn note_key(&mut self, path: &str, key: &str, keys: &mut HashMap<String, Key>, at: &Range<usize>) {
        let Some(known) = keys.get_mut(key) else {
            keys.insert(key.into(), Key { first: at.clone(), twice: None });
            return;
        };
        match known.twice.and_then(|twice| self.twice.get_mut(twice)) {
            Some(twice) => twice.times += 1,
            None => {
                known.twice = Some(self.twice.len());
                let first = known.first.clone();
                self.twice.push(Twice { path: join(path, key), first, second: at.clone(), times: 2 });
            }
        }
    }

    /// Notes a value at the present level; its path, unless it has none.
    fn enter(
        &mut self,
        levels: &mut [Level],
        value: Range<usize>,
        written: Option<String>,
        holds_more: bool,
    ) -> Option<String> {
        let (path, key) = match levels.last_mut() {
            None => (String::new(), None),
            Some(Level::Nowhere) => return None,
            Some(Level::List { path, next }) => {
                let own = format!("{path}[{next}]");
                *next += 1;
                (own, None)
            }
            Some(Level::Map { path, key, .. }) => {
                let (name, at) = key.take()?;
                (join(path, &name), Some(at))
            }
        };
        self.places.entry(path.clone()).or_insert(Place { key, value, written, holds_more });
        Some(path)
    }

    /// The place of a path, or of the nearest path above it that has one.
    pub fn find(&self, path: &str) -> Option<&Place> {
        let mut path = path;
        loop {
            if let Some(place) = self.places.get(path) {
                return Some(place);
            }
            if path.is_empty() {
                return None;
            }
            path = &path[..path.rfind(['.', '[']).unwrap_or(0)];
        }
    }

    /// The place of exactly this path.
    pub fn exactly(&self, path: &str) -> Option<&Place> {
        self.places.get(path)
    }
}

/// The path of a key below a path; a key that is not one plain word stands in quotes.
pub(super) fn join(path: &str, key: &str) -> String {
    let plain = !key.is_empty() && key.chars().all(|c| c.is_alphanumeric() || c == '-' || c == '_');
    let dot = if path.is_empty() { "" } else { "." };
    if plain { format!("{path}{dot}{key}") } else { format!("{path}{dot}\"{key}\"") }
}
