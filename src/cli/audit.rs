//! `audit`: derives a record or a decision folder again and tells every difference.

use super::{Answer, Console, Failure, Progress, json};
use crate::audit::{self, Again, Given, Kept, Verified};
use clap::Args;
use std::path::PathBuf;

/// Derive a record or a decision folder again, and tell every difference
#[derive(Args)]
pub struct Audit {
    /// A decision folder, or a record.json alone
    record: PathBuf,
    /// The brief, for a record alone
    #[arg(long)]
    brief: Option<PathBuf>,
    /// Catalogue folder that was laid over the built-in parts, for a record alone; may be given again
    #[arg(long, value_name = "DIR")]
    catalog: Vec<PathBuf>,
    /// Folder of rules that was laid over the built-in ones, for a record alone; may be given again
    #[arg(long, value_name = "DIR")]
    rules: Vec<PathBuf>,
    /// Check whether the record follows from itself; do not look at inputs and do not recommend again
    #[arg(long, conflicts_with_all = ["brief", "catalog", "rules"])]
    record_only: bool,
    /// Print what was found as JSON
    #[arg(long)]
    json: bool,
}

impl Audit {
    /// Runs the command.
    pub fn run(&self, console: &mut Console) -> Result<Answer, Failure> {
        let kept = audit::read(&self.record).map_err(|error| Failure::Input(error.to_string()))?;
        let verified = self.verified(&kept)?;
        let within = audit::within(&kept);
        let now = match &verified.inputs {
            _ if self.record_only => Err(Again::NotWanted),
            Some(inputs) => {
                let progress = Progress::begin(console, "recommending again");
                let now = audit::recommend_again(&kept.record, inputs);
                drop(progress);
                Ok(now)
            }
            None => Err(Again::No(verified.why_none.clone().unwrap_or_default())),
        };
        let found = audit::audit(&kept, within, &verified, now.as_ref().map_err(Clone::clone));
        console.result(&if self.json { json(&found)? } else { audit::words(&found) })?;
        match verified.faults {
            // the very files that went in, which this program cannot read
            Some(faults) if verified.files.iter().all(|file| file.standing != audit::Standing::Differs) => {
                Err(faults.into())
            }
            Some(faults) => {
                console.message(&faults.to_string());
                Ok(Answer::No)
            }
            None if found.rederives => Ok(Answer::Yes),
            None => Ok(Answer::No),
        }
    }

    fn verified(&self, kept: &Kept) -> Result<Verified, Failure> {
        let given = Given { brief: self.brief.clone(), catalogs: self.catalog.clone(), rules: self.rules.clone() };
        let none = given.brief.is_none() && given.catalogs.is_empty() && given.rules.is_empty();
        match &kept.folder {
            _ if self.record_only => Ok(audit::alone(&kept.record, &Given::default())),
            Some(folder) if none => Ok(audit::in_folder(folder, &kept.record)),
            Some(_) => Err(Failure::Input(
                "the decision folder holds its own inputs; leave out --brief, --catalog and --rules, or copy the \
                 record elsewhere"
                    .into(),
            )),
            None => Ok(audit::alone(&kept.record, &given)),
        }
    }
}
