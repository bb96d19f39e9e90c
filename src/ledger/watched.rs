//! The reader that learns which slots are read: by formulas as their inputs, and by whoever reads the sheet.

use super::{Figures, Known, Ledger, Origin};
use crate::formula::Note;
use std::cell::RefCell;

/// A sheet that knows which of its slots were read.
#[derive(Debug, Default)]
pub struct Watched {
    known: Known,
    read: RefCell<Vec<usize>>,
}

impl Watched {
    /// The numbers alone.
    pub fn known(&self) -> &Known {
        &self.known
    }

    /// The slots that were read since this was asked last, in the order of reading.
    pub fn were_read(&self) -> Vec<usize> {
        self.read.take()
    }
}

impl Figures for Watched {
    fn value(&self, slot: usize) -> f64 {
        self.read.borrow_mut().push(slot);
        self.known.value(slot)
    }
}

impl Ledger for Watched {
    fn keep_given(&mut self, slot: usize, value: f64, origin: Origin) {
        self.known.keep_given(slot, value, origin);
    }
    fn keep_computed(&mut self, slot: usize, value: f64, note: &'static Note, inputs: impl FnOnce(&mut Vec<usize>)) {
        self.known.keep_computed(slot, value, note, inputs);
    }
}
