//! The formulas on the strength of teeth.
//!
//! Method: one line a formula, as in the list beside. Limits: none.

use crate::calc::generic::Plain;
use crate::formula::*;

/// Filed as the source files are.
pub(super) static FORMULAS: &[&dyn Plain] = &[
    &tooth_strength::TIP_FORM_FACTOR,
    &tooth_strength::TIP_STRESS_CORRECTION,
    &tooth_strength::PINION_CYCLES,
    &tooth_strength::RACK_CYCLES,
    &tooth_strength::FLANK_STRENGTH,
    &tooth_strength::ROOT_SIZE_FACTOR_HARDENED,
    &tooth_strength::ROOT_SIZE_FACTOR,
    &tooth_strength::ROOT_SURFACE_FACTOR,
    &tooth_strength::ROOT_SURFACE_FACTOR_SOFT,
    &tooth_strength::ROOT_STRENGTH,
    &tooth_strength::ROOT_LIFE_FACTOR,
    &tooth_strength::ROOT_FACE_LOAD_FACTOR,
    &tooth_strength::FLANK_FORCE,
    &tooth_strength::ROOT_FORCE,
    &tooth_strength::LEAST_4,
    &tooth_strength::ALIGNMENT_FORCE,
    &tooth_strength::MOUNTING_SLOPE,
    &tooth_strength::ALIGNMENT_FACE_LOAD_FACTOR,
    &tooth_strength::FACE_LOAD_FACTOR,
    &tooth_strength::MOUNTED_ENDURANCE,
    &tooth_strength::LOAD_SLOPE,
    &tooth_strength::LOAD_OFFSET,
    &tooth_strength::LIGHT_LOAD_FACTOR,
    &tooth_strength::PINION_FLANK_ENDURANCE,
    &tooth_strength::RACK_FLANK_ENDURANCE,
    &tooth_strength::PINION_ROOT_ENDURANCE,
    &tooth_strength::RACK_ROOT_ENDURANCE,
    &tooth_strength::PINION_FLANK_EQUIVALENT_FORCE,
    &tooth_strength::PINION_ROOT_EQUIVALENT_FORCE,
    &tooth_strength::RACK_FLANK_EQUIVALENT_FORCE,
    &tooth_strength::RACK_ROOT_EQUIVALENT_FORCE,
];
