//! The table of what was caught.

use crate::ROOMS;
use crate::run::{Listed, compares_pages, listed, outcomes};
use std::collections::BTreeSet;
use std::fmt::Write;
use std::path::Path;

/// Survivors that can change no answer, `place<TAB>change` a line each; the reason stands above each group behind a `#`.
const EQUIVALENT: &str = include_str!("../equivalent.tsv");

/// Wilson's interval of a share, 95 %.
fn interval(caught: usize, tried: usize) -> (f64, f64) {
    let (z, n) = (1.959_964, tried as f64);
    let share = caught as f64 / n;
    let middle = share + z * z / (2.0 * n);
    let half = z * (share * (1.0 - share) / n + z * z / (4.0 * n * n)).sqrt();
    ((middle - half) / (1.0 + z * z / n), (middle + half) / (1.0 + z * z / n))
}

/// Place and change of those.
pub fn equivalent() -> BTreeSet<(&'static str, &'static str)> {
    EQUIVALENT.lines().filter(|line| !line.starts_with('#')).filter_map(|line| line.split_once('\t')).collect()
}

pub fn table(work: &Path) -> String {
    let (listed, outcomes) = (listed(work), outcomes(work));
    let equivalent = equivalent();
    let mut text = String::from(
        "| folder of `src` | mutants | do not compile | tried | caught | by whole pages alone | survived | of these can change no answer | share caught | without survivors that can change no answer |\n|---|---|---|---|---|---|---|---|---|---|\n",
    );
    for room in ROOMS {
        let of_room: Vec<_> = listed.iter().filter(|one| one.room == room).collect();
        let planted = of_room.iter().filter(|one| one.planted).count();
        let (mut tried, mut caught, mut pages, mut same) = (0, 0, 0, 0);
        for one in &of_room {
            let Some((outcome, by)) = outcomes.get(&one.id) else { continue };
            tried += 1;
            if outcome == "caught" {
                caught += 1;
                pages += usize::from(compares_pages(by.split("::").next().unwrap_or_default()));
            } else if equivalent.contains(&(one.place.as_str(), one.change.as_str())) {
                same += 1;
            }
        }
        if tried == 0 {
            continue;
        }
        let all = tried == planted;
        let share = |caught: usize, tried: usize| {
            let (low, high) = interval(caught, tried);
            let share = format!("{:.1} %", 100.0 * caught as f64 / tried as f64);
            if all { share } else { format!("{share} ({:.1} to {:.1})", 100.0 * low, 100.0 * high) }
        };
        let whole = share(caught, tried);
        // of those that are left out, the number among what was not tried is not known: the interval is that of the sample
        let rest = share(caught, tried - same);
        let _ = writeln!(
            text,
            "| `{room}` | {} | {} | {tried} | {caught} | {pages} | {} | {same} | {whole} | {rest} |",
            of_room.len(),
            of_room.len() - planted,
            tried - caught,
        );
    }
    // the list hangs on the lines of the sources
    for (place, change) in &equivalent {
        let of_room = |one: &&Listed| place.strip_prefix("src/").is_some_and(|place| place.starts_with(&one.room));
        let mut of_room = listed.iter().filter(of_room).peekable();
        if of_room.peek().is_some() && !of_room.any(|one| one.place == *place && one.change == *change) {
            let _ =
                writeln!(text, "no such change any more, though it is listed as one of no effect: {place} {change}");
        }
    }
    text
}
