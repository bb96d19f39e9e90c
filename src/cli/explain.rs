//! `explain`: what a rule, caution, formula, quantity, family, kind of part, word of the trade or key of the brief is.

use super::{Answer, Console, Failure, keys};
use crate::brief::guide::{self, Key};
use crate::calc::{self, Entry};
use crate::catalog::{KINDS, Kind};
use crate::characteristic;
use crate::ledger::About;
use crate::report;
use crate::rule::{self, FAMILIES, Rule, Rulebook};
use clap::Args;
use std::fmt::Write;
use std::path::PathBuf;

/// Explain a rule, caution, formula, quantity, family, kind of part, word of the trade or key of the brief
#[derive(Args)]
pub struct Explain {
    /// Its name; all names are listed if left out
    name: Option<String>,
    /// Folder with rule files, and cautions below cautions/, that add to or replace the built-in ones; may be given again
    #[arg(long, value_name = "DIR")]
    rules: Vec<PathBuf>,
}

impl Explain {
    /// Runs the command.
    pub fn run(&self, console: &mut Console) -> Result<Answer, Failure> {
        let book = rule::load(&self.rules)?;
        let keys = guide::keys();
        let text = match &self.name {
            None => index(&book, &keys),
            Some(name) => {
                let plainly = everything(&book, &keys, name);
                // capitals, and blanks for hyphens, are as good
                let tidied = || everything(&book, &keys, &name.trim().to_lowercase().replace(' ', "-"));
                let text = if plainly.is_empty() { tidied() } else { plainly };
                if text.is_empty() {
                    let known = names(&book, &keys);
                    let what = "rule, caution, formula, quantity, family, kind of part, word or key";
                    return Err(Failure::Input(keys::unknown(what, name, known.iter().map(String::as_str), "explain")));
                }
                text
            }
        };
        console.result(&text)?;
        Ok(Answer::Yes)
    }
}

/// All that goes by this name, one part after the other.
fn everything(book: &Rulebook, keys: &[Key], name: &str) -> String {
    let mut parts: Vec<String> = Vec::new();
    if FAMILIES.contains(&name) {
        parts.push(family(book, name));
    }
    if let Some(rule) = book.find(name) {
        let mut text = format!("Rule {}", rule::describe_rule(rule).trim_start_matches("## "));
        text.push_str(&how_it_is_worked_out(rule));
        parts.push(text);
    }
    if let Some(caution) = book.caution(name) {
        parts.push(rule::describe_caution(caution).trim_start_matches("## ").to_string());
    }
    if let Some(entry) = calc::find(name) {
        parts.push(formula(entry));
    }
    if let Some(about) = characteristic::all().find(|about| about.id == name) {
        parts.push(quantity(book, about));
    }
    parts.extend(Kind::find(name).map(kind));
    parts.extend(
        report::words_of_the_trade()
            .filter(|(word, _)| is_word(word, name))
            .map(|(word, text)| format!("Word of the trade: {word}\n\n{text}\n")),
    );
    parts.extend(keys.iter().filter(|key| key.name == name).map(key_of_the_brief));
    parts.join("\n")
}

/// Whether a word of the trade is meant, written with blanks or as an id; `P3` and the like ask for the grade.
fn is_word(word: &str, name: &str) -> bool {
    let name = name.trim().to_lowercase().replace(' ', "-");
    let grade = || name.strip_prefix(['p', 't']).is_some_and(|number| number.parse::<u8>().is_ok());
    word.to_lowercase().replace(' ', "-") == name || word == "Grade" && grade()
}

fn kind(kind: &Kind) -> String {
    let mut text = format!("Kind of part {}: {}\n\n", kind.name, kind.words.trim());
    for field in kind.fields {
        let optional = if field.optional { ", may be left out" } else { "" };
        let _ =
            writeln!(text, "- {}: {} ({}{optional})", field.key(), field.words.trim(), field.accept.words(field.unit));
    }
    let _ = writeln!(text, "\n`axiswright catalog list {}` names those there are.", kind.name);
    text
}

/// The equations of what a rule names, as far as a formula goes by the same name.
fn how_it_is_worked_out(rule: &Rule) -> String {
    let mut text = String::new();
    let mut told = Vec::new();
    for slot in rule.slots() {
        let id = characteristic::about(slot).0.id;
        if let Some(entry) = calc::find(id).filter(|_| !told.contains(&id)) {
            let _ = writeln!(text, "- Formula of `{id}`: {}", entry.note.equation);
            told.push(id);
        }
    }
    text
}

fn family(book: &Rulebook, id: &str) -> String {
    let mut text = format!("Family {id}: {}\n\n", report::family_words(id));
    let _ = writeln!(text, "{}", report::family_text(id));
    let rules: Vec<_> = book.rules.iter().filter(|rule| rule.meant_for(id)).collect();
    let _ = writeln!(text, "\nJudged by {} rules:", rules.len());
    for rule in rules {
        let _ = writeln!(text, "- {} ({}): {}", rule.id, rule.obligation.word(), rule.title);
    }
    text
}

fn formula(entry: &Entry) -> String {
    let note = entry.note;
    let mut text = format!("Formula {}: {}\n\n  {}\n\n", note.id, note.title, note.equation);
    for (symbol, name) in note.inputs {
        let _ = writeln!(text, "  {symbol}  {name}");
    }
    let _ = writeln!(text, "\nHolds: {}", note.validity);
    for source in note.sources {
        let _ = writeln!(text, "Source: {source}");
    }
    let _ = writeln!(text, "Call: axiswright calc {}", entry.usage());
    text
}

fn quantity(book: &Rulebook, about: &About) -> String {
    let unit = match about.unit {
        "" => "the currency of the brief".into(),
        "1" => "no unit".into(),
        unit => format!("in {unit}"),
    };
    let phased = if about.phased { ", one value for each phase of the duty" } else { "" };
    let mut text = format!("Quantity {} ({}): {}; {unit}{phased}\n", about.id, about.symbol, about.words);
    for rule in &book.rules {
        let mut slots = rule.slots().map(|slot| characteristic::about(slot).0.id);
        if slots.any(|id| id == about.id) {
            let _ = writeln!(text, "- used by rule {} ({}): {}", rule.id, rule.obligation.word(), rule.title);
        }
    }
    text
}

fn key_of_the_brief(key: &Key) -> String {
    let mut text = format!("Key of the brief {}, under “{}”\n", key.name, key.place);
    for (head, cell) in key.plainly() {
        let _ = writeln!(text, "  {head}: {cell}");
    }
    text
}

fn names(book: &Rulebook, keys: &[Key]) -> Vec<String> {
    let mut names: Vec<String> = FAMILIES.iter().map(|id| id.to_string()).collect();
    names.extend(book.rules.iter().map(|rule| rule.id.clone()));
    names.extend(book.cautions.iter().map(|caution| caution.id.clone()));
    names.extend(calc::entries().map(|entry| entry.note.id.to_string()));
    names.extend(characteristic::all().map(|about| about.id.to_string()));
    names.extend(keys.iter().map(|key| key.name.clone()));
    names.extend(KINDS.iter().map(|kind| kind.name.to_string()));
    names.extend(report::words_of_the_trade().map(|(word, _)| word.to_lowercase().replace(' ', "-")));
    names.sort();
    names.dedup();
    names
}

fn index(book: &Rulebook, keys: &[Key]) -> String {
    let mut text = String::new();
    let mut list = |head: &str, mut names: Vec<&str>| {
        names.sort_unstable();
        names.dedup();
        let _ = writeln!(text, "{head}:");
        for name in names {
            let _ = writeln!(text, "  {name}");
        }
    };
    list("Families", FAMILIES.to_vec());
    list("Rules", book.rules.iter().map(|rule| rule.id.as_str()).collect());
    list("Cautions", book.cautions.iter().map(|caution| caution.id.as_str()).collect());
    list("Formulas", calc::entries().map(|entry| entry.note.id).collect());
    list("Quantities", characteristic::all().map(|about| about.id).collect());
    list("Kinds of parts", KINDS.iter().map(|kind| kind.name).collect());
    list("Words of the trade", report::words_of_the_trade().map(|(word, _)| word).collect());
    list("Keys of the brief", keys.iter().map(|key| key.name.as_str()).collect());
    text
}
