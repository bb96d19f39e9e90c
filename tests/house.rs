//! The house: which room may use which, and what a source file may not hold.
//!
//! Method: comments and texts are taken out of every source file, then paths that begin with `crate::` (or climb to
//! the crate with `super::`) are read from what is left. A room is a folder or a file directly below `src/`.
//! Limits: a room that is reached through a re-export of another room is not seen.

use axiswright::characteristic as ch;
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

#[path = "house/scan.rs"]
mod scan;
use scan::{bare, files_below, first_word, is_word, line_of, names_after, read, without_tests};

/// Each room with the rooms it may use, lowest floor first. A room uses itself freely.
const FLOORS: &[(&str, &[&str])] = &[
    ("units", &[]),
    ("source", &[]),
    ("yaml", &["units"]),
    ("cells", &["yaml"]),
    ("formula", &["units", "source"]),
    ("ledger", &["units", "source", "formula", "characteristic"]),
    ("characteristic", &["units", "source", "formula", "ledger"]),
    ("brief", &["units", "source", "yaml", "formula"]),
    ("catalog", &["units", "source", "yaml", "cells"]),
    ("choice", &["units", "yaml", "brief", "catalog"]),
    ("drive", &["units", "formula", "ledger", "characteristic", "brief", "catalog"]),
    ("rule", &["units", "source", "yaml", "ledger", "characteristic"]),
    ("search", &["units", "ledger", "characteristic", "brief", "catalog", "drive", "rule"]),
    ("select", &["units", "brief", "search"]),
    (
        "inquiry",
        &["units", "formula", "ledger", "characteristic", "brief", "catalog", "drive", "rule", "search", "select"],
    ),
    (
        "record",
        &[
            "units",
            "source",
            "yaml",
            "formula",
            "ledger",
            "characteristic",
            "brief",
            "catalog",
            "choice",
            "drive",
            "rule",
            "search",
            "select",
            "inquiry",
        ],
    ),
    ("report", &["units", "record"]),
    (
        "pipeline",
        &[
            "units",
            "source",
            "yaml",
            "formula",
            "ledger",
            "characteristic",
            "brief",
            "catalog",
            "choice",
            "drive",
            "rule",
            "search",
            "select",
            "inquiry",
            "record",
            "report",
        ],
    ),
    ("acceptance", &["units", "source", "yaml", "cells", "formula", "brief", "record", "report"]),
    ("calc", &["units", "source", "formula", "ledger"]),
    (
        "audit",
        &[
            "units",
            "yaml",
            "formula",
            "ledger",
            "characteristic",
            "brief",
            "catalog",
            "drive",
            "rule",
            "search",
            "record",
            "report",
            "pipeline",
            "calc",
        ],
    ),
    ("schema", &["units", "source", "brief", "catalog", "choice", "rule", "characteristic"]),
    ("web", &["units", "yaml", "brief", "catalog", "choice", "rule", "search", "record", "report", "pipeline"]),
    (
        "cli",
        &[
            "units",
            "source",
            "yaml",
            "formula",
            "ledger",
            "characteristic",
            "brief",
            "catalog",
            "choice",
            "rule",
            "record",
            "report",
            "pipeline",
            "acceptance",
            "calc",
            "audit",
            "schema",
            "web",
        ],
    ),
];

const LONGEST_FILE: usize = 400;

/// What may not stand in `src/` outside of tests.
const FORBIDDEN: &[&str] = &[".unwrap()", "panic!", "todo!", "unimplemented!", "dbg!"];

/// Every room that the code names, with its line. `depth`: how many `super` lead from the file to the crate.
fn rooms_named(code: &str, depth: usize) -> Vec<(usize, String)> {
    let mut named = Vec::new();
    let mut paths: Vec<(usize, usize)> =
        code.match_indices("crate::").map(|(at, path)| (at, at + path.len())).collect();
    let climb = "super::".repeat(depth);
    paths.extend(code.match_indices(&climb).map(|(at, path)| (at, at + path.len())));
    for (begin, end) in paths {
        let before = code[..begin].chars().next_back();
        if before.is_some_and(|letter| is_word(letter) || letter == ':') {
            continue;
        }
        let line = line_of(code, begin);
        named.extend(names_after(&code[end..]).into_iter().map(|name| (line, name)));
    }
    named.retain(|(_, name)| FLOORS.iter().any(|(room, _)| room == name));
    named
}

/// The names of a file's module from the crate down: `src/rule/load.rs` is rule, load.
fn module_of(path: &Path) -> Vec<String> {
    let below = path.strip_prefix("src").expect("a file below src").with_extension("");
    let mut names: Vec<String> = below.iter().map(|name| name.to_string_lossy().into_owned()).collect();
    if names.last().is_some_and(|name| name == "mod") {
        names.pop();
    }
    names
}

#[test]
fn rooms_are_found_however_they_are_named() {
    let code = "use crate::units::*;\nuse crate::{rule, source::Source};\nlet x = crate::ledger::y; $crate::brief::z; super::drive::w";
    let found: Vec<(usize, String)> = rooms_named(code, 1);
    let found: Vec<(usize, &str)> = found.iter().map(|(line, room)| (*line, room.as_str())).collect();
    assert_eq!(found, [(1, "units"), (2, "rule"), (2, "source"), (3, "ledger"), (3, "brief"), (3, "drive")]);
    assert!(rooms_named("super::drive::w; mycrate::units; other::crate::units", 2).is_empty());
}

#[test]
fn no_room_uses_a_room_above_it() {
    let mut wrong = Vec::new();
    for path in files_below("src", "rs") {
        let module = module_of(&path);
        let room = module[0].as_str();
        if room == "lib" || room == "main" || room == "build" {
            continue;
        }
        let Some((_, allowed)) = FLOORS.iter().find(|(name, _)| *name == room) else {
            wrong.push(format!("{}: the room `{room}` is not in the table of floors", path.display()));
            continue;
        };
        for (line, used) in rooms_named(&bare(&read(&path)), module.len()) {
            if used != room && !allowed.contains(&used.as_str()) {
                wrong.push(format!("{}:{line}: `{room}` may not use `{used}`", path.display()));
            }
        }
    }
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

#[test]
fn the_table_of_floors_has_no_ring_but_ledger_and_characteristic() {
    let above = |room: &str| FLOORS.iter().position(|(name, _)| *name == room).expect("a room of the table");
    for (room, allowed) in FLOORS {
        for used in *allowed {
            let twins = ["ledger", "characteristic"];
            let pair = twins.contains(room) && twins.contains(used);
            assert!(pair || above(used) < above(room), "{room} uses {used}, which is not below it");
        }
    }
}

#[test]
fn no_file_is_longer_than_400_lines() {
    let mut long = Vec::new();
    for path in ["src", "tests"].iter().flat_map(|folder| files_below(folder, "rs")) {
        let lines = read(&path).lines().count();
        if lines > LONGEST_FILE {
            long.push(format!("{}: {lines} lines", path.display()));
        }
    }
    assert!(long.is_empty(), "\n{}", long.join("\n"));
}

#[test]
fn nothing_in_the_library_gives_up() {
    let mut wrong = Vec::new();
    for path in files_below("src", "rs") {
        let code = without_tests(&bare(&read(&path)));
        for forbidden in FORBIDDEN {
            for (at, _) in code.match_indices(forbidden) {
                let joined = !forbidden.starts_with('.') && code[..at].ends_with(is_word);
                if !joined {
                    wrong.push(format!("{}:{}: {forbidden}", path.display(), line_of(&code, at)));
                }
            }
        }
    }
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

#[test]
fn every_source_file_begins_with_what_it_is_for() {
    for path in files_below("src", "rs").iter().chain(&files_below("tests", "rs")) {
        let text = read(path);
        let trivial = path.ends_with("main.rs") && text.lines().count() < 3;
        assert!(trivial || text.starts_with("//! "), "{} does not say what it is for", path.display());
    }
}

fn is_kebab(id: &str) -> bool {
    id.starts_with(|letter: char| letter.is_ascii_lowercase())
        && id.split('-').all(|word| {
            !word.is_empty() && word.chars().all(|letter| letter.is_ascii_lowercase() || letter.is_ascii_digit())
        })
}

/// Every formula constant: its name, its id and its place.
fn formulas() -> Vec<(String, String, String)> {
    let mut found = Vec::new();
    for path in files_below("src/formula", "rs") {
        let text = read(&path);
        for (at, mark) in text.match_indices("pub static ") {
            let name = first_word(&text[at + mark.len()..]);
            let rest = &text[at + mark.len() + name.len()..];
            if !rest.starts_with(": Formula<") {
                continue;
            }
            let until = rest.find("pub static ").unwrap_or(rest.len());
            let place = format!("{}:{}", path.display(), line_of(&text, at));
            let id = rest[..until].split("id: \"").nth(1).and_then(|id| id.split('"').next());
            let id = id.unwrap_or_else(|| panic!("{place}: {name} has no id written out"));
            found.push((name.to_string(), id.to_string(), place));
        }
    }
    found
}

#[test]
fn every_formula_has_an_id_of_its_own() {
    let formulas = formulas();
    assert!(formulas.len() > 10, "only {} formulas were found", formulas.len());
    let mut ids = BTreeMap::new();
    let mut names = BTreeMap::new();
    for (name, id, place) in &formulas {
        assert!(is_kebab(id), "{place}: `{id}` is not written in small letters and hyphens");
        for (kind, seen, key) in [("id", &mut ids, id), ("name", &mut names, name)] {
            if let Some(first) = seen.insert(key.clone(), place.clone()) {
                panic!("{place}: the {kind} `{key}` is also that of {first}");
            }
        }
    }
}

#[test]
fn every_formula_is_named_in_a_test() {
    let texts: Vec<String> =
        files_below("tests", "rs").iter().chain(&files_below("src/calc", "rs")).map(|path| bare(&read(path))).collect();
    let words: BTreeSet<&str> = texts.iter().flat_map(|text| text.split(|letter: char| !is_word(letter))).collect();
    let unnamed: Vec<String> = formulas()
        .into_iter()
        .filter(|(name, _, _)| !words.contains(name.as_str()))
        .map(|(name, _, place)| format!("{place}: {name}"))
        .collect();
    assert!(unnamed.is_empty(), "no test and no `calc` entry names\n{}", unnamed.join("\n"));
}

#[test]
fn every_characteristic_has_an_id_a_symbol_and_a_unit_of_its_dimension() {
    let (mut ids, mut symbols) = (BTreeSet::new(), BTreeSet::new());
    for about in ch::all() {
        let id = about.id;
        assert!(is_kebab(id), "`{id}` is not written in small letters and hyphens");
        assert!(ids.insert(id), "the id `{id}` is given twice");
        assert!(symbols.insert(about.symbol), "{id}: the symbol `{}` is given twice", about.symbol);
        assert!(!about.words.trim().is_empty(), "{id} has no words");
        let fits = about.dimension.units().any(|unit| unit.name == about.unit);
        assert!(fits, "{id}: `{}` is no unit of {}", about.unit, about.dimension.words());
    }
    for slot in 0..ch::SLOTS {
        let (about, phase) = ch::about(slot);
        assert_eq!(about.phased, phase.is_some(), "slot {slot}");
        let found = ch::find(about.id).map(|(slot, _)| slot);
        assert_eq!(found, (!about.phased).then_some(slot), "slot {slot}");
    }
}

/// The first line that a change of `tests/mutants/equivalent.tsv` does not fit: place and what it should change.
fn first_astray(table: &str, source: impl Fn(&str) -> String) -> Option<&str> {
    let fits = |entry: &str| -> Option<()> {
        let (place, change) = entry.split_once('\t')?;
        let mut place = place.rsplitn(3, ':');
        let (column, line) = (place.next()?.parse::<usize>().ok()?, place.next()?.parse::<usize>().ok()?);
        let source = source(place.next()?);
        let there: String = source.lines().nth(line.checked_sub(1)?)?.chars().skip(column.checked_sub(1)?).collect();
        let changed = change.split_once(" -> ").map(|(from, _)| from).or_else(|| change.strip_suffix(" dropped"))?;
        // "result" is what a function gives, whose name stands at the place
        let fits = if changed == "result" { there.starts_with(is_word) } else { there.starts_with(changed) };
        fits.then_some(())
    };
    table.lines().filter(|line| !line.is_empty() && !line.starts_with('#')).find(|entry| fits(entry).is_none())
}

#[test]
fn changes_that_alter_nothing_still_point_at_their_code() {
    let code = |_: &str| "//! µ\nfn alike() -> bool {\n    a < b\n}\n".to_string();
    for right in ["src/x.rs:3:7\t< -> <=", "src/x.rs:2:4\tresult -> true", "src/x.rs:3:7\t< dropped", "# a reason"] {
        assert_eq!(first_astray(right, code), None);
    }
    for astray in
        ["src/x.rs:2:7\t< -> <=", "src/x.rs:3:7\t> -> >=", "src/x.rs:9:7\t< -> <=", "src/x.rs:3:6\tresult -> true"]
    {
        assert_eq!(first_astray(astray, code), Some(astray));
    }
    let table = read(Path::new("tests/mutants/equivalent.tsv"));
    assert_eq!(first_astray(&table, |file| read(Path::new(file))), None);
}
