//! The register behind `calc` and `explain`: every formula by its id, with arguments as text.
//!
//! Method: an [`Entry`] names its arguments, their dimensions and defaults; [`calculate`] reads all of them,
//! reports every fault of a call at once, runs the formula and gives an [`Answer`] that can be printed or
//! turned into JSON. The entries written by hand come first; every other formula of the library follows with
//! its own arguments. Limits: judges validity by hand-written conditions, and says where it does not.

mod answer;
mod argument;
mod dynamics;
mod error;
mod gear;
mod generic;
mod given;
mod library;
mod motion;
mod nut;
mod replay;
mod screw;
mod thread;
mod tooth;

pub use answer::{Answer, Input, Step};
pub use argument::{Argument, Kind, Need, Range};
pub use error::{CalcError, Fault};
pub use given::{Given, Outcome};
pub use replay::{NoReplay, Replay};

use crate::formula::Note;
use crate::units::Dimension;
use std::collections::BTreeMap;
use std::sync::LazyLock;

/// How an entry is worked out.
#[derive(Clone, Copy)]
pub enum Run {
    /// By a function of its own, which turns words into numbers and judges validity.
    Own(fn(&Given) -> Result<Outcome, Fault>),
    /// By the formula as it stands.
    Plain(&'static dyn generic::Plain),
}

/// A formula as `calc` offers it.
pub struct Entry {
    /// What a reader is told of the formula.
    pub note: &'static Note,
    /// Its arguments, in order.
    pub arguments: Vec<Argument>,
    /// The dimension of the result.
    pub dimension: Dimension,
    /// The unit of the result; the table of units holds it for this dimension (a test sees to that).
    pub unit: &'static str,
    /// How it is worked out.
    pub run: Run,
}

impl Entry {
    /// An entry with arguments and a function of its own.
    pub fn own(
        note: &'static Note,
        arguments: &[Argument],
        (dimension, unit): (Dimension, &'static str),
        run: fn(&Given) -> Result<Outcome, Fault>,
    ) -> Entry {
        Entry { note, arguments: arguments.to_vec(), dimension, unit, run: Run::Own(run) }
    }

    /// The line that shows how to call it: id and arguments, optional ones in square brackets.
    pub fn usage(&self) -> String {
        let arguments: Vec<String> = self.arguments.iter().map(Argument::usage).collect();
        format!("{} {}", self.note.id, arguments.join(" "))
    }
}

static REGISTER: LazyLock<Vec<Entry>> = LazyLock::new(|| {
    let mut entries: Vec<Entry> = Vec::new();
    for group in [
        motion::entries(),
        screw::entries(),
        nut::entries(),
        dynamics::entries(),
        gear::entries(),
        thread::entries(),
        tooth::entries(),
    ] {
        entries.extend(group);
    }
    for formula in library::formulas() {
        if !entries.iter().any(|entry| entry.note.id == formula.note().id) {
            entries.push(generic::entry(formula));
        }
    }
    entries
});

/// Every entry: those written by hand first, then the rest of the library.
pub fn entries() -> impl Iterator<Item = &'static Entry> {
    REGISTER.iter()
}

/// The entry with this id.
pub fn find(id: &str) -> Option<&'static Entry> {
    REGISTER.iter().find(|entry| entry.note.id == id)
}

/// The formulas that work out the argument of this name, as far as their ids tell; none where there are many.
fn working_out(name: &str) -> Vec<&'static str> {
    let ends = |id: &str| id.strip_suffix(name).is_some_and(|before| before.is_empty() || before.ends_with('-'));
    let found: Vec<&'static str> = REGISTER.iter().map(|entry| entry.note.id).filter(|id| ends(id)).collect();
    if found.len() < MOST_MEANT { found } else { Vec::new() }
}

/// The most formulas that are told in place of one that there is not.
const MOST_MEANT: usize = 5;

/// What of a formula holds words.
type Words = fn(&Note) -> String;

/// Where the words of a formula stand, and what a word there counts.
const WHERE_WORDS_STAND: [(Words, f64); 2] = [(|note| note.id.into(), 1.0), (|note| note.title.to_lowercase(), 0.5)];

/// The formulas that are meant by an id that there is not: the one of which it is a slip, else those that share words
/// with it, rare words first, else the one that is spelt most like it.
fn meant(id: &str) -> Vec<String> {
    let ids = || REGISTER.iter().map(|entry| entry.note.id);
    if let Some(slip) = error::slip(id, ids()) {
        return vec![slip.into()];
    }
    let small = id.to_lowercase();
    let words = small.split(|c: char| !c.is_alphanumeric()).filter(|word| word.chars().count() > 2);
    let mut scores: BTreeMap<&str, f64> = BTreeMap::new();
    for word in words {
        for (of, weight) in WHERE_WORDS_STAND {
            let with: Vec<&str> = ids_with(word, of).collect();
            with.iter().for_each(|id| *scores.entry(id).or_default() += weight / with.len() as f64);
        }
    }
    let mut near: Vec<(&str, f64)> = scores.into_iter().collect();
    near.sort_by(|first, second| second.1.total_cmp(&first.1));
    if near.is_empty() {
        return error::nearest(id, ids()).map(String::from).into_iter().collect();
    }
    near.into_iter().take(MOST_MEANT).map(|(id, _)| id.into()).collect()
}

/// The ids of the formulas of which this text has the word in it.
fn ids_with(word: &str, of: Words) -> impl Iterator<Item = &'static str> {
    REGISTER.iter().filter(move |entry| of(entry.note).contains(word)).map(|entry| entry.note.id)
}

/// Works a formula out on arguments given as name and text.
///
/// ```
/// let given = |name: &str, text: &str| (name.to_string(), text.to_string());
/// let answer = axiswright::calc::calculate(
///     "whip-speed",
///     &[given("root-diameter", "34.5mm"), given("free-length", "1.5m"), given("ends", "fixed-supported")],
/// )?;
/// assert_eq!(answer.unit, "1/min");
/// assert!((answer.value - 2891.0).abs() < 0.5);
/// # Ok::<(), axiswright::calc::CalcError>(())
/// ```
pub fn calculate(id: &str, arguments: &[(String, String)]) -> Result<Answer, CalcError> {
    let Some(entry) = find(id) else {
        return Err(CalcError::of(id, vec![Fault::UnknownFormula { id: id.into(), near: meant(id) }]));
    };
    let given = Given::read(&entry.arguments, arguments).map_err(|faults| CalcError::of(id, faults))?;
    let outcome = match entry.run {
        Run::Own(run) => run(&given),
        Run::Plain(formula) => generic::run(formula, &given),
    };
    outcome.and_then(|outcome| Answer::of(entry, &given, outcome)).map_err(|fault| CalcError::of(id, vec![fault]))
}
