//! `recommend`: streams, exit status, the record's fields, and the decision folder.

use crate::{axiswright, run};
use serde_json::Value;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::sync::LazyLock;

/// A brief of one short axis, so that a run is quick.
pub const BRIEF: &str = "\
machine: Test slide
currency: EUR
hours-per-year: 1500
axes:
  slide:
    direction: horizontal
    travel: 600 mm
    moved-mass: 120 kg
    speed: 15 m/min
    acceleration: 2 m/s²
    families: [ball-screw]
";

/// Rules of the tests alone: they keep the search small, so that a run takes a second without optimisation.
const SMALL: [(&str, &str, &str, &str, &str); 4] = [
    ("test-diameter", "nominal-diameter", "16 mm", "16 mm", "20 mm"),
    ("test-lead", "lead", "10 mm", "10 mm", "20 mm"),
    ("test-grade", "grade-number", "\"5\"", "\"5\"", "\"10\""),
    ("test-motor", "rated-torque", "1.5 N·m", "0.75 N·m", "3 N·m"),
];

fn small_rule(id: &str, what: &str, limit: &str, passes: &str, fails: &str) -> String {
    let value = |text: &str| parse_ratio(text.trim_matches('"')) / parse_ratio(limit.trim_matches('"'));
    format!(
        "title: Test rule {id}\napplies-to: [ball-screw]\nobligation: shall\n\
         limit: {{ characteristic: {what}, at-most: {{ value: {limit} }} }}\n\
         reason: Keeps the search of a test small.\nremedy: None is needed.\n\
         sources: [ {{ kind: practice, note: for tests }} ]\nexamples:\n\
         \x20 - {{ given: {{ {what}: {passes} }}, utilisation: {}, verdict: pass }}\n\
         \x20 - {{ given: {{ {what}: {fails} }}, utilisation: {}, verdict: fail }}\n",
        value(passes),
        value(fails)
    )
}

fn parse_ratio(text: &str) -> f64 {
    text.split(' ').next().and_then(|number| number.parse().ok()).expect("a number")
}

/// The same axis with a travel for which no screw is made.
pub fn impossible() -> String {
    BRIEF.replace("travel: 600 mm", "travel: 60 m")
}

pub struct Room {
    folder: tempfile::TempDir,
}

impl Room {
    pub fn with(brief: &str) -> Room {
        let folder = tempfile::tempdir().expect("a folder");
        fs::write(folder.path().join("brief.yaml"), brief).expect("a brief");
        fs::create_dir(folder.path().join("rules")).expect("a folder");
        for (id, what, limit, passes, fails) in SMALL {
            let path = folder.path().join("rules").join(id).with_extension("yaml");
            fs::write(path, small_rule(id, what, limit, passes, fails)).expect("a rule");
        }
        Room { folder }
    }

    /// Runs `recommend` on the brief with the rules of the tests.
    pub fn recommend(&self, arguments: &[&str]) -> crate::Run {
        let (brief, rules) = (self.text("brief.yaml"), self.text("rules"));
        run(&[&["recommend", &brief, "--rules", &rules], arguments].concat())
    }

    pub fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    pub fn text(&self, name: &str) -> String {
        self.path(name).display().to_string()
    }
}

fn names(folder: &Path) -> Vec<String> {
    let entries = fs::read_dir(folder).expect("a folder");
    let mut names: Vec<String> =
        entries.map(|entry| entry.expect("an entry").file_name().to_string_lossy().into_owned()).collect();
    names.sort();
    names
}

static REPORT: LazyLock<crate::Run> = LazyLock::new(|| {
    let room = Room::with(BRIEF);
    room.recommend(&[])
});

static RECORD: LazyLock<(crate::Run, Value)> = LazyLock::new(|| {
    let room = Room::with(BRIEF);
    let run = room.recommend(&["--json"]);
    let value = serde_json::from_str(&run.out).expect("JSON");
    (run, value)
});

#[test]
fn the_report_goes_to_stdout_and_nothing_to_stderr() {
    assert_eq!((REPORT.status, REPORT.err.as_str()), (0, ""));
    assert!(REPORT.out.starts_with("# Linear drives: Test slide\n"), "{}", &REPORT.out[..200]);
    assert!(REPORT.out.ends_with('\n'));
}

#[test]
fn what_may_not_be_meant_is_told_before_the_answer_and_in_it() {
    let brief = BRIEF
        .replace("120 kg", "120.000 kg")
        .replace("600 mm", "4.2 mm")
        .replace("EUR", "EUR\nenvironment: [nass, sawdust, no chips]\nlimits: { purchase: 45.000 }");
    let room = Room::with(&brief);
    let (report, json) = (room.recommend(&["--no-turning-points"]), room.recommend(&["--no-turning-points", "--json"]));
    let told = [
        ("limits.purchase", "“45.000” is taken for “45”; if the point parts thousands, write “45000”"),
        (
            "axes.slide.moved-mass",
            "“120.000 kg” is taken for “120 kg”; if the point parts thousands, write “120000 kg”",
        ),
        ("environment", "nothing is chosen for “nass”; the catalogue knows surroundings by these words: chip, swarf, "),
        // by hand: v = j·(s/2j)^(2/3) with j = 40 m/s³ and s = 4.2 mm, 0.05607 m/s
        (
            "axes.slide.travel",
            "a travel of 4.2 mm is too short to reach 15 m/min: speeding up and slowing down with 2 m/s² and 40 m/s³ the axis gets to 3.36 m/min",
        ),
    ];
    let record: Value = serde_json::from_str(&json.out).expect("JSON");
    let doubts = record["doubts"].as_array().expect("doubts");
    assert_eq!(doubts.len(), told.len(), "{doubts:?}");
    for (key, words) in told {
        assert!(report.err.contains(&format!("note: {key}: {words}")), "{key}: {}", report.err);
        assert!(report.out.contains(words), "{key}");
        let said =
            |doubt: &Value| doubt["key"] == key && doubt["words"].as_str().is_some_and(|all| all.starts_with(words));
        assert!(doubts.iter().any(said), "{key}: {doubts:?}");
    }
    assert!(RECORD.1.get("doubts").is_none(), "a plain brief leaves no doubt");
    // 25.4 mm an inch; what is quoted stays as the brief has it
    let inches = room.recommend(&["--no-turning-points", "--units", "inch"]).out;
    assert!(inches.contains("a travel of 0.16535 in is too short to reach 590.55 in/min: "), "{}", &inches[..2000]);
    assert!(
        inches.contains("78.74 in/s² and 1574.8 in/s³ the axis gets to 132.28 in/min") && inches.contains(told[0].1)
    );
}

#[test]
fn the_record_has_the_fields_of_the_contract() {
    let (run, record) = &*RECORD;
    assert_eq!((run.status, run.err.as_str()), (0, ""));
    assert_eq!(record["record"], "axiswright/1");
    assert_eq!(record["tool"], env!("CARGO_PKG_VERSION"));
    assert_eq!(record["outcome"], "chosen");
    let has = |value: &Value, fields: &[&str]| {
        for field in fields {
            assert!(value.get(field).is_some(), "`{field}` is missing in {}", value.to_string().split_at(80).0);
        }
    };
    has(record, &["inputs", "assumptions", "waivers", "axes", "machine"]);
    for input in record["inputs"].as_array().expect("a list") {
        has(input, &["role", "name", "sha256"]);
        assert!(["brief", "catalog", "rules"].contains(&input["role"].as_str().expect("a role")));
        assert_eq!(input["sha256"].as_str().expect("a hash").len(), 64);
        assert!(!input["name"].as_str().expect("a name").starts_with('/'));
    }
    for assumed in record["assumptions"].as_array().expect("a list") {
        has(assumed, &["key", "value", "unit", "source"]);
    }
    let axis = &record["axes"][0];
    has(axis, &["name", "outcome", "chosen", "runners-up", "families", "turning-points"]);
    has(&axis["families"][0], &["family", "configurations", "admissible", "best", "nearest", "excluded-by"]);
    let chosen = &axis["chosen"];
    has(chosen, &["family", "components", "parameters", "worksheet", "findings", "cost"]);
    has(&chosen["parameters"], &["diameter", "lead", "grade", "ends", "preload"]);
    has(&chosen["components"][0], &["role", "designation", "count"]);
    has(&chosen["worksheet"][0], &["id", "symbol", "value", "unit", "origin", "formula", "inputs"]);
    has(&chosen["findings"][0], &["rule", "obligation", "demand", "limit", "unit", "utilisation", "verdict"]);
    has(&chosen["cost"], &["purchase", "whole-life", "lines"]);
    has(
        &record["machine"],
        &["purchase", "whole-life-cost", "tool-point-error", "peak-power", "motor-models", "solver"],
    );
    has(&record["machine"]["solver"], &["status", "objective", "bound"]);
}

#[test]
fn every_caution_that_an_axis_names_stands_in_the_record_with_its_text_and_in_the_report() {
    let (_, record) = &*RECORD;
    let texts = record["caution-texts"].as_array().expect("the texts");
    for axis in record["axes"].as_array().expect("axes") {
        let ids: Vec<&str> =
            axis["cautions"].as_array().expect("cautions").iter().map(|id| id.as_str().expect("an id")).collect();
        assert!(ids.contains(&"general") && ids.contains(&"stored-energy"), "{ids:?}");
        for id in ids {
            let caution = texts.iter().find(|text| text["id"] == id).unwrap_or_else(|| panic!("{id} has no text"));
            for standard in caution["standards"].as_array().expect("standards") {
                assert!(REPORT.out.contains(standard["number"].as_str().expect("a number")), "{id}");
            }
        }
    }
    assert!(texts.iter().all(|text| record["axes"].to_string().contains(&format!("{}", text["id"]))));
}

#[test]
fn a_requirement_that_nothing_meets_gives_status_one_and_a_report() {
    let room = Room::with(&impossible());
    let run = room.recommend(&[]);
    assert_eq!(run.status, 1, "{}", run.err);
    assert!(run.out.contains("No machine can be recommended"), "{}", run.out);
    assert!(run.out.contains("What stands in the way"));
}

#[test]
fn a_faulty_brief_gives_status_two_and_writes_nothing() {
    let room = Room::with(&BRIEF.replace("travel: 600 mm", "travle: 600 mm").replace("120 kg", "120 mm"));
    let run = room.recommend(&["--out", &room.text("decision")]);
    assert_eq!((run.status, run.out.as_str()), (2, ""));
    assert!(run.err.contains("did you mean `travel`?") && run.err.contains("moved-mass"), "all faults: {}", run.err);
    assert!(!run.err.contains('\u{1b}'), "no colour away from a terminal");
    assert_eq!(names(room.folder.path()), ["brief.yaml", "rules"]);
}

#[test]
fn files_that_are_not_there_give_status_two() {
    let room = Room::with(BRIEF);
    let brief = room.text("brief.yaml");
    let nowhere = room.text("nowhere");
    for arguments in [
        vec!["recommend", &nowhere],
        vec!["recommend", &brief, "--catalog", &nowhere],
        vec!["recommend", &brief, "--rules", &nowhere],
        vec!["recommend", &brief, "--threads", "0"],
        vec!["recommend", &brief, "--units", "cubits"],
        vec!["recommend"],
    ] {
        let run = run(&arguments);
        assert_eq!((run.status, run.out.as_str()), (2, ""), "{arguments:?}: {}", run.err);
        assert!(!run.err.is_empty());
    }
}

#[test]
fn a_decision_folder_is_written_whole_and_holds_the_same_as_stdout() {
    let room = Room::with(BRIEF);
    let run = room.recommend(&["--out", &room.text("decision")]);
    assert_eq!((run.status, run.out.as_str()), (0, ""), "{}", run.err);
    assert_eq!(
        names(&room.path("decision")),
        [
            "candidates.csv",
            "charts",
            "inputs",
            "machine.xlsx",
            "parts.csv",
            "recommendation.html",
            "recommendation.md",
            "record.json"
        ]
    );
    let text = |name: &str| fs::read_to_string(room.path(name)).expect("a file");
    let told = text("decision/recommendation.md");
    let images: Vec<&str> = told.lines().filter(|line| line.starts_with("![")).collect();
    for image in &images {
        let file = image.split("](").nth(1).and_then(|rest| rest.strip_suffix(')')).expect("an image names its file");
        assert!(room.path(&format!("decision/{file}")).is_file(), "{file}");
    }
    assert_eq!(names(&room.path("decision/charts")).len(), images.len());
    let plain: String = told.lines().filter(|line| !line.starts_with("![")).collect::<Vec<_>>().join("\n");
    assert_eq!(plain.split_whitespace().collect::<Vec<_>>(), REPORT.out.split_whitespace().collect::<Vec<_>>());
    let table = text("decision/candidates.csv");
    assert!(table.lines().count() > 2 && table.starts_with("axis,standing,admissible,family,"), "{table}");
    assert_eq!(text("decision/record.json"), RECORD.0.out);
    assert_eq!(text("decision/inputs/brief.yaml"), BRIEF);
    assert!(text("decision/inputs/rules/test-lead.yaml").contains("Test rule test-lead"), "own rules are kept");
    let own = fs::read(room.path("rules/test-lead.yaml")).expect("a file");
    assert_eq!(fs::read(room.path("decision/inputs/rules/test-lead.yaml")).expect("a file"), own);
    assert_eq!(names(room.folder.path()), ["brief.yaml", "decision", "rules"], "nothing else is left");
}

#[test]
fn the_inputs_of_a_decision_folder_give_every_file_of_the_record_again_and_nothing_else() {
    use axiswright::{pipeline, record};
    let room = Room::with(BRIEF);
    // a layer of its own under the name of the built-in one, and a rule in place of a built-in one
    fs::create_dir_all(room.path("catalog/steel")).expect("a folder");
    let steel = axiswright::catalog::built_in().into_iter().find(|(name, _)| name.starts_with("catalog/steel/"));
    fs::write(room.path("catalog/steel/generic.yaml"), steel.expect("steels").1 + "# ours\n").expect("a file");
    let (catalog, decision) = (room.text("catalog"), room.text("decision"));
    assert_eq!(room.recommend(&["--no-turning-points", "--out", &decision, "--catalog", &catalog]).status, 0);
    let text = |name: &str| fs::read_to_string(room.path("decision").join(name)).expect("a file");
    let kept: record::DecisionRecord = serde_json::from_str(&text("record.json")).expect("a record");
    let (mut layers, mut rules, mut cautions) = (vec![Vec::new(); 2], Vec::new(), Vec::new());
    for input in &kept.inputs {
        let file = input.file.as_deref().expect("a place in the folder");
        assert_eq!(record::hash(&text(file)), input.sha256, "{file}");
        let pair = (input.name.clone(), text(file));
        match (input.role.as_str(), input.layer) {
            ("catalog", Some(layer)) => layers[layer as usize].push(pair),
            ("rules", None) if file.starts_with("inputs/rules/cautions/") => cautions.push(pair),
            ("rules", None) => rules.push(pair),
            other => assert_eq!(other, ("brief", None)),
        }
    }
    assert_eq!(layers[1].len(), 1);
    let inputs = pipeline::load_texts(("brief.yaml", BRIEF), layers, rules, cautions).expect("the inputs load");
    let again = record::input_files(&inputs.brief, &inputs.catalog, &inputs.rulebook);
    assert_eq!(again.into_iter().map(|(file, _)| file).collect::<Vec<_>>(), kept.inputs);
}

#[test]
fn an_earlier_decision_is_replaced_and_anything_else_refused() {
    let room = Room::with(BRIEF);
    let decision = room.text("decision");
    let arguments = ["--out", &decision, "--quiet"];
    assert_eq!(room.recommend(&arguments).status, 0);
    fs::write(room.path("decision/recommendation.md"), "old").expect("a file");
    let again = room.recommend(&arguments);
    assert_eq!((again.status, again.err.as_str()), (0, ""));
    let renewed = fs::read_to_string(room.path("decision/recommendation.md")).expect("a file");
    assert!(renewed.starts_with(&REPORT.out[..200]), "{renewed}");
    fs::write(room.path("decision/notes.txt"), "mine").expect("a file");
    fs::write(room.path("decision/recommendation.md"), "old").expect("a file");
    let refused = room.recommend(&arguments);
    assert_eq!((refused.status, refused.out.as_str()), (2, ""));
    assert!(refused.err.contains("notes.txt"), "{}", refused.err);
    assert_eq!(fs::read_to_string(room.path("decision/recommendation.md")).expect("a file"), "old");
    assert_eq!(names(room.folder.path()), ["brief.yaml", "decision", "rules"]);
}

#[test]
fn threads_units_and_where_it_runs_leave_the_record_as_it_is() {
    let room = Room::with(BRIEF);
    let elsewhere = axiswright()
        .args(["recommend", "brief.yaml", "--rules", "rules", "--json", "--threads", "1", "--units", "inch"])
        .current_dir(room.folder.path())
        .output()
        .expect("the program runs");
    assert_eq!(String::from_utf8(elsewhere.stdout).expect("text"), RECORD.0.out);
}

#[test]
fn the_report_reads_in_inches_on_request() {
    let room = Room::with(BRIEF);
    let run = room.recommend(&["--units", "inch"]);
    assert!(run.out.contains("23.622 in at 590.55 in/min"), "600 mm at 15 m/min");
}

#[test]
fn a_reader_that_closes_the_pipe_is_no_fault() {
    let room = Room::with(BRIEF);
    let mut child = Command::new(assert_cmd::cargo::cargo_bin("axiswright"))
        .args(["recommend", &room.text("brief.yaml"), "--rules", &room.text("rules")])
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("the program runs");
    drop(child.stdout.take());
    let output = child.wait_with_output().expect("an end");
    assert_eq!((output.status.code(), output.stderr.as_slice()), (Some(0), &b""[..]));
}
