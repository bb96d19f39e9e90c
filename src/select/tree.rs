//! An exact search over the axes, best first by merit: decides between equals by a fixed order and checks
//! what the solver says.
//!
//! Limits: it gives up after a fixed number of nodes and says so; the count does not depend on the machine.

use super::{Machine, needs};
use crate::search::Attributes;
use crate::units::Measure;

/// Nodes after which it gives up.
const MOST_NODES: u64 = 3_000_000;

/// What the search found.
pub struct Tree {
    /// The best choice; of equals the one whose columns come first.
    pub picks: Option<Vec<usize>>,
    /// Whether every branch was seen or shown to hold nothing better.
    pub complete: bool,
}

struct Search<'t, 'm> {
    machine: &'t Machine<'m>,
    kept: &'t [Vec<usize>],
    cuts: &'t [Vec<usize>],
    /// The least that the axes from this one on can add, for each additive attribute.
    rest: Vec<[f64; 4]>,
    limits: [f64; 4],
    best: Option<(f64, Vec<usize>)>,
    nodes: u64,
}

/// Merit, purchase, squared error and power: what adds up over the axes.
fn additive(attributes: &Attributes) -> [f64; 4] {
    [attributes.merit, attributes.purchase, attributes.error * attributes.error, attributes.power]
}

/// Searches the columns that were kept; `None` if an axis offers nothing.
pub fn search(machine: &Machine<'_>, kept: &[Vec<usize>], cuts: &[Vec<usize>]) -> Option<Tree> {
    if kept.iter().any(Vec::is_empty) {
        return Some(Tree { picks: None, complete: true });
    }
    let axes = kept.len();
    let mut rest = vec![[0.0; 4]; axes + 1];
    for axis in (0..axes).rev() {
        let mut least = [f64::INFINITY; 4];
        for &column in &kept[axis] {
            let values = additive(&machine.offers[axis][column].found.attributes);
            for (least, value) in least.iter_mut().zip(values) {
                if value < *least {
                    *least = value;
                }
            }
        }
        rest[axis] = std::array::from_fn(|index| rest[axis + 1][index] + least[index]);
    }
    let limits = &machine.limits;
    let loose = |limit: Option<f64>| limit.map_or(f64::INFINITY, |limit| limit * (1.0 + 1e-9));
    let limits = [
        f64::INFINITY,
        loose(limits.purchase.map(|limit| limit.0)),
        loose(limits.tool_point_error.map(|limit| limit.si() * limit.si())),
        loose(limits.supply_power.map(|limit| limit.si())),
    ];
    let mut search = Search { machine, kept, cuts, rest, limits, best: None, nodes: 0 };
    let mut picks = Vec::with_capacity(axes);
    let complete = search.onward(&mut picks, [0.0; 4]);
    Some(Tree { picks: search.best.map(|(_, picks)| picks), complete })
}

impl Search<'_, '_> {
    /// Returns whether the branch was seen to its end.
    fn onward(&mut self, picks: &mut Vec<usize>, sums: [f64; 4]) -> bool {
        let axis = picks.len();
        if axis == self.kept.len() {
            let sound = !self.cuts.contains(picks) && needs(self.machine, picks).keep_all();
            if sound {
                self.best = Some((sums[0], picks.clone()));
            }
            return true;
        }
        for index in 0..self.kept[axis].len() {
            self.nodes += 1;
            if self.nodes > MOST_NODES {
                return false;
            }
            let column = self.kept[axis][index];
            let values = additive(&self.machine.offers[axis][column].found.attributes);
            let sums: [f64; 4] = std::array::from_fn(|index| sums[index] + values[index]);
            let reach: [f64; 4] = std::array::from_fn(|index| sums[index] + self.rest[axis + 1][index]);
            // columns come in rising order, so an equal one found later is no better
            let no_better = self.best.as_ref().is_some_and(|(best, _)| reach[0] >= *best);
            if no_better || reach.iter().zip(&self.limits).any(|(reach, limit)| reach > limit) {
                continue;
            }
            picks.push(column);
            let complete = self.onward(picks, sums);
            picks.pop();
            if !complete {
                return false;
            }
        }
        true
    }
}
