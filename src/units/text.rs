//! Reading and printing quantities.

use super::measure::Measure;
use super::slip::nearest;
use super::table::{Dimension, UNITS, Unit};
use std::collections::HashMap;
use std::sync::LazyLock;
use thiserror::Error;

/// Why a text is not the quantity that was asked for.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum UnitError {
    /// The text does not begin with a number.
    #[error("`{text}` is not {}; write a number and a unit, such as `{}`", .wanted.words(), example(*.wanted))]
    NotANumber {
        /// What was read.
        text: String,
        /// What was expected.
        wanted: Dimension,
    },
    /// A number without a unit.
    #[error("`{text}` has no unit; {} is needed here, in {}", .wanted.words(), unit_list(*.wanted))]
    NoUnit {
        /// What was read.
        text: String,
        /// What was expected.
        wanted: Dimension,
    },
    /// A number with a sign for both ways.
    #[error(
        "`{text}` says how far to either side; write `{whole}` where a whole width is asked for, `{half}` where half of it is"
    )]
    EitherWay {
        /// What was read.
        text: String,
        /// From one end to the other.
        whole: String,
        /// To one side.
        half: String,
    },
    /// A number with blanks between its thousands.
    #[error("`{text}` has blanks between thousands; write `{plain}`")]
    Blanks {
        /// What was read.
        text: String,
        /// The same without them.
        plain: String,
    },
    /// A number with a decimal comma.
    #[error("{}", comma(.text))]
    DecimalComma {
        /// What was read.
        text: String,
    },
    /// A unit of some other dimension.
    #[error("`{unit}` is a unit of {}, but {} is needed here, in {}", bare(.found.words()), .wanted.words(), unit_list(*.wanted))]
    WrongDimension {
        /// The unit that was read.
        unit: String,
        /// The dimension it measures.
        found: Dimension,
        /// What was expected.
        wanted: Dimension,
    },
    /// A unit that no dimension knows.
    #[error("unknown unit `{unit}`; {} is needed here, in {}{}", .wanted.words(), unit_list(*.wanted), nearest_hint(.nearest))]
    UnknownUnit {
        /// The unit that was read.
        unit: String,
        /// What was expected.
        wanted: Dimension,
        /// The nearest spelling that fits.
        nearest: Option<&'static str>,
    },
    /// Not a number, or infinite.
    #[error("`{text}` is not a finite number")]
    NotFinite {
        /// What was read.
        text: String,
    },
}

/// What is said of a comma: it is a decimal one, unless thousands look just like it.
fn comma(text: &str) -> String {
    let of_number = |c: char| c.is_ascii_digit() || matches!(c, '+' | '-' | '.' | ',');
    let (number, unit) = text.split_at(text.find(|c| !of_number(c)).unwrap_or(text.len()));
    let commas = number.matches(',').count();
    if number.contains('.') || commas > 1 {
        let decimal = commas == 1 && number.rfind('.') < number.rfind(',');
        let plain = if decimal { number.replace('.', "").replace(',', ".") } else { number.replace(',', "") };
        return format!(
            "`{text}` has a comma; a number has a decimal point and no mark between thousands: write `{plain}{unit}`"
        );
    }
    let point = text.replace(',', ".");
    let digits = |part: &str| part.chars().take_while(char::is_ascii_digit).count();
    let (before, after) = text.split_once(',').unwrap_or((text, ""));
    let whole = before.trim_start_matches(['+', '-']);
    let thousands = (1..=3).contains(&whole.len()) && !whole.starts_with('0') && digits(after) == 3;
    match thousands {
        false => format!("`{text}` has a decimal comma; write a decimal point: `{point}`"),
        true => {
            let plain = text.replace(',', "");
            format!("`{text}` has a comma; write `{plain}` if it parts thousands, `{point}` if it is a decimal comma")
        }
    }
}

fn bare(words: &'static str) -> &'static str {
    words.trim_start_matches("a ").trim_start_matches("an ")
}

fn unit_list(dimension: Dimension) -> String {
    if dimension == Dimension::Money {
        return "the currency of the brief, as a plain number".into();
    }
    let names: Vec<&str> = dimension.units().map(|unit| unit.name).collect();
    match names.split_last() {
        Some((last, rest)) if !rest.is_empty() => format!("{} or {last}", rest.join(", ")),
        Some((last, _)) => (*last).into(),
        None => String::new(),
    }
}

fn example(dimension: Dimension) -> String {
    match dimension.units().next().map(|unit| unit.name).unwrap_or("") {
        "" | "1" => "1.5".into(),
        name => format!("1.5 {name}"),
    }
}

fn nearest_hint(nearest: &Option<&'static str>) -> String {
    nearest.map(|name| format!("; did you mean `{name}`?")).unwrap_or_default()
}

/// Spellings that mean the same become one: micro signs, dots, powers and blanks.
pub(super) fn normalise(unit: &str) -> String {
    let mut out = String::with_capacity(unit.len());
    for character in unit.chars() {
        match character {
            'µ' | 'μ' => out.push('u'),
            '²' => out.push_str("^2"),
            '³' => out.push_str("^3"),
            '⁻' => out.push_str("^-"),
            '¹' => out.push('1'),
            '·' | '⋅' | '*' | '×' => {}
            character if character.is_whitespace() => {}
            character => out.push(character),
        }
    }
    // "m/s2" and "kgcm2" are written for m/s^2 and kgcm^2
    for (plain, power) in [("s2", "s^2"), ("s3", "s^3"), ("m2", "m^2"), ("in2", "in^2")] {
        if out.ends_with(plain) {
            out.truncate(out.len() - plain.len());
            out.push_str(power);
        }
    }
    out
}

/// The units by their spellings after normalising, in the order of the table: it is asked for every quantity that is read.
static SPELT: LazyLock<HashMap<String, Vec<&'static Unit>>> = LazyLock::new(|| {
    let mut spelt: HashMap<String, Vec<&'static Unit>> = HashMap::new();
    for unit in UNITS {
        for spelling in std::iter::once(&unit.name).chain(unit.spellings) {
            spelt.entry(normalise(spelling)).or_default().push(unit);
        }
    }
    spelt
});

/// Each unit with its name in small letters, as slips are looked for.
static SMALL: LazyLock<Vec<(&'static Unit, String)>> =
    LazyLock::new(|| UNITS.iter().map(|unit| (unit, normalise(unit.name).to_lowercase())).collect());

/// Splits a text into the number it begins with and the rest.
fn split_number(text: &str) -> Option<(f64, &str)> {
    let bytes = text.as_bytes();
    let mut end = 0;
    if end < bytes.len() && (bytes[end] == b'+' || bytes[end] == b'-') {
        end += 1;
    }
    let digits_from = end;
    while end < bytes.len() && (bytes[end].is_ascii_digit() || bytes[end] == b'.') {
        end += 1;
    }
    if end == digits_from {
        return None;
    }
    if end < bytes.len() && (bytes[end] == b'e' || bytes[end] == b'E') {
        let mut exponent = end + 1;
        if exponent < bytes.len() && (bytes[exponent] == b'+' || bytes[exponent] == b'-') {
            exponent += 1;
        }
        let first = exponent;
        while exponent < bytes.len() && bytes[exponent].is_ascii_digit() {
            exponent += 1;
        }
        if exponent > first {
            end = exponent;
        }
    }
    text[..end].parse().ok().map(|number| (number, &text[end..]))
}

/// What stands for both ways.
const EITHER_WAY: [&str; 3] = ["±", "+/-", "+-"];

/// A text that says how far to either side, such as `±0.05 mm`.
fn either_way(text: &str) -> Option<UnitError> {
    let half = EITHER_WAY.iter().find_map(|sign| text.strip_prefix(sign))?.trim_start();
    let (number, unit) = split_number(half).filter(|(number, _)| number.is_finite())?;
    Some(UnitError::EitherWay {
        text: text.into(),
        whole: format!("{}{unit}", significant(2.0 * number, 12)),
        half: half.into(),
    })
}

/// A text with blanks between thousands, such as `24 000 EUR`; an amount of money is a plain number.
fn blanks(dimension: Dimension, text: &str) -> Option<UnitError> {
    let begin = text.find(|letter: char| !letter.is_ascii_digit())?;
    let (mut plain, mut rest) = (text[..begin].to_string(), &text[begin..]);
    while let Some(group) = rest.strip_prefix(char::is_whitespace) {
        let digits = group.bytes().take_while(u8::is_ascii_digit).count();
        if digits != 3 {
            break;
        }
        plain.push_str(&group[..digits]);
        rest = &group[digits..];
    }
    let unit = if dimension == Dimension::Money { "" } else { rest };
    ((1..=3).contains(&begin) && plain.len() > begin)
        .then(|| UnitError::Blanks { text: text.into(), plain: format!("{plain}{unit}") })
}

/// Reads a text as a value of the given dimension, in SI units.
///
/// A bare number passes only for plain numbers and money. Errors name the units that fit.
pub fn parse_as(dimension: Dimension, text: &str) -> Result<f64, UnitError> {
    let text = text.trim();
    let lower = text.to_ascii_lowercase();
    let unsigned = lower.trim_start_matches(['+', '-', '.']);
    if unsigned.starts_with("nan") || unsigned.starts_with("inf") {
        return Err(UnitError::NotFinite { text: text.into() });
    }
    if let Some(error) = either_way(text).or_else(|| blanks(dimension, text)) {
        return Err(error);
    }
    let (number, rest) =
        split_number(text).ok_or_else(|| UnitError::NotANumber { text: text.into(), wanted: dimension })?;
    if rest.starts_with(',') {
        return Err(UnitError::DecimalComma { text: text.into() });
    }
    let rest = rest.trim();
    let value = if rest.is_empty() {
        match dimension {
            Dimension::Ratio | Dimension::Money => number,
            _ => return Err(UnitError::NoUnit { text: text.into(), wanted: dimension }),
        }
    } else {
        number * find_unit(dimension, rest)?.si
    };
    if value.is_finite() { Ok(value) } else { Err(UnitError::NotFinite { text: text.into() }) }
}

/// The unit that a text with a number gives it in, if it is one of the given dimension.
pub(crate) fn unit_in(dimension: Dimension, text: &str) -> Option<&'static Unit> {
    let (_, unit) = split_number(text.trim())?;
    find_unit(dimension, unit.trim()).ok().filter(|unit| !unit.name.is_empty())
}

/// The unit of the given dimension that is spelt so.
pub(crate) fn find_unit(dimension: Dimension, spelling: &str) -> Result<&'static Unit, UnitError> {
    let normalised = normalise(spelling);
    let spelt = SPELT.get(&normalised).map(Vec::as_slice).unwrap_or_default();
    if let Some(unit) = spelt.iter().find(|unit| unit.dimension == dimension) {
        return Ok(unit);
    }
    if let Some(other) = spelt.iter().find(|unit| !unit.name.is_empty()) {
        return Err(UnitError::WrongDimension { unit: spelling.into(), found: other.dimension, wanted: dimension });
    }
    let names = SMALL.iter().filter(|(unit, _)| unit.dimension == dimension);
    let names = names.map(|(unit, small)| (unit.name, small.as_str()));
    let near =
        |name: &str, distance: usize| distance < name.chars().count() && distance <= 1 + name.chars().count() / 3;
    let nearest = nearest(&normalised, &normalised.to_lowercase(), names, near);
    Err(UnitError::UnknownUnit { unit: spelling.into(), wanted: dimension, nearest })
}

/// Reads a text as a quantity.
///
/// ```
/// use axiswright::units::{parse, Measure, Velocity};
/// let speed: Velocity = parse("1000 in/min")?;
/// assert!((speed.si() - 0.423_333_333).abs() < 1e-9);
/// # Ok::<(), axiswright::units::UnitError>(())
/// ```
pub fn parse<Q: Measure>(text: &str) -> Result<Q, UnitError> {
    parse_as(Q::DIMENSION, text).map(Q::of_si)
}

/// Prints an SI value in a unit with all its digits, so that reading it gives the value back.
pub fn print(si: f64, unit: &Unit) -> String {
    with_unit(format!("{}", si / unit.si), unit)
}

/// Prints an SI value in a unit with so many significant digits.
pub fn print_rounded(si: f64, unit: &Unit, digits: usize) -> String {
    with_unit(significant(si / unit.si, digits), unit)
}

fn with_unit(number: String, unit: &Unit) -> String {
    match unit.name {
        "" | "1" => number,
        name => format!("{number} {name}"),
    }
}

/// A number with so many significant digits, without exponent between 0.0001 and a million.
pub fn significant(value: f64, digits: usize) -> String {
    if value == 0.0 {
        return "0".into();
    }
    if !value.is_finite() {
        return "not known".into();
    }
    let digits = digits.max(1);
    let scientific = format!("{:.*e}", digits - 1, value);
    let exponent: i32 = scientific.rsplit('e').next().and_then(|text| text.parse().ok()).unwrap_or(0);
    if !(-4..6).contains(&exponent) {
        return match scientific.split_once('e') {
            Some((mantissa, exponent)) if mantissa.contains('.') => {
                format!("{}e{exponent}", mantissa.trim_end_matches('0').trim_end_matches('.'))
            }
            _ => scientific,
        };
    }
    let decimals = (digits as i32 - 1 - exponent).max(0) as usize;
    let rounded: f64 = scientific.parse().unwrap_or(value);
    let text = format!("{rounded:.decimals$}");
    if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.').into() } else { text }
}
