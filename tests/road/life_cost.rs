//! What a drive costs over its life: sums of its lines, exchanges year by year, and cases worked out by hand.
//!
//! The rule is that of engineering economy: every payment counts at its present value, (1 + r)^−t years ahead, a yearly one at
//! the end of each year (compound interest tables, see the reference tests).

use crate::small::{self, HORIZONTAL};
use axiswright::pipeline::recommend;
use axiswright::record::{AxisRecord, CandidateRecord, CostCase, DecisionRecord};

fn of_kind(drive: &CandidateRecord, kind: &str) -> f64 {
    drive.cost.lines.iter().filter(|line| line.kind == kind).map(|line| line.amount).sum()
}

fn near(what: &str, found: f64, expected: f64) {
    assert!((found - expected).abs() <= 1e-9 * expected.abs().max(1.0), "{what}: {found} against {expected}");
}

/// Present value of one unit at the end of each of these years.
fn yearly(rate: f64, years: i32) -> f64 {
    (1..=years).map(|year| (1.0 + rate).powi(-year)).sum()
}

fn axis(text: &str) -> AxisRecord {
    let record: DecisionRecord = recommend(&small::inputs(text), false);
    record.axes.into_iter().next().expect("an axis")
}

/// The small horizontal axis on driven nuts, whose belts last 15 000 h of the 48 000 h of service.
fn belted(brief: &str) -> AxisRecord {
    axis(&format!("hours-per-year: 6000\nyears-in-service: 8\n{brief}{HORIZONTAL}    families: driven-nut\n"))
}

#[test]
fn every_cost_is_the_sum_of_its_lines() {
    let axis = axis(HORIZONTAL);
    let best = axis.families.iter().filter_map(|family| family.best.as_ref());
    for drive in best.chain(&axis.chosen) {
        near("purchase", drive.cost.purchase, of_kind(drive, "purchase"));
        let over_life = of_kind(drive, "yearly") * yearly(0.06, 10) + of_kind(drive, "exchange");
        near("whole life", drive.cost.whole_life, drive.cost.purchase + over_life);
        for item in ["covers and wipers", "machining of datums", "fitting and alignment"] {
            assert!(drive.cost.lines.iter().any(|line| line.item == item && line.amount > 0.0), "{item}");
        }
    }
}

#[test]
fn a_belt_is_exchanged_whenever_its_life_has_passed() {
    let axis = belted("discount-rate: 5 %\ndowntime-cost: 80\n");
    let drive = axis.chosen.as_ref().expect("a drive");
    let value = |id: &str| drive.value(id).expect(id);
    // after 2.5, 5 and 7.5 years
    let payments: f64 = [2.5, 5.0, 7.5].iter().map(|years| 1.05_f64.powf(-years)).sum();
    let once = value("reduction-price")
        + value("reduction-exchange-work") * value("labour-rate")
        + value("reduction-exchange-standstill") * 80.0;
    let belts = drive.cost.lines.iter().find(|line| line.item == "exchange of belts").expect("the belts");
    near("belts", belts.amount, payments * once);
    // nut and bearings last, or the drive would not be admissible
    near("all exchanges", of_kind(drive, "exchange"), belts.amount);
}

#[test]
fn a_price_that_is_not_known_leaves_the_cost_unknown_and_the_drive_out() {
    let mut inputs = small::inputs(&format!("{HORIZONTAL}    families: driven-nut\n"));
    for exchange in &mut inputs.catalog.exchanges {
        if exchange.of == "belt" {
            exchange.life = None;
        }
    }
    let record = recommend(&inputs, false);
    let best = record.axes[0].families[0].best.as_ref().expect("all rules are kept");
    assert!(best.cost.whole_life.is_nan() && best.merit.is_infinite(), "{} {}", best.cost.whole_life, best.merit);
}

#[test]
fn cases_of_hours_and_rate_come_out_by_hand() {
    let axis = belted("discount-rate: 5 %\n");
    let drive = axis.chosen.as_ref().expect("a drive");
    let case = |key: &str, value: Option<f64>| -> &CostCase {
        let same = |case: &&CostCase| case.key == key && case.value == value;
        axis.cost_cases.iter().find(same).expect("the case")
    };
    let now = case("", None);
    near("now", now.drives[0].whole_life, drive.cost.whole_life);
    assert!(now.drives[0].fails.is_empty());
    let once = drive.value("reduction-exchange-price").expect("the price of an exchange");
    let (bought, each_year) = (drive.cost.purchase, of_kind(drive, "yearly"));
    // without discount three exchanges and eight years count in full
    near("rate 0", case("discount-rate", Some(0.0)).drives[0].whole_life, bought + 8.0 * each_year + 3.0 * once);
    let double: f64 = [2.5, 5.0, 7.5].iter().map(|years| 1.1_f64.powf(-years)).sum();
    let expected = bought + yearly(0.1, 8) * each_year + double * once;
    near("rate 10 %", case("discount-rate", Some(10.0)).drives[0].whole_life, expected);
    // half the hours: half the energy, the same upkeep, one exchange after five years
    let energy = drive.cost.lines.iter().find(|line| line.item == "energy a year").expect("energy").amount;
    let half = case("hours-per-year", Some(3000.0));
    let expected = bought + yearly(0.05, 8) * (each_year - 0.5 * energy) + 1.05_f64.powi(-5) * once;
    near("half the hours", half.drives[0].whole_life, expected);
    // more hours than the year has are not asked
    assert_eq!(axis.cost_cases.len(), 5);
    assert_eq!(axis.cost_cases[2].value, Some(8784.0));
}

#[test]
fn the_best_of_every_other_kind_stands_beside_the_drive_chosen() {
    let axis = axis(HORIZONTAL);
    let chosen = &axis.chosen.as_ref().expect("a drive").family;
    let others = axis.families.iter().filter(|family| family.best.is_some() && family.family != *chosen);
    let expected: Vec<&str> =
        std::iter::once(chosen.as_str()).chain(others.map(|family| family.family.as_str())).collect();
    for case in &axis.cost_cases {
        let families: Vec<&str> = case.drives.iter().map(|drive| drive.family.as_str()).collect();
        assert_eq!(families, expected);
    }
    for (drive, family) in axis.cost_cases[0].drives.iter().zip(&expected) {
        let best = axis.families.iter().find(|other| other.family == *family).and_then(|other| other.best.as_ref());
        near(family, drive.whole_life, best.expect("a best").cost.whole_life);
    }
}
