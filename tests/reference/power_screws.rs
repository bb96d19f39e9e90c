//! Power screws: efficiency in both directions and torque.
//!
//! Sources: V. B. Bhandari, Design of Machine Elements, example 6.1, as reproduced with data and solution in a public
//! collection of textbook solutions (FOSSEE, folder 764, chapter 6; the identity of the book is from memory):
//! square thread, 15 kN, outer diameter 50 mm, pitch 8 mm, three starts, friction 0.15, collar 65 to 100 mm with the
//! same friction → 204 644 N·mm to raise, 87 401.5 N·mm to lower. The same, example 6.6: trapezoidal thread of 15° flanks,
//! 2 kN, outer diameter 52 mm, pitch 8 mm, friction 0.15, collar 60 to 100 mm with 0.12, 30 1/min → 0.061838 kW,
//! 12.9371 %. R. L. Mott, Machine Elements in Mechanical Design, 4th edition, example 17-1 (p. 703): 12 500 lb, pitch
//! diameter 1.3429 in, lead 0.25 in, friction 0.15, flanks of 14.5° → 1809 lb·in; ours is 1814.4, 0.3 % off, since the
//! printed lead angle is rounded. J. E. Shigley, Mechanical Engineering Design,
//! example 8-1 (from memory): 6.4 kN, 32 mm, pitch 4 mm, two starts, friction 0.08, collar 40 mm → 26.18 and
//! 9.77 N·m, overall efficiency 0.311. An engineering examination problem (engineeringprep.com, problem 516):
//! 20 kN, lead 10 mm, efficiency 0.7 → 45.5 N·m. Preload drag after JIS B 1192 (from memory), worked by hand.

use super::{mm, near, newton, ratio};
use axiswright::formula::screw::{back_driving_efficiency, lead_angle, preload_drag, screw_efficiency, screw_torque};
use axiswright::units::Measure;
use std::f64::consts::TAU;

#[test]
fn bhandari_6_1_square_thread_with_collar() {
    let angle = lead_angle(mm(24.0), mm(46.0));
    let collar = 0.15 * 15e3 * (65.0 + 100.0) / 4.0;
    let raise = screw_torque(newton(15e3), mm(24.0), screw_efficiency(angle, ratio(0.15)));
    near("raise, N·mm", raise.si() * 1e3 + collar, 204_644.0, 0.5);
    // the load drives the thread, the collar brakes it
    let lower = 15e3 * 24.0 * back_driving_efficiency(angle, ratio(0.15)).si() / TAU;
    near("lower, N·mm", collar - lower, 87_401.5, 0.05);
}

#[test]
fn bhandari_6_6_trapezoidal_thread_with_collar() {
    // a flank of 15° presses harder than a square one
    let friction = ratio(0.15 / 15f64.to_radians().cos());
    let efficiency = screw_efficiency(lead_angle(mm(8.0), mm(48.0)), friction);
    let thread = screw_torque(newton(2e3), mm(8.0), efficiency).si();
    let whole = thread + 0.12 * 2e3 * (0.060 + 0.100) / 4.0;
    near("power, kW", whole * TAU * 0.5 * 1e-3, 0.061838, 0.0000005);
    near("efficiency, %", 2e3 * 0.008 / (TAU * whole) * 100.0, 12.9371, 0.00005);
}

#[test]
fn mott_17_1_differs_by_the_rounding_of_the_print() {
    let friction = ratio(0.15 / 14.5f64.to_radians().cos());
    let efficiency = screw_efficiency(lead_angle(mm(0.25 * 25.4), mm(1.3429 * 25.4)), friction).si();
    let torque = 12_500.0 * 0.25 / (TAU * efficiency);
    near("torque, lb·in", torque, 1814.4, 0.05);
    near("torque over the printed one", torque / 1809.0, 1.003, 0.0005);
}

#[test]
fn shigley_8_1_square_thread_with_collar() {
    let angle = lead_angle(mm(8.0), mm(30.0));
    let collar = 0.08 * 6.4e3 * 0.020;
    let raise = screw_torque(newton(6.4e3), mm(8.0), screw_efficiency(angle, ratio(0.08))).si() + collar;
    near("raise, N·m", raise, 26.18, 0.005);
    let lower = 6.4e3 * 0.008 * back_driving_efficiency(angle, ratio(0.08)).si() / TAU;
    near("lower, N·m", collar - lower, 9.77, 0.005);
    near("efficiency", 6.4e3 * 0.008 / (TAU * raise), 0.311, 0.0005);
}

#[test]
fn the_examination_problem_of_20_kn() {
    near("torque, N·m", screw_torque(newton(20e3), mm(10.0), ratio(0.7)).si(), 45.5, 0.05);
}

#[test]
fn a_32_by_10_screw_worked_by_hand() {
    let angle = lead_angle(mm(10.0), mm(33.0));
    near("lead angle, deg", angle.si().to_degrees(), 5.50957, 0.000005);
    near("driving", screw_efficiency(angle, ratio(0.005)).si(), 0.950260, 0.0000005);
    near("driven", back_driving_efficiency(angle, ratio(0.005)).si(), 0.947707, 0.0000005);
    near("preload drag, N·m", preload_drag(newton(3e3), mm(10.0), angle).si(), 0.76868, 0.000005);
}

/// The sum of drag in both directions over the two-nut first principles: F·P_h/2π·(1/η_1 − η_2) at the friction
/// 0.0077, where the handbook form and first principles meet.
#[test]
fn preload_drag_is_that_of_two_nuts_at_a_friction_of_0_0077() {
    let angle = lead_angle(mm(10.0), mm(33.0));
    let friction = ratio(0.0077);
    let (driving, driven) = (screw_efficiency(angle, friction).si(), back_driving_efficiency(angle, friction).si());
    let two_nuts = 3e3 * 0.01 / TAU * (1.0 / driving - driven);
    near("drag over drag", preload_drag(newton(3e3), mm(10.0), angle).si() / two_nuts, 1.0, 0.005);
}

#[test]
fn a_screw_below_its_friction_angle_locks_and_one_without_friction_loses_nothing() {
    let angle = lead_angle(mm(1.0), mm(40.0));
    near("locked", back_driving_efficiency(angle, ratio(0.05)).si(), 0.0, 0.0);
    near("no friction", screw_efficiency(angle, ratio(0.0)).si(), 1.0, 0.0);
    near("no friction, driven", back_driving_efficiency(angle, ratio(0.0)).si(), 1.0, 0.0);
}
