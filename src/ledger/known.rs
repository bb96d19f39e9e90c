//! The two silent readers: plain numbers for the search, and stages for the rulebook.

use super::{Aside, Asides, Figures, Ledger, Origin};
use crate::characteristic::SLOTS;
use crate::formula::{IN_PLACE, Note, Series};
use crate::units::Measure;

/// How many phases are worked out before any is kept.
const AT_ONCE: usize = IN_PLACE;

/// One number a slot, NaN until entered: what the search runs on.
#[derive(Debug, Clone)]
pub struct Known {
    values: Box<[f64; SLOTS]>,
    left_out: Asides,
}

impl Known {
    /// Enters these groups of lines no more.
    pub fn leave_out(&mut self, asides: Asides) {
        self.left_out = asides;
    }
}

impl Default for Known {
    fn default() -> Self {
        Known { values: Box::new([f64::NAN; SLOTS]), left_out: Asides::default() }
    }
}

impl Figures for Known {
    #[inline(always)]
    fn value(&self, slot: usize) -> f64 {
        self.values[slot]
    }
    #[inline(always)]
    fn series<Q: Measure>(&self, first: usize, count: usize) -> Series<Q> {
        // a fixed number is copied at once; those behind the count are not read
        match self.values.get(first..).and_then(|behind| behind.first_chunk()) {
            Some(values) if count <= IN_PLACE => Series::first_of(values, count),
            _ => Series::filled(count, |index| self.value(first + index)),
        }
    }
}

impl Ledger for Known {
    #[inline(always)]
    fn aside(&mut self, aside: Aside, enter: impl FnOnce(&mut Self)) {
        if !self.left_out.hold(aside) {
            enter(self);
        }
    }
    #[inline(always)]
    fn keep_given(&mut self, slot: usize, value: f64, _: Origin) {
        self.values[slot] = value;
    }
    #[inline(always)]
    fn keep_computed(&mut self, slot: usize, value: f64, _: &'static Note, _: impl FnOnce(&mut Vec<usize>)) {
        self.values[slot] = value;
    }
    #[inline(always)]
    fn keep_phases(
        &mut self,
        (first, count): (usize, usize),
        value: impl Fn(&Self, usize) -> f64,
        _: &'static Note,
        _: impl Fn(usize, &mut Vec<usize>),
    ) {
        // nothing is written while the phases are worked out, so that what is the same for all is worked out once
        if count <= AT_ONCE {
            let mut worked = [0.0; AT_ONCE];
            for (index, place) in worked.iter_mut().enumerate().take(count) {
                *place = value(self, index);
            }
            self.values[first..first + count].copy_from_slice(&worked[..count]);
        } else {
            for index in 0..count {
                self.values[first + index] = value(self, index);
            }
        }
    }
}

/// Learns in which stage each slot is entered, by running a family once on any of its parts.
#[derive(Debug, Clone)]
pub struct Discovery {
    known: Known,
    stage: usize,
    stages: Vec<Option<usize>>,
    /// The group that is being entered.
    aside: Option<Aside>,
    asides: Vec<Option<Aside>>,
}

impl Default for Discovery {
    fn default() -> Self {
        Discovery {
            known: Known::default(),
            stage: 0,
            stages: vec![None; SLOTS],
            aside: None,
            asides: vec![None; SLOTS],
        }
    }
}

impl Discovery {
    /// Says that what is entered from now on belongs to this stage.
    pub fn begin_stage(&mut self, stage: usize) {
        self.stage = stage;
    }

    /// The stage in which a slot was entered, if it was.
    pub fn stage_of(&self, slot: usize) -> Option<usize> {
        self.stages[slot]
    }

    /// The group of lines that a slot was entered in, if it was in one.
    pub fn aside_of(&self, slot: usize) -> Option<Aside> {
        self.asides[slot]
    }

    fn note_stage(&mut self, slot: usize) {
        debug_assert!(self.stages[slot].is_none(), "slot {slot} is entered twice");
        self.stages[slot] = Some(self.stage);
        self.asides[slot] = self.aside;
    }
}

impl Figures for Discovery {
    fn value(&self, slot: usize) -> f64 {
        self.known.value(slot)
    }
}

impl Ledger for Discovery {
    fn aside(&mut self, aside: Aside, enter: impl FnOnce(&mut Self)) {
        self.aside = Some(aside);
        enter(self);
        self.aside = None;
    }
    fn keep_given(&mut self, slot: usize, value: f64, origin: Origin) {
        self.note_stage(slot);
        self.known.keep_given(slot, value, origin);
    }
    fn keep_computed(&mut self, slot: usize, value: f64, note: &'static Note, inputs: impl FnOnce(&mut Vec<usize>)) {
        self.note_stage(slot);
        self.known.keep_computed(slot, value, note, inputs);
    }
}
