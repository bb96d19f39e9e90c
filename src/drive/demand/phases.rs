//! The duty in phases: what the drive does, for which share of the time.
//!
//! Method: every move is a seven-segment profile (formula/s_curve.rs). Speeding up becomes three phases with the mean
//! speed `v_p/2`: the constant part, and two points of Gauss and Legendre for both ramps together; slowing down
//! likewise, and cruising one: seven phases a direction, fourteen a line. Parts that take no time are left out. What
//! stands is one phase. A cutting force acts while cruising; in a stroke too short for that, all the way.
//!
//! Further phases with no share of time hold the requirement itself: full acceleration at full speed and the full cutting
//! force at cutting speed, both ways. They count for peaks and not for means; jerk is not credited in them, and one that
//! the duty already holds is left out. A gas spring is weaker than its mean in those that push upward and stronger in
//! those that push downward, and both for the cutting force; every other pair has the smaller force. A line with a force, and
//! one that stands, has both ends of the stroke in further phases without a share as well.

use crate::brief::{Axis, CounterbalanceKind, CuttingDirection, MOST_LINES};
use crate::formula::MOST_PHASES;
use crate::formula::s_curve::{Profile, RAMP_POINTS};
use crate::units::*;

// whatever a brief may say finds room: phases of one line of moves, of one that stands, and of the requirement itself,
// with both ends of a gas spring's stroke
const _: () = {
    let (moving, standing, itself) = (18, 3, 8);
    assert!(MOST_LINES.0 * moving + MOST_LINES.1 * standing + itself <= MOST_PHASES);
};

/// One phase of the duty; signs are positive upward or forward.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Phase {
    /// Share of the working time.
    pub share: f64,
    /// Direction of motion: 1, -1, or 0 standing.
    pub direction: f64,
    /// Mean speed, m/s.
    pub speed: f64,
    /// Root mean square speed, m/s, without sign.
    pub rms_speed: f64,
    /// Top speed, m/s.
    pub top_speed: f64,
    /// Acceleration, m/s².
    pub acceleration: f64,
    /// Stroke of the move it belongs to, m; zero where there is none.
    pub stroke: f64,
    /// Moves of its kind in an hour of work; zero where there is none.
    pub moves: f64,
    /// Process force that the drive may have to add, N.
    pub process: f64,
    /// Share of the weight that the counterbalance carries.
    pub balance: f64,
}

/// The longest times of single parts of the moves, s.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Longest {
    /// From rest to full speed, ramps of jerk included.
    pub ramp: f64,
    /// Under a cutting force without a stop.
    pub cut: f64,
}

/// All moves of one kind in one direction.
struct Run {
    share: f64,
    direction: f64,
    profile: Profile,
    stroke: f64,
    force: f64,
}

/// The cutting force of this size with the sign that the formula of a phase takes: against upward or forward motion.
fn process(axis: &Axis, size: f64) -> f64 {
    match axis.cutting_force_direction.value {
        // a force that pushes the slide upward or forward takes load off the drive
        CuttingDirection::Up | CuttingDirection::Forward => -size,
        CuttingDirection::Down | CuttingDirection::Back | CuttingDirection::Both => size,
    }
}

/// Share of the weight that is balanced: the least on the stroke, the mean, the most.
fn balance(axis: &Axis) -> [f64; 3] {
    let Some(counterbalance) = &axis.counterbalance else { return [0.0; 3] };
    let share = counterbalance.share.si();
    let ripple = match counterbalance.kind {
        CounterbalanceKind::Gas => counterbalance.ripple.value.si(),
        CounterbalanceKind::Weight => 0.0,
    };
    [share * (1.0 - ripple), share, share * (1.0 + ripple)]
}

/// The runs of an axis, and the share of time in which it stands, line by line with the force then.
fn runs(axis: &Axis) -> (Vec<Run>, Vec<(f64, f64)>) {
    let (mut runs, mut standing) = (Vec::new(), Vec::new());
    for line in &axis.duty {
        if line.stand {
            standing.push((line.share.si(), line.force.si()));
            continue;
        }
        let (speed, stroke) = (line.speed.unwrap_or(axis.speed), line.stroke.unwrap_or(axis.usual_stroke()));
        let profile = Profile::new(stroke, speed, axis.acceleration, axis.jerk.value);
        for direction in [1.0, -1.0] {
            let share = 0.5 * line.share.si();
            runs.push(Run { share, direction, profile, stroke: stroke.si(), force: line.force.si() });
        }
    }
    let mut moving = 0.0;
    for line in &axis.moves {
        let profile = line.profile();
        let share = line.count_per_hour * profile.time() / SECONDS_PER_HOUR;
        moving += share;
        let stroke = line.distance.si().abs();
        let mut run = |share, direction| runs.push(Run { share, direction, profile, stroke, force: line.force.si() });
        if axis.signed_moves() {
            run(share, line.distance.si().signum());
        } else {
            run(0.5 * share, 1.0);
            run(0.5 * share, -1.0);
        }
    }
    if !axis.moves.is_empty() && moving < 1.0 {
        standing.push((1.0 - moving, 0.0));
    }
    (runs, standing)
}

const SECONDS_PER_HOUR: f64 = 3600.0;

/// The phases of an axis.
pub fn phases(axis: &Axis) -> Vec<Phase> {
    let (runs, standing) = runs(axis);
    let mut phases = Vec::new();
    let mean = balance(axis)[1];
    for run in &runs {
        add_run(axis, run, mean, &mut phases);
    }
    for (share, force) in standing {
        let process = process(axis, force);
        let still = Phase {
            share,
            direction: 0.0,
            speed: 0.0,
            rms_speed: 0.0,
            top_speed: 0.0,
            acceleration: 0.0,
            stroke: 0.0,
            moves: 0.0,
            process,
            balance: mean,
        };
        phases.push(still);
    }
    add_ends(axis, &runs, &mut phases);
    add_requirement(axis, &mut phases);
    phases
}

/// Of each direction the phases with the fastest speeding up, at the highest speed, and with the largest process force.
pub fn telling(phases: &[Phase]) -> Vec<usize> {
    let mut telling = Vec::new();
    for direction in [1.0, -1.0] {
        let moving = || phases.iter().enumerate().filter(|(_, phase)| phase.direction == direction);
        let speeding = |phase: &Phase| (direction * phase.acceleration, phase.top_speed);
        let pushing = |phase: &Phase| (phase.process.abs(), phase.top_speed);
        let order =
            |one: (f64, f64), other: (f64, f64)| one.0.total_cmp(&other.0).then_with(|| one.1.total_cmp(&other.1));
        telling.extend(moving().max_by(|a, b| order(speeding(a.1), speeding(b.1))).map(|(index, _)| index));
        telling.extend(moving().max_by(|a, b| order(pushing(a.1), pushing(b.1))).map(|(index, _)| index));
    }
    telling.sort_unstable();
    telling.dedup();
    telling
}

fn add_run(axis: &Axis, run: &Run, balance: f64, phases: &mut Vec<Phase>) {
    let profile = &run.profile;
    let time = profile.time();
    let process = process(axis, run.force);
    let cruises = profile.cruise_time > 0.0;
    let mut add = |part: f64, speed: f64, rms_speed: f64, acceleration: f64, process: f64| {
        if part > 0.0 {
            phases.push(Phase {
                share: run.share * part / time,
                direction: run.direction,
                speed: run.direction * speed,
                rms_speed,
                top_speed: profile.speed,
                acceleration: run.direction * acceleration,
                stroke: run.stroke,
                moves: SECONDS_PER_HOUR * run.share / time,
                process,
                balance,
            });
        }
    };
    let beside = if cruises { 0.0 } else { process };
    let (mean, rms) = (0.5 * profile.speed, profile.rms_speed());
    for sign in [1.0, -1.0] {
        add(profile.constant_time(), mean, rms, sign * profile.acceleration, beside);
        for point in RAMP_POINTS {
            add(profile.jerk_time, mean, rms, sign * point * profile.acceleration, beside);
        }
        if sign > 0.0 {
            add(profile.cruise_time, profile.speed, profile.speed, 0.0, process);
        }
    }
}

/// Adds the ends of a gas spring's stroke: to runs with a force, whose force no phase of the requirement holds, and to
/// standing.
fn add_ends(axis: &Axis, runs: &[Run], phases: &mut Vec<Phase>) {
    let [least, mean, most] = balance(axis);
    if least == mean && mean == most {
        return;
    }
    let standing: Vec<Phase> = phases.iter().filter(|phase| phase.direction == 0.0).copied().collect();
    for still in standing {
        for balance in [least, most] {
            add_unless_covered(phases, Phase { share: 0.0, balance, ..still });
        }
    }
    for run in runs.iter().filter(|run| run.force > 0.0) {
        let profile = &run.profile;
        // without cruising the force acts while the speed changes, and upward the weakest end is the worst
        let size = if profile.cruise_time > 0.0 { 0.0 } else { profile.acceleration };
        for (acceleration, balance) in [(size, least), (-size, most)] {
            let end = Phase {
                share: 0.0,
                direction: run.direction,
                speed: run.direction * profile.speed,
                rms_speed: profile.speed,
                top_speed: profile.speed,
                acceleration,
                stroke: 0.0,
                moves: 0.0,
                process: process(axis, run.force),
                balance,
            };
            add_unless_covered(phases, end);
        }
    }
}

fn add_requirement(axis: &Axis, phases: &mut Vec<Phase>) {
    let [least, _, most] = balance(axis);
    let (v, a) = (axis.speed.si(), axis.acceleration.si());
    let extreme = |direction: f64, mean: f64, top: f64, acceleration: f64, process: f64, balance: f64| Phase {
        share: 0.0,
        direction,
        speed: direction * mean,
        rms_speed: mean,
        top_speed: top,
        acceleration,
        stroke: 0.0,
        moves: 0.0,
        process,
        balance,
    };
    let cutting = axis.cutting_speed.value.si();
    let process = process(axis, axis.cutting_force.value.si());
    for direction in [1.0, -1.0] {
        for (acceleration, balance) in [(a, least), (-a, most)] {
            add_unless_covered(phases, extreme(direction, v / 2.0, v, acceleration, 0.0, balance));
        }
        for balance in [least, most] {
            add_unless_covered(phases, extreme(direction, cutting, cutting, 0.0, process, balance));
        }
    }
}

/// Adds a phase that has no share of time, unless there is one with the same demand on force and speed.
fn add_unless_covered(phases: &mut Vec<Phase>, phase: Phase) {
    let covers = |other: &Phase| {
        other.direction == phase.direction
            && other.acceleration == phase.acceleration
            && other.process == phase.process
            && other.top_speed == phase.top_speed
            && other.balance == phase.balance
    };
    if !phases.iter().any(covers) {
        phases.push(phase);
    }
}

/// The longest parts of the moves; of the ramp at least that from rest to the full speed of the axis.
pub fn longest(axis: &Axis) -> Longest {
    let full = Profile::new(axis.travel, axis.speed, axis.acceleration, axis.jerk.value);
    let mut longest = Longest { ramp: full.speeding_time, cut: 0.0 };
    for run in runs(axis).0 {
        let profile = run.profile;
        let cut = if profile.cruise_time > 0.0 { profile.cruise_time } else { profile.time() };
        if profile.speeding_time > longest.ramp {
            longest.ramp = profile.speeding_time;
        }
        if run.force > 0.0 && cut > longest.cut {
            longest.cut = cut;
        }
    }
    longest
}
