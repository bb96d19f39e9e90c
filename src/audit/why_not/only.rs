//! A family held to some choices of one of its stages, so that the search finds the drives with a certain part.
//!
//! Method: choices are numbered anew and put back before the family sees them; everything else is the family's own.
//! Limits: none of its own.

use crate::drive::{Family, Part, Position, Size};
use crate::ledger::{Characteristic, Known, Ledger};
use crate::search::{MOST_STAGES, Path};
use crate::units::Stiffness;

/// A family of which one stage offers these choices only.
pub struct Only<'f, F> {
    /// The family.
    pub family: &'f F,
    /// The stage.
    pub stage: usize,
    /// Its choices that stay.
    pub choices: Vec<u16>,
}

impl<F: Family> Only<'_, F> {
    /// The path as the family numbers its choices.
    pub fn path(&self, path: &[u16]) -> Path {
        let mut own = [0; MOST_STAGES];
        for (stage, (place, &choice)) in own.iter_mut().zip(path).enumerate() {
            *place = self.as_numbered(stage, choice);
        }
        own
    }

    /// The choice of a stage as the family numbers it.
    fn as_numbered(&self, stage: usize, choice: u16) -> u16 {
        let kept = if stage == self.stage { self.choices.get(usize::from(choice)).copied() } else { None };
        kept.unwrap_or(choice)
    }
}

/// What these choices pick.
fn chosen<T: Copy>(choices: &[u16], all: &[T]) -> Vec<T> {
    choices.iter().filter_map(|&choice| all.get(usize::from(choice)).copied()).collect()
}

impl<F: Family> Family for Only<'_, F> {
    fn id(&self) -> &'static str {
        self.family.id()
    }

    fn stages(&self) -> Vec<usize> {
        let mut stages = self.family.stages();
        if let Some(choices) = stages.get_mut(self.stage) {
            *choices = self.choices.len();
        }
        stages
    }

    fn order(&self) -> Vec<usize> {
        self.family.order()
    }

    fn kept(&self, stage: usize) -> bool {
        self.family.kept(stage)
    }

    fn to_come(&self, path: &[u16], at_hand: Option<usize>, entered: impl Fn(usize) -> bool) -> f64 {
        self.family.to_come(&self.path(path), at_hand, entered)
    }

    fn springs(&self) -> &'static [Characteristic<Stiffness>] {
        self.family.springs()
    }

    fn position(&self) -> Position<'_> {
        let mut position = self.family.position();
        let (corrected, measured) = (self.stages().len().saturating_sub(1), self.stages().len().saturating_sub(2));
        if self.stage == measured {
            position.scales = chosen(&self.choices, &position.scales);
        }
        if self.stage == corrected {
            position.tables = chosen(&self.choices, &position.tables);
        }
        position
    }

    fn enter<L: Ledger>(&self, stage: usize, path: &[u16], sheet: &mut L) {
        self.family.enter(stage, &self.path(path), sheet);
    }

    fn enter_feedback<L: Ledger>(&self, scale: u16, sheet: &mut L) {
        self.family.enter_feedback(self.as_numbered(self.stages().len().saturating_sub(2), scale), sheet);
    }

    fn enter_mapping<L: Ledger>(&self, scale: u16, table: u16, sheet: &mut L) {
        let stages = self.stages().len();
        let (measured, corrected) = (stages.saturating_sub(2), stages.saturating_sub(1));
        self.family.enter_mapping(self.as_numbered(measured, scale), self.as_numbered(corrected, table), sheet);
    }

    fn screen(&self, stage: usize, path: &[u16], sheet: &mut Known) -> bool {
        self.family.screen(stage, &self.path(path), sheet)
    }

    fn motor_model(&self, path: &[u16]) -> &str {
        self.family.motor_model(&self.path(path))
    }

    fn gearbox_model(&self, path: &[u16]) -> Option<&str> {
        self.family.gearbox_model(&self.path(path))
    }

    fn parts(&self, path: &[u16], sheet: &impl Ledger) -> Vec<Part> {
        self.family.parts(&self.path(path), sheet)
    }

    fn sizes(&self, path: &[u16]) -> Vec<Size> {
        self.family.sizes(&self.path(path))
    }
}
