//! The stages in which a driven nut differs from a turning screw: clamped ends, nut unit, belt, and what rides.

use super::DrivenNutDrive;
use crate::catalog::*;
use crate::characteristic as ch;
use crate::drive::defaults::parts;
use crate::drive::screw::held::{self, End};
use crate::drive::{motor, mounting, price, reduction, screw, sides};
use crate::formula::{held_beam, layout, pricing, shaft, stiffness};
use crate::ledger::{Ledger, Origin};
use crate::units::*;

impl DrivenNutDrive<'_> {
    pub(super) fn size<L: Ledger>(&self, size: &BallScrew, sheet: &mut L) {
        let prices = &self.catalog.prices;
        screw::size(size, prices, sheet);
        self.here.enter(sheet);
        mounting::screw(self.catalog, sheet);
        sheet.given(ch::NUT_DIAMETER, size.nut_diameter, Origin::Catalog);
        // both ends are clamped, and the screw stands
        let (both, still) = (Ratio::of_si(2.0), AngularVelocity::of_si(0.0));
        sheet.given(ch::THRUST_ENDS, both, Origin::Assumed);
        sheet.given(ch::TURN_HELD_ENDS, both, Origin::Assumed);
        sheet.given(ch::MEAN_SCREW_SPEED, still, Origin::Assumed);
        sheet.given(ch::STRETCH, parts::clamp_stretch(), Origin::Assumed);
        sheet.given(ch::CLAMP_STIFFNESS, parts::clamp_stiffness(), Origin::Assumed);
        sheet.computed(ch::BEARING_TILT_STIFFNESS, &held_beam::CLAMP_TILT, (ch::ROOT_DIAMETER, ch::SCREW_BORE));
        held::cooling(sheet);
        mounting::bed(self.demand.axis.bed.value, self.catalog, sheet);
        sheet.given(ch::CLAMP_PRICE, prices.screw_clamp, Origin::Catalog);
        sheet.computed(
            ch::HELD_ENDS_PRICE,
            &pricing::CLAMPS_PRICE,
            (ch::THRUST_ENDS, ch::CLAMP_PRICE, ch::ENDS_PRICE, ch::NOMINAL_DIAMETER),
        );
    }

    pub(super) fn support<L: Ledger>(&self, support: &ScrewSupport, sheet: &mut L) {
        screw::support(support, sheet);
        held::support_price(sheet);
        held::beam(End::Fixed, support.pairs, sheet);
        held::column(true, End::Fixed, support.pairs, sheet);
        held::stretched(ch::CLAMP_STIFFNESS, sheet);
        held::whip_and_sag(End::Fixed, ch::STRETCH_FORCE, sheet);
        let tops = ch::PHASE_TOP_SPEED.all(self.demand.phases.len());
        sheet.computed(ch::WHIP_DISTANCE, &shaft::WHIP_DISTANCE, (ch::SPEED, ch::LEAD, ch::WHIP_SPEED, tops));
        sheet.computed(
            ch::SCREW_TORSION,
            &stiffness::BORED_TORSION,
            (ch::ROOT_DIAMETER, ch::SCREW_BORE, ch::FREE_LENGTH, ch::LEAD, ch::TURN_HELD_ENDS),
        );
    }

    pub(super) fn unit<L: Ledger>(&self, unit: &NutUnit, sheet: &mut L) {
        let catalog = Origin::Catalog;
        sheet.given(ch::NUT_UNIT_DIAMETER, unit.nominal_diameter, catalog);
        sheet.given(ch::NUT_UNIT_INERTIA, unit.inertia, catalog);
        sheet.given(ch::NUT_UNIT_SPEED_LIMIT, unit.speed_limit, catalog);
        sheet.given(ch::NUT_UNIT_STIFFNESS, unit.stiffness, catalog);
        sheet.given(ch::NUT_UNIT_MASS, unit.mass, catalog);
        sheet.given(ch::NUT_UNIT_PRICE, unit.price, catalog);
        sheet.given(ch::BEARING_DRAG, unit.drag, catalog);
        sheet.given(ch::BEARING_RATING, unit.rating, catalog);
        sheet.given(ch::BEARING_LESSER_RATING, unit.rating, catalog);
        sheet.given(ch::BEARING_STATIC_RATING, unit.static_rating, catalog);
        sheet.given(ch::BEARING_PRELOAD, unit.preload, catalog);
        // the bearing of the nut takes the whole force and nothing of the stretch
        sheet.given(ch::BEARING_SHARE, Ratio::of_si(1.0), Origin::Assumed);
        sheet.given(ch::BEARING_STANDING_FORCE, Force::of_si(0.0), Origin::Assumed);
        sheet.computed(ch::NUT_UNIT_MISFIT, &layout::NUT_UNIT_MISFIT, (ch::NUT_UNIT_DIAMETER, ch::NOMINAL_DIAMETER));
        sheet.computed(ch::DRAG_TORQUE, &layout::TORQUE_SUM, (ch::PRELOAD_DRAG, ch::BEARING_DRAG));
        sheet.computed(ch::ELEMENT_PRICE, &pricing::PRICE_SUM, (ch::SCREW_PRICE, ch::NUT_UNIT_PRICE));
        sheet.given(ch::BEARINGS_PRICE, unit.price, catalog);
    }

    #[inline(always)]
    pub(super) fn belt<L: Ledger>(&self, belt: &ScrewReduction, sheet: &mut L) {
        screw::reduction(belt, sheet);
        let springs = (
            ch::SCREW_STIFFNESS,
            ch::SCREW_TORSION,
            ch::NUT_STIFFNESS,
            ch::NUT_UNIT_STIFFNESS,
            ch::COUPLING_LINEAR_STIFFNESS,
            ch::BRACKET_STIFFNESS,
        );
        sheet.computed(ch::TOTAL_STIFFNESS, &stiffness::SERIES_6, springs);
        sheet.computed(ch::CUTTING_DEFLECTION, &stiffness::DEFLECTION, (ch::DRIVE_CUTTING_FORCE, ch::TOTAL_STIFFNESS));
    }

    #[inline(always)]
    pub(super) fn masses<L: Ledger>(&self, sheet: &mut L) {
        let riding =
            (ch::MOTOR_MASS, ch::REDUCTION_MASS, ch::NUT_MASS, ch::NUT_UNIT_MASS, ch::SUPPORT_MASS, ch::DRIVES);
        sheet.computed(ch::RIDING_MASS, &layout::RIDING_NUT_DRIVES, riding);
        self.demand.enter_masses(sheet);
        self.demand.enter_cutting_shift(sheet);
    }

    pub(super) fn duty<L: Ledger>(&self, belt: &ScrewReduction, sheet: &mut L) {
        self.masses(sheet);
        self.demand.enter_forces(sheet);
        self.demand.enter_mean_force(sheet);
        sheet.computed(ch::FIRST_MODE, &stiffness::NATURAL_FREQUENCY, (ch::TOTAL_STIFFNESS, ch::DRIVEN_MASS));
        sides::racking(self.demand, screw::ERRORS, sheet);
        screw::nut_loads(self.demand, sheet);
        screw::nut_peak(sheet);
        screw::shaft_torque(ch::NUT_UNIT_INERTIA, sheet);
        reduction::pull(reduction::is_belt(belt), sheet);
        motor::inertias(ch::NUT_UNIT_INERTIA, sheet);
        motor::holding(sheet);
        held::bearing_life(self.demand, sheet);
        held::bearing_peak(ch::PEAK_FORCE, sheet);
        held::warming(self.demand, sheet);
        held::warm(ch::CLAMP_STIFFNESS, sheet);
        held::peak(true, self.demand, sheet);
        let beam = (ch::WARM_AXIAL_FORCE, ch::EULER_LOAD, ch::EIGENVALUE_SQUARED);
        sheet.computed(ch::WARM_WHIP_FACTOR, &shaft::TENSION_WHIP_FACTOR, beam);
        sheet.computed(ch::WARM_WHIP_SPEED, &shaft::LOADED_WHIP_SPEED, (ch::BARE_WHIP_SPEED, ch::WARM_WHIP_FACTOR));
        let tops = ch::PHASE_TOP_SPEED.all(self.demand.phases.len());
        let speeds = (ch::SPEED, ch::LEAD, ch::WARM_WHIP_SPEED, tops);
        sheet.computed(ch::WARM_WHIP_DISTANCE, &shaft::WHIP_DISTANCE, speeds);
    }

    #[inline(always)]
    pub(super) fn peak<L: Ledger>(&self, sheet: &mut L) {
        motor::peak(self.demand, sheet);
        sides::both(self.demand, sheet);
        screw::stop(sheet);
    }

    #[inline(always)]
    pub(super) fn heat<L: Ledger>(&self, sheet: &mut L) {
        motor::heat(self.demand, sheet);
        price::enter_motors(sheet);
        price::enter_drives(sheet);
        sheet.computed(ch::DRIVE_MASS, &layout::RIDING_DRIVE_MASS, (ch::SCREW_MASS, ch::RIDING_MASS, ch::DRIVES));
    }
}
