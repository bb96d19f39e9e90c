//! The reports of all examples as they were last read and found good: page one word for word, every other section, picture and
//! table by its hash.
//!
//! Where a change is meant, `AXISWRIGHT_REWRITE=1 cargo test --test reports` writes them anew; then read what changed.

use axiswright::pipeline::{load, recommend};
use axiswright::report::{candidates, report};
use axiswright::units::UnitSystem;
use scraper::{Html, Selector};
use sha2::{Digest, Sha256};
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

fn hash(text: &str) -> String {
    Sha256::digest(text.as_bytes()).iter().take(8).map(|byte| format!("{byte:02x}")).collect()
}

/// Page one as it is; of the rest one line a section.
fn outline(markdown: &str) -> String {
    let begin = markdown.find("\n## Part two").expect("a report has a part for the engineer");
    let mut out = markdown[..begin].to_string();
    out.push_str("\n---\n");
    let mut section = String::new();
    let mut close = |section: &mut String| {
        let heading = section.lines().next().unwrap_or_default().to_string();
        out.push_str(&format!("{} {:>5} lines  {heading}\n", hash(section), section.lines().count()));
        section.clear();
    };
    for line in markdown[begin + 1..].lines() {
        if line.starts_with('#') && !section.is_empty() {
            close(&mut section);
        }
        section.push_str(line);
        section.push('\n');
    }
    close(&mut section);
    out
}

/// Every link of a page leads to one place of it, and nothing in it is fetched or run.
fn links_lead_somewhere(page: &str) {
    let page = Html::parse_document(page);
    assert!(page.errors.is_empty(), "{:?}", page.errors);
    let all = |selector: &str| -> Vec<_> {
        page.select(&Selector::parse(selector).expect("a selector")).map(|found| found.value().clone()).collect()
    };
    let ids: Vec<String> = all("[id]").iter().filter_map(|element| element.id().map(String::from)).collect();
    let different: BTreeSet<&String> = ids.iter().collect();
    assert_eq!(different.len(), ids.len(), "every id is there once");
    for link in all("a") {
        let target = link.attr("href").and_then(|target| target.strip_prefix('#')).expect("a link into the page");
        assert!(ids.iter().any(|id| id == target), "nothing is called {target}");
    }
    assert!(all("script, img, iframe, link, object, form").is_empty());
}

fn example(name: &str) {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let inputs = load(&root.join(format!("docs/examples/{name}.yaml")), &[], &[]).expect("the example is read");
    let record = recommend(&inputs, false);
    let whole = report(&record, UnitSystem::Metric);
    assert_eq!(report(&record, UnitSystem::Metric), whole, "the same record gives the same bytes");
    let inch = report(&record, UnitSystem::Inch);
    assert!(inch.markdown != whole.markdown);
    for text in [&whole.markdown, &whole.html, &inch.markdown] {
        assert!(!text.contains("NaN") && !text.contains("{{") && !text.contains("{%"));
    }
    links_lead_somewhere(&whole.html);
    let mut told = outline(&whole.markdown);
    for chart in &whole.charts {
        roxmltree::Document::parse(&chart.svg).unwrap_or_else(|error| panic!("{}: {error}", chart.file));
        assert!(!chart.svg.contains("NaN"), "{}", chart.file);
        told.push_str(&format!("{} {}\n", hash(&chart.svg), chart.file));
    }
    told.push_str(&format!("{} candidates.csv\n", hash(&candidates(&record).expect("a table"))));
    let place: PathBuf = root.join(format!("tests/data/reports/{name}.txt"));
    if std::env::var_os("AXISWRIGHT_REWRITE").is_some() {
        std::fs::write(&place, &told).expect("the file is written");
    }
    let kept = std::fs::read_to_string(&place).unwrap_or_default();
    let differ: Vec<(&str, &str)> =
        kept.lines().zip(told.lines()).filter(|(kept, told)| kept != told).take(8).collect();
    assert!(kept == told, "the report of {name} is another one: {differ:#?}");
}

#[test]
fn hull_gantry() {
    example("hull-gantry");
}

#[test]
fn glass_table() {
    example("glass-table");
}

#[test]
fn panel_drilling() {
    example("panel-drilling");
}

#[test]
fn tray_loader() {
    example("tray-loader");
}

#[test]
fn impossible() {
    example("impossible");
}
