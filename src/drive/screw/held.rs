//! The screw between its ends: how they hold it, whip, sag, column, stretch, warming, what its bearings bear.
//!
//! Method: the ends turn against the tilt stiffness of their bearings or clamps; eigenvalue and buckling factor are solved
//! for that. A screw held at both ends along its axis keeps its stretch until it is as warm, then it is pressed together;
//! whip and sag are judged in the worse state. A bed of
//! another expansion strains it with every swing of temperature, either way. Limits: the nut is left out of whip and sag, housings do not give.

use crate::characteristic as ch;
use crate::drive::Demand;
use crate::formula::{
    bearing_set, column, gantry, held_beam, pricing, rolling_life, shaft, stiffness, stop, stretch, thermal,
};
use crate::ledger::{Characteristic, Ledger, Origin};
use crate::units::*;

/// How an outer end is held.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum End {
    /// By a bearing set or a clamp that resists tilting.
    Fixed,
    /// By a radial bearing.
    Supported,
    /// Not at all.
    Free,
}

/// Whether supports part the screw into spans; a free end gets no credit for them.
fn parted(far: End, pairs: u32) -> bool {
    far != End::Free && pairs > 0
}

/// Enters how the ends hold the screw as a beam, once the tilt stiffness of a fixed end is known: the first end is fixed,
/// the far one as said. Supports count as pins; the weaker outer span stands for all. A free end gets no credit for them.
pub fn beam<L: Ledger>(far: End, pairs: u32, sheet: &mut L) {
    let parted = parted(far, pairs);
    let spans = if parted { f64::from(1 + pairs) } else { 1.0 };
    sheet.given(ch::SPANS, Ratio::of_si(spans), Origin::Catalog);
    let tilts = (ch::BEARING_TILT_STIFFNESS, ch::ROOT_DIAMETER, ch::SCREW_BORE, ch::FREE_LENGTH, ch::SPANS);
    let pin = Ratio::of_si(0.0);
    match far {
        End::Supported if parted => sheet.given(ch::FIRST_FIXITY, pin, Origin::Catalog),
        _ => sheet.computed(ch::FIRST_FIXITY, &held_beam::END_FIXITY, tilts),
    };
    match far {
        End::Free => sheet.absent(ch::SECOND_FIXITY),
        End::Fixed if !parted => {
            sheet.computed(ch::SECOND_FIXITY, &held_beam::END_FIXITY, tilts);
        }
        _ => {
            sheet.given(ch::SECOND_FIXITY, pin, Origin::Catalog);
        }
    }
    let ends = (ch::FIRST_FIXITY, ch::SECOND_FIXITY, ch::SPANS);
    if far == End::Free {
        sheet.computed(ch::EIGENVALUE_SQUARED, &held_beam::ROOTED_EIGENVALUE, (ch::FIRST_FIXITY,));
        sheet.computed(ch::SPAN_BUCKLING_FACTOR, &held_beam::ROOTED_BUCKLING, (ch::FIRST_FIXITY,));
    } else {
        sheet.computed(ch::EIGENVALUE_SQUARED, &held_beam::HELD_EIGENVALUE, ends);
        sheet.computed(ch::SPAN_BUCKLING_FACTOR, &held_beam::HELD_BUCKLING, ends);
    }
    sheet.computed(
        ch::EULER_LOAD,
        &held_beam::EULER_LOAD,
        (ch::ROOT_DIAMETER, ch::SCREW_BORE, ch::FREE_LENGTH, ch::SPAN_BUCKLING_FACTOR),
    );
    sheet.computed(
        ch::BARE_WHIP_SPEED,
        &shaft::HOLLOW_WHIP_SPEED,
        (ch::ROOT_DIAMETER, ch::SCREW_BORE, ch::FREE_LENGTH, ch::EIGENVALUE_SQUARED),
    );
    sheet.computed(
        ch::SCREW_WEIGHT_ON_NUT,
        &shaft::WEIGHT_ON_NUT,
        (ch::ROOT_DIAMETER, ch::SCREW_BORE, ch::FREE_LENGTH, ch::SPANS, ch::INCLINATION),
    );
}

/// Works out whip speed and sag of the screw under this axial force.
pub fn whip_and_sag<L: Ledger>(far: End, axial_force: Characteristic<Force>, sheet: &mut L) {
    sheet.computed(ch::WHIP_FACTOR, &shaft::TENSION_WHIP_FACTOR, (axial_force, ch::EULER_LOAD, ch::EIGENVALUE_SQUARED));
    sheet.computed(ch::WHIP_SPEED, &shaft::LOADED_WHIP_SPEED, (ch::BARE_WHIP_SPEED, ch::WHIP_FACTOR));
    if far == End::Free {
        sheet.computed(
            ch::SCREW_SAG,
            &held_beam::ROOTED_SAG,
            (ch::ROOT_DIAMETER, ch::SCREW_BORE, ch::FREE_LENGTH, ch::FIRST_FIXITY, ch::INCLINATION),
        );
        return;
    }
    sheet.computed(
        ch::SCREW_SAG,
        &held_beam::SCREW_SAG,
        (
            ch::ROOT_DIAMETER,
            ch::SCREW_BORE,
            ch::FREE_LENGTH,
            ch::FIRST_FIXITY,
            ch::SECOND_FIXITY,
            ch::SPANS,
            axial_force,
            ch::EULER_LOAD,
            ch::INCLINATION,
        ),
    );
}

/// Works out at what load the pressed part of the screw buckles; one thrust end or both hold it. Between supports the
/// weaker span has two pins.
pub fn column<L: Ledger>(both: bool, far: End, pairs: u32, sheet: &mut L) {
    if both {
        sheet.computed(ch::PRESSED_LENGTH, &column::HELD_PRESSED_LENGTH, (ch::FREE_LENGTH,));
    } else {
        sheet.computed(ch::PRESSED_LENGTH, &column::PRESSED_LENGTH, (ch::FREE_LENGTH, ch::END_GAP, ch::NUT_LENGTH));
    }
    if parted(far, pairs) {
        sheet.given(ch::PRESSED_FIXITY, Ratio::of_si(0.0), Origin::Catalog);
    } else {
        sheet.computed(
            ch::PRESSED_FIXITY,
            &held_beam::END_FIXITY,
            (ch::BEARING_TILT_STIFFNESS, ch::ROOT_DIAMETER, ch::SCREW_BORE, ch::PRESSED_LENGTH, ch::SPANS),
        );
    }
    // the nut holds the screw sideways but lets it tilt
    sheet.given(ch::NUT_FIXITY, Ratio::of_si(0.0), Origin::Assumed);
    sheet.computed(ch::BUCKLING_FACTOR, &held_beam::HELD_BUCKLING, (ch::PRESSED_FIXITY, ch::NUT_FIXITY, ch::SPANS));
    sheet.computed(
        ch::COLUMN_LOAD,
        &column::COLUMN_LOAD,
        (ch::ROOT_DIAMETER, ch::SCREW_BORE, ch::PRESSED_LENGTH, ch::BUCKLING_FACTOR, ch::SCREW_YIELD_STRENGTH),
    );
}

/// Works out how much of its buckling load the screw uses, once the largest force and the warming are known.
#[inline(always)]
fn column_use<L: Ledger>(both: bool, demand: &Demand<'_>, sheet: &mut L) {
    if both {
        sheet.absent(ch::MOTION_PRESSING_FORCE);
        sheet.absent(ch::PRESSING_FORCE);
        sheet.computed(
            ch::COLUMN_USE,
            &column::HELD_COLUMN_USE,
            (
                ch::PEAK_FORCE,
                ch::THERMAL_COMPRESSION,
                ch::ROOT_DIAMETER,
                ch::SCREW_BORE,
                ch::FREE_LENGTH,
                ch::BUCKLING_FACTOR,
                ch::SCREW_YIELD_STRENGTH,
            ),
        );
    } else {
        let count = demand.phases.len();
        let pressing = (
            ch::ACCELERATED_MASS,
            ch::PHASE_ACCELERATION.all(count),
            ch::GRAVITY_FORCE,
            ch::PHASE_BALANCE.all(count),
            ch::FRICTION_FORCE,
            ch::PHASE_DIRECTION.all(count),
            ch::PHASE_DRIVE_PROCESS_FORCE.all(count),
            ch::CUTTING_BOTH_WAYS,
            ch::INCLINATION,
        );
        if demand.two_sided() {
            // racking presses one screw and pulls the other
            sheet.computed(ch::MOTION_PRESSING_FORCE, &column::PRESSING_FORCE, pressing);
            sheet.computed(ch::PRESSING_FORCE, &gantry::FORCE_SUM, (ch::MOTION_PRESSING_FORCE, ch::RACKING_FORCE));
        } else {
            sheet.absent(ch::MOTION_PRESSING_FORCE);
            sheet.computed(ch::PRESSING_FORCE, &column::PRESSING_FORCE, pressing);
        }
        sheet.computed(ch::COLUMN_USE, &column::COLUMN_USE, (ch::PRESSING_FORCE, ch::COLUMN_LOAD));
    }
}

/// Works out what a bed of another expansion does to a screw held at both ends.
fn bed<L: Ledger>(sheet: &mut L) {
    sheet.computed(ch::BED_SHIFT, &stretch::BED_SHIFT, (ch::SCREW_EXPANSION, ch::BED_EXPANSION, ch::TEMPERATURE_SWING));
    sheet.computed(ch::COLD_STRETCH, &stretch::COLD_STRETCH, (ch::STRETCH, ch::BED_SHIFT));
}

/// Works out how the screw sheds heat, once its mean speed is known.
pub fn cooling<L: Ledger>(sheet: &mut L) {
    sheet.computed(ch::SCREW_HEAT_TRANSFER, &thermal::HEAT_TRANSFER, (ch::NOMINAL_DIAMETER, ch::MEAN_SCREW_SPEED));
    let bar = (ch::NOMINAL_DIAMETER, ch::SCREW_BORE, ch::SCREW_HEAT_TRANSFER);
    sheet.computed(ch::FIN_LENGTH, &thermal::FIN_LENGTH, bar);
    sheet.computed(ch::WARMING_TIME, &thermal::WARMING_TIME, bar);
}

/// Works out how warm the screw gets and what that leaves of its stretch, once forces and drag are known.
#[inline(always)]
pub fn warming<L: Ledger>(demand: &Demand<'_>, sheet: &mut L) {
    let count = demand.phases.len();
    let motion_heat = if demand.two_sided() { ch::MOTION_NUT_HEAT } else { ch::NUT_HEAT };
    sheet.computed(
        motion_heat,
        &stop::NUT_HEAT,
        (
            ch::PRELOAD_DRAG,
            ch::BEARING_DRAG,
            ch::MEAN_SPEED,
            ch::TRAVEL_PER_TURN,
            ch::PHASE_FORCE.all(count),
            ch::PHASE_SHARE.all(count),
            ch::PHASE_SPEED.all(count),
            ch::SCREW_EFFICIENCY,
        ),
    );
    if demand.two_sided() {
        let racking = (ch::MOTION_NUT_HEAT, ch::RACKING_FORCE, ch::MEAN_SPEED, ch::SCREW_EFFICIENCY);
        sheet.computed(ch::NUT_HEAT, &gantry::RACKED_NUT_HEAT, racking);
    }
    sheet.computed(
        ch::LENGTH_WARMING,
        &thermal::LENGTH_WARMING,
        (ch::NUT_HEAT, ch::NOMINAL_DIAMETER, ch::FREE_LENGTH, ch::SCREW_HEAT_TRANSFER),
    );
    sheet.computed(
        ch::SCREW_WARMING,
        &thermal::SCREW_WARMING,
        (
            ch::NUT_HEAT,
            ch::NOMINAL_DIAMETER,
            ch::MEAN_STROKE,
            ch::SCREW_HEAT_TRANSFER,
            ch::FIN_LENGTH,
            ch::LENGTH_WARMING,
        ),
    );
    sheet.computed(ch::STRETCH_LEFT, &stretch::STRETCH_LEFT, (ch::STRETCH, ch::LENGTH_WARMING, ch::BED_SHIFT));
    sheet.computed(ch::RISE_LEFT, &stretch::RISE_LEFT, (ch::SCREW_WARMING, ch::LENGTH_WARMING, ch::STRETCH));
}

/// Works out the tension of the cold stretched screw between ends of this stiffness, and how they share a force.
pub fn stretched<L: Ledger>(end_stiffness: Characteristic<Stiffness>, sheet: &mut L) {
    bed(sheet);
    for (force, stretch) in [(ch::STRETCH_FORCE, ch::STRETCH), (ch::COLD_AXIAL_FORCE, ch::COLD_STRETCH)] {
        let (core, bore, length) = (ch::CORE_DIAMETER, ch::SCREW_BORE, ch::FREE_LENGTH);
        let springs = (core, bore, length, end_stiffness, ch::SCREW_EXPANSION, stretch, ch::THRUST_ENDS);
        sheet.computed(force, &stretch::HELD_FORCE, springs);
    }
    sheet.computed(ch::LEAD_COMPENSATION, &stretch::LEAD_COMPENSATION, (ch::SCREW_EXPANSION, ch::STRETCH, ch::TRAVEL));
    sheet.computed(
        ch::END_SHARE,
        &stretch::END_SHARE,
        (ch::CORE_DIAMETER, ch::SCREW_BORE, ch::FREE_LENGTH, ch::TRAVEL, end_stiffness, ch::THRUST_ENDS),
    );
    sheet.computed(
        ch::SCREW_STIFFNESS,
        &stiffness::SCREW_END_STIFFNESS,
        (ch::CORE_DIAMETER, ch::SCREW_BORE, ch::FREE_LENGTH, ch::THRUST_ENDS, end_stiffness),
    );
}

/// Works out the axial forces of the warm screw.
#[inline(always)]
pub fn warm<L: Ledger>(end_stiffness: Characteristic<Stiffness>, sheet: &mut L) {
    sheet.computed(
        ch::WARM_AXIAL_FORCE,
        &stretch::HELD_FORCE,
        (
            ch::CORE_DIAMETER,
            ch::SCREW_BORE,
            ch::FREE_LENGTH,
            end_stiffness,
            ch::SCREW_EXPANSION,
            ch::STRETCH_LEFT,
            ch::THRUST_ENDS,
        ),
    );
    sheet.computed(ch::THERMAL_COMPRESSION, &stretch::THERMAL_COMPRESSION, (ch::WARM_AXIAL_FORCE,));
    sheet.computed(ch::STANDING_FORCE, &stretch::STANDING_FORCE, (ch::COLD_AXIAL_FORCE, ch::THERMAL_COMPRESSION));
}

/// Works out what the largest force does to the screw, once it is known with the torque at the screw; one thrust end or
/// both hold it.
#[inline(always)]
pub fn peak<L: Ledger>(both: bool, demand: &Demand<'_>, sheet: &mut L) {
    sheet.computed(ch::END_FORCE, &stretch::END_FORCE, (ch::STANDING_FORCE, ch::PEAK_FORCE, ch::END_SHARE));
    sheet.computed(
        ch::SCREW_STRESS,
        &column::COMBINED_STRESS,
        (ch::END_FORCE, ch::SHAFT_TORQUE, ch::ROOT_DIAMETER, ch::SCREW_BORE),
    );
    column_use(both, demand, sheet);
}

/// Works out the life of the axial bearing, once its standing force and its share of the force are known.
#[inline(always)]
pub fn bearing_life<L: Ledger>(demand: &Demand<'_>, sheet: &mut L) {
    let count = demand.phases.len();
    let (forces, shares, speeds) = (ch::PHASE_FORCE.all(count), ch::PHASE_SHARE.all(count), ch::PHASE_SPEED.all(count));
    let (rating, lesser, preload) = (ch::BEARING_RATING, ch::BEARING_LESSER_RATING, ch::BEARING_PRELOAD);
    let (standing, share, factor) = (ch::BEARING_STANDING_FORCE, ch::BEARING_SHARE, ch::BEARING_LIFE_FACTOR);
    if demand.two_sided() {
        let racked = (rating, lesser, preload, standing, share, forces, shares, speeds, factor, ch::RACKING_FORCE);
        sheet.computed(ch::BEARING_LIFE, &bearing_set::RACKED_BEARING_SET_LIFE, racked);
    } else {
        let duty = (rating, lesser, preload, standing, share, forces, shares, speeds, factor);
        sheet.computed(ch::BEARING_LIFE, &bearing_set::BEARING_SET_LIFE, duty);
    }
    sheet.computed(
        ch::BEARING_LIFE_HOURS,
        &rolling_life::LIFE_HOURS,
        (ch::BEARING_LIFE, ch::MEAN_SPEED, ch::TRAVEL_PER_TURN),
    );
}

/// Works out the static safety of the axial bearing, which bears this force from outside at most.
#[inline(always)]
pub fn bearing_peak<L: Ledger>(outer: Characteristic<Force>, sheet: &mut L) {
    sheet.computed(ch::BEARING_PEAK, &rolling_life::HALF_LOAD, (outer, ch::BEARING_PRELOAD));
    sheet.computed(
        ch::BEARING_STATIC_SAFETY,
        &rolling_life::STATIC_SAFETY,
        (ch::BEARING_STATIC_RATING, ch::BEARING_PEAK),
    );
}

/// Adds the supports that travel along to the price of the held ends.
pub fn support_price<L: Ledger>(sheet: &mut L) {
    sheet.computed(ch::SUPPORT_PRICE, &pricing::PRICE_SUM, (ch::HELD_ENDS_PRICE, ch::SUPPORT_PAIR_PRICE));
}
