//! The road of a crossover: the brief as it stands is decided once, then one axis of it over a range.

use super::{Inputs, recommend, setting, waived_on};
use crate::inquiry::{self, SpanError, Sweep};
use crate::record::{CrossoverRecord, DecisionRecord, crossover as build};
use crate::search::{Coupling, Setting, Stop};
use crate::yaml::nearest;
use std::sync::atomic::{AtomicUsize, Ordering};

pub use crate::inquiry::Span;

/// What a crossover is asked for.
#[derive(Debug, Clone, Copy)]
pub struct Ranges {
    /// The requirement that is turned.
    pub over: Span,
    /// A second one.
    pub and: Option<Span>,
    /// Steps of each range.
    pub steps: usize,
    /// Whether over two ranges every node is decided in full.
    pub every_node: bool,
    /// Whether over one range the best of all is enough and the best of every family is not sought.
    pub best_alone: bool,
}

impl Ranges {
    /// Reads "travel=0.5m..12m" and a second one like it.
    pub fn read(over: &str, and: Option<&str>, steps: Option<usize>) -> Result<Ranges, RangeError> {
        let near = |word: &str, known: &[&'static str]| nearest(word, known.iter().copied());
        let read =
            |option: &'static str, text: &str| Span::read(text, near).map_err(|cause| RangeError { option, cause });
        let over = read("--over", over)?;
        let and = and.map(|text| read("--and", text)).transpose()?;
        if let Some(and) = and {
            over.differ(and).map_err(|cause| RangeError { option: "--and", cause })?;
        }
        let usual = if and.is_some() { STEPS_OF_TWO } else { STEPS_OF_ONE };
        Ok(Ranges { over, and, steps: steps.unwrap_or(usual), every_node: false, best_alone: false })
    }
}

/// Steps over one range, if nothing is said.
pub const STEPS_OF_ONE: usize = 60;
/// Steps of each of two ranges, if nothing is said.
pub const STEPS_OF_TWO: usize = 24;

/// A range that cannot be read, and the option that holds it.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[error("{option}: {cause}")]
pub struct RangeError {
    /// The option.
    pub option: &'static str,
    /// What is wrong.
    pub cause: SpanError,
}

/// From the inputs to the record of a crossover; `told` hears how many searches of how many are done.
pub fn crossover(
    inputs: &Inputs,
    axis: usize,
    ranges: &Ranges,
    told: &(dyn Fn(usize, usize) + Sync),
) -> CrossoverRecord {
    crossover_beside(inputs, &recommend(inputs, false), axis, ranges, None, told)
}

/// The same beside a decision that is there already, which tells what the axis carries; it ends early where it is stopped, and
/// what it gives then is no answer.
pub fn crossover_beside(
    inputs: &Inputs,
    decision: &DecisionRecord,
    axis: usize,
    ranges: &Ranges,
    stop: Option<&Stop>,
    told: &(dyn Fn(usize, usize) + Sync),
) -> CrossoverRecord {
    let brief = &inputs.brief;
    let name = &brief.axes[axis].name;
    let mass = decision.axes.iter().find(|record| record.name == *name).map(|record| &record.carried_mass);
    let carried = mass.map_or(0.0, |mass| mass.chosen.unwrap_or_else(|| mass.census()));
    let waived = waived_on(brief, name);
    let setting = Setting { stop, ..setting(inputs, Coupling::default(), &waived, false) };
    let Ranges { over, and, steps, every_node, best_alone } = *ranges;
    let sweep = Sweep { brief, axis, carried, setting: &setting, over, and, steps, every_node, best_alone };
    let (done, all) = (AtomicUsize::new(0), sweep.searches());
    let found: inquiry::Crossover = sweep.run(&|| told(done.fetch_add(1, Ordering::Relaxed) + 1, all));
    build(&sweep, &found, decision)
}
