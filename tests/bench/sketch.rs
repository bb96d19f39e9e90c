//! How long the quick looks of the page take, with what is shown of them: nothing remembered, one axis changed, the same again,
//! against the whole answer.

use axiswright::pipeline::{Inputs, Look, Memory, load, recommend, sketch};
use axiswright::report::{Shown, live};
use axiswright::search::Stop;
use axiswright::units::{Mass, Measure, UnitSystem};
use std::path::PathBuf;
use std::time::Instant;

fn timed<T>(work: impl FnOnce() -> T) -> f64 {
    let begin = Instant::now();
    std::hint::black_box(work());
    begin.elapsed().as_secs_f64() * 1e3
}

fn main() {
    println!("milliseconds       nothing remembered      one axis heavier        the same again   whole over first");
    println!("example            first  each family      first  each family          each family");
    for name in ["hull-gantry", "glass-table", "panel-drilling", "tray-loader", "impossible"] {
        let inputs = match load(&PathBuf::from(format!("docs/examples/{name}.yaml")), &[], &[]) {
            Ok(inputs) => inputs,
            Err(faults) => return println!("{faults}"),
        };
        let (memory, stop) = (Memory::default(), Stop::default());
        let shown = |inputs: &Inputs, look: Look| {
            let words = if look == Look::Best { Shown::Winners } else { Shown::Families };
            timed(|| sketch(inputs, &memory, look, &stop).map(|record| live(&record, UnitSystem::Metric, words)))
        };
        let (first, each) = (shown(&inputs, Look::Best), shown(&inputs, Look::EachFamily));
        let mut heavier = inputs.clone();
        let axis = &mut heavier.brief.axes[0];
        axis.moved_mass = Mass::of_si(axis.moved_mass.si() * 1.01);
        let (changed, each_changed) = (shown(&heavier, Look::Best), shown(&heavier, Look::EachFamily));
        let again = shown(&heavier, Look::EachFamily);
        let whole = timed(|| recommend(&inputs, false));
        println!(
            "{name:15} {first:8.0} {each:12.0} {changed:10.0} {each_changed:12.0} {again:20.0} {:18.1}",
            whole / first
        );
    }
}
