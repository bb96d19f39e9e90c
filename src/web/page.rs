//! The page: the form with what somebody filled in, faults at their fields, and the answer beside it.
//!
//! Method: a page is a view of what was posted; nothing else is known. Style and script are part of the program.
//! Limits: an opened file is read, not kept.

mod view;

pub use view::Page;

use super::answer::{How, answered};
use super::form::Draft;
use super::post::{Post, in_time};
use super::print;
use super::site::{BRIEF, Site};
use axum::extract::multipart::MultipartError;
use axum::extract::{Multipart, Query, State};
use axum::http::{StatusCode, header};
use axum::response::{IntoResponse, Response};
use serde::Deserialize;
use std::sync::Arc;

/// Briefs that the page can begin with: name, what it is, text.
pub const EXAMPLES: [(&str, &str, &str); 5] = [
    ("hull-gantry", "hull-mould gantry", include_str!("../../docs/examples/hull-gantry.yaml")),
    ("panel-drilling", "panel-drilling cell", include_str!("../../docs/examples/panel-drilling.yaml")),
    ("glass-table", "glass-cutting table in inches", include_str!("../../docs/examples/glass-table.yaml")),
    ("tray-loader", "tray loader", include_str!("../../docs/examples/tray-loader.yaml")),
    ("impossible", "one that nothing can satisfy", include_str!("../../docs/examples/impossible.yaml")),
];

#[derive(Debug, Default, Deserialize)]
pub struct Begin {
    #[serde(default)]
    example: String,
}

/// The page somebody comes to first: an empty machine of one axis, or an example.
pub async fn first(Query(begin): Query<Begin>) -> Response {
    let example = EXAMPLES.iter().find(|(name, _, _)| *name == begin.example);
    let draft = example.and_then(|(_, _, text)| Draft::of_brief(BRIEF, text));
    let post = Post { draft: draft.unwrap_or_else(empty), ..Post::default() };
    print::page(&Page::of(&post).begins(example.is_some()))
}

/// A machine of one axis of which nothing is known.
fn empty() -> Draft {
    let mut draft = Draft::default();
    draft.edit(&super::form::Edit::AddAxis);
    draft.axes.iter_mut().for_each(|axis| {
        axis.insert("name".into(), "x".into());
    });
    draft
}

/// The page with the answer to what was filled in.
pub async fn show(State(site): State<Arc<Site>>, post: Post) -> Response {
    let inputs = match site.inputs(&post.draft) {
        Ok(inputs) => inputs,
        Err(faults) => return print::page_with_faults(&post, &faults),
    };
    match answered(&site, inputs, How::Whole, &post).await {
        Ok(live) => print::page(&Page::of(&post).with_answer(print::answer(&live, How::Whole))),
        Err(refused) => print::refused(refused),
    }
}

/// The page after a button of the form.
pub async fn edit(State(site): State<Arc<Site>>, post: Post) -> Response {
    print::page(&edited(&site, post))
}

/// The form as it comes back after a button, with its faults.
pub fn edited(site: &Site, mut post: Post) -> Page {
    if post.of_page("do") == "keep" {
        post.other = post.draft.text();
    }
    let on = post.edit.clone().map(|edit| post.draft.edit(&edit)).unwrap_or_default();
    let page = match site.inputs(&post.draft) {
        // what is new is empty and need not be told so
        Err(faults) if post.edit.is_none() => Page::with_faults(&faults, &post),
        _ => Page::of(&post),
    };
    page.goes_on_at(&on)
}

/// The page with an opened brief.
pub async fn open(State(site): State<Arc<Site>>, mut sent: Multipart) -> Response {
    let text = match in_time(file_of(&mut sent)).await {
        Ok(Ok(text)) => text,
        Ok(Err(error)) => return print::plain(error.status(), &error.body_text()),
        Err(slow) => return slow,
    };
    let (page, status) = opened(&site, &text);
    let mut answer = print::page(&page);
    *answer.status_mut() = status;
    answer
}

/// The form with what a brief holds, as far as it can be read, and its faults.
pub fn opened(site: &Site, text: &str) -> (Page, StatusCode) {
    let read = site.inputs_of(text);
    let post = Post { draft: Draft::of_brief(BRIEF, text).unwrap_or_default(), ..Post::default() };
    match read {
        Ok(_) => (Page::of(&post).begins(true), StatusCode::OK),
        // a place in the file says more than a field that may not be there
        Err(faults) => (Page::with_faults_of_file(&faults, &post), StatusCode::UNPROCESSABLE_ENTITY),
    }
}

/// The text of the file that was sent.
async fn file_of(sent: &mut Multipart) -> Result<String, MultipartError> {
    let mut text = String::new();
    while let Some(field) = sent.next_field().await? {
        if field.name() == Some("file") {
            text = String::from_utf8_lossy(&field.bytes().await?).into_owned();
        }
    }
    Ok(text)
}

/// The style of the page.
pub async fn style() -> Response {
    ([(header::CONTENT_TYPE, "text/css; charset=utf-8")], include_str!("templates/page.css")).into_response()
}

/// The script of the page.
pub async fn script() -> Response {
    ([(header::CONTENT_TYPE, "text/javascript; charset=utf-8")], include_str!("templates/page.js")).into_response()
}

/// What stands at no address.
pub async fn nothing_here() -> Response {
    print::plain(StatusCode::NOT_FOUND, "there is nothing at this address; the page is at /")
}
