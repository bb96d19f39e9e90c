//! Price, energy, upkeep, mass and delivery of a drive: the last lines of every sheet.

use crate::catalog::{ErrorTable, LinearScale, PriceBasis};
use crate::characteristic as ch;
use crate::formula::{cost, pricing};
use crate::ledger::{Ledger, Origin};
use crate::units::*;

/// The least of some prices; one that is not known may be anything.
pub fn least(prices: impl Iterator<Item = f64>) -> f64 {
    prices.fold(f64::INFINITY, |least, price| {
        if price >= least {
            least
        } else if price.is_nan() {
            0.0
        } else {
            price
        }
    })
}

/// Which coefficients of fitting and upkeep apply.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// Ball screws.
    Screw,
    /// Racks and pinions.
    Rack,
    /// Racks with two pinions: twice the fixed hours, for two units are set and kept.
    TwinRack,
}

/// Enters the prices and hours that depend on the kind of drive and the travel alone.
pub fn enter_kind<L: Ledger>(prices: &PriceBasis, kind: Kind, sheet: &mut L) {
    let catalog = Origin::Catalog;
    let (hours, hours_per_metre, datum, upkeep, upkeep_per_metre, lubricant) = match kind {
        Kind::Screw => (
            prices.screw_fitting_hours,
            prices.screw_fitting_hours_per_metre,
            prices.screw_datum_per_metre,
            prices.screw_upkeep_hours,
            prices.screw_upkeep_hours_per_metre,
            prices.screw_lubricant,
        ),
        Kind::Rack | Kind::TwinRack => (
            prices.rack_fitting_hours,
            prices.rack_fitting_hours_per_metre,
            prices.rack_datum_per_metre,
            prices.rack_upkeep_hours,
            prices.rack_upkeep_hours_per_metre,
            prices.rack_lubricant,
        ),
    };
    sheet.given(ch::SUPPLY_EFFICIENCY, prices.drive_efficiency, catalog);
    let units = if kind == Kind::TwinRack { 2.0 } else { 1.0 };
    let (hours, upkeep) = (Time::of_si(units * hours.si()), Time::of_si(units * upkeep.si()));
    sheet.given(ch::FITTING_HOURS, hours, catalog);
    sheet.given(ch::FITTING_HOURS_PER_METRE, hours_per_metre, catalog);
    sheet.given(ch::LABOUR_RATE, prices.labour_rate, catalog);
    sheet.given(ch::DATUM_PRICE, datum, catalog);
    sheet.given(ch::UPKEEP_HOURS, upkeep, catalog);
    sheet.given(ch::UPKEEP_HOURS_PER_METRE, upkeep_per_metre, catalog);
    sheet.given(ch::LUBRICANT_PRICE, lubricant, catalog);
    sheet.computed(
        ch::FITTING_LABOUR,
        &cost::FITTING_PRICE,
        (ch::FITTING_HOURS, ch::FITTING_HOURS_PER_METRE, ch::TRAVEL, ch::LABOUR_RATE),
    );
    sheet.computed(ch::DATUM_LINE_PRICE, &cost::LENGTH_PRICE, (ch::TRAVEL, ch::DATUM_PRICE));
    sheet.computed(ch::FITTING_PRICE, &pricing::PRICE_SUM, (ch::FITTING_LABOUR, ch::DATUM_LINE_PRICE));
    sheet.computed(
        ch::INSPECTION_PRICE,
        &pricing::UPKEEP_PRICE,
        (ch::UPKEEP_HOURS, ch::UPKEEP_HOURS_PER_METRE, ch::TRAVEL, ch::LABOUR_RATE),
    );
    sheet.computed(ch::UPKEEP_PRICE, &pricing::PRICE_SUM, (ch::INSPECTION_PRICE, ch::LUBRICANT_PRICE));
    let drives = ch::DRIVES;
    sheet.computed(ch::FITTING_LABOUR_COST, &cost::TIMES, (drives, ch::FITTING_LABOUR));
    sheet.computed(ch::DATUM_COST, &cost::TIMES, (drives, ch::DATUM_LINE_PRICE));
    sheet.computed(ch::FITTING_COST, &cost::TIMES, (drives, ch::FITTING_PRICE));
    sheet.computed(ch::INSPECTION_COST, &cost::TIMES, (drives, ch::INSPECTION_PRICE));
    sheet.computed(ch::LUBRICANT_COST, &cost::TIMES, (drives, ch::LUBRICANT_PRICE));
    sheet.computed(ch::UPKEEP_COST, &cost::TIMES, (drives, ch::UPKEEP_PRICE));
}

/// Enters what the motors cost to buy and in energy, once their power is known.
#[inline(always)]
pub fn enter_motors<L: Ledger>(sheet: &mut L) {
    let units = super::motor::units(sheet);
    sheet.computed(ch::MOTOR_COST, &cost::TIMES, (units, ch::MOTOR_PRICE));
    sheet.computed(ch::ENERGY_COST, &cost::ENERGY_COST, (ch::MEAN_POWER, ch::HOURS_PER_YEAR, ch::ENERGY_PRICE));
}

/// Enters what the other parts of all drives of the axis cost without feedback, once the prices of element, support and
/// reduction are in the sheet.
#[inline(always)]
pub fn enter_drives<L: Ledger>(sheet: &mut L) {
    sheet.computed(ch::ELEMENT_COST, &cost::TIMES, (ch::DRIVES, ch::ELEMENT_PRICE));
    sheet.computed(ch::SUPPORT_COST, &cost::TIMES, (ch::DRIVES, ch::SUPPORT_PRICE));
    let units = super::motor::units(sheet);
    sheet.computed(ch::REDUCTION_COST, &cost::TIMES, (units, ch::REDUCTION_PRICE));
}

/// Enters price and delivery of what measures the position.
#[inline(always)]
pub fn enter_feedback<L: Ledger>(scale: Option<&LinearScale>, sheet: &mut L) {
    let catalog = Origin::Catalog;
    let free = Money(0.0);
    sheet.given(ch::SCALE_FIXED_PRICE, scale.map_or(free, |scale| scale.price_fixed), catalog);
    sheet.given(ch::SCALE_METRE_PRICE, scale.map_or(free, |scale| scale.price_per_metre), catalog);
    let grown = (ch::SCALE_FIXED_PRICE, ch::SCALE_METRE_PRICE, ch::TRAVEL);
    sheet.computed(ch::FEEDBACK_PRICE, &pricing::FIXED_AND_LENGTH_PRICE, grown);
    sheet.computed(ch::FEEDBACK_COST, &cost::TIMES, (ch::DRIVES, ch::FEEDBACK_PRICE));
    sheet.given(ch::SCALE_LEAD_TIME, scale.map_or(Time::of_si(0.0), |scale| scale.lead_time), catalog);
    sheet.computed(ch::LEAD_TIME, &pricing::LONGER_DELIVERY, (ch::PARTS_LEAD_TIME, ch::SCALE_LEAD_TIME));
}

/// Enters the rest once the table of corrections is known: the last lines of the sheet.
#[inline(always)]
pub fn enter_whole<L: Ledger>(table: Option<&ErrorTable>, sheet: &mut L) {
    let catalog = Origin::Catalog;
    let free = Money(0.0);
    sheet.given(ch::TABLE_FIXED_PRICE, table.map_or(free, |table| table.price_fixed), catalog);
    sheet.given(ch::TABLE_METRE_PRICE, table.map_or(free, |table| table.price_per_metre), catalog);
    let grown = (ch::TABLE_FIXED_PRICE, ch::TABLE_METRE_PRICE, ch::TRAVEL);
    sheet.computed(ch::TABLE_PRICE, &pricing::FIXED_AND_LENGTH_PRICE, grown);
    sheet.computed(ch::TABLE_COST, &cost::TIMES, (ch::DRIVES, ch::TABLE_PRICE));
    sheet.computed(
        ch::PURCHASE_COST,
        &pricing::PURCHASE_COST,
        (
            ch::ELEMENT_COST,
            ch::SUPPORT_COST,
            ch::REDUCTION_COST,
            ch::MOTOR_COST,
            ch::FEEDBACK_COST,
            ch::TABLE_COST,
            ch::FITTING_COST,
            ch::COVER_COST,
        ),
    );
    sheet.computed(
        ch::WHOLE_LIFE_COST,
        &cost::WHOLE_LIFE_COST,
        (ch::PURCHASE_COST, ch::ENERGY_COST, ch::UPKEEP_COST, ch::ANNUITY, ch::REPLACEMENT_COST),
    );
}

/// Enters the longest delivery time of these parts.
#[inline(always)]
pub fn enter_delivery<L: Ledger>(times: &[Time], sheet: &mut L) {
    let none = Time::of_si(0.0);
    let longest = times.iter().copied().fold(none, |longest, time| if time > longest { time } else { longest });
    sheet.given(ch::PARTS_LEAD_TIME, longest, Origin::Catalog);
}
