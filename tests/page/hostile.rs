//! What hostile visitors get: refusals, escapes and time limits, and a page that goes on.

use crate::answers::{served, slide, with};
use crate::program::Program;
use crate::request::{get, parsed, post, posted, raw};
use scraper::{Html, Selector};
use std::io::{Read, Write};
use std::net::TcpStream;
use std::time::Duration;

/// The page still answers.
fn still_there(address: &str) {
    assert_eq!(get(address, "/").status, 200);
}

#[test]
fn a_foreign_host_and_a_post_from_another_site_are_refused() {
    let served = served();
    let address = served.address();
    let ask = |head: &str| raw(address, format!("{head}\r\nConnection: close\r\n\r\n").as_bytes()).expect("an answer");
    assert_eq!(ask("GET / HTTP/1.1\r\nHost: example.org").status, 421);
    assert_eq!(ask("GET / HTTP/1.0").status, 400);
    let origin = |origin: &str| {
        ask(&format!("POST /answer?how=sketch HTTP/1.1\r\nHost: {address}\r\nOrigin: {origin}\r\nContent-Length: 0"))
            .status
    };
    assert_eq!(origin("http://example.org"), 403);
    assert_eq!(origin("null"), 403);
    assert_eq!(origin(&format!("http://{address}")), 200);
}

#[test]
fn every_answer_carries_a_strict_policy() {
    let served = served();
    let address = served.address();
    for got in
        [get(address, "/"), get(address, "/page.js"), get(address, "/nothing"), post(address, "/answer?how=whole", &[])]
    {
        let policy = got.header("content-security-policy");
        assert!(policy.starts_with("default-src 'none'") && !policy.contains("unsafe"), "{policy}");
        assert_eq!(got.header("x-content-type-options"), "nosniff");
        assert_eq!(got.header("referrer-policy"), "same-origin");
        assert_eq!(got.header("access-control-allow-origin"), "", "nobody else may read");
    }
    let report = post(address, "/print", &slide());
    let policy = report.header("content-security-policy");
    assert!(policy.starts_with("default-src 'none'") && !policy.contains("script-src"), "{policy}");
}

#[test]
fn oversized_and_malformed_requests_are_refused_and_harm_nothing() {
    let served = served();
    let address = served.address();
    let kind = "application/x-www-form-urlencoded";
    let large = vec![b'a'; 2 * 1024 * 1024];
    let refused = raw(address, &posted(address, "/answer?how=sketch", kind, &large));
    assert!(refused.is_none_or(|got| got.status == 413));
    let claims =
        format!("POST / HTTP/1.1\r\nHost: {address}\r\nContent-Length: 99999999999\r\nConnection: close\r\n\r\n");
    assert!(raw(address, claims.as_bytes()).is_none_or(|got| got.status == 413));
    for body in [
        &b"%ff%fe%00=%zz&&&===&axes.0.travel=%e2%82"[..],
        b"axes.18446744073709551615.name=x",
        b"axes..=&axes.0=&axes.0.=x",
    ] {
        let got = raw(address, &posted(address, "/answer?how=sketch", kind, body)).expect("an answer");
        assert_eq!(got.status, 200, "{}", String::from_utf8_lossy(body));
    }
    let many: Vec<(String, String)> = (0..30_000).map(|place| (format!("axes.{place}.name"), "x".into())).collect();
    assert_eq!(post(address, "/edit", &many[..9000]).status, 200);
    for (body, kind) in
        [("--cut\r\n\r\n\r\n", "multipart/form-data; boundary=cut"), ("x", "multipart/form-data"), ("x", kind)]
    {
        let got = raw(address, &posted(address, "/open", kind, body.as_bytes())).expect("an answer");
        assert!((400..=422).contains(&got.status), "{kind}: {}", got.status);
    }
    for request in ["\r\n\r\n", "GET\r\n\r\n", "\u{0}\u{1}\r\n\r\n", "GET / HTTP/9.9\r\n\r\n"] {
        assert!(raw(address, request.as_bytes()).is_none_or(|got| got.status >= 400), "{request:?}");
    }
    let long = format!("GET /{} HTTP/1.1\r\nHost: {address}\r\n\r\n", "a".repeat(200_000));
    assert!(raw(address, long.as_bytes()).is_none_or(|got| got.status >= 400));
    for path in ["/take/../../etc/passwd", "/take/%2e%2e%2fCargo.toml", "/take/inputs", "/../Cargo.toml"] {
        assert_eq!(post(address, path, &slide()).status, 404, "{path}");
    }
    still_there(served.address());
}

#[test]
fn who_sends_too_slowly_is_cut_off() {
    let served = served();
    let mut slow = TcpStream::connect(served.address()).expect("a connection");
    slow.write_all(b"GET / HTTP/1.1\r\nHost: ").expect("a beginning");
    // the other end closes, or says that it waited long enough; it never waits for ever
    slow.set_read_timeout(Some(Duration::from_secs(120))).expect("a limit");
    let mut all = Vec::new();
    slow.read_to_end(&mut all).expect("the end");
    assert!(parsed(&all).is_none_or(|got| got.status == 408), "{}", String::from_utf8_lossy(&all));
    let mut slow = TcpStream::connect(served.address()).expect("a connection");
    let head = format!("POST / HTTP/1.1\r\nHost: {}\r\nContent-Length: 100\r\n\r\nmachine=", served.address());
    slow.write_all(head.as_bytes()).expect("a beginning");
    slow.set_read_timeout(Some(Duration::from_secs(120))).expect("a limit");
    let mut all = Vec::new();
    slow.read_to_end(&mut all).expect("the end");
    assert!(parsed(&all).is_none_or(|got| got.status == 408), "{}", String::from_utf8_lossy(&all));
    still_there(served.address());
}

/// The time that a process had the processor for, in ticks of the clock; Linux tells it.
fn ticks(process: u32) -> u64 {
    let stat = std::fs::read_to_string(format!("/proc/{process}/stat")).expect("Linux");
    // the name in brackets may hold blanks; what follows it are numbers
    let numbers: Vec<&str> = stat.rsplit(')').next().unwrap_or_default().split_whitespace().collect();
    numbers[11..=12].iter().map(|number| number.parse::<u64>().expect("a number")).sum()
}

#[test]
fn work_on_an_answer_that_nobody_waits_for_really_stops() {
    // the whole catalogue, which a build without optimisation searches for minutes
    let program = Program::start(env!("CARGO_BIN_EXE_axiswright"), &[]);
    let mut body = form_urlencoded::Serializer::new(String::new());
    let fields = with(slide(), "axes.0.families", "any");
    let body = body.extend_pairs(&fields).finish();
    let kind = "application/x-www-form-urlencoded";
    let mut visitor = TcpStream::connect(&program.address).expect("a connection");
    visitor.write_all(&posted(&program.address, "/answer?how=whole", kind, body.as_bytes())).expect("a request");
    let begun = ticks(program.child.id());
    while ticks(program.child.id()) < begun + 50 {
        std::thread::sleep(Duration::from_millis(50));
    }
    drop(visitor);
    let idle = || {
        let before = ticks(program.child.id());
        std::thread::sleep(Duration::from_secs(1));
        ticks(program.child.id()) <= before + 2
    };
    assert!((0..60).any(|_| idle()), "the work goes on though nobody waits");
    // and there is room for the next one
    let fault = post(&program.address, "/answer?how=whole", &with(slide(), "axes.0.travel", "1"));
    assert_eq!(fault.status, 200);
}

/// What would run if it were not escaped.
const SCRIPT: &str = "</textarea></script><script>alert(1)</script>\"'><img src=x onerror=alert(1)>{{ 7 * 7 }}";

/// Whether a page holds nothing that runs but its own script.
fn nothing_runs(page: &str, from: &str) {
    let page = Html::parse_document(page);
    let all = Selector::parse("*").expect("a selector");
    for element in page.select(&all) {
        let name = element.value().name();
        assert!(name != "script" || element.attr("src") == Some("/page.js"), "{from}: {}", element.html());
        assert!(!matches!(name, "img" | "iframe" | "object" | "embed" | "base"), "{from}: {}", element.html());
        for (attribute, value) in element.value().attrs() {
            assert!(!attribute.starts_with("on"), "{from}: {attribute}");
            assert!(!value.trim_start().to_lowercase().starts_with("javascript:"), "{from}: {value}");
        }
    }
}

#[test]
fn a_script_in_every_field_stays_text() {
    let served = served();
    let address = served.address();
    let page = get(address, "/?example=hull-gantry").text();
    let names = Selector::parse("[name]").expect("a selector");
    let parsed = Html::parse_document(&page);
    let names: Vec<&str> = parsed.select(&names).filter_map(|field| field.attr("name")).collect();
    let everywhere: Vec<(String, String)> =
        names.iter().filter(|name| **name != "page-do").map(|name| (name.to_string(), SCRIPT.to_string())).collect();
    assert!(everywhere.len() > 200, "every field of three axes");
    for path in ["/", "/edit", "/compare", "/check", "/print"] {
        nothing_runs(&post(address, path, &everywhere).text(), path);
    }
    // a brief that can be read, with a script in each of its texts
    let fields = with(with(with(slide(), "machine", SCRIPT), "axes.0.name", SCRIPT), "axes.0.purpose", SCRIPT);
    let fields = with(with(fields, "currency", SCRIPT), "environment", SCRIPT);
    let kept = String::from_utf8(post(address, "/take/brief.yaml", &fields).body).expect("text");
    let fields = with(fields, "page-other", &kept);
    for path in ["/", "/compare", "/print", "/take/recommendation.html"] {
        let got = post(address, path, &fields);
        assert_eq!(got.status, 200, "{path}: {}", got.text());
        assert!(got.text().contains("alert(1)"), "{path} shows the text as text");
        nothing_runs(&got.text(), path);
    }
    let judged = with(with(fields.clone(), "page-check-family", "straight-rack"), "page-check", "judge");
    nothing_runs(&post(address, "/check", &with(judged, "page-check-axis", "0")).text(), "/check");
    let answer = post(address, "/answer?how=sketch", &fields);
    let piece: serde_json::Value = serde_json::from_slice(&answer.body).expect("JSON");
    nothing_runs(piece["html"].as_str().expect("a piece"), "/answer");
}
