//! Personal texts on disk: added once, and erased for good when a client asks for it.
//!
//! To erase means that the words can't be found in the file any more: freed bytes are overwritten
//! (`secure_delete`), and the write-ahead log, which may still hold the page as it was, is emptied.

use evensward_format::private::PrivateText;
use rusqlite::{Connection, OptionalExtension, params};
use uuid::Uuid;

use crate::failure::StoreError;
use crate::{Store, rows};

const SELECT: &str = "SELECT id, sha256, salt, body FROM private_text WHERE id = ?1";

impl Store {
    /// One personal text, or what is left of it.
    ///
    /// # Errors
    /// When the file can't be read.
    pub fn private_text(&self, id: Uuid) -> Result<Option<PrivateText>, StoreError> {
        one(&self.connection, id)
    }

    /// Erases the words of a text; its hash stays. A text that is not here or was erased before is fine.
    ///
    /// # Errors
    /// [`StoreError::Busy`] when another program still reads the log, so that the words may linger there:
    /// try again; else when the file can't be written.
    pub fn erase_private(&mut self, id: Uuid) -> Result<(), StoreError> {
        self.write(|connection| {
            connection
                .prepare_cached("UPDATE private_text SET salt = NULL, body = NULL WHERE id = ?1")?
                .execute([id.as_bytes()])?;
            Ok::<(), StoreError>(())
        })?;
        let is_busy: bool = self.connection.query_row("PRAGMA wal_checkpoint(TRUNCATE)", (), |row| row.get(0))?;
        if is_busy { Err(StoreError::Busy) } else { Ok(()) }
    }
}

fn one(connection: &Connection, id: Uuid) -> Result<Option<PrivateText>, StoreError> {
    Ok(connection.prepare_cached(SELECT)?.query_row([id.as_bytes()], rows::private_text).optional()?)
}

/// Adds a text unless it is there. One that was erased is never brought back.
pub(crate) fn add(connection: &Connection, text: &PrivateText) -> Result<(), StoreError> {
    let n_added = connection.prepare_cached(include_str!("queries/add_private.sql"))?.execute(params![
        text.id.as_bytes(),
        text.sha256.0,
        text.words.as_ref().map(|words| words.salt.0),
        text.words.as_ref().map(|words| &words.body),
    ])?;
    if n_added == 0 && one(connection, text.id)?.is_none_or(|kept| kept.sha256 != text.sha256) {
        return Err(StoreError::Differs { id: text.id });
    }
    Ok(())
}
