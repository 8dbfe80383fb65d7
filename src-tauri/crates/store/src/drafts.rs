//! What belongs to this device alone: half-typed forms and settings. Neither is ever copied to another device.

use rusqlite::{Connection, OptionalExtension};
use uuid::Uuid;

use crate::Store;
use crate::failure::StoreError;

const DEVICE_ID: &str = "device_id";
const PUT_SETTING: &str = "INSERT INTO setting (name, value) VALUES (?1, ?2)
    ON CONFLICT (name) DO UPDATE SET value = excluded.value";
const PUT_SETTING_ONCE: &str = "INSERT INTO setting (name, value) VALUES (?1, ?2) ON CONFLICT (name) DO NOTHING";
const SETTING: &str = "SELECT value FROM setting WHERE name = ?1";

impl Store {
    /// Keeps what is typed so far, as JSON text.
    ///
    /// # Errors
    /// When the text is no JSON or the file can't be written.
    pub fn put_draft(&mut self, key: &str, body: &str) -> Result<(), StoreError> {
        self.write(|connection| {
            connection.prepare_cached(include_str!("queries/put_draft.sql"))?.execute([key, body])?;
            Ok(())
        })
    }

    /// What was typed so far in one form.
    ///
    /// # Errors
    /// When the file can't be read.
    pub fn draft(&self, key: &str) -> Result<Option<String>, StoreError> {
        Ok(self
            .connection
            .prepare_cached("SELECT body FROM draft WHERE key = ?1")?
            .query_row([key], |row| row.get(0))
            .optional()?)
    }

    /// All drafts as key and JSON text, by key.
    ///
    /// # Errors
    /// When the file can't be read.
    pub fn drafts(&self) -> Result<Vec<(String, String)>, StoreError> {
        let mut query = self.connection.prepare_cached("SELECT key, body FROM draft ORDER BY key")?;
        let drafts = query.query_map((), |row| Ok((row.get(0)?, row.get(1)?)))?;
        Ok(drafts.collect::<Result<_, _>>()?)
    }

    /// Throws a draft away; one that is not there is fine.
    ///
    /// # Errors
    /// When the file can't be written.
    pub fn clear_draft(&mut self, key: &str) -> Result<(), StoreError> {
        self.write(|connection| clear(connection, key))
    }

    /// This device's id: the one kept in the file, or the offered one, which is then kept.
    ///
    /// # Errors
    /// When the file can't be written, or holds no readable id.
    pub fn device_id(&mut self, offered: Uuid) -> Result<Uuid, StoreError> {
        let kept = match self.setting(DEVICE_ID)? {
            Some(kept) => kept,
            None => self.write(|connection| {
                connection.prepare_cached(PUT_SETTING_ONCE)?.execute([DEVICE_ID, &offered.to_string()])?;
                // Another program may have been first.
                Ok::<String, StoreError>(connection.prepare_cached(SETTING)?.query_row([DEVICE_ID], |row| row.get(0))?)
            })?,
        };
        kept.parse().map_err(|_| StoreError::Damaged { reason: format!("the device's id is not readable: {kept:?}") })
    }

    /// One setting of this device.
    ///
    /// # Errors
    /// When the file can't be read.
    pub fn setting(&self, name: &str) -> Result<Option<String>, StoreError> {
        Ok(self.connection.prepare_cached(SETTING)?.query_row([name], |row| row.get(0)).optional()?)
    }

    /// Keeps a setting of this device.
    ///
    /// # Errors
    /// When the file can't be written.
    pub fn put_setting(&mut self, name: &str, value: &str) -> Result<(), StoreError> {
        self.write(|connection| {
            connection.prepare_cached(PUT_SETTING)?.execute([name, value])?;
            Ok(())
        })
    }
}

/// Throws a draft away within a command's transaction.
pub(crate) fn clear(connection: &Connection, key: &str) -> Result<(), StoreError> {
    connection.prepare_cached("DELETE FROM draft WHERE key = ?1")?.execute([key])?;
    Ok(())
}
