//! Where the recommendation turns: along one requirement of an axis for its slider, and over travel and speed as a map.
//!
//! Method: a crossover beside the sketch of the brief, which tells what the axis carries; ranges lie about the value of the brief.
//! Limits: as those of every crossover: what changes back within a step is not seen.

use super::answer::MOST;
use super::post::Post;
use super::print;
use super::site::Site;
use crate::pipeline::{self, Inputs, Look, Memory, Ranges};
use crate::record::CrossoverRecord;
use crate::report::crossover;
use crate::search::Stop;
use crate::units::{Measure, significant};
use axum::Json;
use axum::extract::State;
use axum::response::{IntoResponse, Response};
use serde::Serialize;
use std::sync::Arc;

/// Steps along a slider.
const STEPS_OF_SLIDER: usize = 24;
/// Steps of each side of the map.
const STEPS_OF_MAP: usize = 12;
/// A slider reaches from the value over this to the value times this.
pub const REACH: f64 = 4.0;

/// What a slider shows.
#[derive(Serialize)]
struct Strip {
    /// Pieces of the way, as shares of it.
    pieces: Vec<crossover::Stretch>,
    /// The same in words.
    html: String,
}

/// Along the travel or the speed of an axis.
pub async fn turns(State(site): State<Arc<Site>>, post: Post) -> Response {
    let (key, axis) = (post.of_page("of").to_string(), post.of_page("axis").parse::<usize>().unwrap_or(usize::MAX));
    let Ok(inputs) = site.inputs(&post.draft) else { return print::nothing_to_turn() };
    let (units, keeps) = (post.units, site.clone());
    let work = move |stop: &Stop| {
        let over = range(&inputs, axis, &key)?;
        let record = along(&inputs, axis, (&over, None), STEPS_OF_SLIDER, &keeps.work.memory, stop)?;
        Some((crossover::strip(&record), print::told(&crossover::sentences(&record, units))))
    };
    match site.work.run(MOST, work).await {
        Ok((pieces, html)) => Json(Strip { pieces, html }).into_response(),
        Err(refused) => print::refused(refused),
    }
}

/// Over travel and speed of an axis.
pub async fn map(State(site): State<Arc<Site>>, post: Post) -> Response {
    let axis = post.of_page("axis").parse::<usize>().unwrap_or(usize::MAX);
    let Ok(inputs) = site.inputs(&post.draft) else { return print::nothing_to_turn() };
    let (units, keeps) = (post.units, site.clone());
    let work = move |stop: &Stop| {
        let (over, and) = (range(&inputs, axis, "travel")?, range(&inputs, axis, "speed")?);
        let record = along(&inputs, axis, (&over, Some(&and)), STEPS_OF_MAP, &keeps.work.memory, stop)?;
        Some(crossover::chart(&record, units).map(|svg| print::map(&svg)))
    };
    match site.work.run(MOST, work).await {
        Ok(Ok(html)) => Json(Strip { pieces: Vec::new(), html }).into_response(),
        Ok(Err(told)) => (axum::http::StatusCode::INTERNAL_SERVER_ERROR, told).into_response(),
        Err(refused) => print::refused(refused),
    }
}

fn along(
    inputs: &Inputs,
    axis: usize,
    (over, and): (&str, Option<&str>),
    steps: usize,
    memory: &Memory,
    stop: &Stop,
) -> Option<CrossoverRecord> {
    let ranges = Ranges { best_alone: true, ..Ranges::read(over, and, Some(steps)).ok()? };
    let beside = pipeline::sketch(inputs, memory, Look::Best, stop)?;
    let record = pipeline::crossover_beside(inputs, &beside, axis, &ranges, Some(stop), &|_, _| {});
    (!stop.asked()).then_some(record)
}

/// The range about a requirement of an axis, as `crossover` reads it; none where there is no such requirement.
fn range(inputs: &Inputs, axis: usize, key: &str) -> Option<String> {
    let axis = inputs.brief.axes.get(axis)?;
    let (value, unit) = match key {
        "travel" => (axis.travel.si(), "m"),
        "speed" => (axis.speed.si() * 60.0, "m/min"),
        _ => return None,
    };
    let end = |value: f64| significant(value, 9);
    Some(format!("{key}={}{unit}..{}{unit}", end(value / REACH), end(value * REACH)))
}
