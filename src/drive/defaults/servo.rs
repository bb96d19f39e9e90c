//! Values of the position loop that nobody states, and the same in words for the list of assumptions.

use super::Told;
use crate::units::*;

/// Share of the speed that the control feeds forward where the brief asks for no contour.
pub fn feed_forward() -> Ratio {
    Ratio::of_si(0.0)
}
/// Share of the computed loop gain that is used.
pub fn gain_margin() -> Ratio {
    Ratio::of_si(0.7)
}
/// Damping ratio of the slide that swings on its drive.
pub fn mode_damping() -> Ratio {
    Ratio::of_si(0.03)
}

/// The values above in words.
pub fn told() -> Vec<Told> {
    vec![
        (
            "feed-forward",
            significant(feed_forward().si() * 100.0, 3),
            "%",
            "no speed is fed forward where the lag of the loop is told, unless a contour of the brief says so; the largest lag (common practice, no source)",
        ),
        (
            "gain-margin",
            significant(gain_margin().si(), 3),
            "1",
            "the lag of the drive's torque loop takes about a quarter to a third of the gain, by the same sweep with lag (derived; common practice, no source, for the value)",
        ),
        (
            "mode-damping",
            significant(mode_damping().si(), 3),
            "1",
            "damping ratio of a slide on its drive with rolling guides, 0.03 to 0.1 (common practice, no source)",
        ),
    ]
}
