//! How errors of the file and of the trade become the small closed set of failures that a screen can act on.
//!
//! The text of an error is for the log and for the argument `reason`; a screen branches on the code and takes its
//! words from the catalogue. Every failure says what to do.

use std::collections::BTreeMap;

use evensward_store::{AppendError, OpenError, StoreError};
use uuid::Uuid;

use crate::dto::ask::{Failure, FailureCode};
use crate::dto::figures::{Argument, CheckView, FieldProblem, Said};

/// A sentence from its code and arguments.
pub(crate) fn said<const N: usize>(code: &str, args: [(&str, Argument); N]) -> Said {
    Said { code: code.to_owned(), args: args.map(|(name, argument)| (name.to_owned(), argument)).into() }
}

/// The code of the sentence about one entry that makes no sense.
const UNREADABLE: &str = "failure-unreadable";

fn failure(code: FailureCode, said: Said) -> Failure {
    Failure { code, said, problems: Vec::new(), checks: Vec::new() }
}

fn text(value: impl Into<String>) -> Argument {
    Argument::Text(value.into())
}

impl Failure {
    /// Fields are wrong; nothing was kept, and nothing typed is lost.
    #[must_use]
    pub fn refused(problems: Vec<FieldProblem>) -> Self {
        let n_problems = u32::try_from(problems.len()).unwrap_or(u32::MAX);
        let said = said("failure-refused", [("count", Argument::Count(n_problems))]);
        Self { problems, ..failure(FailureCode::Refused, said) }
    }

    /// Checks stand in the way.
    #[must_use]
    pub fn barred(checks: Vec<CheckView>) -> Self {
        Self { checks, ..failure(FailureCode::Barred, said("failure-barred", [])) }
    }

    /// There is no such thing: `what` is the code of its word, such as `lawn`.
    #[must_use]
    pub fn not_found(what: &str) -> Self {
        failure(FailureCode::NotFound, said("failure-not-found", [("what", Argument::Code(format!("thing-{what}")))]))
    }

    /// The screen saw an older state.
    #[must_use]
    pub fn stale() -> Self {
        failure(FailureCode::Stale, said("failure-stale", []))
    }

    /// It can only be read, for this reason.
    #[must_use]
    pub fn read_only(said: Said) -> Self {
        failure(FailureCode::ReadOnly, said)
    }

    /// The request itself makes no sense: a fault of the program.
    #[must_use]
    pub fn malformed(reason: impl Into<String>) -> Self {
        failure(FailureCode::Malformed, said("failure-malformed", [("reason", text(reason))]))
    }

    /// What one entry of the file holds makes no sense.
    #[must_use]
    pub fn unreadable(reason: impl Into<String>) -> Self {
        failure(FailureCode::Damaged, said(UNREADABLE, [("reason", text(reason))]))
    }

    /// Whether it is about one entry alone, so that the others can still be shown.
    pub(crate) fn is_of_one_entry(&self) -> bool {
        self.code == FailureCode::NotFound || self.said.code == UNREADABLE
    }
}

/// The sentence about entries that can't be read: the others are shown all the same.
pub(crate) fn some_unreadable(n_entries: u32) -> Said {
    said("file-some-unreadable", [("count", Argument::Count(n_entries))])
}

/// The sentence about a file of a newer version.
pub(crate) fn newer(version: u32) -> Said {
    said("failure-newer", [("version", Argument::Count(version))])
}

impl From<StoreError> for Failure {
    fn from(error: StoreError) -> Self {
        tracing::warn!(%error, "the file refused");
        match error {
            StoreError::NoRoom => failure(FailureCode::NoRoom, said("failure-no-room", [])),
            StoreError::CannotWrite { reason } => {
                failure(FailureCode::CannotWrite, said("failure-cannot-write", [("reason", text(reason))]))
            }
            StoreError::Newer { version } => Self::read_only(newer(version)),
            StoreError::Damaged { reason } => {
                failure(FailureCode::Damaged, said("failure-damaged", [("reason", text(reason))]))
            }
            StoreError::Busy => failure(FailureCode::Busy, said("failure-busy", [])),
            StoreError::Differs { id } => {
                failure(FailureCode::Malformed, said("failure-id-taken", [("id", text(id.to_string()))]))
            }
            StoreError::Exists { path } => failure(
                FailureCode::CannotWrite,
                said("failure-file-exists", [("path", text(path.display().to_string()))]),
            ),
            StoreError::Replaced { copy } => failure(
                FailureCode::CannotWrite,
                said("failure-replaced", [("path", text(copy.display().to_string()))]),
            ),
            StoreError::ReplacedUncopied { reason } => {
                failure(FailureCode::CannotWrite, said("failure-replaced-uncopied", [("reason", text(reason))]))
            }
            StoreError::Unreadable(unreadable) => Self::unreadable(unreadable.to_string()),
            StoreError::Sqlite(source) => {
                failure(FailureCode::CannotWrite, said("failure-file", [("reason", text(source.to_string()))]))
            }
        }
    }
}

impl From<AppendError> for Failure {
    fn from(error: AppendError) -> Self {
        match error {
            AppendError::Stale { .. } => Self::stale(),
            AppendError::AlreadyAnswered { .. } => failure(FailureCode::Stale, said("failure-already-answered", [])),
            AppendError::Unfit(unfit) => Self::malformed(unfit.to_string()),
            AppendError::Store(store) => store.into(),
        }
    }
}

impl From<OpenError> for Failure {
    fn from(error: OpenError) -> Self {
        tracing::warn!(%error, "the file can't be opened");
        let (code, message, path, reason) = match error {
            OpenError::NoRoom { path } => (FailureCode::NoRoom, "failure-open-no-room", path, None),
            OpenError::CannotWrite { path, reason } => {
                (FailureCode::CannotWrite, "failure-open-cannot-write", path, Some(reason))
            }
            OpenError::Damaged { path, reason } => (FailureCode::Damaged, "failure-open-damaged", path, Some(reason)),
            OpenError::Busy { path } => (FailureCode::Busy, "failure-open-busy", path, None),
            OpenError::Other { path, source } => {
                (FailureCode::CannotWrite, "failure-open", path, Some(source.to_string()))
            }
        };
        let mut args = BTreeMap::from([("path".to_owned(), text(path.display().to_string()))]);
        args.extend(reason.map(|reason| ("reason".to_owned(), text(reason))));
        failure(code, Said { code: message.to_owned(), args })
    }
}

/// An id as it came over the door.
pub(crate) fn id(given: &str) -> Result<Uuid, Failure> {
    given.parse().map_err(|_| Failure::malformed(format!("{given:?} is no id")))
}
