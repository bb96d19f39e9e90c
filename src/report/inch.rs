//! Inch units for reading: which unit stands for which, and the conversion.
//!
//! Method: the factors are those of the table of units, nothing is calculated in inches. Limits: powers,
//! temperature differences, frequencies and torsional stiffness keep their units, as they are usual in
//! both worlds.

use crate::units::{Dimension, Unit, UnitSystem, parse_as};

/// The unit of the record, its dimension, and the unit an inch reader sees.
const INCH: &[(Dimension, &str, &str)] = &[
    (Dimension::Length, "mm", "in"),
    (Dimension::Length, "cm", "in"),
    (Dimension::Length, "m", "ft"),
    (Dimension::Length, "km", "ft"),
    (Dimension::Length, "µm", "mil"),
    (Dimension::Area, "mm²", "in²"),
    (Dimension::Mass, "kg", "lb"),
    (Dimension::Mass, "t", "lb"),
    (Dimension::Velocity, "m/min", "in/min"),
    (Dimension::Velocity, "m/s", "in/s"),
    (Dimension::Velocity, "mm/s", "in/s"),
    (Dimension::Velocity, "mm/min", "in/min"),
    (Dimension::Acceleration, "m/s²", "in/s²"),
    (Dimension::Acceleration, "mm/s²", "in/s²"),
    (Dimension::Jerk, "m/s³", "in/s³"),
    (Dimension::Jerk, "mm/s³", "in/s³"),
    (Dimension::Force, "N", "lbf"),
    (Dimension::Force, "kN", "lbf"),
    (Dimension::Torque, "N·m", "lbf·in"),
    (Dimension::Torque, "N·mm", "lbf·in"),
    (Dimension::Torque, "kN·m", "lbf·ft"),
    (Dimension::Pressure, "MPa", "ksi"),
    (Dimension::MomentOfInertia, "kg·m²", "lb·in²"),
    (Dimension::MomentOfInertia, "kg·cm²", "lb·in²"),
    (Dimension::LinearMassDensity, "kg/m", "lb/ft"),
    (Dimension::Stiffness, "N/µm", "lbf/in"),
    (Dimension::Stiffness, "N/mm", "lbf/in"),
];

/// From so many metres on a length is read in feet, not in inches.
const FAR: f64 = 100.0;

fn unit(dimension: Dimension, name: &str) -> Option<&'static Unit> {
    dimension.units().find(|unit| unit.name == name)
}

/// A value and its unit as the reader sees them.
pub fn shown(value: f64, unit_name: &str, system: UnitSystem) -> (f64, &str) {
    let pair = match system {
        UnitSystem::Metric => None,
        UnitSystem::Inch => INCH.iter().find(|(_, metric, _)| *metric == unit_name),
    };
    let units = pair.and_then(|&(dimension, metric, inch)| Some((unit(dimension, metric)?, unit(dimension, inch)?)));
    match units {
        Some((metric, inch)) => (value * metric.si / inch.si, inch.name),
        None => (value, unit_name),
    }
}

/// A text such as "11000 mm" as the reader sees it, and each quantity of a longer one; what is in inch units already stays.
pub fn shown_text(text: &str, system: UnitSystem) -> String {
    if system == UnitSystem::Inch && text.trim().split(' ').count() > 2 {
        return each_quantity(text);
    }
    let Some((number, name)) = text.trim().split_once(' ') else { return text.into() };
    let name = name.trim();
    if system == UnitSystem::Metric {
        // a long travel is read in metres
        return match number.parse::<f64>() {
            Ok(value) if name == "mm" && value >= 1000.0 => format!("{} m", super::figure::figure(value / 1000.0, 7)),
            _ => text.into(),
        };
    }
    let Some(&(dimension, ..)) = INCH.iter().find(|(_, metric, _)| *metric == name) else { return text.into() };
    match (parse_as(dimension, text), number.parse::<f64>()) {
        (Ok(_), Ok(value)) => {
            // a travel in metres is one in inches here, a height above the sea one in feet, as is rack by the metre, which has no text
            let (value, name) = if name == "m" && value.abs() < FAR { (value * 1000.0, "mm") } else { (value, name) };
            let (value, unit) = shown(value, name, system);
            format!("{} {unit}", super::figure::figure(value, 5))
        }
        _ => text.into(),
    }
}

/// A text in which every number with a metric unit behind it stands in inch units: "1300 mm up, up to 45 m/min".
fn each_quantity(text: &str) -> String {
    let words: Vec<&str> = text.trim().split(' ').collect();
    let mut out: Vec<String> = Vec::new();
    let mut at = 0;
    while let Some(word) = words.get(at) {
        let next = words.get(at + 1).copied().unwrap_or_default();
        let unit = next.trim_end_matches([',', ';', ':', '.', ')']);
        let begin = word.trim_start_matches('(');
        let metric = INCH.iter().any(|(_, metric, _)| *metric == unit) && begin.parse::<f64>().is_ok();
        if metric {
            let (open, close) = (&word[..word.len() - begin.len()], &next[unit.len()..]);
            out.push(format!("{open}{}{close}", shown_text(&format!("{begin} {unit}"), UnitSystem::Inch)));
            at += 2;
        } else {
            out.push((*word).into());
            at += 1;
        }
    }
    out.join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;

    // exact definitions: inch 25.4 mm, pound 0.453 592 37 kg, standard gravity (NIST Special Publication 811)
    #[test]
    fn metric_units_become_inch_units() {
        let near = |(value, unit): (f64, &str), wanted: f64, name: &str| {
            assert_eq!(unit, name);
            assert!((value / wanted - 1.0).abs() < 1e-12, "{value} {unit}");
        };
        near(shown(25.4, "mm", UnitSystem::Inch), 1.0, "in");
        near(shown(25.4, "µm", UnitSystem::Inch), 1.0, "mil");
        near(shown(25.4, "m/min", UnitSystem::Inch), 1000.0, "in/min");
        near(shown(0.453_592_37, "kg", UnitSystem::Inch), 1.0, "lb");
        near(shown(4.448_221_615_260_5, "N", UnitSystem::Inch), 1.0, "lbf");
        near(shown(4.448_221_615_260_5 * 0.0254, "N·m", UnitSystem::Inch), 1.0, "lbf·in");
        assert_eq!(shown(3.0, "kW", UnitSystem::Inch), (3.0, "kW"));
        assert_eq!(shown(25.4, "mm", UnitSystem::Metric), (25.4, "mm"));
    }

    #[test]
    fn every_pair_of_units_is_in_the_table_of_units() {
        for &(dimension, metric, inch) in INCH {
            assert!(unit(dimension, metric).is_some(), "{metric}");
            assert!(unit(dimension, inch).is_some(), "{inch}");
        }
    }

    #[test]
    fn texts_of_the_brief_are_converted() {
        assert_eq!(shown_text("60 mm", UnitSystem::Inch), "2.3622 in");
        assert_eq!(shown_text("2.54 m", UnitSystem::Inch), "100 in");
        assert_eq!(shown_text("1000 m", UnitSystem::Inch), "3280.8 ft");
        assert_eq!(shown_text("20 Hz", UnitSystem::Inch), "20 Hz");
        assert_eq!(shown_text("any", UnitSystem::Inch), "any");
        let moves = "60 an hour over 2540 mm up, up to 25.4 m/min, 2.54 m/s² and 20 Hz (0.0254 m)";
        let inches = "60 an hour over 100 in up, up to 1000 in/min, 100 in/s² and 20 Hz (1 in)";
        assert_eq!(shown_text(moves, UnitSystem::Inch), inches);
        assert_eq!(shown_text(moves, UnitSystem::Metric), moves);
        assert_eq!(shown_text("60 mm", UnitSystem::Metric), "60 mm");
        assert_eq!(shown_text("11000 mm", UnitSystem::Metric), "11 m");
    }
}
