//! What the template of the page needs: cards, fields, faults, what is kept, and what stands beside the form.

use super::EXAMPLES;
use crate::units::UnitSystem;
use crate::web::check::CheckView;
use crate::web::form::{Draft, FORM, Field, Group, Input, Placed, RIDES_ON, Section, Shape, Values, rows};
use crate::web::post::Post;
use crate::web::print;
use crate::yaml::Faults;
use serde::Serialize;

/// The whole page.
#[derive(Debug, Serialize)]
pub struct Page {
    machine: Vec<Block>,
    machine_more: Vec<SectionView>,
    axes: Vec<AxisView>,
    /// What no field can show.
    elsewhere: Vec<String>,
    /// How many faults there are in all, in a sentence; empty where there are none.
    counted: String,
    /// The answer or what else was asked for, as HTML that was made here.
    answer: String,
    /// The field to go on at.
    focus: String,
    /// Whether an answer is worth asking for at once.
    begins: bool,
    inch: bool,
    other: String,
    examples: Vec<(&'static str, &'static str)>,
    check: CheckView,
    no_axis: bool,
}

#[derive(Debug, Serialize)]
struct AxisView {
    number: usize,
    name: String,
    anchor: String,
    title: FieldView,
    rides: FieldView,
    blocks: Vec<Block>,
    more: Vec<SectionView>,
    faults: Vec<String>,
}

#[derive(Debug, Serialize)]
struct SectionView {
    heading: &'static str,
    blocks: Vec<Block>,
    filled: usize,
    open: bool,
}

/// A key of the form.
#[derive(Debug, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
enum Block {
    Field {
        field: FieldView,
    },
    Group {
        legend: &'static str,
        meaning: &'static str,
        fields: Vec<FieldView>,
        faults: Vec<String>,
    },
    Rows {
        name: String,
        id: String,
        legend: &'static str,
        meaning: &'static str,
        rows: Vec<RowView>,
        faults: Vec<String>,
    },
}

#[derive(Debug, Serialize)]
struct RowView {
    number: usize,
    shown: usize,
    fields: Vec<FieldView>,
    faults: Vec<String>,
}

#[derive(Debug, Serialize)]
struct FieldView {
    name: String,
    id: String,
    label: &'static str,
    value: String,
    kind: &'static str,
    words: Vec<Word>,
    hint: &'static str,
    preset: &'static str,
    required: bool,
    faults: Vec<String>,
    /// The requirement that a slider may turn.
    slider: Option<&'static str>,
}

#[derive(Debug, Serialize)]
struct Word {
    value: String,
    shown: String,
    chosen: bool,
}

impl Page {
    /// The page of what was posted, without faults and answer.
    pub fn of(post: &Post) -> Page {
        let draft = &post.draft;
        let mut none = Placed::default();
        Page::made(draft, post, &mut none)
    }

    fn made(draft: &Draft, post: &Post, faults: &mut Placed) -> Page {
        let machine = blocks(&FORM.machine, &draft.machine, "", faults);
        let machine_more = sections(&FORM.machine_more, &draft.machine, "", faults);
        let axes = (0..draft.axes.len()).map(|axis| axis_view(draft, axis, faults)).collect();
        Page {
            machine,
            machine_more,
            axes,
            elsewhere: Vec::new(),
            counted: String::new(),
            answer: String::new(),
            focus: String::new(),
            begins: false,
            inch: post.units == UnitSystem::Inch,
            other: post.other.clone(),
            examples: EXAMPLES.iter().map(|(name, words, _)| (*name, *words)).collect(),
            check: CheckView::of(post),
            no_axis: draft.axes.is_empty(),
        }
    }

    /// The page of what was posted with faults at their fields.
    pub fn with_faults(faults: &Faults, post: &Post) -> Page {
        let mut placed = Placed::of(faults, &post.draft);
        let counted = print::faults_counted(placed.at.values().map(Vec::len).sum());
        let page = Page::made(&post.draft, post, &mut placed);
        let elsewhere = placed.at.into_values().flatten().collect();
        Page { elsewhere, counted, ..page }
    }

    /// The page of an opened file with its faults, each with its line.
    pub fn with_faults_of_file(faults: &Faults, post: &Post) -> Page {
        let page = Page::with_faults(faults, post);
        let lines = faults.iter().map(|fault| match fault.line {
            0 => format!("{}: {}", fault.path, fault.message),
            line => format!("line {line}, column {}: {}: {}", fault.column, fault.path, fault.message),
        });
        Page { elsewhere: lines.collect(), counted: print::faults_counted(faults.len()), ..page }
    }

    /// The same with an answer, as HTML made here.
    pub fn with_answer(self, answer: String) -> Page {
        Page { answer, ..self }
    }

    /// The same with what a proposal may be made of.
    pub fn asks(self, check: CheckView) -> Page {
        Page { check, ..self }
    }

    /// The same with something to say in place of an answer.
    pub fn says(self, sentences: &[String]) -> Page {
        let answer = crate::web::print::told(sentences);
        Page { answer, ..self }
    }

    /// The same, to go on at this field or button.
    pub fn goes_on_at(self, name: &str) -> Page {
        Page { focus: id(name), ..self }
    }

    /// The same, asking for an answer as soon as it is there.
    pub fn begins(self, begins: bool) -> Page {
        Page { begins, ..self }
    }
}

fn axis_view(draft: &Draft, axis: usize, faults: &mut Placed) -> AxisView {
    let before = format!("axes.{axis}.");
    let values = &draft.axes[axis];
    let of = |key: &str| values.get(key).cloned().unwrap_or_default();
    let name = of("name");
    let field = |key: &str,
                 label: &'static str,
                 hint: &'static str,
                 kind: &'static str,
                 words: Vec<Word>,
                 faults: &mut Placed| FieldView {
        name: format!("{before}{key}"),
        id: id(&format!("{before}{key}")),
        label,
        value: of(key),
        kind,
        words,
        hint,
        preset: "",
        required: key == "name",
        faults: faults.take(&format!("{before}{key}")),
        slider: None,
    };
    let on = of(RIDES_ON);
    let others = (0..draft.axes.len()).filter(|other| *other != axis).map(|other| Word {
        value: other.to_string(),
        shown: if draft.name(other).is_empty() { format!("axis {}", other + 1) } else { draft.name(other).into() },
        chosen: on == other.to_string(),
    });
    let bed = Word { value: String::new(), shown: "the bed".into(), chosen: on.is_empty() };
    let rides = std::iter::once(bed).chain(others).collect();
    AxisView {
        number: axis,
        anchor: format!("axis-{axis}"),
        title: field("name", "Name of the axis", "what the report calls it", "words", Vec::new(), faults),
        rides: field(
            RIDES_ON,
            "Rides on",
            "the axis that moves this one along, drive and all",
            "choice",
            rides,
            faults,
        ),
        blocks: blocks(&FORM.axis, values, &before, faults),
        more: sections(&FORM.axis_more, values, &before, faults),
        faults: faults.take(&format!("axes.{axis}")),
        name,
    }
}

fn sections(all: &'static [Section], values: &Values, before: &str, faults: &mut Placed) -> Vec<SectionView> {
    let of = |section: &'static Section| {
        let blocks = blocks(&section.shapes, values, before, faults);
        let (filled, open) = (blocks.iter().map(Block::filled).sum(), blocks.iter().any(Block::at_fault));
        SectionView { heading: &section.heading, blocks, filled, open }
    };
    all.iter().map(of).collect()
}

fn blocks(shapes: &'static [Shape], values: &Values, before: &str, faults: &mut Placed) -> Vec<Block> {
    shapes.iter().map(|shape| block(shape, values, before, faults)).collect()
}

fn block(shape: &'static Shape, values: &Values, before: &str, faults: &mut Placed) -> Block {
    let fields = |group: &'static Group, within: &str, faults: &mut Placed| -> Vec<FieldView> {
        group.fields.iter().map(|field| field_view(field, values, before, within, faults)).collect()
    };
    match shape {
        Shape::Field(field) => Block::Field { field: field_view(field, values, before, "", faults) },
        Shape::Group(group) => Block::Group {
            legend: &group.label,
            meaning: &group.meaning,
            fields: fields(group, &format!("{}.", group.key), faults),
            faults: faults.take(&format!("{before}{}", group.key)),
        },
        Shape::Rows(group) => {
            let within = |row: usize| format!("{}.{row}.", group.key);
            let numbers = rows(values, &format!("{}.", group.key));
            let row = |(shown, number): (usize, usize)| RowView {
                number,
                shown: shown + 1,
                fields: fields(group, &within(number), faults),
                faults: faults.take(&format!("{before}{}.{number}", group.key)),
            };
            let views = numbers.into_iter().enumerate().map(row).collect();
            let name = format!("{before}{}", group.key);
            Block::Rows {
                id: id(&name),
                legend: &group.label,
                meaning: &group.meaning,
                rows: views,
                faults: faults.take(&name),
                name,
            }
        }
    }
}

fn field_view(field: &'static Field, values: &Values, before: &str, within: &str, faults: &mut Placed) -> FieldView {
    let local = format!("{within}{}", field.key);
    let name = format!("{before}{local}");
    let value = values.get(&local).cloned().unwrap_or_default();
    let (kind, words) = match &field.input {
        Input::Words => ("words", Vec::new()),
        Input::Value => ("value", Vec::new()),
        Input::List => ("list", Vec::new()),
        Input::Choice { words, free } => {
            let word = |word: &String| Word { value: word.clone(), shown: word.clone(), chosen: *word == value };
            let known = value.is_empty() || words.contains(&value);
            // what is no choice is kept and told, not lost
            (if *free || !known { "offer" } else { "choice" }, words.iter().map(word).collect())
        }
    };
    let words = match kind {
        "choice" => {
            let open = Word { value: String::new(), shown: left_open(field), chosen: value.is_empty() };
            std::iter::once(open).chain(words).collect()
        }
        _ => words,
    };
    let slider = match field.key.as_str() {
        "travel" if within.is_empty() && before.starts_with("axes.") => Some("travel"),
        "speed" if within.is_empty() && before.starts_with("axes.") => Some("speed"),
        _ => None,
    };
    FieldView {
        id: id(&name),
        label: &field.label,
        kind,
        words,
        hint: &field.hint,
        preset: &field.preset,
        required: field.required,
        faults: faults.take(&name),
        slider,
        value,
        name,
    }
}

fn left_open(field: &Field) -> String {
    match (field.required, field.preset.as_str()) {
        (true, _) => "choose".into(),
        (false, "") => "not stated".into(),
        (false, preset) => format!("not stated ({preset})"),
    }
}

fn id(name: &str) -> String {
    name.chars().map(|letter| if letter.is_ascii_alphanumeric() { letter } else { '-' }).collect()
}

impl Block {
    fn filled(&self) -> usize {
        let of = |fields: &[FieldView]| fields.iter().filter(|field| !field.value.is_empty()).count();
        match self {
            Block::Field { field } => usize::from(!field.value.is_empty()),
            Block::Group { fields, .. } => of(fields),
            Block::Rows { rows, .. } => rows.len(),
        }
    }

    fn at_fault(&self) -> bool {
        let of = |fields: &[FieldView]| fields.iter().any(|field| !field.faults.is_empty());
        match self {
            Block::Field { field } => !field.faults.is_empty(),
            Block::Group { fields, faults, .. } => !faults.is_empty() || of(fields),
            Block::Rows { rows, faults, .. } => {
                !faults.is_empty() || rows.iter().any(|row| !row.faults.is_empty() || of(&row.fields))
            }
        }
    }
}
