//! One configuration, worked out, as it stands in the record; and the names that the record has to explain.

use super::*;
use crate::characteristic;
use crate::drive::Size;
use crate::formula::Note;
use crate::ledger::{Ledger, Line};
use crate::rule::{Limit, Obligation, Sense, passes};
use crate::search::{Judged, Worked};
use std::collections::{BTreeMap, BTreeSet};

/// What the record names and has to explain.
#[derive(Default)]
pub struct Named {
    notes: BTreeMap<&'static str, &'static Note>,
    slots: BTreeMap<&'static str, usize>,
    /// Ids of the rules that were judged.
    pub rules: BTreeSet<String>,
}

impl Named {
    fn slot(&mut self, slot: usize) {
        self.slots.entry(characteristic::about(slot).0.id).or_insert(slot);
    }

    /// The formulas, by id.
    pub fn formulas(&self) -> Vec<FormulaRecord> {
        self.notes
            .values()
            .map(|note| FormulaRecord {
                id: note.id.into(),
                title: note.title.into(),
                equation: note.equation.into(),
                symbols: note.inputs.iter().map(|(symbol, _)| (*symbol).into()).collect(),
                validity: note.validity.into(),
                sources: note
                    .sources
                    .iter()
                    .map(|source| SourceRecord {
                        standing: source.standing.key().into(),
                        citation: source.citation.into(),
                    })
                    .collect(),
            })
            .collect()
    }

    /// The characteristics, by id.
    pub fn characteristics(&self) -> Vec<CharacteristicRecord> {
        self.slots
            .values()
            .map(|&slot| {
                let (about, _) = characteristic::about(slot);
                CharacteristicRecord {
                    id: about.id.into(),
                    symbol: about.symbol.into(),
                    unit: about.unit.into(),
                    words: about.words.into(),
                }
            })
            .collect()
    }
}

/// A number for the record: none where it is not known.
fn finite(value: f64) -> Option<f64> {
    value.is_finite().then_some(value)
}

/// An SI value in the unit that its characteristic is shown in.
pub fn shown(slot: usize, value: f64) -> Option<f64> {
    finite(value / characteristic::about(slot).0.display_unit().si)
}

/// The record of a configuration.
pub fn candidate(family: &str, worked: &Worked<'_>, named: &mut Named) -> CandidateRecord {
    for line in &worked.sheet.lines {
        named.slot(line.slot);
        if let Some(note) = line.note {
            named.notes.insert(note.id, note);
        }
    }
    for judged in &worked.judged {
        named.rules.insert(judged.rule.id.clone());
    }
    let mut findings: Vec<FindingRecord> = worked.judged.iter().map(|judged| finding(judged, &worked.sheet)).collect();
    findings.sort_by(|a, b| {
        let tightness = |finding: &FindingRecord| finding.utilisation.unwrap_or(f64::INFINITY);
        tightness(b).total_cmp(&tightness(a)).then_with(|| a.rule.cmp(&b.rule))
    });
    CandidateRecord {
        family: family.into(),
        components: worked
            .parts
            .iter()
            .map(|part| ComponentRecord {
                role: part.role.into(),
                designation: part.designation.clone(),
                count: part.count,
                unit: part.unit.into(),
                generic: part.generic,
            })
            .collect(),
        parameters: worked.sizes.iter().map(parameter).collect(),
        worksheet: worked.sheet.lines.iter().map(line).collect(),
        findings,
        installation: Vec::new(),
        upkeep: Vec::new(),
        acceptance: None,
        cost: super::cost::cost(worked),
        merit: worked.attributes.merit,
        unmet_advice: worked.unmet_advice,
    }
}

/// A main size of a configuration.
pub fn parameter(size: &Size) -> Parameter {
    match size {
        Size::Number(name, value, unit) => {
            Parameter { name: (*name).into(), value: ParameterValue::Number { value: *value, unit: (*unit).into() } }
        }
        Size::Word(name, word) => {
            Parameter { name: (*name).into(), value: ParameterValue::Word { value: word.clone(), unit: "1".into() } }
        }
    }
}

fn line(line: &Line) -> WorksheetLine {
    let (about, _) = characteristic::about(line.slot);
    WorksheetLine {
        id: characteristic::id(line.slot),
        symbol: about.symbol.into(),
        value: shown(line.slot, line.value),
        unit: about.unit.into(),
        origin: line.origin.word().into(),
        formula: line.note.map(|note| note.id.into()),
        inputs: line.inputs.iter().map(|&slot| characteristic::id(slot)).collect(),
    }
}

/// A rule judged on a drive.
pub fn finding(judged: &Judged<'_>, sheet: &impl Ledger) -> FindingRecord {
    let rule = judged.rule;
    let verdict = if passes(judged.utilisation) {
        "pass"
    } else if judged.waived {
        "waived"
    } else if judged.utilisation.is_nan() {
        "not-evaluated"
    } else {
        "fail"
    };
    let limit = match rule.limit {
        Limit::Of(_) | Limit::Value(_) => rule.limit_value(sheet),
    };
    FindingRecord {
        rule: rule.id.clone(),
        obligation: match rule.obligation {
            Obligation::Shall => "shall".into(),
            Obligation::Should => "should".into(),
        },
        characteristic: characteristic::id(rule.demand),
        sense: match rule.sense {
            Sense::AtMost => "at-most".into(),
            Sense::AtLeast => "at-least".into(),
        },
        demand: shown(rule.demand, sheet.value(rule.demand)),
        limit: shown(rule.demand, limit),
        unit: characteristic::about(rule.demand).0.unit.into(),
        utilisation: finite(judged.utilisation),
        verdict: verdict.into(),
    }
}
