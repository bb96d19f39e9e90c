//! docs/sources.md is what the register of formulas and the rulebook give.
//!
//! Method: each source is listed once under its standing, with every formula and rule that rests on it; the document
//! is compared with the committed one. What the reference tests check is listed from the first sentence of each file.

use axiswright::calc::entries;
use axiswright::rule;
use axiswright::source::Standing;
use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write;
use std::path::Path;

const HEAD: &str = "\
# Sources

Every source that a formula or a rule rests on, under its standing, with what rests on it. This page is made from the
formula register and the rule files by `tests/docs_sources.rs`. `axiswright explain NAME` tells the same for one name.
Catalogue files state their own provenance at their top; all of the built-in catalogue is generic and invented.

";

/// What a reader may make of each standing.
fn meaning(standing: Standing) -> &'static str {
    match standing {
        Standing::Standard => "Read in, or checked against, the text or a named reproduction of a standard.",
        Standing::Publication => "Read in, or checked against, a book, paper or public report.",
        Standing::Derived => {
            "Follows from mechanics by calculation. The method tests hold the weightier ones to a second method."
        }
        Standing::CommonPractice => {
            "Usual in the trade; no source can be named. An engineer may well use another value: these are the first to question."
        }
        Standing::Memory => {
            "Remembered from a standard or book whose text was not at hand. Check it against the text before relying on its last digits."
        }
        Standing::Invented => "Made up in a realistic size. Replace it.",
    }
}

/// For each standing and citation, the formulas and the rules that name it.
type Sources = BTreeMap<(Standing, String), [BTreeSet<String>; 2]>;

fn gather() -> Sources {
    let mut sources = Sources::new();
    for entry in entries() {
        for source in entry.note.sources {
            let places = sources.entry((source.standing, source.citation.trim().into())).or_default();
            places[0].insert(entry.note.id.into());
        }
    }
    let book = rule::load(&[]).unwrap_or_else(|faults| panic!("{faults}"));
    for rule in &book.rules {
        for source in &rule.sources {
            let note = source.note.split_whitespace().collect::<Vec<_>>().join(" ");
            sources.entry((source.standing, note)).or_default()[1].insert(rule.id.clone());
        }
    }
    sources
}

fn list(names: &BTreeSet<String>) -> String {
    names.iter().map(|name| format!("`{name}`")).collect::<Vec<_>>().join(", ")
}

fn cell(text: &str) -> String {
    text.replace('|', "\\|")
}

/// The head of a test file up to its first empty comment line: what is checked.
fn checked(path: &Path) -> String {
    let text = std::fs::read_to_string(path).expect("the file is there");
    let head: Vec<&str> = text.lines().map_while(|line| line.strip_prefix("//!")).map(str::trim).collect();
    head.split(|line| line.is_empty()).next().unwrap_or_default().join(" ")
}

fn files(folder: &str) -> Vec<(String, String)> {
    let entries = std::fs::read_dir(folder).expect("the folder is there");
    let mut files: Vec<(String, String)> = entries
        .map(|entry| entry.expect("a file").path())
        .filter(|path| path.file_name().is_some_and(|name| name != "main.rs"))
        .map(|path| (path.file_name().expect("a name").to_string_lossy().into_owned(), checked(&path)))
        .collect();
    files.sort();
    files
}

fn document() -> String {
    let mut out = String::from(HEAD);
    let sources = gather();
    for standing in Standing::ALL {
        let mine: Vec<_> = sources.iter().filter(|((kind, _), _)| *kind == standing).collect();
        if mine.is_empty() {
            continue;
        }
        let words = standing.words();
        let (first, rest) = words.split_at(1);
        let _ = writeln!(out, "## {}{rest}\n\n{}\n", first.to_uppercase(), meaning(standing));
        out.push_str("| source | formulas | rules |\n|---|---|---|\n");
        for ((_, citation), [formulas, rules]) in mine {
            let _ = writeln!(out, "| {} | {} | {} |", cell(citation), list(formulas), list(rules));
        }
        out.push('\n');
    }
    for (folder, head, text) in [
        (
            "tests/reference",
            "Published works that tests check against",
            "One file for each work; the citation is in the file.",
        ),
        (
            "tests/methods",
            "Second methods that tests check against",
            "Each is written without the formula that it checks.",
        ),
    ] {
        let _ = writeln!(out, "## {head}\n\n{text}\n\n| file in `{folder}` | what it checks |\n|---|---|");
        for (name, what) in files(folder) {
            let _ = writeln!(out, "| `{name}` | {} |", cell(&what));
        }
        out.push('\n');
    }
    out.truncate(out.trim_end().len());
    out.push('\n');
    out
}

/// Set `AXISWRIGHT_REWRITE` to write the document anew.
#[test]
fn the_document_of_sources_is_what_formulas_and_rules_give() {
    let path = Path::new("docs/sources.md");
    let wanted = document();
    if std::env::var_os("AXISWRIGHT_REWRITE").is_some() {
        std::fs::write(path, &wanted).expect("the document is written");
    }
    let committed = std::fs::read_to_string(path).unwrap_or_default();
    assert!(committed == wanted, "docs/sources.md is stale; run this test with AXISWRIGHT_REWRITE=1 to write it anew");
}

/// A formula without a source has no standing.
#[test]
fn every_formula_names_a_source() {
    let without: Vec<&str> =
        entries().filter(|entry| entry.note.sources.is_empty()).map(|entry| entry.note.id).collect();
    assert!(without.is_empty(), "no source: {without:?}");
}
