//! Which rules are judged at which stage.

use super::Setting;
use super::row::{Ahead, Row};
use crate::characteristic::{self, SLOTS};
use crate::drive::{Demand, Family, Floor, LeastPosition};
use crate::ledger::{Asides, Discovery, Figures, Known};
use crate::rule::Obligation;

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
    /// The figures of each choice of a stage that hangs on the axis alone; empty for the others.
    pub apart: Vec<Vec<f64>>,
    /// What each stage enters whose figures are remembered; empty for the others.
    pub remembered: Vec<Vec<usize>>,
    /// Of such a stage the place by whose choices they are remembered.
    pub by_choice: Vec<usize>,
    /// At each place the stages whose figures are forgotten when it is chosen anew.
    pub forgets: Vec<Vec<usize>>,
    /// The rules of each stage whose figures are kept, to be judged before they are entered.
    pub ahead: Vec<Vec<Ahead>>,
    /// Of those rules the ones that hang on the axis, the first two stages and the stage itself alone.
    pub kept_rows: Vec<Vec<Row>>,
    /// Those rules, of whatever stage, that a glimpse may show to be broken.
    pub glimpsed: Vec<Row>,
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
    /// The place at which the errors of the drive itself are known, if they ever are.
    pub errors_known: Option<usize>,
    /// For each stage what is known there of the merit.
    pub floors: Vec<Floor>,
    /// Whether more of the merit is known at each stage than at the one before.
    pub grows: Vec<bool>,
    /// For each stage its choices, those first that cost least as far as that is known of a choice alone.
    pub cheapest_first: Vec<Vec<u16>>,
    /// For each stage whether a price is known of its choices, so that the bound before one is entered hangs on nothing else.
    pub priced: Vec<bool>,
    /// For each stage whether only its own rules read what it enters, so that a screen may stand for it.
    pub alone: Vec<bool>,
    /// The groups of lines that nothing here reads.
    pub left_out: Asides,
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
        let mut errors_known = None;
        let mut floors = vec![Floor::default(); stages.len()];
        let mut alone = vec![true; stages.len()];
        let mut kept = vec![Vec::new(); stages.len()];
        let mut apart = vec![Vec::new(); stages.len()];
        let mut ahead = vec![Vec::new(); stages.len()];
        let mut remembered = vec![Vec::new(); stages.len()];
        let mut by_choice = vec![0; stages.len()];
        let mut forgets = vec![Vec::new(); stages.len()];
        let mut kept_rows = vec![Vec::new(); stages.len()];
        let mut places = vec![0; stages.len()];
        let mut left_out = Asides::default();
        for (place, &stage) in order.iter().enumerate() {
            places[stage] = place;
        }
        if stages.iter().all(|&choices| choices > 0) {
            let discovery = discover(family, demand, &order);
            let keeps = |place: usize| family.kept(order[place]) || family.apart(order[place]);
            let entered_at =
                |place: usize| (0..SLOTS).filter(|&slot| discovery.stage_of(slot) == Some(place + 1)).collect();
            for (place, kept) in kept.iter_mut().enumerate().skip(2).filter(|(place, _)| keeps(*place)) {
                *kept = entered_at(place);
            }
            for (place, &stage) in order.iter().enumerate() {
                if let Some([anew, by]) = family.remembered(stage) {
                    remembered[place] = entered_at(place);
                    by_choice[place] = places[by];
                    forgets[places[anew]].push(place);
                }
            }
            let mut axis = Known::default();
            demand.enter(&mut axis);
            for (place, figures) in apart.iter_mut().enumerate().filter(|(place, _)| family.apart(order[*place])) {
                *figures = figures_apart(family, order[place], stages[place], &kept[place], &axis);
            }
            let known_at = |row: Row| last_of(row.slots().filter_map(|slot| discovery.stage_of(slot)));
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
                        advice.push((row, rule.weighs));
                        advice_known[known_at(row)].push((row, rule.weighs));
                    }
                    continue;
                }
                let row = Row::new(index, rule, when);
                rows[known_at(row)].push(row);
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
                ahead[place] = rows[place].iter().map(|&row| Ahead::new(row, &kept[place])).collect();
            }
            for (place, slots) in remembered.iter().enumerate().filter(|(_, slots)| !slots.is_empty()) {
                ahead[place] = rows[place].iter().map(|&row| Ahead::new(row, slots)).collect();
            }
            if !setting.exhaustive {
                let rows = rows.iter().flatten().chain(advice.iter().map(|(row, _)| row));
                left_out = unread(&rows.flat_map(Row::slots).collect::<Vec<usize>>(), &discovery);
            }
            let errors: Option<Vec<usize>> = position.errors().map(|error| discovery.stage_of(error.slot)).collect();
            errors_known = errors.map(|stages| last_of(stages.into_iter()));
            for (stage, floor) in floors.iter_mut().enumerate() {
                *floor = Floor::known(family.springs(), |slot| {
                    discovery.stage_of(slot).is_some_and(|entered| entered <= stage + 1)
                });
            }
        }
        let glimpsed = rows.iter().flatten().filter(|row| row.bounds_peak_torque()).copied().collect();
        let cheapest_first =
            order.iter().zip(&stages).map(|(&stage, &choices)| by_price(family, stage, choices)).collect();
        let has_price =
            |(&stage, &choices): (&usize, &usize)| (0..choices as u16).any(|choice| family.price(stage, choice) > 0.0);
        let priced = order.iter().zip(&stages).map(has_price).collect();
        let more = |before: usize, place: usize| floors[place] != floors[before] || errors_known == Some(place);
        let grows = |place: usize| place.checked_sub(1).is_none_or(|before| more(before, place));
        let grows = (0..floors.len()).map(grows).collect();
        Plan {
            order,
            stages,
            behind,
            kept,
            apart,
            ahead,
            remembered,
            by_choice,
            forgets,
            kept_rows,
            glimpsed,
            places,
            rows,
            advice,
            advice_known,
            position,
            errors_known,
            floors,
            grows,
            cheapest_first,
            priced,
            alone,
            left_out,
        }
    }

    /// All configurations there are.
    pub fn configurations(&self) -> u64 {
        self.stages.iter().map(|&choices| choices as u64).product()
    }

    /// How much worse the configuration counts for the advice that it does not follow.
    #[inline]
    pub fn unmet_advice<L: Figures>(&self, sheet: &L) -> f64 {
        self.advice.iter().filter(|(row, _)| !row.passed(sheet)).map(|(_, weight)| weight).sum()
    }

    /// Of that the part which is known at this stage and was not before.
    #[inline]
    pub fn newly_unmet<L: Figures>(&self, stage: usize, sheet: &L) -> f64 {
        let known = self.advice_known[stage].iter();
        known.filter(|(row, _)| !row.passed(sheet)).map(|(_, weight)| weight).sum()
    }

    /// The first rule of this stage that its figures fail, told before they are entered.
    #[inline(always)]
    pub fn first_failed_ahead<L: Figures>(&self, place: usize, figures: &[f64], sheet: &L) -> Option<usize> {
        self.ahead[place].iter().find(|ahead| !ahead.passed(figures, sheet)).map(|ahead| ahead.row.rule)
    }

    /// The first rule of this stage that the sheet fails.
    #[inline(always)]
    pub fn first_failed<L: Figures>(&self, stage: usize, sheet: &L) -> Option<usize> {
        self.rows[stage].iter().find(|row| !row.passed(sheet)).map(|row| row.rule)
    }
}

/// The place of the last of these stages, of which the first is that of the axis and belongs to the first place.
fn last_of(stages: impl Iterator<Item = usize>) -> usize {
    stages.max().map_or(0, |stage| stage.saturating_sub(1))
}

/// The groups of lines of which no rule reads any.
fn unread(read: &[usize], discovery: &Discovery) -> Asides {
    // what is not entered with the first choices may stand in any group with others
    let known = read.iter().all(|&slot| discovery.stage_of(slot).is_some());
    Asides::such(|aside| known && read.iter().all(|&slot| discovery.aside_of(slot) != Some(aside)))
}

/// The figures of every choice of a stage that hangs on the axis alone, one after another.
fn figures_apart<F: Family>(family: &F, stage: usize, choices: usize, slots: &[usize], axis: &Known) -> Vec<f64> {
    let (mut sheet, mut path) = (axis.clone(), [0; super::MOST_STAGES]);
    let mut figures = Vec::new();
    for choice in 0..choices {
        path[stage] = choice as u16;
        family.enter(stage, &path, &mut sheet);
        figures.extend(slots.iter().map(|&slot| sheet.value(slot)));
    }
    figures
}

/// The choices of a stage, the cheapest first.
fn by_price<F: Family>(family: &F, stage: usize, choices: usize) -> Vec<u16> {
    let mut all: Vec<(f64, u16)> = (0..choices as u16).map(|choice| (family.price(stage, choice), choice)).collect();
    all.sort_by(|one, other| one.0.total_cmp(&other.0).then_with(|| one.1.cmp(&other.1)));
    all.into_iter().map(|(_, choice)| choice).collect()
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
