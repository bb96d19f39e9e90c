//! What the pictures share: scales, ticks, texts, and the frame about the field.
//!
//! Method: everything is placed in pixels, `plotters` writes the SVG. The ground is white, so that print and dark viewers
//! show the same. Limits: the width of a text is estimated from its letters.

use crate::record::SpanRecord;
use crate::report::figure::figure;
use crate::report::picture::{FAINT, INK};
use crate::report::{inch, words};
use crate::units::UnitSystem;
use plotters::coord::Shift;
use plotters::prelude::*;
use plotters::style::text_anchor::{HPos, Pos, VPos};

/// Width and height of a large picture.
pub const SIZE: (u32, u32) = (960, 640);
/// Its field: left, top, right, bottom.
pub const FIELD: Field = (96, 92, 930, 560);
/// Left, top, right and bottom of what is drawn in.
pub type Field = (i32, i32, i32, i32);
/// Size of most texts.
pub const TEXT: u32 = 15;

/// Where a picture is drawn.
pub type Area<'a> = DrawingArea<SVGBackend<'a>, Shift>;

/// A value's way to its pixel.
#[derive(Debug, Clone, Copy)]
pub struct Scale {
    /// The value at `begin`.
    pub from: f64,
    /// The value at `end`.
    pub to: f64,
    /// Equal ratios take equal ways.
    pub geometric: bool,
    /// First pixel.
    pub begin: i32,
    /// Last pixel.
    pub end: i32,
}

impl Scale {
    /// The pixel of a value.
    pub fn at(&self, value: f64) -> i32 {
        let share = if self.geometric {
            (value / self.from).ln() / (self.to / self.from).ln()
        } else {
            (value - self.from) / (self.to - self.from)
        };
        (f64::from(self.begin) + share * f64::from(self.end - self.begin)).round() as i32
    }

    /// Round values between the ends.
    pub fn ticks(&self) -> Vec<f64> {
        if !self.geometric {
            return even_ticks(self.from, self.to, 7);
        }
        let sets: [&[f64]; 4] = [&[1.0], &[1.0, 3.0], &[1.0, 2.0, 5.0], &[1.0, 1.5, 2.0, 3.0, 4.0, 5.0, 7.0]];
        let all = |set: &[f64]| -> Vec<f64> {
            let (first, last) = (self.from.log10().floor() as i32, self.to.log10().ceil() as i32);
            let decades = (first..=last).flat_map(|decade| set.iter().map(move |step| step * 10f64.powi(decade)));
            decades.filter(|tick| *tick >= self.from * 0.999_999 && *tick <= self.to * 1.000_001).collect()
        };
        sets.into_iter().map(all).find(|ticks| ticks.len() >= 4).unwrap_or_else(|| even_ticks(self.from, self.to, 6))
    }
}

/// About so many round values at equal distances.
fn even_ticks(from: f64, to: f64, about: usize) -> Vec<f64> {
    let rough = (to - from) / about as f64;
    let power = 10f64.powf(rough.log10().floor());
    let step = [1.0, 2.0, 5.0, 10.0].into_iter().map(|step| step * power).find(|step| *step >= rough).unwrap_or(rough);
    let first = (from / step - 1e-9).ceil() as i64;
    let last = (to / step + 1e-9).floor() as i64;
    (first..=last).map(|index| index as f64 * step).collect()
}

/// A range in the units of the reader: factor from the unit of the record, and the unit's name.
pub fn reader(span: &SpanRecord, units: UnitSystem) -> (f64, String) {
    let (factor, unit) = inch::shown(1.0, &span.unit, units);
    (factor, unit.to_string())
}

/// The words under an axis: "travel, m".
pub fn axis_words(span: &SpanRecord, units: UnitSystem) -> String {
    let (_, unit) = reader(span, units);
    let name = words::spaced(&span.requirement);
    if unit.is_empty() { name } else { format!("{name}, {unit}") }
}

/// About how wide a text is, in pixels.
pub fn width(text: &str, size: u32) -> i32 {
    (text.chars().count() as f64 * f64::from(size) * 0.48).ceil() as i32
}

pub fn told<E: std::error::Error + Send + Sync>(error: DrawingAreaErrorKind<E>) -> String {
    format!("the picture cannot be drawn: {error}")
}

/// Writes a text at a place of it.
pub fn text(area: &Area<'_>, words: &str, at: (i32, i32), size: u32, place: (HPos, VPos)) -> Result<(), String> {
    let style = TextStyle::from(("sans-serif", size)).color(&INK).pos(Pos::new(place.0, place.1));
    area.draw(&Text::new(words.to_string(), at, style)).map_err(told)
}

/// Writes a text on a white ground, so that it reads on any field.
pub fn label(area: &Area<'_>, words: &str, at: (i32, i32), size: u32) -> Result<(), String> {
    let (half, tall) = (width(words, size) / 2 + 5, size as i32 / 2 + 4);
    let ground = [(at.0 - half, at.1 - tall), (at.0 + half, at.1 + tall)];
    area.draw(&Rectangle::new(ground, WHITE.mix(0.88).filled())).map_err(told)?;
    text(area, words, at, size, (HPos::Center, VPos::Center))
}

/// A straight line.
pub fn line(area: &Area<'_>, from: (i32, i32), to: (i32, i32), style: ShapeStyle) -> Result<(), String> {
    area.draw(&PathElement::new([from, to], style)).map_err(told)
}

/// A line of dashes, upright or level.
pub fn dashes(
    area: &Area<'_>,
    from: (i32, i32),
    to: (i32, i32),
    dash: i32,
    gap: i32,
    style: ShapeStyle,
) -> Result<(), String> {
    let upright = from.0 == to.0;
    let (mut at, end) = if upright { (from.1, to.1) } else { (from.0, to.0) };
    while at < end {
        let next = (at + dash).min(end);
        let (a, b) = if upright { ((from.0, at), (from.0, next)) } else { ((at, from.1), (next, from.1)) };
        line(area, a, b, style)?;
        at = next + gap;
    }
    Ok(())
}

/// Ticks, their numbers and the words of both axes; lines through the field where asked for.
pub fn axes(
    area: &Area<'_>,
    (left, top, right, bottom): Field,
    (across, up): (&Scale, &Scale),
    (below, beside): (&str, &str),
    through: bool,
) -> Result<(), String> {
    for tick in across.ticks() {
        let at = across.at(tick);
        if through {
            line(area, (at, top), (at, bottom), FAINT.into())?;
        }
        line(area, (at, bottom), (at, bottom + 6), INK.into())?;
        text(area, &figure(tick, 4), (at, bottom + 10), TEXT, (HPos::Center, VPos::Top))?;
    }
    for tick in up.ticks() {
        let at = up.at(tick);
        if through {
            line(area, (left, at), (right, at), FAINT.into())?;
        }
        line(area, (left - 6, at), (left, at), INK.into())?;
        text(area, &figure(tick, 4), (left - 10, at), TEXT, (HPos::Right, VPos::Center))?;
    }
    area.draw(&Rectangle::new([(left, top), (right, bottom)], INK.stroke_width(1))).map_err(told)?;
    text(area, below, ((left + right) / 2, bottom + 36), TEXT + 2, (HPos::Center, VPos::Top))?;
    text(area, beside, (left - 76, top - 12), TEXT + 1, (HPos::Left, VPos::Bottom))
}

/// Most letters of the title in one line.
const LONGEST_TITLE: usize = 72;

/// The title above everything; what does not fit is in the words for a screen reader.
pub fn title(area: &Area<'_>, words: &str) -> Result<(), String> {
    let shown: String = words.chars().take(LONGEST_TITLE).collect();
    let shown = if shown == words { shown } else { shown + " …" };
    text(area, &shown, (20, 12), 20, (HPos::Left, VPos::Top))
}

/// The mark of the brief as it stands: a diamond with a white rim.
pub fn diamond(area: &Area<'_>, at: (i32, i32)) -> Result<(), String> {
    let points = |size: i32| vec![(at.0, at.1 - size), (at.0 + size, at.1), (at.0, at.1 + size), (at.0 - size, at.1)];
    area.draw(&Polygon::new(points(11), WHITE.filled())).map_err(told)?;
    area.draw(&Polygon::new(points(8), INK.filled())).map_err(told)
}

/// What the diamond means, beside the title.
pub fn diamond_named(area: &Area<'_>) -> Result<(), String> {
    diamond(area, (FIELD.2 - 160, 22))?;
    text(area, "the brief as it stands", (FIELD.2 - 146, 22), TEXT, (HPos::Left, VPos::Center))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ticks_are_round_and_within_the_scale() {
        let scale = |from, to, geometric| Scale { from, to, geometric, begin: 0, end: 100 };
        assert_eq!(scale(0.0, 10.0, false).ticks(), [0.0, 2.0, 4.0, 6.0, 8.0, 10.0]);
        let ticks = scale(0.5, 12.0, true).ticks();
        assert!(ticks.iter().zip([0.5, 1.0, 2.0, 5.0, 10.0]).all(|(tick, wanted)| (tick - wanted).abs() < 1e-12));
        assert_eq!(scale(1.0, 100.0, true).at(10.0), 50);
    }
}
