//! Stiffness and dynamics.

use crate::ledger::{About, Characteristic};
use crate::units::*;

characteristics! {
    after super::rack::END;

    TOTAL_STIFFNESS: Stiffness, "total-stiffness", "k", "N/µm", "stiffness of one drive from motor to slide at the worst place";
    FIRST_MODE: Frequency, "first-mode", "f_1", "Hz", "first resonance of the axis on its drive, motor held";
    FIRST_MODE_TARGET: Frequency, "first-mode-target", "f_w", "Hz", "first resonance that suits an axis of this moved mass and travel";
    CUTTING_DEFLECTION: Length, "cutting-deflection", "u_c", "mm", "give of the drive under the cutting force";
    CUTTING_SHIFT: Length, "cutting-shift", "u_s", "mm", "half of the way by which the cutting force moves the slide: give, and half of the play where the force turns round";
}
