//! What a brief states that can be read and may still not be what was meant.
//!
//! Method: slips that no bound of a single value shows: a point that parts thousands, a speed that the travel is too short
//! for, hours a year that may be hours a day, and axes of which none carries another. A doubt changes nothing; the value
//! counts as it stands.
//! Limits: a point before three digits may part thousands where the last of them is 0, no 0 leads, and the key takes a
//! thousandfold value too; of inches, feet and pounds it is a decimal point, since they are written so. Common sense, no source.

use super::Axis;
use super::defaults::unit_named;
use super::reader::{Reader, key_below};
use super::types::Entry;
use crate::formula::s_curve::Profile;
use crate::units::{Acceleration, Jerk, Length, Measure, Velocity, print_rounded, significant};
use crate::yaml::{Faults, Node};

/// Something to look at again.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Doubt {
    /// The key that it is about, such as `axes.long.travel`.
    pub key: String,
    /// What is odd, and what it is taken for, in a sentence without its full stop.
    pub words: String,
}

/// How units begin with which only decimal points are written.
const INCHES: [&str; 7] = ["in", "ip", "\"", "″", "f", "lb", "mil"];

/// A day has so many hours; a machine that works no more of them a year is told.
const HOURS_A_DAY: f64 = 24.0;

/// Below this share of its speed an axis that crosses its whole travel is told.
const REACHED: f64 = 0.999;

impl Reader<'_> {
    /// Doubts a number that is written as thousands are in many countries, such as `1.200 kg`, if a thousandfold one fits too.
    pub(super) fn doubt_thousands(&mut self, node: &Node<'_>, fits: bool) {
        if !fits {
            return;
        }
        let mut unheard = Faults::default();
        let written = match node.is_text() {
            true => node.text(&mut unheard),
            // a number is looked up in the file only where it may be one
            false => node.number(&mut unheard).filter(|value| (1.0..1000.0).contains(value)).map(|_| node.written()),
        };
        let Some(written) = written else { return };
        if let Some((plain, decimal)) = thousands(written.trim()) {
            let words =
                format!("“{}” is taken for “{decimal}”; if the point parts thousands, write “{plain}”", written.trim());
            self.doubts.push(Doubt { key: node.path().into(), words });
        }
    }

    /// Doubts hours a year of which a day has as many.
    pub(super) fn doubt_hours(&mut self, hours: &Entry<f64>) {
        if hours.stated && hours.value <= HOURS_A_DAY {
            let words = format!(
                "{} counts as the working hours of a whole year; if it is hours a day, multiply it by the working days of a year",
                significant(hours.value, 6)
            );
            self.doubts.push(Doubt { key: "hours-per-year".into(), words });
        }
    }

    /// Doubts a machine of several axes of which none rides on another.
    pub(super) fn doubt_riding(&mut self, axes: &[Axis]) {
        if axes.len() > 1 && axes.iter().all(|axis| axis.carries.is_empty()) {
            let words = "no axis carries another, so none bears the mass of another and its drive; where one rides on another, \
                         the lower one needs the key “carries”";
            self.doubts.push(Doubt { key: "axes".into(), words: words.into() });
        }
    }

    /// Doubts a speed that the axis does not reach between the ends of its travel.
    pub(super) fn doubt_reach(
        &mut self,
        axis: &Node<'_>,
        travel: Length,
        speed: Velocity,
        acceleration: Acceleration,
        jerk: Jerk,
    ) {
        let reached = Profile::new(travel, speed, acceleration, jerk).speed;
        if reached < REACHED * speed.si() {
            let words = format!(
                "a travel of {} is too short to reach {}: speeding up and slowing down with {} and {} the axis gets to {}",
                told(travel, "mm", 6),
                told(speed, "m/min", 6),
                told(acceleration, "m/s²", 6),
                told(jerk, "m/s³", 6),
                told(Velocity::of_si(reached), "m/min", 3),
            );
            self.doubts.push(Doubt { key: key_below(axis, "travel"), words });
        }
    }
}

fn told<Q: Measure>(value: Q, unit: &str, digits: usize) -> String {
    unit_named::<Q>(unit).map_or(String::new(), |unit| print_rounded(value.si(), unit, digits))
}

/// What is written where the point parts thousands, and where it is a decimal one.
fn thousands(text: &str) -> Option<(String, String)> {
    let (whole, behind) = text.split_once('.')?;
    let digits = |part: &str| part.chars().take_while(char::is_ascii_digit).count();
    let (count, after) = (digits(whole), digits(behind));
    let (fraction, unit) = behind.split_at(after);
    let parted = count == whole.len() && (1..=3).contains(&count) && !whole.starts_with('0') && after == 3;
    let goes_on = unit.starts_with(['.', 'e', 'E', ',']);
    let of_inches = INCHES.iter().any(|name| unit.trim_start().starts_with(name));
    if !parted || !fraction.ends_with('0') || goes_on || of_inches {
        return None;
    }
    let short = fraction.trim_end_matches('0');
    let decimal = if short.is_empty() { whole.to_string() } else { format!("{whole}.{short}") };
    Some((format!("{whole}{fraction}{unit}"), format!("{decimal}{unit}")))
}

#[cfg(test)]
mod tests {
    use super::thousands;

    #[test]
    fn a_point_before_three_digits_of_which_the_last_is_nought_may_part_thousands() {
        let both = |plain: &str, decimal: &str| Some((plain.to_string(), decimal.to_string()));
        assert_eq!(thousands("1.200 kg"), both("1200 kg", "1.2 kg"));
        assert_eq!(thousands("45.000"), both("45000", "45"));
        assert_eq!(thousands("12.350m"), both("12350m", "12.35m"));
        for plain in ["0.500 mm", "1.20 kg", "1.2345 m", "1.234 kg", "1200 kg", "1.200e3 kg", "-1.200 K", "1.200.000"] {
            assert_eq!(thousands(plain), None, "{plain}");
        }
        for inches in ["1.500 in", "2.250\"", "1.500ft", "850.000 lb", "150.000 lbf", "100.000 ipm", "1.000 mil"] {
            assert_eq!(thousands(inches), None, "{inches}");
        }
    }
}
