//! Position loop, contour, settling.

use crate::ledger::{About, Characteristic};
use crate::units::*;

characteristics! {
    after super::exchange::END;

    MASS_RATIO: Ratio, "mass-ratio", "λ_m", "1", "mass at the slide over that of all that turns, seen at the slide";
    FREE_MODE: Frequency, "free-mode", "f_r", "Hz", "resonance of slide and motor against each other, motor free";
    FEEDBACK_KIND: Ratio, "feedback-kind", "f_sc", "1", "0: measured at the motor, 1: at the slide";
    GAIN_MARGIN: Ratio, "gain-margin", "x_K", "1", "share of the computed loop gain that is used";
    LOOP_GAIN: LoopGain, "loop-gain", "K_v", "1/s", "largest gain of the position loop that the mechanics allow";
    FEED_FORWARD: Ratio, "feed-forward", "f_ff", "%", "share of the speed that the control feeds forward";
    TOP_FOLLOWING_ERROR: Length, "top-following-error", "Δ_v", "mm", "how far the slide lags behind at top speed";
    CUTTING_FOLLOWING_ERROR: Length, "cutting-following-error", "Δ_c", "mm", "how far the slide lags behind at cutting speed";
    REVERSAL_SPIKE: Length, "reversal-spike", "x_sp", "µm", "largest deviation when friction turns its sign, for a moment";
    JERK_RESIDUE: Length, "jerk-residue", "x_jr", "µm", "amplitude that one ramp of jerk leaves swinging";
    JERK_ENVELOPE: Length, "jerk-envelope", "x_je", "µm", "amplitude that the ramps of a move leave swinging at the most";
    MODE_DAMPING: Ratio, "mode-damping", "D_1", "1", "damping ratio of the slide on its drive";
    CONTOUR_SPEED: Velocity, "contour-speed", "v_R", "m/min", "path speed on the circle of the brief";
    CONTOUR_RADIUS: Length, "contour-radius", "R_c", "mm", "radius of the circle of the brief";
    PLAIN_CIRCLE_ERROR: Length, "plain-circle-error", "ΔR_0", "µm", "loss of radius on that circle by the position loop alone";
    FED_CIRCLE_ERROR: Length, "fed-circle-error", "ΔR_1", "µm", "loss of radius with the give of the drive; negative where the circle grows";
    CONTOUR_ERROR: Length, "contour-error", "e_R", "µm", "radius error on that circle, the greater in amount";
    REQUIRED_CONTOUR: Length, "required-contour", "e_R,r", "µm", "radius error that the brief allows";
    SETTLING_WINDOW: Length, "settling-window", "w_s", "µm", "window in which the slide has settled, to either side";
    SETTLING_TIME: Time, "settling-time", "t_se", "ms", "time from the end of a move until the slide stays in the window";
    REQUIRED_SETTLING: Time, "required-settling", "t_se,r", "ms", "time that the brief allows for settling";
}
