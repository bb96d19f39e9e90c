//! The page through an HTML parser: what is in it, that every link leads somewhere, and that nothing a user wrote is active.

use super::record;
use axiswright::report::html;
use axiswright::units::UnitSystem;
use scraper::{ElementRef, Html, Selector};
use std::collections::BTreeSet;

fn all<'p>(page: &'p Html, selector: &str) -> Vec<ElementRef<'p>> {
    page.select(&Selector::parse(selector).expect("a selector")).collect()
}

fn text(element: ElementRef<'_>) -> String {
    element.text().collect::<Vec<_>>().concat().trim().to_string()
}

#[test]
fn the_page_is_whole_html_with_one_title_three_parts_and_headings_in_order() {
    let page = Html::parse_document(&html(&record(), UnitSystem::Metric));
    assert_eq!(page.errors, Vec::<std::borrow::Cow<'_, str>>::new(), "no fault of HTML");
    assert_eq!(all(&page, "html[lang=en] > head > title").len(), 1);
    assert_eq!(all(&page, "h1").len(), 1);
    let parts: Vec<String> = all(&page, "h2").into_iter().map(text).collect();
    assert_eq!(
        parts,
        [
            "Part one: for the customer",
            "Part two: for the engineer",
            "Part three: for the reviewer",
            "Words of the trade"
        ]
    );
    let levels: Vec<u8> = all(&page, "h1, h2, h3, h4, h5, h6")
        .iter()
        .map(|heading| heading.value().name().as_bytes()[1] - b'0')
        .collect();
    // no level is left out on the way down, but for the words of the trade, which are small headings of their own
    let jumps = levels.windows(2).filter(|pair| pair[1] > pair[0] + 1).count();
    assert!(jumps <= 1, "{levels:?}");
}

#[test]
fn every_table_has_a_head_and_no_row_is_longer_than_it() {
    let page = Html::parse_document(&html(&record(), UnitSystem::Metric));
    let tables = all(&page, "table");
    assert!(tables.len() > 20, "{}", tables.len());
    for table in tables {
        let cells = |row: ElementRef<'_>, name: &str| row.select(&Selector::parse(name).expect("a selector")).count();
        let rows: Vec<ElementRef<'_>> = table.select(&Selector::parse("tr").expect("a selector")).collect();
        let heads = cells(rows[0], "th");
        assert!(heads > 1, "{}", text(table));
        for row in &rows[1..] {
            assert_eq!(cells(*row, "td"), heads, "{}", text(*row));
        }
    }
}

#[test]
fn every_link_leads_to_one_place_of_the_page() {
    let page = Html::parse_document(&html(&record(), UnitSystem::Metric));
    let ids: Vec<&str> = all(&page, "[id]").into_iter().filter_map(|element| element.value().id()).collect();
    let different: BTreeSet<&str> = ids.iter().copied().collect();
    assert_eq!(different.len(), ids.len(), "every id is there once");
    let links = all(&page, "a");
    assert!(!links.is_empty());
    for link in links {
        let target = link.value().attr("href").expect("a link leads somewhere");
        let place = target.strip_prefix('#').unwrap_or_else(|| panic!("{target} leads out of the page"));
        assert!(different.contains(place), "{target}: {}", text(link));
    }
}

#[test]
fn nothing_that_a_user_wrote_is_active() {
    const HOSTILE: &str = "<script>alert(1)</script> | ` `` ``` [x](https://example.org) ![y](javascript:z) <img src=x onerror=y> \
                           <a href=\"https://example.org\">a</a> <https://example.org> &lt;b&gt; \u{202e} \\ *s* _e_\n\n# heading\n\n- item\n| a | b |";
    let honest = Html::parse_document(&html(&record(), UnitSystem::Metric));
    let mut record = record();
    record.machine_name = HOSTILE.into();
    record.currency = HOSTILE.into();
    for axis in &mut record.axes {
        axis.purpose = Some(HOSTILE.into());
        axis.name = format!("{} {HOSTILE}", axis.name);
        for line in &mut axis.requirement {
            line.value = HOSTILE.into();
        }
        let drives = axis.chosen.iter_mut().chain(&mut axis.runners_up);
        for part in drives.flat_map(|drive| &mut drive.components) {
            part.designation = HOSTILE.into();
        }
    }
    for assumed in &mut record.assumptions {
        (assumed.value, assumed.source) = (HOSTILE.into(), HOSTILE.into());
    }
    for input in &mut record.inputs {
        input.name = HOSTILE.into();
    }
    let page = Html::parse_document(&html(&record, UnitSystem::Metric));
    for active in
        ["script", "img", "iframe", "object", "embed", "form", "link", "base", "a[href^=http]", "a[href^=javascript]"]
    {
        assert_eq!(all(&page, active).len(), 0, "{active}");
    }
    for element in all(&page, "*") {
        let events: Vec<&str> =
            element.value().attrs().map(|(name, _)| name).filter(|name| name.starts_with("on")).collect();
        assert!(events.is_empty(), "{events:?} on {}", element.value().name());
    }
    // as many tables, rows and headings as before: nothing breaks out of its cell or line; equal parts share an item of a list
    for structure in ["table", "tr", "h1", "h2", "h3", "figure"] {
        assert_eq!(all(&page, structure).len(), all(&honest, structure).len(), "{structure}");
    }
    assert!(text(all(&page, "h1")[0]).contains("<script>alert(1)</script>"), "it is told as it was written");
}
