//! Reading one axis of a brief.

use super::FAMILIES;
use super::along::Along;
use super::bed::Bed;
use super::defaults;
use super::duty;
use super::hanging::{cable_chain, counterbalance};
use super::measuring::{self, Feedback, Mapping};
use super::misplaced;
use super::moves;
use super::reader::{Reader, above_zero_to, key_below, zero_to};
use super::servo;
use super::types::{Axis, CuttingDirection, DutyShare, Entry, Move};
use crate::units::{Acceleration, Angle, Force, Jerk, Length, Measure, Velocity, significant};
use crate::yaml::{Node, nearest};

pub(super) const KEYS: &[&str] = &[
    "purpose",
    "direction",
    "along",
    "travel",
    "overtravel",
    "moved-mass",
    "carries",
    "drives",
    "drive-spacing",
    "mass-offset",
    "yaw-stiffness",
    "side-temperature-difference",
    "side-correction",
    "guide-spacing",
    "guide-base",
    "speed",
    "acceleration",
    "jerk",
    "cutting-force",
    "cutting-force-direction",
    "cutting-speed",
    "bed",
    "guide-friction",
    "wiper-force",
    "counterbalance",
    "cable-chain",
    "people-below",
    "accuracy",
    "section-accuracy",
    "repeatability",
    "reversal",
    "cutting-deflection",
    "ripple",
    "first-mode",
    "contour",
    "settling",
    "feedback",
    "mapping",
    "guide-tilt",
    "guide-waviness",
    "tool-to-drive",
    "tool-to-scale",
    "families",
    "duty",
    "moves",
];

/// An axis without its place among the others; `None` when something of it is at fault.
pub(super) fn read(name: &str, node: &Node<'_>, reader: &mut Reader<'_>) -> Option<Axis> {
    node.only_keys_here(KEYS, misplaced::in_axis, reader.faults);
    if !node.is_mapping() {
        return None;
    }
    let purpose = reader.get_words(node, "purpose");
    let inclination = direction(node, reader);
    let travel = reader.need::<Length>(node, "travel", above_zero_to(200.0, "m"));
    let overtravel = reader.or_preset(node, "overtravel", zero_to(2.0, "m"), &defaults::OVERTRAVEL);
    let moved_mass = reader.need(node, "moved-mass", above_zero_to(1e6, "kg"));
    let (drives, drive_spacing) = drives(node, reader);
    let sides = super::sides::read(node, drives.map_or(1, |drives| drives.value), drive_spacing, reader);
    let speed = reader.need::<Velocity>(node, "speed", above_zero_to(10.0, "m/s"));
    let acceleration = reader.need::<Acceleration>(node, "acceleration", above_zero_to(100.0, "m/s²"));
    let jerk = jerk(node, acceleration, reader);
    if let (Some(travel), Some(speed), Some(acceleration), Some(jerk)) = (travel, speed, acceleration, &jerk) {
        reader.doubt_reach(node, travel, speed, acceleration, jerk.value);
    }
    let cut = cutting(node, inclination, speed, reader);
    let bed = bed(node, reader);
    let guide_friction = reader.or_preset(node, "guide-friction", zero_to(1.0, "1"), &defaults::GUIDE_FRICTION);
    let wiper_force = reader.or_preset(node, "wiper-force", zero_to(100.0, "kN"), &defaults::WIPER_FORCE);
    let counterbalance = counterbalance(node, inclination, reader);
    let cable_chain = cable_chain(node, reader);
    let people_below = people_below(node, inclination, reader);
    let mut length = |key: &str| reader.get::<Length>(node, key, above_zero_to(1.0, "m"));
    let (accuracy, section_accuracy) = (length("accuracy"), length("section-accuracy"));
    let (repeatability, reversal) = (length("repeatability"), length("reversal"));
    let cutting_deflection = length("cutting-deflection");
    let ripple = ripple(node, cut.force, reader);
    let first_mode = reader.get(node, "first-mode", above_zero_to(10.0, "kHz"));
    let feedback = measuring::choice(node, "feedback", &Feedback::WORDS, Feedback::Any, reader);
    let contour = servo::contour(node, speed, reader);
    let settling = servo::settling(node, reader);
    // left open it waits until all axes are read
    let along = match node.get("along") {
        Some(along) => along.choice(&Along::WORDS, reader.faults).map(|value| Entry { value, stated: true }),
        None => Some(Entry { value: Along::X, stated: false }),
    };
    let mapping = measuring::choice(node, "mapping", &Mapping::WORDS, Mapping::Any, reader);
    let tilt = measuring::tilt(node, reader);
    let families = families(node, reader);
    let bounds = moves::Axis {
        inclination,
        travel,
        speed,
        acceleration,
        jerk: jerk.map(|jerk| jerk.value),
        cutting_force: cut.force,
    };
    let work = work(node, &bounds, cut.speed, reader);
    let (duty, moves) = work?;
    Some(Axis {
        name: name.into(),
        purpose,
        inclination: inclination?,
        travel: travel?,
        overtravel: overtravel?,
        moved_mass: moved_mass?,
        carries: Vec::new(),
        carried_by: None,
        drives: drives?,
        drive_spacing,
        sides: sides?,
        speed: speed?,
        acceleration: acceleration?,
        jerk: jerk?,
        cutting_force: cut.force?,
        cutting_force_direction: cut.direction?,
        cutting_speed: cut.speed?,
        bed: bed?,
        guide_friction: guide_friction?,
        wiper_force: wiper_force?,
        counterbalance,
        cable_chain,
        people_below: people_below?,
        accuracy,
        section_accuracy,
        repeatability,
        reversal,
        cutting_deflection,
        ripple: ripple?,
        first_mode,
        contour: contour?,
        settling: settling?,
        along: along?,
        feedback: feedback?,
        mapping: mapping?,
        tilt: tilt?,
        families: families?,
        duty,
        moves,
        duty_stated: node.get("duty").is_some() || node.get("moves").is_some(),
    })
}

/// The work of the axis: shares of time, or moves.
fn work(
    axis: &Node<'_>,
    bounds: &moves::Axis,
    cutting_speed: Option<Entry<Velocity>>,
    reader: &mut Reader<'_>,
) -> Option<(Vec<DutyShare>, Vec<Move>)> {
    let Some(node) = axis.get("moves") else {
        let duty = duty::read(axis, bounds.travel, bounds.speed, bounds.cutting_force, cutting_speed, reader);
        return Some((duty?, Vec::new()));
    };
    if axis.get("duty").is_some() {
        let help = "keep the one that you know better; the other follows from it";
        node.fault(reader.faults, "an axis states either `duty` or `moves`, not both", Some(help.into()));
    }
    Some((Vec::new(), moves::read(&node, bounds, reader)?))
}

fn direction(axis: &Node<'_>, reader: &mut Reader<'_>) -> Option<Angle> {
    let node = axis.need_as("direction", "horizontal, vertical or an angle in deg", reader.faults)?;
    let text = node.text(reader.faults)?;
    match text.trim() {
        "horizontal" => return Some(Angle::of_si(0.0)),
        "vertical" => return Some(Angle::of_si(std::f64::consts::FRAC_PI_2)),
        word if word.starts_with(|c: char| c.is_alphabetic()) => {
            let help = match nearest(word, ["horizontal", "vertical"]) {
                Some(near) => format!("did you mean `{near}`?"),
                None => "an axis that goes up and down is `vertical`, a level one `horizontal`".into(),
            };
            let message = format!("`{word}` is no direction; write horizontal, vertical or an angle such as 30 deg");
            node.fault(reader.faults, message, Some(help));
            return None;
        }
        _ => {}
    }
    reader.bounded(&node, zero_to(90.0, "deg"))
}

fn drives(axis: &Node<'_>, reader: &mut Reader<'_>) -> (Option<Entry<u32>>, Option<Length>) {
    let drives = match axis.get("drives") {
        None => {
            reader.assume(key_below(axis, "drives"), "1", "", &defaults::DRIVES.source);
            Some(Entry { value: 1, stated: false })
        }
        Some(node) if node.is_text() => {
            node.fault(reader.faults, "an axis has 1 or 2 drives", Some("write the number: `1` or `2`".into()));
            None
        }
        Some(node) => node.count(reader.faults).and_then(|count| {
            if (1..=2).contains(&count) {
                return Some(Entry { value: count, stated: true });
            }
            let help = "2 are one at each side of a gantry; more are axes of their own";
            node.fault(reader.faults, format!("an axis has 1 or 2 drives, not {count}"), Some(help.into()));
            None
        }),
    };
    let spacing = reader.get(axis, "drive-spacing", above_zero_to(100.0, "m"));
    match (drives.map(|drives| drives.value), axis.get("drive-spacing"), axis.get("drives")) {
        (Some(2), None, Some(node)) => {
            let help = Some("write `drive-spacing:` with the distance between the drives".into());
            node.fault(reader.faults, "two drives need a drive-spacing", help);
        }
        (Some(1), Some(node), _) => {
            let help = Some("write `drives: 2`, or leave the spacing out".into());
            node.fault(reader.faults, "drive-spacing has no meaning with one drive", help);
        }
        _ => {}
    }
    (drives, spacing)
}

fn jerk(axis: &Node<'_>, acceleration: Option<Acceleration>, reader: &mut Reader<'_>) -> Option<Entry<Jerk>> {
    if let Some(node) = axis.get("jerk") {
        return reader.bounded(&node, above_zero_to(1e5, "m/s³")).map(|value| Entry { value, stated: true });
    }
    let preset = &defaults::JERK_PER_ACCELERATION;
    let value = acceleration?.si() * preset.value;
    reader.assume(key_below(axis, "jerk"), significant(value, 6), "m/s³", &preset.source);
    Some(Entry { value: Jerk::of_si(value), stated: false })
}

/// What a brief says about cutting along an axis.
struct Cutting {
    force: Option<Entry<Force>>,
    direction: Option<Entry<CuttingDirection>>,
    speed: Option<Entry<Velocity>>,
}

fn cutting(axis: &Node<'_>, inclination: Option<Angle>, speed: Option<Velocity>, reader: &mut Reader<'_>) -> Cutting {
    let force = match (axis.get("cutting-force"), duty::largest_force(axis)) {
        (None, Some(force)) => {
            let source = crate::source::Source::derived("the largest force among the shares of the duty");
            reader.assume(key_below(axis, "cutting-force"), significant(force.si(), 6), "N", &source);
            Some(Entry { value: force, stated: false })
        }
        _ => reader.or_preset::<Force>(axis, "cutting-force", zero_to(1000.0, "kN"), &defaults::CUTTING_FORCE),
    };
    let cuts = force.is_some_and(|force| force.value.si() > 0.0);
    let direction = match axis.get("cutting-force-direction") {
        None => {
            if cuts {
                let key = key_below(axis, "cutting-force-direction");
                reader.assume(key, "both", "", &defaults::EITHER_WAY);
            }
            Some(Entry { value: CuttingDirection::Both, stated: false })
        }
        Some(node) => node.choice(&CuttingDirection::WORDS, reader.faults).map(|value| {
            if force.is_some() && !cuts {
                let message = "the direction of a cutting force is given, but no cutting-force";
                node.fault(reader.faults, message, Some("write `cutting-force:`, or leave the direction out".into()));
            }
            let level = inclination.is_some_and(|angle| angle.si() == 0.0);
            if level && matches!(value, CuttingDirection::Up | CuttingDirection::Down) {
                let help = Some("write forward, back or both".into());
                node.fault(reader.faults, "a horizontal axis has no up and down along its travel", help);
            }
            Entry { value, stated: true }
        }),
    };
    Cutting { force, direction, speed: cutting_speed(axis, speed, cuts, reader) }
}

fn cutting_speed(
    axis: &Node<'_>,
    speed: Option<Velocity>,
    cuts: bool,
    reader: &mut Reader<'_>,
) -> Option<Entry<Velocity>> {
    if let Some(node) = axis.get("cutting-speed") {
        let value: Velocity = reader.bounded(&node, above_zero_to(10.0, "m/s"))?;
        if speed.is_some_and(|speed| value.si() > speed.si() * (1.0 + 1e-9)) {
            let help = "`speed` is the highest that occurs; raise it, or lower `cutting-speed`";
            node.fault(reader.faults, "the cutting speed is higher than the speed of the axis", Some(help.into()));
        }
        return Some(Entry { value, stated: true });
    }
    let preset = &defaults::CUTTING_SPEED_SHARE;
    let value = Velocity::of_si(speed?.si() * preset.value);
    if cuts {
        let key = key_below(axis, "cutting-speed");
        reader.assume(key, significant(value.si() * 60.0, 6), "m/min", &preset.source);
    }
    Some(Entry { value, stated: false })
}

fn people_below(axis: &Node<'_>, inclination: Option<Angle>, reader: &mut Reader<'_>) -> Option<Entry<bool>> {
    if let Some(node) = axis.get("people-below") {
        return node.flag(reader.faults).map(|value| Entry { value, stated: true });
    }
    if inclination.is_some_and(|angle| angle.si() > 0.0) {
        reader.assume(key_below(axis, "people-below"), "false", "", &defaults::NOBODY_BELOW);
    }
    Some(Entry { value: false, stated: false })
}

fn ripple(axis: &Node<'_>, force: Option<Entry<Force>>, reader: &mut Reader<'_>) -> Option<Entry<Option<Length>>> {
    if let Some(node) = axis.get("ripple") {
        let value = reader.bounded(&node, above_zero_to(1.0, "m"))?;
        return Some(Entry { value: Some(value), stated: true });
    }
    if !force.is_some_and(|force| force.value.si() > 0.0) {
        return Some(Entry { value: None, stated: false });
    }
    let preset = &defaults::RIPPLE;
    reader.assume(key_below(axis, "ripple"), significant(preset.value, 6), preset.unit, &preset.source);
    Some(Entry { value: Some(preset.quantity()), stated: false })
}

/// What guides and racks are screwed to.
fn bed(axis: &Node<'_>, reader: &mut Reader<'_>) -> Option<Entry<Bed>> {
    match axis.get("bed") {
        Some(node) => node.choice(&Bed::WORDS, reader.faults).map(|value| Entry { value, stated: true }),
        None => {
            reader.assume(key_below(axis, "bed"), "steel", "", &defaults::STEEL_BED);
            Some(Entry { value: Bed::Steel, stated: false })
        }
    }
}

/// The families to consider, `Some(None)` for any.
fn families(axis: &Node<'_>, reader: &mut Reader<'_>) -> Option<Option<Vec<String>>> {
    let Some(node) = axis.get("families") else {
        reader.assume(key_below(axis, "families"), "any", "", &defaults::LEFT_OPEN);
        return Some(None);
    };
    let known: Vec<(&str, &str)> = FAMILIES.iter().map(|id| (*id, *id)).collect();
    if node.is_text() {
        let mut words = vec![("any", "any")];
        words.extend(known);
        return match node.choice(&words, reader.faults)? {
            "any" => Some(None),
            id => Some(Some(vec![id.into()])),
        };
    }
    let items = node.list(reader.faults);
    if node.is_list() && items.is_empty() {
        node.fault(
            reader.faults,
            "no family is named, so no drive can be chosen",
            Some("write `families: any`".into()),
        );
        return None;
    }
    let mut ids: Vec<String> = Vec::new();
    let mut all_known = true;
    for item in &items {
        let Some(id) = item.choice(&known, reader.faults) else {
            all_known = false;
            continue;
        };
        if !ids.iter().any(|other| other == id) {
            ids.push(id.into());
        }
    }
    (all_known && !ids.is_empty()).then_some(Some(ids))
}
