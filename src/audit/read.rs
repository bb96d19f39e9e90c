//! Reading a record, or the decision folder that it stands in.
//!
//! Method: a folder is one that holds `record.json`; a record that stands beside a folder `inputs` is read with it. What is
//! no JSON, is cut off, or is of a version that this program does not read is told with its place.
//! Limits: fields that this program does not know are kept for the comparison and not read otherwise.

use crate::record::{DecisionRecord, RECORD_VERSION};
use serde_json::Value;
use std::path::{Path, PathBuf};
use thiserror::Error;

/// A record as it was read.
#[derive(Debug)]
pub struct Kept {
    /// The name of its file, for messages.
    pub name: String,
    /// The record.
    pub record: DecisionRecord,
    /// The same with every field that stands in it.
    pub value: Value,
    /// The decision folder; none of a record alone.
    pub folder: Option<PathBuf>,
}

/// Why a record cannot be read.
#[derive(Debug, Error)]
pub enum ReadError {
    /// There is no such file, or it cannot be read.
    #[error("`{name}` cannot be read: {cause}")]
    System {
        /// The file.
        name: String,
        /// Why.
        cause: std::io::Error,
    },
    /// A folder without a record.
    #[error("the folder `{name}` holds no record.json; name a decision folder or a record")]
    NoRecord {
        /// The folder.
        name: String,
    },
    /// No JSON, cut off, or without a field that every record has.
    #[error("`{name}` is no record of a decision: {cause}")]
    Malformed {
        /// The file.
        name: String,
        /// What is wrong, with line and column.
        cause: String,
    },
    /// Another version.
    #[error("`{name}` is a record of version `{found}`; this program reads `{RECORD_VERSION}`")]
    Version {
        /// The file.
        name: String,
        /// The version it names.
        found: String,
    },
}

/// Reads a record or a decision folder.
pub fn read(path: &Path) -> Result<Kept, ReadError> {
    let name = path.display().to_string();
    let system = |cause| ReadError::System { name: name.clone(), cause };
    let found = std::fs::metadata(path).map_err(system)?;
    if found.is_dir() {
        let file = path.join("record.json");
        return match file.is_file() {
            true => parse(&file, Some(path.to_path_buf())),
            false => Err(ReadError::NoRecord { name }),
        };
    }
    let around = match path.parent() {
        Some(around) if around.as_os_str().is_empty() => PathBuf::from("."),
        Some(around) => around.to_path_buf(),
        None => PathBuf::from("."),
    };
    let folder = around.join("inputs").is_dir().then_some(around);
    parse(path, folder)
}

fn parse(file: &Path, folder: Option<PathBuf>) -> Result<Kept, ReadError> {
    let name = file.display().to_string();
    let bytes = std::fs::read(file).map_err(|cause| ReadError::System { name: name.clone(), cause })?;
    Ok(Kept { folder, ..read_bytes(&name, &bytes)? })
}

/// Reads a record that stands alone, told as a file of this name.
pub fn read_bytes(name: &str, bytes: &[u8]) -> Result<Kept, ReadError> {
    let name = name.to_string();
    let malformed = |cause: String| ReadError::Malformed { name: name.clone(), cause };
    let value: Value = serde_json::from_slice(bytes).map_err(|error| malformed(error.to_string()))?;
    match value.get("record") {
        Some(Value::String(version)) if version == RECORD_VERSION => {}
        Some(Value::String(version)) => return Err(ReadError::Version { name, found: version.clone() }),
        _ => {
            return Err(malformed(format!(
                "the field `record`, which names the version, is not there (line 1); expected `{RECORD_VERSION}`"
            )));
        }
    }
    let record: DecisionRecord = serde_json::from_slice(bytes).map_err(|error| malformed(error.to_string()))?;
    Ok(Kept { name, record, value, folder: None })
}
