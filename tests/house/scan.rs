//! Reading source files as a person does who looks only at the code: comments, texts and tests are left out.

use std::fs;
use std::path::{Path, PathBuf};

/// Every file below a folder whose name ends so, in order.
pub fn files_below(folder: &str, ending: &str) -> Vec<PathBuf> {
    let mut found = Vec::new();
    let mut open = vec![PathBuf::from(folder)];
    while let Some(folder) = open.pop() {
        let Ok(entries) = fs::read_dir(&folder) else { continue };
        for path in entries.map(|entry| entry.expect("an entry").path()) {
            if path.is_dir() {
                // what a project below the tests has built is none of the house's
                open.extend((!path.ends_with("mutants/target") && !path.ends_with("fuzz/target")).then_some(path));
            } else if path.extension().is_some_and(|extension| extension == ending) {
                found.push(path);
            }
        }
    }
    found.sort();
    found
}

/// The text of a file.
pub fn read(path: &Path) -> String {
    fs::read_to_string(path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// The code with comments, texts and characters blanked; every line stays where it is.
pub fn bare(code: &str) -> String {
    let letters: Vec<char> = code.chars().collect();
    let at = |index: usize| letters.get(index).copied().unwrap_or('\0');
    let mut out = String::with_capacity(code.len());
    let mut index = 0;
    while index < letters.len() {
        let begin = index;
        let after_word = begin > 0 && (letters[begin - 1].is_alphanumeric() || letters[begin - 1] == '_');
        let mut hashes = 0;
        if at(index) == '/' && at(index + 1) == '/' {
            while index < letters.len() && at(index) != '\n' {
                index += 1;
            }
        } else if at(index) == '/' && at(index + 1) == '*' {
            let mut depth = 0;
            loop {
                match (at(index), at(index + 1)) {
                    ('/', '*') => (depth, index) = (depth + 1, index + 2),
                    ('*', '/') => (depth, index) = (depth - 1, index + 2),
                    _ => index += 1,
                }
                if depth == 0 || index >= letters.len() {
                    break;
                }
            }
        } else if !after_word && at(index) == 'r' && {
            while at(index + 1 + hashes) == '#' {
                hashes += 1;
            }
            at(index + 1 + hashes) == '"'
        } {
            index += hashes + 2;
            while index < letters.len() && !(at(index) == '"' && (1..=hashes).all(|further| at(index + further) == '#'))
            {
                index += 1;
            }
            index += hashes + 1;
        } else if at(index) == '"' {
            index += 1;
            while index < letters.len() && at(index) != '"' {
                index += if at(index) == '\\' { 2 } else { 1 };
            }
            index += 1;
        } else if at(index) == '\'' && (at(index + 1) == '\\' || at(index + 2) == '\'') {
            index += if at(index + 1) == '\\' { 3 } else { 2 };
            while index < letters.len() && at(index) != '\'' {
                index += 1;
            }
            index += 1;
        }
        if index == begin {
            out.push(letters[index]);
            index += 1;
        } else {
            let skipped = &letters[begin..index.min(letters.len())];
            out.extend(skipped.iter().map(|letter| if *letter == '\n' { '\n' } else { ' ' }));
        }
    }
    out
}

/// The bare code without what stands under `#[cfg(test)]`; nothing of a file that stands under it as a whole.
pub fn without_tests(bare: &str) -> String {
    if bare.trim_start().starts_with("#![cfg(test)]") {
        return bare.chars().filter(|letter| *letter == '\n').collect();
    }
    let mut out = bare.to_string();
    while let Some(begin) = out.find("#[cfg(test)]") {
        let rest = &out[begin..];
        let end = match (rest.find('{'), rest.find(';')) {
            (Some(brace), semicolon) if semicolon.is_none_or(|semicolon| brace < semicolon) => {
                let mut depth = 0;
                rest.char_indices()
                    .skip_while(|(index, _)| *index < brace)
                    .find_map(|(index, letter)| {
                        depth += i32::from(letter == '{') - i32::from(letter == '}');
                        (depth == 0).then_some(index + 1)
                    })
                    .unwrap_or(rest.len())
            }
            (_, Some(semicolon)) => semicolon + 1,
            _ => rest.len(),
        };
        let blank: String = rest[..end].chars().map(|letter| if letter == '\n' { '\n' } else { ' ' }).collect();
        out.replace_range(begin..begin + end, &blank);
    }
    out
}

/// The line of a place in a text, from 1.
pub fn line_of(code: &str, index: usize) -> usize {
    code[..index].matches('\n').count() + 1
}

/// Whether a letter may be part of a name.
pub fn is_word(letter: char) -> bool {
    letter.is_alphanumeric() || letter == '_'
}

/// The name that a text begins with, blanks aside.
pub fn first_word(text: &str) -> &str {
    let text = text.trim_start();
    &text[..text.find(|letter: char| !is_word(letter)).unwrap_or(text.len())]
}

/// The first names of what follows a path: one name, or those of a group in braces.
pub fn names_after(rest: &str) -> Vec<String> {
    let rest = rest.trim_start();
    if !rest.starts_with('{') {
        return vec![first_word(rest).to_string()];
    }
    let (mut names, mut depth, mut fresh) = (Vec::new(), 0, false);
    for (index, letter) in rest.char_indices() {
        match letter {
            '{' => (depth, fresh) = (depth + 1, depth == 0),
            '}' => depth -= 1,
            ',' if depth == 1 => fresh = true,
            letter if fresh && !letter.is_whitespace() => {
                names.push(first_word(&rest[index..]).to_string());
                fresh = false;
            }
            _ => {}
        }
        if depth == 0 {
            break;
        }
    }
    names
}

#[test]
fn comments_texts_and_characters_are_blanked_and_lines_kept() {
    let code = "a // b\n/* c /* d */ e */f\n\"g // h\" i r#\"j\"k\"# l '\"' m 'x n \"o\\\"p\" '\\'' q";
    let bared = bare(code);
    assert_eq!(bared.lines().count(), code.lines().count());
    assert_eq!(bared.split_whitespace().collect::<Vec<_>>(), ["a", "f", "i", "l", "m", "'x", "n", "q"]);
}

#[test]
fn what_stands_under_a_test_attribute_is_left_out() {
    let code = "a\n#[cfg(test)]\nmod tests { fn b() { c } }\nd\n#[cfg(test)]\nuse e;\nf";
    let left = without_tests(code);
    assert_eq!(left.split_whitespace().collect::<Vec<_>>(), ["a", "d", "f"]);
    assert_eq!(line_of(&left, left.find('f').expect("it is left")), 7);
    assert_eq!(without_tests("\n#![cfg(test)]\nuse a::b;"), "\n\n");
}

#[test]
fn a_group_of_paths_gives_the_first_name_of_each() {
    assert_eq!(names_after("units::Length;"), ["units"]);
    assert_eq!(names_after("{units::{Length, Mass}, source,\n ledger::*};"), ["units", "source", "ledger"]);
}
