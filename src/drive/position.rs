//! What measuring and correcting the position adds to the merit at least, told before these last two stages are entered.
//!
//! Method: of every scale, or none, with every table, or none, the price and the error are taken as if nothing gave and nothing
//! had play; the best of all pairs bounds what is chosen later. Where no scale measures, the errors of the drive itself count as far as
//! they are in the sheet. Limits: a bound for the search only; what is chosen is worked out in `feedback` and `mapping`.

use super::demand::Demand;
use super::sides::Errors;
use super::{Merit, defaults};
use crate::catalog::{ErrorTable, LinearScale};
use crate::formula::{budget, pricing};
use crate::ledger::{Characteristic, Ledger};
use crate::units::*;

/// The choices of the last two stages of a family, and what the drive itself leaves.
#[derive(Debug, Clone)]
pub struct Position<'f> {
    /// What may measure, one for each choice of the last stage but one.
    pub scales: Vec<Option<&'f LinearScale>>,
    /// What may be corrected by, one for each choice of the last stage.
    pub tables: Vec<Option<&'f ErrorTable>>,
    /// Errors of the drive that build up over the travel; they add by squares.
    pub long: &'static [Characteristic<Length>],
    /// Errors of the drive that repeat within one turn.
    pub within_turn: &'static [Characteristic<Length>],
    /// The least scatter where the motor measures.
    pub scatter: Length,
}

impl<'f> Position<'f> {
    /// That of a screw, whose errors are those of deviation, variation and turn.
    pub fn of_screw(
        scales: &'f [Option<&'f LinearScale>],
        tables: &'f [Option<&'f ErrorTable>],
        errors: &'static Errors,
    ) -> Position<'f> {
        let (long, within_turn) = errors.split_at(2);
        Position {
            scales: scales.to_vec(),
            tables: tables.to_vec(),
            long,
            within_turn,
            scatter: defaults::parts::screw_scatter(),
        }
    }

    /// That of a rack, whose errors are those of the line, of run-out and of the step of pitch.
    pub fn of_rack(
        scales: &'f [Option<&'f LinearScale>],
        tables: &'f [Option<&'f ErrorTable>],
        errors: &'static Errors,
    ) -> Position<'f> {
        let (long, within_turn) = errors.split_at(1);
        Position {
            scales: scales.to_vec(),
            tables: tables.to_vec(),
            long,
            within_turn,
            scatter: defaults::parts::rack_scatter(),
        }
    }
}

/// One pair of scale and table.
#[derive(Debug)]
struct Pair {
    /// Price of all drives.
    price: f64,
    /// Error over the travel of what measures, with what the table leaves of it; none where the drive's own counts.
    error: Option<Length>,
    table: Option<(Ratio, Length, Ratio, Length)>,
    scatter: Length,
}

/// The least that each pair may add.
#[derive(Debug)]
pub struct LeastPosition {
    pairs: Vec<Pair>,
    tables: usize,
    long: &'static [Characteristic<Length>],
    within_turn: &'static [Characteristic<Length>],
    travel: Length,
    merit: Merit,
}

/// What a drive itself leaves over its travel and within a turn, m; nothing where it is not known.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct OwnErrors {
    long: f64,
    within_turn: f64,
}

/// Root of the sum of squares of what is known.
fn together(sheet: &impl Ledger, errors: &[Characteristic<Length>]) -> f64 {
    let known = errors.iter().map(|&error| sheet.read(error)).filter(|error| error.si() > 0.0);
    known.fold(Length::of_si(0.0), budget::root_sum_square_2).si()
}

/// What a table leaves of an error.
fn left(error: Length, travel: Length, table: Option<(Ratio, Length, Ratio, Length)>) -> Length {
    table.map_or(error, |(share, uncertainty, rate, drift)| {
        budget::mapped_error(error, travel, share, uncertainty, rate, drift)
    })
}

impl LeastPosition {
    /// For the choices of a family on this demand, weighed like this.
    pub fn new(position: &Position<'_>, demand: &Demand<'_>, merit: &Merit) -> LeastPosition {
        let travel = demand.axis.travel;
        let drives = f64::from(demand.axis.drives.value);
        let price = |fixed: Money, metre: Money| (pricing::FIXED_AND_LENGTH_PRICE.apply)(fixed, metre, travel).0;
        let mut pairs = Vec::with_capacity(position.scales.len() * position.tables.len());
        for scale in &position.scales {
            for table in &position.tables {
                let of_scale = scale.map_or(0.0, |scale| price(scale.price_fixed, scale.price_per_metre));
                let of_table = table.map_or(0.0, |table| price(table.price_fixed, table.price_per_metre));
                let known = [of_scale, of_table].into_iter().filter(|price| *price > 0.0);
                let table = table
                    .map(|table| (table.residual_share, table.uncertainty, table.uncertainty_per_metre, table.drift));
                let error = scale.map(|scale| {
                    left(budget::scale_error(scale.error_per_metre, scale.least_error, travel), travel, table)
                });
                let scatter = scale.map_or(position.scatter, |_| defaults::parts::scale_scatter());
                pairs.push(Pair { price: drives * known.sum::<f64>(), error, table, scatter });
            }
        }
        let (long, within_turn, tables) = (position.long, position.within_turn, position.tables.len());
        LeastPosition { pairs, tables, long, within_turn, travel, merit: *merit }
    }

    /// The errors of the drive itself, over the travel and within one turn.
    pub fn errors(&self) -> impl Iterator<Item = Characteristic<Length>> {
        self.long.iter().chain(self.within_turn).copied()
    }

    /// What the drive itself leaves over the travel and within one turn, of a sheet that holds all of it.
    #[inline]
    pub fn own(&self, sheet: &impl Ledger) -> OwnErrors {
        OwnErrors { long: together(sheet, self.long), within_turn: together(sheet, self.within_turn) }
    }

    /// What a pair adds at least to the merit; of this scale alone where one is chosen, and then of this table.
    pub fn at_least(&self, own: OwnErrors, scale: Option<u16>, table: Option<u16>) -> f64 {
        let of_scale = |scale: u16| self.pairs.chunks(self.tables.max(1)).nth(usize::from(scale)).unwrap_or_default();
        let pairs = scale.map_or(self.pairs.as_slice(), of_scale);
        let chosen = scale.and(table).map(usize::from);
        let pairs = chosen.map_or(pairs, |table| pairs.get(table..=table).unwrap_or_default());
        let mut least = f64::INFINITY;
        for pair in pairs {
            let of_pair = self.of(pair, own);
            least = if of_pair < least { of_pair } else { least };
        }
        if least.is_finite() { least } else { 0.0 }
    }

    fn of(&self, pair: &Pair, own: OwnErrors) -> f64 {
        let long = pair.error.unwrap_or_else(|| {
            let long = left(Length::of_si(own.long), self.travel, pair.table);
            budget::root_sum_square_2(long, Length::of_si(own.within_turn))
        });
        let error = budget::tool_error(long, Length::of_si(0.0), pair.scatter);
        self.merit.position(pair.price, error)
    }

    /// What a price alone adds to the merit.
    pub fn price(&self, cost: f64) -> f64 {
        self.merit.position(cost, Length::of_si(0.0))
    }
}
