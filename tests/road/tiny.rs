//! A handful of parts: searched under every coupling as by trying everything, within limits of carried mass, and left off when asked.
//!
//! Every property is derived here, no source.

use crate::census::compare_on;
use crate::small::{self, HORIZONTAL, IMPOSSIBLE, VERTICAL};
use axiswright::drive::{Demand, FAMILIES, Family, WithFamily, with_family};
use axiswright::rule::{Limit, Obligation, Rule};
use axiswright::search::{
    Accept, Attributes, CarriedRange, Coupling, Found, MOST_STAGES, Setting, Stop, admissible, best_among, best_on,
    search_axis, work_out, worst_failed,
};
use axiswright::units::{Mass, Measure};

fn couplings() -> [Coupling; 7] {
    let none = Coupling::default();
    [
        none,
        Coupling { mass: true, ..none },
        Coupling { error: true, ..none },
        Coupling { purchase: true, ..none },
        Coupling { power: true, ..none },
        Coupling { motors: true, ..none },
        Coupling { gearboxes: true, ..none },
    ]
}

#[test]
fn a_handful_of_parts_is_searched_as_by_trying_everything_under_every_coupling() {
    for text in [HORIZONTAL, VERTICAL] {
        let inputs = small::tiny_inputs(text);
        for coupling in couplings() {
            let counts = compare_on(&inputs, coupling, &[], 10.0);
            assert!(counts.iter().sum::<usize>() > 20, "{counts:?}");
        }
    }
    let waived = ["holding-brake", "motor-heating", "resonance-floor"];
    compare_on(&small::tiny_inputs(VERTICAL), Coupling::default(), &waived, 80.0);
    let none = compare_on(&small::tiny_inputs(IMPOSSIBLE), Coupling::default(), &[], 0.0);
    assert_eq!(none, [0; FAMILIES.len()]);
}

/// A house may weigh as advice what is judged of the teeth, and bound the motor's torque twice: no short cut may stand for figures
/// that are read later.
#[test]
fn advice_on_the_teeth_and_a_second_bound_on_the_torque_change_no_answer_of_a_short_cut() {
    for text in [HORIZONTAL, VERTICAL] {
        let mut inputs = small::tiny_inputs(text);
        let named = |id: &str| inputs.rulebook.rules.iter().find(|rule| rule.id == id).expect("a rule").clone();
        let (root, peak) = (named("pinion-root"), named("motor-peak"));
        // the teeth shall use a fifth of their strength at the most, or count a twentieth worse
        let advice = Rule { id: "z-root".into(), obligation: Obligation::Should, weighs: 0.05, factor: 0.2, ..root };
        let bound = Rule { id: "z-peak".into(), limit: Limit::Value(0.5), ..peak };
        inputs.rulebook.rules.extend([bound, advice]);
        let counts = compare_on(&inputs, Coupling::default(), &[], 10.0);
        assert!(counts.iter().sum::<usize>() > 20, "{counts:?}");
    }
}

/// What an axis offers passes at both ends of its interval of carried mass and not beside it, and where it passes it is offered.
#[test]
fn an_offer_reaches_as_far_as_its_drive_passes() {
    reaches_as_far_as_it_passes(CarriedRange::at_most(0.0, 400.0));
    reaches_as_far_as_it_passes(CarriedRange::at_most(70.0, 370.0));
}

fn reaches_as_far_as_it_passes(carried: CarriedRange) {
    let inputs = small::tiny_inputs(VERTICAL);
    let setting = Setting { coupling: Coupling { mass: true, ..Coupling::default() }, ..small::setting(&inputs) };
    let searched = search_axis(&inputs.brief, 0, carried, &setting);
    // samples are a fifteenth of the range apart, halved 24 times
    let near = (carried.most - carried.least) / 15.0 / f64::from(1 << 22);
    let mut inside = 0;
    for offer in &searched.offers {
        let passes = |mass: f64| {
            let demand = Demand::new(&inputs.brief, 0, Mass::of_si(mass));
            admissible(offer.found.family, &offer.found.path, &demand, &setting)
        };
        assert!(carried.least <= offer.least && offer.least <= offer.most && offer.most <= carried.most, "{offer:?}");
        assert!(passes(offer.least) && passes(offer.most), "{offer:?}");
        for (edge, end, beside) in
            [(offer.least, carried.least, offer.least - near), (offer.most, carried.most, offer.most + near)]
        {
            if edge != end {
                inside += 1;
                assert!(!passes(beside), "{offer:?} passes at {beside} kg");
            }
        }
        let same = searched.offers.iter().filter(|one| one.found.path == offer.found.path);
        let within: Vec<(f64, f64)> =
            same.filter(|one| one.found.family == offer.found.family).map(|one| (one.least, one.most)).collect();
        for step in 0..=20 {
            let mass = carried.least + (carried.most - carried.least) * f64::from(step) / 20.0;
            let offered = within.iter().any(|(least, most)| *least <= mass && mass <= *most);
            assert_eq!(offered, passes(mass), "{offer:?} at {mass} kg");
        }
    }
    assert!(inside > 3 && searched.offers.len() > 5, "{inside} edges of {} offers", searched.offers.len());
}

/// Drives that were best under another brief or catalogue are only a hint.
#[test]
fn a_hint_counts_where_it_is_there_passes_and_is_accepted() {
    let inputs = small::tiny_inputs(HORIZONTAL);
    let (setting, demand) = (small::setting(&inputs), small::demand(&inputs, 0));
    let of = |id: &str| best_on(&inputs.brief, 0, 0.0, &setting, Some(id), &[]).expect("a drive");
    let best: Vec<Found> = FAMILIES.iter().map(|id| of(id)).collect();
    let first = best.iter().min_by(|a, b| a.order(b)).expect("a drive");
    let among = |drives: &[Found], accept: Accept<'_>| best_among(&inputs.brief, 0, 0.0, &setting, drives, accept);
    assert_eq!(among(&best, &|_| true).as_ref(), Some(first));
    assert_eq!(among(&best[..1], &|_| true).as_ref(), Some(&best[0]));
    let others = best.iter().filter(|found| *found != first).min_by(|a, b| a.order(b));
    assert_eq!(among(&best, &|one| one.merit > first.attributes.merit).as_ref(), others);
    assert_eq!(among(&best, &|_| false), None);
    assert_eq!(among(&[], &|_| true), None);
    // its figures are worked out anew
    let lying = Found { attributes: Attributes { merit: 1.0, ..first.attributes }, ..first.clone() };
    assert_eq!(among(std::slice::from_ref(&lying), &|_| true).as_ref(), Some(first));
    assert_eq!(best_on(&inputs.brief, 0, 0.0, &setting, None, &[lying]).as_ref(), Some(first));
    for found in &best {
        let stages = with_family(found.family, &demand, &inputs.catalog, Stages).expect("a family");
        for (stage, &choices) in stages.iter().enumerate() {
            let mut beyond = found.clone();
            beyond.path[stage] = u16::try_from(choices).expect("few choices");
            assert_eq!(among(&[beyond.clone()], &|_| true), None, "{beyond:?}");
            assert!(work_out(found.family, &beyond.path, &demand, &setting).is_none(), "{beyond:?}");
            assert_eq!(best_on(&inputs.brief, 0, 0.0, &setting, None, &[beyond]).as_ref(), Some(first));
        }
        assert!(work_out("no-family", &found.path, &demand, &setting).is_none());
    }
}

/// One screw of one kind, and nothing else to choose: it is the best, and where it fails it is the nearest miss.
#[test]
fn a_catalogue_of_one_drive_is_searched() {
    let easy = HORIZONTAL.replace("0.09 mm", "0.3 mm").replace("0.06 mm", "0.2 mm");
    let mut inputs = small::tiny_inputs(&easy);
    inputs.catalog.linear_scales.clear();
    inputs.catalog.error_tables.clear();
    inputs.catalog.servo_motors.retain(|motor| motor.designation == "servo-4.5kw-brake");
    let of_many = best_on(&inputs.brief, 0, 0.0, &small::setting(&inputs), Some("ball-screw"), &[]).expect("a drive");
    fn only<T>(list: &mut Vec<T>, choice: u16) {
        list.swap(0, usize::from(choice));
        list.truncate(1);
    }
    let (catalog, path) = (&mut inputs.catalog, of_many.path);
    only(&mut catalog.ball_screws, path[0]);
    only(&mut catalog.screw_supports, path[1]);
    only(&mut catalog.screw_grades, path[2]);
    only(&mut catalog.preload_classes, path[3]);
    only(&mut catalog.screw_bearings, path[4]);
    only(&mut catalog.end_arrangements, path[5]);
    only(&mut catalog.screw_reductions, path[6]);
    let (setting, demand) = (small::setting(&inputs), small::demand(&inputs, 0));
    let stages = with_family("ball-screw", &demand, &inputs.catalog, Stages).expect("a family");
    assert!(stages.iter().all(|&choices| choices == 1), "{stages:?}");
    let best = best_on(&inputs.brief, 0, 0.0, &setting, Some("ball-screw"), &[]).expect("the one drive");
    assert_eq!(compare_on(&inputs, Coupling::default(), &[], 0.0)[0], 1);
    assert_eq!(best.path, [0; MOST_STAGES]);
    // too heavy for it: compared with the nearest miss of trying everything
    assert_eq!(compare_on(&inputs, Coupling::default(), &[], 1e5)[0], 0);
}

/// Where accuracy alone counts, two or three drives beat all others in every respect, and yet the twelve best are told.
#[test]
fn the_twelve_best_are_told_though_few_are_not_beaten() {
    let inputs = small::tiny_inputs(&HORIZONTAL.replace("axes:", "prefer: { accuracy: 1 }\naxes:"));
    let (setting, demand) = (small::setting(&inputs), small::demand(&inputs, 0));
    for family in FAMILIES {
        let stages = with_family(family, &demand, &inputs.catalog, Stages).expect("a family");
        let found = |path| {
            let worked = work_out(family, &path, &demand, &setting).expect("a drive");
            worked.admissible().then_some(Found { family, path, attributes: worked.attributes })
        };
        let mut all: Vec<Found> = small::paths(&stages).into_iter().filter_map(found).collect();
        all.sort_by(Found::order);
        let searched = search_axis(&inputs.brief, 0, CarriedRange::at_most(0.0, 0.0), &setting);
        let walk = &searched.families.iter().find(|searched| searched.family == family).expect("a family").walk;
        assert!(walk.front.len() <= 3 && walk.front[0] == all[0], "{family}: {:?}", walk.front);
        assert_eq!(walk.best, all[..12], "{family}");
        assert_eq!(walk.census.admissible, all.len() as u64, "{family}");
    }
}

/// The rule that is told of a drive that does not pass is the one that it breaks worst, and of a drive that passes there is none.
#[test]
fn the_rule_that_is_broken_worst_is_named() {
    let (mut none, mut some) = (0, 0);
    for (text, waived) in [(HORIZONTAL, "motor-heating"), (VERTICAL, "holding-brake"), (IMPOSSIBLE, "motor-peak")] {
        let inputs = small::tiny_inputs(text);
        let waived = [waived.to_string()];
        let setting = Setting { waived: &waived, ..small::setting(&inputs) };
        let demand = Demand::new(&inputs.brief, 0, Mass::of_si(25.0));
        for family in FAMILIES {
            let stages = with_family(family, &demand, &inputs.catalog, Stages).expect("a family");
            for path in small::paths(&stages).into_iter().step_by(41) {
                let worked = work_out(family, &path, &demand, &setting).expect("a drive");
                let mut worst: Option<(f64, &str)> = None;
                for judged in &worked.judged {
                    let rule = judged.rule;
                    let over = if judged.utilisation.is_nan() { f64::INFINITY } else { judged.utilisation };
                    let counts = rule.obligation == Obligation::Shall && rule.id != waived[0] && over > 1.0 + 1e-9;
                    // the rules come by their ids, so the first of equals stays
                    if counts && worst.is_none_or(|(most, _)| over > most) {
                        worst = Some((over, &rule.id));
                    }
                }
                let found = Found { family, path, attributes: worked.attributes };
                let told = worst_failed(&inputs.brief, 0, 25.0, &setting, &found);
                assert_eq!(told.as_deref(), worst.map(|(_, id)| id), "{family} {path:?}");
                assert_eq!(worked.admissible(), worst.is_none(), "{family} {path:?}");
                assert_eq!(admissible(family, &path, &demand, &setting), worst.is_none(), "{family} {path:?}");
                if worst.is_none() { none += 1 } else { some += 1 }
            }
        }
    }
    assert!(none > 10 && some > 30, "{none} {some}");
}

struct Stages;

impl WithFamily for Stages {
    type Output = Vec<usize>;
    fn with<F: Family>(self, family: &F) -> Vec<usize> {
        family.stages()
    }
}

#[test]
fn a_search_that_is_told_to_stop_gives_nothing_and_one_that_is_not_gives_all() {
    let inputs = small::tiny_inputs(HORIZONTAL);
    let stop = Stop::default();
    let setting = Setting { stop: Some(&stop), ..small::setting(&inputs) };
    let best = best_on(&inputs.brief, 0, 0.0, &setting, None, &[]);
    assert!(!stop.asked() && best.is_some());
    assert_eq!(best, best_on(&inputs.brief, 0, 0.0, &small::setting(&inputs), None, &[]));
    stop.now();
    assert!(stop.asked());
    assert_eq!(best_on(&inputs.brief, 0, 0.0, &setting, None, &[]), None);
    let searched = search_axis(&inputs.brief, 0, CarriedRange::at_most(0.0, 0.0), &setting);
    assert!(searched.offers.is_empty() && searched.families.iter().all(|family| family.walk.census.admissible == 0));
}
