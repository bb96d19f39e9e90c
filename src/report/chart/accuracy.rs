//! What accuracy costs: of the drives that the search kept, those of each family that no other of them beats in both.
//!
//! Method: steps, since between two drives there is none; the drive chosen is a diamond. Limits: of what the search kept.

use super::super::canvas::{Scale, axes, diamond, label, text, told, width};
use super::super::picture::mark;
use super::super::view::View;
use super::super::{family_words, inch};
use super::{Drawn, drawn, shape};
use crate::record::{AxisRecord, DiagramsRecord};
use plotters::prelude::*;
use plotters::style::text_anchor::{HPos, VPos};

const FIELD: (i32, i32, i32, i32) = (110, 76, 930, 430);
/// Room about the points, as a part of their width.
const ROOM: f64 = 0.07;
/// Beyond this ratio values stand at equal ratios.
const WIDE: f64 = 6.0;

/// Draws it; none where no family has an admissible drive.
pub fn draw(view: &View, axis: &AxisRecord, diagrams: &DiagramsRecord) -> Option<Drawn> {
    let fronts = &diagrams.cost_of_accuracy;
    let all = || fronts.iter().flat_map(|front| front.tool_error.iter().copied().zip(front.whole_life.iter().copied()));
    let chosen = axis.chosen.as_ref().and_then(|drive| Some((drive.value("tool-error")?, drive.cost.whole_life)));
    let (factor, unit) = inch::shown(1.0, "µm", view.units);
    let points = || all().chain(chosen);
    let across = scale(points().map(|point| point.0 * factor), FIELD.0, FIELD.2)?;
    let up = scale(points().map(|point| point.1), FIELD.3, FIELD.1)?;
    let at = |(error, cost): (f64, f64)| (across.at(error * factor), up.at(cost));
    let cheapest = |front: &crate::record::FamilyFront| {
        let (error, cost) = (front.tool_error.first().copied(), front.whole_life.first().copied());
        format!("{} from {} at {}", family_words(&front.family), view.money(cost), view.quantity(error, "µm"))
    };
    let description = format!(
        "Of the drives that the search kept, the cheapest of each family: {}.",
        fronts.iter().map(cheapest).collect::<Vec<_>>().join("; ")
    );
    let title = "cost over the life against predicted error at the tool, drives that the search kept; whatever else counts in the choice is not shown".to_string();
    drawn((title, description), 500, |area| {
        let below = format!("half band at the tool, {unit}");
        axes(area, FIELD, (&across, &up), (&below, &format!("over its life, {}", view.record.currency)), true)?;
        let mut from = 20;
        for front in fronts {
            let (_, colour) = mark(Some(&front.family));
            let places: Vec<(i32, i32)> =
                front.tool_error.iter().copied().zip(front.whole_life.iter().copied()).map(at).collect();
            let mut steps: Vec<(i32, i32)> = Vec::new();
            for &(x, y) in &places {
                // up to the next drive the cheaper one is what there is
                steps.extend(steps.last().map(|last| (x, last.1)));
                steps.push((x, y));
            }
            area.draw(&PathElement::new(steps, colour.stroke_width(2))).map_err(told)?;
            for &place in &places {
                shape(area, &front.family, place, 5)?;
            }
            shape(area, &front.family, (from + 8, 24), 6)?;
            let name = family_words(&front.family);
            text(area, &name, (from + 22, 24), 15, (HPos::Left, VPos::Center))?;
            from += 44 + width(&name, 15);
        }
        if let Some(chosen) = chosen {
            let (x, y) = at(chosen);
            diamond(area, (x, y))?;
            let left = x > FIELD.2 - 90;
            label(area, "chosen", (if left { x - 48 } else { x + 48 }, y - 16), 15)?;
        }
        Ok(())
    })
}

/// A scale about some values.
fn scale(values: impl Iterator<Item = f64>, begin: i32, end: i32) -> Option<Scale> {
    let known = values.filter(|value| value.is_finite());
    let (least, largest) =
        known.fold((f64::INFINITY, 0.0_f64), |(least, most), value| (least.min(value), most.max(value)));
    if !least.is_finite() || largest <= 0.0 {
        return None;
    }
    if least > 0.0 && largest / least > WIDE {
        let room = (largest / least).powf(ROOM);
        return Some(Scale { from: least / room, to: largest * room, geometric: true, begin, end });
    }
    let room = ROOM * if largest > least { largest - least } else { largest };
    Some(Scale { from: least - room, to: largest + room, geometric: false, begin, end })
}
