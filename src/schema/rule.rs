//! The schemas of rule files and caution files.
//!
//! Method: keys are those of the derived shapes below; characteristics, families, obligations, standings and readers are the lists
//! that the loader reads by. Values and other characteristics are held to the dimension of the characteristic that is judged.
//! Limits: whether an example gives the utilisation it states is judged by the loader, and so is what hangs on the name of the file.

use super::shapes::{Count, Factor, Prose, described, name_of, none_of, quantity, shapes, words};
use crate::characteristic;
use crate::rule::{FAMILIES, Obligation, Reader, Verdict};
use crate::source::Standing;
use crate::units::{Dimension, Sign, UNITS};
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde_json::{Map, Value, json};
use std::borrow::Cow;

/// A rule: one characteristic against a limit, with its reason. The name of the file is its id.
#[derive(JsonSchema)]
#[schemars(rename = "rule", rename_all = "kebab-case", deny_unknown_fields, transform = no_weight_if_binding)]
#[allow(dead_code, reason = "a shape, of which there are no values")]
pub(super) struct RuleFile {
    /// What it asks, as a sentence
    title: Prose,
    /// Who answers for it, told where a rule is not as it is built in
    by: Option<Prose>,
    /// The families it applies to; all if left out
    applies_to: Option<Families>,
    /// `shall` excludes a drive that fails, `should` is advice
    obligation: ObligationWord,
    /// How much worse a drive counts that does not follow this advice, 0 % to 100 %; only with `should`
    weighs: Option<Weight>,
    limit: LimitGroup,
    when: Option<WhenGroup>,
    /// Why the rule is there
    reason: Prose,
    /// What to do about a drive that fails it
    remedy: Prose,
    /// Where it comes from; at least one
    #[schemars(length(min = 1))]
    sources: Vec<SourceGroup>,
    /// Cases with their outcome, at least one that passes and one that fails
    #[schemars(transform = both_verdicts)]
    examples: Vec<ExampleGroup>,
}

/// What is judged, and against what.
#[derive(JsonSchema)]
#[schemars(inline, rename_all = "kebab-case", deny_unknown_fields, transform = one_side)]
#[allow(dead_code, reason = "a shape, of which there are no values")]
struct LimitGroup {
    /// What is judged
    characteristic: CharacteristicId,
    /// The demand does not exceed it
    at_most: Option<Bound>,
    /// The demand does not fall below it
    at_least: Option<Bound>,
}

/// A share of another characteristic, or a value.
#[derive(JsonSchema)]
#[schemars(deny_unknown_fields, transform = of_or_value)]
#[allow(dead_code, reason = "a shape, of which there are no values")]
struct Bound {
    /// Share of the other characteristic; 1 if left out
    factor: Option<Factor>,
    /// Another characteristic of the same dimension
    of: Option<CharacteristicId>,
    /// A quantity
    value: Option<AnyQuantity>,
}

/// When the rule is judged at all; always if left out.
#[derive(JsonSchema)]
#[schemars(inline, deny_unknown_fields, transform = stated_or_above)]
#[allow(dead_code, reason = "a shape, of which there are no values")]
struct WhenGroup {
    /// Only if this characteristic is stated
    stated: Option<CharacteristicId>,
    /// Only if a characteristic is above a value, or is not known
    above: Option<AboveValue>,
}

/// A characteristic above a value.
#[derive(JsonSchema)]
#[schemars(inline, deny_unknown_fields, transform = value_of_dimension)]
#[allow(dead_code, reason = "a shape, of which there are no values")]
struct AboveValue {
    /// What is looked at
    characteristic: CharacteristicId,
    /// What it has to exceed
    value: AnyQuantity,
}

/// A source.
#[derive(JsonSchema)]
#[schemars(inline, deny_unknown_fields)]
#[allow(dead_code, reason = "a shape, of which there are no values")]
struct SourceGroup {
    /// What kind of support it is
    kind: StandingWord,
    /// Where to look, or what is remembered or usual
    note: Prose,
}

/// A case with its outcome.
#[derive(JsonSchema)]
#[schemars(inline, deny_unknown_fields)]
#[allow(dead_code, reason = "a shape, of which there are no values")]
struct ExampleGroup {
    /// The characteristics that the rule uses, with their values
    given: Given,
    /// The utilisation that comes out
    utilisation: f64,
    /// The verdict that comes out
    verdict: VerdictWord,
}

/// A caution: what a reader has to be warned of, when, and where to read on. The name of the file is its id.
#[derive(JsonSchema)]
#[schemars(rename = "caution", deny_unknown_fields)]
#[allow(dead_code, reason = "a shape, of which there are no values")]
pub(super) struct CautionFile {
    /// What it warns of, in a phrase
    title: Prose,
    /// Its place among the cautions: lower comes first
    order: Count,
    /// Who has to know it
    #[schemars(length(min = 1))]
    r#for: Vec<ReaderWord>,
    /// The cases in which it holds; always if left out
    #[schemars(length(min = 1))]
    when: Option<Vec<CaseGroup>>,
    /// What is told
    text: Prose,
    /// Standards to read beside it
    #[schemars(length(min = 1))]
    standards: Option<Vec<StandardGroup>>,
}

/// A case, which holds where all that it names does.
#[derive(JsonSchema)]
#[schemars(inline, deny_unknown_fields, extend("minProperties" = 1))]
#[allow(dead_code, reason = "a shape, of which there are no values")]
struct CaseGroup {
    /// Families of the drive
    families: Option<Families>,
    /// Words of which the brief names one in its `environment`
    #[schemars(length(min = 1))]
    environment: Option<Vec<Prose>>,
    /// Characteristics that have to be there
    #[schemars(length(min = 1))]
    present: Option<Vec<CharacteristicId>>,
    /// Characteristics that have to be above a level
    #[schemars(length(min = 1))]
    above: Option<Vec<AboveLevel>>,
}

/// A characteristic above a value, or above a factor times another one.
#[derive(JsonSchema)]
#[schemars(inline, deny_unknown_fields, transform = level)]
#[allow(dead_code, reason = "a shape, of which there are no values")]
struct AboveLevel {
    /// What is looked at
    characteristic: CharacteristicId,
    /// What it has to exceed
    value: Option<AnyQuantity>,
    /// Share of the other characteristic; 1 if left out
    factor: Option<f64>,
    /// Another characteristic of the same dimension
    of: Option<CharacteristicId>,
}

/// A standard.
#[derive(JsonSchema)]
#[schemars(inline, deny_unknown_fields)]
#[allow(dead_code, reason = "a shape, of which there are no values")]
struct StandardGroup {
    /// Its number
    number: Prose,
    /// What it is about
    about: Prose,
}

shapes! {
    /// A list of families.
    Families = |_generator| {
        json_schema!({ "type": "array", "minItems": 1, "items": words(FAMILIES) })
    };
    /// Obligations.
    ObligationWord = |_generator| words(Obligation::ALL.map(Obligation::word));
    /// Verdicts that an example may have.
    VerdictWord = |_generator| words([Verdict::Pass, Verdict::Fail].map(Verdict::word));
    /// Readers of cautions.
    ReaderWord = |_generator| words(Reader::WORDS.map(|(word, _)| word));
    /// Standings that a rule may have.
    StandingWord = |_generator| {
        words(Standing::ALL.into_iter().filter(|standing| *standing != Standing::Invented).map(Standing::key))
    };
    /// A share from 0 to 1.
    Weight = |generator| {
        let mut share = quantity(generator, Dimension::Ratio, Sign::NotNegative);
        share.insert("minimum".into(), 0.into());
        share.insert("maximum".into(), 1.into());
        share
    };
    /// A quantity whose dimension hangs on a characteristic.
    AnyQuantity = |_generator| json_schema!({ "type": ["string", "number"] });
    /// Values of characteristics.
    Given = |generator| {
        let mut properties = Map::new();
        for about in characteristic::all().filter(|about| !about.phased) {
            let value = quantity(generator, about.dimension, Sign::Either);
            properties.insert(about.id.into(), described(value, about.words.into()).to_value());
        }
        super::shapes::group(properties, Vec::new())
    };
}

/// The id of a characteristic that has a single value.
struct CharacteristicId;

impl JsonSchema for CharacteristicId {
    fn schema_name() -> Cow<'static, str> {
        "characteristic".into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        // what hangs on a dimension refers to these
        for (dimension, ids) in by_dimension() {
            quantity(generator, dimension, Sign::Either);
            generator.definitions_mut().insert(characteristics_of(dimension), json!({ "enum": ids }));
        }
        let single = || characteristic::all().filter(|about| !about.phased);
        let told: Vec<&str> = single().map(|about| about.words).collect();
        let mut ids = words(single().map(|about| about.id));
        ids.insert("enumDescriptions".into(), told.into());
        ids
    }
}

fn characteristics_of(dimension: Dimension) -> String {
    format!("characteristics-of-{}", name_of(dimension, Sign::NotNegative))
}

/// The ids of single-valued characteristics by their dimension, in the order of the table of units.
fn by_dimension() -> Vec<(Dimension, Vec<&'static str>)> {
    let mut groups: Vec<(Dimension, Vec<&'static str>)> = Vec::new();
    for unit in UNITS.iter().filter(|unit| unit.dimension.units().next() == Some(unit)) {
        let of = characteristic::all().filter(|about| !about.phased && about.dimension == unit.dimension);
        let ids: Vec<&str> = of.map(|about| about.id).collect();
        if !ids.is_empty() {
            groups.push((unit.dimension, ids));
        }
    }
    groups
}

/// For every dimension: where `characteristic` has it, the rest of the group is so.
fn hangs_on_dimension(schema: &mut Schema, rest: impl Fn(Value) -> Value) {
    let rules = by_dimension().into_iter().map(|(dimension, _)| {
        let plain = matches!(dimension, Dimension::Ratio | Dimension::Money);
        let types = if plain { json!(["string", "number", "null"]) } else { json!(["string", "null"]) };
        let quantity = format!("#/definitions/{}", name_of(dimension, Sign::Either));
        let ids = json!({ "$ref": format!("#/definitions/{}", characteristics_of(dimension)) });
        let held = json!({ "of": ids, "value": { "type": types, "allOf": [{ "$ref": quantity }] } });
        json!({
            "if": { "properties": { "characteristic": ids }, "required": ["characteristic"] },
            "then": { "properties": rest(held) },
        })
    });
    let rules: Vec<Value> = rules.collect();
    if let Some(Value::Array(all)) = schema.get_mut("allOf") {
        all.extend(rules);
    } else {
        schema.insert("allOf".into(), rules.into());
    }
}

fn either(schema: &mut Schema, one: &str, other: &str) {
    schema.insert("oneOf".into(), json!([{ "required": [one] }, { "required": [other] }]));
}

fn one_side(schema: &mut Schema) {
    either(schema, "at-most", "at-least");
    hangs_on_dimension(schema, |held| {
        let bound = json!({ "properties": held });
        json!({ "at-most": bound, "at-least": bound })
    });
}

fn of_or_value(schema: &mut Schema) {
    either(schema, "of", "value");
    schema.insert("dependencies".into(), json!({ "factor": ["of"] }));
}

fn stated_or_above(schema: &mut Schema) {
    either(schema, "stated", "above");
}

fn value_of_dimension(schema: &mut Schema) {
    hangs_on_dimension(schema, |held| json!({ "value": held["value"] }));
}

fn level(schema: &mut Schema) {
    of_or_value(schema);
    hangs_on_dimension(schema, |held| held);
}

fn both_verdicts(schema: &mut Schema) {
    let with = |verdict: Verdict| json!({ "contains": { "properties": { "verdict": { "const": verdict.word() } }, "required": ["verdict"] } });
    schema.insert("allOf".into(), json!([with(Verdict::Pass), with(Verdict::Fail)]));
}

fn no_weight_if_binding(schema: &mut Schema) {
    let binds = json!({ "const": Obligation::Shall.word() });
    schema.insert(
        "allOf".into(),
        json!([{
            "if": { "properties": { "obligation": binds }, "required": ["obligation"] },
            "then": none_of(&["weighs"], "a rule that binds has no weight: it excludes"),
        }]),
    );
}
