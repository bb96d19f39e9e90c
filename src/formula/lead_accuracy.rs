//! Lead accuracy of ball screws by grade: tolerance of the mean travel and variation over the travel.
//!
//! Method: tables of the positioning grades by ranges of travel; the mean travel tolerance equals the standard
//! tolerance IT of the same number. Transport grades follow from the variation within 300 mm. Limits: table
//! rows to 6.3 m; beyond, the IT formula and straight lines continue. All of it from memory of the standard.

use super::{Formula, Note};
use crate::source::Source;
use crate::units::{Length, Measure, Ratio};

const ISO: Source = Source::memory("ISO 3408-3:2006, tolerances of travel");
const IT: Source =
    Source::standard("ISO 286-1, standard tolerances IT1 to IT5 up to 3150 mm, as reproduced in public tables");

/// Upper end of each range of travel, mm.
const TO: [f64; 14] =
    [315.0, 400.0, 500.0, 630.0, 800.0, 1000.0, 1250.0, 1600.0, 2000.0, 2500.0, 3150.0, 4000.0, 5000.0, 6300.0];
/// Range ends beyond the tables, mm (R 10 series).
const BEYOND: [f64; 7] = [8000.0, 10_000.0, 12_500.0, 16_000.0, 20_000.0, 25_000.0, 31_500.0];
/// Tolerance of mean travel, µm, grades 1 to 5; zero where only the IT formula is known.
const MEAN: [[f64; 14]; 5] = [
    [6.0, 7.0, 8.0, 9.0, 10.0, 11.0, 13.0, 15.0, 18.0, 22.0, 26.0, 32.0, 39.0, 48.0],
    [8.0, 9.0, 10.0, 11.0, 13.0, 15.0, 18.0, 21.0, 25.0, 30.0, 36.0, 45.0, 0.0, 0.0],
    [12.0, 13.0, 15.0, 16.0, 18.0, 21.0, 24.0, 29.0, 35.0, 41.0, 50.0, 62.0, 76.0, 92.0],
    [16.0, 18.0, 20.0, 22.0, 25.0, 28.0, 33.0, 39.0, 46.0, 55.0, 68.0, 86.0, 0.0, 0.0],
    [23.0, 25.0, 27.0, 32.0, 36.0, 40.0, 47.0, 55.0, 65.0, 78.0, 96.0, 115.0, 140.0, 170.0],
];
/// Tolerance of mean travel of grade 0 to 1600 mm, µm.
const MEAN_ZERO: [f64; 8] = [4.0, 5.0, 6.0, 6.0, 7.0, 8.0, 9.0, 11.0];
/// Multipliers of 0.004·D + 2.1 µm for IT1 to IT5.
const STEP: [f64; 5] = [2.0, 2.7, 3.7, 5.0, 7.0];
/// Variation over the useful travel, µm, grades 1, 3 and 5.
const VARIATION: [[f64; 14]; 3] = [
    [6.0, 6.0, 7.0, 7.0, 8.0, 9.0, 10.0, 11.0, 13.0, 15.0, 17.0, 21.0, 25.0, 30.0],
    [12.0, 12.0, 13.0, 14.0, 16.0, 17.0, 19.0, 22.0, 25.0, 29.0, 34.0, 41.0, 49.0, 60.0],
    [23.0, 25.0, 26.0, 29.0, 31.0, 35.0, 39.0, 44.0, 51.0, 59.0, 69.0, 82.0, 99.0, 119.0],
];

/// The row of a travel, or the geometric mean of its range where the tables end, mm.
enum Row {
    Table(usize),
    Beyond(f64),
}

#[inline]
fn row(travel: f64) -> Row {
    if let Some(index) = TO.iter().position(|to| travel <= to * (1.0 + 1e-12)) {
        return Row::Table(index);
    }
    let mut from = TO[13];
    for to in BEYOND {
        if travel <= to * (1.0 + 1e-12) {
            return Row::Beyond((from * to).sqrt());
        }
        from = to;
    }
    Row::Beyond(travel)
}

/// The positioning grade as a whole number 0 to 5.
#[inline]
fn whole(grade: f64) -> Option<usize> {
    ((0.0..=5.0).contains(&grade) && grade.fract() == 0.0).then_some(grade as usize)
}

fn mean_of_positioning(grade: usize, travel: f64) -> f64 {
    let by_formula = |grade: usize, middle: f64| STEP[grade - 1] * (0.004 * middle + 2.1);
    match (grade, row(travel)) {
        (0, Row::Table(index)) if index < MEAN_ZERO.len() => MEAN_ZERO[index],
        (0, _) => 0.75 * mean_of_positioning(1, travel),
        (_, Row::Table(index)) if MEAN[grade - 1][index] > 0.0 => MEAN[grade - 1][index],
        (_, Row::Table(index)) => by_formula(grade, (TO[index - 1] * TO[index]).sqrt()),
        (_, Row::Beyond(middle)) => by_formula(grade, middle),
    }
}

fn variation_of_positioning(grade: usize, travel: f64) -> f64 {
    let known = |column: usize| match row(travel) {
        Row::Table(index) => VARIATION[column][index],
        Row::Beyond(middle) => {
            let (slope, start) = [(0.0045, 5.0), (0.0091, 8.9), (0.0182, 17.9)][column];
            slope * middle + start
        }
    };
    match grade {
        0 => known(0) * 2.0 / 3.0,
        1 => known(0),
        2 => (known(0) + known(1)) / 2.0,
        3 => known(1),
        4 => (known(1) + known(2)) / 2.0,
        _ => known(2),
    }
}

/// Tolerance of the mean travel, m; its half band about the target.
///
/// Pass the grade number, 1 for a positioning screw or 0 for a transport screw, the variation within 300 mm
/// (read for transport screws only), and the useful travel. A positioning grade other than 0 to 5 gives NaN.
/// Check: P5 over 1 m → 40 µm; T7 (52 µm) over 1 m → 347 µm.
pub static MEAN_TRAVEL_DEVIATION: Formula<fn(Ratio, Ratio, Length, Length) -> Length> = Formula {
    note: Note {
        id: "mean-travel-deviation",
        title: "tolerance of the mean travel",
        equation: "P: e_p = IT of the grade's number at l_u (table); T: e_p = 2·l_u/300 mm·v_300p",
        inputs: &[("Gr", "grade-number"), ("P/T", "positioning"), ("v_300p", "variation-300"), ("l_u", "travel")],
        validity: "P 0 to 5 by table to 6.3 m, beyond by IT = k·(0.004·D + 2.1) µm; P0 above 1.6 m estimated as 0.75 of P1; \
                   other positioning grades are not defined",
        sources: &[ISO, IT],
    },
    apply: mean_travel_deviation,
};

/// See [`MEAN_TRAVEL_DEVIATION`].
#[inline]
pub fn mean_travel_deviation(grade: Ratio, positioning: Ratio, variation_300: Length, travel: Length) -> Length {
    let length = travel.si();
    if positioning.si() < 0.5 {
        return Length::of_si(2.0 * length / 0.3 * variation_300.si());
    }
    match whole(grade.si()) {
        Some(grade) if length.is_finite() && !positioning.si().is_nan() => {
            Length::of_si(mean_of_positioning(grade, length * 1e3) * 1e-6)
        }
        _ => Length::of_si(f64::NAN),
    }
}

/// Permissible variation of travel over the useful travel, full band, m.
///
/// Pass as for [`MEAN_TRAVEL_DEVIATION`]. Grades 2 and 4 lie midway between their neighbours, grade 0 at two
/// thirds of grade 1. The standard gives none for transport screws; there it is estimated.
/// Check: P5 over 1 m → 35 µm.
pub static TRAVEL_VARIATION: Formula<fn(Ratio, Ratio, Length, Length) -> Length> = Formula {
    note: Note {
        id: "travel-variation",
        title: "permissible variation of travel over the useful travel",
        equation: "P: v_up by table; T: v_up ≈ v_300p·√(l_u/300 mm), at least v_300p",
        inputs: &[("Gr", "grade-number"), ("P/T", "positioning"), ("v_300p", "variation-300"), ("l_u", "travel")],
        validity: "P1, P3, P5 by table to 6.3 m and straight lines beyond; P0, P2, P4 from their neighbours; \
                   T an estimate by independent 300 mm sections, the standard gives none",
        sources: &[ISO, Source::practice("independent sections add as root of sum of squares")],
    },
    apply: travel_variation,
};

/// See [`TRAVEL_VARIATION`].
#[inline]
pub fn travel_variation(grade: Ratio, positioning: Ratio, variation_300: Length, travel: Length) -> Length {
    let length = travel.si();
    if positioning.si() < 0.5 {
        let sections = (length / 0.3).sqrt();
        return Length::of_si(variation_300.si() * if sections < 1.0 { 1.0 } else { sections });
    }
    match whole(grade.si()) {
        Some(grade) if length.is_finite() && !positioning.si().is_nan() => {
            Length::of_si(variation_of_positioning(grade, length * 1e3) * 1e-6)
        }
        _ => Length::of_si(f64::NAN),
    }
}

/// Permissible variation within 300 mm of a grade number, m; NaN for a number that is no grade.
///
/// From memory of ISO 3408-3: 4, 6, 8, 12, 16, 23, 52, 210 µm for 0, 1, 2, 3, 4, 5, 7, 10.
pub fn variation_300_of_grade(grade: Ratio) -> Length {
    let known = [(0.0, 4.0), (1.0, 6.0), (2.0, 8.0), (3.0, 12.0), (4.0, 16.0), (5.0, 23.0), (7.0, 52.0), (10.0, 210.0)];
    let found = known.iter().find(|(number, _)| *number == grade.si());
    Length::of_si(found.map_or(f64::NAN, |(_, variation)| variation * 1e-6))
}
