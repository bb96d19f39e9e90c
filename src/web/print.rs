//! Pages and pieces of them as HTML.
//!
//! Method: templates hold the layout; every text is escaped by the template engine, and only what the report made of a record is
//! put in as it is, since it has been escaped there.
//! Limits: the templates are part of the program.

use super::answer::How;
use super::compare::Comparison;
use super::page::Page;
use super::post::Post;
use super::work::Refused;
use crate::report::Live;
use crate::yaml::Faults;
use axum::http::{StatusCode, header};
use axum::response::{Html, IntoResponse, Response};
use minijinja::syntax::SyntaxConfig;
use minijinja::value::{Serde, Value};
use minijinja::{AutoEscape, Environment, UndefinedBehavior};
use serde::Serialize;
use std::sync::LazyLock;

const TEMPLATES: [(&str, &str); 6] = [
    ("page", include_str!("templates/page.html.j2")),
    ("field", include_str!("templates/field.html.j2")),
    ("answer", include_str!("templates/answer.html.j2")),
    ("check", include_str!("templates/check.html.j2")),
    ("comparison", include_str!("templates/comparison.html.j2")),
    ("notice", include_str!("templates/notice.html.j2")),
];

static PRINTER: LazyLock<Environment<'static>> = LazyLock::new(|| {
    let mut environment = Environment::new();
    environment.set_undefined_behavior(UndefinedBehavior::Strict);
    let syntax = SyntaxConfig::builder().trim_blocks(true).lstrip_blocks(true).build();
    environment.set_syntax(syntax.expect("the usual marks"));
    environment.set_auto_escape_callback(|_| AutoEscape::Html);
    for (name, source) in TEMPLATES {
        environment.add_template(name, source).expect("the built-in templates can be read");
    }
    environment
});

/// An answer in short, and how it was made.
#[derive(Serialize)]
struct AnswerView<'a> {
    live: &'a Live,
    how: How,
}

/// Sentences or a picture; a page of its own where it has a title.
#[derive(Default, Serialize)]
struct Notice {
    title: String,
    sentences: Vec<String>,
    picture: String,
}

fn printed(name: &str, view: impl Serialize) -> String {
    let template = PRINTER.get_template(name).expect("the template is in the list");
    template.render(Value::from(Serde(&view))).expect("the built-in templates print every view")
}

/// A whole page.
pub fn page(page: &Page) -> Response {
    Html(html(page)).into_response()
}

/// The same as text.
pub fn html(page: &Page) -> String {
    printed("page", page)
}

/// The page of a form with faults, at their fields.
pub fn page_with_faults(post: &Post, faults: &Faults) -> Response {
    let mut answer = page(&Page::with_faults(faults, post));
    *answer.status_mut() = StatusCode::UNPROCESSABLE_ENTITY;
    answer
}

/// The answer in short.
pub fn answer(live: &Live, how: How) -> String {
    printed("answer", AnswerView { live, how })
}

/// The answer in a sentence.
pub fn said(live: &Live) -> String {
    let lines: Vec<String> = live.lines.iter().map(|(axis, drive)| format!("{axis}: {drive}")).collect();
    let costs = live.figures.iter().take(2).map(|(name, value)| format!("{name} {value}"));
    let costs: Vec<String> = costs.collect();
    let ends = |part: &String| !part.is_empty();
    [lines.join("; "), costs.join("; ")].into_iter().filter(ends).collect::<Vec<_>>().join("; ")
}

/// Two versions side by side.
pub fn comparison(comparison: &Comparison) -> String {
    printed("comparison", comparison)
}

/// How many faults there are; empty where there are none.
pub fn faults_counted(count: usize) -> String {
    match count {
        0 => String::new(),
        1 => "One thing in the brief has to be put right first; it is marked at its field.".into(),
        _ => format!("{count} things in the brief have to be put right first; each is marked at its field."),
    }
}

/// Sentences as a list.
pub fn told(sentences: &[String]) -> String {
    printed("notice", Notice { sentences: sentences.to_vec(), ..Notice::default() })
}

/// The map.
pub fn map(svg: &str) -> String {
    // the ids of the picture would clash with nothing else on the page
    printed("notice", Notice { picture: svg.into(), ..Notice::default() })
}

/// What a visitor is told whose brief has faults that stand at their fields.
pub fn nothing_to_turn() -> Response {
    plain(StatusCode::UNPROCESSABLE_ENTITY, "the brief has to be put right first; each fault is marked at its field")
}

/// What a visitor is told where no answer came.
pub fn refused(refused: Refused) -> Response {
    let status = match refused {
        Refused::Busy => StatusCode::SERVICE_UNAVAILABLE,
        Refused::TooLong => StatusCode::GATEWAY_TIMEOUT,
        Refused::Broken => StatusCode::INTERNAL_SERVER_ERROR,
    };
    let mut answer = plain(status, refused.words());
    answer.headers_mut().insert(header::RETRY_AFTER, header::HeaderValue::from_static("5"));
    answer
}

/// A short page that says one thing.
pub fn plain(status: StatusCode, words: &str) -> Response {
    let notice = Notice { title: "axiswright".into(), sentences: vec![words.into()], picture: String::new() };
    (status, Html(printed("notice", notice))).into_response()
}
