//! What can go wrong with the file, in as few kinds as a person can act on.
//!
//! SQLite has some hundred codes. Here each falls to what the operator can do about it: make room, let the
//! folder be written, update the program, put a damaged file aside, close the other window. The source is
//! kept for the log. Codes: <https://www.sqlite.org/rescode.html>.

use std::path::PathBuf;

use evensward_format::register::Unreadable;
use rusqlite::ffi;
use uuid::Uuid;

/// Why the file can't be opened. It was left as it was.
#[derive(Debug, thiserror::Error)]
pub enum OpenError {
    /// There is no room left on the disk.
    #[error("there is no room left to open {path}: make some and try again")]
    NoRoom {
        /// The file.
        path: PathBuf,
    },
    /// The folder or the file is closed to writing.
    #[error("{path} can't be written ({reason}): allow it, or choose another folder")]
    CannotWrite {
        /// The file.
        path: PathBuf,
        /// What the system said.
        reason: String,
    },
    /// The file is no database of ours, or its pages are spoiled. It may hold the only copy.
    #[error("{path} is damaged ({reason}): it was left as it is, and can be put aside to start a new one")]
    Damaged {
        /// The file.
        path: PathBuf,
        /// What the check found.
        reason: String,
    },
    /// Another program holds the file.
    #[error("{path} is in use by another program: close it and try again")]
    Busy {
        /// The file.
        path: PathBuf,
    },
    /// Anything else that SQLite answers.
    #[error("{path} can't be opened: {source}")]
    Other {
        /// The file.
        path: PathBuf,
        /// What SQLite said.
        source: rusqlite::Error,
    },
}

impl OpenError {
    pub(crate) fn new(path: PathBuf, error: StoreError) -> Self {
        match error {
            StoreError::NoRoom => Self::NoRoom { path },
            StoreError::CannotWrite { reason } => Self::CannotWrite { path, reason },
            StoreError::Damaged { reason } => Self::Damaged { path, reason },
            StoreError::Busy => Self::Busy { path },
            StoreError::Sqlite(source) => Self::Other { path, source },
            other @ (StoreError::Newer { .. }
            | StoreError::Differs { .. }
            | StoreError::Exists { .. }
            | StoreError::Replaced { .. }
            | StoreError::ReplacedUncopied { .. }
            | StoreError::Unreadable(_)) => Self::CannotWrite { path, reason: other.to_string() },
        }
    }

    pub(crate) fn from_io(path: PathBuf, error: &std::io::Error) -> Self {
        if error.kind() == std::io::ErrorKind::StorageFull {
            Self::NoRoom { path }
        } else {
            Self::CannotWrite { path, reason: error.to_string() }
        }
    }
}

/// Why the open file can't be read or written. Nothing of the change was kept.
#[derive(Debug, thiserror::Error)]
pub enum StoreError {
    /// There is no room left on the disk.
    #[error("there is no room left on the disk: nothing was kept of this step; make room and try again")]
    NoRoom,
    /// The file or its folder can't be written.
    #[error("the file can't be written: {reason}")]
    CannotWrite {
        /// What the system said.
        reason: String,
    },
    /// The file is of a newer version, so it is only read.
    #[error("the file was made by a newer version ({version}): it can be read; update the program to write it")]
    Newer {
        /// The file's version.
        version: u32,
    },
    /// The file's pages are spoiled.
    #[error("the file is damaged: {reason}")]
    Damaged {
        /// What SQLite found.
        reason: String,
    },
    /// Another program holds the file.
    #[error("the file is in use by another program")]
    Busy,
    /// An id that must stand for one thing for ever came with other content.
    #[error("the id {id} is taken by something else")]
    Differs {
        /// The id.
        id: Uuid,
    },
    /// The file to be written is there already.
    #[error("{path} is there already")]
    Exists {
        /// The file.
        path: PathBuf,
    },
    /// The file was replaced, moved or deleted while it was open; what it held was copied.
    #[error("the file was taken from its place while it was open: what it held is in {copy}")]
    Replaced {
        /// The copy.
        copy: PathBuf,
    },
    /// The file was replaced, moved or deleted while it was open, and what it held could not be copied.
    #[error("the file was taken from its place while it was open, and could not be copied: {reason}")]
    ReplacedUncopied {
        /// Why not.
        reason: String,
    },
    /// An edit in the register can't be read.
    #[error(transparent)]
    Unreadable(#[from] Unreadable),
    /// Anything else that SQLite answers.
    #[error(transparent)]
    Sqlite(rusqlite::Error),
}

impl From<rusqlite::Error> for StoreError {
    fn from(error: rusqlite::Error) -> Self {
        let reason = error.to_string();
        let Some(code) = error.sqlite_error().map(|error| error.extended_code) else {
            return Self::Sqlite(error);
        };
        match code {
            ffi::SQLITE_IOERR_SHMSIZE => return Self::NoRoom,
            ffi::SQLITE_IOERR_SHORT_READ | ffi::SQLITE_IOERR_CORRUPTFS => {
                return Self::Damaged { reason };
            }
            _ => {}
        }
        match code & 0xff {
            ffi::SQLITE_FULL => Self::NoRoom,
            ffi::SQLITE_NOTADB | ffi::SQLITE_CORRUPT => Self::Damaged { reason },
            ffi::SQLITE_BUSY | ffi::SQLITE_LOCKED => Self::Busy,
            ffi::SQLITE_READONLY | ffi::SQLITE_PERM | ffi::SQLITE_CANTOPEN | ffi::SQLITE_IOERR => {
                Self::CannotWrite { reason }
            }
            _ => Self::Sqlite(error),
        }
    }
}

/// Why events were not appended. Nothing of the command was kept.
#[derive(Debug, thiserror::Error)]
pub enum AppendError {
    /// The visit has gone on since the caller looked.
    #[error("the visit stands at event {actual_seq}, not where the command expected it")]
    Stale {
        /// The last event of the visit.
        actual_seq: u32,
    },
    /// This command was answered before; the answer is these events.
    #[error("the command was answered before by events {first_seq} to {last_seq} of visit {visit_id}")]
    AlreadyAnswered {
        /// The visit that it changed.
        visit_id: Uuid,
        /// The first event of the answer.
        first_seq: u32,
        /// The last event of the answer.
        last_seq: u32,
    },
    /// The rows do not fit together: a mistake of the caller, not of the operator.
    #[error(transparent)]
    Unfit(#[from] Unfit),
    /// The file.
    #[error(transparent)]
    Store(#[from] StoreError),
}

impl From<rusqlite::Error> for AppendError {
    fn from(error: rusqlite::Error) -> Self {
        Self::Store(error.into())
    }
}

/// How rows can fail to fit together.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum Unfit {
    /// There is no event.
    #[error("a command's answer has at least one event")]
    Empty,
    /// The events' numbers do not continue from the expected one.
    #[error("the events' numbers leave a gap or repeat one")]
    Gap,
    /// The events, the visit's row, what was taken from containers or the link are of more than one visit.
    #[error("the rows belong to more than one visit")]
    Visits,
    /// The events answer more than one command.
    #[error("the events answer more than one command")]
    Commands,
    /// The visit's row or the link stands for other events than were appended.
    #[error("the visit's row or the link does not end at the last event")]
    Behind,
    /// The link does not follow the end of the device's chain.
    #[error("the link does not follow the end of the chain")]
    Chain,
}
