//! What the program is built from: licences, versions, where each package comes from, the oldest Rust that builds it.
//!
//! Method: `cargo metadata` tells the resolved packages with their licences; `Cargo.lock` is read as text, since it holds
//! the packages of every platform. Nothing is fetched.
//! Limits: packages of other platforms that were never fetched here have no manifest to look into; how many is printed.

mod duplicates;
mod graph;
mod licence;
mod lock;
#[allow(dead_code)]
#[path = "../house/scan.rs"]
mod scan;

use graph::Graph;
use scan::{bare, files_below, line_of, read};
use std::path::Path;

#[test]
fn every_package_may_be_used_and_passed_on() {
    let (graph, in_tests) = (Graph::read(), licence::in_tests());
    let mut wrong = Vec::new();
    for package in &graph.packages {
        let allowed = if package.shipped { licence::SHIPPED } else { &in_tests };
        match licence::satisfied(&package.licence, allowed) {
            Ok(true) => {}
            Ok(false) => wrong.push(format!("{}: `{}` is not allowed", package.told(), package.licence)),
            Err(fault) => wrong.push(format!("{}: `{}`: {fault}", package.told(), package.licence)),
        }
    }
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
    let shipped = graph.packages.iter().filter(|package| package.shipped).count();
    assert!(shipped > 20 && shipped < graph.packages.len(), "{shipped} of {} packages", graph.packages.len());
    println!("{} packages seen, {shipped} of them in the program", graph.packages.len());
    println!("{} packages of other platforms were never fetched here", lock::packages().len() - graph.packages.len());
}

#[test]
fn every_allowed_licence_is_needed() {
    let graph = Graph::read();
    for allowed in licence::in_tests() {
        let used =
            graph.packages.iter().any(|package| licence::names(&package.licence).iter().any(|name| *name == *allowed));
        assert!(used, "no package names `{allowed}` any more; take it from the list");
    }
}

#[test]
fn what_is_there_in_two_versions_is_known_and_has_a_reason() {
    let found = lock::twice(&lock::packages());
    let listed = duplicates::listed();
    let mut wrong = Vec::new();
    for (name, versions) in &found {
        match listed.get(name.as_str()) {
            None => wrong.push(format!(
                "`{name}` is there as {versions:?}; list it with a reason, or update what asks for the older"
            )),
            Some(known) if known != versions => {
                wrong.push(format!("`{name}` is listed as {known:?} and there as {versions:?}"))
            }
            Some(_) => {}
        }
    }
    let gone = listed.keys().filter(|name| !found.contains_key(**name));
    wrong.extend(gone.map(|name| format!("`{name}` is there once only; take it from the list")));
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

#[test]
fn every_package_comes_from_the_registry_with_a_hash() {
    let (packages, of_mutants) = (lock::packages(), lock::packages_of_mutants());
    assert!(packages.len() > 100, "only {} packages were read from Cargo.lock", packages.len());
    assert!(of_mutants.len() > 5, "only {} packages of the mutants were read", of_mutants.len());
    for package in packages.into_iter().chain(of_mutants) {
        if package.name.starts_with(env!("CARGO_PKG_NAME")) {
            assert_eq!((package.source, package.checksum), (None, None), "the project itself");
            continue;
        }
        let source = package.source.as_deref();
        assert_eq!(source, Some("registry+https://github.com/rust-lang/crates.io-index"), "{}", package.name);
        let hash = package.checksum.unwrap_or_default();
        let sound = hash.len() == 64 && hash.bytes().all(|byte| byte.is_ascii_hexdigit());
        assert!(sound, "{} {} has no SHA-256: `{hash}`", package.name, package.version);
    }
}

#[test]
fn the_lock_file_is_the_one_that_the_manifest_asks_for() {
    // `--locked` refuses a lock file that would have to change
    assert!(!Graph::read().packages.is_empty());
    let ignored = std::fs::read_to_string(".gitignore").unwrap_or_default();
    assert!(!ignored.lines().any(|line| line.contains("Cargo.lock")), "Cargo.lock is kept with the project");
}

#[test]
fn the_oldest_rust_is_stated_alike_and_old_enough_for_no_package() {
    let oldest = env!("CARGO_PKG_RUST_VERSION");
    for page in ["README.md", "DEVELOPERS.md", "docs/first-steps.md"] {
        let stated = stated(&read(Path::new(page)));
        assert!(!stated.is_empty(), "{page} does not say which Rust is needed");
        assert!(stated.iter().all(|version| version == oldest), "{page} says {stated:?}, Cargo.toml says {oldest}");
    }
    let ours = graph::version(oldest);
    for package in Graph::read().packages {
        let theirs = package.rust.as_deref().map(graph::version).unwrap_or_default();
        assert!(theirs <= ours, "{} needs Rust {:?}, this project promises {oldest}", package.told(), package.rust);
    }
}

/// The versions before "or newer".
fn stated(text: &str) -> Vec<String> {
    let ends = text.match_indices(" or newer").map(|(at, _)| at);
    let version = |end: usize| {
        let digit = |letter: char| letter.is_ascii_digit() || letter == '.';
        let begin = text[..end].rfind(|letter| !digit(letter)).map_or(0, |at| at + 1);
        text[begin..end].to_string()
    };
    ends.map(version).filter(|version| version.contains('.')).collect()
}

#[test]
fn no_code_of_the_project_is_unsafe() {
    for root in ["src/lib.rs", "src/main.rs", "src/build.rs"] {
        let code = bare(&read(Path::new(root)));
        assert!(code.contains("#![forbid(unsafe_code)]"), "{root} does not forbid unsafe code");
    }
    let mut wrong = Vec::new();
    for path in files_below("src", "rs").iter().chain(&files_below("tests", "rs")) {
        let code = bare(&read(path));
        for at in whole_words(&code, "unsafe") {
            wrong.push(format!("{}:{}", path.display(), line_of(&code, at)));
        }
    }
    assert!(wrong.is_empty(), "unsafe code:\n{}", wrong.join("\n"));
}

/// Where a word stands alone in a code.
fn whole_words(code: &str, word: &str) -> Vec<usize> {
    let of_word = |letter: char| letter.is_alphanumeric() || letter == '_';
    let alone = |at: &usize| !code[..*at].ends_with(of_word) && !code[at + word.len()..].starts_with(of_word);
    code.match_indices(word).map(|(at, _)| at).filter(alone).collect()
}

#[test]
fn a_word_is_found_only_where_it_stands_alone() {
    assert_eq!(whole_words("unsafe fn; unsafe_code; not_unsafe; {unsafe}", "unsafe"), [0, 37]);
    assert_eq!(stated("Rust (1.88 or newer), 2 or newer, version 1.90.1 or newer"), ["1.88", "1.90.1"]);
}
