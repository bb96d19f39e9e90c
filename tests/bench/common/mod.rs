//! What the benches of the search share: the examples, how they are searched, and the least time of some runs.

use axiswright::brief::Brief;
use axiswright::drive::Merit;
use axiswright::pipeline::{Inputs, load};
use axiswright::search::{Coupling, Setting};
use std::path::Path;
use std::time::{Duration, Instant};

/// An example with the built-in catalogue and rules.
pub fn inputs(name: &str) -> Inputs {
    let path = format!("{}/docs/examples/{name}.yaml", env!("CARGO_MANIFEST_DIR"));
    load(Path::new(&path), &[], &[]).unwrap_or_else(|_| panic!("{path} cannot be read"))
}

/// How an axis of this brief is searched where no limit of the machine joins.
pub fn setting<'a>(inputs: &'a Inputs, brief: &Brief) -> Setting<'a> {
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

/// The least time of some runs.
pub fn least(runs: usize, mut work: impl FnMut()) -> Duration {
    let time = |work: &mut dyn FnMut()| {
        let begin = Instant::now();
        work();
        begin.elapsed()
    };
    (0..runs).map(|_| time(&mut work)).min().unwrap_or_default()
}
