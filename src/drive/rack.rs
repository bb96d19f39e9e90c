//! Rack and pinion with a planetary gearbox, straight or helical: what it is joined from, and how it is
//! worked out, in working order.
//!
//! Stages: module, quality, pinion, gearbox, motor, duty, peak, heat, feedback. The drive unit rides on the slide, so
//! forces are worked out once motor and gearbox are known; what teeth and seat bear comes before.
//! Limits: one mesh, no preload between pinions; the output bearing is judged by its mean radial load.

use super::demand::Demand;
use super::{Family, Part, Size, defaults::parts, feedback, motor, price};
use crate::catalog::*;
use crate::characteristic as ch;
use crate::formula::{
    bolt, budget, gear_accuracy, gear_geometry, gearbox, inertia, layout, mesh, motion, pricing, rack, stiffness,
    tooth_strength,
};
use crate::ledger::{Ledger, Origin};
use crate::units::*;

/// The family on one axis.
#[derive(Debug)]
pub struct RackDrive<'a> {
    demand: &'a Demand<'a>,
    catalog: &'a Catalog,
    helical: bool,
    racks: Vec<&'a Rack>,
    grades: Vec<GradeWithSteels<'a>>,
    pinions: Vec<&'a Pinion>,
    feedbacks: Vec<Option<&'a LinearScale>>,
}

/// A tooth quality with the steels of rack and pinion.
#[derive(Debug)]
struct GradeWithSteels<'a> {
    grade: &'a RackGrade,
    rack: &'a Steel,
    pinion: &'a Steel,
}

const RACK: usize = 0;
const GRADE: usize = 1;
const PINION: usize = 2;
const GEARBOX: usize = 3;
const MOTOR: usize = 4;
const DUTY: usize = 5;
const PEAK: usize = 6;
const HEAT: usize = 7;
const FEEDBACK: usize = 8;

impl<'a> RackDrive<'a> {
    /// The family on this axis, joined from this catalogue, with helical or straight teeth.
    pub fn new(demand: &'a Demand<'a>, catalog: &'a Catalog, helical: bool) -> Self {
        let with_steels = |grade: &'a RackGrade| {
            Some(GradeWithSteels {
                grade,
                rack: catalog.steel(&grade.steel)?,
                pinion: catalog.steel(&grade.pinion_steel)?,
            })
        };
        RackDrive {
            demand,
            catalog,
            helical,
            racks: catalog.racks.iter().filter(|rack| rack.helical == helical).collect(),
            grades: catalog.rack_grades.iter().filter_map(with_steels).collect(),
            pinions: catalog.pinions.iter().filter(|pinion| pinion.helical == helical).collect(),
            feedbacks: feedback::options(demand, catalog),
        }
    }

    fn rack<L: Ledger>(&self, rack: &Rack, sheet: &mut L) {
        let (catalog, assumed) = (Origin::Catalog, Origin::Assumed);
        let helix = if self.helical { gear_geometry::metric_helix() } else { Angle::of_si(0.0) };
        let area = rack.section_width.si() * (rack.section_height.si() - 2.25 * rack.module.si());
        sheet.given(ch::MODULE, rack.module, catalog);
        sheet.given(ch::HELIX_ANGLE, helix, catalog);
        sheet.given(ch::FACE_WIDTH, rack.face_width, catalog);
        sheet.given(ch::SECTION_AREA, Area::of_si(area), catalog);
        sheet.given(ch::RACK_MASS_PER_LENGTH, rack.mass_per_length, catalog);
        sheet.given(ch::MESH_PLAY, rack.play, catalog);
        sheet.given(ch::FASTENER_PITCH, rack.fastener_pitch, catalog);
        sheet.given(ch::FASTENER_DIAMETER, rack.fastener_diameter, catalog);
        sheet.given(ch::FASTENER_THREAD_PITCH, rack.fastener_thread_pitch, catalog);
        sheet.given(ch::FASTENER_STRENGTH, rack.fastener_strength, catalog);
        sheet.given(ch::FASTENER_STIFFNESS, rack.fastener_stiffness, catalog);
        sheet.given(ch::THREAD_FRICTION, parts::thread_friction(), assumed);
        sheet.given(ch::SEAT_FRICTION, parts::seat_friction(), assumed);
        sheet.given(ch::TIGHTENING_FACTOR, parts::tightening_factor(), assumed);
        sheet.given(ch::EMBEDDING_LOSS, parts::embedding_loss(), assumed);
        sheet.given(ch::SHARING_FASTENERS, parts::sharing_fasteners(), assumed);
        sheet.given(ch::SLIP_SAFETY, parts::slip_safety(), assumed);
        sheet.given(ch::MESH_FRICTION, parts::mesh_friction(), assumed);
        sheet.given(ch::REVERSAL_FACTOR, parts::reversal_factor(), assumed);
        sheet.computed(
            ch::FASTENER_PRELOAD,
            &bolt::BOLT_PRELOAD,
            (ch::FASTENER_DIAMETER, ch::FASTENER_THREAD_PITCH, ch::FASTENER_STRENGTH, ch::THREAD_FRICTION),
        );
        sheet.computed(
            ch::SLIP_FORCE,
            &rack::SLIP_FORCE,
            (
                ch::FASTENER_PRELOAD,
                ch::SEAT_FRICTION,
                ch::TIGHTENING_FACTOR,
                ch::EMBEDDING_LOSS,
                ch::SHARING_FASTENERS,
                ch::SLIP_SAFETY,
            ),
        );
        sheet.computed(
            ch::MOUNT_STIFFNESS,
            &rack::MOUNT_STIFFNESS,
            (ch::FASTENER_STIFFNESS, ch::FASTENER_PITCH, ch::SECTION_AREA),
        );
        let prices = &self.catalog.prices;
        sheet.given(ch::RACK_METRE_PRICE, rack.price_per_metre, catalog);
        sheet.given(ch::FASTENER_PRICE, rack.fastener_price, catalog);
        sheet.given(ch::JOINT_PRICE, rack.joint_price, catalog);
        sheet.given(ch::GAUGE_PRICE, rack.counter_gauge_price, catalog);
        sheet.given(ch::PINION_BASE_PRICE, prices.pinion_base, catalog);
        sheet.given(ch::PINION_SIZE_PRICE, prices.pinion_factor, catalog);
        price::enter_kind(prices, price::Kind::Rack, sheet);
        sheet.computed(ch::OVERLAP_RATIO, &gear_geometry::OVERLAP_RATIO, (ch::MODULE, ch::HELIX_ANGLE, ch::FACE_WIDTH));
    }

    fn grade<L: Ledger>(&self, picked: &GradeWithSteels<'_>, sheet: &mut L) {
        let catalog = Origin::Catalog;
        let grade = picked.grade;
        sheet.given(ch::QUALITY, Ratio::of_si(f64::from(grade.quality)), catalog);
        sheet.given(ch::RACK_CONTACT_LIMIT, picked.rack.contact_limit, catalog);
        sheet.given(ch::RACK_BENDING_LIMIT, picked.rack.bending_limit, catalog);
        sheet.given(ch::PINION_CONTACT_LIMIT, picked.pinion.contact_limit, catalog);
        sheet.given(ch::PINION_BENDING_LIMIT, picked.pinion.bending_limit, catalog);
        sheet.given(ch::FACE_LOAD_FACTOR, grade.face_load_factor, catalog);
        let speed_limit = if self.helical { grade.speed_limit_helical } else { grade.speed_limit_straight };
        sheet.given(ch::RACK_SPEED_LIMIT, speed_limit, catalog);
        sheet.given(ch::SEGMENT_LENGTH, grade.segment_length, catalog);
        sheet.given(ch::PITCH_ERROR_PER_METRE, grade.pitch_error_per_metre, catalog);
        sheet.given(ch::JOINT_STEP, grade.joint_step, catalog);
        sheet.given(ch::RACK_PRICE_FACTOR, grade.price_factor, catalog);
        sheet.computed(
            ch::SEGMENT_PITCH_ERROR,
            &rack::SEGMENT_PITCH_ERROR,
            (ch::PITCH_ERROR_PER_METRE, ch::SEGMENT_LENGTH),
        );
        let line = |length| (length, ch::SEGMENT_LENGTH, ch::SEGMENT_PITCH_ERROR, ch::JOINT_STEP);
        sheet.computed(ch::CUMULATIVE_PITCH_ERROR, &rack::CUMULATIVE_PITCH_ERROR, line(ch::TRAVEL));
        sheet.computed(ch::SECTION_PITCH_ERROR, &rack::CUMULATIVE_PITCH_ERROR, line(ch::SECTION_LENGTH));
    }

    fn pinion<L: Ledger>(&self, pinion: &Pinion, sheet: &mut L) {
        let catalog = Origin::Catalog;
        sheet.given(ch::TEETH, Ratio::of_si(f64::from(pinion.teeth)), catalog);
        sheet.given(ch::PROFILE_SHIFT, pinion.profile_shift, catalog);
        sheet.computed(ch::PINION_DIAMETER, &gear_geometry::PINION_DIAMETER, (ch::MODULE, ch::TEETH, ch::HELIX_ANGLE));
        sheet.computed(ch::TRAVEL_PER_TURN, &gear_geometry::TRAVEL_PER_TURN, (ch::PINION_DIAMETER,));
        sheet.computed(ch::PINION_SPEED, &motion::SHAFT_SPEED, (ch::SPEED, ch::TRAVEL_PER_TURN));
        sheet.computed(ch::LEAST_TEETH, &gear_geometry::LEAST_TEETH, (ch::HELIX_ANGLE, ch::PROFILE_SHIFT));
        sheet.computed(
            ch::TRANSVERSE_CONTACT_RATIO,
            &gear_geometry::TRANSVERSE_CONTACT_RATIO,
            (ch::MODULE, ch::TEETH, ch::HELIX_ANGLE, ch::PROFILE_SHIFT),
        );
        sheet.computed(
            ch::TOTAL_CONTACT_RATIO,
            &gear_geometry::TOTAL_CONTACT_RATIO,
            (ch::TRANSVERSE_CONTACT_RATIO, ch::OVERLAP_RATIO),
        );
        sheet.computed(
            ch::TIP_THICKNESS,
            &gear_geometry::TIP_THICKNESS,
            (ch::TEETH, ch::HELIX_ANGLE, ch::PROFILE_SHIFT),
        );
        sheet.computed(ch::PINION_MASS, &rack::PINION_MASS, (ch::PINION_DIAMETER, ch::FACE_WIDTH));
        sheet.computed(ch::PINION_INERTIA, &inertia::DISC_INERTIA, (ch::PINION_DIAMETER, ch::FACE_WIDTH));
        self.strength(sheet);
        self.line(sheet);
        let geometry = (ch::MODULE, ch::TEETH, ch::HELIX_ANGLE, ch::FACE_WIDTH, ch::PROFILE_SHIFT);
        sheet.computed(ch::MESH_STIFFNESS, &mesh::MESH_STIFFNESS, geometry);
        sheet.computed(
            ch::MESH_EFFICIENCY,
            &gearbox::MESH_EFFICIENCY,
            (ch::MODULE, ch::TEETH, ch::HELIX_ANGLE, ch::PROFILE_SHIFT, ch::MESH_FRICTION),
        );
        let size = (ch::PINION_DIAMETER, ch::MODULE, ch::QUALITY);
        sheet.computed(ch::PINION_PITCH_DEVIATION, &gear_accuracy::TOTAL_PITCH_DEVIATION, size);
        sheet.computed(ch::SINGLE_PITCH_DEVIATION, &gear_accuracy::SINGLE_PITCH_DEVIATION, size);
        sheet.computed(
            ch::PITCH_STEP,
            &budget::ROOT_SUM_SQUARE_2,
            (ch::SINGLE_PITCH_DEVIATION, ch::SINGLE_PITCH_DEVIATION),
        );
        sheet.computed(
            ch::RIPPLE,
            &mesh::MESH_RIPPLE,
            (
                ch::DRIVE_CUTTING_FORCE,
                ch::MODULE,
                ch::TEETH,
                ch::HELIX_ANGLE,
                ch::FACE_WIDTH,
                ch::PROFILE_SHIFT,
                ch::PITCH_STEP,
            ),
        );
    }

    fn strength<L: Ledger>(&self, sheet: &mut L) {
        sheet.computed(ch::PINION_CYCLES, &tooth_strength::PINION_CYCLES, (ch::SERVICE_DISTANCE, ch::PINION_DIAMETER));
        sheet.computed(ch::RACK_CYCLES, &tooth_strength::RACK_CYCLES, (ch::SERVICE_DISTANCE, ch::USUAL_STROKE));
        let contact = |limit, cycles| {
            (
                ch::MODULE,
                ch::TEETH,
                ch::HELIX_ANGLE,
                ch::PROFILE_SHIFT,
                ch::FACE_WIDTH,
                limit,
                cycles,
                ch::QUALITY,
                ch::SPEED,
                ch::FACE_LOAD_FACTOR,
            )
        };
        let root = |limit, cycles| {
            (
                ch::MODULE,
                ch::TEETH,
                ch::HELIX_ANGLE,
                ch::PROFILE_SHIFT,
                ch::FACE_WIDTH,
                limit,
                cycles,
                ch::QUALITY,
                ch::SPEED,
                ch::FACE_LOAD_FACTOR,
                ch::REVERSAL_FACTOR,
            )
        };
        sheet.computed(
            ch::PINION_PITTING_FORCE,
            &tooth_strength::PINION_PITTING_FORCE,
            contact(ch::PINION_CONTACT_LIMIT, ch::PINION_CYCLES),
        );
        sheet.computed(
            ch::RACK_PITTING_FORCE,
            &tooth_strength::RACK_PITTING_FORCE,
            contact(ch::RACK_CONTACT_LIMIT, ch::RACK_CYCLES),
        );
        sheet.computed(
            ch::PINION_ROOT_FORCE,
            &tooth_strength::PINION_ROOT_FORCE,
            root(ch::PINION_BENDING_LIMIT, ch::PINION_CYCLES),
        );
        sheet.computed(
            ch::RACK_ROOT_FORCE,
            &tooth_strength::RACK_ROOT_FORCE,
            root(ch::RACK_BENDING_LIMIT, ch::RACK_CYCLES),
        );
    }

    fn line<L: Ledger>(&self, sheet: &mut L) {
        sheet.computed(ch::RACK_LENGTH, &rack::RACK_LENGTH, (ch::TRAVEL, ch::OVERTRAVEL, ch::PINION_DIAMETER));
        sheet.computed(ch::SEGMENTS, &rack::SEGMENTS, (ch::RACK_LENGTH, ch::SEGMENT_LENGTH));
        sheet.computed(ch::FASTENERS, &rack::FASTENERS, (ch::SEGMENTS, ch::SEGMENT_LENGTH, ch::FASTENER_PITCH));
        sheet.computed(ch::RACK_MASS, &rack::RACK_MASS, (ch::RACK_MASS_PER_LENGTH, ch::RACK_LENGTH));
        sheet.computed(
            ch::RACK_LINE_PRICE,
            &pricing::RACK_LINE_PRICE,
            (ch::RACK_METRE_PRICE, ch::RACK_LENGTH, ch::RACK_PRICE_FACTOR),
        );
        sheet.computed(
            ch::PINION_PRICE,
            &pricing::PINION_PRICE,
            (ch::PINION_BASE_PRICE, ch::PINION_SIZE_PRICE, ch::MODULE, ch::TEETH),
        );
        sheet.computed(ch::ELEMENT_PRICE, &pricing::PRICE_SUM, (ch::RACK_LINE_PRICE, ch::PINION_PRICE));
        sheet.computed(
            ch::SUPPORT_PRICE,
            &pricing::FASTENING_PRICE,
            (ch::FASTENER_PRICE, ch::FASTENERS, ch::JOINT_PRICE, ch::SEGMENTS, ch::GAUGE_PRICE),
        );
    }

    fn gearbox<L: Ledger>(&self, gearbox: &Gearbox, sheet: &mut L) {
        let catalog = Origin::Catalog;
        sheet.given(ch::REDUCTION, gearbox.ratio, catalog);
        sheet.given(ch::REDUCTION_EFFICIENCY, gearbox.efficiency, catalog);
        sheet.given(ch::REDUCTION_INERTIA, gearbox.inertia, catalog);
        sheet.given(ch::REDUCTION_STIFFNESS, gearbox.torsional_stiffness, catalog);
        sheet.given(ch::GEARBOX_ACCELERATION_TORQUE, gearbox.acceleration_torque, catalog);
        sheet.given(ch::GEARBOX_CONTINUOUS_TORQUE, gearbox.continuous_torque, catalog);
        sheet.given(ch::GEARBOX_STOP_TORQUE, gearbox.stop_torque, catalog);
        sheet.given(ch::GEARBOX_NOMINAL_SPEED, gearbox.nominal_speed, catalog);
        sheet.given(ch::GEARBOX_SPEED_LIMIT, gearbox.speed_limit, catalog);
        sheet.given(ch::GEARBOX_PLAY, gearbox.play, catalog);
        sheet.given(ch::GEARBOX_RADIAL_LIMIT, gearbox.radial_limit, catalog);
        sheet.given(ch::GEARBOX_MASS, gearbox.mass, catalog);
        sheet.given(ch::DRAG_TORQUE, gearbox.no_load_torque, catalog);
        sheet.given(ch::REDUCTION_PRICE, gearbox.price, catalog);
        sheet.given(ch::OVERHANG, gearbox.overhang, catalog);
        sheet.given(ch::OUTPUT_SHAFT_DIAMETER, gearbox.shaft_diameter, catalog);
        sheet.given(ch::TILT_STIFFNESS, gearbox.tilt_stiffness, catalog);
        sheet.computed(ch::MOTOR_SPEED, &motion::GEARED_SPEED, (ch::PINION_SPEED, ch::REDUCTION));
        sheet.computed(ch::MEAN_PINION_SPEED, &motion::SHAFT_SPEED, (ch::MEAN_SPEED, ch::TRAVEL_PER_TURN));
        sheet.computed(ch::MEAN_INPUT_SPEED, &motion::GEARED_SPEED, (ch::MEAN_PINION_SPEED, ch::REDUCTION));
        sheet.computed(
            ch::GEARBOX_LINEAR_STIFFNESS,
            &gearbox::GEARBOX_LINEAR_STIFFNESS,
            (ch::REDUCTION_STIFFNESS, ch::PINION_DIAMETER),
        );
        sheet.computed(
            ch::OUTPUT_SHAFT_STIFFNESS,
            &gearbox::OUTPUT_SHAFT_STIFFNESS,
            (ch::OVERHANG, ch::OUTPUT_SHAFT_DIAMETER, ch::TILT_STIFFNESS, ch::HELIX_ANGLE),
        );
        sheet.computed(
            ch::TOTAL_STIFFNESS,
            &stiffness::SERIES_5,
            (
                ch::MESH_STIFFNESS,
                ch::GEARBOX_LINEAR_STIFFNESS,
                ch::OUTPUT_SHAFT_STIFFNESS,
                ch::MOUNT_STIFFNESS,
                ch::BRACKET_STIFFNESS,
            ),
        );
        sheet.computed(ch::CUTTING_DEFLECTION, &stiffness::DEFLECTION, (ch::DRIVE_CUTTING_FORCE, ch::TOTAL_STIFFNESS));
        sheet.computed(ch::PLAY_AT_RACK, &gear_accuracy::BACKLASH_AT_RACK, (ch::GEARBOX_PLAY, ch::PINION_DIAMETER));
        sheet.computed(ch::PLAY, &layout::LENGTH_SUM, (ch::MESH_PLAY, ch::PLAY_AT_RACK));
        sheet.computed(
            ch::RADIAL_CAPACITY,
            &gearbox::RADIAL_CAPACITY,
            (ch::GEARBOX_RADIAL_LIMIT, ch::SERVICE_DISTANCE, ch::PINION_DIAMETER),
        );
        sheet.computed(ch::TOTAL_EFFICIENCY, &layout::PRODUCT, (ch::MESH_EFFICIENCY, ch::REDUCTION_EFFICIENCY));
        sheet.computed(ch::TOTAL_BACK_EFFICIENCY, &layout::PRODUCT, (ch::MESH_EFFICIENCY, ch::REDUCTION_EFFICIENCY));
    }

    fn duty<L: Ledger>(&self, sheet: &mut L) {
        sheet.computed(
            ch::RIDING_MASS,
            &layout::RIDING_UNITS,
            (ch::MOTOR_MASS, ch::GEARBOX_MASS, ch::PINION_MASS, ch::DRIVES),
        );
        self.demand.enter_forces(sheet);
        sheet.computed(ch::FIRST_MODE, &stiffness::NATURAL_FREQUENCY, (ch::TOTAL_STIFFNESS, ch::DRIVEN_MASS));
        sheet.computed(
            ch::OUTPUT_TORQUE,
            &gearbox::OUTPUT_TORQUE,
            (ch::PEAK_FORCE, ch::PINION_DIAMETER, ch::MESH_EFFICIENCY),
        );
        sheet.computed(
            ch::MEAN_OUTPUT_TORQUE,
            &layout::FORCE_TORQUE,
            (ch::MEAN_FORCE, ch::TRAVEL_PER_TURN, ch::MESH_EFFICIENCY),
        );
        sheet.computed(ch::RADIAL_LOAD, &gear_geometry::RADIAL_LOAD, (ch::MEAN_FORCE, ch::HELIX_ANGLE));
        sheet.computed(
            ch::ROTATING_INERTIA,
            &inertia::ROTATING_INERTIA,
            (ch::ROTOR_INERTIA, ch::REDUCTION_INERTIA, ch::PINION_INERTIA, ch::REDUCTION),
        );
        sheet.computed(ch::MASS_INERTIA, &inertia::MASS_INERTIA, (ch::DRIVEN_MASS, ch::TRAVEL_PER_TURN, ch::REDUCTION));
        sheet.computed(
            ch::LOAD_INERTIA,
            &inertia::LOAD_INERTIA,
            (ch::MASS_INERTIA, ch::REDUCTION_INERTIA, ch::PINION_INERTIA, ch::REDUCTION),
        );
        sheet.computed(
            ch::STOP_TORQUE,
            &gearbox::STOP_TORQUE,
            (ch::MOTOR_PEAK_TORQUE, ch::ROTATING_INERTIA, ch::MASS_INERTIA, ch::REDUCTION),
        );
        motor::holding(sheet);
    }

    fn heat<L: Ledger>(&self, sheet: &mut L) {
        motor::heat(self.demand, sheet);
        price::enter_drives(sheet);
        sheet.computed(ch::DRIVE_MASS, &layout::RACK_DRIVE_MASS, (ch::RACK_MASS, ch::RIDING_MASS, ch::DRIVES));
    }

    fn feedback<L: Ledger>(&self, path: &[u16], scale: Option<&LinearScale>, sheet: &mut L) {
        feedback::enter_reader(scale, sheet);
        if scale.is_none() {
            sheet.computed(
                ch::POSITION_ERROR,
                &budget::ROOT_SUM_SQUARE_3,
                (ch::CUMULATIVE_PITCH_ERROR, ch::PINION_PITCH_DEVIATION, ch::PITCH_STEP),
            );
            sheet.computed(
                ch::SECTION_POSITION_ERROR,
                &budget::ROOT_SUM_SQUARE_3,
                (ch::SECTION_PITCH_ERROR, ch::PINION_PITCH_DEVIATION, ch::PITCH_STEP),
            );
            sheet.computed(ch::TEMPERATURE_RISE, &layout::SAME_TEMPERATURE, (ch::TEMPERATURE_SWING,));
        }
        feedback::work_out(scale, sheet);
        let lead_time = price::longest(&[
            self.picked_rack(path).lead_time,
            self.picked_grade(path).grade.lead_time,
            self.picked_pinion(path).lead_time,
            self.picked_gearbox(path).lead_time,
            self.picked_motor(path).lead_time,
        ]);
        price::enter_whole(scale, lead_time, sheet);
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
        &self.catalog.gearboxes[usize::from(path[GEARBOX])]
    }
    fn picked_motor(&self, path: &[u16]) -> &'a ServoMotor {
        &self.catalog.servo_motors[usize::from(path[MOTOR])]
    }
    fn picked_scale(&self, path: &[u16]) -> Option<&'a LinearScale> {
        self.feedbacks[usize::from(path[FEEDBACK])]
    }
}

impl Family for RackDrive<'_> {
    fn id(&self) -> &'static str {
        if self.helical { "helical-rack" } else { "straight-rack" }
    }

    fn stages(&self) -> Vec<usize> {
        vec![
            self.racks.len(),
            self.grades.len(),
            self.pinions.len(),
            self.catalog.gearboxes.len(),
            self.catalog.servo_motors.len(),
            1,
            1,
            1,
            self.feedbacks.len(),
        ]
    }

    fn enter<L: Ledger>(&self, stage: usize, path: &[u16], sheet: &mut L) {
        match stage {
            RACK => self.rack(self.picked_rack(path), sheet),
            GRADE => self.grade(self.picked_grade(path), sheet),
            PINION => self.pinion(self.picked_pinion(path), sheet),
            GEARBOX => self.gearbox(self.picked_gearbox(path), sheet),
            MOTOR => motor::given(self.picked_motor(path), sheet),
            DUTY => self.duty(sheet),
            PEAK => motor::peak(self.demand, sheet),
            HEAT => self.heat(sheet),
            _ => self.feedback(path, self.picked_scale(path), sheet),
        }
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
        let metres = drives * sheet.value(ch::RACK_LENGTH.slot);
        let mut parts = vec![
            Part::metres("rack", &rack.designation, metres, rack.generic),
            Part::new("rack-grade", &grade.designation, drives, grade.generic),
            Part::new("pinion", &pinion.designation, drives, pinion.generic),
            Part::new("gearbox", &gearbox.designation, drives, gearbox.generic),
            Part::new("servo-motor", &motor.designation, drives, motor.generic),
        ];
        if let Some(scale) = self.picked_scale(path) {
            parts.push(Part::new("linear-scale", &scale.designation, drives, scale.generic));
        }
        parts
    }

    fn sizes(&self, path: &[u16]) -> Vec<Size> {
        let helix = if self.helical { gear_geometry::metric_helix().si().to_degrees() } else { 0.0 };
        vec![
            Size::number("module", self.picked_rack(path).module.si() * 1e3, "mm"),
            Size::number("teeth", f64::from(self.picked_pinion(path).teeth), "1"),
            Size::number("helix", helix, "deg"),
            Size::number("quality", f64::from(self.picked_grade(path).grade.quality), "1"),
            Size::number("ratio", self.picked_gearbox(path).ratio.si(), "1"),
            Size::word("gearbox", &self.picked_gearbox(path).designation),
            Size::word("motor", &self.picked_motor(path).designation),
            Size::word("feedback", feedback::word(self.picked_scale(path))),
        ]
    }
}
