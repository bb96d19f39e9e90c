//! The local page: a brief in plain fields, the answer while it is filled in, and everything that the command line writes.
//!
//! Method: every page is made here, from the same record and in the same words as the report; what a browser holds is the form
//! alone, so the server keeps nothing of a visitor. Without JavaScript each button sends the form and gets a page; with it the same
//! answers come in pieces. Work is bounded and ends when nobody waits for it.
//! Limits: one program serves one catalogue and one rulebook, read when it starts.

mod answer;
mod check;
mod compare;
mod form;
mod guard;
mod listen;
mod page;
mod post;
mod print;
mod site;
mod take;
mod turns;
mod work;

pub use listen::{Listening, ServeError, listen};
pub use site::Site;

use post::Post;

use axum::Router;
use axum::extract::DefaultBodyLimit;
use axum::middleware::from_fn_with_state;
use axum::routing::{get, post as on_post};
use std::sync::Arc;

/// The largest body that is read, bytes: briefs are a few kilobytes.
const LARGEST_BODY: usize = 512 * 1024;

/// The page as it comes back for the body of a form, with its faults; nothing is worked out.
pub fn edited(site: &Site, body: &[u8]) -> String {
    print::html(&page::edited(site, Post::read(body)))
}

/// The page with what the text of a brief holds, and its faults; nothing is worked out.
pub fn opened(site: &Site, text: &str) -> String {
    print::html(&page::opened(site, text).0)
}

/// Everything that can be asked for.
fn router(site: Arc<Site>) -> Router {
    Router::new()
        .route("/", get(page::first).post(page::show))
        .route("/page.css", get(page::style))
        .route("/page.js", get(page::script))
        .route("/edit", on_post(page::edit))
        .route("/open", on_post(page::open))
        .route("/answer", on_post(answer::answer))
        .route("/turns", on_post(turns::turns))
        .route("/map", on_post(turns::map))
        .route("/take/{name}", on_post(take::take))
        .route("/print", on_post(take::print))
        .route("/compare", on_post(compare::compare))
        .route("/check", on_post(check::check))
        .fallback(page::nothing_here)
        .layer(DefaultBodyLimit::max(LARGEST_BODY))
        .layer(from_fn_with_state(site.clone(), guard::guard))
        .with_state(site)
}
