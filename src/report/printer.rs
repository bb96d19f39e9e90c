//! Templates as Markdown: read once, printed often.
//!
//! Method: every text is escaped for Markdown unless the report made it; lines are tidied.
//! Limits: the templates are part of the program, so one that cannot be read or cannot print a view is a fault of the program.

use super::{markup, words};
use minijinja::syntax::SyntaxConfig;
use minijinja::value::{Serde, Value};
use minijinja::{AutoEscape, Environment, Error, UndefinedBehavior};
use serde::Serialize;

/// Templates that are ready to print.
pub struct Printer {
    environment: Environment<'static>,
    first: &'static str,
}

impl Printer {
    /// Reads built-in templates, each with its name; the first one is the document, it may include the others.
    pub fn new(templates: &[(&'static str, &'static str)]) -> Printer {
        let first = templates.first().map_or("", |(name, _)| *name);
        Printer { environment: read(templates).expect("the built-in templates can be read"), first }
    }

    /// The document, its lines tidied.
    pub fn document(&self, view: &impl Serialize) -> String {
        tidy(&self.printed(view))
    }

    /// The document as the templates lay it out.
    pub(super) fn printed(&self, view: &impl Serialize) -> String {
        let template = self.environment.get_template(self.first).expect("the template is in the list");
        template.render(Value::from(Serde(view))).expect("the built-in templates print every view")
    }
}

fn read(templates: &[(&'static str, &'static str)]) -> Result<Environment<'static>, Error> {
    let mut environment = Environment::new();
    environment.set_undefined_behavior(UndefinedBehavior::Strict);
    environment.set_syntax(SyntaxConfig::builder().trim_blocks(true).lstrip_blocks(true).build()?);
    environment.set_auto_escape_callback(|_| AutoEscape::Custom("markdown".into()));
    environment.set_formatter(|out, _, value| {
        let text = match value.as_str() {
            Some(text) if value.is_safe() => text.to_string(),
            Some(text) => markup::escape(text),
            None => value.to_string(),
        };
        out.write_str(&text).map_err(Error::from)
    });
    environment.add_filter("code", |text: String| Value::from_safe_string(markup::code(&text)));
    environment.add_filter("span", |text: String| Value::from_safe_string(markup::span(&text)));
    environment.add_filter("verbatim", |text: String| Value::from_safe_string(text));
    environment.add_filter("term", |words: String, slug: String| Value::from_safe_string(markup::term(&slug, &words)));
    environment.add_filter("sentence", |text: String| words::sentence(&text));
    for (name, source) in templates {
        environment.add_template(name, source)?;
    }
    Ok(environment)
}

/// No blanks at line ends, one empty line before a heading and never two in a row, one line end at the end.
pub(super) fn tidy(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut empty = true;
    for line in text.lines().map(str::trim_end) {
        if line.is_empty() && empty {
            continue;
        }
        if line.starts_with('#') && !empty {
            out.push('\n');
        }
        empty = line.is_empty();
        out.push_str(line);
        out.push('\n');
    }
    out.truncate(out.trim_end().len());
    out.push('\n');
    out
}
