//! Over which weights of `prefer` the drive of an axis stays the best, and how little of a change lets another family tie.
//!
//! Method: the merit of a drive is linear in the weights, for the share by which advice not followed raises it is the same
//! for all weights. One weight is moved from 0 to 1 and the others keep their proportions; against each rival the drive
//! stays best on a half-line, and on the intersection of them all. Which rivals count is found out: at both ends of the
//! interval of the rivals known so far the axis is searched again, and a drive that is better there joins, until none does.
//! A linear merit that is the least at both ends is the least between them, so the interval is exact. The smallest change
//! of weights moves weight from where the rival is worst to where it is best; it is the optimum of the linear program over
//! the sum of the changes. Reading: Triantaphyllou and Sánchez, Decision Sciences 28 (1997), on sensitivity of weights.
//! Limits: the axis alone, at the mass that it carries in the machine chosen; the families' best are those of the present
//! weights.

use crate::brief::{Brief, Prefer};
use crate::drive::{Demand, Merit, REFERENCES, considered};
use crate::ledger::Ledger;
use crate::search::{Found, Setting, best_on, work_out};
use crate::units::{Mass, Measure};

/// The number of weights.
pub const WEIGHTS: usize = REFERENCES.len();

/// A share of a merit that turns nothing.
const ROUNDING: f64 = 1e-9;

/// A drive and its merit at each weight alone; less is better.
#[derive(Debug, Clone, PartialEq)]
pub struct Weighed {
    /// The drive.
    pub found: Found,
    /// Its merit with all weight on one preference, each in turn, in the order of the references.
    pub scores: [f64; WEIGHTS],
}

/// Over which values of one weight the drive stays the best.
#[derive(Debug, Clone, PartialEq)]
pub struct Range {
    /// The place of the weight among the references.
    pub weight: usize,
    /// Its share of all weights now.
    pub now: f64,
    /// The least share at which the drive stays.
    pub from: f64,
    /// The largest.
    pub to: f64,
    /// The drive that ties at the least share; none where it stays down to 0.
    pub below: Option<Found>,
    /// The drive that ties at the largest share; none where it stays up to 1.
    pub above: Option<Found>,
}

/// The best drive of another family.
#[derive(Debug, Clone, PartialEq)]
pub struct OtherFamily {
    /// The drive.
    pub found: Found,
    /// By how much its merit is above that of the drive chosen.
    pub distance: f64,
    /// The smallest sum of changes of weights that lets it tie, and the weights then; none where no weights do.
    pub change: Option<(f64, [f64; WEIGHTS])>,
}

/// What the weights do to the drive of an axis.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Weights {
    /// Each weight that can be moved.
    pub ranges: Vec<Range>,
    /// The drive that is better for the axis alone; then the machine decided, and weights of the axis say nothing.
    pub better_alone: Option<Found>,
    /// The best of each other family with admissible drives, the nearest in merit first.
    pub families: Vec<OtherFamily>,
}

/// The shares of the weights of a brief.
pub fn shares(prefer: &Prefer) -> [f64; WEIGHTS] {
    let weights = [prefer.whole_life_cost, prefer.accuracy, prefer.stiffness, prefer.upkeep];
    let sum: f64 = weights.iter().sum();
    if sum > 0.0 { weights.map(|weight| weight / sum) } else { std::array::from_fn(|k| if k == 0 { 1.0 } else { 0.0 }) }
}

/// Preferences with these shares.
pub fn prefer(shares: [f64; WEIGHTS]) -> Prefer {
    let [whole_life_cost, accuracy, stiffness, upkeep] = shares;
    Prefer { whole_life_cost, accuracy, stiffness, upkeep, stated: true }
}

/// The weights with one of them at this share and the others in their proportions.
pub fn moved<const N: usize>(shares: &[f64; N], weight: usize, share: f64) -> [f64; N] {
    let others: f64 = 1.0 - shares[weight];
    std::array::from_fn(|k| if k == weight { share } else { shares[k] / others * (1.0 - share) })
}

/// The merit at these weights; a preference without weight does not count, known or not.
pub fn weighed<const N: usize>(scores: &[f64; N], shares: &[f64; N]) -> f64 {
    scores.iter().zip(shares).map(|(score, share)| if *share > 0.0 { score * share } else { 0.0 }).sum()
}

/// The interval of one weight over which the first stays no worse than each rival, with the rivals that end it.
pub fn interval<const N: usize>(
    own: &[f64; N],
    rivals: &[[f64; N]],
    shares: &[f64; N],
    weight: usize,
) -> (f64, f64, Option<usize>, Option<usize>) {
    let now = shares[weight];
    let (mut from, mut to, mut below, mut above) = (0.0, 1.0, None, None);
    let rest = moved(shares, weight, 0.0);
    for (place, rival) in rivals.iter().enumerate() {
        // what the rival is worse by: at share t it is (1 − t) · others + t · own
        let others = weighed(rival, &rest) - weighed(own, &rest);
        let alone = rival[weight] - own[weight];
        if others.is_nan() || alone.is_nan() {
            continue;
        }
        let at = if others.is_finite() && alone.is_finite() { others / (others - alone) } else { now };
        if alone < 0.0 {
            let at = if at < now { now } else { at };
            if at < to {
                (to, above) = (at, Some(place));
            }
        } else if others < 0.0 {
            let at = if at > now { now } else { at };
            if at > from {
                (from, below) = (at, Some(place));
            }
        }
    }
    (from, to, below, above)
}

/// The smallest sum of changes of weights that lets a rival tie, and the weights then; none where no weights do.
pub fn smallest_change<const N: usize>(own: &[f64; N], rival: &[f64; N], shares: &[f64; N]) -> Option<(f64, [f64; N])> {
    let worse: [f64; N] = std::array::from_fn(|k| rival[k] - own[k]);
    if worse.iter().any(|worse| !worse.is_finite()) {
        return None;
    }
    let mut missing: f64 = worse.iter().zip(shares).map(|(worse, share)| worse * share).sum();
    let target = (0..N).min_by(|&a, &b| worse[a].total_cmp(&worse[b]))?;
    let mut changed = *shares;
    let mut taken = 0.0;
    let mut sources: Vec<usize> = (0..N).filter(|&k| k != target).collect();
    sources.sort_by(|&a, &b| worse[b].total_cmp(&worse[a]));
    for source in sources {
        let gain = worse[source] - worse[target];
        if missing <= 0.0 || gain <= 0.0 {
            break;
        }
        let wanted = missing / gain;
        let moved = if wanted < changed[source] { wanted } else { changed[source] };
        changed[source] -= moved;
        changed[target] += moved;
        taken += moved;
        missing -= moved * gain;
    }
    let scale: f64 = worse.iter().map(|worse| worse.abs()).fold(0.0, |a, b| if b > a { b } else { a });
    (missing <= 1e-12 * scale).then_some((2.0 * taken, changed))
}

/// The merit at each weight alone.
fn scores(sheet: &impl Ledger, unmet: f64) -> [f64; WEIGHTS] {
    std::array::from_fn(|k| {
        let alone = prefer(std::array::from_fn(|other| if other == k { 1.0 } else { 0.0 }));
        let merit = Merit::new(&alone).of(sheet) * (1.0 + unmet);
        // with all weight on the cost the merit is the cost itself
        if k == 0 { merit / REFERENCES[0].1 } else { merit }
    })
}

struct Axis<'a> {
    brief: &'a Brief,
    axis: usize,
    carried: f64,
    setting: &'a Setting<'a>,
}

impl Axis<'_> {
    fn weigh(&self, found: &Found) -> Option<Weighed> {
        let demand = Demand::new(self.brief, self.axis, Mass::of_si(self.carried));
        let worked = work_out(found.family, &found.path, &demand, self.setting).filter(|worked| worked.admissible())?;
        let scores = scores(&worked.sheet, worked.unmet_advice);
        Some(Weighed { found: Found { attributes: worked.attributes, ..found.clone() }, scores })
    }

    fn best(&self, shares: [f64; WEIGHTS], family: Option<&str>, guesses: &[Found]) -> Option<Weighed> {
        let setting = Setting { merit: Merit::new(&prefer(shares)), ..*self.setting };
        let found = best_on(self.brief, self.axis, self.carried, &setting, family, guesses)?;
        self.weigh(&found)
    }

    /// The interval of one weight, with rivals that join until none is better at either end.
    fn range(&self, own: &Weighed, rivals: &mut Vec<Weighed>, shares: &[f64; WEIGHTS], weight: usize) -> Range {
        loop {
            let known: Vec<[f64; WEIGHTS]> = rivals.iter().map(|rival| rival.scores).collect();
            let (from, to, below, above) = interval(&own.scores, &known, shares, weight);
            let mut joined = false;
            for (end, rival) in [(from, below), (to, above)] {
                if end == shares[weight] {
                    continue;
                }
                let there = moved(shares, weight, end);
                let guesses: Vec<Found> = std::iter::once(own)
                    .chain(rival.map(|rival| &rivals[rival]))
                    .map(|drive| drive.found.clone())
                    .collect();
                let reached = weighed(&own.scores, &there);
                if let Some(found) = self.best(there, None, &guesses)
                    && weighed(&found.scores, &there) < reached - ROUNDING * reached.abs()
                    && !rivals.iter().any(|rival| same(&rival.found, &found.found))
                {
                    rivals.push(found);
                    joined = true;
                }
            }
            if !joined {
                let named = |place: Option<usize>| place.map(|place| rivals[place].found.clone());
                return Range { weight, now: shares[weight], from, to, below: named(below), above: named(above) };
            }
        }
    }
}

fn same(one: &Found, other: &Found) -> bool {
    one.family == other.family && one.path == other.path
}

/// What the weights do to the drive of an axis that carries this much, kg; `known` are drives that may be rivals.
pub fn weights(
    brief: &Brief,
    axis: usize,
    carried: f64,
    setting: &Setting<'_>,
    chosen: &Found,
    known: &[Found],
) -> Weights {
    let on = Axis { brief, axis, carried, setting };
    let shares = shares(&brief.prefer);
    let Some(own) = on.weigh(chosen) else { return Weights::default() };
    let reached = weighed(&own.scores, &shares);
    let mut rivals: Vec<Weighed> =
        known.iter().filter(|found| !same(found, chosen)).filter_map(|found| on.weigh(found)).collect();
    let mut families: Vec<OtherFamily> = Vec::new();
    for family in considered(brief, axis).into_iter().filter(|&family| family != chosen.family) {
        let mut guesses: Vec<&Weighed> = rivals.iter().filter(|rival| rival.found.family == family).collect();
        guesses.sort_by(|a, b| a.found.order(&b.found));
        let guesses: Vec<Found> = guesses.into_iter().take(1).map(|rival| rival.found.clone()).collect();
        if let Some(best) = on.best(shares, Some(family), &guesses) {
            let change = smallest_change(&own.scores, &best.scores, &shares);
            let distance = best.found.attributes.merit - own.found.attributes.merit;
            families.push(OtherFamily { found: best.found.clone(), distance, change });
            if !rivals.iter().any(|rival| same(&rival.found, &best.found)) {
                rivals.push(best);
            }
        }
    }
    families.sort_by(|a, b| a.distance.total_cmp(&b.distance).then_with(|| a.found.order(&b.found)));
    let best = on.best(shares, None, std::slice::from_ref(chosen));
    let better = best.filter(|best| weighed(&best.scores, &shares) < reached - ROUNDING * reached.abs());
    if let Some(better) = better {
        return Weights { ranges: Vec::new(), better_alone: Some(better.found), families };
    }
    let movable = (0..WEIGHTS).filter(|&weight| shares[weight] < 1.0);
    let ranges = movable.map(|weight| on.range(&own, &mut rivals, &shares, weight)).collect();
    Weights { ranges, better_alone: None, families }
}
