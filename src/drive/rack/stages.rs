//! The stages behind the gearbox: masses, forces, motor, and what measures and corrects the position.
//!
//! Method: each function is one stage, or a part of one, in working order. Limits: those of the family.

use super::RackDrive;
use crate::catalog::{ErrorTable, LinearScale};
use crate::characteristic as ch;
use crate::drive::{feedback, mapping, motor, price, sides};
use crate::formula::{layout, stiffness, stop};
use crate::ledger::{Aside, Ledger};

impl RackDrive<'_> {
    /// What needs the mass and no phase: brakes and resonances fall before forces are worked out.
    pub(super) fn mass<L: Ledger>(&self, sheet: &mut L) {
        sheet.computed(
            ch::RIDING_MASS,
            &layout::RIDING_UNITS,
            (ch::MOTOR_MASS, ch::GEARBOX_MASS, ch::PINION_MASS, motor::units(sheet)),
        );
        self.demand.enter_masses(sheet);
        sheet.computed(ch::FIRST_MODE, &stiffness::NATURAL_FREQUENCY, (ch::TOTAL_STIFFNESS, ch::DRIVEN_MASS));
        motor::inertias(ch::PINION_INERTIA, sheet);
        motor::holding(sheet);
    }

    pub(super) fn duty<L: Ledger>(&self, sheet: &mut L) {
        self.demand.enter_forces(sheet);
    }

    /// What teeth, seat and gearbox bear, with the bias if there is one.
    pub(super) fn loads<L: Ledger>(&self, path: &[u16], sheet: &mut L) {
        self.bias(path, sheet);
        self.biased(sheet);
        sheet.computed(
            ch::SEAT_STRESS,
            &stop::SEAT_STRESS,
            (ch::PEAK_FORCE, ch::HELIX_ANGLE, ch::FACE_WIDTH, ch::SEAT_DIAMETER, ch::PINION_DIAMETER),
        );
        self.gearbox_load(sheet);
    }

    pub(super) fn peak<L: Ledger>(&self, sheet: &mut L) {
        motor::peak(self.demand, sheet);
        sides::both(self.demand, sheet);
        sheet.computed(
            ch::STOP_TORQUE,
            &stop::STOP_TORQUE_WITH_WEIGHT,
            (ch::SET_TORQUE, ch::ROTATING_INERTIA, ch::MASS_INERTIA, ch::REDUCTION, ch::HOLDING_TORQUE),
        );
        sheet.computed(ch::STOP_FORCE, &stop::STOP_FORCE, (ch::STOP_TORQUE, ch::PINION_DIAMETER));
        self.seat_stop(sheet);
    }

    pub(super) fn heat<L: Ledger>(&self, sheet: &mut L) {
        self.gearbox_mean_load(sheet);
        motor::heat(self.demand, sheet);
        price::enter_motors(sheet);
        sheet.computed(ch::DRIVE_MASS, &layout::RIDING_DRIVE_MASS, (ch::RACK_MASS, ch::RIDING_MASS, ch::DRIVES));
    }

    pub(super) fn delivery<L: Ledger>(&self, path: &[u16], sheet: &mut L) {
        let times = [
            self.picked_rack(path).lead_time,
            self.picked_grade(path).grade.lead_time,
            self.picked_pinion(path).lead_time,
            self.picked_gearbox(path).lead_time,
            self.picked_motor(path).lead_time,
        ];
        price::enter_delivery(&times, sheet);
    }

    #[inline(always)]
    pub(super) fn feedback<L: Ledger>(&self, scale: Option<&LinearScale>, sheet: &mut L) {
        feedback::enter_reader(self.demand, scale, crate::drive::defaults::parts::rack_scatter(), sheet);
        if scale.is_none() {
            sheet.computed(ch::LONG_ERROR, &layout::SAME_LENGTH, (ch::CUMULATIVE_PITCH_ERROR,));
            sheet.aside(Aside::Section, |sheet| {
                sheet.computed(ch::SECTION_LONG_ERROR, &layout::SAME_LENGTH, (ch::SECTION_PITCH_ERROR,));
            });
            sheet.computed(ch::TEMPERATURE_RISE, &layout::SAME_TEMPERATURE, (ch::TEMPERATURE_SWING,));
        }
        feedback::work_out(self.demand, scale, sheet);
        price::enter_feedback(scale, sheet);
    }

    #[inline(always)]
    pub(super) fn mapping<L: Ledger>(&self, by_scale: bool, table: Option<&ErrorTable>, sheet: &mut L) {
        let own = match by_scale {
            false => [Some(ch::RUN_OUT_ERROR), Some(ch::PITCH_STEP)],
            true => [None, None],
        };
        mapping::enter(self.demand, table, own, sheet);
    }
}
