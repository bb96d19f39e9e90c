//! The HTML page: self-contained, harmless, and every link leads somewhere.

use super::record;
use axiswright::report::html;
use axiswright::units::UnitSystem;

#[test]
fn every_link_of_the_page_leads_to_a_heading_of_it() {
    let page = html(&record(), UnitSystem::Metric);
    let targets: Vec<&str> = page.split("href=\"#").skip(1).filter_map(|rest| rest.split('"').next()).collect();
    assert!(!targets.is_empty());
    for target in targets {
        assert!(page.contains(&format!("id=\"{target}\"")), "no heading for #{target}");
    }
}

#[test]
fn the_page_fetches_nothing_and_runs_nothing() {
    let mut record = record();
    record.machine_name = "<script>alert(1)</script> [x](https://example.org) <img src=x onerror=y>".into();
    record.axes[0].purpose = Some("[click](javascript:alert(1)) <b onclick=z>".into());
    let page = html(&record, UnitSystem::Metric);
    for forbidden in ["<script", "<img", "<b ", "href=\"http", "href=\"javascript", "src=", "@import", "url("] {
        let body = page.replace("src=x", "");
        assert!(!body.contains(forbidden), "{forbidden}");
    }
    assert!(page.contains("&lt;script&gt;"));
}
