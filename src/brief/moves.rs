//! Reading the work of an axis as moves, so many an hour, in place of shares of time.
//!
//! Method: a value that a move leaves out is that of the axis. Checks of all moves together wait for no fault in one of
//! them that does not touch them: what cannot be read of a move leaves out only the sums it belongs to.

use super::MOST_LINES;
use super::duty::{force, no_more_than};
use super::reader::{Reader, above_zero_to, zero_to};
use super::types::{Entry, Move};
use crate::units::{Acceleration, Angle, Force, Jerk, Length, Measure, Time, Velocity, significant};
use crate::yaml::Node;

/// Part of all distance by which signed moves may fail to come back.
const DRIFT: f64 = 1e-3;
const HOUR: f64 = 3600.0;
const MOST_AN_HOUR: f64 = 1e6;

/// What the axis says that its moves keep to.
#[derive(Clone, Copy)]
pub(super) struct Axis {
    pub inclination: Option<Angle>,
    pub travel: Option<Length>,
    pub speed: Option<Velocity>,
    pub acceleration: Option<Acceleration>,
    pub jerk: Option<Jerk>,
    pub cutting_force: Option<Entry<Force>>,
}

/// What could be read of one move.
struct Line {
    distance: Option<Length>,
    count: Option<f64>,
    whole: Option<Move>,
}

/// The moves of an axis, in the node that lists them.
pub(super) fn read(node: &Node<'_>, axis: &Axis, reader: &mut Reader<'_>) -> Option<Vec<Move>> {
    let items = node.list(reader.faults);
    if node.is_list() && items.is_empty() {
        node.fault(reader.faults, "there are no moves", Some("list some, or state a `duty:`".into()));
    }
    let lines: Vec<Line> = items.iter().map(|item| line(item, axis, reader)).collect();
    if lines.len() > MOST_LINES.0 {
        let message = format!("at most {} moves are possible, not {}", MOST_LINES.0, lines.len());
        node.fault(reader.faults, message, Some("put moves together that are alike".into()));
    }
    check_return(node, axis, &lines, reader);
    let moves: Vec<Move> = lines.into_iter().map(|line| line.whole).collect::<Option<_>>()?;
    if moves.is_empty() {
        return None;
    }
    check_time(node, &moves, reader);
    Some(moves)
}

/// Signed moves have to end where they began.
fn check_return(node: &Node<'_>, axis: &Axis, lines: &[Line], reader: &mut Reader<'_>) {
    let signed: Option<Vec<f64>> = lines.iter().map(|line| Some(line.distance?.si() * line.count?)).collect();
    let Some(ways) = signed.filter(|ways| ways.iter().any(|way| *way < 0.0)) else { return };
    let drift: f64 = ways.iter().sum();
    let all: f64 = ways.iter().map(|way| way.abs()).sum();
    if drift.abs() <= DRIFT * all {
        return;
    }
    let level = axis.inclination.is_some_and(|angle| angle.si() == 0.0);
    let way = match (level, drift > 0.0) {
        (true, true) => "forward",
        (true, false) => "back",
        (false, true) => "up",
        (false, false) => "down",
    };
    let message = format!(
        "the moves do not come back: in an hour the axis would drift {} mm {way}",
        significant(drift.abs() * 1e3, 6)
    );
    let help =
        "with signs, distances times counts sum to zero; without any sign every move goes half of its counts each way";
    node.fault(reader.faults, message, Some(help.into()));
}

/// Moves and dwells of an hour fit into it.
fn check_time(node: &Node<'_>, moves: &[Move], reader: &mut Reader<'_>) {
    let taken: f64 = moves.iter().map(|line| line.count_per_hour * (line.profile().time() + line.dwell.si())).sum();
    if taken > HOUR * (1.0 + 1e-9) {
        let message = format!("moves and dwells of an hour take {} s, more than its 3600 s", significant(taken, 6));
        let help = format!("take {} s away: fewer moves, faster ones, or shorter dwells", (taken - HOUR).ceil());
        node.fault(reader.faults, message, Some(help));
    }
}

fn line(node: &Node<'_>, axis: &Axis, reader: &mut Reader<'_>) -> Line {
    let keys = ["distance", "speed", "acceleration", "jerk", "force", "count-per-hour", "dwell"];
    node.only_keys(&keys, reader.faults);
    if !node.is_mapping() {
        return Line { distance: None, count: None, whole: None };
    }
    let distance = distance(node, axis.travel, reader);
    let speed = no_more_than(node, "speed", above_zero_to(10.0, "m/s"), axis.speed, reader);
    let acceleration = no_more_than(node, "acceleration", above_zero_to(100.0, "m/s²"), axis.acceleration, reader);
    let jerk = no_more_than(node, "jerk", above_zero_to(1e5, "m/s³"), axis.jerk, reader);
    let force = force(node, "move", axis.cutting_force, reader);
    let count = count(node, reader);
    let dwell = match node.get("dwell") {
        Some(stated) => reader.bounded(&stated, zero_to(1.0, "h")),
        None => Some(Time::of_si(0.0)),
    };
    let whole = || {
        Some(Move {
            distance: distance?,
            speed: speed?,
            acceleration: acceleration?,
            jerk: jerk?,
            force: force?,
            count_per_hour: count?,
            dwell: dwell?,
        })
    };
    Line { distance, count, whole: whole() }
}

fn distance(node: &Node<'_>, travel: Option<Length>, reader: &mut Reader<'_>) -> Option<Length> {
    let stated = node.need_in("distance", "m", reader.faults)?;
    let distance: Length = stated.quantity(reader.faults)?;
    if distance.si() == 0.0 || distance.si().is_nan() {
        let help = "write how far the axis goes; a time at rest is a `dwell` of the move before";
        let message = "a move has a distance, up or forward positive, down or back negative";
        stated.fault(reader.faults, message, Some(help.into()));
        return None;
    }
    if travel.is_some_and(|travel| distance.si().abs() > travel.si() * (1.0 + 1e-9)) {
        let help = "a move goes at most the `travel`";
        stated.fault(reader.faults, "this distance is longer than the travel of the axis", Some(help.into()));
        return None;
    }
    Some(distance)
}

fn count(node: &Node<'_>, reader: &mut Reader<'_>) -> Option<f64> {
    let Some(stated) = node.get("count-per-hour") else {
        let help = "write how often an hour, for instance `count-per-hour: 120`";
        node.fault(reader.faults, "this move needs a count-per-hour", Some(help.into()));
        return None;
    };
    let count = stated.number(reader.faults)?;
    if count > 0.0 && count <= MOST_AN_HOUR {
        return Some(count);
    }
    stated.fault(reader.faults, format!("must be above 0 and at most {MOST_AN_HOUR}, but is {count}"), None);
    None
}
