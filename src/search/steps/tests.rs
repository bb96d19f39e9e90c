//! What is kept is what entering gives; what is told of what is still to come is the least of all that may come.
//!
//! Method: every configuration of a handful of parts is walked twice at a time, once with what is kept and once plainly.
#![cfg(test)]

use super::{Kept, Steps};
use crate::drive::{Demand, Family, Floor, Merit, OwnErrors};
use crate::ledger::{Figures, Known};
use crate::search::tests::{Trial, assert_alike, entered_at, on_all};
use crate::search::{Attributes, MOST_STAGES, Path, Plan, Setting};

/// How often each short cut was met.
#[derive(Debug, Default, Clone, Copy)]
struct Met {
    admissible: u64,
    kept: u64,
    apart: u64,
    recalled: u64,
    known_to_fail: u64,
    hopeless: u64,
    screened: u64,
    glimpsed: u64,
    decided: u64,
    priced: u64,
}

impl Met {
    fn add(&mut self, other: Met) {
        self.admissible += other.admissible;
        self.kept += other.kept;
        self.apart += other.apart;
        self.recalled += other.recalled;
        self.known_to_fail += other.known_to_fail;
        self.hopeless += other.hopeless;
        self.screened += other.screened;
        self.glimpsed += other.glimpsed;
        self.decided += other.decided;
        self.priced += other.priced;
    }
}

struct Both<'w, F> {
    steps: Steps<'w, F>,
    merit: Merit,
    entered_at: Vec<Option<usize>>,
    /// The sheet with the first two stages entered.
    two: Known,
    met: Met,
}

/// What is on the way to a configuration.
#[derive(Clone)]
struct Way {
    path: Path,
    kept: Known,
    plain: Known,
    /// Every bound that was told on the way.
    bounds: Vec<f64>,
    unmet: f64,
    /// Whether a glimpse said that nothing behind passes.
    lost: bool,
}

fn near(one: f64, other: f64) -> bool {
    one == other || (one - other).abs() <= 1e-12 * one.abs()
}

impl<F: Family> Both<'_, F> {
    fn keeps(&self, place: usize) -> bool {
        !self.steps.plan.kept[place].is_empty() && self.steps.plan.apart[place].is_empty()
    }

    /// Whether a place decides the errors of the drive over the travel, and its figures are kept.
    fn decides(&self, place: usize) -> bool {
        self.steps.plan.errors_known == Some(place) && self.keeps(place)
    }

    /// Of each choice of a place whose figures are kept: its figures, its price, whether its rules pass, and its errors.
    fn tried(&self, place: usize, path: &Path) -> Vec<(Vec<f64>, f64, bool, OwnErrors)> {
        let plan = self.steps.plan;
        let (stage, slots) = (plan.order[place], &plan.kept[place]);
        let mut all = Vec::new();
        for choice in 0..plan.stages[place] {
            let (mut path, mut sheet) = (*path, self.two.clone());
            path[stage] = choice as u16;
            self.steps.family.enter(stage, &path, &mut sheet);
            // a rule of the place that reads nothing of the stages between
            let early = |slot: usize| self.entered_at[slot].is_none_or(|at| at <= 2 || at == place + 1);
            let passes = plan.rows[place].iter().filter(|row| row.slots().all(early)).all(|row| row.passed(&sheet));
            let figures = slots.iter().map(|&slot| sheet.value(slot)).collect();
            all.push((figures, Floor::price_of(&sheet, slots), passes, plan.position.own(&sheet)));
        }
        all
    }

    /// What the stages from a place on add at least: to the price, and to the merit by measuring and correcting, where the choices of
    /// the first `chosen` places count.
    fn to_come(&self, entered: usize, chosen: usize, way: &Way) -> (f64, f64) {
        let plan = self.steps.plan;
        let least = |place: usize, of: &dyn Fn(f64, OwnErrors) -> f64| {
            let passing = self.tried(place, &way.path).into_iter().filter(|(_, _, passes, _)| *passes);
            passing.map(|(_, price, _, own)| of(price, own)).fold(f64::INFINITY, f64::min)
        };
        let later = (entered..plan.stages.len()).filter(|&place| self.keeps(place) && !self.decides(place));
        let price = later.map(|place| least(place, &|price, _| price)).sum();
        let (scales, tables) = (plan.stages.len() - 2, plan.stages.len() - 1);
        let may = |place: usize| match chosen > place {
            true => way.path[plan.order[place]]..way.path[plan.order[place]] + 1,
            false => 0..plan.stages[place] as u16,
        };
        let of_pairs = |own: OwnErrors| {
            let pairs = may(scales).flat_map(|scale| may(tables).map(move |table| (scale, table)));
            let each = pairs.map(|(scale, table)| plan.position.at_least(own, Some(scale), Some(table)));
            each.fold(f64::INFINITY, f64::min)
        };
        let errors = plan.errors_known.expect("a place");
        let position = if self.decides(errors) && errors >= entered {
            least(errors, &|price, own| plan.position.price(price) + of_pairs(own))
        } else if errors >= entered {
            of_pairs(OwnErrors::default())
        } else {
            of_pairs(plan.position.own(&way.plain))
        };
        (price, position)
    }

    fn bound(&self, place: usize, entered: usize, told: f64, way: &mut Way) {
        let plan = self.steps.plan;
        let (price, position) = self.to_come(entered, place + 1, way);
        let at_hand = (entered == place).then_some(plan.order[place]);
        let to_come = price + self.steps.family.to_come(&way.path, at_hand, |stage| plan.places[stage] < entered);
        let expected = self.merit.floor(&way.plain, &plan.floors[entered - 1], to_come, position);
        assert!(near(told, expected), "{told} is told for {expected} at {place} with {entered} on {:?}", way.path);
        way.bounds.push(told * (1.0 + way.unmet));
    }

    /// The rest of the way from a place on, with every choice.
    fn onward(&mut self, place: usize, way: &Way, kept: &mut Kept) {
        let plan = self.steps.plan;
        if place == plan.stages.len() {
            self.arrive(way);
            return;
        }
        let stage = plan.order[place];
        let mut before = f64::NEG_INFINITY;
        let sorted: Vec<u16> = plan.cheapest_first[place].clone();
        assert_eq!(sorted.len(), plan.stages[place]);
        for choice in sorted {
            let mut way = way.clone();
            way.path[stage] = choice;
            let told = self.steps.floor_before(place, &way.path, &way.kept, kept, &self.merit);
            self.bound(place, place, told, &mut way);
            if plan.priced[place] {
                assert!(told >= before * (1.0 - 1e-12), "the cheapest is not first at {place}");
                before = told;
                self.met.priced += 1;
            }
            let known_to_fail = self.steps.known_to_fail(place, &way.path, kept);
            let screened = self.steps.screened(place, &way.path, &mut way.kept.clone());
            let recalls = !plan.remembered[place].is_empty();
            if recalls {
                let by = plan.order[plan.by_choice[place]];
                self.met.recalled += u64::from(!kept.remembered[place][usize::from(way.path[by])].is_empty());
            }
            let told = self.steps.enter(place, &way.path, &mut way.kept, kept);
            self.steps.family.enter(stage, &way.path, &mut way.plain);
            let failed = plan.first_failed(place, &way.plain);
            assert_eq!(told, failed, "the first rule that fails at {place} on {:?}", way.path);
            if self.keeps(place) {
                self.met.kept += 1;
                assert_eq!(known_to_fail, !self.tried(place, &way.path)[usize::from(choice)].2);
            }
            self.met.apart += u64::from(!plan.apart[place].is_empty());
            self.met.known_to_fail += u64::from(known_to_fail);
            self.met.screened += u64::from(screened);
            assert!(failed.is_some() || !known_to_fail);
            assert!(failed.is_none() || !screened, "screened, and fails at {place} on {:?}", way.path);
            if failed.is_some() {
                continue;
            }
            assert_alike(&way.kept, &way.plain, &self.entered_at, place + 1, &way.path);
            let more = plan.newly_unmet(place, &way.plain);
            way.unmet += more;
            let told = self.steps.floor(place, &way.path, &way.kept, kept, &self.merit);
            let bounds_before = way.bounds.last().copied().unwrap_or(0.0);
            self.bound(place, place + 1, told, &mut way);
            if !plan.grows[place] && more == 0.0 && !plan.priced[place] {
                assert!(told * (1.0 + way.unmet) <= bounds_before * (1.0 + 1e-12), "more is known at {place}");
            }
            if self.steps.glimpsed(place, &way.path, &mut way.kept.clone()) {
                self.met.glimpsed += 1;
                way.lost = true;
            }
            self.onward(place + 1, &way, kept);
        }
    }

    /// A configuration that passes.
    fn arrive(&mut self, way: &Way) {
        let plan = self.steps.plan;
        self.met.admissible += 1;
        assert!(!way.lost, "a glimpse left {:?}, which passes", way.path);
        let unmet = plan.unmet_advice(&way.plain);
        assert!(near(unmet, way.unmet), "{unmet} of advice, {} on the way to {:?}", way.unmet, way.path);
        let merit = Attributes::of(self.steps.family, &way.path, &way.plain, &self.merit, unmet).merit;
        for (place, bound) in way.bounds.iter().enumerate() {
            assert!(*bound <= merit, "bound {place} is {bound}, and {merit} comes of {:?}", way.path);
        }
    }
}

struct Everything;

impl Trial for Everything {
    type Output = Met;
    fn on<F: Family>(&self, family: &F, demand: &Demand<'_>, setting: &Setting<'_>) -> Met {
        let plan = Plan::new(family, demand, setting);
        let mut axis = Known::default();
        demand.enter(&mut axis);
        let mut both = Both {
            steps: Steps { family, plan: &plan, plainly: false },
            merit: setting.merit,
            entered_at: entered_at(family, demand),
            two: axis.clone(),
            met: Met::default(),
        };
        // one room for all pairs, as a thread has it
        let mut kept = both.steps.room();
        let blank =
            Way { path: [0; MOST_STAGES], kept: axis.clone(), plain: axis, bounds: vec![], unmet: 0.0, lost: false };
        for pair in 0..plan.stages[0] * plan.stages[1] {
            let mut way = blank.clone();
            (way.path[plan.order[0]], way.path[plan.order[1]]) =
                ((pair / plan.stages[1]) as u16, (pair % plan.stages[1]) as u16);
            let mut failed = None;
            for place in 0..2 {
                family.enter(plan.order[place], &way.path, &mut way.kept);
                failed = failed.or(plan.first_failed(place, &way.kept));
                way.unmet += plan.newly_unmet(place, &way.kept);
            }
            if failed.is_some() {
                continue;
            }
            (way.plain, both.two) = (way.kept.clone(), way.kept.clone());
            let before = way.path;
            both.steps.keep(&mut way.path, &mut way.kept, &mut kept);
            assert_eq!(way.path, before);
            both.keeps_what_is_entered(&way, &kept);
            let told = both.steps.floor(1, &way.path, &way.kept, &kept, &both.merit);
            if !kept.hopeless {
                both.bound(1, 2, told, &mut way);
            }
            let admissible = both.met.admissible;
            both.onward(2, &way, &mut kept);
            if kept.hopeless {
                both.met.hopeless += 1;
                assert_eq!(both.met.admissible, admissible, "hopeless, and yet something passes");
            }
        }
        both.met
    }
}

impl<F: Family> Both<'_, F> {
    /// What is kept for the first two choices against what entering each of the others gives.
    fn keeps_what_is_entered(&mut self, way: &Way, kept: &Kept) {
        let plan = self.steps.plan;
        let mut hopeless = false;
        let places: Vec<usize> = (2..plan.stages.len()).filter(|&place| self.keeps(place)).collect();
        for place in places {
            let tried = self.tried(place, &way.path);
            let figures: Vec<f64> = tried.iter().flat_map(|(figures, ..)| figures.iter().copied()).collect();
            let bits = |figures: &[f64]| figures.iter().map(|figure| figure.to_bits()).collect::<Vec<u64>>();
            assert_eq!(bits(&kept.figures[place]), bits(&figures));
            assert_eq!(kept.passes[place], tried.iter().map(|tried| tried.2).collect::<Vec<bool>>());
            hopeless |= tried.iter().all(|tried| !tried.2);
            if self.decides(place) {
                self.met.decided += 1;
                let measured = |own| plan.position.at_least(own, None, None);
                let of_choice: Vec<(OwnErrors, f64)> = tried.iter().map(|tried| (tried.3, measured(tried.3))).collect();
                assert_eq!(kept.of_choice, of_choice);
            }
        }
        assert_eq!(kept.hopeless, hopeless);
    }
}

#[test]
fn what_is_kept_is_what_is_entered_and_every_bound_is_one() {
    let mut met = Met::default();
    let each = on_all(&Everything);
    assert!(each.iter().filter(|met| met.admissible > 0).count() > 10, "{each:?}");
    each.into_iter().for_each(|one| met.add(one));
    let Met { admissible, kept, apart, recalled, known_to_fail, hopeless, screened, glimpsed, decided, priced } = met;
    for many in [admissible, kept, apart, recalled, known_to_fail, screened, glimpsed, decided, priced] {
        assert!(many >= 10, "{met:?}");
    }
    assert!(hopeless > 0, "{met:?}");
}
