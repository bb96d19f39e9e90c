//! What keeping a drive asks: every entry of the catalogue is told of some drive and none of a drive without the part; intervals,
//! exchanges and grease by hand.

use crate::small::{self, HORIZONTAL, VERTICAL};
use axiswright::pipeline::recommend;
use axiswright::record::{AxisRecord, CandidateRecord, InstallationLine};
use std::collections::BTreeSet;

fn axis(text: &str) -> AxisRecord {
    recommend(&small::inputs(text), false).axes.into_iter().next().expect("an axis")
}

fn chosen(axis: &AxisRecord) -> &CandidateRecord {
    axis.chosen.as_ref().expect("a drive")
}

fn group<'d>(drive: &'d CandidateRecord, group: &str) -> Vec<&'d InstallationLine> {
    drive.upkeep.iter().filter(|line| line.group == group).collect()
}

/// The entries of the catalogue that a drive is told of.
fn entries(drive: &CandidateRecord) -> BTreeSet<String> {
    let named = drive.upkeep.iter().filter_map(|line| line.source.strip_prefix("catalogue: "));
    named.map(|name| name.split(',').next().unwrap_or_default().to_string()).collect()
}

fn of_family(text: &str, family: &str, more: &str) -> AxisRecord {
    axis(&format!("{text}    families: {family}\n{more}"))
}

#[test]
fn every_entry_is_told_of_a_drive_that_has_the_part_and_of_no_other() {
    let two = "    drives: 2\n    drive-spacing: 1.2 m\n";
    let gas = VERTICAL.replace("    people-below", "    counterbalance: { kind: gas, share: 60 % }\n    people-below");
    let weight =
        VERTICAL.replace("    people-below", "    counterbalance: { kind: weight, share: 60 % }\n    people-below");
    let strict = ["accuracy: 0.09 mm", "repeatability: 0.06 mm", "reversal: 0.06 mm"];
    let loose = strict.iter().fold(HORIZONTAL.to_string(), |text, line| {
        text.replace(
            &format!(
                "    {line}
"
            ),
            "",
        )
    });
    let drives = [
        of_family(HORIZONTAL, "ball-screw", ""),
        of_family(HORIZONTAL, "driven-nut", "    feedback: scale\n"),
        of_family(&loose, "helical-rack", two),
        of_family(HORIZONTAL, "twin-pinion", ""),
        of_family(&gas, "ball-screw", ""),
        of_family(&weight, "ball-screw", ""),
    ];
    let catalog = small::catalog();
    let expected: BTreeSet<String> = catalog
        .upkeeps
        .iter()
        .map(|entry| entry.designation.clone())
        .chain(catalog.exchanges.iter().map(|entry| entry.designation.clone()))
        .collect();
    let told: BTreeSet<String> = drives.iter().flat_map(|axis| entries(chosen(axis))).collect();
    let missing: Vec<&String> = expected.difference(&told).collect();
    assert!(missing.is_empty(), "told of no drive: {missing:?}");
    // what a level axis with one rack and one motor has not
    let level = entries(chosen(&of_family(&loose, "helical-rack", "    feedback: motor\n")));
    for name in [
        "look-brake",
        "look-belt",
        "look-nut",
        "look-screw",
        "look-bias",
        "look-sides",
        "look-gas",
        "look-scale",
        "exchange-screw",
    ] {
        assert!(!level.contains(name), "{name} is told of a rack: {level:?}");
    }
    assert!(level.contains("look-mesh") && level.contains("exchange-gearbox"));
}

#[test]
fn dust_halves_the_interval_and_doubles_the_grease() {
    let clean = of_family(HORIZONTAL, "ball-screw", "");
    let dusty = of_family(&format!("environment: [wood dust]\n{HORIZONTAL}"), "ball-screw", "");
    let (clean, dusty) = (chosen(&clean), chosen(&dusty));
    assert_eq!(clean.parameters, dusty.parameters, "the same screw");
    let value = |drive: &CandidateRecord, id: &str| drive.value(id).expect("a value");
    let near = |found: f64, expected: f64| assert!((found / expected - 1.0).abs() < 1e-9, "{found} {expected}");
    // 100 km at the mean speed of the duty: 0.3·36 + 0.5·6 = 13.8 m/min without ramps, less with them
    assert!(value(clean, "lubrication-interval") > 100e3 / 13.8 / 60.0);
    near(value(dusty, "lubrication-interval"), 0.5 * value(clean, "lubrication-interval"));
    near(value(dusty, "grease-need"), 2.0 * value(clean, "grease-need"));
    // 0.05 g for a millimetre of the diameter, 4000 h a year
    let doses = 4000.0 / value(clean, "lubrication-interval");
    near(value(clean, "grease-need"), doses * 5e-5 * value(clean, "nominal-diameter"));
}

#[test]
fn an_exchange_that_is_told_is_one_that_is_paid_for() {
    for (hours, times) in [(1000, None), (2000, Some("once")), (6000, Some("3 times"))] {
        // 15 000 h of a belt in ten years, or eight of 6000 h
        let years = if hours == 6000 { 8 } else { 10 };
        let brief = format!("hours-per-year: {hours}\nyears-in-service: {years}\n{HORIZONTAL}");
        let axis = of_family(&brief, "driven-nut", "");
        let drive = chosen(&axis);
        let belt = group(drive, "exchange").into_iter().find(|line| line.item == "belt").expect("the belt").clone();
        assert_eq!(belt.value, Some(15_000.0));
        let paid = drive.cost.lines.iter().find(|line| line.item == "exchange of belts").expect("the belts").amount;
        match times {
            None => assert!(belt.words.contains("lasts the years of service") && paid == 0.0, "{belt:?} {paid}"),
            Some(times) => assert!(belt.words.contains(times) && paid > 0.0, "{belt:?} {paid}"),
        }
    }
}

#[test]
fn what_is_looked_at_most_often_comes_first() {
    let axis = axis(VERTICAL);
    let intervals: Vec<f64> = group(chosen(&axis), "inspection").iter().filter_map(|line| line.value).collect();
    assert!(intervals.len() > 5 && intervals.is_sorted(), "{intervals:?}");
    for name in ["running in", "lubrication", "inspection", "wear", "exchange", "spares"] {
        assert!(!group(chosen(&axis), name).is_empty(), "{name}");
    }
}

#[test]
fn fitting_tells_belt_stretch_counterweight_and_buffer_where_they_are() {
    let weight =
        VERTICAL.replace("    people-below", "    counterbalance: { kind: weight, share: 60 % }\n    people-below");
    let has = |axis: &AxisRecord, group: &str| chosen(axis).installation.iter().any(|line| line.group == group);
    let nut = of_family(HORIZONTAL, "driven-nut", "");
    let rack = of_family(HORIZONTAL, "twin-pinion", "");
    let hung = of_family(&weight, "ball-screw", "");
    assert!(has(&nut, "belt") && has(&nut, "stretched screw") && has(&nut, "ends of the travel"));
    assert!(!has(&rack, "belt") && !has(&rack, "stretched screw") && has(&rack, "ends of the travel"));
    assert!(has(&hung, "counterbalance") && !has(&nut, "counterbalance"));
}

/// Every line of the lists names what exists, and a misspelt one is refused with the nearest name.
#[test]
fn lines_of_the_lists_name_what_is_there() {
    let mut inputs = small::inputs(HORIZONTAL);
    assert!(inputs.catalog.workshop_lines.len() > 50);
    let line =
        inputs.catalog.workshop_lines.iter_mut().find(|line| line.figure.is_some()).expect("a line with a figure");
    line.figure = Some("fastner-torque".into());
    let faults = axiswright::pipeline::check(inputs.clone()).expect_err("there is no such figure");
    let fault = faults.iter().next().expect("a fault");
    assert!(fault.message.contains("fastner-torque"), "{}", fault.message);
    assert_eq!(fault.help.as_deref(), Some("did you mean `fastener-torque`?"));
    let mut inputs = small::inputs(HORIZONTAL);
    let line = inputs.catalog.workshop_lines.iter_mut().find(|line| line.part.is_some()).expect("a line with a part");
    (line.figure, line.part) = (None, Some("rack-grade.joint-stp".into()));
    let faults = axiswright::pipeline::check(inputs).expect_err("there is no such key");
    assert_eq!(
        faults.iter().next().and_then(|fault| fault.help.as_deref()),
        Some("did you mean `rack-grade.joint-step`?")
    );
}

/// A house that words a line anew finds its own words in the list.
#[test]
fn the_lists_say_what_the_catalogue_says() {
    let mut inputs = small::inputs(HORIZONTAL);
    for line in &mut inputs.catalog.workshop_lines {
        line.item = format!("{} (house)", line.item);
    }
    for phrase in &mut inputs.catalog.exchange_phrases {
        phrase.phrase = format!("{} (house)", phrase.phrase);
    }
    let record = recommend(&inputs, false);
    let drive = record.axes[0].chosen.as_ref().expect("a drive");
    assert!(drive.installation.len() > 5);
    assert!(drive.installation.iter().all(|line| line.item.ends_with("(house)")));
    let exchanges: Vec<&InstallationLine> = group(drive, "exchange");
    assert!(exchanges.iter().filter(|line| line.words.ends_with("(house)")).count() > 3);
    assert!(
        drive
            .installation
            .iter()
            .chain(&drive.upkeep)
            .all(|line| !line.item.contains('{') && !line.words.contains('{'))
    );
}
