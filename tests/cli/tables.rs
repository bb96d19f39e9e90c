//! The tables of a decision folder, read back by libraries that other people wrote (csv, calamine).

use crate::recommend::{BRIEF, Room};
use calamine::{Data, Reader, Xlsx};
use std::fs;
use std::io::Cursor;

fn folder(room: &Room) -> std::path::PathBuf {
    let target = room.text("decision");
    let done = room.recommend(&["--no-turning-points", "--out", &target]);
    assert_eq!(done.status, 0, "{}", done.err);
    room.path("decision")
}

#[test]
fn the_workbook_holds_the_numbers_of_the_record_and_names_stay_text() {
    // a name that a spreadsheet would take for a formula
    let room = Room::with(&BRIEF.replace("  slide:", "  \"=1+1\":"));
    let folder = folder(&room);
    let record: serde_json::Value =
        serde_json::from_slice(&fs::read(folder.join("record.json")).expect("a record")).expect("JSON");
    let bytes = fs::read(folder.join("machine.xlsx")).expect("a workbook");
    let mut book: Xlsx<_> = Xlsx::new(Cursor::new(bytes)).expect("calamine opens it");
    assert_eq!(book.sheet_names(), ["machine", "parts", "costs", "limits", "drives compared"]);
    let sheet = book.worksheet_range("machine").expect("the machine");
    let column = |head: &str| {
        let place = sheet.rows().next().expect("a head").iter().position(|cell| *cell == Data::String(head.into()));
        place.unwrap_or_else(|| panic!("no column {head}"))
    };
    let row = sheet.rows().nth(1).expect("the axis");
    assert_eq!(row[0], Data::String("=1+1".into()), "the name is text");
    let chosen = &record["axes"][0]["chosen"];
    let purchase = chosen["cost"]["purchase"].as_f64().expect("a price");
    assert_eq!(row[column("price to buy [EUR]")], Data::Float(purchase));
    let life = chosen["cost"]["whole-life"].as_f64().expect("a price");
    assert_eq!(row[column("price over its life [EUR]")], Data::Float(life));
    assert!(
        book.worksheet_formula("machine").expect("formulas").cells().any(|(_, _, formula)| formula == "SUM(E2:E2)")
    );
    let parts = book.worksheet_range("parts").expect("the parts");
    let components = chosen["components"].as_array().expect("components");
    assert_eq!(parts.rows().count(), 1 + components.len());
    for (row, part) in parts.rows().skip(1).zip(components) {
        assert_eq!(row[2], Data::String(part["designation"].as_str().expect("a name").into()));
        let property = row[4] == Data::String("property".into());
        assert_eq!(
            property,
            ["screw-grade", "preload-class", "end-arrangement"].iter().any(|role| part["role"] == *role)
        );
        let count = if property { Data::Empty } else { Data::Float(part["count"].as_f64().expect("a count")) };
        assert_eq!(row[3], count);
        assert_eq!(row[5], Data::String("generic, replace by supplier data".into()));
    }
    for name in book.sheet_names() {
        let sheet = book.worksheet_range(&name).expect("a sheet");
        let marks = |text: &str| text.chars().any(|letter| ('\u{e000}'..='\u{f8ff}').contains(&letter));
        assert!(!sheet.cells().any(|(_, _, cell)| marks(&cell.to_string())), "{name}: words are plain");
    }
    let costs = book.worksheet_range("costs").expect("the costs");
    let bought = costs.rows().skip(1).filter(|row| row[2] == Data::String("purchase".into()));
    let sum: f64 = bought.map(|row| if let Data::Float(value) = row[3] { value } else { f64::NAN }).sum();
    assert!((sum - purchase).abs() <= 1e-9 * purchase, "{sum} of {purchase}");
}

#[test]
fn the_bill_of_materials_lists_every_part_once_and_two_runs_give_the_same_bytes() {
    let room = Room::with(BRIEF);
    let first = folder(&room);
    let read = |name: &str| fs::read(first.join(name)).expect(name);
    let before = [read("machine.xlsx"), read("parts.csv")];
    let record: serde_json::Value = serde_json::from_slice(&read("record.json")).expect("JSON");
    let plain = |letter: char| !('\u{e000}'..='\u{f8ff}').contains(&letter);
    assert!(String::from_utf8_lossy(&before[1]).chars().all(plain), "words are plain");
    let mut reader = csv::Reader::from_reader(before[1].as_slice());
    let head: Vec<String> = reader.headers().expect("a head").iter().map(String::from).collect();
    assert_eq!(head, ["axis", "part", "designation", "count", "unit", "data"]);
    let rows: Vec<csv::StringRecord> = reader.records().map(|row| row.expect("a row")).collect();
    let components = record["axes"][0]["chosen"]["components"].as_array().expect("components");
    assert_eq!(rows.len(), components.len());
    assert!(rows.iter().zip(components).all(|(row, part)| Some(&row[2]) == part["designation"].as_str()));
    folder(&room);
    assert!(before == [read("machine.xlsx"), read("parts.csv")]);
}
