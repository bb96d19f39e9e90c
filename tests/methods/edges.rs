//! Where an equation has no answer, or a table ends: what is said exactly there and beside it.

use super::{close, mm, ratio};
use axiswright::formula::{brake, end_stop, lead_accuracy, tooth_strength};
use axiswright::units::{Acceleration, Angle, Energy, Force, Mass, Measure, Time, Velocity};

/// Force and deceleration that are just used up stop nothing, and less of them neither.
#[test]
fn what_stops_nothing_has_no_way_and_no_work() {
    let (speed, delay, fall) = (Velocity::of_si(0.3), Time::of_si(0.05), Acceleration::of_si(0.85));
    for (deceleration, stops) in [(-0.1, false), (0.0, false), (0.001, true), (0.9, true)] {
        let a = Acceleration::of_si(deceleration);
        let way = (brake::STOPPING_DISTANCE.apply)(speed, delay, fall, a).si();
        let drop = (brake::DROP_FROM_REST.apply)(delay, fall, a).si();
        let work =
            (brake::BRAKE_WORK.apply)(speed, delay, fall, a, Mass::of_si(300.0), Mass::of_si(3.0), Force::of_si(9.0));
        for value in [way, drop, work.si()] {
            assert_eq!(value.is_finite(), stops, "{deceleration} m/s²: {value}");
            assert_eq!(value.is_nan(), !stops, "{deceleration} m/s²: {value}");
        }
        // a stop that cannot be made has no end
        let emergency = (end_stop::EMERGENCY_STOP_DISTANCE.apply)(speed, delay, a).si();
        assert_eq!(emergency, if stops { 0.3 * 0.05 + 0.09 / (2.0 * deceleration) } else { f64::INFINITY });
    }
    for (buffer, stops) in [(1.5, false), (2.0, false), (2.125, true), (4.0, true)] {
        // half of the buffer's force against a push of 1 N
        let stroke = brake::buffer_stroke(
            Mass::of_si(0.1),
            Velocity::of_si(0.1),
            Force::of_si(buffer),
            Force::of_si(1.0),
            Angle::of_si(0.0),
            ratio(0.5),
        );
        let energy = Energy::of_si(0.5 * 0.1 * 0.01);
        let half = Force::of_si(0.5);
        let same = (end_stop::END_STOP_STROKE.apply)(energy, Force::of_si(buffer), ratio(0.5), half, half).si();
        if stops {
            close("way in the buffer", stroke.si(), 0.0005 / (0.5 * buffer - 1.0), 1e-12);
            close("the same from its energy", same, 0.0005 / (0.5 * buffer - 1.0), 1e-12);
        } else {
            assert!(stroke.si().is_nan() && same.is_nan(), "{buffer} N: {} and {same}", stroke.si());
        }
    }
}

/// Beyond 6.3 m the variation of a screw goes on along the straight line through the last rows of its table.
#[test]
fn the_line_beyond_the_table_of_variations_continues_it() {
    let ends: [f64; 8] = [2000.0, 2500.0, 3150.0, 4000.0, 5000.0, 6300.0, 8000.0, 10_000.0];
    let middles: Vec<f64> = ends.windows(2).map(|pair| (pair[0] * pair[1]).sqrt()).collect();
    let variation = |grade: f64, travel: f64| {
        lead_accuracy::travel_variation(ratio(grade), ratio(1.0), mm(0.0), mm(travel)).si() * 1e6
    };
    for grade in [0.0, 1.0, 2.0, 3.0, 4.0, 5.0] {
        let points: Vec<(f64, f64)> = (0..5).map(|row| (middles[row], variation(grade, ends[row + 1]))).collect();
        // least squares through the last five rows
        let count = points.len() as f64;
        let (x, y) = points.iter().fold((0.0, 0.0), |sum, point| (sum.0 + point.0 / count, sum.1 + point.1 / count));
        let (up, down) = points.iter().fold((0.0, 0.0), |sum, point| {
            (sum.0 + (point.0 - x) * (point.1 - y), sum.1 + (point.0 - x) * (point.0 - x))
        });
        for row in [5, 6] {
            let line = y + up / down * (middles[row] - x);
            close(&format!("grade {grade} to {} mm", ends[row + 1]), variation(grade, ends[row + 1]), line, 0.02);
        }
    }
}

/// A grade between two rows counts as the coarser one; finer than 5 counts as 5, coarser than 10 has no factor.
#[test]
fn a_tooth_grade_between_two_rows_counts_as_the_coarser() {
    let slope = |quality: f64| {
        let speed = Velocity::of_si(1.5);
        (tooth_strength::LOAD_OFFSET.apply)(
            mm(2.0),
            ratio(20.0),
            Angle::of_si(0.0),
            ratio(0.0),
            mm(24.0),
            ratio(quality),
            speed,
        )
        .si()
    };
    for (between, counts_as) in [(6.5, 7.0), (9.01, 10.0), (3.0, 5.0), (5.0, 5.0)] {
        assert_eq!(slope(between), slope(counts_as), "grade {between}");
    }
    assert!(slope(7.0) > slope(6.0) && slope(10.0) > slope(9.0));
    assert!(slope(10.5).is_nan());
}
