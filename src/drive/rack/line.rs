//! The stages of the teeth: rack section and its fastening, quality, pinion.

use super::{GradeWithSteels, Pinions, RackDrive};
use crate::catalog::*;
use crate::characteristic as ch;
use crate::drive::defaults::{self, parts};
use crate::drive::{mounting, price};
use crate::formula::{
    bolt, budget, cost, gear_accuracy, gear_geometry, gearbox, gearbox_load, inertia, layout, mesh, mesh_motion,
    motion, pricing, rack, rack_bed,
};
use crate::ledger::{Ledger, Origin};
use crate::units::*;

impl RackDrive<'_> {
    pub(super) fn rack<L: Ledger>(&self, rack: &Rack, sheet: &mut L) {
        let (catalog, assumed) = (Origin::Catalog, Origin::Assumed);
        self.pinions(sheet);
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
            (ch::FASTENER_PRELOAD, ch::SEAT_FRICTION, ch::TIGHTENING_FACTOR, ch::EMBEDDING_LOSS, ch::SHARING_FASTENERS),
        );
        sheet.computed(
            ch::MOUNT_STIFFNESS,
            &rack::MOUNT_STIFFNESS,
            (ch::FASTENER_STIFFNESS, ch::FASTENER_PITCH, ch::SECTION_AREA),
        );
        self.here.enter(sheet);
        mounting::rack(rack, self.catalog, sheet);
        let prices = &self.catalog.prices;
        sheet.given(ch::RACK_METRE_PRICE, rack.price_per_metre, catalog);
        sheet.given(ch::FASTENER_PRICE, rack.fastener_price, catalog);
        sheet.given(ch::JOINT_PRICE, rack.joint_price, catalog);
        sheet.given(ch::GAUGE_PRICE, rack.counter_gauge_price, catalog);
        sheet.given(ch::PINION_BASE_PRICE, prices.pinion_base, catalog);
        let kind = match self.layout {
            Pinions::One => price::Kind::Rack,
            Pinions::Two => price::Kind::TwinRack,
        };
        price::enter_kind(prices, kind, sheet);
        self.bed(sheet);
        sheet.computed(ch::FACE_WIDTH_MODULES, &mesh_motion::LENGTH_RATIO, (ch::FACE_WIDTH, ch::MODULE));
        sheet.computed(
            ch::TOOTH_FREQUENCY_CUTTING,
            &mesh_motion::TOOTH_FREQUENCY,
            (ch::CUTTING_SPEED, ch::MODULE, ch::HELIX_ANGLE),
        );
        sheet.computed(
            ch::TOOTH_FREQUENCY_TOP,
            &mesh_motion::TOOTH_FREQUENCY,
            (ch::SPEED, ch::MODULE, ch::HELIX_ANGLE),
        );
        sheet.computed(ch::SHOCK_FACTOR, &gearbox_load::SHOCK_FACTOR, (ch::MOVES_PER_HOUR,));
        sheet.computed(ch::OVERLAP_RATIO, &gear_geometry::OVERLAP_RATIO, (ch::MODULE, ch::HELIX_ANGLE, ch::FACE_WIDTH));
        if self.helical {
            sheet.computed(ch::OVERLAP_EXCESS, &mesh_motion::OVERLAP_EXCESS, (ch::OVERLAP_RATIO,));
        } else {
            sheet.absent(ch::OVERLAP_EXCESS);
        }
    }

    /// The bed that the rack is screwed to.
    fn bed<L: Ledger>(&self, sheet: &mut L) {
        mounting::bed(self.demand.axis.bed.value, self.catalog, sheet);
        sheet.given(ch::RACK_EXPANSION, Expansion::of_si(defaults::STEEL_EXPANSION), Origin::Assumed);
        sheet.computed(
            ch::BED_GROWTH,
            &rack_bed::BED_GROWTH,
            (ch::BED_EXPANSION, ch::RACK_EXPANSION, ch::TEMPERATURE_SWING, ch::TRAVEL),
        );
    }

    /// What temperature leaves of the hold of a segment, once its length is known.
    fn segment<L: Ledger>(&self, sheet: &mut L) {
        sheet.computed(
            ch::END_FASTENER_FORCE,
            &rack_bed::END_FASTENER_FORCE,
            (
                ch::BED_EXPANSION,
                ch::RACK_EXPANSION,
                ch::TEMPERATURE_SWING,
                ch::SECTION_AREA,
                ch::FASTENER_STIFFNESS,
                ch::FASTENER_PITCH,
                ch::SEGMENT_LENGTH,
            ),
        );
        sheet.computed(
            ch::SLIP_RESERVE,
            &rack_bed::SLIP_RESERVE,
            (ch::SLIP_FORCE, ch::END_FASTENER_FORCE, ch::SHARING_FASTENERS),
        );
    }

    pub(super) fn grade<L: Ledger>(&self, picked: &GradeWithSteels<'_>, sheet: &mut L) {
        let catalog = Origin::Catalog;
        let grade = picked.grade;
        sheet.given(ch::QUALITY, Ratio::of_si(f64::from(grade.quality)), catalog);
        self.steels(picked, sheet);
        let speed_limit = if self.helical { grade.speed_limit_helical } else { grade.speed_limit_straight };
        sheet.given(ch::RACK_SPEED_LIMIT, speed_limit, catalog);
        sheet.given(ch::SEGMENT_LENGTH, grade.segment_length, catalog);
        mounting::segment(sheet);
        sheet.given(ch::PITCH_ERROR_PER_METRE, grade.pitch_error_per_metre, catalog);
        sheet.given(ch::JOINT_STEP, grade.joint_step, catalog);
        sheet.given(ch::HEIGHT_WAVINESS, grade.height_waviness, catalog);
        self.segment(sheet);
        sheet.given(ch::RACK_PRICE_FACTOR, grade.price_factor, catalog);
        let prices = &self.catalog.prices;
        let hard = picked.pinion.class.surface_hardened();
        let size_price = if hard { prices.pinion_factor } else { prices.pinion_soft_factor };
        sheet.given(ch::PINION_SIZE_PRICE, size_price, catalog);
        sheet.computed(
            ch::SEGMENT_PITCH_ERROR,
            &rack::SEGMENT_PITCH_ERROR,
            (ch::PITCH_ERROR_PER_METRE, ch::SEGMENT_LENGTH),
        );
        let line = |length| (length, ch::SEGMENT_LENGTH, ch::SEGMENT_PITCH_ERROR, ch::JOINT_STEP);
        sheet.computed(ch::CUMULATIVE_PITCH_ERROR, &rack::CUMULATIVE_PITCH_ERROR, line(ch::TRAVEL));
        sheet.computed(ch::SECTION_PITCH_ERROR, &rack::CUMULATIVE_PITCH_ERROR, line(ch::SECTION_LENGTH));
    }

    pub(super) fn pinion<L: Ledger>(&self, pinion: &Pinion, sheet: &mut L) {
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
        sheet.computed(ch::FACE_WIDTH_RATIO, &mesh_motion::LENGTH_RATIO, (ch::FACE_WIDTH, ch::PINION_DIAMETER));
        sheet.computed(ch::SPEED_NUMBER, &mesh_motion::SPEED_NUMBER, (ch::SPEED, ch::TEETH));
        sheet.computed(
            ch::LEAST_CONTACT_LINE,
            &mesh::CONTACT_LINE_MINIMUM,
            (ch::TRANSVERSE_CONTACT_RATIO, ch::OVERLAP_RATIO),
        );
        self.rack_length(sheet);
        sheet.computed(ch::RACK_MASS, &rack::RACK_MASS, (ch::RACK_MASS_PER_LENGTH, ch::RACK_LENGTH));
        let geometry = (ch::MODULE, ch::TEETH, ch::HELIX_ANGLE, ch::FACE_WIDTH, ch::PROFILE_SHIFT);
        sheet.computed(ch::MESH_STIFFNESS, &mesh::MESH_STIFFNESS, geometry);
        sheet.computed(
            ch::MESH_EFFICIENCY,
            &gearbox::MESH_EFFICIENCY,
            (ch::MODULE, ch::TEETH, ch::HELIX_ANGLE, ch::PROFILE_SHIFT, ch::MESH_FRICTION),
        );
    }

    /// What hangs on quality and pinion together: strength, line of segments, errors of the pinion.
    pub(super) fn teeth<L: Ledger>(&self, sheet: &mut L) {
        self.strength(sheet);
        self.line(sheet);
        let size = (ch::PINION_DIAMETER, ch::MODULE, ch::QUALITY);
        sheet.computed(ch::PINION_PITCH_DEVIATION, &gear_accuracy::TOTAL_PITCH_DEVIATION, size);
        self.run_out(sheet);
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

    /// How true the pinion runs, and how the play varies with it.
    fn run_out<L: Ledger>(&self, sheet: &mut L) {
        sheet.given(ch::SEAT_RUN_OUT, parts::seat_run_out(), Origin::Assumed);
        sheet.computed(ch::PINION_RUN_OUT, &mesh_motion::RUN_OUT, (ch::PINION_PITCH_DEVIATION, ch::SEAT_RUN_OUT));
        sheet.computed(ch::RUN_OUT_ERROR, &mesh_motion::RUN_OUT_ERROR, (ch::PINION_RUN_OUT, ch::HELIX_ANGLE));
        sheet.computed(
            ch::PLAY_VARIATION,
            &mesh_motion::PLAY_VARIATION,
            (ch::PINION_RUN_OUT, ch::HEIGHT_WAVINESS, ch::HELIX_ANGLE),
        );
        sheet.computed(ch::WORST_MESH_PLAY, &layout::LENGTH_SUM, (ch::MESH_PLAY, ch::PLAY_VARIATION));
    }

    pub(super) fn line<L: Ledger>(&self, sheet: &mut L) {
        sheet.computed(ch::SEGMENTS, &rack::SEGMENTS, (ch::RACK_LENGTH, ch::SEGMENT_LENGTH));
        mounting::line(sheet);
        sheet.computed(ch::FASTENERS, &rack::FASTENERS, (ch::SEGMENTS, ch::SEGMENT_LENGTH, ch::FASTENER_PITCH));
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
        let pinions = match self.layout {
            Pinions::One => ch::PINION_PRICE,
            Pinions::Two => {
                sheet.computed(ch::PINIONS_PRICE, &cost::TIMES, (ch::PINIONS, ch::PINION_PRICE));
                ch::PINIONS_PRICE
            }
        };
        sheet.computed(ch::ELEMENT_PRICE, &pricing::PRICE_SUM, (ch::RACK_LINE_PRICE, pinions));
        sheet.computed(
            ch::SUPPORT_PRICE,
            &pricing::FASTENING_PRICE,
            (ch::FASTENER_PRICE, ch::FASTENERS, ch::JOINT_PRICE, ch::SEGMENTS, ch::GAUGE_PRICE),
        );
    }
}
