//! The errors of the parser, told again in plain words and at the place where they can be mended.
//!
//! Method: what the parser says is recognised by its words; the place at which something began is taken from them too.
//! Limits: an error that is not recognised is told as the parser words it.

use super::document::BAD_KEY;
use super::fault::Fault;
use super::place;

/// Line and column, from 1.
type Spot = (usize, usize);

/// The fault of a text that could not be parsed.
pub(super) fn syntax_fault(name: &str, text: &str, error: &serde_yaml::Error) -> Fault {
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
    if let Some((place, message, help)) = in_plain_words(&whole, location) {
        return at(place, &message, &help);
    }
    let message = format!("this is not YAML: {}", without_places(&whole));
    at(location, &message, "check colons, quotes, brackets and indentation in this line and the one before")
}

/// Place, message and help of the errors that occur most, as one says them who does not know the parser.
fn in_plain_words(whole: &str, here: Option<Spot>) -> Option<(Option<Spot>, String, String)> {
    let begun = place_after(whole, "while scanning a ").or_else(|| place_after(whole, "while parsing a "));
    // the parser leaves out a place that is the begin of the file
    let (line, column) = begun.unwrap_or((1, 1));
    let has = |part: &str| whole.contains(part);
    let (place, message, help) = if has("while scanning a quoted scalar") {
        (
            Some((line, column)),
            "a text in quotes begins here and does not end".into(),
            "close it with the same quote".into(),
        )
    } else if has("could not find expected ':'") {
        (
            Some((line, column)),
            "this line has no colon behind its key".into(),
            "write `key: value`, with a blank behind the colon".into(),
        )
    } else if has("mapping values are not allowed") {
        let help = "put a text with a colon in quotes; keys of one group begin in the same column";
        (here, "there is a colon where no key can stand".into(), help.into())
    } else if has("did not find expected ',' or") {
        let message =
            format!("the bracket opened in line {line} is not closed, or a comma is missing before this place");
        (here, message, "check brackets and commas between the two places".into())
    } else if has("did not find expected key") {
        let message = format!("this does not fit the group of keys that begins in line {line}, column {column}");
        let help = "keys of one group begin in the same column; a text with quotes or brackets in it stands in quotes";
        (here, message, help.into())
    } else if has("did not find expected '-' indicator") {
        let message = format!("this is no item of the list that begins in line {line}");
        (here, message, "every item begins with `- `, all in the same column".into())
    } else if has("cannot start any token") {
        (here, "no value can begin with this character".into(), "put the text in quotes".into())
    } else {
        return None;
    };
    Some((place, message, help))
}

/// The place that a message of the parser names behind some words.
fn place_after(message: &str, words: &str) -> Option<Spot> {
    let rest = &message[message.find(words)? + words.len()..];
    let (_, rest) = rest.split_once(" at line ")?;
    let (line, rest) = rest.split_once(" column ")?;
    let digits = rest.find(|c: char| !c.is_ascii_digit()).unwrap_or(rest.len());
    Some((line.parse().ok()?, rest[..digits].parse().ok()?))
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
