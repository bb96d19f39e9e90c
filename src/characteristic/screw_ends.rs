//! The ends of the screw and their bearings.

use crate::ledger::{About, Characteristic};
use crate::units::*;

characteristics! {
    after super::screw::END;

    SUPPORT_PAIRS: Ratio, "support-pairs", "n_v", "1", "pairs of supports that travel with the nut";
    SPANS: Ratio, "spans", "n_sp", "1", "spans that the supports make of the free length";
    SUPPORT_SPEED_LIMIT: Velocity, "support-speed-limit", "v_v", "m/min", "highest speed of the supports that travel with the nut";
    SUPPORT_SIZE_MASS: Mass, "support-size-mass", "m_v32", "kg", "mass of the supports of a screw of 32 mm";
    SUPPORT_MASS: Mass, "support-mass", "m_v", "kg", "mass of the supports of one screw";
    SUPPORT_ROOM_SHARE: Ratio, "support-room-share", "x_v", "1", "length of screw that the supports take up, over its nominal diameter";
    SUPPORT_ROOM: Length, "support-room", "L_v", "mm", "length of screw that the supports take up";
    SLENDERNESS: Ratio, "screw-slenderness", "Λ", "1", "free length of the screw over its nominal diameter";
    BEARING_TILT_STIFFNESS: TorsionalStiffness, "bearing-tilt-stiffness", "k_φ", "kN·m/rad", "stiffness of one end's bearing or clamp against tilting";
    FIRST_FIXITY: Ratio, "first-end-fixity", "κ_1", "1", "tilt stiffness of the first end of the weaker outer span over the bending stiffness of the span";
    SECOND_FIXITY: Ratio, "second-end-fixity", "κ_2", "1", "tilt stiffness of its second end over the bending stiffness of the span";
    EIGENVALUE_SQUARED: Ratio, "eigenvalue-squared", "λ²", "1", "bending eigenvalue of the held screw, squared, for its free length";
    SPAN_BUCKLING_FACTOR: Ratio, "span-buckling-factor", "N_sp", "1", "buckling factor of the held screw with the nut ignored";
    EULER_LOAD: Force, "euler-load", "F_E", "kN", "Euler load of the held screw with the nut ignored";
    PRESSED_LENGTH: Length, "pressed-length", "L_c", "mm", "longest part of the screw that can be pressed together";
    PRESSED_FIXITY: Ratio, "pressed-fixity", "κ_c", "1", "tilt stiffness of the end of the pressed part over its bending stiffness";
    NUT_FIXITY: Ratio, "nut-fixity", "κ_n", "1", "tilt stiffness of the nut at the end of the pressed part, over its bending stiffness";
    BUCKLING_FACTOR: Ratio, "buckling-factor", "N", "1", "buckling factor of the pressed part, supported by the nut";
    MOTION_PRESSING_FORCE: Force, "motion-pressing-force", "F_p0", "N", "largest force of the duty that presses the screw together, without racking";
    PRESSING_FORCE: Force, "pressing-force", "F_p,max", "N", "largest force of the nut that presses the screw together";
    COLUMN_USE: Ratio, "column-use", "x_col", "1", "pressing force over buckling load at the worst place of the nut";
    STRETCH: TemperatureInterval, "stretch", "ΔT_v", "K", "stretch of the screw when mounted, as the warming that would undo it";
    STRETCH_LEFT: TemperatureInterval, "stretch-left", "ΔT_l", "K", "stretch that the warm screw has left";
    SCREW_EXPANSION: Expansion, "screw-expansion", "α_s", "µm/(m·K)", "coefficient of thermal expansion of the screw";
    STRETCH_FORCE: Force, "stretch-force", "F_v", "N", "tension of the stretched screw, cold";
    WARM_AXIAL_FORCE: Force, "warm-axial-force", "F_w,s", "N", "axial force of the warm screw without load, tension positive";
    THERMAL_COMPRESSION: Force, "thermal-compression", "F_th", "N", "compression of the warm screw between its ends";
    STANDING_FORCE: Force, "standing-force", "F_st", "N", "force that each held end bears without any load";
    END_SHARE: Ratio, "end-share", "x_e", "1", "share of the force on the nearer end, nut at the end of its travel";
    BEARING_SHARE: Ratio, "bearing-share", "x_em", "1", "cubic mean over the travel of the share of the force that one bearing takes";
    BEARING_STANDING_FORCE: Force, "bearing-standing-force", "F_st,b", "N", "force that stands on one bearing without any load";
    END_FORCE: Force, "end-force", "F_e", "N", "largest axial force on one end of the screw";
    SCREW_STRESS: Pressure, "screw-stress", "σ_s", "MPa", "stress at the root of the screw from axial force and torque";
    JOURNAL_STRESS: Pressure, "journal-stress", "σ_j", "MPa", "stress in the journal of the screw from axial force and torque";
    LEAD_COMPENSATION: Length, "lead-compensation", "c_v", "µm", "travel compensation to order with a stretched screw";
    BEARING_STATIC_RATING: Force, "bearing-static-rating", "C_0b", "kN", "static axial rating of the screw bearing, or of the bearing of a driven nut";
    BEARING_PEAK: Force, "bearing-peak", "F_b1", "N", "largest load on the loaded rows of the bearing, preload included";
    BEARING_STATIC_SAFETY: Ratio, "bearing-static-safety", "s_0b", "1", "static safety of the screw bearing, or of the bearing of a driven nut";
    THRUST_ENDS: Ratio, "thrust-ends", "n_t", "1", "ends that take axial force";
    SUPPORT_ENDS: Ratio, "support-ends", "n_u", "1", "ends that are only supported radially";
    BEARING_BORE: Length, "bearing-bore", "d_b", "mm", "bore of the screw bearing";
    BEARING_RATING: Force, "bearing-rating", "C_b", "kN", "dynamic axial rating of the screw bearing, or of the bearing of a driven nut";
    BEARING_PRELOAD: Force, "bearing-preload", "F_vb", "kN", "preload of the screw bearing, or of the bearing of a driven nut";
    BEARING_STIFFNESS: Stiffness, "bearing-stiffness", "k_ax", "N/µm", "axial stiffness of the screw bearing";
    BEARING_SPEED_LIMIT: AngularVelocity, "bearing-speed-limit", "n_b", "1/min", "highest speed of the screw bearing";
    BEARING_SET_DRAG: Torque, "bearing-set-drag", "T_b1", "N·m", "drag of one set of screw bearings";
    BEARING_MASS: Mass, "bearing-mass", "m_b", "kg", "mass of one set of screw bearings";
    BEARING_DRAG: Torque, "bearing-drag-torque", "T_b", "N·m", "drag of all screw bearings together, or of the bearing of a driven nut";
    BARE_WHIP_SPEED: AngularVelocity, "bare-whip-speed", "n_cr0", "1/min", "first bending critical speed of the screw without axial force";
    WHIP_FACTOR: Ratio, "whip-factor", "x_w", "1", "critical speed under the axial force over that without";
    WHIP_SPEED: AngularVelocity, "whip-speed", "n_cr", "1/min", "first bending critical speed of the screw at its axial force";
    COLUMN_LOAD: Force, "column-load", "F_cr", "kN", "load at which the longest pressed part of the screw buckles";
    BEARING_LIFE_HOURS: Time, "bearing-life-hours", "L_bh", "h", "life of the screw bearing, or of the bearing of a driven nut, in working hours";
    SCREW_STIFFNESS: Stiffness, "screw-stiffness", "k_s", "N/µm", "axial stiffness of screw and bearings, or of screw and clamps, at the worst nut position";
    TURN_HELD_ENDS: Ratio, "turn-held-ends", "n_h", "1", "ends at which the screw is held against turning: the motor's, or both clamps";
    SCREW_TORSION: Stiffness, "screw-torsional-stiffness-linear", "k_t", "N/µm", "torsional stiffness of the screw, seen along the travel";
    COUPLING_LINEAR_STIFFNESS: Stiffness, "coupling-linear-stiffness", "k_cl", "N/µm", "stiffness of coupling or belt, seen along the travel";
    SCREW_SAG: Length, "screw-sag", "f_s", "mm", "sag of the screw under its own weight";
}
