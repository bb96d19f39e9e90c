//! The reader of the last stages: the same lines for some dozen drives at once.
//!
//! Method: every slot is a column with a lane for each drive. A line is worked out lane by lane in one short loop, which a
//! processor takes several lanes at a time. What is given is the same for all. Limits: where a family decides by what stands in the sheet,
//! it must stand there for all lanes alike; a value that differs is told as NaN.

use super::{Aside, Asides, Call, Characteristic, Figures, Known, Ledger, Origin};
use crate::characteristic::SLOTS;
use crate::formula::{Formula, Note};
use crate::units::Measure;

/// How many drives are worked out at once.
pub const LANES: usize = 32;

/// A column a slot, NaN until entered.
#[derive(Debug, Clone)]
pub struct Columns {
    values: Box<[[f64; LANES]; SLOTS]>,
    /// What is the same in all lanes; NaN where lanes differ.
    shared: Known,
    left_out: Asides,
}

impl Columns {
    /// All lanes like this sheet, without these groups of lines from now on.
    pub fn like(sheet: &Known, left_out: Asides) -> Columns {
        let mut values = Box::new([[f64::NAN; LANES]; SLOTS]);
        for (slot, column) in values.iter_mut().enumerate() {
            *column = [sheet.value(slot); LANES];
        }
        Columns { values, shared: sheet.clone(), left_out }
    }

    /// Sets these slots of a lane to what they hold in this sheet.
    #[inline]
    pub fn fill(&mut self, lane: usize, slots: &[usize], sheet: &Known) {
        for &slot in slots {
            self.values[slot][lane] = sheet.value(slot);
            self.shared.keep_absent(slot);
        }
    }

    /// The column of a slot.
    #[inline(always)]
    pub fn column(&self, slot: usize) -> &[f64; LANES] {
        &self.values[slot]
    }

    /// One drive.
    #[inline(always)]
    pub fn lane(&self, lane: usize) -> Lane<'_> {
        Lane { columns: self, lane }
    }
}

/// One drive among others.
#[derive(Debug, Clone, Copy)]
pub struct Lane<'c> {
    columns: &'c Columns,
    lane: usize,
}

impl Figures for Lane<'_> {
    #[inline(always)]
    fn value(&self, slot: usize) -> f64 {
        self.columns.values[slot][self.lane]
    }
}

impl Figures for Columns {
    #[inline(always)]
    fn value(&self, slot: usize) -> f64 {
        self.shared.value(slot)
    }
}

impl Ledger for Columns {
    #[inline(always)]
    fn aside(&mut self, aside: Aside, enter: impl FnOnce(&mut Self)) {
        if !self.left_out.hold(aside) {
            enter(self);
        }
    }
    #[inline(always)]
    fn keep_given(&mut self, slot: usize, value: f64, origin: Origin) {
        self.values[slot] = [value; LANES];
        self.shared.keep_given(slot, value, origin);
    }
    /// Keeps what was worked out for all lanes alike; of what differs it was NaN already.
    #[inline(always)]
    fn keep_computed(&mut self, slot: usize, value: f64, _: &'static Note, _: impl FnOnce(&mut Vec<usize>)) {
        self.keep_given(slot, value, Origin::Formula);
    }
    /// Works a formula out in every lane; gives NaN, for lanes may differ.
    #[inline(always)]
    fn computed<F, A, Q>(&mut self, characteristic: Characteristic<Q>, formula: &'static Formula<F>, inputs: A) -> Q
    where
        Q: Measure,
        Formula<F>: Call<A, Q>,
    {
        let mut worked = [0.0; LANES];
        for (lane, place) in worked.iter_mut().enumerate() {
            *place = formula.call(&self.lane(lane), &inputs).si();
        }
        self.values[characteristic.slot] = worked;
        self.shared.keep_absent(characteristic.slot);
        Q::of_si(f64::NAN)
    }
}
