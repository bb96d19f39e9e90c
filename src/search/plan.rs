//! Which rules are judged at which stage.

use super::Setting;
use crate::characteristic::{self, SLOTS};
use crate::drive::{Demand, Family, Floor, LeastPosition};
use crate::ledger::{Discovery, Known, Ledger};
use crate::rule::{Limit, Obligation, Rule, Sense, When, passes, utilisation};

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
    fn new(index: usize, rule: &Rule, when: Option<When>) -> Row {
        Row { rule: index, demand: rule.demand, sense: rule.sense, factor: rule.factor, limit: rule.limit, when }
    }

    /// The slots that it reads.
    fn slots(&self) -> impl Iterator<Item = usize> {
        let limit = match self.limit {
            Limit::Of(slot) => Some(slot),
            Limit::Value(_) => None,
        };
        [Some(self.demand), limit, self.when.map(|when| when.slot())].into_iter().flatten()
    }

    /// Demand over limit; zero where the rule does not hold on this configuration.
    #[inline(always)]
    pub fn utilisation<L: Ledger>(&self, sheet: &L) -> f64 {
        match self.when {
            Some(When::Above(slot, bound)) if sheet.value(slot) <= bound => return 0.0,
            Some(When::Stated(slot)) if sheet.value(slot).is_nan() => return 0.0,
            _ => {}
        }
        let limit = match self.limit {
            Limit::Of(slot) => self.factor * sheet.value(slot),
            Limit::Value(value) => value,
        };
        utilisation(self.sense, sheet.value(self.demand), limit)
    }
}

/// The binding rules of a family on one axis, by the stages in the order in which they are taken.
#[derive(Debug)]
pub struct Plan {
    /// The stages in the order in which they are taken; everything else here stands in that order.
    pub order: Vec<usize>,
    /// How many choices each stage offers.
    pub stages: Vec<usize>,
    /// How many configurations lie behind one choice of each stage.
    pub behind: Vec<u64>,
    /// What each stage enters, where its figures may be kept; empty for the others.
    pub kept: Vec<Vec<usize>>,
    /// Of those rules the ones that hang on the axis, the first two stages and the stage itself alone.
    pub kept_rows: Vec<Vec<Row>>,
    /// The place of each stage in the order.
    pub places: Vec<usize>,
    /// The rules judged at each stage, in the order of their ids.
    pub rows: Vec<Vec<Row>>,
    /// Advice that weighs when drives are compared, with its weight; judged at the end.
    pub advice: Vec<(Row, f64)>,
    /// The same by the stage at which all that it names is known.
    pub advice_known: Vec<Vec<(Row, f64)>>,
    /// What measuring and correcting the position adds at least.
    pub position: LeastPosition,
    /// The places at which the errors of the drive itself are known, over the travel and within one turn.
    pub errors_known: [usize; 2],
    /// For each stage what is known there of the merit.
    pub floors: Vec<Floor>,
    /// Whether more of the merit is known at each stage than at the one before.
    pub grows: Vec<bool>,
    /// For each stage whether only its own rules read what it enters, so that a screen may stand for it.
    pub alone: Vec<bool>,
}

impl Plan {
    /// Learns where each characteristic is entered and puts every binding rule that is not waived into the
    /// earliest stage that knows all it names.
    pub fn new<F: Family>(family: &F, demand: &Demand<'_>, setting: &Setting<'_>) -> Plan {
        Plan::in_order(family.order(), family, demand, setting)
    }

    /// The same with the stages in this order.
    pub fn in_order<F: Family>(order: Vec<usize>, family: &F, demand: &Demand<'_>, setting: &Setting<'_>) -> Plan {
        let choices = family.stages();
        let stages: Vec<usize> = order.iter().map(|&stage| choices[stage]).collect();
        let mut behind = vec![1_u64; stages.len()];
        for stage in (0..stages.len().saturating_sub(1)).rev() {
            behind[stage] = behind[stage + 1] * stages[stage + 1] as u64;
        }
        let mut rows = vec![Vec::new(); stages.len()];
        let mut advice = Vec::new();
        let mut advice_known = vec![Vec::new(); stages.len()];
        let position = LeastPosition::new(&family.position(), demand, &setting.merit);
        let mut errors_known = [usize::MAX; 2];
        let mut floors = vec![Floor::default(); stages.len()];
        let mut alone = vec![true; stages.len()];
        let mut kept = vec![Vec::new(); stages.len()];
        let mut kept_rows = vec![Vec::new(); stages.len()];
        let mut places = vec![0; stages.len()];
        for (place, &stage) in order.iter().enumerate() {
            places[stage] = place;
        }
        if stages.iter().all(|&choices| choices > 0) {
            let discovery = discover(family, demand, &order);
            for (place, kept) in kept.iter_mut().enumerate().skip(2).filter(|(place, _)| family.kept(order[*place])) {
                kept.extend((0..SLOTS).filter(|&slot| discovery.stage_of(slot) == Some(place + 1)));
            }
            let mut axis = Known::default();
            demand.enter(&mut axis);
            for (index, rule) in setting.rulebook.rules.iter().enumerate() {
                if setting.waived.contains(&rule.id) || !rule.meant_for(family.id()) {
                    continue;
                }
                let known_early = rule.when.is_none_or(|when| discovery.stage_of(when.slot()).unwrap_or(0) == 0);
                if known_early && !rule.holds(&axis) {
                    continue;
                }
                let when = if known_early { None } else { rule.when };
                if rule.obligation == Obligation::Should {
                    if rule.weighs > 0.0 {
                        let row = Row::new(index, rule, when);
                        let known = row.slots().filter_map(|slot| discovery.stage_of(slot)).max().unwrap_or(0);
                        advice.push((row, rule.weighs));
                        advice_known[known.saturating_sub(1)].push((row, rule.weighs));
                    }
                    continue;
                }
                let stage = rule.slots().filter_map(|slot| discovery.stage_of(slot)).max().unwrap_or(0);
                rows[stage.saturating_sub(1)].push(Row::new(index, rule, when));
            }
            // later rules and weighed advice judge what a stage really enters
            let later = rows.iter().enumerate().flat_map(|(stage, rows)| rows.iter().map(move |row| (stage, row)));
            let ends = advice.iter().map(|(row, _)| (stages.len(), row));
            for (stage, row) in later.chain(ends) {
                for entered in row.slots().filter_map(|slot| discovery.stage_of(slot)).filter(|&entered| entered > 0) {
                    if entered - 1 < stage {
                        alone[entered - 1] = false;
                    }
                }
            }
            for (place, own) in kept_rows.iter_mut().enumerate().filter(|(place, _)| !kept[*place].is_empty()) {
                let early = |slot| discovery.stage_of(slot).is_none_or(|entered| entered <= 2 || entered == place + 1);
                own.extend(rows[place].iter().filter(|row| row.slots().all(early)).copied());
            }
            for (known, errors) in errors_known.iter_mut().zip(position.errors()) {
                let entered = errors.iter().map(|error| discovery.stage_of(error.slot)).max().flatten();
                let all = errors.iter().all(|error| discovery.stage_of(error.slot).is_some());
                *known = entered.filter(|_| all).map_or(usize::MAX, |stage| stage.saturating_sub(1));
            }
            for (stage, floor) in floors.iter_mut().enumerate() {
                *floor = Floor::known(family.springs(), |slot| {
                    discovery.stage_of(slot).is_some_and(|entered| entered <= stage + 1)
                });
            }
        }
        let more = |place: usize| floors[place] != floors[place - 1] || errors_known.contains(&place);
        let grows = (0..floors.len()).map(|place| place < 2 || more(place)).collect();
        Plan {
            order,
            stages,
            behind,
            kept,
            kept_rows,
            places,
            rows,
            advice,
            advice_known,
            position,
            errors_known,
            floors,
            grows,
            alone,
        }
    }

    /// All configurations there are.
    pub fn configurations(&self) -> u64 {
        self.stages.iter().map(|&choices| choices as u64).product()
    }

    /// How much worse the configuration counts for the advice that it does not follow.
    #[inline]
    pub fn unmet_advice<L: Ledger>(&self, sheet: &L) -> f64 {
        self.advice.iter().filter(|(row, _)| !passes(row.utilisation(sheet))).map(|(_, weight)| weight).sum()
    }

    /// Of that the part which is known at this stage and was not before.
    #[inline]
    pub fn newly_unmet<L: Ledger>(&self, stage: usize, sheet: &L) -> f64 {
        let known = self.advice_known[stage].iter();
        known.filter(|(row, _)| !passes(row.utilisation(sheet))).map(|(_, weight)| weight).sum()
    }

    /// The first rule of this stage that the sheet fails.
    #[inline(always)]
    pub fn first_failed<L: Ledger>(&self, stage: usize, sheet: &L) -> Option<usize> {
        self.rows[stage].iter().find(|row| !passes(row.utilisation(sheet))).map(|row| row.rule)
    }
}

/// Stage 0 is the axis itself; the stage that is taken n-th is n + 1.
fn discover<F: Family>(family: &F, demand: &Demand<'_>, order: &[usize]) -> Discovery {
    let mut discovery = Discovery::default();
    demand.enter(&mut discovery);
    let path = [0; super::MOST_STAGES];
    for (place, &stage) in order.iter().enumerate() {
        discovery.begin_stage(place + 1);
        family.enter(stage, &path, &mut discovery);
    }
    discovery
}

/// A rule that names a characteristic which a family it is meant for never enters.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NeverEntered {
    /// Id of the rule.
    pub rule: String,
    /// Id of the family.
    pub family: String,
    /// Id of the characteristic.
    pub characteristic: String,
}

/// The rules that this family could never judge on this demand.
pub fn never_entered<F: Family>(family: &F, demand: &Demand<'_>, setting: &Setting<'_>) -> Vec<NeverEntered> {
    let stages = family.stages();
    if stages.contains(&0) {
        return Vec::new();
    }
    let discovery = discover(family, demand, &family.order());
    let mut axis = Known::default();
    demand.enter(&mut axis);
    let meant = setting.rulebook.rules.iter().filter(|rule| rule.meant_for(family.id()) && rule.holds(&axis));
    meant
        .flat_map(|rule| rule.slots().filter(|&slot| discovery.stage_of(slot).is_none()).map(move |slot| (rule, slot)))
        .map(|(rule, slot)| NeverEntered {
            rule: rule.id.clone(),
            family: family.id().into(),
            characteristic: characteristic::id(slot),
        })
        .collect()
}
