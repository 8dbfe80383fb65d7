//! What visits took from containers: a projection beside the visit's row, written in the same transaction.
//!
//! Rows of a visit are written as a whole, never one by one: so a fill that is taken back leaves nothing behind, and the
//! same state written twice is the same rows.

use evensward_format::journal::StockUse;
use rusqlite::{Connection, params};
use uuid::Uuid;

use crate::failure::StoreError;
use crate::{Store, rows};

impl Store {
    /// What all visits took from all containers, the earliest first.
    ///
    /// # Errors
    /// When the file can't be read.
    pub fn stock_uses(&self) -> Result<Vec<StockUse>, StoreError> {
        Ok(rows::all(&self.connection, include_str!("queries/stock_uses.sql"), (), rows::stock_use)?)
    }

    /// What visits took from one container, the earliest first.
    ///
    /// # Errors
    /// When the file can't be read.
    pub fn stock_uses_of(&self, container_id: Uuid) -> Result<Vec<StockUse>, StoreError> {
        let sql = include_str!("queries/stock_uses_of.sql");
        Ok(rows::all(&self.connection, sql, [container_id.as_bytes()], rows::stock_use)?)
    }

    /// Writes what one visit took anew, as its journal says: for rows that were lost, or made by an older version.
    ///
    /// # Errors
    /// When the file can't be written. Nothing was changed then.
    pub fn put_stock_uses(&mut self, visit_id: Uuid, uses: &[StockUse]) -> Result<(), StoreError> {
        self.write(|connection| put(connection, visit_id, uses))
    }
}

/// Within a transaction: what a visit took, all of it.
pub(crate) fn put(connection: &Connection, visit_id: Uuid, uses: &[StockUse]) -> Result<(), StoreError> {
    connection.prepare_cached(include_str!("queries/clear_stock_uses.sql"))?.execute([visit_id.as_bytes()])?;
    for taken in uses {
        connection.prepare_cached(include_str!("queries/add_stock_use.sql"))?.execute(params![
            taken.visit_id.as_bytes(),
            taken.fill,
            taken.container_id.as_bytes(),
            taken.utc_ms,
            taken.used_on,
            taken.amount,
            taken.unit,
        ])?;
    }
    Ok(())
}
