//! Brief, catalogue and rules held against each other: what one of them names and another one lacks.
//!
//! Method: every such fault is told at its place, which is looked up in the text only when there is one.
//! Limits: which rules a family never enters is known only of a brief that could be read.

use super::{Inputs, setting};
use crate::brief::{self, Brief, Doubt};
use crate::catalog::{Catalog, Surroundings};
use crate::drive::{Demand, Family, WithFamily, considered, with_family};
use crate::record::{unknown_in_line, unknown_surroundings};
use crate::rule::Rulebook;
use crate::search::{Coupling, NeverEntered, Setting, never_entered};
use crate::units::{Mass, Measure};
use crate::yaml::{Document, Fault, Faults, Node};

/// Refuses rules that could never be judged, because a family they are meant for knows nothing of what they name,
/// and waivers of rules that do not exist.
pub fn check(mut inputs: Inputs) -> Result<Inputs, Faults> {
    let mut faults = Faults::default();
    let unknown = surroundings_doubted(&inputs.brief, &inputs.catalog);
    inputs.brief.doubts.extend(unknown);
    waivers(&inputs.brief.name, &inputs.brief.text, &inputs.rulebook, &mut faults);
    workshop_lines(&inputs.catalog, &mut faults);
    for together in
        rules_never_entered(&inputs).chunk_by(|a, b| (&a.rule, &a.characteristic) == (&b.rule, &b.characteristic))
    {
        tell_never_entered(together, &inputs.rulebook, &mut faults);
    }
    if faults.is_empty() { Ok(inputs) } else { Err(faults) }
}

/// Doubts words on the surroundings that the catalogue does not know: nothing is chosen for them.
fn surroundings_doubted(brief: &Brief, catalog: &Catalog) -> Option<Doubt> {
    let unknown: Vec<String> =
        unknown_surroundings(&brief.environment, catalog).map(|written| format!("“{written}”")).collect();
    let known: Vec<&str> = catalog.surroundings.iter().flat_map(Surroundings::names).collect();
    (!unknown.is_empty()).then(|| Doubt {
        key: "environment".into(),
        words: format!(
            "nothing is chosen for {}; the catalogue knows surroundings by these words: {}",
            unknown.join(", "),
            known.join(", ")
        ),
    })
}

/// Tells waivers of rules that do not exist.
pub(super) fn waivers(name: &str, text: &str, rulebook: &Rulebook, faults: &mut Faults) {
    let ids: Vec<&str> = rulebook.rules.iter().map(|rule| rule.id.as_str()).collect();
    brief::waivers_of_known_rules(name, text, &ids, faults);
}

/// Tells lines for the workshop that name what nothing works out and no part has.
pub(super) fn workshop_lines(catalog: &Catalog, faults: &mut Faults) {
    for line in &catalog.workshop_lines {
        let Some((name, near)) = unknown_in_line(line) else { continue };
        let message =
            format!("workshop line `{}` names `{name}`, which nothing works out and no part has", line.designation);
        let help = near.map_or_else(
            || {
                "`figure` takes the id of a characteristic, `part` a kind and its key, such as `rack-grade.joint-step`"
                    .into()
            },
            |near| format!("did you mean `{near}`?"),
        );
        // of several files that hold such a line the last one counts
        let found = catalog.files.iter().rev().filter(|(_, text)| text.contains(&name)).any(|(file, text)| {
            let document = Document::parse(file, text, &mut Faults::default());
            let node = document.as_ref().and_then(|read| workshop_line(&read.root(), &line.designation, &name));
            node.iter().for_each(|node| node.fault(faults, message.clone(), Some(help.clone())));
            node.is_some()
        });
        if !found {
            faults.push(Fault::of_file("catalog/workshop-line", message, Some(help)));
        }
    }
}

/// Where the line of this designation names this.
fn workshop_line<'a>(root: &Node<'a>, designation: &str, name: &str) -> Option<Node<'a>> {
    let mut unheard = Faults::default();
    let entries = root.get("entries").filter(Node::is_list)?.list(&mut unheard);
    let mut named = entries.iter().filter(|entry| {
        let own = entry.get("designation").and_then(|node| node.text(&mut unheard));
        own.is_some_and(|own| !own.is_empty() && designation.starts_with(&own))
    });
    named.find_map(|entry| {
        let names = |node: &Node<'_>| node.text(&mut Faults::default()).is_some_and(|text| text == name);
        ["figure", "part"].iter().filter_map(|key| entry.get(key)).find(names)
    })
}

/// The rules that name what a family they are meant for never works out.
fn rules_never_entered(inputs: &Inputs) -> Vec<NeverEntered> {
    struct Never<'n> {
        demand: &'n Demand<'n>,
        setting: &'n Setting<'n>,
    }
    impl WithFamily for Never<'_> {
        type Output = Vec<NeverEntered>;
        fn with<F: Family>(self, family: &F) -> Self::Output {
            never_entered(family, self.demand, self.setting)
        }
    }
    let mut never: Vec<NeverEntered> = Vec::new();
    for axis in 0..inputs.brief.axes.len() {
        let demand = Demand::new(&inputs.brief, axis, Mass::of_si(0.0));
        let setting = setting(inputs, Coupling::default(), &[], false);
        for family in considered(&inputs.brief, axis) {
            let work = Never { demand: &demand, setting: &setting };
            never.extend(with_family(family, &demand, &inputs.catalog, work).into_iter().flatten());
        }
    }
    never.sort_by(|a, b| (&a.rule, &a.characteristic, &a.family).cmp(&(&b.rule, &b.characteristic, &b.family)));
    never.dedup();
    never
}

/// Tells one characteristic of a rule, with all families that never work it out.
fn tell_never_entered(together: &[NeverEntered], rulebook: &Rulebook, faults: &mut Faults) {
    let Some(fault) = together.first() else { return };
    let families: Vec<&str> = together.iter().map(|fault| fault.family.as_str()).collect();
    let (word, families) = (if families.len() > 1 { "families" } else { "family" }, families.join(", "));
    let message =
        format!("rule `{}` names `{}`, which the {word} {families} never works out", fault.rule, fault.characteristic);
    let message = if word == "family" { message } else { message.replace("works out", "work out") };
    let help = format!("name the families it is meant for under `applies-to`, without {families}");
    let place = rulebook.rules.iter().position(|rule| rule.id == fault.rule);
    let file = place.and_then(|place| rulebook.files.get(place));
    let document = file.and_then(|(name, text)| Document::parse(name, text, &mut Faults::default()));
    match document.as_ref().and_then(|read| naming(&read.root(), &fault.characteristic)) {
        Some(node) => node.fault(faults, message, Some(help)),
        None => faults.push(Fault::of_file(&format!("rules/{}.yaml", fault.rule), message, Some(help))),
    }
}

/// Where a rule names a characteristic.
fn naming<'a>(root: &Node<'a>, characteristic: &str) -> Option<Node<'a>> {
    const PLACES: [&[&str]; 5] = [
        &["limit", "characteristic"],
        &["limit", "at-most", "of"],
        &["limit", "at-least", "of"],
        &["when", "stated"],
        &["when", "above", "characteristic"],
    ];
    PLACES.iter().find_map(|keys| {
        let node = keys.iter().try_fold(root.clone(), |node, key| node.get(key))?;
        node.text(&mut Faults::default()).is_some_and(|text| text == characteristic).then_some(node)
    })
}
