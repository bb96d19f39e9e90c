//! Pitch tolerances of gears.
//!
//! ISO 1328-1:2013, formulas (5) for f_pT and (6) for F_pT, as reproduced in several public programs, worked by
//! hand for two pinions. Rounding: rule from memory of the standard; 8.94 → 9.0 is for module 3 mm, 40 teeth, class
//! 6, as reproduced in a public program; 5.86 → 6.0 and 18.9 → 19 are printed in ISO 1328-1:1995 for a diameter of
//! 60 mm, module 3 mm, grade 5 (from memory).

use crate::{mm, near, ratio};
use axiswright::formula::gear_accuracy::{SINGLE_PITCH_DEVIATION, TOTAL_PITCH_DEVIATION, rounded_tolerance};
use axiswright::units::{Length, Measure};

/// Class, single and total pitch tolerance in µm for a diameter of 42.44 mm and module 2 mm.
const MODULE_2: [(f64, f64, f64); 4] = [(5.0, 5.8, 17.1), (6.0, 8.3, 24.1), (7.0, 11.7, 34.1), (8.0, 16.5, 48.3)];

#[test]
fn tolerances_of_a_module_2_pinion_follow_the_2013_formulas() {
    for (class, single, total) in MODULE_2 {
        let value = (SINGLE_PITCH_DEVIATION.apply)(mm(42.44), mm(2.0), ratio(class)).si() * 1e6;
        near(&format!("f_pT of class {class}"), value, single, 0.05);
        let value = (TOTAL_PITCH_DEVIATION.apply)(mm(42.44), mm(2.0), ratio(class)).si() * 1e6;
        near(&format!("F_pT of class {class}"), value, total, 0.05);
    }
}

#[test]
fn single_pitch_tolerance_of_a_module_3_gear_rounds_to_the_printed_one() {
    let value = (SINGLE_PITCH_DEVIATION.apply)(mm(120.0), mm(3.0), ratio(6.0));
    near("f_pT", value.si() * 1e6, 8.94, 0.005);
    near("f_pT rounded", rounded_tolerance(value).si() * 1e6, 9.0, 1e-9);
}

#[test]
fn one_class_is_a_step_of_the_root_of_two() {
    for class in 1..11 {
        let at = |class: i32| (TOTAL_PITCH_DEVIATION.apply)(mm(100.0), mm(5.0), ratio(f64::from(class))).si();
        assert!((at(class + 1) / at(class) - 2f64.sqrt()).abs() < 1e-12, "class {class}");
    }
}

#[test]
fn tolerances_are_rounded_as_the_standard_says() {
    let printed = [
        (8.94, 9.0),
        (5.86, 6.0),
        (18.9, 19.0),
        (4.96, 5.0),
        (4.94, 4.9),
        (5.24, 5.0),
        (5.26, 5.5),
        (10.4, 10.0),
        (10.6, 11.0),
    ];
    for (value, rounded) in printed {
        let result = rounded_tolerance(Length::of_si(value * 1e-6)).si() * 1e6;
        near(&format!("{value} µm"), result, rounded, 1e-9);
    }
}
