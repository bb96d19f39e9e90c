//! The ledger: a computation is written once and read twice.
//!
//! A drive family enters every quantity under its [`Characteristic`], in the order an engineer would write
//! it down. A formula's inputs are named by characteristic too, so that each input of a line is a line
//! itself; nothing can be worked out beside the sheet. Readers: [`Known`] holds one number a slot and is
//! what the search runs on; [`Worksheet`] keeps every line with its formula, inputs and origin;
//! [`Discovery`] learns in which stage each slot is entered.

mod aside;
mod call;
mod columns;
mod known;
mod watched;
mod worksheet;

pub use aside::{Aside, Asides};
pub use call::{Call, Input};
pub use columns::{Columns, LANES, Lane};
pub use known::{Discovery, Known};
pub use watched::Watched;
pub use worksheet::{Line, Worksheet};

use crate::formula::{Formula, MOST_PHASES, Note, Series};
use crate::units::{Measure, Unit};
use std::marker::PhantomData;

/// Where a given value comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Origin {
    /// The user wrote it.
    Brief,
    /// A catalogue entry says it.
    Catalog,
    /// Nobody said it: a default, listed as an assumption.
    Assumed,
    /// Worked out.
    Formula,
}

impl Origin {
    /// The word used in the record.
    pub fn word(self) -> &'static str {
        match self {
            Origin::Brief => "brief",
            Origin::Catalog => "catalog",
            Origin::Assumed => "assumed",
            Origin::Formula => "formula",
        }
    }
}

/// A quantity that rules and reports speak of: a typed slot of the ledger.
#[derive(Debug)]
pub struct Characteristic<Q> {
    /// Its place in the ledger.
    pub slot: usize,
    quantity: PhantomData<fn() -> Q>,
}

impl<Q> Clone for Characteristic<Q> {
    fn clone(&self) -> Self {
        *self
    }
}
impl<Q> Copy for Characteristic<Q> {}

impl<Q: Measure> Characteristic<Q> {
    /// The characteristic that lives in this slot.
    pub const fn at_slot(slot: usize) -> Self {
        Characteristic { slot, quantity: PhantomData }
    }
}

/// A characteristic with one value for each phase of the duty.
#[derive(Debug)]
pub struct PhaseCharacteristic<Q> {
    /// The slot of the first phase; the others follow.
    pub first: usize,
    quantity: PhantomData<fn() -> Q>,
}

impl<Q> Clone for PhaseCharacteristic<Q> {
    fn clone(&self) -> Self {
        *self
    }
}
impl<Q> Copy for PhaseCharacteristic<Q> {}

impl<Q: Measure> PhaseCharacteristic<Q> {
    /// The characteristic whose phases begin at this slot.
    pub const fn at_slot(first: usize) -> Self {
        PhaseCharacteristic { first, quantity: PhantomData }
    }

    /// The characteristic of one phase.
    #[inline(always)]
    pub fn phase(self, index: usize) -> Characteristic<Q> {
        debug_assert!(index < MOST_PHASES);
        Characteristic::at_slot(self.first + index)
    }

    /// All of the first `count` phases, as one input of a formula.
    #[inline(always)]
    pub fn all(self, count: usize) -> Phases<Q> {
        Phases { first: self.first, count, quantity: PhantomData }
    }
}

impl<Q: Measure> PhaseCharacteristic<Q> {
    /// Some phases by their indices, as one input of a formula.
    #[inline(always)]
    pub fn some(self, indices: &[usize]) -> SomePhases<'_, Q> {
        SomePhases { first: self.first, indices, quantity: PhantomData }
    }
}

/// Some of the phases of a characteristic, as one input of a formula.
#[derive(Debug, Clone, Copy)]
pub struct SomePhases<'i, Q> {
    first: usize,
    indices: &'i [usize],
    quantity: PhantomData<fn() -> Q>,
}

/// The phases of a characteristic, as one input of a formula.
#[derive(Debug, Clone, Copy)]
pub struct Phases<Q> {
    first: usize,
    count: usize,
    quantity: PhantomData<fn() -> Q>,
}

/// What a reader is told of a characteristic.
#[derive(Debug)]
pub struct About {
    /// Its id in rules, records and reports.
    pub id: &'static str,
    /// The symbol used in worksheets.
    pub symbol: &'static str,
    /// The unit it is shown in.
    pub unit: &'static str,
    /// What it is, in words.
    pub words: &'static str,
    /// Whether it has one value a phase.
    pub phased: bool,
    /// The dimension it is measured in.
    pub dimension: crate::units::Dimension,
}

impl About {
    /// The unit it is shown in; the table of units holds it (a test sees to that).
    pub fn display_unit(&self) -> &'static Unit {
        self.dimension
            .units()
            .find(|unit| unit.name == self.unit)
            .expect("the unit of every characteristic is in the table of units")
    }
}

/// Figures that can be read, one a slot.
pub trait Figures {
    /// The value in a slot; NaN until something is entered there.
    fn value(&self, slot: usize) -> f64;
    /// The values of so many slots from the first on, as one input of a formula.
    #[inline(always)]
    fn series<Q: Measure>(&self, first: usize, count: usize) -> Series<Q>
    where
        Self: Sized,
    {
        Series::filled(count, |index| self.value(first + index))
    }
    /// The value of a characteristic already entered.
    #[inline(always)]
    fn read<Q: Measure>(&self, characteristic: Characteristic<Q>) -> Q
    where
        Self: Sized,
    {
        Q::of_si(self.value(characteristic.slot))
    }
}

/// The sheet that a computation is entered in.
pub trait Ledger: Figures {
    /// Enters a group of lines that stand apart, unless it is left out here.
    #[inline(always)]
    fn aside(&mut self, _: Aside, enter: impl FnOnce(&mut Self))
    where
        Self: Sized,
    {
        enter(self);
    }
    /// Keeps a value that was given.
    fn keep_given(&mut self, slot: usize, value: f64, origin: Origin);
    /// Notes that a quantity does not exist on this configuration: its slot holds NaN, and no line tells it.
    fn keep_absent(&mut self, slot: usize) {
        self.keep_given(slot, f64::NAN, Origin::Catalog);
    }
    /// Keeps a value that was worked out, with the note of its formula and the slots of its inputs.
    fn keep_computed(&mut self, slot: usize, value: f64, note: &'static Note, inputs: impl FnOnce(&mut Vec<usize>));
    /// Keeps what was worked out for each phase, in the slots from the first on; no value may hang on another of them.
    fn keep_phases(
        &mut self,
        (first, count): (usize, usize),
        value: impl Fn(&Self, usize) -> f64,
        note: &'static Note,
        inputs: impl Fn(usize, &mut Vec<usize>),
    ) where
        Self: Sized,
    {
        for index in 0..count {
            let value = value(self, index);
            self.keep_computed(first + index, value, note, |slots| inputs(index, slots));
        }
    }

    /// Enters a value that a brief, a catalogue or a default gives.
    #[inline(always)]
    fn given<Q: Measure>(&mut self, characteristic: Characteristic<Q>, value: Q, origin: Origin) -> Q
    where
        Self: Sized,
    {
        self.keep_given(characteristic.slot, value.si(), origin);
        value
    }

    /// Notes that a quantity does not exist on this configuration; rules on it are judged only `when` it is stated.
    #[inline(always)]
    fn absent<Q: Measure>(&mut self, characteristic: Characteristic<Q>)
    where
        Self: Sized,
    {
        self.keep_absent(characteristic.slot);
    }

    /// Works a formula out on characteristics already entered, and enters the result.
    #[inline(always)]
    fn computed<F, A, Q>(&mut self, characteristic: Characteristic<Q>, formula: &'static Formula<F>, inputs: A) -> Q
    where
        Q: Measure,
        Formula<F>: Call<A, Q>,
        Self: Sized,
    {
        let value = formula.call(self, &inputs);
        self.keep_computed(characteristic.slot, value.si(), &formula.note, |slots| {
            <Formula<F> as Call<A, Q>>::slots(&inputs, slots);
        });
        value
    }

    /// Works a formula out for each of the first `count` phases, and enters the results; `inputs` gives those of a phase.
    #[inline(always)]
    fn computed_all<F, A, Q>(
        &mut self,
        characteristic: PhaseCharacteristic<Q>,
        count: usize,
        formula: &'static Formula<F>,
        inputs: impl Fn(usize) -> A,
    ) where
        Q: Measure,
        Formula<F>: Call<A, Q>,
        Self: Sized,
    {
        self.keep_phases(
            (characteristic.first, count),
            |sheet, index| formula.call(sheet, &inputs(index)).si(),
            &formula.note,
            |index, slots| <Formula<F> as Call<A, Q>>::slots(&inputs(index), slots),
        );
    }
}
