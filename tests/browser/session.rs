//! A browser, its driver and the page it looks at, all ended when the test ends.

use crate::program::Program;
use fantoccini::actions::{InputSource, KeyAction, KeyActions};
use fantoccini::elements::Element;
use fantoccini::{Client, ClientBuilder, Locator};
use serde_json::{Value, json};
use std::net::TcpListener;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::time::Duration;

/// The longest that anything on the page may take.
pub const LONGEST: Duration = Duration::from_secs(240);
/// How often it is looked at again.
const AGAIN: Duration = Duration::from_millis(100);

/// How the browser is.
#[derive(Debug, Clone, Copy, Default)]
pub struct Kind {
    pub phone: bool,
    pub dark: bool,
    pub without_script: bool,
}

/// A browser that looks at the page.
pub struct Session {
    pub client: Client,
    pub program: Program,
    /// Where downloads go.
    pub folder: tempfile::TempDir,
    driver: Child,
}

/// The program that serves the page.
pub fn program() -> String {
    std::env::var("AXISWRIGHT_PAGE_PROGRAM").unwrap_or(env!("CARGO_BIN_EXE_axiswright").into())
}

impl Session {
    pub async fn start(kind: Kind) -> Session {
        let folder = tempfile::tempdir().expect("a folder");
        let program = Program::start(&program(), &[]);
        let port = TcpListener::bind("127.0.0.1:0").and_then(|free| free.local_addr()).expect("a free port").port();
        let driver = Command::new("chromedriver")
            .arg(format!("--port={port}"))
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .expect("chromedriver, of Debian's package chromium-driver");
        let client = connected(port, capabilities(kind, folder.path())).await;
        Session { client, program, folder, driver }
    }

    /// Opens an address of the page.
    pub async fn open(&self, path: &str) {
        self.client.goto(&format!("http://{}{path}", self.program.address)).await.expect("the page");
    }

    /// Ends the browser.
    pub async fn end(mut self) {
        let _ = self.client.clone().close().await;
        let _ = self.driver.kill();
        let _ = self.driver.wait();
    }

    pub async fn find(&self, css: &str) -> Element {
        self.client.find(Locator::Css(css)).await.unwrap_or_else(|error| panic!("{css}: {error}"))
    }

    /// Runs a script in the page.
    pub async fn script(&self, script: &str) -> Value {
        self.client.execute(script, Vec::new()).await.unwrap_or_else(|error| panic!("{script}: {error}"))
    }

    /// The text of what is found, as it stands in the page.
    pub async fn text(&self, css: &str) -> String {
        let script =
            "return [...document.querySelectorAll(arguments[0])].map((one) => one.textContent.trim()).join('\\n')";
        let found = self.client.execute(script, vec![json!(css)]).await.expect("a text");
        found.as_str().unwrap_or_default().to_string()
    }

    /// Waits until the text of what is found is as it should be.
    pub async fn until(&self, css: &str, what: &str, is: impl Fn(&str) -> bool) -> String {
        let begin = std::time::Instant::now();
        loop {
            let text = self.text(css).await;
            if is(&text) {
                return text;
            }
            assert!(begin.elapsed() < LONGEST, "{css} never {what}; it says: {text}");
            tokio::time::sleep(AGAIN).await;
        }
    }

    /// Waits for the whole answer.
    pub async fn answered(&self) -> String {
        self.until("#answer[aria-busy=false] .result:not(.sketch) .status", "gave an answer", |text| !text.is_empty())
            .await
    }

    /// Fills a field in as a user does: everything in it away, then typed.
    pub async fn fill(&self, name: &str, text: &str) {
        let field = self.find(&format!("[name=\"{name}\"]")).await;
        field.click().await.expect("the field can be clicked");
        // Control and A, then what is typed takes its place
        field.send_keys("\u{e009}a\u{e009}").await.expect("everything is marked");
        field.send_keys(if text.is_empty() { "\u{e003}" } else { text }).await.expect("it can be typed into");
    }

    /// Presses these keys, whatever has the focus.
    pub async fn press(&self, keys: &str) {
        let strokes = keys.chars().fold(KeyActions::new("keys".into()), |strokes, value| {
            strokes.then(KeyAction::Down { value }).then(KeyAction::Up { value })
        });
        self.client.perform_actions(strokes).await.unwrap_or_else(|error| panic!("{keys:?}: {error}"));
    }

    /// What has the focus: its id, else its text.
    pub async fn focus(&self) -> String {
        let script = "const on = document.activeElement; return on.id || on.textContent.trim()";
        self.script(script).await.as_str().unwrap_or_default().to_string()
    }

    /// Waits for a file to be there whole.
    pub async fn downloaded(&self, name: &str) -> Vec<u8> {
        let path: PathBuf = self.folder.path().join(name);
        let begin = std::time::Instant::now();
        loop {
            // a file that still comes has another name
            if let Ok(content) = std::fs::read(&path) {
                return content;
            }
            assert!(begin.elapsed() < LONGEST, "{name} never came");
            tokio::time::sleep(AGAIN).await;
        }
    }

    /// Puts a picture of the page into the docs where that is asked, else below `target`.
    pub async fn picture(&self, name: &str) {
        let png = self.client.screenshot().await.expect("a picture");
        assert!(png.len() > 10_000, "{name} shows something");
        let rewrite = std::env::var("AXISWRIGHT_REWRITE").is_ok();
        let folder = Path::new(if rewrite { "docs/page" } else { env!("CARGO_TARGET_TMPDIR") });
        std::fs::create_dir_all(folder).expect("a folder");
        std::fs::write(folder.join(name), png).expect("a file");
    }
}

/// A client, as soon as the driver listens.
async fn connected(port: u16, capabilities: serde_json::Map<String, Value>) -> Client {
    let begin = std::time::Instant::now();
    loop {
        let mut builder = ClientBuilder::new(hyper_util::client::legacy::connect::HttpConnector::new());
        match builder.capabilities(capabilities.clone()).connect(&format!("http://127.0.0.1:{port}")).await {
            Ok(client) => return client,
            Err(error) => assert!(begin.elapsed() < Duration::from_secs(60), "no browser: {error}"),
        }
        tokio::time::sleep(AGAIN).await;
    }
}

fn capabilities(kind: Kind, downloads: &Path) -> serde_json::Map<String, Value> {
    let mut arguments = vec![
        "--headless",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--window-size=1440,1000",
    ];
    if kind.dark {
        arguments.push("--blink-settings=preferredColorScheme=0");
    }
    let mut options = json!({
        "args": arguments,
        "prefs": { "download.default_directory": downloads, "download.prompt_for_download": false },
    });
    if kind.without_script {
        options["prefs"]["profile.managed_default_content_settings.javascript"] = json!(2);
    }
    if kind.phone {
        let metrics = json!({ "width": 390, "height": 844, "pixelRatio": 2.0, "touch": true });
        options["mobileEmulation"] = json!({ "deviceMetrics": metrics });
    }
    let all = json!({ "goog:chromeOptions": options, "unhandledPromptBehavior": "accept" });
    all.as_object().cloned().unwrap_or_default()
}
