//! How long the quick look of the page takes: nothing remembered, one axis changed, the same again, against the whole answer.

use axiswright::pipeline::{Memory, load, recommend, sketch};
use axiswright::search::Stop;
use axiswright::units::{Mass, Measure};
use std::path::PathBuf;
use std::time::{Duration, Instant};

fn timed<T>(work: impl FnOnce() -> T) -> Duration {
    let begin = Instant::now();
    std::hint::black_box(work());
    begin.elapsed()
}

fn main() {
    println!("example          first look   one axis heavier   the same again   whole answer over first look");
    for name in ["hull-gantry", "glass-table", "panel-drilling", "tray-loader", "impossible"] {
        let inputs = match load(&PathBuf::from(format!("docs/examples/{name}.yaml")), &[], &[]) {
            Ok(inputs) => inputs,
            Err(faults) => return println!("{faults}"),
        };
        let (memory, stop) = (Memory::default(), Stop::default());
        let first = timed(|| sketch(&inputs, &memory, &stop));
        let mut heavier = inputs.clone();
        let axis = &mut heavier.brief.axes[0];
        axis.moved_mass = Mass::of_si(axis.moved_mass.si() * 1.01);
        let changed = timed(|| sketch(&heavier, &memory, &stop));
        let again = timed(|| sketch(&heavier, &memory, &stop));
        let whole = timed(|| recommend(&inputs, false));
        println!(
            "{name:15} {:8.0} ms {:15.0} ms {:13.0} ms {:10.1}",
            first.as_secs_f64() * 1e3,
            changed.as_secs_f64() * 1e3,
            again.as_secs_f64() * 1e3,
            whole.as_secs_f64() / first.as_secs_f64()
        );
    }
}
