//! The machines after the best against trying every combination, on small random machines.

use crate::machine::{Column, FIXED, brief, carried, column, limits, offer, ranked, refused};
use crate::small;
use axiswright::brief::{Brief, Limits};
use axiswright::inquiry::machine_obstacle;
use axiswright::search::{Found, Offer};
use axiswright::select::{Machine, NextKind, Status, needs};
use proptest::prelude::*;

const FAMILIES: [&str; 3] = ["ball-screw", "helical-rack", "twin-pinion"];

/// What the axes offer, best first, of three families.
fn offers(form: usize, columns: &[Vec<Column>; 3]) -> Vec<Vec<Offer>> {
    let of_axis = |(axis, columns): (usize, &Vec<Column>)| {
        let mut columns = columns.clone();
        columns.sort_by_key(|column| column.0);
        let placed = columns.iter().enumerate().map(|(place, column)| {
            let mut offer = offer(axis, place, column, FIXED[form][axis]);
            offer.found.family = FAMILIES[(column.1 + column.3) as usize % 3];
            offer
        });
        placed.collect()
    };
    columns.iter().enumerate().map(of_axis).collect()
}

fn machine<'b>(brief: &'b Brief, limits: Limits, offers: &[Vec<Offer>]) -> Machine<'b> {
    Machine { brief, limits, offers: offers.to_vec() }
}

fn columns() -> impl Strategy<Value = [Vec<Column>; 3]> {
    prop::array::uniform3(prop::collection::vec(column(), 1..9))
}

proptest! {
    #![proptest_config(small::cases(200))]

    #[test]
    fn the_next_machines_are_the_next_of_all_combinations(
        form in 0..3_usize,
        columns in columns(),
        limits in limits(),
        count in 1..7_usize,
        seed in any::<u64>(),
    ) {
        let brief = brief(form);
        let offers = offers(form, &columns);
        let machine = machine(&brief, limits, &offers);
        let ranked = ranked(form, &limits, &offers);
        let Some((_, chosen)) = ranked.first() else { return Ok(()) };

        let next = machine.next_best(chosen, count, |_, _, _| true);
        let told: Vec<(f64, Vec<usize>)> = next.iter().map(|next| (next.objective, next.picks.clone())).collect();
        let wanted: Vec<(f64, Vec<usize>)> =
            ranked.iter().skip(1).take(count).map(|(objective, picks)| (*objective, picks.to_vec())).collect();
        prop_assert_eq!(told, wanted);
        for next in &next {
            prop_assert_eq!((next.kind, next.status), (NextKind::NextBest, Status::Optimal));
            let differs: Vec<usize> = (0..3).filter(|&axis| next.picks[axis] != chosen[axis]).collect();
            prop_assert_eq!(&next.differs, &differs);
        }

        // with drives that direct evaluation refuses
        let stands = |picks: &[usize; 3]| {
            let chosen = [&offers[0][picks[0]], &offers[1][picks[1]], &offers[2][picks[2]]];
            (0..3).all(|axis| !refused(seed, axis, chosen[axis].found.path[1], carried(form, axis, &chosen)))
        };
        let verify = |axis: usize, found: &Found, carried: f64| !refused(seed, axis, found.path[1], carried);
        let sound: Vec<Vec<usize>> =
            ranked.iter().skip(1).filter(|(_, picks)| stands(picks)).take(count).map(|(_, picks)| picks.to_vec()).collect();
        let told: Vec<Vec<usize>> =
            machine.next_best(chosen, count, verify).into_iter().map(|next| next.picks).collect();
        let refusals = ranked.len() - 1 - ranked.iter().skip(1).filter(|(_, picks)| stands(picks)).count();
        // after 200 refused answers the search gives up and says so
        if refusals < 200 {
            prop_assert_eq!(told, sound);
        }
    }

    #[test]
    fn the_best_machine_of_another_family_is_the_best_of_all_that_differ_in_one(
        form in 0..3_usize,
        columns in columns(),
        limits in limits(),
    ) {
        let brief = brief(form);
        let offers = offers(form, &columns);
        let machine = machine(&brief, limits, &offers);
        let ranked = ranked(form, &limits, &offers);
        let Some((_, chosen)) = ranked.first() else { return Ok(()) };
        let family = |axis: usize, place: usize| offers[axis][place].found.family;
        let other = ranked.iter().find(|(_, picks)| (0..3).any(|axis| family(axis, picks[axis]) != family(axis, chosen[axis])));
        let told = machine.best_of_other_family(chosen, |_, _, _| true);
        prop_assert_eq!(
            told.as_ref().map(|next| (next.objective, next.picks.as_slice())),
            other.map(|(objective, picks)| (*objective, picks.as_slice()))
        );
        prop_assert!(told.is_none_or(|next| (next.kind, next.status) == (NextKind::OtherFamily, Status::Optimal)));
    }

    #[test]
    fn a_further_drive_never_makes_the_machine_dearer_and_a_loser_can_go(
        form in 0..3_usize,
        columns in columns(),
        limits in limits(),
        further in column(),
        axis in 0..3_usize,
        gone in any::<prop::sample::Index>(),
    ) {
        let brief = brief(form);
        let before = offers(form, &columns);
        let chosen = machine(&brief, limits, &before).choose(false, |_, _, _| true);
        let mut more = columns.clone();
        more[axis].push(further);
        let with = machine(&brief, limits, &offers(form, &more)).choose(false, |_, _, _| true);
        if let Some(objective) = chosen.objective {
            prop_assert!(with.objective.is_some_and(|with| with <= objective));
            // a drive that is in no best machine goes, and the machine stays
            let mut fewer = before.clone();
            let place = gone.index(fewer[axis].len());
            if place != chosen.picks[axis] {
                fewer[axis].remove(place);
                let without = machine(&brief, limits, &fewer).choose(false, |_, _, _| true);
                let drive = |offers: &[Vec<Offer>], picks: &[usize], axis: usize| offers[axis][picks[axis]].clone();
                for axis in 0..3 {
                    prop_assert_eq!(drive(&fewer, &without.picks, axis), drive(&before, &chosen.picks, axis));
                }
            }
        }
    }
}

/// Some limits alone, with one of them left out.
fn without(limits: &Limits, key: &str) -> Limits {
    let mut fewer = *limits;
    match key {
        "purchase" => fewer.purchase = None,
        "tool-point-error" => fewer.tool_point_error = None,
        "supply-power" => fewer.supply_power = None,
        "motor-models" => fewer.motor_models = None,
        "gearbox-models" => fewer.gearbox_models = None,
        other => panic!("{other}"),
    }
    fewer
}

proptest! {
    #![proptest_config(small::cases(300))]

    #[test]
    fn the_least_value_of_a_limit_is_the_least_of_all_combinations(
        form in 0..3_usize,
        columns in columns(),
        limits in limits(),
    ) {
        let brief = brief(form);
        let offers = offers(form, &columns);
        let machine = machine(&brief, limits, &offers);
        prop_assume!(ranked(form, &limits, &offers).is_empty());
        let obstacle = machine_obstacle(&machine, &|_, _, _| true);
        let possible = |limits: &Limits| !ranked(form, limits, &offers).is_empty();
        let none = Limits::default();
        // where even without any limit no drive bears what it carries, no limit is to blame
        prop_assert_eq!(obstacle.conflict.is_empty(), !possible(&none));
        let others = ["purchase", "tool-point-error", "supply-power", "motor-models", "gearbox-models"]
            .into_iter()
            .filter(|key| !obstacle.conflict.contains(key))
            .fold(limits, |limits, key| without(&limits, key));
        prop_assert!(obstacle.conflict.is_empty() || !possible(&others));
        for key in &obstacle.conflict {
            prop_assert!(possible(&without(&others, key)), "{key} can be left out");
        }
        for key in ["purchase", "tool-point-error", "supply-power", "motor-models", "gearbox-models"] {
            let machines = ranked(form, &without(&limits, key), &offers);
            let of = |picks: &[usize; 3]| {
                let needs = needs(&machine, picks);
                match key {
                    "purchase" => needs.purchase,
                    "tool-point-error" => needs.error,
                    "supply-power" => needs.power,
                    "motor-models" => f64::from(needs.motors),
                    _ => f64::from(needs.gearboxes),
                }
            };
            let least = machines.iter().map(|(_, picks)| of(picks)).fold(f64::INFINITY, f64::min);
            let told = obstacle.relaxations.iter().find(|reached| reached.limits.len() == 1 && reached.limits[0].0 == key);
            match told {
                Some(reached) => {
                    prop_assert_eq!(reached.status, Status::Optimal);
                    prop_assert!((reached.limits[0].2 - least).abs() <= 1e-9 * least, "{} {:?} {}", key, reached, least);
                }
                None => prop_assert!(least.is_infinite(), "{} helps: {}", key, least),
            }
        }
    }
}

#[test]
fn the_same_drives_in_another_interval_of_carried_mass_are_no_other_machine() {
    let brief = brief(1);
    let column = |merit: u32, least: u32| (merit, 1, 5, 1, 1, 1, 1, least, 8);
    // the axis that carries offers one drive twice, in two intervals that both hold what it carries
    let mut carrying = vec![offer(0, 0, &column(3, 4), 30.0), offer(0, 0, &column(3, 6), 30.0)];
    carrying.push(offer(0, 1, &column(9, 4), 30.0));
    let offers = vec![carrying, vec![offer(1, 0, &column(1, 0), 0.0)], vec![offer(2, 0, &column(1, 0), 0.0)]];
    let machine = Machine { brief: &brief, limits: Limits::default(), offers };
    let next = machine.next_best(&[0, 0, 0], 4, |_, _, _| true);
    assert_eq!(next.iter().map(|next| next.picks.clone()).collect::<Vec<_>>(), [vec![2, 0, 0]]);
}
