//! `audit`: derives a record or a decision folder again and tells every difference.

use super::keys::unknown;
use super::{Answer, Console, Failure, Progress, json};
use crate::audit::{self, Again, Given, Kept, Verified, why_not};
use crate::catalog::KINDS;
use crate::record::{AxisRecord, DecisionRecord};
use crate::rule::FAMILIES;
use crate::yaml::nearest;
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
    /// Ask instead why a family or a part of the catalogue was not chosen: helical-rack, servo-1.5kw
    #[arg(long, value_name = "FAMILY|DESIGNATION", conflicts_with = "record_only")]
    why_not: Option<String>,
    /// The axis of the question; not needed where the record has one axis
    #[arg(long, requires = "why_not", value_name = "NAME")]
    axis: Option<String>,
    /// Print what was found as JSON
    #[arg(long)]
    json: bool,
}

impl Audit {
    /// Runs the command.
    pub fn run(&self, console: &mut Console) -> Result<Answer, Failure> {
        let kept = audit::read(&self.record).map_err(|error| Failure::Input(error.to_string()))?;
        if let Some(asked) = &self.why_not {
            return self.why_not(&kept, asked, console);
        }
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

    /// Answers why something was not chosen.
    fn why_not(&self, kept: &Kept, asked: &str, console: &mut Console) -> Result<Answer, Failure> {
        let axis = self.axis(&kept.record)?;
        let answer = if FAMILIES.contains(&asked) {
            why_not::of_family(&kept.record, axis, asked)
        } else {
            let verified = self.verified(kept)?;
            if let Some(faults) = verified.faults {
                return Err(faults.into());
            }
            let Some(inputs) = &verified.inputs else {
                return Err(Failure::Input(format!(
                    "`{asked}` is no family, and a part cannot be looked for without the inputs: {}",
                    verified.why_none.as_deref().unwrap_or("they are not there")
                )));
            };
            let progress = Progress::begin(console, "searching");
            let answer = why_not::of_part(&kept.record, axis, inputs, asked);
            drop(progress);
            let Some(mut answer) = answer else {
                let parts: Vec<String> =
                    KINDS.iter().flat_map(|kind| (kind.rows)(&inputs.catalog)).map(|row| row.designation).collect();
                let known = FAMILIES.into_iter().chain(parts.iter().map(String::as_str));
                return Err(Failure::Input(unknown("family or part", asked, known, "catalog list")));
            };
            if !verified.all_same() {
                answer.remarks.insert(0, why_not::OTHER_INPUTS.into());
            }
            answer
        };
        console.result(&if self.json { json(&answer)? } else { why_not::words(&answer) })?;
        Ok(Answer::Yes)
    }

    /// The axis of the question.
    fn axis<'r>(&self, record: &'r DecisionRecord) -> Result<&'r AxisRecord, Failure> {
        match (&self.axis, record.axes.as_slice()) {
            (None, [axis]) => Ok(axis),
            (wanted, axes) => {
                let wanted = wanted.as_deref().unwrap_or_default();
                let names: Vec<&str> = axes.iter().map(|axis| axis.name.as_str()).collect();
                let near = nearest(wanted, names.iter().copied());
                let near = near.map(|near| format!("; did you mean `{near}`?")).unwrap_or_default();
                let told = match wanted {
                    "" => "name the axis with --axis".to_string(),
                    wanted => format!("the record has no axis `{wanted}`{near}"),
                };
                let found = axes.iter().find(|axis| axis.name == wanted);
                found.ok_or_else(|| Failure::Input(format!("{told}\nits axes are {}", names.join(", "))))
            }
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
