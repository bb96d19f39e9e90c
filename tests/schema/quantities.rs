//! The pattern of a quantity accepts what the reader of quantities accepts, and nothing else.

use axiswright::units::{Dimension, Sign, UNITS, UnitError, parse_as, pattern};
use proptest::prelude::*;
use serde_json::json;
use std::collections::BTreeMap;
use std::sync::LazyLock;

const DIMENSIONS: usize = 31;

/// Every dimension that has a unit, in the order of the table.
fn dimensions() -> Vec<Dimension> {
    let mut all: Vec<Dimension> = Vec::new();
    for unit in UNITS {
        if !all.contains(&unit.dimension) {
            all.push(unit.dimension);
        }
    }
    all
}

/// The patterns as a validator of schemas reads them.
static PATTERNS: LazyLock<BTreeMap<Dimension, jsonschema::Validator>> = LazyLock::new(|| {
    let compiled = |dimension| {
        let schema = json!({ "pattern": pattern(dimension, Sign::Either) });
        (dimension, jsonschema::draft7::new(&schema).expect("the pattern is one"))
    };
    dimensions().into_iter().map(compiled).collect()
});

fn fits(dimension: Dimension, text: &str) -> bool {
    PATTERNS[&dimension].is_valid(&json!(text))
}

fn agree(dimension: Dimension, text: &str) {
    let read = parse_as(dimension, text);
    assert_eq!(fits(dimension, text), read.is_ok(), "{dimension:?} `{text}`: {read:?}");
}

#[test]
fn every_unit_and_every_spelling_fits_the_pattern_of_its_dimension_and_of_no_other_that_does_not_read_it() {
    assert_eq!(dimensions().len(), DIMENSIONS);
    for unit in UNITS {
        for spelling in std::iter::once(&unit.name).chain(unit.spellings) {
            for text in [format!("1.5 {spelling}"), format!("1.5{spelling}"), format!("-2e-3{spelling}")] {
                assert!(fits(unit.dimension, &text), "{:?} `{text}`", unit.dimension);
                dimensions().into_iter().for_each(|dimension| agree(dimension, &text));
            }
        }
    }
}

#[test]
fn spellings_that_people_use_are_judged_as_the_reader_judges_them() {
    let texts = [
        "48\"",
        "130 lbs",
        "1500 ipm",
        "5",
        "5 ·",
        "1,5 mm",
        "1.5.2 mm",
        ".5 mm",
        "5. mm",
        ". mm",
        "mm",
        "",
        " ",
        "+5 N m",
        "5 N·m",
        "5 N × m",
        "5 Nm/arc min",
        "5 m/s2",
        "5 m/s^2",
        "5 m/s ²",
        "5 m/s^ 2",
        "5 m/s^²",
        "5 m/s 2",
        "5 µm",
        "5 μm",
        "5 um",
        "5 min^-1",
        "5 min⁻¹",
        "5 min-1",
        "5 min -1",
        "51/min",
        "5e3 1/s",
        "5e",
        "5e3",
        "5 e3 mm",
        "5 kgcm2",
        "5 kg cm²",
        "5 W/(m²·K)",
        "5 W/m2K",
        "5 (m/min)/mm",
        "5 mm/mm",
        "nan mm",
        "inf",
        "−5 mm",
        "5 mm!",
        "5 mm mm",
        "5 MM",
        "5 %",
        "5%",
        "5 % %",
        "0x10 mm",
        "1_000 mm",
        "5\u{a0}mm",
        "5\u{2009}m/s²",
        "5 in 2",
        "5 in2",
        "5 kN",
        "5 g",
        "5 1",
        "12.1 1",
    ];
    for text in texts {
        dimensions().into_iter().for_each(|dimension| agree(dimension, text));
    }
}

#[test]
fn a_quantity_that_is_not_below_zero_has_no_minus_and_is_the_same_otherwise() {
    for dimension in dimensions() {
        let schema = json!({ "pattern": pattern(dimension, Sign::NotNegative) });
        let plain = jsonschema::draft7::new(&schema).expect("the pattern is one");
        for unit in dimension.units() {
            for (number, fitting) in [("5", true), ("+5.5", true), ("-5", false), (" 5e-3", true)] {
                let text = json!(format!("{number} {}", unit.name));
                assert_eq!(plain.is_valid(&text), fitting, "{text}");
            }
        }
    }
}

/// A spelling of a unit with free signs strewn in and other spellings of powers and micro signs.
fn strewn(spelling: &str, choices: &[u8]) -> String {
    const FREE: [&str; 12] = ["", "", "", "", "", "", "", " ", "·", "*", "×", "\u{a0}"];
    let mut out = String::new();
    for (index, letter) in spelling.chars().enumerate() {
        let choice = usize::from(choices.get(index).copied().unwrap_or(0));
        out.push_str(FREE[choice % FREE.len()]);
        match (letter, choice / FREE.len() % 4) {
            ('²', 0) => out.push_str("^2"),
            ('²', 1) | ('^', 3) => out.push('2'),
            ('³', 0) => out.push_str("^3"),
            ('³', 1) => out.push('3'),
            ('µ' | 'u', 0) => out.push('u'),
            ('µ' | 'u', 1) => out.push('μ'),
            ('1', 1) => out.push('¹'),
            ('^', 1) => out.push('²'),
            ('-', 1) => out.push('⁻'),
            (letter, _) => out.push(letter),
        }
    }
    out
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 1500, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn random_quantities_are_judged_as_the_reader_judges_them(
        dimension in 0..DIMENSIONS,
        unit in 0..UNITS.len(),
        spelling in 0_usize..9,
        number in "[+-]?([0-9]{1,4}\\.?[0-9]{0,4}|\\.[0-9]{1,3}|\\.)([eE][+-]?[0-9]{1,2})?",
        blank in "[ ]{0,2}",
        choices in proptest::collection::vec(0_u8..48, 16),
    ) {
        let unit = &UNITS[unit];
        let spellings: Vec<&str> = std::iter::once(unit.name).chain(unit.spellings.iter().copied()).collect();
        let text = format!("{number}{blank}{}", strewn(spellings[spelling % spellings.len()], &choices));
        for dimension in [unit.dimension, dimensions()[dimension]] {
            let read = parse_as(dimension, &text);
            // a number that is too large is well written all the same
            prop_assume!(!matches!(read, Err(UnitError::NotFinite { .. })));
            prop_assert_eq!(fits(dimension, &text), read.is_ok(), "{:?} `{}`: {:?}", dimension, text, read);
        }
    }

    #[test]
    fn random_texts_are_judged_as_the_reader_judges_them(text in "[0-9.eE+ -]{0,6}[a-zA-Z0-9µ²³⁻¹·*/^%°()\" .,-]{0,8}") {
        for dimension in dimensions() {
            let read = parse_as(dimension, &text);
            prop_assume!(!matches!(read, Err(UnitError::NotFinite { .. })));
            prop_assert_eq!(fits(dimension, &text), read.is_ok(), "{:?} `{}`", dimension, text);
        }
    }
}
