//! The use cases over loopback HTTP: the browser tests and an office page ask what the real window asks.
//!
//! It listens on 127.0.0.1 alone. A page of another site that is open in the same browser must get nothing
//! out of it: every request has to name this server as its host (so a foreign name that was pointed at
//! 127.0.0.1 is refused), a question must come from this server's own page and bear a header that a foreign
//! page can't set without asking first, which is never granted. There is no password: whoever may run
//! programs on this machine as this person may read the file anyway.

mod guard;
mod pages;

pub use pages::Pages;

use std::net::SocketAddr;
use std::sync::{Arc, Mutex, PoisonError};

use axum::Router;
use axum::body::Bytes;
use axum::extract::{DefaultBodyLimit, State};
use axum::http::{StatusCode, Uri};
use axum::response::{IntoResponse, Json, Response};
use axum::routing::{get, post};
use evensward_companion::dto::ask::{Answer, Ask, Failure, FailureCode};

/// The header that every question bears; its value does not matter.
pub const HEADER: &str = "x-evensward";

/// What answers the questions.
pub type Door = Box<dyn FnMut(Ask) -> Result<Answer, Failure> + Send>;

#[derive(Clone)]
struct Shared {
    door: Arc<Mutex<Door>>,
    pages: Arc<Pages>,
}

/// The server's routes, for the address on which it listens.
pub fn routes(door: Door, pages: Pages, address: SocketAddr) -> Router {
    let shared = Shared { door: Arc::new(Mutex::new(door)), pages: Arc::new(pages) };
    Router::new()
        .route("/api/ask", post(ask).layer(DefaultBodyLimit::max(LARGEST_QUESTION_BYTES)))
        .fallback(get(page))
        .layer(axum::middleware::from_fn_with_state(address, guard::check))
        .with_state(shared)
}

async fn page(State(shared): State<Shared>, uri: Uri) -> Response {
    shared.pages.page(uri.path())
}

/// The largest question that is taken, in bytes: a file of outlines comes as one, and the importer's own limit, with its own
/// message, lies below.
const LARGEST_QUESTION_BYTES: usize = 96 * 1024 * 1024;

async fn ask(State(shared): State<Shared>, body: Bytes) -> Response {
    let question: Ask = match serde_json::from_slice(&body) {
        Ok(question) => question,
        Err(error) => return answer(Err(Failure::malformed(error.to_string()))),
    };
    // A question waits for the disk, which must not keep other connections from being served.
    let asked = tokio::task::spawn_blocking(move || {
        // A question that broke off midway left nothing behind but what the file holds, so the next one may go on.
        let mut door = shared.door.lock().unwrap_or_else(PoisonError::into_inner);
        (*door)(question)
    });
    match asked.await {
        Ok(answered) => answer(answered),
        Err(error) => {
            tracing::error!(%error, "a question broke off");
            StatusCode::INTERNAL_SERVER_ERROR.into_response()
        }
    }
}

fn answer(answered: Result<Answer, Failure>) -> Response {
    match answered {
        Ok(answer) => Json(answer).into_response(),
        Err(failure) => (status(failure.code), Json(failure)).into_response(),
    }
}

/// The page reads the failure's code; the status is for whoever looks at the traffic.
fn status(code: FailureCode) -> StatusCode {
    match code {
        FailureCode::Malformed => StatusCode::BAD_REQUEST,
        FailureCode::NotFound => StatusCode::NOT_FOUND,
        FailureCode::Stale => StatusCode::CONFLICT,
        FailureCode::ReadOnly | FailureCode::CannotWrite => StatusCode::FORBIDDEN,
        FailureCode::Busy => StatusCode::LOCKED,
        FailureCode::Refused | FailureCode::Barred | FailureCode::NoRoom | FailureCode::Damaged => {
            StatusCode::UNPROCESSABLE_ENTITY
        }
    }
}

#[cfg(test)]
mod tests {
    use std::io::{Read as _, Write as _};
    use std::net::{SocketAddr, TcpStream};

    use super::*;

    /// A server on a free port that answers every question but one, and its address.
    fn served() -> (tokio::runtime::Runtime, SocketAddr) {
        let runtime = tokio::runtime::Runtime::new().unwrap();
        let listener = runtime.block_on(tokio::net::TcpListener::bind(("127.0.0.1", 0))).unwrap();
        let address = listener.local_addr().unwrap();
        let door: Door = Box::new(|ask| match ask {
            Ask::Draft { key } => Ok(Answer::Draft(Some(key))),
            _ => Err(Failure::stale()),
        });
        let routes = routes(door, Pages::default(), address);
        runtime.spawn(async move { axum::serve(listener, routes).await });
        (runtime, address)
    }

    fn check(address: SocketAddr, headers: &str, body: &str, status: u16, holds: &str) {
        let mut stream = TcpStream::connect(address).unwrap();
        let n_bytes = body.len();
        write!(
            stream,
            "POST /api/ask HTTP/1.1\r\nhost: {address}\r\nconnection: close\r\ncontent-length: {n_bytes}\r\n{headers}\r\n{body}"
        )
        .unwrap();
        let mut response = String::new();
        stream.read_to_string(&mut response).unwrap();
        assert!(response.starts_with(&format!("HTTP/1.1 {status} ")) && response.contains(holds), "{response}");
    }

    #[test]
    fn a_question_is_answered_or_refused_in_a_form_the_page_can_read() {
        let (_runtime, address) = served();
        let ours = "x-evensward: 1\r\n";
        check(address, ours, r#"{"ask":"draft","key":"lawn:1"}"#, 200, r#"{"answer":"draft","value":"lawn:1"}"#);
        check(address, ours, r#"{"ask":"home"}"#, 409, r#""code":"stale""#);
        check(address, ours, r#"{"ask":"#, 400, r#""code":"malformed""#);
        check(address, ours, r#"{"ask":"everything"}"#, 400, r#""code":"malformed""#);
        // A whole street's outlines in one file: it is for the importer to say that this is no lawn.
        let large = format!(r#"{{"ask":"draft","key":"{}"}}"#, "x".repeat(12_000_000));
        check(address, ours, &large, 200, r#"{"answer":"draft""#);
        check(address, "", r#"{"ask":"home"}"#, 403, "x-evensward");
        check(address, &format!("{ours}origin: http://lawn.example\r\n"), r#"{"ask":"home"}"#, 403, "own pages");
    }
}
