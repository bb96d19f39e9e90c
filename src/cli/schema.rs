//! `schema`: prints the JSON Schema of a kind of file, for editors and other checkers.

use super::{Answer, Console, Failure, json, keys};
use crate::schema::FILE_KINDS;
use clap::Args;

/// Print the JSON Schema of a kind of file, so that an editor completes keys and marks faults
#[derive(Args)]
pub struct Schema {
    /// brief, choice, catalog, rule or caution; all are listed if left out
    kind: Option<String>,
}

impl Schema {
    /// Runs the command.
    pub fn run(&self, console: &mut Console) -> Result<Answer, Failure> {
        let Some(name) = &self.kind else {
            let lines = FILE_KINDS.iter().map(|kind| format!("{:<8} {}\n", kind.name, kind.words));
            console.result(&lines.collect::<String>())?;
            return Ok(Answer::Yes);
        };
        let Some(kind) = FILE_KINDS.iter().find(|kind| kind.name == name) else {
            let known = FILE_KINDS.iter().map(|kind| kind.name);
            return Err(Failure::Input(keys::unknown("kind of file", name, known, "schema")));
        };
        console.result(&json(&(kind.schema)())?)?;
        Ok(Answer::Yes)
    }
}
