//! The turning ball screw: what it is joined from, and how it is worked out, in working order.
//!
//! Stages: size, grade, preload class, end fixity, bearing set, coupling or belt, motor, duty, heat, feedback. Each stage
//! enters only quantities that the earlier ones do not change, so that a rule can fall as early as it can.
//! Limits: the nut's half loads come from phases with constant acceleration; whip and column length are the
//! whole bearing distance, nut ignored, which is on the safe side.

use super::demand::Demand;
use super::{Family, Part, Size, defaults::parts, feedback, motor, price};
use crate::catalog::*;
use crate::characteristic as ch;
use crate::formula::{
    budget, column, cost, inertia, layout, lead_accuracy, motion, pricing, rolling_life, screw, shaft, stiffness,
    thermal,
};
use crate::ledger::{Ledger, Origin};
use crate::units::*;

/// The family on one axis.
#[derive(Debug)]
pub struct BallScrewDrive<'a> {
    demand: &'a Demand<'a>,
    catalog: &'a Catalog,
    feedbacks: Vec<Option<&'a LinearScale>>,
}

const SIZE: usize = 0;
const GRADE: usize = 1;
const PRELOAD: usize = 2;
const ENDS: usize = 3;
const BEARING: usize = 4;
const REDUCTION: usize = 5;
const MOTOR: usize = 6;
const DUTY: usize = 7;
const HEAT: usize = 8;
const FEEDBACK: usize = 9;

impl<'a> BallScrewDrive<'a> {
    /// The family on this axis, joined from this catalogue.
    pub fn new(demand: &'a Demand<'a>, catalog: &'a Catalog) -> Self {
        BallScrewDrive { demand, catalog, feedbacks: feedback::options(demand, catalog) }
    }

    fn size<L: Ledger>(&self, size: &BallScrew, sheet: &mut L) {
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

    fn grade<L: Ledger>(&self, grade: &ScrewGrade, sheet: &mut L) {
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

    fn preload<L: Ledger>(&self, class: &PreloadClass, sheet: &mut L) {
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

    fn ends<L: Ledger>(&self, ends: &EndArrangement, sheet: &mut L) {
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

    fn bearing<L: Ledger>(&self, bearing: &ScrewBearing, sheet: &mut L) {
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
        sheet.computed(ch::NUT_HEAT, &thermal::HEAT_FLOW, (ch::DRAG_TORQUE, ch::MEAN_SPEED, ch::TRAVEL_PER_TURN));
        sheet.computed(ch::MEAN_SCREW_SPEED, &motion::SHAFT_SPEED, (ch::MEAN_SPEED, ch::LEAD));
        sheet.computed(
            ch::SCREW_WARMING,
            &thermal::SCREW_WARMING,
            (ch::NUT_HEAT, ch::NOMINAL_DIAMETER, ch::TRAVEL, ch::MEAN_SCREW_SPEED),
        );
    }

    fn reduction<L: Ledger>(&self, reduction: &ScrewReduction, sheet: &mut L) {
        let catalog = Origin::Catalog;
        sheet.given(ch::REDUCTION, reduction.ratio, catalog);
        sheet.given(ch::REDUCTION_EFFICIENCY, reduction.efficiency, catalog);
        sheet.given(ch::REDUCTION_INERTIA, reduction.inertia, catalog);
        sheet.given(ch::REDUCTION_STIFFNESS, reduction.torsional_stiffness, catalog);
        sheet.given(ch::REDUCTION_TORQUE_LIMIT, reduction.rated_torque, catalog);
        sheet.given(ch::REDUCTION_SPEED_LIMIT, reduction.speed_limit, catalog);
        sheet.given(ch::REDUCTION_MASS, reduction.mass, catalog);
        sheet.given(ch::REDUCTION_PRICE, reduction.price, catalog);
        sheet.computed(ch::MOTOR_SPEED, &motion::GEARED_SPEED, (ch::SCREW_SPEED, ch::REDUCTION));
        motor::holding(sheet);
        sheet.computed(
            ch::COUPLING_LINEAR_STIFFNESS,
            &stiffness::LINEAR_OF_TORSIONAL,
            (ch::REDUCTION_STIFFNESS, ch::TRAVEL_PER_TURN),
        );
        sheet.computed(
            ch::TOTAL_STIFFNESS,
            &stiffness::SERIES_5,
            (
                ch::SCREW_STIFFNESS,
                ch::NUT_STIFFNESS,
                ch::SCREW_TORSION,
                ch::COUPLING_LINEAR_STIFFNESS,
                ch::BRACKET_STIFFNESS,
            ),
        );
        sheet.computed(ch::FIRST_MODE, &stiffness::NATURAL_FREQUENCY, (ch::TOTAL_STIFFNESS, ch::DRIVEN_MASS));
        sheet.computed(ch::CUTTING_DEFLECTION, &stiffness::DEFLECTION, (ch::DRIVE_CUTTING_FORCE, ch::TOTAL_STIFFNESS));
        sheet.computed(
            ch::SHAFT_TORQUE,
            &layout::SHAFT_TORQUE,
            (ch::PEAK_FORCE, ch::LEAD, ch::SCREW_EFFICIENCY, ch::DRAG_TORQUE, ch::SCREW_INERTIA, ch::ACCELERATION),
        );
        sheet.computed(ch::TOTAL_EFFICIENCY, &layout::PRODUCT, (ch::SCREW_EFFICIENCY, ch::REDUCTION_EFFICIENCY));
        sheet.computed(
            ch::TOTAL_BACK_EFFICIENCY,
            &layout::PRODUCT,
            (ch::BACK_DRIVING_EFFICIENCY, ch::REDUCTION_EFFICIENCY),
        );
    }

    fn duty<L: Ledger>(&self, sheet: &mut L) {
        sheet.computed(
            ch::ROTATING_INERTIA,
            &inertia::ROTATING_INERTIA,
            (ch::ROTOR_INERTIA, ch::REDUCTION_INERTIA, ch::SCREW_INERTIA, ch::REDUCTION),
        );
        sheet.computed(ch::MASS_INERTIA, &inertia::MASS_INERTIA, (ch::DRIVEN_MASS, ch::TRAVEL_PER_TURN, ch::REDUCTION));
        sheet.computed(
            ch::LOAD_INERTIA,
            &inertia::LOAD_INERTIA,
            (ch::MASS_INERTIA, ch::REDUCTION_INERTIA, ch::SCREW_INERTIA, ch::REDUCTION),
        );
        motor::peak(self.demand, sheet);
    }

    fn heat<L: Ledger>(&self, sheet: &mut L) {
        motor::heat(self.demand, sheet);
        price::enter_drives(sheet);
        sheet.computed(
            ch::DRIVE_MASS,
            &layout::SCREW_DRIVE_MASS,
            (
                ch::SCREW_MASS,
                ch::NUT_MASS,
                ch::BEARING_MASS,
                ch::THRUST_ENDS,
                ch::REDUCTION_MASS,
                ch::MOTOR_MASS,
                ch::DRIVES,
            ),
        );
    }

    fn feedback<L: Ledger>(&self, path: &[u16], scale: Option<&LinearScale>, sheet: &mut L) {
        feedback::enter_reader(scale, sheet);
        if scale.is_none() {
            sheet.computed(
                ch::POSITION_ERROR,
                &budget::ROOT_SUM_SQUARE_3,
                (ch::MEAN_TRAVEL_DEVIATION, ch::TRAVEL_VARIATION, ch::TURN_VARIATION),
            );
            sheet.computed(
                ch::SECTION_POSITION_ERROR,
                &budget::ROOT_SUM_SQUARE_3,
                (ch::SECTION_TRAVEL_DEVIATION, ch::SECTION_TRAVEL_VARIATION, ch::TURN_VARIATION),
            );
            sheet.computed(ch::TEMPERATURE_RISE, &layout::TEMPERATURE_SUM, (ch::TEMPERATURE_SWING, ch::SCREW_WARMING));
        }
        feedback::work_out(scale, sheet);
        let lead_time = price::longest(&[
            self.picked_size(path).lead_time,
            self.picked_grade(path).lead_time,
            self.picked_ends(path).lead_time,
            self.picked_bearing(path).lead_time,
            self.picked_reduction(path).lead_time,
            self.picked_motor(path).lead_time,
        ]);
        price::enter_whole(scale, lead_time, sheet);
    }

    fn picked_size(&self, path: &[u16]) -> &'a BallScrew {
        &self.catalog.ball_screws[usize::from(path[SIZE])]
    }
    fn picked_grade(&self, path: &[u16]) -> &'a ScrewGrade {
        &self.catalog.screw_grades[usize::from(path[GRADE])]
    }
    fn picked_class(&self, path: &[u16]) -> &'a PreloadClass {
        &self.catalog.preload_classes[usize::from(path[PRELOAD])]
    }
    fn picked_ends(&self, path: &[u16]) -> &'a EndArrangement {
        &self.catalog.end_arrangements[usize::from(path[ENDS])]
    }
    fn picked_bearing(&self, path: &[u16]) -> &'a ScrewBearing {
        &self.catalog.screw_bearings[usize::from(path[BEARING])]
    }
    fn picked_reduction(&self, path: &[u16]) -> &'a ScrewReduction {
        &self.catalog.screw_reductions[usize::from(path[REDUCTION])]
    }
    fn picked_motor(&self, path: &[u16]) -> &'a ServoMotor {
        &self.catalog.servo_motors[usize::from(path[MOTOR])]
    }
}

impl Family for BallScrewDrive<'_> {
    fn id(&self) -> &'static str {
        "ball-screw"
    }

    fn stages(&self) -> Vec<usize> {
        let catalog = self.catalog;
        vec![
            catalog.ball_screws.len(),
            catalog.screw_grades.len(),
            catalog.preload_classes.len(),
            catalog.end_arrangements.len(),
            catalog.screw_bearings.len(),
            catalog.screw_reductions.len(),
            catalog.servo_motors.len(),
            1,
            1,
            self.feedbacks.len(),
        ]
    }

    fn enter<L: Ledger>(&self, stage: usize, path: &[u16], sheet: &mut L) {
        match stage {
            SIZE => self.size(self.picked_size(path), sheet),
            GRADE => self.grade(self.picked_grade(path), sheet),
            PRELOAD => self.preload(self.picked_class(path), sheet),
            ENDS => self.ends(self.picked_ends(path), sheet),
            BEARING => self.bearing(self.picked_bearing(path), sheet),
            REDUCTION => self.reduction(self.picked_reduction(path), sheet),
            MOTOR => motor::given(self.picked_motor(path), sheet),
            DUTY => self.duty(sheet),
            HEAT => self.heat(sheet),
            _ => self.feedback(path, self.feedbacks[usize::from(path[FEEDBACK])], sheet),
        }
    }

    fn motor_model(&self, path: &[u16]) -> &str {
        &self.picked_motor(path).size
    }

    fn gearbox_model(&self, _: &[u16]) -> Option<&str> {
        None
    }

    fn parts(&self, path: &[u16], _: &impl Ledger) -> Vec<Part> {
        let drives = f64::from(self.demand.axis.drives.value);
        let (ends, bearing) = (self.picked_ends(path), self.picked_bearing(path));
        let (size, grade, class) = (self.picked_size(path), self.picked_grade(path), self.picked_class(path));
        let mut parts = vec![
            Part::new("ball-screw", &size.designation, drives, size.generic),
            Part::new("screw-grade", &grade.designation, drives, grade.generic),
            Part::new("preload-class", &class.designation, drives, class.generic),
            Part::new("end-arrangement", &ends.designation, drives, ends.generic),
            Part::new("screw-bearing", &bearing.designation, drives * ends.thrust_ends.si(), bearing.generic),
        ];
        let (reduction, motor) = (self.picked_reduction(path), self.picked_motor(path));
        parts.push(Part::new("screw-reduction", &reduction.designation, drives, reduction.generic));
        parts.push(Part::new("servo-motor", &motor.designation, drives, motor.generic));
        if let Some(scale) = self.feedbacks[usize::from(path[FEEDBACK])] {
            parts.push(Part::new("linear-scale", &scale.designation, drives, scale.generic));
        }
        parts
    }

    fn sizes(&self, path: &[u16]) -> Vec<Size> {
        let (size, grade, class) = (self.picked_size(path), self.picked_grade(path), self.picked_class(path));
        let reduction = self.picked_reduction(path);
        vec![
            Size::number("diameter", size.nominal_diameter.si() * 1e3, "mm"),
            Size::number("lead", size.lead.si() * 1e3, "mm"),
            Size::word("grade", &grade.designation),
            Size::word("ends", &self.picked_ends(path).designation),
            Size::word("preload", &class.designation),
            Size::number("ratio", reduction.ratio.si(), "1"),
            Size::word("motor", &self.picked_motor(path).designation),
            Size::word("feedback", feedback::word(self.feedbacks[usize::from(path[FEEDBACK])])),
        ]
    }
}
