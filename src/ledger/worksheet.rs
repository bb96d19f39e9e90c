//! The reader that keeps every line, for the few candidates that get reported.

use super::{Figures, Known, Ledger, Origin};
use crate::formula::Note;

/// One line of a worksheet.
#[derive(Debug, Clone)]
pub struct Line {
    /// The slot it fills.
    pub slot: usize,
    /// Its value in SI units.
    pub value: f64,
    /// Where it comes from.
    pub origin: Origin,
    /// The formula that gave it, if it was worked out.
    pub note: Option<&'static Note>,
    /// The slots of the inputs, in the formula's order.
    pub inputs: Vec<usize>,
}

/// Every line in the order it was entered, beside the numbers.
#[derive(Debug, Clone, Default)]
pub struct Worksheet {
    known: Known,
    /// The lines, in working order.
    pub lines: Vec<Line>,
}

impl Worksheet {
    /// The numbers alone.
    pub fn known(&self) -> &Known {
        &self.known
    }

    /// The line that fills a slot.
    pub fn line(&self, slot: usize) -> Option<&Line> {
        self.lines.iter().find(|line| line.slot == slot)
    }
}

impl Figures for Worksheet {
    fn value(&self, slot: usize) -> f64 {
        self.known.value(slot)
    }
}

impl Ledger for Worksheet {
    fn keep_given(&mut self, slot: usize, value: f64, origin: Origin) {
        self.known.keep_given(slot, value, origin);
        self.lines.push(Line { slot, value, origin, note: None, inputs: Vec::new() });
    }
    fn keep_absent(&mut self, slot: usize) {
        self.known.keep_absent(slot);
    }
    fn keep_computed(&mut self, slot: usize, value: f64, note: &'static Note, inputs: impl FnOnce(&mut Vec<usize>)) {
        let mut slots = Vec::new();
        inputs(&mut slots);
        self.known.keep_computed(slot, value, note, |_| {});
        self.lines.push(Line { slot, value, origin: Origin::Formula, note: Some(note), inputs: slots });
    }
}
