//! From the rows of a table to a measurement: what belongs together, and what is missing or doubled.
//!
//! Method: rows are put in order of target; targets closer than a nanometre are one. Completeness is judged only
//! where every row could be read, so that one bad cell is not told twice. Limits: at most 64 runs a target.

use super::measured::{Measurement, Stretch, Target, file_name};
use super::table::{self, Row};
use super::words::several;
use crate::formula::MOST_PHASES;
use crate::units::{Length, Measure, significant};
use crate::yaml::{Fault, Faults, read_text};
use std::collections::BTreeMap;
use std::path::Path;

/// The most runs of a target that are read.
const MOST_RUNS: usize = 64;
// a series that is too short would drop runs without a word
const _: () = assert!(MOST_RUNS <= MOST_PHASES);
/// More targets of one direction than this, and more than half of all, have one reason and are one fault.
const MANY: usize = 3;
/// Targets closer than this are the same, m.
const SAME: f64 = 1e-9;

/// Reads a file; with a stretch, targets beyond the travel are faults.
pub fn load(path: &Path, stretch: Option<Stretch<'_>>) -> Result<Measurement, Faults> {
    let mut faults = Faults::default();
    let name = file_name(path);
    match read_text(path, &name, &mut faults) {
        Some(text) => parse(&name, &text, stretch),
        None => Err(faults),
    }
}

/// Reads a text, told as a file of this name.
pub fn parse(name: &str, text: &str, stretch: Option<Stretch<'_>>) -> Result<Measurement, Faults> {
    let whole = text;
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let mut faults = Faults::default();
    let table::Rows { mut rows, complete } = table::rows(name, text, &mut faults);
    // deviations are counted from the same point as the targets; only where the travel begins is moved to 0
    let start = stretch.map_or(0.0, |stretch| stretch.start.si());
    rows.iter_mut().for_each(|row| row.target -= start);
    rows.sort_by(|a, b| a.target.total_cmp(&b.target).then(a.place.start.cmp(&b.place.start)));
    let sorting = Sorting { name, text, start };
    if let Some(stretch) = stretch {
        sorting.beyond(&rows, &stretch, &mut faults);
    }
    let groups: Vec<&[Row]> = rows.chunk_by(|a, b| b.target - a.target <= SAME).collect();
    for group in &groups {
        sorting.twice(group, &mut faults);
    }
    let mut runs = 0;
    if complete && faults.is_empty() {
        runs = sorting.completeness(&groups, &mut faults);
    }
    if !faults.is_empty() {
        return Err(faults);
    }
    let direction = |group: &[Row], up: bool| {
        let mut rows: Vec<&Row> = group.iter().filter(|row| row.up == up).collect();
        rows.sort_by_key(|row| row.run);
        rows.iter().map(|row| Length::of_si(row.deviation)).collect()
    };
    let targets = groups.iter().map(|group| Target {
        position: Length::of_si(group[0].target),
        up: direction(group, true),
        down: direction(group, false),
    });
    Ok(Measurement { name: name.into(), text: whole.into(), targets: targets.collect(), runs })
}

/// A position in mm, as messages say it.
fn shown(position: f64) -> String {
    format!("{} mm", significant(position * 1e3, 9))
}

fn words(up: bool) -> &'static str {
    if up { "upward" } else { "downward" }
}

struct Sorting<'a> {
    name: &'a str,
    text: &'a str,
    start: f64,
}

impl Sorting<'_> {
    fn fault(&self, row: &Row, label: &'static str, message: String, help: Option<String>) -> Fault {
        Fault::in_text(self.name, self.text, row.place.clone(), label, message, help)
    }

    /// The line of the file in which a row stands.
    fn line(&self, row: &Row) -> usize {
        self.fault(row, "", String::new(), None).line
    }

    /// The target as the file has it.
    fn target(&self, row: &Row) -> String {
        shown(row.target + self.start)
    }

    /// Tells targets that lie beyond the travel, each once.
    fn beyond(&self, rows: &[Row], stretch: &Stretch<'_>, faults: &mut Faults) {
        let travel = stretch.travel.si();
        for group in rows.chunk_by(|a, b| b.target - a.target <= SAME) {
            let row = &group[0];
            if faults.is_full() {
                return;
            }
            if row.target >= -SAME && row.target <= travel + SAME {
                continue;
            }
            let message = format!(
                "the target {} is beyond the travel of axis `{}`, which is {} to {}",
                self.target(row),
                stretch.axis,
                shown(self.start),
                shown(self.start + travel)
            );
            let help = "if the axis counts from another point, name the position at which the travel begins by --start";
            faults.push(self.fault(row, "beyond the travel", message, Some(help.into())));
        }
    }

    /// Tells rows of a target that stand twice.
    fn twice(&self, group: &[Row], faults: &mut Faults) {
        let mut seen: BTreeMap<(bool, u64), &Row> = BTreeMap::new();
        for row in group {
            if faults.is_full() {
                return;
            }
            if let Some(first) = seen.get(&(row.up, row.run)) {
                let message = format!(
                    "run {} {} at target {} stands twice, first in line {}",
                    row.run,
                    words(row.up),
                    self.target(row),
                    self.line(first)
                );
                faults.push(self.fault(row, "a second time here", message, Some("keep one of the two".into())));
            } else {
                seen.insert((row.up, row.run), row);
            }
        }
    }

    /// Tells directions and runs that are missing; gives the runs that all have.
    fn completeness(&self, groups: &[&[Row]], faults: &mut Faults) -> usize {
        let count = |group: &[Row], up: bool| group.iter().filter(|row| row.up == up).count();
        let mut often: BTreeMap<usize, usize> = BTreeMap::new();
        for group in groups {
            for up in [true, false] {
                *often.entry(count(group, up)).or_default() += 1;
            }
        }
        often.remove(&0);
        let usual = often.iter().max_by_key(|(runs, times)| (**times, **runs)).map_or(0, |(runs, _)| *runs);
        let alone: Vec<&&[Row]> = groups.iter().filter(|group| count(group, true) * count(group, false) == 0).collect();
        let mixed_up = alone.len() > MANY && alone.len() * 2 > groups.len();
        if let (true, Some(group)) = (mixed_up, alone.first()) {
            let message = format!("{} of {} targets were measured in one direction only", alone.len(), groups.len());
            let help = "the target is the position that was commanded, the same in every run and direction; where the slide \
                        came to stand goes into the deviation";
            faults.push(self.fault(&group[0], "the first of them", message, Some(help.into())));
            return usual;
        }
        for group in groups {
            for up in [true, false] {
                let runs = count(group, up);
                let target = self.target(&group[0]);
                if runs == 0 {
                    let message = format!("the target {target} was measured {} only", words(!up));
                    let help = "every target is approached in both directions; leave out those that are not";
                    faults.push(self.fault(&group[0], "one direction only", message, Some(help.into())));
                } else if runs != usual {
                    let message =
                        format!("the target {target} has {} {}, others have {usual}", several(runs, "run"), words(up));
                    let help = "every target has the same number of runs in both directions";
                    let row = group.iter().find(|row| row.up == up).unwrap_or(&group[0]);
                    faults.push(self.fault(row, "other number of runs", message, Some(help.into())));
                }
            }
        }
        if groups.len() < 2 {
            let message = format!("the file holds {} target, and at least 2 are needed", groups.len());
            let help = "ISO 230-2 (from memory) asks for 5 a metre and at least 5";
            if let Some(row) = groups.first().and_then(|group| group.first()) {
                faults.push(self.fault(row, "the only one", message, Some(help.into())));
            }
        }
        if usual > MOST_RUNS {
            let message = format!("{usual} runs are too many; at most {MOST_RUNS} are read");
            let help = "leave out the runs that are not needed; ISO 230-2 (from memory) asks for 5";
            if let Some(row) = groups.iter().find_map(|group| group.iter().max_by_key(|row| row.run)) {
                faults.push(self.fault(row, "the last of them", message, Some(help.into())));
            }
        }
        usual
    }
}
