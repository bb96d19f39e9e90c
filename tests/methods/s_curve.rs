//! The duty in phases against the seven segments integrated step by step.
//!
//! Method: each move is built of segments of constant jerk from the limits alone, its peak speed found by bisection on the
//! integrated distance; torque, force and speed are integrated over time by Simpson's rule within each segment. The phases
//! of the program must give the same root mean square torque, cubic mean force, mean and root mean square speed. All four
//! branches of the profile are tried. Check values of times and speeds: derived in the notes of the project and
//! re-integrated here; no published source.

use axiswright::brief::{Brief, load};
use axiswright::characteristic as ch;
use axiswright::drive::{Demand, Phase};
use axiswright::formula::Series;
use axiswright::formula::motion::move_time;
use axiswright::formula::s_curve::Profile;
use axiswright::formula::{duty, motor};
use axiswright::ledger::{Figures, Known, Ledger};
use axiswright::units::*;
use proptest::prelude::*;

/// Steps of Simpson's rule in a segment; jerk is constant there, so speed is quadratic and a square of it quartic.
const STEPS: usize = 200;

/// Segments (jerk, time) of a move, built without the formulas of the program.
fn segments(s: f64, v: f64, a: f64, j: f64) -> Vec<(f64, f64)> {
    let up = |peak: f64| {
        let ramp = (a / j).min((peak / j).sqrt());
        let hold = (peak / (j * ramp) - ramp).max(0.0);
        [(j, ramp), (0.0, hold), (-j, ramp)]
    };
    let way = |peak: f64| peak * up(peak).iter().map(|(_, time)| time).sum::<f64>();
    let (mut low, mut high) = (0.0, v);
    if way(v) > s {
        for _ in 0..200 {
            let middle = 0.5 * (low + high);
            if way(middle) > s { high = middle } else { low = middle }
        }
    }
    let rise = up(high);
    let cruise = ((s - way(high)) / high).max(0.0);
    // a cruise of rounding only is none
    let cruise = if cruise < 1e-9 { 0.0 } else { cruise };
    let fall = rise.map(|(jerk, time)| (-jerk, time));
    rise.into_iter().chain([(0.0, cruise)]).chain(fall).collect()
}

/// Integrals over the time of a move of a function of speed and acceleration.
fn integral(segments: &[(f64, f64)], of: impl Fn(f64, f64) -> f64) -> f64 {
    let (mut speed, mut acceleration, mut sum) = (0.0, 0.0, 0.0);
    for &(jerk, time) in segments {
        let step = time / STEPS as f64;
        let at = |t: f64| of(speed + acceleration * t + 0.5 * jerk * t * t, acceleration + jerk * t);
        for index in 0..STEPS {
            let t = index as f64 * step;
            sum += step / 6.0 * (at(t) + 4.0 * at(t + 0.5 * step) + at(t + step));
        }
        speed += acceleration * time + 0.5 * jerk * time * time;
        acceleration += jerk * time;
    }
    sum
}

fn profile(s: f64, v: f64, a: f64, j: f64) -> Profile {
    Profile::new(Length::of_si(s), Velocity::of_si(v), Acceleration::of_si(a), Jerk::of_si(j))
}

/// One move over and over, both ways, on a level axis without friction of guides.
fn to_and_fro(s: f64, v: f64, a: f64, j: f64) -> Brief {
    let time = move_time(Length::of_si(s), Velocity::of_si(v), Acceleration::of_si(a), Jerk::of_si(j)).si();
    let count = 1800.0 / time;
    let text = format!(
        "machine: Test\naxes:\n  x:\n    direction: horizontal\n    travel: {s:?} m\n    moved-mass: 100 kg\n    \
         speed: {v:?} m/s\n    acceleration: {a:?} m/s²\n    jerk: {j:?} m/s³\n    guide-friction: 0\n    \
         moves: [{{ distance: {s:?} m, count-per-hour: {count:?} }}]\n"
    );
    load("test.yaml", &text).unwrap_or_else(|faults| panic!("{faults}\n{text}"))
}

fn shared(phases: &[Phase]) -> Vec<Phase> {
    phases.iter().copied().filter(|phase| phase.share > 0.0).collect()
}

fn close(what: &str, found: f64, expected: f64, tolerance: f64) {
    assert!((found - expected).abs() <= tolerance * expected.abs(), "{what}: {found}, integrated {expected}");
}

/// Means over the phases of one direction against those of the integrated segments. The force is m·a plus a constant that
/// is larger than m·a, so that it keeps its sign in every ramp; the torque adds turning inertia.
fn compare(s: f64, v: f64, a: f64, j: f64) {
    let brief = to_and_fro(s, v, a, j);
    let demand = Demand::new(&brief, 0, Mass::of_si(0.0));
    let forward: Vec<Phase> = shared(&demand.phases).into_iter().filter(|phase| phase.direction > 0.0).collect();
    let moved: f64 = forward.iter().map(|phase| phase.share).sum();
    assert!((moved - 0.25).abs() < 1e-9, "a quarter of the time goes forward, not {moved}");
    let segments = segments(s, v, a, j);
    let time = integral(&segments, |_, _| 1.0);
    let force = |acceleration: f64| 100.0 * acceleration + 150.0 * a;
    let torque = |acceleration: f64| 0.002 * force(acceleration) + 0.3 * acceleration + 0.1;
    let mean = |of: &dyn Fn(&Phase) -> f64| forward.iter().map(|phase| phase.share * of(phase)).sum::<f64>() / moved;
    let over = |of: &dyn Fn(f64, f64) -> f64| integral(&segments, of) / time;
    close("stroke", time * mean(&|phase| phase.speed), s, 1e-8);
    close("torque", mean(&|p| torque(p.acceleration).powi(2)), over(&|_, a| torque(a).powi(2)), 1e-8);
    close(
        "cubic force over the way",
        mean(&|p| force(p.acceleration).powi(3) * p.speed),
        over(&|v, a| force(a).powi(3) * v),
        1e-8,
    );
    close("power", mean(&|p| torque(p.acceleration) * p.speed), over(&|v, a| torque(a) * v), 1e-8);
    close("square of speed", mean(&|p| p.rms_speed.powi(2)), over(&|v, _| v * v), 1e-8);
    close("square of acceleration", mean(&|p| p.acceleration.powi(2)), over(&|_, a| a * a), 1e-8);
}

#[test]
fn phases_of_all_four_branches_have_the_means_of_the_integrated_move() {
    for (s, v, a, j) in
        [(0.8, 0.5, 5.0, 100.0), (0.8, 0.5, 10.0, 100.0), (0.04, 0.5, 5.0, 100.0), (0.01, 0.5, 5.0, 100.0)]
    {
        compare(s, v, a, j);
    }
}

/// Check values of the four branches: top speed, top acceleration, time.
#[test]
fn the_four_branches_reach_what_was_worked_out_apart() {
    let cases = [
        (0.8, 5.0, 0.5, 5.0, 1.75),
        (0.8, 10.0, 0.5, 7.0711, 1.74142),
        (0.04, 5.0, 0.339354, 5.0, 2.0 * (0.339354 / 5.0 + 0.05)),
        (0.01, 5.0, 0.135721, 3.68403, 0.147361),
    ];
    for (s, a, top, reached, time) in cases {
        let found = profile(s, 0.5, a, 100.0);
        close("speed", found.speed, top, 1e-5);
        close("acceleration", found.acceleration, reached, 1e-5);
        close("time", found.time(), time, 1e-5);
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(48) })]

    #[test]
    fn phases_have_the_means_of_the_integrated_move(
        s in 0.002_f64..4.0, v in 0.02_f64..2.0, a in 0.2_f64..20.0, j in 5.0_f64..2000.0,
    ) {
        compare(s, v, a, j);
    }

    #[test]
    fn the_profile_takes_the_time_of_the_move(
        s in 1e-4_f64..20.0, v in 0.01_f64..3.0, a in 0.1_f64..30.0, j in 1.0_f64..3000.0,
    ) {
        let time = move_time(Length::of_si(s), Velocity::of_si(v), Acceleration::of_si(a), Jerk::of_si(j)).si();
        let found = profile(s, v, a, j);
        prop_assert!((found.time() - time).abs() <= 1e-12 * time);
        prop_assert!(found.speed <= v * (1.0 + 1e-12) && found.acceleration <= a * (1.0 + 1e-12));
        // a harder jerk at the same limits is never slower, and reaches no lower speed
        let harder = profile(s, v, a, 2.0 * j);
        prop_assert!(harder.time() <= time * (1.0 + 1e-12) && harder.speed >= found.speed * (1.0 - 1e-12));
    }
}

/// The upright axis whose motor heats least with some mass: corrections to the engineering notes of the project, derived.
/// Lead 10 mm, 3e-3 kg·m², 3 m/s², 0.3 m/s, no friction, efficiency 1; up and down 0.1, 1.0 and 0.1 s each, 0.5 s held
/// by the motor, 3 kN upward during the cruise down.
#[test]
fn a_lifting_force_and_a_weight_that_balance_each_other_leave_a_least_heat() {
    let rms = |mass: f64, credit: bool| {
        // jerk so hard that the ramps are of constant acceleration to within 1e-4
        let text = format!(
            "machine: Test\naxes:\n  z:\n    direction: vertical\n    travel: 0.5 m\n    moved-mass: {mass:?} kg\n    \
             speed: 0.3 m/s\n    acceleration: 3 m/s²\n    jerk: 99999 m/s³\n    guide-friction: 0\n    wiper-force: 0 N\n    \
             cutting-force: 3 kN\n    cutting-force-direction: up\n    cutting-speed: 0.3 m/s\n    moves:\n      \
             - {{ distance: 0.33 m, count-per-hour: {0:?} }}\n      \
             - {{ distance: -0.33 m, force: 3 kN, count-per-hour: {0:?} }}\n",
            3600.0 / 2.9
        );
        let brief = load("test.yaml", &text).unwrap_or_else(|faults| panic!("{faults}"));
        let demand = Demand::new(&brief, 0, Mass::of_si(0.0));
        let mut sheet = Known::default();
        demand.enter(&mut sheet);
        sheet.given(ch::RIDING_MASS, Mass::of_si(0.0), axiswright::ledger::Origin::Assumed);
        demand.enter_masses(&mut sheet);
        demand.enter_forces(&mut sheet);
        let (arm, inertia) = (0.01 / std::f64::consts::TAU, 3e-3);
        let (mut torques, mut shares) = (Vec::new(), Vec::new());
        for (index, phase) in demand.phases.iter().enumerate() {
            let force = if credit {
                duty::axial_force(
                    Mass::of_si(mass),
                    Acceleration::of_si(phase.acceleration),
                    Angle::of_si(std::f64::consts::FRAC_PI_2),
                    Ratio::of_si(0.0),
                    Force::of_si(phase.process),
                    Force::of_si(0.0),
                    Ratio::of_si(phase.direction),
                    Ratio::of_si(0.0),
                )
            } else {
                sheet.read(ch::PHASE_FORCE.phase(index))
            };
            torques.push(force.si() * arm + inertia * phase.acceleration / arm);
            shares.push(phase.share);
        }
        assert!((shares.iter().sum::<f64>() - 1.0).abs() < 1e-12);
        motor::rms_torque(Series::of_si(&torques), Series::of_si(&shares)).si()
    };
    for (mass, expected) in [(1e-6, 3.50), (100.0, 3.22), (300.0, 4.61)] {
        assert!((rms(mass, true) - expected).abs() <= 0.005 + 1e-3, "{mass} kg: {}", rms(mass, true));
    }
    // the program relies on no force that helps: as long as the force outweighs the weight it counts in full, and where
    // the weight is the larger the drive is judged as if the tool cut air
    for mass in [1e-6, 100.0] {
        assert!((rms(mass, false) - rms(mass, true)).abs() < 1e-9, "{mass} kg");
    }
    assert!(rms(300.0, false) > 1.1 * rms(300.0, true));
}
