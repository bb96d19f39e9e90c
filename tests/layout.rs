//! The formulas that join the parts of a drive, each held against a value worked out by hand.
//!
//! All are sums, products and ratios, so no published table is needed; the working stands beside each line.
//! Tolerance: half the last digit written.

use axiswright::formula::layout::*;
use axiswright::units::{Measure, parse, print_rounded};

fn q<Q: Measure>(text: &str) -> Q {
    parse(text).unwrap_or_else(|error| panic!("{error}"))
}

/// Holds a result against a value written with all the digits that count.
fn gives<Q: Measure>(found: Q, written: &str) {
    let number = written.split(' ').next().expect("a number stands first");
    let decimals = number.split('.').nth(1).map_or(0, str::len);
    let one: Q = q(&written.replacen(number, "1", 1));
    let tolerance = 0.5 * 10f64.powi(-(decimals as i32)) * one.si();
    let wanted: Q = q(written);
    let unit = Q::DIMENSION.units().next().expect("every dimension has a unit");
    assert!(
        (found.si() - wanted.si()).abs() <= tolerance * (1.0 + 1e-9),
        "{} in place of {written}",
        print_rounded(found.si(), unit, 8)
    );
}

#[test]
fn masses_add_up_over_all_drives() {
    // 2·(1.3 + 0.7)
    gives((RIDING_NUTS.apply)(q("1.3 kg"), q("0.7 kg"), q("2")), "4.0 kg");
    // 2·(10 + 8 + 1)
    gives((RIDING_UNITS.apply)(q("10 kg"), q("8 kg"), q("1 kg"), q("2")), "38.0 kg");
    // 2·(12 + 1.3 + 0.7 + 2·2 + 0.5 + 10) = 2·28.5
    let screw = (SCREW_DRIVE_MASS.apply)(
        q("12 kg"),
        q("1.3 kg"),
        q("0.7 kg"),
        q("2 kg"),
        q("2"),
        q("0.5 kg"),
        q("10 kg"),
        q("2"),
    );
    gives(screw, "57.0 kg");
    // 2·(10 + 4 + 1 + 7 + 1)
    let riding = (RIDING_NUT_DRIVES.apply)(q("10 kg"), q("4 kg"), q("1 kg"), q("7 kg"), q("1 kg"), q("2"));
    gives(riding, "46.0 kg");
    // 2·60 + 38
    gives((RIDING_DRIVE_MASS.apply)(q("60 kg"), q("38 kg"), q("2")), "158.0 kg");
}

#[test]
fn lengths_add_and_the_lesser_one_counts() {
    gives((JOURNAL_LENGTH.apply)(q("40 mm")), "160.0 mm");
    // 60·32 = 1920 below the blank of 12 m; 60·250 = 15 000 above it
    gives((LENGTH_LIMIT.apply)(q("32 mm"), q("60"), q("12 m")), "1920 mm");
    gives((LENGTH_LIMIT.apply)(q("250 mm"), q("60"), q("12 m")), "12000 mm");
    gives((LESSER_LENGTH.apply)(q("11 m"), q("2 m")), "2.000 m");
    gives((LESSER_LENGTH.apply)(q("0.8 m"), q("2 m")), "0.800 m");
    gives((NUT_UNIT_MISFIT.apply)(q("40 mm"), q("32 mm")), "8.0 mm");
    gives((NUT_UNIT_MISFIT.apply)(q("32 mm"), q("40 mm")), "8.0 mm");
    gives((LENGTH_SUM.apply)(q("30 µm"), q("18 µm")), "48.0 µm");
    // 10 mm/2^20 = 10e6/1 048 576 nm; a ratio of 5 makes it a fifth
    gives((ENCODER_STEP.apply)(q("10 mm"), q("1048576"), q("1")), "9.537 nm");
    gives((ENCODER_STEP.apply)(q("10 mm"), q("1048576"), q("5")), "1.907 nm");
}

#[test]
fn one_drive_takes_the_whole_cutting_force_and_two_share_it_by_levers() {
    gives((CUTTING_SHARE.apply)(q("1"), q("0.3")), "1.00");
    gives((CUTTING_SHARE.apply)(q("2"), q("0.3")), "0.80");
    gives((CUTTING_SHARE.apply)(q("2"), q("0")), "0.50");
    gives((CUTTING_SHARE.apply)(q("2"), q("0.6")), "1.00");
    gives((SHARED_FORCE.apply)(q("900 N"), q("0.8")), "720.0 N");
    gives((PRODUCT.apply)(q("0.95"), q("0.97")), "0.9215");
}

#[test]
fn torques_of_shafts_balance() {
    gives((SETS_DRAG.apply)(q("0.3 Nm"), q("2")), "0.60 Nm");
    gives((TORQUE_SUM.apply)(q("0.8 Nm"), q("0.3 Nm")), "1.10 Nm");
    // radius 10 mm/2π = 1.59155 mm: 5000·0.00159155/0.95 = 8.3766; 25.6e-4·5/0.00159155 = 8.0425; drag 1
    let shaft = (SHAFT_TORQUE.apply)(q("5 kN"), q("10 mm"), q("0.95"), q("1 Nm"), q("25.6 kg·cm²"), q("5 m/s²"));
    gives(shaft, "17.419 Nm");
    // 5000·0.2/2π = 159.155; over 0.985: 161.579
    gives((FORCE_TORQUE.apply)(q("5 kN"), q("200 mm"), q("1")), "159.155 Nm");
    gives((FORCE_TORQUE.apply)(q("5 kN"), q("200 mm"), q("0.985")), "161.579 Nm");
    gives((TEMPERATURE_SUM.apply)(q("5 K"), q("3 K")), "8.0 K");
}
