//! What does not follow within a record, and how two numbers are compared.

use serde::Serialize;
use serde_json::Value;

/// Something that does not follow from what the record itself says.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Fault {
    /// Where: `axes[long].chosen.worksheet[screw-speed].value`.
    pub path: String,
    /// What, in words.
    pub what: String,
    /// What stands in the record.
    pub found: Value,
    /// What follows from the record.
    pub expected: Value,
    /// Difference over the expected value, where both are numbers.
    pub relative: Option<f64>,
}

impl Fault {
    /// A number that does not follow.
    pub fn number(path: String, what: String, found: Option<f64>, expected: Option<f64>) -> Fault {
        let relative = found.zip(expected).and_then(|(found, expected)| relative(found, expected));
        Fault { path, what, found: value(found), expected: value(expected), relative }
    }

    /// A word that does not follow.
    pub fn word(path: String, what: String, found: &str, expected: &str) -> Fault {
        Fault { path, what, found: found.into(), expected: expected.into(), relative: None }
    }
}

fn value(number: Option<f64>) -> Value {
    number.map_or(Value::Null, Value::from)
}

/// The difference of two numbers over the second; none where the second is zero or a number is not finite.
pub fn relative(found: f64, expected: f64) -> Option<f64> {
    let relative = (found - expected) / expected.abs();
    relative.is_finite().then_some(relative)
}

/// Whether two numbers that were worked out on two ways may be the same: each way rounds so many times.
pub fn same(found: f64, expected: f64, roundings: f64, size: f64) -> bool {
    (found - expected).abs() <= roundings * f64::EPSILON * size
}

/// What was checked, and what of it does not follow.
#[derive(Debug, Default)]
pub struct Checked {
    /// How many were checked.
    pub count: u64,
    /// Those that do not follow.
    pub faults: Vec<Fault>,
    /// What could not be checked, and why.
    pub not_checked: Vec<String>,
}
