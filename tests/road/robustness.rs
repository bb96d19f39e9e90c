//! The odds of drives against closed forms, against quadrature, and against what they must keep whatever the drive.
//!
//! Factors of chance are lognormal about 1 and cut at three standard deviations, so one rule on one quantity that is off
//! has the probability of a cut normal distribution.

use crate::small;
use axiswright::brief::{Brief, Entry, Uncertainty};
use axiswright::characteristic as ch;
use axiswright::drive::Demand;
use axiswright::formula::MOST_PHASES;
use axiswright::inquiry::{Odds, Requirement, SAMPLES, SEED, Trial};
use axiswright::ledger::{Figures, Known};
use axiswright::pipeline::{self, Inputs};
use axiswright::rule::{Limit, Rule, Rulebook, Sense};
use axiswright::search::{Found, Setting, admissible, best_on, work_out};
use axiswright::units::{Frequency, Mass, Measure, Ratio};
use std::sync::LazyLock;

const BRIEF: &str = "\
machine: Slide
temperature-swing: 5 K
axes:
  slide:
    direction: horizontal
    travel: 1.2 m
    moved-mass: 180 kg
    speed: 25 m/min
    acceleration: 3 m/s²
    cutting-force: 900 N
    accuracy: 0.1 mm
    repeatability: 0.05 mm
    cutting-deflection: 0.06 mm
    first-mode: 25 Hz
";

fn inputs() -> Inputs {
    small::inputs(BRIEF)
}

/// Standard deviations in the order of the brief: mass, drag, force, swing, stiffness.
fn spreads(shares: [f64; 5]) -> Uncertainty {
    let entry = |share: f64| Entry { value: Ratio::of_si(share), stated: true };
    Uncertainty {
        moved_mass: entry(shares[0]),
        guide_friction: entry(shares[1]),
        cutting_force: entry(shares[2]),
        temperature_swing: entry(shares[3]),
        stiffness: entry(shares[4]),
    }
}

/// One binding rule and no other: this quantity within this limit.
fn one_rule(inputs: &Inputs, slot: usize, sense: Sense, limit: f64) -> Rulebook {
    let model = inputs.rulebook.rules.iter().find(|rule| rule.id == "peak-torque").unwrap_or(&inputs.rulebook.rules[0]);
    let rule = Rule {
        id: "one-rule".into(),
        applies_to: Vec::new(),
        obligation: axiswright::rule::Obligation::Shall,
        demand: slot,
        sense,
        factor: 1.0,
        limit: Limit::Value(limit),
        when: None,
        ..model.clone()
    };
    Rulebook { rules: vec![rule], ..Rulebook::default() }
}

/// The best drive for the brief as it stands.
static DRIVE: LazyLock<Found> = LazyLock::new(|| {
    let inputs = inputs();
    best_on(&inputs.brief, 0, 0.0, &small::setting(&inputs), None, &[]).expect("an admissible drive")
});

/// All its quantities.
static SHEET: LazyLock<Known> = LazyLock::new(|| {
    let inputs = inputs();
    let demand = Demand::new(&inputs.brief, 0, Mass::of_si(0.0));
    let worked = work_out(DRIVE.family, &DRIVE.path, &demand, &small::setting(&inputs));
    worked.expect("a drive").sheet.known().clone()
});

fn odds(brief: &Brief, setting: &Setting<'_>, drives: &[Found], seed: u64) -> Vec<Odds> {
    Trial { brief, axis: 0, carried: 0.0, setting, samples: SAMPLES, seed }.run(drives)
}

/// The odds of a drive under one rule alone.
fn under(slot: usize, sense: Sense, limit: f64, shares: [f64; 5], seed: u64) -> Odds {
    let mut inputs = inputs();
    inputs.brief.uncertainty = spreads(shares);
    let rulebook = one_rule(&inputs, slot, sense, limit);
    let setting = Setting { rulebook: &rulebook, ..small::setting(&inputs) };
    odds(&inputs.brief, &setting, std::slice::from_ref(&DRIVE), seed).remove(0)
}

/// The share of a normal distribution cut at three that lies below, by Simpson's rule on its density.
fn cut_normal_below(z: f64) -> f64 {
    let area = |from: f64, to: f64| {
        let (parts, density) = (2000, |x: f64| (-0.5 * x * x).exp());
        let step = (to - from) / f64::from(parts);
        let inner =
            |index: i32| f64::from(if index % 2 == 0 { 2 } else { 4 }) * density(from + step * f64::from(index));
        step / 3.0 * (density(from) + density(to) + (1..parts).map(inner).sum::<f64>())
    };
    area(-3.0, z.clamp(-3.0, 3.0)) / area(-3.0, 3.0)
}

fn scale(spread: f64) -> f64 {
    (1.0 + spread * spread).ln().sqrt()
}

/// The value of a quantity of the drive that is tried, for the brief as it stands.
fn value(slot: usize) -> f64 {
    SHEET.value(slot)
}

/// Whether a share of the samples is one that a probability gives: within four standard deviations of the count.
fn fits(odds: &Odds, probability: f64) -> bool {
    let (count, wanted) = (SAMPLES as f64, probability * SAMPLES as f64);
    (odds.passed as f64 - wanted).abs() <= 4.0 * (count * probability * (1.0 - probability)).sqrt() + 0.5
}

#[test]
fn one_rule_on_the_mass_has_the_probability_of_the_normal_distribution() {
    let mut inside = 0;
    let reserves = [0.85, 0.93, 0.98, 1.0, 1.05, 1.1, 1.2, 1.25];
    for reserve in reserves {
        let odds = under(ch::MOVED_MASS.slot, Sense::AtMost, 180.0 * reserve, [0.1, 0.0, 0.0, 0.0, 0.0], SEED);
        let probability = cut_normal_below(reserve.ln() / scale(0.1));
        assert!(fits(&odds, probability), "{reserve}: {odds:?}, {probability}");
        inside += usize::from(odds.interval.0 <= probability && probability <= odds.interval.1);
    }
    assert!(inside >= 6, "the interval of 95 % holds {inside} of {} probabilities", reserves.len());
}

#[test]
fn every_uncertain_quantity_is_off_by_its_own_factor_alone() {
    let cases = [
        (0, ch::MOVED_MASS.slot, 1.0),
        (1, ch::GUIDE_FRICTION.slot, 1.0),
        (1, ch::WIPER_FORCE.slot, 1.0),
        (2, ch::CUTTING_FORCE.slot, 1.0),
        (3, ch::TEMPERATURE_SWING.slot, 1.0),
        // the resonance goes with the root of the stiffness
        (4, ch::FIRST_MODE.slot, 0.5),
    ];
    for (quantity, slot, power) in cases {
        let (spread, reserve) = (0.2, 1.05);
        let mut shares = [0.0; 5];
        shares[quantity] = spread;
        let odds = under(slot, Sense::AtMost, value(slot) * reserve, shares, SEED);
        let probability = cut_normal_below(f64::ln(reserve) / power / scale(spread));
        assert!(fits(&odds, probability), "{}: {odds:?}, {probability}", ch::id(slot));
        // where another quantity is off, this one stays
        if power == 1.0 {
            let mut others = [0.2; 5];
            others[quantity] = 0.0;
            let still = under(slot, Sense::AtMost, value(slot) * reserve, others, SEED);
            assert_eq!((still.passed, still.utilisation), (SAMPLES, None), "{}", ch::id(slot));
        }
    }
}

#[test]
fn forces_of_the_duty_follow_the_cutting_force() {
    let slot = ch::PHASE_PROCESS_FORCE.phase(0).slot;
    let cutting =
        (0..MOST_PHASES).map(|phase| slot + phase).find(|&slot| value(slot) > 0.0).expect("a phase that cuts");
    let odds = under(cutting, Sense::AtMost, value(cutting) * 1.1, [0.0, 0.0, 0.15, 0.0, 0.0], SEED);
    assert!(fits(&odds, cut_normal_below(f64::ln(1.1) / scale(0.15))), "{odds:?}");
}

/// Second method: the drive is judged at the middles of 400 slices of equal probability.
#[test]
fn the_odds_of_a_real_drive_are_those_of_quadrature_over_the_mass() {
    let mut inputs = inputs();
    let drive = &*DRIVE;
    // a reserve of 4 % on the resonance is one of some 8 % on the mass
    inputs.brief.axes[0].first_mode = Some(Frequency::of_si(0.96 * value(ch::FIRST_MODE.slot)));
    inputs.brief.uncertainty = spreads([0.25, 0.0, 0.0, 0.0, 0.0]);
    let setting = small::setting(&inputs);
    let odds = odds(&inputs.brief, &setting, std::slice::from_ref(drive), SEED).remove(0);
    let passes = |mass: f64| {
        let brief = Requirement::MovedMass.with(&inputs.brief, 0, mass);
        admissible(drive.family, &drive.path, &Demand::new(&brief, 0, Mass::of_si(0.0)), &setting)
    };
    let steps = 2400;
    let mut share = 0.0;
    for step in 0..steps {
        let z = |step: i32| -3.0 + 6.0 * f64::from(step) / f64::from(steps);
        let weight = cut_normal_below(z(step + 1)) - cut_normal_below(z(step));
        let middle = 0.5 * (z(step) + z(step + 1));
        share += if passes(180.0 * (middle * scale(0.25)).exp()) { weight } else { 0.0 };
    }
    assert!(share > 0.02 && share < 0.98, "the case says something: {share}");
    assert!(fits(&odds, share), "{odds:?}, {share}");
}

#[test]
fn a_harder_limit_never_raises_the_odds_and_a_larger_spread_lowers_them_where_there_is_reserve() {
    let limits = [1.3, 1.2, 1.1, 1.05, 1.0, 0.95, 0.9];
    let odds = |reserve: f64, spread: f64| {
        under(ch::MOVED_MASS.slot, Sense::AtMost, 180.0 * reserve, [spread, 0.1, 0.1, 0.1, 0.1], SEED).passed
    };
    let harder: Vec<usize> = limits.iter().map(|&reserve| odds(reserve, 0.1)).collect();
    assert!(harder.windows(2).all(|pair| pair[1] <= pair[0]) && harder[0] > harder[6], "{harder:?}");
    let wider: Vec<usize> = [0.02, 0.05, 0.1, 0.2, 0.4].iter().map(|&spread| odds(1.1, spread)).collect();
    assert!(wider.windows(2).all(|pair| pair[1] <= pair[0]) && wider[0] > wider[4], "{wider:?}");
}

#[test]
fn the_same_seed_gives_the_same_odds_on_any_number_of_threads_and_beside_any_other_drive() {
    let mut inputs = inputs();
    inputs.brief.uncertainty = spreads([0.1, 0.3, 0.2, 0.2, 0.2]);
    let setting = small::setting(&inputs);
    let best = |family: &str| best_on(&inputs.brief, 0, 0.0, &setting, Some(family), &[]);
    let drives: Vec<Found> = ["ball-screw", "driven-nut", "helical-rack"].into_iter().filter_map(best).collect();
    assert!(drives.len() >= 2);
    let on = |threads: usize| {
        let pool = rayon::ThreadPoolBuilder::new().num_threads(threads).build().expect("threads");
        pool.install(|| odds(&inputs.brief, &setting, &drives, SEED))
    };
    let all = on(1);
    assert_eq!(all, on(3));
    let alone = odds(&inputs.brief, &setting, &drives[1..2], SEED);
    assert_eq!(alone[0], all[1], "a drive has the same odds alone");
    assert_ne!(all, odds(&inputs.brief, &setting, &drives, SEED + 1), "another seed gives other samples");
    for odds in &all {
        let [low, median, high] = odds.utilisation.expect("rules that move");
        assert!(low <= median && median <= high);
        assert_eq!(odds.passed == SAMPLES, odds.fails_first.is_none());
        assert!(odds.interval.0 <= odds.passed as f64 / SAMPLES as f64);
    }
}

#[test]
fn without_uncertainty_an_admissible_drive_always_passes() {
    let mut inputs = inputs();
    inputs.brief.uncertainty = spreads([0.0; 5]);
    let setting = small::setting(&inputs);
    let odds = odds(&inputs.brief, &setting, std::slice::from_ref(&DRIVE), SEED).remove(0);
    assert_eq!((odds.passed, odds.fails_first, odds.utilisation), (SAMPLES, None, None));
}

/// A spread in the brief comes back in the record; the drive chosen stands first, its rivals each once.
#[test]
fn the_record_tells_the_odds_of_the_drive_chosen_and_its_rivals() {
    let mut inputs = inputs();
    let text = BRIEF.replace("axes:", "uncertainty: { moved-mass: 12 %, stiffness: 0 % }\naxes:");
    inputs.brief = small::brief(&text);
    let record = pipeline::recommend_and_ask(&inputs, false);
    let axis = &record.axes[0];
    let robustness = axis.robustness.as_ref().expect("a drive was chosen");
    let told: Vec<(&str, f64, bool)> =
        robustness.uncertainties.iter().map(|told| (told.quantity.as_str(), told.deviation, told.stated)).collect();
    let wanted = [
        ("moved-mass", 12.0, true),
        ("guide-friction", 30.0, false),
        ("cutting-force", 15.0, false),
        ("temperature-swing", 20.0, false),
        ("stiffness", 0.0, true),
    ];
    assert_eq!(told, wanted);
    let drives = &robustness.drives;
    assert!(drives.len() >= 3 && drives.len() <= 8, "{}", drives.len());
    assert_eq!(drives.iter().filter(|drive| drive.chosen).count(), 1);
    let chosen = axis.chosen.as_ref().expect("a drive");
    assert_eq!(
        (&drives[0].family, &drives[0].parameters, drives[0].chosen),
        (&chosen.family, &chosen.parameters, true)
    );
    let assumed = |key: &str| record.assumptions.iter().any(|assumed| assumed.key == key);
    assert!(assumed("uncertainty.cutting-force") && !assumed("uncertainty.moved-mass"));
    let page = axiswright::report::markdown(&record, axiswright::units::UnitSystem::Metric);
    assert!(page.contains("Axis slide: the drive stays admissible in "), "a sentence for the customer");
    assert!(page.contains("### Robustness") && page.contains("moved mass 12 %"), "a table for the reviewer");
}
