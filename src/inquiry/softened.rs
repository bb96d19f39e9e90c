//! A sheet on which the stiffness of the drive comes out at another value than is worked out.
//!
//! Method: what is worked out into the slot of the total stiffness is multiplied before it is kept; all that follows
//! from it reads the changed value. Limits: what does not go through that slot keeps its stiffness.

use crate::characteristic as ch;
use crate::formula::Note;
use crate::ledger::{Figures, Known, Ledger, Origin};

/// The sheet.
#[derive(Debug, Clone)]
pub struct Softened {
    known: Known,
    factor: f64,
}

impl Softened {
    /// An empty sheet with this factor on the stiffness.
    pub fn by(factor: f64) -> Softened {
        Softened { known: Known::default(), factor }
    }
}

impl Figures for Softened {
    #[inline(always)]
    fn value(&self, slot: usize) -> f64 {
        self.known.value(slot)
    }
}

impl Ledger for Softened {
    #[inline(always)]
    fn keep_given(&mut self, slot: usize, value: f64, origin: Origin) {
        self.known.keep_given(slot, value, origin);
    }
    #[inline(always)]
    fn keep_computed(&mut self, slot: usize, value: f64, note: &'static Note, inputs: impl FnOnce(&mut Vec<usize>)) {
        let value = if slot == ch::TOTAL_STIFFNESS.slot { value * self.factor } else { value };
        self.known.keep_computed(slot, value, note, inputs);
    }
}
