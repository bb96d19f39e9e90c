//! What the record explains once: rules, cautions, formulas, sources and characteristics.

use serde::{Deserialize, Serialize};

/// A rule as it was applied.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct RuleRecord {
    /// Its id.
    pub id: String,
    /// Its title.
    pub title: String,
    /// shall or should.
    pub obligation: String,
    /// Its limit in words: "screw-speed ≤ 0.8 · whip-speed".
    pub limit: String,
    /// Why.
    pub reason: String,
    /// What helps.
    pub remedy: String,
    /// Where it comes from.
    pub sources: Vec<SourceRecord>,
}

/// A rule or caution that is not as this version of the program has it built in.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct OwnRuleRecord {
    /// rule or caution.
    pub what: String,
    /// Its id.
    pub id: String,
    /// The file that it was read from.
    pub file: String,
    /// Who answers for it; null if its file does not say.
    pub by: Option<String>,
    /// What was added, where nothing of this id is built in.
    pub added: Option<String>,
    /// Where it differs from what is built in.
    pub differs: Vec<AspectRecord>,
}

/// One respect in which a rule differs from the built-in one.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct AspectRecord {
    /// limit, obligation, families, weight or wording.
    pub what: String,
    /// As it is built in.
    pub built_in: String,
    /// As it was in force.
    pub own: String,
}

/// A formula as it was used.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct FormulaRecord {
    /// Its id.
    pub id: String,
    /// What it gives.
    pub title: String,
    /// The equation.
    pub equation: String,
    /// The symbols of the equation, in the order in which worksheet lines name their inputs.
    #[serde(default)]
    pub symbols: Vec<String>,
    /// Where it holds.
    pub validity: String,
    /// Where it comes from.
    pub sources: Vec<SourceRecord>,
}

/// A caution as it is told.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct CautionRecord {
    /// Its id.
    pub id: String,
    /// What it warns of, in a phrase.
    pub title: String,
    /// Who has to know it: buyer, designer, fitter, operator, maintainer.
    #[serde(rename = "for")]
    pub readers: Vec<String>,
    /// What it says.
    pub text: String,
    /// Standards to read beside it; naming them claims no conformity.
    pub standards: Vec<StandardRecord>,
}

/// A standard to read beside a caution.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct StandardRecord {
    /// Its number.
    pub number: String,
    /// What it is about.
    pub about: String,
}

/// A source and its standing.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct SourceRecord {
    /// standard, publication, derived, practice, memory or invented.
    pub standing: String,
    /// Where to look.
    pub citation: String,
}

/// A characteristic as this record names it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct CharacteristicRecord {
    /// Its id.
    pub id: String,
    /// Its symbol.
    pub symbol: String,
    /// The unit it is shown in.
    pub unit: String,
    /// What it is.
    pub words: String,
}
