//! The machine: one drive an axis, so that the whole is best and every limit of the machine is kept.
//!
//! Method: an integer program with one binary for each drive that an axis offers (a column). Exactly one is
//! chosen an axis; the drives of carried axes load their carriers, and a column stands for an interval of
//! carried mass within which the drive passes all its rules, so the coupling is a pair of linear rows. Errors
//! of axes at right angles add by squares, which is linear in the binaries. Prices on the limits (Lagrangian
//! relaxation) bound every machine from below and drop the columns that no machine of interest can hold; a
//! search of our own over what is left finds the best, of equals the first by a fixed order, and good_lp solves
//! the program over the columns that may still be in a machine as good and has to agree. The answer is verified
//! by working every drive out again at the mass it really carries; an answer that fails is cut off and the
//! program is solved again.
//! Limits: one error figure for the whole machine; power of all axes at once.

mod check;
mod dual;
mod next;
mod program;
mod ranked;
mod table;
mod tree;

pub use check::{Needs, needs};
pub use next::{Next, NextKind};
pub use program::Solved;

use crate::brief::{Brief, Limits};
use crate::search::{Found, Offer};

/// What solves the integer program of a machine over the columns that were kept, without the machines that are cut off.
pub type Solver<'s> = &'s dyn Fn(&Machine<'_>, &[Vec<usize>], &[Vec<usize>]) -> Solved;

/// The machine to be put together.
#[derive(Debug, Clone)]
pub struct Machine<'a> {
    /// The brief.
    pub brief: &'a Brief,
    /// The limits that are kept; the brief may state more.
    pub limits: Limits,
    /// What each axis offers, best first.
    pub offers: Vec<Vec<Offer>>,
}

/// How a choice was proved.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Status {
    /// No machine of these columns is better.
    Optimal,
    /// No machine of these columns keeps the limits.
    Infeasible,
    /// The solver ran out of time; what is given is the best that was found.
    NotProven,
}

/// The machine that was chosen.
#[derive(Debug, Clone, PartialEq)]
pub struct Choice {
    /// How it was proved.
    pub status: Status,
    /// The column chosen of each axis; empty if none keeps the limits.
    pub picks: Vec<usize>,
    /// The sum of merits.
    pub objective: Option<f64>,
    /// No machine of these columns can be below this.
    pub bound: Option<f64>,
    /// Columns offered.
    pub columns: u64,
    /// Answers that direct evaluation refused.
    pub cuts: u64,
    /// Whether the solver of the integer program found the same; it is not asked where many columns may be in a machine
    /// as good, and the search of our own has then proved the answer alone.
    pub confirmed: bool,
}

/// Columns up to which the solver is asked to confirm what the search proved; beyond it may take seconds.
const MOST_CONFIRMED: usize = 64;

/// Answers that may be refused before the program gives up.
const MOST_CUTS: u64 = 200;

impl Machine<'_> {
    /// All axes that an axis carries, directly or through others.
    pub fn subtree(&self, axis: usize) -> Vec<usize> {
        self.brief.carried_by_way_of(axis)
    }

    /// What an axis carries in this choice, kg.
    pub fn carried(&self, axis: usize, picks: &[usize]) -> f64 {
        self.brief.load(axis, |carried| self.offers[carried][picks[carried]].found.attributes.mass)
    }

    /// Chooses one column an axis. `verify` works the drive of an axis out at the mass that it really carries.
    pub fn choose(&self, exhaustive: bool, verify: impl Fn(usize, &Found, f64) -> bool) -> Choice {
        self.choose_by(&program::solve, exhaustive, verify)
    }

    /// The same with another solver of the integer program. What it says is held against the limits and against the tree; nothing
    /// of it is taken on trust but, where the tree was not finished, that no machine keeps the limits.
    pub fn choose_by(
        &self,
        solver: Solver<'_>,
        exhaustive: bool,
        verify: impl Fn(usize, &Found, f64) -> bool,
    ) -> Choice {
        let columns = self.offers.iter().map(|offer| offer.len() as u64).sum();
        let mut cuts: Vec<Vec<usize>> = Vec::new();
        loop {
            let mut choice = self.solve(solver, exhaustive, &cuts);
            choice.columns = columns;
            choice.cuts = cuts.len() as u64;
            if choice.picks.is_empty() || self.stands(&choice.picks, &verify) {
                return choice;
            }
            cuts.push(choice.picks.clone());
            if cuts.len() as u64 >= MOST_CUTS {
                let cuts = cuts.len() as u64;
                return Choice { status: Status::NotProven, picks: Vec::new(), objective: None, cuts, ..choice };
            }
        }
    }

    /// Whether every drive of a choice passes at the mass that it really carries.
    fn stands(&self, picks: &[usize], verify: &impl Fn(usize, &Found, f64) -> bool) -> bool {
        (0..self.offers.len())
            .all(|axis| verify(axis, &self.offers[axis][picks[axis]].found, self.carried(axis, picks)))
    }

    fn solve(&self, solver: Solver<'_>, exhaustive: bool, cuts: &[Vec<usize>]) -> Choice {
        let all = self.everything();
        let ranked = self.ranked(&all, 1, cuts, exhaustive);
        let best = ranked.best.first().map(|(_, picks)| picks.clone());
        let kept = if exhaustive { all } else { ranked.kept };
        let few = kept.iter().map(Vec::len).sum::<usize>() <= MOST_CONFIRMED;
        let solved = if exhaustive || few || !ranked.complete { solver(self, &kept, cuts) } else { Solved::NotProven };
        let solved = match solved {
            Solved::Picks { picks, .. } if !self.has(&picks) => Solved::NotProven,
            solved => solved,
        };
        let as_good = |picks: &[usize], best: &[usize]| {
            let objective = self.objective(best);
            (self.objective(picks) - objective).abs() <= 1e-6 * objective.abs()
        };
        let confirmed = match (&solved, &best) {
            (Solved::Picks { picks, proven: true }, Some(best)) => {
                as_good(picks, best) && needs(self, picks).keep_all()
            }
            (Solved::Infeasible, None) => true,
            _ => false,
        };
        let choice = |status, picks: Vec<usize>, bound: Option<f64>| {
            let objective = if picks.is_empty() { None } else { Some(self.objective(&picks)) };
            let confirmed = confirmed && status != Status::NotProven;
            Choice { status, picks, objective, bound, columns: 0, cuts: 0, confirmed }
        };
        match (solved, best) {
            (solved, Some(picks)) if ranked.complete => {
                // the solver's own answer has to be as good; where it is not, nothing is called proven
                let disputed = matches!(&solved, Solved::Picks { picks: own, proven: true } if !as_good(own, &picks));
                let objective = self.objective(&picks);
                choice(if disputed { Status::NotProven } else { Status::Optimal }, picks, Some(objective))
            }
            (_, None) if ranked.complete => choice(Status::Infeasible, Vec::new(), None),
            (Solved::Picks { picks, proven }, _) if needs(self, &picks).keep_all() => {
                let bound = if proven { self.objective(&picks) } else { self.floor() };
                choice(if proven { Status::Optimal } else { Status::NotProven }, picks, Some(bound))
            }
            (Solved::Infeasible, None) => choice(Status::Infeasible, Vec::new(), None),
            (_, best) => choice(Status::NotProven, best.unwrap_or_default(), Some(self.floor())),
        }
    }

    /// Whether there is such a machine at all.
    fn has(&self, picks: &[usize]) -> bool {
        picks.len() == self.offers.len() && picks.iter().zip(&self.offers).all(|(&pick, offer)| pick < offer.len())
    }

    /// Every column of every axis.
    fn everything(&self) -> Vec<Vec<usize>> {
        self.offers.iter().map(|offer| (0..offer.len()).collect()).collect()
    }

    /// The sum of merits of a choice.
    pub fn objective(&self, picks: &[usize]) -> f64 {
        picks.iter().zip(&self.offers).map(|(&pick, offer)| offer[pick].found.attributes.merit).sum()
    }

    /// What no machine can be below: every axis at its best.
    pub fn floor(&self) -> f64 {
        let least = |offer: &Vec<Offer>| {
            offer
                .iter()
                .map(|column| column.found.attributes.merit)
                .fold(f64::INFINITY, |a, b| if b < a { b } else { a })
        };
        self.offers.iter().map(least).sum()
    }
}
