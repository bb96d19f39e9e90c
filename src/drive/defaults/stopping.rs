//! Values of stopping that nobody states, and the same in words for the list of assumptions.

use super::Told;
use crate::units::*;

/// From the demand for an emergency stop to full braking.
pub fn reaction() -> Time {
    Time::of_si(0.04)
}
/// Force of the end buffer over the push of the drive.
pub fn buffer_share() -> Ratio {
    Ratio::of_si(3.0)
}
/// Mean over largest force of a buffer.
pub fn buffer_efficiency() -> Ratio {
    Ratio::of_si(0.8)
}
/// Losses of power in full motion, a year.
pub fn power_losses() -> Ratio {
    Ratio::of_si(12.0)
}
/// Load with which a brake is tested over the load at rest.
pub fn brake_test_factor() -> Ratio {
    Ratio::of_si(1.3)
}

/// The values above in words.
pub fn told() -> Vec<Told> {
    vec![
        (
            "stop-reaction",
            significant(reaction().si() * 1e3, 3),
            "ms",
            "from the demand for an emergency stop to full braking, 20 to 60 ms (common practice, no source)",
        ),
        (
            "buffer-share",
            significant(buffer_share().si(), 3),
            "1",
            "force of the end buffer over the push of the drive at its set torque limit (common practice, no source)",
        ),
        (
            "buffer-efficiency",
            significant(buffer_efficiency().si(), 3),
            "1",
            "mean over largest force of a hydraulic buffer, 0.8 to 0.9 (common practice, no source)",
        ),
        (
            "power-losses",
            significant(power_losses().si(), 3),
            "a year",
            "losses of power in full motion, one a month, for the wear of the brake (common practice, no source)",
        ),
        (
            "brake-test-factor",
            significant(brake_test_factor().si(), 3),
            "1",
            "brakes that hold a load are tested with about 1.3 times the load at rest (from memory, weak: the text was not found); the risk assessment says it",
        ),
    ]
}
