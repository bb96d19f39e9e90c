//! Two drives on one axis against a rigid beam on springs, solved as a small linear system, and against the motion of a
//! beam whose one side is lost, integrated step by step.

use crate::close;
use axiswright::formula::Series;
use axiswright::formula::gantry::*;
use axiswright::formula::rolling_life::{RACKED_PAIR_LIFE, half_load, pair_life};
use axiswright::units::*;

/// Solves two equations with two unknowns.
fn solve(a: [[f64; 2]; 2], b: [f64; 2]) -> [f64; 2] {
    let determinant = a[0][0] * a[1][1] - a[0][1] * a[1][0];
    [(b[0] * a[1][1] - b[1] * a[0][1]) / determinant, (a[0][0] * b[1] - a[1][0] * b[0]) / determinant]
}

/// A rigid beam, unknown middle and angle, on a spring of each drive whose foot stands at a place of its own, and on the
/// yaw spring of the guides: forces of the two springs on the beam, and the angle.
fn beam(stiffness: f64, spacing: f64, yaw: f64, feet: [f64; 2], force: f64, moment: f64) -> ([f64; 2], f64) {
    let arms = [-spacing / 2.0, spacing / 2.0];
    let mut a = [[0.0, 0.0], [0.0, yaw]];
    let mut b = [force, moment];
    for (arm, foot) in arms.iter().zip(feet) {
        a[0][0] += stiffness;
        a[0][1] += stiffness * arm;
        a[1][0] += stiffness * arm;
        a[1][1] += stiffness * arm * arm;
        b[0] += stiffness * foot;
        b[1] += stiffness * foot * arm;
    }
    let [middle, angle] = solve(a, b);
    let pull = |side: usize| stiffness * (feet[side] - middle - angle * arms[side]);
    ([pull(0), pull(1)], angle)
}

#[test]
fn racking_is_what_a_beam_on_three_springs_takes_up() {
    for (difference, stiffness, spacing, yaw) in
        [(60e-6, 54e6, 2.5, 2e8), (260e-6, 60e6, 3.6, 2e8), (20e-6, 200e6, 1.2, 5e7), (1e-4, 20e6, 6.0, 2e9)]
    {
        let (forces, angle) = beam(stiffness, spacing, yaw, [-difference / 2.0, difference / 2.0], 0.0, 0.0);
        let racking = (RACKING_FORCE.apply)(
            Length::of_si(difference),
            Stiffness::of_si(stiffness),
            Length::of_si(spacing),
            TorsionalStiffness::of_si(yaw),
        );
        close("force of one side", racking.si(), forces[1], 1e-12);
        close("force of the other", -racking.si(), forces[0], 1e-12);
        let askew = (YAW_ANGLE.apply)(racking, Length::of_si(spacing), TorsionalStiffness::of_si(yaw));
        close("angle", askew.si(), angle, 1e-12);
        let tool = (YAW_AT_TOOL.apply)(askew, Length::of_si(spacing));
        close("at the drive", tool.si(), angle * spacing / 2.0, 1e-12);
    }
}

/// With guides that take no moment the masses load the drives by the lever alone.
#[test]
fn each_side_bears_what_the_lever_says() {
    let (own, carried, acceleration, spacing) = (1200.0, 400.0, 2.0, 2.5);
    for (offset, y) in [(0.0, 0.8), (0.1, 0.8), (0.3, 1.25), (0.0, 0.0)] {
        let force = -(own + carried) * acceleration;
        let moment = -(own * offset + carried * y) * acceleration;
        let (forces, _) = beam(5e7, spacing, 1e-3, [0.0, 0.0], force, moment);
        let share = (NEAR_SHARE.apply)(
            Mass::of_si(own),
            Mass::of_si(carried),
            Length::of_si(offset),
            Length::of_si(spacing),
            Ratio::of_si(y / spacing),
        );
        let near = Mass::of_si(share.si() * (own + carried));
        let far = (FAR_MASS.apply)(Mass::of_si(own + carried), near);
        let level = |mass: Mass| {
            let (none, smooth) = (Force::of_si(0.0), Ratio::of_si(0.0));
            (SIDE_FORCE.apply)(mass, Acceleration::of_si(acceleration), Angle::of_si(0.0), smooth, none, smooth).si()
        };
        close("near side", level(near), forces[1], 1e-6);
        close("far side", level(far), forces[0], 1e-6);
    }
}

/// A beam whose one side is lost: mass in the middle, the force of the other side at once, yaw spring, no damping.
#[test]
fn a_lost_side_runs_ahead_by_twice_what_it_keeps() {
    let (force, spacing, yaw, inertia) = (3000.0, 2.5, 2e8, 1600.0 * 2.5 * 2.5 / 12.0);
    let step = 2e-6;
    let (mut angle, mut rate, mut most) = (0.0_f64, 0.0_f64, 0.0_f64);
    for _ in 0..200_000 {
        rate += step * (force * spacing / 2.0 - yaw * angle) / inertia;
        angle += step * rate;
        most = if angle > most { angle } else { most };
    }
    let lead = (LOST_SIDE_LEAD.apply)(Force::of_si(force), Length::of_si(spacing), TorsionalStiffness::of_si(yaw));
    close("lead", lead.si(), most * spacing / 2.0, 1e-3);
    close("angle", (LOST_SIDE_YAW.apply)(lead, Length::of_si(spacing)).si(), most, 1e-3);
}

/// Motor and load as two masses on a stiff spring, the motor pulled by its torque: force in the spring at rest of swing.
#[test]
fn the_side_that_is_left_hands_on_the_loads_share() {
    let (torque, travel, ratio, rotating, mass) = (20.0, 2.0 / 15.0, 10.0, 2e-3, 1600.0);
    let turns = std::f64::consts::TAU * ratio / travel;
    let reduced = rotating * turns * turns;
    // both speed up alike
    let acceleration = torque * turns / (mass + reduced);
    let force = (LOST_SIDE_FORCE.apply)(
        Torque::of_si(torque),
        Length::of_si(travel),
        Ratio::of_si(ratio),
        MomentOfInertia::of_si(rotating),
        Mass::of_si(mass),
    );
    close("force", force.si(), mass * acceleration, 1e-12);
}

/// Places along the travel tried one by one, each with the racking torque that it has, both signs.
#[test]
fn the_racking_torque_heats_as_a_ramp() {
    let (torques, shares, racking) = ([5.0, -1.0, 2.0, 0.5], [0.2, 0.3, 0.4, 0.1], 3.0);
    let places = 20_000;
    let heat = |sign: f64| {
        let mut sum = 0.0;
        for place in 0..places {
            let ramp = sign * racking * (place as f64 + 0.5) / places as f64;
            sum += torques
                .iter()
                .zip(shares)
                .map(|(torque, share)| share * (torque + ramp) * (torque + ramp))
                .sum::<f64>();
        }
        (sum / places as f64).sqrt()
    };
    let worse = if heat(1.0) > heat(-1.0) { heat(1.0) } else { heat(-1.0) };
    let formula =
        (RACKED_RMS_TORQUE.apply)(Series::of_si(&torques), Series::of_si(&shares), Torque::of_si(racking)).si();
    close("root mean square", formula, worse, 1e-6);
}

/// The force of a ramp at this place of the travel, added up over a thousand places by a method of its own: damage of each
/// half of the nut, and friction.
#[test]
fn racking_that_counts_everywhere_is_never_kinder_than_the_ramp() {
    let rating = 36e3;
    for (preload, forces, racking) in [
        (0.0, [2e3, -1e3], 800.0),
        (2e3, [2e3, -1e3], 800.0),
        (2e3, [500.0, -500.0], 3e3),
        (1e3, [4e3, 4e3], 1.5e3),
        (0.0, [0.0, 0.0], 1e3),
    ] {
        let (shares, speeds) = ([0.3, 0.5], [0.2, 0.1]);
        let life = |racking| {
            (RACKED_PAIR_LIFE.apply)(
                Force::of_si(rating),
                Force::of_si(preload),
                Series::of_si(&forces),
                Series::of_si(&shares),
                Series::of_si(&speeds),
                Ratio::of_si(1.0),
                Force::of_si(racking),
            )
            .si()
        };
        let of_ramp = |sign: f64| {
            let (mut damage, mut way) = ([0.0, 0.0], 0.0);
            for place in 0..1000 {
                let ramp = sign * racking * (f64::from(place) + 0.5) / 1000.0;
                for phase in 0..2 {
                    let force: f64 = forces[phase] + ramp;
                    let loaded = half_load(Force::of_si(force), Force::of_si(preload)).si();
                    let halves = if force < 0.0 { [loaded + force, loaded] } else { [loaded, loaded - force] };
                    let weight = shares[phase] * speeds[phase];
                    way += weight;
                    damage[0] += halves[0].powi(3) * weight;
                    damage[1] += halves[1].powi(3) * weight;
                }
            }
            let [first, second] = damage.map(|sum| sum / way / rating.powi(3));
            1e6 * (first.powf(10.0 / 9.0) + second.powf(10.0 / 9.0)).powf(-0.9)
        };
        let worse = if of_ramp(1.0) < of_ramp(-1.0) { of_ramp(1.0) } else { of_ramp(-1.0) };
        assert!(life(racking) <= worse, "{} and {worse}", life(racking));
        assert!(life(racking) < life(0.0) && life(0.0) > 0.0);
        let plain = pair_life(
            Force::of_si(rating),
            Force::of_si(preload),
            Series::of_si(&forces),
            Series::of_si(&shares),
            Series::of_si(&speeds),
            Ratio::of_si(1.0),
        );
        close("no racking", life(0.0), plain.si(), 1e-12);
        // without preload and with forces all one way the ramp is a power that integrates in closed form
        let ramp = |force: f64| ((force + racking).powi(4) - force.powi(4)) / (4.0 * racking);
        if preload == 0.0 && forces == [0.0, 0.0] {
            close("ramp alone", of_ramp(1.0), 1e6 * rating.powi(3) / ramp(0.0), 1e-5);
        }
    }
}

#[test]
fn heat_of_racking_is_the_friction_of_a_ramp() {
    let (racking, speed, efficiency) = (1500.0, 0.2, 0.93);
    let force = 4000.0;
    let friction = |racking: f64| -> f64 {
        (0..1000)
            .map(|place| force + racking * (f64::from(place) + 0.5) / 1000.0)
            .map(|force| (force / efficiency - force) * speed / 1000.0)
            .sum()
    };
    let heat = (RACKED_NUT_HEAT.apply)(
        Power::of_si(friction(0.0)),
        Force::of_si(racking),
        Velocity::of_si(speed),
        Ratio::of_si(efficiency),
    );
    close("heat", heat.si(), friction(racking), 1e-9);
}
