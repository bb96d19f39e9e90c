//! A report taken apart into what Markdown makes of it.

use pulldown_cmark::{Event, HeadingLevel, Options, Parser, Tag, TagEnd};

/// A heading, a table, a list item or a paragraph.
#[derive(Debug, Clone, PartialEq)]
pub enum Block {
    Heading(HeadingLevel, String),
    Table(Vec<Vec<String>>),
    Item(String),
    Paragraph(String),
}

/// The blocks in order, the targets of the links in order, and whether any raw HTML came through.
#[derive(Debug, Default)]
pub struct Reading {
    pub blocks: Vec<Block>,
    pub links: Vec<String>,
    pub html: Vec<String>,
}

pub fn read(markdown: &str) -> Reading {
    let mut reading = Reading::default();
    let mut text = String::new();
    let mut rows: Vec<Vec<String>> = Vec::new();
    let mut row: Vec<String> = Vec::new();
    let mut in_item = false;
    for event in Parser::new_ext(markdown, Options::ENABLE_TABLES | Options::ENABLE_STRIKETHROUGH) {
        match event {
            Event::Start(Tag::Heading { .. } | Tag::TableCell) => text.clear(),
            Event::Start(Tag::Item) => {
                in_item = true;
                text.clear();
            }
            Event::Start(Tag::Paragraph) if !in_item => text.clear(),
            Event::Start(Tag::Link { dest_url, .. }) => reading.links.push(dest_url.to_string()),
            Event::Text(part) | Event::Code(part) => text.push_str(&part),
            Event::SoftBreak | Event::HardBreak => text.push(' '),
            Event::Html(part) | Event::InlineHtml(part) => reading.html.push(part.to_string()),
            Event::End(TagEnd::Heading(level)) => {
                reading.blocks.push(Block::Heading(level, std::mem::take(&mut text)));
            }
            Event::End(TagEnd::TableCell) => row.push(std::mem::take(&mut text)),
            Event::End(TagEnd::TableHead | TagEnd::TableRow) => rows.push(std::mem::take(&mut row)),
            Event::End(TagEnd::Table) => reading.blocks.push(Block::Table(std::mem::take(&mut rows))),
            Event::End(TagEnd::Item) => {
                in_item = false;
                reading.blocks.push(Block::Item(std::mem::take(&mut text)));
            }
            Event::End(TagEnd::Paragraph) if !in_item => {
                reading.blocks.push(Block::Paragraph(std::mem::take(&mut text)));
            }
            _ => {}
        }
    }
    reading
}

impl Reading {
    /// The headings of a level, in order.
    pub fn headings(&self, level: HeadingLevel) -> Vec<&str> {
        let of = |block: &'_ Block| matches!(block, Block::Heading(found, _) if *found == level);
        self.blocks
            .iter()
            .filter(|block| of(block))
            .filter_map(|block| match block {
                Block::Heading(_, text) => Some(text.as_str()),
                _ => None,
            })
            .collect()
    }

    /// The blocks between the heading that begins with this text and the next of its level or above.
    pub fn under(&self, heading: &str) -> &[Block] {
        let at = self
            .blocks
            .iter()
            .position(|block| matches!(block, Block::Heading(_, text) if text.starts_with(heading)))
            .unwrap_or_else(|| panic!("no heading begins with `{heading}`"));
        let Block::Heading(level, _) = &self.blocks[at] else { unreachable!() };
        let rest = &self.blocks[at + 1..];
        let end = rest
            .iter()
            .position(|block| matches!(block, Block::Heading(found, _) if found <= level))
            .unwrap_or(rest.len());
        &rest[..end]
    }

    /// The tables under a heading.
    pub fn tables_under(&self, heading: &str) -> Vec<&Vec<Vec<String>>> {
        self.under(heading)
            .iter()
            .filter_map(|block| match block {
                Block::Table(rows) => Some(rows),
                _ => None,
            })
            .collect()
    }

    /// The items under a heading.
    pub fn items_under(&self, heading: &str) -> Vec<&str> {
        self.under(heading)
            .iter()
            .filter_map(|block| match block {
                Block::Item(text) => Some(text.as_str()),
                _ => None,
            })
            .collect()
    }
}

/// The target that common viewers make of a heading: small letters, hyphens for blanks, no punctuation.
pub fn slug(heading: &str) -> String {
    let kept = |character: char| match character {
        ' ' => Some('-'),
        '-' | '_' => Some(character),
        character if character.is_alphanumeric() => character.to_lowercase().next(),
        _ => None,
    };
    heading.chars().filter_map(kept).collect()
}
