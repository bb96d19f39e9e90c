//! Reading rule files: one file a rule, its id the name of the file.
//!
//! Method: every fault of every file is collected, each at its place. A rule is taken only when it is whole:
//! reason, remedy, source, an example that passes and one that fails, and every example comes out as the file says.
//! Later folders add rules, or replace rules of the same id whole.

use super::read::rule;
use super::{Rule, Rulebook};
use crate::yaml::{Document, Faults, read_text};
use include_dir::{Dir, include_dir};
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

static BUILT_IN: Dir<'static> = include_dir!("$CARGO_MANIFEST_DIR/rules");

/// One file: the name told in messages, the name kept in the rulebook, and its text.
struct File {
    told: String,
    kept: String,
    text: String,
}

/// The built-in rules, with the rules of further folders added or put in place of those of the same id.
pub fn load(extra: &[PathBuf]) -> Result<Rulebook, Faults> {
    let mut faults = Faults::default();
    let mut shelf = Shelf::default();
    shelf.add(built_in(), &mut faults);
    for folder in extra {
        let files = files_of(folder, &mut faults);
        shelf.add(files, &mut faults);
    }
    shelf.into_book(faults)
}

/// The built-in rules, with these texts (name of the file, content) added or put in place of those of the same id.
pub fn load_texts(texts: Vec<(String, String)>) -> Result<Rulebook, Faults> {
    let mut faults = Faults::default();
    let mut shelf = Shelf::default();
    shelf.add(built_in(), &mut faults);
    let files = texts.into_iter().map(|(name, text)| File { told: name.clone(), kept: name, text }).collect();
    shelf.add(files, &mut faults);
    shelf.into_book(faults)
}

/// The rules by id, each with the file it was read from.
#[derive(Default)]
struct Shelf {
    rules: BTreeMap<String, (Rule, (String, String))>,
}

impl Shelf {
    /// Adds the files of one folder.
    fn add(&mut self, mut files: Vec<File>, faults: &mut Faults) {
        files.sort_by(|one, other| one.told.cmp(&other.told));
        let mut seen: BTreeMap<String, String> = BTreeMap::new();
        for file in files {
            let Some(document) = Document::parse(&file.told, &file.text, faults) else { continue };
            let id = id_of(&file.told);
            if let Some(first) = seen.insert(id.clone(), file.told.clone()) {
                document.root().fault(
                    faults,
                    format!("the rule `{id}` is in this folder twice; it is also in {first}"),
                    None,
                );
            }
            if let Some(rule) = rule(&id, &document, faults) {
                self.rules.insert(id, (rule, (file.kept, file.text)));
            }
        }
    }

    fn into_book(self, faults: Faults) -> Result<Rulebook, Faults> {
        if !faults.is_empty() {
            return Err(faults);
        }
        let (rules, files) = self.rules.into_values().unzip();
        Ok(Rulebook { rules, files })
    }
}

fn built_in() -> Vec<File> {
    BUILT_IN
        .files()
        .filter_map(|file| {
            let name = format!("rules/{}", file.path().file_name()?.to_str()?);
            is_rule_file(file.path()).then_some(())?;
            Some(File { told: name.clone(), kept: name, text: file.contents_utf8()?.to_string() })
        })
        .collect()
}

/// The rule files of a folder, without those of folders in it.
fn files_of(folder: &Path, faults: &mut Faults) -> Vec<File> {
    let entries = match std::fs::read_dir(folder) {
        Ok(entries) => entries,
        Err(error) => {
            faults.missing_file(&folder.display().to_string(), &error);
            return Vec::new();
        }
    };
    let mut files = Vec::new();
    for entry in entries {
        let path = match entry {
            Ok(entry) => entry.path(),
            Err(error) => {
                faults.missing_file(&folder.display().to_string(), &error);
                continue;
            }
        };
        if !is_rule_file(&path) || path.is_dir() {
            continue;
        }
        let told = path.display().to_string();
        if let Some(text) = read_text(&path, &told, faults) {
            files.push(File { kept: short_name(&path), told, text });
        }
    }
    files
}

fn is_rule_file(path: &Path) -> bool {
    path.extension().is_some_and(|extension| extension == "yaml" || extension == "yml")
}

/// The file with the folder it is in, so that no path of a machine gets into a record.
fn short_name(path: &Path) -> String {
    let last = |path: &Path| path.file_name().map(|name| name.to_string_lossy().into_owned());
    match (path.parent().and_then(last), last(path)) {
        (Some(folder), Some(file)) => format!("{folder}/{file}"),
        (None, Some(file)) => file,
        _ => String::new(),
    }
}

/// The name of the file without folder and ending.
fn id_of(name: &str) -> String {
    Path::new(name).file_stem().map(|stem| stem.to_string_lossy().into_owned()).unwrap_or_default()
}
