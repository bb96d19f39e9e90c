//! The stages of the screw itself: size, grade, preload, end fixity and bearings.

use super::BallScrewDrive;
use crate::catalog::*;
use crate::characteristic as ch;
use crate::drive::defaults::parts;
use crate::drive::price;
use crate::formula::{
    column, cost, inertia, layout, lead_accuracy, motion, pricing, rolling_life, screw, shaft, stiffness, stop, thermal,
};
use crate::ledger::{Ledger, Origin};
use crate::units::*;

impl BallScrewDrive<'_> {
    pub(super) fn size<L: Ledger>(&self, size: &BallScrew, sheet: &mut L) {
        let catalog = Origin::Catalog;
        sheet.given(ch::NOMINAL_DIAMETER, size.nominal_diameter, catalog);
        sheet.given(ch::LEAD, size.lead, catalog);
        sheet.given(ch::BALL_CIRCLE_DIAMETER, size.ball_circle_diameter, catalog);
        sheet.given(ch::BALL_DIAMETER, size.ball_diameter, catalog);
        sheet.given(ch::ROOT_DIAMETER, size.root_diameter, catalog);
        sheet.given(ch::NUT_LENGTH, size.nut_length, catalog);
        sheet.given(ch::NUT_MASS, size.nut_mass, catalog);
        sheet.given(ch::SIZE_DYNAMIC_RATING, size.dynamic_rating, catalog);
        sheet.given(ch::SIZE_STATIC_RATING, size.static_rating, catalog);
        sheet.given(ch::RATED_NUT_STIFFNESS, size.nut_stiffness, catalog);
        sheet.given(ch::SCREW_YIELD_STRENGTH, parts::screw_yield_strength(), Origin::Assumed);
        sheet.given(ch::TRAVEL_PER_TURN, size.lead, catalog);
        sheet.computed(ch::FREE_LENGTH, &screw::FREE_LENGTH, (ch::TRAVEL, ch::OVERTRAVEL, ch::END_GAP, ch::NUT_LENGTH));
        sheet.computed(ch::JOURNAL_LENGTH, &layout::JOURNAL_LENGTH, (ch::NOMINAL_DIAMETER,));
        sheet.computed(ch::SCREW_LENGTH, &screw::SCREW_LENGTH, (ch::FREE_LENGTH, ch::JOURNAL_LENGTH));
        sheet.computed(ch::SCREW_SPEED, &motion::SHAFT_SPEED, (ch::SPEED, ch::LEAD));
        sheet.computed(ch::CIRCULATION_SPEED, &screw::CIRCULATION_SPEED, (ch::NOMINAL_DIAMETER, ch::SCREW_SPEED));
        sheet.computed(ch::RIDING_MASS, &layout::RIDING_NUTS, (ch::NUT_MASS, ch::DRIVES));
        self.demand.enter_forces(sheet);
        sheet.computed(ch::CORE_DIAMETER, &stiffness::CORE_DIAMETER, (ch::BALL_CIRCLE_DIAMETER, ch::BALL_DIAMETER));
        sheet.computed(ch::LEAD_ANGLE, &screw::LEAD_ANGLE, (ch::LEAD, ch::BALL_CIRCLE_DIAMETER));
        sheet.computed(ch::SCREW_INERTIA, &inertia::SCREW_INERTIA, (ch::NOMINAL_DIAMETER, ch::SCREW_LENGTH));
        sheet.computed(ch::SCREW_MASS, &screw::SCREW_MASS, (ch::NOMINAL_DIAMETER, ch::SCREW_LENGTH));
        sheet.computed(ch::SCREW_WEIGHT_ON_NUT, &shaft::WEIGHT_ON_NUT, (ch::ROOT_DIAMETER, ch::FREE_LENGTH));
        sheet.computed(ch::SCREW_TORSION, &stiffness::SCREW_TORSION, (ch::ROOT_DIAMETER, ch::FREE_LENGTH, ch::LEAD));
        let prices = &self.catalog.prices;
        sheet.given(ch::SCREW_BASE_PRICE, prices.screw_base, catalog);
        sheet.given(ch::SCREW_METRE_PRICE, prices.screw_per_metre, catalog);
        sheet.given(ch::SUPPORT_PRICE_SHARE, prices.support_price_share, catalog);
        sheet.given(ch::ENDS_PRICE, prices.screw_ends, catalog);
        price::enter_kind(prices, price::Kind::Screw, sheet);
    }

    pub(super) fn grade<L: Ledger>(&self, grade: &ScrewGrade, sheet: &mut L) {
        let catalog = Origin::Catalog;
        let positioning = Ratio::of_si(if grade.positioning { 1.0 } else { 0.0 });
        sheet.given(ch::GRADE_NUMBER, Ratio::of_si(f64::from(grade.grade)), catalog);
        sheet.given(ch::POSITIONING, positioning, catalog);
        sheet.given(ch::VARIATION_300, grade.variation_300, catalog);
        sheet.given(ch::TURN_VARIATION, grade.turn_variation, catalog);
        sheet.given(ch::RATING_FACTOR, grade.rating_factor, catalog);
        sheet.given(ch::CIRCULATION_LIMIT, grade.circulation_limit, catalog);
        sheet.given(ch::LENGTH_PER_DIAMETER, grade.length_per_diameter, catalog);
        sheet.given(ch::BLANK_LENGTH, grade.length_limit, catalog);
        sheet.given(ch::DIAMETER_LIMIT, grade.diameter_limit, catalog);
        sheet.given(ch::GRADE_PRICE_FACTOR, grade.price_factor, catalog);
        sheet.given(ch::SCREW_FRICTION, grade.friction, catalog);
        sheet.computed(
            ch::SCREW_LENGTH_LIMIT,
            &layout::LENGTH_LIMIT,
            (ch::NOMINAL_DIAMETER, ch::LENGTH_PER_DIAMETER, ch::BLANK_LENGTH),
        );
        sheet.computed(ch::DYNAMIC_RATING, &layout::RATED_FORCE, (ch::SIZE_DYNAMIC_RATING, ch::RATING_FACTOR));
        sheet.computed(ch::STATIC_RATING, &layout::RATED_FORCE, (ch::SIZE_STATIC_RATING, ch::RATING_FACTOR));
        sheet.computed(ch::SCREW_EFFICIENCY, &screw::SCREW_EFFICIENCY, (ch::LEAD_ANGLE, ch::SCREW_FRICTION));
        sheet.computed(
            ch::BACK_DRIVING_EFFICIENCY,
            &screw::BACK_DRIVING_EFFICIENCY,
            (ch::LEAD_ANGLE, ch::SCREW_FRICTION),
        );
        let lead_inputs = |length| (ch::GRADE_NUMBER, ch::POSITIONING, ch::VARIATION_300, length);
        sheet.computed(ch::MEAN_TRAVEL_DEVIATION, &lead_accuracy::MEAN_TRAVEL_DEVIATION, lead_inputs(ch::TRAVEL));
        sheet.computed(ch::TRAVEL_VARIATION, &lead_accuracy::TRAVEL_VARIATION, lead_inputs(ch::TRAVEL));
        sheet.computed(
            ch::SECTION_TRAVEL_DEVIATION,
            &lead_accuracy::MEAN_TRAVEL_DEVIATION,
            lead_inputs(ch::SECTION_LENGTH),
        );
        sheet.computed(ch::SECTION_TRAVEL_VARIATION, &lead_accuracy::TRAVEL_VARIATION, lead_inputs(ch::SECTION_LENGTH));
        sheet.computed(ch::RIPPLE, &layout::SAME_LENGTH, (ch::TURN_VARIATION,));
    }

    pub(super) fn preload<L: Ledger>(&self, class: &PreloadClass, sheet: &mut L) {
        let count = self.demand.phases.len();
        sheet.given(ch::PRELOAD_SHARE, class.share, Origin::Catalog);
        sheet.given(ch::NUT_CLEARANCE, class.clearance, Origin::Catalog);
        sheet.computed(ch::PRELOAD, &screw::PRELOAD, (ch::PRELOAD_SHARE, ch::DYNAMIC_RATING));
        sheet.computed(ch::PRELOAD_DRAG, &screw::PRELOAD_DRAG, (ch::PRELOAD, ch::LEAD, ch::LEAD_ANGLE));
        sheet.computed(
            ch::SCREW_LIFE,
            &rolling_life::PAIR_LIFE,
            (
                ch::DYNAMIC_RATING,
                ch::PRELOAD,
                ch::PHASE_FORCE.all(count),
                ch::PHASE_SHARE.all(count),
                ch::PHASE_SPEED.all(count),
            ),
        );
        sheet.computed(
            ch::SCREW_LIFE_HOURS,
            &rolling_life::LIFE_HOURS,
            (ch::SCREW_LIFE, ch::MEAN_SPEED, ch::TRAVEL_PER_TURN),
        );
        sheet.computed(ch::LOADED_HALF_PEAK, &rolling_life::HALF_LOAD, (ch::PEAK_FORCE, ch::PRELOAD));
        sheet.computed(ch::STATIC_SAFETY, &rolling_life::STATIC_SAFETY, (ch::STATIC_RATING, ch::LOADED_HALF_PEAK));
        sheet.computed(ch::NUT_STIFFNESS, &stiffness::NUT_STIFFNESS, (ch::RATED_NUT_STIFFNESS, ch::PRELOAD_SHARE));
        sheet.computed(ch::PLAY, &layout::SAME_LENGTH, (ch::NUT_CLEARANCE,));
        sheet.given(ch::NUT_PRICE_FACTOR, class.nut_price_factor, Origin::Catalog);
        sheet.computed(
            ch::ELEMENT_PRICE,
            &cost::SCREW_PRICE,
            (
                ch::NOMINAL_DIAMETER,
                ch::SCREW_LENGTH,
                ch::SCREW_LENGTH_LIMIT,
                ch::GRADE_PRICE_FACTOR,
                ch::NUT_PRICE_FACTOR,
                ch::SCREW_BASE_PRICE,
                ch::SCREW_METRE_PRICE,
            ),
        );
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
        let count = self.demand.phases.len();
        sheet.computed(
            ch::NUT_HEAT,
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
        sheet.computed(ch::MEAN_SCREW_SPEED, &motion::SHAFT_SPEED, (ch::MEAN_SPEED, ch::LEAD));
        sheet.computed(
            ch::SCREW_WARMING,
            &thermal::SCREW_WARMING,
            (ch::NUT_HEAT, ch::NOMINAL_DIAMETER, ch::TRAVEL, ch::MEAN_SCREW_SPEED),
        );
    }
}
