//! Turning points: how far a requirement of one axis may be turned before the answer changes, to what, and by which rule.
//!
//! Method: the value is moved outward in steps. At the anchors, and where the present drive is no longer admissible, the axis is
//! searched in full; between them the best is taken of all drives that are known: what the recommendation had found, and what
//! every full search adds. Where the answer changes the step is halved to the resolution, and both sides are searched in
//! full; what that brings up joins, and the halving is done again.
//! Limits: the other axes stay as they are, and so does the mass that the axis carries. A change and a change back between two
//! steps is missed, and so is a drive that is best only between two anchors and was never found. Nothing is looked for
//! beyond the last anchor.

use super::requirement::Requirement;
use super::room::Room;
use super::steps::{Step, steps};
use crate::brief::Brief;
use crate::search::{Attributes, Found, Setting, best_among, best_that, main_sizes, worst_failed};
use rayon::prelude::*;

/// Relative width to which a change is narrowed.
pub const RESOLUTION: f64 = 1e-3;

/// How much less than a drive costs is not enough for it, relative.
const LESS: f64 = 1e-6;

/// How many changes of the family are told on one way.
const MOST_FAMILIES: usize = 2;

/// Rounds of narrowing and searching before a change is given up.
const MOST_ROUNDS: usize = 12;

/// One axis of a machine that was chosen.
pub struct AxisInPlace<'q, 'a> {
    /// The brief.
    pub brief: &'q Brief,
    /// The axis.
    pub axis: usize,
    /// What it carries in the machine that was chosen, kg.
    pub carried: f64,
    /// How it is searched.
    pub setting: Setting<'a>,
    /// The drive that was chosen.
    pub chosen: Found,
    /// Drives that the recommendation found: the best of the families and the undominated ones.
    pub known: Vec<Found>,
    /// What the other axes leave.
    pub room: Room,
    /// Price to buy all drives of the machine.
    pub machine_purchase: f64,
}

/// What of the answer changes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Turns {
    /// The main sizes, within the family or not.
    MainSize,
    /// The family.
    Family,
}

/// A value of a requirement at which the answer changes.
#[derive(Debug, Clone, PartialEq)]
pub struct TurningPoint {
    /// The requirement.
    pub requirement: Requirement,
    /// What changes.
    pub turns: Turns,
    /// What the brief asks now, in SI units.
    pub now: f64,
    /// The farthest value at which the answer was found to hold.
    pub holds_at: f64,
    /// The nearest value beyond at which it was found to have changed.
    pub turns_at: f64,
    /// The drive before.
    pub from: Found,
    /// The drive beyond; none where nothing is admissible.
    pub to: Option<Found>,
    /// The rule that the drive before fails worst beyond, or the limit of the machine that it exceeds, as "limits.purchase"; none
    /// where another is only better.
    pub rule: Option<String>,
}

/// Every turning point of an axis, by requirement, upward before downward; none (`None`) where the axis alone would not choose
/// its drive, so that it gave way to the machine.
pub fn turning_points(place: &AxisInPlace<'_, '_>) -> Option<Vec<TurningPoint>> {
    let here = place.best(place.brief, &place.room, &place.known)?;
    if !place.same(Turns::MainSize, Some(&here), Some(&place.chosen)) {
        return None;
    }
    let mut ways: Vec<Way> = Vec::new();
    for requirement in Requirement::ALL.into_iter().filter(|requirement| *requirement != Requirement::Purchase) {
        let Some(now) = requirement.of(place.brief, place.axis) else { continue };
        for up in [true, false] {
            let steps = steps(requirement, place.brief, place.axis, place.setting.catalog, now, up);
            ways.push(Way { requirement, now, steps, anchored: Vec::new() });
        }
    }
    ways.par_iter_mut().for_each(|way| place.add_own_end(way, &here));
    // all anchors first: what is best at one of them is known on every way
    let anchored: Vec<Vec<Option<Found>>> = ways.par_iter().map(|way| place.anchored(way)).collect();
    let mut known = place.known.clone();
    for (way, anchored) in ways.iter_mut().zip(anchored) {
        anchored.iter().flatten().for_each(|found| learn(&mut known, found));
        way.anchored = anchored;
    }
    let found: Vec<Vec<TurningPoint>> = ways.par_iter().map(|way| place.outward(way, known.clone(), &here)).collect();
    let mut found: Vec<TurningPoint> = found.into_iter().flatten().collect();
    found.extend(place.cheaper(&here));
    Some(found)
}

/// One requirement, moved in one direction.
struct Way {
    requirement: Requirement,
    now: f64,
    steps: Vec<Step>,
    /// The answers at the anchors, in their order.
    anchored: Vec<Option<Found>>,
}

/// Adds a drive to those that are known.
fn learn(known: &mut Vec<Found>, found: &Found) {
    if !known.iter().any(|other| other.family == found.family && other.path == found.path) {
        known.push(found.clone());
    }
}

impl AxisInPlace<'_, '_> {
    fn best(&self, brief: &Brief, room: &Room, known: &[Found]) -> Option<Found> {
        let accept = |attributes: &Attributes| room.takes(attributes);
        best_that(brief, self.axis, self.carried, &self.setting, None, known, &accept)
    }

    fn best_known(&self, brief: &Brief, known: &[Found]) -> Option<Found> {
        let accept = |attributes: &Attributes| self.room.takes(attributes);
        best_among(brief, self.axis, self.carried, &self.setting, known, &accept)
    }

    /// Whether two answers are the same as far as this change goes.
    fn same(&self, change: Turns, one: Option<&Found>, other: Option<&Found>) -> bool {
        let sizes = |found: &Found| main_sizes(self.brief, self.axis, self.carried, &self.setting, found);
        match (one, other) {
            (None, None) => true,
            (Some(one), Some(other)) if one.family == other.family => {
                change == Turns::Family || one.path == other.path || sizes(one) == sizes(other)
            }
            _ => false,
        }
    }

    /// Makes an anchor of the first value, to the resolution, at which the present drive is no longer admissible.
    fn add_own_end(&self, way: &mut Way, here: &Found) {
        let own = std::slice::from_ref(here);
        let holds = |value: f64| self.best_known(&way.requirement.with(self.brief, self.axis, value), own).is_some();
        let Some(place) = way.steps.iter().position(|step| !holds(step.value)) else { return };
        let mut inner = if place == 0 { way.now } else { way.steps[place - 1].value };
        let mut outer = way.steps[place].value;
        while (outer - inner).abs() > 0.5 * RESOLUTION * way.now {
            let middle = 0.5 * (inner + outer);
            if holds(middle) { inner = middle } else { outer = middle }
        }
        way.steps.insert(place, Step { value: outer, anchor: true });
    }

    /// The answers at the anchors, each searched in full.
    fn anchored(&self, way: &Way) -> Vec<Option<Found>> {
        let anchors = way.steps.iter().filter(|step| step.anchor);
        anchors
            .map(|step| self.best(&way.requirement.with(self.brief, self.axis, step.value), &self.room, &self.known))
            .collect()
    }

    /// The turning points on one way, nearest first.
    fn outward(&self, way: &Way, mut known: Vec<Found>, here: &Found) -> Vec<TurningPoint> {
        let (requirement, now) = (way.requirement, way.now);
        let mut anchored = way.anchored.iter();
        let mut points = Vec::new();
        let mut change = Turns::MainSize;
        let mut families = 0;
        let mut here = here.clone();
        // where the answer was last seen to hold by a full search
        let mut sure = now;
        for &Step { value, anchor } in &way.steps {
            let there = match anchor {
                true => anchored.next().cloned().flatten(),
                false => self.answer(requirement, value, false, &mut known),
            };
            if self.same(change, there.as_ref(), Some(&here)) {
                sure = if anchor { value } else { sure };
                continue;
            }
            let Some(point) = self.narrowed(requirement, change, now, (sure, value), &here, &mut known) else {
                continue;
            };
            sure = point.turns_at;
            let beyond = point.to.clone();
            let family = !self.same(Turns::Family, beyond.as_ref(), Some(&here));
            points.push(TurningPoint { turns: if family { Turns::Family } else { change }, ..point });
            change = Turns::Family;
            if family {
                families += 1;
                match beyond.filter(|_| families < MOST_FAMILIES) {
                    Some(beyond) => here = beyond,
                    None => break,
                }
            }
        }
        points
    }

    /// The answer at a value: searched in full, or out of the drives that are known.
    fn answer(&self, requirement: Requirement, value: f64, full: bool, known: &mut Vec<Found>) -> Option<Found> {
        let brief = requirement.with(self.brief, self.axis, value);
        if !full {
            return self.best_known(&brief, known);
        }
        let best = self.best(&brief, &self.room, known);
        if let Some(best) = &best {
            learn(known, best);
        }
        best
    }

    /// A change between a value where the answer is sure to hold and one where it seemed to have changed, narrowed to the
    /// resolution and searched in full on both sides; none where a full search finds no change.
    fn narrowed(
        &self,
        requirement: Requirement,
        change: Turns,
        now: f64,
        between: (f64, f64),
        here: &Found,
        known: &mut Vec<Found>,
    ) -> Option<TurningPoint> {
        let (mut inner, mut outer) = between;
        let narrow = RESOLUTION * now;
        for _ in 0..MOST_ROUNDS {
            while (outer - inner).abs() > narrow {
                let middle = 0.5 * (inner + outer);
                let there = self.answer(requirement, middle, false, known);
                if self.same(change, there.as_ref(), Some(here)) { inner = middle } else { outer = middle }
            }
            let beyond = self.answer(requirement, outer, true, known);
            if self.same(change, beyond.as_ref(), Some(here)) {
                // a drive came up that was not known; on, if what is farther out still differs
                let farther = self.answer(requirement, between.1, false, known);
                if outer == between.1 || self.same(change, farther.as_ref(), Some(here)) {
                    return None;
                }
                (inner, outer) = (outer, between.1);
                continue;
            }
            let before = self.answer(requirement, inner, true, known);
            if self.same(change, before.as_ref(), Some(here)) {
                return Some(self.point(requirement, change, now, (inner, outer), here, before, beyond));
            }
            // the change lies farther in, for the answer holds at the value that is sure
            (inner, outer) = (between.0, inner);
        }
        None
    }

    #[allow(clippy::too_many_arguments)]
    fn point(
        &self,
        requirement: Requirement,
        change: Turns,
        now: f64,
        (holds_at, turns_at): (f64, f64),
        here: &Found,
        before: Option<Found>,
        to: Option<Found>,
    ) -> TurningPoint {
        let from = before.unwrap_or_else(|| here.clone());
        let brief = requirement.with(self.brief, self.axis, turns_at);
        let rule = worst_failed(&brief, self.axis, self.carried, &self.setting, &from);
        let rule = rule.or_else(|| self.left_out(&brief, &from).map(|limit| format!("limits.{limit}")));
        TurningPoint { requirement, turns: change, now, holds_at, turns_at, from, to, rule }
    }

    /// The limit of the machine that an admissible drive exceeds.
    fn left_out(&self, brief: &Brief, drive: &Found) -> Option<&'static str> {
        let drives = std::slice::from_ref(drive);
        let there = best_among(brief, self.axis, self.carried, &self.setting, drives, &|_| true)?;
        self.room.exceeded(&there.attributes)
    }

    /// What the axis gets where the machine may only just not cost so much that its main sizes stay.
    fn cheaper(&self, here: &Found) -> Option<TurningPoint> {
        let now = Requirement::Purchase.of(self.brief, self.axis)?;
        let of_machine = |purchase: f64| self.machine_purchase - (here.attributes.purchase - purchase);
        let mut from = here.clone();
        for _ in 0..MOST_ROUNDS {
            let less = from.attributes.purchase * (1.0 - LESS);
            let room = Room { purchase: less, ..self.room.clone() };
            let to = self.best(self.brief, &room, &self.known);
            if !self.same(Turns::MainSize, to.as_ref(), Some(here)) {
                let family = !self.same(Turns::Family, to.as_ref(), Some(here));
                return Some(TurningPoint {
                    requirement: Requirement::Purchase,
                    turns: if family { Turns::Family } else { Turns::MainSize },
                    now,
                    holds_at: of_machine(from.attributes.purchase),
                    turns_at: of_machine(less),
                    from,
                    to,
                    rule: None,
                });
            }
            from = to?;
        }
        None
    }
}
