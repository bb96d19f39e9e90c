//! Strength of the teeth: what they bear, and what the duty does to them.
//!
//! Method: what the teeth bear is known with the pinion; the force of the duty that does the same damage at every pass
//! is worked out last, on the few drives that are left. Limits: as the formulas.

use super::{Pinions, RackDrive};
use crate::characteristic as ch;
use crate::drive::defaults::parts;
use crate::formula::{gantry, tooth_strength, twin};
use crate::ledger::{Characteristic, Ledger, Origin};
use crate::units::Force;

impl RackDrive<'_> {
    /// What flanks and roots bear, once pinion and cycles are known.
    pub(super) fn strength<L: Ledger>(&self, sheet: &mut L) {
        sheet.computed(ch::PINION_CYCLES, &tooth_strength::PINION_CYCLES, (ch::SERVICE_DISTANCE, ch::PINION_DIAMETER));
        // every pinion passes over every tooth of the rack
        let passes = match self.layout {
            Pinions::One => ch::RACK_CYCLES,
            Pinions::Two => ch::PINION_PASSES,
        };
        sheet.computed(passes, &tooth_strength::RACK_CYCLES, (ch::MOVES_PER_HOUR, ch::SERVICE_HOURS));
        if self.layout == Pinions::Two {
            sheet.computed(ch::RACK_CYCLES, &twin::RACK_PASSES, (ch::PINION_PASSES, ch::PINIONS));
        }
        sheet.given(ch::FLANK_STATIC_CYCLES, parts::flank_static_cycles(), Origin::Assumed);
        sheet.given(ch::ROOT_STATIC_CYCLES, parts::root_static_cycles(), Origin::Assumed);
        self.felt(sheet);
        let contact = |limit, cycles| {
            let (m, z, h, x, b) = (ch::MODULE, ch::TEETH, ch::HELIX_ANGLE, ch::PROFILE_SHIFT, ch::FACE_WIDTH);
            (m, z, h, x, b, limit, cycles, ch::QUALITY, ch::SPEED, ch::FACE_LOAD_FACTOR)
        };
        let root = |limit, cycles| {
            let (m, z, h, x, b) = (ch::MODULE, ch::TEETH, ch::HELIX_ANGLE, ch::PROFILE_SHIFT, ch::FACE_WIDTH);
            (m, z, h, x, b, limit, cycles, ch::QUALITY, ch::SPEED, ch::FACE_LOAD_FACTOR, ch::REVERSAL_FACTOR)
        };
        let (pinion, rack) = (ch::PINION_CONTACT_LIMIT, ch::RACK_CONTACT_LIMIT);
        for (force, cycles) in
            [(ch::PINION_PITTING_FORCE, ch::PINION_CYCLES), (ch::PINION_FLANK_STATIC_FORCE, ch::FLANK_STATIC_CYCLES)]
        {
            sheet.computed(force, &tooth_strength::PINION_PITTING_FORCE, contact(pinion, cycles));
        }
        for (force, cycles) in
            [(ch::RACK_PITTING_FORCE, ch::RACK_CYCLES), (ch::RACK_FLANK_STATIC_FORCE, ch::FLANK_STATIC_CYCLES)]
        {
            sheet.computed(force, &tooth_strength::RACK_PITTING_FORCE, contact(rack, cycles));
        }
        let (pinion, rack) = (ch::PINION_BENDING_LIMIT, ch::RACK_BENDING_LIMIT);
        for (force, cycles) in
            [(ch::PINION_ROOT_FORCE, ch::PINION_CYCLES), (ch::PINION_ROOT_STATIC_FORCE, ch::ROOT_STATIC_CYCLES)]
        {
            sheet.computed(force, &tooth_strength::PINION_ROOT_FORCE, root(pinion, cycles));
        }
        for (force, cycles) in
            [(ch::RACK_ROOT_FORCE, ch::RACK_CYCLES), (ch::RACK_ROOT_STATIC_FORCE, ch::ROOT_STATIC_CYCLES)]
        {
            sheet.computed(force, &tooth_strength::RACK_ROOT_FORCE, root(rack, cycles));
        }
    }

    /// What the teeth feel of a force, and what they bear of that.
    fn felt<L: Ledger>(&self, sheet: &mut L) {
        let (m, z, h, x, b) = (ch::MODULE, ch::TEETH, ch::HELIX_ANGLE, ch::PROFILE_SHIFT, ch::FACE_WIDTH);
        let mesh = (m, z, h, x, b, ch::QUALITY, ch::SPEED);
        sheet.computed(ch::LOAD_SLOPE, &tooth_strength::LOAD_SLOPE, mesh);
        sheet.computed(ch::LOAD_OFFSET, &tooth_strength::LOAD_OFFSET, mesh);
        sheet.computed(ch::LIGHT_LOAD_FACTOR, &tooth_strength::LIGHT_LOAD_FACTOR, mesh);
        let flank = |limit| (m, z, h, x, b, limit, ch::FACE_LOAD_FACTOR);
        let root = |limit| (m, z, h, x, b, limit, ch::FACE_LOAD_FACTOR, ch::REVERSAL_FACTOR);
        sheet.computed(
            ch::PINION_FLANK_ENDURANCE,
            &tooth_strength::PINION_FLANK_ENDURANCE,
            flank(ch::PINION_CONTACT_LIMIT),
        );
        sheet.computed(ch::RACK_FLANK_ENDURANCE, &tooth_strength::RACK_FLANK_ENDURANCE, flank(ch::RACK_CONTACT_LIMIT));
        sheet.computed(
            ch::PINION_ROOT_ENDURANCE,
            &tooth_strength::PINION_ROOT_ENDURANCE,
            root(ch::PINION_BENDING_LIMIT),
        );
        sheet.computed(ch::RACK_ROOT_ENDURANCE, &tooth_strength::RACK_ROOT_ENDURANCE, root(ch::RACK_BENDING_LIMIT));
    }

    /// The forces of equal damage, once the forces of the phases are known.
    #[inline(always)]
    pub(super) fn damage<L: Ledger>(&self, sheet: &mut L) {
        let count = self.demand.phases.len();
        let (forces, shares, speeds) =
            (ch::PHASE_FORCE.all(count), ch::PHASE_SHARE.all(count), ch::PHASE_SPEED.all(count));
        let (slope, offset, light, b) = (ch::LOAD_SLOPE, ch::LOAD_OFFSET, ch::LIGHT_LOAD_FACTOR, ch::FACE_WIDTH);
        let pinion = |endurance| (forces, shares, speeds, endurance, slope, offset, light, b);
        let (accelerations, moves) = (ch::PHASE_ACCELERATION.all(count), ch::PHASE_MOVES.all(count));
        let rack = |endurance| (forces, accelerations, moves, ch::MOVES_PER_HOUR, endurance, slope, offset, light, b);
        // what two sides or two pinions press against each other comes on top of every force
        let on_top = self.on_top();
        let equal =
            |with: Characteristic<Force>, duty: Characteristic<Force>| if on_top.is_some() { duty } else { with };
        sheet.computed(
            equal(ch::PINION_FLANK_EQUIVALENT_FORCE, ch::PINION_FLANK_DUTY_FORCE),
            &tooth_strength::PINION_FLANK_EQUIVALENT_FORCE,
            pinion(ch::PINION_FLANK_ENDURANCE),
        );
        sheet.computed(
            equal(ch::PINION_ROOT_EQUIVALENT_FORCE, ch::PINION_ROOT_DUTY_FORCE),
            &tooth_strength::PINION_ROOT_EQUIVALENT_FORCE,
            pinion(ch::PINION_ROOT_ENDURANCE),
        );
        sheet.computed(
            equal(ch::RACK_FLANK_EQUIVALENT_FORCE, ch::RACK_FLANK_DUTY_FORCE),
            &tooth_strength::RACK_FLANK_EQUIVALENT_FORCE,
            rack(ch::RACK_FLANK_ENDURANCE),
        );
        sheet.computed(
            equal(ch::RACK_ROOT_EQUIVALENT_FORCE, ch::RACK_ROOT_DUTY_FORCE),
            &tooth_strength::RACK_ROOT_EQUIVALENT_FORCE,
            rack(ch::RACK_ROOT_ENDURANCE),
        );
        if let Some(on_top) = on_top {
            for (with, duty) in [
                (ch::PINION_FLANK_EQUIVALENT_FORCE, ch::PINION_FLANK_DUTY_FORCE),
                (ch::PINION_ROOT_EQUIVALENT_FORCE, ch::PINION_ROOT_DUTY_FORCE),
                (ch::RACK_FLANK_EQUIVALENT_FORCE, ch::RACK_FLANK_DUTY_FORCE),
                (ch::RACK_ROOT_EQUIVALENT_FORCE, ch::RACK_ROOT_DUTY_FORCE),
            ] {
                sheet.computed(with, &gantry::FORCE_SUM, (duty, on_top));
            }
        }
    }
}
