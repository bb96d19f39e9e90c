//! Taking the stages of a family in the order of its plan: figures that many branches share are worked out once.

mod tests;

use super::{Path, Plan};
use crate::drive::{Family, Floor, Merit, OwnErrors};
use crate::ledger::{Figures, Known, Ledger, Origin};
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
    /// The figures of remembered stages, by place and choice; empty where they are not known.
    remembered: Vec<Vec<Vec<f64>>>,
    /// What the choices that do of the stages from each place on cost at least, of all drives of the axis.
    to_come: Vec<f64>,
    /// The same without the stage that decides the errors of the drive, where its figures are kept.
    beside_errors: Vec<f64>,
    /// Whether no choice of some kept stage keeps its rules, whatever else is chosen.
    pub hopeless: bool,
    /// What the choices of the stage that decides the errors of the drive, if it is one of those, add to the merit at least,
    /// together with measuring and correcting.
    with_position: f64,
    /// Of each of its choices the errors of the drive, and what measuring and correcting them adds at least.
    of_choice: Vec<(OwnErrors, f64)>,
    /// The same while nothing is known of the errors, and of those that were entered last.
    unknown: f64,
    last: Cell<(OwnErrors, f64)>,
}

impl<F: Family> Steps<'_, F> {
    /// Room for what is kept.
    pub fn room(&self) -> Kept {
        let sizes = self.plan.kept.iter().zip(&self.plan.stages).map(|(slots, choices)| slots.len() * choices);
        let places = self.plan.stages.len();
        let unknown = self.plan.position.at_least(OwnErrors::default(), None, None);
        Kept {
            figures: sizes.map(Vec::with_capacity).collect(),
            passes: vec![Vec::new(); places],
            remembered: self
                .plan
                .remembered
                .iter()
                .enumerate()
                .map(|(place, slots)| self.empty(place, slots))
                .collect(),
            to_come: vec![0.0; places + 1],
            beside_errors: vec![0.0; places + 1],
            hopeless: false,
            with_position: 0.0,
            of_choice: Vec::new(),
            unknown,
            last: Cell::new((OwnErrors::default(), unknown)),
        }
    }

    /// Room for what is remembered of a place.
    fn empty(&self, place: usize, slots: &[usize]) -> Vec<Vec<f64>> {
        let choices = if slots.is_empty() { 0 } else { self.plan.stages[self.plan.by_choice[place]] };
        vec![Vec::new(); choices]
    }

    /// Works out once what later stages would work out again and again; the first two stages are entered.
    pub fn keep(&self, path: &mut Path, sheet: &mut Known, kept: &mut Kept) {
        if self.plainly {
            return;
        }
        let places = self.plan.stages.len();
        // what an earlier branch entered says nothing of this one
        kept.last.set((OwnErrors::default(), kept.unknown));
        let mut least = vec![0.0; places];
        for (place, slots) in self.plan.kept.iter().enumerate().filter(|(place, _)| self.keeps(*place)) {
            let stage = self.plan.order[place];
            kept.figures[place].clear();
            kept.passes[place].clear();
            least[place] = f64::INFINITY;
            if self.decides_errors(place) {
                kept.with_position = f64::INFINITY;
                kept.of_choice.clear();
            }
            for choice in 0..self.plan.stages[place] {
                path[stage] = choice as u16;
                self.family.enter(stage, path, sheet);
                kept.figures[place].extend(slots.iter().map(|&slot| sheet.value(slot)));
                let passes = self.plan.kept_rows[place].iter().all(|row| row.passed(sheet));
                kept.passes[place].push(passes);
                let price = Floor::price_of(sheet, slots);
                if passes && price < least[place] {
                    least[place] = price;
                }
                if self.decides_errors(place) {
                    let (own, measured) = self.own_errors(sheet);
                    kept.of_choice.push((own, measured));
                    if passes {
                        kept.with_position = kept.with_position.min(self.plan.position.price(price) + measured);
                    }
                }
            }
            path[stage] = 0;
        }
        kept.hopeless = least.iter().any(|least| least.is_infinite());
        let behind = |least: &[f64], place: usize| least.iter().skip(place).sum();
        kept.to_come.iter_mut().enumerate().for_each(|(place, sum)| *sum = behind(&least, place));
        if let Some(errors) = self.plan.errors_known {
            least[errors] = 0.0;
        }
        kept.beside_errors.iter_mut().enumerate().for_each(|(place, sum)| *sum = behind(&least, place));
    }

    /// The errors of the drive itself that the sheet holds, and what measuring and correcting them adds at least.
    fn own_errors(&self, sheet: &Known) -> (OwnErrors, f64) {
        let own = self.plan.position.own(sheet);
        (own, self.plan.position.at_least(own, None, None))
    }

    /// Whether the figures of a place hang on the first two choices and are kept for them.
    fn keeps(&self, place: usize) -> bool {
        !self.plainly && !self.plan.kept[place].is_empty() && self.plan.apart[place].is_empty()
    }

    /// The figures of the choice of the path at a place, where they are known before it is entered.
    #[inline(always)]
    fn figures<'k>(&'k self, place: usize, path: &Path, kept: &'k Kept) -> Option<&'k [f64]> {
        let slots = self.plan.kept[place].len();
        if slots == 0 || self.plainly {
            return None;
        }
        let apart = &self.plan.apart[place];
        let all = if apart.is_empty() { &kept.figures[place] } else { apart };
        let from = usize::from(path[self.plan.order[place]]) * slots;
        Some(&all[from..from + slots])
    }

    /// Enters the choice of the path at a place, out of what was kept where it was, and tells the first rule of the place that it
    /// fails; what fails may not be entered.
    #[inline(always)]
    pub fn enter(&self, place: usize, path: &Path, sheet: &mut Known, kept: &mut Kept) -> Option<usize> {
        for &forgotten in &self.plan.forgets[place] {
            kept.remembered[forgotten].iter_mut().for_each(Vec::clear);
        }
        if !self.plan.remembered[place].is_empty() && !self.plainly {
            return self.recall(place, path, sheet, kept);
        }
        if let Some(figures) = self.figures(place, path, kept) {
            let failed = self.plan.first_failed_ahead(place, figures, sheet);
            if failed.is_none() {
                for (&slot, &value) in self.plan.kept[place].iter().zip(figures) {
                    sheet.keep_given(slot, value, Origin::Formula);
                }
            }
            return failed;
        }
        self.family.enter(self.plan.order[place], path, sheet);
        if self.plan.errors_known == Some(place) {
            kept.last.set(self.own_errors(sheet));
        }
        self.plan.first_failed(place, sheet)
    }

    /// The same for a stage whose figures are remembered.
    fn recall(&self, place: usize, path: &Path, sheet: &mut Known, kept: &mut Kept) -> Option<usize> {
        let (plan, slots) = (self.plan, &self.plan.remembered[place]);
        let choice = usize::from(path[plan.order[plan.by_choice[place]]]);
        let figures = &mut kept.remembered[place][choice];
        if figures.is_empty() {
            self.family.enter(plan.order[place], path, sheet);
            figures.extend(slots.iter().map(|&slot| sheet.value(slot)));
            return plan.first_failed(place, sheet);
        }
        let failed = plan.first_failed_ahead(place, figures, sheet);
        if failed.is_none() {
            for (&slot, &value) in slots.iter().zip(figures.iter()) {
                sheet.keep_given(slot, value, Origin::Formula);
            }
        }
        failed
    }

    /// Whether the choice of the path at a place is known not to keep its rules.
    #[inline(always)]
    pub fn known_to_fail(&self, place: usize, path: &Path, kept: &Kept) -> bool {
        !self.plainly && kept.passes[place].get(usize::from(path[self.plan.order[place]])).is_some_and(|passes| !passes)
    }

    /// Whether a place decides the errors of the drive itself, among figures that are kept.
    fn decides_errors(&self, place: usize) -> bool {
        self.plan.errors_known == Some(place) && self.keeps(place)
    }

    /// What the stages behind the first `entered` add at least: to the price, and to the merit by measuring and correcting.
    #[inline]
    fn still(&self, entered: usize, path: &Path, kept: &Kept, chosen: usize) -> (f64, f64) {
        let plan = self.plan;
        let (own, measured) = match plan.errors_known {
            Some(errors) if self.keeps(errors) => {
                if errors >= entered {
                    return (kept.beside_errors[entered], kept.with_position);
                }
                kept.of_choice[usize::from(path[plan.order[errors]])]
            }
            Some(errors) if errors < entered => kept.last.get(),
            // what was entered last may stem from another branch
            _ => (OwnErrors::default(), kept.unknown),
        };
        let (scales, tables) = (plan.stages.len() - 2, plan.stages.len() - 1);
        let choice = |place: usize| (chosen > place).then(|| path[plan.order[place]]);
        match choice(scales) {
            Some(scale) => (kept.to_come[entered], plan.position.at_least(own, Some(scale), choice(tables))),
            None => (kept.to_come[entered], measured),
        }
    }

    /// No configuration behind this place has a merit below this, but for advice that is not followed.
    #[inline]
    pub fn floor(&self, place: usize, path: &Path, sheet: &Known, kept: &Kept, merit: &Merit) -> f64 {
        let (price, position) = self.still(place + 1, path, kept, place + 1);
        let to_come = price + self.family.to_come(path, None, |stage| self.plan.places[stage] <= place);
        merit.floor(sheet, &self.plan.floors[place], to_come, position)
    }

    /// The same before the choice of this place is entered, the first two apart.
    #[inline]
    pub fn floor_before(&self, place: usize, path: &Path, sheet: &Known, kept: &Kept, merit: &Merit) -> f64 {
        let (price, position) = self.still(place, path, kept, place + 1);
        let to_come =
            price + self.family.to_come(path, Some(self.plan.order[place]), |stage| self.plan.places[stage] < place);
        merit.floor(sheet, &self.plan.floors[place - 1], to_come, position)
    }

    /// Whether a glimpse at a later stage, once the place is entered, shows that a rule is broken there.
    #[inline(always)]
    pub fn glimpsed(&self, place: usize, path: &Path, sheet: &mut Known) -> bool {
        !self.plainly
            && !self.plan.glimpsed.is_empty()
            && self.family.glimpse(self.plan.order[place], path, sheet)
            && self.plan.glimpsed.iter().any(|row| !row.passed(sheet))
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
