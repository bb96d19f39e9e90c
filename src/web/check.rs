//! A drive that somebody proposes, judged: chosen from lists of the catalogue, or with numbers of one's own.
//!
//! Method: what is chosen becomes the text of a choice, which is read and judged as `check` does it; a part with own numbers begins
//! with those of a part of the catalogue.
//! Limits: one axis at a time.

use super::answer::MOST;
use super::page::Page;
use super::post::Post;
use super::print;
use super::site::Site;
use crate::brief::FAMILIES;
use crate::brief::compose::{Filled, compose};
use crate::catalog::{Catalog, Kind};
use crate::choice::{self, NONE, kinds_of};
use crate::pipeline;
use crate::report;
use axum::extract::State;
use axum::response::Response;
use serde::Serialize;
use std::sync::Arc;

/// The name of the choice in faults and in its report.
const CHOICE: &str = "proposal.yaml";
/// What names of parts with own numbers begin with.
const OWN: &str = "own-";

/// What the template needs to ask for a proposal.
#[derive(Debug, Default, Serialize)]
pub struct CheckView {
    /// The axes by number, with their names, and whether each is the one.
    axes: Vec<(usize, String, bool)>,
    /// The families by id, with their words, and whether each is the one.
    families: Vec<(&'static str, String, bool)>,
    /// The kinds of parts of the family; empty until one is chosen.
    kinds: Vec<KindView>,
    /// Whether the card stands open.
    open: bool,
}

#[derive(Debug, Serialize)]
struct KindView {
    name: &'static str,
    words: String,
    /// Designations, and whether each is the one.
    parts: Vec<(String, bool)>,
    /// Whether own numbers are wanted.
    own: bool,
    fields: Vec<OwnField>,
}

#[derive(Debug, Serialize)]
struct OwnField {
    key: String,
    value: String,
    words: String,
}

impl CheckView {
    /// What was asked for so far; parts are listed by [`CheckView::with_parts`].
    pub fn of(post: &Post) -> CheckView {
        let axis = post.of_page("check-axis");
        let family = post.of_page("check-family");
        let axes = (0..post.draft.axes.len())
            .map(|place| (place, post.draft.name(place).to_string(), axis == place.to_string()))
            .collect();
        let families = FAMILIES.iter().map(|id| (*id, report::family_words(id), *id == family)).collect();
        CheckView { axes, families, kinds: Vec::new(), open: !family.is_empty() }
    }

    /// The same with the parts of the family.
    fn with_parts(self, post: &Post, catalog: &Catalog) -> CheckView {
        let family = post.of_page("check-family");
        if !FAMILIES.contains(&family) {
            return self;
        }
        let kinds = kinds_of(family).iter().filter_map(|name| Kind::find(name));
        CheckView { kinds: kinds.map(|kind| kind_view(kind, post, catalog)).collect(), ..self }
    }
}

fn kind_view(kind: &'static Kind, post: &Post, catalog: &Catalog) -> KindView {
    let chosen = post.of_page(&format!("part.{}", kind.name));
    let own = post.of_page(&format!("own.{}", kind.name)) == "yes";
    let mut parts: Vec<String> = (kind.rows)(catalog).into_iter().map(|row| row.designation).collect();
    if may_do_without(kind.name) {
        parts.insert(0, NONE.into());
    }
    let fields = if own { own_fields(kind, chosen, post, catalog) } else { Vec::new() };
    KindView {
        name: kind.name,
        words: kind.words.trim().into(),
        parts: parts.into_iter().map(|part| (part.clone(), part == chosen)).collect(),
        own,
        fields,
    }
}

fn may_do_without(kind: &str) -> bool {
    matches!(kind, "linear-scale" | "error-table")
}

/// The fields of a part with own numbers: what was written, else the figures of the part that was chosen, else of the first one.
fn own_fields(kind: &Kind, chosen: &str, post: &Post, catalog: &Catalog) -> Vec<OwnField> {
    let base = (kind.find_row)(catalog, chosen).or_else(|| (kind.rows)(catalog).into_iter().next());
    let values = base.map(|row| row.values).unwrap_or_default();
    let of = |(place, field): (usize, &crate::catalog::Field)| {
        let key = field.key();
        let name = format!("own.{}.{key}", kind.name);
        let written = post.page.iter().rev().find(|(known, _)| *known == name).map(|(_, text)| text.clone());
        let value = written.or_else(|| values.get(place).cloned().flatten()).unwrap_or_default();
        OwnField { key, value, words: field.words.trim().into() }
    };
    kind.fields.iter().enumerate().map(of).collect()
}

/// The text of the choice that was made.
fn choice_text(post: &Post, axis: &str, catalog: &Catalog) -> String {
    let family = post.of_page("check-family");
    let (mut parts, mut components) = (Vec::new(), Vec::new());
    for kind in kinds_of(family).iter().filter_map(|name| Kind::find(name)) {
        let chosen = post.of_page(&format!("part.{}", kind.name)).to_string();
        if post.of_page(&format!("own.{}", kind.name)) == "yes" {
            let designation = format!("{OWN}{}", kind.name);
            let mut entry = vec![("designation".to_string(), Filled::Words(designation.clone()))];
            let fields = own_fields(kind, &chosen, post, catalog);
            entry.extend(fields.into_iter().map(|field| (field.key, Filled::Value(field.value.trim().into()))));
            components.push(Filled::Group(vec![
                ("kind".into(), Filled::Words(kind.name.into())),
                ("basis".into(), Filled::Words("numbers typed on the page".into())),
                ("lead-time".into(), Filled::Value(lead_time(kind, &chosen, catalog))),
                ("entries".into(), Filled::Rows(vec![Filled::Group(entry)])),
            ]));
            parts.push((kind.name.to_string(), Filled::Words(designation)));
        } else {
            parts.push((kind.name.to_string(), Filled::Words(chosen)));
        }
    }
    let proposal = vec![("family".into(), Filled::Words(family.into())), ("parts".into(), Filled::Group(parts))];
    compose(&[
        ("components".into(), Filled::Rows(components)),
        ("axes".into(), Filled::Group(vec![(axis.into(), Filled::Group(proposal))])),
    ])
}

/// The time of delivery of the part that own numbers begin with.
fn lead_time(kind: &Kind, chosen: &str, catalog: &Catalog) -> String {
    let base = (kind.find_row)(catalog, chosen).or_else(|| (kind.rows)(catalog).into_iter().next());
    base.map(|row| row.lead_time).unwrap_or_default()
}

/// The parts to choose from, or the proposal judged.
pub async fn check(State(site): State<Arc<Site>>, post: Post) -> Response {
    let inputs = match site.inputs(&post.draft) {
        Ok(inputs) => inputs,
        Err(faults) => return print::page_with_faults(&post, &faults),
    };
    let page = Page::of(&post);
    let page = page.asks(CheckView::of(&post).with_parts(&post, &site.catalog));
    let axis = post.of_page("check-axis").parse().ok().and_then(|axis: usize| inputs.brief.axes.get(axis));
    let (Some(axis), "judge") = (axis, post.of_page("check")) else { return print::page(&page) };
    let choice =
        choice::load_text(CHOICE, &choice_text(&post, &axis.name, &site.catalog), &inputs.brief, &site.folders);
    let choice = match choice {
        Ok(choice) => choice,
        Err(faults) => return print::page(&page.says(&sentences(&faults))),
    };
    let units = post.units;
    let work = move |stop: &_| {
        let judged = pipeline::check_proposal_until(&inputs, &choice, stop);
        Some(judged?.map(|record| report::proposal_piece(&record, units)))
    };
    match site.work.run(MOST, work).await {
        Ok(Ok(html)) => print::page(&page.with_answer(html)),
        Ok(Err(faults)) => print::page(&page.says(&sentences(&faults))),
        Err(refused) => print::refused(refused),
    }
}

/// What is wrong with a choice, without places in a text that nobody wrote.
fn sentences(faults: &crate::yaml::Faults) -> Vec<String> {
    let told = |path: &str| path.trim_start_matches("axes.").to_string();
    faults.iter().flat_map(|fault| fault.at_keys()).map(|(path, words)| format!("{}: {words}", told(&path))).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{brief, catalog};

    #[test]
    fn a_part_of_every_kind_may_have_its_own_numbers() {
        let built_in = catalog::load(&[]).expect("the built-in catalogue");
        let text = include_str!("../../docs/examples/hull-gantry.yaml");
        let brief = brief::load("brief.yaml", text).expect("a brief");
        for family in FAMILIES {
            let mut post = Post::default();
            post.page.push(("check-family".into(), family.to_string()));
            for kind in kinds_of(family) {
                post.page.push((format!("own.{kind}"), "yes".into()));
            }
            let text = choice_text(&post, "cross", &built_in);
            let choice =
                choice::load_text(CHOICE, &text, &brief, &[]).unwrap_or_else(|faults| panic!("{text}\n{faults}"));
            assert_eq!(choice.proposals[0].parts.len(), kinds_of(family).len());
            assert!(choice.proposals[0].parts.iter().all(|part| part.own), "{family}");
        }
    }
}
