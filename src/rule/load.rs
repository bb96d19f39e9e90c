//! Reading the files of a folder of rules: one file a rule, and below `cautions/` one file a caution; the id is the name.
//!
//! Method: every fault of every file is collected, each at its place. A rule is taken only when it is whole:
//! reason, remedy, source, an example that passes and one that fails, and every example comes out as the file says.
//! Later folders add rules and cautions, or replace those of the same id whole.

use super::caution_read::caution;
use super::read::rule;
use super::{Caution, Rule, Rulebook};
use crate::yaml::{Document, Fault, Faults, read_text};
use include_dir::{Dir, include_dir};
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

/// The folder of cautions in a folder of rules.
const CAUTIONS: &str = "cautions";

static BUILT_IN: Dir<'static> = include_dir!("$CARGO_MANIFEST_DIR/rules");

/// One file: what it holds, the name told in messages, the name kept in the rulebook, and its text.
struct File {
    holds: Holds,
    told: String,
    kept: String,
    text: String,
}

/// What a file holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Holds {
    Rule,
    Caution,
}

/// The built-in rules, with the rules of further folders added or put in place of those of the same id.
pub fn load(extra: &[PathBuf]) -> Result<Rulebook, Faults> {
    let mut faults = Faults::default();
    let mut shelves = Shelves::default();
    shelves.add(built_in_files(), &mut faults);
    for folder in extra {
        let mut files = files_of(folder, Holds::Rule, short_name, &mut faults);
        let below = folder.join(CAUTIONS);
        if below.is_dir() {
            files.extend(files_of(&below, Holds::Caution, name_below, &mut faults));
        }
        if files.is_empty() && faults.is_empty() {
            let help = "files of rules end in .yaml; those of cautions stand in a folder cautions";
            let message = "there is no rule and no caution in this folder";
            faults.push(Fault::of_file(&folder.display().to_string(), message, Some(help.into())));
        }
        shelves.add(files, &mut faults);
    }
    shelves.into_book(faults)
}

/// The built-in rules, with these texts (name of the file, content) added or put in place of those of the same id; a
/// file directly below a folder `cautions` holds a caution.
pub fn load_texts(texts: Vec<(String, String)>) -> Result<Rulebook, Faults> {
    let mut faults = Faults::default();
    let mut shelves = Shelves::default();
    shelves.add(built_in_files(), &mut faults);
    let file = |(name, text): (String, String)| {
        let below = Path::new(&name).parent().and_then(Path::file_name).is_some_and(|folder| folder == CAUTIONS);
        let holds = if below { Holds::Caution } else { Holds::Rule };
        File { holds, told: name.clone(), kept: name, text }
    };
    shelves.add(texts.into_iter().map(file).collect(), &mut faults);
    shelves.into_book(faults)
}

/// These rules and cautions (name of the file, content) and no others, as a record keeps them.
pub fn load_only(rules: Vec<(String, String)>, cautions: Vec<(String, String)>) -> Result<Rulebook, Faults> {
    let mut faults = Faults::default();
    let mut shelves = Shelves::default();
    let file = |holds| move |(name, text): (String, String)| File { holds, told: name.clone(), kept: name, text };
    let cautions = cautions.into_iter().map(file(Holds::Caution));
    shelves.add(rules.into_iter().map(file(Holds::Rule)).chain(cautions).collect(), &mut faults);
    shelves.into_book(faults)
}

/// By id, each with the file it was read from.
type Shelf<T> = BTreeMap<String, (T, (String, String))>;

/// Rules and cautions.
#[derive(Default)]
struct Shelves {
    rules: Shelf<Rule>,
    cautions: Shelf<Caution>,
}

impl Shelves {
    /// Adds the files of one folder.
    fn add(&mut self, mut files: Vec<File>, faults: &mut Faults) {
        files.sort_by(|one, other| one.told.cmp(&other.told));
        let mut seen: BTreeMap<(bool, String), String> = BTreeMap::new();
        for file in files {
            let Some(document) = Document::parse(&file.told, &file.text, faults) else { continue };
            let id = id_of(&file.told);
            if let Some(first) = seen.insert((file.holds == Holds::Rule, id.clone()), file.told.clone()) {
                let what = match file.holds {
                    Holds::Rule => "rule",
                    Holds::Caution => "caution",
                };
                let message = format!("the {what} `{id}` is in this folder twice; it is also in {first}");
                document.root().fault(
                    faults,
                    message,
                    Some("keep one of the two files, or give one another name".into()),
                );
            }
            let from = (file.kept, file.text);
            match file.holds {
                Holds::Rule => put(&mut self.rules, id.clone(), rule(&id, &document, faults), from),
                Holds::Caution => put(&mut self.cautions, id.clone(), caution(&id, &document, faults), from),
            }
        }
    }

    fn into_book(self, faults: Faults) -> Result<Rulebook, Faults> {
        if !faults.is_empty() {
            return Err(faults);
        }
        let (rules, files) = self.rules.into_values().unzip();
        let mut cautions: Vec<_> = self.cautions.into_values().collect();
        cautions.sort_by(|(one, _), (other, _)| (one.order, &one.id).cmp(&(other.order, &other.id)));
        let (cautions, caution_files) = cautions.into_iter().unzip();
        Ok(Rulebook { rules, files, cautions, caution_files })
    }
}

/// Puts what was read whole in place of what had the same id.
fn put<T>(shelf: &mut Shelf<T>, id: String, read: Option<T>, from: (String, String)) {
    if let Some(read) = read {
        shelf.insert(id, (read, from));
    }
}

fn built_in_files() -> Vec<File> {
    let of = |dir: &'static Dir<'static>, holds: Holds, folder: &'static str| {
        dir.files().filter_map(move |file| {
            let name = format!("{folder}/{}", file.path().file_name()?.to_str()?);
            is_rule_file(file.path()).then_some(())?;
            Some(File { holds, told: name.clone(), kept: name, text: file.contents_utf8()?.to_string() })
        })
    };
    let cautions = BUILT_IN.get_dir(CAUTIONS).into_iter();
    of(&BUILT_IN, Holds::Rule, "rules")
        .chain(cautions.flat_map(|dir| of(dir, Holds::Caution, "rules/cautions")))
        .collect()
}

/// The built-in files, rules and cautions, as name and text.
pub fn built_in() -> Vec<(String, String)> {
    built_in_files().into_iter().map(|file| (file.kept, file.text)).collect()
}

/// The text of every built-in file, by whether it is a rule, and by id.
pub(super) fn built_in_texts() -> BTreeMap<(bool, String), String> {
    let files = built_in_files().into_iter();
    files.map(|file| ((file.holds == Holds::Rule, id_of(&file.told)), file.text)).collect()
}

/// The files of a folder, without those of folders in it.
fn files_of(folder: &Path, holds: Holds, name: fn(&Path) -> String, faults: &mut Faults) -> Vec<File> {
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
            files.push(File { holds, kept: name(&path), told, text });
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

/// The same for a file in a folder of cautions, with the folder around it.
fn name_below(path: &Path) -> String {
    let around = path.parent().and_then(Path::parent).and_then(Path::file_name);
    let folder = around.map(|name| name.to_string_lossy().into_owned() + "/").unwrap_or_default();
    folder + &short_name(path)
}

/// The name of the file without folder and ending.
fn id_of(name: &str) -> String {
    Path::new(name).file_stem().map(|stem| stem.to_string_lossy().into_owned()).unwrap_or_default()
}
