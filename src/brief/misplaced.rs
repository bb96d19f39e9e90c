//! Keys that a brief does not know in a place: where they belong, or what is written in their stead.
//!
//! Method: a key that is known in another group is told with that group; a few words that people write first are told with the
//! key that is meant. Limits: the words are common sense; what is in neither list is told by its spelling.

use super::{axis, load};

/// Words of an axis that people write first, with what is written in their stead.
const OF_AXIS: &[(&str, &str)] = &[
    ("motor", "the motor is chosen for you; `drives` says how many drives move the axis side by side"),
    ("motors", "did you mean `drives`? The motors themselves are chosen for you"),
    ("gearbox", "the gearbox is chosen for you"),
    ("brake", "a brake is chosen wherever the load could move the axis; `direction` says whether it could"),
    ("screw", "`families` says which kinds of drive are considered"),
    ("rack", "`families` says which kinds of drive are considered"),
    ("drive", "`families` says which kinds of drive are considered, `drives` how many move the axis side by side"),
    ("stiffness", "`cutting-deflection` says how far the drive may give under the cutting force"),
    ("weight", "did you mean `moved-mass`?"),
    ("load", "did you mean `moved-mass`?"),
    ("stroke", "did you mean `travel`?"),
    ("length", "did you mean `travel`?"),
    ("backlash", "did you mean `reversal`?"),
    ("play", "did you mean `reversal`?"),
    ("precision", "did you mean `accuracy`?"),
    ("tolerance", "did you mean `accuracy`?"),
    ("scale", "`feedback` says whether a linear scale measures the axis"),
];

/// The same of the whole machine.
const OF_MACHINE: &[(&str, &str)] = &[
    ("budget", "did you mean `purchase` in the group `limits`?"),
    ("price", "did you mean `purchase` in the group `limits`?"),
    ("cost", "did you mean `purchase` in the group `limits`?"),
    ("life", "did you mean `years-in-service`?"),
    ("service-life", "did you mean `years-in-service`?"),
    ("surroundings", "did you mean `environment`?"),
    ("name", "did you mean `machine`?"),
    ("weights", "did you mean `prefer`?"),
    ("preferences", "did you mean `prefer`?"),
];

/// The same of its limits.
const OF_LIMITS: &[(&str, &str)] = &[
    ("budget", "did you mean `purchase`?"),
    ("price", "did you mean `purchase`?"),
    ("cost", "did you mean `purchase`?"),
    ("accuracy", "did you mean `tool-point-error`? The accuracy of an axis stands in that axis"),
    ("delivery", "did you mean `lead-time`?"),
];

const AXIS_KEY: &str = "is a key of an axis: write it below the name of its axis in `axes`";
const MACHINE_KEY: &str = "is a key of the whole machine: write it at the top of the file";
const LIMIT_KEY: &str = "is a key of the group `limits`";

/// Help for a key that an axis does not know.
pub(super) fn in_axis(key: &str) -> Option<String> {
    told(key, &[(load::KEYS, MACHINE_KEY), (load::LIMITS, LIMIT_KEY)], OF_AXIS)
}

/// Help for a key that a machine does not know.
pub(super) fn in_machine(key: &str) -> Option<String> {
    told(key, &[(axis::KEYS, AXIS_KEY), (load::LIMITS, LIMIT_KEY)], OF_MACHINE)
}

/// Help for a key that the limits of a machine do not know.
pub(super) fn in_limits(key: &str) -> Option<String> {
    told(key, &[(load::KEYS, MACHINE_KEY)], OF_LIMITS)
}

fn told(key: &str, elsewhere: &[(&[&str], &str)], meant: &[(&str, &str)]) -> Option<String> {
    let meant = meant.iter().find(|(word, _)| *word == key).map(|(_, help)| (*help).to_string());
    meant.or_else(|| {
        let (_, belongs) = elsewhere.iter().find(|(keys, _)| keys.contains(&key))?;
        Some(format!("`{key}` {belongs}"))
    })
}
