//! How far what a brief states may be off: standard deviations, for the whole machine.

use super::defaults::{self, Preset};
use super::reader::{Reader, zero_to};
use super::types::Entry;
use crate::units::{Ratio, significant};
use crate::yaml::Node;

/// Standard deviations, each as a share of its quantity.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Uncertainty {
    /// Of the moved mass of every axis, and so of the carried mass.
    pub moved_mass: Entry<Ratio>,
    /// Of the drag of the guides: friction coefficient, seals and wipers together.
    pub guide_friction: Entry<Ratio>,
    /// Of all process forces.
    pub cutting_force: Entry<Ratio>,
    /// Of the temperature swing.
    pub temperature_swing: Entry<Ratio>,
    /// Of the stiffness of a drive.
    pub stiffness: Entry<Ratio>,
}

impl Uncertainty {
    /// Each with its key, in the order of the fields.
    pub fn all(&self) -> [(&'static str, Entry<Ratio>); 5] {
        [
            ("moved-mass", self.moved_mass),
            ("guide-friction", self.guide_friction),
            ("cutting-force", self.cutting_force),
            ("temperature-swing", self.temperature_swing),
            ("stiffness", self.stiffness),
        ]
    }
}

const KEYS: [&str; 5] = ["moved-mass", "guide-friction", "cutting-force", "temperature-swing", "stiffness"];

/// Reads the group `uncertainty`; what it leaves out takes its default.
pub(super) fn read(root: &Node<'_>, reader: &mut Reader<'_>) -> Option<Uncertainty> {
    let group = root.get("uncertainty");
    if let Some(group) = &group {
        group.only_keys(&KEYS, reader.faults);
        if !group.is_mapping() {
            return None;
        }
    }
    let mut spread = |key: &str, preset: &Preset| match &group {
        Some(group) => reader.or_preset(group, key, zero_to(100.0, "%"), preset),
        None => {
            let value = significant(preset.value, 6);
            reader.assume(format!("uncertainty.{key}"), value, preset.unit, &preset.source);
            Some(Entry { value: preset.quantity(), stated: false })
        }
    };
    let moved_mass = spread(KEYS[0], &defaults::MASS_SPREAD);
    let guide_friction = spread(KEYS[1], &defaults::FRICTION_SPREAD);
    let cutting_force = spread(KEYS[2], &defaults::FORCE_SPREAD);
    let temperature_swing = spread(KEYS[3], &defaults::SWING_SPREAD);
    let stiffness = spread(KEYS[4], &defaults::STIFFNESS_SPREAD);
    Some(Uncertainty {
        moved_mass: moved_mass?,
        guide_friction: guide_friction?,
        cutting_force: cutting_force?,
        temperature_swing: temperature_swing?,
        stiffness: stiffness?,
    })
}
