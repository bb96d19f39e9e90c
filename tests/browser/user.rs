//! A brief filled in by hand, an answer that turns, a fault at its field, a record that is the command line's, the keyboard alone.

use crate::session::{Kind, Session, program};
use std::process::Command;

/// What a slide needs, field by field.
const SLIDE: [(&str, &str); 7] = [
    ("machine", "Hand slide"),
    ("axes.0.direction", "horizontal"),
    ("axes.0.travel", "900 mm"),
    ("axes.0.moved-mass", "150 kg"),
    ("axes.0.speed", "20 m/min"),
    ("axes.0.acceleration", "2 m/s²"),
    ("axes.0.accuracy", "0.1 mm"),
];

async fn slide(session: &Session) {
    session.open("/").await;
    for (name, text) in SLIDE {
        session.fill(name, text).await;
    }
    session.answered().await;
}

#[tokio::test]
#[ignore = "needs Chromium; .ci/run asks for it"]
async fn the_recommendation_changes_when_travel_passes_its_turning_point() {
    let session = Session::start(Kind::default()).await;
    slide(&session).await;
    let said = session.until("#said", "named the drive", |text| text.starts_with("x: ")).await;
    assert!(said.contains("price"), "{said}");
    session.picture("by-hand.png").await;
    // the slider tells where travel turns the recommendation
    session
        .find("[data-of=travel] input[type=range]")
        .await
        .send_keys("\u{e010}")
        .await
        .expect("the slider has the focus");
    let told = session.until("[data-of=travel] .turned", "told the turns", |text| text.contains("ravel up to ")).await;
    let first = told.lines().next().expect("a sentence");
    let (at, families) = first.trim_start_matches("Travel up to ").split_once(": ").expect("a place and two families");
    let (below, above) = families.split_once("; above: ").expect("both sides");
    let family = |text: &str| text.split('.').next().unwrap_or(text).trim_start_matches("a ").to_string();
    let (number, unit) = at.split_once(' ').expect("a number and a unit");
    let number: f64 = number.replace('\u{a0}', "").parse().expect("a number");
    for (value, wanted) in [(number * 0.96, family(below)), (number * 1.04, family(above))] {
        session.fill("axes.0.travel", &format!("{value:.4} {unit}")).await;
        let wanted = match wanted.as_str() {
            "no drive is admissible" => "x: no drive".to_string(),
            family => format!("x: {family}"),
        };
        session.until("#said", &format!("said {wanted}"), |text| text.starts_with(&wanted)).await;
    }
    assert_ne!(family(below), family(above));
    session.end().await;
}

#[tokio::test]
#[ignore = "needs Chromium; .ci/run asks for it"]
async fn strokes_stay_within_a_travel_that_is_slid_down_and_come_back_with_it() {
    let session = Session::start(Kind::default()).await;
    session.open("/?example=hull-gantry").await;
    let slider = session.find("[data-axis=\"0\"] [data-of=travel] input[type=range]").await;
    let held = async |name: &str| {
        let field = session.find(&format!("[name=\"{name}\"]")).await;
        field.prop("value").await.expect("an answer").unwrap_or_default()
    };
    // Home and End: a quarter of the 11 m, and four times as much
    for (key, travel, strokes) in [("\u{e011}", "2.75 m", ["2.75 m", "2.75 m"]), ("\u{e010}", "44 m", ["9 m", "4 m"])] {
        slider.send_keys(key).await.expect("the slider has the focus");
        assert_eq!(held("axes.0.travel").await, travel);
        assert_eq!([held("axes.0.duty.0.stroke").await, held("axes.0.duty.1.stroke").await], strokes);
        session.answered().await;
        assert_eq!(held("axes.0.travel").await, travel);
    }
    session.end().await;
}

#[tokio::test]
#[ignore = "needs Chromium; .ci/run asks for it"]
async fn a_fault_is_told_at_its_field_and_goes_when_it_is_put_right() {
    let session = Session::start(Kind::default()).await;
    slide(&session).await;
    session.fill("axes.0.travel", "900").await;
    let told = session.until("[data-fault=\"axes.0.travel\"]", "told the fault", |text| !text.is_empty()).await;
    assert!(told.contains("`900` has no unit"), "{told}");
    let field = session.find("[name=\"axes.0.travel\"]").await;
    assert_eq!(field.attr("aria-invalid").await.expect("an answer").as_deref(), Some("true"));
    assert!(!session.text(".stale .result .status").await.is_empty(), "the last answer stays in sight, marked as such");
    session.picture("fault.png").await;
    session.fill("axes.0.travel", "36 in").await;
    session.until("[data-fault=\"axes.0.travel\"]", "lost its fault", str::is_empty).await;
    session.answered().await;
    assert_eq!(field.attr("aria-invalid").await.expect("an answer"), None);
    session.end().await;
}

#[tokio::test]
#[ignore = "needs Chromium; .ci/run asks for it"]
async fn the_record_that_is_taken_away_is_the_one_of_the_command_line() {
    let session = Session::start(Kind::default()).await;
    slide(&session).await;
    for name in ["brief.yaml", "record.json", "recommendation.html"] {
        session.find(&format!("button[formaction=\"/take/{name}\"]")).await.click().await.expect("a click");
        session.downloaded(name).await;
    }
    let brief = session.folder.path().join("brief.yaml");
    let run = Command::new(program()).args(["recommend", "--json", "--quiet"]).arg(&brief).output().expect("a run");
    assert!(run.stdout == session.downloaded("record.json").await, "the records differ");
    let report = session.downloaded("recommendation.html").await;
    assert!(String::from_utf8(report).expect("text").contains("Linear drives: Hand slide"));
    session.end().await;
}

/// Goes on by the tabulator until this has the focus.
async fn tab_to(session: &Session, wanted: &str) {
    for _ in 0..400 {
        if session.focus().await == wanted {
            return;
        }
        session.press("\u{e004}").await;
    }
    panic!("the tabulator never reached {wanted}");
}

#[tokio::test]
#[ignore = "needs Chromium; .ci/run asks for it"]
async fn the_keyboard_alone_is_enough() {
    let session = Session::start(Kind::default()).await;
    session.open("/").await;
    session.press("\u{e004}").await;
    assert_eq!(session.focus().await, "Skip to the answer", "the first stop leads past the form");
    for (name, text) in SLIDE {
        tab_to(&session, &name.replace('.', "-")).await;
        session.press(text).await;
    }
    session.press("\u{e007}").await;
    session.answered().await;
    assert_eq!(session.focus().await, "answer", "the answer has the focus");
    let outlined = "return getComputedStyle(document.activeElement).outlineStyle";
    session.open("/").await;
    session.press("\u{e004}").await;
    assert_ne!(session.script(outlined).await, "none", "the focus is seen");
    tab_to(&session, "add-axis").await;
    session.press("\u{e007}").await;
    session.until("#axis-1-head", "came", |text| !text.is_empty()).await;
    assert_eq!(session.focus().await, "axes-1-name");
    let remove = "Remove axis axis";
    tab_to(&session, remove).await;
    session.press("\u{e007}").await;
    session.until("#axis-1-head", "went", str::is_empty).await;
    session.end().await;
}

#[tokio::test]
#[ignore = "needs Chromium; .ci/run asks for it"]
async fn the_demo_is_one_click_away_and_a_second_version_stands_beside_it() {
    let session = Session::start(Kind::default()).await;
    session.open("/").await;
    session.find("a[href=\"/?example=hull-gantry\"]").await.click().await.expect("a click");
    session.answered().await;
    let said = session.text("#said").await;
    assert!(said.starts_with("long: ") && said.contains("; ram: ball screw"), "{said}");
    assert!(!session.text("#found figure").await.is_empty(), "pictures");
    session.picture("demo.png").await;
    session.find("button[value=keep]").await.click().await.expect("a click");
    session.until("#compare-head ~ details .count", "kept the brief", |text| !text.is_empty()).await;
    session.fill("axes.0.moved-mass", "2500 kg").await;
    session.find("button[formaction=\"/compare\"]").await.click().await.expect("a click");
    let table = session.until("#found table", "stood side by side", |text| text.contains("long: moved mass")).await;
    assert!(table.contains("1850 kg") && table.contains("2500 kg"), "{table}");
    session.script("document.getElementById('answer').scrollIntoView()").await;
    session.picture("compared.png").await;
    session.end().await;
}
