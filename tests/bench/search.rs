//! How long the search takes on the examples: the whole recommendation, and the best drive of one axis alone.
//!
//! Run by `cargo bench --bench search`; prints times and ratios, asserts nothing. Numbers of one machine mean little, ratios more.

use axiswright::brief::Brief;
use axiswright::drive::Merit;
use axiswright::pipeline::{Inputs, load, recommend};
use axiswright::search::{Coupling, Found, Setting, best_on};
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

fn main() {
    println!("threads: {}", rayon::current_num_threads());
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
