//! The files that are shipped: schemas as the program prints them, and everything that they are meant for.

use super::{complaints, schema, validator};
use axiswright::schema::FILE_KINDS;
use std::path::{Path, PathBuf};

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).to_path_buf()
}

/// The YAML files of a folder and the folders in it, sorted.
fn yaml_below(folder: &str) -> Vec<PathBuf> {
    let mut files: Vec<PathBuf> = Vec::new();
    let mut folders = vec![root().join(folder)];
    while let Some(folder) = folders.pop() {
        for entry in std::fs::read_dir(folder).expect("a folder") {
            let path = entry.expect("an entry").path();
            if path.is_dir() {
                folders.push(path);
            } else if path.extension().is_some_and(|extension| extension == "yaml") {
                files.push(path);
            }
        }
    }
    files.sort();
    files
}

fn text(path: &Path) -> String {
    std::fs::read_to_string(path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// The files of a kind that the project ships.
fn shipped(kind: &str) -> Vec<PathBuf> {
    let within = |folder: &str, inner: bool| -> Vec<PathBuf> {
        yaml_below(folder).into_iter().filter(|path| inner || path.parent() == Some(&root().join(folder))).collect()
    };
    match kind {
        "brief" => within("docs/examples", false).into_iter().chain([root().join("docs/starter.yaml")]).collect(),
        "choice" => within("docs/examples/choices", true),
        "catalog" => within("catalog", true),
        "rule" => within("rules", false),
        "caution" => within("rules/cautions", true),
        _ => panic!("{kind} is no kind of file"),
    }
}

#[test]
fn every_schema_is_a_schema_of_draft_07() {
    for kind in &FILE_KINDS {
        let schema = schema(kind.name);
        assert_eq!(schema["$schema"], "http://json-schema.org/draft-07/schema#", "{}", kind.name);
        assert!(jsonschema::draft7::meta::is_valid(&schema), "{}", kind.name);
    }
}

#[test]
fn every_reference_stays_within_its_schema() {
    for kind in &FILE_KINDS {
        let schema = schema(kind.name);
        let text = schema.to_string();
        let references: Vec<&str> =
            text.split("\"$ref\":\"").skip(1).filter_map(|rest| rest.split('"').next()).collect();
        assert!(!references.is_empty(), "{}", kind.name);
        for reference in references {
            let pointer = reference.strip_prefix('#').unwrap_or_else(|| panic!("{reference} leads elsewhere"));
            assert!(schema.pointer(pointer).is_some(), "{}: {reference}", kind.name);
        }
    }
}

#[test]
fn the_shipped_schemas_are_those_that_are_printed() {
    for kind in &FILE_KINDS {
        let printed =
            assert_cmd::Command::cargo_bin("axiswright").expect("the program").args(["schema", kind.name]).output();
        let printed = String::from_utf8(printed.expect("it runs").stdout).expect("text");
        let path = root().join(format!("docs/schemas/{}.schema.json", kind.name));
        if std::env::var_os("AXISWRIGHT_REWRITE").is_some() {
            std::fs::write(&path, &printed).expect("the schema is written");
        }
        let how = "AXISWRIGHT_REWRITE=1 cargo test --test schema writes it anew";
        assert!(text(&path) == printed, "docs/schemas/{}.schema.json is stale; {how}", kind.name);
    }
}

#[test]
fn everything_that_is_shipped_keeps_to_its_schema() {
    for kind in &FILE_KINDS {
        let (validator, files) = (validator(kind.name), shipped(kind.name));
        assert!(!files.is_empty(), "{}", kind.name);
        for path in files {
            let found = complaints(&validator, &text(&path));
            assert!(found.is_empty(), "{}: {found:#?}", path.display());
        }
    }
}

#[test]
fn the_editor_line_of_every_example_leads_to_the_schema_of_its_kind() {
    for (kind, folder) in [("brief", "docs/examples"), ("choice", "docs/examples/choices")] {
        for path in yaml_below(folder).into_iter().filter(|path| path.parent() == Some(&root().join(folder))) {
            let text = text(&path);
            let line = text.lines().next().unwrap_or("");
            let named = line.strip_prefix("# yaml-language-server: $schema=");
            let named = named.unwrap_or_else(|| panic!("{}: {line}", path.display()));
            let leads_to = path.parent().expect("a folder").join(named).canonicalize().expect("the schema is there");
            let meant = root().join(format!("docs/schemas/{kind}.schema.json")).canonicalize().expect("the schema");
            assert_eq!(leads_to, meant, "{}", path.display());
        }
    }
}

#[test]
fn the_starter_says_how_to_get_the_schema_that_its_first_line_names() {
    let starter = axiswright::brief::starter();
    assert_eq!(starter.lines().next(), Some("# yaml-language-server: $schema=brief.schema.json"));
    assert!(starter.contains("axiswright schema brief > brief.schema.json"));
}

#[test]
fn the_starter_keeps_to_the_schema_with_every_example_line_switched_on() {
    let validator = validator("brief");
    let switched = axiswright::brief::starter().lines().map(|line| {
        let bare = line.trim_start();
        let key = bare.strip_prefix("# ").and_then(|rest| rest.split(':').next()).unwrap_or(" ");
        let is_key = !key.is_empty() && key.chars().all(|letter| letter.is_ascii_lowercase() || letter == '-');
        let is_item = bare.starts_with("#   - {");
        // a starter of which the duty and the moves are both switched on would have too much
        if (is_key && key != "yaml-language-server" || is_item) && line.contains(':') {
            line.replacen("# ", "", 1)
        } else {
            line.to_string()
        }
    });
    let text: String = switched.map(|line| line + "\n").collect();
    assert!(text.contains("\nwaivers:\n  - {") && text.contains("    drives: 2"), "{text}");
    assert_eq!(complaints(&validator, &text), Vec::<String>::new());
}
