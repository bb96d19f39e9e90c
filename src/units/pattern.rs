//! What a quantity looks like as a regular expression, for schemas that editors read.
//!
//! Method: the expression is made from the table of units by the rules of `text::normalise`, read backwards: blanks and dots
//! between the signs are free, powers and micro signs have several spellings. Only constructs are used that mean the same in
//! every dialect (ECMA 262, Python, Rust).
//! Limits: bounds and numbers too large to be finite are not seen.

use super::table::Dimension;
use super::text::normalise;

/// What may stand between the signs of a unit and does not count.
const FREE: &str = r"[\s·⋅*×]*";
const SIGN: &str = "[+-]?";
const PLUS: &str = r"\+?";
const NUMBER: &str = r"(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][+-]?[0-9]+)?";

/// Whether a number may be below zero.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sign {
    /// It may have a minus.
    Either,
    /// It has none.
    NotNegative,
}

/// The regular expression of a text that [`super::parse_as`] reads as this dimension.
pub fn pattern(dimension: Dimension, sign: Sign) -> String {
    let sign = match sign {
        Sign::Either => SIGN,
        Sign::NotNegative => PLUS,
    };
    let mut spellings: Vec<String> = Vec::new();
    for unit in dimension.units() {
        for spelling in std::iter::once(&unit.name).chain(unit.spellings) {
            let spelling = normalise(spelling);
            if !spellings.contains(&spelling) {
                spellings.push(spelling);
            }
        }
    }
    // a unit without any sign is that of a bare number
    let bare = if spellings.iter().any(String::is_empty) { "?" } else { "" };
    let units: Vec<String> = spellings.iter().filter(|text| !text.is_empty()).map(|text| expression(text)).collect();
    let units = if units.is_empty() { String::new() } else { format!("(?:{}){bare}{FREE}", units.join("|")) };
    format!(r"^\s*{sign}{NUMBER}{FREE}{units}$")
}

/// The regular expression of all texts that become this normalised spelling of a unit.
fn expression(normalised: &str) -> String {
    let mut parts: Vec<String> = Vec::new();
    let mut rest = normalised;
    while let Some(first) = rest.chars().next() {
        let before = &normalised[..normalised.len() - rest.len()];
        let (part, length) = match rest.get(..2) {
            Some("^2") => (power('2', '²', rest == "^2" && before.ends_with(['s', 'm', 'n'])), 2),
            Some("^3") => (power('3', '³', rest == "^3" && before.ends_with('s')), 2),
            Some("^-") => (format!(r"(?:\^{FREE}-|⁻)"), 2),
            _ => (sign(first), first.len_utf8()),
        };
        parts.push(part);
        rest = &rest[length..];
    }
    parts.join(FREE)
}

/// A power, which at the end of some units may be written without its caret.
fn power(digit: char, raised: char, plain: bool) -> String {
    let caret = format!(r"\^{FREE}");
    if plain { format!("(?:(?:{caret})?{digit}|{raised})") } else { format!("(?:{caret}{digit}|{raised})") }
}

/// One sign of a unit, in all its spellings.
fn sign(character: char) -> String {
    match character {
        'u' => "[uµμ]".into(),
        '1' => "[1¹]".into(),
        '^' | '$' | '\\' | '.' | '+' | '?' | '(' | ')' | '[' | ']' | '{' | '}' | '|' => format!(r"\{character}"),
        character => character.into(),
    }
}
