//! The whole road for two axes, one on the other, against trying every pair of drives.
//!
//! Limits: energy is free and advice is left out, so that what a drive costs does not depend on what it carries.

use crate::small;
use axiswright::brief::Limits;
use axiswright::catalog::Catalog;
use axiswright::characteristic as ch;
use axiswright::drive::{Demand, FAMILIES, Family, WithFamily, with_family};
use axiswright::ledger::Figures;
use axiswright::pipeline::{Inputs, recommend};
use axiswright::record::Outcome;
use axiswright::rule::{Obligation, passes};
use axiswright::units::{Acceleration, Mass, Measure, Money};
use std::collections::BTreeSet;

const PAIR: &str = "
machine: Slide with a ram
energy-price: 0
axes:
  slide:
    direction: horizontal
    travel: 1.2 m
    moved-mass: 330 kg
    carries: [ram]
    speed: 40 m/min
    acceleration: 3.2 m/s²
    cutting-force: 900 N
    cutting-speed: 6 m/min
    accuracy: 0.2 mm
    first-mode: 27 Hz
    feedback: motor
  ram:
    direction: vertical
    travel: 0.4 m
    moved-mass: 60 kg
    people-below: false
    speed: 20 m/min
    acceleration: 2 m/s²
    cutting-force: 500 N
    cutting-speed: 3 m/min
    accuracy: 0.2 mm
    feedback: motor
";

/// A few hundred drives an axis.
fn tiny() -> Catalog {
    let mut catalog = small::catalog();
    let keep = |names: &'static [&'static str]| move |designation: &String| names.contains(&designation.as_str());
    let screws = keep(&["screw-25x10", "screw-40x20", "screw-40x40", "screw-50x40"]);
    catalog.ball_screws.retain(|part| screws(&part.designation));
    catalog.screw_grades.truncate(2);
    catalog.preload_classes.truncate(2);
    catalog.end_arrangements.truncate(1);
    catalog.screw_bearings.truncate(2);
    catalog.racks.retain(|rack| rack.designation.starts_with("rack-2"));
    catalog.rack_grades.truncate(2);
    catalog.pinions.retain(|pinion| [20, 30].contains(&pinion.teeth));
    let gearboxes = keep(&["planetary-80-standard-i5", "planetary-110-standard-i5", "planetary-140-reduced-i7"]);
    catalog.gearboxes.retain(|part| gearboxes(&part.designation));
    catalog
}

fn inputs() -> Inputs {
    let mut rulebook = small::rules();
    rulebook.rules.retain(|rule| rule.obligation == Obligation::Shall);
    Inputs { brief: small::brief(PAIR), catalog: tiny(), rulebook }
}

/// A drive that passes every rule at some carried mass.
#[derive(Debug, Clone, PartialEq)]
struct Drive {
    cost: f64,
    purchase: f64,
    mass: f64,
    motor: String,
    gearbox: Option<String>,
}

struct Passing<'p> {
    demand: &'p Demand<'p>,
    inputs: &'p Inputs,
}

impl WithFamily for Passing<'_> {
    type Output = Vec<Drive>;
    fn with<F: Family>(self, family: &F) -> Vec<Drive> {
        let mut drives = Vec::new();
        for path in small::paths(&family.stages()) {
            let sheet = small::numbers(family, self.demand, &path);
            let rules = self.inputs.rulebook.rules.iter().filter(|rule| rule.applies(family.id(), &sheet));
            if rules.clone().all(|rule| passes(rule.utilisation(&sheet))) {
                drives.push(Drive {
                    cost: sheet.value(ch::WHOLE_LIFE_COST.slot),
                    purchase: sheet.value(ch::PURCHASE_COST.slot),
                    mass: sheet.value(ch::DRIVE_MASS.slot),
                    motor: family.motor_model(&path).into(),
                    gearbox: family.gearbox_model(&path).map(String::from),
                });
            }
        }
        drives
    }
}

fn passing(inputs: &Inputs, axis: usize, carried: f64) -> Vec<Drive> {
    let demand = Demand::new(&inputs.brief, axis, Mass::of_si(carried));
    let of = |id| with_family(id, &demand, &inputs.catalog, Passing { demand: &demand, inputs }).expect("a family");
    let wanted = inputs.brief.axes[axis].families.as_ref();
    FAMILIES
        .into_iter()
        .filter(|id| wanted.is_none_or(|list| list.iter().any(|name| name == id)))
        .flat_map(of)
        .collect()
}

/// Cost, purchase, motor models and gearbox models of a pair of drives.
type Pair = (f64, f64, usize, usize);

/// Every pair of a slide drive and a ram drive in which the slide bears the ram; and how many drives of the slide bear
/// a ram.
fn pairs(inputs: &Inputs) -> (Vec<Pair>, BTreeSet<usize>) {
    let mut all = Vec::new();
    let mut rams = passing(inputs, 1, 0.0);
    rams.sort_by(|a, b| a.mass.total_cmp(&b.mass));
    let mut slides: (f64, Vec<Drive>) = (f64::NAN, Vec::new());
    let mut counts = BTreeSet::new();
    for ram in &rams {
        let carried = inputs.brief.axes[1].moved_mass.si() + ram.mass;
        if slides.0 != carried {
            slides = (carried, passing(inputs, 0, carried));
            counts.insert(slides.1.len());
        }
        for slide in &slides.1 {
            let motors = BTreeSet::from([&slide.motor, &ram.motor]).len();
            let gearboxes = slide.gearbox.iter().chain(&ram.gearbox).collect::<BTreeSet<_>>().len();
            all.push((slide.cost + ram.cost, slide.purchase + ram.purchase, motors, gearboxes));
        }
    }
    (all, counts)
}

/// Chooses under many limits; gives whether a machine was found under each, and whether the mass of the ram decides what
/// the slide can be.
fn compare(inputs: &mut Inputs) -> (Vec<bool>, bool) {
    let (pairs, counts) = pairs(inputs);
    let cheapest = pairs.iter().map(|pair| pair.1).fold(f64::INFINITY, f64::min);
    let mut found = Vec::new();
    for purchase in [None, Some(1.05), Some(1.0), Some(0.99)] {
        for (motors, gearboxes) in [(None, None), (Some(1), None), (None, Some(1)), (Some(1), Some(1))] {
            let limits = Limits {
                purchase: purchase.map(|factor| Money(cheapest * factor)),
                motor_models: motors,
                gearbox_models: gearboxes,
                ..Limits::default()
            };
            let keeps = |pair: &&Pair| {
                limits.purchase.is_none_or(|limit| pair.1 <= limit.0 * (1.0 + 1e-9))
                    && motors.is_none_or(|limit| pair.2 <= limit as usize)
                    && gearboxes.is_none_or(|limit| pair.3 <= limit as usize)
            };
            let best = pairs.iter().filter(keeps).map(|pair| pair.0).fold(f64::INFINITY, f64::min);
            inputs.brief.limits = limits;
            let record = recommend(inputs, false);
            let what = format!("purchase {purchase:?}, motors {motors:?}, gearboxes {gearboxes:?}");
            found.push(record.outcome == Outcome::Chosen);
            if best.is_finite() {
                let objective = record.machine.solver.objective.unwrap_or(f64::NAN);
                assert!((objective - best).abs() <= 1e-9 * best, "{what}: {objective}, best {best}");
            } else {
                assert_eq!(record.outcome, Outcome::MachineLimit, "{what}");
            }
        }
    }
    (found, counts.len() > 1)
}

/// The cheaper motor of the ram, which has a brake, is made the heavier one, so that cheap and light are not the same.
#[test]
fn the_chosen_pair_is_the_best_of_all_pairs_under_any_limits() {
    let (mut found, mut decides) = (Vec::new(), 0);
    for (acceleration, cheap) in [(8.0, 20.0), (9.2, 80.0), (10.0, 20.0), (10.4, 80.0)] {
        let mut inputs = inputs();
        inputs.brief.axes[0].acceleration = Acceleration::of_si(acceleration);
        for motor in &mut inputs.catalog.servo_motors {
            match motor.designation.as_str() {
                "servo-2.2kw-brake" => motor.mass = Mass::of_si(cheap),
                "servo-4.5kw-brake" => motor.mass = Mass::of_si(4.0),
                _ => {}
            }
        }
        let (more, mass_decides) = compare(&mut inputs);
        found.extend(more);
        decides += usize::from(mass_decides);
    }
    let kept = found.iter().filter(|found| **found).count();
    assert!(kept > 30 && found.len() - kept > 8, "{kept} of {}", found.len());
    assert!(decides > 2, "the mass of the ram decides in {decides} cases only");
}
