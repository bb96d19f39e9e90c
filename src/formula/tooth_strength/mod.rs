//! What the teeth of pinion and rack bear: pitting and root strength after ISO 6336.
//!
//! Method: ISO 6336-1, -2 and -3 with the rack as a wheel of infinitely many teeth; the stress of the load
//! at the outer point of single contact; allowable stress from the life factors and the relative factors.
//! The permissible force is the one root of stress = allowable stress, found by bisection, because the
//! dynamic factor and the load sharing factor themselves depend on the force.
//! Editions: Z_β = 1/√cos β (2008 correction) with Y_β = 1 − ε_β·β/120° (2006); not mixed with 2019 factors.
//! Limits: application factor 1 (the force is the true peak), safety 1 (rules apply it to the load; `calc`
//! divides the stress limit), solid rack body and pinion rim, grease. The factor tables are from memory of the standard.
//! The line of the root's life, its notch, size and surface factor go with the class of the steel; the line of the flank
//! is the same for all classes here.

mod alignment;
mod bending;
mod contact;
mod cycles;
mod endurance;
mod factors;
mod material;
mod permissible;
mod spectrum;
mod steel;

pub use alignment::{ALIGNMENT_FACE_LOAD_FACTOR, ALIGNMENT_FORCE, FACE_LOAD_FACTOR, MOUNTING_SLOPE};
pub use bending::{
    RootFactors, TIP_FORM_FACTOR, TIP_STRESS_CORRECTION, ToothForm, pinion_tooth, rack_tooth, rack_tooth_at_tip,
    tip_form_factor, tip_stress_correction,
};
pub use contact::{FlankFactors, elasticity_factor, zone_factor};
pub use cycles::{PINION_CYCLES, RACK_CYCLES, pinion_cycles, rack_cycles};
pub use endurance::{
    LIGHT_LOAD_FACTOR, LOAD_OFFSET, LOAD_SLOPE, MOUNTED_ENDURANCE, PINION_FLANK_ENDURANCE, PINION_ROOT_ENDURANCE,
    RACK_FLANK_ENDURANCE, RACK_ROOT_ENDURANCE, flank_factors, root_factors,
};
pub use factors::{contact_life_factor, root_life_factor};
pub use material::{MATERIALS, SteelClass, ToothMaterial, material};
pub use permissible::{
    FLANK_FORCE, LEAST_4, ROOT_FORCE, least_4, pinion_pitting_force, pinion_root_force, rack_pitting_force,
    rack_root_force,
};
pub use spectrum::{
    PINION_FLANK_EQUIVALENT_FORCE, PINION_ROOT_EQUIVALENT_FORCE, RACK_FLANK_EQUIVALENT_FORCE,
    RACK_ROOT_EQUIVALENT_FORCE,
};
pub use steel::{
    FLANK_STRENGTH, ROOT_FACE_LOAD_FACTOR, ROOT_LIFE_FACTOR, ROOT_SIZE_FACTOR, ROOT_SIZE_FACTOR_HARDENED,
    ROOT_STRENGTH, ROOT_SURFACE_FACTOR, ROOT_SURFACE_FACTOR_SOFT,
};
