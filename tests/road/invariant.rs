//! What must not change the answer, and what may change it one way only.
//!
//! Every property is derived here, no source.

use crate::ask::{Ask, ask, search};
use crate::small::{self, HORIZONTAL, MACHINE, VERTICAL};
use axiswright::catalog::{self, Catalog};
use axiswright::characteristic as ch;
use axiswright::drive::FAMILIES;
use axiswright::ledger::Figures;
use axiswright::pipeline::{Inputs, recommend};
use axiswright::record::{DecisionRecord, Outcome};
use axiswright::search::{Found, Path, work_out};
use axiswright::units::{Dimension, Measure, Money};
use proptest::prelude::*;
use std::collections::BTreeMap;

/// Census and best drives of every family.
fn found(inputs: &Inputs) -> Vec<(&'static str, u64, Vec<u64>, Vec<Found>)> {
    let searched = search(inputs);
    searched.into_iter().map(|(id, _, walk)| (id, walk.census.admissible, walk.census.excluded, walk.best)).collect()
}

fn with_duty(ask: &Ask, duty: Vec<(f64, f64, bool, f64)>) -> Inputs {
    Ask { duty, ..ask.clone() }.inputs()
}

proptest! {
    #![proptest_config(small::cases(6))]

    #[test]
    fn a_level_axis_seen_from_the_other_side_is_the_same(ask in ask()) {
        let seen = |cutting, direction| found(&Ask { cutting, direction, ..ask.clone() }.inputs());
        let forward = seen("forward", "horizontal");
        let back = seen("back", "horizontal");
        for (forward, back) in forward.iter().zip(&back) {
            assert_eq!((forward.0, forward.1, &forward.2), (back.0, back.1, &back.2));
            for (forward, back) in forward.3.iter().zip(&back.3) {
                assert_eq!(forward.path, back.path);
                let (forward, back) = (forward.attributes.merit, back.attributes.merit);
                assert!((forward - back).abs() <= 1e-12 * forward, "{forward}, {back}");
            }
        }
        assert_eq!(seen("both", "horizontal"), seen("both", "0 deg"));
        assert_eq!(seen("up", "vertical"), seen("up", "90 deg"));
    }

    #[test]
    fn a_share_of_the_duty_written_as_two_is_the_same(ask in ask(), part in 0.2..0.8_f64) {
        let whole = ask.inputs();
        let mut duty = ask.duty.clone();
        let (share, speed, cuts, stroke) = duty[0];
        duty[0].0 = share * part;
        // last, so that the order of shares is tried as well
        duty.push((share - share * part, speed, cuts, stroke));
        let split = with_duty(&ask, duty);
        for ((id, stages, walk), seed) in search(&whole).iter().zip([3_u16, 5, 8]) {
            let random = small::path_of(stages, &[seed; 12]);
            let best = walk.best.first().map(|found| found.path);
            for path in best.iter().chain([&random]) {
                assert_same_sheet(id, path, &whole, &split);
            }
        }
    }
}

/// The same figures within 1e-9, apart from those of single phases.
fn assert_same_sheet(family: &str, path: &Path, one: &Inputs, other: &Inputs) {
    let sheet = |inputs: &Inputs| {
        let (demand, setting) = (small::demand(inputs, 0), small::setting(inputs));
        work_out(family, path, &demand, &setting).expect("the configuration exists").sheet
    };
    let (one, other) = (sheet(one), sheet(other));
    for line in one.lines.iter().filter(|line| ch::about(line.slot).1.is_none()) {
        let (a, b) = (line.value, other.value(line.slot));
        assert!((a - b).abs() <= 1e-9 * a.abs() || a.to_bits() == b.to_bits(), "{}: {a}, {b}", ch::id(line.slot));
    }
}

/// Nearly level: the same motors are offered as on a vertical axis, since brakes are for axes that can fall.
#[test]
fn laying_a_vertical_axis_nearly_level_takes_load_off_motor_and_brake() {
    let level = small::inputs(&VERTICAL.replace("direction: vertical", "direction: 0.001 deg"));
    let upright = small::inputs(VERTICAL);
    let mut seen = 0;
    for ((id, stages, walk), (_, level_stages, _)) in search(&upright).iter().zip(search(&level)) {
        assert_eq!(*stages, level_stages);
        for path in walk.best.iter().map(|found| found.path) {
            let judged = |inputs: &Inputs| -> BTreeMap<String, f64> {
                let (demand, setting) = (small::demand(inputs, 0), small::setting(inputs));
                let worked = work_out(id, &path, &demand, &setting).expect("the configuration exists");
                worked.judged.iter().map(|judged| (judged.rule.id.clone(), judged.utilisation)).collect()
            };
            let (level, upright) = (judged(&level), judged(&upright));
            for rule in ["motor-heating", "motor-peak"] {
                assert!(level[rule] <= upright[rule], "{id} {path:?}: {rule} {} {}", level[rule], upright[rule]);
            }
            assert!(level["holding-brake"] < 1e-4 * upright["holding-brake"], "{id} {path:?}");
            seen += 1;
        }
    }
    assert_eq!(seen, 12 * FAMILIES.len(), "the best twelve of each family");
}

fn parts(record: &DecisionRecord, axis: usize) -> Vec<String> {
    let chosen = record.axes[axis].chosen.as_ref().expect("a drive");
    std::iter::once(chosen.family.clone())
        .chain(chosen.components.iter().map(|part| part.designation.clone()))
        .collect()
}

fn cost(record: &DecisionRecord) -> f64 {
    assert_eq!(record.outcome, Outcome::Chosen);
    record.machine.solver.objective.expect("a chosen machine")
}

#[test]
fn parts_that_the_best_drive_does_not_use_can_leave_the_catalogue() {
    for text in [HORIZONTAL, VERTICAL] {
        let mut inputs = small::inputs(text);
        let first = recommend(&inputs, false);
        let used = parts(&first, 0);
        let keep = |designation: &String, place: usize| used.contains(designation) || place.is_multiple_of(2);
        macro_rules! thin {
            ($($list:ident)*) => {$(
                let mut place = 0;
                inputs.catalog.$list.retain(|part| {
                    place += 1;
                    keep(&part.designation, place)
                });
            )*};
        }
        thin!(ball_screws screw_grades preload_classes screw_bearings nut_units screw_reductions gearboxes servo_motors pinions);
        let fewer = recommend(&inputs, false);
        assert_eq!(parts(&fewer, 0), used);
        assert_eq!(cost(&fewer).to_bits(), cost(&first).to_bits());
        // without a part that it uses, the best of the rest costs no less
        for taken in &used[1..] {
            let mut without = inputs.clone();
            without.catalog.ball_screws.retain(|part| part.designation != *taken);
            without.catalog.servo_motors.retain(|part| part.designation != *taken);
            without.catalog.gearboxes.retain(|part| part.designation != *taken);
            let record = recommend(&without, false);
            assert!(record.outcome != Outcome::Chosen || cost(&record) >= cost(&first), "{text} without {taken}");
        }
    }
}

#[test]
fn of_two_equal_parts_the_one_that_sorts_first_is_taken() {
    let mut inputs = small::inputs(HORIZONTAL);
    let first = recommend(&inputs, false);
    let copies: Vec<_> = inputs.catalog.servo_motors.to_vec();
    inputs.catalog.servo_motors.extend(copies.into_iter().map(|mut motor| {
        motor.designation += "-copy";
        motor
    }));
    inputs.catalog.servo_motors.sort_by(|a, b| a.designation.cmp(&b.designation));
    let again = recommend(&inputs, false);
    assert_eq!(parts(&again, 0), parts(&first, 0));
    assert_eq!(cost(&again).to_bits(), cost(&first).to_bits());
}

/// The small catalogue with every price in a currency worth a quarter.
fn dearer() -> Catalog {
    let mut files = catalog::built_in();
    for (_, text) in &mut files {
        let mut document: serde_json::Value = serde_yaml::from_str(text).expect("the built-in files are YAML");
        let kind = catalog::KINDS.iter().find(|kind| document["kind"] == kind.name).expect("a kind of part");
        let prices = kind.fields.iter().filter(|field| field.dimension == Some(Dimension::Money));
        let keys: Vec<String> = prices.map(catalog::Field::key).collect();
        for entry in document["entries"].as_array_mut().expect("entries") {
            for key in &keys {
                if let Some(price) = entry.get_mut(key) {
                    *price = (price.as_f64().expect("a price is a number") * 4.0).into();
                }
            }
        }
        *text = serde_yaml::to_string(&document).expect("YAML again");
    }
    small::cut(catalog::load_texts(files).expect("dearer files load"))
}

#[test]
fn another_currency_ranks_the_same() {
    for text in [HORIZONTAL, VERTICAL] {
        let inputs = small::inputs(text);
        let mut other = inputs.clone();
        other.catalog = dearer();
        other.brief.energy_price.value = Money(inputs.brief.energy_price.value.si() * 4.0);
        other.brief.downtime_cost.value = Money(inputs.brief.downtime_cost.value.si() * 4.0);
        for (cheap, dear) in found(&inputs).iter().zip(&found(&other)) {
            assert_eq!((cheap.0, cheap.1, &cheap.2), (dear.0, dear.1, &dear.2));
            for (cheap, dear) in cheap.3.iter().zip(&dear.3) {
                assert_eq!(cheap.path, dear.path);
                // a factor of four loses no bit
                assert_eq!((cheap.attributes.merit * 4.0).to_bits(), dear.attributes.merit.to_bits());
            }
        }
    }
}

#[test]
fn only_the_ratios_of_weights_count_and_a_weight_alone_wins_its_own_figure() {
    let with = |weights: &str| recommend(&small::inputs(&format!("prefer: {weights}{HORIZONTAL}")), false);
    let one = with("{ whole-life-cost: 3, accuracy: 2, stiffness: 1, upkeep: 1 }");
    let other = with("{ whole-life-cost: 12, accuracy: 8, stiffness: 4, upkeep: 4 }");
    assert_eq!(value_of(&one.axes), value_of(&other.axes));
    assert_eq!(one.machine, other.machine);
    let figure = |record: &DecisionRecord, id: &str| record.axes[0].chosen.as_ref().expect("a drive").value(id);
    let (stiff, exact) = (with("{ stiffness: 1 }"), with("{ accuracy: 1 }"));
    // of two pinions both hold the drive
    let stiffness = |record| figure(record, "both-pinions-stiffness").or(figure(record, "total-stiffness"));
    for record in [&one, &exact] {
        assert!(stiffness(&stiff) >= stiffness(record));
    }
    // advice that is not followed counts by its share
    let counted = |record: &DecisionRecord| {
        let drive = record.axes[0].chosen.as_ref().expect("a drive");
        drive.value("tool-error").expect("a tool error") * (1.0 + drive.unmet_advice)
    };
    for record in [&one, &stiff] {
        assert!(counted(&exact) <= counted(record));
    }
}

fn value_of(of: &impl serde::Serialize) -> serde_json::Value {
    serde_json::to_value(of).expect("a part of a record is JSON")
}

#[test]
fn axes_that_share_nothing_cost_together_what_they_cost_alone() {
    let (horizontal, vertical) = (small::inputs(HORIZONTAL), small::inputs(VERTICAL));
    let begin = VERTICAL.find("  ram:").expect("the ram");
    let both = small::inputs(&format!("{}{}", HORIZONTAL, &VERTICAL[begin..]));
    let (one, other, both) = (recommend(&horizontal, false), recommend(&vertical, false), recommend(&both, false));
    assert_eq!((parts(&both, 0), parts(&both, 1)), (parts(&one, 0), parts(&other, 0)));
    assert!((cost(&both) - cost(&one) - cost(&other)).abs() <= 1e-12 * cost(&both));
}

#[test]
fn a_looser_limit_of_the_machine_never_costs_more() {
    let at = |loose: f64, models: u32| {
        let mut inputs = small::inputs(MACHINE);
        let limits = &mut inputs.brief.limits;
        limits.tool_point_error = limits.tool_point_error.map(|limit| limit * loose);
        limits.purchase = limits.purchase.map(|limit| Money(limit.0 * loose));
        (limits.motor_models, limits.gearbox_models) = (Some(models), Some(models));
        let record = recommend(&inputs, false);
        if record.outcome == Outcome::Chosen { cost(&record) } else { f64::INFINITY }
    };
    let mut tight = at(0.7, 1);
    for (loose, models) in [(0.85, 1), (1.0, 1), (1.0, 2), (1.3, 2), (1.3, 3)] {
        let cost = at(loose, models);
        assert!(cost <= tight * (1.0 + 1e-12), "{cost} with {loose} and {models} models, {tight} before");
        tight = cost;
    }
    assert!(tight.is_finite());
}
