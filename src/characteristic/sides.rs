//! Two drives on one axis: what makes their sides differ, and what that does; guides across and along.

use crate::ledger::{About, Characteristic};
use crate::units::*;

characteristics! {
    after super::money::END;

    DRIVE_SPACING: Length, "drive-spacing", "B_d", "mm", "distance of the two drives of an axis";
    MASS_OFFSET: Length, "mass-offset", "e_b", "mm", "centre of the moved mass off the middle of the two drives";
    YAW_STIFFNESS: TorsionalStiffness, "yaw-stiffness", "k_ψ", "kN·m/rad", "stiffness of the guides against yaw of the axis";
    SIDE_TEMPERATURE_DIFFERENCE: TemperatureInterval, "side-temperature-difference", "ΔT_12", "K", "by how much one side of the axis is warmer than the other";
    SIDE_CORRECTION: Ratio, "side-correction", "c_s", "%", "part of the difference of the two sides that a table of corrections takes out";
    CENTRED_GUIDE_SPACING: Length, "centred-guide-spacing", "b_g", "mm", "distance of the guides across an axis with one drive";
    GUIDE_BASE: Length, "guide-base", "l_g", "mm", "distance of the carriages along the travel";
    DRIVE_EXPANSION: Expansion, "drive-expansion", "α_d", "µm/(m·K)", "expansion of rack, screw and bed";
    DRIVE_ERROR: Length, "drive-error", "M_d", "µm", "position error that rack or screw alone leaves on one side";
    SIDE_DIFFERENCE: Length, "side-difference", "Δx", "µm", "by how much the two sides of the axis may stand apart";
    RACKING_FORCE: Force, "racking-force", "F_r", "N", "force by which the two sides rack against each other";
    MOTION_PEAK_FORCE: Force, "motion-peak-force", "F_ph", "N", "largest force of any phase on the most loaded drive, without racking";
    YAW_ANGLE: Angle, "yaw-angle", "ψ", "arcmin", "angle by which the beam stands askew in service";
    YAW_AT_TOOL: Length, "yaw-at-tool", "u_ψ", "µm", "how far that yaw moves the tool along the travel, at a drive";
    YAW_ACCURACY: Length, "yaw-accuracy", "A_ψ", "mm", "accuracy that the brief asks of an axis with two drives";
    FAR_MASS: Mass, "far-mass", "m_f", "kg", "moving mass on the less loaded drive";
    NEAR_FORCE: Force, "near-force", "F_n", "N", "force of the most loaded drive while the axis speeds up, without racking";
    FAR_FORCE: Force, "far-force", "F_fa", "N", "force of the other drive while the axis speeds up, without racking";
    RACKING_TORQUE: Torque, "racking-torque", "T_r", "N·m", "torque at the motor against the racking force";
    LOST_SIDE_FORCE: Force, "lost-side-force", "F_l", "N", "force of the side that is left when it brakes at its torque limit alone";
    LOST_SIDE_MOMENT: Torque, "lost-side-moment", "M_l", "N·m", "moment that the guides carry then";
    LOST_SIDE_LEAD: Length, "lost-side-lead", "u_l", "µm", "way by which the lost side runs ahead of the middle of the beam";
    LOST_SIDE_YAW: Angle, "lost-side-yaw", "ψ_l", "arcmin", "angle by which the beam stands askew then";
}
