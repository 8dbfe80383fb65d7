//! How SQLite is set up for each connection, every setting with its reason in one table.
//!
//! Two more settings live in the file itself and are written when it is made: `application_id`, by which
//! `file` and this crate tell our database from any other, and `user_version`, the schema's number.
//! Meanings: <https://www.sqlite.org/pragma.html>.

use rusqlite::Connection;

use crate::failure::StoreError;

/// Marks our files: the letters "Evsw" in a database header.
pub(crate) const APPLICATION_ID: i32 = 0x4576_7377;

struct Pragma {
    name: &'static str,
    value: &'static str,
    reason: &'static str,
}

const PRAGMAS: &[Pragma] = &[
    Pragma {
        name: "busy_timeout",
        value: "5000",
        reason: "a second window on the same file waits for the first one's step instead of failing",
    },
    Pragma {
        name: "synchronous",
        value: "EXTRA",
        reason: "weaker settings may lose acknowledged taps when the power goes; in WAL mode this costs what FULL costs, \
                 and while a new file is turned to WAL mode it also keeps a deleted journal from coming back",
    },
    Pragma {
        name: "journal_mode",
        value: "WAL",
        reason: "a commit is one append and one sync, and a reader never stands in the way of a tap",
    },
    Pragma {
        name: "fullfsync",
        value: "ON",
        reason: "on Apple's systems a plain sync stops at the drive's cache; elsewhere this does nothing",
    },
    Pragma { name: "checkpoint_fullfsync", value: "ON", reason: "the same for moving the log into the file" },
    Pragma {
        name: "secure_delete",
        value: "ON",
        reason: "what a client asked to have forgotten must not stay readable in freed pages",
    },
    Pragma {
        name: "cell_size_check",
        value: "ON",
        reason: "a spoiled page is noticed when it is read, not after it has spoiled an answer",
    },
    Pragma {
        name: "trusted_schema",
        value: "OFF",
        reason: "a file from elsewhere must not bring functions to run through its schema",
    },
    Pragma {
        name: "temp_store",
        value: "MEMORY",
        reason: "sorting must not fail on a full disk, nor leave personal texts in a temporary file",
    },
];

/// Sets up a connection that may write.
pub(crate) fn set(connection: &Connection) -> Result<(), StoreError> {
    for pragma in PRAGMAS {
        connection.pragma_update(None, pragma.name, pragma.value).inspect_err(|error| {
            tracing::error!(pragma.name, pragma.reason, %error, "a setting was refused");
        })?;
    }
    let journal_mode: String = connection.pragma_query_value(None, "journal_mode", |row| row.get(0))?;
    if journal_mode != "wal" {
        tracing::warn!(journal_mode, "this file system has no write-ahead log; commits are as safe and slower");
    }
    Ok(())
}

/// Sets up a connection that only reads, where only these two matter.
pub(crate) fn set_reading(connection: &Connection) -> Result<(), StoreError> {
    for pragma in PRAGMAS
        .iter()
        .filter(|pragma| ["busy_timeout", "cell_size_check", "trusted_schema", "temp_store"].contains(&pragma.name))
    {
        connection.pragma_update(None, pragma.name, pragma.value)?;
    }
    Ok(())
}
