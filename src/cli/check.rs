//! `check`: judges drives that someone proposes against the brief, beside what is recommended.

use super::units::Units;
use super::{Answer, Console, Failure, Progress, doubts};
use crate::yaml::Faults;
use crate::{brief, choice, pipeline, report};
use clap::Args;
use std::path::PathBuf;

/// Judge drives that someone proposes against the brief, beside what is recommended
#[derive(Args)]
pub struct Check {
    /// The brief, a YAML file
    brief: PathBuf,
    /// The choice, a YAML file: for axes the family and the parts, by designation or given in place
    choice: PathBuf,
    /// Print the record of the check as JSON instead of Markdown
    #[arg(long)]
    json: bool,
    /// Folder with catalogue files that add to or replace the built-in parts; may be given again
    #[arg(long, value_name = "DIR")]
    catalog: Vec<PathBuf>,
    /// Folder with rule files that add to or replace the built-in rules; may be given again
    #[arg(long, value_name = "DIR")]
    rules: Vec<PathBuf>,
    /// Units of the page; JSON stays metric
    #[arg(long, value_enum, default_value_t = Units::Metric)]
    units: Units,
}

impl Check {
    /// Runs the command.
    pub fn run(&self, console: &mut Console) -> Result<Answer, Failure> {
        let inputs = pipeline::load(&self.brief, &self.catalog, &self.rules).map_err(|faults| self.all(faults))?;
        doubts::tell(&inputs.brief, console);
        let choice = choice::load(&self.choice, &inputs.brief, &self.catalog)?;
        let progress = Progress::begin(console, "checking");
        let record = pipeline::check_proposal(&inputs, &choice);
        drop(progress);
        let record = record?;
        if self.json {
            console.result(&super::json(&record)?)?;
        } else {
            console.result(&report::proposal(&record, self.units.system()))?;
        }
        Ok(if record.meets { Answer::Yes } else { Answer::No })
    }

    /// Faults of brief, catalogue or rules, and those of the choice as far as it can be read without them.
    fn all(&self, mut faults: Faults) -> Faults {
        let written = brief::text_of(&self.brief, &mut Faults::default());
        let axes = written.map_or(Vec::new(), |(name, text)| brief::axes_named(&name, &text));
        faults.merge(choice::faults_of(&self.choice, &axes, &self.catalog));
        faults
    }
}
