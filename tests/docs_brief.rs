//! docs/brief.md and docs/examples tell the truth: every key, every default, every unit.

use axiswright::brief::{Brief, FAMILIES, defaults, load, load_file, starter};
use axiswright::units::*;
use std::path::Path;

const GUIDE: &str = include_str!("../docs/brief.md");
const EXAMPLES: &[&str] = &["glass-table", "hull-gantry", "impossible", "panel-drilling", "tray-loader"];

fn example(name: &str) -> Brief {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("docs/examples/{name}.yaml"));
    load_file(&path).unwrap_or_else(|faults| panic!("{faults}"))
}

/// The keys that the loader knows in a group, as it tells them itself.
fn known_keys(text: &str) -> Vec<String> {
    let faults = load("probe.yaml", text).unwrap_err();
    let told = faults.iter().filter_map(|fault| fault.help.as_deref()?.strip_prefix("known here: "));
    told.flat_map(|list| list.split(", ")).map(String::from).collect()
}

#[test]
fn the_guide_has_a_row_for_every_key_the_loader_knows() {
    let probes = [
        "qqqqqqqqqqqqqqqqqqqqqqqq: 1\n",
        "uncertainty: { qqqqqqqqqqqqqqqqqqqqqqqq: 1 }\n",
        "limits: { qqqqqqqqqqqqqqqqqqqqqqqq: 1 }\n",
        "prefer: { qqqqqqqqqqqqqqqqqqqqqqqq: 1 }\n",
        "axes: { x: { qqqqqqqqqqqqqqqqqqqqqqqq: 1 } }\n",
        "axes: { x: { duty: [{ qqqqqqqqqqqqqqqqqqqqqqqq: 1 }] } }\n",
        "axes: { x: { moves: [{ qqqqqqqqqqqqqqqqqqqqqqqq: 1 }] } }\n",
        "axes: { x: { counterbalance: { qqqqqqqqqqqqqqqqqqqqqqqq: 1 } } }\n",
        "axes: { x: { cable-chain: { qqqqqqqqqqqqqqqqqqqqqqqq: 1 } } }\n",
        "axes: { x: { contour: { qqqqqqqqqqqqqqqqqqqqqqqq: 1 } } }\n",
        "axes: { x: { settling: { qqqqqqqqqqqqqqqqqqqqqqqq: 1 } } }\n",
        "axes: { x: { guide-waviness: { qqqqqqqqqqqqqqqqqqqqqqqq: 1 } } }\n",
        "waivers: [{ qqqqqqqqqqqqqqqqqqqqqqqq: 1 }]\n",
    ];
    let keys: Vec<String> = probes.iter().flat_map(|probe| known_keys(probe)).collect();
    assert_eq!(keys.len(), 19 + 5 + 6 + 4 + 45 + 5 + 7 + 3 + 2 + 4 + 2 + 2 + 5);
    for key in keys {
        assert!(GUIDE.lines().any(|line| line.starts_with(&format!("| `{key}` |"))), "docs/brief.md lacks `{key}`");
    }
    for family in FAMILIES {
        assert!(GUIDE.contains(&format!("`{family}`")), "docs/brief.md lacks `{family}`");
    }
}

#[test]
fn the_guide_tells_the_defaults_that_are_used() {
    let rows = [
        ("years-in-service", defaults::YEARS_IN_SERVICE),
        ("hours-per-year", defaults::HOURS_PER_YEAR),
        ("discount-rate", defaults::DISCOUNT_RATE),
        ("energy-price", defaults::ENERGY_PRICE),
        ("downtime-cost", defaults::DOWNTIME_COST),
        ("temperature-swing", defaults::TEMPERATURE_SWING),
        ("supply-voltage", defaults::SUPPLY_VOLTAGE),
        ("supply-tolerance", defaults::SUPPLY_TOLERANCE),
        ("altitude", defaults::ALTITUDE),
        ("ambient-temperature", defaults::AMBIENT_TEMPERATURE),
        ("reliability", defaults::RELIABILITY),
        ("overtravel", defaults::OVERTRAVEL),
        ("drives", defaults::DRIVES),
        ("guide-friction", defaults::GUIDE_FRICTION),
        ("mass-offset", defaults::MASS_OFFSET),
        ("side-temperature-difference", defaults::SIDE_TEMPERATURE_DIFFERENCE),
        ("side-correction", defaults::SIDE_CORRECTION),
        ("guide-base", defaults::GUIDE_BASE),
        ("wiper-force", defaults::WIPER_FORCE),
    ];
    for (key, preset) in rows {
        let row = GUIDE.lines().find(|line| line.starts_with(&format!("| `{key}` |"))).unwrap();
        let cell = row.split('|').nth(3).unwrap().trim();
        let unit = if ["years", "h"].contains(&preset.unit) { "" } else { preset.unit };
        assert_eq!(cell, format!("{} {unit}", preset.value).trim(), "{key}");
    }
    let uncertainty = GUIDE.split("## `uncertainty`").nth(1).unwrap();
    for (key, preset) in [
        ("moved-mass", defaults::MASS_SPREAD),
        ("guide-friction", defaults::FRICTION_SPREAD),
        ("cutting-force", defaults::FORCE_SPREAD),
        ("temperature-swing", defaults::SWING_SPREAD),
        ("stiffness", defaults::STIFFNESS_SPREAD),
    ] {
        assert!(
            uncertainty.contains(&format!("| `{key}` | share, 0 to 100 % | {} {} |", preset.value, preset.unit)),
            "{key}"
        );
    }
    assert_eq!(defaults::JERK_PER_ACCELERATION.value, 1.0 / 0.05, "the guide says: over 50 ms");
    assert_eq!((defaults::CARRIAGE_STIFFNESS.value, defaults::CARRIAGE_STIFFNESS.unit), (200.0, "N/µm"));
    assert_eq!(defaults::CUTTING_SPEED_SHARE.value, 0.25, "the guide says: a quarter");
    assert_eq!((defaults::RIPPLE.value, defaults::RIPPLE.unit), (10.0, "µm"));
    let counterbalance = GUIDE.split("`counterbalance` is told by:").nth(1).unwrap();
    assert_eq!((defaults::COUNTERBALANCE_RIPPLE.value, defaults::COUNTERBALANCE_RIPPLE.unit), (10.0, "%"));
    assert!(counterbalance.contains("| `ripple` | share, up to 50 % | 10 % |"));
    assert_eq!(defaults::CABLE_CHAIN_FRICTION.value, 0.05);
    assert!(counterbalance.contains("| `friction` | ratio, 0 to 1 | 0.05 |"));
    assert_eq!(defaults::DUTY_SHARES, [0.2, 0.5, 0.3]);
}

#[test]
fn the_guide_lists_every_unit() {
    let dimensions = [
        ("length", Dimension::Length),
        ("angle", Dimension::Angle),
        ("share or ratio", Dimension::Ratio),
        ("time", Dimension::Time),
        ("mass", Dimension::Mass),
        ("speed", Dimension::Velocity),
        ("acceleration", Dimension::Acceleration),
        ("jerk", Dimension::Jerk),
        ("force", Dimension::Force),
        ("power", Dimension::Power),
        ("mass a length", Dimension::LinearMassDensity),
        ("frequency", Dimension::Frequency),
        ("temperature difference", Dimension::Temperature),
        ("temperature", Dimension::Celsius),
        ("voltage", Dimension::Voltage),
    ];
    for (name, dimension) in dimensions {
        let units: Vec<String> =
            dimension.units().filter(|unit| unit.name != "1").map(|unit| format!("`{}`", unit.name)).collect();
        let row = format!("| {name} | {} |", units.join(" "));
        assert!(GUIDE.lines().any(|line| line == row), "docs/brief.md needs the line\n{row}");
    }
}

#[test]
fn every_example_reads_and_says_that_it_is_invented() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("docs/examples");
    let mut found: Vec<String> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().file_name().to_string_lossy().into_owned())
        .filter_map(|name| name.strip_suffix(".yaml").map(String::from))
        .collect();
    found.sort();
    assert_eq!(found, EXAMPLES);
    for name in EXAMPLES {
        let brief = example(name);
        // the first line is for editors
        assert!(
            brief.text.lines().nth(1).is_some_and(|line| line.starts_with("# This scenario is invented")),
            "{name}"
        );
        assert_eq!(brief.name, format!("{name}.yaml"));
    }
    assert!(starter().lines().take(8).any(|line| line.contains("invented")));
}

#[test]
fn the_hull_gantry_is_a_ram_on_a_cross_slide_on_a_gantry_with_two_drives() {
    let brief = example("hull-gantry");
    assert_eq!(
        brief.from_the_leaves().iter().map(|&at| brief.axes[at].name.as_str()).collect::<Vec<_>>(),
        ["ram", "cross", "long"]
    );
    let long = &brief.axes[0];
    assert_eq!((long.travel.si(), long.drives.value, long.drive_spacing.map(Measure::si)), (11.0, 2, Some(3.6)));
    let travels: Vec<f64> = brief.axes.iter().map(|axis| axis.travel.si()).collect();
    assert_eq!(travels, [11.0, 3.2, 0.7]);
}

#[test]
fn the_glass_table_in_inches_arrives_in_si() {
    // inch 25.4 mm, pound 0.453 592 37 kg, °F 5/9 K (NIST Special Publication 811, from memory)
    let brief = example("glass-table");
    let bridge = &brief.axes[0];
    assert!((bridge.travel.si() - 3.81).abs() < 1e-12);
    assert!((bridge.moved_mass.si() - 281.227_269_4).abs() < 1e-9);
    assert!((bridge.speed.si() - 1.27).abs() < 1e-12);
    assert!((brief.temperature_swing.value.si() - 5.0).abs() < 1e-12);
}

/// Inch 25.4 mm and pound 0.453 592 37 kg are exact (NIST Special Publication 811, from memory).
#[test]
fn the_other_spellings_that_the_page_names_are_read() {
    let page = include_str!("../docs/brief.md");
    assert!(page.contains("`48\"`, `130 lbs`, `1500 ipm`"));
    assert!((parse::<Length>("48\"").expect("inches").si() - 1.2192).abs() < 1e-12);
    assert!((parse::<Mass>("130 lbs").expect("pounds").si() - 58.967_008_1).abs() < 1e-9);
    assert!((parse::<Velocity>("1500 ipm").expect("inches a minute").si() - 0.635).abs() < 1e-12);
}
