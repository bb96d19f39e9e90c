//! Coupling or belt between motor and screw or nut: a coupling states its torque and stiffness, a belt its geometry.
//!
//! Method: what needs no force is entered with the part; pull, tension and shaft load come once the torque is known.
//! Limits: a belt of which a key is not stated is not known to hold, and falls.

use super::defaults::parts;
use crate::catalog::ScrewReduction;
use crate::characteristic as ch;
use crate::formula::{belt, coupling, motion, stiffness};
use crate::ledger::{Ledger, Origin};
use crate::units::*;

/// Whether a part is a belt.
pub fn is_belt(reduction: &ScrewReduction) -> bool {
    reduction.kind == "belt"
}

/// The price of a part; zero where it is not known.
pub fn price(reduction: &ScrewReduction) -> f64 {
    let price = reduction.price.si();
    if price > 0.0 { price } else { 0.0 }
}

/// The price of the cheapest of these parts.
pub fn least_price<'r>(reductions: impl Iterator<Item = &'r ScrewReduction>) -> f64 {
    let least = super::price::least(reductions.map(price));
    if least.is_finite() { least } else { 0.0 }
}

/// What is not stated is not known.
#[inline(always)]
fn stated<L: Ledger, Q: Measure>(sheet: &mut L, characteristic: crate::ledger::Characteristic<Q>, value: Option<Q>) {
    sheet.given(characteristic, value.unwrap_or(Q::of_si(f64::NAN)), Origin::Catalog);
}

/// Enters coupling or belt, as far as it needs no force.
#[inline(always)]
pub fn given<L: Ledger>(reduction: &ScrewReduction, sheet: &mut L) {
    let catalog = Origin::Catalog;
    let belt = is_belt(reduction);
    let flag = |set: bool| Ratio::of_si(if set { 1.0 } else { 0.0 });
    sheet.given(ch::REDUCTION, reduction.ratio, catalog);
    sheet.given(ch::REDUCTION_EFFICIENCY, reduction.efficiency, catalog);
    sheet.given(ch::REDUCTION_INERTIA, reduction.inertia, catalog);
    sheet.given(ch::REDUCTION_SPEED_LIMIT, reduction.speed_limit, catalog);
    sheet.given(ch::REDUCTION_MASS, reduction.mass, catalog);
    sheet.given(ch::BELTS, flag(belt), catalog);
    sheet.given(ch::COUPLINGS, flag(!belt), catalog);
    sheet.given(ch::REDUCTION_PRICE, reduction.price, catalog);
    sheet.computed(ch::MOTOR_SPEED, &motion::GEARED_SPEED, (ch::SCREW_SPEED, ch::REDUCTION));
    if belt {
        stated(sheet, ch::BELT_PITCH, reduction.belt_pitch);
        stated(sheet, ch::BELT_WIDTH, reduction.belt_width);
        stated(sheet, ch::DRIVING_TEETH, reduction.driving_teeth);
        stated(sheet, ch::CENTRE_DISTANCE, reduction.centre_distance);
        stated(sheet, ch::SPECIFIC_STIFFNESS, reduction.specific_stiffness);
        stated(sheet, ch::PULL_PER_WIDTH, reduction.pull_per_width);
        stated(sheet, ch::BELT_MASS, reduction.belt_mass);
        stated(sheet, ch::BELT_SPEED_LIMIT, reduction.belt_speed_limit);
        sheet.computed(ch::DRIVING_PULLEY, &belt::DRIVING_PULLEY, (ch::BELT_PITCH, ch::DRIVING_TEETH));
        sheet.computed(ch::PULLEY_DIAMETER, &belt::DRIVEN_PULLEY, (ch::DRIVING_PULLEY, ch::REDUCTION));
        let pulleys = (ch::DRIVING_PULLEY, ch::PULLEY_DIAMETER, ch::CENTRE_DISTANCE);
        sheet.computed(ch::BELT_SPAN, &belt::BELT_SPAN, pulleys);
        sheet.computed(ch::BELT_SPEED, &belt::BELT_SPEED, (ch::MOTOR_SPEED, ch::DRIVING_PULLEY));
        sheet.computed(ch::BELT_PULL_LIMIT, &belt::BELT_PULL_LIMIT, (ch::PULL_PER_WIDTH, ch::BELT_WIDTH));
        sheet.computed(ch::REDUCTION_TORQUE_LIMIT, &belt::PULL_TORQUE, (ch::BELT_PULL_LIMIT, ch::PULLEY_DIAMETER));
        sheet.computed(
            ch::REDUCTION_STIFFNESS,
            &belt::BELT_STIFFNESS,
            (ch::SPECIFIC_STIFFNESS, ch::BELT_WIDTH, ch::BELT_SPAN, ch::PULLEY_DIAMETER),
        );
    } else {
        sheet.absent(ch::BELT_PITCH);
        sheet.absent(ch::BELT_WIDTH);
        sheet.absent(ch::DRIVING_TEETH);
        sheet.absent(ch::CENTRE_DISTANCE);
        sheet.absent(ch::SPECIFIC_STIFFNESS);
        sheet.absent(ch::PULL_PER_WIDTH);
        sheet.absent(ch::BELT_MASS);
        sheet.absent(ch::BELT_SPEED_LIMIT);
        sheet.absent(ch::DRIVING_PULLEY);
        sheet.absent(ch::PULLEY_DIAMETER);
        sheet.absent(ch::BELT_SPAN);
        sheet.absent(ch::BELT_SPEED);
        sheet.absent(ch::BELT_PULL_LIMIT);
        stated(sheet, ch::REDUCTION_TORQUE_LIMIT, reduction.rated_torque);
        stated(sheet, ch::REDUCTION_STIFFNESS, reduction.torsional_stiffness);
    }
    sheet.computed(
        ch::COUPLING_LINEAR_STIFFNESS,
        &stiffness::LINEAR_OF_TORSIONAL,
        (ch::REDUCTION_STIFFNESS, ch::TRAVEL_PER_TURN),
    );
}

/// Works out the pull of a belt, once the torque at screw or nut is known.
#[inline(always)]
pub fn pull<L: Ledger>(belt: bool, sheet: &mut L) {
    if belt {
        sheet.computed(ch::BELT_PULL, &belt::BELT_PULL, (ch::SHAFT_TORQUE, ch::PULLEY_DIAMETER));
    } else {
        sheet.absent(ch::BELT_PULL);
    }
}

/// Works out tension and shaft load of a belt, and the resonance on coupling or belt.
#[inline(always)]
pub fn tension<L: Ledger>(belt: bool, sheet: &mut L) {
    if belt {
        let pulleys = (ch::DRIVING_TEETH, ch::DRIVING_PULLEY, ch::PULLEY_DIAMETER, ch::CENTRE_DISTANCE);
        sheet.computed(ch::TEETH_IN_MESH, &belt::TEETH_IN_MESH, pulleys);
        sheet.given(ch::PRETENSION_SHARE, parts::pretension_share(), Origin::Assumed);
        sheet.computed(ch::BELT_PRETENSION, &belt::BELT_PRETENSION, (ch::PRETENSION_SHARE, ch::BELT_PULL));
        let spans = (ch::BELT_PRETENSION, ch::BELT_SPAN, ch::CENTRE_DISTANCE);
        sheet.computed(ch::BELT_SHAFT_LOAD, &belt::BELT_SHAFT_LOAD, spans);
        let string = (ch::BELT_PRETENSION, ch::BELT_MASS, ch::BELT_SPAN);
        sheet.computed(ch::SPAN_FREQUENCY, &belt::SPAN_FREQUENCY, string);
    } else {
        sheet.absent(ch::TEETH_IN_MESH);
        sheet.absent(ch::PRETENSION_SHARE);
        sheet.absent(ch::BELT_PRETENSION);
        sheet.absent(ch::BELT_SHAFT_LOAD);
        sheet.absent(ch::SPAN_FREQUENCY);
    }
    let spring = (ch::REDUCTION_STIFFNESS, ch::ROTOR_INERTIA, ch::LOAD_INERTIA, ch::REDUCTION);
    sheet.computed(ch::COUPLING_RESONANCE, &coupling::COUPLING_RESONANCE, spring);
    sheet.computed(ch::COUPLING_FLOOR, &coupling::COUPLING_FLOOR, (ch::TOTAL_STIFFNESS, ch::REDUCED_MASS));
}
