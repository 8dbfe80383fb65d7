//! Who may ask: only a page that came from this very server.
//!
//! Against a foreign name that was pointed at 127.0.0.1 ("DNS rebinding") stands the check of `Host`;
//! against a foreign page that sends a request here ("cross-site request forgery") stand the checks of
//! `Origin` and of a header of our own, as in the OWASP Cheat Sheet Series, "Cross-Site Request Forgery
//! Prevention".

use std::net::SocketAddr;

use axum::extract::{Request, State};
use axum::http::{HeaderMap, HeaderName, HeaderValue, Method, StatusCode, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};

use crate::HEADER;

/// What a page may load and do: the same as in the real window, so that a page which asks for more fails in both.
pub(crate) const CONTENT_SECURITY_POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; \
    img-src 'self' data:; font-src 'self'; media-src 'self'; connect-src 'self' ipc: http://ipc.localhost; \
    base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

/// Refuses a request from elsewhere, and tells the browser what our own pages may do.
pub(crate) async fn check(State(address): State<SocketAddr>, request: Request, next: Next) -> Response {
    if let Err(reason) = admitted(request.method(), request.headers(), address) {
        tracing::warn!(reason, "a request from elsewhere was refused");
        return (StatusCode::FORBIDDEN, reason).into_response();
    }
    let mut response = next.run(request).await;
    for (name, value) in [
        (header::CONTENT_SECURITY_POLICY, CONTENT_SECURITY_POLICY),
        (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
        (header::REFERRER_POLICY, "no-referrer"),
        (header::CACHE_CONTROL, "no-store"),
        (HeaderName::from_static("cross-origin-resource-policy"), "same-origin"),
    ] {
        response.headers_mut().insert(name, HeaderValue::from_static(value));
    }
    response
}

fn admitted(method: &Method, headers: &HeaderMap, address: SocketAddr) -> Result<(), &'static str> {
    let text = |name| headers.get(name).and_then(|value: &HeaderValue| value.to_str().ok());
    let hosts = [address.to_string(), format!("localhost:{}", address.port())];
    let host = text(header::HOST).filter(|host| hosts.iter().any(|own| own == host));
    let Some(host) = host else { return Err("this server answers only to its own name") };
    if let Some(origin) = headers.get(header::ORIGIN)
        && origin.as_bytes() != format!("http://{host}").as_bytes()
    {
        return Err("this server answers only its own pages");
    }
    if *method != Method::GET && *method != Method::HEAD && !headers.contains_key(HEADER) {
        return Err("a question must bear the header x-evensward");
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(expected: bool, method: Method, pairs: &[(&'static str, &'static str)]) {
        let address = SocketAddr::from(([127, 0, 0, 1], 4040));
        let headers: HeaderMap = pairs
            .iter()
            .map(|(name, value)| (HeaderName::from_static(name), HeaderValue::from_static(value)))
            .collect();
        let admitted = admitted(&method, &headers, address);
        assert_eq!(admitted.is_ok(), expected, "{method} {pairs:?}: {admitted:?}");
    }

    #[test]
    fn a_page_may_do_here_what_it_may_do_in_the_real_window() {
        let shell: serde_json::Value = serde_json::from_str(include_str!("../../../tauri.conf.json")).unwrap();
        assert_eq!(shell["app"]["security"]["csp"], CONTENT_SECURITY_POLICY);
    }

    #[test]
    fn our_own_page_may_ask_and_no_other() {
        let host = ("host", "127.0.0.1:4040");
        check(true, Method::GET, &[host]);
        check(true, Method::GET, &[("host", "localhost:4040")]);
        check(true, Method::POST, &[host, ("origin", "http://127.0.0.1:4040"), (HEADER, "1")]);
        check(true, Method::POST, &[host, (HEADER, "1")]);
        check(false, Method::GET, &[]);
        check(false, Method::GET, &[("host", "127.0.0.1")]);
        check(false, Method::GET, &[("host", "127.0.0.1:4041")]);
        check(false, Method::GET, &[("host", "lawn.example:4040")]);
        check(false, Method::GET, &[("host", "127.0.0.1:4040.example")]);
        check(false, Method::POST, &[host, ("origin", "http://127.0.0.1:4040")]);
        check(false, Method::POST, &[host, ("origin", "http://localhost:4040"), (HEADER, "1")]);
        check(false, Method::POST, &[host, ("origin", "http://lawn.example"), (HEADER, "1")]);
        check(false, Method::POST, &[host, ("origin", "null"), (HEADER, "1")]);
        check(false, Method::OPTIONS, &[host, ("origin", "http://127.0.0.1:4040")]);
    }
}
