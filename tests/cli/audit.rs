//! `audit`: an untouched folder re-derives; whatever is changed in it is found and named; what cannot be read is told.

use crate::recommend::{BRIEF, Room};
use crate::run;
use axiswright::audit::{self, Again, Audit, Standing};
use axiswright::record::DecisionRecord;
use serde_json::Value;
use std::fs;
use std::path::Path;
use std::sync::LazyLock;

/// A brief with a waiver and advice, so that verdicts of every kind are there.
fn brief() -> String {
    format!(
        "{BRIEF}    accuracy: 0.05 mm\nwaivers:\n  - {{ rule: inertia-ratio, axis: slide, reason: tried, by: an engineer, until: 2027-06-30 }}\n"
    )
}

/// One folder for all tests that only read it or write over its record, and what comes out again.
pub struct Shared {
    pub room: Room,
    pub text: String,
}

pub static SHARED: LazyLock<Shared> = LazyLock::new(|| {
    let room = Room::with(&brief());
    let run = room.recommend(&["--no-turning-points", "--quiet", "--out", &room.text("decision")]);
    assert_eq!((run.status, run.err.as_str()), (0, ""));
    let text = fs::read_to_string(room.path("decision/record.json")).expect("a record");
    Shared { room, text }
});

fn first_line(text: &str) -> &str {
    text.lines().next().unwrap_or_default()
}

/// A copy of the shared folder.
pub fn copy() -> tempfile::TempDir {
    fn below(from: &Path, to: &Path) {
        fs::create_dir_all(to).expect("a folder");
        for entry in fs::read_dir(from).expect("a folder") {
            let entry = entry.expect("an entry");
            let (source, target) = (entry.path(), to.join(entry.file_name()));
            if source.is_dir() {
                below(&source, &target)
            } else {
                fs::copy(&source, &target).map(|_| ()).expect("a copy")
            }
        }
    }
    let room = tempfile::tempdir().expect("a folder");
    below(&SHARED.room.path("decision"), room.path());
    room
}

pub fn text(path: &Path) -> String {
    path.display().to_string()
}

#[test]
fn an_untouched_folder_re_derives() {
    let run = run(&["audit", &SHARED.room.text("decision")]);
    assert_eq!((run.status, run.err.as_str()), (0, ""), "{}", run.out);
    assert!(first_line(&run.out).starts_with("Everything re-derives: "), "{}", run.out);
    assert!(!run.out.contains("not checked"), "{}", run.out);
    let record: Value = serde_json::from_str(&SHARED.text).expect("a record");
    let chosen = record["axes"][0]["chosen"]["worksheet"].as_array().expect("lines").len();
    let lines: usize = first_line(&run.out).split(' ').nth(2).and_then(|count| count.parse().ok()).expect("a count");
    assert!(lines >= 2 * chosen && chosen > 300, "{lines} lines of the drive chosen and of others");
}

/// A place in a JSON value.
type Place = Vec<Value>;

/// Which places are meant.
type Wanted<'w> = &'w dyn Fn(&Place) -> bool;

fn leaves(value: &Value, place: &mut Place, found: &mut Vec<Place>) {
    match value {
        Value::Object(fields) => {
            for (name, value) in fields {
                place.push(name.as_str().into());
                leaves(value, place, found);
                place.pop();
            }
        }
        Value::Array(entries) => {
            for (index, value) in entries.iter().enumerate() {
                place.push(index.into());
                leaves(value, place, found);
                place.pop();
            }
        }
        Value::Null => {}
        _ => found.push(place.clone()),
    }
}

fn at<'v>(value: &'v mut Value, place: &Place) -> &'v mut Value {
    place.iter().fold(value, |value, step| match step {
        Value::String(name) => &mut value[name.as_str()],
        index => &mut value[index.as_u64().expect("an index") as usize],
    })
}

fn field(place: &Place) -> &str {
    place.iter().rev().find_map(Value::as_str).unwrap_or_default()
}

/// A fixed sequence of numbers that look like chance (a linear congruence, modulus 2^64).
struct Chance(u64);

impl Chance {
    fn below(&mut self, bound: usize) -> usize {
        self.0 = self.0.wrapping_mul(6364136223846793005).wrapping_add(1442695040888963407);
        (self.0 >> 33) as usize % bound
    }
}

/// The value with one digit or letter changed; none where that gives the same number.
fn touched(value: &Value, chance: &mut Chance) -> Option<Value> {
    match value {
        Value::Bool(flag) => Some((!flag).into()),
        Value::Number(number) => {
            let text = number.to_string();
            let mantissa = text.split('e').next().unwrap_or_default().len();
            let digits: Vec<usize> = (0..mantissa).filter(|&at| text.as_bytes()[at].is_ascii_digit()).collect();
            let at = digits[chance.below(digits.len())];
            let digit = (text.as_bytes()[at] - b'0' + 1 + chance.below(9) as u8) % 10;
            let text = format!("{}{digit}{}", &text[..at], &text[at + 1..]);
            let other: Value = serde_json::from_str(&text).ok()?;
            (other.as_f64() != number.as_f64()).then_some(other)
        }
        Value::String(text) if text.is_empty() => Some("x".into()),
        Value::String(text) => {
            let letters: Vec<char> = text.chars().collect();
            let at = chance.below(letters.len());
            let other = |letter: char| if letter == 'q' { 'z' } else { 'q' };
            let changed =
                letters.iter().enumerate().map(|(place, &letter)| if place == at { other(letter) } else { letter });
            Some(changed.collect::<String>().into())
        }
        _ => None,
    }
}

/// Audits the shared folder with another record in it, without recommending again for each.
fn audit_of(folder: &Path, record: &Value, now: &DecisionRecord) -> Result<Audit, String> {
    let file = folder.join("record.json");
    fs::write(&file, record.to_string()).expect("a record");
    let mut kept = audit::read(folder).map_err(|error| error.to_string())?;
    // documents of this version have a test of their own
    kept.folder = kept.folder.filter(|_| record["tool"] != env!("CARGO_PKG_VERSION"));
    // the files are read and hashed once; a record that names others has them read again
    static VERIFIED: LazyLock<audit::Verified> = LazyLock::new(|| {
        audit::in_folder(&SHARED.room.path("decision"), &serde_json::from_str(&SHARED.text).expect("a record"))
    });
    let again = (kept.record.inputs != now.inputs).then(|| audit::in_folder(folder, &kept.record));
    let verified = again.as_ref().unwrap_or(&VERIFIED);
    Ok(audit::audit(&kept, audit::within(&kept), verified, Ok(now)))
}

#[test]
fn one_digit_or_letter_that_is_changed_anywhere_is_found_and_named() {
    let folder = copy();
    let now: DecisionRecord = serde_json::from_str(&SHARED.text).expect("a record");
    let whole: Value = serde_json::from_str(&SHARED.text).expect("a record");
    assert!(audit_of(folder.path(), &whole, &now).expect("an audit").rederives);
    let mut all = Vec::new();
    leaves(&whole, &mut Vec::new(), &mut all);
    let has = |place: &Place, name: &str| place.iter().any(|step| step == name);
    let kinds: [(&str, usize, Wanted<'_>); 8] = [
        ("worksheet values", 12, &|place| has(place, "worksheet") && field(place) == "value"),
        ("utilisations", 6, &|place| field(place) == "utilisation"),
        ("verdicts", 4, &|place| field(place) == "verdict"),
        ("prices", 6, &|place| ["amount", "purchase", "whole-life", "whole-life-cost"].contains(&field(place))),
        ("census counts", 4, &|place| ["configurations", "admissible"].contains(&field(place))),
        ("texts", 6, &|place| ["reason", "text", "equation", "source", "words", "title"].contains(&field(place))),
        ("hashes", 2, &|place| field(place) == "sha256"),
        // the version of the record and of the program are told on their own
        ("anything", 20, &|place| place.len() > 1),
    ];
    let mut chance = Chance(2026);
    for (kind, count, wanted) in kinds {
        let places: Vec<&Place> = all.iter().filter(|place| wanted(place)).collect();
        assert!(!places.is_empty(), "{kind}");
        let mut done = 0;
        while done < count {
            let (place, mut record) = (places[chance.below(places.len())], whole.clone());
            let value = at(&mut record, place);
            let Some(other) = touched(value, &mut chance) else { continue };
            *value = other.clone();
            done += 1;
            let told = format!("{kind}: {place:?} becomes {other}");
            // a word that no field takes is refused when the record is read
            let found = match audit_of(folder.path(), &record, &now) {
                Ok(found) => found,
                Err(message) => {
                    assert!(message.contains("line"), "{told}: {message}");
                    continue;
                }
            };
            assert!(!found.rederives, "{told}");
            let named = other.as_str().unwrap_or("a number is no part of a path");
            let by_difference = found.differences.iter().any(|difference| {
                let path = match place.last() {
                    Some(Value::Number(_)) => difference.path.rsplit_once('[').map_or("", |(path, _)| path),
                    _ => &difference.path,
                };
                // another size is another drive
                let of_size = difference.recorded == "there" && difference.path.contains(&other.to_string());
                let of_field = path.ends_with(field(place)) && difference.recorded == other;
                difference.path.contains(named) || of_size || of_field
            });
            assert!(by_difference, "{told}: {:?}", found.differences);
            assert!(audit::words(&found).starts_with("Not everything re-derives: "), "{told}");
        }
    }
}

#[test]
fn without_the_inputs_a_changed_line_finding_cost_or_count_is_found_from_the_record_alone() {
    let whole: Value = serde_json::from_str(&SHARED.text).expect("a record");
    let room = tempfile::tempdir().expect("a folder");
    let file = room.path().join("alone.json");
    let mut all = Vec::new();
    leaves(&whole, &mut Vec::new(), &mut all);
    let mut chance = Chance(7);
    let parent = |place: &Place| -> Value {
        let mut copy = whole.clone();
        at(&mut copy, &place[..place.len() - 1].to_vec()).clone()
    };
    let kinds: [(&str, Wanted<'_>); 5] = [
        ("worked-out lines", &|place| field(place) == "value" && parent(place)["origin"] == "formula"),
        ("utilisations", &|place| field(place) == "utilisation" && place.iter().any(|step| step == "findings")),
        ("verdicts", &|place| field(place) == "verdict" && place.iter().any(|step| step == "findings")),
        ("costs", &|place| field(place) == "amount"),
        ("counts", &|place| field(place) == "configurations" || field(place) == "admissible"),
    ];
    for (kind, wanted) in kinds {
        let places: Vec<&Place> = all.iter().filter(|place| wanted(place)).collect();
        assert!(!places.is_empty(), "{kind}");
        for _ in 0..6 {
            let (place, mut record) = (places[chance.below(places.len())], whole.clone());
            let value = at(&mut record, place);
            *value = match &*value {
                // a thousandth of a part in a million: small, and far above rounding
                Value::Number(number) if number.is_f64() => match number.as_f64() {
                    Some(0.0) => 1e-3.into(),
                    Some(number) => (number * (1.0 + 1e-9)).into(),
                    None => continue,
                },
                Value::Number(number) => (number.as_u64().expect("a count") + 1).into(),
                _ => "waived".into(),
            };
            let other = value.clone();
            fs::write(&file, record.to_string()).expect("a record");
            let kept = audit::read(&file).expect("a record");
            let verified = audit::alone(&kept.record, &audit::Given::default());
            let found = audit::audit(&kept, audit::within(&kept), &verified, Err(Again::NotWanted));
            assert!(!found.rederives && !found.faults.is_empty(), "{kind}: {place:?} becomes {other}");
            assert!(found.inputs.iter().all(|input| input.standing == Standing::NotVerified));
        }
    }
}

#[test]
fn a_price_that_was_changed_in_the_inputs_is_found_and_its_consequence_told() {
    let folder = copy();
    let file = folder.path().join("inputs/catalog/0-catalog/servo-motor/generic.yaml");
    let motors = fs::read_to_string(&file).expect("the motors");
    let record: Value = serde_json::from_str(&SHARED.text).expect("a record");
    let parts = record["axes"][0]["chosen"]["components"].as_array().expect("parts");
    let motor = parts.iter().find(|part| part["role"] == "servo-motor").expect("a motor");
    let motor = motor["designation"].as_str().expect("a designation");
    let (before, entry) = motors.split_once(&format!("designation: {motor},")).expect("the motor");
    let (between, after) = entry.split_once(" price: ").expect("a price");
    let (price, rest) = after.split_once(',').expect("more of the motor");
    let dearer = price.parse::<u32>().expect("a number") + 7;
    fs::write(&file, format!("{before}designation: {motor},{between} price: {dearer},{rest}")).expect("written");
    let run = run(&["audit", &text(folder.path())]);
    assert_eq!(run.status, 1, "{}", run.err);
    assert!(first_line(&run.out).contains("1 input file is not as recorded"), "{}", run.out);
    assert!(run.out.contains("`inputs/catalog/0-catalog/servo-motor/generic.yaml` is another text"), "{}", run.out);
    assert!(run.out.contains("Axis slide: the same drive is chosen, at 7 EUR more to buy"), "{}", run.out);
}

#[test]
fn files_that_are_missing_or_were_put_there_are_told() {
    let folder = copy();
    fs::write(folder.path().join("inputs/rules/of-mine.yaml"), "title: none\n").expect("a file");
    let more = run(&["audit", &text(folder.path()), "--json"]);
    assert_eq!(more.status, 1, "{}", more.err);
    let value: Value = serde_json::from_str(&more.out).expect("JSON");
    let inputs = value["inputs"].as_array().expect("inputs");
    let odd: Vec<&Value> = inputs.iter().filter(|input| input["standing"] != "same").collect();
    assert_eq!((odd.len(), &odd[0]["standing"]), (1, &"not-recorded".into()));
    assert_eq!((&value["differences"], &value["recommended-again"]["done"]), (&Value::Array(vec![]), &"yes".into()));
    fs::remove_file(folder.path().join("inputs/rules/of-mine.yaml")).expect("removed");
    fs::remove_file(folder.path().join("inputs/rules/screw-whip.yaml")).expect("removed");
    let fewer = run(&["audit", &text(folder.path())]);
    assert_eq!(fewer.status, 1);
    assert!(fewer.out.contains("`inputs/rules/screw-whip.yaml` is not there"), "{}", fewer.out);
    assert!(first_line(&fewer.out).contains("it was not recommended again"), "{}", fewer.out);
}

#[test]
fn a_document_that_was_changed_is_told_with_its_line() {
    let folder = copy();
    let file = folder.path().join("recommendation.md");
    let document = fs::read_to_string(&file).expect("the document");
    fs::write(&file, document.replacen("EUR", "USD", 1)).expect("written");
    let place = 1 + document.lines().position(|line| line.contains("EUR")).expect("a currency");
    let run = run(&["audit", &text(folder.path())]);
    assert_eq!(run.status, 1, "{}", run.err);
    assert!(run.out.contains(&format!("recommendation.md, line {place}\n")), "{}", run.out);
    assert!(run.out.contains("USD"), "what differs is told: {}", run.out);
    fs::remove_file(&file).expect("removed");
    let without = crate::run(&["audit", &text(folder.path())]);
    assert_eq!(without.status, 1, "{}", without.err);
    assert!(without.out.contains("no such file"), "{}", without.out);
}

#[test]
fn a_record_alone_is_audited_with_what_is_given_and_says_what_was_not_verified() {
    let room = tempfile::tempdir().expect("a folder");
    let file = room.path().join("record.json");
    fs::write(&file, &SHARED.text).expect("a record");
    let file = text(&file);
    let (brief, rules) = (SHARED.room.text("brief.yaml"), SHARED.room.text("rules"));
    let whole = run(&["audit", &file, "--brief", &brief, "--rules", &rules]);
    assert_eq!((whole.status, whole.err.as_str()), (0, ""), "{}", whole.out);
    let other_rules = run(&["audit", &file, "--brief", &brief, "--json"]);
    assert_eq!(other_rules.status, 1);
    let value: Value = serde_json::from_str(&other_rules.out).expect("JSON");
    let missing: Vec<&Value> =
        value["inputs"].as_array().expect("inputs").iter().filter(|input| input["standing"] == "missing").collect();
    assert_eq!(missing.len(), 4, "the rules of the tests: {missing:?}");
    let without = run(&["audit", &file]);
    assert_eq!(without.status, 1);
    assert!(first_line(&without.out).contains("the brief is not given"), "{}", without.out);
    assert!(without.out.contains("were not verified"), "{}", without.out);
    let only = run(&["audit", &file, "--record-only"]);
    assert_eq!(only.status, 0, "{}", only.out);
    assert!(first_line(&only.out).starts_with("The record follows from itself"), "{}", only.out);
    let both = run(&["audit", &SHARED.room.text("decision"), "--brief", &brief]);
    assert_eq!((both.status, both.out.as_str()), (2, ""));
}

#[test]
fn what_is_no_record_gives_status_two_and_its_place() {
    let room = tempfile::tempdir().expect("a folder");
    let file = room.path().join("record.json");
    let cut = &SHARED.text[..SHARED.text.len() / 2];
    let cases = [
        ("title: a brief\n".to_string(), "line 1"),
        (cut.to_string(), "line"),
        (SHARED.text.replacen("axiswright/1", "axiswright/7", 1), "axiswright/7"),
        ("{}".into(), "`record`"),
        ("{\"record\": \"axiswright/1\"}".into(), "missing field"),
        (SHARED.text.replacen("\"outcome\": \"chosen\"", "\"outcome\": \"maybe\"", 1), "line"),
    ];
    for (content, wanted) in cases {
        fs::write(&file, &content).expect("written");
        let run = run(&["audit", &text(&file)]);
        assert_eq!((run.status, run.out.as_str()), (2, ""), "{wanted}");
        assert!(run.err.contains(wanted), "{wanted}: {}", run.err);
    }
    fs::remove_file(&file).expect("removed");
    let empty = run(&["audit", &text(room.path())]);
    assert_eq!((empty.status, empty.out.as_str()), (2, ""));
    assert!(empty.err.contains("holds no record.json"), "{}", empty.err);
    assert_eq!(run(&["audit", &text(&file)]).status, 2);
}

#[test]
fn fields_that_an_older_version_did_not_write_are_told_as_not_compared() {
    fn without(value: &mut Value, names: &[&str]) {
        match value {
            Value::Object(fields) => {
                fields.retain(|name, _| !names.contains(&name.as_str()));
                fields.values_mut().for_each(|value| without(value, names));
            }
            Value::Array(entries) => entries.iter_mut().for_each(|value| without(value, names)),
            _ => {}
        }
    }
    let now: DecisionRecord = serde_json::from_str(&SHARED.text).expect("a record");
    let mut record: Value = serde_json::from_str(&SHARED.text).expect("a record");
    without(&mut record, &["unmet-advice", "cost-cases", "asked"]);
    let folder = copy();
    let found = audit_of(folder.path(), &record, &now).expect("an audit");
    assert!(!found.rederives, "this version writes them");
    record["tool"] = "0.0.9".into();
    let found = audit_of(folder.path(), &record, &now).expect("an audit");
    assert!(found.rederives, "{:?} {:?}", found.differences, found.faults);
    assert!(found.not_checked.iter().any(|told| told.contains("unmet-advice")), "{:?}", found.not_checked);
    assert!(audit::words(&found).contains("What was not checked"));
    assert!(found.not_checked.iter().any(|told| told.contains("another version of the program")));
}
