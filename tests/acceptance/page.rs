//! Document and chart as a reader finds them.

use crate::{brief, record, result, table};
use axiswright::acceptance::{Acceptance, chart, markdown};
use axiswright::units::UnitSystem;
use pulldown_cmark::{Event, Options, Parser, Tag};

const AT: [f64; 7] = [12.0, 97.0, 211.0, 288.0, 405.0, 513.0, 577.0];

/// A machine whose name tries to be markup, with all that a drive of a rack can show.
fn whole(runs: usize) -> Acceptance {
    let mut asked = brief("600 mm", "    accuracy: 0.05 mm\n    repeatability: 0.02 mm\n    reversal: 10 µm\n");
    asked.machine = "<b>Mill|</b> & *co*".into();
    let lines = [
        ("travel-per-turn", 200.0, "mm"),
        ("teeth", 20.0, "1"),
        ("segment-length", 1000.0, "mm"),
        ("position-error", 20.0, "µm"),
        ("reversal-error", 3.0, "µm"),
        ("scatter", 0.6, "µm"),
        ("expansion", 11.5, "µm/(m·K)"),
    ];
    let text = table(&AT, runs, |target, sign, run| 0.03 * target - 4.0 * sign + (run as f64 * 1.7).sin());
    result(&asked, &record(&lines), &text, Some(1.0))
}

#[test]
fn the_document_has_its_parts_and_its_tables_are_tables() {
    let result = whole(5);
    let text = markdown(&result, UnitSystem::Metric, Some("deviation.svg"));
    let mut headings = Vec::new();
    let (mut tables, mut heading, mut widths) = (0, false, Vec::new());
    let mut cells = 0;
    for event in Parser::new_ext(&text, Options::ENABLE_TABLES) {
        match event {
            Event::Start(Tag::Heading { .. }) => heading = true,
            Event::Text(words) if heading => {
                headings.push(words.to_string());
                heading = false;
            }
            Event::Start(Tag::Table(columns)) => {
                tables += 1;
                widths.push(columns.len());
            }
            Event::Start(Tag::TableCell) => cells += 1,
            Event::Html(html) | Event::InlineHtml(html) => panic!("markup came through: {html}"),
            _ => {}
        }
    }
    assert_eq!(tables, 6, "{text}");
    assert_eq!(widths, [8, 3, 5, 4, 7, 3]);
    assert!(cells > 100, "{cells}");
    for part in ["Required and measured", "Quantities", "Predicted and measured", "What the deviations look like"] {
        assert!(headings.iter().any(|heading| heading == part), "{headings:?}");
    }
    for cause in &result.diagnosis.causes {
        assert!(text.contains(&cause.looks_like), "{}", cause.id);
    }
    assert!(text.contains("](deviation.svg)"));
    assert!(
        !markdown(&result, UnitSystem::Metric, None).contains("](deviation.svg)"),
        "no picture is named without one"
    );
}

#[test]
fn the_document_defers_once_and_claims_nothing() {
    for runs in [1, 5] {
        let text = markdown(&whole(runs), UnitSystem::Metric, None);
        assert_eq!(text.matches("a matter between customer and supplier").count(), 1);
        assert!(!text.to_lowercase().contains("conform") && !text.to_lowercase().contains("complian"), "{text}");
        assert!(text.contains("from memory") && !text.contains("NaN") && !text.contains("inf"), "{text}");
    }
}

#[test]
fn inch_readers_see_inches_and_the_numbers_of_json_stay() {
    let result = whole(5);
    let text = markdown(&result, UnitSystem::Inch, None);
    // 0.05 mm are 1.97 mil
    assert!(text.contains("1.97 mil") && text.contains("Deviations in mil."), "{text}");
    assert_eq!(result.checks[0].unit, "µm");
}

#[test]
fn the_chart_is_sound_svg_with_words_for_a_screen_reader() {
    for (runs, units) in [(5, UnitSystem::Metric), (1, UnitSystem::Metric), (5, UnitSystem::Inch)] {
        let svg = chart(&whole(runs), units).expect("a chart");
        let page = roxmltree::Document::parse(&svg).expect("sound XML");
        let root = page.root_element();
        assert_eq!(root.attribute("role"), Some("img"));
        let text = |name: &str| page.descendants().find(|node| node.has_tag_name(name)).and_then(|node| node.text());
        // names come without a name space prefix
        let find =
            |name: &str| page.descendants().find(|node| node.tag_name().name() == name).and_then(|node| node.text());
        assert!(text("title").or(find("title")).expect("a title").contains("<b>Mill|</b> & *co*"));
        assert!(find("desc").expect("a description").contains("at 7 targets"));
        assert!(!svg.contains("NaN") && !svg.contains("inf"), "{svg}");
        let (width, height) = (960.0, 560.0);
        let mut marks = 0;
        for node in page.descendants().filter(|node| node.is_element()) {
            for (name, limit) in
                [("x", width), ("cx", width), ("x1", width), ("x2", width), ("y", height), ("cy", height)]
            {
                if let Some(value) = node.attribute(name) {
                    let value: f64 = value.parse().expect("a number");
                    assert!((0.0..=limit).contains(&value), "{name} {value}");
                }
            }
            marks += usize::from(node.tag_name().name() == "circle");
        }
        assert_eq!(marks, AT.len() + 1, "a circle a target, and one in the legend");
        let words: String = page.descendants().filter_map(|node| node.text()).collect();
        assert!(words.contains(if units == UnitSystem::Inch { "deviation, mil" } else { "deviation, µm" }), "{words}");
        assert!(words.contains("allowed width of A"), "{words}");
    }
}

#[test]
fn a_limit_far_beyond_the_data_is_named_and_does_not_flatten_the_chart() {
    let asked = brief("600 mm", "    accuracy: 5 mm\n");
    let text = table(&AT, 5, |target, sign, _| 0.01 * target + sign);
    let svg = chart(&result(&asked, &record(&[]), &text, None), UnitSystem::Metric).expect("a chart");
    assert!(svg.contains("beyond the picture"));
}
