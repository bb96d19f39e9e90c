//! Numbers as a reader sees them: rounding, grouping of digits, units, and money.
//!
//! Method: three significant digits unless more decide. A demand and its limit get as many digits as keep
//! them on the right sides of each other; a utilisation is rounded up. So rounding never turns a verdict.

use super::inch;
use crate::units::UnitSystem;

/// Shown in place of a value that the record does not hold.
pub const NOT_KNOWN: &str = "not known";

/// Groups the digits before the decimal point by threes, from five digits on.
fn group(digits: &str) -> String {
    let (whole, rest) = digits.split_once('.').map_or((digits, None), |(whole, rest)| (whole, Some(rest)));
    let (sign, whole) = whole.strip_prefix('-').map_or(("", whole), |whole| ("−", whole));
    let mut out = String::from(sign);
    for (index, digit) in whole.chars().enumerate() {
        if whole.len() > 4 && index > 0 && (whole.len() - index).is_multiple_of(3) {
            out.push('\u{202f}');
        }
        out.push(digit);
    }
    if let Some(rest) = rest {
        out.push('.');
        out.push_str(rest);
    }
    out
}

fn superscript(exponent: i32) -> String {
    const DIGITS: [char; 10] = ['⁰', '¹', '²', '³', '⁴', '⁵', '⁶', '⁷', '⁸', '⁹'];
    let sign = if exponent < 0 { "⁻" } else { "" };
    let digits = exponent.unsigned_abs().to_string();
    let raised = digits.bytes().map(|byte| DIGITS[usize::from(byte - b'0').min(9)]);
    sign.chars().chain(raised).collect()
}

/// A number with so many significant digits; a power of ten beyond ten million and below one in ten thousand.
pub fn figure(value: f64, digits: usize) -> String {
    if !value.is_finite() {
        return NOT_KNOWN.into();
    }
    if value == 0.0 {
        return "0".into();
    }
    let scientific = format!("{:.*e}", digits.max(1) - 1, value);
    let (mantissa, exponent) = scientific.split_once('e').unwrap_or((&scientific, "0"));
    let exponent: i32 = exponent.parse().unwrap_or(0);
    if !(-4..7).contains(&exponent) {
        return format!("{} × 10{}", trim(mantissa).replace('-', "−"), superscript(exponent));
    }
    let rounded: f64 = scientific.parse().unwrap_or(value);
    let decimals = usize::try_from(digits as i32 - 1 - exponent).unwrap_or(0);
    group(trim(&format!("{rounded:.decimals$}")))
}

fn trim(number: &str) -> &str {
    if number.contains('.') { number.trim_end_matches('0').trim_end_matches('.') } else { number }
}

/// A count, all its digits.
pub fn count(value: u64) -> String {
    group(&value.to_string())
}

/// A number with its unit in the units of the reader.
pub fn quantity(value: Option<f64>, unit: &str, system: UnitSystem, digits: usize) -> String {
    match value {
        Some(value) if value.is_finite() => {
            let (value, unit) = inch::shown(value, unit, system);
            with_unit(figure(value, digits), unit)
        }
        _ => NOT_KNOWN.into(),
    }
}

fn with_unit(number: String, unit: &str) -> String {
    match unit {
        "" | "1" => number,
        _ => format!("{number} {unit}"),
    }
}

/// A demand and its limit, with as many digits as keep the stricter side visible.
///
/// Three digits each; more where two different numbers would otherwise read the same.
pub fn pair(demand: Option<f64>, limit: Option<f64>, unit: &str, system: UnitSystem) -> (String, String) {
    let enough = match (demand, limit) {
        (Some(demand), Some(limit)) if differ(demand, limit) => {
            let (demand, limit) = (inch::shown(demand, unit, system).0, inch::shown(limit, unit, system).0);
            (3..12).find(|&digits| figure(demand, digits) != figure(limit, digits)).unwrap_or(12)
        }
        _ => 3,
    };
    (quantity(demand, unit, system, enough), quantity(limit, unit, system, enough))
}

/// Whether two values differ by more than rounding in the last digits, the tolerance of the verdicts.
fn differ(first: f64, second: f64) -> bool {
    (first - second).abs() > 1e-9 * second.abs().max(first.abs())
}

/// The least hundredth part that is kept of a utilisation just above a step, so that 0.07 reads 7 %.
const DUST: f64 = 1e-7;

/// A utilisation in percent, rounded up; more digits where whole percents would hide which side of 100 % it is on.
pub fn utilisation(value: Option<f64>) -> String {
    let Some(percent) = value.filter(|value| value.is_finite()).map(|value| value * 100.0) else {
        return NOT_KNOWN.into();
    };
    let up = |decimals: i32| {
        let scale = 10f64.powi(decimals);
        ((percent - DUST).max(0.0) * scale).ceil() / scale
    };
    if percent > 1000.0 {
        return format!("{} ×", count((percent / 100.0).ceil().min(1e15) as u64));
    }
    let decimals = match percent {
        percent if percent <= 99.0 || percent >= 101.0 => 0,
        percent if (percent - 100.0).abs() <= DUST => 0,
        percent if percent > 100.0 => 1,
        _ => (0..=4).find(|&decimals| up(decimals) < 100.0).unwrap_or(0),
    };
    format!("{:.*} %", decimals as usize, up(decimals))
}

/// What a utilisation leaves: 1 minus it, rounded down; nothing for a limit that is missed.
pub fn reserve(value: Option<f64>) -> String {
    match value {
        Some(value) if value.is_finite() => {
            format!("{:.0} %", ((1.0 - value) * 100.0 + DUST).floor().max(0.0))
        }
        _ => NOT_KNOWN.into(),
    }
}

/// An amount of money in whole units of the currency; below a hundred two decimals.
pub fn money(amount: Option<f64>, currency: &str) -> String {
    match amount {
        Some(amount) if amount.is_finite() => {
            let decimals = if amount.abs() < 100.0 { 2 } else { 0 };
            with_unit(group(&format!("{amount:.decimals$}")), currency)
        }
        _ => NOT_KNOWN.into(),
    }
}

/// An amount with two decimals, so that a sum of such amounts can be checked.
pub fn to_the_cent(amount: Option<f64>, currency: &str) -> String {
    match amount.filter(|amount| amount.is_finite()) {
        Some(amount) => with_unit(group(&format!("{amount:.2}")), currency),
        None => NOT_KNOWN.into(),
    }
}

/// How far one amount is from another, in percent with its sign: "+12 %".
pub fn change(value: Option<f64>, from: Option<f64>) -> String {
    match (value, from) {
        (Some(value), Some(from)) if value.is_finite() && from.is_finite() && from != 0.0 => {
            let percent = (value / from - 1.0) * 100.0;
            if percent.abs() < 1e-7 {
                "the same".into()
            } else {
                let sign = if percent > 0.0 { "+" } else { "−" };
                format!("{sign}{} %", figure(percent.abs(), if percent.abs() < 10.0 { 2 } else { 3 }))
            }
        }
        _ => NOT_KNOWN.into(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_utilisation_is_rounded_up_and_stays_on_its_side_of_the_limit() {
        for (value, text) in [
            (0.07, "7 %"),
            (0.9375, "94 %"),
            (0.99, "99 %"),
            (0.9999, "99.99 %"),
            (0.999_999_99, "100 %"),
            (1.0, "100 %"),
            (1.0 + 1e-10, "100 %"),
            (1.000_01, "100.1 %"),
            (1.015_625, "102 %"),
            (0.0, "0 %"),
            (12.3, "13 ×"),
        ] {
            assert_eq!(utilisation(Some(value)), text, "{value}");
        }
        assert_eq!(utilisation(None), NOT_KNOWN);
    }

    #[test]
    fn a_reserve_is_rounded_down() {
        assert_eq!(reserve(Some(0.9375)), "6 %");
        assert_eq!(reserve(Some(1.2)), "0 %");
        assert_eq!(reserve(Some(0.93)), "7 %");
    }

    #[test]
    fn a_demand_beyond_its_limit_reads_beyond_its_limit() {
        let (demand, limit) = pair(Some(2560.4), Some(2560.0), "1/min", UnitSystem::Metric);
        assert_eq!((demand.as_str(), limit.as_str()), ("2560.4 1/min", "2560 1/min"));
        let (demand, limit) = pair(Some(154.0), Some(200.0), "µm", UnitSystem::Metric);
        assert_eq!((demand.as_str(), limit.as_str()), ("154 µm", "200 µm"));
        let (demand, limit) = pair(Some(0.1), Some(0.1), "mm", UnitSystem::Metric);
        assert_eq!(demand, limit);
    }

    #[test]
    fn numbers_have_three_digits_groups_and_powers() {
        for (value, digits, text) in [
            (12.345, 3, "12.3"),
            (0.000_5, 3, "0.0005"),
            (123_456.0, 3, "123\u{202f}000"),
            (1.24e8, 3, "1.24 × 10⁸"),
            (2.5e-7, 3, "2.5 × 10⁻⁷"),
            (-3.0, 3, "−3"),
            (9_999.6, 4, "10\u{202f}000"),
        ] {
            assert_eq!(figure(value, digits), text);
        }
        assert_eq!(money(Some(12_345.6), "EUR"), "12\u{202f}346 EUR");
        assert_eq!(change(Some(112.0), Some(100.0)), "+12 %");
        assert_eq!(change(Some(95.0), Some(100.0)), "−5 %");
    }
}
