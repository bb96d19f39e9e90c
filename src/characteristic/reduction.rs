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
    BELTS: Ratio, "belts", "n_B", "1", "number of belts between the motor with its brake and the load";
    COUPLINGS: Ratio, "couplings", "n_K", "1", "one if a coupling joins motor and screw, zero if a belt does";
    BELT_PITCH: Length, "belt-pitch", "p_B", "mm", "pitch of the belt";
    BELT_WIDTH: Length, "belt-width", "b_B", "mm", "width of the belt";
    DRIVING_TEETH: Ratio, "driving-teeth", "z_1", "1", "teeth of the pulley on the motor";
    CENTRE_DISTANCE: Length, "centre-distance", "a_B", "mm", "distance of the shafts of the belt";
    SPECIFIC_STIFFNESS: LineLoad, "specific-stiffness", "c_sp", "kN/mm", "force of the belt at unit strain for each width";
    PULL_PER_WIDTH: LineLoad, "pull-per-width", "w_B", "N/mm", "permissible pull of the belt for each width";
    BELT_MASS: LinearMassDensity, "belt-mass", "m'_B", "kg/m", "mass of the belt for each length";
    BELT_SPEED_LIMIT: Velocity, "belt-speed-limit", "v_B,lim", "m/s", "highest speed of the belt";
    DRIVING_PULLEY: Length, "driving-pulley", "d_1", "mm", "pitch diameter of the pulley on the motor";
    BELT_SPAN: Length, "belt-span", "l_B", "mm", "length of one free span of the belt";
    BELT_SPEED: Velocity, "belt-speed", "v_B", "m/s", "speed of the belt at top speed of the axis";
    BELT_PULL_LIMIT: Force, "belt-pull-limit", "F_B", "N", "permissible pull of the belt";
    BELT_PULL: Force, "belt-pull", "F_u", "N", "largest pull of the belt";
    TEETH_IN_MESH: Ratio, "teeth-in-mesh", "z_m", "1", "teeth of the belt that mesh on the smaller pulley";
    PRETENSION_SHARE: Ratio, "pretension-share", "x_0", "1", "pretension of each span of the belt over its largest pull";
    BELT_PRETENSION: Force, "belt-pretension", "F_0", "N", "pretension of each span of the belt";
    BELT_SHAFT_LOAD: Force, "belt-shaft-load", "F_W", "N", "force of the belt on the shaft of the motor";
    SPAN_FREQUENCY: Frequency, "span-frequency", "f_B", "Hz", "first tone of a free span of the belt, by which its pretension is set";
    COUPLING_RESONANCE: Frequency, "coupling-resonance", "f_c", "Hz", "torsional resonance of motor and load on coupling or belt";
    COUPLING_FLOOR: Frequency, "coupling-floor", "f_c,w", "Hz", "torsional resonance that leaves the loops of the axis alone";
    REDUCTION_STOP_TORQUE: Torque, "reduction-stop-torque", "T_1s", "N·m", "torque through coupling or belt in an emergency stop, at the screw";
    REDUCTION_MASS: Mass, "reduction-mass", "m_red", "kg", "mass of coupling or belt reduction";
    SHAFT_TORQUE: Torque, "shaft-torque", "T_1", "N·m", "largest torque at screw or pinion";
}
