//! Judging a drive by a rule: plain arithmetic without allocation, for the search runs it millions of times.
//!
//! A value that is not known is NaN, and a NaN never passes.

use super::{Limit, Rule, Sense, When};
use crate::ledger::Ledger;

/// Rounding in the last digits turns no verdict.
const TOLERANCE: f64 = 1e-9;

/// What comes out of judging one rule.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Verdict {
    /// The demand keeps its limit.
    Pass,
    /// The demand misses its limit.
    Fail,
    /// The utilisation could not be worked out; counts as a failure.
    NotEvaluated,
}

impl Verdict {
    /// The word used in rule files, records and reports.
    pub fn word(self) -> &'static str {
        match self {
            Verdict::Pass => "pass",
            Verdict::Fail => "fail",
            Verdict::NotEvaluated => "not-evaluated",
        }
    }
}

/// Whether a utilisation passes: not above 1; NaN never passes.
#[inline]
pub fn passes(utilisation: f64) -> bool {
    utilisation <= 1.0 + TOLERANCE
}

/// The verdict on a utilisation.
#[inline]
pub fn verdict(utilisation: f64) -> Verdict {
    if passes(utilisation) {
        Verdict::Pass
    } else if utilisation.is_nan() {
        Verdict::NotEvaluated
    } else {
        Verdict::Fail
    }
}

/// The utilisation of a limit, from values in the same unit.
///
/// At most: demand over limit, NaN unless the limit is positive and finite. At least: limit over demand, NaN
/// unless the demand is positive and finite. NaN as well where what stands above is less than any number, which no quantity
/// is. 2400 1/min of at most 2560 1/min gives 0.9375.
#[inline]
pub fn utilisation(sense: Sense, demand: f64, limit: f64) -> f64 {
    let (over, under) = match sense {
        Sense::AtMost => (demand, limit),
        Sense::AtLeast => (limit, demand),
    };
    if under > 0.0 && under.is_finite() && over > f64::NEG_INFINITY { over / under } else { f64::NAN }
}

/// Whether the utilisation of such a limit is 1 at most, as can be told without a division; where this says no, it may be so all
/// the same.
#[inline(always)]
pub fn surely_passes(sense: Sense, demand: f64, limit: f64) -> bool {
    let (over, under) = match sense {
        Sense::AtMost => (demand, limit),
        Sense::AtLeast => (limit, demand),
    };
    // a quotient is rounded to 1 at most where this holds
    over <= under && under > 0.0 && under.is_finite() && over > f64::NEG_INFINITY
}

impl Rule {
    /// The limit in the SI unit of the demand; NaN while its characteristic is not known.
    #[inline]
    pub fn limit_value<L: Ledger>(&self, sheet: &L) -> f64 {
        match self.limit {
            Limit::Of(slot) => self.factor * sheet.value(slot),
            Limit::Value(value) => value,
        }
    }

    /// The utilisation of the limit on this sheet.
    #[inline]
    pub fn utilisation<L: Ledger>(&self, sheet: &L) -> f64 {
        utilisation(self.sense, sheet.value(self.demand), self.limit_value(sheet))
    }

    /// Whether the sheet passes this rule.
    #[inline]
    pub fn passed<L: Ledger>(&self, sheet: &L) -> bool {
        passes(self.utilisation(sheet))
    }

    /// Whether the rule is meant for this family.
    pub fn meant_for(&self, family: &str) -> bool {
        self.applies_to.is_empty() || self.applies_to.iter().any(|named| named == family)
    }

    /// Whether the rule's condition holds on this sheet; the sheet has to hold the characteristic of
    /// [`Rule::when`] already.
    #[inline]
    pub fn holds<L: Ledger>(&self, sheet: &L) -> bool {
        match self.when {
            None => true,
            Some(When::Stated(slot)) => !sheet.value(slot).is_nan(),
            Some(When::Above(slot, value)) => {
                let found = sheet.value(slot);
                found.is_nan() || found > value
            }
        }
    }

    /// Whether the rule is judged for a drive of this family on this sheet.
    pub fn applies<L: Ledger>(&self, family: &str, sheet: &L) -> bool {
        self.meant_for(family) && self.holds(sheet)
    }

    /// The slots that have to be known before the rule can be judged: demand, limit and condition.
    pub fn slots(&self) -> impl Iterator<Item = usize> {
        let limit = match self.limit {
            Limit::Of(slot) => Some(slot),
            Limit::Value(_) => None,
        };
        [Some(self.demand), limit, self.when.map(When::slot)].into_iter().flatten()
    }
}
