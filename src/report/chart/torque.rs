//! The torque that the motor of a drive gives over its speed, with every phase of the duty and the mean of all.
//!
//! Method: amounts of torque and speed, so that braking stands beside driving. Continuous and peak torque are those at the
//! site and at the least supply voltage. Limits: many phases lie on each other; each distinct point is drawn once.

use super::super::canvas::{Scale, axes, label, line, text, told};
use super::super::picture::INK;
use super::super::view::{View, base, phase};
use super::super::{figure, inch};
use super::{Drawn, drawn, most};
use crate::record::{CandidateRecord, MotorCurve};
use plotters::prelude::*;
use plotters::style::text_anchor::{HPos, VPos};

const FIELD: (i32, i32, i32, i32) = (96, 60, 930, 430);
const CONTINUOUS: RGBColor = RGBColor(0, 158, 115);
const PEAK: RGBColor = RGBColor(0, 114, 178);
const POINT: RGBColor = RGBColor(213, 94, 0);

/// Draws it; none where the drive has no phases.
pub fn draw(view: &View, curve: &MotorCurve, drive: &CandidateRecord) -> Option<Drawn> {
    let points = phases(drive);
    let mean = drive.value("rms-speed").zip(drive.value("rms-torque"))?;
    let (factor, unit) = inch::shown(1.0, "N·m", view.units);
    let fastest = most(curve.speed.iter().copied().chain(points.iter().map(|point| point.0)));
    let strongest = most(curve.peak.iter().copied().chain(points.iter().map(|point| point.1)));
    if points.is_empty() || fastest == 0.0 || strongest == 0.0 {
        return None;
    }
    let across = Scale { from: 0.0, to: 1.04 * fastest, geometric: false, begin: FIELD.0, end: FIELD.2 };
    let up = Scale { from: 0.0, to: 1.1 * strongest * factor, geometric: false, begin: FIELD.3, end: FIELD.1 };
    let at = |(speed, torque): (f64, f64)| (across.at(speed), up.at(torque * factor));
    let path = |torques: &[f64]| -> Vec<(i32, i32)> {
        curve.speed.iter().copied().zip(torques.iter().copied()).map(at).collect()
    };
    let motor = drive.components.iter().find(|part| part.role == "servo-motor").map_or("", |part| &part.designation);
    let title = format!("what the motor gives and what the duty asks, {motor}");
    let torque = |value: f64| view.quantity(Some(value), "N·m");
    let description = format!(
        "Peak and continuous torque of the motor over its speed. Largest torque of a phase {}, mean over the duty {} at {} 1/min, continuous torque there {}.",
        torque(most(points.iter().map(|point| point.1))),
        torque(mean.1),
        figure::figure(mean.0, 3),
        drive.value("continuous-torque").map_or(figure::NOT_KNOWN.into(), torque)
    );
    drawn((title, description), 500, |area| {
        axes(area, FIELD, (&across, &up), ("speed of the motor, 1/min", &format!("amount of torque, {unit}")), true)?;
        // the ground of what may go on for ever
        let mut ground = path(&curve.continuous);
        ground.extend([(ground.last().map_or(FIELD.0, |last| last.0), FIELD.3), (FIELD.0, FIELD.3)]);
        area.draw(&Polygon::new(ground, CONTINUOUS.mix(0.16).filled())).map_err(told)?;
        area.draw(&PathElement::new(path(&curve.continuous), CONTINUOUS.stroke_width(3))).map_err(told)?;
        area.draw(&PathElement::new(path(&curve.peak), PEAK.stroke_width(3))).map_err(told)?;
        let named = |torques: &[f64], words: &str, share: f64| -> Result<(), String> {
            let index = (share * (curve.speed.len() - 1) as f64) as usize;
            let (Some(&speed), Some(&torque)) = (curve.speed.get(index), torques.get(index)) else { return Ok(()) };
            let (x, y) = at((speed, torque));
            label(area, words, (x, y - 14), 15)
        };
        let free = free_of(&points, fastest);
        named(&curve.peak, "peak", free)?;
        named(&curve.continuous, "continuous", free)?;
        for &point in &points {
            let (x, y) = at(point);
            let stroke = POINT.stroke_width(2);
            line(area, (x - 5, y - 5), (x + 5, y + 5), stroke)?;
            line(area, (x - 5, y + 5), (x + 5, y - 5), stroke)?;
        }
        let (x, y) = at(mean);
        area.draw(&Circle::new((x, y), 8, WHITE.filled())).map_err(told)?;
        area.draw(&Circle::new((x, y), 6, INK.filled())).map_err(told)?;
        // what the marks mean, above the field
        let (x, y) = (FIELD.0 + 250, 24);
        line(area, (x - 5, y - 5), (x + 5, y + 5), POINT.stroke_width(2))?;
        line(area, (x - 5, y + 5), (x + 5, y - 5), POINT.stroke_width(2))?;
        text(area, "a phase of the duty", (x + 14, y), 15, (HPos::Left, VPos::Center))?;
        area.draw(&Circle::new((x + 200, y), 6, INK.filled())).map_err(told)?;
        text(area, "root mean square over the duty", (x + 214, y), 15, (HPos::Left, VPos::Center))
    })
}

/// Where along the curves words lie farthest from every point.
fn free_of(points: &[(f64, f64)], fastest: f64) -> f64 {
    let away = |share: f64| {
        let from = |point: &(f64, f64)| (point.0 / fastest - share).abs();
        points.iter().map(from).fold(f64::INFINITY, f64::min)
    };
    let places = [0.12, 0.3, 0.45, 0.6];
    places.into_iter().max_by(|&a, &b| away(a).total_cmp(&away(b))).unwrap_or(0.3)
}

/// Speed, 1/min, and amount of torque, N·m, of every phase, each distinct point once.
fn phases(drive: &CandidateRecord) -> Vec<(f64, f64)> {
    let of = |name: &str, index: usize| drive.value(&format!("{name}.{index}"));
    let Some((speed, motor)) = drive.value("speed").zip(drive.value("motor-speed")) else { return Vec::new() };
    let numbers =
        drive.worksheet.iter().filter(|line| base(&line.id) == "phase-torque").filter_map(|line| phase(&line.id));
    let mut points: Vec<(f64, f64)> = numbers
        .filter_map(|index| {
            let top = of("phase-top-speed", index).or_else(|| of("phase-speed", index))?;
            let own = of("phase-torque", index)?.abs();
            let second = of("phase-second-torque", index).map_or(0.0, f64::abs);
            let largest = of("phase-largest-torque", index).map(f64::abs);
            let torque = largest.unwrap_or(if second > own { second } else { own });
            Some((motor * top.abs() / speed, torque)).filter(|point| point.0.is_finite() && point.1.is_finite())
        })
        .collect();
    points.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
    points.dedup_by(|a, b| (a.0 - b.0).abs() < 1.0 && (a.1 - b.1).abs() < 1e-3);
    points
}
