//! The next-best machines after the one that was chosen.
//!
//! Method: the search keeps the k best machines; each is verified by working its drives out at the mass that they really
//! carry, and one that fails is cut off and the search goes on. The best machine of which one axis at least has a drive of
//! another family is found apart: it either differs on the first axis, or agrees there and differs on the second, and so on;
//! the best of these cases is the best of all. Both are exact over the columns that are offered.
//! Limits: a drive that another one of its axis beats in all that counts is not offered, so such machines are left out.

use super::{Machine, Status};
use crate::search::Found;

/// Why a machine is told.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NextKind {
    /// It comes next by the objective.
    NextBest,
    /// It is the best that differs from the chosen one in the family of a drive.
    OtherFamily,
}

/// A machine after the chosen one.
#[derive(Debug, Clone, PartialEq)]
pub struct Next {
    /// Why it is told.
    pub kind: NextKind,
    /// Whether nothing of these columns comes before it that is not told.
    pub status: Status,
    /// The column of each axis.
    pub picks: Vec<usize>,
    /// The sum of merits.
    pub objective: f64,
    /// The axes whose drive is another.
    pub differs: Vec<usize>,
}

/// Answers that may be refused before the search gives up.
const MOST_REFUSED: usize = 200;

impl Machine<'_> {
    /// The next-best `count` machines after this one, best first.
    pub fn next_best(&self, chosen: &[usize], count: usize, verify: impl Fn(usize, &Found, f64) -> bool) -> Vec<Next> {
        let all = self.everything();
        let mut cuts = self.same_drives(chosen);
        let mut sound: Vec<Vec<usize>> = Vec::new();
        let mut refused = 0;
        loop {
            let asked = count - sound.len();
            let ranked = self.ranked(&all, asked, &cuts, false);
            let status = if ranked.complete { Status::Optimal } else { Status::NotProven };
            for (_, picks) in &ranked.best {
                // the same drives in other intervals of carried mass are the same machine
                if cuts.contains(picks) {
                    continue;
                }
                if self.stands(picks, &verify) {
                    cuts.extend(self.same_drives(picks));
                    sound.push(picks.clone());
                } else {
                    refused += 1;
                    cuts.push(picks.clone());
                }
            }
            if sound.len() >= count || ranked.best.len() < asked || refused >= MOST_REFUSED {
                let status = if refused >= MOST_REFUSED { Status::NotProven } else { status };
                let next = |picks: Vec<usize>| self.next(NextKind::NextBest, status, chosen, picks);
                return sound.into_iter().map(next).collect();
            }
        }
    }

    /// The best machine that has a drive of another family on one axis at least.
    pub fn best_of_other_family(&self, chosen: &[usize], verify: impl Fn(usize, &Found, f64) -> bool) -> Option<Next> {
        let family = |axis: usize, place: usize| self.offers[axis][place].found.family;
        let own = |axis: usize| family(axis, chosen[axis]);
        let of_axis = |axis: usize, wanted: &dyn Fn(&str) -> bool| -> Vec<usize> {
            (0..self.offers[axis].len()).filter(|&place| wanted(family(axis, place))).collect()
        };
        let mut best: Option<(f64, Vec<usize>)> = None;
        let mut status = Status::Optimal;
        for first in 0..chosen.len() {
            let allowed: Vec<Vec<usize>> = (0..chosen.len())
                .map(|axis| match axis.cmp(&first) {
                    std::cmp::Ordering::Less => of_axis(axis, &|family| family == own(axis)),
                    std::cmp::Ordering::Equal => of_axis(axis, &|family| family != own(axis)),
                    std::cmp::Ordering::Greater => of_axis(axis, &|_| true),
                })
                .collect();
            let mut cuts: Vec<Vec<usize>> = Vec::new();
            loop {
                let ranked = self.ranked(&allowed, 1, &cuts, false);
                if !ranked.complete {
                    status = Status::NotProven;
                }
                let Some((cost, picks)) = ranked.best.into_iter().next() else { break };
                if best.as_ref().is_some_and(|(least, known)| (*least, known) <= (cost, &picks)) {
                    break;
                }
                if self.stands(&picks, &verify) {
                    best = Some((cost, picks));
                    break;
                }
                cuts.push(picks);
                if cuts.len() >= MOST_REFUSED {
                    status = Status::NotProven;
                    break;
                }
            }
        }
        best.map(|(_, picks)| self.next(NextKind::OtherFamily, status, chosen, picks))
    }

    fn next(&self, kind: NextKind, status: Status, chosen: &[usize], picks: Vec<usize>) -> Next {
        let objective = self.objective(&picks);
        let differs = (0..picks.len()).filter(|&axis| !self.same_drive(axis, chosen[axis], picks[axis])).collect();
        Next { kind, status, picks, objective, differs }
    }

    fn same_drive(&self, axis: usize, one: usize, other: usize) -> bool {
        let (one, other) = (&self.offers[axis][one].found, &self.offers[axis][other].found);
        one.family == other.family && one.path == other.path
    }

    /// All choices that are the same drives: a drive with several intervals of carried mass is several columns.
    fn same_drives(&self, picks: &[usize]) -> Vec<Vec<usize>> {
        let mut all: Vec<Vec<usize>> = vec![Vec::new()];
        for (axis, &pick) in picks.iter().enumerate() {
            let same: Vec<usize> =
                (0..self.offers[axis].len()).filter(|&place| self.same_drive(axis, pick, place)).collect();
            all = all
                .iter()
                .flat_map(|start| same.iter().map(move |&place| start.iter().copied().chain([place]).collect()))
                .collect();
        }
        all
    }
}
