//! The local SQLite file: one file in one folder, opened, brought forward, written and read here alone.
//!
//! Whatever was acknowledged is on the disk: every change is one IMMEDIATE transaction in WAL mode with
//! `synchronous=EXTRA`. A file that is damaged, of a newer version, or can't be written is never changed and
//! never deleted. This crate makes no ids and reads no clock: they come in as arguments. It knows rows,
//! not the trade: what an event means is worked out above it.
//!
//! What is on disk stands in `schema.sql`; each query that is more than a line stands in `queries/`.

mod backup;
mod drafts;
mod failure;
mod journal;
mod migrations;
mod opening;
mod place;
mod pragmas;
mod private;
mod register;
mod rows;
mod stock;

pub use failure::{AppendError, OpenError, StoreError, Unfit};
pub use journal::{Answered, Append};
pub use migrations::VERSION;
pub use opening::{Condition, FILE_NAME, Opened};
pub use register::RegisterChange;

use place::Place;
use rusqlite::{Connection, Transaction, TransactionBehavior};

/// The open file.
///
/// One writer at a time: a second program on the same file waits for the first, and is told that its
/// picture is stale when it then tries to write on from it.
#[derive(Debug)]
pub struct Store {
    connection: Connection,
    /// The file's version, where it is newer than this program's: then nothing is written.
    newer: Option<u32>,
    place: Place,
}

impl Store {
    /// Runs a change as one transaction: all of it is on the disk when this returns, or nothing is.
    fn write<T, E: From<StoreError>>(&mut self, change: impl FnOnce(&Transaction<'_>) -> Result<T, E>) -> Result<T, E> {
        if let Some(version) = self.newer {
            return Err(StoreError::Newer { version }.into());
        }
        self.stands()?;
        let transaction =
            self.connection.transaction_with_behavior(TransactionBehavior::Immediate).map_err(StoreError::from)?;
        let outcome = change(&transaction)?;
        transaction.commit().map_err(StoreError::from)?;
        Ok(outcome)
    }
}
