//! The turning ball screw: what it is joined from, and how it is worked out, in working order.
//!
//! Stages: size, supports, grade, preload class, bearing set, ends, coupling or belt, motor, duty, heat, rest, feedback, mapping.
//! Each stage enters only quantities that the earlier ones do not change, so that a rule can fall as early as it can.
//! Limits: whip takes the whole bearing distance, nut
//! ignored, which is on the safe side. On an inclined axis the single thrust bearing is the upper one.

mod stages;

use super::demand::Demand;
use super::exchange::Exchanges;
use super::screw::{self, GRADE, PRELOAD, SIZE, SUPPORT};
use super::surroundings::Here;
use super::{Family, Part, Position, Size, feedback, mapping, motor, price, reduction, rest, sides};
use crate::catalog::*;
use crate::characteristic as ch;
use crate::formula::{layout, stiffness};
use crate::ledger::{Characteristic, Known, Ledger};
use crate::units::*;

/// The family on one axis.
#[derive(Debug)]
pub struct BallScrewDrive<'a> {
    demand: &'a Demand<'a>,
    catalog: &'a Catalog,
    motors: Vec<&'a ServoMotor>,
    /// Price of the cheapest motor.
    least_motor: f64,
    /// Price of the cheapest coupling or belt.
    least_reduction: f64,
    feedbacks: Vec<Option<&'a LinearScale>>,
    tables: Vec<Option<&'a ErrorTable>>,
    exchanges: Exchanges<'a>,
    here: Here,
}

const BEARING: usize = 4;
const ENDS: usize = 5;
const REDUCTION: usize = 6;
const MOTOR: usize = 7;
const DUTY: usize = 8;
const HEAT: usize = 9;
const REST: usize = 10;
const FEEDBACK: usize = 11;
const MAPPING: usize = 12;
/// The springs of [`Family::springs`].
const SPRINGS: [Characteristic<Stiffness>; 4] =
    [ch::SCREW_STIFFNESS, ch::NUT_STIFFNESS, ch::SCREW_TORSION, ch::BRACKET_STIFFNESS];

impl<'a> BallScrewDrive<'a> {
    /// The family on this axis, joined from this catalogue.
    pub fn new(demand: &'a Demand<'a>, catalog: &'a Catalog) -> Self {
        BallScrewDrive {
            demand,
            catalog,
            least_motor: motor::least_price(demand, catalog),
            least_reduction: reduction::least_price(catalog.screw_reductions.iter()),
            motors: motor::options(demand, catalog),
            feedbacks: feedback::options(demand, catalog),
            tables: mapping::options(demand, catalog),
            exchanges: Exchanges::new(catalog, "screw-bearing"),
            here: Here::new(&demand.brief.environment, catalog),
        }
    }

    fn reduction<L: Ledger>(&self, reduction: &ScrewReduction, ends: &EndArrangement, sheet: &mut L) {
        screw::reduction(reduction, sheet);
        motor::holding(sheet);
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
        self.demand.enter_cutting_shift(sheet);
        sides::racking(self.demand, screw::ERRORS, sheet);
        if self.demand.two_sided() {
            screw::nut_loads(self.demand, sheet);
            screw::nut_peak(sheet);
            self.warm(ends, sheet);
            self.peak(ends, sheet);
        }
        reduction::pull(reduction::is_belt(reduction), sheet);
    }

    fn duty<L: Ledger>(&self, sheet: &mut L) {
        motor::inertias(ch::SCREW_INERTIA, sheet);
        motor::peak(self.demand, sheet);
        sides::both(self.demand, sheet);
        screw::stop(sheet);
    }

    fn heat<L: Ledger>(&self, sheet: &mut L) {
        motor::heat(self.demand, sheet);
        price::enter_motors(sheet);
        price::enter_drives(sheet);
        sheet.computed(
            ch::DRIVE_MASS,
            &layout::SCREW_DRIVE_MASS,
            (
                ch::SCREW_MASS,
                ch::NUT_MASS,
                ch::SUPPORT_MASS,
                ch::BEARING_MASS,
                ch::THRUST_ENDS,
                ch::REDUCTION_MASS,
                ch::MOTOR_MASS,
                ch::DRIVES,
            ),
        );
    }

    fn rest<L: Ledger>(&self, path: &[u16], sheet: &mut L) {
        rest::enter(self.demand, ch::SCREW_INERTIA, self.picked_motor(path), rest::Turn::Lead, sheet);
        screw::rhythm(true, sheet);
        let belt = reduction::is_belt(self.picked_reduction(path));
        reduction::tension(belt, sheet);
        self.exchanges.screw(ch::ELEMENT_PRICE, belt, sheet);
        let times = [
            screw::picked_size(self.catalog, path).lead_time,
            screw::picked_grade(self.catalog, path).lead_time,
            screw::picked_support(self.catalog, path).lead_time,
            self.picked_ends(path).lead_time,
            self.picked_bearing(path).lead_time,
            self.picked_reduction(path).lead_time,
            self.picked_motor(path).lead_time,
        ];
        price::enter_delivery(&times, sheet);
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
    fn picked_scale(&self, path: &[u16]) -> Option<&'a LinearScale> {
        self.feedbacks[usize::from(path[FEEDBACK])]
    }
    fn picked_table(&self, path: &[u16]) -> Option<&'a ErrorTable> {
        self.tables[usize::from(path[MAPPING])]
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
            catalog.screw_supports.len(),
            catalog.screw_grades.len(),
            catalog.preload_classes.len(),
            catalog.screw_bearings.len(),
            catalog.end_arrangements.len(),
            catalog.screw_reductions.len(),
            self.motors.len(),
            1,
            1,
            1,
            self.feedbacks.len(),
            self.tables.len(),
        ]
    }

    fn price(&self, stage: usize, choice: u16) -> f64 {
        match stage {
            REDUCTION => reduction::price(&self.catalog.screw_reductions[usize::from(choice)]),
            MOTOR => motor::price(self.motors[usize::from(choice)]),
            _ => 0.0,
        }
    }

    fn to_come(&self, path: &[u16], at_hand: Option<usize>, entered: impl Fn(usize) -> bool) -> f64 {
        let of = |stage: usize, least: f64| match entered(stage) {
            true => 0.0,
            false if at_hand == Some(stage) => self.price(stage, path[stage]),
            false => least,
        };
        let drives = f64::from(self.demand.axis.drives.value);
        drives * (of(MOTOR, self.least_motor) + of(REDUCTION, self.least_reduction))
    }

    fn apart(&self, stage: usize) -> bool {
        stage == MOTOR
    }

    fn springs(&self) -> &'static [Characteristic<Stiffness>] {
        &SPRINGS
    }

    fn position(&self) -> Position<'_> {
        Position::of_screw(&self.feedbacks, &self.tables, &screw::ERRORS)
    }

    fn enter<L: Ledger>(&self, stage: usize, path: &[u16], sheet: &mut L) {
        match stage {
            SIZE => self.size(screw::picked_size(self.catalog, path), sheet),
            SUPPORT => self.support(screw::picked_support(self.catalog, path), sheet),
            GRADE => {
                screw::grade(screw::picked_grade(self.catalog, path), screw::picked_size(self.catalog, path), sheet);
            }
            PRELOAD => {
                screw::preload(screw::picked_class(self.catalog, path), ch::ELEMENT_PRICE, sheet);
                // with two drives lives and the largest force wait for the racking force
                if !self.demand.two_sided() {
                    screw::nut_loads(self.demand, sheet);
                    screw::nut_peak(sheet);
                }
            }
            BEARING => self.bearing(self.picked_bearing(path), sheet),
            ENDS => self.ends(self.picked_ends(path), screw::picked_support(self.catalog, path), sheet),
            REDUCTION => self.reduction(self.picked_reduction(path), self.picked_ends(path), sheet),
            MOTOR => motor::given(self.picked_motor(path), sheet),
            DUTY => self.duty(sheet),
            HEAT => self.heat(sheet),
            REST => self.rest(path, sheet),
            FEEDBACK => self.enter_feedback(path[FEEDBACK], sheet),
            _ => self.enter_mapping(path[FEEDBACK], path[MAPPING], sheet),
        }
    }

    #[inline(always)]
    fn enter_feedback<L: Ledger>(&self, scale: u16, sheet: &mut L) {
        screw::feedback(self.demand, self.feedbacks[usize::from(scale)], sheet);
    }

    #[inline(always)]
    fn enter_mapping<L: Ledger>(&self, scale: u16, table: u16, sheet: &mut L) {
        let within_turn = screw::within_turn(self.feedbacks[usize::from(scale)]);
        mapping::enter(self.demand, self.tables[usize::from(table)], within_turn, sheet);
    }

    fn glimpse(&self, stage: usize, _: &[u16], sheet: &mut Known) -> bool {
        if stage == MOTOR {
            motor::inertias(ch::SCREW_INERTIA, sheet);
            motor::glimpse(self.demand, sheet);
        }
        stage == MOTOR
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
        let mut parts = screw::parts(self.catalog, path, drives);
        parts.push(Part::new("end-arrangement", &ends.designation, drives, ends.generic));
        let sets = drives * ends.thrust_ends.si();
        parts.push(Part::new("screw-bearing", &bearing.designation, sets, bearing.generic));
        let (reduction, motor) = (self.picked_reduction(path), self.picked_motor(path));
        parts.push(Part::new("screw-reduction", &reduction.designation, drives, reduction.generic));
        parts.push(Part::new("servo-motor", &motor.designation, drives, motor.generic));
        if let Some(scale) = self.picked_scale(path) {
            parts.push(Part::new("linear-scale", &scale.designation, drives, scale.generic));
        }
        if let Some(table) = self.picked_table(path) {
            parts.push(Part::new("error-table", &table.designation, drives, table.generic));
        }
        parts
    }

    fn sizes(&self, path: &[u16]) -> Vec<Size> {
        let ends = Size::word("ends", &self.picked_ends(path).designation);
        let mut sizes = screw::sizes(self.catalog, path, Some(ends));
        sizes.extend([
            Size::number("ratio", self.picked_reduction(path).ratio.si(), "1"),
            Size::word("motor", &self.picked_motor(path).designation),
            Size::word("feedback", feedback::word(self.picked_scale(path))),
            Size::word("mapping", mapping::word(self.picked_table(path))),
        ]);
        sizes
    }
}
