//! Writing the folder of a result whole or not at all.
//!
//! Method: everything is written into a temporary folder beside the target and synced; then one rename puts
//! it in place. An earlier decision folder is first moved into the temporary folder by a rename and moved
//! back if the second rename fails. A reader sees the old folder, the new one, or for a moment none; never
//! a mixture. Where another run puts its result there at the same moment, what it put there counts as an earlier folder:
//! the last one stays.
//! Limits: a run that is killed outright leaves its temporary folder behind; between the two renames that one holds the earlier
//! result too.

use super::Failure;
use std::fs::{self, File};
use std::io::{self, Write};
use std::path::{Path, PathBuf};
use tempfile::TempDir;
use thiserror::Error;

/// What a folder of a command holds, so that an earlier one is known again and nothing else is overwritten.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Kind {
    /// What it holds, in words: "decision".
    pub words: &'static str,
    /// The names in it.
    pub holds: &'static [&'static str],
    /// The JSON file that marks it.
    pub mark: &'static str,
    /// The field of that file which names its version.
    pub field: &'static str,
    /// What the version begins with.
    pub version: &'static str,
}

/// The folder of `recommend`.
pub const DECISION: Kind = Kind {
    words: "decision",
    holds: &[
        "recommendation.md",
        "recommendation.html",
        "charts",
        "candidates.csv",
        "parts.csv",
        "machine.xlsx",
        "record.json",
        "inputs",
    ],
    mark: "record.json",
    field: "record",
    version: "axiswright/",
};

/// The folder of `accept`.
pub const ACCEPTANCE: Kind = Kind {
    words: "acceptance",
    holds: &["acceptance.md", "acceptance.json", "deviation.svg"],
    mark: "acceptance.json",
    field: "acceptance",
    version: "axiswright-acceptance/",
};

/// The folder of `crossover`.
pub const CROSSOVER: Kind = Kind {
    words: "crossover",
    holds: &["crossover.md", "crossover.svg", "crossover.csv", "crossover.json"],
    mark: "crossover.json",
    field: "record",
    version: "axiswright/",
};

/// Why a decision folder cannot be written.
#[derive(Debug, Error)]
pub enum FolderError {
    /// The target is a file.
    #[error("`{path}` is a file; name a folder for --out")]
    NotAFolder {
        /// The target.
        path: String,
    },
    /// The target holds something that is no earlier result of the same kind.
    #[error("`{path}` is not empty and no earlier {kind} folder: it holds `{entry}`; name another folder for --out")]
    Foreign {
        /// The target.
        path: String,
        /// The kind of folder.
        kind: &'static str,
        /// What is not ours.
        entry: String,
    },
    /// The system refuses.
    #[error("`{path}` cannot be written: {cause}")]
    System {
        /// The target.
        path: String,
        /// Why.
        cause: io::Error,
    },
    /// The swap failed half way and the earlier folder could not be moved back.
    #[error("`{path}` cannot be written: {cause}; the earlier folder is kept at `{kept}`")]
    Stranded {
        /// The target.
        path: String,
        /// Why.
        cause: io::Error,
        /// Where the earlier folder is.
        kept: String,
    },
}

/// A folder that cannot be written is the fault of who named it, unless the system broke.
pub(super) fn refused(error: FolderError) -> Failure {
    match error {
        FolderError::Stranded { .. } => Failure::Ours(error.to_string()),
        _ => Failure::Input(error.to_string()),
    }
}

/// So often another run may be quicker before this one gives up.
const MOST_TURNS: u32 = 100;

/// What stands at the target now.
#[derive(Debug, PartialEq, Eq)]
enum Found {
    Nothing,
    Empty,
    Earlier,
}

/// Whether a result may be written to this folder, before anything is worked out.
pub fn may_write(kind: &Kind, target: &Path) -> Result<(), FolderError> {
    look(kind, target).map(|_| ())
}

/// What stands there; looked at again where another run puts its result in place meanwhile.
fn look(kind: &Kind, target: &Path) -> Result<Found, FolderError> {
    let mut seen = glance(kind, target);
    for _ in 1..MOST_TURNS {
        match seen {
            Ok(Some(found)) => return Ok(found),
            Ok(None) => seen = glance(kind, target),
            Err(error) => return Err(error),
        }
    }
    let cause = io::Error::other("other runs write it all the time");
    seen?.ok_or(FolderError::System { path: target.display().to_string(), cause })
}

/// What stands there; none where it changed while it was looked at.
fn glance(kind: &Kind, target: &Path) -> Result<Option<Found>, FolderError> {
    let path = || target.display().to_string();
    let system = |cause| FolderError::System { path: path(), cause };
    match fs::metadata(target) {
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(Some(Found::Nothing)),
        Err(error) => return Err(system(error)),
        Ok(found) if !found.is_dir() => return Err(FolderError::NotAFolder { path: path() }),
        Ok(_) => {}
    }
    let mut names = match names(target) {
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(None),
        names => names.map_err(system)?,
    };
    if names.is_empty() {
        return Ok(Some(Found::Empty));
    }
    if let Some(entry) = names.iter().find(|name| !kind.holds.contains(&name.as_str())) {
        return Err(FolderError::Foreign { path: path(), kind: kind.words, entry: entry.clone() });
    }
    match fs::read(target.join(kind.mark)) {
        Ok(text) if is_mark(kind, &text) => Ok(Some(Found::Earlier)),
        Err(_) if names.iter().any(|name| name == kind.mark) => Ok(None),
        _ => Err(FolderError::Foreign { path: path(), kind: kind.words, entry: names.swap_remove(0) }),
    }
}

/// The names in a folder, in order.
fn names(folder: &Path) -> io::Result<Vec<String>> {
    let mut names = Vec::new();
    for entry in fs::read_dir(folder)? {
        names.push(entry?.file_name().to_string_lossy().into_owned());
    }
    names.sort();
    Ok(names)
}

/// Whether the file that marks a result of this kind does so, of any version.
fn is_mark(kind: &Kind, text: &[u8]) -> bool {
    let value: serde_json::Value = serde_json::from_slice(text).unwrap_or_default();
    value[kind.field].as_str().is_some_and(|version| version.starts_with(kind.version))
}

/// Writes a folder of this kind with these files, given as path inside it and content.
pub fn write(kind: &Kind, target: &Path, files: &[(PathBuf, Vec<u8>)]) -> Result<(), FolderError> {
    look(kind, target)?;
    let system = |cause| FolderError::System { path: target.display().to_string(), cause };
    // a link to a folder stays a link
    let place = fs::canonicalize(target).unwrap_or_else(|_| target.to_path_buf());
    let parent = match place.parent() {
        Some(parent) if parent.as_os_str().is_empty() => Path::new("."),
        Some(parent) => parent,
        None => Path::new("."),
    };
    let held = super::stop::writing();
    fs::create_dir_all(parent).map_err(system)?;
    let workshop = tempfile::Builder::new().prefix(".axiswright-").tempdir_in(parent).map_err(system)?;
    fill(&workshop.path().join(FRESH), files).map_err(system)?;
    if let Err(error) = swap(kind, target, &place, workshop.path()) {
        return Err(back(error, target, &place, workshop));
    }
    sync_folder(parent);
    drop(workshop);
    drop(held);
    Ok(())
}

/// The new result in the temporary folder.
const FRESH: &str = "decision";

/// An earlier result in the temporary folder; there may be more, as another run may put one there meanwhile.
const EARLIER: &str = "earlier-";

/// Moves what stands at the place of the target into the temporary folder, and the new result to the place.
fn swap(kind: &Kind, target: &Path, place: &Path, workshop: &Path) -> Result<(), FolderError> {
    let system = |cause| FolderError::System { path: target.display().to_string(), cause };
    for turn in 0.. {
        match look(kind, target)? {
            Found::Nothing => {}
            // one that another run fills at this moment stays
            Found::Empty => drop(fs::remove_dir(place)),
            Found::Earlier => match fs::rename(place, workshop.join(format!("{EARLIER}{turn}"))) {
                Err(error) if error.kind() != io::ErrorKind::NotFound => return Err(system(error)),
                _ => {}
            },
        }
        match fs::rename(workshop.join(FRESH), place) {
            Ok(()) => break,
            Err(cause) if taken(&cause) && turn < MOST_TURNS => {}
            Err(cause) => return Err(system(cause)),
        }
    }
    Ok(())
}

/// Moves the last earlier result back; where that fails, it stays in the temporary folder and the error says so.
fn back(error: FolderError, target: &Path, place: &Path, mut workshop: TempDir) -> FolderError {
    let kept = names(workshop.path()).unwrap_or_default().into_iter().rfind(|name| name.starts_with(EARLIER));
    let Some(kept) = kept.map(|name| workshop.path().join(name)) else { return error };
    if fs::rename(&kept, place).is_ok() {
        return error;
    }
    workshop.disable_cleanup(true);
    let cause = match error {
        FolderError::System { cause, .. } => cause,
        other => io::Error::other(other.to_string()),
    };
    FolderError::Stranded { path: target.display().to_string(), cause, kept: kept.display().to_string() }
}

/// Whether another run has put its result there.
fn taken(error: &io::Error) -> bool {
    matches!(error.kind(), io::ErrorKind::DirectoryNotEmpty | io::ErrorKind::AlreadyExists)
}

fn fill(folder: &Path, files: &[(PathBuf, Vec<u8>)]) -> io::Result<()> {
    fs::create_dir(folder)?;
    for (name, content) in files {
        let path = folder.join(name);
        if let Some(parent) = path.parent() {
            fs::create_dir_all(parent)?;
        }
        let mut file = File::create_new(&path)?;
        file.write_all(content)?;
        file.sync_all()?;
    }
    sync_folder(folder);
    Ok(())
}

/// Brings the entries of a folder to disk where the system can do that; elsewhere it happens by itself.
fn sync_folder(folder: &Path) {
    if let Ok(folder) = File::open(folder) {
        let _ = folder.sync_all();
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn decision(text: &str) -> Vec<(PathBuf, Vec<u8>)> {
        vec![
            (
                "record.json".into(),
                format!("{{\"record\": \"axiswright/1\", \"machine-name\": \"{text}\"}}").into_bytes(),
            ),
            ("recommendation.md".into(), text.into()),
            ("inputs/brief.yaml".into(), text.into()),
        ]
    }

    fn names(folder: &Path) -> Vec<String> {
        super::names(folder).expect("a folder")
    }

    #[test]
    fn a_folder_is_written_and_replaced_whole() {
        let room = tempfile::tempdir().expect("a folder");
        let target = room.path().join("a/decision");
        write(&DECISION, &target, &decision("first")).expect("written");
        let mut second = decision("second");
        second.pop();
        write(&DECISION, &target, &second).expect("replaced");
        assert_eq!(names(&target), ["recommendation.md", "record.json"], "nothing of the first is left");
        assert_eq!(fs::read_to_string(target.join("recommendation.md")).expect("text"), "second");
        assert_eq!(names(&room.path().join("a")), ["decision"], "no temporary folder is left");
    }

    #[test]
    fn an_empty_folder_is_filled_and_a_foreign_one_is_refused() {
        let room = tempfile::tempdir().expect("a folder");
        let target = room.path().join("decision");
        fs::create_dir(&target).expect("a folder");
        write(&DECISION, &target, &decision("first")).expect("an empty folder is filled");
        fs::write(target.join("my-notes.txt"), "mine").expect("a note");
        let refused = write(&DECISION, &target, &decision("second")).expect_err("a note is not ours");
        assert!(refused.to_string().contains("my-notes.txt"), "{refused}");
        assert_eq!(fs::read_to_string(target.join("recommendation.md")).expect("text"), "first");
        let other = room.path().join("other");
        fs::create_dir(&other).expect("a folder");
        fs::write(other.join("record.json"), "{\"record\": \"of a long jump\"}").expect("a file");
        assert!(write(&DECISION, &other, &decision("third")).is_err(), "a record of something else");
    }

    #[test]
    fn what_cannot_be_written_leaves_nothing_behind() {
        let room = tempfile::tempdir().expect("a folder");
        let target = room.path().join("decision");
        let twice = vec![("a".into(), b"1".to_vec()), ("a".into(), b"2".to_vec())];
        assert!(write(&DECISION, &target, &twice).is_err(), "the same file twice");
        assert_eq!(names(room.path()), Vec::<String>::new());
        fs::write(&target, "a file").expect("a file");
        assert!(matches!(may_write(&DECISION, &target), Err(FolderError::NotAFolder { .. })));
    }
}
