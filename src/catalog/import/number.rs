//! Numbers as suppliers write them: decimal commas, groups of thousands, a unit behind.
//!
//! Method: which mark is the decimal one is read off the whole table, since one number alone may be read both ways
//! (1,250). A table in which both readings occur, or none is certain, is refused until the map says `decimal`.

use std::fmt;

/// The decimal mark of a table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Decimal {
    /// 1.5
    Point,
    /// 1,5
    Comma,
}

/// Why the decimal mark is not known.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Unclear {
    /// One cell reads as a point, another as a comma.
    Both(String, String),
    /// This cell may be read both ways, and no other decides.
    Either(String),
}

impl fmt::Display for Unclear {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Unclear::Both(point, comma) => {
                write!(f, "`{point}` has a decimal point and `{comma}` a decimal comma; one table has one of them")
            }
            Unclear::Either(cell) => write!(f, "`{cell}` may have a decimal mark or a mark of thousands"),
        }
    }
}

/// Marks that part groups of thousands whatever the decimal mark is.
const GROUPING: [char; 5] = ['\u{a0}', '\u{202f}', '\u{2009}', '\'', '’'];

/// A cell as number and what stands behind it; none where it does not begin with a digit, sign or decimal mark.
pub fn split(cell: &str) -> Option<(&str, &str)> {
    let cell = cell.trim();
    let unsigned = cell.strip_prefix(['+', '-', '−']).unwrap_or(cell);
    if !unsigned.starts_with(|first: char| first.is_ascii_digit() || matches!(first, '.' | ',')) {
        return None;
    }
    let letters: Vec<(usize, char)> = unsigned.char_indices().collect();
    let digit = |at: usize| letters.get(at).is_some_and(|(_, letter)| letter.is_ascii_digit());
    let mut at = 0;
    while let Some((_, letter)) = letters.get(at) {
        let group = *letter == ' ' && at > 0 && digit(at - 1) && (1..=3).all(|next| digit(at + next)) && !digit(at + 4);
        let inside = letter.is_ascii_digit() || matches!(letter, '.' | ',') || GROUPING.contains(letter) || group;
        if !inside {
            break;
        }
        at += 1;
    }
    // an exponent counts only with digits behind
    if letters.get(at).is_some_and(|(_, letter)| matches!(letter, 'e' | 'E')) {
        let sign = usize::from(letters.get(at + 1).is_some_and(|(_, letter)| matches!(letter, '+' | '-' | '−')));
        if digit(at + 1 + sign) {
            at += 1 + sign;
            while digit(at) {
                at += 1;
            }
        }
    }
    let end = letters.get(at).map_or(unsigned.len(), |(byte, _)| *byte);
    let (number, rest) = cell.split_at(cell.len() - unsigned.len() + end);
    Some((number, rest.trim()))
}

/// The decimal mark that the numbers of a table have.
pub fn decimal<'c>(numbers: impl Iterator<Item = &'c str>) -> Result<Decimal, Unclear> {
    let (mut point, mut comma, mut either) = (None, None, None);
    for number in numbers {
        match reading(number) {
            Some(Some(Decimal::Point)) => point = point.or(Some(number)),
            Some(Some(Decimal::Comma)) => comma = comma.or(Some(number)),
            Some(None) => either = either.or(Some(number)),
            None => {}
        }
    }
    match (point, comma, either) {
        (Some(point), Some(comma), _) => Err(Unclear::Both(point.into(), comma.into())),
        (None, None, Some(either)) => Err(Unclear::Either(either.into())),
        (None, Some(_), _) => Ok(Decimal::Comma),
        _ => Ok(Decimal::Point),
    }
}

/// What one number says of the decimal mark: nothing, that it is unclear, or which.
fn reading(number: &str) -> Option<Option<Decimal>> {
    let mantissa = number.split(['e', 'E']).next().unwrap_or_default();
    let (points, commas) = (mantissa.matches('.').count(), mantissa.matches(',').count());
    match (points, commas) {
        (0, 0) => None,
        // the mark that stands once and last is the decimal one
        (1.., 1..) => {
            Some(Some(if mantissa.rfind('.') > mantissa.rfind(',') { Decimal::Point } else { Decimal::Comma }))
        }
        (2.., 0) => Some(Some(Decimal::Comma)),
        (0, 2..) => Some(Some(Decimal::Point)),
        (1, 0) => Some(single(mantissa, '.').then_some(Decimal::Point)),
        (0, _) => Some(single(mantissa, ',').then_some(Decimal::Comma)),
    }
}

/// Whether a mark that stands once can only be the decimal one: no group of thousands looks like that.
fn single(mantissa: &str, mark: char) -> bool {
    let Some((before, after)) = mantissa.split_once(mark) else { return false };
    let before = before.trim_start_matches(['+', '-', '−']);
    after.len() != 3 || before.is_empty() || before.len() > 3 || before.starts_with('0')
}

/// The number with a decimal point and without groups; none where its groups are no thousands.
pub fn plain(number: &str, decimal: Decimal) -> Option<String> {
    let (mark, group) = match decimal {
        Decimal::Point => ('.', ','),
        Decimal::Comma => (',', '.'),
    };
    let number = number.replace('−', "-").replace([' '], "").replace(GROUPING, "");
    let at = number.find(['e', 'E']).unwrap_or(number.len());
    let (mantissa, exponent) = number.split_at(at);
    let (whole, part) = mantissa.split_once(mark).unwrap_or((mantissa, ""));
    let digits = whole.trim_start_matches(['+', '-']);
    let mut groups = digits.split(group);
    let first = groups.next().unwrap_or_default();
    let grouped = digits.contains(group);
    let sound = !grouped || ((1..=3).contains(&first.len()) && groups.all(|group| group.len() == 3));
    let only_digits = |text: &str| text.bytes().all(|byte| byte.is_ascii_digit());
    if !sound || !only_digits(part) || !only_digits(&digits.replace(group, "")) || digits.len() + part.len() == 0 {
        return None;
    }
    let sign = if whole.starts_with('-') { "-" } else { "" };
    let whole = digits.replace(group, "");
    let whole = if whole.is_empty() { "0" } else { whole.as_str() };
    let part = if part.is_empty() { String::new() } else { format!(".{part}") };
    let plain = format!("{sign}{whole}{part}{exponent}");
    plain.parse::<f64>().is_ok_and(f64::is_finite).then_some(plain)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_cell_parts_into_number_and_unit() {
        for (cell, number, unit) in [
            ("12,5 Nm", "12,5", "Nm"),
            ("12.5Nm", "12.5", "Nm"),
            ("1 250 kg", "1 250", "kg"),
            ("3 000", "3 000", ""),
            ("-0,5e-4 kg·m²", "-0,5e-4", "kg·m²"),
            ("5 elements", "5", "elements"),
            ("3e", "3", "e"),
        ] {
            assert_eq!(split(cell), Some((number, unit)), "{cell}");
        }
        assert_eq!(split("about 5"), None);
        assert_eq!(split(""), None);
    }

    #[test]
    fn the_decimal_mark_is_that_of_the_table() {
        let of = |numbers: &[&str]| decimal(numbers.iter().copied());
        assert_eq!(of(&["1.250", "0.5"]), Ok(Decimal::Point));
        assert_eq!(of(&["1,250", "0,5"]), Ok(Decimal::Comma));
        assert_eq!(of(&["1.250,00"]), Ok(Decimal::Comma));
        assert_eq!(of(&["1,250,000"]), Ok(Decimal::Point));
        assert_eq!(of(&["3000", "12"]), Ok(Decimal::Point));
        assert_eq!(of(&["0.318"]), Ok(Decimal::Point), "no group begins with a zero");
        assert_eq!(of(&["1,250"]), Err(Unclear::Either("1,250".into())));
        assert_eq!(of(&["1.5", "2,5"]), Err(Unclear::Both("1.5".into(), "2,5".into())));
    }

    #[test]
    fn numbers_become_plain_and_broken_groups_do_not() {
        for (number, decimal, expected) in [
            ("1.250,75", Decimal::Comma, Some("1250.75")),
            ("1,250.75", Decimal::Point, Some("1250.75")),
            ("1 250", Decimal::Point, Some("1250")),
            ("1'250", Decimal::Comma, Some("1250")),
            (",5", Decimal::Comma, Some("0.5")),
            ("−3,2e-4", Decimal::Comma, Some("-3.2e-4")),
            ("12,50.1", Decimal::Point, None),
            ("1.25,0.1", Decimal::Comma, None),
            ("1e999", Decimal::Point, None),
        ] {
            assert_eq!(plain(number, decimal).as_deref(), expected, "{number}");
        }
    }
}
