//! An audit in plain sentences.
//!
//! Method: the verdict first, then what became of the inputs, what it comes to, what does not follow and what differs, then
//! what was not checked. Limits: long lists are cut with a count of the rest; the JSON has all.

use super::consequence::DriveTold;
use super::{Again, Audit, Consequence, Difference, Fault, InputStanding, Standing, Weight};
use crate::units::significant;
use serde_json::Value;
use std::fmt::Write;

/// How many entries of a list are told.
const TOLD: usize = 25;

/// The audit as text.
pub fn words(audit: &Audit) -> String {
    let mut out = String::new();
    line(&mut out, &verdict(audit));
    line(&mut out, "");
    line(
        &mut out,
        &format!(
            "Machine: {}. Record written by axiswright {}, audited by {}.",
            audit.machine_name, audit.written_by, audit.audited_by
        ),
    );
    line(&mut out, &again(audit));
    inputs(&mut out, &audit.inputs);
    if audit.recommended_again == Again::Yes && !audit.rederives {
        heading(&mut out, "What it comes to");
        for consequence in &audit.consequences {
            line(&mut out, &format!("- {}", told(consequence, &audit.currency)));
        }
    }
    list(&mut out, "What does not follow within the record", &audit.faults, fault);
    let (follows, own): (Vec<&Difference>, Vec<&Difference>) = audit.differences.iter().partition(|one| one.follows);
    list(&mut out, "What differs from the record when it is recommended again, the heaviest first", &own, |one| {
        difference(one)
    });
    if !follows.is_empty() {
        let more = several(follows.len() as u64, "further value differs", "further values differ");
        line(&mut out, &format!("- {more} because the drive is another; `--json` lists them."));
    }
    let rounding = audit.differences.iter().filter(|one| one.may_be_rounding()).count();
    if rounding > 0 {
        let many = several(rounding as u64, "of these numbers differs", "of these numbers differ");
        line(
            &mut out,
            &format!(
                "- {many} by less than a part in a million million. Another processor or system library may round so."
            ),
        );
    }
    list(&mut out, "What was not checked", &audit.not_checked, |one| one.clone());
    out
}

fn verdict(audit: &Audit) -> String {
    let counts = audit.checked;
    let checked = format!(
        "{}, {} and {}",
        several(counts.lines, "worksheet line", "worksheet lines"),
        several(counts.findings, "finding", "findings"),
        several(counts.sums, "sum or count", "sums and counts")
    );
    let same = audit.inputs.iter().filter(|file| file.standing == Standing::Same).count() as u64;
    if audit.rederives {
        return match audit.recommended_again {
            Again::Yes => format!(
                "Everything re-derives: {checked} follow within the record, {} the recorded ones, and \
                 recommending again gives the same {} values.",
                several(same, "input file is", "input files are"),
                counts.values
            ),
            Again::NotWanted | Again::No(_) => {
                format!("The record follows from itself: {checked}. Inputs and recommendation were not looked at.")
            }
        };
    }
    let mut wrong = Vec::new();
    let bad =
        audit.inputs.iter().filter(|file| !matches!(file.standing, Standing::Same | Standing::NotVerified)).count();
    if bad > 0 {
        wrong.push(several(bad as u64, "input file is not as recorded", "input files are not as recorded"));
    }
    if !audit.faults.is_empty() {
        let many = audit.faults.len() as u64;
        wrong.push(several(many, "value does not follow within the record", "values do not follow within the record"));
    }
    if !audit.differences.is_empty() {
        let many = audit.differences.len() as u64;
        wrong.push(several(
            many,
            "value differs when it is recommended again",
            "values differ when it is recommended again",
        ));
    }
    if let Again::No(why) = &audit.recommended_again {
        wrong.push(format!("it was not recommended again, because {why}"));
    }
    if wrong.is_empty() {
        wrong.push("some inputs could not be verified".into());
    }
    format!("Not everything re-derives: {}. Checked: {checked}.", wrong.join("; "))
}

fn again(audit: &Audit) -> String {
    match &audit.recommended_again {
        Again::Yes if audit.rederives => match audit.consequences.iter().any(|axis| axis.now.is_some()) {
            true => "The same drives are chosen.".into(),
            false => "No drive is chosen, as recorded.".into(),
        },
        Again::Yes => "It was recommended again from the inputs as they are now.".into(),
        Again::NotWanted => "It was not recommended again: the record alone was asked for.".into(),
        Again::No(why) => format!("It was not recommended again, because {why}."),
    }
}

fn inputs(out: &mut String, files: &[InputStanding]) {
    let wrong: Vec<&InputStanding> =
        files.iter().filter(|file| !matches!(file.standing, Standing::Same | Standing::NotVerified)).collect();
    list(out, "Inputs that are not as recorded", &wrong, |file| {
        let hash =
            |hash: &Option<String>| hash.as_deref().map_or("none", |hash| hash.get(..12).unwrap_or(hash)).to_string();
        match file.standing {
            Standing::Differs => format!(
                "`{}` is another text: its SHA-256 begins with {}, the recorded one with {}",
                file.name,
                hash(&file.found),
                hash(&file.recorded)
            ),
            Standing::Missing => format!("`{}` is not there", file.name),
            Standing::NotRecorded => format!("`{}` is there, and the record does not name it", file.name),
            Standing::Same | Standing::NotVerified => file.name.clone(),
        }
    });
}

/// What becomes of an axis, as a sentence.
fn told(consequence: &Consequence, currency: &str) -> String {
    let axis = &consequence.axis;
    let change = |change: Option<f64>, what: &str| match change {
        Some(0.0) => format!("the same price {what}"),
        Some(change) => {
            let way = if change > 0.0 { "more" } else { "less" };
            format!("{} {currency} {way} {what}", significant(change.abs(), 6))
        }
        None => format!("an unknown change of {what}"),
    };
    let money = format!(
        "{}, {}",
        change(consequence.purchase_change, "to buy"),
        change(consequence.whole_life_change, "over its life")
    );
    match (&consequence.recorded, &consequence.now) {
        (Some(_), Some(_)) if consequence.same_drive => {
            let mut text = format!("Axis {axis}: the same drive is chosen");
            if consequence.purchase_change != Some(0.0) || consequence.whole_life_change != Some(0.0) {
                let _ = write!(text, ", at {money}");
            }
            for turned in &consequence.turned {
                let _ = write!(text, "; rule `{}` turns from {} to {}", turned.rule, turned.recorded, turned.now);
            }
            text + "."
        }
        (Some(was), Some(is)) => {
            format!("Axis {axis}: another drive is chosen, at {money}. Recorded: {}. Now: {}.", drive(was), drive(is))
        }
        (Some(was), None) => format!("Axis {axis}: no drive is chosen now. Recorded: {}.", drive(was)),
        (None, Some(is)) => format!("Axis {axis}: a drive is chosen now: {}.", drive(is)),
        (None, None) => format!("Axis {axis}: no drive is chosen, as recorded."),
    }
}

fn drive(drive: &DriveTold) -> String {
    format!("{} ({})", drive.family, drive.components.join(", "))
}

fn fault(fault: &Fault) -> String {
    let size = share(fault.relative);
    format!(
        "{}: {} is recorded, {} follows{size}\n  {}",
        fault.what,
        value(&fault.found),
        value(&fault.expected),
        fault.path
    )
}

fn difference(difference: &Difference) -> String {
    let parts = match (difference.weight, difference.recorded.as_str(), difference.now.as_str()) {
        (Weight::Choice | Weight::Alternative, Some(was), Some(is)) => other_parts(was, is),
        _ => None,
    };
    let (was, is) = parts.unwrap_or_else(|| (value(&difference.recorded), value(&difference.now)));
    let what = match difference.weight {
        Weight::Choice => "choice",
        Weight::Verdict => "verdict",
        Weight::Alternative => "alternative",
        Weight::Price => "price",
        Weight::Number => "number",
        Weight::Text => "text",
    };
    format!(
        "{what}: {}: {was} is recorded, {is} comes out{}\n  {}",
        difference.place,
        share(difference.relative),
        difference.path
    )
}

/// Of two drives of one family, as "family: part, part", the parts that only one of them has.
fn other_parts(was: &str, is: &str) -> Option<(String, String)> {
    let ((family, was), (other, is)) = (was.split_once(": ")?, is.split_once(": ")?);
    let (was, is): (Vec<&str>, Vec<&str>) = (was.split(", ").collect(), is.split(", ").collect());
    let only = |one: &[&str], other: &[&str]| {
        let parts: Vec<&str> = one.iter().copied().filter(|part| !other.contains(part)).collect();
        if parts.is_empty() { "no such part".to_string() } else { parts.join(", ") }
    };
    (family == other).then(|| (only(&was, &is), only(&is, &was)))
}

fn share(relative: Option<f64>) -> String {
    relative.map_or_else(String::new, |share| {
        let sign = if share > 0.0 { "+" } else { "−" };
        format!(" ({sign}{} %)", significant((share * 100.0).abs(), 3))
    })
}

/// A value at the length that a line holds.
fn value(value: &Value) -> String {
    const LONGEST: usize = 160;
    let text = match value {
        Value::Null => "nothing".into(),
        Value::String(text) => format!("\"{text}\""),
        other => other.to_string(),
    };
    match text.char_indices().nth(LONGEST) {
        Some((end, _)) => format!("{}…", text.get(..end).unwrap_or(&text)),
        None => text,
    }
}

/// A document that is not what the record gives.
pub(super) fn document(name: &str) -> String {
    format!("{name} does not say what the record says")
}

/// A document that is not there, by what it should be.
pub(super) fn document_of(lines: usize) -> String {
    format!("a file of {lines} lines")
}

/// Documents of another version.
pub(super) fn other_version() -> String {
    "report, pictures and table were not compared with the record: another version of the program wrote them and may word \
     them otherwise"
        .into()
}

/// Fields that were not compared.
pub(super) fn not_compared(field: &str, places: usize) -> String {
    let places = several(places as u64, "place", "places");
    format!("`{field}` was not compared: one of the two versions does not write it ({places})")
}

/// Inputs that were not verified.
pub(super) fn not_verified(files: usize) -> String {
    let files = several(files as u64, "input file was", "input files were");
    format!("{files} not verified, because they were not given")
}

fn several(count: u64, one: &str, many: &str) -> String {
    format!("{count} {}", if count == 1 { one } else { many })
}

fn line(out: &mut String, text: &str) {
    out.push_str(text);
    out.push('\n');
}

fn heading(out: &mut String, text: &str) {
    line(out, "");
    line(out, &format!("{text}:"));
}

fn list<T>(out: &mut String, title: &str, entries: &[T], text: impl Fn(&T) -> String) {
    if entries.is_empty() {
        return;
    }
    heading(out, title);
    for entry in entries.iter().take(TOLD) {
        line(out, &format!("- {}", text(entry)));
    }
    if entries.len() > TOLD {
        line(out, &format!("- … and {} more; `--json` lists them all.", entries.len() - TOLD));
    }
}
