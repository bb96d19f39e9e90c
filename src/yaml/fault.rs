//! A fault in a file that a user wrote, and the list of all faults of a run.
//!
//! Method: a fault keeps the one line of the file that it speaks of, so that it can be shown without the file.
//! `annotate-snippets` draws it. Control characters of the file are shown escaped. All keys that one group lacks are one fault.

use super::document::Document;
use super::missing::Missing;
use super::place::{Excerpt, excerpt};
use annotate_snippets::{AnnotationKind, Group, Level, Origin, Renderer, Snippet};
use std::fmt;
use std::ops::Range;

/// One fault in a file a user wrote.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fault {
    /// The file, as the user named it or by its file name.
    pub file: String,
    /// The key path, such as `axes.long.travel` or `entries[3].lead`; empty for the file as a whole.
    pub path: String,
    /// The line, from 1; 0 when no place is known.
    pub line: usize,
    /// The column in characters, from 1; 0 when no place is known.
    pub column: usize,
    /// What is wrong, in plain words.
    pub message: String,
    /// What to do about it.
    pub help: Option<String>,
    excerpt: Option<Excerpt>,
    label: &'static str,
    missing: Option<Missing>,
}

/// Longer help is broken into lines, characters.
const WIDEST: usize = 110;

impl Fault {
    /// A fault of a file as a whole, without a place in it.
    pub fn of_file(file: &str, message: impl Into<String>, help: Option<String>) -> Fault {
        Fault {
            file: file.into(),
            path: String::new(),
            line: 0,
            column: 0,
            message: visible(&message.into()),
            help: help.map(|help| visible(&help)),
            excerpt: None,
            label: "",
            missing: None,
        }
    }

    /// The fault of a key that a group lacks.
    pub(super) fn of_missing(file: &str, excerpt: Option<Excerpt>, label: &'static str, missing: Missing) -> Fault {
        let fault = Fault::of_file(file, missing.message(), Some(missing.help()));
        Fault { missing: Some(missing.clone()), ..fault.at(&missing.path(), excerpt, label) }
    }

    /// Takes up another fault if both tell of missing keys of one group; gives it back if not.
    fn take_up(&mut self, other: Fault) -> Option<Fault> {
        match (&mut self.missing, &other.missing) {
            (Some(own), Some(more)) if own.same_group(more) => {
                own.join(more.clone());
                self.path = visible(&own.path());
                self.message = visible(&own.message());
                self.help = Some(visible(&own.help()));
                None
            }
            _ => Some(other),
        }
    }

    /// A fault at a byte range of a text that is no YAML, such as a table.
    pub fn in_text(
        file: &str,
        text: &str,
        range: Range<usize>,
        label: &'static str,
        message: impl Into<String>,
        help: Option<String>,
    ) -> Fault {
        Fault::of_file(file, message, help).at("", Some(excerpt(text, range)), label)
    }

    /// The same fault at a place of the file.
    pub(super) fn at(mut self, path: &str, excerpt: Option<Excerpt>, label: &'static str) -> Fault {
        self.path = visible(path);
        self.line = excerpt.as_ref().map_or(0, |excerpt| excerpt.line);
        self.column = excerpt.as_ref().map_or(0, |excerpt| excerpt.column);
        self.excerpt = excerpt;
        self.label = label;
        self
    }

    /// Each key that this fault speaks of by its path, with what is to be told there.
    pub fn at_keys(&self) -> Vec<(String, String)> {
        let told = |message: &str, help: Option<&str>| match help {
            Some(help) => format!("{message}; {help}"),
            None => message.to_string(),
        };
        match &self.missing {
            Some(missing) => missing.each().map(|one| (one.path(), told(&one.message(), Some(&one.help())))).collect(),
            None => vec![(self.path.clone(), told(&self.message, self.help.as_deref()))],
        }
    }

    fn order(&self) -> (&str, usize, usize) {
        (&self.file, self.line, self.column)
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let title =
            if self.path.is_empty() { self.message.clone() } else { format!("`{}`: {}", self.path, self.message) };
        let group = Group::with_title(Level::ERROR.primary_title(title.as_str()));
        let place = Origin::path(self.file.as_str());
        let group = match &self.excerpt {
            Some(Excerpt { text: Some(text), line, marked, .. }) => group.element(
                Snippet::source(text.as_str())
                    .path(self.file.as_str())
                    .line_start(*line)
                    .annotation(AnnotationKind::Primary.span(marked.clone()).label(self.label)),
            ),
            Some(excerpt) => group.element(place.line(excerpt.line).char_column(excerpt.column)),
            None => group.element(place),
        };
        let help = self.help.as_deref().map(broken);
        let group = match &help {
            Some(help) => group.element(Level::HELP.message(help.as_str())),
            None => group,
        };
        f.write_str(Renderer::plain().render(&[group]).trim_end())
    }
}

/// More faults than this are counted and not told: nobody reads them, and a small file may hold very many.
const MOST_TOLD: usize = 1000;

/// All faults of all files, in order of file, line and column.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Faults {
    told: Vec<Fault>,
    /// How many more there are.
    more: usize,
}

impl Faults {
    /// Whether nothing is at fault.
    pub fn is_empty(&self) -> bool {
        self.told.is_empty()
    }

    /// Whether so many are told that more are only counted.
    pub fn is_full(&self) -> bool {
        self.told.len() >= MOST_TOLD
    }

    /// How many faults there are, told or not.
    pub fn len(&self) -> usize {
        self.told.len() + self.more
    }

    /// The faults in order of file, line and column.
    pub fn iter(&self) -> std::slice::Iter<'_, Fault> {
        self.told.iter()
    }

    /// Adds a fault at its place in the order; the same fault twice counts once, and all keys that a group lacks are one.
    pub fn push(&mut self, fault: Fault) {
        self.push_with(|| fault);
    }

    /// The same for a fault that is made only where it is told: its place may stand far along a long line.
    pub(super) fn push_with(&mut self, fault: impl FnOnce() -> Fault) {
        if self.is_full() {
            self.more += 1;
            return;
        }
        let fault = fault();
        let first = self.told.partition_point(|other| other.order() < fault.order());
        let after = self.told.partition_point(|other| other.order() <= fault.order());
        let taken = self.told[first..after].iter_mut().try_fold(fault, |fault, other| other.take_up(fault).ok_or(()));
        let Some(fault) = taken.ok() else { return };
        if !self.told[first..after].contains(&fault) {
            self.told.insert(after, fault);
        }
    }

    /// Whether one of them is at this path of a file and has this help.
    pub(super) fn tell(&self, document: &Document, path: &str, help: &str) -> bool {
        let path = visible(path);
        self.told
            .iter()
            .any(|fault| fault.path == path && fault.help.as_deref() == Some(help) && fault.file == document.name())
    }

    /// Whether it is told that this group lacks this key. An entry is read once for each of its variants, so it is asked often.
    pub(super) fn tell_missing(&self, document: &Document, group: &str, key: &str) -> bool {
        let of = |fault: &Fault| fault.missing.as_ref().is_some_and(|missing| missing.has(group, key));
        !self.is_full() && self.told.iter().rev().any(|fault| of(fault) && fault.file == document.name())
    }

    /// Adds all faults of another list.
    pub fn merge(&mut self, other: Faults) {
        for fault in other.told {
            self.push(fault);
        }
        self.more += other.more;
    }

    /// Adds the fault of a file that cannot be read.
    pub fn missing_file(&mut self, name: &str, error: &std::io::Error) {
        let reason = match error.kind() {
            std::io::ErrorKind::NotFound => "there is no such file".to_string(),
            std::io::ErrorKind::PermissionDenied => "it may not be read by this user".to_string(),
            std::io::ErrorKind::IsADirectory => "it is a folder".to_string(),
            _ => error.to_string(),
        };
        self.push(Fault::of_file(name, format!("the file cannot be read: {reason}"), None));
    }
}

impl fmt::Display for Faults {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (index, fault) in self.told.iter().enumerate() {
            if index > 0 {
                f.write_str("\n\n")?;
            }
            write!(f, "{fault}")?;
        }
        if self.is_full() { f.write_str("\n\n… what else is wrong is not told") } else { Ok(()) }
    }
}

impl std::error::Error for Faults {}

impl IntoIterator for Faults {
    type Item = Fault;
    type IntoIter = std::vec::IntoIter<Fault>;
    fn into_iter(self) -> Self::IntoIter {
        self.told.into_iter()
    }
}

impl<'a> IntoIterator for &'a Faults {
    type Item = &'a Fault;
    type IntoIter = std::slice::Iter<'a, Fault>;
    fn into_iter(self) -> Self::IntoIter {
        self.told.iter()
    }
}

impl From<Fault> for Faults {
    fn from(fault: Fault) -> Faults {
        Faults { told: vec![fault], more: 0 }
    }
}

/// The text in lines that are not too long, broken at blanks outside of what stands in backticks.
fn broken(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let (mut width, mut quoted) = (0, false);
    for word in text.split(' ') {
        let wide = word.chars().count();
        if width > 0 && !quoted && width + wide > WIDEST {
            out.push('\n');
            width = 0;
        } else if width > 0 {
            out.push(' ');
            width += 1;
        }
        quoted ^= word.matches('`').count() % 2 == 1;
        out.push_str(word);
        width += wide;
    }
    out
}

/// The text with control and direction characters escaped, so that a file cannot steer the terminal.
fn visible(text: &str) -> String {
    let steers = |c: char| c.is_control() || matches!(c, '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}');
    if !text.contains(steers) {
        return text.into();
    }
    text.chars().map(|c| if steers(c) { c.escape_default().to_string() } else { c.to_string() }).collect()
}
