//! `crossover`: arguments, exit status, streams, the folder, and the same bytes on any number of threads.

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
";

/// Runs `crossover` on the axis of a room.
fn crossover(room: &Room, arguments: &[&str]) -> Run {
    let (brief, rules) = (room.text("brief.yaml"), room.text("rules"));
    run(&[&["crossover", &brief, "--rules", &rules, "--axis", "slide"], arguments].concat())
}

const OVER: [&str; 4] = ["--over", "travel=400mm..3m", "--steps", "4"];

#[test]
fn one_range_gives_markdown_with_a_sentence_a_boundary() {
    let run = crossover(&Room::with(BRIEF), &OVER);
    assert_eq!((run.status, run.err.as_str()), (0, ""));
    assert!(run.out.starts_with("# Which drive where: axis slide of Test slide\n"), "{}", run.out);
    assert!(run.out.contains("a ball screw; above: no drive is admissible"), "{}", run.out);
    assert!(run.out.contains("Above it no ball screw keeps all rules; the best one breaks “"), "{}", run.out);
}

#[test]
fn the_record_is_the_same_on_any_number_of_threads() {
    let room = Room::with(BRIEF);
    let both = ["--over", "travel=400mm..3m", "--and", "speed=5m/min..20m/min", "--steps", "3", "--json"];
    let coarse = ["--over", "travel=400mm..3m", "--and", "speed=5m/min..20m/min", "--steps", "16", "--json"];
    for arguments in [&[&OVER[..], &["--json"]].concat()[..], &both, &coarse] {
        let runs = ["1", "2", "7"].map(|threads| crossover(&room, &[arguments, &["--threads", threads]].concat()));
        assert_eq!(runs[0].status, 0, "{}", runs[0].err);
        assert!(runs.iter().all(|run| run.out == runs[0].out));
    }
}

#[test]
fn a_folder_is_written_whole_with_page_picture_table_and_record() {
    let room = Room::with(BRIEF);
    let out = room.text("where");
    let run = crossover(&room, &[&OVER[..], &["--and", "moved-mass=50kg..200kg", "--out", &out]].concat());
    assert_eq!((run.status, run.out.as_str()), (0, ""), "{}", run.err);
    let text = |name: &str| fs::read_to_string(room.path("where").join(name)).expect(name);
    assert_eq!(fs::read_dir(room.path("where")).expect("a folder").count(), 4);
    assert!(text("crossover.md").contains("](crossover.svg)"));
    let svg = text("crossover.svg");
    assert!(roxmltree::Document::parse(&svg).is_ok() && !svg.contains("NaN"), "sound XML");
    let record: Value = serde_json::from_str(&text("crossover.json")).expect("JSON");
    assert_eq!(record["record"], "axiswright/1");
    for field in ["tool", "inputs", "axis", "over", "and", "nodes", "boundaries", "resolution", "assumptions"] {
        assert!(!record[field].is_null(), "{field}");
    }
    for field in ["requirement", "unit", "from", "to", "now"] {
        assert!(!record["over"][field].is_null() && !record["and"][field].is_null(), "{field}");
    }
    for field in ["x", "y", "family", "parameters", "purchase", "whole-life-cost", "merit"] {
        assert!(!record["nodes"][0][field].is_null(), "{field}: {}", record["nodes"][0]);
    }
    assert_eq!(record["nodes"].as_array().map(Vec::len), Some(25));
    let table = text("crossover.csv");
    let head = "travel [m],moved-mass [kg],family,best,purchase [EUR],whole-life-cost [EUR],merit,main sizes";
    assert_eq!(table.lines().next(), Some(head));
    assert_eq!(table.lines().count(), 26);
    let again = crossover(&room, &[&OVER[..], &["--out", &out, "--quiet"]].concat());
    assert_eq!((again.status, again.err.as_str()), (0, ""), "an earlier crossover is replaced");
    fs::write(room.path("where/notes.txt"), "mine").expect("a file");
    assert_eq!(crossover(&room, &[&OVER[..], &["--out", &out]].concat()).status, 2, "anything else is kept");
}

#[test]
fn nothing_admissible_anywhere_gives_status_one_and_a_report() {
    let run = crossover(&Room::with(BRIEF), &["--over", "travel=30m..60m", "--steps", "1"]);
    assert_eq!(run.status, 1, "{}", run.err);
    assert!(run.out.contains("No drive of the catalogue is admissible anywhere"), "{}", run.out);
    assert!(run.err.contains("no drive is admissible anywhere in the range"), "{}", run.err);
}

#[test]
fn faulty_arguments_give_status_two_and_say_what_would_do() {
    let room = Room::with(BRIEF);
    for (arguments, told) in [
        (&["--over", "travle=1m..2m"][..], "did you mean `travel`?"),
        (&["--over", "colour=1m..2m"], "those are travel, speed"),
        (&["--over", "travel=1m"], "KEY=FROM..TO"),
        (&["--over", "travel=1..2"], "in mm, m"),
        (&["--over", "travel=1kg..2m"], "a length is needed"),
        (&["--over", "travel=0m..2m"], "not above 0"),
        (&["--over", "travel=2m..2m"], "begins where it ends"),
        (&["--over", "purchase=1000..2000"], "limit of the whole machine"),
        (&["--over", "travel=1m..2m", "--and", "travel=1m..2m"], "already turned by --over"),
        (&["--over", "travel=1m..2m", "--and", "sped=1m..2m"], "--and: `sped`"),
        (&["--over", "travel=1m..2m", "--steps", "0"], "1..=200"),
        (&["--over", "travel=1m..2m", "--every-node"], "--and"),
        (&["--over", "travel=1m..2m", "--steps", "201"], "1..=200"),
        (&[], "--over"),
    ] {
        let run = crossover(&room, arguments);
        assert_eq!((run.status, run.out.as_str()), (2, ""), "{arguments:?}");
        assert!(run.err.contains(told), "{arguments:?}: {}", run.err);
    }
    let (brief, rules) = (room.text("brief.yaml"), room.text("rules"));
    let other = run(&["crossover", &brief, "--rules", &rules, "--axis", "slid", "--over", "travel=1m..2m"]);
    assert_eq!(other.status, 2);
    assert!(other.err.contains("the brief has no axis `slid`; did you mean `slide`?"), "{}", other.err);
}
