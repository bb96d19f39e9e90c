//! What every request must be and every answer carries: the right host, no post from another site, strict headers, a time limit.
//!
//! Method: the `Host` is held against the names of this computer, so that a foreign name that leads here reads nothing;
//! `Origin` and `Sec-Fetch-Site` tell a post that another site makes a browser send. Sources: RFC 9110 (421 Misdirected Request),
//! W3C Content Security Policy Level 3 and Fetch Metadata, all from memory.
//! Limits: a program on this computer can say what it likes; the page does nothing but compute for it.

use super::LARGEST_BODY;
use super::site::Site;
use axum::body::Body;
use axum::extract::{Request, State};
use axum::http::header::{self, HeaderMap, HeaderName, HeaderValue};
use axum::http::{Method, StatusCode};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};
use std::sync::Arc;
use std::time::Duration;

/// The longest that any request may take, its body and its computation together.
const LONGEST: Duration = Duration::from_secs(300);

/// What a page may load: its own style and script, nothing else.
const OWN_PAGES: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; \
                         form-action 'self'; base-uri 'none'; frame-ancestors 'none'";
/// What a report may: its style stands in it, scripts do not.
pub const REPORTS: &str =
    "default-src 'none'; style-src 'unsafe-inline'; form-action 'none'; base-uri 'none'; frame-ancestors 'none'";

const HEADERS: [(HeaderName, &str); 6] = [
    (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
    // without a referrer a browser hides the origin of a form too, and the form would be taken for a foreign one
    (header::REFERRER_POLICY, "same-origin"),
    (header::CACHE_CONTROL, "no-store"),
    (HeaderName::from_static("cross-origin-opener-policy"), "same-origin"),
    (HeaderName::from_static("cross-origin-resource-policy"), "same-origin"),
    (HeaderName::from_static("permissions-policy"), "camera=(), geolocation=(), microphone=()"),
];

/// Lets through what may come in, and dresses what goes out.
pub async fn guard(State(site): State<Arc<Site>>, request: Request, next: Next) -> Response {
    let mut answer = match refusal(&site, request.method(), request.headers()) {
        Some((status, words)) => (status, words).into_response(),
        None => match tokio::time::timeout(LONGEST, next.run(request)).await {
            Ok(answer) => answer,
            Err(_) => (StatusCode::REQUEST_TIMEOUT, "this took too long\n").into_response(),
        },
    };
    let headers = answer.headers_mut();
    for (name, value) in HEADERS {
        headers.entry(name).or_insert(HeaderValue::from_static(value));
    }
    headers.entry(header::CONTENT_SECURITY_POLICY).or_insert(HeaderValue::from_static(OWN_PAGES));
    answer
}

/// Why a request is not let through.
fn refusal(site: &Site, method: &Method, headers: &HeaderMap) -> Option<(StatusCode, &'static str)> {
    let text = |name: HeaderName| headers.get(name).map(|value| value.to_str().unwrap_or_default());
    let Some(host) = text(header::HOST) else {
        return Some((StatusCode::BAD_REQUEST, "the request names no host\n"));
    };
    if !is_ours(host, &site.hosts) {
        return Some((StatusCode::MISDIRECTED_REQUEST, "this page is not reached under that name\n"));
    }
    let announced = text(header::CONTENT_LENGTH).map(|size| size.parse::<usize>().unwrap_or(usize::MAX));
    if announced.is_some_and(|size| size > LARGEST_BODY) {
        return Some((StatusCode::PAYLOAD_TOO_LARGE, "this is larger than any brief\n"));
    }
    if matches!(*method, Method::GET | Method::HEAD) {
        return None;
    }
    let foreign = (StatusCode::FORBIDDEN, "another site may not post here\n");
    // a browser that hides where it comes from says "null"
    if text(header::ORIGIN).is_some_and(|origin| origin != format!("http://{host}")) {
        return Some(foreign);
    }
    let site = text(HeaderName::from_static("sec-fetch-site"));
    site.is_some_and(|from| !matches!(from, "same-origin" | "none")).then_some(foreign)
}

/// Whether a host, with or without a port, is this computer or one of these names.
fn is_ours(host: &str, hosts: &[String]) -> bool {
    let name = match host.strip_prefix('[') {
        Some(rest) => rest.split(']').next().unwrap_or_default(),
        None => host.rsplit_once(':').map_or(host, |(name, _)| name),
    };
    let own = ["localhost", "127.0.0.1", "::1"];
    own.iter().any(|own| name.eq_ignore_ascii_case(own)) || hosts.iter().any(|own| name.eq_ignore_ascii_case(own))
}

/// An answer of this type under the policy of reports.
pub fn as_report(html: String) -> Response {
    let headers = [(header::CONTENT_TYPE, "text/html; charset=utf-8"), (header::CONTENT_SECURITY_POLICY, REPORTS)];
    (headers, Body::from(html)).into_response()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{catalog, rule};

    fn refused(method: Method, headers: &[(HeaderName, &str)]) -> Option<u16> {
        let site = Site::new(
            catalog::load(&[]).expect("the built-in catalogue"),
            rule::load(&[]).expect("the built-in rules"),
            Vec::new(),
            vec!["drawing-office".into()],
        );
        let mut map = HeaderMap::new();
        for (name, value) in headers {
            map.insert(name.clone(), HeaderValue::from_str(value).expect("a header"));
        }
        refusal(&site, &method, &map).map(|(status, _)| status.as_u16())
    }

    #[test]
    fn only_names_of_this_computer_reach_the_page() {
        for host in ["127.0.0.1:7474", "localhost", "LOCALHOST:1", "[::1]:7474", "drawing-office:7474"] {
            assert_eq!(refused(Method::GET, &[(header::HOST, host)]), None, "{host}");
        }
        for host in
            ["example.org", "127.0.0.1.example.org:7474", "localhost.example.org", "", "[::2]:7474", "@localhost"]
        {
            assert_eq!(refused(Method::GET, &[(header::HOST, host)]), Some(421), "{host}");
        }
        assert_eq!(refused(Method::GET, &[]), Some(400));
    }

    #[test]
    fn another_site_cannot_make_a_browser_post() {
        let host = (header::HOST, "127.0.0.1:7474");
        let site = HeaderName::from_static("sec-fetch-site");
        let post = |more: &[(HeaderName, &str)]| {
            let all: Vec<(HeaderName, &str)> = std::iter::once(host.clone()).chain(more.iter().cloned()).collect();
            refused(Method::POST, &all)
        };
        assert_eq!(post(&[]), None, "a program without a browser");
        assert_eq!(post(&[(header::ORIGIN, "http://127.0.0.1:7474"), (site.clone(), "same-origin")]), None);
        for origin in ["http://127.0.0.1:7475", "https://127.0.0.1:7474", "null", "http://example.org"] {
            assert_eq!(post(&[(header::ORIGIN, origin)]), Some(403), "{origin}");
        }
        assert_eq!(post(&[(site.clone(), "cross-site")]), Some(403));
        assert_eq!(post(&[(site, "same-site")]), Some(403));
    }
}
