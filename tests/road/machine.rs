//! The machine put together by the integer program against trying every combination, on small random machines.

use crate::small::{self, HORIZONTAL, VERTICAL};
use axiswright::brief::{Brief, Limits};
use axiswright::drive::Demand;
use axiswright::search::{
    Attributes, CarriedRange, Coupling, Found, MOST_STAGES, Offer, Setting, admissible, search_axis,
};
use axiswright::select::{Choice, Machine, Solved, Status, needs};
use axiswright::units::{Length, Mass, Measure, Money, Power};
use proptest::prelude::*;

/// Three axes; who carries whom is set by the form: nobody anybody, one the two others, or one the next.
pub fn brief(form: usize) -> Brief {
    let carries = [["", "", ""], ["b, c", "", ""], ["b", "c", ""]][form];
    let mut text = String::from("machine: Small\naxes:\n");
    for ((name, mass), carries) in ["a", "b", "c"].iter().zip([40, 20, 10]).zip(carries) {
        let carries = if carries.is_empty() { String::new() } else { format!(", carries: [{carries}]") };
        text += &format!(
            "  {name}: {{ direction: horizontal, travel: 1 m, moved-mass: {mass} kg, speed: 10 m/min, \
             acceleration: 1 m/s²{carries} }}\n"
        );
    }
    small::brief(&text)
}

/// What the drives that an axis carries may weigh beside the axes themselves, for each form and axis.
pub const FIXED: [[f64; 3]; 3] = [[0.0, 0.0, 0.0], [30.0, 0.0, 0.0], [30.0, 10.0, 0.0]];

/// One drive: merit, error in µm, mass, purchase, power, motor, gearbox, least carried mass, width of the interval.
pub type Column = (u32, u32, u32, u32, u32, u64, u64, u32, u32);

pub fn column() -> impl Strategy<Value = Column> {
    (1..15_u32, 1..7_u32, 1..9_u32, 1..12_u32, 1..9_u32, 1..4_u64, 0..3_u64, 0..6_u32, 0..18_u32)
}

pub fn offer(axis: usize, place: usize, column: &Column, fixed: f64) -> Offer {
    let &(merit, error, mass, purchase, power, motor, gearbox, least, width) = column;
    let mut path = [0; MOST_STAGES];
    (path[0], path[1]) = (axis as u16, place as u16);
    let attributes = Attributes {
        // one in fourteen costs nobody knows what
        merit: if merit == 14 { f64::INFINITY } else { f64::from(merit) },
        error: f64::from(error) * 1e-6,
        mass: f64::from(mass),
        purchase: f64::from(purchase),
        power: f64::from(power),
        whole_life: f64::from(merit),
        lead_time: 0.0,
        motor,
        gearbox,
    };
    let carried = if fixed > 0.0 { fixed + f64::from(least) } else { 0.0 };
    Offer { found: Found { family: "ball-screw", path, attributes }, least: carried, most: carried + f64::from(width) }
}

pub fn limits() -> impl Strategy<Value = Limits> {
    (
        prop::option::of(6..30_u32),
        prop::option::of(3..10_u32),
        prop::option::of(6..24_u32),
        prop::option::of(1..4_u32),
        prop::option::of(1..3_u32),
    )
        .prop_map(|(purchase, error, power, motor_models, gearbox_models)| Limits {
            purchase: purchase.map(|limit| Money(f64::from(limit))),
            tool_point_error: error.map(|limit| Length::of_si(f64::from(limit) * 1e-6)),
            supply_power: power.map(|limit| Power::of_si(f64::from(limit))),
            motor_models,
            gearbox_models,
            lead_time: None,
        })
}

/// Axes that each axis carries, for each form.
const BELOW: [[&[usize]; 3]; 3] = [[&[], &[], &[]], [&[1, 2], &[], &[]], [&[1, 2], &[2], &[]]];

pub fn carried(form: usize, axis: usize, chosen: &[&Offer; 3]) -> f64 {
    FIXED[form][axis] + BELOW[form][axis].iter().map(|&below| chosen[below].found.attributes.mass).sum::<f64>()
}

/// Whether a combination keeps every limit and every interval, reckoned here.
fn keeps(form: usize, limits: &Limits, chosen: &[&Offer; 3]) -> bool {
    let of = |value: fn(&Attributes) -> f64| chosen.map(|offer| value(&offer.found.attributes));
    let sum = |value: fn(&Attributes) -> f64| of(value).iter().sum::<f64>();
    let different =
        |models: [u64; 3]| (0..3).filter(|&axis| models[axis] != 0 && !models[..axis].contains(&models[axis])).count();
    let within = |needed: f64, limit: Option<f64>| limit.is_none_or(|limit| needed <= limit * (1.0 + 1e-12));
    let models = |model: fn(&Attributes) -> u64, limit: Option<u32>| {
        limit.is_none_or(|limit| different(chosen.map(|offer| model(&offer.found.attributes))) <= limit as usize)
    };
    within(sum(|attributes| attributes.purchase), limits.purchase.map(|limit| limit.0))
        && within(sum(|attributes| attributes.power), limits.supply_power.map(Measure::si))
        && within(sum(|attributes| attributes.error.powi(2)), limits.tool_point_error.map(|limit| limit.si().powi(2)))
        && models(|attributes| attributes.motor, limits.motor_models)
        && models(|attributes| attributes.gearbox, limits.gearbox_models)
        && (0..3).all(|axis| {
            let carried = carried(form, axis, chosen);
            chosen[axis].least <= carried && carried <= chosen[axis].most
        })
}

/// Every combination that keeps the limits, cheapest first; of equals the one whose columns come first.
pub fn ranked(form: usize, limits: &Limits, offers: &[Vec<Offer>]) -> Vec<(f64, [usize; 3])> {
    let mut all = Vec::new();
    for a in 0..offers[0].len() {
        for b in 0..offers[1].len() {
            for c in 0..offers[2].len() {
                let chosen = [&offers[0][a], &offers[1][b], &offers[2][c]];
                if keeps(form, limits, &chosen) {
                    all.push((chosen.iter().map(|offer| offer.found.attributes.merit).sum(), [a, b, c]));
                }
            }
        }
    }
    all.sort_by(|a: &(f64, [usize; 3]), b| a.0.total_cmp(&b.0).then_with(|| a.1.cmp(&b.1)));
    all
}

/// Refuses one drive in five, by what it is and what it carries.
pub fn refused(seed: u64, axis: usize, place: u16, carried: f64) -> bool {
    let mixed = [axis as u64, u64::from(place), carried.round() as u64]
        .iter()
        .fold(seed, |hash, part| (hash ^ part).wrapping_mul(0x9e37_79b9_7f4a_7c15).rotate_left(23));
    mixed.is_multiple_of(5)
}

fn assert_choice(choice: &Choice, best: Option<&(f64, [usize; 3])>, what: &str) {
    match best {
        Some((objective, picks)) => {
            assert_eq!((choice.status, &choice.picks[..]), (Status::Optimal, &picks[..]), "{what}");
            assert_eq!((choice.objective, choice.bound), (Some(*objective), Some(*objective)), "{what}");
        }
        None => {
            assert_eq!((choice.status, choice.picks.len(), choice.objective), (Status::Infeasible, 0, None), "{what}")
        }
    }
}

proptest! {
    #![proptest_config(small::cases(250))]

    #[test]
    fn the_chosen_machine_is_the_best_of_all_combinations(
        form in 0..3_usize,
        mut columns in prop::array::uniform3(prop::collection::vec(column(), 1..9)),
        limits in limits(),
        seed in any::<u64>(),
    ) {
        let brief = brief(form);
        let offers: Vec<Vec<Offer>> = columns
            .iter_mut()
            .enumerate()
            .map(|(axis, columns)| {
                // offers come best first
                columns.sort_by_key(|column| column.0);
                let placed = columns.iter().enumerate();
                placed.map(|(place, column)| offer(axis, place, column, FIXED[form][axis])).collect()
            })
            .collect();
        let machine = Machine { brief: &brief, limits, offers: offers.clone() };
        let ranked = ranked(form, &limits, &offers);
        for exhaustive in [false, true] {
            let choice = machine.choose(exhaustive, |_, _, _| true);
            assert_choice(&choice, ranked.first(), &format!("exhaustive {exhaustive}"));
            assert_eq!(choice.cuts, 0);
            if !choice.picks.is_empty() {
                assert!(needs(&machine, &choice.picks).keep_all());
            }
        }

        let stands = |picks: &[usize; 3]| {
            let chosen = [&offers[0][picks[0]], &offers[1][picks[1]], &offers[2][picks[2]]];
            (0..3).all(|axis| {
                !refused(seed, axis, chosen[axis].found.path[1], carried(form, axis, &chosen))
            })
        };
        let refusals = ranked.iter().take_while(|(_, picks)| !stands(picks)).count();
        // after 200 refused answers the program gives up and says so
        if refusals < 200 {
            let choice = machine.choose(false, |axis, found, carried| !refused(seed, axis, found.path[1], carried));
            assert_choice(&choice, ranked.get(refusals), "with refusals");
            assert_eq!(choice.cuts, refusals as u64);
        }
    }

    #[test]
    fn a_solver_that_lies_changes_no_machine_and_is_not_called_a_confirmation(
        form in 0..3_usize,
        mut columns in prop::array::uniform3(prop::collection::vec(column(), 1..5)),
        limits in limits(),
        lies in prop::collection::vec(0..6_usize, 0..5),
        kind in 0..4_u8,
        proven in any::<bool>(),
    ) {
        let brief = brief(form);
        let mut offers: Vec<Vec<Offer>> = Vec::new();
        for (axis, columns) in columns.iter_mut().enumerate() {
            columns.sort_by_key(|column| column.0);
            let placed = columns.iter().enumerate();
            offers.push(placed.map(|(place, column)| offer(axis, place, column, FIXED[form][axis])).collect());
        }
        let machine = Machine { brief: &brief, limits, offers: offers.clone() };
        let ranked = ranked(form, &limits, &offers);
        let said = match kind {
            0 => Solved::Infeasible,
            1 => Solved::NotProven,
            // as likely as not too few, too many, or of drives that are not offered
            2 => Solved::Picks { picks: lies, proven },
            _ => {
                let there = |axis: usize| lies.get(axis).map_or(0, |lie| lie % offers[axis].len());
                Solved::Picks { picks: (0..3).map(there).collect(), proven }
            }
        };
        let choice = machine.choose_by(&|_, _, _| said.clone(), true, |_, _, _| true);
        match (ranked.first(), &said) {
            (Some((objective, best)), said) => {
                assert_eq!(choice.picks, best, "{said:?}");
                assert!(choice.status == Status::Optimal || choice.status == Status::NotProven, "{said:?}");
                // what costs nobody knows what is never confirmed
                let right = objective.is_finite() && matches!(said, Solved::Picks { picks, proven: true }
                    if ranked.iter().any(|(own, same)| own == objective && same[..] == picks[..]));
                assert_eq!(choice.confirmed, right, "{said:?}");
            }
            (None, said) => {
                assert!(choice.picks.is_empty() && choice.status == Status::Infeasible, "{said:?}: {choice:?}");
                assert_eq!(choice.confirmed, *said == Solved::Infeasible);
            }
        }
    }
}

#[test]
fn two_hundred_refused_answers_are_not_called_infeasible() {
    let brief = brief(0);
    let column = (1, 1, 1, 1, 1, 1, 1, 0, 0);
    let offers: Vec<Vec<Offer>> =
        (0..3).map(|axis| (0..6).map(|place| offer(axis, place, &column, 0.0)).collect()).collect();
    let machine = Machine { brief: &brief, limits: Limits::default(), offers };
    let choice = machine.choose(false, |_, _, _| false);
    assert_eq!((choice.status, choice.picks.len(), choice.objective, choice.cuts), (Status::NotProven, 0, None, 200));
}

#[test]
fn an_axis_without_a_drive_leaves_no_machine() {
    let brief = brief(2);
    let column = (1, 1, 1, 1, 1, 1, 1, 0, 9);
    let offers = vec![vec![offer(0, 0, &column, 30.0)], Vec::new(), vec![offer(2, 0, &column, 0.0)]];
    let machine = Machine { brief: &brief, limits: Limits::default(), offers };
    assert_eq!(machine.choose(false, |_, _, _| true).status, Status::Infeasible);
    assert_eq!(machine.subtree(0), [1, 2]);
    assert_eq!(machine.carried(2, &[0, 0, 0]).to_bits(), 0.0_f64.to_bits());
}

#[test]
fn a_drive_is_offered_for_the_carried_masses_that_it_bears_and_for_no_others() {
    for text in [HORIZONTAL, VERTICAL] {
        let inputs = small::inputs(text);
        let coupling = Coupling { mass: true, purchase: true, power: true, ..Coupling::default() };
        let setting = Setting { coupling, ..small::setting(&inputs) };
        let searched = search_axis(&inputs.brief, 0, CarriedRange::at_most(20.0, 300.0), &setting);
        let bounded = searched.offers.iter().filter(|offer| offer.most < 300.0).count();
        assert!(bounded > 5 && searched.offers.len() > bounded, "{bounded} of {}", searched.offers.len());
        for mass in (0..40).map(|step| 20.0 + 280.0 * f64::from(step) / 39.0) {
            let demand = Demand::new(&inputs.brief, 0, Mass::of_si(mass));
            for Offer { found, .. } in &searched.offers {
                let same = |offer: &&Offer| (offer.found.family, offer.found.path) == (found.family, found.path);
                let offered =
                    searched.offers.iter().filter(same).any(|offer| offer.least <= mass && mass <= offer.most);
                let bears = admissible(found.family, &found.path, &demand, &setting);
                assert_eq!(bears, offered, "{} {:?} at {mass} kg", found.family, found.path);
            }
        }
    }
}
