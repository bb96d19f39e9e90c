//! What mutations begin with: the examples, the data of the tests, and a few of each that reach far.

use axiswright::{calc, catalog, rule};
use std::fs;
use std::path::{Path, PathBuf};

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// Every file below a folder with one of these endings, in order.
fn files(folder: &Path, endings: &[&str]) -> Vec<Vec<u8>> {
    let mut paths: Vec<PathBuf> =
        fs::read_dir(folder).expect("a folder").map(|entry| entry.expect("an entry").path()).collect();
    paths.sort();
    let mut found = Vec::new();
    for path in paths {
        if path.is_dir() {
            found.extend(files(&path, endings));
        } else if path.extension().is_some_and(|ending| endings.iter().any(|wanted| ending == *wanted)) {
            found.push(fs::read(&path).expect("a file"));
        }
    }
    found
}

/// What the target of this name begins with.
pub fn seeds(name: &str) -> Vec<Vec<u8>> {
    let (docs, broken) = (root().join("docs/examples"), root().join("tests/data/broken"));
    let slide = include_bytes!("../fuzz/slide.yaml").to_vec();
    let seeds = match name {
        "brief" | "opened" => [files(&docs, &["yaml"]), files(&broken, &["yaml"]), vec![slide]].concat(),
        "decision" => vec![slide.clone(), slide.clone(), [&slide[..], MORE.as_bytes()].concat()],
        "parts" => of(catalog::built_in()),
        "rules" => [of(rule::built_in()), files(&root().join("rules/cautions"), &["yaml"])].concat(),
        "choice" => [files(&docs.join("choices"), &["yaml"]), vec![CHOICE.as_bytes().to_vec()]].concat(),
        "record" => vec![small_record()],
        "table" => tables(&docs),
        "measured" => vec![measured(), fs::read(docs.join("hull-gantry-ram.csv")).expect("a table")],
        "quantity" => QUANTITIES.iter().map(|text| text.as_bytes().to_vec()).collect(),
        "formula" => formulas(),
        "form" => vec![
            form(),
            b"page-do=add-row axes.0.duty&axes.0.name=x".to_vec(),
            b"page-do=copy-axis 0&axes.0.name=x".to_vec(),
        ],
        other => panic!("nothing to begin with for {other}"),
    };
    assert!(!seeds.is_empty(), "{name}");
    seeds
}

fn of(files: Vec<(String, String)>) -> Vec<Vec<u8>> {
    files.into_iter().map(|(_, text)| text.into_bytes()).collect()
}

/// More keys of an axis.
const MORE: &str = "    cutting-force: 400 N\n    travel-per-hour: 60 m\n    duty: [{ share: 50 %, speed: 5 m/min }, { share: 50 %, speed: 15 m/min }]\n";

const CHOICE: &str = "\
axes:
  slide:
    family: straight-rack
    parts: { servo-motor: own-motor, pinion: pinion-18-straight }
components:
  - kind: steel
    basis: price list
    entries: []
";

const QUANTITIES: &[&str] = &[
    "1.5",
    "-3 mm",
    "1000 in/min",
    "0.3 g",
    "5 arcmin",
    "1e-3 kg·m²",
    "12 N·m",
    "40 m/min",
    "20 °C",
    "10 K",
    "100 %",
    "1 µm",
    "3 1/min",
    "8 kW",
    "2 h",
    "1 N/µm",
];

/// The tables of suppliers with their maps, as the target takes them.
fn tables(docs: &Path) -> Vec<Vec<u8>> {
    let read = |path: PathBuf| fs::read(path).expect("a file");
    let data = root().join("tests/data/import");
    let pair = |map: PathBuf, table: PathBuf| [read(map), b"\n=\n".to_vec(), read(table)].concat();
    vec![
        pair(docs.join("supplier/motor-list-map.yaml"), docs.join("supplier/motor-list.csv")),
        pair(data.join("semicolons-map.yaml"), data.join("semicolons.csv")),
        pair(data.join("parts-in-columns-map.yaml"), data.join("parts-in-columns.csv")),
        read(data.join("headings-are-keys.csv")),
    ]
}

/// A made-up measurement.
fn measured() -> Vec<u8> {
    let mut text = String::from("target [mm];direction;run;deviation [µm]\n");
    for run in 1..=3 {
        for (word, half) in [("up", -2), ("down", 2)] {
            for target in [11, 130, 240, 365, 480, 590] {
                text.push_str(&format!("{target};{word};{run};{}\n", half + target / 100 + run % 3));
            }
        }
    }
    text.into_bytes()
}

/// Every formula with its usage as arguments.
fn formulas() -> Vec<Vec<u8>> {
    let mut seeds = vec![b"whip-speed\nroot-diameter=34.5mm\nfree-length=1.5m\nends=fixed-supported\n".to_vec()];
    let text = fs::read_to_string(root().join("docs/by-hand.md")).expect("a page");
    let calls = text.lines().filter_map(|line| line.trim_start().strip_prefix("calc "));
    seeds.extend(calls.map(|call| call.replace(' ', "\n").into_bytes()));
    assert!(seeds.len() > 20 && calc::entries().count() > 20, "{} calls", seeds.len());
    seeds
}

/// A form with an axis.
fn form() -> Vec<u8> {
    let pairs = [
        ("machine", "Mine"),
        ("axes.0.name", "x"),
        ("axes.0.direction", "horizontal"),
        ("axes.0.travel", "1 m"),
        ("axes.0.moved-mass", "100 kg"),
        ("axes.0.speed", "10 m/min"),
        ("axes.0.acceleration", "1 m/s²"),
        ("axes.0.duty.0.share", "100 %"),
        ("axes.0.duty.0.speed", "5 m/min"),
        ("axes.1.name", "y"),
        ("axes.1.rides-on", "0"),
        ("axes.1.direction", "vertical"),
        ("page-units", "inch"),
        ("page-do", ""),
        ("waivers.0.rule", "x"),
    ];
    form_urlencoded::Serializer::new(String::new()).extend_pairs(pairs).finish().into_bytes()
}

/// The kept record with lists of no more than two, so that it fits.
fn small_record() -> Vec<u8> {
    let text = fs::read_to_string(root().join("tests/data/record.json")).expect("a record");
    let mut value: serde_json::Value = serde_json::from_str(&text).expect("JSON");
    for most in [40, 20, 10, 6, 4, 3, 2, 1] {
        shorten(&mut value, most);
        let small = serde_json::to_vec(&value).expect("JSON");
        if small.len() < 40_000 {
            axiswright::audit::read_bytes("record.json", &small).expect("a record still");
            return small;
        }
    }
    panic!("the record does not get small enough");
}

fn shorten(value: &mut serde_json::Value, most: usize) {
    match value {
        serde_json::Value::Array(items) => {
            items.truncate(most);
            items.iter_mut().for_each(|item| shorten(item, most));
        }
        serde_json::Value::Object(fields) => fields.values_mut().for_each(|field| shorten(field, most)),
        _ => {}
    }
}
