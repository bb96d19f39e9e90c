//! Travel a turn of helical pinions with metric pitch.
//!
//! Trade fact, common practice, no source: helical racks of module m have a transverse pitch of exactly 10/3·m
//! (module 3: 10 mm, module 6: 20 mm), and the helix is written 19°31'42". Pitch and travel below are exact by
//! that definition; diameters are the travel over π.

use crate::{mm, near, ratio};
use axiswright::formula::gear_geometry::{PINION_DIAMETER, TRAVEL_PER_TURN, metric_helix};
use axiswright::units::Measure;

/// Module and travel a turn of 20 teeth, mm; printed diameter, mm.
const TABLE: [(f64, f64, f64); 9] = [
    (1.5, 100.0, 31.831),
    (2.0, 400.0 / 3.0, 42.441),
    (3.0, 200.0, 63.662),
    (4.0, 800.0 / 3.0, 84.883),
    (5.0, 1000.0 / 3.0, 106.103),
    (6.0, 400.0, 127.324),
    (8.0, 1600.0 / 3.0, 169.765),
    (10.0, 2000.0 / 3.0, 212.207),
    (12.0, 800.0, 254.648),
];

#[test]
fn travel_a_turn_is_exact() {
    for (module, travel, diameter) in TABLE {
        let d = (PINION_DIAMETER.apply)(mm(module), ratio(20.0), metric_helix());
        near(&format!("d of module {module}"), d.si() * 1e3, diameter, 0.0005);
        let value = (TRAVEL_PER_TURN.apply)(d).si() * 1e3;
        assert!((value / travel - 1.0).abs() < 1e-14, "module {module}: {value} mm a turn, {travel} expected");
    }
}

#[test]
fn the_angle_of_the_trade_is_the_rounded_one() {
    let written = (19.0 + 31.0 / 60.0 + 42.0 / 3600.0_f64).to_radians();
    assert!((metric_helix().si() - written).abs() < (1.0 / 3600.0_f64).to_radians());
    // and it is wrong by 1.58 µm a metre
    let error = (metric_helix().si().cos() / written.cos() - 1.0) * 1e6;
    near("error of the rounded angle, µm/m", error, 1.58, 0.005);
}
