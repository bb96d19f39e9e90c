//! Every way by which a text of somebody else comes into the library, one function each.
//!
//! Method: a function takes bytes, lets the library read them and print what it has to say of them. It gives up only where the
//! library does, or where what is printed is out of all proportion. The targets of the fuzzer and the tests in
//! `tests/smoke` call the same functions.

use axiswright::acceptance::{self, Parts, Stretch};
use axiswright::catalog::{self, Catalog, KINDS};
use axiswright::pipeline::{self, Inputs};
use axiswright::units::{Dimension, Length, Measure, UNITS, UnitSystem, parse_as, print, significant};
use axiswright::yaml::{Document, Faults};
use axiswright::{DecisionRecord, Rulebook, audit, calc, choice, report, rule, web};
use std::collections::BTreeSet;
use std::sync::LazyLock;

#[allow(dead_code)]
#[path = "../docs_commands/small.rs"]
mod small;

/// One way in.
pub struct Entry {
    /// The name of its target.
    pub name: &'static str,
    /// Reads the bytes.
    pub read: fn(&[u8]),
    /// So many runs take about a second without optimisation.
    pub a_second: usize,
}

/// All of them.
pub const ENTRIES: &[Entry] = &[
    Entry { name: "brief", read: brief, a_second: 60 },
    Entry { name: "parts", read: parts, a_second: 60 },
    Entry { name: "rules", read: rules, a_second: 60 },
    Entry { name: "choice", read: choice, a_second: 3 },
    Entry { name: "record", read: record, a_second: 5 },
    Entry { name: "table", read: table, a_second: 40 },
    Entry { name: "measured", read: measured, a_second: 40 },
    Entry { name: "quantity", read: quantity, a_second: 200 },
    Entry { name: "formula", read: formula, a_second: 60 },
    Entry { name: "form", read: form, a_second: 10 },
    Entry { name: "opened", read: opened, a_second: 10 },
    Entry { name: "decision", read: decision, a_second: 1 },
];

/// The largest input.
pub const LARGEST: usize = 64 * 1024;
/// More than this printed of the largest input is out of all proportion, bytes.
const MOST_PRINTED: usize = 64 * 1024 * 1024;

/// A brief of one short axis.
const SLIDE: &str = include_str!("slide.yaml");

/// A few parts of each kind, so that a search is quick.
const FEW: &[(&str, &[&str])] = &[
    ("ball-screw/generic", &["screw-32x20"]),
    ("screw-grade/generic", &["rolled-t7"]),
    ("screw-reduction/couplings", &["coupling-60"]),
    ("rack/generic", &["-helical", "-straight", "rack-2"]),
    ("rack-grade/generic", &["q7-hardened-ground"]),
    ("pinion/generic", &["pinion-18-straight", "pinion-18-helical"]),
    ("gearbox/planetary", &["-i5", "planetary-80-standard"]),
    ("servo-motor/generic", &["servo-1.0kw", "servo-2.2kw-brake"]),
];

static CATALOG: LazyLock<Catalog> = LazyLock::new(|| catalog::load(&[]).expect("the built-in parts"));
static RULES: LazyLock<Rulebook> = LazyLock::new(|| rule::load(&[]).expect("the built-in rules"));
static SITE: LazyLock<web::Site> =
    LazyLock::new(|| web::Site::new(CATALOG.clone(), RULES.clone(), Vec::new(), Vec::new()));
static SMALL: LazyLock<Catalog> = LazyLock::new(|| {
    let all = catalog::built_in();
    let text = |name: &str| all.iter().find(|(known, _)| *known == format!("catalog/{name}.yaml")).expect("a file");
    let few = FEW.iter().map(|(name, kept)| (format!("few/{name}.yaml"), small::cut(&text(name).1, kept)));
    catalog::load_layers(vec![all.clone(), few.collect()]).expect("a few parts")
});
static DECIDED: LazyLock<(Inputs, DecisionRecord)> = LazyLock::new(|| {
    let inputs = pipeline::with_brief("slide.yaml", SLIDE, &SMALL, &RULES).expect("the brief of the slide");
    let record = pipeline::recommend(&inputs, false);
    (inputs, record)
});

static DIMENSIONS: LazyLock<BTreeSet<Dimension>> = LazyLock::new(|| UNITS.iter().map(|unit| unit.dimension).collect());

fn text(bytes: &[u8]) -> String {
    String::from_utf8_lossy(bytes).into_owned()
}

fn printed(text: &str) {
    assert!(text.len() < MOST_PRINTED, "{} bytes were printed", text.len());
}

fn told<T>(read: Result<T, Faults>) -> Option<T> {
    read.map_err(|faults| {
        assert!(!faults.is_empty(), "refused without a word");
        printed(&faults.to_string());
    })
    .ok()
}

/// The text of a brief.
pub fn brief(bytes: &[u8]) {
    told(pipeline::with_brief("brief.yaml", &text(bytes), &CATALOG, &RULES));
}

/// The text of a file of the catalogue.
pub fn parts(bytes: &[u8]) {
    if let Some(catalog) = told(catalog::load_texts(vec![("parts.yaml".into(), text(bytes))])) {
        catalog::check(&catalog).iter().for_each(|remark| printed(&remark.to_string()));
    }
}

/// The text of a rule, and the same as a caution.
pub fn rules(bytes: &[u8]) {
    told(rule::load_only(vec![("own-rule.yaml".into(), text(bytes))], Vec::new()));
    told(rule::load_only(Vec::new(), vec![("own-caution.yaml".into(), text(bytes))]));
}

/// The text of a choice.
pub fn choice(bytes: &[u8]) {
    told(choice::load_text("choice.yaml", &text(bytes), &DECIDED.0.brief, &[]));
}

/// A record: read, checked by itself, printed as a report, pictures and tables.
pub fn record(bytes: &[u8]) {
    match audit::read_bytes("record.json", bytes) {
        Ok(kept) => {
            let within = audit::within(&kept);
            let found = audit::audit(&kept, within, &audit::Verified::default(), Err(audit::Again::NotWanted));
            printed(&audit::words(&found));
            if let Ok(documents) = report::documents(&kept.record, UnitSystem::Inch) {
                assert!(documents.iter().map(|(_, content)| content.len()).sum::<usize>() < MOST_PRINTED);
            }
        }
        Err(error) => printed(&error.to_string()),
    }
}

/// A supplier's table; up to a line `=` it is the map of its columns.
pub fn table(bytes: &[u8]) {
    let text = text(bytes);
    let (map, table) = text.split_once("\n=\n").unwrap_or(("", &text));
    let kind = &KINDS[bytes.len() % KINDS.len()];
    let mut faults = Faults::default();
    let map = if map.is_empty() { None } else { Document::parse("map.yaml", map, &mut faults) };
    for kind in [kind, catalog::Kind::find("servo-motor").expect("a kind")] {
        let read = catalog::import::import(kind, ("table.csv", table), map.as_ref(), Some("price list"));
        if let Some(done) = told(read) {
            printed(&done.yaml);
            printed(&done.left_out.to_string());
        }
    }
}

/// The table of a measured axis, evaluated.
pub fn measured(bytes: &[u8]) {
    let stretch = Stretch { axis: "slide", start: Length::of_si(0.0), travel: Length::of_si(0.6) };
    told(acceptance::parse("measured.csv", &text(bytes), None));
    if let Some(measurement) = told(acceptance::parse("measured.csv", &text(bytes), Some(stretch))) {
        let (inputs, record) = &*DECIDED;
        let axis = &inputs.brief.axes[0];
        let parts = Parts { brief: &inputs.brief, axis, record, measurement: &measurement, uncertainty: None };
        let result = acceptance::accept(&parts, UnitSystem::Metric);
        printed(&acceptance::markdown(&result, UnitSystem::Metric, None));
        printed(&acceptance::chart(&result, UnitSystem::Inch).unwrap_or_default());
    }
}

/// A quantity, as every dimension; what is read is a number, and reads back when it is printed.
pub fn quantity(bytes: &[u8]) {
    let text = text(bytes);
    for dimension in &*DIMENSIONS {
        match parse_as(*dimension, &text) {
            Ok(value) => {
                assert!(value.is_finite(), "`{text}` became {value}");
                for unit in dimension.units() {
                    let again = print(value, unit);
                    printed(&significant(value / unit.si, 4));
                    // what does not fit into a number in this unit is told, not changed
                    if let Ok(again) = parse_as(*dimension, &again) {
                        assert!((again - value).abs() <= 1e-12 * value.abs() + f64::MIN_POSITIVE, "{value} {again}");
                    }
                }
            }
            Err(error) => printed(&error.to_string()),
        }
    }
}

/// A formula: its id in the first line, then `name=value`, one a line.
pub fn formula(bytes: &[u8]) {
    let text = text(bytes);
    let mut lines = text.lines();
    let id = lines.next().unwrap_or_default();
    let pair = |line: &str| line.split_once('=').map(|(name, value)| (name.to_string(), value.to_string()));
    let arguments: Vec<(String, String)> = lines.filter_map(pair).collect();
    match calc::calculate(id, &arguments) {
        Ok(answer) => assert!(!answer.unit.contains('\n')),
        Err(error) => printed(&error.to_string()),
    }
}

/// The body of a form of the page.
pub fn form(bytes: &[u8]) {
    printed(&web::edited(&SITE, bytes));
}

/// A brief that is opened on the page.
pub fn opened(bytes: &[u8]) {
    printed(&web::opened(&SITE, &text(bytes)));
}

/// A brief of which a machine is chosen and a report made, from a few parts.
pub fn decision(bytes: &[u8]) {
    if let Some(inputs) = told(pipeline::with_brief("brief.yaml", &text(bytes), &SMALL, &RULES)) {
        let record = pipeline::recommend(&inputs, false);
        if let Ok(documents) = report::documents(&record, UnitSystem::Metric) {
            assert!(documents.iter().map(|(_, content)| content.len()).sum::<usize>() < MOST_PRINTED);
        }
    }
}
