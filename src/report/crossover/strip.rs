//! One range as a strip: which family wins on which stretch of the way.
//!
//! Method: stretches lie between the places of change, as shares of the way from one end of the range to the other.
//! Limits: as the record's resolution.

use super::words::family;
use crate::record::{CrossoverRecord, SpanRecord};
use crate::report::picture::mark;
use serde::Serialize;

/// A stretch of the range on which one family wins.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Stretch {
    /// Where it begins, 0 to 1.
    pub from: f64,
    /// Where it ends.
    pub to: f64,
    /// Id of the family; empty where no drive is admissible.
    pub family: String,
    /// Its letter in pictures.
    pub letter: &'static str,
    /// The family in words.
    pub words: String,
}

/// The stretches of the first row.
pub fn strip(record: &CrossoverRecord) -> Vec<Stretch> {
    let stretch = |from: f64, to: f64, id: Option<&str>| Stretch {
        from,
        to,
        family: id.unwrap_or_default().into(),
        letter: mark(id).0,
        words: family(id),
    };
    let mut stretches = Vec::new();
    let mut begin = 0.0;
    let mut last = record.nodes.first().and_then(|node| node.family.as_deref());
    for boundary in &record.boundaries {
        let at = share(&record.over, boundary.at);
        stretches.push(stretch(begin, at, boundary.from.as_deref()));
        (begin, last) = (at, boundary.to.as_deref());
    }
    stretches.push(stretch(begin, 1.0, last));
    stretches
}

/// Where a value lies between the ends of a range.
fn share(span: &SpanRecord, value: f64) -> f64 {
    match span.spacing.as_str() {
        "geometric" => (value / span.from).ln() / (span.to / span.from).ln(),
        _ => (value - span.from) / (span.to - span.from),
    }
}
