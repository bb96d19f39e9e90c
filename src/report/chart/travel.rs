//! What drives allow at other travels: the speed before the first rule on speed breaks, and their stiffness.
//!
//! Method: the same parts at each travel, one line a drive, named at its end; the requirement is a diamond. Limits: lines are
//! cut at the top of the field, which stands at some times the requirement.

use super::super::canvas::{Scale, axes, dashes, diamond, text, told};
use super::super::picture::{INK, mark};
use super::super::view::View;
use super::super::{inch, words};
use super::{Drawn, drawn, most, shape};
use crate::record::{AtTravel, AxisRecord, DriveOverTravel, OverTravel};
use plotters::prelude::*;
use plotters::style::text_anchor::{HPos, VPos};

const FIELD: (i32, i32, i32, i32) = (96, 66, 690, 430);
/// The top of the picture of speeds over the speed that is asked.
const REACH: f64 = 2.6;

/// The speed that each drive allows.
pub fn speed(view: &View, axis: &AxisRecord, over: &OverTravel) -> Option<Drawn> {
    let asked = asked(axis, "speed")?;
    let picture = Picture {
        what: "speed that limits of speed alone allow over the travel; forces and heat may allow less",
        unit: "m/min",
        measure: "speed of the axis",
        asked: Some(asked),
        top: Some(REACH * asked),
        of: |at| at.speed,
    };
    picture.draw(view, axis, over)
}

/// The stiffness of each.
pub fn stiffness(view: &View, axis: &AxisRecord, over: &OverTravel) -> Option<Drawn> {
    let picture = Picture {
        what: "stiffness of one drive over the travel",
        unit: "N/µm",
        measure: "stiffness",
        asked: None,
        top: None,
        of: |at| at.stiffness,
    };
    picture.draw(view, axis, over)
}

struct Picture {
    what: &'static str,
    unit: &'static str,
    measure: &'static str,
    asked: Option<f64>,
    top: Option<f64>,
    of: fn(&AtTravel) -> f64,
}

/// What the brief asks, in the unit of the curves, read off a worksheet of the axis.
fn asked(axis: &AxisRecord, id: &str) -> Option<f64> {
    let of_families = axis.families.iter().filter_map(|one| one.best.as_ref().or(one.nearest.as_ref()));
    axis.chosen.iter().chain(of_families).find_map(|drive| drive.value(id))
}

impl Picture {
    fn draw(&self, view: &View, axis: &AxisRecord, over: &OverTravel) -> Option<Drawn> {
        let drives: Vec<&DriveOverTravel> =
            over.drives.iter().filter(|drive| drive.at.iter().any(|at| (self.of)(at).is_finite())).collect();
        let (first, last) = (over.travel.first()?, over.travel.last()?);
        let travel = asked(axis, "travel").map(|millimetres| millimetres / 1e3)?;
        let values = drives.iter().flat_map(|drive| &drive.at).map(self.of);
        let largest = most(values);
        let top = self.top.map_or(1.06 * largest, |top| if 1.06 * largest < top { 1.06 * largest } else { top });
        let top = self.asked.map_or(top, |asked| if top < 1.2 * asked { 1.2 * asked } else { top });
        if drives.is_empty() || top.is_nan() || top <= 0.0 {
            return None;
        }
        let (far, metres) = inch::shown(1.0, "m", view.units);
        let (high, unit) = inch::shown(1.0, self.unit, view.units);
        let across = Scale { from: first * far, to: last * far, geometric: false, begin: FIELD.0, end: FIELD.2 };
        let up = Scale { from: 0.0, to: top * high, geometric: false, begin: FIELD.3, end: FIELD.1 };
        let at = |x: f64, value: f64| (across.at(x * far), up.at(value * high));
        drawn((self.what.into(), self.description(view, over, &drives, travel)), 500, |area| {
            let below = format!("travel, {metres}");
            axes(area, FIELD, (&across, &up), (&below, &format!("{}, {unit}", self.measure)), true)?;
            let mut ends: Vec<(i32, &DriveOverTravel)> = Vec::new();
            for drive in &drives {
                let (_, colour) = mark(Some(&drive.family));
                let style = colour.stroke_width(if drive.admissible { 3 } else { 2 });
                for run in runs(&over.travel, &drive.at, self.of, top) {
                    let run: Vec<(i32, i32)> = run.into_iter().map(|(x, value)| at(x, value)).collect();
                    area.draw(&PathElement::new(run, style)).map_err(told)?;
                }
                let places = over.travel.iter().zip(&drive.at).map(|(&x, one)| (x, (self.of)(one)));
                let within: Vec<(f64, f64)> = places.filter(|(_, value)| *value <= top).collect();
                for &(x, value) in within.iter().step_by(7) {
                    shape(area, &drive.family, at(x, value), 5)?;
                }
                let end = within.last().map_or(FIELD.1, |&(x, value)| at(x, value).1);
                ends.push((end, drive));
            }
            let now = across.at(travel * far);
            dashes(area, (now, FIELD.1), (now, FIELD.3), 3, 4, INK.stroke_width(1))?;
            match self.asked {
                Some(asked) => {
                    let level = up.at(asked * high);
                    dashes(area, (FIELD.0, level), (FIELD.2, level), 3, 4, INK.stroke_width(1))?;
                    diamond(area, (now, level))?;
                    diamond(area, (FIELD.0 + 200, 22))?;
                    text(area, "what the brief asks", (FIELD.0 + 216, 22), 15, (HPos::Left, VPos::Center))?;
                }
                None => text(area, "travel of the brief", (now, FIELD.1 - 6), 14, (HPos::Center, VPos::Bottom))?,
            }
            named(area, view, ends)
        })
    }

    fn description(&self, view: &View, over: &OverTravel, drives: &[&DriveOverTravel], travel: f64) -> String {
        let nearest = |index: &usize| (over.travel.get(*index).copied().unwrap_or(0.0) - travel).abs();
        let here = (0..over.travel.len()).min_by(|a, b| nearest(a).total_cmp(&nearest(b))).unwrap_or(0);
        let told = |drive: &&DriveOverTravel| {
            let value = drive.at.get(here).map(self.of).filter(|value| value.is_finite());
            format!("{}: {}", super::super::family_words(&drive.family), view.quantity(value, self.unit))
        };
        let lines: Vec<String> = drives.iter().map(told).collect();
        let place = view.quantity(over.travel.get(here).copied(), "m");
        format!("One line a drive. At about {place}: {}.", lines.join("; "))
    }
}

/// The parts of a line that lie in the field, cut where they leave it at the top.
fn runs(travels: &[f64], at: &[AtTravel], of: fn(&AtTravel) -> f64, top: f64) -> Vec<Vec<(f64, f64)>> {
    let mut runs: Vec<Vec<(f64, f64)>> = Vec::new();
    let mut before: Option<(f64, f64)> = None;
    for (&x, one) in travels.iter().zip(at) {
        let value = of(one);
        let point = value.is_finite().then_some((x, value));
        match (before, point) {
            (Some(from), Some(to)) if from.1 <= top || to.1 <= top => {
                let cut = |inside: (f64, f64), outside: (f64, f64)| {
                    let share = (top - inside.1) / (outside.1 - inside.1);
                    (inside.0 + share * (outside.0 - inside.0), top)
                };
                let begin = if from.1 > top { cut(to, from) } else { from };
                let end = if to.1 > top { cut(from, to) } else { to };
                match runs.last_mut() {
                    Some(run) if run.last() == Some(&begin) => run.push(end),
                    _ => runs.push(vec![begin, end]),
                }
            }
            _ => {}
        }
        before = point;
    }
    runs
}

/// The names of the drives beside the field, at the ends of their lines, moved apart where those are close together.
fn named(area: &super::Area<'_>, view: &View, mut ends: Vec<(i32, &DriveOverTravel)>) -> Result<(), String> {
    const ROW: i32 = 42;
    ends.sort_by_key(|(end, _)| *end);
    let mut next = FIELD.1;
    let room = FIELD.3 - ROW * (ends.len() as i32 - 1);
    for (index, (end, drive)) in ends.iter().enumerate() {
        let y = (*end).clamp(next, room + ROW * index as i32);
        next = y + ROW;
        shape(area, &drive.family, (FIELD.2 + 20, y), 6)?;
        let family = words::sentence(&super::super::family_words(&drive.family));
        text(area, &family, (FIELD.2 + 34, y - 8), 15, (HPos::Left, VPos::Center))?;
        let sizes = super::super::markup::resolve(&view.sizes_of(&drive.family, &drive.parameters), |_| false);
        let sizes: Vec<&str> = sizes.split(", ").take(2).collect();
        let fits = if drive.admissible { "" } else { " (nearest miss)" };
        let second = format!("{}{fits}", sizes.join(", "));
        text(area, &second, (FIELD.2 + 34, y + 9), 13, (HPos::Left, VPos::Center))?;
    }
    Ok(())
}
