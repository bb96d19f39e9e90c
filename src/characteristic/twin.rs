//! Two pinions of one drive, pressed against each other.

use crate::ledger::{About, Characteristic};
use crate::units::*;

characteristics! {
    after super::mounting::END;

    PINIONS: Ratio, "pinions", "n_P", "1", "pinions of one drive, each with a gearbox and a motor";
    DRIVE_UNITS: Ratio, "drive-units", "n_U", "1", "units of motor, gearbox and pinion on the axis";
    BIAS_SHARE: Ratio, "bias-share", "x_bi", "%", "bias over the acceleration torque of the gearbox";
    BIAS_FORCE: Force, "bias-force", "F_bi", "N", "force by which each of two pinions presses against the other";
    BIAS_TORQUE: Torque, "bias-torque", "T_v", "N·m", "torque at the gearbox output that the bias alone asks";
    PLAY_FREE_FORCE: Force, "play-free-force", "F_v0", "N", "largest force on the slide up to which no play is crossed";
    PLAY_FREE_DEMAND: Force, "play-free-demand", "F_q", "N", "force of cutting and friction that must cross no play";
    RACKED_PLAY_FREE_DEMAND: Force, "racked-play-free-demand", "F_qr", "N", "force of cutting, friction and racking together on one side";
    PINION_PLAY: Length, "pinion-play", "j_1", "µm", "play of one pinion with its gearbox, without bias";
    SIDE_SHARE: Ratio, "side-share", "x_sd", "1", "share of the moving mass on the most loaded drive, all its pinions";
    SIDE_MASS: Mass, "side-mass", "m_sd", "kg", "moving mass on the most loaded drive, all its pinions";
    PINION_WIPER_FORCE: Force, "pinion-wiper-force", "F_w,1", "N", "drag of seals, wipers and covers on one pinion";
    PINION_YAW_STIFFNESS: TorsionalStiffness, "pinion-yaw-stiffness", "k_ψ1", "kN·m/rad", "stiffness of the guides against yaw that is left for one pinion";
    PINION_MOUNT_STIFFNESS: Stiffness, "pinion-mount-stiffness", "k_r1", "N/µm", "stiffness of the rack on its fasteners that is left for one pinion";
    PINION_BRACKET_STIFFNESS: Stiffness, "pinion-bracket-stiffness", "k_br1", "N/µm", "stiffness of the bracket that is left for one pinion";
    BOTH_STIFFNESS: Stiffness, "both-pinions-stiffness", "k_bp", "N/µm", "stiffness of both pinions together while both flanks touch";
    STEADY_FORCE: Force, "steady-force", "F_sy", "N", "force that comes on top of every other on one pinion: bias, and racking if any";
    LOST_PINION_FORCE: Force, "lost-pinion-force", "F_l1", "N", "force of one pinion of the side that is left when it brakes at its torque limit alone";
    PINION_MOVING_MASS: Mass, "pinion-moving-mass", "m_1", "kg", "moving mass left for one pinion when a side is lost";
    BOTH_STOP_FORCE: Force, "both-stop-force", "F_sp", "kN", "force of both pinions in an emergency stop";
    PINION_SPACING: Length, "pinion-spacing", "a_P", "mm", "least distance along the rack of the two pinions of a drive";
    SEGMENT_END_FORCE: Force, "segment-end-force", "F_re", "N", "force of both pinions of a drive on the fasteners at the end of a rack segment";
    PINION_PASSES: Ratio, "pinion-passes", "N_2,1", "1", "load cycles of the most used rack tooth by one pinion over the service life";
    PINIONS_PRICE: Money, "pinions-price", "k_pp", "", "both pinions of one drive";
}
