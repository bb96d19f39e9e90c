//! Reading one caution file: from its keys to a [`Caution`], or to faults at their places.

use super::caution::{Above, Case, Caution, Level, Reader, StandardNamed};
use super::read::{characteristic, families, find, is_kebab, prose};
use crate::yaml::{Document, Faults, Node, Purpose};

/// The caution that is told with every drive.
const GENERAL: &str = "general";

/// The caution in this document, if nothing is wrong with it.
pub(super) fn caution(id: &str, document: &Document, faults: &mut Faults) -> Option<Caution> {
    let root = document.root();
    let before = faults.len();
    if !root.is_for(Purpose::Caution, faults) {
        return None;
    }
    if !is_kebab(id) {
        let message =
            format!("`{id}` is no caution id; the name of the file is the id, in small letters, digits and hyphens");
        root.fault(faults, message, None);
    }
    root.only_keys(&["title", "order", "for", "when", "text", "standards"], faults);
    let title = prose(&root, "title", faults);
    let order = root.need("order", faults).and_then(|node| node.count(faults));
    let readers = readers(&root, faults);
    let cases = cases(id, &root, faults);
    let text = prose(&root, "text", faults);
    let standards = standards(&root, faults);
    let caution = Caution { id: id.into(), title: title?, order: order?, readers, cases, text: text?, standards };
    (faults.len() == before).then_some(caution)
}

/// The items of a list that must not be empty.
fn items<'a>(node: &Node<'a>, nothing: &str, faults: &mut Faults) -> Vec<Node<'a>> {
    let listed = node.list(faults);
    if node.is_list() && listed.is_empty() {
        node.fault(faults, nothing, None);
    }
    listed
}

fn readers(root: &Node<'_>, faults: &mut Faults) -> Vec<Reader> {
    let Some(node) = root.need("for", faults) else { return Vec::new() };
    let listed = items(&node, "a caution is meant for somebody", faults);
    listed.iter().filter_map(|reader| reader.choice(&Reader::WORDS, faults)).collect()
}

fn standards(root: &Node<'_>, faults: &mut Faults) -> Vec<StandardNamed> {
    let Some(node) = root.get("standards") else { return Vec::new() };
    let listed = items(&node, "no standard is listed; leave the key out where none is to be read", faults);
    let mut standards = Vec::new();
    for entry in listed {
        entry.only_keys(&["number", "about"], faults);
        let (number, about) = (prose(&entry, "number", faults), prose(&entry, "about", faults));
        if let (Some(number), Some(about)) = (number, about) {
            standards.push(StandardNamed { number, about });
        }
    }
    standards
}

fn cases(id: &str, root: &Node<'_>, faults: &mut Faults) -> Vec<Case> {
    let Some(node) = root.get("when") else { return Vec::new() };
    if id == GENERAL {
        node.fault(faults, "the caution `general` is told with every drive and takes no condition", None);
        return Vec::new();
    }
    let listed = items(&node, "no case is listed; leave the key out for a caution that always holds", faults);
    listed.iter().map(|case| self::case(case, faults)).collect()
}

fn case(node: &Node<'_>, faults: &mut Faults) -> Case {
    const KEYS: [&str; 4] = ["families", "environment", "present", "above"];
    node.only_keys(&KEYS, faults);
    if node.is_mapping() && KEYS.iter().all(|key| node.get(key).is_none()) {
        node.fault(faults, format!("a case names one of {} at least", KEYS.join(", ")), None);
    }
    let environment = node.get("environment").map_or(Vec::new(), |node| {
        items(&node, "no word is listed", faults).iter().filter_map(|word| written(word, faults)).collect()
    });
    let present = node.get("present").map_or(Vec::new(), |node| {
        let listed = items(&node, "no characteristic is listed", faults);
        listed.iter().filter_map(|entry| Some(find(entry, &entry.text(faults)?, faults)?.0)).collect()
    });
    let above = node.get("above").map_or(Vec::new(), |node| {
        let listed = items(&node, "no characteristic is listed", faults);
        listed.iter().filter_map(|entry| self::above(entry, faults)).collect()
    });
    Case { families: families(node, "families", faults), environment, present, above }
}

/// A word that is not empty; an empty one would be in every text.
fn written(node: &Node<'_>, faults: &mut Faults) -> Option<String> {
    let text = node.text(faults)?.trim().to_string();
    if text.is_empty() {
        node.fault(faults, "an empty word would be found in every text", None);
        return None;
    }
    Some(text)
}

fn above(node: &Node<'_>, faults: &mut Faults) -> Option<Above> {
    node.only_keys(&["characteristic", "value", "factor", "of"], faults);
    let found = characteristic(node, "characteristic", faults);
    match (node.get("value"), node.get("of")) {
        (Some(value), None) => {
            if let Some(factor) = node.get("factor") {
                factor.fault(faults, "a factor goes with `of`; put it into the value", None);
            }
            let (slot, about) = found?;
            Some(Above { slot, level: Level::Value(value.quantity_as(about.dimension, faults)?) })
        }
        (None, Some(of)) => {
            let (other, limiting) = characteristic(node, "of", faults)?;
            let factor = match node.get("factor") {
                None => 1.0,
                Some(factor) => factor.number(faults)?,
            };
            let (slot, about) = found?;
            if limiting.dimension != about.dimension {
                let message = format!(
                    "`{}` is {}, but `{}` is {}; they cannot be compared",
                    limiting.id,
                    limiting.dimension.words(),
                    about.id,
                    about.dimension.words()
                );
                of.fault(faults, message, None);
                return None;
            }
            Some(Above { slot, level: Level::Of(factor, other) })
        }
        _ => {
            node.fault(faults, "write either `value` or `of`, another characteristic", None);
            None
        }
    }
}
