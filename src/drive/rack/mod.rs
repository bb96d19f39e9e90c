//! Rack and pinion with a planetary gearbox, straight or helical, with one pinion or two: what it is joined from, and how it
//! is worked out, in working order.
//!
//! Stages: module, pinion, quality, gearbox, motor, mass, duty, racking, bias, peak, heat, rest, mounted teeth, damage of flanks
//! and roots of pinion and rack, play, feedback, mapping. The drive unit rides on the slide, so forces are worked out once
//! motor and gearbox are known. Gearboxes that
//! differ in play, price and delivery alone are one choice until the stage of the play. The search takes the quality after
//! the motor, with two sides before their racking: many qualities then share one motor.
//! Of two pinions every force, torque and stiffness is that of one, the more loaded.
//! Limits: the output bearing is judged by its mean radial load.

mod alike;
mod gearbox;
mod line;
mod stages;
mod strength;
mod twin;

use super::demand::Demand;
use super::exchange::Exchanges;
use super::surroundings::Here;
use super::{Family, Part, Position, Size, feedback, mapping, motor, price, rest, sides};
use crate::catalog::*;
use crate::characteristic as ch;
use crate::formula::gear_geometry;
use crate::formula::tooth_strength::SteelClass;
use crate::ledger::{Known, Ledger};
use crate::units::*;
use alike::Alike;

/// The family on one axis.
#[derive(Debug)]
pub struct RackDrive<'a> {
    demand: &'a Demand<'a>,
    catalog: &'a Catalog,
    helical: bool,
    layout: Pinions,
    racks: Vec<&'a Rack>,
    grades: Vec<GradeWithSteels<'a>>,
    pinions: Vec<&'a Pinion>,
    gearboxes: Alike<'a>,
    motors: Vec<&'a ServoMotor>,
    /// Price of the cheapest motor.
    least_motor: f64,
    feedbacks: Vec<Option<&'a LinearScale>>,
    tables: Vec<Option<&'a ErrorTable>>,
    exchanges: Exchanges<'a>,
    here: Here,
}

/// How many pinions drive one rack.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pinions {
    /// One.
    One,
    /// Two, pressed against each other by a bias.
    Two,
}

/// A tooth quality with the steels of rack and pinion.
#[derive(Debug)]
struct GradeWithSteels<'a> {
    grade: &'a RackGrade,
    rack: SteelWithClass<'a>,
    pinion: SteelWithClass<'a>,
}

/// A steel with the class that picks its lines of the standard.
#[derive(Debug)]
struct SteelWithClass<'a> {
    steel: &'a Steel,
    class: SteelClass,
}

/// The errors that rack and pinion alone leave.
const ERRORS: sides::Errors = [ch::CUMULATIVE_PITCH_ERROR, ch::RUN_OUT_ERROR, ch::PITCH_STEP];

const RACK: usize = 0;
const PINION: usize = 1;
const GRADE: usize = 2;
const GEARBOX: usize = 3;
const MOTOR: usize = 4;
const MASS: usize = 5;
const DUTY: usize = 6;
const RACKING: usize = 7;
const BIAS: usize = 8;
const PEAK: usize = 9;
const HEAT: usize = 10;
const REST: usize = 11;
const MOUNTED: usize = 12;
const PINION_FLANK: usize = 13;
const PINION_ROOT: usize = 14;
const RACK_FLANK: usize = 15;
const RACK_ROOT: usize = 16;
const PLAY: usize = 17;
const FEEDBACK: usize = 18;
const MAPPING: usize = 19;
const STAGES: usize = 20;

impl<'a> RackDrive<'a> {
    /// The family on this axis, joined from this catalogue, with helical or straight teeth and one pinion or two.
    pub fn new(demand: &'a Demand<'a>, catalog: &'a Catalog, helical: bool, layout: Pinions) -> Self {
        let with_class = |designation: &str| {
            let steel = catalog.steel(designation)?;
            Some(SteelWithClass { steel, class: SteelClass::named(&steel.kind)? })
        };
        let with_steels = |grade: &'a RackGrade| {
            Some(GradeWithSteels { grade, rack: with_class(&grade.steel)?, pinion: with_class(&grade.pinion_steel)? })
        };
        RackDrive {
            demand,
            catalog,
            helical,
            layout,
            racks: catalog.racks.iter().filter(|rack| rack.helical == helical).collect(),
            grades: catalog.rack_grades.iter().filter_map(with_steels).collect(),
            pinions: catalog.pinions.iter().filter(|pinion| pinion.helical == helical).collect(),
            gearboxes: Alike::of(catalog, layout),
            least_motor: motor::least_price(demand, catalog),
            motors: motor::options(demand, catalog),
            feedbacks: feedback::options(demand, catalog),
            tables: mapping::options(demand, catalog),
            exchanges: Exchanges::new(catalog, "screw-bearing"),
            here: Here::new(&demand.brief.environment, catalog),
        }
    }

    fn picked_rack(&self, path: &[u16]) -> &'a Rack {
        self.racks[usize::from(path[RACK])]
    }
    fn picked_grade(&self, path: &[u16]) -> &GradeWithSteels<'a> {
        &self.grades[usize::from(path[GRADE])]
    }
    fn picked_pinion(&self, path: &[u16]) -> &'a Pinion {
        self.pinions[usize::from(path[PINION])]
    }
    fn picked_gearbox(&self, path: &[u16]) -> &'a Gearbox {
        self.gearboxes.picked(path[GEARBOX], path[PLAY])
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

impl Family for RackDrive<'_> {
    fn id(&self) -> &'static str {
        match (self.layout, self.helical) {
            (Pinions::Two, _) => "twin-pinion",
            (Pinions::One, true) => "helical-rack",
            (Pinions::One, false) => "straight-rack",
        }
    }

    fn stages(&self) -> Vec<usize> {
        let mut stages = vec![1; STAGES];
        stages[RACK] = self.racks.len();
        stages[PINION] = self.pinions.len();
        stages[GRADE] = self.grades.len();
        stages[GEARBOX] = self.gearboxes.kinds();
        stages[MOTOR] = self.motors.len();
        if self.layout == Pinions::Two {
            stages[BIAS] = self.catalog.pinion_biases.len();
        }
        stages[PLAY] = self.gearboxes.plays();
        stages[FEEDBACK] = self.feedbacks.len();
        stages[MAPPING] = self.tables.len();
        stages
    }

    fn order(&self) -> Vec<usize> {
        // the errors of the quality rack two sides against each other; with one it bears on no force
        let before = if self.demand.two_sided() { RACKING } else { MOUNTED };
        let mut order: Vec<usize> = (0..STAGES).filter(|&stage| stage != GRADE).collect();
        // without the quality every stage behind it stands one place earlier
        order.insert(before - 1, GRADE);
        order
    }

    fn price(&self, stage: usize, choice: u16) -> f64 {
        match stage {
            GEARBOX => self.gearboxes.least_price(Some(choice)),
            MOTOR => motor::price(self.motors[usize::from(choice)]),
            _ => 0.0,
        }
    }

    fn to_come(&self, path: &[u16], at_hand: Option<usize>, entered: impl Fn(usize) -> bool) -> f64 {
        let motor = match entered(MOTOR) {
            true => 0.0,
            false if at_hand == Some(MOTOR) => self.price(MOTOR, path[MOTOR]),
            false => self.least_motor,
        };
        let gearbox = match (entered(PLAY), entered(GEARBOX) || at_hand == Some(GEARBOX)) {
            (true, _) => 0.0,
            (false, true) => self.price(GEARBOX, path[GEARBOX]),
            (false, false) => self.gearboxes.least_price(None),
        };
        f64::from(self.demand.axis.drives.value) * self.pinion_count().si() * (motor + gearbox)
    }

    fn remembered(&self, stage: usize) -> Option<[usize; 2]> {
        // with one pinion the racking enters the largest force as well, which hangs on the motor
        let racking = stage == RACKING && self.layout == Pinions::Two && self.demand.two_sided();
        (stage == MOUNTED || racking).then_some([GEARBOX, GRADE])
    }

    fn apart(&self, stage: usize) -> bool {
        stage == MOTOR
    }

    fn kept(&self, stage: usize) -> bool {
        stage == GRADE
    }

    fn position(&self) -> Position<'_> {
        Position::of_rack(&self.feedbacks, &self.tables, &ERRORS)
    }

    fn enter<L: Ledger>(&self, stage: usize, path: &[u16], sheet: &mut L) {
        match stage {
            RACK => self.rack(self.picked_rack(path), sheet),
            PINION => self.pinion(self.picked_pinion(path), sheet),
            GRADE => {
                self.grade(self.picked_grade(path), sheet);
                self.teeth(sheet);
            }
            GEARBOX => self.gearbox(self.picked_gearbox(path), sheet),
            MOTOR => motor::given(self.picked_motor(path), sheet),
            MASS => self.mass(sheet),
            DUTY => self.duty(sheet),
            RACKING => sides::racking(self.demand, ERRORS, sheet),
            BIAS => self.loads(path, sheet),
            PEAK => self.peak(sheet),
            HEAT => self.heat(sheet),
            REST => {
                self.gearbox_service(sheet);
                self.rhythm(sheet);
                rest::enter(self.demand, ch::PINION_INERTIA, self.picked_motor(path), rest::Turn::Pinion, sheet);
            }
            MOUNTED => self.mounted(sheet),
            // the sums of damage are the dearest of all and wait for what passes else
            PINION_FLANK | PINION_ROOT | RACK_FLANK | RACK_ROOT => self.damage(stage, sheet),
            PLAY => {
                rest::ripple(ch::TOOTH_FREQUENCY_CUTTING, sheet);
                self.play(self.picked_gearbox(path), sheet);
                price::enter_drives(sheet);
                self.exchanges.rack(sheet);
                self.delivery(path, sheet);
            }
            FEEDBACK => self.enter_feedback(path[FEEDBACK], sheet),
            _ => self.enter_mapping(path[FEEDBACK], path[MAPPING], sheet),
        }
    }

    #[inline(always)]
    fn enter_feedback<L: Ledger>(&self, scale: u16, sheet: &mut L) {
        self.feedback(self.feedbacks[usize::from(scale)], sheet);
    }

    #[inline(always)]
    fn enter_mapping<L: Ledger>(&self, scale: u16, table: u16, sheet: &mut L) {
        self.mapping(self.feedbacks[usize::from(scale)].is_some(), self.tables[usize::from(table)], sheet);
    }

    fn screen(&self, stage: usize, _: &[u16], sheet: &mut Known) -> bool {
        let damage = (PINION_FLANK..=RACK_ROOT).contains(&stage);
        if damage {
            self.damage_at_most(stage, sheet);
        }
        damage
    }

    fn glimpse(&self, stage: usize, _: &[u16], sheet: &mut Known) -> bool {
        // the bias of two pinions is chosen later
        let told = stage == MASS && self.layout == Pinions::One;
        if told {
            self.demand.enter_telling_forces(sheet);
            motor::glimpse(self.demand, sheet);
        }
        told
    }

    fn motor_model(&self, path: &[u16]) -> &str {
        &self.picked_motor(path).size
    }

    fn gearbox_model(&self, path: &[u16]) -> Option<&str> {
        Some(&self.picked_gearbox(path).designation)
    }

    fn parts(&self, path: &[u16], sheet: &impl Ledger) -> Vec<Part> {
        let drives = f64::from(self.demand.axis.drives.value);
        let (rack, grade, pinion) = (self.picked_rack(path), self.picked_grade(path).grade, self.picked_pinion(path));
        let (gearbox, motor) = (self.picked_gearbox(path), self.picked_motor(path));
        let units = drives * self.pinion_count().si();
        let metres = drives * sheet.value(ch::RACK_LENGTH.slot);
        let mut parts = vec![
            Part::metres("rack", &rack.designation, metres, rack.generic),
            Part::new("rack-grade", &grade.designation, drives, grade.generic),
            Part::new("pinion", &pinion.designation, units, pinion.generic),
            Part::new("gearbox", &gearbox.designation, units, gearbox.generic),
            Part::new("servo-motor", &motor.designation, units, motor.generic),
        ];
        if let Some(bias) = self.picked_bias(path) {
            parts.push(Part::new("pinion-bias", &bias.designation, drives, bias.generic));
        }
        if let Some(scale) = self.picked_scale(path) {
            parts.push(Part::new("linear-scale", &scale.designation, drives, scale.generic));
        }
        if let Some(table) = self.picked_table(path) {
            parts.push(Part::new("error-table", &table.designation, drives, table.generic));
        }
        parts
    }

    fn sizes(&self, path: &[u16]) -> Vec<Size> {
        let helix = if self.helical { gear_geometry::metric_helix().si().to_degrees() } else { 0.0 };
        let mut sizes = vec![
            Size::number("module", self.picked_rack(path).module.si() * 1e3, "mm"),
            Size::number("teeth", f64::from(self.picked_pinion(path).teeth), "1"),
            Size::number("helix", helix, "deg"),
            Size::number("quality", f64::from(self.picked_grade(path).grade.quality), "1"),
            Size::number("ratio", self.picked_gearbox(path).ratio.si(), "1"),
            Size::word("gearbox", &self.picked_gearbox(path).designation),
            Size::word("motor", &self.picked_motor(path).designation),
            Size::word("feedback", feedback::word(self.picked_scale(path))),
            Size::word("mapping", mapping::word(self.picked_table(path))),
        ];
        if let Some(bias) = self.picked_bias(path) {
            sizes.push(Size::number("bias", bias.share.si() * 100.0, "%"));
        }
        sizes
    }
}
