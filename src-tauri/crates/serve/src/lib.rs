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
use axum::extract::State;
use axum::http::{StatusCode, Uri};
use axum::response::{IntoResponse, Json, Response};
use axum::routing::{get, post};
use evensward_companion::dto::ask::{Answer, Ask, Failure, FailureCode};
use evensward_companion::dto::figures::{Argument, Said};

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
        .route("/api/ask", post(ask))
        .fallback(get(page))
        .layer(axum::middleware::from_fn_with_state(address, guard::check))
        .with_state(shared)
}

async fn page(State(shared): State<Shared>, uri: Uri) -> Response {
    shared.pages.page(uri.path())
}

async fn ask(State(shared): State<Shared>, body: Bytes) -> Response {
    let question: Ask = match serde_json::from_slice(&body) {
        Ok(question) => question,
        Err(error) => return answer(Err(malformed(&error))),
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

/// What a question that can't be read is answered with.
#[must_use]
pub fn malformed(error: &serde_json::Error) -> Failure {
    let reason = Argument::Text(error.to_string());
    Failure {
        code: FailureCode::Malformed,
        said: Said { code: "failure-malformed".to_owned(), args: [("reason".to_owned(), reason)].into() },
        problems: Vec::new(),
        checks: Vec::new(),
    }
}
