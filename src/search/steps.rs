//! Taking the stages of a family in the order of its plan: figures that many branches share are worked out once.

use super::{Path, Plan};
use crate::drive::{Family, Floor, Merit, OwnErrors};
use crate::ledger::{Known, Ledger, Origin};
use crate::rule;
use std::cell::Cell;

/// A family with its plan.
pub struct Steps<'w, F> {
    /// The family.
    pub family: &'w F,
    /// The plan.
    pub plan: &'w Plan,
    /// Whether every stage is worked out anew, and nothing stands for another.
    pub plainly: bool,
}

/// What is kept for as long as the first two choices stand.
pub struct Kept {
    /// The figures of stages that hang on those two alone, by place and choice.
    figures: Vec<Vec<f64>>,
    /// Whether a choice of such a stage keeps the rules that hang on nothing else.
    passes: Vec<Vec<bool>>,
    /// What the choices that do cost at least, of all drives of the axis; infinite where none does.
    least: Vec<f64>,
    /// What the choices of the stage that decides the errors of the drive, if it is one of those, add to the merit at least,
    /// together with measuring and correcting.
    with_position: f64,
    /// The last errors of the drive and what measuring and correcting them adds at least.
    last: Cell<(OwnErrors, f64)>,
}

impl<F: Family> Steps<'_, F> {
    /// Room for what is kept.
    pub fn room(&self) -> Kept {
        let sizes = self.plan.kept.iter().zip(&self.plan.stages).map(|(slots, choices)| slots.len() * choices);
        let places = self.plan.stages.len();
        Kept {
            figures: sizes.map(Vec::with_capacity).collect(),
            passes: vec![Vec::new(); places],
            least: vec![0.0; places],
            with_position: 0.0,
            last: Cell::new((OwnErrors::default(), self.plan.position.at_least(OwnErrors::default(), None, None))),
        }
    }

    /// Works out once what later stages would work out again and again; the first two stages are entered.
    pub fn keep(&self, path: &mut Path, sheet: &mut Known, kept: &mut Kept) {
        if self.plainly {
            return;
        }
        for (place, slots) in self.plan.kept.iter().enumerate().filter(|(_, slots)| !slots.is_empty()) {
            let stage = self.plan.order[place];
            kept.figures[place].clear();
            kept.passes[place].clear();
            kept.least[place] = f64::INFINITY;
            kept.with_position = if self.decides_errors(place) { f64::INFINITY } else { kept.with_position };
            for choice in 0..self.plan.stages[place] {
                path[stage] = choice as u16;
                self.family.enter(stage, path, sheet);
                kept.figures[place].extend(slots.iter().map(|&slot| sheet.value(slot)));
                let passes = self.plan.kept_rows[place].iter().all(|row| rule::passes(row.utilisation(sheet)));
                kept.passes[place].push(passes);
                let price = Floor::price_of(sheet, slots);
                if passes && price < kept.least[place] {
                    kept.least[place] = price;
                }
                if passes && self.decides_errors(place) {
                    let position = &self.plan.position;
                    let own = position.own(sheet, self.plan.errors_known.map(|known| known < 2 || known == place));
                    let both = position.price(price) + position.at_least(own, None, None);
                    kept.with_position = if both < kept.with_position { both } else { kept.with_position };
                }
            }
            path[stage] = 0;
        }
    }

    /// Enters the choice of the path at a place, out of what was kept where it was.
    #[inline(always)]
    pub fn enter(&self, place: usize, path: &Path, sheet: &mut Known, kept: &Kept) {
        let (stage, slots) = (self.plan.order[place], &self.plan.kept[place]);
        if slots.is_empty() || self.plainly {
            self.family.enter(stage, path, sheet);
            return;
        }
        let from = usize::from(path[stage]) * slots.len();
        for (&slot, &value) in slots.iter().zip(&kept.figures[place][from..]) {
            sheet.keep_given(slot, value, Origin::Formula);
        }
    }

    /// Whether no choice of some kept stage keeps its rules, whatever else is chosen.
    pub fn hopeless(&self, kept: &Kept) -> bool {
        kept.least.iter().any(|least| least.is_infinite())
    }

    /// Whether the choice of the path at a place is known not to keep its rules.
    #[inline(always)]
    pub fn known_to_fail(&self, place: usize, path: &Path, kept: &Kept) -> bool {
        !self.plainly && kept.passes[place].get(usize::from(path[self.plan.order[place]])).is_some_and(|passes| !passes)
    }

    /// Whether a place decides the errors of the drive itself over the travel, among figures that are kept.
    fn decides_errors(&self, place: usize) -> bool {
        self.plan.errors_known[0] == place && !self.plan.kept[place].is_empty() && !self.plainly
    }

    /// What the stages behind the first `entered` add at least: to the price, and to the merit by measuring and correcting.
    #[inline]
    fn still(&self, entered: usize, path: &Path, sheet: &Known, kept: &Kept, chosen: usize) -> (f64, f64) {
        let plan = self.plan;
        let errors = plan.errors_known[0];
        if errors >= entered && errors != usize::MAX && self.decides_errors(errors) {
            let others = (entered..plan.stages.len()).filter(|&place| place != errors);
            return (others.map(|place| kept.least[place]).sum(), kept.with_position);
        }
        let price = kept.least[entered..].iter().sum();
        let own = plan.position.own(sheet, plan.errors_known.map(|known| known < entered));
        let (measured, corrected) = (plan.stages.len() - 2, plan.stages.len() - 1);
        let choice = |place: usize| (chosen > place).then(|| path[plan.order[place]]);
        if let Some(scale) = choice(measured) {
            return (price, plan.position.at_least(own, Some(scale), choice(corrected)));
        }
        let (last, known) = kept.last.get();
        if last == own {
            return (price, known);
        }
        let least = plan.position.at_least(own, None, None);
        kept.last.set((own, least));
        (price, least)
    }

    /// No configuration behind this place has a merit below this, but for advice that is not followed.
    #[inline]
    pub fn floor(&self, place: usize, path: &Path, sheet: &Known, kept: &Kept, merit: &Merit) -> f64 {
        let (price, position) = self.still(place + 1, path, sheet, kept, place + 1);
        let to_come = price + self.family.to_come(path, None, |stage| self.plan.places[stage] <= place);
        merit.floor(sheet, &self.plan.floors[place], to_come, position)
    }

    /// The same before the choice of this place is entered, the first two apart.
    #[inline]
    pub fn floor_before(&self, place: usize, path: &Path, sheet: &Known, kept: &Kept, merit: &Merit) -> f64 {
        let (price, position) = self.still(place, path, sheet, kept, place + 1);
        let to_come =
            price + self.family.to_come(path, Some(self.plan.order[place]), |stage| self.plan.places[stage] < place);
        merit.floor(sheet, &self.plan.floors[place - 1], to_come, position)
    }

    /// Whether figures no better than those of the place already keep all its rules.
    #[inline(always)]
    pub fn screened(&self, place: usize, path: &Path, sheet: &mut Known) -> bool {
        !self.plainly
            && self.plan.alone[place]
            && self.family.screen(self.plan.order[place], path, sheet)
            && self.plan.first_failed(place, sheet).is_none()
    }
}
