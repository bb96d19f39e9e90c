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
    POSITION_ERROR: Length, "position-error", "M", "µm", "range of the mean position deviation over the full travel";
    SECTION_POSITION_ERROR: Length, "section-position-error", "M_2", "µm", "range of the mean position deviation over 2 m";
    PLAY: Length, "play", "j_p", "µm", "play of the drive along the travel";
    LOOP_PLAY: Length, "loop-play", "j_L", "µm", "play of the drive inside the loop of a linear scale";
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
