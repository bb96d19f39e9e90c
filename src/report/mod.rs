//! The recommendation for people: one document, three depths, made of the record and nothing else.
//!
//! Method: Rust builds the words and rounds the numbers, templates hold the layout. Every text is escaped
//! for Markdown where a template prints it, so that what a user wrote cannot break a table or bring in
//! markup. The same record gives the same bytes.
//! Limits: the turning points are those the record holds.

mod acceptance;
mod alternatives;
mod assumed;
mod budget;
mod canvas;
mod cautions;
mod chart;
mod cost;
pub mod crossover;
mod customer;
mod engineer;
mod figure;
mod glossary;
mod html;
mod inch;
mod live;
mod markup;
mod obstacles;
mod own_rules;
pub mod picture;
mod printer;
mod proposal;
mod reasons;
mod reviewer;
mod robustness;
mod safety;
mod servo;
mod sheet;
mod sizes;
mod table;
mod teeth;
mod tool_point;
mod turning;
mod view;
mod winner;
mod words;

pub use chart::Chart;
pub use figure::{change, pair, quantity, utilisation};
pub use live::{Live, Shown, live};
pub use markup::escape;
pub use printer::Printer;
pub use proposal::{proposal, proposal_piece};
pub use table::{bill_of_materials, candidates, workbook};

use crate::record::{CandidateRecord, DecisionRecord};
use crate::units::UnitSystem;
use printer::tidy;
use serde::Serialize;
use std::sync::LazyLock;
use view::View;

static PRINTER: LazyLock<Printer> = LazyLock::new(|| {
    Printer::new(&[
        ("document.md", include_str!("templates/document.md.j2")),
        ("customer.md", include_str!("templates/customer.md.j2")),
        ("engineer.md", include_str!("templates/engineer.md.j2")),
        ("reviewer.md", include_str!("templates/reviewer.md.j2")),
        ("glossary.md", include_str!("templates/glossary.md.j2")),
    ])
});

#[derive(Serialize)]
struct Document<'a> {
    machine: &'a str,
    chosen: bool,
    customer: customer::Customer,
    engineer: Vec<engineer::EngineerAxis>,
    tool_point: Vec<tool_point::Direction>,
    machine_cost: Vec<Vec<String>>,
    reviewer: reviewer::Reviewer,
    glossary: &'static [glossary::Entry],
}

/// A report with its pictures.
#[derive(Debug, Clone, PartialEq)]
pub struct Report {
    /// The report as Markdown; it names the pictures below [`CHARTS`].
    pub markdown: String,
    /// The report as one self-contained HTML page, the pictures in it.
    pub html: String,
    /// The pictures.
    pub charts: Vec<Chart>,
}

/// The folder in which the Markdown looks for its pictures.
pub const CHARTS: &str = "charts";

/// The report as Markdown without pictures, in the units of the reader.
pub fn markdown(record: &DecisionRecord, units: UnitSystem) -> String {
    written(&View { record, units }, &[])
}

/// The report with its pictures, in the units of the reader.
pub fn report(record: &DecisionRecord, units: UnitSystem) -> Report {
    let view = View { record, units };
    let axes = chart::of_record(&view);
    let markdown = written(&view, &axes);
    let charts: Vec<Chart> =
        axes.into_iter().flat_map(|one| one.drives.into_iter().flatten().chain(one.axis)).collect();
    let html = html::page(&format!("Linear drives: {}", record.machine_name), &markdown, &charts);
    Report { markdown, html, charts }
}

/// Every document of a decision folder that is made of the record, by its name in the folder; what it says when one cannot
/// be written.
pub fn documents(record: &DecisionRecord, units: UnitSystem) -> Result<Vec<(String, Vec<u8>)>, String> {
    let tables = || Ok::<_, String>((candidates(record)?, bill_of_materials(record)?, workbook(record)?));
    let (report, tables) = rayon::join(|| report(record, units), tables);
    let (candidates, parts, workbook) = tables?;
    let mut all = vec![
        ("recommendation.md".to_string(), report.markdown.into_bytes()),
        ("recommendation.html".to_string(), report.html.into_bytes()),
        ("candidates.csv".to_string(), candidates.into_bytes()),
        ("parts.csv".to_string(), parts.into_bytes()),
        ("machine.xlsx".to_string(), workbook),
    ];
    all.extend(report.charts.into_iter().map(|chart| (format!("{CHARTS}/{}", chart.file), chart.svg.into_bytes())));
    Ok(all)
}

fn written(view: &View, pictures: &[chart::AxisCharts]) -> String {
    let record = view.record;
    let document = Document {
        machine: &record.machine_name,
        chosen: record.outcome == crate::record::Outcome::Chosen,
        customer: customer::collect(view),
        engineer: engineer::collect(view, pictures),
        tool_point: tool_point::collect(view),
        machine_cost: cost::machine(view),
        reviewer: reviewer::collect(view),
        glossary: glossary::GLOSSARY,
    };
    let text = PRINTER.printed(&document);
    let text = markup::resolve(&text, glossary::explains);
    tidy(&text)
}

/// A drive of a record in one phrase with its main sizes.
pub fn drive_words(record: &DecisionRecord, drive: &CandidateRecord, units: UnitSystem) -> String {
    markup::resolve(&View { record, units }.drive(drive), |_| false)
}

/// The report as one self-contained HTML page, in the units of the reader.
pub fn html(record: &DecisionRecord, units: UnitSystem) -> String {
    report(record, units).html
}

/// A value with its unit as a reader of these units sees it, six digits: "39.37 in".
pub fn in_units(value: f64, unit: &str, units: UnitSystem) -> String {
    figure::quantity(Some(value), unit, units, 6)
}

/// A family in plain words: "ball screw with driven nut".
pub fn family_words(id: &str) -> String {
    markup::resolve(&words::family(id), |_| false)
}

/// The words of the trade that a report explains, with what they mean.
pub fn words_of_the_trade() -> impl Iterator<Item = (&'static str, &'static str)> {
    glossary::GLOSSARY.iter().map(|entry| (entry.word, entry.text))
}

/// What a family is, in plain words; empty for an unknown one.
pub fn family_text(id: &str) -> &'static str {
    let words = family_words(id);
    let entry = glossary::GLOSSARY.iter().find(|entry| entry.word.eq_ignore_ascii_case(&words));
    entry.map_or("", |entry| entry.text)
}
