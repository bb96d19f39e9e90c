//! A drive in one phrase with its main sizes, in the order in which a buyer would say them.

use super::figure;
use super::markup::term;
use super::view::View;
use super::words;
use crate::record::*;
use crate::units::UnitSystem;

impl View<'_> {
    /// A drive in one phrase with its main sizes, marked for the glossary.
    pub fn drive(&self, candidate: &CandidateRecord) -> String {
        let family = words::family(&candidate.family);
        let sizes = self.sizes(candidate);
        let each = match self.drives(candidate) {
            0 | 1 => String::new(),
            2 => ", one on each side".into(),
            drives => format!(", {drives} of them"),
        };
        if sizes.is_empty() { format!("{family}{each}") } else { format!("{family}, {sizes}{each}") }
    }

    /// How many drives move the axis together.
    pub fn drives(&self, candidate: &CandidateRecord) -> u64 {
        let motor = |part: &&ComponentRecord| matches!(part.role.as_str(), "motor" | "servo-motor");
        let motors = candidate.components.iter().filter(motor).map(|part| part.count).sum::<f64>();
        let drives = candidate.value("drives").unwrap_or(if motors > 0.0 { motors } else { 1.0 });
        if drives.is_finite() && drives >= 1.0 { drives.round() as u64 } else { 1 }
    }

    /// The main sizes of a drive in one phrase.
    ///
    /// The helix angle is said by the family and the gearbox by its ratio; both stand in full in part two.
    pub fn sizes(&self, candidate: &CandidateRecord) -> String {
        self.sizes_of(&candidate.family, &candidate.parameters)
    }

    /// The main sizes of a drive of this family in words.
    pub fn sizes_of(&self, family: &str, parameters: &[Parameter]) -> String {
        sizes_of(family, parameters, self.units)
    }
}

/// The main sizes of a drive of this family in words, in the units of the reader.
pub fn sizes_of(family: &str, parameters: &[Parameter], units: UnitSystem) -> String {
    const ORDER: [&str; 13] = [
        "diameter", "lead", "grade", "ends", "preload", "module", "teeth", "quality", "ratio", "bias", "motor",
        "feedback", "mapping",
    ];
    let rack = words::is_rack(family);
    let none = |size: &Parameter| matches!(&size.value, ParameterValue::Word { value, .. } if value == "no-supports" || (size.name == "mapping" && value == "none"));
    let known = ORDER.iter().filter_map(|name| parameters.iter().find(|size| size.name == *name && !none(size)));
    let said = |name: &str| ORDER.contains(&name) || matches!(name, "helix" | "gearbox");
    let others = parameters.iter().filter(|size| !said(&size.name) && !none(size));
    let phrases: Vec<String> = known.chain(others).map(|size| phrase(size, rack, units)).collect();
    phrases.join(", ")
}

fn phrase(size: &Parameter, rack: bool, units: UnitSystem) -> String {
    let value = shown(size, units);
    match size.name.as_str() {
        "diameter" => format!("{value} diameter"),
        "lead" => format!("{value} {}", term("lead", "lead")),
        "grade" => grade(&value),
        "ends" => ends(&value),
        "supports" if value == "support-pair" => "a pair of supports that travels with the nut".into(),
        "preload" => preload(&value),
        "module" => format!("{} {value}", term("module", "module")),
        "teeth" => format!("{value}-tooth {}", term("pinion", "pinion")),
        "quality" => format!("quality {value}"),
        "ratio" if rack => format!("{} {value}:1", term("gearbox-ratio", "gearbox")),
        "ratio" if value == "1" => "driven 1:1".into(),
        "ratio" => format!("reduced {value}:1"),
        "bias" => format!("{value} {}", term("bias", "bias")),
        "motor" => format!("motor {value}"),
        "feedback" if value == "motor" => "measured at the motor".into(),
        "feedback" => format!("measured by {} {value}", term("linear-scale", "linear scale")),
        "mapping" => format!("{} by a table", term("table-of-corrections", "corrected")),
        other => format!("{} {value}", words::spaced(other)),
    }
}

fn shown(size: &Parameter, units: UnitSystem) -> String {
    match &size.value {
        // module, diameter and lead keep their millimetres: they are the name of the size, as it is ordered
        ParameterValue::Number { value, unit } if matches!(size.name.as_str(), "module" | "diameter" | "lead") => {
            format!("{} {unit}", figure::figure(*value, 4))
        }
        ParameterValue::Number { value, unit } => figure::quantity(Some(*value), unit, units, 4),
        ParameterValue::Word { value, .. } => value.clone(),
    }
}

/// "ground-p3" is a manufacture and a grade; any other word stands as it is.
fn grade(word: &str) -> String {
    let name = term("grade", "grade");
    match word.rsplit_once('-') {
        Some((manufacture, grade)) if !grade.is_empty() && grade.len() <= 3 => {
            format!("{}, {name} {}", words::spaced(manufacture), grade.to_uppercase())
        }
        _ => format!("{name} {word}"),
    }
}

fn ends(word: &str) -> String {
    match word {
        "fixed-fixed" => "both ends fixed".into(),
        "fixed-fixed-stretched" => "both ends fixed and stretched".into(),
        "fixed-supported" => "one end fixed, one supported".into(),
        "fixed-free" => "one end fixed, one free".into(),
        other => format!("ends {other}"),
    }
}

fn preload(word: &str) -> String {
    let name = term("preload", "preload");
    match word {
        "clearance" => format!("no {name}"),
        "light" | "medium" | "heavy" => format!("{word} {name}"),
        other => format!("{name} {other}"),
    }
}
