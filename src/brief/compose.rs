//! From what somebody filled in, key by key, to the text of a brief.
//!
//! Method: texts of the user stand in quotes wherever YAML could read them as something else; what was left empty is left out.
//! The text is read by the loader like any other, which judges it; nothing is checked here.
//! Limits: comments are not kept, since nobody fills them in.

/// What was filled in at one key.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Filled {
    /// A text of the user's own.
    Words(String),
    /// A quantity, a number or a word that the brief knows.
    Value(String),
    /// Texts, such as the names of axes.
    Texts(Vec<String>),
    /// Keys in their order.
    Group(Vec<(String, Filled)>),
    /// Groups one after the other.
    Rows(Vec<Filled>),
}

impl Filled {
    /// Whether there is nothing to write.
    pub fn is_empty(&self) -> bool {
        match self {
            Filled::Words(text) | Filled::Value(text) => text.is_empty(),
            Filled::Texts(texts) => texts.is_empty(),
            Filled::Group(keys) => keys.iter().all(|(_, filled)| filled.is_empty()),
            Filled::Rows(rows) => rows.iter().all(Filled::is_empty),
        }
    }
}

/// The keys as the text of a YAML file.
pub fn compose(keys: &[(String, Filled)]) -> String {
    let mut text = String::new();
    group(keys, 0, &mut text);
    text
}

fn group(keys: &[(String, Filled)], depth: usize, text: &mut String) {
    for (key, filled) in keys.iter().filter(|(_, filled)| !filled.is_empty()) {
        text.push_str(&"  ".repeat(depth));
        entry(key, filled, depth, text);
    }
}

/// One key from its name on; the blanks before it are there.
fn entry(key: &str, filled: &Filled, depth: usize, text: &mut String) {
    let key = words(key);
    match filled {
        Filled::Words(own) => text.push_str(&format!("{key}: {}\n", words(own))),
        Filled::Value(own) => text.push_str(&format!("{key}: {}\n", value(own))),
        Filled::Texts(own) => text.push_str(&format!("{key}: {}\n", list(own))),
        Filled::Group(keys) => {
            text.push_str(&format!("{key}:\n"));
            group(keys, depth + 1, text);
        }
        Filled::Rows(rows) => {
            text.push_str(&format!("{key}:\n"));
            for row in rows.iter().filter(|row| !row.is_empty()) {
                item(row, depth + 1, text);
            }
        }
    }
}

/// One item of a list: its first key stands behind the dash.
fn item(row: &Filled, depth: usize, text: &mut String) {
    let blanks = "  ".repeat(depth);
    match row {
        Filled::Group(keys) => {
            let filled = keys.iter().filter(|(_, filled)| !filled.is_empty());
            for (place, (key, filled)) in filled.enumerate() {
                text.push_str(&format!("{blanks}{}", if place == 0 { "- " } else { "  " }));
                entry(key, filled, depth + 1, text);
            }
        }
        Filled::Words(own) => text.push_str(&format!("{blanks}- {}\n", words(own))),
        Filled::Value(own) => text.push_str(&format!("{blanks}- {}\n", value(own))),
        Filled::Texts(own) => text.push_str(&format!("{blanks}- {}\n", list(own))),
        Filled::Rows(_) => {}
    }
}

/// Texts in brackets.
pub fn list(texts: &[String]) -> String {
    let items: Vec<String> = texts.iter().map(|text| words(text)).collect();
    format!("[{}]", items.join(", "))
}

/// A text as YAML: in quotes unless it is plain words that begin with a letter.
pub fn words(text: &str) -> String {
    let plain = |letter: char| letter.is_alphanumeric() || matches!(letter, ' ' | '-' | '_');
    let keyword =
        matches!(text.to_lowercase().as_str(), "true" | "false" | "null" | "yes" | "no" | "on" | "off" | "y" | "n");
    let bare = text.starts_with(char::is_alphabetic) && text.chars().all(plain) && !text.ends_with(' ') && !keyword;
    if bare { text.into() } else { quoted(text) }
}

/// A quantity, a number or a word as YAML.
pub fn value(text: &str) -> String {
    let plain = |letter: char| letter.is_alphanumeric() || " -+./²³·µ%°'".contains(letter);
    let begins = text.starts_with(|first: char| first.is_alphanumeric() || matches!(first, '-' | '+' | '.'));
    // a dash alone, or one before a blank, would begin a list
    let dash = text == "-" || text.starts_with("- ") || text.starts_with("---") || text.ends_with(' ');
    if begins && text.chars().all(plain) && !dash { text.into() } else { quoted(text) }
}

/// A JSON string is a YAML string, once the letters that YAML does not print are escaped.
fn quoted(text: &str) -> String {
    let json = serde_json::Value::String(text.into()).to_string();
    let escaped = |letter: char| match letter {
        '\u{7f}'..='\u{9f}' | '\u{2028}' | '\u{2029}' | '\u{feff}' | '\u{fffe}' | '\u{ffff}' => {
            format!("\\u{:04x}", u32::from(letter))
        }
        letter => letter.to_string(),
    };
    json.chars().map(escaped).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::yaml::{Document, Faults};

    fn read(text: &str, path: &[&str]) -> Option<String> {
        let mut faults = Faults::default();
        let document = Document::parse("test", text, &mut faults)?;
        let node = path.iter().try_fold(document.root(), |node, key| node.get(key))?;
        node.text(&mut faults)
    }

    #[test]
    fn what_somebody_wrote_is_read_again_as_it_was() {
        for text in
            ["Mould: \"big\" #1", "no", "1.5", "- dash", "a\u{85}b\u{2028}c", "tab\tand {brace}", "x: y", "ends ", "ü"]
        {
            let keys = vec![("machine".to_string(), Filled::Words(text.into()))];
            assert_eq!(read(&compose(&keys), &["machine"]).as_deref(), Some(text), "{text:?}");
        }
    }

    #[test]
    fn groups_and_rows_stand_below_their_key_and_empty_ones_are_left_out() {
        let row = |share: &str, stand: &str| {
            Filled::Group(vec![
                ("share".into(), Filled::Value(share.into())),
                ("stand".into(), Filled::Value(stand.into())),
            ])
        };
        let axis = Filled::Group(vec![
            ("travel".into(), Filled::Value("11 m".into())),
            ("carries".into(), Filled::Texts(vec!["cross".into(), "no".into()])),
            ("duty".into(), Filled::Rows(vec![row("70 %", ""), row("", ""), row("30 %", "true")])),
            ("purpose".into(), Filled::Words(String::new())),
        ]);
        let keys =
            vec![("limits".into(), Filled::Group(vec![])), ("axes".into(), Filled::Group(vec![("x y".into(), axis)]))];
        let wanted = "axes:\n  x y:\n    travel: 11 m\n    carries: [cross, \"no\"]\n    duty:\n      - share: 70 %\n      - share: 30 %\n        stand: true\n";
        assert_eq!(compose(&keys), wanted);
    }
}
