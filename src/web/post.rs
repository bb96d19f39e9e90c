//! What a form sends: pairs of names and texts, read into a draft, the units of the reader and the rest.
//!
//! Method: names of the brief are those of its keys; names that begin with "page-" belong to the page and never reach a brief.
//! Limits: of one name given twice the last counts.

use super::form::{Draft, Edit};
use crate::units::UnitSystem;
use axum::body::Bytes;
use axum::extract::FromRequest;
use axum::extract::Request;
use axum::http::StatusCode;
use axum::response::{IntoResponse, Response};
use std::time::Duration;

/// What was sent.
#[derive(Debug, Clone, Default)]
pub struct Post {
    /// What was filled in.
    pub draft: Draft,
    /// The units of the answer.
    pub units: UnitSystem,
    /// The brief that is kept for comparison, as text.
    pub other: String,
    /// Every field of the page by its name without "page-".
    pub page: Vec<(String, String)>,
    /// The button that sent it.
    pub edit: Option<Edit>,
}

/// What the fields of the page begin with.
const OF_PAGE: &str = "page-";
/// How long a body may take to come.
const SLOWEST_BODY: Duration = Duration::from_secs(20);
/// The most pairs that are read.
const MOST_PAIRS: usize = 20_000;

impl Post {
    /// Reads a body in the form `application/x-www-form-urlencoded`.
    pub fn read(body: &[u8]) -> Post {
        let pairs = form_urlencoded::parse(body).take(MOST_PAIRS);
        Post::of_pairs(pairs.map(|(name, text)| (name.into_owned(), text.into_owned())).collect())
    }

    /// Reads pairs.
    pub fn of_pairs(pairs: Vec<(String, String)>) -> Post {
        let (page, brief): (Vec<_>, Vec<_>) = pairs.into_iter().partition(|(name, _)| name.starts_with(OF_PAGE));
        let page: Vec<(String, String)> =
            page.into_iter().map(|(name, text)| (name[OF_PAGE.len()..].to_string(), text)).collect();
        let mut post = Post { draft: Draft::of_pairs(&brief), page, ..Post::default() };
        post.units = if post.of_page("units") == "inch" { UnitSystem::Inch } else { UnitSystem::Metric };
        post.other = post.of_page("other").to_string();
        post.edit = Edit::read(post.of_page("do"));
        post
    }

    /// What a field of the page says; empty if it is not there.
    pub fn of_page(&self, name: &str) -> &str {
        self.page.iter().rev().find(|(known, _)| known == name).map_or("", |(_, text)| text.as_str())
    }
}

impl<S: Send + Sync> FromRequest<S> for Post {
    type Rejection = Response;

    async fn from_request(request: Request, state: &S) -> Result<Post, Response> {
        let body = in_time(Bytes::from_request(request, state)).await?;
        body.map(|body| Post::read(&body)).map_err(IntoResponse::into_response)
    }
}

/// What is read of a body, unless it comes too slowly.
pub async fn in_time<T>(read: impl Future<Output = T>) -> Result<T, Response> {
    let read = tokio::time::timeout(SLOWEST_BODY, read).await;
    read.map_err(|_| (StatusCode::REQUEST_TIMEOUT, "the request came too slowly\n").into_response())
}
