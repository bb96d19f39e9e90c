//! `crossover`: which family of drives wins where, when one or two requirements of an axis are turned.

use super::units::Units;
use super::{Answer, Console, Failure, Progress, doubts, folder};
use crate::brief::Brief;
use crate::pipeline::{self, Ranges};
use crate::record::CrossoverRecord;
use crate::report;
use crate::units::UnitSystem;
use crate::yaml::nearest;
use clap::Args;
use std::path::PathBuf;

/// The name of the chart in the folder.
const PICTURE: &str = "crossover.svg";

/// Which family of drives wins where, when one or two requirements of an axis are turned
#[derive(Args)]
pub struct Crossover {
    /// The brief, a YAML file
    brief: PathBuf,
    /// The axis, by its name in the brief
    #[arg(long, value_name = "NAME")]
    axis: String,
    /// The requirement that is turned and its range, such as travel=0.5m..12m
    #[arg(long, value_name = "KEY=FROM..TO")]
    over: String,
    /// A second requirement and its range, such as speed=5m/min..80m/min
    #[arg(long, value_name = "KEY=FROM..TO")]
    and: Option<String>,
    /// Steps of the range; 60 if left out, of two ranges 24 each
    #[arg(long, value_name = "N", value_parser = clap::value_parser!(u16).range(1..=200))]
    steps: Option<u16>,
    /// Decide every node of a map over two requirements by a search of the whole catalogue; takes several times as long
    #[arg(long, requires = "and")]
    every_node: bool,
    /// Print the record as JSON instead of Markdown
    #[arg(long)]
    json: bool,
    /// Write a folder: crossover.md, .svg, .csv and .json; nothing goes to stdout but --json
    #[arg(long, value_name = "DIR")]
    out: Option<PathBuf>,
    /// Folder with catalogue files that add to or replace the built-in parts; may be given again
    #[arg(long, value_name = "DIR")]
    catalog: Vec<PathBuf>,
    /// Folder with rule files that add to or replace the built-in rules; may be given again
    #[arg(long, value_name = "DIR")]
    rules: Vec<PathBuf>,
    /// Units of the report and the chart; JSON and CSV stay metric
    #[arg(long, value_enum, default_value_t = Units::Metric)]
    units: Units,
}

impl Crossover {
    /// Runs the command.
    pub fn run(&self, console: &mut Console) -> Result<Answer, Failure> {
        if let Some(folder) = &self.out {
            folder::may_write(&folder::CROSSOVER, folder).map_err(folder::refused)?;
        }
        let mut ranges = Ranges::read(&self.over, self.and.as_deref(), self.steps.map(usize::from))
            .map_err(|error| Failure::Input(error.to_string()))?;
        ranges.every_node = self.every_node;
        let inputs = pipeline::load(&self.brief, &self.catalog, &self.rules)?;
        doubts::tell(&inputs.brief, console);
        let axis = axis_named(&inputs.brief, &self.axis)?;
        let progress = Progress::begin(console, "crossover");
        let record = pipeline::crossover(&inputs, axis, &ranges, &|done, all| progress.set(done, all));
        drop(progress);
        let units = self.units.system();
        if let Some(folder) = &self.out {
            folder::write(&folder::CROSSOVER, folder, &files(&record, units)?).map_err(folder::refused)?;
            console.message(&format!("written to {}", folder.display()));
        }
        if self.json {
            console.result(&super::json(&record)?)?;
        } else if self.out.is_none() {
            console.result(&report::crossover::markdown(&record, units, None))?;
        }
        Ok(match record.outcome.as_str() {
            "found" => Answer::Yes,
            _ => {
                console.message("no drive is admissible anywhere in the range");
                Answer::No
            }
        })
    }
}

/// The place of the axis of this name.
pub(super) fn axis_named(brief: &Brief, name: &str) -> Result<usize, Failure> {
    brief.axis(name).ok_or_else(|| {
        let names: Vec<&str> = brief.axes.iter().map(|axis| axis.name.as_str()).collect();
        let help = nearest(name, names.iter().copied())
            .map_or_else(|| format!("the axes are {}", names.join(", ")), |near| format!("did you mean `{near}`?"));
        Failure::Input(format!("the brief has no axis `{name}`; {help}"))
    })
}

/// The files of the folder.
fn files(record: &CrossoverRecord, units: UnitSystem) -> Result<Vec<(PathBuf, Vec<u8>)>, Failure> {
    Ok(vec![
        ("crossover.md".into(), report::crossover::markdown(record, units, Some(PICTURE)).into_bytes()),
        (PICTURE.into(), report::crossover::chart(record, units).map_err(Failure::Ours)?.into_bytes()),
        ("crossover.csv".into(), report::crossover::table(record).map_err(Failure::Ours)?.into_bytes()),
        ("crossover.json".into(), super::json(record)?.into_bytes()),
    ])
}
