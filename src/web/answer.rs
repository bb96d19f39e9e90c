//! The answer while somebody types: at first the drive of each axis, then the other families beside it, then the whole.
//!
//! Method: a sketch takes each axis alone. The best of all families is known long before the best of each, so it is shown first;
//! the whole answer, with census and proof, follows in its own time and
//! takes its place. Whoever changes the form closes the connection, which ends the work.
//! Limits: a sketch keeps no limit of the machine; the page says so.

use super::form::Placed;
use super::post::Post;
use super::print;
use super::site::Site;
use super::work::Refused;
use crate::pipeline::{self, Inputs, Look};
use crate::record::DecisionRecord;
use crate::report::{Live, Shown, live};
use axum::Json;
use axum::extract::{Query, State};
use axum::response::{IntoResponse, Response};
use serde::{Deserialize, Serialize};
use std::sync::Arc;
use std::time::Duration;

/// How long an answer may take that somebody waits for.
pub const MOST: Duration = Duration::from_secs(280);

/// How the answer is wanted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum How {
    /// At once: the best drive of each axis alone.
    First,
    /// In a hurry: the best of each family beside it.
    Sketch,
    /// With census and proof.
    Whole,
}

#[derive(Debug, Deserialize)]
pub struct Wanted {
    how: How,
}

/// What the script of the page puts in its place.
#[derive(Serialize)]
struct Piece {
    /// Faults by the names of their fields; a field that is not there has none.
    faults: std::collections::BTreeMap<String, Vec<String>>,
    /// How many there are.
    count: usize,
    /// The answer as HTML; empty where the brief is at fault.
    html: String,
    /// The answer in a sentence, for a screen reader and a small screen.
    said: String,
}

/// The answer to a draft.
pub async fn answer(State(site): State<Arc<Site>>, Query(Wanted { how }): Query<Wanted>, post: Post) -> Response {
    let inputs = match site.inputs(&post.draft) {
        Ok(inputs) => inputs,
        Err(faults) => {
            let faults = Placed::of(&faults, &post.draft).at;
            let count = faults.values().map(Vec::len).sum();
            let said = print::faults_counted(count);
            return Json(Piece { faults, count, html: String::new(), said }).into_response();
        }
    };
    match answered(&site, inputs, how, &post).await {
        Ok(live) => {
            let (html, said) = (print::answer(&live, how), print::said(&live));
            Json(Piece { faults: Default::default(), count: 0, html, said }).into_response()
        }
        Err(refused) => print::refused(refused),
    }
}

/// The answer in short.
pub async fn answered(site: &Arc<Site>, inputs: Inputs, how: How, post: &Post) -> Result<Live, Refused> {
    let units = post.units;
    let (look, shown) = match how {
        How::First => (Look::Best, Shown::Winners),
        How::Sketch => (Look::EachFamily, Shown::Families),
        How::Whole => {
            let record = whole(site, inputs, false).await?;
            return site.work.run(MOST, move |_| Some(live(&record, units, Shown::Pictures))).await;
        }
    };
    let keeps = site.clone();
    let work = move |stop: &_| {
        let record = pipeline::sketch(&inputs, &keeps.work.memory, look, stop)?;
        Some(live(&record, units, shown))
    };
    site.work.run(MOST, work).await
}

/// The whole record, with what would change the answer where that is asked.
pub async fn whole(site: &Arc<Site>, inputs: Inputs, ask: bool) -> Result<Arc<DecisionRecord>, Refused> {
    let text = inputs.brief.text.clone();
    if let Some(kept) = site.work.kept(&text, ask) {
        return Ok(kept);
    }
    let record = site.work.run(MOST, move |stop| pipeline::recommend_until(&inputs, ask, stop)).await?;
    let record = Arc::new(record);
    site.work.keep(&text, ask, record.clone());
    Ok(record)
}
