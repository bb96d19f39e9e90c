//! From a YAML text to a brief, with all faults of the text at once.

use super::defaults;
use super::reader::{Reader, above_zero_to, from_to, zero_to};
use super::types::{Axis, Brief, Entry, Limits, Prefer, Site, Waiver};
use super::{along, axis, carrying, misplaced, uncertainty};
use crate::yaml::{Document, Faults, Node, Purpose, nearest, read_text};
use std::path::Path;

pub(super) const KEYS: &[&str] = &[
    "machine",
    "currency",
    "years-in-service",
    "hours-per-year",
    "discount-rate",
    "energy-price",
    "downtime-cost",
    "environment",
    "temperature-swing",
    "supply-voltage",
    "supply-tolerance",
    "altitude",
    "ambient-temperature",
    "reliability",
    "uncertainty",
    "limits",
    "prefer",
    "axes",
    "waivers",
];
/// The keys of the group `limits`.
pub(super) const LIMITS: &[&str] =
    &["purchase", "tool-point-error", "supply-power", "motor-models", "gearbox-models", "lead-time"];
/// The most axes that a machine may have.
pub const MOST_AXES: usize = 64;

/// Reads a brief from a file; faults call it by its file name without folders.
pub fn load_file(path: &Path) -> Result<Brief, Faults> {
    let mut faults = Faults::default();
    match text_of(path, &mut faults) {
        Some((name, text)) => load(&name, &text),
        None => Err(faults),
    }
}

/// The name by which faults call a brief, and its text.
pub fn text_of(path: &Path, faults: &mut Faults) -> Option<(String, String)> {
    let name = path.file_name().unwrap_or(path.as_os_str()).to_string_lossy();
    read_text(path, &name, faults).map(|text| (name.into(), text))
}

/// The names of the axes in the text of a brief, whatever else is wrong with it.
pub fn axes_named(name: &str, text: &str) -> Vec<String> {
    let mut unheard = Faults::default();
    let Some(document) = Document::parse(name, text, &mut unheard) else { return Vec::new() };
    let axes = document.root().get("axes").map(|axes| axes.entries(&mut unheard)).unwrap_or_default();
    axes.into_iter().map(|(name, _)| name).collect()
}

/// Faults the waivers of rules that do not exist, each at its line, whatever else is wrong with the brief.
pub fn waivers_of_known_rules(name: &str, text: &str, rules: &[&str], faults: &mut Faults) {
    let mut unheard = Faults::default();
    let Some(document) = Document::parse(name, text, &mut unheard) else { return };
    let root = document.root();
    let waivers = root.get("waivers").filter(Node::is_list).map(|list| list.list(&mut unheard)).unwrap_or_default();
    for node in waivers.iter().filter_map(|waiver| waiver.get("rule")) {
        let Some(rule) = node.text(&mut unheard).map(|text| text.trim().to_string()) else { continue };
        if rule.is_empty() || rules.contains(&rule.as_str()) {
            continue;
        }
        let help = nearest(&rule, rules.iter().copied()).map_or_else(
            || "write the id of the rule; `axiswright explain` and part three of a report list them".into(),
            |near| format!("did you mean `{near}`?"),
        );
        node.fault(faults, format!("there is no rule `{rule}` to waive"), Some(help));
    }
}

/// Reads a brief from a text; the name is the one by which faults and the brief itself call it.
pub fn load(name: &str, text: &str) -> Result<Brief, Faults> {
    let mut faults = Faults::default();
    let brief = Document::parse(name, text, &mut faults)
        .and_then(|document| read(name, text, &document.root(), &mut Reader::new(&mut faults)));
    match brief {
        Some(brief) if faults.is_empty() => Ok(brief),
        _ => Err(faults),
    }
}

fn read(name: &str, text: &str, root: &Node<'_>, reader: &mut Reader<'_>) -> Option<Brief> {
    if !root.is_for(Purpose::Brief, reader.faults) {
        return None;
    }
    root.only_keys_here(KEYS, misplaced::in_machine, reader.faults);
    let machine = reader.need_words(root, "machine");
    let currency = match root.get("currency") {
        Some(node) => reader.words(&node).map(|value| Entry { value, stated: true }),
        None => {
            reader.assume("currency".into(), "units", "", &defaults::LEFT_OPEN);
            Some(Entry { value: "units".into(), stated: false })
        }
    };
    let years = reader.number_or_preset(root, "years-in-service", 100.0, &defaults::YEARS_IN_SERVICE);
    let hours = reader.number_or_preset(root, "hours-per-year", 8784.0, &defaults::HOURS_PER_YEAR);
    hours.iter().for_each(|hours| reader.doubt_hours(hours));
    let discount_rate = reader.or_preset(root, "discount-rate", zero_to(99.999, "%"), &defaults::DISCOUNT_RATE);
    let energy_price = reader.or_preset(root, "energy-price", zero_to(1e6, ""), &defaults::ENERGY_PRICE);
    let downtime_cost = reader.or_preset(root, "downtime-cost", zero_to(1e6, ""), &defaults::DOWNTIME_COST);
    let environment = environment(root, reader);
    let temperature_swing =
        reader.or_preset(root, "temperature-swing", zero_to(100.0, "K"), &defaults::TEMPERATURE_SWING);
    let site = site(root, reader);
    let reliability = reader.or_preset(root, "reliability", from_to(90.0, 99.0, "%"), &defaults::RELIABILITY);
    let uncertainty = uncertainty::read(root, reader);
    let limits = limits(root, reader);
    let prefer = prefer(root, reader);
    let (names, axes) = axes(root, reader);
    reader.doubt_riding(axes.as_deref().unwrap_or_default());
    let waivers = waivers(root, &names, reader);
    Some(Brief {
        name: name.into(),
        text: text.into(),
        machine: machine?,
        currency: currency?,
        years_in_service: years?,
        hours_per_year: hours?,
        discount_rate: discount_rate?,
        energy_price: energy_price?,
        downtime_cost: downtime_cost?,
        environment,
        temperature_swing: temperature_swing?,
        site: site?,
        reliability: reliability?,
        uncertainty: uncertainty?,
        limits,
        prefer: prefer?,
        axes: axes?,
        waivers,
        assumptions: std::mem::take(&mut reader.assumptions),
        doubts: std::mem::take(&mut reader.doubts),
    })
}

fn site(root: &Node<'_>, reader: &mut Reader<'_>) -> Option<Site> {
    let voltage = reader.or_preset(root, "supply-voltage", above_zero_to(1000.0, "V"), &defaults::SUPPLY_VOLTAGE);
    let tolerance = reader.or_preset(root, "supply-tolerance", zero_to(50.0, "%"), &defaults::SUPPLY_TOLERANCE);
    let altitude = reader.or_preset(root, "altitude", zero_to(4000.0, "m"), &defaults::ALTITUDE);
    let ambient = reader.or_preset(root, "ambient-temperature", zero_to(60.0, "°C"), &defaults::AMBIENT_TEMPERATURE);
    Some(Site {
        supply_voltage: voltage?,
        supply_tolerance: tolerance?,
        altitude: altitude?,
        ambient_temperature: ambient?,
    })
}

fn environment(root: &Node<'_>, reader: &mut Reader<'_>) -> Vec<String> {
    let Some(node) = root.get("environment") else { return Vec::new() };
    if node.is_text() {
        return reader.words(&node).into_iter().collect();
    }
    node.list(reader.faults).iter().filter_map(|item| reader.words(item)).collect()
}

fn limits(root: &Node<'_>, reader: &mut Reader<'_>) -> Limits {
    let Some(node) = root.get("limits") else { return Limits::default() };
    node.only_keys_here(LIMITS, misplaced::in_limits, reader.faults);
    let mut models = |key: &str| {
        let item = node.get(key)?;
        let count = item.count(reader.faults)?;
        if count == 0 {
            let help = "leave the limit out where any number of models will do";
            item.fault(reader.faults, "must be at least 1, but is 0", Some(help.into()));
            return None;
        }
        Some(count)
    };
    let (motor_models, gearbox_models) = (models("motor-models"), models("gearbox-models"));
    Limits {
        purchase: reader.get(&node, "purchase", above_zero_to(1e12, "")),
        tool_point_error: reader.get(&node, "tool-point-error", above_zero_to(1.0, "m")),
        supply_power: reader.get(&node, "supply-power", above_zero_to(1e5, "kW")),
        motor_models,
        gearbox_models,
        lead_time: reader.get(&node, "lead-time", above_zero_to(1000.0, "weeks")),
    }
}

fn prefer(root: &Node<'_>, reader: &mut Reader<'_>) -> Option<Prefer> {
    let Some(node) = root.get("prefer") else {
        reader.assume("prefer".into(), "whole-life-cost alone", "", &defaults::COST_DECIDES);
        return Some(Prefer { whole_life_cost: 1.0, accuracy: 0.0, stiffness: 0.0, upkeep: 0.0, stated: false });
    };
    let keys = ["whole-life-cost", "accuracy", "stiffness", "upkeep"];
    node.only_keys(&keys, reader.faults);
    let mut weight = |key: &str| {
        let Some(item) = node.get(key) else { return Some(0.0) };
        let weight = item.number(reader.faults)?;
        if (0.0..=1e6).contains(&weight) {
            return Some(weight);
        }
        let help = "weights count against each other: 2 counts twice as much as 1";
        item.fault(reader.faults, format!("a weight is from 0 to 1000000, not {weight}"), Some(help.into()));
        None
    };
    let [cost, accuracy, stiffness, upkeep] = keys.map(&mut weight);
    let prefer =
        Prefer { whole_life_cost: cost?, accuracy: accuracy?, stiffness: stiffness?, upkeep: upkeep?, stated: true };
    if node.is_mapping() && prefer.whole_life_cost + prefer.accuracy + prefer.stiffness + prefer.upkeep == 0.0 {
        let help = "write `whole-life-cost: 1`, or leave `prefer` out: then cost decides alone";
        node.fault(reader.faults, "at least one weight must be above 0", Some(help.into()));
    }
    Some(prefer)
}

/// The names of all axes, and the axes if none is at fault.
fn axes(root: &Node<'_>, reader: &mut Reader<'_>) -> (Vec<String>, Option<Vec<Axis>>) {
    let wanted = "with the axes by name, and below each what it must do";
    let Some(node) = root.need_as("axes", wanted, reader.faults) else { return (Vec::new(), None) };
    let entries = node.entries(reader.faults);
    if node.is_mapping() && entries.is_empty() {
        let help = "write below `axes:` the name of an axis and, below that, what it must do";
        node.fault(reader.faults, "a machine needs at least one axis", Some(help.into()));
    }
    if entries.len() > MOST_AXES {
        node.fault(reader.faults, format!("at most {MOST_AXES} axes are possible, not {}", entries.len()), None);
        return (entries.into_iter().map(|(name, _)| name).collect(), None);
    }
    let mut axes = Vec::new();
    for (name, entry) in &entries {
        if name.trim().is_empty() {
            entry.fault(reader.faults, "an axis needs a name", None);
        }
        axes.push(axis::read(name, entry, reader));
    }
    let carrying = carrying::read(&entries, reader.faults);
    let axes: Option<Vec<Axis>> = axes.into_iter().collect();
    let axes = axes.filter(|axes| !axes.is_empty()).map(|mut axes| {
        carrying::fill_in(&mut axes, carrying);
        along::fill_in(&mut axes, &entries, reader);
        axes
    });
    (entries.into_iter().map(|(name, _)| name).collect(), axes)
}

fn waivers(root: &Node<'_>, axes: &[String], reader: &mut Reader<'_>) -> Vec<Waiver> {
    let Some(node) = root.get("waivers") else { return Vec::new() };
    node.list(reader.faults).iter().filter_map(|item| waiver(item, axes, reader)).collect()
}

fn waiver(node: &Node<'_>, axes: &[String], reader: &mut Reader<'_>) -> Option<Waiver> {
    node.only_keys(&["rule", "axis", "reason", "by", "until"], reader.faults);
    let rule = reader.need_words(node, "rule");
    let axis = reader.get_words(node, "axis");
    if let (Some(axis), Some(item)) = (&axis, node.get("axis"))
        && !axes.contains(axis)
    {
        let help = carrying::axes_to_name(axis, axes.iter().map(String::as_str));
        item.fault(reader.faults, format!("there is no axis `{axis}`"), Some(help));
    }
    let reason = reader.need_words(node, "reason");
    let by = reader.need_words(node, "by");
    let until = reader.get_words(node, "until");
    if let (Some(until), Some(item)) = (&until, node.get("until"))
        && !is_date(until)
    {
        let help = "write year, month and day, such as 2027-06-30; leave `until` out where the waiver has no end";
        item.fault(reader.faults, format!("`{until}` is not a date"), Some(help.into()));
    }
    Some(Waiver { rule: rule?, axis, reason: reason?, by: by?, until })
}

/// Whether a text is a day of the calendar, written YYYY-MM-DD (ISO 8601).
fn is_date(text: &str) -> bool {
    let digits = |from: usize, to: usize| -> Option<u32> {
        let part = text.get(from..to)?;
        part.bytes().all(|byte| byte.is_ascii_digit()).then(|| part.parse().ok())?
    };
    if text.len() != 10 || text.get(4..5) != Some("-") || text.get(7..8) != Some("-") {
        return false;
    }
    let (Some(year), Some(month), Some(day)) = (digits(0, 4), digits(5, 7), digits(8, 10)) else { return false };
    let leap = year.is_multiple_of(4) && (!year.is_multiple_of(100) || year.is_multiple_of(400));
    let days = match month {
        4 | 6 | 9 | 11 => 30,
        2 if leap => 29,
        2 => 28,
        1..=12 => 31,
        _ => 0,
    };
    (1..=days).contains(&day)
}
