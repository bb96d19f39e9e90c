//! The two sides of an axis with two drives: how they share the load, how they rack against each other, what a lost
//! side leaves.
//!
//! Method: the racking force comes on top of the largest force of the duty, so that teeth, gearbox, nut and fasteners
//! are judged by both, and on top of the motor's torque. Limits: it is taken from the error that rack or screw alone leaves,
//! whatever measures the position; in the life of teeth the whole of it stands on every force.

use super::demand::Demand;
use super::motor;
use crate::characteristic as ch;
use crate::formula::{budget, duty, gantry, twin};
use crate::ledger::{Aside, Characteristic, Ledger, Origin};
use crate::units::*;

/// What two sides add to the requirement; what one drive has no use for is absent.
pub fn requirement<L: Ledger>(demand: &Demand<'_>, sheet: &mut L) {
    let (axis, sides) = (demand.axis, &demand.axis.sides);
    let said = |stated: bool| if stated { Origin::Brief } else { Origin::Assumed };
    if sides.guide_base.stated {
        sheet.given(ch::GUIDE_BASE, sides.guide_base.value, Origin::Brief);
    }
    match sides.guide_spacing.filter(|_| !demand.two_sided() && sides.guide_base.stated) {
        Some(spacing) => {
            sheet.given(ch::CENTRED_GUIDE_SPACING, spacing, Origin::Brief);
        }
        None => sheet.absent(ch::CENTRED_GUIDE_SPACING),
    }
    match axis.accuracy.filter(|_| demand.two_sided()) {
        Some(accuracy) => {
            sheet.given(ch::YAW_ACCURACY, accuracy, Origin::Brief);
        }
        None => sheet.absent(ch::YAW_ACCURACY),
    }
    let Some(spacing) = axis.drive_spacing.filter(|_| demand.two_sided()) else {
        sheet.absent(ch::RACKING_FORCE);
        sheet.absent(ch::RACKED_PLAY_FREE_DEMAND);
        sheet.absent(ch::LOST_SIDE_YAW);
        sheet.absent(ch::LONE_HOLDING_TORQUE);
        return;
    };
    if axis.inclination.si() <= 0.0 {
        sheet.absent(ch::LONE_HOLDING_TORQUE);
    }
    sheet.given(ch::DRIVE_SPACING, spacing, Origin::Brief);
    sheet.given(ch::MASS_OFFSET, sides.mass_offset.value, said(sides.mass_offset.stated));
    sheet.given(ch::YAW_STIFFNESS, sides.yaw_stiffness.value, said(sides.yaw_stiffness.stated));
    let corrected = &sides.correction;
    sheet.given(ch::SIDE_CORRECTION, corrected.value, said(corrected.stated));
    let warmer = &sides.temperature_difference;
    sheet.given(ch::SIDE_TEMPERATURE_DIFFERENCE, warmer.value, said(warmer.stated));
    sheet.given(ch::DRIVE_EXPANSION, Expansion::of_si(super::defaults::STEEL_EXPANSION), Origin::Assumed);
}

/// The share of the moving mass on the most loaded drive.
#[inline(always)]
pub fn share<L: Ledger>(demand: &Demand<'_>, sheet: &mut L) {
    let twin = motor::twin(sheet);
    let share = if twin { ch::SIDE_SHARE } else { ch::LOAD_SHARE };
    if demand.two_sided() {
        let lever = (ch::MOVED_MASS, ch::CARRIED_MASS, ch::MASS_OFFSET, ch::DRIVE_SPACING, ch::CARRIAGE_REACH);
        sheet.computed(share, &gantry::NEAR_SHARE, lever);
    } else {
        let equal = (ch::MOVED_MASS, ch::CARRIED_MASS, ch::DRIVES, ch::CARRIAGE_REACH);
        sheet.computed(share, &duty::LOAD_SHARE, equal);
    }
    if twin {
        sheet.computed(ch::LOAD_SHARE, &twin::PINION_SHARE, (ch::SIDE_SHARE, ch::PINIONS));
        sheet.computed(ch::SIDE_MASS, &duty::DRIVEN_MASS, (ch::MOVING_MASS, ch::SIDE_SHARE));
    }
}

/// The largest force of the duty: with one drive that is all, with two it waits for the racking force.
#[inline(always)]
pub fn motion_peak<L: Ledger>(demand: &Demand<'_>, sheet: &mut L) {
    let forces = ch::PHASE_FORCE.all(demand.phases.len());
    let peak = if demand.two_sided() || motor::twin(sheet) { ch::MOTION_PEAK_FORCE } else { ch::PEAK_FORCE };
    sheet.computed(peak, &duty::PEAK_FORCE, (forces, ch::GRAVITY_FORCE));
}

/// Errors that rack or screw alone leave on one side, with pinion or turn.
pub type Errors = [Characteristic<Length>; 3];

/// Racking and the largest force with it, once forces and stiffness are known.
#[inline(always)]
pub fn racking<L: Ledger>(demand: &Demand<'_>, errors: Errors, sheet: &mut L) {
    if !demand.two_sided() {
        sheet.absent(ch::YAW_AT_TOOL);
        return;
    }
    sheet.computed(ch::DRIVE_ERROR, &budget::ROOT_SUM_SQUARE_3, (errors[0], errors[1], errors[2]));
    sheet.computed(
        ch::SIDE_DIFFERENCE,
        &gantry::SIDE_DIFFERENCE,
        (ch::DRIVE_ERROR, ch::SIDE_CORRECTION, ch::DRIVE_EXPANSION, ch::SIDE_TEMPERATURE_DIFFERENCE, ch::TRAVEL),
    );
    // two pinions of a side share its racking, each against half of the guides' spring
    let twin = motor::twin(sheet);
    let mut yaw = ch::YAW_STIFFNESS;
    if twin {
        yaw = ch::PINION_YAW_STIFFNESS;
        sheet.computed(yaw, &twin::PINION_YAW_STIFFNESS, (ch::YAW_STIFFNESS, ch::PINIONS));
    }
    let springs = (ch::SIDE_DIFFERENCE, ch::TOTAL_STIFFNESS, ch::DRIVE_SPACING, yaw);
    sheet.computed(ch::RACKING_FORCE, &gantry::RACKING_FORCE, springs);
    if !twin {
        sheet.computed(ch::PEAK_FORCE, &gantry::FORCE_SUM, (ch::MOTION_PEAK_FORCE, ch::RACKING_FORCE));
    }
    sheet.aside(Aside::Sides, |sheet| {
        sheet.computed(ch::YAW_ANGLE, &gantry::YAW_ANGLE, (ch::RACKING_FORCE, ch::DRIVE_SPACING, yaw));
        sheet.computed(ch::YAW_AT_TOOL, &gantry::YAW_AT_TOOL, (ch::YAW_ANGLE, ch::DRIVE_SPACING));
    });
}

/// The torque against the racking force, and the largest torque of every phase with it.
#[inline(always)]
pub fn racked_torques<L: Ledger>(demand: &Demand<'_>, sheet: &mut L) {
    let racking = (ch::RACKING_FORCE, ch::TRAVEL_PER_TURN, ch::REDUCTION, ch::TOTAL_EFFICIENCY);
    sheet.computed(ch::RACKING_TORQUE, &gantry::RACKING_TORQUE, racking);
    let own = if motor::twin(sheet) { ch::PHASE_OWN_TORQUE } else { ch::PHASE_TORQUE };
    sheet.computed_all(ch::PHASE_LARGEST_TORQUE, demand.phases.len(), &gantry::RACKED_TORQUE, |index| {
        (own.phase(index), ch::RACKING_TORQUE)
    });
}

/// Both sides while the axis speeds up, and what happens when one is lost, once the torque limit is known.
#[inline(always)]
pub fn both<L: Ledger>(demand: &Demand<'_>, sheet: &mut L) {
    if demand.two_sided() {
        sheet.aside(Aside::Sides, lost);
    }
}

/// The forces of both sides, and what is left when one of them pushes alone.
#[inline(always)]
fn lost<L: Ledger>(sheet: &mut L) {
    let twin = motor::twin(sheet);
    let near = if twin { ch::SIDE_MASS } else { ch::DRIVEN_MASS };
    sheet.computed(ch::FAR_MASS, &gantry::FAR_MASS, (ch::MOVING_MASS, near));
    for (force, mass) in [(ch::NEAR_FORCE, near), (ch::FAR_FORCE, ch::FAR_MASS)] {
        sheet.computed(
            force,
            &gantry::SIDE_FORCE,
            (
                mass,
                ch::ACCELERATION,
                ch::INCLINATION,
                ch::GUIDE_FRICTION,
                ch::DRIVE_WIPER_FORCE,
                ch::COUNTERBALANCE_SHARE,
            ),
        );
    }
    let (mut force, mut mass) = (ch::LOST_SIDE_FORCE, ch::MOVING_MASS);
    if twin {
        (force, mass) = (ch::LOST_PINION_FORCE, ch::PINION_MOVING_MASS);
        sheet.computed(mass, &twin::PINION_LOAD, (ch::MOVING_MASS, ch::PINIONS));
    }
    let limit = (ch::SET_TORQUE, ch::TRAVEL_PER_TURN, ch::REDUCTION, ch::ROTATING_INERTIA, mass);
    sheet.computed(force, &gantry::LOST_SIDE_FORCE, limit);
    if twin {
        sheet.computed(ch::LOST_SIDE_FORCE, &twin::BOTH_FORCE, (ch::LOST_PINION_FORCE, ch::PINIONS));
    }
    sheet.computed(ch::LOST_SIDE_MOMENT, &gantry::LOST_SIDE_MOMENT, (ch::LOST_SIDE_FORCE, ch::DRIVE_SPACING));
    let spring = (ch::LOST_SIDE_FORCE, ch::DRIVE_SPACING, ch::YAW_STIFFNESS);
    sheet.computed(ch::LOST_SIDE_LEAD, &gantry::LOST_SIDE_LEAD, spring);
    sheet.computed(ch::LOST_SIDE_YAW, &gantry::LOST_SIDE_YAW, (ch::LOST_SIDE_LEAD, ch::DRIVE_SPACING));
}
