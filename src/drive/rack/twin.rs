//! What two pinions on one rack change: bias, stiffness side by side, play, and the forces with the bias on top.
//!
//! Method: with one pinion each function does what a single drive asks; with two, masses and forces are those of one pinion
//! (half), and the bias comes on top. Limits: load sharing with bias only; the bias does not fade with the load.

use super::{BIAS, Pinions, RackDrive};
use crate::catalog::PinionBias;
use crate::characteristic as ch;
use crate::drive::defaults::parts;
use crate::drive::mounting;
use crate::formula::{gantry, gearbox, rack, rack_bed, stiffness, twin};
use crate::ledger::{Characteristic, Ledger, Origin};
use crate::units::*;

impl RackDrive<'_> {
    pub(super) fn pinion_count(&self) -> Ratio {
        Ratio::of_si(match self.layout {
            Pinions::One => 1.0,
            Pinions::Two => 2.0,
        })
    }

    pub(super) fn picked_bias(&self, path: &[u16]) -> Option<&PinionBias> {
        match self.layout {
            Pinions::One => None,
            Pinions::Two => self.catalog.pinion_biases.get(usize::from(path[BIAS])),
        }
    }

    /// The number of pinions; known before all else of the drive.
    pub(super) fn pinions<L: Ledger>(&self, sheet: &mut L) {
        sheet.given(ch::PINIONS, self.pinion_count(), Origin::Catalog);
        sheet.computed(ch::DRIVE_UNITS, &twin::DRIVE_UNITS, (ch::DRIVES, ch::PINIONS));
        if self.layout == Pinions::Two {
            sheet.given(ch::PINION_SPACING, parts::pinion_spacing(), Origin::Assumed);
            self.demand.enter_halves(sheet);
        }
    }

    /// The line of the rack; the second pinion needs as much more as it stands behind the first.
    pub(super) fn rack_length<L: Ledger>(&self, sheet: &mut L) {
        if self.layout == Pinions::Two {
            let way = (ch::TRAVEL, ch::OVERTRAVEL, ch::PINION_DIAMETER, ch::PINION_SPACING);
            sheet.computed(ch::RACK_LENGTH, &twin::TWIN_RACK_LENGTH, way);
        } else {
            sheet.computed(ch::RACK_LENGTH, &rack::RACK_LENGTH, (ch::TRAVEL, ch::OVERTRAVEL, ch::PINION_DIAMETER));
        }
    }

    /// The stiffness of all pinions of a drive while each is on its flank.
    pub(super) fn whole_stiffness(&self) -> Characteristic<Stiffness> {
        match self.layout {
            Pinions::One => ch::TOTAL_STIFFNESS,
            Pinions::Two => ch::BOTH_STIFFNESS,
        }
    }

    /// The springs of one drive; rack seat and bracket give under both pinions.
    pub(super) fn total_stiffness<L: Ledger>(&self, sheet: &mut L) {
        let (mesh, gearbox, shaft) = (ch::MESH_STIFFNESS, ch::TORSION_STIFFNESS, ch::PINION_SHAFT_STIFFNESS);
        let (mut mount, mut bracket) = (ch::MOUNT_STIFFNESS, ch::BRACKET_STIFFNESS);
        if self.layout == Pinions::Two {
            sheet.computed(ch::PINION_MOUNT_STIFFNESS, &twin::PINION_STIFFNESS, (mount, ch::PINIONS));
            sheet.computed(ch::PINION_BRACKET_STIFFNESS, &twin::PINION_STIFFNESS, (bracket, ch::PINIONS));
            (mount, bracket) = (ch::PINION_MOUNT_STIFFNESS, ch::PINION_BRACKET_STIFFNESS);
        }
        sheet.computed(ch::TOTAL_STIFFNESS, &stiffness::SERIES_5, (mesh, gearbox, shaft, mount, bracket));
        if self.layout == Pinions::Two {
            sheet.computed(ch::BOTH_STIFFNESS, &twin::BOTH_STIFFNESS, (ch::TOTAL_STIFFNESS, ch::PINIONS));
        }
        let whole = (ch::DRIVE_CUTTING_FORCE, self.whole_stiffness());
        sheet.computed(ch::CUTTING_DEFLECTION, &stiffness::DEFLECTION, whole);
    }

    /// The bias; a stage behind the forces, which are the same for every bias.
    pub(super) fn bias<L: Ledger>(&self, path: &[u16], sheet: &mut L) {
        let Some(bias) = self.picked_bias(path) else { return };
        sheet.given(ch::BIAS_SHARE, bias.share, Origin::Catalog);
        let torque = (ch::BIAS_SHARE, ch::GEARBOX_ACCELERATION_TORQUE, ch::PINION_DIAMETER);
        sheet.computed(ch::BIAS_FORCE, &twin::BIAS_FORCE, torque);
        sheet.computed(ch::PLAY_FREE_FORCE, &twin::PLAY_FREE_FORCE, (ch::BIAS_FORCE,));
        let output = (ch::BIAS_FORCE, ch::PINION_DIAMETER, ch::MESH_EFFICIENCY);
        sheet.computed(ch::BIAS_TORQUE, &gearbox::OUTPUT_TORQUE, output);
    }

    /// Largest force of the more loaded pinion, once forces and racking are known.
    #[inline(always)]
    pub(super) fn biased<L: Ledger>(&self, sheet: &mut L) {
        if self.layout == Pinions::One {
            return;
        }
        let (cutting, friction) = (ch::DRIVE_CUTTING_FORCE, ch::FRICTION_FORCE);
        sheet.computed(ch::PLAY_FREE_DEMAND, &twin::PLAY_FREE_DEMAND, (cutting, friction, ch::PINIONS));
        if self.demand.two_sided() {
            let demand = (cutting, friction, ch::PINIONS, ch::RACKING_FORCE);
            sheet.computed(ch::RACKED_PLAY_FREE_DEMAND, &twin::RACKED_PLAY_FREE_DEMAND, demand);
        }
        let mut on_top = ch::BIAS_FORCE;
        if self.demand.two_sided() {
            let both = (ch::BIAS_FORCE, ch::RACKING_FORCE);
            sheet.computed(ch::STEADY_FORCE, &gantry::FORCE_SUM, both);
            on_top = ch::STEADY_FORCE;
        }
        sheet.computed(ch::PEAK_FORCE, &gantry::FORCE_SUM, (ch::MOTION_PEAK_FORCE, on_top));
        sheet.computed(
            ch::SEGMENT_END_FORCE,
            &rack_bed::SEGMENT_END_FORCE,
            (
                ch::PEAK_FORCE,
                ch::BIAS_FORCE,
                ch::PINION_SPACING,
                ch::SECTION_AREA,
                ch::FASTENER_STIFFNESS,
                ch::FASTENER_PITCH,
            ),
        );
    }

    /// Mean force of the more loaded pinion, once the bias is known.
    #[inline(always)]
    pub(super) fn mean_force<L: Ledger>(&self, sheet: &mut L) {
        if self.layout == Pinions::One {
            self.demand.enter_mean_force(sheet);
            return;
        }
        let count = self.demand.phases.len();
        let (forces, shares, speeds) =
            (ch::PHASE_FORCE.all(count), ch::PHASE_SHARE.all(count), ch::PHASE_SPEED.all(count));
        sheet.computed(ch::MEAN_FORCE, &twin::BIASED_MEAN_FORCE, (forces, shares, speeds, ch::BIAS_FORCE));
    }

    /// The force that comes on top of every other, if there is any.
    pub(super) fn on_top(&self) -> Option<Characteristic<Force>> {
        match (self.layout, self.demand.two_sided()) {
            (Pinions::Two, true) => Some(ch::STEADY_FORCE),
            (Pinions::Two, false) => Some(ch::BIAS_FORCE),
            (Pinions::One, true) => Some(ch::RACKING_FORCE),
            (Pinions::One, false) => None,
        }
    }

    /// What the seat of the rack feels in an emergency stop: of two pinions both.
    #[inline(always)]
    pub(super) fn seat_stop<L: Ledger>(&self, sheet: &mut L) {
        let stop = match self.layout {
            Pinions::One => ch::STOP_FORCE,
            Pinions::Two => {
                sheet.computed(ch::BOTH_STOP_FORCE, &twin::BOTH_FORCE, (ch::STOP_FORCE, ch::PINIONS));
                ch::BOTH_STOP_FORCE
            }
        };
        mounting::stop(stop, sheet);
    }
}
