//! Working out the curves of an axis.
//!
//! Method: torque of the motor by its own formulas; drives over travel by working the same parts out anew for the brief with
//! another travel. The speed that a drive allows follows from the rules on speeds whose demand is in proportion to the speed
//! of the axis: speed over utilisation, the least of them. Limits: rules of torque, force and heat are not in it; parts that
//! would be chosen otherwise at another travel stay as they are.

use super::candidate_build::{self, shown};
use super::diagrams::*;
use crate::brief::{Axis, Brief};
use crate::characteristic as ch;
use crate::drive::Demand;
use crate::formula::s_curve::Profile;
use crate::formula::{envelope, motor};
use crate::inquiry::Requirement;
use crate::ledger::{Figures, Worksheet};
use crate::rule::{Obligation, Rule, Sense};
use crate::search::{AxisSearch, Found, Setting, Walk, Worked, work_out};
use crate::units::{AngularVelocity, Dimension, Length, Mass, Measure, Velocity};
use rayon::prelude::*;

/// Speeds at which the torque of a motor is given.
const SPEEDS: usize = 41;
/// Travels at which drives are looked at.
const TRAVELS: usize = 29;
/// The least and the largest of them, over the travel of the brief.
const REACH: [f64; 2] = [0.1, 1.5];
/// Points of each segment of a move.
const POINTS: usize = 8;
/// The move that is drawn is this much longer than the shortest that reaches full speed.
const LONGER: f64 = 1.5;
/// How closely a demand follows the speed of the axis to count as in proportion to it.
const IN_PROPORTION: f64 = 1e-9;

/// What the curves are worked out for.
pub struct Subject<'s> {
    /// The brief.
    pub brief: &'s Brief,
    /// The axis, as place in the brief.
    pub axis: usize,
    /// How it was searched.
    pub setting: &'s Setting<'s>,
    /// What was found.
    pub search: &'s AxisSearch,
}

impl Subject<'_> {
    /// The curves; `chosen` is the drive with its sheet.
    pub fn diagrams(&self, chosen: Option<(&Found, &Worksheet)>) -> DiagramsRecord {
        DiagramsRecord {
            motor: chosen.map(|(_, sheet)| motor_curve(sheet)),
            over_travel: self.over_travel(chosen.map(|(found, _)| found)),
            cost_of_accuracy: self.search.families.iter().filter_map(|one| front(one.family, &one.walk)).collect(),
            rapid_move: rapid_move(&self.brief.axes[self.axis]),
        }
    }

    fn over_travel(&self, chosen: Option<&Found>) -> OverTravel {
        let travel = self.brief.axes[self.axis].travel.si();
        let step = (REACH[1] - REACH[0]) / (TRAVELS - 1) as f64;
        let travels: Vec<f64> = (0..TRAVELS).map(|index| travel * (REACH[0] + step * index as f64)).collect();
        let others = self.search.families.iter().filter(|one| chosen.is_none_or(|found| found.family != one.family));
        let of_family = others.filter_map(|one| {
            let best = one.walk.best.first().map(|found| (found.family, found.path, true));
            best.or_else(|| one.nearest.map(|path| (one.family, path, false)))
        });
        let drives = chosen.map(|found| (found.family, found.path, true)).into_iter().chain(of_family);
        let drives = drives.filter_map(|(family, path, admissible)| {
            let now = self.at(self.brief, family, &path)?;
            let rules = self.on_speed(family, &path, &now);
            let parameters = now.sizes.iter().map(candidate_build::parameter).collect();
            let at = travels.par_iter().map(|&travel| self.at_travel(travel, family, &path, &rules)).collect();
            Some(DriveOverTravel { family: family.into(), parameters, admissible, at })
        });
        OverTravel { drives: drives.collect(), travel: travels }
    }

    fn at(&self, brief: &Brief, family: &str, path: &crate::search::Path) -> Option<Worked<'_>> {
        work_out(family, path, &Demand::new(brief, self.axis, Mass::of_si(self.search.carried.weighed)), self.setting)
    }

    /// The binding rules on speeds that follow the speed of the axis in proportion, by id.
    fn on_speed(&self, family: &str, path: &crate::search::Path, now: &Worked<'_>) -> Vec<String> {
        let half = Requirement::Speed.with(self.brief, self.axis, 0.5 * self.brief.axes[self.axis].speed.si());
        let Some(slower) = self.at(&half, family, path) else { return Vec::new() };
        let pairs = now.judged.iter().filter(|judged| of_speed(judged.rule) && judged.utilisation > 0.0);
        let in_proportion = pairs.filter(|judged| {
            let other = slower.judged.iter().find(|other| other.rule.id == judged.rule.id);
            other.is_some_and(|other| (2.0 * other.utilisation / judged.utilisation - 1.0).abs() < IN_PROPORTION)
        });
        in_proportion.map(|judged| judged.rule.id.clone()).collect()
    }

    fn at_travel(&self, travel: f64, family: &str, path: &crate::search::Path, rules: &[String]) -> AtTravel {
        let unknown = AtTravel { speed: f64::NAN, rule: String::new(), stiffness: f64::NAN };
        let brief = Requirement::Travel.with(self.brief, self.axis, travel);
        let Some(worked) = self.at(&brief, family, path) else { return unknown };
        let judged = worked.judged.iter().filter(|judged| rules.contains(&judged.rule.id));
        let tightest = judged.max_by(|a, b| a.utilisation.total_cmp(&b.utilisation));
        let stiffness = shown(ch::TOTAL_STIFFNESS.slot, worked.sheet.value(ch::TOTAL_STIFFNESS.slot));
        let stiffness = stiffness.unwrap_or(f64::NAN);
        match tightest {
            Some(judged) => {
                let speed = self.brief.axes[self.axis].speed.si() / judged.utilisation;
                let speed = shown(ch::SPEED.slot, speed).unwrap_or(f64::NAN);
                AtTravel { speed, rule: judged.rule.id.clone(), stiffness }
            }
            None => AtTravel { stiffness, ..unknown },
        }
    }
}

/// Of what a walk kept the drives that no other beats in cost and accuracy at once, the cheapest first.
fn front(family: &str, walk: &Walk) -> Option<FamilyFront> {
    let kept = walk.best.iter().chain(&walk.front).map(|found| (found.attributes.whole_life, found.attributes.error));
    let mut kept: Vec<(f64, f64)> = kept.filter(|(cost, error)| cost.is_finite() && error.is_finite()).collect();
    kept.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
    let mut least = f64::INFINITY;
    kept.retain(|(_, error)| {
        let better = *error < least;
        if better {
            least = *error;
        }
        better
    });
    let (whole_life, tool_error) = kept.into_iter().map(|(cost, error)| (cost, error * 1e6)).unzip();
    let front = FamilyFront { family: family.into(), tool_error, whole_life };
    Some(front).filter(|front| !front.whole_life.is_empty())
}

/// Whether a rule binds and is the upper limit of a speed.
fn of_speed(rule: &Rule) -> bool {
    let dimension = crate::characteristic::about(rule.demand).0.dimension;
    rule.obligation == Obligation::Shall
        && rule.sense == Sense::AtMost
        && matches!(dimension, Dimension::Velocity | Dimension::AngularVelocity | Dimension::CirculationSpeed)
}

fn motor_curve(sheet: &Worksheet) -> MotorCurve {
    let limit = sheet.read(ch::MOTOR_SPEED_LIMIT);
    let weakened = sheet.value(ch::FIELD_WEAKENING.slot) > 0.0;
    let at = |index: usize| limit.si() * index as f64 / (SPEEDS - 1) as f64;
    let mut speeds: Vec<f64> = (0..SPEEDS).map(at).collect();
    // the corner of the curve is a point of it
    let corner = sheet.value(ch::KNEE_SPEED.slot);
    speeds.extend(Some(corner).filter(|corner| *corner > 0.0 && *corner < limit.si()));
    speeds.sort_by(f64::total_cmp);
    let speeds: Vec<AngularVelocity> = speeds.into_iter().map(AngularVelocity::of_si).collect();
    let (standstill, rated) = (sheet.read(ch::STANDSTILL_TORQUE), sheet.read(ch::RATED_TORQUE));
    let (rated_speed, peak) = (sheet.read(ch::RATED_SPEED), sheet.read(ch::MOTOR_PEAK_TORQUE));
    let knee = sheet.read(ch::KNEE_SPEED);
    let continuous = |speed: AngularVelocity| match weakened {
        true => motor::continuous_torque(speed, standstill, rated, rated_speed),
        false => (envelope::UNWEAKENED_CONTINUOUS_TORQUE.apply)(speed, standstill, rated, rated_speed),
    };
    let most = |speed: AngularVelocity| match weakened {
        true => (envelope::WEAKENED_PEAK_TORQUE.apply)(speed, peak, knee, limit),
        false => motor::available_peak_torque(speed, peak, knee, limit),
    };
    // beyond the speed at which the voltage is used up no torque can be kept up either
    let kept_up = |speed: AngularVelocity| {
        let (lasting, at_most) = (continuous(speed).si(), most(speed).si());
        if lasting < at_most { lasting } else { at_most }
    };
    let told = |slot: usize, value: f64| shown(slot, value).unwrap_or(0.0);
    MotorCurve {
        speed: speeds.iter().map(|speed| told(ch::MOTOR_SPEED.slot, speed.si())).collect(),
        continuous: speeds.iter().map(|&speed| told(ch::CONTINUOUS_TORQUE.slot, kept_up(speed))).collect(),
        peak: speeds.iter().map(|&speed| told(ch::PEAK_TORQUE.slot, most(speed).si())).collect(),
    }
}

/// Speed and acceleration over a move that reaches full speed, or over the whole travel where it is shorter.
fn rapid_move(axis: &Axis) -> MoveCurve {
    let profile = |travel: Length| Profile::new(travel, axis.speed, axis.acceleration, axis.jerk.value);
    let full = profile(Length::of_si(f64::MAX.sqrt()));
    let wanted = LONGER * full.speed * full.speeding_time;
    let travel = if wanted < axis.travel.si() { wanted } else { axis.travel.si() };
    let reached = profile(Length::of_si(travel));
    let (top, rise, ramp) = (reached.speed, reached.acceleration, reached.jerk_time);
    // acceleration at the seven corners, and how long each segment lasts
    let level = [0.0, rise, rise, 0.0, 0.0, -rise, -rise, 0.0];
    let constant = reached.constant_time();
    let lasts = [ramp, constant, ramp, reached.cruise_time, ramp, constant, ramp];
    let mut curve = MoveCurve { travel, time: vec![0.0], speed: vec![0.0], acceleration: vec![0.0] };
    let (mut time, mut speed) = (0.0, 0.0);
    for (index, &lasting) in lasts.iter().enumerate().filter(|(_, lasting)| **lasting > 0.0) {
        let (from, to) = (level[index], level[index + 1]);
        for point in 1..=POINTS {
            let share = point as f64 / POINTS as f64;
            let gained = lasting * (from * share + 0.5 * (to - from) * share * share);
            curve.time.push(time + lasting * share);
            curve.acceleration.push(from + (to - from) * share);
            // the last digit of standstill is rounding
            let now = speed + gained;
            let now = if now.abs() < 1e-12 * top { 0.0 } else { now };
            curve.speed.push(shown(ch::SPEED.slot, Velocity::of_si(now).si()).unwrap_or(0.0));
        }
        time += lasting;
        speed += lasting * 0.5 * (from + to);
    }
    curve
}
