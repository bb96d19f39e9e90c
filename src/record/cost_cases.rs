//! What drives cost over their life where the hours a year or the discount rate differ from the brief.
//!
//! Method: the drive chosen and the best of each other family, the same parts, worked out anew at the carried mass at which drives are weighed
//! for the brief with one value changed. Limits: another drive of the same family may be cheaper then; one rule of the
//! rulebook that is no longer kept is told, and the cost beside it all the same.

use super::known;
use crate::brief::Brief;
use crate::drive::Demand;
use crate::rule::{Obligation, passes};
use crate::search::{Found, Setting, Worked, work_out};
use crate::units::{Mass, Measure, Ratio};
use serde::{Deserialize, Serialize};

/// One case: a value of the brief, and what drives cost with it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct CostCase {
    /// The key of the brief whose value differs; empty for the brief as it is.
    pub key: String,
    /// The value, in `unit`; none for the brief as it is.
    pub value: Option<f64>,
    /// The unit.
    pub unit: String,
    /// The drive chosen first, then the best of each other family in the order of families.
    pub drives: Vec<CostOfDrive>,
}

/// What one drive costs in a case.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct CostOfDrive {
    /// Id of its family.
    pub family: String,
    /// Price over the years of service, discounted.
    #[serde(with = "known")]
    pub whole_life: f64,
    /// Binding rules that it does not keep in this case, and that are not waived.
    pub fails: Vec<String>,
}

/// Most working hours that a year has.
const HOURS_OF_A_YEAR: f64 = 8784.0;

/// The briefs to compare: key, value, unit, brief.
fn briefs(brief: &Brief) -> Vec<(&'static str, Option<f64>, &'static str, Brief)> {
    let mut cases = vec![("", None, "", brief.clone())];
    for factor in [0.5, 1.5] {
        let mut other = brief.clone();
        let hours = factor * brief.hours_per_year.value;
        let hours = if hours > HOURS_OF_A_YEAR { HOURS_OF_A_YEAR } else { hours };
        other.hours_per_year.value = hours;
        cases.push(("hours-per-year", Some(hours), "h", other));
    }
    for factor in [0.0, 2.0] {
        let mut other = brief.clone();
        let rate = factor * brief.discount_rate.value.si();
        other.discount_rate.value = Ratio::of_si(rate);
        cases.push(("discount-rate", Some(rate * 100.0), "%", other));
    }
    cases
}

/// The cases of an axis for these drives, the chosen one first.
pub fn cost_cases(brief: &Brief, axis: usize, most: f64, drives: &[Found], setting: &Setting<'_>) -> Vec<CostCase> {
    let of = |brief: &Brief| -> Vec<CostOfDrive> {
        let demand = Demand::new(brief, axis, Mass::of_si(most));
        let cost = |found: &Found| {
            let worked = work_out(found.family, &found.path, &demand, setting)?;
            let whole_life = worked.attributes.whole_life;
            Some(CostOfDrive { family: found.family.into(), whole_life, fails: fails(&worked) })
        };
        drives.iter().filter_map(cost).collect()
    };
    briefs(brief)
        .into_iter()
        .map(|(key, value, unit, brief)| CostCase { key: key.into(), value, unit: unit.into(), drives: of(&brief) })
        .collect()
}

fn fails(worked: &Worked<'_>) -> Vec<String> {
    let failed = worked
        .judged
        .iter()
        .filter(|judged| judged.rule.obligation == Obligation::Shall && !judged.waived && !passes(judged.utilisation));
    failed.map(|judged| judged.rule.id.clone()).collect()
}
