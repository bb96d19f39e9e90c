//! How long the best drive of one axis takes, family by family: the unit of turning points, crossovers and of an answer while one types.
//!
//! Run by `cargo bench --bench best [-- NAME]`; prints times, asserts nothing. Numbers of one machine mean little, ratios more.

use axiswright::brief::Brief;
use axiswright::drive::{FAMILIES, Merit};
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
        stop: None,
    }
}

/// The least time of some runs, ms.
fn least(runs: usize, mut work: impl FnMut()) -> f64 {
    let time = |work: &mut dyn FnMut()| {
        let begin = Instant::now();
        work();
        begin.elapsed()
    };
    (0..runs).map(|_| time(&mut work)).min().unwrap_or(Duration::ZERO).as_secs_f64() * 1e3
}

fn main() {
    let wanted: Vec<String> = std::env::args().skip(1).filter(|argument| !argument.starts_with('-')).collect();
    println!("threads: {}", rayon::current_num_threads());
    for name in ["hull-gantry", "glass-table", "panel-drilling", "tray-loader", "impossible"] {
        if !wanted.is_empty() && !wanted.iter().any(|wanted| name.contains(wanted.as_str())) {
            continue;
        }
        let inputs = inputs(name);
        let record = recommend(&inputs, false);
        let setting = setting(&inputs, &inputs.brief);
        for (index, axis) in record.axes.iter().enumerate() {
            let carried = axis.carried_mass.census();
            let best = |family: Option<&str>, guesses: &[Found]| {
                best_on(&inputs.brief, index, carried, &setting, family, guesses)
            };
            let guesses: Vec<Found> = best(None, &[]).into_iter().collect();
            let time = |runs: usize, family: Option<&str>, guesses: &[Found]| {
                least(runs, || {
                    std::hint::black_box(best(family, guesses));
                })
            };
            let (alone, guessed) = (time(7, None, &[]), time(7, None, &guesses));
            let families = FAMILIES.map(|family| format!("{family} {:.1}", time(5, Some(family), &[])));
            println!(
                "{name} {}: {alone:.1} ms, with the answer as a guess {guessed:.1} ms; each family alone: {}",
                axis.name,
                families.join(", ")
            );
        }
    }
}
