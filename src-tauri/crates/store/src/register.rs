//! The register on disk: edits that are only added, and entries that are made once.
//!
//! No table holds "the current client": what an entry is now is worked out from its edits when it is read,
//! so it can never disagree with them.

use evensward_format::private::PrivateText;
use evensward_format::register::{self, Entry, FieldOperation, ImmutableEntry, Tick};
use rusqlite::{Connection, OptionalExtension, params};
use uuid::Uuid;

use crate::failure::StoreError;
use crate::{Store, drafts, private, rows};

/// What one form of the register came to.
#[derive(Debug, Clone, Copy, Default)]
pub struct RegisterChange<'a> {
    /// Edits of fields.
    pub operations: &'a [FieldOperation],
    /// Label versions, calibrations, signed cleanings and counts made.
    pub immutables: &'a [ImmutableEntry],
    /// Personal texts that the edits name.
    pub private: &'a [PrivateText],
    /// The draft that it was typed in.
    pub clear_draft: Option<&'a str>,
}

impl Store {
    /// Keeps a change of the register, in one transaction. What is there already is left alone, so a retry is harmless.
    ///
    /// # Errors
    /// [`StoreError::Differs`] when an id is taken by other content; else when the file can't be written.
    pub fn change_register(&mut self, change: &RegisterChange<'_>) -> Result<(), StoreError> {
        self.write(|connection| {
            for operation in change.operations {
                add_operation(connection, operation)?;
            }
            for entry in change.immutables {
                add_immutable(connection, entry)?;
            }
            for text in change.private {
                private::add(connection, text)?;
            }
            if let Some(key) = change.clear_draft {
                drafts::clear(connection, key)?;
            }
            Ok(())
        })
    }

    /// All entries of a kind, those taken out among them, by id.
    ///
    /// # Errors
    /// When the file can't be read.
    pub fn entries(&self, kind: &str) -> Result<Vec<Entry>, StoreError> {
        let sql = include_str!("queries/latest_operations.sql");
        let latest = rows::all(&self.connection, sql, [kind], rows::operation)?;
        Ok(register::entries(&latest)?)
    }

    /// One entry; none if it was never edited.
    ///
    /// # Errors
    /// When the file can't be read.
    pub fn entry(&self, kind: &str, entry_id: Uuid) -> Result<Option<Entry>, StoreError> {
        let sql = include_str!("queries/operations_of_entry.sql");
        let operations = rows::all(&self.connection, sql, params![kind, entry_id.as_bytes()], rows::operation)?;
        Ok(register::entries(&operations)?.pop())
    }

    /// Every edit of one field, the latest first: the first is the one that holds.
    ///
    /// # Errors
    /// When the file can't be read.
    pub fn field_history(&self, kind: &str, entry_id: Uuid, field: &str) -> Result<Vec<FieldOperation>, StoreError> {
        let sql = include_str!("queries/field_history.sql");
        let params = params![kind, entry_id.as_bytes(), field];
        Ok(rows::all(&self.connection, sql, params, rows::operation)?)
    }

    /// The latest moment that any edit bears, from which the next edit's follows.
    ///
    /// # Errors
    /// When the file can't be read.
    pub fn last_tick(&self) -> Result<Option<Tick>, StoreError> {
        Ok(self
            .connection
            .prepare_cached(include_str!("queries/last_tick.sql"))?
            .query_row((), |row| Ok(Tick { utc_ms: row.get(0)?, counter: row.get(1)? }))
            .optional()?)
    }

    /// One entry that is never edited: a label version, a calibration, a signed cleaning or a count.
    ///
    /// # Errors
    /// When the file can't be read.
    pub fn immutable(&self, entry_id: Uuid) -> Result<Option<ImmutableEntry>, StoreError> {
        immutable(&self.connection, entry_id)
    }

    /// All entries of a kind that belong to one: label versions of a product, calibrations or cleanings of a kit, counts of a
    /// container. The earliest first.
    ///
    /// # Errors
    /// When the file can't be read.
    pub fn immutables(&self, kind: &str, of: Uuid) -> Result<Vec<ImmutableEntry>, StoreError> {
        let sql = include_str!("queries/immutables_of.sql");
        Ok(rows::all(&self.connection, sql, params![kind, of.as_bytes()], rows::immutable)?)
    }
}

fn immutable(connection: &Connection, entry_id: Uuid) -> Result<Option<ImmutableEntry>, StoreError> {
    Ok(connection
        .prepare_cached(include_str!("queries/immutable.sql"))?
        .query_row([entry_id.as_bytes()], rows::immutable)
        .optional()?)
}

fn add_operation(connection: &Connection, operation: &FieldOperation) -> Result<(), StoreError> {
    let params = params![
        operation.operation_id.as_bytes(),
        operation.kind,
        operation.entry_id.as_bytes(),
        operation.field,
        operation.value,
        operation.at_utc_ms,
        operation.counter,
        operation.device_id.as_bytes(),
    ];
    let n_added = connection.prepare_cached(include_str!("queries/add_operation.sql"))?.execute(params)?;
    if n_added == 0 {
        let n_same: u32 = connection
            .prepare_cached(include_str!("queries/same_operation.sql"))?
            .query_row(params, |row| row.get(0))?;
        if n_same == 0 {
            return Err(StoreError::Differs { id: operation.operation_id });
        }
    }
    Ok(())
}

fn add_immutable(connection: &Connection, entry: &ImmutableEntry) -> Result<(), StoreError> {
    let n_added = connection.prepare_cached(include_str!("queries/add_immutable.sql"))?.execute(params![
        entry.entry_id.as_bytes(),
        entry.kind,
        entry.of.as_bytes(),
        entry.made_utc_ms,
        entry.device_id.as_bytes(),
        entry.body,
    ])?;
    if n_added == 0 && immutable(connection, entry.entry_id)?.as_ref() != Some(entry) {
        return Err(StoreError::Differs { id: entry.entry_id });
    }
    Ok(())
}
