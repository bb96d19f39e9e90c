//! How long the search takes on the examples: the whole recommendation, and the best drive of one axis alone.
//!
//! Run by `cargo bench --bench search`; prints times and ratios, asserts nothing. Numbers of one machine mean little, ratios more.

use axiswright::brief::Brief;
use axiswright::drive::{Demand, Family, Merit, WithFamily, with_family};
use axiswright::pipeline::{Inputs, load, recommend};
use axiswright::search::{Coupling, Found, Setting, best_on, walk};
use axiswright::units::{Mass, Measure};
use std::path::Path;
use std::time::{Duration, Instant};

fn inputs(name: &str) -> Inputs {
    let path = format!("{}/docs/examples/{name}.yaml", env!("CARGO_MANIFEST_DIR"));
    load(Path::new(&path), &[], &[]).unwrap_or_else(|_| panic!("{path} cannot be read"))
}

fn setting<'a>(inputs: &'a Inputs, brief: &Brief) -> Setting<'a> {
    Setting {
        catalog: &inputs.catalog,
        rulebook: &inputs.rulebook,
        merit: Merit::new(&brief.prefer),
        coupling: Coupling::default(),
        waived: &[],
        exhaustive: false,
    }
}

/// The least time of some runs.
fn least(runs: usize, mut work: impl FnMut()) -> Duration {
    let time = |work: &mut dyn FnMut()| {
        let begin = Instant::now();
        work();
        begin.elapsed()
    };
    (0..runs).map(|_| time(&mut work)).min().unwrap_or_default()
}

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

fn main() {
    println!("threads: {}", rayon::current_num_threads());
    without_pruning();
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
            let carried = axis.carried_mass.most;
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
