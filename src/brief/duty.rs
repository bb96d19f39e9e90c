//! Reading how working time is shared.

use super::MOST_LINES;
use super::defaults::{self, DUTY_SHARES, MIDDLE_SPEED_SHARE, STROKE_SHARE};
use super::reader::{Bounds, Reader, above_zero_to, key_below, zero_to};
use super::types::{DutyShare, Entry};
use crate::units::{Force, Length, Measure, Ratio, Velocity, parse, significant};
use crate::yaml::{Faults, Node};

/// The largest force among the shares or moves that can be read; told nowhere, since the reading proper tells the faults.
pub(super) fn largest_force(axis: &Node<'_>) -> Option<Force> {
    let mut unheard = Faults::default();
    let lists = ["duty", "moves"].into_iter().filter_map(|key| axis.get(key)).filter(Node::is_list);
    let shares: Vec<Node<'_>> = lists.flat_map(|list| list.list(&mut unheard)).collect();
    let forces = shares.iter().filter_map(|share| parse::<Force>(&share.get_text("force", &mut unheard)?).ok());
    let largest = forces.map(Measure::si).fold(0.0, f64::max);
    (largest > 0.0).then(|| Force::of_si(largest))
}

/// The shares of an axis; the default ones when the brief states none.
pub(super) fn read(
    axis: &Node<'_>,
    travel: Option<Length>,
    speed: Option<Velocity>,
    cutting_force: Option<Entry<Force>>,
    cutting_speed: Option<Entry<Velocity>>,
    reader: &mut Reader<'_>,
) -> Option<Vec<DutyShare>> {
    let Some(node) = axis.get("duty") else {
        let duty = default_duty(speed?, cutting_force?, cutting_speed?);
        let told: Vec<String> = duty.iter().map(told).collect();
        reader.assume(key_below(axis, "duty"), told.join(", "), "", &defaults::DUTY);
        assume_stroke(axis, travel, &duty, reader);
        return Some(duty);
    };
    let items = node.list(reader.faults);
    if node.is_list() && items.is_empty() {
        let help = "list shares that add up to 100 %, or leave `duty` out";
        node.fault(reader.faults, "the duty has no shares", Some(help.into()));
    }
    let shares: Vec<Line> = items.iter().map(|item| line(item, travel, speed, cutting_force, reader)).collect();
    let standing = shares.iter().filter(|line| line.stand == Some(true)).count();
    for (count, most, what) in
        [(shares.len() - standing, MOST_LINES.0, "with moves"), (standing, MOST_LINES.1, "at standstill")]
    {
        if count > most {
            let message = format!("at most {most} shares {what} are possible, not {count}");
            node.fault(reader.faults, message, Some("put shares together that are alike".into()));
        }
    }
    if let Some(parts) = shares.iter().map(|line| line.share).collect::<Option<Vec<Ratio>>>()
        && !parts.is_empty()
    {
        let sum: f64 = parts.into_iter().map(Measure::si).sum();
        if (sum - 1.0).abs() > 1e-3 + 1e-12 {
            let message = format!("the shares add up to {} %, not 100 %", significant(sum * 100.0, 5));
            let help = if sum < 1.0 {
                format!("add {} %, for instance `stand: true`, or raise a share", significant((1.0 - sum) * 100.0, 5))
            } else {
                format!("take {} % away", significant((sum - 1.0) * 100.0, 5))
            };
            node.fault(reader.faults, message, Some(help));
        }
    }
    let duty: Vec<DutyShare> = shares.into_iter().map(|line| line.whole).collect::<Option<_>>()?;
    if duty.is_empty() {
        return None;
    }
    assume_stroke(axis, travel, &duty, reader);
    Some(duty)
}

/// What could be read of one line, so that the checks of all lines together do not wait for the last fault.
struct Line {
    share: Option<Ratio>,
    stand: Option<bool>,
    whole: Option<DutyShare>,
}

fn line(
    node: &Node<'_>,
    travel: Option<Length>,
    axis_speed: Option<Velocity>,
    cutting_force: Option<Entry<Force>>,
    reader: &mut Reader<'_>,
) -> Line {
    node.only_keys(&["share", "speed", "force", "stroke", "stand"], reader.faults);
    if !node.is_mapping() {
        return Line { share: None, stand: None, whole: None };
    }
    let share = reader.need::<Ratio>(node, "share", above_zero_to(100.0, "%"));
    let stand = match node.get("stand") {
        Some(stand) => stand.flag(reader.faults),
        None => Some(false),
    };
    let force = force(node, "share", cutting_force, reader);
    let whole = match stand {
        Some(true) => standing(node, share, force, reader),
        Some(false) => moving(node, share, force, travel, axis_speed, reader),
        None => None,
    };
    Line { share, stand, whole }
}

/// The process force of a line, which is called `what`.
pub(super) fn force(
    node: &Node<'_>,
    what: &str,
    cutting_force: Option<Entry<Force>>,
    reader: &mut Reader<'_>,
) -> Option<Force> {
    let Some(force_node) = node.get("force") else { return Some(Force::of_si(0.0)) };
    let force = reader.bounded::<Force>(&force_node, zero_to(1000.0, "kN"))?;
    if let Some(Entry { value: limit, stated: true }) = cutting_force
        && force.si() > limit.si() * (1.0 + 1e-9)
    {
        let message = format!("the force of this {what} is larger than the cutting-force of the axis");
        force_node.fault(reader.faults, message, Some("cutting-force is the largest force that occurs".into()));
    }
    Some(force)
}

/// A quantity that is that of the axis if left out, and never more.
pub(super) fn no_more_than<Q: Measure>(
    node: &Node<'_>,
    key: &str,
    bounds: Bounds,
    most: Option<Q>,
    reader: &mut Reader<'_>,
) -> Option<Q> {
    let Some(stated) = node.get(key) else { return most };
    let value: Q = reader.bounded(&stated, bounds)?;
    if most.is_some_and(|most| value.si() > most.si() * (1.0 + 1e-9)) {
        let help = format!("`{key}` of the axis is the highest that occurs; raise it, or lower this one");
        stated.fault(reader.faults, format!("this {key} is higher than the {key} of the axis"), Some(help));
    }
    Some(value)
}

fn standing(node: &Node<'_>, share: Option<Ratio>, force: Option<Force>, reader: &mut Reader<'_>) -> Option<DutyShare> {
    for key in ["speed", "stroke"] {
        if let Some(moves) = node.get(key) {
            let help = format!("leave `{key}` out, or leave `stand` out");
            moves.fault(reader.faults, format!("an axis that stands has no {key}"), Some(help));
        }
    }
    Some(DutyShare { share: share?, stand: true, speed: None, force: force?, stroke: None })
}

fn moving(
    node: &Node<'_>,
    share: Option<Ratio>,
    force: Option<Force>,
    travel: Option<Length>,
    axis_speed: Option<Velocity>,
    reader: &mut Reader<'_>,
) -> Option<DutyShare> {
    let speed = match node.get("speed") {
        Some(speed_node) => {
            let speed = reader.bounded::<Velocity>(&speed_node, above_zero_to(10.0, "m/s"));
            if let (Some(speed), Some(most)) = (speed, axis_speed)
                && speed.si() > most.si() * (1.0 + 1e-9)
            {
                let help = "`speed` of the axis is the highest that occurs; raise it, or lower this one";
                speed_node.fault(reader.faults, "this speed is higher than the speed of the axis", Some(help.into()));
            }
            speed
        }
        None => {
            let message = "this share of the duty needs a speed";
            node.fault(reader.faults, message, Some("write `speed:`, or `stand: true`".into()));
            None
        }
    };
    let stroke = match node.get("stroke") {
        Some(stroke_node) => {
            let stroke = reader.bounded::<Length>(&stroke_node, above_zero_to(200.0, "m"))?;
            if travel.is_some_and(|travel| stroke.si() > travel.si() * (1.0 + 1e-9)) {
                let help = "a stroke is one move from here to there, at most the `travel`";
                stroke_node.fault(
                    reader.faults,
                    "this stroke is longer than the travel of the axis",
                    Some(help.into()),
                );
            }
            Some(stroke)
        }
        None => None,
    };
    Some(DutyShare { share: share?, stand: false, speed: Some(speed?), force: force?, stroke })
}

fn default_duty(speed: Velocity, force: Entry<Force>, cutting_speed: Entry<Velocity>) -> Vec<DutyShare> {
    let cuts = force.value.si() > 0.0;
    let process = match cuts || cutting_speed.stated {
        true => cutting_speed.value,
        false => Velocity::of_si(speed.si() * MIDDLE_SPEED_SHARE),
    };
    let none = Force::of_si(0.0);
    let share = |share: f64, speed: Option<Velocity>, force| DutyShare {
        share: Ratio::of_si(share),
        stand: speed.is_none(),
        speed,
        force,
        stroke: None,
    };
    vec![
        share(DUTY_SHARES[0], Some(speed), none),
        share(DUTY_SHARES[1], Some(process), if cuts { force.value } else { none }),
        share(DUTY_SHARES[2], None, none),
    ]
}

fn told(share: &DutyShare) -> String {
    let percent = significant(share.share.si() * 100.0, 4);
    let Some(speed) = share.speed else { return format!("{percent} % stand") };
    let speed = significant(speed.si() * 60.0, 5);
    match share.force.si() {
        0.0 => format!("{percent} % at {speed} m/min"),
        force => format!("{percent} % at {speed} m/min with {} N", significant(force, 5)),
    }
}

fn assume_stroke(axis: &Node<'_>, travel: Option<Length>, duty: &[DutyShare], reader: &mut Reader<'_>) {
    if let (Some(travel), true) = (travel, duty.iter().any(|share| !share.stand && share.stroke.is_none())) {
        let key = key_below(axis, "duty.stroke");
        reader.assume(key, significant(travel.si() * STROKE_SHARE * 1e3, 6), "mm", &defaults::STROKE);
    }
}
