//! The grid of a map over two requirements: coarse first, finer where the family changes.
//!
//! Method: every so many steps a node is decided in full, by the search of the whole catalogue. A cell whose decided nodes are of
//! more than one family is divided, again with full searches, down to single steps. What then still lies within a cell of one
//! family is decided among the known drives, those that were best at any node so far; where the best of them is of another family or
//! none is admissible, a full search decides, and a cell that turns out to hold a second family is divided too.
//! Limits: within an undivided cell a family that is best nowhere on its decided nodes is found only by drives that are known from
//! elsewhere, and the drive shown may be worse than the best of its family there.

use super::{Sweep, alike};
use crate::search::{Found, best_among};
use rayon::prelude::*;
use std::collections::BTreeSet;

/// Cells along each side that the coarse grid has at least, if there are so many steps.
const CELLS: usize = 15;
/// The most steps of a coarse cell.
const WIDEST: usize = 8;

/// The best drive at a node, and how it was decided.
#[derive(Debug, Clone)]
pub struct Node {
    /// The best drive.
    pub best: Option<Found>,
    /// Whether it is the best of known drives alone.
    pub among_known: bool,
}

/// A place of the grid: up, then across.
type Place = (usize, usize);

#[derive(Debug, Clone, Copy)]
struct Cell {
    low: Place,
    high: Place,
}

impl Cell {
    fn width(self) -> usize {
        (self.high.0 - self.low.0).max(self.high.1 - self.low.1)
    }

    fn places(self) -> impl Iterator<Item = Place> {
        (self.low.0..=self.high.0).flat_map(move |up| (self.low.1..=self.high.1).map(move |across| (up, across)))
    }

    /// Ends and middle of one side.
    fn cuts(low: usize, high: usize) -> Vec<usize> {
        let middle = (low + high) / 2;
        if low < middle { vec![low, middle, high] } else { vec![low, high] }
    }

    fn parts(self) -> Vec<Cell> {
        let (ups, acrosses) = (Cell::cuts(self.low.0, self.high.0), Cell::cuts(self.low.1, self.high.1));
        let sides = |cuts: &[usize]| -> Vec<(usize, usize)> {
            cuts.iter().copied().zip(cuts.iter().copied().skip(1)).collect()
        };
        let pairs = sides(&ups).into_iter().flat_map(|up| sides(&acrosses).into_iter().map(move |across| (up, across)));
        pairs.map(|(up, across)| Cell { low: (up.0, across.0), high: (up.1, across.1) }).collect()
    }

    fn corners(self) -> [Place; 4] {
        let (low, high) = (self.low, self.high);
        [low, (low.0, high.1), (high.0, low.1), high]
    }
}

/// The places of the coarse grid along one side.
fn coarse(steps: usize) -> Vec<usize> {
    let stride = steps.div_ceil(CELLS).clamp(1, WIDEST);
    let mut places: Vec<usize> = (0..steps).step_by(stride).collect();
    places.push(steps);
    places
}

/// The grid while it is decided.
struct Grid<'g, 's> {
    sweep: &'g Sweep<'s>,
    across: &'g [f64],
    up: &'g [f64],
    nodes: Vec<Option<Node>>,
    done: &'g (dyn Fn() + Sync),
}

/// Decides every node, row by row.
pub fn decide(sweep: &Sweep<'_>, across: &[f64], up: &[f64], done: &(dyn Fn() + Sync)) -> Vec<Vec<Node>> {
    let mut grid = Grid { sweep, across, up, nodes: vec![None; across.len() * up.len()], done };
    let (ups, acrosses) = (coarse(up.len() - 1), coarse(across.len() - 1));
    grid.first(&ups, &acrosses);
    let whole = |places: &[usize]| -> Vec<(usize, usize)> {
        places.iter().copied().zip(places.iter().copied().skip(1)).collect()
    };
    let mut cells = Vec::new();
    for up in whole(&ups) {
        cells.extend(whole(&acrosses).iter().map(|across| Cell { low: (up.0, across.0), high: (up.1, across.1) }));
    }
    cells = grid.divided(cells);
    grid.fill(&cells);
    grid.divided(cells);
    let Grid { nodes, .. } = grid;
    let undecided = || Node { best: None, among_known: false };
    let nodes: Vec<Node> = nodes.into_iter().map(|node| node.unwrap_or_else(undecided)).collect();
    nodes.chunks(across.len()).map(<[Node]>::to_vec).collect()
}

impl Grid<'_, '_> {
    fn index(&self, place: Place) -> usize {
        place.0 * self.across.len() + place.1
    }

    fn at(&self, place: Place) -> Option<&Node> {
        self.nodes.get(self.index(place)).and_then(Option::as_ref)
    }

    fn in_full(&self, place: Place) -> bool {
        self.at(place).is_some_and(|node| !node.among_known)
    }

    fn best(&self, place: Place) -> Option<&Found> {
        self.at(place).and_then(|node| node.best.as_ref())
    }

    fn keep(&mut self, found: Vec<(Place, Node)>) {
        for (place, node) in found {
            let index = self.index(place);
            if let Some(kept) = self.nodes.get_mut(index) {
                *kept = Some(node);
            }
        }
    }

    fn searched(&self, place: Place, guesses: &[Found]) -> Option<Found> {
        self.sweep.best(&self.sweep.at(self.across[place.1], Some(self.up[place.0])), None, guesses)
    }

    /// The coarse nodes; what was best before in the row is the guess of the next.
    fn first(&mut self, ups: &[usize], acrosses: &[usize]) {
        let rows: Vec<Vec<(Place, Node)>> = ups
            .par_iter()
            .map(|&up| {
                let mut before: Option<Found> = None;
                let mut row = Vec::with_capacity(acrosses.len());
                for &across in acrosses {
                    let best = self.searched((up, across), before.as_slice());
                    before = best.clone().or(before);
                    row.push(((up, across), Node { best, among_known: false }));
                    (self.done)();
                }
                row
            })
            .collect();
        self.keep(rows.into_iter().flatten().collect());
    }

    /// Whether the nodes decided in full within a cell are of more than one family.
    fn mixed(&self, cell: Cell) -> bool {
        let first = self.best(cell.low);
        cell.places().any(|place| self.in_full(place) && !alike(first, self.best(place)))
    }

    /// Divides cells of more than one family until none wider than a step is left.
    fn divided(&mut self, mut cells: Vec<Cell>) -> Vec<Cell> {
        loop {
            let (mixed, mut whole): (Vec<Cell>, Vec<Cell>) =
                cells.into_iter().partition(|&cell| cell.width() > 1 && self.mixed(cell));
            if mixed.is_empty() {
                return whole;
            }
            let mut wanted: BTreeSet<Place> = BTreeSet::new();
            let mut jobs: Vec<(Place, Vec<Found>)> = Vec::new();
            for cell in &mixed {
                let guesses: Vec<Found> =
                    cell.corners().into_iter().filter_map(|place| self.best(place).cloned()).collect();
                let parts = cell.parts();
                for place in parts.iter().flat_map(|part| part.corners()).filter(|&place| !self.in_full(place)) {
                    if wanted.insert(place) {
                        jobs.push((place, guesses.clone()));
                    }
                }
                whole.extend(parts);
            }
            let found = jobs
                .par_iter()
                .map(|(place, guesses)| {
                    let best = self.searched(*place, guesses);
                    if self.at(*place).is_none() {
                        (self.done)();
                    }
                    (*place, Node { best, among_known: false })
                })
                .collect();
            self.keep(found);
            cells = whole;
        }
    }

    /// Every drive that is best at a node decided in full, once each, in an order that hangs on nothing else.
    fn known(&self) -> Vec<Found> {
        let mut known: Vec<Found> = self.nodes.iter().flatten().filter_map(|node| node.best.clone()).collect();
        known.sort_by(|one, other| one.family.cmp(other.family).then_with(|| one.path.cmp(&other.path)));
        known.dedup_by(|one, other| one.family == other.family && one.path == other.path);
        known
    }

    /// Decides what no cell division has reached, among the known drives where they are of the family of the corners.
    fn fill(&mut self, cells: &[Cell]) {
        let known = self.known();
        let mut jobs: Vec<(Place, Place)> = Vec::new();
        let mut wanted: BTreeSet<Place> = BTreeSet::new();
        for cell in cells {
            let open = cell.places().filter(|&place| self.at(place).is_none());
            jobs.extend(open.filter(|&place| wanted.insert(place)).map(|place| (place, cell.low)));
        }
        let sweep = self.sweep;
        let found = jobs
            .par_iter()
            .map(|&(place, corner)| {
                let brief = sweep.at(self.across[place.1], Some(self.up[place.0]));
                let best = best_among(&brief, sweep.axis, sweep.carried, sweep.setting, &known, &|_| true);
                let among_known = best.is_some() && alike(best.as_ref(), self.best(corner));
                let best = if among_known { best } else { sweep.best(&brief, None, best.as_slice()) };
                (self.done)();
                (place, Node { best, among_known })
            })
            .collect();
        self.keep(found);
    }
}
