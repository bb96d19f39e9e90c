//! How long the best drive of one axis takes, family by family: the unit of turning points, crossovers and of an answer while one types.
//!
//! Run by `cargo bench --bench best [-- NAME]`; prints times, asserts nothing. Numbers of one machine mean little, ratios more.

mod common;

use axiswright::drive::FAMILIES;
use axiswright::pipeline::recommend;
use axiswright::search::{Found, best_on};
use common::{inputs, least, setting};

/// The least time of some runs, ms.
fn milliseconds(runs: usize, work: impl FnMut()) -> f64 {
    least(runs, work).as_secs_f64() * 1e3
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
                milliseconds(runs, || {
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
