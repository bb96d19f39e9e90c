//! The best drive of an axis and nothing else: no census, no undominated set.
//!
//! Method: every family is walked with the best merit found so far as a bound; branches whose known prices alone reach it
//! are left. Drives that were best under a like brief, given as guesses, set the bound from the start. The answer is the
//! one that the full search gives, ties included.

use super::{Found, Setting, walk, work_out};
use crate::brief::Brief;
use crate::drive::{Demand, Family, WithFamily, considered, with_family};
use crate::units::{Mass, Measure};

/// The best admissible drive of an axis that carries this much, kg; of one family where one is named.
pub fn best_on(
    brief: &Brief,
    axis: usize,
    carried: f64,
    setting: &Setting<'_>,
    family: Option<&str>,
    guesses: &[Found],
) -> Option<Found> {
    let demand = Demand::new(brief, axis, Mass::of_si(carried));
    let mut best: Option<Found> = None;
    for guess in guesses.iter().filter(|guess| family.is_none_or(|wanted| wanted == guess.family)) {
        let worked = work_out(guess.family, &guess.path, &demand, setting).filter(|worked| worked.admissible());
        let found = worked.map(|worked| Found { attributes: worked.attributes, ..guess.clone() });
        best = better(best, found);
    }
    for id in considered(brief, axis) {
        if family.is_none_or(|wanted| wanted == id) {
            let below = best.as_ref().map(|found| found.attributes.merit);
            let found = with_family(id, &demand, setting.catalog, Best { demand: &demand, setting, below });
            best = better(best, found.flatten());
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
    below: Option<f64>,
}

impl WithFamily for Best<'_, '_, '_> {
    type Output = Option<Found>;
    fn with<F: Family>(self, family: &F) -> Self::Output {
        // a hair more, so that what ties is found and the order decides
        let below = self.below.map(|merit| merit * (1.0 + 1e-9));
        walk(family, self.demand, self.setting, below).best.into_iter().next()
    }
}
