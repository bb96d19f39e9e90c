//! Which fields the form has: every key of a brief, with what the guide to the brief says of it.
//!
//! Method: the tables of the guide give keys, groups and rows, so that the form cannot lack a key or explain one otherwise. Only
//! which fields stand open, and how an axis says what it rides on, is decided here.
//! Limits: names of fields are key paths with numbers for axes and rows: `axes.0.duty.1.share`.

use crate::brief::guide::{AXIS, Key, MACHINE, keys};
use std::sync::LazyLock;

/// What is typed into a field.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Input {
    /// The user's own words.
    Words,
    /// A quantity with its unit, or a number.
    Value,
    /// Texts with commas between.
    List,
    /// One of these words; words of the guide that may stand beside free text are only offered.
    Choice { words: Vec<String>, free: bool },
}

/// One field.
#[derive(Debug, Clone)]
pub struct Field {
    /// Its key in the brief.
    pub key: String,
    /// What is typed.
    pub input: Input,
    /// The name that the reader sees.
    pub label: String,
    /// What is meant, and what may be written.
    pub hint: String,
    /// What holds if it is left empty; empty where nothing does.
    pub preset: String,
    /// Whether it must be filled in.
    pub required: bool,
}

/// A key of the form: a field, a group of fields, or rows of fields.
#[derive(Debug, Clone)]
pub enum Shape {
    /// A field.
    Field(Field),
    /// Fields below one key.
    Group(Group),
    /// Rows of like fields below one key.
    Rows(Group),
}

/// Fields that belong together.
#[derive(Debug, Clone)]
pub struct Group {
    /// The key.
    pub key: String,
    /// The name that the reader sees.
    pub label: String,
    /// What it means.
    pub meaning: String,
    /// Its fields.
    pub fields: Vec<Field>,
}

/// Keys that stand below one heading of the guide.
#[derive(Debug, Clone)]
pub struct Section {
    /// The heading.
    pub heading: String,
    /// Its keys; those that stand open are not among them.
    pub shapes: Vec<Shape>,
}

/// The whole form.
#[derive(Debug, Clone)]
pub struct Form {
    /// Fields of the machine that stand open.
    pub machine: Vec<Shape>,
    /// The other keys of the machine.
    pub machine_more: Vec<Section>,
    /// Fields of an axis that stand open.
    pub axis: Vec<Shape>,
    /// The other keys of an axis.
    pub axis_more: Vec<Section>,
    /// All keys of the machine in the order of the guide.
    pub whole_machine: Vec<Shape>,
    /// All keys of an axis in the order of the guide.
    pub whole_axis: Vec<Shape>,
}

/// Keys of the machine that stand open.
const OPEN_OF_MACHINE: [&str; 4] = ["machine", "currency", "years-in-service", "hours-per-year"];
/// Keys of an axis that stand open.
const OPEN_OF_AXIS: [&str; 9] = [
    "purpose",
    "direction",
    "travel",
    "moved-mass",
    "speed",
    "acceleration",
    "cutting-force",
    "accuracy",
    "repeatability",
];
/// The heading of the other keys of the machine.
const MORE_OF_MACHINE: &str = "Site, money, limits and preferences";
/// Keys that the form holds in another way: the axes as cards, and what they carry as what each rides on.
const OTHERWISE: [&str; 2] = ["axes", "carries"];

/// The form, made once.
pub static FORM: LazyLock<Form> = LazyLock::new(|| {
    let keys = keys();
    let (machine, machine_more) = split(&keys, MACHINE, &OPEN_OF_MACHINE);
    let (axis, axis_more) = split(&keys, AXIS, &OPEN_OF_AXIS);
    let (whole_machine, whole_axis) = (all(&keys, MACHINE), all(&keys, AXIS));
    Form { machine, machine_more, axis, axis_more, whole_machine, whole_axis }
});

/// The keys of a group that the form shows field by field.
fn of_group<'k>(keys: &'k [Key], group: &'k str) -> impl Iterator<Item = &'k Key> {
    keys.iter().filter(move |key| key.group == group && !OTHERWISE.contains(&key.name.as_str()))
}

fn all(keys: &[Key], group: &str) -> Vec<Shape> {
    of_group(keys, group).map(|key| shape(key, keys)).collect()
}

/// The first field of the rows below a key; none where the key has no rows.
pub(super) fn first_field(place: super::Place, key: &str) -> Option<&'static str> {
    let shapes = match place {
        super::Place::Machine => &FORM.whole_machine,
        super::Place::Axis(_) => &FORM.whole_axis,
    };
    shapes.iter().find_map(|shape| match shape {
        Shape::Rows(group) if group.key == key => group.fields.first().map(|field| field.key.as_str()),
        Shape::Rows(_) | Shape::Field(_) | Shape::Group(_) => None,
    })
}

fn split(keys: &[Key], group: &str, open: &[&str]) -> (Vec<Shape>, Vec<Section>) {
    let mut first: Vec<(usize, Shape)> = Vec::new();
    let mut sections: Vec<Section> = Vec::new();
    for key in of_group(keys, group) {
        let shape = shape(key, keys);
        if let Some(place) = open.iter().position(|name| *name == key.name) {
            first.push((place, shape));
            continue;
        }
        let heading = if group == MACHINE { MORE_OF_MACHINE } else { key.place.as_str() };
        match sections.iter_mut().find(|section| section.heading == heading) {
            Some(section) => section.shapes.push(shape),
            None => sections.push(Section { heading: heading.into(), shapes: vec![shape] }),
        }
    }
    first.sort_by_key(|(place, _)| *place);
    (first.into_iter().map(|(_, shape)| shape).collect(), sections)
}

fn shape(key: &Key, keys: &[Key]) -> Shape {
    let below: Vec<Field> = keys.iter().filter(|other| other.group == key.name).map(field).collect();
    if below.is_empty() {
        return Shape::Field(field(key));
    }
    let group = Group { key: key.name.clone(), label: label(&key.name), meaning: plain(key.meaning()), fields: below };
    if key.cell("value").starts_with("list") { Shape::Rows(group) } else { Shape::Group(group) }
}

fn field(key: &Key) -> Field {
    let input = input(key.cell("value"));
    let preset = key.cell("default");
    let preset = if matches!(preset, "required" | "none") { "" } else { preset };
    Field {
        key: key.name.clone(),
        label: label(&key.name),
        hint: hint(&input, &plain(key.meaning()), plain(key.cell("value")).trim_end_matches(", required")),
        input,
        preset: plain(preset),
        required: key.required(),
    }
}

/// What is typed where the guide says this of the value.
fn input(value: &str) -> Input {
    let words: Vec<String> = value.split('`').skip(1).step_by(2).map(String::from).collect();
    // words between marks, and nothing else but commas and "or"
    let rest: String = value.split('`').step_by(2).collect();
    let only = rest.replace("required", "").chars().all(|letter| ", ".contains(letter)) || {
        let rest: Vec<&str> = rest.split([',', ' ']).filter(|word| !word.is_empty() && *word != "required").collect();
        rest.iter().all(|word| *word == "or")
    };
    match value {
        _ if value.contains("list") => Input::List,
        "1 or 2" => Input::Choice { words: vec!["1".into(), "2".into()], free: false },
        _ if words
            .first()
            .is_some_and(|word| word.chars().all(|letter| letter.is_ascii_lowercase() || letter == '-')) =>
        {
            Input::Choice { words, free: !only }
        }
        _ if value.starts_with("text") || value.starts_with("rule id") || value.starts_with("axis name") => {
            Input::Words
        }
        _ => Input::Value,
    }
}

/// "moved-mass" as "Moved mass".
fn label(key: &str) -> String {
    let spaced = key.replace('-', " ");
    let mut letters = spaced.chars();
    letters.next().map_or(String::new(), |first| first.to_uppercase().chain(letters).collect())
}

fn hint(input: &Input, meaning: &str, accepts: &str) -> String {
    match input {
        Input::Words | Input::Choice { free: false, .. } => meaning.into(),
        Input::List => format!("{meaning}; with commas between"),
        Input::Value | Input::Choice { free: true, .. } => format!("{meaning} ({accepts})"),
    }
}

fn plain(text: &str) -> String {
    // a link of the guide leads nowhere on the page
    let mut out = String::new();
    let mut rest = text;
    while let Some((before, after)) = rest.split_once("](") {
        out.push_str(&before.replacen('[', "", 1));
        rest = after.split_once(')').map_or("", |(_, rest)| rest);
    }
    out.push_str(rest);
    out.replace('`', "").replace(", see below", "").replace("see below", "")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of<'s>(shapes: &'s [Shape], sections: &'s [Section]) -> impl Iterator<Item = &'s Shape> {
        shapes.iter().chain(sections.iter().flat_map(|section| &section.shapes))
    }

    fn named<'s>(shapes: impl Iterator<Item = &'s Shape>, key: &str) -> &'s Field {
        let mut fields = shapes.filter_map(|shape| match shape {
            Shape::Field(field) => Some(field),
            Shape::Group(_) | Shape::Rows(_) => None,
        });
        fields.find(|field| field.key == key).expect("a field")
    }

    #[test]
    fn every_key_of_the_guide_is_in_the_form_once() {
        let count = |shape: &Shape| match shape {
            Shape::Field(_) => 1,
            Shape::Group(group) | Shape::Rows(group) => 1 + group.fields.len(),
        };
        let all = of(&FORM.machine, &FORM.machine_more).chain(of(&FORM.axis, &FORM.axis_more));
        assert_eq!(all.map(count).sum::<usize>() + OTHERWISE.len(), keys().len());
        assert_eq!((FORM.machine.len(), FORM.axis.len()), (OPEN_OF_MACHINE.len(), OPEN_OF_AXIS.len()));
    }

    #[test]
    fn what_is_typed_follows_from_the_guide() {
        let axis = |key| named(of(&FORM.axis, &FORM.axis_more), key).clone();
        assert_eq!(axis("travel").input, Input::Value);
        assert!(axis("travel").required && !axis("overtravel").required);
        assert_eq!(axis("overtravel").preset, "50 mm");
        assert_eq!(axis("purpose").input, Input::Words);
        assert_eq!(axis("families").input, Input::List);
        let words = |words: &[&str]| words.iter().map(|word| word.to_string()).collect::<Vec<_>>();
        assert_eq!(axis("direction").input, Input::Choice { words: words(&["horizontal", "vertical"]), free: true });
        assert_eq!(axis("feedback").input, Input::Choice { words: words(&["any", "motor", "scale"]), free: false });
        assert_eq!(axis("people-below").input, Input::Choice { words: words(&["true", "false"]), free: false });
        assert_eq!(axis("drives").input, Input::Choice { words: words(&["1", "2"]), free: false });
        assert_eq!(axis("yaw-stiffness").input, Input::Value);
    }
}
