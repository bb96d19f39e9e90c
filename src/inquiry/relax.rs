//! What stands in the way of an axis without an admissible drive, and the cheapest ways to relax it.
//!
//! Method: the conflict is found by deletion, the axis searched again each time. Each demand of the conflict is relaxed
//! alone: scanned from what the brief asks towards the easy side, for a drive may be admissible between two values only,
//! and the first step at which one is admissible is halved until it is known to half a percent. Then two at a time by the
//! same factor. Where neither helps, the demands that have to give together are found by addition, twice: what the machine
//! is (travel, mass, cutting force) is kept first, then once the speed and once the acceleration; they are relaxed by the
//! same factor, and each is then taken back as far as it goes, to two percent. Values are rounded to three digits on the easy side where a drive is still admissible there.
//! Limits: values of a scan more than a step apart may hide a drive between them; the axis carries the most it may have to.

use super::Requirement;
use super::condition::{Condition, Relaxed, fits};
use super::conflict::{conflict, correction};
use crate::brief::Brief;
use crate::drive::Demand;
use crate::search::{Found, Setting, admissible, best_on};
use crate::units::{Mass, Measure};
use rayon::prelude::*;

/// Factors by which demands are eased in a scan.
const FACTORS: [f64; 9] = [1.05, 1.2, 1.5, 2.0, 3.0, 6.0, 15.0, 50.0, 200.0];
/// How closely a value is found, as a factor.
const CLOSE: f64 = 1.005;
/// How closely each of several that give together is taken back, as a factor.
const TAKEN_BACK: f64 = 1.02;

/// One demand and what it would be.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Change {
    /// The demand.
    pub condition: Condition,
    /// What the brief asks, in SI units; none for words.
    pub now: Option<f64>,
    /// What it would be; none where it is dropped.
    pub to: Option<f64>,
}

/// A way to relax, and the best drive that it allows.
#[derive(Debug, Clone, PartialEq)]
pub struct Relaxation {
    /// What changes.
    pub changes: Vec<Change>,
    /// The largest factor by which a value is eased; none where one is dropped.
    pub factor: Option<f64>,
    /// The best drive that is admissible then.
    pub found: Found,
}

/// What stands in the way of an axis.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Obstacle {
    /// Demands that cannot be kept together, none of which can be left out; empty where not even the easiest would do.
    pub conflict: Vec<Condition>,
    /// The ways to relax, the least change first.
    pub relaxations: Vec<Relaxation>,
}

/// An axis and what was found on it.
#[derive(Clone)]
struct Axis<'a> {
    brief: &'a Brief,
    axis: usize,
    carried: f64,
    setting: &'a Setting<'a>,
    /// Drives that were admissible under some relaxation: they may be again.
    seen: Vec<Found>,
}

impl Axis<'_> {
    fn possible(&mut self, brief: &Brief) -> bool {
        if !fits(&brief.axes[self.axis]) {
            return false;
        }
        let demand = Demand::new(brief, self.axis, Mass::of_si(self.carried));
        let considered = crate::drive::considered(brief, self.axis);
        let still = |found: &&Found| {
            considered.contains(&found.family) && admissible(found.family, &found.path, &demand, self.setting)
        };
        if self.seen.iter().rev().any(|found| still(&found)) {
            return true;
        }
        match best_on(brief, self.axis, self.carried, self.setting, None, &[]) {
            Some(found) => {
                self.seen.push(found);
                true
            }
            None => false,
        }
    }

    fn best(&self, brief: &Brief) -> Option<Found> {
        let considered = crate::drive::considered(brief, self.axis);
        let guesses: Vec<Found> =
            self.seen.iter().filter(|found| considered.contains(&found.family)).cloned().collect();
        best_on(brief, self.axis, self.carried, self.setting, None, &guesses)
    }

    /// The value of a demand eased by a factor, no easier than its easiest.
    fn eased(&self, condition: Condition, factor: f64) -> Option<f64> {
        let now = condition.of(self.brief, self.axis)?;
        match condition.relaxed() {
            Relaxed::Up => Some(now * factor),
            Relaxed::Down => {
                let easiest = condition.easiest(self.brief, self.axis).unwrap_or(0.0);
                let value = now / factor;
                Some(if value > easiest { value } else { easiest })
            }
            Relaxed::Dropped => None,
        }
    }

    fn changed(&self, changes: &[Change]) -> Brief {
        changes.iter().fold(self.brief.clone(), |brief, change| match change.to {
            Some(value) => change.condition.with(&brief, self.axis, value),
            None => change.condition.without(&brief, self.axis),
        })
    }

    /// All of them eased by one factor; words are dropped.
    fn by_factor(&self, conditions: &[Condition], factor: f64) -> Vec<Change> {
        let change = |&condition: &Condition| Change {
            condition,
            now: condition.of(self.brief, self.axis),
            to: self.eased(condition, factor),
        };
        conditions.iter().map(change).collect()
    }

    /// The least factor by which all of them together allow a drive.
    fn least_factor(&mut self, conditions: &[Condition]) -> Option<f64> {
        let mut before = 1.0;
        for factor in FACTORS {
            let brief = self.changed(&self.by_factor(conditions, factor));
            if self.possible(&brief) {
                let (mut no, mut yes): (f64, f64) = (before, factor);
                while yes / no > CLOSE {
                    let middle = (no * yes).sqrt();
                    let brief = self.changed(&self.by_factor(conditions, middle));
                    if self.possible(&brief) { yes = middle } else { no = middle }
                }
                return Some(yes);
            }
            before = factor;
        }
        None
    }

    /// Rounds the values to three digits of their unit, to the easy side, where a drive is still admissible.
    fn rounded(&mut self, mut changes: Vec<Change>) -> Vec<Change> {
        for place in 0..changes.len() {
            let before = changes[place];
            let Some(value) = before.to else { continue };
            changes[place].to = Some(round(before.condition, value));
            let brief = self.changed(&changes);
            if !self.possible(&brief) {
                changes[place] = before;
            }
        }
        changes
    }

    fn relaxation(&mut self, changes: Vec<Change>) -> Option<Relaxation> {
        let changes = self.rounded(changes);
        let found = self.best(&self.changed(&changes))?;
        let eased = |change: &Change| {
            let (now, to) = (change.now?, change.to?);
            Some(match change.condition.relaxed() {
                Relaxed::Up => to / now,
                Relaxed::Down | Relaxed::Dropped => now / to,
            })
        };
        let factor = changes
            .iter()
            .map(eased)
            .try_fold(1.0, |largest: f64, factor| factor.map(|factor| if factor > largest { factor } else { largest }));
        Some(Relaxation { changes, factor, found })
    }

    /// Eases these together by one factor, then takes each back as far as it goes.
    fn together(&mut self, conditions: &[Condition]) -> Option<Relaxation> {
        let words = conditions.iter().all(|condition| condition.relaxed() == Relaxed::Dropped);
        let factor = if words { 1.0 } else { self.least_factor(conditions)? };
        let mut changes = self.by_factor(conditions, factor);
        for place in 0..changes.len() {
            let condition = changes[place].condition;
            let (mut no, mut yes) = (1.0, factor);
            while changes[place].to.is_some() && yes / no > TAKEN_BACK {
                let middle: f64 = (no * yes).sqrt();
                let before = changes[place].to;
                changes[place].to = self.eased(condition, middle);
                let brief = self.changed(&changes);
                if self.possible(&brief) {
                    yes = middle;
                } else {
                    changes[place].to = before;
                    no = middle;
                }
            }
        }
        self.relaxation(changes)
    }
}

/// Three digits in the unit of the demand, towards the easy side.
fn round(condition: Condition, value: f64) -> f64 {
    let unit = condition.unit().map_or(1.0, |unit| unit.si);
    let shown = value / unit;
    if shown <= 0.0 || !shown.is_finite() {
        return value;
    }
    let step = 10_f64.powi(shown.log10().floor() as i32 - 2);
    let steps = shown / step;
    let steps = match condition.relaxed() {
        Relaxed::Up => (steps - 1e-9).ceil(),
        Relaxed::Down | Relaxed::Dropped => (steps + 1e-9).floor(),
    };
    // a power of ten below one divides without a rest that shows
    let shown = if step < 1.0 { steps / (1.0 / step).round() } else { steps * step };
    shown * unit
}

/// What stands in the way of an axis that carries this much, kg, and what would help.
pub fn obstacle(brief: &Brief, axis: usize, carried: f64, setting: &Setting<'_>) -> Obstacle {
    let stated = Condition::stated(brief, axis);
    let mut on = Axis { brief, axis, carried, setting, seen: Vec::new() };
    let without = |active: &[bool]| {
        let dropped = stated.iter().zip(active).filter(|(_, active)| !**active);
        dropped.fold(brief.clone(), |brief, (condition, _)| condition.without(&brief, axis))
    };
    let Some(places) = conflict(stated.len(), &mut |active| on.possible(&without(active))) else {
        return Obstacle::default();
    };
    let conflict: Vec<Condition> = places.iter().map(|&place| stated[place]).collect();
    let mut sets: Vec<Vec<Condition>> = conflict.iter().map(|&condition| vec![condition]).collect();
    for (place, &one) in conflict.iter().enumerate() {
        sets.extend(conflict[place + 1..].iter().map(|&other| vec![one, other]));
    }
    // each with the drives seen so far, so that nothing depends on which is done first
    let mut relaxations: Vec<Relaxation> = sets
        .par_iter()
        .filter_map(|set| {
            let mut on = on.clone();
            let words = set.iter().all(|condition| condition.relaxed() == Relaxed::Dropped);
            let factor = if words { 1.0 } else { on.least_factor(set)? };
            let changes = on.by_factor(set, factor);
            if words && !on.possible(&on.changed(&changes)) {
                return None;
            }
            on.relaxation(changes)
        })
        .collect();
    drop_covered(&mut relaxations);
    if relaxations.is_empty() {
        for kept in [Requirement::Speed, Requirement::Acceleration] {
            let mut order: Vec<usize> = (0..stated.len()).rev().collect();
            order.sort_by_key(|&place| rank(stated[place], kept));
            let give = correction(stated.len(), &order, &mut |active| on.possible(&without(active)));
            let give: Vec<Condition> = give.unwrap_or_default().into_iter().map(|place| stated[place]).collect();
            let known = |relaxation: &Relaxation| {
                relaxation.changes.iter().map(|change| change.condition).eq(give.iter().copied())
            };
            if !give.is_empty() && !relaxations.iter().any(known) {
                relaxations.extend(on.together(&give));
            }
        }
    }
    relaxations.sort_by(|a, b| {
        let size = |relaxation: &Relaxation| relaxation.factor.unwrap_or(f64::INFINITY);
        let keys =
            |relaxation: &Relaxation| relaxation.changes.iter().map(|change| change.condition).collect::<Vec<_>>();
        size(a).total_cmp(&size(b)).then_with(|| keys(a).len().cmp(&keys(b).len())).then_with(|| keys(a).cmp(&keys(b)))
    });
    Obstacle { conflict, relaxations }
}

/// What is kept first: what the machine is, then one of speed and acceleration, then the tolerances, then the other.
fn rank(condition: Condition, kept: Requirement) -> u8 {
    match condition {
        Condition::Turned(Requirement::Travel | Requirement::MovedMass | Requirement::CuttingForce) => 0,
        Condition::Turned(requirement) if requirement == kept => 1,
        Condition::Turned(Requirement::Speed | Requirement::Acceleration) => 3,
        Condition::Turned(_)
        | Condition::CuttingDeflection
        | Condition::Ripple
        | Condition::FirstMode
        | Condition::Contour
        | Condition::Settling
        | Condition::LeadTime
        | Condition::Feedback
        | Condition::Mapping
        | Condition::Families => 2,
    }
}

/// A pair of which one alone helps as much as both says nothing more.
fn drop_covered(relaxations: &mut Vec<Relaxation>) {
    let singles: Vec<Relaxation> =
        relaxations.iter().filter(|relaxation| relaxation.changes.len() == 1).cloned().collect();
    let size = |relaxation: &Relaxation| relaxation.factor.unwrap_or(f64::INFINITY);
    relaxations.retain(|relaxation| {
        let holds = |single: &Relaxation| {
            relaxation.changes.iter().any(|change| change.condition == single.changes[0].condition)
        };
        relaxation.changes.len() == 1
            || !singles.iter().any(|single| holds(single) && size(single) <= size(relaxation) * CLOSE)
    });
}
