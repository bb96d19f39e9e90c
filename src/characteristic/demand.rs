//! What the brief asks of the axis.

use crate::ledger::{About, Characteristic};
use crate::units::*;

characteristics! {
    after 0;

    TRAVEL: Length, "travel", "s", "mm", "travel of the axis";
    OVERTRAVEL: Length, "overtravel", "s_o", "mm", "overtravel at each end";
    SPEED: Velocity, "speed", "v", "m/min", "highest speed of the axis";
    ACCELERATION: Acceleration, "acceleration", "a", "m/s²", "acceleration of the axis";
    JERK: Jerk, "jerk", "j_a", "m/s³", "jerk of the axis";
    INCLINATION: Angle, "inclination", "θ", "deg", "angle of the axis above the horizontal";
    MOVED_MASS: Mass, "moved-mass", "m_0", "kg", "mass of the slide without its drive and what it carries";
    CARRIED_MASS: Mass, "carried-mass", "m_c", "kg", "mass of the axes carried, with their drives";
    DRIVES: Ratio, "drives", "n_d", "1", "number of drives that move the axis together";
    CARRIAGE_REACH: Ratio, "carriage-reach", "y/B", "1", "farthest place of the carried axis from the middle, over the distance of the drives";
    GUIDE_FRICTION: Ratio, "guide-friction", "µ", "1", "friction coefficient of the guides";
    WIPER_FORCE: Force, "wiper-force", "F_w", "N", "drag of seals, wipers and covers together";
    COUNTERBALANCE_SHARE: Ratio, "counterbalance-share", "c_b", "1", "share of the weight that a counterbalance carries";
    COUNTERWEIGHT_SHARE: Ratio, "counterweight-share", "c_w", "1", "share of the weight that a hanging weight carries";
    COUNTERBALANCE_RIPPLE: Ratio, "counterbalance-ripple", "r_b", "1", "how far the force of a gas counterbalance varies over the stroke, to either side";
    GREATEST_BALANCE: Ratio, "greatest-balance", "c_max", "1", "largest share of the weight that is balanced anywhere on the stroke";
    ROPE_SLACKENING: Ratio, "rope-slackening", "x_ro", "1", "part of the pull of the counterweight's rope that the acceleration takes away";
    CABLE_CHAIN_MASS_PER_METRE: LinearMassDensity, "cable-chain-mass-per-metre", "q_ch", "kg/m", "mass of the cable chain with its cables, a length";
    CABLE_CHAIN_FRICTION: Ratio, "cable-chain-friction", "µ_ch", "1", "friction coefficient of the cable chain";
    CABLE_CHAIN_MASS: Mass, "cable-chain-mass", "m_ch", "kg", "mass of the cable chain that moves with the slide, on the mean";
    CABLE_CHAIN_FORCE: Force, "cable-chain-force", "F_ch", "N", "friction of the cable chain";
    DRAG_FORCE: Force, "drag-force", "F_wc", "N", "drag of seals, wipers, covers and cable chain together";
    PEOPLE_BELOW: Ratio, "people-below", "n_pe", "1", "one if people may be under the axis, zero if not";
    CUTTING_FORCE: Force, "cutting-force", "F_c", "N", "cutting force along the axis";
    CUTTING_BOTH_WAYS: Ratio, "cutting-both-ways", "w_c", "1", "one if the cutting force may act either way, zero if one way only";
    CUTTING_SPEED: Velocity, "cutting-speed", "v_c", "m/min", "speed of the axis while cutting";
    RELIABILITY: Ratio, "reliability", "Rel", "%", "share of like nuts and bearings that are to reach their life";
    SERVICE_HOURS: Time, "service-hours", "t_s", "h", "working hours over the service life";
    SERVICE_YEARS: Time, "service-years", "t_y", "years", "years of service";
    LONGEST_RAMP_TIME: Time, "longest-ramp-time", "t_ra", "s", "longest time from rest to speed, ramps of jerk included";
    LONGEST_CUT_TIME: Time, "longest-cut-time", "t_cu", "s", "longest time of one cut without a stop; zero if the duty has no cutting move";
    SLOWING_DISTANCE: Length, "slowing-distance", "s_v", "mm", "way from full speed to rest in a usual stop";
    USUAL_STROKE: Length, "usual-stroke", "s_u", "mm", "shortest stroke of the duty";
    TEMPERATURE_SWING: TemperatureInterval, "temperature-swing", "ΔT", "K", "how far the surroundings stray from the reference temperature";
    REQUIRED_ACCURACY: Length, "required-accuracy", "A_req", "mm", "accuracy that the brief asks over the full travel";
    REQUIRED_SECTION_ACCURACY: Length, "required-section-accuracy", "A2_req", "mm", "accuracy that the brief asks on any 2 m section";
    REQUIRED_REPEATABILITY: Length, "required-repeatability", "R_req", "mm", "repeatability that the brief asks";
    REQUIRED_REVERSAL: Length, "required-reversal", "B_req", "mm", "reversal error that the brief allows";
    REQUIRED_DEFLECTION: Length, "required-deflection", "u_req", "mm", "give under the cutting force that the brief allows";
    REQUIRED_FIRST_MODE: Frequency, "required-first-mode", "f_req", "Hz", "first resonance that the brief asks";
    REQUIRED_RIPPLE: Length, "required-ripple", "w_req", "µm", "ripple within one tooth or turn that the brief allows";
    BRACKET_STIFFNESS: Stiffness, "bracket-stiffness", "k_br", "N/µm", "stiffness of the bracket and housing that take the drive force";
    LEAD_TIME_LIMIT: Time, "lead-time-limit", "t_L,lim", "weeks", "longest delivery time that the brief allows";
    END_GAP: Length, "end-gap", "s_g", "mm", "gap from the end of overtravel to the bearing, each end";
    SCALE_MOUNT_STIFFNESS: Stiffness, "scale-mount-stiffness", "k_sc", "N/µm", "stiffness between a linear scale and the slide it measures";
}
