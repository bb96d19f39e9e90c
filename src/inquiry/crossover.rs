//! Which family wins where when one or two requirements of an axis are turned over a range.
//!
//! Method: at every node of a grid the brief gets the values in place of its own and the axis is decided by the same
//! search as in the recommendation; what was best at the node before it in the row is a guess that sets the bound, and
//! never changes the answer. Over one range the best of every family is sought too. Where the family of the best changes
//! between two nodes of a row, the place is halved until it is narrow enough; a third family met on the way gives two places.
//! Over two ranges, unless every node is asked for, the grid is coarse first, see [`map`].
//! Limits: two changes within one step leave no trace; along a second range only the rows are refined.

mod map;

use super::{Requirement, Span};
use crate::brief::Brief;
use crate::drive::considered;
use crate::search::{Found, Setting, best_on, worst_failed};
use rayon::prelude::*;

/// How narrow a place of change is made, as a part of the value: over one range, and along the rows of two.
const NARROW: [f64; 2] = [0.001, 0.01];

/// What is asked.
#[derive(Debug, Clone, Copy)]
pub struct Sweep<'s> {
    /// The brief.
    pub brief: &'s Brief,
    /// The axis, as place in the brief.
    pub axis: usize,
    /// What it carries, kg.
    pub carried: f64,
    /// What it is decided by.
    pub setting: &'s Setting<'s>,
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

/// The best of one family at every node of a row.
#[derive(Debug, Clone)]
pub struct Curve {
    /// Id of the family.
    pub family: &'static str,
    /// Its best drives.
    pub best: Vec<Option<Found>>,
}

/// Why the best drive is of another family on the other side.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Cause {
    /// Above, no drive of the family below is admissible; what was best breaks this rule.
    Leaves(String),
    /// Below, no drive of the family above is admissible; what is best breaks this rule.
    Enters(String),
    /// Above, the drive that is best below breaks this rule; whether another of its family does is not looked at.
    Breaks(String),
    /// Both are admissible on both sides; the weighing turns.
    Merit,
}

/// A place where the family of the best drive changes.
#[derive(Debug, Clone)]
pub struct Change {
    /// The last value looked at that has the family below.
    pub low: f64,
    /// The first value looked at that has the family above.
    pub high: f64,
    /// The best at `low`.
    pub from: Option<Found>,
    /// The best at `high`.
    pub to: Option<Found>,
    /// Why.
    pub cause: Cause,
}

/// The nodes at one value of the second requirement.
#[derive(Debug, Clone)]
pub struct Row {
    /// The best drives, node by node.
    pub best: Vec<Option<Found>>,
    /// Whether each is the best of known drives alone, not of the whole catalogue.
    pub among_known: Vec<bool>,
    /// The best of every family, over one range alone.
    pub curves: Vec<Curve>,
    /// The changes of family along the row.
    pub changes: Vec<Change>,
}

/// What was found.
#[derive(Debug, Clone)]
pub struct Crossover {
    /// The values of the requirement.
    pub across: Vec<f64>,
    /// The values of the second one; empty without it.
    pub up: Vec<f64>,
    /// The rows, one for each value of the second requirement.
    pub rows: Vec<Row>,
    /// The best for the brief as it stands.
    pub present: Option<Found>,
    /// How narrow the places of change are, as a part of the value.
    pub narrow: f64,
}

/// Whether two drives are of one family; two times none is one too.
fn alike(one: Option<&Found>, other: Option<&Found>) -> bool {
    one.map(|found| found.family) == other.map(|found| found.family)
}

impl<'s> Sweep<'s> {
    /// How many searches the grid takes; what is reported to `done` counts up to it.
    pub fn searches(&self) -> usize {
        let nodes = self.steps + 1;
        match self.and {
            Some(_) => nodes * nodes,
            None if self.best_alone => nodes,
            None => nodes * considered(self.brief, self.axis).len(),
        }
    }

    /// Finds it; `done` is called after every search of the grid.
    pub fn run(&self, done: &(dyn Fn() + Sync)) -> Crossover {
        let across = self.over.values(self.steps);
        let up = self.and.map_or(Vec::new(), |and| and.values(self.steps));
        let rows: Vec<Row> = if up.is_empty() {
            vec![self.line(&across, done)]
        } else if self.every_node {
            up.par_iter()
                .map(|&value| {
                    let brief = self.at_second(value);
                    let best = self.along(&brief, &across, None, done);
                    self.row(&brief, &across, best, vec![false; across.len()])
                })
                .collect()
        } else {
            let nodes = map::decide(self, &across, &up, done);
            let rows = up.par_iter().zip(nodes);
            rows.map(|(&value, nodes)| {
                let (best, among_known) = nodes.into_iter().map(|node| (node.best, node.among_known)).unzip();
                self.row(&self.at_second(value), &across, best, among_known)
            })
            .collect()
        };
        let present = self.best(self.brief, None, &[]);
        Crossover { across, up, rows, present, narrow: self.narrow() }
    }

    fn narrow(&self) -> f64 {
        NARROW[usize::from(self.and.is_some())]
    }

    fn best(&self, brief: &Brief, family: Option<&str>, guesses: &[Found]) -> Option<Found> {
        best_on(brief, self.axis, self.carried, self.setting, family, guesses)
    }

    fn turned(&self, brief: &Brief, requirement: Requirement, value: f64) -> Brief {
        requirement.with(brief, self.axis, value)
    }

    /// One range: the best of every family at every value.
    fn line(&self, across: &[f64], done: &(dyn Fn() + Sync)) -> Row {
        if self.best_alone {
            let best = self.along(self.brief, across, None, done);
            return self.row(self.brief, across, best, vec![false; across.len()]);
        }
        let curves: Vec<Curve> = considered(self.brief, self.axis)
            .into_par_iter()
            .map(|family| Curve { family, best: self.along(self.brief, across, Some(family), done) })
            .collect();
        let best: Vec<Option<Found>> = (0..across.len())
            .map(|node| {
                let all = curves.iter().filter_map(|curve| curve.best[node].as_ref());
                all.min_by(|one, other| one.order(other)).cloned()
            })
            .collect();
        let changes = self.changes(self.brief, across, &best);
        Row { among_known: vec![false; best.len()], best, curves, changes }
    }

    /// The brief at one value of the second range.
    fn at_second(&self, value: f64) -> Brief {
        self.and.map_or_else(|| self.brief.clone(), |and| self.turned(self.brief, and.requirement, value))
    }

    /// The brief at a node.
    fn at(&self, across: f64, up: Option<f64>) -> Brief {
        let brief = up.map_or_else(|| self.brief.clone(), |up| self.at_second(up));
        self.turned(&brief, self.over.requirement, across)
    }

    /// Two ranges: what was decided at one value of the second, with the changes along it.
    fn row(&self, brief: &Brief, across: &[f64], best: Vec<Option<Found>>, among_known: Vec<bool>) -> Row {
        let changes = self.changes(brief, across, &best);
        Row { best, among_known, curves: Vec::new(), changes }
    }

    fn along(
        &self,
        brief: &Brief,
        across: &[f64],
        family: Option<&str>,
        done: &(dyn Fn() + Sync),
    ) -> Vec<Option<Found>> {
        let mut before: Option<Found> = None;
        let mut all = Vec::with_capacity(across.len());
        for &value in across {
            let turned = self.turned(brief, self.over.requirement, value);
            let best = self.best(&turned, family, before.as_slice());
            // what was best last stays a guess across a gap
            before = best.clone().or(before);
            all.push(best);
            done();
        }
        all
    }

    fn changes(&self, brief: &Brief, across: &[f64], best: &[Option<Found>]) -> Vec<Change> {
        let steps: Vec<usize> =
            (1..across.len()).filter(|&node| !alike(best[node - 1].as_ref(), best[node].as_ref())).collect();
        let refined: Vec<Vec<Change>> = steps
            .par_iter()
            .map(|&node| {
                let mut changes = Vec::new();
                let low = (across[node - 1], best[node - 1].clone());
                self.refine(brief, low, (across[node], best[node].clone()), &mut changes);
                changes
            })
            .collect();
        refined.into_iter().flatten().collect()
    }

    /// Halves the way between two values whose best are of different families.
    fn refine(&self, brief: &Brief, low: (f64, Option<Found>), high: (f64, Option<Found>), changes: &mut Vec<Change>) {
        if alike(low.1.as_ref(), high.1.as_ref()) {
            return;
        }
        let middle = self.over.middle(low.0, high.0);
        let apart = low.0 < middle && middle < high.0;
        if high.0 - low.0 <= self.narrow() * high.0 || !apart {
            let cause = self.cause(brief, &low, &high);
            changes.push(Change { low: low.0, high: high.0, from: low.1, to: high.1, cause });
            return;
        }
        let turned = self.turned(brief, self.over.requirement, middle);
        let guesses: Vec<Found> = low.1.iter().chain(&high.1).cloned().collect();
        let best = self.best(&turned, None, &guesses);
        self.refine(brief, low, (middle, best.clone()), changes);
        self.refine(brief, (middle, best), high, changes);
    }

    /// Over one range families are sought on both sides; over two, where there are many places, the drives alone are judged.
    fn cause(&self, brief: &Brief, low: &(f64, Option<Found>), high: &(f64, Option<Found>)) -> Cause {
        let breaks = |found: &Option<Found>, value: f64| -> Option<String> {
            worst_failed(
                &self.turned(brief, self.over.requirement, value),
                self.axis,
                self.carried,
                self.setting,
                found.as_ref()?,
            )
        };
        let gone = |found: &Option<Found>, value: f64| -> Option<String> {
            let rule = breaks(found, value)?;
            let turned = self.turned(brief, self.over.requirement, value);
            // the drive itself is out; another of its family may still do
            let family = found.as_ref().map(|found| found.family);
            self.best(&turned, family, &[]).is_none().then_some(rule)
        };
        match (&low.1, &high.1, self.and) {
            // where nothing is admissible no family is
            (_, None, _) => breaks(&low.1, high.0).map_or(Cause::Merit, Cause::Leaves),
            (None, _, _) => breaks(&high.1, low.0).map_or(Cause::Merit, Cause::Enters),
            (_, _, Some(_)) => breaks(&low.1, high.0).map_or(Cause::Merit, Cause::Breaks),
            (_, _, None) => match gone(&low.1, high.0) {
                Some(rule) => Cause::Leaves(rule),
                None => gone(&high.1, low.0).map_or(Cause::Merit, Cause::Enters),
            },
        }
    }
}
