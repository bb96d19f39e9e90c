//! The order of the three parts, and what each outcome tells first.

use crate::reading::{Block, read};
use crate::record;
use axiswright::record::{CautionRecord, Outcome, StandardRecord};
use axiswright::report::markdown;
use axiswright::units::UnitSystem;
use pulldown_cmark::HeadingLevel;

#[test]
fn the_three_parts_come_in_order_and_the_customer_part_tells_the_decision_first() {
    let reading = read(&markdown(&record(), UnitSystem::Metric));
    assert_eq!(
        reading.headings(HeadingLevel::H2),
        [
            "Part one: for the customer",
            "Part two: for the engineer",
            "Part three: for the reviewer",
            "Words of the trade"
        ]
    );
    let customer: Vec<&str> = reading.headings(HeadingLevel::H3).into_iter().take(6).collect();
    assert_eq!(
        customer,
        [
            "Decision",
            "The machine at a glance",
            "Why, and why not",
            "What would change this",
            "What nearly did not fit",
            "Before you order"
        ]
    );
}

#[test]
fn the_decision_has_one_line_an_axis_in_the_order_of_the_brief() {
    let reading = read(&markdown(&record(), UnitSystem::Metric));
    let items = reading.items_under("Decision");
    assert_eq!(items.len(), 3);
    for (item, axis) in items.iter().zip(["long", "cross", "head"]) {
        assert!(item.starts_with(axis), "{item}");
    }
    // the number that decided: 50 m/min at 40 mm lead … here 80 mm lead would need 2000 1/min and may have 184
    assert!(items[0].contains("2000 1/min") && items[0].contains("184 1/min"), "{}", items[0]);
}

#[test]
fn the_machine_table_has_a_row_an_axis_with_required_and_predicted_accuracy() {
    let reading = read(&markdown(&record(), UnitSystem::Metric));
    let tables = reading.tables_under("The machine at a glance");
    let rows = tables[0];
    assert_eq!(rows.len(), 4);
    assert_eq!(rows[1][0], "long");
    assert_eq!(rows[1][4], "200 µm / 112 µm");
    assert_eq!(rows[1][1], "2 × helical rack");
    assert!(rows.iter().all(|row| row.len() == rows[0].len()));
}

#[test]
fn no_family_id_stands_before_the_customer() {
    let text = markdown(&record(), UnitSystem::Metric);
    let customer = &text[..text.find("## Part two").expect("part two")];
    let plain: String = read(customer)
        .blocks
        .iter()
        .map(|block| match block {
            Block::Heading(_, text) | Block::Item(text) | Block::Paragraph(text) => text.clone(),
            Block::Table(rows) => rows.concat().join(" "),
        })
        .collect();
    for id in axiswright::rule::FAMILIES {
        assert!(!plain.contains(id), "{id}");
    }
}

/// Every caution of the rulebook as a record carries it.
fn caution_texts() -> Vec<CautionRecord> {
    let book = axiswright::rule::load(&[]).expect("the rulebook");
    let record = |caution: &axiswright::rule::Caution| CautionRecord {
        id: caution.id.clone(),
        title: caution.title.clone(),
        readers: caution.readers.iter().map(|reader| reader.word().into()).collect(),
        text: caution.text.trim().to_string(),
        standards: caution
            .standards
            .iter()
            .map(|standard| StandardRecord { number: standard.number.clone(), about: standard.about.clone() })
            .collect(),
    };
    book.cautions.iter().map(record).collect()
}

#[test]
fn every_caution_that_a_record_carries_is_printed_and_no_other() {
    let mut record = record();
    record.caution_texts = caution_texts();
    for axis in &mut record.axes {
        axis.cautions.clear();
    }
    for caution in caution_texts() {
        for axis in &mut record.axes {
            axis.cautions = vec![caution.id.clone()];
        }
        let reading = read(&markdown(&record, UnitSystem::Metric));
        let items = reading.items_under("Before you order");
        for other in caution_texts() {
            let printed = items.iter().find(|item| item.contains(&other.text));
            assert_eq!(
                printed.is_some(),
                other.id == caution.id || other.id == "general",
                "{} for {}",
                other.id,
                caution.id
            );
            for standard in printed.iter().flat_map(|_| &other.standards) {
                assert!(printed.is_some_and(|item| item.contains(&standard.number)), "{}", standard.number);
            }
        }
    }
}

#[test]
fn a_caution_without_a_text_is_named() {
    let mut record = record();
    record.axes[0].cautions = vec!["some-new-caution".into()];
    let reading = read(&markdown(&record, UnitSystem::Metric));
    assert!(reading.items_under("Before you order").iter().any(|item| item.contains("some-new-caution")));
}

#[test]
fn when_nothing_is_admissible_the_nearest_miss_comes_first() {
    let mut record = record();
    record.outcome = Outcome::NothingAdmissible;
    record.machine.purchase = None;
    record.axes[2].outcome = Outcome::NothingAdmissible;
    record.axes[2].chosen = None;
    record.axes[2].families[0].nearest = record.axes[2].families[1].nearest.clone();
    record.axes[2].families[0].admissible = 0;
    record.axes[2].families[0].best = None;
    let reading = read(&markdown(&record, UnitSystem::Metric));
    assert_eq!(reading.headings(HeadingLevel::H3)[0], "What stands in the way");
    let Block::Paragraph(status) = &reading.under("Part one")[0] else { panic!("no status") };
    assert!(status.contains("No machine can be recommended") && status.contains("head"), "{status}");
    let tables = reading.tables_under("What stands in the way");
    assert_eq!(tables[0].len(), 3, "a head and one missed rule for each of two families");
    let rack = &tables[0][2];
    assert_eq!(
        (rack[0].as_str(), rack[1].as_str()),
        ("Helical rack", "The axis keeps the accuracy that the brief asks")
    );
    assert!(rack[2].contains("44 µm") && rack[3].contains("at most 40 µm"), "{rack:?}");
    assert_eq!(rack[4], "110 %");
    assert!(rack[5].contains("linear scale"), "the rule's remedy: {rack:?}");
    let drives = reading.items_under("What stands in the way");
    assert!(drives[1].contains("misses 1 of 7 binding rules"), "{drives:?}");
}

#[test]
fn when_a_limit_of_the_machine_decides_it_comes_first() {
    let mut record = record();
    record.outcome = Outcome::MachineLimit;
    record.machine.limits[0].reached = Some(61_000.0);
    record.machine.limits[0].verdict = "fail".into();
    for axis in &mut record.axes {
        axis.outcome = Outcome::MachineLimit;
        axis.chosen = None;
    }
    let reading = read(&markdown(&record, UnitSystem::Metric));
    assert_eq!(reading.headings(HeadingLevel::H3)[0], "Which limit of the machine stands in the way");
    let tables = reading.tables_under("Which limit");
    assert_eq!(tables[0][1], ["Price to buy", "61\u{202f}000 EUR", "60\u{202f}000 EUR", "✘ fail"]);
}

#[test]
fn findings_stand_worst_first_and_advice_is_called_advice() {
    let reading = read(&markdown(&record(), UnitSystem::Metric));
    let tables = reading.tables_under("The drive chosen, axis long");
    let findings = tables.iter().find(|rows| rows[0][0] == "rule").expect("a table of findings");
    let used: Vec<f64> = findings[1..]
        .iter()
        .map(|row| row[5].trim_end_matches(" %").parse().expect("a utilisation in percent"))
        .collect();
    assert!(used.is_sorted_by(|first, second| first >= second), "{used:?}");
    assert_eq!(findings[1][1], "advice");
    assert_eq!(findings[1][6], "△ advice not met");
}

#[test]
fn an_unused_waiver_is_flagged() {
    let reading = read(&markdown(&record(), UnitSystem::Metric));
    let rows = reading.tables_under("Waivers")[0];
    assert_eq!(rows[1][5], "used");
    assert!(rows[2][5].contains("not used"), "{:?}", rows[2]);
}

#[test]
fn the_reviewer_finds_inputs_census_rules_formulas_and_sign_off() {
    let record = record();
    let reading = read(&markdown(&record, UnitSystem::Metric));
    assert_eq!(reading.tables_under("Inputs")[0].len(), 1 + record.inputs.len());
    let census = reading.tables_under("What was considered")[0];
    assert_eq!(census.len(), 1 + record.axes.iter().map(|axis| axis.families.len()).sum::<usize>());
    assert_eq!(reading.tables_under("Rules applied")[0].len(), 1 + record.rules.len());
    assert_eq!(reading.tables_under("Formulas used")[0].len(), 1 + record.formulas.len());
    assert!(!reading.items_under("What is not calculated").is_empty());
    assert_eq!(reading.tables_under("Sign-off")[0].len(), 5);
}

#[test]
fn the_worksheet_keeps_its_working_order_and_shows_the_numbers_put_in() {
    let record = record();
    let reading = read(&markdown(&record, UnitSystem::Metric));
    let tables = reading.tables_under("The drive chosen, axis long");
    let sheet = tables.iter().find(|rows| rows[0][0] == "symbol").expect("a worksheet");
    let chosen = record.axes[0].chosen.as_ref().expect("a drive");
    let single: Vec<&str> =
        chosen.worksheet.iter().filter(|line| !line.id.contains('.')).map(|line| line.symbol.as_str()).collect();
    let shown: Vec<&str> = sheet[1..].iter().map(|row| row[0].as_str()).collect();
    assert_eq!(shown, single);
    let diameter = sheet.iter().find(|row| row[0] == "d").expect("the pinion's diameter");
    assert_eq!(diameter[3], "m_n = 3 mm, z = 20, β_h = 19.5283 deg");
    let phases = tables.iter().find(|rows| rows[0][0] == "phase").expect("a table of phases");
    assert_eq!(phases.len(), 1 + 8);
}

#[test]
fn the_error_budget_holds_only_what_goes_into_it() {
    let mut record = record();
    let chosen = record.axes[0].chosen.as_mut().expect("a drive");
    let mut beside = chosen.worksheet[0].clone();
    beside.id = "travel-variation".into();
    chosen.worksheet.push(beside);
    let reading = read(&markdown(&record, UnitSystem::Metric));
    let tables = reading.tables_under("The drive chosen, axis long");
    let budget = tables.iter().find(|rows| rows[0][0] == "contribution").expect("an error budget");
    let names: Vec<&str> = budget[1..].iter().map(|row| row[0].as_str()).collect();
    assert!(names.contains(&"pitch error of the rack line over the full travel"), "{names:?}");
    assert!(names.contains(&"reversal error"), "{names:?}");
    assert!(!names.iter().any(|name| name.contains("travel variation")), "{names:?}");
}

#[test]
fn a_rule_that_no_configuration_keeps_is_told_as_the_best_of_all_and_the_nearest_as_the_nearest() {
    let mut record = record();
    let told = |record: &axiswright::record::DecisionRecord| {
        let reading = read(&markdown(record, UnitSystem::Metric));
        reading.items_under("Why, and why not")[0].to_string()
    };
    let best = told(&record);
    assert!(best.contains("The best that any of them reaches") && best.contains("184 1/min"), "{best}");
    record.axes[0].families[0].ruled_out_by.clear();
    let nearest = record.axes[0].families[0].nearest.as_mut().expect("a nearest");
    nearest.findings[0].demand = nearest.findings[0].limit.map(|limit| limit * 1.5);
    let nearest = told(&record);
    assert!(nearest.contains("misses by least") && !nearest.contains("any of them reaches"), "{nearest}");
}

#[test]
fn a_cheaper_drive_that_lost_is_told_with_the_measure_that_decided() {
    let mut record = record();
    let best = record.axes[1].families[1].best.as_mut().expect("a rack");
    best.cost.whole_life = 8000.0;
    best.merit = 0.91;
    // without the advice that it does not follow it would be the better one
    best.unmet_advice = 0.2;
    let reading = read(&markdown(&record, UnitSystem::Metric));
    let told = reading.items_under("Decision")[1];
    assert!(told.contains("8000 EUR against 8400 EUR"), "{told}");
    assert!(told.contains("does not follow the advice") && told.contains("6.4, and at most 5"), "{told}");
    for finding in &mut record.axes[1].families[1].best.as_mut().expect("a rack").findings {
        if finding.obligation == "should" {
            finding.verdict = "pass".into();
        }
    }
    let reading = read(&markdown(&record, UnitSystem::Metric));
    let told = reading.items_under("Decision")[1];
    assert!(told.contains("0.91 against 0.84"), "{told}");
}

#[test]
fn the_safety_figures_are_lines_of_the_worksheet_with_limit_and_standing() {
    let mut record = record();
    let chosen = record.axes[2].chosen.as_mut().expect("a drive");
    let travel = chosen.line("travel").expect("the travel").clone();
    let line = |id: &str, value: Option<f64>, unit: &str| {
        let (id, unit) = (id.to_string(), unit.to_string());
        axiswright::record::WorksheetLine { id, value, unit, ..travel.clone() }
    };
    chosen.worksheet.push(line("holding-torque", Some(4.68), "N·m"));
    chosen.worksheet.push(line("lone-holding-torque", Some(0.0), "N·m"));
    // a way without end is told and not left out
    chosen.worksheet.push(line("coasting-distance", None, "mm"));
    let mut judged = chosen.findings[0].clone();
    judged.characteristic = "holding-torque".into();
    (judged.demand, judged.limit, judged.unit) = (Some(4.68), Some(7.38), "N·m".into());
    (judged.sense, judged.verdict, judged.obligation) = ("at-most".into(), "pass".into(), "shall".into());
    chosen.findings.push(judged);
    let reading = read(&markdown(&record, UnitSystem::Metric));
    let rows = |axis: &str| {
        let tables = reading.tables_under(&format!("The drive chosen, axis {axis}"));
        tables.into_iter().find(|rows| rows[0][0] == "figure").cloned().unwrap_or_default()
    };
    let upright = rows("head");
    assert_eq!(upright.len(), 3, "what is zero or not there is left out: {upright:?}");
    assert!(upright[1][0].contains("holds the load"), "{upright:?}");
    assert_eq!(upright[1][1..], ["4.68 N·m", "at most 7.38 N·m, ✔ pass", "brief"]);
    assert_eq!(upright[2][..2], ["coasting distance", "not stopped, or not known"]);
    assert!(rows("long").is_empty(), "a drive without such figures has no table");
}

#[test]
fn cost_cases_mark_the_least_and_what_a_rule_refuses() {
    let mut record = record();
    let drive = |family: &str, whole_life: f64, fails: &[&str]| axiswright::record::CostOfDrive {
        family: family.into(),
        whole_life,
        fails: fails.iter().map(|rule| rule.to_string()).collect(),
    };
    let case = |key: &str, value: Option<f64>, unit: &str, drives| axiswright::record::CostCase {
        key: key.into(),
        value,
        unit: unit.into(),
        drives,
    };
    let (rack, screw) = ("helical-rack", "ball-screw");
    record.axes[0].cost_cases = vec![
        case("", None, "", vec![drive(rack, 9000.0, &[]), drive(screw, 9500.0, &[])]),
        case("hours-per-year", Some(1750.0), "h", vec![drive(rack, 8800.0, &[]), drive(screw, 8100.0, &[])]),
        case("hours-per-year", Some(5250.0), "h", vec![drive(rack, 9900.0, &[]), drive(screw, 9800.0, &["nut-life"])]),
        case("discount-rate", Some(12.0), "%", vec![drive(rack, f64::NAN, &[]), drive(screw, 8000.0, &[])]),
    ];
    let reading = read(&markdown(&record, UnitSystem::Metric));
    let tables = reading.tables_under("Cost over the life if hours or discount rate differ, axis long");
    let rows = tables.first().expect("the table");
    assert_eq!(rows[0][1..], ["helical rack, chosen", "ball screw"]);
    assert!(rows[1][1].ends_with("◂ least") && !rows[1][2].contains('◂'), "{:?}", rows[1]);
    assert!(rows[2][0].starts_with("hours per year 1750 h") && rows[2][2].ends_with("◂ least"), "{:?}", rows[2]);
    assert!(
        rows[3][1].ends_with("◂ least") && rows[3][2].contains("fails"),
        "what fails is not the least: {:?}",
        rows[3]
    );
    assert!(rows[4][1].contains("not known") && rows[4][2].ends_with("◂ least"), "{:?}", rows[4]);
}

#[test]
fn the_cost_of_the_machine_sums_its_axes_kind_by_kind() {
    let mut record = record();
    let line = |item: &str, kind: &str, amount: f64| axiswright::record::CostLine {
        item: item.into(),
        kind: kind.into(),
        amount,
    };
    for (axis, energy) in record.axes.iter_mut().zip([100.0, 20.0, 3.0]) {
        let cost = &mut axis.chosen.as_mut().expect("a drive").cost;
        cost.lines = vec![
            line("racks and pinions", "purchase", 1000.0),
            line("energy a year", "yearly", energy),
            line("lubricant a year", "yearly", 40.0),
            line("lubrication and inspection, labour a year", "yearly", 200.0),
            line("exchange of gearboxes", "exchange", 500.0),
        ];
        (cost.purchase, cost.whole_life) = (1000.0, 4000.0);
    }
    let reading = read(&markdown(&record, UnitSystem::Metric));
    let tables = reading.tables_under("Cost of the machine");
    let last = tables[0].last().expect("the sums");
    assert_eq!(last[..], ["together", "3000 EUR", "123 EUR", "120 EUR", "600 EUR", "1500 EUR", "12\u{202f}000 EUR"]);
}

#[test]
fn a_rule_that_is_set_aside_is_told_on_page_one_with_who_did_it_and_until_when() {
    let mut record = record();
    let axis = &mut record.axes[0];
    let name = axis.name.clone();
    let finding = &mut axis.chosen.as_mut().expect("a drive").findings[0];
    finding.verdict = "waived".into();
    let rule = finding.rule.clone();
    let waiver = |until: Option<&str>| axiswright::record::WaiverRecord {
        rule: rule.clone(),
        axis: Some(name.clone()),
        reason: "tried".into(),
        by: "M. Example".into(),
        until: until.map(String::from),
        used: true,
    };
    for (until, said) in [(Some("2027-06-30"), "until 2027-06-30"), (None, "without a date")] {
        record.waivers = vec![waiver(until)];
        let text = markdown(&record, UnitSystem::Metric);
        let page_one = text.split("## Part two").next().expect("page one");
        assert!(page_one.contains(&format!("Set aside by the brief (by M. Example, {said}), “")), "{page_one}");
    }
}
