//! The stages of the gearbox: what it brings, what the duty asks of it, what it gives off.
//!
//! Method: stiffness and bearing with the pinion where it stands; torques and bearing loads once the forces are known;
//! heat, life and the rhythm of the teeth last, on the few drives that are left. Limits: as the formulas.

use super::{Pinions, RackDrive};
use crate::catalog::*;
use crate::characteristic as ch;
use crate::drive::defaults::parts;
use crate::formula::{gantry, gear_accuracy, gearbox, gearbox_load, layout, mesh_motion, motion, stop, twin};
use crate::ledger::{Aside, Ledger, Origin};
use crate::units::*;

impl RackDrive<'_> {
    pub(super) fn gearbox<L: Ledger>(&self, gearbox: &Gearbox, sheet: &mut L) {
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
        sheet.given(ch::GEARBOX_RADIAL_LIMIT, gearbox.radial_limit, catalog);
        sheet.given(ch::GEARBOX_MASS, gearbox.mass, catalog);
        sheet.given(ch::NO_LOAD_TORQUE, gearbox.no_load_torque, catalog);
        sheet.given(ch::FRAME_SIZE, gearbox.frame_size, catalog);
        sheet.given(ch::GEARBOX_STAGES, Ratio::of_si(f64::from(gearbox.stages)), catalog);
        sheet.given(ch::BEARING_SPAN, gearbox.bearing_span, catalog);
        sheet.given(ch::GEARBOX_AXIAL_LIMIT, gearbox.axial_limit, catalog);
        sheet.given(ch::BEARING_GAP, parts::bearing_gap(), Origin::Assumed);
        sheet.given(ch::OVERHANG, gearbox.overhang, catalog);
        sheet.given(ch::OUTPUT_SHAFT_DIAMETER, gearbox.shaft_diameter, catalog);
        sheet.given(ch::TILT_STIFFNESS, gearbox.tilt_stiffness, catalog);
        sheet.computed(ch::MOTOR_SPEED, &motion::GEARED_SPEED, (ch::PINION_SPEED, ch::REDUCTION));
        sheet.computed(
            ch::DRAG_TORQUE,
            &gearbox_load::DRAG_AT_SPEED,
            (ch::NO_LOAD_TORQUE, ch::REDUCTION, ch::MOTOR_SPEED, ch::GEARBOX_NOMINAL_SPEED),
        );
        sheet.computed(ch::STAGE_RATIO, &gearbox_load::STAGE_RATIO, (ch::REDUCTION, ch::GEARBOX_STAGES));
        sheet.computed(ch::PINION_FRAME_RATIO, &mesh_motion::LENGTH_RATIO, (ch::PINION_DIAMETER, ch::FRAME_SIZE));
        sheet.computed(
            ch::PINION_OVERHANG,
            &gearbox_load::PINION_OVERHANG,
            (ch::OVERHANG, ch::FACE_WIDTH, ch::BEARING_GAP),
        );
        sheet.computed(ch::MEAN_PINION_SPEED, &motion::SHAFT_SPEED, (ch::MEAN_SPEED, ch::TRAVEL_PER_TURN));
        sheet.computed(ch::MEAN_INPUT_SPEED, &motion::GEARED_SPEED, (ch::MEAN_PINION_SPEED, ch::REDUCTION));
        sheet.computed(
            ch::GEARBOX_LINEAR_STIFFNESS,
            &gearbox::GEARBOX_LINEAR_STIFFNESS,
            (ch::REDUCTION_STIFFNESS, ch::PINION_DIAMETER),
        );
        sheet.computed(
            ch::MOTOR_SIDE_STIFFNESS,
            &gearbox_load::MOTOR_SIDE_STIFFNESS,
            (ch::GEARBOX_ACCELERATION_TORQUE, ch::REDUCTION, ch::PINION_DIAMETER),
        );
        sheet.computed(
            ch::TORSION_STIFFNESS,
            &stop::SERIES_2,
            (ch::GEARBOX_LINEAR_STIFFNESS, ch::MOTOR_SIDE_STIFFNESS),
        );
        sheet.computed(
            ch::OUTPUT_SHAFT_STIFFNESS,
            &gearbox::OUTPUT_SHAFT_STIFFNESS,
            (ch::PINION_OVERHANG, ch::OUTPUT_SHAFT_DIAMETER, ch::TILT_STIFFNESS, ch::HELIX_ANGLE),
        );
        sheet.computed(
            ch::SEAT_DIAMETER,
            &stop::SEAT_DIAMETER,
            (ch::PINION_DIAMETER, ch::MODULE, ch::PROFILE_SHIFT, ch::OUTPUT_SHAFT_DIAMETER),
        );
        sheet.computed(ch::SEAT_STIFFNESS, &stop::SEAT_STIFFNESS, (ch::FACE_WIDTH, ch::SEAT_DIAMETER, ch::HELIX_ANGLE));
        sheet.computed(ch::PINION_SHAFT_STIFFNESS, &stop::SERIES_2, (ch::OUTPUT_SHAFT_STIFFNESS, ch::SEAT_STIFFNESS));
        self.total_stiffness(sheet);
        sheet.computed(
            ch::RADIAL_LIMIT_AT_PINION,
            &gearbox_load::RADIAL_LIMIT_AT,
            (ch::GEARBOX_RADIAL_LIMIT, ch::OVERHANG, ch::BEARING_SPAN, ch::PINION_OVERHANG),
        );
        sheet.computed(
            ch::RADIAL_CAPACITY,
            &gearbox::RADIAL_CAPACITY,
            (ch::RADIAL_LIMIT_AT_PINION, ch::SERVICE_DISTANCE, ch::PINION_DIAMETER),
        );
        sheet.computed(ch::TOTAL_EFFICIENCY, &layout::PRODUCT, (ch::MESH_EFFICIENCY, ch::REDUCTION_EFFICIENCY));
        sheet.computed(ch::TOTAL_BACK_EFFICIENCY, &layout::PRODUCT, (ch::MESH_EFFICIENCY, ch::REDUCTION_EFFICIENCY));
    }

    /// Play and price, in which like gearboxes differ; the play of the teeth is known.
    pub(super) fn play<L: Ledger>(&self, gearbox: &Gearbox, sheet: &mut L) {
        sheet.given(ch::GEARBOX_PLAY, gearbox.play, Origin::Catalog);
        sheet.given(ch::REDUCTION_PRICE, gearbox.price, Origin::Catalog);
        sheet.computed(ch::PLAY_AT_RACK, &gear_accuracy::BACKLASH_AT_RACK, (ch::GEARBOX_PLAY, ch::PINION_DIAMETER));
        // a bias takes the play out, as far as it reaches
        let play = match self.layout {
            Pinions::One => ch::PLAY,
            Pinions::Two => ch::PINION_PLAY,
        };
        sheet.computed(play, &layout::LENGTH_SUM, (ch::WORST_MESH_PLAY, ch::PLAY_AT_RACK));
        if self.layout == Pinions::Two {
            let left = (ch::PINION_PLAY, ch::PLAY_FREE_DEMAND, ch::PLAY_FREE_FORCE);
            sheet.computed(ch::PLAY, &twin::BIASED_PLAY, left);
        }
        self.demand.enter_cutting_shift(sheet);
    }

    /// What the largest force asks of the gearbox.
    #[inline(always)]
    pub(super) fn gearbox_load<L: Ledger>(&self, sheet: &mut L) {
        sheet.computed(
            ch::OUTPUT_TORQUE,
            &gearbox::OUTPUT_TORQUE,
            (ch::PEAK_FORCE, ch::PINION_DIAMETER, ch::MESH_EFFICIENCY),
        );
        sheet.computed(ch::SHOCK_TORQUE, &gearbox_load::SHOCK_TORQUE, (ch::OUTPUT_TORQUE, ch::SHOCK_FACTOR));
        sheet.computed(ch::AXIAL_LOAD, &gearbox_load::AXIAL_LOAD, (ch::PEAK_FORCE, ch::HELIX_ANGLE));
    }

    /// What the mean force asks of the gearbox; means are dear and wait for what the largest force leaves.
    #[inline(always)]
    pub(super) fn gearbox_mean_load<L: Ledger>(&self, sheet: &mut L) {
        self.mean_force(sheet);
        // what two sides press against each other comes on top of every force
        let mean = if self.demand.two_sided() {
            sheet.computed(ch::TOOTH_MEAN_FORCE, &gantry::FORCE_SUM, (ch::MEAN_FORCE, ch::RACKING_FORCE));
            ch::TOOTH_MEAN_FORCE
        } else {
            ch::MEAN_FORCE
        };
        sheet.computed(ch::MEAN_OUTPUT_TORQUE, &layout::FORCE_TORQUE, (mean, ch::TRAVEL_PER_TURN, ch::MESH_EFFICIENCY));
        sheet.computed(
            ch::RADIAL_LOAD,
            &gearbox_load::OVERHUNG_LOAD,
            (mean, ch::HELIX_ANGLE, ch::PINION_DIAMETER, ch::PINION_OVERHANG, ch::BEARING_SPAN),
        );
    }

    /// Heat and life of the gearbox, once all else of it is known.
    #[inline(always)]
    pub(super) fn gearbox_service<L: Ledger>(&self, sheet: &mut L) {
        let count = self.demand.phases.len();
        sheet.aside(Aside::Comparing, |sheet| {
            let given_off = (ch::REDUCTION_EFFICIENCY, ch::MEAN_OUTPUT_TORQUE, ch::DRAG_TORQUE);
            sheet.computed(ch::EFFICIENCY_AT_LOAD, &gearbox_load::EFFICIENCY_AT_LOAD, given_off);
        });
        let (forces, shares, speeds) =
            (ch::PHASE_FORCE.all(count), ch::PHASE_SHARE.all(count), ch::PHASE_SPEED.all(count));
        let (efficiency, drag, mean, turn) =
            (ch::REDUCTION_EFFICIENCY, ch::DRAG_TORQUE, ch::MEAN_SPEED, ch::TRAVEL_PER_TURN);
        match self.on_top() {
            Some(steady) => {
                let inputs = (forces, shares, speeds, efficiency, drag, mean, turn, steady);
                sheet.computed(ch::GEARBOX_HEAT, &gearbox_load::STEADY_GEARBOX_HEAT, inputs)
            }
            None => {
                let inputs = (forces, shares, speeds, efficiency, drag, mean, turn);
                sheet.computed(ch::GEARBOX_HEAT, &gearbox_load::GEARBOX_HEAT, inputs)
            }
        };
        sheet.computed(ch::GEARBOX_SURFACE, &gearbox_load::GEARBOX_SURFACE, (ch::FRAME_SIZE, ch::GEARBOX_STAGES));
        sheet.computed(ch::GEARBOX_WARMING, &gearbox_load::GEARBOX_WARMING, (ch::GEARBOX_HEAT, ch::GEARBOX_SURFACE));
        sheet.computed(
            ch::GEARBOX_LIFE,
            &gearbox_load::GEARBOX_LIFE,
            (ch::GEARBOX_CONTINUOUS_TORQUE, ch::MEAN_OUTPUT_TORQUE, ch::GEARBOX_NOMINAL_SPEED, ch::MEAN_INPUT_SPEED),
        );
        sheet.aside(Aside::Comparing, |sheet| {
            sheet.given(ch::REFERENCE_CORE, parts::reference_core(), Origin::Assumed);
            sheet.given(ch::REFERENCE_REST, parts::reference_rest(), Origin::Assumed);
            let reference = (self.whole_stiffness(), ch::REFERENCE_CORE, ch::REFERENCE_REST);
            sheet.computed(ch::EQUAL_STIFFNESS_TRAVEL, &gearbox_load::EQUAL_STIFFNESS_TRAVEL, reference);
        });
    }

    /// The rhythm of the teeth against the first resonance.
    #[inline(always)]
    pub(super) fn rhythm<L: Ledger>(&self, sheet: &mut L) {
        sheet.aside(Aside::Comparing, |sheet| {
            let teeth = (ch::FIRST_MODE, ch::MODULE, ch::HELIX_ANGLE);
            sheet.computed(ch::MARKING_SPEED, &mesh_motion::MARKING_SPEED, teeth);
        });
        for (distance, frequency) in [
            (ch::CUTTING_RHYTHM_DISTANCE, ch::TOOTH_FREQUENCY_CUTTING),
            (ch::TOP_RHYTHM_DISTANCE, ch::TOOTH_FREQUENCY_TOP),
        ] {
            sheet.computed(distance, &mesh_motion::RESONANCE_DISTANCE, (frequency, ch::FIRST_MODE));
        }
    }
}
