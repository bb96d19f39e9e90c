//! For every reader: at phone width, in light and dark, and without serious faults for readers of the screen.

use crate::session::{Kind, Session};
use serde_json::Value;

/// Whether the page fits the width and what is pressed is large enough: 24 px, WCAG 2.2 success criterion 2.5.8, from memory.
const FITS: &str = "
    const wide = document.documentElement.scrollWidth - document.documentElement.clientWidth;
    const small = [...document.querySelectorAll('button, input, select, summary')]
        .filter((one) => one.offsetParent && one.tabIndex >= 0)
        .filter((one) => one.getBoundingClientRect().height < 24)
        .map((one) => one.id || one.textContent.trim());
    return { wide, small };";

#[tokio::test]
#[ignore = "needs Chromium; .ci/run asks for it"]
async fn a_phone_shows_everything_within_its_width() {
    let session = Session::start(Kind { phone: true, ..Kind::default() }).await;
    session.open("/?example=tray-loader").await;
    session.answered().await;
    let fits = session.script(FITS).await;
    assert_eq!(fits["wide"], 0, "nothing stands out to the right");
    assert_eq!(fits["small"], serde_json::json!([]), "everything can be touched");
    let bar = session.until("#bar", "told the answer", |text| text.contains("lift: ")).await;
    assert!(bar.contains("price"), "{bar}");
    session.picture("phone.png").await;
    session.script("document.getElementById('answer').scrollIntoView()").await;
    session.picture("phone-answer.png").await;
    session.end().await;
}

/// The faults of a page that axe-core calls serious or critical, one a line.
async fn serious(session: &Session) -> String {
    let path = std::env::var("AXISWRIGHT_AXE").expect("AXISWRIGHT_AXE names axe.min.js of the npm package axe-core");
    let axe = std::fs::read_to_string(&path).unwrap_or_else(|error| panic!("{path}: {error}"));
    session.script(&format!("{axe}; window.axe = axe; return true")).await;
    let run = "const done = arguments[0]; axe.run().then((found) => done(found.violations.map((one) => \
               [one.impact, one.id, one.nodes.length, one.nodes[0].html.slice(0, 160), one.nodes[0].failureSummary])))";
    let found = session.client.execute_async(run, Vec::new()).await.expect("axe runs");
    let lines = found.as_array().cloned().unwrap_or_default().into_iter();
    let serious = lines.filter(|one| matches!(one[0].as_str(), Some("serious" | "critical")));
    serious.map(|one: Value| one.to_string()).collect::<Vec<_>>().join("\n")
}

#[tokio::test]
#[ignore = "needs Chromium and axe-core; .ci/run asks for it"]
async fn axe_finds_no_serious_fault_on_any_page() {
    for dark in [false, true] {
        let session = Session::start(Kind { dark, ..Kind::default() }).await;
        session.open("/").await;
        assert_eq!(serious(&session).await, "", "the first page, dark {dark}");
        session.open("/?example=tray-loader").await;
        session.answered().await;
        session.script("document.querySelectorAll('details').forEach((one) => { one.open = true; })").await;
        assert_eq!(serious(&session).await, "", "an answer with everything open, dark {dark}");
        session.picture(if dark { "dark.png" } else { "light.png" }).await;
        session.find("button[value=keep]").await.click().await.expect("a click");
        session.until("#compare-head ~ details .count", "kept the brief", |text| !text.is_empty()).await;
        session.fill("axes.0.speed", "30").await;
        session.until("[data-fault=\"axes.0.speed\"]", "told the fault", |text| !text.is_empty()).await;
        assert_eq!(serious(&session).await, "", "a page with a fault, dark {dark}");
        session.fill("axes.0.speed", "30 m/min").await;
        session.answered().await;
        session.find("button[formaction=\"/compare\"]").await.click().await.expect("a click");
        session.until("#found table", "stood side by side", |text| text.contains("lift: speed")).await;
        assert_eq!(serious(&session).await, "", "two versions, dark {dark}");
        session.find("#check-family option[value=ball-screw]").await.click().await.expect("a click");
        session.find("button[name=page-check]").await.click().await.expect("a click");
        session.until("#part-servo-motor", "listed its parts", |text| !text.is_empty()).await;
        assert_eq!(serious(&session).await, "", "a proposal, dark {dark}");
        session.end().await;
    }
}
