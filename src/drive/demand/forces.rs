//! Masses and forces of the demand, once the riding mass of a drive is known.
//!
//! Method: weight, friction and accelerated mass are worked out once, the force phase by phase from them. A counterbalance
//! that is lost counts as a standing load on the structure: the peak force is never below the whole weight.
//! Limits: those of the formulas.

use super::Demand;
use crate::characteristic as ch;
use crate::drive::{motor, sides};
use crate::formula::{counterbalance, duty, stiffness, twin};
use crate::ledger::{Characteristic, Ledger, PhaseCharacteristic};
use crate::units::{Acceleration, Force, Mass, Ratio};

/// What the force of a phase is worked out of.
type OfForce = (
    Characteristic<Mass>,
    Characteristic<Acceleration>,
    Characteristic<Force>,
    Characteristic<Ratio>,
    Characteristic<Force>,
    Characteristic<Ratio>,
    Characteristic<Force>,
    Characteristic<Ratio>,
);

#[inline(always)]
fn force_of(process: PhaseCharacteristic<Force>, index: usize) -> OfForce {
    (
        ch::ACCELERATED_MASS,
        ch::PHASE_ACCELERATION.phase(index),
        ch::GRAVITY_FORCE,
        ch::PHASE_BALANCE.phase(index),
        ch::FRICTION_FORCE,
        ch::PHASE_DIRECTION.phase(index),
        process.phase(index),
        ch::CUTTING_BOTH_WAYS,
    )
}

impl Demand<'_> {
    /// Enters what each of two pinions feels of wipers and cutting, once their number is known.
    pub fn enter_halves<L: Ledger>(&self, sheet: &mut L) {
        sheet.computed(ch::PINION_WIPER_FORCE, &twin::PINION_FORCE, (ch::DRIVE_WIPER_FORCE, ch::PINIONS));
        sheet.computed_all(ch::PHASE_PINION_PROCESS_FORCE, self.phases.len(), &twin::PINION_FORCE, |index| {
            (ch::PHASE_DRIVE_PROCESS_FORCE.phase(index), ch::PINIONS)
        });
    }

    /// Enters masses, weight and friction, once the riding mass is known.
    #[inline(always)]
    pub fn enter_masses<L: Ledger>(&self, sheet: &mut L) {
        // of two pinions everything is that of one
        let wiper = if motor::twin(sheet) { ch::PINION_WIPER_FORCE } else { ch::DRIVE_WIPER_FORCE };
        sheet.computed(
            ch::MOVING_MASS,
            &duty::MOVING_MASS,
            (ch::MOVED_MASS, ch::CARRIED_MASS, ch::RIDING_MASS, ch::CABLE_CHAIN_MASS),
        );
        sides::share(self, sheet);
        sheet.computed(ch::DRIVEN_MASS, &duty::DRIVEN_MASS, (ch::MOVING_MASS, ch::LOAD_SHARE));
        sheet.computed(
            ch::FRICTION_FORCE,
            &duty::FRICTION_FORCE,
            (ch::DRIVEN_MASS, ch::INCLINATION, ch::GUIDE_FRICTION, wiper),
        );
        sheet.computed(ch::GRAVITY_FORCE, &duty::GRAVITY_FORCE, (ch::DRIVEN_MASS, ch::INCLINATION));
        sheet.computed(
            ch::COUNTERWEIGHT_MASS,
            &counterbalance::COUNTERWEIGHT_MASS,
            (ch::COUNTERWEIGHT_SHARE, ch::DRIVEN_MASS, ch::INCLINATION),
        );
        sheet.computed(
            ch::ACCELERATED_MASS,
            &counterbalance::ACCELERATED_MASS,
            (ch::DRIVEN_MASS, ch::COUNTERWEIGHT_MASS),
        );
    }

    /// Enters the forces of the phases, once the masses are known.
    #[inline(always)]
    pub fn enter_forces<L: Ledger>(&self, sheet: &mut L) {
        let count = self.phases.len();
        let twin = motor::twin(sheet);
        let process = if twin { ch::PHASE_PINION_PROCESS_FORCE } else { ch::PHASE_DRIVE_PROCESS_FORCE };
        sheet.computed_all(ch::PHASE_FORCE, count, &counterbalance::PHASE_FORCE, |index| force_of(process, index));
        sides::motion_peak(self, sheet);
    }

    /// Enters the forces of the telling phases alone, once the masses are known.
    #[inline(always)]
    pub fn enter_telling_forces<L: Ledger>(&self, sheet: &mut L) {
        for &index in &self.telling {
            let inputs = force_of(ch::PHASE_DRIVE_PROCESS_FORCE, index);
            sheet.computed(ch::PHASE_FORCE.phase(index), &counterbalance::PHASE_FORCE, inputs);
        }
    }

    /// Enters how far the cutting force moves the slide, once give and play are known; of two pinions the weight on one counts.
    #[inline(always)]
    pub fn enter_cutting_shift<L: Ledger>(&self, sheet: &mut L) {
        let balance = self.axis.counterbalance.as_ref().map_or(ch::COUNTERBALANCE_SHARE, |_| ch::GREATEST_BALANCE);
        let moved = (
            ch::CUTTING_DEFLECTION,
            ch::PLAY,
            ch::CUTTING_BOTH_WAYS,
            ch::DRIVE_CUTTING_FORCE,
            ch::GRAVITY_FORCE,
            balance,
        );
        sheet.computed(ch::CUTTING_SHIFT, &stiffness::CUTTING_SHIFT, moved);
    }

    /// Enters the mean of the forces of the phases.
    #[inline(always)]
    pub fn enter_mean_force<L: Ledger>(&self, sheet: &mut L) {
        let count = self.phases.len();
        let phases = (ch::PHASE_FORCE.all(count), ch::PHASE_SHARE.all(count), ch::PHASE_SPEED.all(count));
        sheet.computed(ch::MEAN_FORCE, &duty::MEAN_FORCE, phases);
    }
}
