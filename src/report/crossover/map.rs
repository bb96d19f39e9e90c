//! The map of two requirements: which family is best where.
//!
//! Method: every row of nodes is a strip of the field, coloured between the boundaries that were narrowed along it; strips
//! meet half way between their values. A region carries its name where it is widest, and letters beside, so that nothing
//! rests on colour. Limits: across the rows a boundary is as coarse as the rows.

use super::words::{Words, family};
use crate::record::SpanRecord;
use crate::report::canvas::*;
use crate::report::picture::{INK, mark, named};
use plotters::prelude::*;
use plotters::style::text_anchor::{HPos, VPos};

/// A part of a strip: its pixels and its family.
struct Part<'a> {
    row: usize,
    left: i32,
    right: i32,
    top: i32,
    bottom: i32,
    family: Option<&'a str>,
}

/// Draws it.
pub fn draw(words: &Words<'_>, and: &SpanRecord) -> Result<String, String> {
    let record = words.record;
    let over = &record.over;
    let (left, top, right, bottom) = FIELD;
    let (factor, _) = reader(over, words.units);
    let (factor_up, _) = reader(and, words.units);
    let scale = |span: &SpanRecord, factor: f64, begin, end| Scale {
        from: span.from * factor,
        to: span.to * factor,
        geometric: span.spacing == "geometric",
        begin,
        end,
    };
    let across = scale(over, factor, left, right);
    let up = scale(and, factor_up, bottom, top);
    let parts = parts(words, and, |x| across.at(x * factor), |y| up.at(y * factor_up));
    let mut svg = String::new();
    {
        let area = SVGBackend::with_string(&mut svg, SIZE).into_drawing_area();
        area.fill(&WHITE).map_err(told)?;
        title(&area, &words.title())?;
        for part in &parts {
            let (_, colour) = mark(part.family);
            let strength = if part.family.is_some() { 0.5 } else { 0.18 };
            let ends = [(part.left, part.top), (part.right, part.bottom)];
            area.draw(&Rectangle::new(ends, colour.mix(strength).filled())).map_err(told)?;
        }
        borders(&area, &parts)?;
        axes(&area, FIELD, (&across, &up), (&axis_words(over, words.units), &axis_words(and, words.units)), false)?;
        let here = over.now.zip(and.now).map(|(x, y)| (across.at(x * factor), up.at(y * factor_up)));
        let here = here.filter(|(x, y)| (left..=right).contains(x) && (top..=bottom).contains(y));
        let labels = names(words, &parts, here);
        letters(&area, words, &parts, &labels, |x| across.at(x * factor))?;
        for (name, at) in &labels {
            label(&area, name, *at, 17)?;
        }
        if let Some(at) = here {
            diamond(&area, at)?;
            diamond_named(&area)?;
        }
        legend(&area, words)?;
        area.present().map_err(told)?;
    }
    named(&svg, &words.title(), &description(words, and))
}

/// The strips cut at their boundaries.
fn parts<'a>(
    words: &Words<'a>,
    and: &SpanRecord,
    across: impl Fn(f64) -> i32,
    up: impl Fn(f64) -> i32,
) -> Vec<Part<'a>> {
    let (left, top, right, bottom) = FIELD;
    let rows = and.values.len();
    let heights: Vec<i32> = and.values.iter().map(|&y| up(y)).collect();
    let mut parts = Vec::new();
    for row in 0..rows {
        let above = if row + 1 < rows { (heights[row] + heights[row + 1]) / 2 } else { top };
        let below = if row > 0 { (heights[row] + heights[row - 1]) / 2 } else { bottom };
        let nodes = &words.record.nodes[row * words.record.over.values.len()..];
        let mut family = nodes.first().and_then(|node| node.family.as_deref());
        let mut begin = left;
        let y = and.values[row];
        for boundary in words.record.boundaries.iter().filter(|boundary| boundary.y == Some(y)) {
            let end = across(boundary.at);
            parts.push(Part { row, left: begin, right: end, top: above, bottom: below, family });
            family = boundary.to.as_deref();
            begin = end;
        }
        parts.push(Part { row, left: begin, right, top: above, bottom: below, family });
    }
    parts
}

/// Lines where one family meets another, along the rows and across them.
fn borders(area: &Area<'_>, parts: &[Part<'_>]) -> Result<(), String> {
    let style = INK.stroke_width(2);
    for pair in parts.windows(2) {
        if pair[0].row == pair[1].row {
            line(area, (pair[0].right, pair[0].top), (pair[0].right, pair[0].bottom), style)?;
        }
    }
    for lower in parts {
        for upper in parts.iter().filter(|upper| upper.row == lower.row + 1 && upper.family != lower.family) {
            let (from, to) = (lower.left.max(upper.left), lower.right.min(upper.right));
            if from < to {
                line(area, (from, lower.top), (to, lower.top), style)?;
            }
        }
    }
    Ok(())
}

/// The name of each family at the part of its strips that has most room about it, if any has enough.
fn names(words: &Words<'_>, parts: &[Part<'_>], here: Option<(i32, i32)>) -> Vec<(String, (i32, i32))> {
    let mut families: Vec<Option<&str>> = words.record.families.iter().map(|id| Some(id.as_str())).collect();
    families.push(None);
    let mut placed: Vec<(String, (i32, i32))> = Vec::new();
    for id in families {
        let name = family(id);
        let half = width(&name, 17) / 2 + 8;
        let room = |part: &Part<'_>| -> i32 {
            let at = ((part.left + part.right) / 2, (part.top + part.bottom) / 2);
            // how far the family reaches above and below this place
            let column = parts.iter().filter(|other| other.left <= at.0 && at.0 < other.right);
            let foreign = column.filter(|other| other.family != part.family);
            let clear = foreign.map(|other| (other.top - at.1).abs().min((other.bottom - at.1).abs())).min();
            let (_, top, _, bottom) = FIELD;
            let clear = clear.unwrap_or(i32::MAX).min(at.1 - top).min(bottom - at.1);
            let free = here.is_none_or(|(x, y)| (x - at.0).abs() > half + 14 || (y - at.1).abs() > 26);
            if part.right - part.left < 2 * half || clear < 14 || !free {
                return 0;
            }
            clear.min(120) * (part.right - part.left).min(400)
        };
        let best = parts.iter().filter(|part| part.family == id).max_by_key(|part| (room(part), part.row));
        if let Some(part) = best.filter(|part| room(part) > 0) {
            placed.push((name, ((part.left + part.right) / 2, (part.top + part.bottom) / 2)));
        }
    }
    placed
}

/// Letters over the field: at every third node or so, and in the widest part of a family that would have none.
fn letters(
    area: &Area<'_>,
    words: &Words<'_>,
    parts: &[Part<'_>],
    labels: &[(String, (i32, i32))],
    across: impl Fn(f64) -> i32,
) -> Result<(), String> {
    let columns: Vec<i32> = words.record.over.values.iter().map(|&x| across(x)).collect();
    let rows = parts.iter().map(|part| part.row).max().unwrap_or(0) + 1;
    let every = |count: usize| (count / 8).max(1);
    let (column_step, row_step) = (every(columns.len()), every(rows));
    let hidden = |at: (i32, i32)| {
        let covers = |(name, place): &(String, (i32, i32))| {
            (place.0 - at.0).abs() < width(name, 17) / 2 + 14 && (place.1 - at.1).abs() < 22
        };
        labels.iter().any(covers)
    };
    let mut lettered: Vec<Option<&str>> = Vec::new();
    let middle = |part: &Part<'_>| (part.top + part.bottom) / 2;
    for part in parts.iter().filter(|part| part.row % row_step == row_step / 2 && part.bottom - part.top >= 14) {
        let sparse = columns.iter().skip(column_step / 2).step_by(column_step);
        for &x in sparse.filter(|x| (part.left + 9..=part.right - 9).contains(x)) {
            let at = (x, middle(part));
            if !hidden(at) {
                lettered.push(part.family);
                text(area, mark(part.family).0, at, 13, (HPos::Center, VPos::Center))?;
            }
        }
    }
    for part in parts {
        let wider = |other: &&Part<'_>| other.family == part.family;
        let widest = parts.iter().filter(wider).max_by_key(|other| (other.right - other.left, other.row));
        let named = labels.iter().any(|(name, _)| *name == family(part.family));
        if !named && !lettered.contains(&part.family) {
            lettered.push(part.family);
            let at =
                widest.map_or((part.left, middle(part)), |widest| ((widest.left + widest.right) / 2, middle(widest)));
            text(area, mark(part.family).0, at, 13, (HPos::Center, VPos::Center))?;
        }
    }
    Ok(())
}

/// The families with their colours and letters in one line above the field.
fn legend(area: &Area<'_>, words: &Words<'_>) -> Result<(), String> {
    let nodes = &words.record.nodes;
    let mut families: Vec<Option<&str>> = words.record.families.iter().map(|id| Some(id.as_str())).collect();
    families.push(None);
    families.retain(|id| nodes.iter().any(|node| node.family.as_deref() == *id));
    let mut at = 20;
    for id in families {
        let (letter, colour) = mark(id);
        let strength = if id.is_some() { 0.5 } else { 0.18 };
        area.draw(&Rectangle::new([(at, 40), (at + 20, 58)], colour.mix(strength).filled())).map_err(told)?;
        area.draw(&Rectangle::new([(at, 40), (at + 20, 58)], INK.stroke_width(1))).map_err(told)?;
        text(area, letter, (at + 10, 49), 13, (HPos::Center, VPos::Center))?;
        let name = family(id);
        text(area, &name, (at + 26, 49), TEXT, (HPos::Left, VPos::Center))?;
        at += 26 + width(&name, TEXT) + 18;
    }
    Ok(())
}

fn description(words: &Words<'_>, and: &SpanRecord) -> String {
    let record = words.record;
    let mut families: Vec<Option<&str>> = record.families.iter().map(|id| Some(id.as_str())).collect();
    families.push(None);
    let share = |id: &Option<&str>| {
        let count = record.nodes.iter().filter(|node| node.family.as_deref() == *id).count();
        (count > 0).then(|| format!("{} at {count} of {} places", family(*id), record.nodes.len()))
    };
    let shares: Vec<String> = families.iter().filter_map(share).collect();
    format!(
        "Map of the best family of drives: {} to the right from {} to {}, {} upward from {} to {}. {}.",
        record.over.requirement.replace('-', " "),
        words.value(&record.over, record.over.from),
        words.value(&record.over, record.over.to),
        and.requirement.replace('-', " "),
        words.value(and, and.from),
        words.value(and, and.to),
        shares.join("; ")
    )
}
