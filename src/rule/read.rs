//! Reading one rule file: from its keys to a [`Rule`], or to faults at their places.

use super::{Example, FAMILIES, Limit, Obligation, Rule, RuleSource, Sense, Verdict, When, verdict};
use crate::characteristic;
use crate::ledger::{About, Known, Ledger, Origin};
use crate::source::Standing;
use crate::units::significant;
use crate::yaml::{Document, Faults, Node, Purpose, nearest};

/// How far a computed example may lie from the written one, as a share.
const AGREEMENT: f64 = 1e-9;
/// How many digits a fault shows of a utilisation.
const DIGITS: usize = 12;

/// The rule in this document, if nothing is wrong with it.
pub(super) fn rule(id: &str, document: &Document, faults: &mut Faults) -> Option<Rule> {
    let root = document.root();
    let before = faults.len();
    if !root.is_for(Purpose::Rule, faults) {
        return None;
    }
    if !is_kebab(id) {
        let help = "name the file with small letters, digits and hyphens, beginning with a letter: `my-limit.yaml`";
        root.fault(faults, format!("`{id}` is no rule id; the name of the file is the id"), Some(help.into()));
    }
    root.only_keys(
        &[
            "title",
            "by",
            "applies-to",
            "obligation",
            "weighs",
            "limit",
            "when",
            "reason",
            "remedy",
            "sources",
            "examples",
        ],
        faults,
    );
    let title = prose(&root, "title", faults);
    let by = root.get("by").and_then(|_| prose(&root, "by", faults));
    let applies_to = families(&root, "applies-to", faults);
    let obligation = root
        .need("obligation", faults)
        .and_then(|node| node.choice(&Obligation::ALL.map(|obligation| (obligation.word(), obligation)), faults));
    let weighs = weighs(&root, obligation, faults);
    let limit = root.need("limit", faults).and_then(|node| limit(&node, faults));
    let when = root.get("when").and_then(|node| when(&node, faults));
    let reason = prose(&root, "reason", faults);
    let remedy = prose(&root, "remedy", faults);
    let sources = sources(&root, faults);
    let (demand, sense, factor, limit) = limit?;
    let mut rule = Rule {
        id: id.into(),
        title: title?,
        by,
        applies_to,
        obligation: obligation?,
        weighs,
        demand,
        sense,
        factor,
        limit,
        when,
        reason: reason?,
        remedy: remedy?,
        sources,
        examples: Vec::new(),
    };
    rule.examples = examples(&root, &rule, faults);
    (faults.len() == before).then_some(rule)
}

pub(super) fn is_kebab(id: &str) -> bool {
    id.starts_with(|first: char| first.is_ascii_lowercase())
        && id.split('-').all(|word| {
            !word.is_empty() && word.chars().all(|letter| letter.is_ascii_lowercase() || letter.is_ascii_digit())
        })
}

/// A text that has to be there and not be empty.
pub(super) fn prose(node: &Node, key: &str, faults: &mut Faults) -> Option<String> {
    let node = node.need(key, faults)?;
    let text = node.text(faults)?.trim().to_string();
    if text.is_empty() {
        let help = "write it in plain words".to_string();
        node.fault(faults, format!("`{key}` is empty; readers of the report are told it"), Some(help));
        return None;
    }
    Some(text)
}

/// The families listed at a key; none listed means all.
pub(super) fn families(root: &Node, key: &str, faults: &mut Faults) -> Vec<String> {
    let Some(node) = root.get(key) else { return Vec::new() };
    let listed = node.list(faults);
    if node.is_list() && listed.is_empty() {
        node.fault(faults, "no family is listed; leave the key out where all are meant", None);
    }
    let choices = FAMILIES.map(|family| (family, family));
    listed.iter().filter_map(|family| family.choice(&choices, faults)).map(String::from).collect()
}

/// The characteristic named at a key: its slot and what is told of it.
pub(super) fn characteristic(node: &Node, key: &str, faults: &mut Faults) -> Option<(usize, &'static About)> {
    let node = node.need(key, faults)?;
    let id = node.text(faults)?;
    find(&node, &id, faults)
}

/// The characteristic of this id: its slot and what is told of it.
pub(super) fn find(node: &Node, id: &str, faults: &mut Faults) -> Option<(usize, &'static About)> {
    if let Some(found) = characteristic::find(id) {
        return Some(found);
    }
    if characteristic::all().any(|about| about.phased && about.id == id) {
        let help = "take its largest or mean value, where there is a characteristic of that".to_string();
        node.fault(faults, format!("`{id}` has one value a phase; a rule needs a single value"), Some(help));
        return None;
    }
    let known = characteristic::all().filter(|about| !about.phased).map(|about| about.id);
    let help = nearest(id, known).map_or_else(
        || "docs/rules.md and part three of a report name characteristics".into(),
        |near| format!("did you mean `{near}`?"),
    );
    node.fault(faults, format!("unknown characteristic `{id}`"), Some(help));
    None
}

/// Demand, sense, factor and limit.
fn limit(node: &Node, faults: &mut Faults) -> Option<(usize, Sense, f64, Limit)> {
    node.only_keys(&["characteristic", "at-most", "at-least"], faults);
    let demand = characteristic(node, "characteristic", faults);
    let (sense, bound) = match (node.get("at-most"), node.get("at-least")) {
        (Some(bound), None) => (Sense::AtMost, bound),
        (None, Some(bound)) => (Sense::AtLeast, bound),
        (None, None) => {
            let help = "write `at-most: { of: … }` or `at-most: { value: … }`".to_string();
            node.fault(faults, "a limit needs `at-most` or `at-least`", Some(help));
            return None;
        }
        (Some(_), Some(_)) => {
            let help = "write two rules, each in a file of its own".to_string();
            node.fault(faults, "a limit has either `at-most` or `at-least`, not both", Some(help));
            return None;
        }
    };
    let (demand, about) = demand?;
    bound.only_keys(&["factor", "of", "value"], faults);
    match (bound.get("of"), bound.get("value")) {
        (Some(of), None) => {
            let (slot, limiting) = characteristic(&bound, "of", faults)?;
            if limiting.dimension != about.dimension {
                of.fault(
                    faults,
                    format!(
                        "`{}` is {}, but `{}` is {}; they cannot be compared",
                        limiting.id,
                        limiting.dimension.words(),
                        about.id,
                        about.dimension.words()
                    ),
                    None,
                );
                return None;
            }
            let factor = match bound.get("factor") {
                None => 1.0,
                Some(node) => match node.number(faults)? {
                    factor if factor > 0.0 => factor,
                    factor => {
                        node.fault(faults, format!("a factor is above 0, not {factor}"), None);
                        return None;
                    }
                },
            };
            Some((demand, sense, factor, Limit::Of(slot)))
        }
        (None, Some(fixed)) => {
            if let Some(factor) = bound.get("factor") {
                factor.fault(faults, "a factor goes with `of`; put it into the value", None);
            }
            Some((demand, sense, 1.0, Limit::Value(fixed.quantity_as(about.dimension, faults)?)))
        }
        (None, None) => {
            let help =
                "write `of:` with the id of a characteristic, or `value:` with a number and its unit".to_string();
            bound.fault(faults, "a limit needs `of`, a characteristic, or `value`", Some(help));
            None
        }
        (Some(_), Some(_)) => {
            bound.fault(faults, "a limit has either `of` or `value`, not both", Some("keep one of the two".into()));
            None
        }
    }
}

fn when(node: &Node, faults: &mut Faults) -> Option<When> {
    node.only_keys(&["stated", "above"], faults);
    match (node.get("stated"), node.get("above")) {
        (Some(_), None) => characteristic(node, "stated", faults).map(|(slot, _)| When::Stated(slot)),
        (None, Some(above)) => {
            above.only_keys(&["characteristic", "value"], faults);
            let found = characteristic(&above, "characteristic", faults);
            let level = above.need("value", faults)?;
            let (slot, about) = found?;
            Some(When::Above(slot, level.quantity_as(about.dimension, faults)?))
        }
        _ => {
            let help = "`stated` names a characteristic that has to be there, `above` one and its `value`".to_string();
            node.fault(faults, "a condition is either `stated` or `above`", Some(help));
            None
        }
    }
}

fn sources(root: &Node, faults: &mut Faults) -> Vec<RuleSource> {
    let Some(node) = root.need("sources", faults) else { return Vec::new() };
    let kinds: Vec<(&str, Standing)> = Standing::ALL
        .iter()
        .filter(|standing| **standing != Standing::Invented)
        .map(|standing| (standing.key(), *standing))
        .collect();
    let listed = node.list(faults);
    if node.is_list() && listed.is_empty() {
        let help = "write `- kind: practice` and a `note`".to_string();
        node.fault(faults, "a rule needs a source; common practice is one", Some(help));
    }
    let mut sources = Vec::new();
    for source in listed {
        source.only_keys(&["kind", "note"], faults);
        let standing = source.need("kind", faults).and_then(|kind| kind.choice(&kinds, faults));
        let note = prose(&source, "note", faults);
        if let (Some(standing), Some(note)) = (standing, note) {
            sources.push(RuleSource { standing, note });
        }
    }
    sources
}

fn examples(root: &Node, rule: &Rule, faults: &mut Faults) -> Vec<Example> {
    let Some(node) = root.need("examples", faults) else { return Vec::new() };
    let before = faults.len();
    let examples: Vec<Example> =
        node.list(faults).iter().filter_map(|example| self::example(example, rule, faults)).collect();
    for wanted in [Verdict::Pass, Verdict::Fail] {
        if faults.len() == before && !examples.iter().any(|example| example.verdict == wanted) {
            let help =
                "an example that passes and one that fails show that the limit is the right way round".to_string();
            let message = format!("a rule needs an example with the verdict `{}`", wanted.word());
            node.fault(faults, message, Some(help));
        }
    }
    examples
}

fn example(node: &Node, rule: &Rule, faults: &mut Faults) -> Option<Example> {
    node.only_keys(&["given", "utilisation", "verdict"], faults);
    let given = node.need("given", faults);
    let utilisation = node.need("utilisation", faults).and_then(|node| node.number(faults));
    let stated = node
        .need("verdict", faults)
        .and_then(|node| node.choice(&[Verdict::Pass, Verdict::Fail].map(|verdict| (verdict.word(), verdict)), faults));
    let before = faults.len();
    let mut example = Example { given: Vec::new(), written: Vec::new(), utilisation: utilisation?, verdict: stated? };
    let mut sheet = Known::default();
    for (id, entry) in given?.entries(faults) {
        let Some((slot, about)) = find(&entry, &id, faults) else { continue };
        if !rule.slots().any(|used| used == slot) {
            let used: Vec<&str> =
                rule.slots().filter_map(|slot| characteristic::all().nth(slot)).map(|about| about.id).collect();
            entry.fault(faults, format!("this rule does not use `{id}`"), Some(format!("it uses {}", used.join(", "))));
            continue;
        }
        let (Some(si), Some(text)) = (entry.quantity_as(about.dimension, faults), entry.text(faults)) else { continue };
        sheet.keep_given(slot, si, Origin::Brief);
        example.given.push((slot, si));
        example.written.push((id, text));
    }
    if faults.len() > before {
        return None;
    }
    let computed = rule.utilisation(&sheet);
    if computed.is_nan() {
        let help = "give every characteristic that `limit` and `when` name".to_string();
        node.fault(faults, "the values given are not enough to work out a utilisation", Some(help));
    } else if (computed - example.utilisation).abs() > AGREEMENT * computed.abs().max(1.0) {
        let message = format!(
            "the rule gives a utilisation of {}, not {}",
            significant(computed, DIGITS),
            significant(example.utilisation, DIGITS)
        );
        let help = "a utilisation is value over limit of `at-most`, limit over value of `at-least`".to_string();
        node.get("utilisation").as_ref().unwrap_or(node).fault(faults, message, Some(help));
    } else if verdict(computed) != example.verdict {
        let message =
            format!("the rule gives the verdict `{}`, not `{}`", verdict(computed).word(), example.verdict.word());
        let help = "a utilisation of at most 1 passes".to_string();
        node.get("verdict").as_ref().unwrap_or(node).fault(faults, message, Some(help));
    }
    Some(example)
}

/// How much an advice weighs when drives are compared; binding rules have no weight, they exclude.
fn weighs(root: &Node<'_>, obligation: Option<Obligation>, faults: &mut Faults) -> f64 {
    let Some(node) = root.get("weighs") else { return 0.0 };
    if obligation == Some(Obligation::Shall) {
        node.fault(faults, "a rule that binds has no weight: it excludes", Some("leave `weighs` out".into()));
        return 0.0;
    }
    let share = node.quantity_as(crate::units::Dimension::Ratio, faults).unwrap_or(0.0);
    if !(0.0..=1.0).contains(&share) {
        node.fault(faults, "a weight from 0 % to 100 % was expected", Some("2 % is usual".into()));
        return 0.0;
    }
    share
}
