//! How the position of an axis is measured and corrected, and what a tilt of its guides makes of it at the tool.

use super::defaults;
use super::reader::{Reader, above_zero_to, key_below, zero_to};
use super::types::Entry;
use crate::units::{Angle, Length};
use crate::yaml::Node;

/// Where the position is measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Feedback {
    /// Wherever it serves.
    Any,
    /// At the motor.
    Motor,
    /// On a linear scale at the slide.
    Scale,
}

impl Feedback {
    /// The words of a brief.
    pub const WORDS: [(&'static str, Feedback); 3] =
        [("any", Feedback::Any), ("motor", Feedback::Motor), ("scale", Feedback::Scale)];

    /// Its word.
    pub fn word(self) -> &'static str {
        word(&Feedback::WORDS, self)
    }
}

/// Whether the control corrects the position by a table that was measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Mapping {
    /// Where it serves.
    Any,
    /// Never.
    None,
    /// Always.
    Table,
}

impl Mapping {
    /// The words of a brief.
    pub const WORDS: [(&'static str, Mapping); 3] =
        [("any", Mapping::Any), ("none", Mapping::None), ("table", Mapping::Table)];

    /// Its word.
    pub fn word(self) -> &'static str {
        word(&Mapping::WORDS, self)
    }
}

fn word<T: PartialEq>(words: &'static [(&'static str, T)], wanted: T) -> &'static str {
    words.iter().find(|(_, choice)| *choice == wanted).map_or("", |(word, _)| word)
}

/// How the slide tilts on its guides, and how far the tool is from what measures.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tilt {
    /// Full range of pitch or yaw over the travel.
    pub angle: Option<Angle>,
    /// Waviness of the guides along the travel: height from crest to trough, and wavelength.
    pub waviness: Option<(Length, Length)>,
    /// From the line of the drive across to the tool.
    pub tool_to_drive: Length,
    /// From the line of a scale across to the tool.
    pub tool_to_scale: Entry<Length>,
}

/// The word of a key, or `any`, which is told.
pub(super) fn choice<T: Copy + 'static>(
    axis: &Node<'_>,
    key: &str,
    words: &'static [(&'static str, T)],
    any: T,
    reader: &mut Reader<'_>,
) -> Option<T> {
    match axis.get(key) {
        Some(node) => node.choice(words, reader.faults),
        None => {
            reader.assume(key_below(axis, key), "any", "", &defaults::LEFT_OPEN);
            Some(any)
        }
    }
}

/// What the brief says of tilt; `Some(None)` where it says nothing.
pub(super) fn tilt(axis: &Node<'_>, reader: &mut Reader<'_>) -> Option<Option<Tilt>> {
    let (angle_node, waviness_node) = (axis.get("guide-tilt"), axis.get("guide-waviness"));
    if angle_node.is_none() && waviness_node.is_none() {
        for key in ["tool-to-drive", "tool-to-scale"] {
            if let Some(node) = axis.get(key) {
                let help = "state `guide-tilt` or `guide-waviness`, or leave it out";
                node.fault(reader.faults, format!("`{key}` counts only with a tilt of the guides"), Some(help.into()));
            }
        }
        reader.assume(key_below(axis, "guide-tilt"), "0", "arcsec", &defaults::GUIDE_TILT);
        return Some(None);
    }
    let angle = reader.get::<Angle>(axis, "guide-tilt", zero_to(1.0, "deg"));
    let waviness = waviness_node.map(|node| {
        node.only_keys(&["height", "length"], reader.faults);
        let height = reader.need::<Length>(&node, "height", zero_to(10.0, "mm"));
        let length = reader.need::<Length>(&node, "length", above_zero_to(200.0, "m"));
        if axis.get("guide-base").is_none() {
            let help = "add `guide-base: 1 m`, the distance of the carriages along the travel";
            node.fault(reader.faults, "a waviness of the guides tilts a slide by its `guide-base`", Some(help.into()));
        }
        Some((height?, length?))
    });
    let arm = above_zero_to(50.0, "m");
    let tool_to_drive = reader.need::<Length>(axis, "tool-to-drive", arm);
    let tool_to_scale = match reader.get::<Length>(axis, "tool-to-scale", zero_to(50.0, "m")) {
        Some(value) => Some(Entry { value, stated: true }),
        None => tool_to_drive.map(|value| {
            let told = crate::units::significant(crate::units::Measure::si(value) * 1e3, 6);
            reader.assume(key_below(axis, "tool-to-scale"), told, "mm", &defaults::TOOL_TO_SCALE);
            Entry { value, stated: false }
        }),
    };
    let waviness = match waviness {
        Some(read) => Some(read?),
        None => None,
    };
    Some(Some(Tilt { angle, waviness, tool_to_drive: tool_to_drive?, tool_to_scale: tool_to_scale? }))
}
