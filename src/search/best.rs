//! The best drive of an axis and nothing else: no census, no undominated set.
//!
//! Method: branch and bound, all families at once. The branches of the first two stages are taken in the order of what they cost
//! at least, the choices of a stage in the order of their prices; a branch whose known and least prices reach more than the best
//! found in any family is left. Drives that were best under a like brief, given as
//! guesses, set the bound from the start. The answer is the one that the full search gives, ties included; guesses and
//! threads change nothing but the time.

pub mod tests;

use super::front::with_unmet;
use super::steps::{Kept, Steps};
use super::{Attributes, Found, MOST_STAGES, Path, Plan, Setting};
use crate::brief::Brief;
use crate::drive::{Demand, Family, WithFamily, considered, with_family};
use crate::ledger::Known;
use crate::units::{Mass, Measure};
use rayon::prelude::*;
use std::sync::atomic::{AtomicU64, Ordering};

/// Choices of a stage from which on each is asked for its price before it is entered.
const MANY: usize = 8;

/// Which drives count beside being admissible.
pub type Accept<'c> = &'c (dyn Fn(&Attributes) -> bool + Sync);

/// The best admissible drive of an axis that carries this much, kg; of one family where one is named.
pub fn best_on(
    brief: &Brief,
    axis: usize,
    carried: f64,
    setting: &Setting<'_>,
    family: Option<&str>,
    guesses: &[Found],
) -> Option<Found> {
    best_that(brief, axis, carried, setting, family, guesses, &|_| true)
}

/// The same among the drives that are accepted.
pub fn best_that(
    brief: &Brief,
    axis: usize,
    carried: f64,
    setting: &Setting<'_>,
    family: Option<&str>,
    guesses: &[Found],
    accept: Accept<'_>,
) -> Option<Found> {
    let wanted = |id: &str| family.is_none_or(|wanted| wanted == id);
    let guesses: Vec<Found> = guesses.iter().filter(|guess| wanted(guess.family)).cloned().collect();
    let best = best_among(brief, axis, carried, setting, &guesses, accept);
    let demand = Demand::new(brief, axis, Mass::of_si(carried));
    // positive floats order as their bits do
    let bound = best.as_ref().map_or(f64::INFINITY, |found| found.attributes.merit);
    let shared = AtomicU64::new(bound.to_bits());
    let ids: Vec<&str> = considered(brief, axis).into_iter().filter(|id| wanted(id)).collect();
    // what one family finds bounds the others; of what is left none is better than the best of all
    let found = ids.into_par_iter().map(|id| {
        let work = Best { demand: &demand, setting, shared: &shared, accept };
        with_family(id, &demand, setting.catalog, work).flatten()
    });
    better(best, found.reduce(|| None, better))
}

/// The best of these drives that is admissible and accepted; what they reach under another brief does not count.
pub fn best_among(
    brief: &Brief,
    axis: usize,
    carried: f64,
    setting: &Setting<'_>,
    drives: &[Found],
    accept: Accept<'_>,
) -> Option<Found> {
    struct Among<'s, 'd, 'a> {
        drives: &'s [Found],
        demand: &'d Demand<'d>,
        setting: &'s Setting<'a>,
        accept: Accept<'s>,
    }
    impl WithFamily for Among<'_, '_, '_> {
        type Output = Option<Found>;
        fn with<F: Family>(self, family: &F) -> Self::Output {
            let plan = Plan::new(family, self.demand, self.setting);
            let choices = family.stages();
            let mut sheet = Known::default();
            self.demand.enter(&mut sheet);
            sheet.leave_out(plan.left_out);
            let mut measure = |found: &Found| {
                let there = choices.iter().zip(&found.path).all(|(&choices, &choice)| usize::from(choice) < choices);
                let passes = there
                    && plan.order.iter().enumerate().all(|(place, &stage)| {
                        family.enter(stage, &found.path, &mut sheet);
                        plan.first_failed(place, &sheet).is_none()
                    });
                let unmet = if passes { plan.unmet_advice(&sheet) } else { return None };
                let attributes = Attributes::of(family, &found.path, &sheet, &self.setting.merit, unmet);
                let counts = !attributes.merit.is_nan() && (self.accept)(&attributes);
                counts.then(|| Found { attributes, ..found.clone() })
            };
            let own = self.drives.iter().filter(|found| found.family == family.id());
            own.map(&mut measure).fold(None, better)
        }
    }
    let demand = Demand::new(brief, axis, Mass::of_si(carried));
    let mut best = None;
    for id in considered(brief, axis) {
        if drives.iter().any(|found| found.family == id) {
            let among = Among { drives, demand: &demand, setting, accept };
            best = better(best, with_family(id, &demand, setting.catalog, among).flatten());
        }
    }
    best
}

fn better(one: Option<Found>, other: Option<Found>) -> Option<Found> {
    match (one, other) {
        (Some(one), Some(other)) => Some(if other.order(&one).is_lt() { other } else { one }),
        (one, other) => one.or(other),
    }
}

struct Best<'s, 'd, 'a> {
    demand: &'d Demand<'d>,
    setting: &'s Setting<'a>,
    /// The bits of the least merit that was found in any family.
    shared: &'s AtomicU64,
    accept: Accept<'s>,
}

impl WithFamily for Best<'_, '_, '_> {
    type Output = Option<Found>;
    fn with<F: Family>(self, family: &F) -> Self::Output {
        let plan = Plan::new(family, self.demand, self.setting);
        if plan.configurations() == 0 {
            return None;
        }
        let mut axis = Known::default();
        self.demand.enter(&mut axis);
        axis.leave_out(plan.left_out);
        let steps = Steps { family, plan: &plan, plainly: self.setting.exhaustive };
        let dive = Dive { steps, setting: self.setting, shared: self.shared, accept: self.accept };
        let mut branches = dive.branches(&axis);
        branches.sort_by(|a, b| a.floor.total_cmp(&b.floor).then_with(|| a.path.cmp(&b.path)));
        branches
            .into_par_iter()
            .with_max_len(1)
            .map_init(|| axis.clone(), |sheet, branch| dive.branch(branch, sheet))
            .reduce(|| None, better)
    }
}

/// One choice of each of the first two stages.
struct Branch {
    /// No configuration behind has a merit below this.
    floor: f64,
    path: Path,
    /// The weights of the advice that is not followed so far.
    unmet: f64,
    kept: Kept,
}

struct Dive<'w, 's, F> {
    steps: Steps<'w, F>,
    setting: &'w Setting<'s>,
    /// The bits of the least merit that was found.
    shared: &'w AtomicU64,
    accept: Accept<'w>,
}

impl<F: Family> Dive<'_, '_, F> {
    /// The choices of the first two stages that pass, with what each costs at least.
    fn branches(&self, axis: &Known) -> Vec<Branch> {
        let (first, second) = (self.steps.plan.stages[0], self.steps.plan.stages[1]);
        let found: Vec<Option<Branch>> = (0..first * second)
            .into_par_iter()
            .map_init(|| axis.clone(), |sheet, index| self.pair(index / second, index % second, sheet))
            .collect();
        found.into_iter().flatten().collect()
    }

    /// Enters the first two stages and works out what is kept for them; nothing if nothing behind may pass.
    fn pair(&self, first: usize, second: usize, sheet: &mut Known) -> Option<Branch> {
        let plan = self.steps.plan;
        let mut path = [0; MOST_STAGES];
        (path[plan.order[0]], path[plan.order[1]]) = (first as u16, second as u16);
        let mut unmet = 0.0;
        for place in 0..2 {
            self.steps.family.enter(plan.order[place], &path, sheet);
            if plan.first_failed(place, sheet).is_some() {
                return None;
            }
            unmet += plan.newly_unmet(place, sheet);
        }
        let mut kept = self.steps.room();
        // a first look at the price spares the rest where even that is too much
        let first_look = with_unmet(self.steps.floor(1, &path, sheet, &kept, &self.setting.merit), unmet);
        if self.beaten(first_look) {
            return None;
        }
        self.steps.keep(&mut path, sheet, &mut kept);
        let floor = with_unmet(self.steps.floor(1, &path, sheet, &kept, &self.setting.merit), unmet);
        (!kept.hopeless && !self.beaten(floor)).then_some(Branch { floor, path, unmet, kept })
    }

    fn beaten(&self, floor: f64) -> bool {
        // only what is strictly worse is left, so that ties stay in
        !self.steps.plainly && floor > f64::from_bits(self.shared.load(Ordering::Relaxed))
    }

    fn branch(&self, branch: Branch, sheet: &mut Known) -> Option<Found> {
        let Branch { floor, mut path, unmet, mut kept } = branch;
        if self.setting.stopped() || self.beaten(floor) {
            return None;
        }
        for &stage in &self.steps.plan.order[..2] {
            self.steps.family.enter(stage, &path, sheet);
        }
        let mut best = None;
        self.onward(2, unmet, &mut path, sheet, &mut kept, &mut best);
        best
    }

    fn onward(
        &self,
        place: usize,
        unmet: f64,
        path: &mut Path,
        sheet: &mut Known,
        kept: &mut Kept,
        best: &mut Option<Found>,
    ) {
        let plan = self.steps.plan;
        if place == plan.stages.len() {
            self.arrive(path, sheet, best);
            return;
        }
        let stage = plan.order[place];
        // where there are many, the price alone leaves most
        let priced = plan.stages[place] > MANY || place + 2 >= plan.stages.len();
        for &choice in &plan.cheapest_first[place] {
            path[stage] = choice;
            if self.steps.known_to_fail(place, path, kept) {
                continue;
            }
            let before = || with_unmet(self.steps.floor_before(place, path, sheet, kept, &self.setting.merit), unmet);
            if priced && self.beaten(before()) {
                // where the price alone tells them apart, none of the dearer is better
                if plan.priced[place] { break } else { continue }
            }
            let screened = self.steps.screened(place, path, sheet);
            if !screened && self.steps.enter(place, path, sheet, kept).is_some() {
                continue;
            }
            let more = plan.newly_unmet(place, sheet);
            let unmet = unmet + more;
            let floor = || with_unmet(self.steps.floor(place, path, sheet, kept, &self.setting.merit), unmet);
            if (plan.grows[place] || more > 0.0) && self.beaten(floor()) {
                continue;
            }
            if self.steps.glimpsed(place, path, sheet) {
                continue;
            }
            self.onward(place + 1, unmet, path, sheet, kept, best);
        }
        path[stage] = 0;
    }

    fn arrive(&self, path: &Path, sheet: &Known, best: &mut Option<Found>) {
        let plain = Attributes::plain(sheet, &self.setting.merit);
        if self.beaten(plain.merit) {
            return;
        }
        let unmet = self.steps.plan.unmet_advice(sheet);
        let attributes = plain.whole(self.steps.family, path, unmet);
        if attributes.merit.is_nan() || self.beaten(attributes.merit) || !(self.accept)(&attributes) {
            return;
        }
        self.shared.fetch_min(attributes.merit.to_bits(), Ordering::Relaxed);
        let found = Found { family: self.steps.family.id(), path: *path, attributes };
        *best = better(best.take(), Some(found));
    }
}
