//! Walking the stages of a family: census, best and undominated configurations.

mod tests;

use super::steps::{Kept, Steps};
use super::{Attributes, Block, Coupling, Found, Front, MOST_STAGES, Marks, Outcome, Path, Plan, Setting, Standing};
use crate::characteristic as ch;
use crate::drive::{Demand, Family};
use crate::ledger::{Figures, Known, LANES};
use rayon::prelude::*;

/// How many configurations there are, pass, and fall by each rule.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Census {
    /// All configurations.
    pub configurations: u64,
    /// Those that pass every binding rule.
    pub admissible: u64,
    /// Those that each rule of the rulebook was the first to exclude.
    pub excluded: Vec<u64>,
}

/// What a walk finds.
#[derive(Debug, Clone)]
pub struct Walk {
    /// The census.
    pub census: Census,
    /// The best by merit, best first.
    pub best: Vec<Found>,
    /// The undominated ones, best first.
    pub front: Vec<Found>,
    /// The least mass of an admissible one, kg; infinite if there is none.
    pub lightest: f64,
}

/// How many of the best are kept.
const KEPT: usize = 12;

struct Partial {
    admissible: u64,
    /// Those below the merit that was asked for.
    below: u64,
    excluded: Vec<u64>,
    best: Vec<(Attributes, Path)>,
    front: Front,
    lightest: f64,
}

impl Partial {
    fn new(rules: usize, setting: &Setting<'_>) -> Partial {
        let front = Front::new(setting.coupling);
        Partial { admissible: 0, below: 0, excluded: vec![0; rules], best: Vec::new(), front, lightest: f64::INFINITY }
    }

    fn offer(&mut self, attributes: Attributes, path: Path) {
        let before = |a: &(Attributes, Path), b: &(Attributes, Path)| {
            a.0.merit.total_cmp(&b.0.merit).then_with(|| a.1.cmp(&b.1)).is_lt()
        };
        let candidate = (attributes, path);
        let place = self.best.partition_point(|kept| before(kept, &candidate));
        self.best.insert(place, candidate);
        self.best.truncate(KEPT);
        self.front.offer(attributes, path);
    }

    /// Whether a configuration that is at best this good may be among the best or undominated.
    #[inline]
    fn may_take(&mut self, at_best: &Attributes, path: &Path) -> bool {
        self.best.len() < KEPT
            || self.best.last().is_some_and(|(last, _)| at_best.merit <= last.merit)
            || !self.front.beats(at_best, path)
    }

    /// The drives of a block that are neither among the best nor undominated, as far as one member tells.
    #[inline]
    fn surely_beaten(&self, drives: &Standing<'_>, coupling: &Coupling) -> Marks {
        match (self.best.get(KEPT - 1), self.front.foremost()) {
            (Some((last, _)), Some(member)) => {
                let beaten = coupling.beaten(member, drives);
                std::array::from_fn(|lane| beaten[lane] & u64::from(last.merit < drives.at_least[lane]))
            }
            _ => [0; LANES],
        }
    }

    /// Takes in an admissible configuration: its attributes at best, and without advice.
    #[inline]
    fn take<F: Family>(
        &mut self,
        [at_best, plain]: [Attributes; 2],
        path: &Path,
        sheet: &impl Figures,
        steps: &Steps<'_, F>,
        setting: &Setting<'_>,
    ) {
        self.lightest = self.lightest.min(plain.mass);
        // unmet advice only makes it worse: what loses without it need not be looked at more closely
        if setting.coupling.models() || self.may_take(&at_best, path) {
            let unmet = steps.plan.unmet_advice(sheet);
            self.offer(plain.whole(steps.family, path, unmet), *path);
        }
    }

    fn merge(mut self, other: Partial) -> Partial {
        self.admissible += other.admissible;
        self.below += other.below;
        self.lightest = self.lightest.min(other.lightest);
        for (mine, theirs) in self.excluded.iter_mut().zip(&other.excluded) {
            *mine += theirs;
        }
        for (attributes, path) in other.best {
            self.offer(attributes, path);
        }
        self.front = self.front.merge(other.front);
        self
    }
}

/// Walks every configuration of a family on one axis.
///
/// With `exhaustive` no branch is skipped: every configuration is worked out to its last stage, and the
/// first failed rule is found afterwards. The answer is the same.
///
/// With `below`, only configurations of a merit below it are looked for: branches whose known prices alone
/// reach it are left, and the census means nothing.
pub fn walk<F: Family>(family: &F, demand: &Demand<'_>, setting: &Setting<'_>, below: Option<f64>) -> Walk {
    let plan = Plan::new(family, demand, setting);
    let steps = Steps { family, plan: &plan, plainly: setting.exhaustive };
    let walker = Walker { steps, setting, below: below.filter(|_| !setting.exhaustive), count_below: None };
    let found = walker.all(demand);
    let named = |(attributes, path): (Attributes, Path)| Found { family: family.id(), path, attributes };
    let mut front: Vec<Found> = found.front.into_members().map(named).collect();
    front.sort_by(Found::order);
    Walk {
        census: Census {
            configurations: plan.configurations(),
            admissible: found.admissible,
            excluded: found.excluded,
        },
        best: found.best.into_iter().map(named).collect(),
        front,
        lightest: found.lightest,
    }
}

/// How many admissible configurations of a family have a merit below this.
pub fn count_below<F: Family>(family: &F, demand: &Demand<'_>, setting: &Setting<'_>, merit: f64) -> u64 {
    let plan = Plan::new(family, demand, setting);
    let steps = Steps { family, plan: &plan, plainly: setting.exhaustive };
    let below = Some(merit).filter(|_| !setting.exhaustive);
    Walker { steps, setting, below, count_below: Some(merit) }.all(demand).below
}

/// What one thread has in hand.
struct Hand {
    partial: Partial,
    sheet: Known,
    kept: Kept,
    /// The drives that wait for the last two stages; none where each is worked out by itself.
    block: Option<Block>,
}

struct Walker<'w, 's, F> {
    steps: Steps<'w, F>,
    setting: &'w Setting<'s>,
    below: Option<f64>,
    /// Where only the number of those below a merit is asked for.
    count_below: Option<f64>,
}

impl<F: Family> Walker<'_, '_, F> {
    /// Walks all there is.
    fn all(&self, demand: &Demand<'_>) -> Partial {
        let (plan, rules) = (self.steps.plan, self.setting.rulebook.rules.len());
        let (first, second) = (plan.stages[0], plan.stages[1]);
        let mut axis = Known::default();
        demand.enter(&mut axis);
        let plainly = self.setting.exhaustive || self.below.is_some() || self.count_below.is_some();
        let block = (!plainly).then(|| Block::new(self.steps.family, demand, plan, &self.setting.merit, &axis));
        axis.leave_out(plan.left_out);
        let hand = || Hand {
            partial: Partial::new(rules, self.setting),
            sheet: axis.clone(),
            kept: self.steps.room(),
            block: block.clone(),
        };
        (0..first * second)
            .into_par_iter()
            .fold(hand, |mut hand, index| {
                let mut path = [0; MOST_STAGES];
                path[plan.order[0]] = (index / second) as u16;
                path[plan.order[1]] = (index % second) as u16;
                self.pair(&mut path, &mut hand);
                hand
            })
            .map(|mut hand| {
                self.last_stages(&mut hand);
                hand.partial
            })
            .reduce(|| Partial::new(rules, self.setting), Partial::merge)
    }

    /// The branch of one choice of the first and one of the second stage.
    fn pair(&self, path: &mut Path, hand: &mut Hand) {
        if self.setting.stopped() {
            return;
        }
        let plan = self.steps.plan;
        let mut failed = None;
        for place in 0..2 {
            self.steps.family.enter(plan.order[place], path, &mut hand.sheet);
            failed = failed.or_else(|| plan.first_failed(place, &hand.sheet));
            if failed.is_some() && !self.setting.exhaustive {
                break;
            }
        }
        if failed.is_none() {
            self.steps.keep(path, &mut hand.sheet, &mut hand.kept);
            // where only the best are looked for
            if self.below.is_some() && hand.kept.hopeless {
                return;
            }
        }
        self.onward(2, failed, path, hand, plan.behind[1]);
    }

    fn onward(&self, place: usize, failed: Option<usize>, path: &mut Path, hand: &mut Hand, branch: u64) {
        match failed {
            Some(rule) if !self.setting.exhaustive => hand.partial.excluded[rule] += branch,
            _ if place + 2 == self.steps.plan.stages.len() && hand.block.is_some() => {
                if hand.block.as_mut().is_some_and(|block| block.gather(path, &hand.sheet)) {
                    self.last_stages(hand);
                }
            }
            _ if place < self.steps.plan.stages.len() => self.stage(place, failed, path, hand),
            Some(rule) => hand.partial.excluded[rule] += 1,
            None => {
                let partial = &mut hand.partial;
                partial.admissible += 1;
                let plain = Attributes::plain(&hand.sheet, &self.setting.merit);
                if let Some(than) = self.count_below {
                    let whole = || plain.whole(self.steps.family, path, self.steps.plan.unmet_advice(&hand.sheet));
                    partial.below += u64::from(plain.merit < than && whole().merit < than);
                    return;
                }
                partial.take([plain, plain], path, &hand.sheet, &self.steps, self.setting);
            }
        }
    }

    /// Works out the last two stages of the drives that wait for them.
    fn last_stages(&self, hand: &mut Hand) {
        if let Some(block) = &mut hand.block {
            let mut counted = Counted { steps: &self.steps, setting: self.setting, partial: &mut hand.partial };
            block.work_out(self.steps.family, self.steps.plan, &self.setting.merit, &mut counted);
        }
    }

    fn stage(&self, place: usize, failed: Option<usize>, path: &mut Path, hand: &mut Hand) {
        let plan = self.steps.plan;
        let stage = plan.order[place];
        for choice in 0..plan.stages[place] {
            path[stage] = choice as u16;
            if self.steps.screened(place, path, &mut hand.sheet) {
                self.onward(place + 1, None, path, hand, plan.behind[place]);
                continue;
            }
            let fails = self.steps.enter(place, path, &mut hand.sheet, &mut hand.kept);
            let floor = || self.steps.floor(place, path, &hand.sheet, &hand.kept, &self.setting.merit);
            // where only those below a merit are looked for, what falls is not counted
            if self.below.is_some_and(|below| fails.is_some() || floor() >= below) {
                continue;
            }
            let failed = failed.or(fails);
            self.onward(place + 1, failed, path, hand, plan.behind[place]);
        }
        path[stage] = 0;
    }
}

/// Counts and keeps what comes out of a block.
struct Counted<'c, 's, F> {
    steps: &'c Steps<'c, F>,
    setting: &'c Setting<'s>,
    partial: &'c mut Partial,
}

impl<F: Family> Outcome for Counted<'_, '_, F> {
    fn fall(&mut self, rule: usize, configurations: u64) {
        self.partial.excluded[rule] += configurations;
    }

    fn stand(&mut self, drives: &Standing<'_>) {
        self.partial.admissible += drives.marks.iter().sum::<u64>();
        let masses = drives.column(ch::ADDED_MASS.slot);
        for (&mass, _) in masses.iter().zip(&drives.marks).filter(|(_, mark)| **mark > 0) {
            self.partial.lightest = if mass < self.partial.lightest { mass } else { self.partial.lightest };
        }
        let beaten = self.partial.surely_beaten(drives, &self.setting.coupling);
        for lane in (0..LANES).filter(|&lane| drives.marks[lane] & !beaten[lane] > 0) {
            let sheet = drives.drive(lane);
            let plain = Attributes::with_merit(drives.merits[lane], &sheet);
            let at_best = Attributes { merit: drives.at_least[lane], ..plain };
            self.partial.take([at_best, plain], &drives.path(lane), &sheet, self.steps, self.setting);
        }
    }
}
