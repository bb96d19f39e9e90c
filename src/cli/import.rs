//! `catalog import`: a supplier's table becomes a file of the catalogue.

use super::{Answer, Console, Failure, file, keys};
use crate::catalog::import;
use crate::catalog::{KINDS, Kind};
use crate::yaml::{Document, Faults, read_text};
use clap::Args;
use std::path::{Path, PathBuf};

/// The table, its kind, and where the file goes.
#[derive(Args)]
pub struct Import {
    /// The table, a CSV file
    table: PathBuf,
    /// The kind of its parts, such as servo-motor; `catalog list` names all
    #[arg(long, value_name = "KIND")]
    kind: String,
    /// Which column gives which key, a YAML file; without it the headings are the keys
    #[arg(long, value_name = "FILE")]
    map: Option<PathBuf>,
    /// Where the data come from: the supplier's document and its date
    #[arg(long, value_name = "TEXT")]
    basis: Option<String>,
    /// Write to this file, which must not be there yet, instead of stdout
    #[arg(long, value_name = "FILE")]
    out: Option<PathBuf>,
    /// Let --out replace a file that is there
    #[arg(long, requires = "out")]
    replace: bool,
}

impl Import {
    /// Runs the command.
    pub fn run(&self, console: &mut Console) -> Result<Answer, Failure> {
        let kind = Kind::find(&self.kind).ok_or_else(|| {
            let names = KINDS.iter().map(|kind| kind.name);
            Failure::Input(keys::unknown("kind of part", &self.kind, names, "catalog list"))
        })?;
        let mut faults = Faults::default();
        let table = read(&self.table, &mut faults);
        let map = self.map.as_deref().and_then(|path| read(path, &mut faults));
        let map = map.and_then(|(name, text)| Document::parse(&name, &text, &mut faults));
        let Some((name, text)) = table.filter(|_| faults.is_empty()) else { return Err(faults.into()) };
        let done = import::import(kind, (&name, &text), map.as_ref(), self.basis.as_deref())?;
        match &self.out {
            Some(target) => file::write(target, done.yaml.as_bytes(), self.replace)?,
            None => console.result(&done.yaml)?,
        }
        self.tell(&done, console);
        let smooth = done.left_out.is_empty() && done.remarks.is_empty() && done.unplaced.is_empty();
        Ok(if smooth { Answer::Yes } else { Answer::No })
    }

    fn tell(&self, done: &import::Import, console: &mut Console) {
        if !done.left_out.is_empty() {
            console.message(&done.left_out.to_string().replace("error: ", "left out: "));
        }
        for heading in &done.unplaced {
            console
                .message(&format!("not used: the column `{heading}`; name it under `leave-out` of the map, or map it"));
        }
        for remark in &done.remarks {
            console.message(&format!("hardly right: {remark}"));
        }
        let rows = |count: usize, one: &str, many: &str| format!("{count} {}", if count == 1 { one } else { many });
        let mut told = rows(done.entries, "entry", "entries");
        if done.rows_left_out > 0 {
            told.push_str(&format!(", {} left out", rows(done.rows_left_out, "part", "parts")));
        }
        if let Some(target) = &self.out {
            told.push_str(&format!(", written to {}", target.display()));
        }
        console.message(&told);
    }
}

/// The name and the text of a file.
fn read(path: &Path, faults: &mut Faults) -> Option<(String, String)> {
    let name = path.file_name().unwrap_or(path.as_os_str()).to_string_lossy().into_owned();
    read_text(path, &name, faults).map(|text| (name, text))
}
