//! The report as one self-contained HTML page: no script, nothing fetched, prints on A4 and Letter.
//!
//! Method: pulldown-cmark turns the Markdown into HTML. Headings get the ids that the links of the document
//! name; raw HTML becomes text and only links inside the document stay links, so that nothing a user wrote
//! can become markup.
//! Pictures of the report stand in the page whole; an image of anything else is left out.
//! Limits: wide worksheets scroll on a screen and shrink in print.

use super::Chart;
use pulldown_cmark::{Event, HeadingLevel, Options, Parser, Tag, TagEnd, html};

const STYLE: &str = include_str!("templates/page.css");

/// The page made of a report in Markdown and of the pictures that it names.
pub fn page(title: &str, markdown: &str, charts: &[Chart]) -> String {
    let body = body(markdown, charts);
    let mut name = String::new();
    html::push_html(&mut name, std::iter::once(Event::Text(title.into())));
    format!(
        "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n\
         <title>{name}</title>\n<style>\n{STYLE}</style>\n</head>\n<body>\n<main>\n{body}</main>\n</body>\n</html>\n"
    )
}

/// A document as a piece of a page that has its own style: classes in place of styles, so that a strict page shows it as it is.
pub fn piece(markdown: &str, charts: &[Chart]) -> String {
    let body = body(markdown, charts);
    let body = body.replace(" style=\"text-align: right\"", " class=\"right\"");
    // what scrolls is reached by the keyboard too
    let body = body.replace("<figure>", "<figure tabindex=\"0\">");
    let body =
        body.replace("<div class=\"wide\">", "<div class=\"wide\" tabindex=\"0\" role=\"group\" aria-label=\"table\">");
    body.replace(" style=\"text-align: left\"", "").replace(" style=\"text-align: center\"", "")
}

fn body(markdown: &str, charts: &[Chart]) -> String {
    let events = pictured(Parser::new_ext(markdown, Options::ENABLE_TABLES), charts);
    let mut body = String::with_capacity(markdown.len() * 2);
    html::push_html(&mut body, with_ids(events).into_iter());
    // a picture stands in no paragraph
    let body = body.replace("<p></p>", "").replace("<p></p>\n", "");
    body.replace("<table>", "<div class=\"wide\"><table>").replace("</table>", "</table></div>")
}

/// Everything harmless, and each picture of ours in place of the image that names it.
fn pictured<'m>(events: impl Iterator<Item = Event<'m>>, charts: &'m [Chart]) -> Vec<Event<'m>> {
    let mut kept = Vec::new();
    let mut within: Option<&Chart> = None;
    for event in events {
        match &event {
            Event::Start(Tag::Image { dest_url, .. }) => {
                let file = dest_url.strip_prefix(super::CHARTS).and_then(|rest| rest.strip_prefix('/'));
                within = charts.iter().find(|chart| file == Some(&chart.file));
            }
            Event::End(TagEnd::Image) => {
                if let Some(chart) = within.take() {
                    let mut caption = String::new();
                    html::push_html(&mut caption, std::iter::once(Event::Text(chart.title.as_str().into())));
                    let figure = format!("</p><figure>{}<figcaption>{caption}</figcaption></figure><p>", chart.svg);
                    kept.push(Event::InlineHtml(figure.into()));
                }
            }
            // the words of the image are inside its picture
            _ if within.is_some() => {}
            _ => kept.push(harmless(event)),
        }
    }
    kept
}

/// Raw HTML as text, links that lead out of the document as plain words.
fn harmless(event: Event<'_>) -> Event<'_> {
    match event {
        Event::Html(raw) | Event::InlineHtml(raw) => Event::Text(raw),
        Event::Start(Tag::Link { ref dest_url, .. }) if !dest_url.starts_with('#') => Event::Text("".into()),
        other => other,
    }
}

/// Gives every heading the id that a link to its words has: small letters, blanks as dashes.
fn with_ids(mut events: Vec<Event<'_>>) -> Vec<Event<'_>> {
    let mut used: Vec<String> = Vec::new();
    let mut index = 0;
    let mut open_links: Vec<bool> = Vec::new();
    while index < events.len() {
        if matches!(events[index], Event::Start(Tag::Heading { .. })) {
            let words: String = events[index + 1..]
                .iter()
                .take_while(|event| !matches!(event, Event::End(TagEnd::Heading(_))))
                .filter_map(|event| match event {
                    Event::Text(text) | Event::Code(text) => Some(text.to_string()),
                    _ => None,
                })
                .collect();
            let slug = unique(&slug(&words), &mut used);
            if let Event::Start(Tag::Heading { id, level, .. }) = &mut events[index]
                && *level != HeadingLevel::H1
            {
                *id = Some(slug.into());
            }
        }
        // the end of a link whose start became text must go as well
        match &events[index] {
            Event::Start(Tag::Link { .. }) => open_links.push(true),
            Event::End(TagEnd::Link) if open_links.pop().is_none() => {
                events[index] = Event::Text("".into());
            }
            _ => {}
        }
        index += 1;
    }
    events
}

fn slug(words: &str) -> String {
    let kept =
        words.to_lowercase().chars().filter(|c| c.is_alphanumeric() || *c == ' ' || *c == '-').collect::<String>();
    kept.trim().replace(' ', "-")
}

fn unique(slug: &str, used: &mut Vec<String>) -> String {
    let mut name = slug.to_string();
    let mut count = 1;
    while used.contains(&name) {
        name = format!("{slug}-{count}");
        count += 1;
    }
    used.push(name.clone());
    name
}
