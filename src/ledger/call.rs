//! Calling a formula with characteristics in place of values.

use super::{Characteristic, Figures, Phases, SomePhases};
use crate::formula::{Formula, Series};
use crate::units::Measure;

/// Something a formula can take its argument from.
pub trait Input<V> {
    /// The argument itself.
    fn fetch<L: Figures>(&self, sheet: &L) -> V;
    /// The slots it stands in.
    fn slots(&self, slots: &mut Vec<usize>);
}

impl<Q: Measure> Input<Q> for Characteristic<Q> {
    #[inline(always)]
    fn fetch<L: Figures>(&self, sheet: &L) -> Q {
        Q::of_si(sheet.value(self.slot))
    }
    fn slots(&self, slots: &mut Vec<usize>) {
        slots.push(self.slot);
    }
}

impl<Q: Measure> Input<Series<Q>> for Phases<Q> {
    #[inline(always)]
    fn fetch<L: Figures>(&self, sheet: &L) -> Series<Q> {
        sheet.series(self.first, self.count)
    }
    fn slots(&self, slots: &mut Vec<usize>) {
        slots.extend(self.first..self.first + self.count);
    }
}

impl<Q: Measure> Input<Series<Q>> for SomePhases<'_, Q> {
    #[inline(always)]
    fn fetch<L: Figures>(&self, sheet: &L) -> Series<Q> {
        Series::filled(self.indices.len(), |place| sheet.value(self.first + self.indices[place]))
    }
    fn slots(&self, slots: &mut Vec<usize>) {
        slots.extend(self.indices.iter().map(|index| self.first + index));
    }
}

/// A formula that can be worked out on such inputs.
pub trait Call<A, R> {
    /// The result.
    fn call<L: Figures>(&self, sheet: &L, inputs: &A) -> R;
    /// The slots of the inputs, in the formula's order.
    fn slots(inputs: &A, slots: &mut Vec<usize>);
}

macro_rules! calls {
    ($($value:ident $input:ident $index:tt),*) => {
        impl<R, $($value, $input: Input<$value>),*> Call<($($input,)*), R> for Formula<fn($($value),*) -> R> {
            #[inline(always)]
            fn call<L: Figures>(&self, sheet: &L, inputs: &($($input,)*)) -> R {
                (self.apply)($(inputs.$index.fetch(sheet)),*)
            }
            fn slots(inputs: &($($input,)*), slots: &mut Vec<usize>) {
                $(inputs.$index.slots(slots);)*
            }
        }
    };
}

calls!(V0 A0 0);
calls!(V0 A0 0, V1 A1 1);
calls!(V0 A0 0, V1 A1 1, V2 A2 2);
calls!(V0 A0 0, V1 A1 1, V2 A2 2, V3 A3 3);
calls!(V0 A0 0, V1 A1 1, V2 A2 2, V3 A3 3, V4 A4 4);
calls!(V0 A0 0, V1 A1 1, V2 A2 2, V3 A3 3, V4 A4 4, V5 A5 5);
calls!(V0 A0 0, V1 A1 1, V2 A2 2, V3 A3 3, V4 A4 4, V5 A5 5, V6 A6 6);
calls!(V0 A0 0, V1 A1 1, V2 A2 2, V3 A3 3, V4 A4 4, V5 A5 5, V6 A6 6, V7 A7 7);
calls!(V0 A0 0, V1 A1 1, V2 A2 2, V3 A3 3, V4 A4 4, V5 A5 5, V6 A6 6, V7 A7 7, V8 A8 8);
calls!(V0 A0 0, V1 A1 1, V2 A2 2, V3 A3 3, V4 A4 4, V5 A5 5, V6 A6 6, V7 A7 7, V8 A8 8, V9 A9 9);
calls!(V0 A0 0, V1 A1 1, V2 A2 2, V3 A3 3, V4 A4 4, V5 A5 5, V6 A6 6, V7 A7 7, V8 A8 8, V9 A9 9, V10 A10 10);
calls!(V0 A0 0, V1 A1 1, V2 A2 2, V3 A3 3, V4 A4 4, V5 A5 5, V6 A6 6, V7 A7 7, V8 A8 8, V9 A9 9, V10 A10 10, V11 A11 11);
calls!(V0 A0 0, V1 A1 1, V2 A2 2, V3 A3 3, V4 A4 4, V5 A5 5, V6 A6 6, V7 A7 7, V8 A8 8, V9 A9 9, V10 A10 10, V11 A11 11, V12 A12 12);
calls!(V0 A0 0, V1 A1 1, V2 A2 2, V3 A3 3, V4 A4 4, V5 A5 5, V6 A6 6, V7 A7 7, V8 A8 8, V9 A9 9, V10 A10 10, V11 A11 11, V12 A12 12, V13 A13 13);
