//! What a rulebook has that the built-in one has not: rules and cautions added or put in place of built-in ones.
//!
//! Method: the file of every rule in force is held against the built-in file of the same id; where the text differs,
//! both are read and told aspect by aspect.
//! Limits: the built-in rulebook is that of this version of the program. A built-in rule cannot be taken away, only replaced.

use super::describe::condition_and_limit;
use super::{Caution, Rule, Rulebook, describe_caution, load};
use std::collections::BTreeMap;

/// One respect in which a rule differs from the built-in one of the same id.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Aspect {
    /// Which: `limit`, `obligation`, `families`, `weight` or `wording`.
    pub what: &'static str,
    /// As it is built in.
    pub built_in: String,
    /// As it is in force.
    pub own: String,
}

/// A rule or caution that is not as it is built in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OwnRule {
    /// `rule` or `caution`.
    pub what: &'static str,
    /// Its id.
    pub id: String,
    /// The file that it was read from, without folders of the machine.
    pub file: String,
    /// Who answers for it, if its file says so.
    pub by: Option<String>,
    /// Its limit in words where there is no built-in one of this id; else none.
    pub added: Option<String>,
    /// Where it differs; empty for what was added.
    pub differs: Vec<Aspect>,
}

/// Everything that is not as it is built in, rules first, by id.
pub fn own(book: &Rulebook) -> Vec<OwnRule> {
    let built_in: BTreeMap<(bool, String), String> = load::built_in_texts();
    let changed = |is_rule: bool, id: &str, text: &str| {
        built_in.get(&(is_rule, id.to_string())).is_none_or(|known| known != text)
    };
    let rules: Vec<(&Rule, &str)> = with_files(&book.rules, &book.files, |rule, text| changed(true, &rule.id, text));
    let cautions: Vec<(&Caution, &str)> =
        with_files(&book.cautions, &book.caution_files, |caution, text| changed(false, &caution.id, text));
    if rules.is_empty() && cautions.is_empty() {
        return Vec::new();
    }
    // the built-in files are tested to be without fault
    let ours = load::load(&[]).unwrap_or_default();
    let rules = rules.into_iter().map(|(rule, file)| own_rule(rule, file, ours.find(&rule.id)));
    rules
        .chain(cautions.into_iter().map(|(caution, file)| own_caution(caution, file, ours.caution(&caution.id))))
        .collect()
}

/// What stands in a file that is wanted, with the name of that file.
fn with_files<'b, T>(
    all: &'b [T],
    files: &'b [(String, String)],
    wanted: impl Fn(&T, &str) -> bool,
) -> Vec<(&'b T, &'b str)> {
    let both = all.iter().zip(files).filter(|(one, (_, text))| wanted(one, text));
    both.map(|(one, (name, _))| (one, name.as_str())).collect()
}

fn own_rule(rule: &Rule, file: &str, built_in: Option<&Rule>) -> OwnRule {
    let told = |what, told: fn(&Rule) -> String, ours: &Rule| {
        let (built_in, own) = (told(ours), told(rule));
        (built_in != own).then_some(Aspect { what, built_in, own })
    };
    let differs = built_in.map_or_else(Vec::new, |ours| {
        let mut all: Vec<Aspect> = [
            told("limit", |rule| condition_and_limit(rule).replace('`', ""), ours),
            told("obligation", |rule| rule.obligation.word().into(), ours),
            told("families", super::describe::families, ours),
            told("weight", |rule| format!("{} %", crate::units::significant(rule.weighs * 100.0, 3)), ours),
        ]
        .into_iter()
        .flatten()
        .collect();
        if all.is_empty() {
            all.extend(told(
                "wording",
                |rule| format!("{} {} {}", rule.title.trim(), rule.reason.trim(), rule.remedy.trim()),
                ours,
            ));
        }
        all
    });
    OwnRule {
        what: "rule",
        id: rule.id.clone(),
        file: file.into(),
        by: rule.by.clone(),
        added: built_in
            .is_none()
            .then(|| format!("{}, {}", rule.obligation.word(), condition_and_limit(rule).replace('`', ""))),
        differs,
    }
}

fn own_caution(caution: &Caution, file: &str, built_in: Option<&Caution>) -> OwnRule {
    let words = |caution: &Caution| describe_caution(caution).lines().skip(2).collect::<Vec<_>>().join(" ");
    let differs = built_in.map(|ours| Aspect { what: "wording", built_in: words(ours), own: words(caution) });
    OwnRule {
        what: "caution",
        id: caution.id.clone(),
        file: file.into(),
        by: None,
        added: built_in.is_none().then(|| caution.title.clone()),
        differs: differs.into_iter().filter(|aspect| aspect.built_in != aspect.own).collect(),
    }
}
