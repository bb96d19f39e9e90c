//! What somebody filled in, and its way to the text of a brief and back.
//!
//! Method: a draft holds texts by the names of fields and judges none of them; the brief that is composed of it is read by the
//! loader. A draft of an opened brief holds what the loader would read.
//! Limits: comments and the order of keys of an opened brief are not kept.

use super::shape::{FORM, Field, Group, Input, Shape};
use crate::brief::compose::{Filled, compose};
use crate::brief::{FAMILIES, MOST_AXES};
use crate::yaml::{Document, Faults, Node};
use std::collections::BTreeMap;

/// Texts by the names of their fields.
pub type Values = BTreeMap<String, String>;

/// The field that tells on which axis this one rides, by the number of that axis.
pub const RIDES_ON: &str = "rides-on";
/// The field that holds the name of an axis.
pub const NAME: &str = "name";
/// More rows than this of one key are not read.
pub const MOST_ROWS: usize = 64;

/// What somebody filled in.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Draft {
    /// The machine.
    pub machine: Values,
    /// The axes.
    pub axes: Vec<Values>,
}

impl Draft {
    /// Reads what a form sent; names that no field has are left.
    pub fn of_pairs(pairs: &[(String, String)]) -> Draft {
        let mut machine = Values::new();
        let mut axes: BTreeMap<usize, Values> = BTreeMap::new();
        for (name, text) in pairs {
            let text = text.trim();
            match name.strip_prefix("axes.").and_then(|rest| rest.split_once('.')) {
                Some((place, field)) => {
                    if let Some(place) = place.parse::<usize>().ok().filter(|place| *place < MOST_AXES) {
                        axes.entry(place).or_default().insert(field.into(), text.into());
                    }
                }
                None => {
                    machine.insert(name.clone(), text.into());
                }
            }
        }
        // numbers of axes may have gaps where one was taken out
        let places: Vec<usize> = axes.keys().copied().collect();
        let mut axes: Vec<Values> = axes.into_values().collect();
        for axis in &mut axes {
            if let Some(on) = axis.get_mut(RIDES_ON) {
                let place = on.parse::<usize>().ok().and_then(|on| places.iter().position(|place| *place == on));
                *on = place.map_or(String::new(), |place| place.to_string());
            }
        }
        Draft { machine, axes }
    }

    /// The text of the brief.
    pub fn text(&self) -> String {
        let mut keys = filled(&FORM.whole_machine, &self.machine, "");
        let axes = self.axes.iter().enumerate().map(|(place, axis)| {
            let mut keys = filled(&FORM.whole_axis, axis, "");
            let carries: Vec<String> = self.riders(place).map(|rider| self.name(rider).to_string()).collect();
            keys.push(("carries".into(), Filled::Texts(carries)));
            (self.name(place).to_string(), Filled::Group(keys))
        });
        let axes: Vec<(String, Filled)> = axes.collect();
        let waivers = keys.iter().position(|(key, _)| key == "waivers").unwrap_or(keys.len());
        keys.insert(waivers, ("axes".into(), Filled::Group(axes)));
        compose(&keys)
    }

    /// The name of an axis; empty if it has none.
    pub fn name(&self, axis: usize) -> &str {
        self.axes.get(axis).and_then(|axis| axis.get(NAME)).map_or("", String::as_str)
    }

    /// The axes that ride on this one.
    pub fn riders(&self, axis: usize) -> impl Iterator<Item = usize> {
        let on = axis.to_string();
        let rides = move |place: &usize| {
            let own = self.axes[*place].get(RIDES_ON).is_some_and(|text| *text == on);
            own && *place != axis
        };
        (0..self.axes.len()).filter(rides)
    }

    /// What a brief holds, as far as it can be read; nothing where the text is no YAML.
    pub fn of_brief(name: &str, text: &str) -> Option<Draft> {
        let mut unheard = Faults::default();
        let document = Document::parse(name, text, &mut unheard)?;
        let root = document.root();
        let mut draft = Draft { machine: values(&FORM.whole_machine, &root), axes: Vec::new() };
        let entries = root.get("axes").filter(Node::is_mapping).map(|axes| axes.entries(&mut unheard));
        let entries: Vec<(String, Node<'_>)> = entries.unwrap_or_default().into_iter().take(MOST_AXES).collect();
        for (name, node) in &entries {
            let mut axis = values(&FORM.whole_axis, node);
            axis.insert(NAME.into(), name.clone());
            draft.axes.push(axis);
        }
        for (carrier, (_, node)) in entries.iter().enumerate() {
            let carried = node.get("carries").map(|node| texts(&node)).unwrap_or_default();
            for rider in carried.iter().filter_map(|name| entries.iter().position(|(other, _)| other == name)) {
                draft.axes[rider].insert(RIDES_ON.into(), carrier.to_string());
            }
        }
        Some(draft)
    }
}

/// What was filled in at these keys.
fn filled(shapes: &[Shape], values: &Values, before: &str) -> Vec<(String, Filled)> {
    let of = |shape: &Shape| match shape {
        Shape::Field(field) => (field.key.clone(), one(field, values, before)),
        Shape::Group(group) => (group.key.clone(), fields(group, values, &format!("{before}{}.", group.key))),
        Shape::Rows(group) => {
            let rows = rows(values, &format!("{before}{}.", group.key));
            let row = |row: usize| fields(group, values, &format!("{before}{}.{row}.", group.key));
            (group.key.clone(), Filled::Rows(rows.into_iter().map(row).collect()))
        }
    };
    shapes.iter().map(of).collect()
}

fn fields(group: &Group, values: &Values, before: &str) -> Filled {
    let of = |field: &Field| (field.key.clone(), one(field, values, before));
    Filled::Group(group.fields.iter().map(of).collect())
}

fn one(field: &Field, values: &Values, before: &str) -> Filled {
    let text = values.get(&format!("{before}{}", field.key)).map_or("", String::as_str);
    match &field.input {
        Input::Words => Filled::Words(text.into()),
        Input::Value | Input::Choice { .. } => Filled::Value(text.into()),
        // a word that stands for all is no list
        Input::List if field.key == "families" && !text.contains(',') && !FAMILIES.contains(&text) => {
            Filled::Value(text.into())
        }
        Input::List => {
            let items = text.split(',').map(str::trim).filter(|item| !item.is_empty());
            Filled::Texts(items.map(String::from).collect())
        }
    }
}

/// The numbers of the rows that have a field, in order.
pub fn rows(values: &Values, before: &str) -> Vec<usize> {
    let number = |name: &String| name.strip_prefix(before)?.split_once('.')?.0.parse::<usize>().ok();
    let mut rows: Vec<usize> = values.keys().filter_map(number).filter(|row| *row < MOST_ROWS).collect();
    rows.sort_unstable();
    rows.dedup();
    rows
}

/// What a brief holds at these keys.
fn values(shapes: &[Shape], node: &Node<'_>) -> Values {
    let mut values = Values::new();
    let mut take = |before: &str, node: &Node<'_>, field: &Field| {
        if let Some(found) = node.get(&field.key) {
            values.insert(format!("{before}{}", field.key), texts(&found).join(", "));
        }
    };
    for shape in shapes {
        match shape {
            Shape::Field(field) => take("", node, field),
            Shape::Group(group) => {
                if let Some(below) = node.get(&group.key) {
                    group.fields.iter().for_each(|field| take(&format!("{}.", group.key), &below, field));
                }
            }
            Shape::Rows(group) => {
                let list = node.get(&group.key).filter(Node::is_list).map(|list| list.list(&mut Faults::default()));
                for (row, below) in list.unwrap_or_default().iter().enumerate().take(MOST_ROWS) {
                    group.fields.iter().for_each(|field| take(&format!("{}.{row}.", group.key), below, field));
                }
            }
        }
    }
    values
}

/// A single value, or those of a list, as they are written.
fn texts(node: &Node<'_>) -> Vec<String> {
    let text = |node: &Node<'_>| match node.is_text() {
        true => node.text(&mut Faults::default()).unwrap_or_default(),
        false => node.written(),
    };
    if node.is_list() { node.list(&mut Faults::default()).iter().map(text).collect() } else { vec![text(node)] }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::brief;

    const EXAMPLES: [&str; 5] = ["hull-gantry", "glass-table", "panel-drilling", "tray-loader", "impossible"];

    #[test]
    fn every_example_is_the_same_brief_after_the_form() {
        for name in EXAMPLES {
            let path = format!("{}/docs/examples/{name}.yaml", env!("CARGO_MANIFEST_DIR"));
            let text = std::fs::read_to_string(&path).expect("an example");
            let first = brief::load("brief.yaml", &text).expect("a brief");
            let draft = Draft::of_brief("brief.yaml", &text).expect("a draft");
            let written = draft.text();
            let mut again = brief::load("brief.yaml", &written).unwrap_or_else(|faults| panic!("{written}\n{faults}"));
            again.text = first.text.clone();
            assert_eq!(first, again, "{name}");
            assert_eq!(Draft::of_brief("brief.yaml", &written), Some(draft), "{name}");
        }
    }

    #[test]
    fn numbers_of_axes_may_have_gaps() {
        let pairs = [("axes.2.name", "x"), ("axes.7.name", " y "), ("axes.7.rides-on", "2"), ("axes.99.name", "z")];
        let pairs: Vec<(String, String)> = pairs.map(|(name, text)| (name.into(), text.into())).to_vec();
        let draft = Draft::of_pairs(&pairs);
        assert_eq!((draft.axes.len(), draft.name(1)), (2, "y"));
        assert_eq!(draft.riders(0).collect::<Vec<_>>(), [1]);
        assert!(draft.text().contains("  x:\n    carries: [\"y\"]\n"), "{}", draft.text());
    }
}
