//! A handful of parts: searched under every coupling as by trying everything, within limits of carried mass, and left off when asked.
//!
//! Every property is derived here, no source.

use crate::census::compare_on;
use crate::small::{self, HORIZONTAL, IMPOSSIBLE, VERTICAL};
use axiswright::drive::{Demand, FAMILIES};
use axiswright::search::{CarriedRange, Coupling, Setting, Stop, admissible, best_on, search_axis};
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

/// What an axis offers passes at both ends of its interval of carried mass and not beside it, and where it passes it is offered.
#[test]
fn an_offer_reaches_as_far_as_its_drive_passes() {
    let inputs = small::tiny_inputs(VERTICAL);
    let carried = CarriedRange { least: 0.0, most: 400.0 };
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
            let mass = 20.0 * f64::from(step);
            let offered = within.iter().any(|(least, most)| *least <= mass && mass <= *most);
            assert_eq!(offered, passes(mass), "{offer:?} at {mass} kg");
        }
    }
    assert!(inside > 3 && searched.offers.len() > 5, "{inside} edges of {} offers", searched.offers.len());
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
    let searched = search_axis(&inputs.brief, 0, CarriedRange { least: 0.0, most: 0.0 }, &setting);
    assert!(searched.offers.is_empty() && searched.families.iter().all(|family| family.walk.census.admissible == 0));
}
