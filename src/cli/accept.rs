//! `accept`: evaluates a measured axis by ISO 230-2 against what is required and what is predicted.

use super::crossover::axis_named;
use super::units::Units;
use super::{Answer, Console, Failure, Progress, folder};
use crate::acceptance::{self, Acceptance, Measurement, Parts, Stretch};
use crate::pipeline::{self, Inputs};
use crate::units::{Length, Measure, UnitSystem, parse};
use clap::Args;
use std::path::PathBuf;

/// The name of the chart in the folder.
const PICTURE: &str = "deviation.svg";

/// Evaluate a measured axis by ISO 230-2 against what is required and what is predicted
#[derive(Args)]
pub struct Accept {
    /// The brief, a YAML file
    brief: PathBuf,
    /// The axis that was measured, by its name in the brief
    #[arg(long, value_name = "NAME")]
    axis: String,
    /// The deviations: a CSV file with the columns target, direction, run and deviation
    #[arg(long, value_name = "CSV")]
    measured: PathBuf,
    /// Expanded uncertainty (coverage factor 2) that guards every limit, such as 2um
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    uncertainty: Option<String>,
    /// Position at which the travel begins, as the targets are counted; 0 if left out
    #[arg(long, value_name = "POSITION", allow_hyphen_values = true)]
    start: Option<String>,
    /// Print the result as JSON instead of Markdown
    #[arg(long)]
    json: bool,
    /// Write a folder: acceptance.md, acceptance.json and deviation.svg; nothing goes to stdout but --json
    #[arg(long, value_name = "DIR")]
    out: Option<PathBuf>,
    /// Folder with catalogue files that add to or replace the built-in parts; may be given again
    #[arg(long, value_name = "DIR")]
    catalog: Vec<PathBuf>,
    /// Folder with rule files that add to or replace the built-in rules; may be given again
    #[arg(long, value_name = "DIR")]
    rules: Vec<PathBuf>,
    /// Units of the document and the chart; JSON stays metric
    #[arg(long, value_enum, default_value_t = Units::Metric)]
    units: Units,
}

impl Accept {
    /// Runs the command.
    pub fn run(&self, console: &mut Console) -> Result<Answer, Failure> {
        if let Some(folder) = &self.out {
            folder::may_write(&folder::ACCEPTANCE, folder).map_err(folder::refused)?;
        }
        let uncertainty = self.uncertainty.as_deref().map(uncertainty).transpose()?;
        let start = self.start.as_deref().map_or(Ok(Length::of_si(0.0)), |text| length("--start", text))?;
        let (inputs, axis, measurement) = self.read(start)?;
        let progress = Progress::begin(console, "predicting");
        let record = pipeline::recommend(&inputs, false);
        drop(progress);
        let parts = Parts {
            brief: &inputs.brief,
            axis: &inputs.brief.axes[axis],
            record: &record,
            measurement: &measurement,
            uncertainty,
        };
        let result = acceptance::accept(&parts, UnitSystem::Metric);
        let shown = acceptance::accept(&parts, self.units.system());
        if let Some(folder) = &self.out {
            folder::write(&folder::ACCEPTANCE, folder, &self.files(&result, &shown)?).map_err(folder::refused)?;
            console.message(&format!("written to {}", folder.display()));
        }
        if self.json {
            console.result(&super::json(&result)?)?;
        } else if self.out.is_none() {
            console.result(&acceptance::markdown(&shown, self.units.system(), None))?;
        }
        Ok(match result.outcome.as_str() {
            "pass" => Answer::Yes,
            "nothing-required" => {
                console.message("the brief requires nothing of the position of this axis; there is no verdict");
                Answer::Yes
            }
            "fail" => {
                console.message("a requirement is not met; the result says which");
                Answer::No
            }
            _ => {
                console.message("a requirement could not be evaluated; the result says which and why");
                Answer::No
            }
        })
    }

    /// Reads everything, and tells the faults of all files at once.
    fn read(&self, start: Length) -> Result<(Inputs, usize, Measurement), Failure> {
        let inputs = match pipeline::load(&self.brief, &self.catalog, &self.rules) {
            Ok(inputs) => inputs,
            Err(mut faults) => {
                if let Err(more) = acceptance::load(&self.measured, None) {
                    faults.merge(more);
                }
                return Err(faults.into());
            }
        };
        let axis = axis_named(&inputs.brief, &self.axis)?;
        let of_axis = &inputs.brief.axes[axis];
        let stretch = Stretch { axis: &of_axis.name, start, travel: of_axis.travel };
        let measurement = acceptance::load(&self.measured, Some(stretch))?;
        Ok((inputs, axis, measurement))
    }

    /// The files of the folder.
    fn files(&self, result: &Acceptance, shown: &Acceptance) -> Result<Vec<(PathBuf, Vec<u8>)>, Failure> {
        let units = self.units.system();
        Ok(vec![
            ("acceptance.md".into(), acceptance::markdown(shown, units, Some(PICTURE)).into_bytes()),
            ("acceptance.json".into(), super::json(result)?.into_bytes()),
            (PICTURE.into(), acceptance::chart(shown, units).map_err(Failure::Ours)?.into_bytes()),
        ])
    }
}

/// A length of the command line.
fn length(option: &str, text: &str) -> Result<Length, Failure> {
    parse(text).map_err(|error| Failure::Input(format!("{option}: {error}")))
}

fn uncertainty(text: &str) -> Result<Length, Failure> {
    let value = length("--uncertainty", text)?;
    if value.si() >= 0.0 {
        return Ok(value);
    }
    Err(Failure::Input(format!("--uncertainty: `{text}` is below 0; an uncertainty is a width")))
}
