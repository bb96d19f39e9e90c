//! The formulas on prices and cost.
//!
//! Method: one line a formula, as in the list beside. Limits: none.

use crate::calc::generic::Plain;
use crate::formula::*;

/// Filed as the source files are.
pub(super) static FORMULAS: &[&dyn Plain] = &[
    &cost::SCREW_PRICE,
    &cost::SUM_5,
    &cost::TIMES,
    &cost::LENGTH_PRICE,
    &cost::FITTING_PRICE,
    &cost::ENERGY_COST,
    &cost::ANNUITY,
    &cost::WHOLE_LIFE_COST,
    &cost::DISCOUNTED_EXCHANGES,
    &cost::EXCHANGE_PRICE,
    &cost::REPLACEMENT_COST,
    &pricing::SUPPORT_PRICE,
    &pricing::CLAMPS_PRICE,
    &pricing::SUPPORT_PAIR_PRICE,
    &pricing::RACK_LINE_PRICE,
    &pricing::PINION_PRICE,
    &pricing::PRICE_SUM,
    &pricing::FASTENING_PRICE,
    &pricing::FIXED_AND_LENGTH_PRICE,
    &pricing::UPKEEP_PRICE,
    &pricing::PURCHASE_COST,
    &pricing::LONGER_DELIVERY,
    &pricing::PRICE_SUM_3,
];
