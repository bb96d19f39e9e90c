//! What depends on the day on which a command runs: a waiver that has run out.
//!
//! Method: the day of the system's clock, in universal time, is held against the date of the waiver. It is told as a message and
//! never enters a result: the same inputs give the same bytes on every day.
//! Limits: a waiver that ran out still holds; who waives decides, not the clock of whoever runs the program.

use super::Console;
use crate::brief::Brief;
use std::time::{SystemTime, UNIX_EPOCH};

/// Tells every waiver whose last day is past.
pub fn tell_waivers_that_ran_out(brief: &Brief, console: &mut Console) {
    let Ok(since) = SystemTime::now().duration_since(UNIX_EPOCH) else { return };
    let today = day_after_epoch(since.as_secs() / 86_400);
    for message in ran_out(brief, &today) {
        console.message(&message);
    }
}

/// The message for each waiver that ended before this day, written as in ISO 8601, so that texts compare like days.
fn ran_out(brief: &Brief, today: &str) -> Vec<String> {
    let past = brief.waivers.iter().filter_map(|waiver| Some((waiver, waiver.until.as_deref()?)));
    past.filter(|(_, until)| *until < today)
        .map(|(waiver, until)| {
            let axis = waiver.axis.as_deref().map_or(String::new(), |axis| format!(" on axis {axis}"));
            format!(
                "note: the waiver of rule `{}`{axis} by {} ran out on {until}; it was used all the same, ask for a new one",
                waiver.rule, waiver.by
            )
        })
        .collect()
}

/// The date so many days after 1970-01-01 in the Gregorian calendar.
fn day_after_epoch(mut days: u64) -> String {
    let leap = |year: u64| year.is_multiple_of(4) && (!year.is_multiple_of(100) || year.is_multiple_of(400));
    let mut year = 1970;
    loop {
        let length = if leap(year) { 366 } else { 365 };
        if days < length {
            break;
        }
        days -= length;
        year += 1;
    }
    let february = if leap(year) { 29 } else { 28 };
    let mut month = 1;
    for length in [31, february, 31, 30, 31, 30, 31, 31, 30, 31, 30] {
        if days < length {
            break;
        }
        days -= length;
        month += 1;
    }
    format!("{year:04}-{month:02}-{:02}", days + 1)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn days_are_counted_as_the_calendar_counts_them() {
        // days of the Unix epoch as POSIX counts them: 11 016 is 29 February 2000, 19 723 the first day of 2024
        for (days, date) in [(0, "1970-01-01"), (11_016, "2000-02-29"), (11_017, "2000-03-01"), (19_723, "2024-01-01")]
        {
            assert_eq!(day_after_epoch(days), date);
        }
        assert_eq!(day_after_epoch(19_722), "2023-12-31");
    }

    #[test]
    fn a_waiver_is_told_from_the_day_after_its_last() {
        let text = crate::brief::starter().to_string()
            + "\nwaivers:\n  - { rule: screw-whip, axis: x, reason: tried, by: the test, until: 2026-03-31 }\n";
        let brief = crate::brief::load("brief.yaml", &text).expect("a brief");
        assert!(ran_out(&brief, "2026-03-31").is_empty(), "its last day");
        let told = ran_out(&brief, "2026-04-01");
        assert!(
            told.len() == 1 && told[0].contains("`screw-whip` on axis x by the test ran out on 2026-03-31"),
            "{told:?}"
        );
    }
}
