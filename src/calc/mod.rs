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
        let nearest = error::nearest(id, REGISTER.iter().map(|entry| entry.note.id)).map(String::from);
        return Err(CalcError::of(id, vec![Fault::UnknownFormula { id: id.into(), nearest }]));
    };
    let given = Given::read(&entry.arguments, arguments).map_err(|faults| CalcError::of(id, faults))?;
    let outcome = match entry.run {
        Run::Own(run) => run(&given),
        Run::Plain(formula) => generic::run(formula, &given),
    };
    outcome.and_then(|outcome| Answer::of(entry, &given, outcome)).map_err(|fault| CalcError::of(id, vec![fault]))
}
