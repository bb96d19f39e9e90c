//! Stops by stepping force, speed and energy: the falling load and its brake, the emergency stop, the buffer.

use super::close;
use axiswright::formula::brake::*;
use axiswright::formula::end_stop::*;
use axiswright::units::*;
use std::f64::consts::TAU;

const G: f64 = 9.80665;

/// A load on a screw: mass, inertia at the motor, travel for one turn, reduction, sine of the inclination.
struct Load {
    mass: f64,
    inertia: f64,
    lead: f64,
    reduction: f64,
    sine: f64,
}

impl Load {
    /// Steps the motor's angle under weight and a torque against motion until it stands; way and work of the torque.
    fn stepped(&self, mut speed: f64, torque: impl Fn(f64, f64) -> f64) -> (f64, f64) {
        let arm = self.lead / (TAU * self.reduction);
        let inertia = self.inertia + self.mass * arm * arm;
        let (mut time, mut way, mut work) = (0.0, 0.0, 0.0);
        let step = 2e-6;
        while speed > 0.0 {
            let against = torque(time, way);
            let turning = speed / arm;
            let next = turning + step * (self.mass * G * self.sine * arm - against) / inertia;
            let moved = step * 0.5 * (turning + next);
            way += moved * arm;
            work += moved * against;
            speed = next * arm;
            time += step;
            assert!(time < 10.0, "the load is never stopped");
        }
        (way, work)
    }

    fn weight(&self) -> Force {
        Force::of_si(self.mass * G * self.sine)
    }

    fn reduced(&self) -> Mass {
        let (lead, ratio) = (Length::of_si(self.lead), Ratio::of_si(self.reduction));
        (REDUCED_MASS.apply)(MomentOfInertia::of_si(self.inertia), lead, ratio)
    }
}

const LOADS: [Load; 3] = [
    Load { mass: 300.0, inertia: 8e-3, lead: 0.010, reduction: 1.0, sine: 1.0 },
    Load { mass: 120.0, inertia: 3e-3, lead: 0.025, reduction: 2.0, sine: 0.5 },
    Load { mass: 1000.0, inertia: 2e-3, lead: 0.1333, reduction: 10.0, sine: 1.0 },
];

#[test]
fn way_and_work_of_the_brake_are_those_of_the_stepped_fall() {
    let (delay, share) = (0.05, 0.8);
    for (load, brake, speed) in [(&LOADS[0], 15.0, 0.3), (&LOADS[1], 9.0, 0.5), (&LOADS[2], 60.0, 1.0)] {
        let (way, work) = load.stepped(speed, |time, _| if time < delay { 0.0 } else { share * brake });
        let (mass, reduced, weight) = (Mass::of_si(load.mass), load.reduced(), load.weight());
        let fall = (FALL_ACCELERATION.apply)(weight, mass, reduced);
        let slowing = (BRAKE_DECELERATION.apply)(
            Torque::of_si(brake),
            Ratio::of_si(share),
            Length::of_si(load.lead),
            Ratio::of_si(load.reduction),
            weight,
            mass,
            reduced,
        );
        let (speed, delay) = (Velocity::of_si(speed), Time::of_si(delay));
        close("way", (STOPPING_DISTANCE.apply)(speed, delay, fall, slowing).si(), way, 1e-4);
        close("work", (BRAKE_WORK.apply)(speed, delay, fall, slowing, mass, reduced, weight).si(), work, 1e-4);
    }
    // the case of the derivation: 300 kg, 12 N·m in full, 0.3 m/s: 60.19 mm and 332.7 J
    let (way, work) = LOADS[0].stepped(0.3, |time, _| if time < 0.05 { 0.0 } else { 12.0 });
    assert!((way * 1e3 - 60.19).abs() < 0.01 && (work - 332.7).abs() < 0.1, "{way} {work}");
}

#[test]
fn an_emergency_stop_takes_the_stepped_way() {
    let reaction = 0.04;
    for (load, set, speed) in [(&LOADS[0], 14.0, 0.3), (&LOADS[1], 6.0, 0.5), (&LOADS[2], 60.0, 1.0)] {
        let (way, _) = load.stepped(speed, |_, _| set);
        let push = (DRIVE_PUSH.apply)(Torque::of_si(set), Length::of_si(load.lead), Ratio::of_si(load.reduction));
        let slowing = (STOP_DECELERATION.apply)(push, load.weight(), Mass::of_si(load.mass), load.reduced());
        let formula = (EMERGENCY_STOP_DISTANCE.apply)(Velocity::of_si(speed), Time::of_si(reaction), slowing);
        close("way", formula.si(), speed * reaction + way, 1e-4);
    }
    let weak = (EMERGENCY_STOP_DISTANCE.apply)(Velocity::of_si(0.3), Time::of_si(0.04), Acceleration::of_si(-0.1));
    assert_eq!(weak.si(), f64::INFINITY, "a drive that does not stop its load never stops");
    let unknown =
        (EMERGENCY_STOP_DISTANCE.apply)(Velocity::of_si(0.3), Time::of_si(0.04), Acceleration::of_si(f64::NAN));
    assert!(unknown.si().is_nan());
}

#[test]
fn a_buffer_stops_push_weight_and_turning_parts_over_its_stroke() {
    let (share, efficiency) = (3.0, 0.8);
    for (load, set, speed) in [(&LOADS[0], 8.0, 0.3), (&LOADS[1], 6.0, 0.5), (&LOADS[2], 30.0, 1.0)] {
        let arm = load.lead / (TAU * load.reduction);
        let push = set / arm;
        // the buffer's mean force less the push of the drive, seen as a torque against motion
        let (way, _) = load.stepped(speed, |_, _| (efficiency * share * push - push) * arm);
        let drive = (DRIVE_PUSH.apply)(Torque::of_si(set), Length::of_si(load.lead), Ratio::of_si(load.reduction));
        let energy = (END_STOP_ENERGY.apply)(Mass::of_si(load.mass), load.reduced(), Velocity::of_si(speed));
        let buffer = (BUFFER_FORCE.apply)(Ratio::of_si(share), drive);
        let stroke = (END_STOP_STROKE.apply)(energy, buffer, Ratio::of_si(efficiency), drive, load.weight());
        close("stroke", stroke.si(), way, 1e-4);
        // on a level axis without turning parts it is the stroke that `buffer-stroke` gives
        let plain = (BUFFER_STROKE.apply)(
            Mass::of_si(load.mass),
            Velocity::of_si(speed),
            buffer,
            drive,
            Angle::of_si(0.0),
            Ratio::of_si(efficiency),
        );
        let bare = (END_STOP_ENERGY.apply)(Mass::of_si(load.mass), Mass::of_si(0.0), Velocity::of_si(speed));
        let level = (END_STOP_STROKE.apply)(bare, buffer, Ratio::of_si(efficiency), drive, Force::of_si(0.0));
        close("level", level.si(), plain.si(), 1e-12);
    }
}

#[test]
fn the_brake_of_300_kg_on_a_lead_of_10_mm_is_rated_7_61_newton_metres() {
    // 0.8 of the rating holds 1.3 times the load: m·g·p/2π by virtual work over one turn
    let load = 300.0 * G * 0.010 / TAU;
    let hold = (HOLDING_TORQUE.apply)(LOADS[0].weight(), Length::of_si(0.010), Ratio::of_si(1.0)).si();
    close("holding", hold, load, 1e-12);
    assert!((1.3 / 0.8 * hold - 7.61).abs() < 0.005, "{}", 1.3 / 0.8 * hold);
    // and no efficiency is in it: the rule's factor is 0.8/1.3
    assert!((hold / 0.615 - 7.61).abs() < 0.01);
}

#[test]
fn ways_before_the_grip_and_from_rest_are_those_of_the_stepped_fall() {
    let (delay, share) = (0.06, 0.8);
    for (load, brake, speed) in [(&LOADS[0], 15.0, 0.3), (&LOADS[1], 9.0, 0.5), (&LOADS[2], 60.0, 1.0)] {
        let (mass, reduced, weight) = (Mass::of_si(load.mass), load.reduced(), load.weight());
        let fall = (FALL_ACCELERATION.apply)(weight, mass, reduced);
        let (ratio, lead) = (Ratio::of_si(load.reduction), Length::of_si(load.lead));
        let torque = Torque::of_si(brake);
        let slowing = (BRAKE_DECELERATION.apply)(torque, Ratio::of_si(share), lead, ratio, weight, mass, reduced);
        // a speed that is as good as none starts the stepping
        let (drop, _) = load.stepped(1e-9, |time, _| if time < delay { 0.0 } else { share * brake });
        close("drop", (DROP_FROM_REST.apply)(Time::of_si(delay), fall, slowing).si(), drop, 1e-3);
        // before the grip: the way of the whole stop less that under the brake from the speed reached
        let (whole, _) = load.stepped(speed, |time, _| if time < delay { 0.0 } else { share * brake });
        let (braked, _) = load.stepped(speed + fall.si() * delay, |_, _| share * brake);
        let before = (FALL_BEFORE_BRAKE.apply)(Velocity::of_si(speed), Time::of_si(delay), fall);
        close("before", before.si(), whole - braked, 1e-3);
    }
    let never = (DROP_FROM_REST.apply)(Time::of_si(0.06), Acceleration::of_si(9.8), Acceleration::of_si(-0.1));
    assert!(never.si().is_nan(), "a brake that does not stop gives no way");
}

#[test]
fn a_rigid_stop_winds_the_drive_up_by_the_stepped_force() {
    for (speed, stiffness, reduced, push) in
        [(0.5, 100e6, 493.48, 0.0), (0.5, 100e6, 493.48, 5e3), (1.0, 50e6, 20.0, 8e3)]
    {
        // the turning parts as a mass on the spring of the drive, pushed on; the slide stands
        let (mut way, mut moving, mut most) = (0.0_f64, speed, 0.0_f64);
        let step = 1e-8;
        while moving > 0.0 {
            moving += step * (push - stiffness * way) / reduced;
            way += step * moving;
            most = most.max(stiffness * way);
        }
        let force = (CRASH_FORCE.apply)(
            Velocity::of_si(speed),
            Stiffness::of_si(stiffness),
            Mass::of_si(reduced),
            Force::of_si(push),
        );
        close("force", force.si(), most, 1e-4);
    }
}

#[test]
fn friction_alone_stops_a_level_axis_over_the_stepped_way() {
    let load = Load { mass: 300.0, inertia: 8e-3, lead: 0.020, reduction: 1.0, sine: 0.0 };
    let (friction, speed, reaction) = (200.0, 0.5, 0.04);
    let (way, _) = load.stepped(speed, |_, _| friction * load.lead / TAU);
    let slowing = (COASTING_DECELERATION.apply)(Force::of_si(friction), Mass::of_si(load.mass), load.reduced());
    let coasting = (EMERGENCY_STOP_DISTANCE.apply)(Velocity::of_si(speed), Time::of_si(reaction), slowing);
    close("way", coasting.si(), speed * reaction + way, 1e-4);
    let free = (COASTING_DECELERATION.apply)(Force::of_si(0.0), Mass::of_si(load.mass), load.reduced());
    let endless = (EMERGENCY_STOP_DISTANCE.apply)(Velocity::of_si(speed), Time::of_si(reaction), free);
    assert_eq!(endless.si(), f64::INFINITY, "without friction it does not stop");
}
