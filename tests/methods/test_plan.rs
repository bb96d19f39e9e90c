//! The plan of an axis test against ISO 230-2 (from memory): at least five targets a metre and five in all up to 2 m, none further
//! apart than 250 mm beyond; shifts by the golden section, worked out here with whole numbers of Fibonacci in place of the root.

use axiswright::formula::test_plan::{is_long, spacing, targets};
use axiswright::units::{Length, Measure};

#[test]
fn targets_stand_a_fifth_of_the_travel_apart_up_to_a_metre_and_a_fifth_of_a_metre_up_to_two() {
    for (travel, apart) in [(0.1, 0.02), (0.7, 0.14), (1.0, 0.2), (1.5, 0.2), (2.0, 0.2), (2.1, 0.25), (6.0, 0.25)] {
        let found = spacing(Length::of_si(travel));
        assert!((found - apart).abs() < 1e-12, "{travel} m: {found}, by the plan {apart}");
    }
    // rounding of a travel in inches makes no axis long
    assert!(!is_long(Length::of_si(2.0)) && !is_long(Length::of_si(2.000_000_001)) && is_long(Length::of_si(2.001)));
}

/// The part of the period by which target `index` is shifted: the fraction of `index` times 0.618…, F(39)/F(40).
fn part(index: usize) -> f64 {
    let (mut before, mut last) = (1_u64, 1_u64);
    for _ in 0..38 {
        (before, last) = (last, before + last);
    }
    let golden = before as f64 / last as f64;
    index as f64 * golden - (index as f64 * golden).floor()
}

#[test]
fn each_target_is_shifted_by_its_part_of_the_period_and_the_ends_inwards() {
    // start, stretch, greatest distance, period, gaps, shift: the period, or a third of a gap where that is less
    for (start, stretch, apart, period, gaps, shift) in [
        (0.0, 2.0, 0.2, 0.04, 10, 0.04),
        (0.3, 0.7, 0.14, 0.02, 5, 0.02),
        (1.0, 6.0, 0.25, 0.133, 24, 0.25 / 3.0),
        (0.0, 0.1, 0.02, 0.01, 5, 0.02 / 3.0),
        (0.0, 2.1, 0.25, 0.03, 9, 0.03),
    ] {
        let found = targets(Length::of_si(start), Length::of_si(stretch), apart, Length::of_si(period));
        assert_eq!(found.len(), gaps + 1, "{stretch} m in steps of {apart} m");
        for (index, target) in found.iter().enumerate() {
            let share = match index {
                0 => part(0),
                _ if index == gaps => -part(index),
                _ => 2.0 * part(index) - 1.0,
            };
            let expected = start + stretch * index as f64 / gaps as f64 + share * shift;
            // tenths of a millimetre
            assert!((target - expected).abs() <= 0.5e-4 + 1e-9, "target {index}: {target}, by the plan {expected}");
            assert!((target * 1e4 - (target * 1e4).round()).abs() < 1e-6, "target {index}: {target} is no whole tenth");
        }
    }
}
