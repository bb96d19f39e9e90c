//! How long the search takes on the examples: the whole recommendation, and the best drive of one axis alone.
//!
//! Run by `cargo bench --bench search`; prints times and ratios, asserts nothing. Numbers of one machine mean little, ratios more.

mod common;

use axiswright::drive::{Demand, Family, WithFamily, with_family};
use axiswright::pipeline::{Inputs, recommend};
use axiswright::search::{Found, Setting, best_on, walk};
use axiswright::units::{Mass, Measure, Money};
use common::{inputs, least, setting};
use std::time::Duration;

/// Every configuration worked out to its last stage, against the same with branches dropped, on a catalogue cut down.
fn without_pruning() {
    struct Walks<'w> {
        demand: &'w Demand<'w>,
        setting: Setting<'w>,
    }
    impl WithFamily for Walks<'_> {
        type Output = [(u64, Duration); 2];
        fn with<F: Family>(self, family: &F) -> Self::Output {
            [true, false].map(|exhaustive| {
                let setting = Setting { exhaustive, ..self.setting };
                let mut configurations = 0;
                let time = least(3, || {
                    configurations = walk(family, self.demand, &setting, None).census.configurations;
                });
                (configurations, time)
            })
        }
    }
    let mut inputs = inputs("tray-loader");
    let catalog = &mut inputs.catalog;
    catalog.racks.truncate(4);
    catalog.gearboxes.truncate(12);
    catalog.servo_motors.truncate(6);
    catalog.ball_screws.truncate(4);
    catalog.screw_bearings.truncate(4);
    catalog.screw_reductions.truncate(6);
    let demand = Demand::new(&inputs.brief, 0, Mass::of_si(0.0));
    for id in ["helical-rack", "ball-screw"] {
        let walks = Walks { demand: &demand, setting: setting(&inputs, &inputs.brief) };
        let Some([plainly, pruned]) = with_family(id, &demand, &inputs.catalog, walks) else { continue };
        let rate = |(configurations, time): (u64, Duration)| configurations as f64 / time.as_secs_f64();
        println!(
            "{id}, cut down to {} configurations: nothing pruned {:.2e} a second, pruned {:.2e} a second, {:.0} times",
            plainly.0,
            rate(plainly),
            rate(pruned),
            rate(pruned) / rate(plainly)
        );
    }
}

/// Ten times the motors, gearboxes and screw sizes: invented variations, each a little dearer and heavier to turn.
fn ten_times() {
    let inputs = inputs("tray-loader");
    let mut more = common::inputs("tray-loader");
    let catalog = &mut more.catalog;
    for copy in 1..10 {
        let (dearer, heavier) = (1.0 + 0.01 * f64::from(copy), 1.0 + 0.005 * f64::from(copy));
        let name = |text: &str| format!("{text}-v{copy}");
        for mut motor in inputs.catalog.servo_motors.iter().cloned() {
            (motor.designation, motor.size) = (name(&motor.designation), name(&motor.size));
            (motor.price, motor.inertia) = (Money(motor.price.0 * dearer), motor.inertia * heavier);
            catalog.servo_motors.push(motor);
        }
        for mut gearbox in inputs.catalog.gearboxes.iter().cloned() {
            gearbox.designation = name(&gearbox.designation);
            (gearbox.price, gearbox.inertia) = (Money(gearbox.price.0 * dearer), gearbox.inertia * heavier);
            catalog.gearboxes.push(gearbox);
        }
        for mut screw in inputs.catalog.ball_screws.iter().cloned() {
            screw.designation = name(&screw.designation);
            screw.price_factor *= dearer;
            catalog.ball_screws.push(screw);
        }
    }
    let (few, many) = (setting(&inputs, &inputs.brief), setting(&more, &more.brief));
    let time = |setting: &Setting<'_>, family: Option<&str>| {
        least(3, || {
            best_on(&inputs.brief, 0, 0.0, setting, family, &[]);
        })
    };
    for family in [None, Some("ball-screw"), Some("helical-rack"), Some("twin-pinion")] {
        let (one, ten) = (time(&few, family), time(&many, family));
        let ratio = ten.as_secs_f64() / one.as_secs_f64();
        println!("ten times the catalogue, best of {}: {ratio:.1} times as long", family.unwrap_or("all"));
    }
    let whole = |inputs: &Inputs| {
        let mut configurations = 0_u64;
        let time = least(1, || {
            let record = recommend(inputs, false);
            configurations =
                record.axes.iter().flat_map(|axis| &axis.families).map(|family| family.configurations).sum();
        });
        (configurations, time.as_secs_f64())
    };
    let (one, ten) = (whole(&inputs), whole(&more));
    println!(
        "ten times the catalogue, whole answer: {:.2e} in place of {:.2e} configurations in {:.1} times the time ({:.2} and {:.2} s)",
        ten.0 as f64,
        one.0 as f64,
        ten.1 / one.1,
        ten.1,
        one.1
    );
}

fn main() {
    println!("threads: {}", rayon::current_num_threads());
    without_pruning();
    ten_times();
    for name in ["hull-gantry", "glass-table", "panel-drilling", "tray-loader", "impossible"] {
        let inputs = inputs(name);
        let record = recommend(&inputs, false);
        let families = record.axes.iter().flat_map(|axis| &axis.families);
        let configurations: u64 = families.map(|family| family.configurations).sum();
        let whole = least(3, || {
            recommend(&inputs, false);
        });
        println!(
            "{name}: {configurations} configurations with census, proof and record in {:.3} s, {:.2e} a second",
            whole.as_secs_f64(),
            configurations as f64 / whole.as_secs_f64()
        );
        let setting = setting(&inputs, &inputs.brief);
        for (index, axis) in record.axes.iter().enumerate() {
            let carried = axis.carried_mass.census();
            let mut found: Option<Found> = None;
            let alone = least(5, || found = best_on(&inputs.brief, index, carried, &setting, None, &[]));
            let guesses: Vec<Found> = found.into_iter().collect();
            let guessed = least(5, || {
                best_on(&inputs.brief, index, carried, &setting, None, &guesses);
            });
            println!(
                "  {}: best alone {:.1} ms, with the answer as a guess {:.1} ms; the recommendation takes {:.0} times that",
                axis.name,
                alone.as_secs_f64() * 1e3,
                guessed.as_secs_f64() * 1e3,
                whole.as_secs_f64() / alone.as_secs_f64()
            );
        }
    }
}
