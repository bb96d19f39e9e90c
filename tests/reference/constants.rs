//! Constants and units.
//!
//! Sources: The International System of Units (SI Brochure) of the BIPM and NIST Special Publication 811, Appendix B
//! (factors from memory, exact or to the digits printed there); 3rd CGPM 1901 for standard gravity.

use super::near;
use axiswright::formula::constants::{GRAVITY, STEEL_SHEAR};
use axiswright::units::{
    CirculationSpeed, Force, Length, LinearMassDensity, LoopGain, Mass, Measure, MomentOfInertia, Power, Pressure,
    Torque, parse,
};

fn si<Q: Measure>(text: &str) -> f64 {
    parse::<Q>(text).unwrap().si()
}

#[test]
fn standard_gravity_and_steel() {
    near("g", GRAVITY, 9.80665, 0.0);
    // G = E/(2(1 + ν)) of 206 GPa and 0.3
    near("G, GPa", STEEL_SHEAR / 1e9, 79.2, 0.05);
}

#[test]
fn factors_of_nist_sp_811() {
    near("inch", si::<Length>("1in"), 2.54e-2, 1e-15);
    near("foot", si::<Length>("1ft"), 0.3048, 1e-15);
    near("pound", si::<Mass>("1lb"), 0.453_592_37, 1e-15);
    near("pound-force", si::<Force>("1lbf"), 4.448_222, 5e-7);
    near("kilogram-force", si::<Force>("1kgf"), 9.80665, 1e-14);
    near("pound-force inch", si::<Torque>("1lbf·in"), 0.112_984_8, 5e-8);
    near("pound-force foot", si::<Torque>("1lbf·ft"), 1.355_818, 5e-7);
    near("psi", si::<Pressure>("1psi"), 6894.757, 5e-4);
    near("horsepower (550 ft·lbf/s)", si::<Power>("1hp"), 745.6999, 5e-5);
    near("pound per foot", si::<LinearMassDensity>("1lb/ft"), 1.488_164, 5e-7);
    near("pound inch squared", si::<MomentOfInertia>("1lb·in²"), 2.926_397e-4, 5e-11);
}

#[test]
fn units_of_the_trade() {
    // 1 (m/min)/mm is 1000/60 1/s; 120 000 mm·1/min is 2 m·rev/s
    near("loop gain", si::<LoopGain>("1(m/min)/mm"), 16.667, 0.0005);
    near("ball circulation", si::<CirculationSpeed>("120000mm/min"), 2.0, 1e-12);
}
