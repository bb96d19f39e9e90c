//! The feedback stage, the same for every family: what measures the position, and what of the error budget hangs on it.
//!
//! Method: with the motor's encoder the drive's own errors, its play and its give under friction all count;
//! with a linear scale the scale's error takes the place of lead and pitch errors, and only the give between
//! scale and slide remains. Play and lost motion add in line, scatters by squares. What builds up over the travel
//! waits for the stage of the table of corrections, `super::mapping`.
//! Limits: play inside the loop of a scale enters no error, an advice judges it.

use super::demand::Demand;
use crate::brief::Feedback;
use crate::catalog::{Catalog, LinearScale};
use crate::characteristic as ch;
use crate::formula::{budget, layout, mesh_motion, thermal};
use crate::ledger::{Aside, Ledger, Origin};
use crate::units::*;

/// What may measure the position of this axis: the motor's encoder (`None`) or a scale.
pub fn options<'a>(demand: &Demand<'_>, catalog: &'a Catalog) -> Vec<Option<&'a LinearScale>> {
    let scales = catalog.linear_scales.iter().map(Some);
    match demand.axis.feedback {
        Feedback::Motor => vec![None],
        Feedback::Scale => scales.collect(),
        Feedback::Any => std::iter::once(None).chain(scales).collect(),
    }
}

/// The word for a feedback among the main sizes.
pub fn word(scale: Option<&LinearScale>) -> &str {
    scale.map_or("motor", |scale| &scale.designation)
}

/// Enters what the reader itself brings; the scatter that the drive does not fall below counts where the motor measures.
#[inline(always)]
pub fn enter_reader<L: Ledger>(demand: &Demand<'_>, scale: Option<&LinearScale>, drive_scatter: Length, sheet: &mut L) {
    let least_scatter = scale.map_or(drive_scatter, |_| super::defaults::parts::scale_scatter());
    sheet.given(ch::LEAST_SCATTER, least_scatter, Origin::Assumed);
    let catalog = Origin::Catalog;
    match scale {
        None => {
            sheet.absent(ch::SCALE_LENGTH_LIMIT);
            sheet.absent(ch::SCALE_SPEED_LIMIT);
            sheet.absent(ch::LOOP_PLAY);
            sheet.absent(ch::LOOP_PLAY_SHARE);
            sheet.given(ch::EXPANSION, Expansion::of_si(super::defaults::STEEL_EXPANSION), Origin::Assumed);
            sheet.computed(
                ch::MEASURING_STEP,
                &layout::ENCODER_STEP,
                (ch::TRAVEL_PER_TURN, ch::ENCODER_COUNTS, ch::REDUCTION),
            );
            sheet.computed(ch::LOST_MOTION, &budget::LOST_MOTION, (ch::FRICTION_FORCE, ch::TOTAL_STIFFNESS));
        }
        Some(scale) => {
            sheet.given(ch::SCALE_LENGTH_LIMIT, scale.length_limit, catalog);
            sheet.given(ch::SCALE_SPEED_LIMIT, scale.speed_limit, catalog);
            sheet.computed(ch::LOOP_PLAY, &layout::SAME_LENGTH, (ch::PLAY,));
            if demand.axis.accuracy.is_none() {
                sheet.absent(ch::LOOP_PLAY_SHARE);
            } else {
                let share = (ch::LOOP_PLAY, ch::REQUIRED_ACCURACY);
                sheet.computed(ch::LOOP_PLAY_SHARE, &mesh_motion::LENGTH_RATIO, share);
            }
            sheet.given(ch::EXPANSION, scale.expansion, catalog);
            sheet.given(ch::MEASURING_STEP, scale.resolution, catalog);
            sheet.given(ch::SCALE_ERROR_RATE, scale.error_per_metre, catalog);
            sheet.given(ch::SCALE_LEAST_ERROR, scale.least_error, catalog);
            let band = |length| (ch::SCALE_ERROR_RATE, ch::SCALE_LEAST_ERROR, length);
            sheet.computed(ch::LONG_ERROR, &budget::SCALE_ERROR, band(ch::TRAVEL));
            sheet.aside(Aside::Section, |sheet| {
                sheet.computed(ch::SECTION_LONG_ERROR, &budget::SCALE_ERROR, band(ch::SECTION_LENGTH));
            });
            sheet.computed(ch::LOST_MOTION, &budget::LOST_MOTION, (ch::FRICTION_FORCE, ch::SCALE_MOUNT_STIFFNESS));
            sheet.computed(ch::TEMPERATURE_RISE, &layout::SAME_TEMPERATURE, (ch::TEMPERATURE_SWING,));
        }
    }
}

/// Works out reversal, scatter and growth, once play and temperature rise are in the sheet.
#[inline(always)]
pub fn work_out<L: Ledger>(demand: &Demand<'_>, scale: Option<&LinearScale>, sheet: &mut L) {
    match scale {
        None => {
            sheet.computed(
                ch::REVERSAL_ERROR,
                &budget::REVERSAL_ERROR,
                (ch::PLAY, ch::LOST_MOTION, ch::COMPENSATED_PLAY),
            );
            sheet.computed(
                ch::DRIVE_SCATTER,
                &budget::SCATTER,
                (ch::MEASURING_STEP, ch::FRICTION_FORCE, ch::TOTAL_STIFFNESS, ch::FRICTION_SCATTER),
            );
        }
        Some(_) => {
            sheet.computed(ch::REVERSAL_ERROR, &layout::SAME_LENGTH, (ch::LOST_MOTION,));
            sheet.computed(
                ch::DRIVE_SCATTER,
                &budget::SCATTER,
                (ch::MEASURING_STEP, ch::FRICTION_FORCE, ch::SCALE_MOUNT_STIFFNESS, ch::FRICTION_SCATTER),
            );
        }
    }
    sheet.computed(ch::SCATTER, &budget::ROOT_SUM_SQUARE_2, (ch::DRIVE_SCATTER, ch::LEAST_SCATTER));
    sheet.computed(ch::REPEATABILITY, &budget::REPEATABILITY, (ch::REVERSAL_ERROR, ch::SCATTER));
    super::servo::enter(demand, scale.is_some(), sheet);
    super::mapping::tilted(demand, scale.is_some(), sheet);
    sheet.computed(ch::THERMAL_GROWTH, &thermal::THERMAL_GROWTH, (ch::TRAVEL, ch::TEMPERATURE_RISE, ch::EXPANSION));
}
