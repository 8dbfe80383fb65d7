//! How rows of the file become rows of `format`. Columns are read in the order in which the queries name them.

use evensward_format::chain::{ChainLink, Digest};
use evensward_format::journal::{EventRow, Stamp, StockUse, VisitRow};
use evensward_format::private::{PrivateText, Salt, SaltedWords};
use evensward_format::register::{FieldOperation, ImmutableEntry};
use rusqlite::{Connection, Params, Result, Row};
use uuid::Uuid;

/// All rows of a query, read by `read`.
pub(crate) fn all<T, P: Params>(
    connection: &Connection,
    sql: &str,
    params: P,
    read: fn(&Row<'_>) -> Result<T>,
) -> Result<Vec<T>> {
    connection.prepare_cached(sql)?.query_map(params, read)?.collect()
}

pub(crate) fn id(row: &Row<'_>, column_idx: usize) -> Result<Uuid> {
    row.get(column_idx).map(Uuid::from_bytes)
}

fn optional_id(row: &Row<'_>, column_idx: usize) -> Result<Option<Uuid>> {
    Ok(row.get::<_, Option<[u8; 16]>>(column_idx)?.map(Uuid::from_bytes))
}

fn digest(row: &Row<'_>, column_idx: usize) -> Result<Digest> {
    row.get(column_idx).map(Digest)
}

pub(crate) fn event(row: &Row<'_>) -> Result<EventRow> {
    Ok(EventRow {
        event_id: id(row, 0)?,
        visit_id: id(row, 1)?,
        seq: row.get(2)?,
        device_id: id(row, 3)?,
        command_id: id(row, 4)?,
        at: Stamp {
            utc_ms: row.get(5)?,
            offset_min: row.get(6)?,
            zone: row.get(7)?,
            mono_ms: row.get(8)?,
            run_id: id(row, 9)?,
        },
        kind: row.get(10)?,
        version: row.get(11)?,
        payload: row.get(12)?,
    })
}

pub(crate) fn visit(row: &Row<'_>) -> Result<VisitRow> {
    Ok(VisitRow {
        visit_id: id(row, 0)?,
        lawn_id: id(row, 1)?,
        client_id: id(row, 2)?,
        product_id: optional_id(row, 3)?,
        kit_id: optional_id(row, 4)?,
        device_id: id(row, 5)?,
        stage: row.get(6)?,
        last_seq: row.get(7)?,
        opened_utc_ms: row.get(8)?,
        changed_utc_ms: row.get(9)?,
        closed_utc_ms: row.get(10)?,
        look_back_on: row.get(11)?,
        summary: row.get(12)?,
    })
}

pub(crate) fn stock_use(row: &Row<'_>) -> Result<StockUse> {
    Ok(StockUse {
        visit_id: id(row, 0)?,
        fill: row.get(1)?,
        container_id: id(row, 2)?,
        utc_ms: row.get(3)?,
        used_on: row.get(4)?,
        amount: row.get(5)?,
        unit: row.get(6)?,
    })
}

pub(crate) fn link(row: &Row<'_>) -> Result<ChainLink> {
    Ok(ChainLink {
        device_id: id(row, 0)?,
        position: row.get(1)?,
        visit_id: id(row, 2)?,
        last_seq: row.get(3)?,
        previous: digest(row, 4)?,
        events_hash: digest(row, 5)?,
        hash: digest(row, 6)?,
    })
}

pub(crate) fn operation(row: &Row<'_>) -> Result<FieldOperation> {
    Ok(FieldOperation {
        operation_id: id(row, 0)?,
        kind: row.get(1)?,
        entry_id: id(row, 2)?,
        field: row.get(3)?,
        value: row.get(4)?,
        at_utc_ms: row.get(5)?,
        counter: row.get(6)?,
        device_id: id(row, 7)?,
    })
}

pub(crate) fn immutable(row: &Row<'_>) -> Result<ImmutableEntry> {
    Ok(ImmutableEntry {
        entry_id: id(row, 0)?,
        kind: row.get(1)?,
        of: id(row, 2)?,
        made_utc_ms: row.get(3)?,
        device_id: id(row, 4)?,
        body: row.get(5)?,
    })
}

pub(crate) fn private_text(row: &Row<'_>) -> Result<PrivateText> {
    let salt: Option<[u8; 16]> = row.get(2)?;
    let body: Option<String> = row.get(3)?;
    Ok(PrivateText {
        id: id(row, 0)?,
        sha256: digest(row, 1)?,
        words: salt.zip(body).map(|(salt, body)| SaltedWords { salt: Salt(salt), body }),
    })
}
