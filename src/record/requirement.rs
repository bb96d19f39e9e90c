//! What the brief asks of an axis, as it was understood, line by line.

use super::RequirementLine;
use crate::brief::{Axis, CounterbalanceKind, CuttingDirection, Feedback, Mapping, Move};
use crate::units::{Dimension, Length, Measure, print_rounded, significant};

fn shown(value: f64, dimension: Dimension, unit: &str) -> String {
    match dimension.units().find(|known| known.name == unit) {
        Some(unit) => print_rounded(value, unit, 6),
        None => format!("{value}"),
    }
}

/// The lines, in the order of the brief's keys.
pub fn lines(axis: &Axis) -> Vec<RequirementLine> {
    let mut lines = Vec::new();
    let mut add =
        |key: &str, value: String, stated: bool| lines.push(RequirementLine { key: key.into(), value, stated });
    let length = |value: f64| shown(value, Dimension::Length, if value < 0.5e-3 { "µm" } else { "mm" });
    let speed = |value: f64| shown(value, Dimension::Velocity, "m/min");
    let force = |value: f64| shown(value, Dimension::Force, "N");
    add("direction", direction(axis), true);
    add("along", axis.along.value.word().into(), axis.along.stated);
    add("travel", length(axis.travel.si()), true);
    add("overtravel", length(axis.overtravel.value.si()), axis.overtravel.stated);
    add("moved-mass", shown(axis.moved_mass.si(), Dimension::Mass, "kg"), true);
    add("drives", axis.drives.value.to_string(), axis.drives.stated);
    if let Some(spacing) = axis.drive_spacing {
        add("drive-spacing", length(spacing.si()), true);
        let sides = &axis.sides;
        add("mass-offset", length(sides.mass_offset.value.si()), sides.mass_offset.stated);
        let yaw = shown(sides.yaw_stiffness.value.si(), Dimension::TorsionalStiffness, "kN·m/rad");
        add("yaw-stiffness", yaw, sides.yaw_stiffness.stated);
        let kelvin = shown(sides.temperature_difference.value.si(), Dimension::Temperature, "K");
        add("side-temperature-difference", kelvin, sides.temperature_difference.stated);
        let corrected = shown(sides.correction.value.si(), Dimension::Ratio, "%");
        add("side-correction", corrected, sides.correction.stated);
        add("guide-base", length(sides.guide_base.value.si()), sides.guide_base.stated);
    } else if axis.sides.guide_base.stated {
        add("guide-base", length(axis.sides.guide_base.value.si()), true);
    }
    if let Some(spacing) = axis.sides.guide_spacing {
        add("guide-spacing", length(spacing.si()), true);
    }
    add("bed", axis.bed.value.word().into(), axis.bed.stated);
    add("speed", speed(axis.speed.si()), true);
    add("acceleration", shown(axis.acceleration.si(), Dimension::Acceleration, "m/s²"), true);
    add("jerk", shown(axis.jerk.value.si(), Dimension::Jerk, "m/s³"), axis.jerk.stated);
    add("cutting-force", force(axis.cutting_force.value.si()), axis.cutting_force.stated);
    if axis.cuts() {
        let words = match axis.cutting_force_direction.value {
            CuttingDirection::Both => "both",
            CuttingDirection::Up => "up",
            CuttingDirection::Down => "down",
            CuttingDirection::Forward => "forward",
            CuttingDirection::Back => "back",
        };
        add("cutting-force-direction", words.into(), axis.cutting_force_direction.stated);
        add("cutting-speed", speed(axis.cutting_speed.value.si()), axis.cutting_speed.stated);
    }
    add("guide-friction", format!("{}", axis.guide_friction.value.si()), axis.guide_friction.stated);
    add("wiper-force", force(axis.wiper_force.value.si()), axis.wiper_force.stated);
    if let Some(balance) = &axis.counterbalance {
        let kind = match balance.kind {
            CounterbalanceKind::Gas => "gas",
            CounterbalanceKind::Weight => "weight",
        };
        let share = shown(balance.share.si(), Dimension::Ratio, "%");
        add("counterbalance", format!("{kind}, {share}"), true);
        if balance.kind == CounterbalanceKind::Gas {
            let ripple = shown(balance.ripple.value.si(), Dimension::Ratio, "%");
            add("counterbalance-ripple", format!("± {ripple}"), balance.ripple.stated);
        }
    }
    if let Some(chain) = &axis.cable_chain {
        add("cable-chain", shown(chain.mass_per_metre.si(), Dimension::LinearMassDensity, "kg/m"), true);
        add("cable-chain-friction", format!("{}", chain.friction.value.si()), chain.friction.stated);
    }
    if axis.inclination.si() > 0.0 {
        add("people-below", if axis.people_below.value { "yes" } else { "no" }.into(), axis.people_below.stated);
    }
    for (key, value) in [
        ("accuracy", axis.accuracy),
        ("section-accuracy", axis.section_accuracy),
        ("repeatability", axis.repeatability),
        ("reversal", axis.reversal),
        ("cutting-deflection", axis.cutting_deflection),
    ] {
        if let Some(value) = value {
            add(key, shown(value.si(), Dimension::Length, "mm"), true);
        }
    }
    if let Some(ripple) = axis.ripple.value {
        add("ripple", shown(ripple.si(), Dimension::Length, "mm"), axis.ripple.stated);
    }
    if let Some(first_mode) = axis.first_mode {
        add("first-mode", shown(first_mode.si(), Dimension::Frequency, "Hz"), true);
    }
    if let Some(contour) = &axis.contour {
        let circle = format!(
            "{} at {} on a radius of {}",
            length(contour.error.si()),
            speed(contour.speed.si()),
            length(contour.radius.si())
        );
        add("contour", circle, true);
        let fed = shown(contour.feed_forward.value.si(), Dimension::Ratio, "%");
        add("contour feed-forward", fed, contour.feed_forward.stated);
    }
    if let Some(settling) = &axis.settling {
        let time = shown(settling.time.si(), Dimension::Time, "ms");
        add("settling", format!("within {} to either side in {time}", length(settling.window.si())), true);
    }
    add("feedback", axis.feedback.word().into(), axis.feedback != Feedback::Any);
    add("mapping", axis.mapping.word().into(), axis.mapping != Mapping::Any);
    if axis.tilt.is_none() {
        add("guide-tilt", shown(0.0, Dimension::Angle, "arcsec"), false);
    }
    if let Some(tilt) = &axis.tilt {
        let length = |value: Length| shown(value.si(), Dimension::Length, "mm");
        if let Some(angle) = tilt.angle {
            add("guide-tilt", shown(angle.si(), Dimension::Angle, "arcsec"), true);
        }
        if let Some((height, wave)) = tilt.waviness {
            add("guide-waviness", format!("{} on {}", length(height), length(wave)), true);
        }
        add("tool-to-drive", length(tilt.tool_to_drive), true);
        add("tool-to-scale", length(tilt.tool_to_scale.value), tilt.tool_to_scale.stated);
    }
    let families = axis.families.as_ref().map_or("any".into(), |families| families.join(", "));
    add("families", families, axis.families.is_some());
    for line in &axis.duty {
        add("duty", duty(line, axis), axis.duty_stated);
    }
    for line in &axis.moves {
        add("moves", one_move(line, axis), true);
    }
    lines
}

fn direction(axis: &Axis) -> String {
    let degrees = axis.inclination.si().to_degrees();
    if degrees == 0.0 {
        "horizontal".into()
    } else if (degrees - 90.0).abs() < 1e-9 {
        "vertical".into()
    } else {
        shown(axis.inclination.si(), Dimension::Angle, "deg")
    }
}

fn duty(line: &crate::brief::DutyShare, axis: &Axis) -> String {
    let share = shown(line.share.si(), Dimension::Ratio, "%");
    if line.stand {
        return format!("{share} standing");
    }
    let speed = line.speed.unwrap_or(axis.speed);
    let stroke = line.stroke.unwrap_or(axis.usual_stroke());
    let mut text = format!(
        "{share} at {} over strokes of {}",
        shown(speed.si(), Dimension::Velocity, "m/min"),
        shown(stroke.si(), Dimension::Length, "mm")
    );
    if line.force.si() > 0.0 {
        text.push_str(&format!(" against {}", shown(line.force.si(), Dimension::Force, "N")));
    }
    text
}

fn one_move(line: &Move, axis: &Axis) -> String {
    let distance = line.distance.si();
    let way = match (axis.signed_moves(), axis.inclination.si() > 0.0, distance > 0.0) {
        (false, _, _) => ", half of them each way",
        (true, true, true) => " up",
        (true, true, false) => " down",
        (true, false, true) => " forward",
        (true, false, false) => " back",
    };
    let mut text = format!(
        "{} an hour over {}{way}, up to {}, {} and {}",
        significant(line.count_per_hour, 6),
        shown(distance.abs(), Dimension::Length, "mm"),
        shown(line.speed.si(), Dimension::Velocity, "m/min"),
        shown(line.acceleration.si(), Dimension::Acceleration, "m/s²"),
        shown(line.jerk.si(), Dimension::Jerk, "m/s³"),
    );
    if line.force.si() > 0.0 {
        text.push_str(&format!(", against {}", shown(line.force.si(), Dimension::Force, "N")));
    }
    if line.dwell.si() > 0.0 {
        text.push_str(&format!(", then standing {}", shown(line.dwell.si(), Dimension::Time, "s")));
    }
    text
}
