//! The pictures of a decision, made of the record alone.
//!
//! Method: each picture is one SVG with its title and its words for readers of the screen. The report names it by its file,
//! the page holds it whole. Limits: a value that is not known is not drawn; what is cut at the edge of a picture says so.

mod accuracy;
mod bars;
mod budget;
mod moves;
mod torque;
mod travel;

use super::canvas::{Area, told};
use super::picture;
use super::view::View;
use crate::record::{AxisRecord, CandidateRecord};
use plotters::prelude::*;

/// One picture.
#[derive(Debug, Clone, PartialEq)]
pub struct Chart {
    /// Its file name: "2-cross-budget.svg".
    pub file: String,
    /// What it shows, in one line.
    pub title: String,
    /// The SVG.
    pub svg: String,
}

/// What a picture is before it has a name.
struct Drawn {
    title: String,
    svg: String,
}

/// Width of every picture.
const WIDTH: u32 = 960;

/// The pictures of one drive of an axis: how much of each limit it uses, what its errors are made of.
fn of_drive(view: &View, axis: usize, sheet: usize, drive: &CandidateRecord) -> Vec<Chart> {
    let pictures = [("limits", bars::draw(view, drive)), ("errors", budget::draw(view, drive))];
    let numbered = |kind: &str| if sheet == 0 { kind.to_string() } else { format!("{kind}-{}", sheet + 1) };
    keep(view, axis, pictures.into_iter().map(|(kind, drawn)| (numbered(kind), drawn)))
}

/// The pictures of an axis beside those of its drives.
fn of_axis(view: &View, axis: usize) -> Vec<Chart> {
    let Some(record) = view.record.axes.get(axis) else { return Vec::new() };
    let Some(diagrams) = &record.diagrams else { return Vec::new() };
    let pictures = [
        ("torque", record.chosen.as_ref().and_then(|drive| torque::draw(view, diagrams.motor.as_ref()?, drive))),
        ("speed-over-travel", travel::speed(view, record, &diagrams.over_travel)),
        ("stiffness-over-travel", travel::stiffness(view, record, &diagrams.over_travel)),
        ("cost-of-accuracy", accuracy::draw(view, record, diagrams)),
        ("move", moves::draw(view, &diagrams.rapid_move)),
    ];
    keep(view, axis, pictures.into_iter().map(|(kind, drawn)| (kind.to_string(), drawn)))
}

/// The pictures of one axis.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct AxisCharts {
    /// Those of each drive of which the report tells everything, in its order.
    pub drives: Vec<Vec<Chart>>,
    /// The others.
    pub axis: Vec<Chart>,
}

/// The pictures of a record, axis by axis.
pub fn of_record(view: &View) -> Vec<AxisCharts> {
    let of = |(axis, record): (usize, &AxisRecord)| {
        let drives = super::engineer::drives_told(record).into_iter().enumerate();
        let drives = drives.map(|(sheet, (_, drive))| of_drive(view, axis, sheet, drive)).collect();
        AxisCharts { drives, axis: of_axis(view, axis) }
    };
    view.record.axes.iter().enumerate().map(of).collect()
}

/// Names the pictures that there are.
fn keep(view: &View, axis: usize, drawn: impl Iterator<Item = (String, Option<Drawn>)>) -> Vec<Chart> {
    let name = view.record.axes.get(axis).map_or("", |axis| axis.name.as_str());
    let plain: String = name
        .chars()
        .map(|letter| if letter.is_ascii_alphanumeric() { letter.to_ascii_lowercase() } else { '-' })
        .collect();
    let place = axis + 1;
    let named = |(kind, drawn): (String, Option<Drawn>)| {
        let drawn = drawn?;
        // ids inside a page stay apart by the name of the picture
        let key = format!("{place}-{plain}-{kind}");
        let svg = drawn.svg.replace("aria-labelledby=\"title desc\"", &format!("aria-labelledby=\"{key}-t {key}-d\""));
        let svg = svg.replacen("id=\"title\"", &format!("id=\"{key}-t\""), 1);
        let svg = svg.replacen("id=\"desc\"", &format!("id=\"{key}-d\""), 1);
        Some(Chart { file: format!("{key}.svg"), title: format!("Axis {name}: {}", drawn.title), svg })
    };
    drawn.filter_map(named).collect()
}

/// Draws on a white ground; none where the picture could not be drawn.
fn drawn(
    (title, description): (String, String),
    height: u32,
    draw: impl FnOnce(&Area<'_>) -> Result<(), String>,
) -> Option<Drawn> {
    let mut svg = String::new();
    let done = {
        let area = SVGBackend::with_string(&mut svg, (WIDTH, height)).into_drawing_area();
        let ground = area.fill(&WHITE).map_err(told);
        ground.and_then(|()| draw(&area)).and_then(|()| area.present().map_err(told))
    };
    done.ok()?;
    let svg = picture::named(&svg, &title, &description).ok()?;
    Some(Drawn { title, svg })
}

/// The shape of a family's mark.
fn shape(area: &Area<'_>, family: &str, at: (i32, i32), size: i32) -> Result<(), String> {
    let (letter, colour) = picture::mark(Some(family));
    let fill = colour.filled();
    let done = match letter {
        "B" => area.draw(&Circle::new(at, size, fill)),
        "N" => area.draw(&Circle::new(at, size, colour.stroke_width(2))),
        "S" => area.draw(&Rectangle::new([(at.0 - size, at.1 - size), (at.0 + size, at.1 + size)], fill)),
        "H" => area.draw(&TriangleMarker::new(at, size + 2, fill)),
        _ => area.draw(&Cross::new(at, size, colour.stroke_width(3))),
    };
    done.map_err(told)
}

/// The largest of some values that are known; zero where none is.
fn most(values: impl Iterator<Item = f64>) -> f64 {
    values.filter(|value| value.is_finite()).fold(0.0, f64::max)
}
