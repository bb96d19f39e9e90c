//! Taking the stages of a family in the order of its plan: figures that many branches share are worked out once.

use super::{Path, Plan};
use crate::drive::{Family, Floor, Merit};
use crate::ledger::{Known, Ledger, Origin};
use crate::rule;

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

    /// No configuration behind this place has a merit below this.
    #[inline]
    pub fn floor(&self, place: usize, path: &Path, sheet: &Known, kept: &Kept, merit: &Merit) -> f64 {
        let still: f64 = kept.least[place + 1..].iter().sum();
        let to_come = still + self.family.to_come(path, None, |stage| self.plan.places[stage] <= place);
        merit.floor(sheet, &self.plan.floors[place], to_come)
    }

    /// The same before the choice of this place is entered, the first two apart.
    #[inline]
    pub fn floor_before(&self, place: usize, path: &Path, sheet: &Known, kept: &Kept, merit: &Merit) -> f64 {
        let still: f64 = kept.least[place..].iter().sum();
        let to_come =
            still + self.family.to_come(path, Some(self.plan.order[place]), |stage| self.plan.places[stage] < place);
        merit.floor(sheet, &self.plan.floors[place - 1], to_come)
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
