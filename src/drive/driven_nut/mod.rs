//! The ball screw with driven nut: what it is joined from, and how it is worked out, in working order.
//!
//! The screw stands, clamped at both ends; the nut turns in its own bearing and rides on the slide with belt and motor.
//! Stages: size, supports, grade, preload, nut unit, belt, motor, duty, peak, heat, rest, feedback, mapping. Forces are worked out
//! once the motor is known, since it rides; what speed and fit forbid falls before.
//! Limits: only the first critical speed of the screw is judged, at every speed that is held, cold and warm; sag counts
//! the stretch of the cold screw as mounted, without what the bed takes; the free length counts the nut without its
//! housing. The bearing's heat goes half into the screw.

mod stages;

use super::demand::Demand;
use super::exchange::Exchanges;
use super::screw::{self, GRADE, PRELOAD, SIZE, SUPPORT};
use super::surroundings::Here;
use super::{Family, Part, Position, Size, feedback, mapping, motor, price, reduction, rest};
use crate::catalog::*;
use crate::characteristic as ch;
use crate::ledger::{Characteristic, Known, Ledger};
use crate::units::*;

/// The family on one axis.
#[derive(Debug)]
pub struct DrivenNutDrive<'a> {
    demand: &'a Demand<'a>,
    catalog: &'a Catalog,
    belts: Vec<&'a ScrewReduction>,
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

const UNIT: usize = 4;
const BELT: usize = 5;
const MOTOR: usize = 6;
const DUTY: usize = 7;
const PEAK: usize = 8;
const HEAT: usize = 9;
const REST: usize = 10;
const FEEDBACK: usize = 11;
const MAPPING: usize = 12;
/// The springs of [`Family::springs`].
const SPRINGS: [Characteristic<Stiffness>; 4] =
    [ch::SCREW_STIFFNESS, ch::NUT_STIFFNESS, ch::SCREW_TORSION, ch::BRACKET_STIFFNESS];

/// The belts of a catalogue; if it has none, its couplings, which fall since they have no pulley.
fn belts(catalog: &Catalog) -> Vec<&ScrewReduction> {
    let belts: Vec<&ScrewReduction> = catalog.screw_reductions.iter().filter(|part| part.kind == "belt").collect();
    if belts.is_empty() { catalog.screw_reductions.iter().collect() } else { belts }
}

impl<'a> DrivenNutDrive<'a> {
    /// The family on this axis, joined from this catalogue.
    pub fn new(demand: &'a Demand<'a>, catalog: &'a Catalog) -> Self {
        let (motors, feedbacks) = (motor::options(demand, catalog), feedback::options(demand, catalog));
        let tables = mapping::options(demand, catalog);
        let exchanges = Exchanges::new(catalog, "nut-unit");
        let here = Here::new(&demand.brief.environment, catalog);
        let least_motor = motor::least_price(demand, catalog);
        let least_reduction = reduction::least_price(belts(catalog).into_iter());
        DrivenNutDrive {
            demand,
            catalog,
            belts: belts(catalog),
            motors,
            least_motor,
            least_reduction,
            feedbacks,
            tables,
            exchanges,
            here,
        }
    }

    fn rest<L: Ledger>(&self, path: &[u16], sheet: &mut L) {
        rest::enter(self.demand, ch::NUT_UNIT_INERTIA, self.picked_motor(path), rest::Turn::Lead, sheet);
        screw::rhythm(false, sheet);
        let belt = reduction::is_belt(self.picked_belt(path));
        reduction::tension(belt, sheet);
        self.exchanges.screw(ch::SCREW_PRICE, belt, sheet);
        let times = [
            screw::picked_size(self.catalog, path).lead_time,
            screw::picked_grade(self.catalog, path).lead_time,
            screw::picked_support(self.catalog, path).lead_time,
            self.picked_unit(path).lead_time,
            self.picked_belt(path).lead_time,
            self.picked_motor(path).lead_time,
        ];
        price::enter_delivery(&times, sheet);
    }

    fn picked_unit(&self, path: &[u16]) -> &'a NutUnit {
        &self.catalog.nut_units[usize::from(path[UNIT])]
    }
    fn picked_belt(&self, path: &[u16]) -> &'a ScrewReduction {
        self.belts[usize::from(path[BELT])]
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

impl Family for DrivenNutDrive<'_> {
    fn id(&self) -> &'static str {
        "driven-nut"
    }

    fn stages(&self) -> Vec<usize> {
        let (screws, grades) = (self.catalog.ball_screws.len(), self.catalog.screw_grades.len());
        let (classes, units) = (self.catalog.preload_classes.len(), self.catalog.nut_units.len());
        let (belts, motors, supports) = (self.belts.len(), self.motors.len(), self.catalog.screw_supports.len());
        vec![
            screws,
            supports,
            grades,
            classes,
            units,
            belts,
            motors,
            1,
            1,
            1,
            1,
            self.feedbacks.len(),
            self.tables.len(),
        ]
    }

    fn price(&self, stage: usize, choice: u16) -> f64 {
        match stage {
            BELT => reduction::price(self.belts[usize::from(choice)]),
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
        drives * (of(MOTOR, self.least_motor) + of(BELT, self.least_reduction))
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
            PRELOAD => screw::preload(screw::picked_class(self.catalog, path), ch::SCREW_PRICE, sheet),
            UNIT => self.unit(self.picked_unit(path), sheet),
            BELT => self.belt(self.picked_belt(path), sheet),
            MOTOR => motor::given(self.picked_motor(path), sheet),
            DUTY => self.duty(self.picked_belt(path), sheet),
            PEAK => self.peak(sheet),
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
            self.masses(sheet);
            self.demand.enter_telling_forces(sheet);
            motor::inertias(ch::NUT_UNIT_INERTIA, sheet);
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
        let (unit, belt, motor) = (self.picked_unit(path), self.picked_belt(path), self.picked_motor(path));
        let mut parts = screw::parts(self.catalog, path, drives);
        parts.push(Part::new("nut-unit", &unit.designation, drives, unit.generic));
        parts.push(Part::new("screw-reduction", &belt.designation, drives, belt.generic));
        parts.push(Part::new("servo-motor", &motor.designation, drives, motor.generic));
        let scale = self.picked_scale(path);
        parts.extend(scale.map(|scale| Part::new("linear-scale", &scale.designation, drives, scale.generic)));
        let table = self.picked_table(path);
        parts.extend(table.map(|table| Part::new("error-table", &table.designation, drives, table.generic)));
        parts
    }

    fn sizes(&self, path: &[u16]) -> Vec<Size> {
        let mut sizes = screw::sizes(self.catalog, path, None);
        sizes.extend([
            Size::number("ratio", self.picked_belt(path).ratio.si(), "1"),
            Size::word("motor", &self.picked_motor(path).designation),
            Size::word("feedback", feedback::word(self.picked_scale(path))),
            Size::word("mapping", mapping::word(self.picked_table(path))),
        ]);
        sizes
    }
}
