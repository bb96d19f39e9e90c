//! One servo axis from end to end against a calculation by another program.
//!
//! Method: the numbers were worked out independently of this project to six digits and partly by hand; no textbook prints a whole
//! ball screw axis. 600 kg on a level 40 × 10 mm screw (ball circle 41 mm, friction 0.005), guide friction 0.005 and 60 N of wipers,
//! preload 3.5 kN, motor 60 kg·cm² and coupling 3 kg·cm², 1.3 m of screw, 0.5 m/s, 5 m/s², a stroke of 0.8 m every 2.5 s:
//! 34.0848 N·m speeding up, 1.15114 running, −31.1823 braking, 9.28222 root mean square.

use super::{close, mm, ratio};
use axiswright::formula::{Series, inertia, motor, screw};
use axiswright::units::*;

#[test]
fn torques_of_a_whole_screw_axis_agree_with_an_independent_calculation() {
    let (lead, angle) = (mm(10.0), screw::lead_angle(mm(10.0), mm(41.0)));
    let driving = screw::screw_efficiency(angle, ratio(0.005));
    let driven = screw::back_driving_efficiency(angle, ratio(0.005));
    let drag = screw::preload_drag(Force::of_si(3.5e3), lead, angle);
    let turning = (inertia::SCREW_INERTIA.apply)(mm(40.0), mm(0.0), mm(1300.0)).si() + 60e-4 + 3e-4;
    let friction = 0.005 * 600.0 * 9.80665 + 60.0;
    let torque = |acceleration: f64| {
        let force = Force::of_si(600.0 * acceleration + friction);
        let (speed, acceleration) = (Velocity::of_si(0.25), Acceleration::of_si(acceleration));
        let turning = MomentOfInertia::of_si(turning);
        (motor::PHASE_TORQUE.apply)(force, speed, acceleration, lead, ratio(1.0), driving, driven, drag, turning).si()
    };
    let torques = [torque(5.0), torque(0.0), torque(-5.0), 0.0];
    for (value, printed) in torques.into_iter().zip([34.0848, 1.15114, -31.1823]) {
        close("torque, N·m", value, printed, 5e-6);
    }
    let shares = [0.1, 1.5, 0.1, 0.8].map(|time| time / 2.5);
    let mean = (motor::RMS_TORQUE.apply)(Series::of_si(&torques), Series::of_si(&shares));
    close("root mean square torque, N·m", mean.si(), 9.28222, 1e-6);
}
