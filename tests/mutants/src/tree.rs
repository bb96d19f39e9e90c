//! The copy of the project, and what is planted into it.

use crate::plant::{Mutant, Planter, is_test};
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use syn::visit_mut::VisitMut;

/// Where the switches are read.
const SWITCH: &str = "src/mutant.rs";

/// What is not copied.
const NOT_COPIED: &[&str] = &[".git", "target"];

/// Every file below a folder, in order, with its path from there.
pub fn files(folder: &Path) -> Vec<PathBuf> {
    fn gather(folder: &Path, below: &Path, found: &mut Vec<PathBuf>) {
        let mut entries: Vec<_> =
            std::fs::read_dir(folder).expect("a folder").map(|entry| entry.expect("an entry")).collect();
        entries.sort_by_key(|entry| entry.file_name());
        for entry in entries {
            let name = entry.file_name();
            if NOT_COPIED.iter().any(|left| name == *left) {
                continue;
            }
            let path = below.join(&name);
            if entry.file_type().expect("a type").is_dir() {
                gather(&entry.path(), &path, found);
            } else {
                found.push(path);
            }
        }
    }
    let mut found = Vec::new();
    gather(folder, Path::new(""), &mut found);
    found
}

/// Writes only what differs, so that nothing is built again in vain.
fn write(path: &Path, content: &[u8]) {
    if std::fs::read(path).is_ok_and(|there| there == content) {
        return;
    }
    std::fs::create_dir_all(path.parent().expect("a folder")).expect("a folder");
    std::fs::write(path, content).expect("a file");
}

fn in_a_room(path: &Path, rooms: &[&str]) -> bool {
    path.extension().is_some_and(|ending| ending == "rs")
        && rooms.iter().any(|room| path.starts_with(Path::new("src").join(room)))
}

/// Removes what the project has no more.
fn clear(tree: &Path, kept: &[PathBuf]) {
    for path in files(tree).into_iter().filter(|path| !kept.contains(path) && path != Path::new(SWITCH)) {
        std::fs::remove_file(tree.join(path)).expect("a file that may be removed");
    }
}

/// Copies the project with all mutants of these rooms but those that are left out.
pub fn copy(project: &Path, tree: &Path, rooms: &[&str], left_out: &BTreeSet<u32>) -> Vec<Mutant> {
    let mut mutants = Vec::new();
    let all = files(project);
    clear(tree, &all);
    for path in all {
        if path.starts_with("tests/mutants") {
            continue;
        }
        let content = std::fs::read(project.join(&path)).expect("a file");
        if in_a_room(&path, rooms) {
            let text = String::from_utf8(content).expect("text");
            let mut file = syn::parse_file(&text).expect("Rust");
            if file.attrs.iter().any(is_test) {
                write(&tree.join(&path), text.as_bytes());
                continue;
            }
            Planter::new(&path.to_string_lossy(), &mut mutants, left_out).visit_file_mut(&mut file);
            write(&tree.join(&path), prettyplease::unparse(&file).as_bytes());
        } else if path == Path::new("src/lib.rs") {
            let text = String::from_utf8(content).expect("text");
            let text = text.replacen("pub mod acceptance;", "#[doc(hidden)]\npub mod mutant;\npub mod acceptance;", 1);
            write(&tree.join(&path), text.as_bytes());
        } else {
            write(&tree.join(&path), &content);
        }
    }
    write(&tree.join(SWITCH), include_bytes!("switch.rs"));
    mutants
}
