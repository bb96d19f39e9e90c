//! The error budget of a drive: what it is made of, how its terms add up, and what would shrink each.
//!
//! Method: lines of the worksheet in the order in which they add up; a line that goes into no total is no part of it.
//! Limits: none.

use super::view::View;
use super::{figure, sheet, words};
use crate::record::CandidateRecord;
use serde::Serialize;

/// One line of the budget.
#[derive(Debug, Serialize)]
pub struct Term {
    name: String,
    value: String,
    how: &'static str,
    shrinks: &'static str,
    limit: String,
}

/// A term of the budget: how it is joined with others, what makes it smaller.
struct Known {
    id: &'static str,
    how: &'static str,
    shrinks: &'static str,
}

const fn known(id: &'static str, how: &'static str, shrinks: &'static str) -> Known {
    Known { id, how, shrinks }
}

/// The lines in the order in which they add up.
const BUDGET: [Known; 28] = [
    known("mean-travel-deviation", "in M_raw, by squares", "a better grade of the screw; a table of corrections"),
    known("travel-variation", "in M_raw, by squares", "a better grade of the screw; a table of corrections"),
    known(
        "cumulative-pitch-error",
        "in M by squares; what a table of corrections takes hold of",
        "a better quality of the rack; joints set by gauge and dial; a table of corrections",
    ),
    known(
        "long-error",
        "M_raw = root of the squares above; what a table of corrections takes hold of",
        "grade or quality; a linear scale",
    ),
    known("long-error-left", "M_left, in M by squares", "a table of corrections; a better measurement behind it"),
    known("turn-variation", "in M by squares", "a better grade of the screw; a linear scale"),
    known("pinion-total-pitch-deviation", "in the run-out of the pinion", "a better quality of the pinion"),
    known("run-out-error", "in M by squares", "a better pinion, run true on its seat; a linear scale"),
    known("pitch-step", "in M by squares", "a better quality of rack and pinion; a linear scale"),
    known("tilt-error", "in M by squares", "straighter guides; the measuring line nearer to the tool"),
    known("position-error", "M = root of the squares above", "its largest term"),
    known(
        "height-waviness",
        "datum of the rack: varies the play",
        "a flatter seat, machined or scraped after the guides",
    ),
    known("worst-mesh-play", "in the play of the drive", "a finer setting, a truer pinion; two pinions with a bias"),
    known("backlash-at-rack", "gearbox: in the play of the drive", "a gearbox of less play; a larger share of bias"),
    known("play", "in B, in line, what the control does not compensate", "gearbox of less play; two pinions; preload"),
    known("lost-motion", "servo and friction: in B, in line", "less friction; a stiffer drive; a linear scale"),
    known("reversal-error", "B = play left + lost motion", "its largest term"),
    known("measuring-step", "servo: in s as q/√12", "a finer encoder or scale"),
    known("drive-scatter", "servo and friction: in s by squares", "a finer step; less friction; a stiffer drive"),
    known("least-scatter", "in s by squares", "a linear scale on a rack; steadier temperature"),
    known("scatter", "s = root of the squares above", "its largest term"),
    known("repeatability", "R = B + 4·s", "less reversal or scatter"),
    known("accuracy", "A = M + B + 4·s; above 2 m E = M + B", "its largest term"),
    known("section-position-error", "M over 2 m", "as M"),
    known("section-accuracy", "A = M + B + 4·s over 2 m", "its largest term"),
    known("ripple", "apart, while cutting", "more overlap of the teeth; a better grade"),
    known(
        "thermal-growth",
        "apart, in service, in line with what else grows",
        "a linear scale of little expansion; a cooler screw; steadier air",
    ),
    known("tool-error", "half of M + B + 4·s", "its largest term"),
];

/// What the error budget ends in; a line that goes into none of these is no part of it.
const TOTALS: [&str; 7] =
    ["accuracy", "section-accuracy", "repeatability", "reversal-error", "ripple", "thermal-growth", "tool-error"];

/// How a term is joined with others on this drive.
fn how(known: &Known, drive: &CandidateRecord) -> &'static str {
    let by_scale = drive.line("long-error").is_some_and(|line| line.formula.as_deref() == Some("scale-error"));
    let within = |whole: &'static str, id: &str| sheet::behind(drive, &[whole]).contains(id);
    match known.id {
        "long-error" if by_scale => {
            "M_raw, the error of the scale over the travel; what a table of corrections takes hold of"
        }
        id if known.how.contains("in M") && !within("position-error", id) && within("ripple", id) => {
            "in the ripple while cutting, not in M, which the scale measures"
        }
        _ => known.how,
    }
}

/// The lines of the budget of a drive.
pub fn terms(view: &View, drive: &CandidateRecord) -> Vec<Term> {
    let behind = sheet::behind(drive, &TOTALS);
    let term = |known: &Known| {
        let line = drive.line(known.id).filter(|line| line.value.is_some())?;
        let judged =
            drive.findings.iter().find(|finding| finding.characteristic == *known.id && finding.limit.is_some());
        let limit = judged.map_or_else(
            || "–".into(),
            |finding| {
                let (_, limit) = view.pair(finding);
                let used = figure::utilisation(finding.utilisation);
                format!("{} {limit}, {used} used", words::sense(&finding.sense))
            },
        );
        Some(Term {
            name: view.words_of(known.id),
            value: view.quantity(line.value, &line.unit),
            how: how(known, drive),
            shrinks: known.shrinks,
            limit,
        })
    };
    // without a table of corrections what is left is what there was, and a rack has one error that builds up
    let repeats = |known: &&Known| {
        matches!(known.id, "long-error" | "long-error-left")
            && drive.line(known.id).is_some_and(|line| line.formula.as_deref() == Some("same-length"))
    };
    let told = BUDGET.iter().filter(|known| behind.contains(known.id)).filter(|known| !repeats(known));
    told.filter_map(term).collect()
}

/// Why accuracy is stated as it is on this travel.
pub fn statement(view: &View, drive: &CandidateRecord) -> Option<String> {
    let (travel, longest) = (drive.value("travel")?, drive.value("section-limit")?);
    let shown = view.value_of(drive, "travel")?;
    Some(match travel > longest {
        true => format!(
            "The travel of {shown} is longer than 2 m: there ISO 230-2 asks for one run in each direction and states neither A nor R, \
             for too few runs leave no scatter. So E, M and B hold over the full travel, A and R on a section of 2 m that is agreed."
        ),
        false => {
            format!("The travel of {shown} is at most 2 m: A, E, M, R and B hold over the full travel (ISO 230-2).")
        }
    })
}
