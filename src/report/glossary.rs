//! The words of the trade in plain language, each under the slug that links point to.

use serde::Serialize;

/// One word of the trade.
#[derive(Debug, Clone, Copy, Serialize)]
pub struct Entry {
    /// The link target that Markdown makes of the heading.
    pub slug: &'static str,
    /// The heading.
    pub word: &'static str,
    /// What it means.
    pub text: &'static str,
}

const fn entry(slug: &'static str, word: &'static str, text: &'static str) -> Entry {
    Entry { slug, word, text }
}

/// Every word, by slug.
pub const GLOSSARY: &[Entry] = &[
    entry(
        "accuracy-of-positioning",
        "Accuracy of positioning",
        "How far a commanded position can be missed over the whole travel, from both directions, scatter included. \
         ISO 230-2 calls it A up to 2 m of travel; above that the systematic deviation E is stated.",
    ),
    entry(
        "admissible",
        "Admissible",
        "A drive is admissible if it keeps every binding rule that the brief does not set aside.",
    ),
    entry(
        "advice",
        "Advice",
        "A rule of good practice. A drive that does not follow it may still be chosen, but it counts against the drive and is told.",
    ),
    entry(
        "backlash",
        "Backlash",
        "Play between drive and slide: what the motor turns at a reversal before the slide follows.",
    ),
    entry(
        "ball-screw",
        "Ball screw",
        "A threaded shaft and a nut with balls rolling between them. The shaft turns, the nut and the slide move.",
    ),
    entry(
        "ball-screw-with-driven-nut",
        "Ball screw with driven nut",
        "A ball screw whose shaft stands still while the nut turns. A long shaft that does not turn is not thrown outward, so it may be longer or faster.",
    ),
    entry(
        "bias",
        "Bias",
        "The force by which two pinions on one rack press against each other, so that no play is crossed.",
    ),
    entry(
        "binding-rule",
        "Binding rule",
        "A rule that a drive must keep. One that breaks it is left out, unless the brief sets the rule aside by name and with a reason.",
    ),
    entry(
        "error-at-the-tool",
        "Error at the tool",
        "How far the tool may stand from where it should, to either side, all axes added by squares, at the reference temperature. \
         The accuracy of one axis is the whole band, from side to side.",
    ),
    entry("gearbox-ratio", "Gearbox ratio", "Turns of the motor for one turn of the pinion, such as 7:1."),
    entry(
        "grade",
        "Grade",
        "How precisely the thread of a screw is made, by ISO 3408-3. P grades are for positioning, T grades for \
         transport; a smaller number is more precise.",
    ),
    entry(
        "helical-rack",
        "Helical rack",
        "A toothed bar with a pinion rolling on it. The teeth stand at an angle, so several share the force and it \
         runs more smoothly than with straight teeth.",
    ),
    entry(
        "inertia-ratio",
        "Inertia ratio",
        "Inertia of all that the motor moves, over the inertia of the motor itself.",
    ),
    entry("lead", "Lead", "How far the nut moves in one turn of the screw."),
    entry(
        "linear-scale",
        "Linear scale",
        "A measuring strip along the axis. It measures the slide itself instead of the turning of the motor.",
    ),
    entry(
        "merit",
        "Merit",
        "The one number by which drives are compared; less is better. It is the cost over the life, or what the brief weighs, made \
         larger by a few percent for each advice that is not met.",
    ),
    entry("module", "Module", "The size of a tooth: pitch of the teeth over π, in millimetres."),
    entry("pinion", "Pinion", "The small gear that rolls on a rack."),
    entry(
        "preload",
        "Preload",
        "A force built into the nut or bearing that takes away its play and makes it stiffer, at the price of drag.",
    ),
    entry(
        "rack-with-two-pinions",
        "Rack with two pinions",
        "Two helical pinions on one rack, one pressed against the other so that there is no play.",
    ),
    entry(
        "racking",
        "Racking",
        "Where two drives move the two sides of a wide slide, they never push quite alike. What one side bears more than the other \
         turns the slide askew; that is racking, and both drives bear it on top of their work.",
    ),
    entry(
        "repeatability",
        "Repeatability",
        "How far the slide can stop from where it stopped before, for the same command (ISO 230-2: R).",
    ),
    entry(
        "reversal-error",
        "Reversal error",
        "The difference between stopping at a position from the left and from the right (ISO 230-2: B).",
    ),
    entry(
        "speed-reserve",
        "Speed reserve",
        "What the speeds of a drive leave of their limits: 100 % minus the utilisation of the one that leaves least.",
    ),
    entry(
        "straight-rack",
        "Straight rack",
        "A toothed bar with a pinion rolling on it, the teeth square to the travel.",
    ),
    entry(
        "table-of-corrections",
        "Table of corrections",
        "The finished axis is measured from end to end, and the control takes the errors found out of every move. It \
         takes out what repeats over the travel; play, temperature and errors within one turn stay.",
    ),
    entry(
        "utilisation",
        "Utilisation",
        "Demand over limit. 100 % is just allowed; the largest one says what limits the drive.",
    ),
    entry(
        "whip",
        "Whip",
        "Above a certain speed a turning screw bows outward like a skipping rope. Longer and thinner screws whip \
         sooner; the speed falls with the square of the length.",
    ),
    entry(
        "whole-life-cost",
        "Whole-life cost",
        "Price to buy and fit, plus energy and upkeep over the years of service, discounted to today.",
    ),
];

/// Whether the glossary explains this slug.
pub fn explains(slug: &str) -> bool {
    GLOSSARY.iter().any(|entry| entry.slug == slug)
}
