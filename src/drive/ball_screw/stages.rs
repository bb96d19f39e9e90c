//! The stages in which a turning screw differs from a driven nut: size, end fixity and bearings.

use super::BallScrewDrive;
use crate::catalog::*;
use crate::characteristic as ch;
use crate::drive::{mounting, screw};
use crate::formula::{column, inertia, layout, motion, pricing, rolling_life, shaft, stiffness};
use crate::ledger::{Ledger, Origin};
use crate::units::*;

impl BallScrewDrive<'_> {
    pub(super) fn size<L: Ledger>(&self, size: &BallScrew, sheet: &mut L) {
        screw::size(size, &self.catalog.prices, sheet);
        mounting::screw(self.catalog, sheet);
        sheet.computed(ch::RIDING_MASS, &layout::RIDING_NUTS, (ch::NUT_MASS, ch::DRIVES));
        self.demand.enter_forces(sheet);
        sheet.computed(ch::SCREW_INERTIA, &inertia::SCREW_INERTIA, (ch::NOMINAL_DIAMETER, ch::SCREW_LENGTH));
        sheet.computed(ch::SCREW_TORSION, &stiffness::SCREW_TORSION, (ch::ROOT_DIAMETER, ch::FREE_LENGTH, ch::LEAD));
    }

    pub(super) fn ends<L: Ledger>(&self, ends: &EndArrangement, sheet: &mut L) {
        sheet.given(ch::EIGENVALUE_SQUARED, ends.eigenvalue_squared, Origin::Catalog);
        sheet.given(ch::BUCKLING_FACTOR, ends.buckling_factor, Origin::Catalog);
        sheet.given(ch::THRUST_ENDS, ends.thrust_ends, Origin::Catalog);
        sheet.given(ch::SUPPORT_ENDS, Ratio::of_si(f64::from(ends.supports)), Origin::Catalog);
        sheet.computed(
            ch::WHIP_SPEED,
            &shaft::WHIP_SPEED,
            (ch::ROOT_DIAMETER, ch::FREE_LENGTH, ch::EIGENVALUE_SQUARED),
        );
        sheet.computed(
            ch::COLUMN_LOAD,
            &column::COLUMN_LOAD,
            (ch::ROOT_DIAMETER, ch::FREE_LENGTH, ch::BUCKLING_FACTOR, ch::SCREW_YIELD_STRENGTH),
        );
        sheet.computed(ch::SCREW_SAG, &shaft::SCREW_SAG, (ch::ROOT_DIAMETER, ch::FREE_LENGTH, ch::EIGENVALUE_SQUARED));
    }

    pub(super) fn bearing<L: Ledger>(&self, bearing: &ScrewBearing, sheet: &mut L) {
        let catalog = Origin::Catalog;
        sheet.given(ch::BEARING_BORE, bearing.bore, catalog);
        sheet.given(ch::BEARING_RATING, bearing.rating, catalog);
        sheet.given(ch::BEARING_PRELOAD, bearing.preload, catalog);
        sheet.given(ch::BEARING_STIFFNESS, bearing.stiffness, catalog);
        sheet.given(ch::BEARING_SPEED_LIMIT, bearing.speed_limit, catalog);
        sheet.given(ch::BEARING_SET_DRAG, bearing.drag, catalog);
        sheet.given(ch::BEARING_MASS, bearing.mass, catalog);
        sheet.given(ch::BEARING_PRICE, bearing.price, catalog);
        sheet.computed(
            ch::SUPPORT_PRICE,
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
        sheet.computed(ch::BEARING_DRAG, &layout::SETS_DRAG, (ch::BEARING_SET_DRAG, ch::THRUST_ENDS));
        sheet.computed(ch::DRAG_TORQUE, &layout::TORQUE_SUM, (ch::PRELOAD_DRAG, ch::BEARING_DRAG));
        sheet.computed(
            ch::BEARING_LIFE_HOURS,
            &rolling_life::BEARING_PAIR_LIFE,
            (ch::BEARING_RATING, ch::BEARING_PRELOAD, ch::MEAN_FORCE, ch::MEAN_SPEED, ch::TRAVEL_PER_TURN),
        );
        sheet.computed(
            ch::SCREW_STIFFNESS,
            &stiffness::SCREW_END_STIFFNESS,
            (ch::CORE_DIAMETER, ch::FREE_LENGTH, ch::THRUST_ENDS, ch::BEARING_STIFFNESS),
        );
        sheet.computed(ch::MEAN_SCREW_SPEED, &motion::SHAFT_SPEED, (ch::MEAN_SPEED, ch::LEAD));
        screw::warming(self.demand, sheet);
    }
}
