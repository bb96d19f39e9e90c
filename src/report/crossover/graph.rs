//! The graph of one requirement: what the best drive of every family costs, and which wins.
//!
//! Method: one line a family, broken where none of it is admissible; the best at each value is drawn thick. A band on top
//! names the winner, broken lines mark where it changes. Families differ by letter and shape of mark as well as by colour.
//! Limits: where the brief states preferences the lines show what is weighed, since that decides.

use super::words::{Words, family};
use crate::record::NodeRecord;
use crate::report::canvas::*;
use crate::report::picture::{INK, mark, named};
use plotters::prelude::*;
use plotters::style::text_anchor::{HPos, VPos};

/// Height of the band that names the winner.
const BAND: i32 = 26;
/// Beyond this ratio of the largest to the least the measure stands at equal ratios.
const WIDE: f64 = 5.0;
/// Room above and below the lines.
const ROOM: f64 = 0.06;

type At = (i32, i32);

/// Draws it.
pub fn draw(words: &Words<'_>) -> Result<String, String> {
    let record = words.record;
    let over = &record.over;
    let (left, top, right, bottom) = FIELD;
    let (factor, _) = reader(over, words.units);
    let across = Scale {
        from: over.from * factor,
        to: over.to * factor,
        geometric: over.spacing == "geometric",
        begin: left,
        end: right,
    };
    let up = measure_scale(words, top + BAND + 40, bottom);
    let at = |node: &NodeRecord| -> Option<At> {
        let value = Some(node.merit).filter(|merit| merit.is_finite())?;
        Some((across.at(node.x? * factor), up.at(value)))
    };
    let mut svg = String::new();
    {
        let area = SVGBackend::with_string(&mut svg, SIZE).into_drawing_area();
        area.fill(&WHITE).map_err(told)?;
        title(&area, &words.title())?;
        axes(&area, FIELD, (&across, &up), (&axis_words(over, words.units), &words.measure()), true)?;
        band(&area, words, |x| across.at(x * factor))?;
        let mut ends: Vec<(At, Option<&str>)> = Vec::new();
        for curve in &record.curves {
            let id = Some(curve.family.as_str());
            let (_, colour) = mark(id);
            for run in runs(&curve.nodes, at) {
                area.draw(&PathElement::new(run.clone(), colour.stroke_width(2))).map_err(told)?;
                ends.extend(run.last().map(|&last| (last, id)));
            }
            let spacing = (curve.nodes.len() / 10).max(1);
            for node in curve.nodes.iter().step_by(spacing) {
                if let Some(place) = at(node) {
                    shape(&area, id, place)?;
                }
            }
        }
        winners(&area, words, at)?;
        ends_named(&area, ends)?;
        if let Some(now) = over.now.map(|now| across.at(now * factor)).filter(|now| (left..=right).contains(now)) {
            dashes(&area, (now, top + BAND), (now, bottom), 2, 4, INK.stroke_width(1))?;
            if let Some(place) = at(&record.present) {
                diamond(&area, place)?;
                diamond_named(&area)?;
            }
        }
        legend(&area, words)?;
        area.present().map_err(told)?;
    }
    named(&svg, &words.title(), &description(words))
}

fn measure_scale(words: &Words<'_>, high: i32, low: i32) -> Scale {
    let all = words.record.curves.iter().flat_map(|curve| &curve.nodes).map(|node| node.merit);
    let all = all.filter(|merit| merit.is_finite());
    let (least, most) =
        all.fold((f64::INFINITY, f64::NEG_INFINITY), |(least, most), merit| (least.min(merit), most.max(merit)));
    if !least.is_finite() {
        return Scale { from: 0.0, to: 1.0, geometric: false, begin: low, end: high };
    }
    if least > 0.0 && most / least > WIDE {
        let room = (most / least).powf(ROOM);
        return Scale { from: least / room, to: most * room, geometric: true, begin: low, end: high };
    }
    let room = ROOM * if most > least { most - least } else { 1.0 };
    Scale { from: least - room, to: most + room, geometric: false, begin: low, end: high }
}

/// The places of a curve, cut where there is none.
fn runs(nodes: &[NodeRecord], at: impl Fn(&NodeRecord) -> Option<At>) -> Vec<Vec<At>> {
    let mut runs: Vec<Vec<At>> = Vec::new();
    let mut open = false;
    for node in nodes {
        match (at(node), runs.last_mut()) {
            (Some(place), Some(run)) if open => run.push(place),
            (Some(place), _) => runs.push(vec![place]),
            (None, _) => {}
        }
        open = at(node).is_some();
    }
    runs
}

/// The best of all, thick.
fn winners(area: &Area<'_>, words: &Words<'_>, at: impl Fn(&NodeRecord) -> Option<At>) -> Result<(), String> {
    for pair in words.record.nodes.windows(2) {
        if pair[0].family == pair[1].family
            && let (Some(from), Some(to)) = (at(&pair[0]), at(&pair[1]))
        {
            let (_, colour) = mark(pair[0].family.as_deref());
            line(area, from, to, colour.stroke_width(6))?;
        }
    }
    Ok(())
}

/// The band that names the winner, and the boundaries with their values.
fn band(area: &Area<'_>, words: &Words<'_>, across: impl Fn(f64) -> i32) -> Result<(), String> {
    let record = words.record;
    let (left, top, right, bottom) = FIELD;
    let mut begin = left;
    let mut winner = record.nodes.first().and_then(|node| node.family.as_deref());
    let mut shown: Vec<i32> = vec![i32::MIN; 2];
    let mut regions = Vec::new();
    for boundary in &record.boundaries {
        let at = across(boundary.at);
        regions.push((begin, at, winner));
        dashes(area, (at, top + BAND), (at, bottom), 7, 5, INK.stroke_width(2))?;
        let value = words.value(&record.over, boundary.at);
        let half = width(&value, TEXT) / 2;
        let middle = at.clamp(left + half, right - half);
        // a value that would touch the one before it goes into the second row
        let row = shown.iter().position(|end| middle - half > end.saturating_add(6)).unwrap_or(1);
        shown[row] = middle + half;
        label(area, &value, (middle, top + BAND + 12 + 20 * row as i32), TEXT)?;
        (begin, winner) = (at, boundary.to.as_deref());
    }
    regions.push((begin, right, winner));
    for (from, to, id) in regions {
        let (letter, colour) = mark(id);
        let strength = if id.is_some() { 0.5 } else { 0.18 };
        let ends = [(from, top), (to, top + BAND)];
        area.draw(&Rectangle::new(ends, WHITE.filled())).map_err(told)?;
        area.draw(&Rectangle::new(ends, colour.mix(strength).filled())).map_err(told)?;
        area.draw(&Rectangle::new(ends, INK.stroke_width(1))).map_err(told)?;
        let name = family(id);
        let room = to - from - 8;
        let fits = [name.as_str(), letter].into_iter().find(|name| width(name, TEXT) < room);
        if let Some(name) = fits {
            text(area, name, ((from + to) / 2, top + BAND / 2), TEXT, (HPos::Center, VPos::Center))?;
        }
    }
    Ok(())
}

/// The mark of a family on its line.
fn shape(area: &Area<'_>, id: Option<&str>, at: At) -> Result<(), String> {
    let (letter, colour) = mark(id);
    let fill = colour.filled();
    let done = match letter {
        "B" => area.draw(&Circle::new(at, 5, fill)),
        "N" => area.draw(&Circle::new(at, 5, colour.stroke_width(2))),
        "S" => area.draw(&Rectangle::new([(at.0 - 5, at.1 - 5), (at.0 + 5, at.1 + 5)], fill)),
        "H" => area.draw(&TriangleMarker::new(at, 7, fill)),
        _ => area.draw(&Cross::new(at, 5, colour.stroke_width(2))),
    };
    done.map_err(told)
}

/// The letter of each line at its end, moved apart where lines end close together.
fn ends_named(area: &Area<'_>, mut ends: Vec<(At, Option<&str>)>) -> Result<(), String> {
    ends.sort_by_key(|(at, _)| (at.0, at.1));
    let mut placed: Vec<At> = Vec::new();
    for (at, id) in ends {
        let x = if at.0 > FIELD.2 - 20 { at.0 + 12 } else { at.0 + 14 };
        let mut y = at.1;
        while let Some(near) = placed.iter().find(|near| (near.0 - x).abs() < 14 && (near.1 - y).abs() < 16) {
            y = near.1 + 16;
        }
        placed.push((x, y));
        text(area, mark(id).0, (x, y), TEXT, (HPos::Center, VPos::Center))?;
    }
    Ok(())
}

fn legend(area: &Area<'_>, words: &Words<'_>) -> Result<(), String> {
    let mut at = 20;
    for curve in &words.record.curves {
        if curve.nodes.iter().all(|node| node.family.is_none()) {
            continue;
        }
        let id = Some(curve.family.as_str());
        let (letter, colour) = mark(id);
        line(area, (at, 49), (at + 30, 49), colour.stroke_width(2))?;
        shape(area, id, (at + 15, 49))?;
        let name = format!("{} ({letter})", family(id));
        text(area, &name, (at + 36, 49), TEXT, (HPos::Left, VPos::Center))?;
        at += 36 + width(&name, TEXT) + 10;
    }
    Ok(())
}

fn description(words: &Words<'_>) -> String {
    let record = words.record;
    let over = &record.over;
    let mut told = format!(
        "{} of the best drive of each family against {}, from {} to {}. The best is thick: {}",
        words.measure(),
        over.requirement.replace('-', " "),
        words.value(over, over.from),
        words.value(over, over.to),
        family(record.nodes.first().and_then(|node| node.family.as_deref()))
    );
    for boundary in &record.boundaries {
        told.push_str(&format!(", from {} {}", words.value(over, boundary.at), family(boundary.to.as_deref())));
    }
    told + "."
}
