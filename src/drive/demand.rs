//! What an axis demands of any drive: the brief's requirement, the mass it carries, and the duty in phases.
//!
//! Method: every moving share of the duty becomes up to six phases, accelerating, cruising and braking in
//! each direction, over the stroke of that share; a standing share becomes one phase. Further phases with
//! no share of time hold the requirement itself: full acceleration at full speed and the full cutting force
//! at cutting speed, both ways. They count for peaks and not for means; one that the duty already holds is left out.
//! A cutting force that helps the drive counts for peaks only: life and heating are judged as if the tool cut air.
//! Limits: ramps are taken with constant acceleration; jerk lengthens a move but does not split its phases.

use crate::brief::{Axis, Brief, CuttingDirection, DutyShare};
use crate::characteristic as ch;
use crate::formula::{MOST_PHASES, duty, layout, motion, moves};
use crate::ledger::{Ledger, Origin};
use crate::units::*;

/// One phase of the duty; signs are positive upward or forward.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Phase {
    /// Share of the working time.
    pub share: f64,
    /// Direction of motion: 1, -1, or 0 standing.
    pub direction: f64,
    /// Mean speed, m/s.
    pub speed: f64,
    /// Top speed, m/s.
    pub top_speed: f64,
    /// Acceleration, m/s².
    pub acceleration: f64,
    /// Stroke of the move it belongs to, m; zero where there is none.
    pub stroke: f64,
    /// Process force that the drive has to add, N.
    pub process: f64,
}

/// The demand of one axis at one carried mass.
#[derive(Debug, Clone)]
pub struct Demand<'a> {
    /// The brief.
    pub brief: &'a Brief,
    /// The axis.
    pub axis: &'a Axis,
    /// Mass of the axes it carries, with their drives.
    pub carried: Mass,
    /// Farthest place of a carried axis from the middle, over the distance of the drives.
    pub reach: Ratio,
    /// The duty.
    pub phases: Vec<Phase>,
}

/// The signs that a cutting force may have for the drive at full size, moving this way. On an inclined axis a
/// force of either way may act along the weight or against it.
fn peak_signs(axis: &Axis, motion: f64) -> Vec<f64> {
    match axis.cutting_force_direction.value {
        CuttingDirection::Both if axis.inclination.si() > 0.0 => vec![1.0, -1.0],
        CuttingDirection::Both => vec![motion],
        // a force that pushes the slide upward or forward takes load off the drive
        CuttingDirection::Up | CuttingDirection::Forward => vec![-1.0],
        CuttingDirection::Down | CuttingDirection::Back => vec![1.0],
    }
}

/// The sign with which a force counts for life and heating: the worse way, and nothing where it would help.
fn duty_sign(axis: &Axis, motion: f64) -> f64 {
    let inclined = axis.inclination.si() > 0.0;
    let sign = match axis.cutting_force_direction.value {
        CuttingDirection::Both if inclined || motion == 0.0 => 1.0,
        CuttingDirection::Both => motion,
        CuttingDirection::Up | CuttingDirection::Forward => -1.0,
        CuttingDirection::Down | CuttingDirection::Back => 1.0,
    };
    let helps = if inclined { sign < 0.0 } else { sign * motion < 0.0 };
    if helps { 0.0 } else { sign }
}

impl<'a> Demand<'a> {
    /// The demand of the axis with this index, carrying this mass.
    pub fn new(brief: &'a Brief, index: usize, carried: Mass) -> Demand<'a> {
        let axis = &brief.axes[index];
        Demand { brief, axis, carried, reach: carriage_reach(brief, axis), phases: phases(axis) }
    }

    /// Whether two drives move the axis together.
    #[inline(always)]
    pub fn two_sided(&self) -> bool {
        self.axis.drives.value == 2 && self.axis.drive_spacing.is_some()
    }

    fn stated<T>(stated: bool, _: &T) -> Origin {
        if stated { Origin::Brief } else { Origin::Assumed }
    }

    /// Enters the requirement and what follows from it alone.
    pub fn enter<L: Ledger>(&self, sheet: &mut L) {
        let (axis, brief) = (self.axis, self.brief);
        let said = |stated: bool| if stated { Origin::Brief } else { Origin::Assumed };
        sheet.given(ch::TRAVEL, axis.travel, Origin::Brief);
        sheet.given(ch::OVERTRAVEL, axis.overtravel.value, said(axis.overtravel.stated));
        sheet.given(ch::SPEED, axis.speed, Origin::Brief);
        sheet.given(ch::ACCELERATION, axis.acceleration, Origin::Brief);
        sheet.given(ch::JERK, axis.jerk.value, said(axis.jerk.stated));
        sheet.given(ch::INCLINATION, axis.inclination, Origin::Brief);
        sheet.given(ch::MOVED_MASS, axis.moved_mass, Origin::Brief);
        sheet.given(ch::CARRIED_MASS, self.carried, Origin::Brief);
        sheet.given(ch::DRIVES, Ratio::of_si(f64::from(axis.drives.value)), said(axis.drives.stated));
        sheet.given(ch::CARRIAGE_REACH, self.reach, Origin::Brief);
        super::sides::requirement(self, sheet);
        sheet.given(ch::GUIDE_FRICTION, axis.guide_friction.value, said(axis.guide_friction.stated));
        sheet.given(ch::WIPER_FORCE, axis.wiper_force.value, said(axis.wiper_force.stated));
        let counterbalance = axis.counterbalance.as_ref().map_or(Ratio::of_si(0.0), |balance| balance.share);
        sheet.given(ch::COUNTERBALANCE_SHARE, counterbalance, said(axis.counterbalance.is_some()));
        let people = Ratio::of_si(if axis.people_below.value { 1.0 } else { 0.0 });
        sheet.given(ch::PEOPLE_BELOW, people, said(axis.people_below.stated));
        sheet.given(ch::CUTTING_FORCE, axis.cutting_force.value, said(axis.cutting_force.stated));
        sheet.given(ch::CUTTING_SPEED, axis.cutting_speed.value, said(axis.cutting_speed.stated));
        sheet.given(ch::TEMPERATURE_SWING, brief.temperature_swing.value, said(brief.temperature_swing.stated));
        let hour = 3600.0;
        let years = brief.years_in_service.value;
        let hours = brief.hours_per_year.value;
        sheet.given(ch::SERVICE_YEARS, Time::of_si(years * 31_557_600.0), said(brief.years_in_service.stated));
        sheet.given(ch::HOURS_PER_YEAR, Time::of_si(hours * hour), said(brief.hours_per_year.stated));
        sheet.computed(ch::SERVICE_HOURS, &layout::SERVICE_HOURS, (ch::SERVICE_YEARS, ch::HOURS_PER_YEAR));
        sheet.given(ch::ENERGY_PRICE, brief.energy_price.value, said(brief.energy_price.stated));
        sheet.given(ch::DISCOUNT_RATE, brief.discount_rate.value, said(brief.discount_rate.stated));
        sheet.computed(ch::ANNUITY, &crate::formula::cost::ANNUITY, (ch::DISCOUNT_RATE, ch::SERVICE_YEARS));
        super::motor::site(&brief.site, sheet);
        self.enter_requirements(sheet);
        self.enter_assumptions(sheet);
        self.enter_phases(sheet);
        sheet.computed(ch::CUTTING_SHARE, &layout::CUTTING_SHARE, (ch::DRIVES, ch::CARRIAGE_REACH));
        sheet.computed(ch::DRIVE_WIPER_FORCE, &duty::PER_DRIVE_FORCE, (ch::WIPER_FORCE, ch::DRIVES));
        sheet.computed(ch::DRIVE_CUTTING_FORCE, &layout::SHARED_FORCE, (ch::CUTTING_FORCE, ch::CUTTING_SHARE));
        for index in 0..self.phases.len() {
            sheet.computed(
                ch::PHASE_DRIVE_PROCESS_FORCE.phase(index),
                &layout::SHARED_FORCE,
                (ch::PHASE_PROCESS_FORCE.phase(index), ch::CUTTING_SHARE),
            );
        }
        let count = self.phases.len();
        let moved = (ch::PHASE_SHARE.all(count), ch::PHASE_SPEED.all(count), ch::PHASE_STROKE.all(count));
        sheet.computed(ch::MOVES_PER_HOUR, &moves::MOVES_PER_HOUR, moved);
        let (shares, speeds, strokes) = moved;
        sheet.computed(ch::MEAN_STROKE, &moves::MEAN_STROKE, (shares, speeds, strokes, ch::USUAL_STROKE));
        sheet.computed(ch::MEAN_SPEED, &motion::MEAN_SPEED, (ch::PHASE_SHARE.all(count), ch::PHASE_SPEED.all(count)));
        sheet.computed(ch::SERVICE_DISTANCE, &motion::SERVICE_DISTANCE, (ch::MEAN_SPEED, ch::SERVICE_HOURS));
        sheet.computed(ch::MOVE_TIME, &motion::MOVE_TIME, (ch::USUAL_STROKE, ch::SPEED, ch::ACCELERATION, ch::JERK));
    }

    /// Requirements are entered only where the brief states them; rules on them are judged only then.
    fn enter_requirements<L: Ledger>(&self, sheet: &mut L) {
        let axis = self.axis;
        let lengths = [
            (ch::REQUIRED_ACCURACY, axis.accuracy),
            (ch::REQUIRED_SECTION_ACCURACY, axis.section_accuracy),
            (ch::REQUIRED_REPEATABILITY, axis.repeatability),
            (ch::REQUIRED_REVERSAL, axis.reversal),
            (ch::REQUIRED_DEFLECTION, axis.cutting_deflection),
        ];
        for (characteristic, stated) in lengths {
            if let Some(value) = stated {
                sheet.given(characteristic, value, Origin::Brief);
            }
        }
        if let Some(ripple) = axis.ripple.value {
            let origin = Self::stated(axis.ripple.stated, &ripple);
            sheet.given(ch::REQUIRED_RIPPLE, ripple, origin);
        }
        if let Some(lead_time) = self.brief.limits.lead_time {
            sheet.given(ch::LEAD_TIME_LIMIT, lead_time, Origin::Brief);
        }
        if let Some(first_mode) = axis.first_mode {
            sheet.given(ch::REQUIRED_FIRST_MODE, first_mode, Origin::Brief);
        }
    }

    fn enter_assumptions<L: Ledger>(&self, sheet: &mut L) {
        let d = super::defaults::for_axis(self.axis);
        let strokes_stated = self.axis.duty.iter().all(|line| line.stand || line.stroke.is_some());
        sheet.given(ch::USUAL_STROKE, d.usual_stroke, if strokes_stated { Origin::Brief } else { Origin::Assumed });
        sheet.given(ch::BRACKET_STIFFNESS, d.bracket_stiffness, Origin::Assumed);
        sheet.given(ch::SCALE_MOUNT_STIFFNESS, d.scale_mount_stiffness, Origin::Assumed);
        sheet.given(ch::END_GAP, d.end_gap, Origin::Assumed);
        sheet.given(ch::FRICTION_SCATTER, d.friction_scatter, Origin::Assumed);
        sheet.given(ch::BRAKE_DELAY, d.brake_delay, Origin::Assumed);
        sheet.given(ch::BRAKE_SHARE, d.brake_share, Origin::Assumed);
        sheet.given(ch::TORQUE_MARGIN, d.torque_margin, Origin::Assumed);
        sheet.given(ch::COMPENSATED_PLAY, d.compensated_play, Origin::Assumed);
        sheet.given(ch::SECTION_LIMIT, Length::of_si(2.0), Origin::Assumed);
        sheet.computed(ch::SECTION_LENGTH, &layout::LESSER_LENGTH, (ch::TRAVEL, ch::SECTION_LIMIT));
    }

    fn enter_phases<L: Ledger>(&self, sheet: &mut L) {
        let origin = if self.axis.duty_stated { Origin::Brief } else { Origin::Assumed };
        for (index, phase) in self.phases.iter().enumerate() {
            sheet.given(ch::PHASE_SHARE.phase(index), Ratio::of_si(phase.share), origin);
            sheet.given(ch::PHASE_DIRECTION.phase(index), Ratio::of_si(phase.direction), origin);
            sheet.given(ch::PHASE_SPEED.phase(index), Velocity::of_si(phase.speed), origin);
            sheet.given(ch::PHASE_TOP_SPEED.phase(index), Velocity::of_si(phase.top_speed), origin);
            sheet.given(ch::PHASE_ACCELERATION.phase(index), Acceleration::of_si(phase.acceleration), origin);
            sheet.given(ch::PHASE_STROKE.phase(index), Length::of_si(phase.stroke), origin);
            sheet.given(ch::PHASE_PROCESS_FORCE.phase(index), Force::of_si(phase.process), origin);
        }
    }

    /// Enters masses and forces, once the riding mass is known.
    #[inline(always)]
    pub fn enter_forces<L: Ledger>(&self, sheet: &mut L) {
        let count = self.phases.len();
        sheet.computed(ch::MOVING_MASS, &duty::MOVING_MASS, (ch::MOVED_MASS, ch::CARRIED_MASS, ch::RIDING_MASS));
        super::sides::share(self, sheet);
        sheet.computed(ch::DRIVEN_MASS, &duty::DRIVEN_MASS, (ch::MOVING_MASS, ch::LOAD_SHARE));
        sheet.computed(
            ch::FRICTION_FORCE,
            &duty::FRICTION_FORCE,
            (ch::DRIVEN_MASS, ch::INCLINATION, ch::GUIDE_FRICTION, ch::DRIVE_WIPER_FORCE),
        );
        sheet.computed(ch::GRAVITY_FORCE, &duty::GRAVITY_FORCE, (ch::DRIVEN_MASS, ch::INCLINATION));
        for index in 0..count {
            sheet.computed(
                ch::PHASE_FORCE.phase(index),
                &duty::AXIAL_FORCE,
                (
                    ch::DRIVEN_MASS,
                    ch::PHASE_ACCELERATION.phase(index),
                    ch::INCLINATION,
                    ch::GUIDE_FRICTION,
                    ch::PHASE_DRIVE_PROCESS_FORCE.phase(index),
                    ch::DRIVE_WIPER_FORCE,
                    ch::PHASE_DIRECTION.phase(index),
                    ch::COUNTERBALANCE_SHARE,
                ),
            );
        }
        super::sides::motion_peak(self, sheet);
        sheet.computed(
            ch::MEAN_FORCE,
            &duty::MEAN_FORCE,
            (ch::PHASE_FORCE.all(count), ch::PHASE_SHARE.all(count), ch::PHASE_SPEED.all(count)),
        );
    }
}

/// Half the travel of the longest carried horizontal axis over the distance of the drives; zero otherwise.
fn carriage_reach(brief: &Brief, axis: &Axis) -> Ratio {
    let Some(spacing) = axis.drive_spacing else { return Ratio::of_si(0.0) };
    let across = axis
        .carries
        .iter()
        .map(|&carried| &brief.axes[carried])
        .filter(|carried| carried.inclination.si() < 0.1)
        .map(|carried| carried.travel.si())
        .fold(0.0, |longest: f64, travel| if travel > longest { travel } else { longest });
    let reach = 0.5 * across / spacing.si();
    Ratio::of_si(if reach > 0.5 { 0.5 } else { reach })
}

fn phases(axis: &Axis) -> Vec<Phase> {
    let mut phases = Vec::new();
    for line in &axis.duty {
        if line.stand {
            let process = duty_sign(axis, 0.0) * line.force.si();
            let share = line.share.si();
            phases.push(Phase {
                share,
                direction: 0.0,
                speed: 0.0,
                top_speed: 0.0,
                acceleration: 0.0,
                stroke: 0.0,
                process,
            });
        } else {
            moving_phases(axis, line, &mut phases);
        }
    }
    let (v, a) = (axis.speed.si(), axis.acceleration.si());
    for direction in [1.0, -1.0] {
        for acceleration in [a, -a] {
            let speed = direction * v / 2.0;
            let ramp = Phase { share: 0.0, direction, speed, top_speed: v, acceleration, stroke: 0.0, process: 0.0 };
            add_unless_covered(&mut phases, ramp);
        }
        let cutting = axis.cutting_speed.value.si();
        for sign in peak_signs(axis, direction) {
            let process = sign * axis.cutting_force.value.si();
            let speed = direction * cutting;
            let cut =
                Phase { share: 0.0, direction, speed, top_speed: cutting, acceleration: 0.0, stroke: 0.0, process };
            add_unless_covered(&mut phases, cut);
        }
    }
    phases.truncate(MOST_PHASES);
    phases
}

/// Adds a phase that has no share of time, unless the duty holds one with the same demand on force and speed.
fn add_unless_covered(phases: &mut Vec<Phase>, phase: Phase) {
    let covers = |other: &Phase| {
        other.direction == phase.direction
            && other.acceleration == phase.acceleration
            && other.process == phase.process
            && other.top_speed == phase.top_speed
    };
    if !phases.iter().any(covers) {
        phases.push(phase);
    }
}

fn moving_phases(axis: &Axis, line: &DutyShare, phases: &mut Vec<Phase>) {
    let speed = line.speed.unwrap_or(axis.speed).si();
    let acceleration = axis.acceleration.si();
    let stroke = line.stroke.unwrap_or(axis.usual_stroke()).si();
    let full_ramps = speed * speed / acceleration;
    let (top, cruise_time) = if stroke >= full_ramps {
        (speed, (stroke - full_ramps) / speed)
    } else {
        ((stroke * acceleration).sqrt(), 0.0)
    };
    let ramp_time = top / acceleration;
    let move_time = 2.0 * ramp_time + cruise_time;
    for direction in [1.0, -1.0] {
        let ramp = 0.5 * line.share.si() * ramp_time / move_time;
        let cruise = 0.5 * line.share.si() * cruise_time / move_time;
        let process = duty_sign(axis, direction) * line.force.si();
        let phase = |share, speed, acceleration, process| Phase {
            share,
            direction,
            speed: direction * speed,
            top_speed: top,
            acceleration: direction * acceleration,
            stroke,
            process,
        };
        phases.push(phase(ramp, top / 2.0, acceleration, 0.0));
        phases.push(phase(cruise, top, 0.0, process));
        phases.push(phase(ramp, top / 2.0, -acceleration, 0.0));
    }
}
