//! Accuracy.

use crate::ledger::{About, Characteristic};
use crate::units::*;

characteristics! {
    after super::motor::END;

    SCALE_ERROR_RATE: Ratio, "scale-error-rate", "e_r", "µm/m", "error band of the linear scale a metre";
    SCALE_LEAST_ERROR: Length, "scale-least-error", "e_0", "µm", "error band of a short linear scale";
    SECTION_LIMIT: Length, "section-limit", "2 m", "mm", "longest travel on which accuracy is stated as one figure";
    SECTION_LENGTH: Length, "section-length", "s_2", "mm", "length of the section on which accuracy is stated: 2 m, or the travel where shorter";
    SECTION_TRAVEL_VARIATION: Length, "section-travel-variation", "v_u2", "µm", "permissible travel variation over the section";
    SCALE_LENGTH_LIMIT: Length, "scale-length-limit", "L_sc", "mm", "longest travel that the feedback measures";
    SCALE_SPEED_LIMIT: Velocity, "scale-speed-limit", "v_sc", "m/min", "highest speed that the feedback follows";
    MEASURING_STEP: Length, "measuring-step", "q_s", "nm", "measuring step of the feedback at the slide";
    FRICTION_SCATTER: Ratio, "friction-scatter", "x_s", "1", "part of the friction that varies from approach to approach";
    COMPENSATED_PLAY: Ratio, "compensated-play", "x_j", "1", "part of the play that the controller compensates";
    LONG_ERROR: Length, "long-error", "M_raw", "µm", "error that builds up over the full travel, before a table of corrections";
    LONG_ERROR_LEFT: Length, "long-error-left", "M_left", "µm", "what is left of it after a table of corrections, if there is one";
    SECTION_LONG_ERROR: Length, "section-long-error", "M_raw2", "µm", "error that builds up over 2 m, before a table of corrections";
    SECTION_LONG_ERROR_LEFT: Length, "section-long-error-left", "M_left2", "µm", "what is left of it after a table of corrections, if there is one";
    TABLE_RESIDUAL: Ratio, "table-residual", "x_map", "1", "part of a mapped error that is left between the points of the table";
    TABLE_UNCERTAINTY: Length, "table-uncertainty", "U_0", "µm", "uncertainty of the measurement behind the table (k = 2), whatever the length";
    TABLE_UNCERTAINTY_RATE: Ratio, "table-uncertainty-rate", "U_1", "µm/m", "uncertainty of the measurement behind the table (k = 2), a metre";
    TABLE_DRIFT: Length, "table-drift", "d_map", "µm", "drift from one measurement to the next";
    STATED_TILT: Angle, "guide-tilt", "θ_g", "arcsec", "pitch or yaw of the slide over the travel, full range, as stated";
    WAVINESS_HEIGHT: Length, "guide-waviness-height", "h_g", "µm", "waviness of the guides, crest to trough";
    WAVINESS_LENGTH: Length, "guide-waviness-length", "Λ_g", "mm", "wavelength of the waviness of the guides";
    WAVINESS_TILT: Angle, "waviness-tilt", "θ_wg", "arcsec", "tilt of the slide by the waviness of the guides, full range";
    SLIDE_TILT: Angle, "slide-tilt", "θ_s", "arcsec", "tilt of the slide over the travel, full range";
    TOOL_ARM: Length, "tool-arm", "h_t", "mm", "from the line that measures across to the tool";
    TILT_ERROR: Length, "tilt-error", "e_θ", "µm", "error at the tool by tilt of the slide";
    POSITION_ERROR: Length, "position-error", "M", "µm", "range of the mean position deviation over the full travel";
    SECTION_POSITION_ERROR: Length, "section-position-error", "M_2", "µm", "range of the mean position deviation over 2 m";
    PLAY: Length, "play", "j_p", "µm", "play of the drive along the travel";
    LOOP_PLAY: Length, "loop-play", "j_L", "µm", "play of the drive inside the loop of a linear scale";
    LOOP_PLAY_SHARE: Ratio, "loop-play-share", "x_jL", "1", "part of the accuracy asked that play inside the loop of a linear scale takes up";
    LOST_MOTION: Length, "lost-motion", "u_f", "µm", "friction lost motion";
    REVERSAL_ERROR: Length, "reversal-error", "B", "µm", "reversal error";
    SCATTER: Length, "scatter", "s_x", "µm", "standard deviation of a position";
    DRIVE_SCATTER: Length, "drive-scatter", "s_d", "µm", "scatter from measuring step and friction";
    LEAST_SCATTER: Length, "least-scatter", "s_0m", "µm", "scatter that no drive of its kind falls below";
    REPEATABILITY: Length, "repeatability", "R", "µm", "bidirectional repeatability";
    ACCURACY: Length, "accuracy", "A", "µm", "bidirectional accuracy (above 2 m of travel the systematic deviation E)";
    SECTION_ACCURACY: Length, "section-accuracy", "A_2", "µm", "bidirectional accuracy on any 2 m section";
    TOOL_ERROR: Length, "tool-error", "e_t", "µm", "half band that the axis adds at the tool";
    THERMAL_GROWTH: Length, "thermal-growth", "ΔL", "µm", "growth of the measuring element over the travel in service";
}
