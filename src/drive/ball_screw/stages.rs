//! The stages in which a turning screw differs from a driven nut: size, supports, bearings and ends.

use super::BallScrewDrive;
use crate::catalog::*;
use crate::characteristic as ch;
use crate::drive::screw::held::{self, End};
use crate::drive::{mounting, screw};
use crate::formula::{column, cost, inertia, layout, motion, pricing, stiffness, stretch};
use crate::ledger::{Ledger, Origin};
use crate::units::*;

/// How the far end of an arrangement is held; the first end is always fixed.
fn far_end(ends: &EndArrangement) -> End {
    if ends.thrust_ends.si() > 1.5 {
        End::Fixed
    } else if ends.supports > 0 {
        End::Supported
    } else {
        End::Free
    }
}

impl BallScrewDrive<'_> {
    pub(super) fn size<L: Ledger>(&self, size: &BallScrew, sheet: &mut L) {
        screw::size(size, &self.catalog.prices, sheet);
        self.here.enter(sheet);
        mounting::screw(self.catalog, sheet);
        sheet.computed(ch::MEAN_SCREW_SPEED, &motion::SHAFT_SPEED, (ch::MEAN_SPEED, ch::LEAD));
        held::cooling(sheet);
        mounting::bed(self.demand.axis.bed.value, self.catalog, sheet);
    }

    pub(super) fn support<L: Ledger>(&self, support: &ScrewSupport, sheet: &mut L) {
        screw::support(support, sheet);
        sheet.computed(ch::RIDING_MASS, &layout::RIDING_NUTS, (ch::NUT_MASS, ch::SUPPORT_MASS, ch::DRIVES));
        self.demand.enter_masses(sheet);
        self.demand.enter_forces(sheet);
        self.demand.enter_mean_force(sheet);
        sheet.computed(
            ch::SCREW_INERTIA,
            &inertia::SCREW_INERTIA,
            (ch::NOMINAL_DIAMETER, ch::SCREW_BORE, ch::SCREW_LENGTH),
        );
        // the motor holds one end against turning
        sheet.given(ch::TURN_HELD_ENDS, Ratio::of_si(1.0), Origin::Assumed);
        sheet.computed(
            ch::SCREW_TORSION,
            &stiffness::BORED_TORSION,
            (ch::ROOT_DIAMETER, ch::SCREW_BORE, ch::FREE_LENGTH, ch::LEAD, ch::TURN_HELD_ENDS),
        );
    }

    pub(super) fn bearing<L: Ledger>(&self, bearing: &ScrewBearing, sheet: &mut L) {
        let catalog = Origin::Catalog;
        sheet.given(ch::BEARING_BORE, bearing.bore, catalog);
        sheet.given(ch::BEARING_RATING, bearing.rating, catalog);
        sheet.given(ch::BEARING_LESSER_RATING, bearing.lesser_rating.unwrap_or(bearing.rating), catalog);
        sheet.given(ch::BEARING_STATIC_RATING, bearing.static_rating, catalog);
        sheet.given(ch::BEARING_PRELOAD, bearing.preload, catalog);
        sheet.given(ch::BEARING_STIFFNESS, bearing.stiffness, catalog);
        sheet.given(ch::BEARING_TILT_STIFFNESS, bearing.tilt_stiffness, catalog);
        sheet.given(ch::BEARING_SPEED_LIMIT, bearing.speed_limit, catalog);
        sheet.given(ch::BEARING_SET_DRAG, bearing.drag, catalog);
        sheet.given(ch::BEARING_MASS, bearing.mass, catalog);
        sheet.given(ch::BEARING_PRICE, bearing.price, catalog);
    }

    pub(super) fn ends<L: Ledger>(&self, ends: &EndArrangement, support: &ScrewSupport, sheet: &mut L) {
        let (far, both) = (far_end(ends), ends.thrust_ends.si() > 1.5);
        sheet.given(ch::THRUST_ENDS, ends.thrust_ends, Origin::Catalog);
        sheet.given(ch::SUPPORT_ENDS, Ratio::of_si(f64::from(ends.supports)), Origin::Catalog);
        sheet.given(ch::STRETCH, ends.stretch, Origin::Catalog);
        sheet.computed(ch::BEARING_DRAG, &layout::SETS_DRAG, (ch::BEARING_SET_DRAG, ch::THRUST_ENDS));
        sheet.computed(ch::DRAG_TORQUE, &layout::TORQUE_SUM, (ch::PRELOAD_DRAG, ch::BEARING_DRAG));
        held::beam(far, support.pairs, sheet);
        held::column(both, far, support.pairs, sheet);
        held::stretched(ch::BEARING_STIFFNESS, sheet);
        sheet.computed(ch::BEARING_SHARE, &stretch::MEAN_END_SHARE, (ch::END_SHARE, ch::THRUST_ENDS));
        // with two drives warming and the largest force wait for the racking force
        if !self.demand.two_sided() {
            self.warm(ends, sheet);
            self.peak(ends, sheet);
        }
        sheet.computed(
            ch::HELD_ENDS_PRICE,
            &pricing::SUPPORT_PRICE,
            (
                ch::BEARING_PRICE,
                ch::THRUST_ENDS,
                ch::SUPPORT_ENDS,
                ch::SUPPORT_PRICE_SHARE,
                ch::ENDS_PRICE,
                ch::NOMINAL_DIAMETER,
            ),
        );
        held::support_price(sheet);
        sheet.computed(ch::BEARINGS_PRICE, &cost::TIMES, (ch::THRUST_ENDS, ch::BEARING_PRICE));
    }

    /// What warming leaves of the stretch, with whip, sag and the life of the bearings.
    pub(super) fn warm<L: Ledger>(&self, ends: &EndArrangement, sheet: &mut L) {
        held::warming(self.demand, sheet);
        held::warm(ch::BEARING_STIFFNESS, sheet);
        held::whip_and_sag(far_end(ends), ch::WARM_AXIAL_FORCE, sheet);
        sheet.computed(ch::BEARING_STANDING_FORCE, &layout::SAME_FORCE, (ch::STANDING_FORCE,));
        held::bearing_life(self.demand, sheet);
    }

    /// What the largest force does to screw, journal and bearings.
    pub(super) fn peak<L: Ledger>(&self, ends: &EndArrangement, sheet: &mut L) {
        screw::shaft_torque(ch::SCREW_INERTIA, sheet);
        held::peak(ends.thrust_ends.si() > 1.5, self.demand, sheet);
        sheet.computed(
            ch::JOURNAL_STRESS,
            &column::COMBINED_STRESS,
            (ch::END_FORCE, ch::SHAFT_TORQUE, ch::BEARING_BORE, ch::SCREW_BORE),
        );
        held::bearing_peak(ch::END_FORCE, sheet);
    }
}
