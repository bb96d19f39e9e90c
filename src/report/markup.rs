//! Text that lands in Markdown: escaping of what users wrote, code spans, and links to the glossary.
//!
//! Method: every text a template prints is escaped unless a filter marked it as finished. Words of the
//! trade are marked by [`term`] with three characters of Unicode's private use area; a last pass turns the
//! first mark of each word into a link and drops the others. A text of a user that holds such characters
//! can at worst give a link to the glossary.

const OPEN: char = '\u{e000}';
const MIDDLE: char = '\u{e001}';
const CLOSE: char = '\u{e002}';

/// Escapes a text so that Markdown shows it as it is, on one line, in a table cell too.
pub fn escape(text: &str) -> String {
    let mut out = String::with_capacity(text.len() + 8);
    let text = text.trim();
    for (index, character) in text.char_indices() {
        let first = index == 0;
        match character {
            '\\' | '`' | '*' | '_' | '[' | ']' | '<' | '>' | '#' | '~' | '&' | '|' => {
                out.push('\\');
                out.push(character);
            }
            '-' | '+' | '=' if first => {
                out.push('\\');
                out.push(character);
            }
            '.' | ')' if opens_a_list(&text[..index], &text[index + 1..]) => {
                out.push('\\');
                out.push(character);
            }
            character if character.is_control() => out.push(' '),
            character => out.push(character),
        }
    }
    out
}

/// "1. " and "1) " at the start of a line begin a numbered list.
fn opens_a_list(before: &str, after: &str) -> bool {
    let number = !before.is_empty() && before.len() < 10 && before.bytes().all(|byte| byte.is_ascii_digit());
    number && (after.is_empty() || after.starts_with(char::is_whitespace))
}

/// A code span that shows the text as it is, in a table cell.
pub fn code(text: &str) -> String {
    span(text).replace('|', "\\|")
}

/// A code span that shows the text as it is, outside of tables.
pub fn span(text: &str) -> String {
    let text: String = text.trim().chars().map(|c| if c.is_control() { ' ' } else { c }).collect();
    if text.is_empty() {
        return String::new();
    }
    let longest = text.split(|c| c != '`').map(str::len).max().unwrap_or(0);
    let fence = "`".repeat(longest + 1);
    let pad = if text.starts_with('`') || text.ends_with('`') { " " } else { "" };
    format!("{fence}{pad}{text}{pad}{fence}")
}

/// Marks words of the trade that the glossary explains under this slug.
pub fn term(slug: &str, words: &str) -> String {
    format!("{OPEN}{slug}{MIDDLE}{words}{CLOSE}")
}

/// Turns the first mark of each word that `explained` knows into a link, and the others into plain words.
///
/// Headings and what stands between code marks hold no links.
pub fn resolve(text: &str, explained: impl Fn(&str) -> bool) -> String {
    let mut linked: Vec<String> = Vec::new();
    let mut out = String::with_capacity(text.len());
    for line in text.split_inclusive('\n') {
        let heading = line.starts_with('#');
        let mut rest = line;
        while let Some(at) = rest.find([OPEN, MIDDLE, CLOSE]) {
            out.push_str(&rest[..at]);
            let mark = &rest[at..];
            match marked(mark) {
                Some((slug, words, after)) => {
                    if !heading && explained(slug) && !linked.iter().any(|known| known == slug) {
                        linked.push(slug.into());
                        out.push_str(&format!("[{words}](#{slug})"));
                    } else {
                        out.push_str(words);
                    }
                    rest = after;
                }
                None => rest = &mark[OPEN.len_utf8()..],
            }
        }
        out.push_str(rest);
    }
    out
}

/// The slug, the words and the rest of a mark that this text begins with.
fn marked(text: &str) -> Option<(&str, &str, &str)> {
    let (slug, rest) = text.strip_prefix(OPEN)?.split_once(MIDDLE)?;
    let (words, after) = rest.split_once(CLOSE)?;
    let sound = |part: &str| !part.contains([OPEN, MIDDLE, CLOSE, '\n']);
    (sound(slug) && sound(words)).then_some((slug, words, after))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_the_first_mark_of_a_word_becomes_a_link() {
        let text = format!("# {}\n{} and {}\n", term("lead", "lead"), term("lead", "lead"), term("lead", "leads"));
        assert_eq!(resolve(&text, |_| true), "# lead\n[lead](#lead) and leads\n");
        assert_eq!(resolve(&text, |_| false), "# lead\nlead and leads\n");
    }

    #[test]
    fn broken_marks_are_dropped() {
        assert_eq!(resolve("a\u{e000}b\u{e000}c\u{e001}d", |_| true), "abcd");
    }

    #[test]
    fn code_spans_hold_backticks_and_pipes() {
        assert_eq!(code("a`b"), "``a`b``");
        assert_eq!(code("|F|"), "`\\|F\\|`");
        assert_eq!(span("|F|"), "`|F|`");
    }
}
