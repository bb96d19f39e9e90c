//! What users wrote stays text; numbers stay on their side of the limit; the same record gives the same bytes.

use crate::reading::{Block, read};
use crate::record;
use axiswright::record::{Amount, DecisionRecord, ParameterValue, ParetoPoint};
use axiswright::report::{escape, markdown};
use axiswright::units::UnitSystem;
use proptest::prelude::*;

const NASTY: &str =
    "a | b <script>alert(1)</script> `code` *bold* [link](javascript:x) # \\ _it_ ~~gone~~ & &amp; \nnew";

fn with_nasty_texts() -> DecisionRecord {
    let mut record = record();
    record.machine_name = NASTY.into();
    record.axes[0].purpose = Some(NASTY.into());
    record.axes[0].name = NASTY.into();
    for assumed in &mut record.assumptions {
        assumed.key = assumed.key.replace("axes.long.", &format!("axes.{NASTY}."));
    }
    record.waivers[0].reason = NASTY.into();
    record.waivers[0].by = "- item".into();
    let chosen = record.axes[0].chosen.as_mut().expect("a drive");
    chosen.components[0].designation = "a|b`c".into();
    chosen.parameters[0].value = ParameterValue::Word { value: NASTY.into(), unit: "1".into() };
    record
}

fn shape(reading: &crate::reading::Reading) -> Vec<String> {
    let name = |block: &Block| match block {
        Block::Heading(level, _) => format!("heading {level}"),
        Block::Table(rows) => format!("table {:?}", rows.iter().map(Vec::len).collect::<Vec<_>>()),
        Block::Item(_) => "item".into(),
        Block::Paragraph(_) => "paragraph".into(),
    };
    reading.blocks.iter().map(name).collect()
}

#[test]
fn what_users_wrote_changes_no_structure_and_brings_no_markup() {
    let plain = read(&markdown(&record(), UnitSystem::Metric));
    let nasty = read(&markdown(&with_nasty_texts(), UnitSystem::Metric));
    assert_eq!(shape(&plain), shape(&nasty));
    assert_eq!(nasty.html, Vec::<String>::new());
    assert!(nasty.links.iter().all(|link| link.starts_with('#')), "{:?}", nasty.links);
    let waivers = nasty.tables_under("Waivers")[0];
    assert_eq!(waivers[1][2], NASTY.replace('\n', " ").split_whitespace().collect::<Vec<_>>().join(" "));
    let bill = nasty.blocks.iter().find_map(|block| match block {
        Block::Table(rows) if rows[0][0] == "part" => Some(rows),
        _ => None,
    });
    assert_eq!(bill.expect("a bill of materials")[1][1], "a|b`c");
}

proptest! {
    #[test]
    fn any_text_reads_as_itself(text in "[ -~äµ²\n]{1,40}") {
        let wanted = text.replace('\n', " ");
        prop_assume!(!wanted.trim().is_empty());
        for page in [format!("{}\n", escape(&text)), format!("| x |\n|---|\n| {} |\n", escape(&text))] {
            let reading = read(&page);
            prop_assert!(reading.html.is_empty() && reading.links.is_empty());
            let shown = match reading.blocks.last() {
                Some(Block::Table(rows)) => rows[1][0].clone(),
                Some(Block::Paragraph(text)) => text.clone(),
                other => panic!("{other:?} for {text:?}"),
            };
            prop_assert_eq!(shown.trim(), wanted.trim());
        }
    }
}

#[test]
fn rounding_turns_no_verdict() {
    let mut record = record();
    let chosen = record.axes[1].chosen.as_mut().expect("a drive");
    let finding = &mut chosen.findings[0];
    let limit = finding.limit.expect("a limit");
    for (factor, used, verdict) in
        [(0.9999, "99.99 %", "✔ pass"), (1.0, "100 %", "✔ pass"), (1.000_02, "100.1 %", "✘ fail")]
    {
        let finding = &mut record.axes[1].chosen.as_mut().expect("a drive").findings[0];
        finding.demand = Some(limit * factor);
        finding.utilisation = Some(factor);
        finding.verdict = if factor > 1.0 { "fail" } else { "pass" }.into();
        let reading = read(&markdown(&record, UnitSystem::Metric));
        let tables = reading.tables_under("The drive chosen, axis cross");
        let row = &tables.iter().find(|rows| rows[0][0] == "rule").expect("findings")[1];
        assert_eq!((row[5].as_str(), row[6].as_str()), (used, verdict));
        let (demand, limit) = (number(&row[3]), number(row[4].trim_start_matches("≤ ")));
        assert_eq!(demand > limit, factor > 1.0, "{row:?}");
    }
}

fn number(text: &str) -> f64 {
    let digits = text.split(' ').next().unwrap_or("").replace('\u{202f}', "");
    digits.parse().unwrap_or_else(|_| panic!("`{text}` is no number with a unit"))
}

#[test]
fn inch_output_converts_lengths_speeds_masses_and_forces() {
    let reading = read(&markdown(&record(), UnitSystem::Inch));
    let requirement = reading.tables_under("Requirement as understood, axis long")[0];
    let value = |what: &str| requirement.iter().find(|row| row[0] == what).expect("the line")[1].clone();
    // 11 m, 1850 kg, 50 m/min, 80 N by the exact definitions of inch, pound and standard gravity
    assert_eq!(value("travel"), "433.07 in");
    assert_eq!(value("moved mass"), "4078.6 lb");
    assert_eq!(value("speed"), "1968.5 in/min");
    assert_eq!(value("wiper force"), "17.985 lbf");
    let glance = reading.tables_under("The machine at a glance")[0];
    assert_eq!(glance[1][4], "7.87 mil / 4.39 mil");
}

/// The name of a metric size is metric for every reader; error and growth of one machine have one unit.
#[test]
fn sizes_keep_their_millimetres_and_lengths_of_one_line_their_unit() {
    let mut record = record();
    let millimetres = |value| Some(Amount { value: Some(value), unit: "mm".into() });
    record.machine.tool_point_error = millimetres(0.087);
    record.machine.tool_point_growth = millimetres(0.278);
    let customer = |record: &DecisionRecord, units| {
        let text = markdown(record, units);
        text[..text.find("## Part two").expect("part two")].to_string()
    };
    let inch = customer(&record, UnitSystem::Inch);
    assert!(inch.contains(" mm diameter") && !inch.contains(" in diameter"));
    let text = customer(&record, UnitSystem::Metric);
    assert!(text.contains("0.087 mm") && text.contains("growth with temperature on top 0.278 mm"), "{text}");
    record.machine.tool_point_growth = millimetres(0.05);
    let text = customer(&record, UnitSystem::Metric);
    assert!(text.contains(" 87 µm") && text.contains("growth with temperature on top 50 µm"), "{text}");
}

/// Grade 7 of at most 7 is allowed and says nothing about reserve.
#[test]
fn a_class_that_is_just_allowed_is_not_the_tightest_rule() {
    let mut record = record();
    let chosen = record.axes[1].chosen.as_mut().expect("a drive");
    chosen.findings.retain(|finding| finding.obligation == "shall" && finding.verdict == "pass");
    let finding = &mut chosen.findings[0];
    (finding.characteristic, finding.utilisation) = ("grade-number".into(), Some(1.0));
    let text = markdown(&record, UnitSystem::Metric);
    let customer = &text[..text.find("## Part two").expect("part two")];
    assert!(!customer.contains("The tightest uses 100 %") && !customer.contains("utilisation 100 %"), "{customer}");
}

/// 2^20 steps: a count that is given is not rounded.
#[test]
fn a_given_count_keeps_all_its_digits() {
    let mut record = record();
    let line = &mut record.axes[1].chosen.as_mut().expect("a drive").worksheet[0];
    (line.value, line.unit, line.origin, line.formula) = (Some(1_048_576.0), "1".into(), "catalog".into(), None);
    assert!(markdown(&record, UnitSystem::Metric).contains("1\u{202f}048\u{202f}576"));
}

/// Of points whose accuracy reads the same only the first is shown.
#[test]
fn cost_against_accuracy_shows_only_gains_that_can_be_seen() {
    let mut record = record();
    let point = |merit, tool_error| ParetoPoint {
        family: "ball-screw".into(),
        parameters: Vec::new(),
        merit,
        purchase: merit,
        whole_life: merit,
        tool_error,
        drive_mass: 1.0,
    };
    record.axes[0].pareto_set = vec![point(100.0, 24.93), point(101.0, 24.92), point(102.0, 24.6), point(103.0, 24.59)];
    let reading = read(&markdown(&record, UnitSystem::Metric));
    let table = reading.tables_under("Cost against accuracy, axis long")[0];
    assert_eq!(table[1..].iter().map(|row| row[1].as_str()).collect::<Vec<_>>(), ["100", "102"]);
}

#[test]
fn the_same_record_gives_the_same_bytes() {
    assert_eq!(markdown(&record(), UnitSystem::Metric), markdown(&record(), UnitSystem::Metric));
}

#[test]
fn what_the_record_does_not_know_is_said() {
    let mut record = record();
    let chosen = record.axes[0].chosen.as_mut().expect("a drive");
    chosen.findings[0].demand = None;
    chosen.findings[0].utilisation = None;
    chosen.findings[0].verdict = "not-evaluated".into();
    chosen.worksheet[0].value = None;
    record.machine.peak_power = None;
    let text = markdown(&record, UnitSystem::Metric);
    assert!(text.contains("peak power from the supply not known"));
    assert!(text.contains("? not evaluated"));
    assert!(!text.contains("NaN") && !text.contains("None") && !text.contains("null"));
}

#[test]
fn the_sheet_of_a_rack_says_which_of_its_teeth_govern() {
    let mut record = record();
    let chosen = record.axes[0].chosen.as_mut().expect("a drive");
    assert_eq!(chosen.family, "helical-rack");
    for (rule, used) in [("pinion-pitting", 0.42), ("rack-root", 0.71), ("pinion-root", 0.64)] {
        let mut finding = chosen.findings[0].clone();
        finding.rule = rule.into();
        finding.utilisation = Some(used);
        chosen.findings.push(finding);
    }
    let said = "Of the strength of the teeth, the root of the rack governs: 71 % used.";
    assert_eq!(markdown(&record, UnitSystem::Metric).matches(said).count(), 1);
    // screws have no teeth
    record.axes.remove(0);
    assert!(!markdown(&record, UnitSystem::Metric).contains("strength of the teeth"));
}
