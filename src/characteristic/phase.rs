//! What has one value a phase of the duty.

use crate::formula::MOST_PHASES;
use crate::ledger::{About, PhaseCharacteristic};
use crate::units::*;

phased_characteristics! {
    after super::servo::END;

    PHASE_SHARE: Ratio, "phase-share", "q_k", "1", "share of working time in this phase";
    PHASE_DIRECTION: Ratio, "phase-direction", "σ_k", "1", "direction of motion in this phase: 1, -1, or 0 standing";
    PHASE_SPEED: Velocity, "phase-speed", "v_k", "m/min", "mean speed in this phase, positive upward or forward";
    PHASE_RMS_SPEED: Velocity, "phase-rms-speed", "v_q,k", "m/min", "root mean square speed of the move's part that this phase belongs to";
    PHASE_TOP_SPEED: Velocity, "phase-top-speed", "v̂_k", "m/min", "top speed in this phase";
    PHASE_ACCELERATION: Acceleration, "phase-acceleration", "a_k", "m/s²", "acceleration in this phase, positive upward or forward";
    PHASE_STROKE: Length, "phase-stroke", "s_k", "mm", "stroke of the move that this phase belongs to; zero where none";
    PHASE_MOVES: Ratio, "phase-moves", "m_k", "1", "moves in an hour of work that have this phase; zero where none";
    PHASE_PROCESS_FORCE: Force, "phase-process-force", "F_p,k", "N", "cutting force in this phase, positive against upward or forward motion";
    PHASE_BALANCE: Ratio, "phase-balance", "c_k", "1", "share of the weight that the counterbalance carries in this phase";
    PHASE_DRIVE_PROCESS_FORCE: Force, "phase-drive-process-force", "F_pd,k", "N", "cutting force on the most loaded drive in this phase";
    PHASE_FORCE: Force, "phase-force", "F_k", "N", "force on one drive in this phase";
    PHASE_TORQUE: Torque, "phase-torque", "T_k", "N·m", "motor torque in this phase";
    PHASE_PINION_PROCESS_FORCE: Force, "phase-pinion-process-force", "F_p1,k", "N", "cutting force on one pinion in this phase";
    PHASE_FIRST_FORCE: Force, "phase-first-force", "F_1,k", "N", "force of the first of two pinions in this phase";
    PHASE_SECOND_FORCE: Force, "phase-second-force", "F_2,k", "N", "force of the second of two pinions in this phase";
    PHASE_SECOND_TORQUE: Torque, "phase-second-torque", "T_2,k", "N·m", "torque of the second motor in this phase";
    PHASE_OWN_TORQUE: Torque, "phase-own-torque", "T_o,k", "N·m", "larger torque of the two motors in this phase, without racking";
    PHASE_PAIR_TORQUE: Torque, "phase-pair-torque", "T_m,k", "N·m", "torque by which each of the two motors counts in the power of this phase";
    PHASE_LARGEST_TORQUE: Torque, "phase-largest-torque", "T̂_k", "N·m", "largest motor torque in this phase, with racking or bias";
}
