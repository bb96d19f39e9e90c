//! What an axis demands of any drive: the brief's requirement, the mass it carries, and the duty in phases.
//!
//! Method: what follows from the brief alone is entered here, the duty becomes phases in `phases`, and masses and forces
//! are entered in `forces` once a family knows what of its drive rides. Limits: those of the phases.

mod forces;
mod phases;

pub use phases::Phase;

use crate::brief::{Axis, Brief, CounterbalanceKind, CuttingDirection};
use crate::characteristic as ch;
use crate::formula::{cable_chain, counterbalance, duty, energy, layout, motion, moves};
use crate::ledger::{Ledger, Origin};
use crate::units::*;

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
    /// The phases that ask most of a motor as a rule: fastest speeding up and slowing down, and the largest process force.
    pub telling: Vec<usize>,
}

impl<'a> Demand<'a> {
    /// The demand of the axis with this index, carrying this mass.
    pub fn new(brief: &'a Brief, index: usize, carried: Mass) -> Demand<'a> {
        let axis = &brief.axes[index];
        let phases = phases::phases(axis);
        let telling = phases::telling(&phases);
        Demand { brief, axis, carried, reach: carriage_reach(brief, axis), phases, telling }
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
        crate::drive::sides::requirement(self, sheet);
        crate::drive::servo::requirement(self, sheet);
        sheet.given(ch::GUIDE_FRICTION, axis.guide_friction.value, said(axis.guide_friction.stated));
        sheet.given(ch::WIPER_FORCE, axis.wiper_force.value, said(axis.wiper_force.stated));
        self.enter_counterbalance(sheet);
        let people = Ratio::of_si(if axis.people_below.value { 1.0 } else { 0.0 });
        sheet.given(ch::PEOPLE_BELOW, people, said(axis.people_below.stated));
        sheet.given(ch::CUTTING_FORCE, axis.cutting_force.value, said(axis.cutting_force.stated));
        let both = Ratio::of_si(match axis.cutting_force_direction.value {
            CuttingDirection::Both => 1.0,
            CuttingDirection::Up | CuttingDirection::Down | CuttingDirection::Forward | CuttingDirection::Back => 0.0,
        });
        sheet.given(ch::CUTTING_BOTH_WAYS, both, said(axis.cutting_force_direction.stated));
        sheet.given(ch::CUTTING_SPEED, axis.cutting_speed.value, said(axis.cutting_speed.stated));
        sheet.given(ch::TEMPERATURE_SWING, brief.temperature_swing.value, said(brief.temperature_swing.stated));
        sheet.given(ch::RELIABILITY, brief.reliability.value, said(brief.reliability.stated));
        let hour = 3600.0;
        let years = brief.years_in_service.value;
        let hours = brief.hours_per_year.value;
        sheet.given(ch::SERVICE_YEARS, Time::of_si(years * 31_557_600.0), said(brief.years_in_service.stated));
        sheet.given(ch::HOURS_PER_YEAR, Time::of_si(hours * hour), said(brief.hours_per_year.stated));
        sheet.computed(ch::SERVICE_HOURS, &layout::SERVICE_HOURS, (ch::SERVICE_YEARS, ch::HOURS_PER_YEAR));
        sheet.given(ch::ENERGY_PRICE, brief.energy_price.value, said(brief.energy_price.stated));
        sheet.given(ch::DOWNTIME_PRICE, brief.downtime_cost.value, said(brief.downtime_cost.stated));
        sheet.given(ch::DISCOUNT_RATE, brief.discount_rate.value, said(brief.discount_rate.stated));
        sheet.computed(ch::ANNUITY, &crate::formula::cost::ANNUITY, (ch::DISCOUNT_RATE, ch::SERVICE_YEARS));
        super::motor::site(&brief.site, sheet);
        if let Some(tilt) = &axis.tilt {
            crate::drive::mapping::enter_tilt(tilt, sheet);
        }
        self.enter_requirements(sheet);
        self.enter_assumptions(sheet);
        self.enter_phases(sheet);
        sheet.computed(ch::CUTTING_SHARE, &layout::CUTTING_SHARE, (ch::DRIVES, ch::CARRIAGE_REACH));
        self.enter_cable_chain(sheet);
        sheet.computed(ch::DRIVE_WIPER_FORCE, &duty::PER_DRIVE_FORCE, (ch::DRAG_FORCE, ch::DRIVES));
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
        sheet.computed(ch::SLOWING_DISTANCE, &energy::SLOWING_DISTANCE, (ch::SPEED, ch::ACCELERATION, ch::JERK));
        sheet.computed(ch::MOVE_TIME, &motion::MOVE_TIME, (ch::USUAL_STROKE, ch::SPEED, ch::ACCELERATION, ch::JERK));
    }

    fn enter_counterbalance<L: Ledger>(&self, sheet: &mut L) {
        let none = Ratio::of_si(0.0);
        let Some(balance) = &self.axis.counterbalance else {
            sheet.given(ch::COUNTERBALANCE_SHARE, none, Origin::Assumed);
            sheet.given(ch::COUNTERWEIGHT_SHARE, none, Origin::Assumed);
            sheet.absent(ch::COUNTERBALANCE_RIPPLE);
            sheet.absent(ch::GREATEST_BALANCE);
            sheet.absent(ch::ROPE_SLACKENING);
            return;
        };
        sheet.given(ch::COUNTERBALANCE_SHARE, balance.share, Origin::Brief);
        let (hanging, ripple, origin) = match balance.kind {
            CounterbalanceKind::Gas if balance.ripple.stated => (none, balance.ripple.value, Origin::Brief),
            CounterbalanceKind::Gas => (none, balance.ripple.value, Origin::Assumed),
            CounterbalanceKind::Weight => (balance.share, none, Origin::Assumed),
        };
        sheet.given(ch::COUNTERWEIGHT_SHARE, hanging, Origin::Brief);
        sheet.given(ch::COUNTERBALANCE_RIPPLE, ripple, origin);
        sheet.computed(
            ch::GREATEST_BALANCE,
            &counterbalance::GREATEST_BALANCE,
            (ch::COUNTERBALANCE_SHARE, ch::COUNTERBALANCE_RIPPLE),
        );
        match balance.kind {
            CounterbalanceKind::Gas => sheet.absent(ch::ROPE_SLACKENING),
            CounterbalanceKind::Weight => {
                sheet.computed(ch::ROPE_SLACKENING, &counterbalance::ROPE_SLACKENING, (ch::ACCELERATION,));
            }
        }
    }

    fn enter_cable_chain<L: Ledger>(&self, sheet: &mut L) {
        let nothing = (LinearMassDensity::of_si(0.0), Ratio::of_si(0.0), Origin::Assumed, Origin::Assumed);
        let (mass, friction, stated, friction_stated) = self.axis.cable_chain.as_ref().map_or(nothing, |chain| {
            let origin = if chain.friction.stated { Origin::Brief } else { Origin::Assumed };
            (chain.mass_per_metre, chain.friction.value, Origin::Brief, origin)
        });
        sheet.given(ch::CABLE_CHAIN_MASS_PER_METRE, mass, stated);
        sheet.given(ch::CABLE_CHAIN_FRICTION, friction, friction_stated);
        let chain = (ch::CABLE_CHAIN_MASS_PER_METRE, ch::TRAVEL);
        sheet.computed(ch::CABLE_CHAIN_MASS, &cable_chain::CABLE_CHAIN_MASS, chain);
        sheet.computed(
            ch::CABLE_CHAIN_FORCE,
            &cable_chain::CABLE_CHAIN_FORCE,
            (ch::CABLE_CHAIN_FRICTION, ch::CABLE_CHAIN_MASS_PER_METRE, ch::TRAVEL, ch::INCLINATION),
        );
        sheet.computed(ch::DRAG_FORCE, &cable_chain::DRAG_SUM, (ch::WIPER_FORCE, ch::CABLE_CHAIN_FORCE));
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
        // a move always states its distance
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
            sheet.given(ch::PHASE_RMS_SPEED.phase(index), Velocity::of_si(phase.rms_speed), origin);
            sheet.given(ch::PHASE_TOP_SPEED.phase(index), Velocity::of_si(phase.top_speed), origin);
            sheet.given(ch::PHASE_ACCELERATION.phase(index), Acceleration::of_si(phase.acceleration), origin);
            sheet.given(ch::PHASE_MOVES.phase(index), Ratio::of_si(phase.moves), origin);
            sheet.given(ch::PHASE_STROKE.phase(index), Length::of_si(phase.stroke), origin);
            sheet.given(ch::PHASE_PROCESS_FORCE.phase(index), Force::of_si(phase.process), origin);
            sheet.given(ch::PHASE_BALANCE.phase(index), Ratio::of_si(phase.balance), origin);
        }
        let longest = phases::longest(self.axis);
        sheet.given(ch::LONGEST_RAMP_TIME, Time::of_si(longest.ramp), origin);
        sheet.given(ch::LONGEST_CUT_TIME, Time::of_si(longest.cut), origin);
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
