//! The position loop of an axis, the same for every family: gain, lag, contour, reversal, swinging, settling.
//!
//! Method: entered with the feedback, on which the gain hangs. Limits: those of the formulas; nothing of the structure beyond the drive.

use super::defaults;
use super::demand::Demand;
use crate::characteristic as ch;
use crate::formula::{dynamics, servo};
use crate::ledger::{Aside, Ledger, Origin};
use crate::units::*;

/// Notes what the brief does not ask of the position loop; known before all else of the axis.
pub fn requirement<L: Ledger>(demand: &Demand<'_>, sheet: &mut L) {
    if demand.axis.contour.is_none() {
        sheet.absent(ch::REQUIRED_CONTOUR);
    }
    if demand.axis.settling.is_none() {
        sheet.absent(ch::REQUIRED_SETTLING);
    }
}

/// Enters the lines; what the brief does not ask for is absent.
#[inline(always)]
pub fn enter<L: Ledger>(demand: &Demand<'_>, by_scale: bool, sheet: &mut L) {
    sheet.aside(Aside::PositionLoop, |sheet| position_loop(demand, by_scale, sheet));
}

#[inline(always)]
fn position_loop<L: Ledger>(demand: &Demand<'_>, by_scale: bool, sheet: &mut L) {
    let axis = demand.axis;
    sheet.computed(ch::MASS_RATIO, &servo::MASS_RATIO, (ch::DRIVEN_MASS, ch::REDUCED_MASS));
    sheet.computed(ch::FREE_MODE, &servo::FREE_MODE, (ch::FIRST_MODE, ch::MASS_RATIO));
    sheet.given(ch::FEEDBACK_KIND, Ratio::of_si(if by_scale { 1.0 } else { 0.0 }), Origin::Catalog);
    sheet.given(ch::GAIN_MARGIN, defaults::servo::gain_margin(), Origin::Assumed);
    let springs = (ch::TOTAL_STIFFNESS, ch::DRIVEN_MASS, ch::MASS_RATIO, ch::FEEDBACK_KIND, ch::GAIN_MARGIN);
    sheet.computed(ch::LOOP_GAIN, &dynamics::GAIN_LIMIT, springs);
    let fed = axis.contour.as_ref().map(|contour| contour.feed_forward);
    let (share, stated) = fed.map_or((defaults::servo::feed_forward(), false), |fed| (fed.value, fed.stated));
    sheet.given(ch::FEED_FORWARD, share, if stated { Origin::Brief } else { Origin::Assumed });
    for (error, speed) in [(ch::TOP_FOLLOWING_ERROR, ch::SPEED), (ch::CUTTING_FOLLOWING_ERROR, ch::CUTTING_SPEED)] {
        sheet.computed(error, &servo::FOLLOWING_ERROR, (speed, ch::LOOP_GAIN, ch::FEED_FORWARD));
    }
    let turning = (ch::FRICTION_FORCE, ch::TOTAL_STIFFNESS, ch::REDUCED_MASS, ch::MASS_RATIO, ch::LOOP_GAIN);
    sheet.computed(ch::REVERSAL_SPIKE, &servo::REVERSAL_SPIKE, turning);
    sheet.computed(ch::JERK_RESIDUE, &servo::JERK_RESIDUE, (ch::ACCELERATION, ch::JERK, ch::FIRST_MODE));
    sheet.given(ch::MODE_DAMPING, defaults::servo::mode_damping(), Origin::Assumed);
    contour(demand, sheet);
    settling(demand, sheet);
}

#[inline(always)]
fn contour<L: Ledger>(demand: &Demand<'_>, sheet: &mut L) {
    let Some(asked) = &demand.axis.contour else {
        sheet.absent(ch::CONTOUR_ERROR);
        return;
    };
    sheet.given(ch::CONTOUR_SPEED, asked.speed, Origin::Brief);
    sheet.given(ch::CONTOUR_RADIUS, asked.radius, Origin::Brief);
    sheet.given(ch::REQUIRED_CONTOUR, asked.error, Origin::Brief);
    let plain = (ch::CONTOUR_SPEED, ch::CONTOUR_RADIUS, ch::LOOP_GAIN, ch::FEED_FORWARD);
    sheet.computed(ch::PLAIN_CIRCLE_ERROR, &dynamics::CIRCLE_ERROR, plain);
    let giving = (ch::PLAIN_CIRCLE_ERROR, ch::CONTOUR_SPEED, ch::CONTOUR_RADIUS, ch::FIRST_MODE, ch::FEEDBACK_KIND);
    sheet.computed(ch::FED_CIRCLE_ERROR, &servo::FED_CIRCLE_ERROR, giving);
    sheet.computed(ch::CONTOUR_ERROR, &servo::CONTOUR_ERROR, (ch::PLAIN_CIRCLE_ERROR, ch::FED_CIRCLE_ERROR));
}

#[inline(always)]
fn settling<L: Ledger>(demand: &Demand<'_>, sheet: &mut L) {
    let Some(asked) = &demand.axis.settling else {
        sheet.absent(ch::SETTLING_TIME);
        return;
    };
    sheet.computed(ch::JERK_ENVELOPE, &servo::JERK_ENVELOPE, (ch::ACCELERATION, ch::JERK, ch::FIRST_MODE));
    sheet.given(ch::SETTLING_WINDOW, asked.window, Origin::Brief);
    sheet.given(ch::REQUIRED_SETTLING, asked.time, Origin::Brief);
    sheet.computed(
        ch::SETTLING_TIME,
        &servo::SETTLING_TIME,
        (ch::ACCELERATION, ch::LOOP_GAIN, ch::SETTLING_WINDOW, ch::JERK_ENVELOPE, ch::FIRST_MODE, ch::MODE_DAMPING),
    );
}
