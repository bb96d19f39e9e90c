//! The inputs of a record: whether they are those that it names, and what they are.
//!
//! Method: in a decision folder every file that the record names is read at its place and hashed; files that it does not name
//! are told. For a record alone the brief is given, and the catalogue and the rules are the built-in ones with
//! those given laid over them, which are hashed likewise.
//! Limits: a hash says that a file is the one that went in, not that it was right.

use crate::pipeline::{self, Inputs};
use crate::record::{DecisionRecord, InputFile, hash, input_files};
use crate::yaml::Faults;
use serde::Serialize;
use std::collections::BTreeMap;
use std::path::{Component, Path, PathBuf};

/// What became of an input.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Standing {
    /// It is the file that the record names.
    Same,
    /// It is another text.
    Differs,
    /// It is not there.
    Missing,
    /// It is there, and the record does not name it.
    NotRecorded,
    /// It was not given, so nothing can be said.
    NotVerified,
}

/// One input.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct InputStanding {
    /// brief, catalog or rules.
    pub role: String,
    /// Its name in the record, or its place in the folder.
    pub name: String,
    /// What became of it.
    pub standing: Standing,
    /// Its hash in the record.
    pub recorded: Option<String>,
    /// Its hash as it is now.
    pub found: Option<String>,
}

/// What is given beside a record alone.
#[derive(Debug, Clone, Default)]
pub struct Given {
    /// The brief.
    pub brief: Option<PathBuf>,
    /// Catalogue folders.
    pub catalogs: Vec<PathBuf>,
    /// Folders of rules.
    pub rules: Vec<PathBuf>,
}

/// The inputs, verified.
#[derive(Debug, Default)]
pub struct Verified {
    /// Each input.
    pub files: Vec<InputStanding>,
    /// The inputs as they are now; none where they are incomplete or cannot be read.
    pub inputs: Option<Inputs>,
    /// Why there are none.
    pub why_none: Option<String>,
    /// Whether that is a fault of the files, which then are not what went in or not for this program.
    pub faults: Option<Faults>,
}

impl Verified {
    /// Whether every input is the one that the record names.
    pub fn all_same(&self) -> bool {
        self.files.iter().all(|file| file.standing == Standing::Same)
    }
}

/// Verifies the inputs of a decision folder.
pub fn in_folder(folder: &Path, record: &DecisionRecord) -> Verified {
    let mut verified = Verified::default();
    let (mut brief, mut layers, mut rules, mut cautions) = (None, Vec::new(), Vec::new(), Vec::new());
    let older = record.inputs.iter().all(|input| input.file.is_none());
    let mut named: Vec<PathBuf> = Vec::new();
    for input in &record.inputs {
        let place = match &input.file {
            Some(file) => within(file),
            None if input.role == "brief" => within(&format!("inputs/{}", input.name)),
            None => None,
        };
        let text = match &place {
            // what is no text is another text
            Some(place) => text_of(&folder.join(place)),
            None => None,
        };
        named.extend(place);
        let standing = match &text {
            Some(text) if hash(text) == input.sha256 => Standing::Same,
            Some(_) => Standing::Differs,
            None if older && input.role != "brief" => Standing::NotVerified,
            None => Standing::Missing,
        };
        verified.files.push(standing_of(input, standing, text.as_deref().map(hash)));
        let Some(text) = text else { continue };
        let pair = (input.name.clone(), text);
        match input.role.as_str() {
            "brief" => brief = Some(pair),
            "catalog" => {
                // no more layers than files
                let layer = (input.layer.unwrap_or(0) as usize).min(record.inputs.len());
                layers.resize_with(layers.len().max(layer + 1), Vec::new);
                if let Some(layer) = layers.get_mut(layer) {
                    layer.push(pair);
                }
            }
            _ if input.file.as_deref().is_some_and(|file| file.starts_with("inputs/rules/cautions/")) => {
                cautions.push(pair);
            }
            _ => rules.push(pair),
        }
    }
    for place in files_below(folder, Path::new("inputs")) {
        if !named.contains(&place) {
            let name = place.to_string_lossy().replace('\\', "/");
            let found = text_of(&folder.join(&place)).as_deref().map(hash);
            let standing = Standing::NotRecorded;
            verified.files.push(InputStanding { role: String::new(), name, standing, recorded: None, found });
        }
    }
    if older {
        // a folder of before kept the brief alone
        let place = brief.map(|(name, _)| folder.join("inputs").join(name));
        let with = alone(record, &Given { brief: place, ..Given::default() });
        verified.files.retain(|file| file.role == "brief" || file.standing == Standing::NotRecorded);
        verified.files.extend(with.files.into_iter().filter(|file| file.role != "brief"));
        return Verified { files: verified.files, ..with };
    }
    let missing = verified.files.iter().filter(|file| file.standing == Standing::Missing).count();
    match brief {
        Some((name, text)) if missing == 0 => match pipeline::load_texts((&name, &text), layers, rules, cautions) {
            Ok(inputs) => verified.inputs = Some(inputs),
            Err(faults) => {
                verified.why_none = Some("this program cannot read the inputs of the folder".into());
                verified.faults = Some(faults);
            }
        },
        _ => verified.why_none = Some("inputs are missing in the folder".into()),
    }
    verified
}

/// Verifies the inputs of a record alone against what is given and what is built in.
pub fn alone(record: &DecisionRecord, given: &Given) -> Verified {
    let mut verified = Verified::default();
    let Some(brief) = &given.brief else {
        let files = record.inputs.iter().map(|input| standing_of(input, Standing::NotVerified, None));
        verified.files = files.collect();
        verified.why_none = Some("the brief is not given".into());
        return verified;
    };
    match pipeline::load(brief, &given.catalogs, &given.rules) {
        Ok(inputs) => {
            verified.files = compare(&record.inputs, &inputs);
            verified.inputs = Some(inputs);
        }
        Err(faults) => {
            let files = record.inputs.iter().map(|input| standing_of(input, Standing::NotVerified, None));
            verified.files = files.collect();
            verified.why_none = Some("the inputs given cannot be read".into());
            verified.faults = Some(faults);
        }
    }
    verified
}

/// The files of a record against those that these inputs were read from.
fn compare(recorded: &[InputFile], inputs: &Inputs) -> Vec<InputStanding> {
    let now = input_files(&inputs.brief, &inputs.catalog, &inputs.rulebook);
    // a brief may have been given another name since
    let key = |input: &InputFile| match input.role.as_str() {
        "brief" => (input.role.clone(), String::new(), 0),
        _ => (input.role.clone(), input.name.clone(), input.layer.unwrap_or(0)),
    };
    let mut found: BTreeMap<_, _> = now.into_iter().map(|(input, _)| (key(&input), input)).collect();
    let mut files: Vec<InputStanding> = recorded
        .iter()
        .map(|input| match found.remove(&key(input)) {
            Some(other) if other.sha256 == input.sha256 => standing_of(input, Standing::Same, Some(other.sha256)),
            Some(other) => standing_of(input, Standing::Differs, Some(other.sha256)),
            None => standing_of(input, Standing::Missing, None),
        })
        .collect();
    files.extend(found.into_values().map(|other| InputStanding {
        role: other.role,
        name: other.name,
        standing: Standing::NotRecorded,
        recorded: None,
        found: Some(other.sha256),
    }));
    files
}

fn standing_of(input: &InputFile, standing: Standing, found: Option<String>) -> InputStanding {
    let name = input.file.clone().unwrap_or_else(|| input.name.clone());
    InputStanding { role: input.role.clone(), name, standing, recorded: Some(input.sha256.clone()), found }
}

/// A place that a record names, if it stays below the folder's inputs.
fn within(file: &str) -> Option<PathBuf> {
    let path = PathBuf::from(file);
    let mut parts = path.components();
    let begins = parts.next() == Some(Component::Normal("inputs".as_ref()));
    let plain = parts.all(|part| matches!(part, Component::Normal(_)));
    (begins && plain).then_some(path)
}

fn text_of(path: &Path) -> Option<String> {
    std::fs::read(path).ok().map(|bytes| String::from_utf8_lossy(&bytes).into_owned())
}

/// Every file below a folder, as paths from its root, in order.
fn files_below(root: &Path, folder: &Path) -> Vec<PathBuf> {
    let entries = std::fs::read_dir(root.join(folder)).into_iter().flatten().filter_map(Result::ok);
    let mut found: Vec<(PathBuf, bool)> = entries
        .map(|entry| (folder.join(entry.file_name()), entry.file_type().is_ok_and(|kind| kind.is_dir())))
        .collect();
    found.sort();
    let below = |(place, deeper): (PathBuf, bool)| if deeper { files_below(root, &place) } else { vec![place] };
    found.into_iter().flat_map(below).collect()
}
