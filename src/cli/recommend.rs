//! `recommend`: chooses the drives of every axis of a brief, and says why.

use super::units::Units;
use super::{Answer, Console, Failure, Progress, dates, doubts, folder};
use crate::pipeline::{self, Inputs};
use crate::record::{DecisionRecord, Outcome, input_files};
use crate::report;
use clap::Args;
use std::path::PathBuf;

/// Choose the drives of every axis, and say why
#[derive(Args)]
pub struct Recommend {
    /// The brief, a YAML file; `axiswright new` prints one to start from
    brief: PathBuf,
    /// Print the decision record as JSON instead of the report
    #[arg(long)]
    json: bool,
    /// Write a decision folder: recommendation.md and .html, charts/, candidates.csv, parts.csv, machine.xlsx, record.json and inputs/; nothing goes to stdout but --json
    #[arg(long, value_name = "DIR")]
    out: Option<PathBuf>,
    /// Folder with catalogue files that add to or replace the built-in parts; may be given again
    #[arg(long, value_name = "DIR")]
    catalog: Vec<PathBuf>,
    /// Folder with rule files, and cautions below cautions/, that add to or replace the built-in ones; may be given again
    #[arg(long, value_name = "DIR")]
    rules: Vec<PathBuf>,
    /// Judge every configuration, without pruning or bounding; the answer is the same and takes longer
    #[arg(long)]
    exhaustive: bool,
    /// Do not look for what would change the answer; the recommendation is the same and quicker
    #[arg(long)]
    no_turning_points: bool,
    /// Units of the report; the record stays metric
    #[arg(long, value_enum, default_value_t = Units::Metric)]
    units: Units,
}

impl Recommend {
    /// Runs the command.
    pub fn run(&self, console: &mut Console) -> Result<Answer, Failure> {
        if let Some(folder) = &self.out {
            folder::may_write(&folder::DECISION, folder).map_err(folder::refused)?;
        }
        let inputs = pipeline::load(&self.brief, &self.catalog, &self.rules)?;
        doubts::tell(&inputs.brief, console);
        dates::tell_waivers_that_ran_out(&inputs.brief, console);
        let progress = Progress::begin(console, "searching");
        let record = match self.no_turning_points {
            true => pipeline::recommend(&inputs, self.exhaustive),
            false => pipeline::recommend_and_ask(&inputs, self.exhaustive),
        };
        drop(progress);
        if let Some(folder) = &self.out {
            folder::write(&folder::DECISION, folder, &self.files(&inputs, &record)?).map_err(folder::refused)?;
            console.message(&format!("written to {}", folder.display()));
        }
        if self.json {
            console.result(&super::json(&record)?)?;
        } else if self.out.is_none() {
            console.result(&report::markdown(&record, self.units.system()))?;
        }
        Ok(match record.outcome {
            Outcome::Chosen => Answer::Yes,
            Outcome::NothingAdmissible | Outcome::MachineLimit => {
                console.message("no machine can be recommended; the report says what stands in the way");
                Answer::No
            }
        })
    }

    /// The files of the decision folder.
    fn files(&self, inputs: &Inputs, record: &DecisionRecord) -> Result<Vec<(PathBuf, Vec<u8>)>, Failure> {
        let (documents, json) = rayon::join(|| report::documents(record, self.units.system()), || super::json(record));
        let mut files: Vec<(PathBuf, Vec<u8>)> =
            documents.map_err(Failure::Ours)?.into_iter().map(|(name, content)| (name.into(), content)).collect();
        files.push(("record.json".into(), json?.into_bytes()));
        let went_in = input_files(&inputs.brief, &inputs.catalog, &inputs.rulebook);
        files.extend(went_in.into_iter().filter_map(|(input, text)| Some((input.file?.into(), text.into()))));
        Ok(files)
    }
}
