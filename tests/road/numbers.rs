//! Numbers that nobody means: not one of them passes a limit, reaches a report or brings the program down.
//!
//! Every property is derived here, no source.

use crate::small::{self, HORIZONTAL, VERTICAL};
use axiswright::brief;
use axiswright::pipeline::{self, Inputs, recommend};
use axiswright::record::{CandidateRecord, Outcome};
use axiswright::report;
use axiswright::rule::{Sense, passes, utilisation, verdict};
use axiswright::units::UnitSystem;
use rayon::prelude::*;
use std::ops::Range;

const HOSTILE: [&str; 14] =
    ["0", "-0.0", "-1", "1e-320", "1e-30", "1e-9", "1e9", "1e12", "1e30", "1e308", "1e400", ".nan", ".inf", "-.inf"];

/// Where the numbers of a brief stand, those of its values alone.
fn numbers(text: &str) -> Vec<Range<usize>> {
    let bytes = text.as_bytes();
    let mut found = Vec::new();
    let mut at = 0;
    while at < bytes.len() {
        let begins = bytes[at].is_ascii_digit() && at > 0 && bytes[at - 1] == b' ';
        let length = bytes[at..].iter().take_while(|byte| byte.is_ascii_digit() || **byte == b'.').count();
        if begins {
            found.push(at..at + length);
        }
        at += length.max(1);
    }
    found
}

/// A drive that is called admissible keeps every binding rule by a number.
fn assert_sound(drive: &CandidateRecord, what: &str) {
    assert!(drive.merit.is_finite() && drive.merit >= 0.0, "{what}: merit {}", drive.merit);
    assert!(!drive.findings.is_empty(), "{what}");
    for finding in &drive.findings {
        let passed = finding.utilisation.is_some_and(|utilisation| utilisation.is_finite() && passes(utilisation));
        assert_eq!(finding.verdict == "pass", passed, "{what}: {finding:?}");
        assert!(passed || finding.obligation == "should", "{what}: {finding:?}");
    }
}

fn answered(inputs: &Inputs, what: &str) -> bool {
    let record = recommend(inputs, false);
    for axis in &record.axes {
        let others = axis.families.iter().filter_map(|family| family.best.as_ref());
        axis.chosen.iter().chain(others).for_each(|drive| assert_sound(drive, what));
    }
    let text = report::markdown(&record, UnitSystem::Metric);
    let broken = ["NaN", "nan", "inf", "Infinity", "infinity"];
    let word = text.split(|letter: char| !letter.is_alphanumeric()).find(|word| broken.contains(word));
    assert_eq!(word, None, "{what}");
    record.outcome == Outcome::Chosen
}

#[test]
fn no_number_of_a_brief_brings_the_road_down_or_passes_unknown() {
    let cases: Vec<(String, String)> = [HORIZONTAL, VERTICAL]
        .into_iter()
        .flat_map(|text| {
            let hostile = |place: Range<usize>| {
                HOSTILE.map(|number| {
                    let line = text[..place.start].rfind('\n').map_or("", |start| &text[start + 1..]);
                    let what = format!("{number} in `{}`", line.lines().next().unwrap_or_default().trim());
                    (what, format!("{}{number}{}", &text[..place.start], &text[place.end..]))
                })
            };
            numbers(text).into_iter().flat_map(hostile).collect::<Vec<_>>()
        })
        .collect();
    let seen = cases.par_iter().map(|(what, text)| {
        let brief = match brief::load("hostile.yaml", text) {
            Ok(brief) => brief,
            Err(faults) => {
                for fault in faults.iter() {
                    assert!(fault.line > 0 && !fault.message.is_empty(), "{what}: {fault:?}");
                }
                return [1, 0, 0];
            }
        };
        match pipeline::check(Inputs { brief, catalog: small::catalog(), rulebook: small::rules() }) {
            Err(_) => [1, 0, 0],
            Ok(inputs) if answered(&inputs, what) => [0, 1, 0],
            Ok(_) => [0, 0, 1],
        }
    });
    let [refused, chosen, none] = seen.reduce(|| [0; 3], |a, b| [a[0] + b[0], a[1] + b[1], a[2] + b[2]]);
    assert_eq!(refused + chosen + none, cases.len());
    assert!(refused > 200 && chosen > 20 && none > 5, "{refused} refused, {chosen} chosen, {none} without a drive");
}

#[test]
fn what_is_no_number_never_passes_a_limit_and_what_lies_on_it_does() {
    let bounds = [f64::NAN, f64::INFINITY, -f64::INFINITY, 0.0, -1.0, 1e-320, 1.0, 1e308];
    for sense in [Sense::AtMost, Sense::AtLeast] {
        for demand in bounds {
            for limit in bounds {
                let told = utilisation(sense, demand, limit);
                // a limit that is no positive number, or a demand that ought to be one, is not judged
                let (keeps, positive) = match sense {
                    Sense::AtMost => (demand <= limit, limit > 0.0),
                    Sense::AtLeast => (demand >= limit, demand > 0.0),
                };
                let known = demand.is_finite() && limit.is_finite();
                assert_eq!(passes(told), keeps && positive && known, "{sense:?} {demand} {limit}: {told}");
            }
        }
        // on the limit within rounding passes, beyond it by a millionth does not
        for limit in [0.1, 3.0, 1e-9, 7e11] {
            let beyond = if sense == Sense::AtMost { 1.0 + 1e-6 } else { 1.0 - 1e-6 };
            let judged = |demand: f64| format!("{:?}", verdict(utilisation(sense, demand, limit)));
            assert_eq!(judged(limit), "Pass");
            assert_eq!(judged(limit * (1.0 + f64::EPSILON)), "Pass");
            assert_eq!(judged(limit * (1.0 - f64::EPSILON)), "Pass");
            assert_eq!(judged(limit * beyond), "Fail");
        }
    }
}
