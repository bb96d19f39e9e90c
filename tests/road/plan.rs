//! The plan of a search against what the stages really enter: which rule is judged where, what may be kept, what is known of the price.
//!
//! Every property is derived here, no source.

use crate::small::{self, Entered, HORIZONTAL, IMPOSSIBLE, VERTICAL};
use axiswright::characteristic as ch;
use axiswright::characteristic::SLOTS;
use axiswright::drive::{Demand, FAMILIES, Family, Floor, WithFamily, with_family};
use axiswright::ledger::{Figures, Known};
use axiswright::rule::{Limit, Obligation, Rule, Sense, When};
use axiswright::search::{MOST_STAGES, Plan, Setting, never_entered};

struct Planned<'b, 'a> {
    demand: &'b Demand<'b>,
    setting: &'b Setting<'a>,
}

/// How often a plan made use of what it may.
#[derive(Debug, Default)]
struct Used {
    rules: usize,
    advice: usize,
    conditions: usize,
    kept: usize,
    apart: usize,
    remembered: usize,
    glimpsed: usize,
    grows: usize,
    alone: usize,
    priced: usize,
}

/// A rule with its place in the rulebook, and whether its condition is still open.
type Judged<'r> = (usize, &'r Rule, bool);

impl Planned<'_, '_> {
    /// The rules that are judged, with whether their condition is still open.
    fn judged<F: Family>(&self, family: &F, entered: &Entered, axis: &Known) -> Vec<Judged<'_>> {
        let early = |rule: &Rule| rule.when.is_none_or(|when| entered.stage[when.slot()].unwrap_or(0) == 0);
        let rules = self.setting.rulebook.rules.iter().enumerate();
        let meant = rules.filter(|(_, rule)| rule.meant_for(family.id()) && !self.setting.waived.contains(&rule.id));
        let held = meant.filter(|(_, rule)| !early(rule) || rule.holds(axis));
        held.map(|(index, rule)| (index, rule, rule.when.is_some() && !early(rule))).collect()
    }
}

impl WithFamily for Planned<'_, '_> {
    type Output = Used;
    fn with<F: Family>(self, family: &F) -> Used {
        let (plan, id) = (Plan::new(family, self.demand, self.setting), family.id());
        let entered = Entered::of(family, self.demand, &[0; MOST_STAGES]);
        let mut axis = Known::default();
        self.demand.enter(&mut axis);
        let (choices, order) = (family.stages(), family.order());
        let places = order.len();
        let mut used = Used::default();

        assert_eq!(plan.order, order);
        assert_eq!(plan.stages, order.iter().map(|&stage| choices[stage]).collect::<Vec<_>>());
        assert_eq!(plan.configurations(), choices.iter().map(|&choices| choices as u64).product::<u64>());
        for (place, &stage) in order.iter().enumerate() {
            assert_eq!(plan.places[stage], place);
            assert_eq!(
                plan.behind[place],
                plan.stages[place + 1..].iter().map(|&choices| choices as u64).product::<u64>()
            );
        }

        // each rule at the first place that knows all it names
        let at = |rule: &Rule| rule.slots().filter_map(|slot| entered.stage[slot]).max().unwrap_or(0).saturating_sub(1);
        let judged = self.judged(family, &entered, &axis);
        used.conditions = judged.iter().filter(|(_, _, open)| *open).count();
        for place in 0..places {
            let here = judged.iter().filter(|(_, rule, _)| at(rule) == place).copied();
            let (binding, advice): (Vec<Judged<'_>>, Vec<Judged<'_>>) =
                here.partition(|(_, rule, _)| rule.obligation == Obligation::Shall);
            assert_eq!(
                plan.rows[place].iter().map(|row| row.rule).collect::<Vec<_>>(),
                binding.iter().map(|(index, ..)| *index).collect::<Vec<_>>(),
                "{id}: the rules of place {place}"
            );
            let weighed: Vec<(usize, f64)> = advice
                .iter()
                .filter(|(_, rule, _)| rule.weighs > 0.0)
                .map(|(index, rule, _)| (*index, rule.weighs))
                .collect();
            let known: Vec<(usize, f64)> =
                plan.advice_known[place].iter().map(|(row, weight)| (row.rule, *weight)).collect();
            assert_eq!(known, weighed, "{id}: the advice of place {place}");
            used.rules += binding.len();
            used.advice += weighed.len();
        }
        let mut advice: Vec<usize> = plan.advice_known.iter().flatten().map(|(row, _)| row.rule).collect();
        advice.sort_unstable();
        assert_eq!(plan.advice.iter().map(|(row, _)| row.rule).collect::<Vec<_>>(), advice);

        // what is kept are the figures of the place itself
        let own = |place: usize| -> Vec<usize> {
            (0..SLOTS).filter(|&slot| entered.stage[slot] == Some(place + 1)).collect()
        };
        for (place, &stage) in order.iter().enumerate() {
            let keeps = place >= 2 && (family.kept(stage) || family.apart(stage));
            assert_eq!(plan.kept[place], if keeps { own(place) } else { vec![] });
            let early = |slot: usize| entered.stage[slot].is_none_or(|at| at <= 2 || at == place + 1);
            let rows = plan.rows[place].iter().filter(|row| keeps && row.slots().all(early)).map(|row| row.rule);
            assert_eq!(plan.kept_rows[place].iter().map(|row| row.rule).collect::<Vec<_>>(), rows.collect::<Vec<_>>());
            let mut figures = Vec::new();
            for choice in 0..choices[stage] {
                let (mut path, mut sheet) = ([0; MOST_STAGES], axis.clone());
                path[stage] = choice as u16;
                if family.apart(stage) {
                    family.enter(stage, &path, &mut sheet);
                    figures.extend(own(place).into_iter().map(|slot| sheet.value(slot).to_bits()));
                }
            }
            assert_eq!(plan.apart[place].iter().map(|figure| figure.to_bits()).collect::<Vec<_>>(), figures);
            let remembered = family.remembered(stage);
            assert_eq!(plan.remembered[place], if remembered.is_some() { own(place) } else { vec![] });
            if let Some([anew, by]) = remembered {
                assert_eq!(plan.by_choice[place], plan.places[by]);
                assert!(plan.forgets[plan.places[anew]].contains(&place));
                used.remembered += 1;
            }
            let ahead: Vec<usize> = plan.ahead[place].iter().map(|ahead| ahead.row.rule).collect();
            let rows: Vec<usize> = plan.rows[place].iter().map(|row| row.rule).collect();
            assert_eq!(ahead, if keeps || remembered.is_some() { rows } else { vec![] });
            used.kept += usize::from(keeps);
            used.apart += usize::from(family.apart(stage));
        }
        assert_eq!(plan.forgets.iter().map(Vec::len).sum::<usize>(), used.remembered);

        // a glimpse counts where the motor's peak torque is bounded by a number whatever else holds
        let bounds = |rule: &Rule, open: bool| {
            let number = matches!(rule.limit, Limit::Value(_)) && rule.sense == Sense::AtMost;
            number && rule.demand == ch::PEAK_TORQUE_USE.slot && !open && rule.obligation == Obligation::Shall
        };
        let mut glimpsed: Vec<usize> = plan.glimpsed.iter().map(|row| row.rule).collect();
        glimpsed.sort_unstable();
        let expected = judged.iter().filter(|(_, rule, open)| bounds(rule, *open)).map(|(index, ..)| *index);
        assert_eq!(glimpsed, expected.collect::<Vec<_>>(), "{id}");
        used.glimpsed = glimpsed.len();

        // what is known of the merit
        let known = |place: usize, slot: usize| entered.stage[slot].is_some_and(|at| at <= place + 1);
        let floors: Vec<Floor> =
            (0..places).map(|place| Floor::known(family.springs(), |slot| known(place, slot))).collect();
        assert_eq!(plan.floors, floors);
        let errors_at = plan.position.errors().map(|error| entered.stage[error.slot].expect("an error") - 1);
        assert_eq!(plan.errors_known, errors_at.max());
        for place in 0..places {
            let grows = place < 1 || floors[place] != floors[place - 1] || plan.errors_known == Some(place);
            assert_eq!(plan.grows[place], grows, "{id} at {place}");
            let price = |&choice: &u16| family.price(order[place], choice);
            let sorted = &plan.cheapest_first[place];
            assert!(sorted.windows(2).all(|pair| (price(&pair[0]), pair[0]) < (price(&pair[1]), pair[1])));
            assert_eq!(sorted.len(), plan.stages[place]);
            assert_eq!(plan.priced[place], sorted.iter().map(price).any(|price| price > 0.0));
            used.grows += usize::from(plan.grows[place]);
            used.priced += usize::from(plan.priced[place]);
            // alone: no rule that is judged later and no advice that weighs reads what is entered here
            let reads = |rule: &Rule| rule.slots().any(|slot| entered.stage[slot] == Some(place + 1));
            let weighs = |rule: &Rule| rule.obligation == Obligation::Should && rule.weighs > 0.0;
            let later = |rule: &Rule| weighs(rule) || rule.obligation == Obligation::Shall && at(rule) > place;
            // a condition that the axis settles is not asked for again
            let read = judged.iter().any(|(_, rule, _)| later(rule) && reads(rule));
            assert_eq!(plan.alone[place], !read, "{id} at {place}");
            used.alone += usize::from(plan.alone[place]);
        }

        // advice adds up to the same whether it is told place by place or in the end
        for (number, path) in small::paths(&choices).iter().enumerate().filter(|(number, _)| number % 17 == 0) {
            let sheet = small::numbers(family, self.demand, path);
            let told: f64 = (0..places).map(|place| plan.newly_unmet(place, &sheet)).sum();
            let unmet: f64 = judged
                .iter()
                .filter(|(_, rule, _)| rule.obligation == Obligation::Should && rule.holds(&sheet))
                .filter(|(_, rule, _)| !axiswright::rule::passes(rule.utilisation(&sheet)))
                .map(|(_, rule, _)| rule.weighs)
                .sum();
            assert!((told - unmet).abs() < 1e-12 && (plan.unmet_advice(&sheet) - unmet).abs() < 1e-12, "{id} {number}");
        }
        used
    }
}

#[test]
fn a_plan_says_what_the_stages_enter() {
    let waived = ["motor-heating".to_string(), "inertia-ratio".to_string()];
    let mut all = Vec::new();
    let two_sided = HORIZONTAL.replace("    travel:", "    drives: 2\n    drive-spacing: 1.2 m\n    travel:");
    for text in [HORIZONTAL, VERTICAL, IMPOSSIBLE, &two_sided] {
        let inputs = small::tiny_inputs(text);
        let demand = small::demand(&inputs, 0);
        for waived in [&[][..], &waived[..]] {
            let setting = Setting { waived, ..small::setting(&inputs) };
            for id in FAMILIES {
                let work = Planned { demand: &demand, setting: &setting };
                all.push(with_family(id, &demand, &inputs.catalog, work).expect("a family"));
            }
        }
    }
    assert!(all.iter().all(|used| used.rules > 20 && used.advice > 2 && used.grows > 3 && used.alone > 1), "{all:?}");
    assert!(
        all.iter().all(|used| used.glimpsed > 0 && used.priced == 2 && used.apart == 1 && used.kept > 0),
        "{all:?}"
    );
    assert!(all.iter().map(|used| used.remembered).max() == Some(2), "{all:?}");
    assert!(all.iter().any(|used| used.conditions > 0), "{all:?}");
}

struct Never<'b, 'a>(&'b Demand<'b>, &'b Setting<'a>);

impl WithFamily for Never<'_, '_> {
    type Output = Vec<(String, String, String)>;
    fn with<F: Family>(self, family: &F) -> Self::Output {
        let never = never_entered(family, self.0, self.1);
        never.into_iter().map(|one| (one.rule, one.family, one.characteristic)).collect()
    }
}

#[test]
fn a_rule_that_names_what_a_family_never_enters_is_told_where_it_counts() {
    let mut inputs = small::tiny_inputs(HORIZONTAL);
    let told = |inputs: &axiswright::pipeline::Inputs, id: &str| {
        let (demand, setting) = (small::demand(inputs, 0), small::setting(inputs));
        with_family(id, &demand, &inputs.catalog, Never(&demand, &setting)).expect("a family")
    };
    for id in FAMILIES {
        assert_eq!(told(&inputs, id), []);
    }
    // a rule on the teeth of racks, now meant for all
    let place = inputs.rulebook.rules.iter().position(|rule| rule.id == "contact-ratio").expect("the rule");
    inputs.rulebook.rules[place].applies_to.clear();
    let name = axiswright::characteristic::id(inputs.rulebook.rules[place].demand);
    let expected = |id: &str| vec![("contact-ratio".to_string(), id.to_string(), name.clone())];
    for id in FAMILIES {
        let rack = id.contains("rack") || id.contains("pinion");
        assert_eq!(told(&inputs, id), if rack { vec![] } else { expected(id) });
    }
    // under a condition that the axis does not meet nobody asks
    let unmet = When::Above(ch::TRAVEL.slot, 1e9);
    inputs.rulebook.rules[place].when = Some(unmet);
    for id in FAMILIES {
        assert_eq!(told(&inputs, id), []);
    }
    // a family without any configuration has nothing to enter
    inputs.rulebook.rules[place].when = None;
    inputs.catalog.servo_motors.clear();
    for id in FAMILIES {
        assert_eq!(told(&inputs, id), []);
    }
}
