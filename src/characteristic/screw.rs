//! The ball screw with its nut.

use crate::ledger::{About, Characteristic};
use crate::units::*;

characteristics! {
    after super::force::END;

    NOMINAL_DIAMETER: Length, "nominal-diameter", "d_0", "mm", "nominal diameter of the screw";
    LEAD: Length, "lead", "P_h", "mm", "lead of the screw";
    BALL_CIRCLE_DIAMETER: Length, "ball-circle-diameter", "D_pw", "mm", "ball circle diameter";
    BALL_DIAMETER: Length, "ball-diameter", "D_w", "mm", "ball diameter";
    ROOT_DIAMETER: Length, "root-diameter", "d_r", "mm", "root diameter of the screw";
    CORE_DIAMETER: Length, "core-diameter", "d_c", "mm", "diameter of the screw that carries axial load";
    NUT_LENGTH: Length, "nut-length", "L_n", "mm", "length of the nut";
    NUT_MASS: Mass, "nut-mass", "m_nut", "kg", "mass of the nut";
    DYNAMIC_RATING: Force, "dynamic-rating", "C_a", "kN", "basic dynamic axial load rating of the nut";
    STATIC_RATING: Force, "static-rating", "C_0a", "kN", "basic static axial load rating of the nut";
    SIZE_DYNAMIC_RATING: Force, "size-dynamic-rating", "C_a,g", "kN", "dynamic rating of the size when ground";
    SIZE_STATIC_RATING: Force, "size-static-rating", "C_0a,g", "kN", "static rating of the size when ground";
    RATING_FACTOR: Ratio, "rating-factor", "f_C", "1", "rating of this manufacture over that of a ground screw";
    LENGTH_PER_DIAMETER: Ratio, "length-per-diameter", "L/d_0", "1", "longest screw of this grade over its diameter";
    BLANK_LENGTH: Length, "blank-length", "L_b", "mm", "longest blank of this manufacture";
    DIAMETER_LIMIT: Length, "diameter-limit", "d_lim", "mm", "largest nominal diameter of this manufacture";
    SCREW_YIELD_STRENGTH: Pressure, "screw-yield-strength", "S_y", "MPa", "yield strength of the screw core";
    RATED_NUT_STIFFNESS: Stiffness, "rated-nut-stiffness", "R_n", "N/µm", "stiffness of the nut at its reference preload of 5 % of the dynamic rating";
    PRELOAD_SHARE: Ratio, "preload-share", "x_pr", "1", "preload over dynamic rating";
    NUT_CLEARANCE: Length, "nut-clearance", "s_n", "µm", "axial clearance of the nut";
    CIRCULATION_LIMIT: CirculationSpeed, "circulation-limit", "DN_lim", "mm/min", "permissible ball circulation speed";
    SCREW_LENGTH_LIMIT: Length, "screw-length-limit", "L_max", "mm", "longest screw made in this size and grade";
    SCREW_FRICTION: Ratio, "screw-friction", "µ_s", "1", "apparent friction coefficient of the nut";
    GRADE_NUMBER: Ratio, "grade-number", "Gr", "1", "lead accuracy grade";
    POSITIONING: Ratio, "positioning-grade", "Pos", "1", "one for a positioning screw, zero for a transport screw";
    VARIATION_300: Length, "variation-300", "v_300p", "µm", "permissible travel variation within 300 mm";
    TURN_VARIATION: Length, "turn-variation", "v_2πp", "µm", "permissible travel variation within one turn";
    JOURNAL_LENGTH: Length, "journal-length", "L_j", "mm", "both journals of the screw together";
    FREE_LENGTH: Length, "free-length", "L_f", "mm", "free length of the screw, bearing to bearing";
    SCREW_LENGTH: Length, "screw-length", "L_s", "mm", "length of the screw";
    SCREW_SPEED: AngularVelocity, "screw-speed", "n_scr", "1/min", "speed of screw or driven nut at top speed of the axis";
    MEAN_SCREW_SPEED: AngularVelocity, "mean-screw-speed", "n_sm", "1/min", "mean speed of the screw over the working time; none where the screw stands";
    CIRCULATION_SPEED: CirculationSpeed, "circulation-speed", "DN", "mm/min", "ball circulation speed at top speed of the axis";
    LEAD_ANGLE: Angle, "lead-angle", "β", "deg", "lead angle of the screw";
    SCREW_EFFICIENCY: Ratio, "screw-efficiency", "η_1", "1", "efficiency of the nut, turning into thrust";
    BACK_DRIVING_EFFICIENCY: Ratio, "back-driving-efficiency", "η_2", "1", "efficiency of the nut, thrust into turning";
    PRELOAD: Force, "preload", "F_pr", "N", "preload of the nut";
    PRELOAD_DRAG: Torque, "preload-drag-torque", "T_p", "N·m", "drag torque of the preload";
    SCREW_LIFE: Revolutions, "screw-life", "L_10", "Mrev", "nominal life of the nut, 90 % survive";
    SCREW_LIFE_HOURS: Time, "screw-life-hours", "L_10h", "h", "nominal life of the nut in working hours";
    LOADED_HALF_PEAK: Force, "loaded-half-peak", "F_1", "N", "largest load on one half of the preloaded nut";
    STATIC_SAFETY: Ratio, "static-safety", "s_0", "1", "static safety of the nut";
    NUT_STIFFNESS: Stiffness, "nut-stiffness", "k_n", "N/µm", "stiffness of the nut at its preload";
    SCREW_INERTIA: MomentOfInertia, "screw-inertia", "J_s", "kg·cm²", "moment of inertia of the screw";
    SCREW_MASS: Mass, "screw-mass", "m_s", "kg", "mass of the screw";
    NUT_HEAT: Power, "nut-heat", "P_n", "W", "mean heat that goes into the screw";
    SCREW_WARMING: TemperatureInterval, "screw-warming", "ΔT_s", "K", "warming of the screw over its surroundings";
    TEMPERATURE_RISE: TemperatureInterval, "temperature-rise", "ΔT_m", "K", "temperature of the measuring element over the reference temperature";
    EXPANSION: Expansion, "expansion", "α", "µm/(m·K)", "coefficient of thermal expansion of the measuring element";
    SCREW_WEIGHT_ON_NUT: Force, "screw-weight-on-nut", "G_s", "N", "weight of the screw that the nut carries sideways";
    MEAN_TRAVEL_DEVIATION: Length, "mean-travel-deviation", "e_p", "µm", "tolerance of the mean travel over the full travel";
    TRAVEL_VARIATION: Length, "travel-variation", "v_up", "µm", "permissible travel variation over the full travel";
    SECTION_TRAVEL_DEVIATION: Length, "section-travel-deviation", "e_2m", "µm", "tolerance of the mean travel over 2 m";
}
