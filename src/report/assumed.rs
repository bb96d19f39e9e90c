//! The assumptions: which of them the brief could state, and how their values read.

use super::view::View;
use super::{inch, words};
use crate::record::*;
use serde::Serialize;

/// A value with its name.
#[derive(Serialize)]
pub struct Named {
    /// What it is.
    pub name: String,
    /// Its value with its unit.
    pub value: String,
}

/// The axis that an assumption speaks of, and its key there.
fn of_axis<'a>(view: &View<'a>, assumed: &'a Assumed) -> Option<(&'a AxisRecord, &'a str)> {
    view.record.axes.iter().find_map(|axis| {
        let key = assumed.key.strip_prefix("axes.")?.strip_prefix(axis.name.as_str())?.strip_prefix('.')?;
        Some((axis, key))
    })
}

/// Whether the brief could have stated the value; the others belong to the method.
fn statable(view: &View, assumed: &Assumed) -> bool {
    match of_axis(view, assumed) {
        Some((axis, key)) => {
            let first = key.split('.').next().unwrap_or(key);
            axis.requirement.iter().any(|line| line.key == first)
        }
        None => !assumed.key.contains('.'),
    }
}

/// What the brief states and may not mean, by its key.
pub fn doubted(view: &View) -> Vec<Named> {
    let words = |doubt: &DoubtRecord| match doubt.words.contains('“') {
        // what is quoted stands in the brief like that
        true => doubt.words.clone(),
        false => inch::shown_text(&doubt.words, view.units),
    };
    let named = |doubt: &DoubtRecord| Named { name: doubt.key.clone(), value: words(doubt) };
    view.record.doubts.iter().map(named).collect()
}

/// How many values of the method are assumed, in a sentence; empty if there is none.
pub fn of_method(view: &View) -> String {
    let mut keys: Vec<&str> = view
        .record
        .assumptions
        .iter()
        .filter(|assumed| !statable(view, assumed))
        .map(|assumed| of_axis(view, assumed).map_or(assumed.key.as_str(), |(_, key)| key))
        .collect();
    keys.sort_unstable();
    keys.dedup();
    match keys.len() {
        0 => String::new(),
        1 => "One value of the method is assumed as well; part three gives it with its reason.".into(),
        count => format!("{count} values of the method are assumed as well; part three gives them with their reasons."),
    }
}

/// The assumptions by what is assumed, axes with the same value together.
pub fn left_open(view: &View) -> Vec<Named> {
    let mut lines: Vec<(String, String, Vec<String>)> = Vec::new();
    for assumed in view.record.assumptions.iter().filter(|assumed| statable(view, assumed)) {
        let (axis, key) = match of_axis(view, assumed) {
            Some((axis, key)) => (Some(axis.name.clone()), key),
            None => (None, assumed.key.as_str()),
        };
        let name = words::spaced(&key.replace('.', ", "));
        let value = assumed_value(view, assumed);
        let known = lines.iter_mut().find(|(known, text, axes)| *known == name && *text == value && !axes.is_empty());
        match (known, axis) {
            (Some((_, _, axes)), Some(axis)) => axes.push(axis),
            (_, axis) => lines.push((name, value, axis.into_iter().collect())),
        }
    }
    let named = |(name, value, axes): (String, String, Vec<String>)| {
        let value = if axes.is_empty() { value } else { format!("{value} ({})", words::list(&axes)) };
        Named { name, value }
    };
    lines.into_iter().map(named).collect()
}

/// The value of an assumption with its unit.
pub fn assumed_value(view: &View, assumed: &Assumed) -> String {
    match assumed.unit.as_str() {
        "" if assumed.key == "downtime-cost" => format!("{} {} an hour", assumed.value, view.record.currency),
        "" if assumed.key == "energy-price" => format!("{} {} a kWh", assumed.value, view.record.currency),
        "" | "1" => assumed.value.clone(),
        unit => {
            let unit = unit.replace("currency", &view.record.currency);
            view.text(&format!("{} {unit}", assumed.value))
        }
    }
}
