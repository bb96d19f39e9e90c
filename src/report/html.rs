//! The report as one self-contained HTML page: no script, nothing fetched, prints on A4 and Letter.
//!
//! Method: pulldown-cmark turns the Markdown into HTML. Headings get the ids that the links of the document
//! name; raw HTML becomes text and only links inside the document stay links, so that nothing a user wrote
//! can become markup.
//! Limits: no charts; wide worksheets scroll on a screen and shrink in print.

use pulldown_cmark::{Event, HeadingLevel, Options, Parser, Tag, TagEnd, html};

const STYLE: &str = include_str!("templates/page.css");

/// The page made of a report in Markdown.
pub fn page(title: &str, markdown: &str) -> String {
    let events = Parser::new_ext(markdown, Options::ENABLE_TABLES);
    let mut body = String::with_capacity(markdown.len() * 2);
    html::push_html(&mut body, with_ids(events.map(harmless).collect()).into_iter());
    let body = body.replace("<table>", "<div class=\"wide\"><table>").replace("</table>", "</table></div>");
    let mut name = String::new();
    html::push_html(&mut name, std::iter::once(Event::Text(title.into())));
    format!(
        "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n\
         <title>{name}</title>\n<style>\n{STYLE}</style>\n</head>\n<body>\n<main>\n{body}</main>\n</body>\n</html>\n"
    )
}

/// Raw HTML as text, links that lead out of the document as plain words.
fn harmless(event: Event<'_>) -> Event<'_> {
    match event {
        Event::Html(raw) | Event::InlineHtml(raw) => Event::Text(raw),
        Event::Start(Tag::Link { ref dest_url, .. }) if !dest_url.starts_with('#') => Event::Text("".into()),
        Event::Start(Tag::Image { .. }) | Event::End(TagEnd::Image) => Event::Text("".into()),
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
