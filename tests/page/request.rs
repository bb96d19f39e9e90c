//! Requests to the page, byte by byte.

use std::io::{Read, Write};
use std::net::TcpStream;
use std::time::Duration;

/// What came back.
#[derive(Debug)]
pub struct Got {
    pub status: u16,
    pub head: String,
    pub body: Vec<u8>,
}

impl Got {
    pub fn text(&self) -> String {
        String::from_utf8(self.body.clone()).expect("text")
    }

    /// The value of a header; empty if there is none.
    pub fn header(&self, name: &str) -> &str {
        let found = self.head.lines().filter_map(|line| line.split_once(": "));
        found.filter(|(own, _)| own.eq_ignore_ascii_case(name)).map(|(_, value)| value).next().unwrap_or_default()
    }
}

/// Sends these bytes and reads until the other end closes; nothing where it closes without an answer.
pub fn raw(address: &str, bytes: &[u8]) -> Option<Got> {
    let mut stream = TcpStream::connect(address).expect("a connection");
    stream.set_read_timeout(Some(Duration::from_secs(600))).expect("a limit");
    // who is refused may be cut off while still sending
    let _ = stream.write_all(bytes);
    let mut all = Vec::new();
    let _ = stream.read_to_end(&mut all);
    parsed(&all)
}

/// An answer taken apart.
pub fn parsed(all: &[u8]) -> Option<Got> {
    let end = all.windows(4).position(|four| four == b"\r\n\r\n")?;
    let head = String::from_utf8(all[..end].to_vec()).ok()?;
    let status = head.split(' ').nth(1)?.parse().ok()?;
    let rest = &all[end + 4..];
    let chunked = head.lines().any(|line| line.eq_ignore_ascii_case("transfer-encoding: chunked"));
    let body = if chunked { joined(rest) } else { rest.to_vec() };
    Some(Got { status, head, body })
}

fn joined(mut rest: &[u8]) -> Vec<u8> {
    let mut body = Vec::new();
    while let Some(end) = rest.windows(2).position(|two| two == b"\r\n") {
        let size = std::str::from_utf8(&rest[..end]).ok().and_then(|text| usize::from_str_radix(text, 16).ok());
        let Some(size) = size.filter(|size| *size > 0 && end + 2 + size <= rest.len()) else { break };
        body.extend(&rest[end + 2..end + 2 + size]);
        rest = rest.get(end + 4 + size..).unwrap_or_default();
    }
    body
}

/// A `GET`.
pub fn get(address: &str, path: &str) -> Got {
    let request = format!("GET {path} HTTP/1.1\r\nHost: {address}\r\nConnection: close\r\n\r\n");
    raw(address, request.as_bytes()).expect("an answer")
}

/// A post of a form.
pub fn post(address: &str, path: &str, pairs: &[(String, String)]) -> Got {
    let mut body = form_urlencoded::Serializer::new(String::new());
    body.extend_pairs(pairs);
    let body = body.finish();
    raw(address, posted(address, path, "application/x-www-form-urlencoded", body.as_bytes()).as_slice())
        .expect("an answer")
}

/// The bytes of a post.
pub fn posted(address: &str, path: &str, kind: &str, body: &[u8]) -> Vec<u8> {
    let head = format!(
        "POST {path} HTTP/1.1\r\nHost: {address}\r\nConnection: close\r\nContent-Type: {kind}\r\nContent-Length: {}\r\n\r\n",
        body.len()
    );
    [head.as_bytes(), body].concat()
}
