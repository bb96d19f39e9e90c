//! What an axis offers where its load may differ or where less mass is worth money to the axes that carry it, against walking every family to the end.
//!
//! Every property is derived here, no source.

use crate::small::{self, HORIZONTAL, VERTICAL};
use axiswright::drive::{Demand, Family, WithFamily, considered, with_family};
use axiswright::pipeline::Inputs;
use axiswright::rule;
use axiswright::search::{
    AxisSearch, CarriedRange, Coupling, Found, Path, Setting, Walk, admissible, offer_lighter, search_axis, walk,
    work_out,
};
use axiswright::units::{Mass, Measure};
use std::collections::BTreeSet;

/// The brief with so few hours that every handful of parts leaves a drive.
fn short_lived(text: &str) -> String {
    text.replace("axes:", "hours-per-year: 1000\naxes:")
}

struct All<'b, 'a> {
    demand: &'b Demand<'b>,
    setting: &'b Setting<'a>,
}

impl WithFamily for All<'_, '_> {
    type Output = Walk;
    fn with<F: Family>(self, family: &F) -> Walk {
        walk(family, self.demand, self.setting, None)
    }
}

fn loaded(inputs: &Inputs, mass: f64) -> Demand<'_> {
    Demand::new(&inputs.brief, 0, Mass::of_si(mass))
}

/// Nothing left off: the undominated drives of all families at this load, and the least mass of an admissible one.
fn walked(inputs: &Inputs, mass: f64, setting: &Setting<'_>) -> (Vec<Found>, f64) {
    let demand = loaded(inputs, mass);
    let work = || All { demand: &demand, setting };
    let walks =
        considered(&inputs.brief, 0).into_iter().filter_map(|id| with_family(id, &demand, &inputs.catalog, work()));
    let walks: Vec<Walk> = walks.collect();
    let lightest = walks.iter().map(|walk| walk.lightest).fold(f64::INFINITY, f64::min);
    (walks.into_iter().flat_map(|walk| walk.front).collect(), lightest)
}

type Drive = (&'static str, Path);

fn drive(found: &Found) -> Drive {
    (found.family, found.path)
}

/// The drives that are offered; each is measured where drives are weighed, and they stand with the best first.
fn offered(inputs: &Inputs, searched: &AxisSearch, setting: &Setting<'_>) -> BTreeSet<Drive> {
    let heavy = loaded(inputs, searched.carried.weighed);
    for pair in searched.offers.windows(2) {
        assert!(pair[0].found.order(&pair[1].found).is_le());
    }
    for offer in &searched.offers {
        let worked = work_out(offer.found.family, &offer.found.path, &heavy, setting).expect("a drive");
        assert_eq!(offer.found.attributes, worked.attributes);
    }
    for (place, offer) in searched.offers.iter().enumerate() {
        let again = searched.offers[..place].iter().filter(|one| drive(&one.found) == drive(&offer.found));
        assert!(again.into_iter().all(|one| one.most < offer.least), "{offer:?} is offered twice");
    }
    searched.offers.iter().map(|offer| drive(&offer.found)).collect()
}

fn least_mass(inputs: &Inputs, drives: &BTreeSet<Drive>, mass: f64, setting: &Setting<'_>) -> f64 {
    let demand = loaded(inputs, mass);
    let mass = |(family, path): &Drive| work_out(family, path, &demand, setting).expect("a drive").attributes.mass;
    drives.iter().map(mass).fold(f64::INFINITY, f64::min)
}

/// Drives that have little to do are refused, so that some fail at small loads only.
const BUSY: &str = "
title: The motor has something to do
obligation: shall
limit: { characteristic: peak-torque-use, at-least: { value: '0.2' } }
reason: A motor that is never asked for a fifth of its torque is larger than it need be.
remedy: A smaller motor.
sources: [ { kind: practice, note: made up for this test } ]
examples:
  - { given: { peak-torque-use: '0.4' }, utilisation: 0.5, verdict: pass }
  - { given: { peak-torque-use: '0.16' }, utilisation: 1.25, verdict: fail }
";

/// A handful of parts under the rules that are built in, and with one more that small loads break.
fn handfuls(text: &str) -> [Inputs; 2] {
    let mut busy = small::tiny_inputs(text);
    busy.rulebook = rule::load_texts(vec![("busy.yaml".into(), BUSY.into())]).expect("one rule more");
    [small::tiny_inputs(text), busy]
}

/// Halvings by which an edge is found between two of the samples, and how many samples there are.
const HALVINGS: i32 = 24;
const SAMPLES: f64 = 16.0;

/// Of every offer that does not reach an end of the range: it passes at its edge and fails as far beyond as the halvings leave open.
/// Gives how many begin, and how many end, within the range.
fn edges(inputs: &Inputs, searched: &AxisSearch, setting: &Setting<'_>) -> [usize; 2] {
    let carried = searched.carried;
    let open = 1.01 * (carried.most - carried.least) / (SAMPLES - 1.0) / f64::from(2).powi(HALVINGS);
    let mut within = [0, 0];
    for offer in &searched.offers {
        let passes = |mass: f64| admissible(offer.found.family, &offer.found.path, &loaded(inputs, mass), setting);
        assert!(passes(offer.least) && passes(offer.most), "{offer:?} fails at its edge");
        if offer.least > carried.least {
            assert!(!passes(offer.least - open), "{offer:?} passes below");
            within[0] += 1;
        }
        if offer.most < carried.most {
            assert!(!passes(offer.most + open), "{offer:?} passes above");
            within[1] += 1;
        }
    }
    within
}

const RANGES: [CarriedRange; 6] = [
    CarriedRange::at_most(0.0, 400.0),
    CarriedRange::at_most(0.0, 150.0),
    CarriedRange::at_most(40.0, 41.0),
    CarriedRange::exactly(60.0),
    CarriedRange { least: 0.0, most: 400.0, weighed: 130.0 },
    CarriedRange { least: 20.0, most: 200.0, weighed: 20.0 },
];

#[test]
fn an_axis_offers_what_is_best_where_drives_are_weighed_and_what_is_better_at_the_least() {
    let (mut further_of_all, mut gains, mut frail, mut within) = (0, 0, 0, [0, 0]);
    for inputs in [HORIZONTAL, VERTICAL].into_iter().flat_map(|text| handfuls(&short_lived(text))) {
        for (carried, mass) in RANGES.into_iter().flat_map(|range| [(range, false), (range, true)]) {
            let setting = Setting { coupling: Coupling { mass, ..Coupling::default() }, ..small::setting(&inputs) };
            let searched = search_axis(&inputs.brief, 0, carried, &setting);
            let ((heavy, lightest), (light, lightest_light)) =
                (walked(&inputs, carried.weighed, &setting), walked(&inputs, carried.least, &setting));
            let best = heavy.iter().min_by(|a, b| a.order(b)).expect("a drive");
            let passes = |mass: f64| admissible(best.family, &best.path, &loaded(&inputs, mass), &setting);
            let robust = passes(carried.least) && passes(carried.most);
            // an axis that no other one carries needs only what is better than the drive that is best at any load
            let below = if robust && !mass { best.attributes.merit } else { f64::INFINITY };
            let further: BTreeSet<Drive> =
                light.iter().filter(|found| found.attributes.merit < below).map(drive).collect();
            let heavy: BTreeSet<Drive> = heavy.iter().map(drive).collect();
            let at_most = heavy.len();
            let expected: BTreeSet<Drive> = match carried.most > carried.least {
                true => heavy.union(&further).copied().collect(),
                false => heavy,
            };
            assert_eq!(offered(&inputs, &searched, &setting), expected, "{carried:?} {mass}");
            further_of_all += expected.len() - at_most;
            frail += usize::from(!robust);
            edges(&inputs, &searched, &setting).iter().zip(&mut within).for_each(|(many, sum)| *sum += many);

            let least = if below.is_finite() {
                least_mass(&inputs, &further, carried.weighed, &setting)
            } else {
                lightest_light
            };
            let least = least.min(least_mass(&inputs, &expected, carried.weighed, &setting)).min(lightest);
            assert_eq!(searched.lightest, least, "{carried:?} {mass}");

            let first = searched.offers.first().expect("an offer").found.attributes.merit;
            let gain = if robust { best.attributes.merit - first } else { f64::INFINITY };
            assert_eq!(searched.gain, gain, "{carried:?} {mass}");
            gains += usize::from(gain > 0.0 && gain.is_finite());
        }
    }
    assert!(further_of_all > 0 && gains > 0 && frail > 0, "{further_of_all} {gains} {frail}");
    assert!(within.into_iter().all(|many| many > 5), "{within:?}");
}

#[test]
fn lighter_drives_are_offered_as_far_as_they_may_be_worth_their_price() {
    let (mut more_of_all, mut settled, mut open, mut ties_of_all) = (0, 0, 0, 0);
    // who asks for stiffness is offered heavy drives first
    let stiff = VERTICAL.replace("axes:", "prefer: { whole-life-cost: 1, stiffness: 9 }\naxes:");
    for text in [HORIZONTAL, VERTICAL, &stiff] {
        let inputs = small::tiny_inputs(&short_lived(text));
        let plain = small::setting(&inputs);
        let setting = Setting { coupling: Coupling { mass: true, ..Coupling::default() }, ..plain };
        for carried in RANGES {
            let before = search_axis(&inputs.brief, 0, carried, &plain);
            let best = before.offers.first().expect("an offer").found.attributes.merit;
            let (heavy, light) =
                (walked(&inputs, carried.weighed, &setting).0, walked(&inputs, carried.least, &setting).0);
            let mut gains = vec![0.0, 200.0, 1500.0, 1e5, f64::INFINITY];
            // some at which a drive is worth its price and no more
            let ties = heavy.iter().chain(&light).map(|found| found.attributes.merit - best - before.gain);
            gains.extend(ties.filter(|gain| *gain > 0.0 && gain.is_finite()).take(4));
            ties_of_all += gains.len() - 5;
            for gain in gains {
                let below = (best + before.gain + gain) * (1.0 + 1e-9);
                let worth = |found: &&Found| found.attributes.merit < below || below.is_infinite();
                let mut expected: BTreeSet<Drive> = before.offers.iter().map(|offer| drive(&offer.found)).collect();
                let many = expected.len();
                expected.extend(heavy.iter().filter(worth).map(drive));
                if carried.most > carried.least {
                    expected.extend(light.iter().filter(worth).map(drive));
                }
                let mut searched = before.clone();
                let same = offer_lighter(&inputs.brief, 0, gain, &mut searched, &plain);
                assert_eq!(offered(&inputs, &searched, &setting), expected, "{carried:?} {gain}");
                more_of_all += expected.len() - many;
                let least = least_mass(&inputs, &expected, carried.weighed, &setting);
                assert_eq!(same, least >= before.lightest, "{carried:?} {gain}");
                if same { settled += 1 } else { open += 1 }
            }
        }
    }
    assert!(more_of_all > 20 && settled > 3 && open > 0, "{more_of_all} {settled} {open}");
    assert!(ties_of_all > 10, "{ties_of_all}");
}

#[test]
fn an_axis_without_a_drive_offers_none_and_gains_nothing() {
    let inputs = small::tiny_inputs(small::IMPOSSIBLE);
    let setting = small::setting(&inputs);
    for carried in RANGES {
        let mut searched = search_axis(&inputs.brief, 0, carried, &setting);
        assert!(searched.offers.is_empty());
        assert_eq!((searched.lightest, searched.gain), (f64::INFINITY, 0.0));
        assert!(offer_lighter(&inputs.brief, 0, 1e6, &mut searched, &setting));
        assert!(searched.offers.is_empty());
    }
}
