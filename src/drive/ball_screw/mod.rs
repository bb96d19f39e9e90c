//! The turning ball screw: what it is joined from, and how it is worked out, in working order.
//!
//! Stages: size, grade, preload class, end fixity, bearing set, coupling or belt, motor, duty, heat, feedback. Each stage
//! enters only quantities that the earlier ones do not change, so that a rule can fall as early as it can.
//! Limits: the nut's half loads come from phases with constant acceleration; whip and column length are the
//! whole bearing distance, nut ignored, which is on the safe side.

mod screw;

use super::demand::Demand;
use super::{Family, Part, Size, feedback, motor, price};
use crate::catalog::*;
use crate::characteristic as ch;
use crate::formula::{budget, inertia, layout, motion, stiffness, stop};
use crate::ledger::{Ledger, Origin};
use crate::units::*;

/// The family on one axis.
#[derive(Debug)]
pub struct BallScrewDrive<'a> {
    demand: &'a Demand<'a>,
    catalog: &'a Catalog,
    motors: Vec<&'a ServoMotor>,
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
        BallScrewDrive {
            demand,
            catalog,
            motors: motor::options(demand, catalog),
            feedbacks: feedback::options(demand, catalog),
        }
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
        sheet.given(ch::BELTS, Ratio::of_si(if reduction.kind == "belt" { 1.0 } else { 0.0 }), catalog);
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
        sheet.computed(
            ch::REDUCTION_STOP_TORQUE,
            &stop::REDUCTION_STOP_TORQUE,
            (ch::SET_TORQUE, ch::LOAD_INERTIA, ch::ROTOR_INERTIA, ch::REDUCTION, ch::HOLDING_TORQUE),
        );
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
        feedback::enter_reader(scale, crate::drive::defaults::parts::screw_scatter(), sheet);
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
        self.motors[usize::from(path[MOTOR])]
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
            self.motors.len(),
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
