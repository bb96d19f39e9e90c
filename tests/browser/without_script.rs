//! The basic path in a browser that runs no script: the form, its faults, the answer, the report.

use crate::session::{Kind, Session};

#[tokio::test]
#[ignore = "needs Chromium; .ci/run asks for it"]
async fn form_and_report_need_no_script() {
    let session = Session::start(Kind { without_script: true, ..Kind::default() }).await;
    session.open("/?example=tray-loader").await;
    let button = session.find("#answer button").await;
    button.click().await.expect("a click");
    session.until(".result .status", "gave an answer", |text| !text.is_empty()).await;
    assert!(session.text("#found figure").await.contains("lift"), "pictures");
    session.fill("axes.0.travel", "1.5").await;
    session.find("#answer button").await.click().await.expect("a click");
    let told = session.until("[data-fault=\"axes.0.travel\"]", "told the fault", |text| !text.is_empty()).await;
    assert!(told.contains("`1.5` has no unit"), "{told}");
    session.fill("axes.0.travel", "1.5 m").await;
    session.find("#add-axis").await.click().await.expect("a click");
    session.until("#axis-1-head", "came", |text| !text.is_empty()).await;
    session.find("[value=\"remove-axis 1\"]").await.click().await.expect("a click");
    session.until("#axis-1-head", "went", str::is_empty).await;
    session.find("button[formaction=\"/print\"]").await.click().await.expect("a click");
    let begin = std::time::Instant::now();
    let windows = loop {
        let windows = session.client.windows().await.expect("windows");
        if windows.len() > 1 {
            break windows;
        }
        assert!(begin.elapsed() < crate::session::LONGEST, "no report");
        tokio::time::sleep(std::time::Duration::from_millis(100)).await;
    };
    session.client.switch_to_window(windows.into_iter().last().expect("a window")).await.expect("the report");
    session.until("h1", "was the report", |text| text.starts_with("Linear drives: ")).await;
    session.end().await;
}
