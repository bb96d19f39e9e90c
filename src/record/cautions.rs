//! The cautions of an axis and their texts as they stand in the record.

use super::build::Parts;
use super::{AxisRecord, CautionRecord, StandardRecord};
use crate::drive::Demand;
use crate::ledger::Worksheet;
use crate::rule::{Facts, Rulebook};

/// The ids of the cautions that an axis needs with this drive, in order.
pub fn with_drive(parts: &Parts<'_>, family: &str, sheet: &Worksheet) -> Vec<String> {
    ids(parts, Some(family), sheet)
}

/// The ids of the cautions that an axis needs before a drive is chosen, in order.
pub fn without_drive(parts: &Parts<'_>, demand: &Demand<'_>) -> Vec<String> {
    let mut sheet = Worksheet::default();
    demand.enter(&mut sheet);
    ids(parts, None, &sheet)
}

fn ids(parts: &Parts<'_>, family: Option<&str>, sheet: &Worksheet) -> Vec<String> {
    let facts = Facts { family, environment: &parts.brief.environment, sheet };
    parts.rulebook.cautions_for(&facts).into_iter().map(|caution| caution.id.clone()).collect()
}

/// The cautions that any axis needs, in the order in which they are told.
pub fn texts(rulebook: &Rulebook, axes: &[AxisRecord]) -> Vec<CautionRecord> {
    let needed = |id: &str| axes.iter().any(|axis| axis.cautions.iter().any(|known| known == id));
    rulebook
        .cautions
        .iter()
        .filter(|caution| needed(&caution.id))
        .map(|caution| CautionRecord {
            id: caution.id.clone(),
            title: caution.title.clone(),
            readers: caution.readers.iter().map(|reader| reader.word().into()).collect(),
            text: caution.text.split_whitespace().collect::<Vec<_>>().join(" "),
            standards: caution
                .standards
                .iter()
                .map(|standard| StandardRecord { number: standard.number.clone(), about: standard.about.clone() })
                .collect(),
        })
        .collect()
}
