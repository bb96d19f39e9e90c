//! Licence expressions: read as SPDX writes them, and held against a list.
//!
//! Method: SPDX specification 2.3, annex D: `WITH` binds first, then `AND`, then `OR`; brackets group. Older manifests
//! part alternatives by `/`, which cargo documents as `OR`. Limits: `+` behind a name is part of the name.

/// What may be in the program that is passed on: a notice is all that these ask for, or nothing.
pub const SHIPPED: &[&str] = &[
    "MIT",
    "Apache-2.0",
    "Apache-2.0 WITH LLVM-exception",
    "BSD-2-Clause",
    "BSD-3-Clause",
    "BSL-1.0",
    "CC0-1.0",
    "ISC",
    "MIT-0",
    "Unicode-3.0",
    "Unlicense",
    "Zlib",
];

/// What tests may use beside: changes to files under it would have to be published, and nothing of them is passed on.
const IN_TESTS: &str = "MPL-2.0";

/// Everything that tests may use.
pub fn in_tests() -> Vec<&'static str> {
    SHIPPED.iter().copied().chain([IN_TESTS]).collect()
}

/// Whether an expression can be satisfied by licences of the list alone; what is no expression is an error.
pub fn satisfied(expression: &str, allowed: &[&str]) -> Result<bool, String> {
    let words = words(expression);
    let mut rest = words.as_slice();
    let answer = either(&mut rest, allowed)?;
    match rest.first() {
        None => Ok(answer),
        Some(word) => Err(format!("`{word}` does not fit")),
    }
}

/// The licences that an expression names, each with its exception.
pub fn names(expression: &str) -> Vec<String> {
    let words = words(expression);
    let mut names: Vec<String> = Vec::new();
    let mut joins = false;
    for word in words {
        match word.as_str() {
            "(" | ")" | "OR" | "AND" => {}
            "WITH" => joins = true,
            _ if joins => {
                joins = false;
                if let Some(name) = names.last_mut() {
                    name.push_str(&format!(" WITH {word}"));
                }
            }
            _ => names.push(word),
        }
    }
    names
}

fn words(expression: &str) -> Vec<String> {
    let spaced = expression.replace('(', " ( ").replace(')', " ) ").replace('/', " OR ");
    spaced.split_whitespace().map(String::from).collect()
}

fn take(rest: &mut &[String], word: &str) -> bool {
    let found = rest.first().is_some_and(|first| first == word);
    if found {
        *rest = &rest[1..];
    }
    found
}

fn either(rest: &mut &[String], allowed: &[&str]) -> Result<bool, String> {
    let mut answer = both(rest, allowed)?;
    while take(rest, "OR") {
        // every part is read, whatever the ones before it gave
        answer |= both(rest, allowed)?;
    }
    Ok(answer)
}

fn both(rest: &mut &[String], allowed: &[&str]) -> Result<bool, String> {
    let mut answer = single(rest, allowed)?;
    while take(rest, "AND") {
        answer &= single(rest, allowed)?;
    }
    Ok(answer)
}

fn single(rest: &mut &[String], allowed: &[&str]) -> Result<bool, String> {
    if take(rest, "(") {
        let answer = either(rest, allowed)?;
        return if take(rest, ")") { Ok(answer) } else { Err("a bracket is not closed".into()) };
    }
    let mut name = name(rest)?;
    if take(rest, "WITH") {
        name = format!("{name} WITH {}", self::name(rest)?);
    }
    Ok(allowed.contains(&name.as_str()))
}

fn name(rest: &mut &[String]) -> Result<String, String> {
    match rest.split_first() {
        Some((word, others)) if !["(", ")", "OR", "AND", "WITH"].contains(&word.as_str()) => {
            *rest = others;
            Ok(word.clone())
        }
        Some((word, _)) => Err(format!("`{word}` stands where a licence is expected")),
        None => Err("the expression ends where a licence is expected".into()),
    }
}

#[test]
fn and_binds_before_or_and_brackets_before_both() {
    let allowed = ["A", "B", "A WITH X"];
    let yes = [
        "A",
        "C OR A",
        "A OR C",
        "A/C",
        "C / A",
        "A AND B",
        "C AND D OR A",
        "A OR C AND D",
        "A AND (C OR B)",
        "A WITH X",
    ];
    for expression in yes {
        assert_eq!(satisfied(expression, &allowed), Ok(true), "{expression}");
    }
    let no = ["C", "A AND C", "C AND A", "(A OR B) AND C", "A WITH Y", "B WITH X", "C WITH X OR D", "a"];
    for expression in no {
        assert_eq!(satisfied(expression, &allowed), Ok(false), "{expression}");
    }
    for expression in ["", "A OR", "AND A", "(A", "A)", "A B", "A WITH", "()", "A WITH (X)"] {
        assert!(satisfied(expression, &allowed).is_err(), "{expression}");
    }
    assert_eq!(names("(A WITH X OR B/C) AND D"), ["A WITH X", "B", "C", "D"]);
}
