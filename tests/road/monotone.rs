//! Asking for more never helps: properties of the whole search on random horizontal axes.
//!
//! A harder demand admits no configuration that the easier one does not, and its cheapest drive costs no less. Limits:
//! with gravity or a force one way more mass can balance more force, and a longer stroke of the duty wears each tooth
//! less, so axes here are level, forces act either way, and strokes stand still. Jerk follows acceleration. A driven nut
//! keeps out of a band about the whip speed of its screw; more speed, or a longer and so slower screw, may leave the band,
//! as the rhythm of teeth may leave the first resonance.
//! Every property is derived here from the mechanics, no source.

use crate::ask::{Ask, admits, ask, search};
use crate::small;
use axiswright::pipeline::Inputs;
use axiswright::rule::{Limit, Sense};
use proptest::prelude::*;

/// Holds the harder demand against the easier one. With `cost`, its cheapest drive costs no less either.
fn assert_harder(what: &str, easy: &Inputs, hard: &Inputs, cost: bool) -> usize {
    let (easy_found, hard_found) = (search(easy), search(hard));
    let mut admissible = 0;
    for ((id, _, easier), (_, _, harder)) in easy_found.iter().zip(&hard_found) {
        let counts = (easier.census.admissible, harder.census.admissible);
        assert!(counts.1 <= counts.0, "{what}: {id} admits {} and then {}", counts.0, counts.1);
        for found in harder.front.iter().chain(&harder.best).take(25) {
            assert!(admits(easy, id, &found.path), "{what}: {id} {:?} passes only the harder demand", found.path);
        }
        if let (true, Some(easy), Some(hard)) = (cost, easier.best.first(), harder.best.first()) {
            let (easy, hard) = (easy.attributes.merit, hard.attributes.merit);
            assert!(hard >= easy * (1.0 - 1e-12), "{what}: {id} costs {easy} and then {hard}");
        }
        admissible += counts.1;
    }
    admissible as usize
}

fn without(mut inputs: Inputs, left_out: &[&str]) -> Inputs {
    inputs.rulebook.rules.retain(|rule| !left_out.contains(&rule.id.as_str()));
    inputs
}

/// Without sets of three: a longer stretched screw pulls harder at its bearings, which relieves the lone row of such a set.
fn lasting_alike(mut inputs: Inputs) -> Inputs {
    inputs.catalog.screw_bearings.retain(|set| set.lesser_rating.is_none_or(|lesser| lesser == set.rating));
    assert!(!inputs.catalog.screw_bearings.is_empty());
    inputs
}

proptest! {
    #![proptest_config(small::cases(6))]

    #[test]
    fn asking_for_more_admits_nothing_new(easy in ask(), more in 1.02..1.5_f64) {
        // a resonance is a band too: a heavier slide may bring it away from the rhythm of the teeth
        let banded = ["tooth-rhythm-cutting", "tooth-rhythm-top"];
        let inputs = without(easy.inputs(), &banded);
        let harder: [(&str, bool, Ask); 10] = [
            ("speed", true, Ask { speed: easy.speed * more, ..easy.clone() }),
            ("acceleration", true, Ask { acceleration: easy.acceleration * more, ..easy.clone() }),
            ("mass", true, Ask { mass: easy.mass * more, ..easy.clone() }),
            ("friction", true, Ask { friction: easy.friction * more, ..easy.clone() }),
            ("force", true, Ask { force: easy.force * more, ..easy.clone() }),
            ("hours", true, Ask { hours: easy.hours * more, ..easy.clone() }),
            ("accuracy", true, Ask { accuracy: easy.accuracy / more, ..easy.clone() }),
            ("deflection", true, Ask { deflection: easy.deflection / more, ..easy.clone() }),
            ("first mode", true, Ask { first_mode: easy.first_mode * more, ..easy.clone() }),
            ("temperature", true, Ask { swing: easy.swing * more, ..easy.clone() }),
        ];
        for (what, cost, harder) in harder {
            let left_out: &[&str] = if what == "speed" { &["whip-band", "whip-band-warm"] } else { &[] };
            let harder = without(without(harder.inputs(), &banded), left_out);
            assert_harder(what, &without(inputs.clone(), left_out), &harder, cost);
        }

        // the heat of a nut spreads over a longer screw, a travel that is short for its nut is advised against, only a slender
        // screw gets supports
        let warm = ["screw-overheating", "whip-band", "whip-band-warm", "screw-thermal-push", "screw-support-needed"];
        let cool = |inputs: Inputs| lasting_alike(without(without(inputs, &warm), &banded));
        // what is judged as accuracy changes at 2 m, from A to E, which is smaller
        let most = if easy.travel <= 2.0 { 2.0 } else { 4.0 };
        let longer = Ask { travel: f64::min(easy.travel * more, most), ..easy.clone() };
        assert_harder("travel", &cool(inputs.clone()), &cool(longer.inputs()), false);

        let mut strict = inputs.clone();
        for rule in &mut strict.rulebook.rules {
            let tighter = if rule.sense == Sense::AtMost { 1.0 / more } else { more };
            match &mut rule.limit {
                Limit::Of(_) => rule.factor *= tighter,
                Limit::Value(value) => *value *= tighter,
            }
        }
        assert_harder("every limit", &inputs, &strict, true);
    }
}

#[test]
fn an_axis_of_common_size_leaves_something_to_compare() {
    let easy = Ask {
        direction: "horizontal",
        cutting: "both",
        travel: 0.9,
        mass: 200.0,
        speed: 0.5,
        acceleration: 2.0,
        force: 800.0,
        hours: 3000.0,
        accuracy: 0.1,
        deflection: 0.05,
        first_mode: 20.0,
        friction: 0.005,
        swing: 4.0,
        duty: vec![(30.0, 0.4, false, 0.6), (50.0, 0.1, true, 0.3), (20.0, 0.0, false, 0.0)],
    };
    let hard = Ask { mass: 260.0, ..easy.clone() };
    assert!(assert_harder("mass", &easy.inputs(), &hard.inputs(), true) > 100);
}
