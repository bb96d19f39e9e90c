//! Suppliers' tables become catalogue files: the same entries as written by hand, whatever the shape of the table; what is
//! wrong is told at its cell, and nothing is overwritten unasked. All tables are invented.

use assert_cmd::Command;
use axiswright::catalog::import::import;
use axiswright::catalog::{self, Catalog, KINDS, Kind, Row};
use axiswright::yaml::{Document, Faults};
use std::fs;
use std::path::{Path, PathBuf};

fn data(name: &str) -> String {
    fs::read_to_string(Path::new("tests/data/import").join(name)).expect(name)
}

fn motors() -> &'static Kind {
    Kind::find("servo-motor").expect("a kind")
}

/// The motors of a catalogue file that are not generic.
fn rows(yaml: &str) -> Vec<Row> {
    let layers = vec![catalog::built_in(), vec![("motors.yaml".to_string(), yaml.to_string())]];
    let catalog: Catalog = catalog::load_layers(layers).expect("a catalogue");
    (motors().rows)(&catalog).into_iter().filter(|row| !row.generic).collect()
}

fn shown(rows: &[Row]) -> Vec<(String, String, Vec<Option<String>>)> {
    rows.iter().map(|row| (row.designation.clone(), row.lead_time.clone(), row.values.clone())).collect()
}

#[test]
fn three_shapes_of_table_give_the_entries_that_are_written_by_hand() {
    let by_hand = shown(&rows(&data("by-hand.yaml")));
    assert_eq!(by_hand.len(), 4);
    for (table, map) in [
        ("headings-are-keys.csv", None),
        ("semicolons.csv", Some("semicolons-map.yaml")),
        ("parts-in-columns.csv", Some("parts-in-columns-map.yaml")),
    ] {
        let mut faults = Faults::default();
        let map = map.map(|name| Document::parse(name, &data(name), &mut faults).expect("YAML"));
        let basis = map.is_none().then_some("invented table of a test, 2026-11");
        let done = import(motors(), (table, &data(table)), map.as_ref(), basis)
            .map_err(|faults| faults.to_string())
            .expect(table);
        assert_eq!((done.entries, done.rows_left_out), (4, 0), "{table}: {}", done.left_out);
        assert_eq!(done.unplaced, Vec::<String>::new(), "{table}");
        assert_eq!(shown(&rows(&done.yaml)), by_hand, "{table}:\n{}", done.yaml);
        let odd: Vec<String> = done.remarks.iter().map(|remark| remark.to_string()).collect();
        assert_eq!(odd.len(), 1, "only the motor without a price is remarked on: {odd:?}");
        assert!(odd[0].contains("demo-motor-3") && odd[0].contains("price is missing"), "{odd:?}");
    }
}

struct Room(tempfile::TempDir);

struct Done {
    status: i32,
    out: String,
    err: String,
}

impl Room {
    fn with(files: &[(&str, &str)]) -> Room {
        let room = tempfile::tempdir().expect("a folder");
        for (name, text) in files {
            fs::write(room.path().join(name), text).expect("a file");
        }
        Room(room)
    }

    fn import(&self, arguments: &[&str]) -> Done {
        let output = Command::cargo_bin("axiswright")
            .expect("the program is built")
            .args(["catalog", "import"])
            .args(arguments)
            .current_dir(self.0.path())
            .output()
            .expect("it runs");
        Done {
            status: output.status.code().expect("a status"),
            out: String::from_utf8(output.stdout).expect("text"),
            err: String::from_utf8(output.stderr).expect("text"),
        }
    }

    fn path(&self, name: &str) -> PathBuf {
        self.0.path().join(name)
    }
}

const BASIS: &str = "invented table of a test, 2026-11";

#[test]
fn an_import_writes_a_file_that_a_recommendation_can_use_and_replaces_nothing_unasked() {
    let (table, map) = (data("semicolons.csv"), data("semicolons-map.yaml"));
    let room = Room::with(&[("list.csv", &table), ("map.yaml", &map)]);
    let arguments = ["list.csv", "--kind", "servo-motor", "--map", "map.yaml", "--out", "mine/motors.yaml"];
    let done = room.import(&arguments);
    assert_eq!(done.status, 1, "a missing price is told by status 1\n{}", done.err);
    assert_eq!(done.out, "");
    assert!(done.err.contains("4 entries, written to mine/motors.yaml"), "{}", done.err);
    let written = fs::read_to_string(room.path("mine/motors.yaml")).expect("the file");
    assert!(written.starts_with("# Imported from list.csv"), "{written}");
    assert!(written.lines().all(|line| line.chars().count() <= 118), "{written}");
    catalog::load(&[room.path("mine")]).map_err(|faults| faults.to_string()).expect("a catalogue");
    fs::write(room.path("mine/motors.yaml"), "# mine\n").expect("a file");
    let again = room.import(&arguments);
    assert!(again.status == 2 && again.err.contains("is there already"), "{}", again.err);
    assert_eq!(fs::read_to_string(room.path("mine/motors.yaml")).expect("the file"), "# mine\n");
    let replaced = room.import(&[&arguments[..], &["--replace"]].concat());
    assert_eq!(replaced.status, 1, "{}", replaced.err);
    assert_eq!(fs::read_to_string(room.path("mine/motors.yaml")).expect("the file"), written);
}

#[test]
fn rows_that_are_not_whole_are_left_out_and_told_at_their_cell() {
    let table = data("headings-are-keys.csv")
        .replace("demo-motor-1b,demo-1,400,480,0.8,2.55", "demo-motor-1b,demo-1,400,480,0.8,about 2")
        .replace("demo-motor-2,demo-2,400", "demo-motor-2,demo-2,n/a")
        .replace("demo-motor-3,demo-3,400,480,5.5,17.5", "demo-motor-3,demo-3,400,480,5.5,-17.5");
    let room = Room::with(&[("list.csv", &table)]);
    let done = room.import(&["list.csv", "--kind", "servo-motor", "--basis", BASIS]);
    assert_eq!(done.status, 1, "{}", done.err);
    assert!(done.out.contains("demo-motor-1,") && !done.out.contains("demo-motor-2"), "{}", done.out);
    for told in [
        "list.csv:4:34",
        "`rated-torque`: `about 2` is not a number",
        "list.csv:5:21",
        "this part has nothing for `rated-voltage`",
        "list.csv:6:",
        "must be a value greater than zero",
        "1 entry, 3 parts left out",
    ] {
        assert!(done.err.contains(told), "{told}\n{}", done.err);
    }
}

#[test]
fn a_number_that_a_comma_parts_in_two_a_second_heading_and_a_second_name_are_told() {
    let room = Room::with(&[
        (
            "comma.csv",
            "designation,lead-time,teeth,helical,profile-shift\nR1,3 weeks,20,true,0,25\nR2,3 weeks,20,true,0.25\n",
        ),
        ("twice.csv", "designation;lead-time;teeth;teeth;helical;profile-shift\nR1;3 weeks;20;21;true;0,25\n"),
        (
            "names.csv",
            "designation;lead-time;teeth;helical;profile-shift\nR1;3 weeks;20;true;0,25\n\nR1;3 weeks;22;true;0,25\n",
        ),
        ("unused.csv", "designation;lead-time;teeth;helical;profile-shift;colour\nR1;3 weeks;20;true;0,25;red\n"),
        ("either.csv", "designation;lead-time;teeth;helical;profile-shift\nR1;3 weeks;20;true;1,250\n"),
    ]);
    for (table, status, told) in [
        ("comma.csv", 1, vec!["comma.csv:2:22", "there are 6 cells here and 5 headings", "1 entry, 1 part left out"]),
        ("twice.csv", 2, vec!["twice.csv:1:29", "two columns have the heading `teeth`"]),
        ("names.csv", 1, vec!["names.csv:4:1", "the designation R1 is given twice, first in line 2"]),
        ("unused.csv", 1, vec!["not used: the column `colour`"]),
        ("either.csv", 2, vec!["either.csv:2:20", "`1,250` may have a decimal mark or a mark of thousands"]),
    ] {
        let done = room.import(&[table, "--kind", "pinion", "--basis", BASIS]);
        assert_eq!(done.status, status, "{table}: {}", done.err);
        for words in told {
            assert!(done.err.contains(words), "{table}: {words}\n{}", done.err);
        }
    }
}

#[test]
fn an_inertia_ten_times_off_and_a_rating_that_geometry_cannot_give_are_hardly_right() {
    let table = data("headings-are-keys.csv").replace(",600,1.1,", ",600,18,");
    let room = Room::with(&[("list.csv", &table)]);
    let done = room.import(&["list.csv", "--kind", "servo-motor", "--basis", BASIS]);
    assert_eq!(done.status, 1);
    assert!(
        done.err.contains("hardly right: servo-motor demo-motor-1: inertia over its trend with torque is"),
        "{}",
        done.err
    );
    let screws = screw_table(3.0);
    let room = Room::with(&[("screws.csv", &screws)]);
    let done = room.import(&["screws.csv", "--kind", "ball-screw", "--basis", BASIS]);
    assert!(done.status == 1 && done.err.contains("rating"), "{}\n{}", done.out, done.err);
    let sound = screw_table(1.0);
    let room = Room::with(&[("screws.csv", &sound)]);
    let done = room.import(&["screws.csv", "--kind", "ball-screw", "--basis", BASIS]);
    assert_eq!(done.status, 0, "{}", done.err);
}

/// One screw of the built-in catalogue as a table, its dynamic rating multiplied.
fn screw_table(times: f64) -> String {
    let catalog = catalog::load(&[]).expect("the catalogue");
    let kind = Kind::find("ball-screw").expect("a kind");
    let row = (kind.find_row)(&catalog, "screw-40x20").expect("a screw");
    let mut head = vec!["designation".to_string(), "lead-time".into()];
    let mut cells = vec!["my-screw-40x20".to_string(), row.lead_time.clone()];
    for (field, value) in kind.fields.iter().zip(&row.values) {
        head.push(field.key());
        let text = value.clone().unwrap_or_default();
        cells.push(match (field.name, text.split_once(' ')) {
            ("dynamic_rating", Some((number, unit))) => {
                format!("{} {unit}", number.parse::<f64>().expect("a number") * times)
            }
            _ => text,
        });
    }
    format!("{}\n{}\n", head.join(","), cells.join(","))
}

#[test]
fn what_concerns_the_whole_table_ends_the_import_with_its_place() {
    let keys = data("headings-are-keys.csv");
    let (list, map) = (data("semicolons.csv"), data("semicolons-map.yaml"));
    let cases: [(&str, String, String, &[&str]); 9] = [
        ("no basis", keys.clone(), String::new(), &["nothing says where the data come from"]),
        ("generic", keys.clone(), "basis: generic data\n".into(), &["count as invented"]),
        ("unknown key", list.clone(), map.replace("  size:", "  sise:"), &["map.yaml:6:3", "did you mean `size`?"]),
        (
            "no such column",
            list.clone(),
            map.replace("column: Feldschwächung", "column: Feldschwächng"),
            &["the table has no column `Feldschwächng`", "did you mean `Feldschwächung`?", "list.csv:4:1"],
        ),
        ("a key that nothing gives", list.clone(), map.replace("  lead-time: 5 weeks\n", ""), &["gives `lead-time`"]),
        ("no unit", list.clone(), map.replace("unit: kg·m², ", ""), &["numbers without a unit", "inertia: { column:"]),
        ("wrong unit", list.replace("P_N [W]", "P_N [kg]"), map.clone(), &["numbers without a unit", "`P_N [kg]`"]),
        ("both marks", list.replace("2,55;2,9;8,7", "2.55;2,9;8,7"), map.clone(), &["one table has one of them"]),
        ("empty", String::new(), map.clone(), &["the table is empty"]),
    ];
    for (case, table, map, told) in &cases {
        let room = Room::with(&[("list.csv", table), ("map.yaml", map)]);
        let mut arguments = vec!["list.csv", "--kind", "servo-motor", "--out", "motors.yaml"];
        if !map.is_empty() {
            arguments.extend(["--map", "map.yaml"]);
        }
        let done = room.import(&arguments);
        assert_eq!(done.status, 2, "{case}: {}", done.err);
        for words in *told {
            assert!(done.err.contains(words), "{case}: {words}\n{}", done.err);
        }
        assert!(!room.path("motors.yaml").exists(), "{case}: nothing is written");
    }
    let wrong = Room::with(&[("list.csv", &keys)]).import(&["list.csv", "--kind", "servo"]);
    assert!(wrong.status == 2 && wrong.err.contains("servo-motor"), "{}", wrong.err);
}

#[test]
fn every_kind_that_is_listed_can_be_imported_from_its_own_listing() {
    // every part of the built-in catalogue, shown as text, comes back as the same part
    let catalog = catalog::load(&[]).expect("the catalogue");
    for kind in KINDS.iter().filter(|kind| kind.name != "price-basis") {
        let rows = (kind.rows)(&catalog);
        let mut writer = csv::Writer::from_writer(Vec::new());
        let head: Vec<String> = ["designation", "lead-time"]
            .map(String::from)
            .into_iter()
            .chain(kind.fields.iter().map(|field| field.key()))
            .collect();
        writer.write_record(&head).expect("a row");
        for row in &rows {
            let values = row.values.iter().map(|value| value.clone().unwrap_or_default());
            let cells = [format!("my-{}", row.designation), row.lead_time.clone()].into_iter().chain(values);
            writer.write_record(cells).expect("a row");
        }
        let table = String::from_utf8(writer.into_inner().expect("bytes")).expect("text");
        let map = Document::parse("map.yaml", "decimal: point\n", &mut Faults::default()).expect("YAML");
        let done = import(kind, ("list.csv", &table), Some(&map), Some(BASIS))
            .map_err(|faults| faults.to_string())
            .expect(kind.name);
        assert_eq!((done.entries, done.left_out.to_string()), (rows.len(), String::new()), "{}", kind.name);
    }
}
