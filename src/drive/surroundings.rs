//! What the surroundings that the brief names ask of a drive: covers, and shorter intervals of lubrication.
//!
//! Method: found by the words of the brief, once a family; of several the dearest cover and the shortest interval. Limits: those
//! of the catalogue's words.

use crate::catalog::Catalog;
use crate::characteristic as ch;
use crate::formula::cost;
use crate::ledger::{Ledger, Origin};
use crate::units::*;

/// What the surroundings of the machine ask of each drive.
#[derive(Debug, Clone, Copy)]
pub struct Here {
    cover: Money,
    interval_share: Ratio,
}

impl Here {
    /// Of these words of a brief, out of this catalogue.
    pub fn new(environment: &[String], catalog: &Catalog) -> Here {
        let named = || catalog.surroundings.iter().filter(|entry| entry.named_by(environment).is_some());
        // one cover keeps off all of them; a price that is not known stays so
        let dearer = |one: Money, other: Money| if other.0 > one.0 || other.0.is_nan() { other } else { one };
        let cover = named().map(|entry| entry.cover_per_metre).reduce(dearer);
        let shorter = |one: Ratio, other: Ratio| if other.si() < one.si() { other } else { one };
        Here {
            cover: cover.unwrap_or(catalog.prices.cover_per_metre),
            interval_share: named().map(|entry| entry.interval_share).fold(Ratio::of_si(1.0), shorter),
        }
    }

    /// Enters share of the interval, and covers of one drive and of all.
    pub fn enter<L: Ledger>(&self, sheet: &mut L) {
        sheet.given(ch::SURROUNDINGS_SHARE, self.interval_share, Origin::Catalog);
        sheet.given(ch::COVER_METRE_PRICE, self.cover, Origin::Catalog);
        sheet.computed(ch::COVER_PRICE, &cost::LENGTH_PRICE, (ch::TRAVEL, ch::COVER_METRE_PRICE));
        sheet.computed(ch::COVER_COST, &cost::TIMES, (ch::DRIVES, ch::COVER_PRICE));
    }
}
