//! `accept`: exit status, streams, JSON, folder, and the faults of all files at once.

use crate::recommend::Room;
use crate::{Run, run};
use serde_json::Value;
use std::fs;

/// A brief of one short axis whose search takes a second without optimisation.
const BRIEF: &str = "\
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
    accuracy: 60 µm
    reversal: 20 µm
";

/// A made-up test of the slide with these rows for the reversal and the slope.
fn measured(reversal: f64, slope: f64) -> String {
    let mut text = String::from("# made up\ntarget [mm];direction;run;deviation [µm]\n");
    for run in 1..=5 {
        for (word, half) in [("up", -0.5), ("down", 0.5)] {
            for target in [11.0, 130.0, 240.0, 365.0, 480.0, 590.0] {
                let deviation = half * reversal + slope * target / 1000.0 + f64::from(run) * 0.3 - 0.9;
                text.push_str(&format!("{target};{word};{run};{deviation:.3}\n").replace('.', ","));
            }
        }
    }
    text
}

fn room(measured: &str) -> Room {
    let room = Room::with(BRIEF);
    fs::write(room.path("measured.csv"), measured).expect("a table");
    room
}

/// Runs `accept` on the files of a room.
fn accept(room: &Room, arguments: &[&str]) -> Run {
    let (brief, rules, table) = (room.text("brief.yaml"), room.text("rules"), room.text("measured.csv"));
    let given: [&str; 8] = ["accept", &brief, "--rules", &rules, "--axis", "slide", "--measured", &table];
    run(&[&given[..], arguments].concat())
}

#[test]
fn an_axis_that_keeps_its_limits_gives_status_zero_and_the_document() {
    let room = room(&measured(4.0, 10.0));
    let run = accept(&room, &["--uncertainty", "1.5um"]);
    assert_eq!((run.status, run.err.as_str()), (0, ""));
    assert!(run.out.starts_with("# Axis slide as measured: Test slide\n"), "{}", run.out);
    assert!(run.out.contains("✔ pass") && run.out.contains("expanded uncertainty 1.5 µm"), "{}", run.out);
    assert!(run.out.contains("ball screw"), "the drive of the recommendation stands beside it");
}

#[test]
fn an_axis_that_misses_a_limit_gives_status_one() {
    let room = room(&measured(25.0, 10.0));
    let run = accept(&room, &[]);
    assert_eq!(run.status, 1, "{}", run.err);
    assert!(run.err.contains("a requirement is not met"), "{}", run.err);
    assert!(run.out.contains("**Not met: reversal.**") && run.out.contains("✘ fail"), "{}", run.out);
    let guarded = accept(&crate::accept::room(&measured(19.0, 10.0)), &["--uncertainty", "2 µm", "--quiet"]);
    assert_eq!((guarded.status, guarded.err.as_str()), (1, ""), "21 µm with its guard band");
    assert!(guarded.out.contains("✘ fail, within the uncertainty"), "{}", guarded.out);
}

#[test]
fn without_a_drive_the_requirement_alone_is_compared() {
    let room = room(&measured(4.0, 10.0));
    let brief = BRIEF.replace("travel: 600 mm", "travel: 60 m");
    fs::write(room.path("brief.yaml"), brief).expect("a brief");
    let run = accept(&room, &[]);
    assert_eq!(run.status, 1, "{}", run.err);
    assert!(run.out.contains("No drive was chosen for this axis, so nothing is predicted"), "{}", run.out);
    assert!(run.out.contains("**Open: accuracy over the full travel, reversal could not be evaluated"), "{}", run.out);
}

#[test]
fn every_equation_that_the_document_names_can_be_explained() {
    let room = room(&measured(4.0, 10.0));
    let text = accept(&room, &[]).out;
    let line = text
        .lines()
        .find(|line| line.contains("axiswright explain"))
        .expect("the line")
        .replace("axiswright explain ", "");
    let ids: Vec<&str> = line.split('`').skip(1).step_by(2).collect();
    assert!(ids.len() > 5, "{line}");
    for id in ids {
        let explained = run(&["explain", id]);
        assert_eq!(explained.status, 0, "{id}: {}", explained.err);
        assert!(explained.out.contains("from memory") || explained.out.contains("derived"), "{id}: {}", explained.out);
    }
}

#[test]
fn json_has_its_fields_and_metric_numbers() {
    let room = room(&measured(4.0, 10.0));
    let run = accept(&room, &["--json", "--units", "inch"]);
    assert_eq!((run.status, run.err.as_str()), (0, ""));
    let value: Value = serde_json::from_str(&run.out).expect("JSON");
    for field in [
        "acceptance",
        "tool",
        "machine-name",
        "axis",
        "travel",
        "outcome",
        "inputs",
        "measurement",
        "values",
        "accuracy-section",
        "repeatability-section",
        "targets",
        "checks",
        "remarks",
        "prediction",
        "diagnosis",
    ] {
        assert!(value.get(field).is_some(), "`{field}` is missing");
    }
    assert_eq!(value["acceptance"], "axiswright-acceptance/1");
    assert_eq!((&value["outcome"], &value["travel"]["unit"]), (&Value::from("pass"), &Value::from("mm")));
    let reversal = &value["values"]["quantities"][0];
    assert_eq!((&reversal["id"], &reversal["unit"]), (&Value::from("reversal"), &Value::from("µm")));
    assert!((reversal["value"].as_f64().expect("a number") - 4.0).abs() < 1e-9);
    assert_eq!(value["inputs"][0]["role"], "measured");
    assert_eq!(value["inputs"][0]["sha256"].as_str().expect("a hash").len(), 64);
    assert!(value["prediction"]["terms"].as_array().expect("terms").len() >= 6);
    for cause in value["diagnosis"]["causes"].as_array().expect("causes") {
        for field in ["id", "title", "state", "share", "size", "looks-like", "reading"] {
            assert!(cause.get(field).is_some(), "`{field}` is missing");
        }
    }
    let again = accept(&room, &["--json"]);
    assert_eq!(run.out, again.out, "the same inputs give the same bytes, whatever the units of the document");
}

#[test]
fn a_folder_is_written_whole_replaced_and_never_mixed() {
    let room = room(&measured(4.0, 10.0));
    let target = room.text("accepted");
    let run = accept(&room, &["--out", &target, "--units", "inch"]);
    assert_eq!((run.status, run.out.as_str()), (0, ""));
    assert!(run.err.contains("written to"), "{}", run.err);
    let read = |name: &str| fs::read_to_string(room.path("accepted").join(name)).expect(name);
    assert!(read("acceptance.md").contains("](deviation.svg)"));
    assert!(read("acceptance.md").contains(" mil"));
    assert!(read("deviation.svg").starts_with("<svg "));
    let value: Value = serde_json::from_str(&read("acceptance.json")).expect("JSON");
    assert_eq!(value["outcome"], "pass");
    let again = accept(&room, &["--out", &target, "--quiet"]);
    assert_eq!((again.status, again.err.as_str()), (0, ""), "an earlier result is replaced");
    assert_eq!(fs::read_dir(room.path("accepted")).expect("a folder").count(), 3);
    fs::write(room.path("accepted").join("notes.txt"), "mine").expect("a note");
    let refused = accept(&room, &["--out", &target]);
    assert_eq!(refused.status, 2);
    assert!(
        refused.err.contains("no earlier acceptance folder") && refused.err.contains("notes.txt"),
        "{}",
        refused.err
    );
    // a decision folder is none of this kind
    fs::create_dir(room.path("decided")).expect("a folder");
    fs::write(room.path("decided").join("record.json"), "{\"record\": \"axiswright/1\"}").expect("a record");
    assert_eq!(accept(&room, &["--out", &room.text("decided")]).status, 2);
}

#[test]
fn faults_of_brief_and_table_are_told_together_with_status_two() {
    let room = room("target [mm],direction,run,deviation [µm]\n0,up,1,one\n");
    let brief = BRIEF.replace("travel: 600 mm", "travl: 600 mm");
    fs::write(room.path("brief.yaml"), brief).expect("a brief");
    let run = accept(&room, &[]);
    assert_eq!((run.status, run.out.as_str()), (2, ""));
    assert!(run.err.contains("travl") && run.err.contains("measured.csv:2:8"), "{}", run.err);
    assert!(run.err.contains(" faults"), "{}", run.err);
}

#[test]
fn an_axis_or_a_width_that_is_none_is_an_input_at_fault() {
    let room = room(&measured(4.0, 10.0));
    let (brief, table) = (room.text("brief.yaml"), room.text("measured.csv"));
    let wrong = run(&["accept", &brief, "--axis", "slid", "--measured", &table]);
    assert_eq!(wrong.status, 2);
    assert!(wrong.err.contains("no axis `slid`; did you mean `slide`?"), "{}", wrong.err);
    for (uncertainty, words) in [("-2um", "below 0"), ("2", "has no unit"), ("2 kg", "a unit of mass")] {
        let run = accept(&room, &["--uncertainty", uncertainty]);
        assert_eq!(run.status, 2);
        assert!(run.err.contains(words), "{}", run.err);
    }
    let gone = run(&["accept", &brief, "--axis", "slide", "--measured", "no-such-file.csv"]);
    assert_eq!(gone.status, 2);
    assert!(gone.err.contains("there is no such file"), "{}", gone.err);
    let short = accept(&room, &["--start", "100 mm"]);
    assert_eq!(short.status, 2);
    assert!(short.err.contains("beyond the travel of axis `slide`, which is 100 mm to 700 mm"), "{}", short.err);
    assert!(short.err.contains("--start"), "{}", short.err);
}

#[test]
fn the_sample_of_the_documents_is_what_it_says() {
    let text = fs::read_to_string("docs/examples/hull-gantry-ram.csv").expect("the sample");
    assert!(text.contains("Invented"), "it says that it is made up");
    let brief = axiswright::brief::load_file("docs/examples/hull-gantry.yaml".as_ref()).expect("the brief");
    let ram = &brief.axes[brief.axis("ram").expect("the ram")];
    let stretch = axiswright::acceptance::Stretch {
        axis: "ram",
        start: axiswright::units::Measure::of_si(0.0),
        travel: ram.travel,
    };
    let read = axiswright::acceptance::parse("sample.csv", &text, Some(stretch)).expect("a sound table");
    assert_eq!((read.targets.len(), read.runs), (8, 5));
}
