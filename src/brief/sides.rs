//! Reading what a brief says of the two sides of an axis and of the guides that hold it square.

use super::defaults::{self, Preset};
use super::reader::{Bounds, Reader, above_zero_to, key_below, zero_to};
use super::types::{Entry, Sides};
use crate::units::{Length, Measure, TorsionalStiffness, significant};
use crate::yaml::Node;

/// The keys of this subject that have a meaning only with two drives.
const OF_TWO: [&str; 4] = ["mass-offset", "yaw-stiffness", "side-temperature-difference", "side-correction"];

/// What the brief says; defaults that count only with two drives are told only then.
pub(super) fn read(axis: &Node<'_>, drives: u32, spacing: Option<Length>, reader: &mut Reader<'_>) -> Option<Sides> {
    let two = drives == 2;
    if !two {
        for key in OF_TWO {
            if let Some(node) = axis.get(key) {
                let help = Some("write `drives: 2`, or leave it out".into());
                node.fault(reader.faults, format!("`{key}` has no meaning with one drive"), help);
            }
        }
    }
    let guide_spacing = reader.get::<Length>(axis, "guide-spacing", above_zero_to(100.0, "m"));
    let guide_base = if_two(axis, "guide-base", two, above_zero_to(100.0, "m"), &defaults::GUIDE_BASE, reader)?;
    let mass_offset: Entry<Length> =
        if_two(axis, "mass-offset", two, zero_to(50.0, "m"), &defaults::MASS_OFFSET, reader)?;
    if let (Some(spacing), Some(node)) = (spacing, axis.get("mass-offset"))
        && mass_offset.value.si() > 0.5 * spacing.si()
    {
        let help = "`mass-offset` counts from the middle between the drives: at most half of `drive-spacing`";
        node.fault(reader.faults, "the centre of mass lies outside of the two drives", Some(help.into()));
    }
    let yaw_stiffness = yaw_stiffness(axis, two, guide_base.value, reader)?;
    let (key, preset) = ("side-temperature-difference", &defaults::SIDE_TEMPERATURE_DIFFERENCE);
    let temperature_difference = if_two(axis, key, two, zero_to(50.0, "K"), preset, reader)?;
    let correction = if_two(axis, "side-correction", two, zero_to(95.0, "%"), &defaults::SIDE_CORRECTION, reader)?;
    Some(Sides { mass_offset, yaw_stiffness, temperature_difference, correction, guide_spacing, guide_base })
}

/// What is stated, or the default; the default is told only where it counts.
fn if_two<Q: Measure>(
    axis: &Node<'_>,
    key: &str,
    two: bool,
    bounds: Bounds,
    preset: &Preset,
    reader: &mut Reader<'_>,
) -> Option<Entry<Q>> {
    if axis.get(key).is_some() || two {
        return reader.or_preset(axis, key, bounds, preset);
    }
    Some(Entry { value: preset.quantity(), stated: false })
}

fn yaw_stiffness(
    axis: &Node<'_>,
    two: bool,
    base: Length,
    reader: &mut Reader<'_>,
) -> Option<Entry<TorsionalStiffness>> {
    if let Some(node) = axis.get("yaw-stiffness") {
        return reader.bounded(&node, above_zero_to(1e9, "kN·m/rad")).map(|value| Entry { value, stated: true });
    }
    let preset = &defaults::CARRIAGE_STIFFNESS;
    // four carriages, each half the base off the middle: 4·k·(l/2)²
    let value = preset.value * 1e6 * base.si() * base.si();
    if two {
        reader.assume(key_below(axis, "yaw-stiffness"), significant(value / 1e3, 6), "kN·m/rad", &preset.source);
    }
    Some(Entry { value: TorsionalStiffness::of_si(value), stated: false })
}
