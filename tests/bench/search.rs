//! How long the search takes on the examples: the whole recommendation, and the best drive of one axis alone.
//!
//! Run by `cargo bench --bench search`; prints times and ratios, asserts nothing. Numbers of one machine mean little, ratios more.

use axiswright::brief::Brief;
use axiswright::drive::{Demand, Family, Merit, WithFamily, with_family};
use axiswright::ledger::Known;
use axiswright::pipeline::{Inputs, load, recommend};
use axiswright::search::{Attributes, Coupling, Found, Plan, Setting, best_on, walk};
use axiswright::units::{Mass, Measure, Money};
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

/// The last two stages of a ball screw, feedback and table, with their rules and the merit, over and over on one thread with nothing
/// pruned: what `tests/peer/screws_last_stage.py` measures in another language.
fn last_stages() {
    struct Stages<'s> {
        demand: &'s Demand<'s>,
        setting: Setting<'s>,
        found: &'s Found,
    }
    impl WithFamily for Stages<'_> {
        type Output = (u64, Duration);
        fn with<F: Family>(self, family: &F) -> Self::Output {
            let plan = Plan::new(family, self.demand, &self.setting);
            let (mut path, mut sheet) = (self.found.path, Known::default());
            self.demand.enter(&mut sheet);
            for &stage in &plan.order {
                family.enter(stage, &path, &mut sheet);
            }
            let (measured, corrected) = (plan.order.len() - 2, plan.order.len() - 1);
            let mut entered = 0;
            let mut kept = 0.0;
            let time = least(3, || {
                entered = 0;
                for _ in 0..50_000 {
                    for scale in 0..plan.stages[measured] {
                        path[plan.order[measured]] = scale as u16;
                        family.enter(plan.order[measured], &path, &mut sheet);
                        let failed = plan.first_failed(measured, &sheet).is_some();
                        for table in 0..plan.stages[corrected] {
                            path[plan.order[corrected]] = table as u16;
                            family.enter(plan.order[corrected], &path, &mut sheet);
                            let passes = !failed && plan.first_failed(corrected, &sheet).is_none();
                            kept += if passes { Attributes::plain(&sheet, &self.setting.merit).merit } else { 0.0 };
                            entered += 1;
                        }
                    }
                }
            });
            std::hint::black_box(kept);
            (entered, time)
        }
    }
    let inputs = inputs("tray-loader");
    let setting = setting(&inputs, &inputs.brief);
    let Some(found) = best_on(&inputs.brief, 0, 0.0, &setting, Some("ball-screw"), &[]) else { return };
    let demand = Demand::new(&inputs.brief, 0, Mass::of_si(0.0));
    let stages = Stages { demand: &demand, setting, found: &found };
    if let Some((entered, time)) = with_family("ball-screw", &demand, &inputs.catalog, stages) {
        println!(
            "feedback and table of a ball screw: {:.2e} a second on one thread",
            entered as f64 / time.as_secs_f64()
        );
    }
}

/// Ten times the motors, gearboxes and screw sizes: invented variations, each a little dearer and heavier to turn.
fn ten_times() {
    let inputs = inputs("tray-loader");
    let mut more = self::inputs("tray-loader");
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
    last_stages();
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
