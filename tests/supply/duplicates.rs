//! What is there in more than one version, and why that is borne.

use std::collections::BTreeMap;

/// A package and its versions.
type Several = (&'static str, &'static [&'static str]);

/// A reason, and what it explains: each package with its versions.
const TABLE: &[(&str, &[Several])] = &[
    (
        "macros that run while compiling: half of them have moved to syn 3 (serde, clap, schemars, tokio), the others not yet",
        &[("syn", &["2", "3"])],
    ),
    (
        "other platforms and the handler of Ctrl-C: zip and ctrlc ask for neighbouring versions of the calls of the system",
        &[("nix", &["0.31", "0.32"])],
    ),
    (
        "tests only: jsonschema and the hashing below it still ask for the older source of chance",
        &[("getrandom", &["0.3", "0.4"]), ("r-efi", &["5", "6"])],
    ),
    (
        "tests only: the patterns of jsonschema (fancy-regex) and proptest ask for different sets of bits",
        &[("bit-set", &["0.8", "0.11"]), ("bit-vec", &["0.8", "0.10"])],
    ),
    (
        "tests only: the tables of scraper are made by a generator (phf_generator) of the older source of chance",
        &[("rand", &["0.8", "0.10"]), ("rand_core", &["0.6", "0.10"])],
    ),
    (
        "tests only: the driver of the browser (fantoccini by webdriver) is older than the rest of its house",
        &[
            ("cookie", &["0.16", "0.18"]),
            ("http", &["0.2", "1"]),
            ("thiserror", &["1", "2"]),
            ("thiserror-impl", &["1", "2"]),
        ],
    ),
    (
        "tests only: webdriver cuts texts by icu 1 (icu_segmenter), addresses are read by icu 2",
        &[
            ("icu_collections", &["1", "2"]),
            ("icu_provider", &["1", "2"]),
            ("litemap", &["0.7", "0.8"]),
            ("synstructure", &["0.13", "0.14"]),
            ("tinystr", &["0.7", "0.8"]),
            ("writeable", &["0.5", "0.6"]),
            ("yoke", &["0.7", "0.8"]),
            ("yoke-derive", &["0.7", "0.8"]),
            ("zerovec", &["0.10", "0.11"]),
            ("zerovec-derive", &["0.10", "0.11"]),
        ],
    ),
    (
        "tests only: nalgebra offers conversions to every glam there was; with its features off none of them is compiled",
        &[(
            "glam",
            &[
                "0.14", "0.15", "0.16", "0.17", "0.18", "0.19", "0.20", "0.21", "0.22", "0.23", "0.24", "0.25", "0.27",
                "0.28", "0.29", "0.30", "0.31", "0.32",
            ],
        )],
    ),
];

/// Name and versions of all that is listed.
pub fn listed() -> BTreeMap<&'static str, Vec<String>> {
    let all = TABLE.iter().flat_map(|(_, packages)| packages.iter());
    all.map(|(name, versions)| (*name, versions.iter().map(|version| version.to_string()).collect())).collect()
}

#[test]
fn every_entry_has_a_reason_and_stands_once() {
    assert!(TABLE.iter().all(|(reason, packages)| reason.split(' ').count() > 5 && !packages.is_empty()));
    let entries: usize = TABLE.iter().map(|(_, packages)| packages.len()).sum();
    assert_eq!(listed().len(), entries, "a package stands in the table twice");
}
