//! Rules and cautions that are not as they are built in: a table for the reviewer, one sentence for the customer.
//!
//! Method: the record says what was added and in which respect others differ, and who answers for it.
//! Limits: where only words differ, both are shown cut to an excerpt; the folder `inputs/` holds them whole.

use super::view::{View, one_line};
use super::words;
use crate::record::*;
use serde::Serialize;

/// One respect of one rule.
#[derive(Serialize)]
pub struct OwnRule {
    id: String,
    what: String,
    built_in: String,
    own: String,
    by: String,
    file: String,
}

/// So many letters are shown of a text.
const LETTERS: usize = 160;

/// One line for each respect in which a rule or caution is not as it is built in.
pub fn rows(view: &View) -> Vec<OwnRule> {
    view.record.own_rules.iter().flat_map(of).collect()
}

fn of(rule: &OwnRuleRecord) -> Vec<OwnRule> {
    let by = rule.by.as_deref().map_or_else(|| "△ its file names nobody".to_string(), one_line);
    let line = |what: String, built_in: String, own: String| OwnRule {
        id: rule.id.clone(),
        what: format!("{}, {what}", rule.what),
        built_in,
        own,
        by: by.clone(),
        file: rule.file.clone(),
    };
    if let Some(added) = &rule.added {
        return vec![line("added".into(), "none".into(), cut(added))];
    }
    if rule.differs.is_empty() {
        return vec![line("sources, examples or notes".into(), "see the file".into(), "see the file".into())];
    }
    let aspect = |aspect: &AspectRecord| line(aspect.what.clone(), cut(&aspect.built_in), cut(&aspect.own));
    rule.differs.iter().map(aspect).collect()
}

fn cut(text: &str) -> String {
    let text = one_line(text);
    if text.chars().count() <= LETTERS {
        return text;
    }
    text.chars().take(LETTERS).collect::<String>() + " …"
}

/// What the customer is told; none where everything is as it is built in.
pub fn sentence(record: &DecisionRecord) -> Option<String> {
    let own = &record.own_rules;
    let rules = own.iter().filter(|rule| rule.what == "rule").count() as u64;
    let cautions = own.len() as u64 - rules;
    let mut people: Vec<String> = own.iter().filter_map(|rule| rule.by.as_deref().map(one_line)).collect();
    people.sort();
    people.dedup();
    let counted = match (rules, cautions) {
        (0, 0) => return None,
        (rules, 0) => words::several(rules, "rule", "rules"),
        (0, cautions) => words::several(cautions, "caution", "cautions"),
        (rules, cautions) => format!(
            "{} and {}",
            words::several(rules, "rule", "rules"),
            words::several(cautions, "caution", "cautions")
        ),
    };
    let differ = if own.len() == 1 { "is not the one" } else { "are not those" };
    let by = match people.as_slice() {
        [] => "Their files do not say who answers for them.".to_string(),
        people => format!("Answerable, as the files say: {}.", people.join("; ")),
    };
    Some(format!(
        "{counted} of this decision {differ} built into this program. {by} Part three shows each beside the built-in one."
    ))
}
