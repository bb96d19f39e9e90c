//! Coupling, belt or gearbox.

use crate::ledger::{About, Characteristic};
use crate::units::*;

characteristics! {
    after super::driven_nut::END;

    REDUCTION: Ratio, "reduction", "i", "1", "turns of the motor for one turn of screw or pinion";
    REDUCTION_EFFICIENCY: Ratio, "reduction-efficiency", "η_g", "1", "efficiency of coupling, belt or gearbox";
    TOTAL_EFFICIENCY: Ratio, "total-efficiency", "η", "1", "efficiency from motor to slide, motor driving";
    TOTAL_BACK_EFFICIENCY: Ratio, "total-back-efficiency", "η_b", "1", "efficiency from slide to motor, load driving";
    REDUCTION_INERTIA: MomentOfInertia, "reduction-inertia", "J_g", "kg·cm²", "inertia of coupling, belt or gearbox at the motor";
    REDUCTION_STIFFNESS: TorsionalStiffness, "reduction-stiffness", "c_g", "N·m/arcmin", "torsional stiffness of coupling, belt or gearbox at screw or pinion";
    REDUCTION_TORQUE_LIMIT: Torque, "reduction-torque-limit", "T_Kn", "N·m", "rated torque of coupling or belt at the screw";
    REDUCTION_SPEED_LIMIT: AngularVelocity, "reduction-speed-limit", "n_Kn", "1/min", "highest motor speed of coupling or belt";
    BELTS: Ratio, "belts", "n_B", "1", "belts between the motor with its brake and the load";
    REDUCTION_STOP_TORQUE: Torque, "reduction-stop-torque", "T_1s", "N·m", "torque through coupling or belt in an emergency stop, at the screw";
    REDUCTION_MASS: Mass, "reduction-mass", "m_red", "kg", "mass of coupling or belt reduction";
    SHAFT_TORQUE: Torque, "shaft-torque", "T_1", "N·m", "largest torque at screw or pinion";
}
