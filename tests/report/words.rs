//! The glossary and the links into it.

use crate::reading::{read, slug};
use crate::record;
use axiswright::report::markdown;
use axiswright::units::UnitSystem;
use pulldown_cmark::HeadingLevel;

#[test]
fn every_link_leads_to_one_heading_of_the_glossary() {
    let reading = read(&markdown(&record(), UnitSystem::Metric));
    let all: Vec<String> = [HeadingLevel::H1, HeadingLevel::H2, HeadingLevel::H3, HeadingLevel::H4]
        .into_iter()
        .flat_map(|level| reading.headings(level))
        .map(slug)
        .collect();
    assert!(reading.links.len() > 6, "{:?}", reading.links);
    for link in &reading.links {
        let target = link.strip_prefix('#').expect("a link inside the document");
        assert_eq!(all.iter().filter(|heading| *heading == target).count(), 1, "{link}");
    }
}

#[test]
fn a_word_is_linked_at_its_first_use_only() {
    let reading = read(&markdown(&record(), UnitSystem::Metric));
    for (index, link) in reading.links.iter().enumerate() {
        assert!(!reading.links[..index].contains(link), "{link} is linked twice");
    }
    for word in ["helical-rack", "module", "ball-screw", "lead", "utilisation"] {
        assert!(reading.links.contains(&format!("#{word}")), "{word}");
    }
}

#[test]
fn the_report_has_no_marks_left_over() {
    let text = markdown(&record(), UnitSystem::Metric);
    assert!(!text.contains(['\u{e000}', '\u{e001}', '\u{e002}']));
}

#[test]
fn the_standing_of_every_source_is_told_in_the_words_of_the_sources() {
    for standing in axiswright::source::Standing::ALL {
        let mut record = record();
        record.rules[0].sources[0].standing = standing.key().into();
        record.rules[0].sources[0].citation = "some citation".into();
        let reading = read(&markdown(&record, UnitSystem::Metric));
        let shown = &reading.tables_under("Rules applied")[0][1][5];
        assert_eq!(*shown, format!("some citation ({})", standing.words()));
    }
}
