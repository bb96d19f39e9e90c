//! docs/glossary.md is what the glossary of the report and the list of characteristics give.
//!
//! Method: the words that a report explains stand in alphabetical order, then every characteristic by id; the document is
//! compared with the committed one.

use axiswright::characteristic;
use axiswright::report::words_of_the_trade;
use std::fmt::Write;
use std::path::Path;

const HEAD: &str = "\
# Words of the trade

The words that a report explains, and the names of all quantities. This page is made from the glossary of the report and the
list of characteristics by `tests/docs_glossary.rs`. `axiswright explain NAME` tells the same for one word or quantity, and
which rules and formulas use it.

";

const QUANTITIES: &str = "\
## Quantities

The names that rules, records and worksheets use, each with its symbol and the unit in which it is shown. Those marked “a phase” have one
value for each phase of the duty, and no rule can name them.

| name | symbol | unit | what it is |
|---|---|---|---|
";

fn document() -> String {
    let mut out = String::from(HEAD);
    let mut words: Vec<(&str, &str)> = words_of_the_trade().collect();
    words.sort_by_key(|(word, _)| word.to_lowercase());
    for (word, text) in words {
        let _ = writeln!(out, "- **{word}.** {text}");
    }
    out.push('\n');
    out.push_str(QUANTITIES);
    let mut quantities: Vec<_> = characteristic::all().collect();
    quantities.sort_by_key(|about| about.id);
    for about in quantities {
        let unit = if about.unit == "1" { "–" } else { about.unit };
        let phase = if about.phased { ", a phase" } else { "" };
        let words = about.words.replace('|', "\\|");
        let _ = writeln!(out, "| `{}` | {} | {unit} | {words}{phase} |", about.id, about.symbol.replace('|', "\\|"));
    }
    out
}

/// Set `AXISWRIGHT_REWRITE` to write the document anew.
#[test]
fn the_glossary_is_what_report_and_characteristics_give() {
    let path = Path::new("docs/glossary.md");
    let wanted = document();
    if std::env::var_os("AXISWRIGHT_REWRITE").is_some() {
        std::fs::write(path, &wanted).expect("the document is written");
    }
    let committed = std::fs::read_to_string(path).unwrap_or_default();
    assert!(committed == wanted, "docs/glossary.md is stale; run this test with AXISWRIGHT_REWRITE=1 to write it anew");
}

/// A word that is explained by itself alone, or twice, helps nobody.
#[test]
fn every_word_is_explained_once_and_in_a_sentence() {
    let mut seen = std::collections::BTreeSet::new();
    for (word, text) in words_of_the_trade() {
        assert!(seen.insert(word.to_lowercase()), "{word} stands there twice");
        assert!(text.ends_with('.') && text.split_whitespace().count() >= 5, "{word}: {text}");
    }
}
