//! A requirement and the range over which it is turned, as a command line says it: "travel=0.5m..12m".
//!
//! Method: values are read by `units`; requirements without a unit are plain numbers. Values of a range stand at equal
//! ratios where its end is more than four times its beginning, else at equal distances. Limits: the range is positive.

use super::Requirement;
use crate::units::{Dimension, UnitError, parse_as};
use thiserror::Error;

/// Beyond this ratio of end to beginning the values stand at equal ratios.
const GEOMETRIC_BEYOND: f64 = 4.0;

/// A requirement and the range over which it is turned, in SI units.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Span {
    /// The requirement.
    pub requirement: Requirement,
    /// The lesser end.
    pub from: f64,
    /// The greater end.
    pub to: f64,
}

/// Why a text is no range of a requirement.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum SpanError {
    /// It is not written KEY=FROM..TO.
    #[error("`{text}` is not written KEY=FROM..TO, such as travel=0.5m..12m")]
    Shape {
        /// What was read.
        text: String,
    },
    /// There is no such requirement.
    #[error("`{key}` is no requirement that can be turned{}; those are {}", did_you_mean(.near), keys())]
    Unknown {
        /// What was read.
        key: String,
        /// The nearest spelling.
        near: Option<&'static str>,
    },
    /// It is one of the whole machine.
    #[error(
        "`{key}` is a limit of the whole machine and decides between whole machines, so no range of it belongs to one axis; those that can be turned are {}",
        keys()
    )]
    OfMachine {
        /// What was read.
        key: &'static str,
    },
    /// A value is not one of the requirement.
    #[error("{key}: {cause}")]
    Value {
        /// The requirement.
        key: &'static str,
        /// What is wrong.
        cause: UnitError,
    },
    /// A value is not positive.
    #[error("{key}: `{text}` is not above 0")]
    NotPositive {
        /// The requirement.
        key: &'static str,
        /// What was read.
        text: String,
    },
    /// Both ends are the same.
    #[error("{key}: `{text}` begins where it ends; give two different values")]
    Nothing {
        /// The requirement.
        key: &'static str,
        /// What was read.
        text: String,
    },
    /// Both ranges turn the same requirement.
    #[error("`{key}` is already turned by --over; name another requirement")]
    Twice {
        /// The requirement.
        key: &'static str,
    },
}

fn did_you_mean(near: &Option<&str>) -> String {
    near.map(|near| format!(", did you mean `{near}`?")).unwrap_or_default()
}

/// The keys of the requirements that can be turned over a range.
fn keys() -> String {
    let keys: Vec<&str> = turnable().collect();
    keys.join(", ")
}

fn turnable() -> impl Iterator<Item = &'static str> {
    Requirement::ALL.into_iter().filter(|&requirement| requirement != Requirement::Purchase).map(Requirement::key)
}

impl Span {
    /// Reads "travel=0.5m..12m"; `nearest` finds the nearest of some spellings.
    pub fn read(
        text: &str,
        nearest: impl Fn(&str, &[&'static str]) -> Option<&'static str>,
    ) -> Result<Span, SpanError> {
        let shape = || SpanError::Shape { text: text.into() };
        let (key, range) = text.split_once('=').ok_or_else(shape)?;
        let (from, to) = range.split_once("..").ok_or_else(shape)?;
        let key = key.trim();
        let requirement = Requirement::named(key).ok_or_else(|| SpanError::Unknown {
            key: key.into(),
            near: nearest(key, &turnable().collect::<Vec<_>>()),
        })?;
        let key = requirement.key();
        if requirement == Requirement::Purchase {
            return Err(SpanError::OfMachine { key });
        }
        let dimension = requirement.unit().map_or(Dimension::Ratio, |(dimension, _)| dimension);
        let value = |text: &str| {
            let value = parse_as(dimension, text).map_err(|cause| SpanError::Value { key, cause })?;
            if value > 0.0 { Ok(value) } else { Err(SpanError::NotPositive { key, text: text.trim().into() }) }
        };
        let (from, to) = (value(from)?, value(to)?);
        if from == to {
            return Err(SpanError::Nothing { key, text: range.into() });
        }
        let (from, to) = if from < to { (from, to) } else { (to, from) };
        Ok(Span { requirement, from, to })
    }

    /// Both ranges, which turn different requirements.
    pub fn differ(self, other: Span) -> Result<(), SpanError> {
        if self.requirement == other.requirement {
            return Err(SpanError::Twice { key: self.requirement.key() });
        }
        Ok(())
    }

    /// Whether its values stand at equal ratios, otherwise at equal distances.
    pub fn geometric(self) -> bool {
        self.to / self.from > GEOMETRIC_BEYOND
    }

    /// The values at so many steps, both ends among them.
    pub fn values(self, steps: usize) -> Vec<f64> {
        let at = |step: usize| match step {
            0 => self.from,
            step if step == steps => self.to,
            step => {
                let share = step as f64 / steps as f64;
                if self.geometric() {
                    self.from * (self.to / self.from).powf(share)
                } else {
                    self.from + (self.to - self.from) * share
                }
            }
        };
        (0..=steps).map(at).collect()
    }

    /// The middle of two of its values.
    pub fn middle(self, low: f64, high: f64) -> f64 {
        if self.geometric() { (low * high).sqrt() } else { 0.5 * (low + high) }
    }

    /// A value in the unit in which the requirement is told.
    pub fn told(self, value: f64) -> f64 {
        value / self.requirement.unit().map_or(1.0, |(_, unit)| unit.si)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str) -> Result<Span, String> {
        Span::read(text, |_, _| Some("travel")).map_err(|error| error.to_string())
    }

    #[test]
    fn a_range_is_read_in_any_unit_and_either_way_round() {
        let span = read("travel=12m..500 mm").expect("a range");
        assert_eq!((span.requirement, span.from, span.to), (Requirement::Travel, 0.5, 12.0));
        let years = read("years-in-service=5..20").expect("plain numbers");
        assert_eq!((years.from, years.to), (5.0, 20.0));
        let speed = read("speed=5m/min..80m/min").expect("speeds");
        assert!((speed.told(speed.to) - 80.0).abs() < 1e-12);
    }

    #[test]
    fn what_is_wrong_is_told_with_what_would_do() {
        for (text, told) in [
            ("travel", "KEY=FROM..TO"),
            ("travel=1m", "KEY=FROM..TO"),
            ("travle=1m..2m", "did you mean `travel`?"),
            ("travle=1m..2m", "cutting-force"),
            ("purchase=1..2", "limit of the whole machine"),
            ("travel=1..2", "in mm, m"),
            ("travel=1kg..2m", "unit of"),
            ("travel=0m..2m", "not above 0"),
            ("travel=-1m..2m", "not above 0"),
            ("travel=2m..2000mm", "begins where it ends"),
            ("travel=nan..2m", "finite"),
        ] {
            let error = read(text).expect_err(text);
            assert!(error.contains(told), "{text}: {error}");
        }
    }

    #[test]
    fn values_hold_both_ends_and_stand_at_equal_ratios_over_a_wide_range() {
        let wide = read("travel=1m..16m").expect("a range").values(4);
        for (value, wanted) in wide.iter().zip([1.0, 2.0, 4.0, 8.0, 16.0]) {
            assert!((value / wanted - 1.0).abs() < 1e-12, "{wide:?}");
        }
        assert_eq!(read("travel=1m..3m").expect("a range").values(4), [1.0, 1.5, 2.0, 2.5, 3.0]);
    }
}
