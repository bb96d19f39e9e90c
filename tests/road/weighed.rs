//! Drives of axes that carry others are weighed at what they carry in the machine that is chosen.
//!
//! Every property is derived here, no source: what is best at the load that it really has is not beaten by what is left when the
//! losers are taken away.

use crate::small;
use axiswright::drive::Demand;
use axiswright::pipeline::{Inputs, recommend};
use axiswright::record::DecisionRecord;
use axiswright::search::{best_on, work_out};
use axiswright::units::{Mass, Measure};

/// A bridge that carries a slide that carries a lift, of which each may have drives of very different mass.
fn machine(bridge: u32, slide: u32, mode: u32) -> String {
    format!(
        "
machine: Bridge, slide and lift
axes:
  bridge:
    direction: horizontal
    travel: 1.9 m
    moved-mass: {bridge} kg
    carries: [slide]
    speed: 40 m/min
    acceleration: 3 m/s²
    cutting-force: 900 N
    cutting-speed: 8 m/min
    accuracy: 0.12 mm
    first-mode: {mode} Hz
  slide:
    direction: horizontal
    travel: 1.1 m
    moved-mass: {slide} kg
    carries: [lift]
    speed: 40 m/min
    acceleration: 3 m/s²
    accuracy: 0.12 mm
    first-mode: {mode} Hz
  lift:
    direction: vertical
    travel: 0.3 m
    moved-mass: 20 kg
    speed: 20 m/min
    acceleration: 3 m/s²
    people-below: false
    accuracy: 0.1 mm
"
    )
}

const MACHINES: [(u32, u32, u32); 12] = [
    (300, 90, 20),
    (420, 140, 20),
    (480, 60, 25),
    (350, 200, 15),
    (550, 110, 25),
    (250, 60, 30),
    (650, 60, 20),
    (150, 40, 30),
    (100, 20, 30),
    (200, 30, 35),
    (80, 20, 40),
    (700, 30, 28),
];

fn merits(record: &DecisionRecord) -> f64 {
    record.axes.iter().map(|axis| axis.chosen.as_ref().expect("a drive").merit).sum()
}

fn near(one: f64, other: f64) -> bool {
    (one - other).abs() <= 1e-9 * one.abs()
}

/// The same brief with no families but those that were chosen.
fn narrowed(text: &str, record: &DecisionRecord) -> String {
    record.axes.iter().fold(text.to_string(), |text, axis| {
        let family = &axis.chosen.as_ref().expect("a drive").family;
        let head = format!("  {}:\n", axis.name);
        text.replace(&head, &format!("{head}    families: [{family}]\n"))
    })
}

/// Whether the best drive of the bridge at the most that it may have to carry is another one; what is chosen is the best where it is weighed.
fn another_at_the_most(inputs: &Inputs, record: &DecisionRecord) -> bool {
    let (setting, bridge) = (small::setting(inputs), &record.axes[0]);
    let chosen = bridge.chosen.as_ref().expect("a drive");
    let carried = bridge.carried_mass.chosen.expect("a load");
    let best = best_on(&inputs.brief, 0, carried, &setting, None, &[]).expect("a drive");
    assert_eq!((best.family, best.attributes.merit), (chosen.family.as_str(), chosen.merit));
    let at_most = best_on(&inputs.brief, 0, bridge.carried_mass.most, &setting, None, &[]);
    at_most.is_none_or(|at_most| {
        let demand = Demand::new(&inputs.brief, 0, Mass::of_si(carried));
        let there = work_out(at_most.family, &at_most.path, &demand, &setting).expect("a drive");
        assert!(there.attributes.merit >= chosen.merit || !there.admissible());
        at_most.path != best.path
    })
}

#[test]
fn what_is_chosen_is_best_at_the_load_that_it_has_and_stays_so_without_the_losers() {
    let mut others = 0;
    for (bridge, slide, mode) in MACHINES {
        let text = machine(bridge, slide, mode);
        let inputs = small::inputs(&text);
        let record = recommend(&inputs, false);
        let objective = record.machine.solver.objective.expect("a machine");
        assert!(near(objective, merits(&record)), "{objective} is told, {} comes of the drives", merits(&record));
        assert!(record.axes.iter().all(|axis| axis.carried_mass.settled()), "{text}");
        let alone = recommend(&small::inputs(&narrowed(&text, &record)), false);
        let again = alone.machine.solver.objective.expect("a machine");
        assert!(near(objective, again), "{objective} becomes {again} without the losers\n{text}");
        others += usize::from(another_at_the_most(&inputs, &record));
    }
    assert!(others > 0, "weighing at the most would have chosen the same everywhere");
}
