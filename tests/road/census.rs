//! The staged search against trying everything: every configuration is worked out in full from nothing and judged
//! rule by rule.

use crate::small::{self, Entered, HORIZONTAL, IMPOSSIBLE, VERTICAL};
use axiswright::characteristic as ch;
use axiswright::drive::{Demand, FAMILIES, Family, Pinions, RackDrive, WithFamily, with_family};
use axiswright::ledger::{Figures, Known};
use axiswright::pipeline::Inputs;
use axiswright::rule::{Obligation, passes};
use axiswright::search::{Attributes, Coupling, Found, MOST_STAGES, Path, Setting, best_on, nearest, ruled_out, walk};
use axiswright::units::{Mass, Measure};
use rayon::prelude::*;

/// What trying everything gives.
struct Tried {
    admissible: Vec<(Path, Attributes)>,
    excluded: Vec<u64>,
    nearest: (f64, Path),
}

/// What one configuration comes to.
enum Outcome {
    Admissible(Attributes),
    /// The first rule failed, and the sum of what is missed.
    Excluded(usize, f64),
}

struct Try<'t, 'a> {
    demand: &'t Demand<'t>,
    setting: &'t Setting<'a>,
}

impl Try<'_, '_> {
    fn judge<F: Family>(&self, family: &F, path: &Path, axis: &Known, stage_of: &[usize]) -> Outcome {
        let mut sheet = axis.clone();
        for stage in 0..family.stages().len() {
            family.enter(stage, path, &mut sheet);
        }
        let mut missed = 0.0;
        let mut first: Option<(usize, usize)> = None;
        let mut unmet = 0.0;
        for (index, rule) in self.setting.rulebook.rules.iter().enumerate() {
            let utilisation = rule.utilisation(&sheet);
            let waived = self.setting.waived.contains(&rule.id);
            if !rule.applies(family.id(), &sheet) || waived || passes(utilisation) {
                continue;
            }
            if rule.obligation == Obligation::Should {
                unmet += rule.weighs;
                continue;
            }
            missed += if utilisation.is_finite() { utilisation - 1.0 } else { 1e6 };
            if first.is_none_or(|(stage, _)| stage_of[index] < stage) {
                first = Some((stage_of[index], index));
            }
        }
        match first {
            Some((_, rule)) => Outcome::Excluded(rule, missed),
            None => Outcome::Admissible(self.attributes(family, path, &sheet, unmet)),
        }
    }

    fn attributes<F: Family>(&self, family: &F, path: &Path, sheet: &Known, unmet: f64) -> Attributes {
        let named = |name: Option<&str>| {
            // FNV-1a: models are told apart by name
            name.map_or(0, |name| {
                name.bytes().fold(0xcbf2_9ce4_8422_2325_u64, |hash, byte| {
                    (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3)
                })
            })
        };
        Attributes {
            // briefs of this file state no preference: the price over the years of service decides
            merit: sheet.value(ch::WHOLE_LIFE_COST.slot) * (1.0 + unmet),
            error: sheet.value(ch::TOOL_ERROR.slot),
            mass: sheet.value(ch::DRIVE_MASS.slot),
            purchase: sheet.value(ch::PURCHASE_COST.slot),
            power: sheet.value(ch::SUPPLY_POWER.slot),
            whole_life: sheet.value(ch::WHOLE_LIFE_COST.slot),
            lead_time: sheet.value(ch::LEAD_TIME.slot),
            motor: named(Some(family.motor_model(path))),
            gearbox: named(family.gearbox_model(path)),
        }
    }

    fn everything<F: Family>(&self, family: &F) -> Tried {
        let entered = Entered::of(family, self.demand, &[0; MOST_STAGES]);
        let stage_of: Vec<usize> = self
            .setting
            .rulebook
            .rules
            .iter()
            .map(|rule| rule.slots().filter_map(|slot| entered.stage[slot]).max().unwrap_or(0).max(1))
            .collect();
        let order = family.order();
        let mut axis = Known::default();
        self.demand.enter(&mut axis);
        let outcomes: Vec<(Path, Outcome)> = small::paths(&family.stages())
            .into_par_iter()
            .map(|path| (path, self.judge(family, &path, &axis, &stage_of)))
            .collect();
        let mut tried = Tried {
            admissible: Vec::new(),
            excluded: vec![0; self.setting.rulebook.rules.len()],
            nearest: (f64::INFINITY, [0; MOST_STAGES]),
        };
        for (path, outcome) in outcomes {
            match outcome {
                Outcome::Admissible(attributes) => tried.admissible.push((path, attributes)),
                Outcome::Excluded(rule, missed) => {
                    tried.excluded[rule] += 1;
                    // of equal ones the first choice decides, then the choices in the order in which they are taken
                    let taken = |path: &Path| order.iter().map(|&stage| path[stage]).collect::<Vec<u16>>();
                    let (least, before) = &tried.nearest;
                    if missed < *least || (missed == *least && taken(&path) < taken(before)) {
                        tried.nearest = (missed, path);
                    }
                }
            }
        }
        tried
    }
}

/// Whether `a` is as good as `b` in every respect that counts.
fn covers(coupling: Coupling, a: &Attributes, b: &Attributes) -> bool {
    let pairs = [
        (true, a.merit, b.merit),
        (true, a.error, b.error),
        (coupling.mass, a.mass, b.mass),
        (coupling.purchase, a.purchase, b.purchase),
        (coupling.power, a.power, b.power),
    ];
    let same_models = (!coupling.motors || a.motor == b.motor) && (!coupling.gearboxes || a.gearbox == b.gearbox);
    same_models && pairs.iter().all(|(counts, a, b)| !counts || a <= b)
}

/// The configurations that no other one covers; of equal ones the one with the smallest path.
fn undominated(coupling: Coupling, all: &[(Path, Attributes)]) -> Vec<Path> {
    let beaten = |(path, attributes): &(Path, Attributes)| {
        all.iter().any(|(other_path, other)| {
            covers(coupling, other, attributes) && (!covers(coupling, attributes, other) || other_path < path)
        })
    };
    all.par_iter().filter(|one| !beaten(one)).map(|(path, _)| *path).collect()
}

struct Compare<'t, 'a> {
    demand: &'t Demand<'t>,
    setting: &'t Setting<'a>,
}

impl WithFamily for Compare<'_, '_> {
    /// How many configurations are admissible.
    type Output = usize;
    fn with<F: Family>(self, family: &F) -> usize {
        let tried = Try { demand: self.demand, setting: self.setting }.everything(family);
        let id = family.id();
        let walked = walk(family, self.demand, self.setting, None);
        let rules = &self.setting.rulebook.rules;
        for ((rule, walked), tried) in rules.iter().zip(&walked.census.excluded).zip(&tried.excluded) {
            assert_eq!(walked, tried, "{id}: excluded by {}", rule.id);
        }
        let all = family.stages().iter().product::<usize>();
        assert_eq!(walked.census.configurations, all as u64, "{id}");
        assert_eq!(walked.census.admissible, tried.admissible.len() as u64, "{id}");
        assert_eq!(tried.excluded.iter().sum::<u64>() + walked.census.admissible, all as u64, "{id}");

        let mut ranked = tried.admissible.clone();
        ranked.sort_by(|a, b| a.1.merit.total_cmp(&b.1.merit).then_with(|| a.0.cmp(&b.0)));
        let found =
            |(path, attributes): &(Path, Attributes)| Found { family: id, path: *path, attributes: *attributes };
        let best: Vec<Found> = ranked.iter().take(12).map(found).collect();
        assert_eq!(walked.best, best, "{id}: the best twelve");

        let undominated = undominated(self.setting.coupling, &tried.admissible);
        let front: Vec<Found> = ranked.iter().filter(|(path, _)| undominated.contains(path)).map(found).collect();
        assert_eq!(walked.front, front, "{id}: the undominated ones");

        let plainly = walk(family, self.demand, &Setting { exhaustive: true, ..*self.setting }, None);
        assert_eq!(
            (&plainly.census, &plainly.best, &plainly.front),
            (&walked.census, &walked.best, &walked.front),
            "{id}"
        );

        let lightest = tried.admissible.iter().map(|(_, attributes)| attributes.mass).fold(f64::INFINITY, f64::min);
        assert_eq!(walked.lightest, lightest, "{id}: the least mass");

        let guess = walked.best.last().cloned();
        for (guesses, exhaustive) in [(vec![], false), (vec![], true), (guess.into_iter().collect(), false)] {
            let setting = Setting { exhaustive, ..*self.setting };
            let carried = self.demand.carried.si();
            let alone = best_on(self.demand.brief, 0, carried, &setting, Some(id), &guesses);
            assert_eq!(alone.as_ref(), best.first(), "{id}: the best alone");
        }

        if let Some(middle) = walked.best.get(5).map(|found| found.attributes.merit) {
            let below = walk(family, self.demand, self.setting, Some(middle)).front;
            let cheaper = |found: &&Found| found.attributes.merit < middle;
            let (below, front): (Vec<&Found>, Vec<&Found>) =
                (below.iter().filter(cheaper).collect(), front.iter().filter(cheaper).collect());
            assert_eq!(below, front, "{id}: looking only for what is better than {middle}");
        }

        if tried.admissible.is_empty() {
            let (path, missed) =
                nearest(family, self.demand, self.setting, &ruled_out(family, self.demand, self.setting))
                    .expect("a nearest miss");
            assert!((missed - tried.nearest.0).abs() <= 1e-12 * missed, "{id}: {missed}, {}", tried.nearest.0);
            assert_eq!(path, tried.nearest.1, "{id}: the nearest miss of {missed}");
        }
        tried.admissible.len()
    }
}

/// Compares all families; gives how many configurations of each are admissible.
fn compare(text: &str, coupling: Coupling, waived: &[&str], carried: f64) -> Vec<usize> {
    compare_on(&small::inputs(text), coupling, waived, carried)
}

pub fn compare_on(inputs: &Inputs, coupling: Coupling, waived: &[&str], carried: f64) -> Vec<usize> {
    let waived: Vec<String> = waived.iter().map(|&rule| rule.into()).collect();
    let demand = Demand::new(&inputs.brief, 0, Mass::of_si(carried));
    let setting = Setting { coupling, waived: &waived, ..small::setting(inputs) };
    FAMILIES
        .iter()
        .map(|id| {
            let work = Compare { demand: &demand, setting: &setting };
            with_family(id, &demand, &inputs.catalog, work).expect("a family")
        })
        .collect()
}

#[test]
fn the_census_of_a_horizontal_axis_is_that_of_trying_everything() {
    let admissible = compare(HORIZONTAL, Coupling::default(), &[], 0.0);
    assert!(admissible.iter().all(|&count| count > 20), "{admissible:?}");
}

#[test]
fn the_census_of_a_vertical_axis_is_that_of_trying_everything() {
    let coupling = Coupling { mass: true, purchase: true, motors: true, gearboxes: true, ..Coupling::default() };
    let admissible = compare(VERTICAL, coupling, &[], 0.0);
    assert!(admissible.iter().all(|&count| count > 20), "{admissible:?}");
}

#[test]
fn gearboxes_that_differ_in_play_alone_are_counted_one_by_one() {
    let inputs = small::paired_inputs(HORIZONTAL);
    // what measures and what corrects come after it
    let plays = |family: &RackDrive<'_>| family.stages().into_iter().rev().nth(2);
    let demand = small::demand(&inputs, 0);
    assert_eq!(plays(&RackDrive::new(&demand, &inputs.catalog, true, Pinions::One)), Some(2));
    let admissible = compare_on(&inputs, Coupling::default(), &[], 0.0);
    assert!(admissible.iter().all(|&count| count > 20), "{admissible:?}");
    // where a kind lacks a play, every gearbox is a choice of its own
    let mut odd = inputs;
    odd.catalog.gearboxes.remove(0);
    let demand = small::demand(&odd, 0);
    assert_eq!(plays(&RackDrive::new(&demand, &odd.catalog, true, Pinions::One)), Some(1));
    let fewer = compare_on(&odd, Coupling::default(), &[], 0.0);
    assert!(fewer.iter().zip(&admissible).all(|(fewer, before)| fewer <= before), "{fewer:?}");
}

#[test]
fn a_waiver_lets_through_what_fails_only_by_its_rule() {
    let strict = compare(VERTICAL, Coupling::default(), &[], 30.0);
    let coupling = Coupling { power: true, error: true, ..Coupling::default() };
    let waived = compare(VERTICAL, coupling, &["holding-brake", "motion-ripple"], 30.0);
    assert!(strict.iter().zip(&waived).all(|(strict, waived)| waived > strict), "{strict:?} {waived:?}");
}

#[test]
fn where_nothing_is_admissible_the_nearest_miss_is_that_of_trying_everything() {
    assert_eq!(compare(IMPOSSIBLE, Coupling::default(), &[], 0.0), [0; FAMILIES.len()]);
    // one demand alone that nothing keeps
    let precise = HORIZONTAL.replace("reversal: 0.06 mm", "reversal: 0.1 µm");
    assert_eq!(compare(&precise, Coupling::default(), &[], 0.0), [0; FAMILIES.len()]);
}
