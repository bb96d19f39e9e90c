//! The ends of the screw and their bearings.

use crate::ledger::{About, Characteristic};
use crate::units::*;

characteristics! {
    after super::screw::END;

    EIGENVALUE_SQUARED: Ratio, "eigenvalue-squared", "λ²", "1", "bending eigenvalue of the end fixity, squared";
    BUCKLING_FACTOR: Ratio, "buckling-factor", "N", "1", "buckling factor of the end fixity";
    THRUST_ENDS: Ratio, "thrust-ends", "n_t", "1", "ends that take axial force";
    SUPPORT_ENDS: Ratio, "support-ends", "n_u", "1", "ends that are only supported radially";
    BEARING_BORE: Length, "bearing-bore", "d_b", "mm", "bore of the screw bearing";
    BEARING_RATING: Force, "bearing-rating", "C_b", "kN", "dynamic axial rating of the screw bearing";
    BEARING_PRELOAD: Force, "bearing-preload", "F_vb", "kN", "preload of the screw bearing";
    BEARING_STIFFNESS: Stiffness, "bearing-stiffness", "k_ax", "N/µm", "axial stiffness of the screw bearing";
    BEARING_SPEED_LIMIT: AngularVelocity, "bearing-speed-limit", "n_b", "1/min", "highest speed of the screw bearing";
    BEARING_SET_DRAG: Torque, "bearing-set-drag", "T_b1", "N·m", "drag of one set of screw bearings";
    BEARING_MASS: Mass, "bearing-mass", "m_b", "kg", "mass of one set of screw bearings";
    BEARING_DRAG: Torque, "bearing-drag-torque", "T_b", "N·m", "drag of all screw bearings together, or of the bearing of a driven nut";
    WHIP_SPEED: AngularVelocity, "whip-speed", "n_cr", "1/min", "first bending critical speed of the screw";
    COLUMN_LOAD: Force, "column-load", "F_cr", "kN", "force of the nut at which the screw buckles";
    BEARING_LIFE_HOURS: Time, "bearing-life-hours", "L_bh", "h", "nominal life of the screw bearing in working hours";
    SCREW_STIFFNESS: Stiffness, "screw-stiffness", "k_s", "N/µm", "axial stiffness of screw and bearings, or of screw and clamps, at the worst nut position";
    SCREW_TORSION: Stiffness, "screw-torsional-stiffness-linear", "k_t", "N/µm", "torsional stiffness of the screw, seen along the travel";
    COUPLING_LINEAR_STIFFNESS: Stiffness, "coupling-linear-stiffness", "k_cl", "N/µm", "stiffness of coupling or belt, seen along the travel";
    SCREW_SAG: Length, "screw-sag", "f_s", "mm", "sag of the screw under its own weight";
}
