//! The answer in short for somebody who is still filling in the brief: axis by axis the drive, its figures and why not the others.
//!
//! Method: the sentences of page one and the pictures of part two, laid out axis by axis; nothing is worded twice.
//! Limits: no assumptions and worksheets; those stand in the whole report.

use super::chart::{self, Chart};
use super::{Printer, cautions, customer, html, markup, tidy};
use crate::record::{DecisionRecord, Outcome};
use crate::report::view::View;
use crate::units::UnitSystem;
use serde::Serialize;
use std::sync::LazyLock;

static PRINTER: LazyLock<Printer> =
    LazyLock::new(|| Printer::new(&[("live.md", include_str!("templates/live.md.j2"))]));
/// The pictures that are shown beside the figures, by the end of their name.
const PICTURES: [&str; 3] = ["-speed-over-travel.svg", "-errors.svg", "-torque.svg"];

/// The answer in short.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Live {
    /// One sentence for all.
    pub status: String,
    /// One short line an axis: its name and its drive.
    pub lines: Vec<(String, String)>,
    /// What the machine costs and reaches, by name.
    pub figures: Vec<(String, String)>,
    /// What stands at a glance of each axis that has a drive: its name, and each figure by its name.
    pub glance: Vec<(String, Vec<(String, String)>)>,
    /// The answer as a piece of HTML without script and style.
    pub html: String,
    /// What to be careful of on single axes; that which holds for all is not among them.
    pub cautions: Vec<LiveCaution>,
}

/// A caution as plain text.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct LiveCaution {
    /// The axes that it holds for.
    pub axes: String,
    /// What it is about.
    pub title: String,
    /// What to look to.
    pub text: String,
    /// The standards to read.
    pub standards: String,
}

#[derive(Serialize)]
struct Document {
    chosen: bool,
    customer: customer::Customer,
    pictures: Vec<Vec<Picture>>,
}

#[derive(Serialize)]
struct Picture {
    title: String,
    file: String,
}

/// How much is shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Shown {
    /// The drives that win; the other families are still looked at.
    Winners,
    /// The other families beside them.
    Families,
    /// And the pictures of each axis.
    Pictures,
}

/// The answer in short.
pub fn live(record: &DecisionRecord, units: UnitSystem, shown: Shown) -> Live {
    let view = View { record, units };
    let charts = match shown {
        Shown::Pictures => pictures(&view),
        Shown::Winners | Shown::Families => vec![Vec::new(); record.axes.len()],
    };
    let picture = |chart: &Chart| Picture { title: chart.title.clone(), file: chart.file.clone() };
    let customer = customer::collect(&view);
    let customer = if shown == Shown::Winners { customer.before_others(&view) } else { customer };
    let plain = |text: &str| markup::resolve(text, |_| false);
    let figures = customer.whole.iter().map(|line| (plain(&line.name), plain(&line.value))).collect();
    let named = |(name, value): (&str, &str)| (name.to_string(), plain(value));
    let glance = customer.at_a_glance().map(|(axis, all)| (axis.to_string(), all.map(named).to_vec())).collect();
    let status = plain(&customer.status);
    let of_axes = customer.cautions.iter().filter(|caution| caution.id != cautions::GENERAL);
    let cautions = of_axes
        .map(|caution| LiveCaution {
            axes: plain(&caution.axes),
            title: plain(&caution.title),
            text: plain(&caution.text),
            standards: plain(&caution.standards),
        })
        .collect();
    let document = Document {
        chosen: record.outcome == Outcome::Chosen,
        customer,
        pictures: charts.iter().map(|charts| charts.iter().map(picture).collect()).collect(),
    };
    let text = PRINTER.printed(&document);
    let text = tidy(&plain(&text));
    let charts: Vec<Chart> = charts.into_iter().flatten().collect();
    let drive = |axis: &crate::record::AxisRecord| match &axis.chosen {
        Some(drive) => super::family_words(&drive.family),
        None => "no drive".into(),
    };
    let lines = record.axes.iter().map(|axis| (axis.name.clone(), drive(axis))).collect();
    Live { status, lines, figures, glance, html: html::piece(&text, &charts), cautions }
}

/// The pictures of each axis that are shown.
fn pictures(view: &View) -> Vec<Vec<Chart>> {
    let wanted = |chart: &Chart| PICTURES.iter().any(|end| chart.file.ends_with(end));
    let of = |charts: chart::AxisCharts| {
        let first = charts.drives.into_iter().next().unwrap_or_default();
        charts.axis.into_iter().chain(first).filter(wanted).collect()
    };
    chart::of_record(view).into_iter().map(of).collect()
}
