//! A rule as the search judges it: on plain numbers, before or after they are entered.

use super::Setting;
use crate::characteristic;
use crate::ledger::{Columns, Figures, LANES};
use crate::rule::{Limit, Obligation, Rule, Sense, When, passes, surely_passes, utilisation};

/// A binding rule, ready to be judged.
#[derive(Debug, Clone, Copy)]
pub struct Row {
    /// Its place in the rulebook.
    pub rule: usize,
    demand: usize,
    sense: Sense,
    factor: f64,
    limit: Limit,
    when: Option<When>,
}

impl Row {
    pub fn new(index: usize, rule: &Rule, when: Option<When>) -> Row {
        Row { rule: index, demand: rule.demand, sense: rule.sense, factor: rule.factor, limit: rule.limit, when }
    }

    /// Whether it bounds the use of the motor's peak torque from above by a number.
    pub fn bounds_peak_torque(&self) -> bool {
        let number = matches!(self.limit, Limit::Value(_));
        self.demand == characteristic::PEAK_TORQUE_USE.slot
            && self.sense == Sense::AtMost
            && number
            && self.when.is_none()
    }

    /// The slots that it reads.
    pub fn slots(&self) -> impl Iterator<Item = usize> {
        let limit = match self.limit {
            Limit::Of(slot) => Some(slot),
            Limit::Value(_) => None,
        };
        [Some(self.demand), limit, self.when.map(|when| when.slot())].into_iter().flatten()
    }

    /// The limit, where the value of its characteristic is this.
    #[inline(always)]
    fn limit(&self, value: impl FnOnce(usize) -> f64) -> f64 {
        match self.limit {
            Limit::Of(slot) => self.factor * value(slot),
            Limit::Value(value) => value,
        }
    }

    /// Whether the rule holds on this configuration.
    #[inline(always)]
    fn holds(&self, value: impl FnOnce(usize) -> f64) -> bool {
        match self.when {
            None => true,
            Some(When::Above(slot, bound)) => {
                let value = value(slot);
                value.is_nan() || value > bound
            }
            Some(When::Stated(slot)) => !value(slot).is_nan(),
        }
    }

    /// Demand over limit; zero where the rule does not hold on this configuration.
    #[inline(always)]
    pub fn utilisation<L: Figures>(&self, sheet: &L) -> f64 {
        if !self.holds(|slot| sheet.value(slot)) {
            return 0.0;
        }
        utilisation(self.sense, sheet.value(self.demand), self.limit(|slot| sheet.value(slot)))
    }

    /// Whether the values pass: what [`Row::utilisation`] says, mostly without a division.
    #[inline(always)]
    fn passed_by(&self, value: impl Fn(usize) -> f64) -> bool {
        if !self.holds(&value) {
            return true;
        }
        let (demand, limit) = (value(self.demand), self.limit(&value));
        surely_passes(self.sense, demand, limit) || passes(utilisation(self.sense, demand, limit))
    }

    /// Whether each drive of these passes, 1 or 0: what [`Row::passed`] says of its lane.
    #[inline(always)]
    pub fn passed_lanes(&self, columns: &Columns) -> [u64; LANES] {
        let demand = columns.column(self.demand);
        let limit = match self.limit {
            Limit::Of(slot) => columns.column(slot).map(|value| self.factor * value),
            Limit::Value(value) => [value; LANES],
        };
        let judge = |sense| {
            let surely = lanes(|lane| surely_passes(sense, demand[lane], limit[lane]));
            // mostly all pass, and nothing has to be divided
            if surely.iter().fold(1, |all, lane| all & lane) == 1 {
                return surely;
            }
            lanes(|lane| passes(utilisation(sense, demand[lane], limit[lane])))
        };
        let passed = match self.sense {
            Sense::AtMost => judge(Sense::AtMost),
            Sense::AtLeast => judge(Sense::AtLeast),
        };
        // what does not hold is passed, as in `holds`
        let beside = match self.when {
            None => return passed,
            Some(When::Above(slot, bound)) => lanes(|lane| columns.column(slot)[lane] <= bound),
            Some(When::Stated(slot)) => lanes(|lane| columns.column(slot)[lane].is_nan()),
        };
        std::array::from_fn(|lane| passed[lane] | beside[lane])
    }

    /// Whether the sheet passes.
    #[inline(always)]
    pub fn passed<L: Figures>(&self, sheet: &L) -> bool {
        self.passed_by(|slot| sheet.value(slot))
    }
}

/// 1 in every lane for which this holds, 0 in the others.
#[inline(always)]
fn lanes(holds: impl Fn(usize) -> bool) -> [u64; LANES] {
    let mut marks = [0; LANES];
    for (lane, mark) in marks.iter_mut().enumerate() {
        *mark = u64::from(holds(lane));
    }
    marks
}

/// A rule of a stage whose figures are at hand before they are entered.
#[derive(Debug, Clone)]
pub struct Ahead {
    /// The rule.
    pub row: Row,
    /// Which of the slots that it reads are those of the stage: slot and place among the figures.
    own: Vec<(usize, usize)>,
}

impl Ahead {
    pub fn new(row: Row, slots: &[usize]) -> Ahead {
        let own = row.slots().filter_map(|read| Some((read, slots.iter().position(|&slot| slot == read)?))).collect();
        Ahead { row, own }
    }

    /// Whether these figures of the stage pass beside what is entered.
    #[inline(always)]
    pub fn passed<L: Figures>(&self, figures: &[f64], sheet: &L) -> bool {
        self.row.passed_by(|slot| match self.own.iter().find(|(own, _)| *own == slot) {
            Some(&(_, place)) => figures[place],
            None => sheet.value(slot),
        })
    }
}

/// The binding rules meant for a family that are not waived, in the order of their ids.
pub fn binding(family: &str, setting: &Setting<'_>) -> Vec<Row> {
    let rules = setting.rulebook.rules.iter().enumerate();
    let counts = |rule: &Rule| {
        rule.obligation != Obligation::Should && rule.meant_for(family) && !setting.waived.contains(&rule.id)
    };
    rules.filter(|(_, rule)| counts(rule)).map(|(index, rule)| Row::new(index, rule, rule.when)).collect()
}
