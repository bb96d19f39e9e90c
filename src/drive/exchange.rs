//! What exchanging parts costs whose life ends within the years of service.
//!
//! Method: life, hours of work and of standstill of each part; every exchange at its present value. Entered with what a drive
//! is asked once it passes over its duty. Limits: a part is exchanged at its stated life, by itself; faults before that are
//! not counted. Racks and pinions are sized for all the years; couplings, motors and scales are taken to last.

use super::motor;
use crate::catalog::{Catalog, Exchange};
use crate::characteristic as ch;
use crate::formula::{cost, pricing};
use crate::ledger::{Characteristic, Ledger, Origin};
use crate::units::*;

/// The lines of one part: work, standstill, exchanges, price of one, price of all.
type Lines =
    (Characteristic<Time>, Characteristic<Time>, Characteristic<Ratio>, Characteristic<Money>, Characteristic<Money>);

const SCREW: Lines = (
    ch::SCREW_EXCHANGE_WORK,
    ch::SCREW_EXCHANGE_STANDSTILL,
    ch::SCREW_EXCHANGES,
    ch::SCREW_EXCHANGE_PRICE,
    ch::SCREW_REPLACEMENT,
);
const BEARINGS: Lines = (
    ch::BEARING_EXCHANGE_WORK,
    ch::BEARING_EXCHANGE_STANDSTILL,
    ch::BEARING_EXCHANGES,
    ch::BEARING_EXCHANGE_PRICE,
    ch::BEARING_REPLACEMENT,
);
const REDUCTION: Lines = (
    ch::REDUCTION_EXCHANGE_WORK,
    ch::REDUCTION_EXCHANGE_STANDSTILL,
    ch::REDUCTION_EXCHANGES,
    ch::REDUCTION_EXCHANGE_PRICE,
    ch::REDUCTION_REPLACEMENT,
);

/// What the catalogue says of exchanging the parts of a drive.
#[derive(Debug, Clone, Copy)]
pub struct Exchanges<'a> {
    screw: Option<&'a Exchange>,
    bearings: Option<&'a Exchange>,
    belt: Option<&'a Exchange>,
    gearbox: Option<&'a Exchange>,
}

impl<'a> Exchanges<'a> {
    /// Out of this catalogue; `bearings` is what holds the screw or the turning nut.
    pub fn new(catalog: &'a Catalog, bearings: &str) -> Exchanges<'a> {
        let of = |part: &str| catalog.exchanges.iter().find(|entry| entry.of == part);
        Exchanges { screw: of("screw"), bearings: of(bearings), belt: of("belt"), gearbox: of("gearbox") }
    }

    /// Enters those of a screw: screw with nut at `screw`, bearings at `bearings`, and the belt if there is one.
    #[inline(always)]
    pub fn screw<L: Ledger>(&self, screw: Characteristic<Money>, belt: bool, sheet: &mut L) {
        part(self.screw, SCREW, (ch::DRIVES, screw, ch::SCREW_LIFE_HOURS), sheet);
        part(self.bearings, BEARINGS, (ch::DRIVES, ch::BEARINGS_PRICE, ch::BEARING_LIFE_HOURS), sheet);
        let rolling = (SCREW.4, BEARINGS.4);
        if belt {
            let life = self.belt.and_then(|entry| entry.life).unwrap_or(Time::of_si(f64::NAN));
            sheet.given(ch::BELT_LIFE, life, Origin::Catalog);
            part(self.belt, REDUCTION, (ch::DRIVES, ch::REDUCTION_PRICE, ch::BELT_LIFE), sheet);
            sheet.computed(ch::REPLACEMENT_COST, &pricing::PRICE_SUM_3, (rolling.0, rolling.1, REDUCTION.4));
        } else {
            sheet.absent(ch::BELT_LIFE);
            none(REDUCTION, sheet);
            sheet.computed(ch::REPLACEMENT_COST, &pricing::PRICE_SUM, rolling);
        }
    }

    /// Enters that of the gearboxes of a rack.
    #[inline(always)]
    pub fn rack<L: Ledger>(&self, sheet: &mut L) {
        let units = motor::units(sheet);
        part(self.gearbox, REDUCTION, (units, ch::REDUCTION_PRICE, ch::GEARBOX_LIFE), sheet);
        let all = (REDUCTION.2, REDUCTION.3);
        sheet.computed(ch::REPLACEMENT_COST, &cost::REPLACEMENT_COST, all);
    }
}

/// Enters one part: how many, what one costs, how long it lasts.
#[inline(always)]
fn part<L: Ledger>(
    entry: Option<&Exchange>,
    lines: Lines,
    of: (Characteristic<Ratio>, Characteristic<Money>, Characteristic<Time>),
    sheet: &mut L,
) {
    let (work, standstill, exchanges, price, replacement) = lines;
    // what the catalogue does not state is not known
    let unknown = Time::of_si(f64::NAN);
    sheet.given(work, entry.map_or(unknown, |entry| entry.work), Origin::Catalog);
    sheet.given(standstill, entry.map_or(unknown, |entry| entry.standstill), Origin::Catalog);
    let (count, each, life) = of;
    let service = (life, ch::HOURS_PER_YEAR, ch::SERVICE_YEARS, ch::DISCOUNT_RATE);
    sheet.computed(exchanges, &cost::DISCOUNTED_EXCHANGES, service);
    let once = (count, each, work, ch::LABOUR_RATE, standstill, ch::DOWNTIME_PRICE);
    sheet.computed(price, &cost::EXCHANGE_PRICE, once);
    sheet.computed(replacement, &cost::REPLACEMENT_COST, (exchanges, price));
}

fn none<L: Ledger>(lines: Lines, sheet: &mut L) {
    sheet.absent(lines.0);
    sheet.absent(lines.1);
    sheet.absent(lines.2);
    sheet.absent(lines.3);
    sheet.absent(lines.4);
}
