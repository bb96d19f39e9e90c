//! What the page answers without a script: the form, its faults, edits, downloads, two versions, a proposal.

use crate::program::Program;
use crate::request::{get, post, posted, raw};
use crate::small;
use scraper::{Html, Selector};
use serde_json::Value;
use std::fs;
use std::process::Command;

/// The program over a small catalogue, so that a build without optimisation answers in seconds.
pub struct Served {
    pub program: Program,
    pub folder: tempfile::TempDir,
}

/// Starts one; it ends with the test.
pub fn served() -> Served {
    let folder = tempfile::tempdir().expect("a folder");
    small::write(&folder.path().join("catalog"));
    let catalog = folder.path().join("catalog").display().to_string();
    let program = Program::start(env!("CARGO_BIN_EXE_axiswright"), &["--catalog", &catalog]);
    Served { program, folder }
}

impl Served {
    /// Where it is reached.
    pub fn address(&self) -> &str {
        &self.program.address
    }
}

/// A slide for which a straight rack does, field by field.
pub fn slide() -> Vec<(String, String)> {
    let fields = [
        ("machine", "Test slide"),
        ("currency", "EUR"),
        ("axes.0.name", "slide"),
        ("axes.0.direction", "horizontal"),
        ("axes.0.travel", "1.2 m"),
        ("axes.0.moved-mass", "120 kg"),
        ("axes.0.speed", "30 m/min"),
        ("axes.0.acceleration", "2 m/s²"),
        ("axes.0.families", "straight-rack, helical-rack"),
    ];
    fields.map(|(name, text)| (name.to_string(), text.to_string())).to_vec()
}

/// The same with one field filled in otherwise, or one more.
pub fn with(mut fields: Vec<(String, String)>, name: &str, text: &str) -> Vec<(String, String)> {
    fields.retain(|(own, _)| own != name);
    fields.push((name.into(), text.into()));
    fields
}

pub fn texts(page: &str, selector: &str) -> Vec<String> {
    let selector = Selector::parse(selector).expect("a selector");
    let page = Html::parse_document(page);
    page.select(&selector).map(|found| found.text().collect::<String>().trim().to_string()).collect()
}

fn values(page: &str) -> Vec<(String, String)> {
    let page = Html::parse_document(page);
    let fields = Selector::parse("#brief [name]").expect("a selector");
    let option = Selector::parse("option[selected]").expect("a selector");
    let value = |field: scraper::ElementRef<'_>| match field.value().name() {
        "select" => field.select(&option).next().and_then(|one| one.attr("value")).unwrap_or_default().to_string(),
        "textarea" => field.text().collect(),
        _ => field.attr("value").unwrap_or_default().to_string(),
    };
    let fields = page.select(&fields).filter(|field| field.value().name() != "button");
    fields.map(|field| (field.attr("name").unwrap_or_default().to_string(), value(field))).collect()
}

#[test]
fn the_first_page_has_every_key_of_the_brief_with_its_meaning() {
    let served = served();
    let got = get(served.address(), "/");
    assert_eq!(got.status, 200);
    let page = got.text();
    let names: Vec<String> = values(&page).into_iter().map(|(name, _)| name).collect();
    for name in
        ["machine", "limits.purchase", "prefer.accuracy", "axes.0.travel", "axes.0.rides-on", "axes.0.contour.error"]
    {
        assert!(names.contains(&name.to_string()), "{name}");
    }
    assert!(texts(&page, "#axes-0-travel-hint")[0].starts_with("usable travel (length, up to 200 m)"));
    assert!(texts(&page, "#axes-0-overtravel-hint")[0].ends_with("; 50 mm if left open"));
    assert!(texts(&page, "label[for=axes-0-travel] .needed") == ["needed"]);
}

#[test]
fn an_example_fills_the_form_and_the_form_gives_the_same_brief() {
    let served = served();
    let page = get(served.address(), "/?example=hull-gantry").text();
    let fields = values(&page);
    assert!(fields.contains(&("axes.0.travel".into(), "11 m".into())));
    assert!(fields.contains(&("axes.2.rides-on".into(), "1".into())));
    let brief = post(served.address(), "/take/brief.yaml", &fields);
    assert_eq!(brief.header("content-disposition"), "attachment; filename=\"brief.yaml\"");
    let read = |text: &str| {
        let mut brief = axiswright::brief::load("brief.yaml", text).expect("a brief");
        brief.text.clear();
        brief
    };
    let example = fs::read_to_string("docs/examples/hull-gantry.yaml").expect("the example");
    assert_eq!(read(&brief.text()), read(&example));
}

#[test]
fn a_fault_stands_at_its_field_in_the_words_of_the_loader() {
    let served = served();
    let fields = with(with(slide(), "axes.0.travel", "1.2"), "axes.0.speed", "30 kg");
    let got = post(served.address(), "/", &fields);
    assert_eq!(got.status, 422);
    let page = got.text();
    let told = |name: &str| texts(&page, &format!("[data-fault=\"{name}\"]"))[0].clone();
    let loaded =
        axiswright::brief::load("brief.yaml", "machine: a\naxes:\n  slide:\n    travel: 1.2\n").expect_err("faults");
    let words = loaded.iter().find(|fault| fault.path == "axes.slide.travel").expect("a fault").message.clone();
    assert!(told("axes.0.travel").starts_with(&words), "{}", told("axes.0.travel"));
    assert!(told("axes.0.speed").contains("`kg` is a unit of mass"), "{}", told("axes.0.speed"));
    assert_eq!(told("axes.0.moved-mass"), "");
    assert!(texts(&page, "#faults-said")[0].starts_with("2 things"));
    let answer = post(served.address(), "/answer?how=sketch", &fields);
    let piece: Value = serde_json::from_slice(&answer.body).expect("JSON");
    assert_eq!(piece["faults"]["axes.0.travel"][0], told("axes.0.travel").as_str());
    assert_eq!((piece["count"].as_u64(), piece["html"].as_str()), (Some(2), Some("")));
}

#[test]
fn a_form_without_a_script_gives_the_answer_and_every_look_agrees_on_it() {
    let served = served();
    let page = post(served.address(), "/", &slide()).text();
    assert_eq!(texts(&page, "#found .status"), ["A drive was chosen for every axis."]);
    assert!(texts(&page, "#found h3")[0].contains("slide"));
    assert!(texts(&page, "#found figure").len() >= 2, "pictures");
    let pieces = ["first", "sketch", "whole"]
        .map(|how| post(served.address(), &format!("/answer?how={how}"), &slide()))
        .map(|got| serde_json::from_slice::<Value>(&got.body).expect("JSON"));
    for piece in &pieces {
        assert_eq!(piece["said"], pieces[0]["said"]);
    }
    assert!(pieces[0]["said"].to_string().contains("slide: "), "{}", pieces[0]["said"]);
    // the other kinds of drive stand beside it from the second look on, and nothing is said of them before
    let html = pieces[0]["html"].as_str().expect("HTML").to_string();
    assert!(html.contains("over its life.") && !html.contains("no other family"), "{html}");
    let others = pieces.map(|piece| texts(piece["html"].as_str().expect("HTML"), ".result li").len());
    assert_eq!(others[0], 0);
    assert!(others[1] > 0 && others[1] == others[2], "{others:?}");
}

#[test]
fn an_axis_that_can_fall_says_so_beside_the_answer_in_every_look() {
    let served = served();
    let fallen = with(with(slide(), "axes.0.direction", "vertical"), "axes.0.people-below", "false");
    for how in ["first", "sketch", "whole"] {
        let cautions = |fields: &[(String, String)]| {
            let got = post(served.address(), &format!("/answer?how={how}"), fields);
            let piece: Value = serde_json::from_slice(&got.body).expect("JSON");
            texts(piece["html"].as_str().expect("HTML"), ".danger summary")
        };
        let falls = |title: &String| title.contains("Axis slide: The load can drive the axis backwards");
        assert!(cautions(&fallen).iter().any(falls), "{how}: {:?}", cautions(&fallen));
        assert!(!cautions(&slide()).iter().any(falls), "{how}: {:?}", cautions(&slide()));
    }
}

#[test]
fn axes_and_rows_come_and_go_by_buttons() {
    let served = served();
    let edit = |fields: &[(String, String)], what: &str| {
        let page = post(served.address(), "/edit", &with(fields.to_vec(), "page-do", what)).text();
        (values(&page), page)
    };
    let (two, page) = edit(&slide(), "copy-axis 0");
    assert!(
        two.contains(&("axes.1.travel".into(), "1.2 m".into()))
            && two.contains(&("axes.1.name".into(), "slide 2".into()))
    );
    assert!(page.contains("data-focus=\"axes-1-name\""));
    let (one, _) = edit(&two, "remove-axis 0");
    assert!(
        one.contains(&("axes.0.name".into(), "slide 2".into()))
            && !one.iter().any(|(name, _)| name.starts_with("axes.1."))
    );
    let (rows, page) = edit(&one, "add-row axes.0.duty");
    assert!(rows.iter().any(|(name, _)| name == "axes.0.duty.0.share"));
    assert!(page.contains("data-focus=\"axes-0-duty-0-share\""));
    let (none, _) = edit(&rows, "remove-row axes.0.duty 0");
    assert!(!none.iter().any(|(name, _)| name.starts_with("axes.0.duty.0")));
}

#[test]
fn what_is_taken_away_is_what_the_command_line_writes() {
    let served = served();
    let room = tempfile::tempdir().expect("a folder");
    let address = served.address();
    let brief = room.path().join("brief.yaml");
    fs::write(&brief, post(address, "/take/brief.yaml", &slide()).body).expect("the brief");
    let out = room.path().join("decision");
    let catalog = served.folder.path().join("catalog");
    let run = Command::new(env!("CARGO_BIN_EXE_axiswright"))
        .args(["recommend", "--quiet"])
        .arg(&brief)
        .arg("--catalog")
        .arg(&catalog)
        .arg("--out")
        .arg(&out)
        .status();
    assert!(run.expect("a run").success());
    for name in
        ["recommendation.html", "recommendation.md", "record.json", "candidates.csv", "parts.csv", "machine.xlsx"]
    {
        let got = post(address, &format!("/take/{name}"), &slide());
        assert_eq!(got.status, 200, "{name}");
        assert!(got.body == fs::read(out.join(name)).expect("the file"), "{name} differs");
    }
    let archive = post(address, "/take/decision.zip", &slide()).body;
    let mut archive = zip::ZipArchive::new(std::io::Cursor::new(archive)).expect("an archive");
    let mut names: Vec<String> = archive.file_names().map(|name| name.expect("a name").into_owned()).collect();
    names.sort();
    for name in &names {
        let mut content = Vec::new();
        std::io::Read::read_to_end(&mut archive.by_name(name).expect("a file"), &mut content).expect("its content");
        let own = out.join(name.strip_prefix("decision/").expect("below one folder"));
        assert!(content == fs::read(&own).expect("the file"), "{name} differs");
    }
    let written = walk(&out, "decision");
    assert_eq!(names, written, "the archive holds every file of the folder");
}

fn walk(folder: &std::path::Path, name: &str) -> Vec<String> {
    let mut all = Vec::new();
    for entry in fs::read_dir(folder).expect("a folder") {
        let entry = entry.expect("an entry");
        let name = format!("{name}/{}", entry.file_name().to_string_lossy());
        if entry.path().is_dir() { all.extend(walk(&entry.path(), &name)) } else { all.push(name) }
    }
    all.sort();
    all
}

#[test]
fn an_opened_brief_is_in_the_form_or_its_faults_are_told_with_their_lines() {
    let served = served();
    let open = |text: &str| {
        let body = format!(
            "--cut\r\nContent-Disposition: form-data; name=\"file\"; filename=\"my.yaml\"\r\n\r\n{text}\r\n--cut--\r\n"
        );
        let bytes = posted(served.address(), "/open", "multipart/form-data; boundary=cut", body.as_bytes());
        raw(served.address(), &bytes).expect("an answer")
    };
    let example = fs::read_to_string("docs/examples/glass-table.yaml").expect("the example");
    let got = open(&example);
    assert_eq!(got.status, 200);
    assert!(values(&got.text()).iter().any(|(name, text)| name == "axes.0.name" && text == "bridge"));
    let got = open("machine: Slide\naxes:\n  x:\n    travel: 3\n    colour: red\n");
    assert_eq!(got.status, 422);
    let told = texts(&got.text(), "#faults-elsewhere li");
    assert!(told.iter().any(|line| line.starts_with("line 5, column ") && line.contains("colour")), "{told:?}");
    assert!(values(&got.text()).contains(&("axes.0.travel".into(), "3".into())), "what can be read is kept");
}

#[test]
fn two_versions_stand_side_by_side() {
    let served = served();
    let address = served.address();
    let page = post(address, "/edit", &with(slide(), "page-do", "keep")).text();
    let kept = values(&page).into_iter().find(|(name, _)| name == "page-other").expect("the kept version").1;
    let fields = with(with(slide(), "page-other", &kept), "axes.0.moved-mass", "400 kg");
    let page = post(address, "/compare", &fields).text();
    let lines = texts(&page, "#found table tr");
    assert!(
        lines
            .iter()
            .any(|line| line.contains("slide: moved mass") && line.contains("120 kg") && line.contains("400 kg"))
    );
    assert!(lines.iter().any(|line| line.starts_with("price to buy")), "{lines:?}");
}

#[test]
fn a_proposal_of_listed_parts_and_one_with_own_numbers_are_judged() {
    let served = served();
    let address = served.address();
    let fields = with(with(slide(), "page-check-axis", "0"), "page-check-family", "straight-rack");
    let page = post(address, "/check", &with(fields.clone(), "page-check", "parts")).text();
    assert!(texts(&page, "#part-servo-motor option").contains(&"servo-1.0kw".to_string()));
    let fields = with(fields, "page-part.servo-motor", "servo-1.0kw");
    let page = post(address, "/check", &with(fields.clone(), "page-check", "judge")).text();
    assert!(texts(&page, "#found").concat().contains("servo-1.0kw"), "{:?}", texts(&page, "#found"));
    // a motor without torque cannot do
    let fields = with(fields, "page-own.servo-motor", "yes");
    let fields = with(fields, "page-own.servo-motor.peak-torque", "0.01 N·m");
    let page = post(address, "/check", &with(fields.clone(), "page-check", "judge")).text();
    assert!(texts(&page, "#found").concat().contains("own-servo-motor"), "{:?}", texts(&page, "#found"));
    let fields = with(fields, "page-own.servo-motor.peak-torque", "much");
    let page = post(address, "/check", &with(fields, "page-check", "judge")).text();
    assert!(texts(&page, "#found").concat().contains("peak-torque"), "{:?}", texts(&page, "#found"));
}

#[test]
fn a_slider_and_the_map_show_where_the_recommendation_turns() {
    let served = served();
    let address = served.address();
    let fields = with(slide(), "axes.0.families", "ball-screw, straight-rack");
    let along = with(with(fields.clone(), "page-axis", "0"), "page-of", "travel");
    let strip: Value = serde_json::from_slice(&post(address, "/turns", &along).body).expect("JSON");
    let pieces = strip["pieces"].as_array().expect("pieces");
    let end = |piece: &Value, key: &str| piece[key].as_f64().expect("a share");
    assert!(end(&pieces[0], "from") == 0.0 && end(pieces.last().expect("a piece"), "to") == 1.0);
    assert!(pieces.windows(2).all(|two| end(&two[0], "to") == end(&two[1], "from")));
    assert!(strip["html"].as_str().expect("words").contains("ravel"));
    let map: Value =
        serde_json::from_slice(&post(address, "/map", &with(fields, "page-axis", "0")).body).expect("JSON");
    assert!(map["html"].as_str().expect("a picture").contains("<svg"));
    for nonsense in [with(along.clone(), "page-axis", "7"), with(along, "page-of", "colour")] {
        assert_ne!(post(address, "/turns", &nonsense).status, 200);
    }
}
