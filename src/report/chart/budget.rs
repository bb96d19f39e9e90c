//! What the errors of a drive are made of, against what the brief allows.
//!
//! Method: ISO 230-2 adds M, B and 4·s in line, so each quantity is one bar of those parts; its limit is a mark. Limits: the
//! squares inside M and s are in the table beside it.

use super::super::canvas::{Scale, dashes, line, text, told, width};
use super::super::picture::{FAINT, INK};
use super::super::view::View;
use super::super::{figure, inch};
use super::{Drawn, drawn, most};
use crate::record::CandidateRecord;
use plotters::prelude::*;
use plotters::style::text_anchor::{HPos, VPos};

const LEFT: i32 = 250;
const RIGHT: i32 = 860;
const TOP: i32 = 84;
const STEP: i32 = 58;
/// A limit beyond so many times the largest error would leave nothing to see; it is told, not drawn.
const FAR: f64 = 3.0;

/// Parts of a bar: letters, colour, words.
const PARTS: [(&str, RGBColor, &str); 3] = [
    ("M", RGBColor(86, 180, 233), "M: position error over the travel"),
    ("B", RGBColor(230, 159, 0), "B: reversal"),
    ("4·s", RGBColor(0, 158, 115), "4·s: scatter"),
];

/// One quantity: id of its characteristic, name, ids of its parts.
const QUANTITIES: [(&str, &str, [Option<&str>; 3]); 4] = [
    ("accuracy", "over the travel", [Some("position-error"), Some("reversal-error"), Some("scatter")]),
    ("section-accuracy", "A over 2 m", [Some("section-position-error"), Some("reversal-error"), Some("scatter")]),
    ("repeatability", "repeatability R", [None, Some("reversal-error"), Some("scatter")]),
    ("reversal-error", "reversal B", [None, Some("reversal-error"), None]),
];

struct Row {
    name: String,
    parts: [f64; 3],
    sum: f64,
    limit: Option<f64>,
}

/// Draws it; none where nothing of it is known.
pub fn draw(view: &View, drive: &CandidateRecord) -> Option<Drawn> {
    let rows: Vec<Row> = QUANTITIES.iter().filter_map(|quantity| row(drive, quantity)).collect();
    if rows.is_empty() {
        return None;
    }
    let largest = most(rows.iter().map(|row| row.sum));
    let far = |limit: f64| limit > FAR * largest;
    let drawn_limits = rows.iter().filter_map(|row| row.limit).filter(|&limit| !far(limit));
    let end = 1.08 * most(rows.iter().map(|row| row.sum).chain(drawn_limits));
    let (factor, unit) = inch::shown(1.0, "µm", view.units);
    let scale = Scale { from: 0.0, to: end * factor, geometric: false, begin: LEFT, end: RIGHT };
    let at = |micrometres: f64| scale.at(micrometres * factor);
    let bottom = TOP + STEP * rows.len() as i32;
    let told_row = |row: &Row| {
        let limit =
            row.limit.map_or("no limit stated".into(), |limit| format!("at most {}", view.quantity(Some(limit), "µm")));
        format!("{}: {}, {limit}", row.name, view.quantity(Some(row.sum), "µm"))
    };
    let description = rows.iter().map(told_row).collect::<Vec<_>>().join("; ");
    let title = "what the errors are made of, against what is allowed".to_string();
    drawn((title, description), (bottom + 74) as u32, |area| {
        for tick in scale.ticks() {
            line(area, (scale.at(tick), TOP - 6), (scale.at(tick), bottom), FAINT.into())?;
            text(area, &figure::figure(tick, 4), (scale.at(tick), bottom + 6), 14, (HPos::Center, VPos::Top))?;
        }
        text(area, unit, ((LEFT + RIGHT) / 2, bottom + 30), 15, (HPos::Center, VPos::Top))?;
        let mut from = 20;
        for (_, colour, words) in PARTS {
            area.draw(&Rectangle::new([(from, 16), (from + 22, 32)], colour.filled())).map_err(told)?;
            text(area, words, (from + 30, 24), 15, (HPos::Left, VPos::Center))?;
            from += 50 + width(words, 15);
        }
        for (index, row) in rows.iter().enumerate() {
            let top = TOP + STEP * index as i32;
            text(area, &row.name, (LEFT - 12, top + 20), 15, (HPos::Right, VPos::Center))?;
            let mut begin = 0.0;
            for ((letters, colour, _), part) in PARTS.iter().zip(row.parts).filter(|(_, part)| *part > 0.0) {
                let ends = [(at(begin), top + 6), (at(begin + part), top + 34)];
                area.draw(&Rectangle::new(ends, colour.filled())).map_err(told)?;
                area.draw(&Rectangle::new(ends, WHITE.stroke_width(1))).map_err(told)?;
                if at(begin + part) - at(begin) > width(letters, 14) + 8 {
                    let middle = (at(begin) + at(begin + part)) / 2;
                    text(area, letters, (middle, top + 20), 14, (HPos::Center, VPos::Center))?;
                }
                begin += part;
            }
            let value = view.quantity(Some(row.sum), "µm");
            text(area, &value, (at(row.sum) + 8, top + 14), 14, (HPos::Left, VPos::Center))?;
            match row.limit {
                Some(limit) if !far(limit) => {
                    dashes(area, (at(limit), top), (at(limit), top + 40), 6, 3, INK.stroke_width(2))?;
                    let words = format!("limit {}", view.quantity(Some(limit), "µm"));
                    let near = limit <= row.sum || (at(limit) - at(row.sum)).abs() < width(&value, 14) + 16;
                    let (place, height) = match at(limit) + width(&words, 13) > RIGHT + 80 {
                        true => (HPos::Right, top + 44),
                        false => (HPos::Left, if near { top + 44 } else { top + 30 }),
                    };
                    let beside = if matches!(place, HPos::Right) { -6 } else { 6 };
                    text(area, &words, (at(limit) + beside, height), 13, (place, VPos::Center))?;
                }
                Some(limit) => {
                    let words = format!("limit {}, far to the right", view.quantity(Some(limit), "µm"));
                    text(area, &words, (at(row.sum) + 8, top + 30), 13, (HPos::Left, VPos::Center))?;
                }
                None => {}
            }
        }
        line(area, (LEFT, TOP - 6), (LEFT, bottom), INK.stroke_width(1))
    })
}

fn row(drive: &CandidateRecord, (id, name, parts): &(&str, &str, [Option<&str>; 3])) -> Option<Row> {
    let sum = drive.value(id)?;
    // a travel that is no longer than the section has no section of its own
    let short = drive.value("travel").zip(drive.value("section-limit")).is_some_and(|(travel, limit)| travel <= limit);
    if short && *id == "section-accuracy" {
        return None;
    }
    // beyond 2 m ISO 230-2 states E = M + B over the travel, without scatter
    let scatterless = drive.line(id).is_some_and(|line| line.formula.as_deref() == Some("systematic-deviation"));
    let value = |index: usize| {
        let factor = if index == 2 { 4.0 } else { 1.0 };
        let part = parts[index].filter(|_| index < 2 || !scatterless);
        part.and_then(|part| drive.value(part)).map_or(0.0, |value| factor * value)
    };
    let finding = drive.findings.iter().find(|finding| finding.characteristic == *id && finding.obligation == "shall");
    let name = match *id {
        "accuracy" => format!("{} {name}", if scatterless { "E" } else { "A" }),
        _ => (*name).to_string(),
    };
    Some(Row { name, parts: [value(0), value(1), value(2)], sum, limit: finding.and_then(|finding| finding.limit) })
}
