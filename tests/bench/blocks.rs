//! How many configurations a second the last two stages take with nothing pruned, in blocks and one by one.
//!
//! Run by `cargo bench --bench blocks`; prints rates, asserts nothing. One drive that passes is searched with many copies of its
//! motor, of scales and of tables of corrections, each a little dearer
//! and no better, so that all configurations come to the last stage and few could be chosen.
//! `tests/peer/screws_last_stage.py` measures the same stages of a ball screw in another language.

mod common;

use axiswright::catalog::{Catalog, ServoMotor};
use axiswright::drive::Demand;
use axiswright::search::{CarriedRange, Setting, best_on, search_axis, work_out};
use axiswright::units::{Mass, Measure};
use common::{inputs, least, setting};

/// How many sizes, motors, scales and tables there are.
const COPIES: [usize; 4] = [4, 64, 60, 60];

/// Keeps the parts that are named, so many of each; each is a little other than the one before.
fn copies<T: Clone>(list: &mut Vec<T>, keep: impl Fn(&T) -> bool, many: usize, mut vary: impl FnMut(&mut T, f64)) {
    list.retain(keep);
    list.truncate(1);
    let first = list.clone();
    for copy in 1..many {
        for mut part in first.iter().cloned() {
            vary(&mut part, 1.0 + 0.001 * copy as f64);
            list.push(part);
        }
    }
}

/// The catalogue with the parts of one drive alone, and many of those that the last stages and the one before choose among.
fn copied(catalog: &Catalog, parts: &[String]) -> Catalog {
    let mut few = catalog.clone();
    let [sizes, motors, scales, tables] = COPIES;
    macro_rules! keep {
        ($($list:ident $many:expr),*) => { $(
            copies(&mut few.$list, |part| parts.contains(&part.designation), $many, |_, _| {});
        )* };
    }
    keep!(ball_screws sizes, screw_grades 1, preload_classes 1, screw_bearings 1, end_arrangements 1, screw_reductions 1);
    keep!(racks sizes, rack_grades 1, pinions 1, gearboxes 1);
    let named = |motor: &ServoMotor| parts.contains(&motor.designation);
    copies(&mut few.servo_motors, named, motors, |motor, more| motor.price.0 *= more);
    few.screw_supports.truncate(1);
    copies(
        &mut few.linear_scales,
        |_| true,
        scales - 1,
        |scale, more| {
            scale.error_per_metre *= more;
            scale.price_fixed.0 *= more;
        },
    );
    copies(
        &mut few.error_tables,
        |_| true,
        tables - 1,
        |table, more| {
            table.residual_share *= more;
            table.price_fixed.0 *= more;
        },
    );
    few
}

fn main() {
    let mut few = inputs("tray-loader");
    let inputs = inputs("tray-loader");
    let demand = Demand::new(&inputs.brief, 0, Mass::of_si(0.0));
    let whole = setting(&inputs, &inputs.brief);
    for family in ["ball-screw", "helical-rack"] {
        let Some(found) = best_on(&inputs.brief, 0, 0.0, &whole, Some(family), &[]) else { continue };
        let Some(worked) = work_out(family, &found.path, &demand, &whole) else { continue };
        let parts: Vec<String> = worked.parts.iter().map(|part| part.designation.clone()).collect();
        few.catalog = copied(&inputs.catalog, &parts);
        few.brief.axes[0].families = Some(vec![family.into()]);
        for threads in [1, 2] {
            let pool = rayon::ThreadPoolBuilder::new().num_threads(threads).build().expect("threads");
            let rate = |exhaustive: bool| {
                let setting = Setting { exhaustive, ..setting(&few, &few.brief) };
                let mut census = (0, 0);
                let time = least(5, || {
                    let search = pool.install(|| search_axis(&few.brief, 0, CarriedRange::exactly(0.0), &setting));
                    census = search.families.iter().fold((0, 0), |sum, searched| {
                        let of_family = &searched.walk.census;
                        (sum.0 + of_family.configurations, sum.1 + of_family.admissible)
                    });
                });
                (census, census.0 as f64 / time.as_secs_f64())
            };
            let ((configurations, admissible), blocks) = rate(false);
            let (_, one_by_one) = rate(true);
            println!(
                "last two stages of a {family}, {configurations} configurations of which {admissible} pass, {threads} threads: \
                 {blocks:.2e} a second in blocks, {one_by_one:.2e} one by one"
            );
        }
    }
}
