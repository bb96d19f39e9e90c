//! Two versions of a brief side by side: what differs in them, and what that changes in the answer.
//!
//! Method: both are decided whole; keys are compared field by field, axes by their names.
//! Limits: an axis that has another name is another axis.

use super::answer::whole;
use super::form::{Draft, Values};
use super::page::Page;
use super::post::Post;
use super::print;
use super::site::{BRIEF, Site};
use crate::report::{Live, Shown, live};
use axum::extract::State;
use axum::response::Response;
use serde::Serialize;
use std::sync::Arc;

/// What stands side by side.
#[derive(Debug, Serialize)]
pub struct Comparison {
    /// What differs in the briefs: key, kept, present.
    differs: Vec<Line>,
    /// The machines.
    machine: Vec<Line>,
    /// The axes by name.
    axes: Vec<(String, Vec<Line>)>,
    kept_status: String,
    present_status: String,
}

/// One figure of both.
#[derive(Debug, PartialEq, Eq, Serialize)]
struct Line {
    name: String,
    kept: String,
    present: String,
    /// Whether both differ.
    changed: bool,
}

fn line(name: &str, kept: Option<&str>, present: Option<&str>) -> Line {
    let shown = |text: Option<&str>| text.filter(|text| !text.is_empty()).unwrap_or("–").to_string();
    let (kept, present) = (shown(kept), shown(present));
    Line { name: name.into(), changed: kept != present, kept, present }
}

/// The page with both versions side by side.
pub async fn compare(State(site): State<Arc<Site>>, post: Post) -> Response {
    let page = Page::of(&post);
    if post.other.trim().is_empty() {
        return print::page(&page.says(&["Keep a version first, or paste one: then both stand side by side.".into()]));
    }
    let (present, kept) = match (site.inputs(&post.draft), site.inputs_of(&post.other)) {
        (Ok(present), Ok(kept)) => (present, kept),
        (Err(faults), _) => return print::page_with_faults(&post, &faults),
        (_, Err(faults)) => {
            let told = faults.iter().map(|fault| format!("kept version, line {}: {}", fault.line, fault.message));
            return print::page(&page.says(&told.collect::<Vec<_>>()));
        }
    };
    let other = Draft::of_brief(BRIEF, &post.other).unwrap_or_default();
    let mut answers = Vec::new();
    for inputs in [kept, present] {
        match whole(&site, inputs, false).await {
            Ok(record) => answers.push(live(&record, post.units, Shown::Families)),
            Err(refused) => return print::refused(refused),
        }
    }
    let [kept, present] = answers.as_slice() else { return print::page(&page) };
    print::page(&page.with_answer(print::comparison(&side_by_side(&other, &post.draft, kept, present))))
}

fn side_by_side(other: &Draft, draft: &Draft, kept: &Live, present: &Live) -> Comparison {
    let mut names: Vec<&String> = kept.lines.iter().map(|(name, _)| name).collect();
    names.extend(
        present.lines.iter().map(|(name, _)| name).filter(|name| !kept.lines.iter().any(|(own, _)| own == *name)),
    );
    let axes = names.into_iter().map(|name| (name.clone(), of_axis(name, kept, present))).collect();
    Comparison {
        differs: differences(other, draft),
        machine: together(&kept.figures, &present.figures),
        axes,
        kept_status: kept.status.clone(),
        present_status: present.status.clone(),
    }
}

fn of_axis(name: &str, kept: &Live, present: &Live) -> Vec<Line> {
    let empty = Vec::new();
    let of = |live: &Live| live.glance.iter().find(|(axis, _)| axis == name).map(|(_, figures)| figures.clone());
    let (one, two) = (of(kept), of(present));
    let (first, second) = (one.as_ref().unwrap_or(&empty), two.as_ref().unwrap_or(&empty));
    if one.is_none() && two.is_none() {
        return vec![line("drive", Some("no drive"), Some("no drive"))];
    }
    together(first, second)
}

/// Figures of the same names beside each other.
fn together(kept: &[(String, String)], present: &[(String, String)]) -> Vec<Line> {
    let of = |figures: &[(String, String)], name: &str| {
        figures.iter().find(|(own, _)| own == name).map(|(_, value)| value.clone())
    };
    let mut names: Vec<&String> = kept.iter().map(|(name, _)| name).collect();
    names.extend(present.iter().map(|(name, _)| name).filter(|name| !kept.iter().any(|(own, _)| own == *name)));
    let both = |name: &String| line(name, of(kept, name).as_deref(), of(present, name).as_deref());
    names.into_iter().map(both).collect()
}

/// The fields of two drafts that differ.
fn differences(kept: &Draft, present: &Draft) -> Vec<Line> {
    let mut lines = of_values("", &kept.machine, &present.machine);
    let names = |draft: &Draft| -> Vec<String> { (0..draft.axes.len()).map(|axis| draft.name(axis).into()).collect() };
    let (of_kept, of_present) = (names(kept), names(present));
    let mut all = of_kept.clone();
    all.extend(of_present.iter().filter(|name| !of_kept.contains(name)).cloned());
    let empty = Values::new();
    for name in all {
        let values = |draft: &Draft, names: &[String]| {
            let place = names.iter().position(|own| *own == name);
            place.map(|place| {
                let mut values = draft.axes[place].clone();
                // a number says nothing to a reader
                if let Some(on) = values.get_mut(super::form::RIDES_ON) {
                    *on = on.parse().map_or(String::new(), |on: usize| draft.name(on).to_string());
                }
                values
            })
        };
        let (one, two) = (values(kept, &of_kept), values(present, &of_present));
        lines.extend(of_values(&format!("{name}: "), one.as_ref().unwrap_or(&empty), two.as_ref().unwrap_or(&empty)));
    }
    lines
}

fn of_values(before: &str, kept: &Values, present: &Values) -> Vec<Line> {
    let mut keys: Vec<&String> = kept.keys().chain(present.keys()).collect();
    keys.sort();
    keys.dedup();
    let both = |key: &String| {
        let name = format!("{before}{}", key.replace('-', " ").replace('.', ", "));
        line(&name, kept.get(key).map(String::as_str), present.get(key).map(String::as_str))
    };
    keys.into_iter().map(both).filter(|line| line.changed).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_what_differs_is_told() {
        let text = include_str!("../../docs/examples/hull-gantry.yaml");
        let kept = Draft::of_brief(BRIEF, text).expect("a draft");
        let mut present = kept.clone();
        assert_eq!(differences(&kept, &present), []);
        present.axes[1].insert("travel".into(), "2 m".into());
        present.edit(&super::super::form::Edit::RemoveAxis(2));
        let told = differences(&kept, &present);
        assert_eq!(told[0], line("cross: travel", Some("3.2 m"), Some("2 m")));
        assert!(told.iter().skip(1).all(|line| line.name.starts_with("ram: ") && line.present == "–"), "{told:?}");
    }
}
