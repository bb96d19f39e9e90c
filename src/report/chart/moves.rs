//! Speed and acceleration over a move from rest to rest.
//!
//! Method: two fields, one above the other, over the same time. Limits: the move of the axis, not the swing of the drive.

use super::super::canvas::{Area, Field, Scale, axes, text, told};
use super::super::inch;
use super::super::view::View;
use super::{Drawn, drawn, most};
use crate::record::MoveCurve;
use plotters::prelude::*;
use plotters::style::text_anchor::{HPos, VPos};

const UPPER: Field = (96, 46, 930, 240);
const LOWER: Field = (96, 320, 930, 500);
const LINE: RGBColor = RGBColor(0, 114, 178);

/// Draws it; none where the axis does not move.
pub fn draw(view: &View, curve: &MoveCurve) -> Option<Drawn> {
    let (end, top) = (curve.time.last().copied()?, most(curve.speed.iter().copied()));
    let rise = most(curve.acceleration.iter().copied());
    if end <= 0.0 || top <= 0.0 || rise <= 0.0 || end.is_nan() {
        return None;
    }
    let travel = view.quantity(Some(curve.travel), "m");
    let title =
        format!("speed and acceleration over a move of {travel}, long enough to reach full speed where the travel is");
    let description = format!(
        "The move takes {} s, reaches {} and {}.",
        super::super::figure::figure(end, 3),
        view.quantity(Some(top), "m/min"),
        view.quantity(Some(rise), "m/s²")
    );
    drawn((title, description), 570, |area| {
        panel(area, view, UPPER, (end, 0.0, 1.15 * top), "m/min", ("", "speed"), (&curve.time, &curve.speed))?;
        let bounds = (end, -1.25 * rise, 1.25 * rise);
        panel(area, view, LOWER, bounds, "m/s²", ("time, s", "acceleration"), (&curve.time, &curve.acceleration))
    })
}

fn panel(
    area: &Area<'_>,
    view: &View,
    field: Field,
    (end, low, high): (f64, f64, f64),
    unit: &str,
    (below, what): (&str, &str),
    (times, values): (&[f64], &[f64]),
) -> Result<(), String> {
    let (factor, unit) = inch::shown(1.0, unit, view.units);
    let across = Scale { from: 0.0, to: 1.02 * end, geometric: false, begin: field.0, end: field.2 };
    let up = Scale { from: low * factor, to: high * factor, geometric: false, begin: field.3, end: field.1 };
    axes(area, field, (&across, &up), (below, &format!("{what}, {unit}")), true)?;
    let path: Vec<(i32, i32)> =
        times.iter().zip(values).map(|(&time, &value)| (across.at(time), up.at(value * factor))).collect();
    area.draw(&PathElement::new(path, LINE.stroke_width(3))).map_err(told)?;
    let largest = values.iter().copied().fold(0.0, f64::max);
    let told_value = format!("{} {unit}", super::super::figure::figure(largest * factor, 3));
    text(area, &told_value, (field.2 - 8, field.1 + 6), 15, (HPos::Right, VPos::Top))
}
