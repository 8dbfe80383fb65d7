//! Invented rows for the tests of the store: a device that treats one lawn, tap by tap.
//!
//! Ids are counted, not random, so that a failed test shows the same ids each time.

use evensward_format::chain::ChainLink;
use evensward_format::journal::{EventRow, Stamp, StockUse, VisitRow};
use evensward_format::register::FieldOperation;
use evensward_store::{Append, AppendError, Store};
use uuid::Uuid;

pub const DEVICE: Uuid = Uuid::from_u128(0xd0);
pub const VISIT: Uuid = Uuid::from_u128(0xa0);
pub const LAWN: Uuid = Uuid::from_u128(0x1a);
pub const CLIENT: Uuid = Uuid::from_u128(0xc1);
pub const CONTAINER: Uuid = Uuid::from_u128(0xb0);

/// 2026-05-04 09:00:00 in UTC.
pub const OPENED_UTC_MS: i64 = 1_777_885_200_000;

pub fn event(visit_id: Uuid, seq: u32) -> EventRow {
    let number = (visit_id.as_u128() << 64) | u128::from(seq);
    EventRow {
        event_id: Uuid::from_u128(number | 1 << 120),
        visit_id,
        seq,
        device_id: DEVICE,
        command_id: Uuid::from_u128(number | 2 << 120),
        at: Stamp {
            utc_ms: OPENED_UTC_MS + i64::from(seq) * 1000,
            offset_min: 60,
            zone: "Europe/London".to_owned(),
            mono_ms: 40_000 + i64::from(seq) * 1000,
            run_id: Uuid::from_u128(0x4e),
        },
        kind: "pass_walked".to_owned(),
        version: 1,
        payload: format!("{{\"pass\":{seq},  \"water_l\":8.10}}"),
    }
}

pub fn visit(visit_id: Uuid, last_seq: u32) -> VisitRow {
    VisitRow {
        visit_id,
        lawn_id: LAWN,
        client_id: CLIENT,
        product_id: None,
        kit_id: None,
        device_id: DEVICE,
        stage: "walk".to_owned(),
        last_seq,
        opened_utc_ms: OPENED_UTC_MS,
        changed_utc_ms: OPENED_UTC_MS + i64::from(last_seq) * 1000,
        closed_utc_ms: None,
        look_back_on: None,
        summary: "{}".to_owned(),
    }
}

/// A quarter of a litre for one fill, a second after the visit was opened and one for each fill since.
pub fn stock_use(visit_id: Uuid, fill: u8) -> StockUse {
    StockUse {
        visit_id,
        fill,
        container_id: CONTAINER,
        utc_ms: OPENED_UTC_MS + i64::from(fill) * 1000,
        used_on: "2026-05-04".to_owned(),
        amount: 250.0,
        unit: "mL".to_owned(),
    }
}

/// One tap: the visit's next event, after `expected_seq`.
pub fn tap(store: &mut Store, visit_id: Uuid, expected_seq: u32) -> Result<(), AppendError> {
    let event = event(visit_id, expected_seq + 1);
    append(store, expected_seq, &[event], None)
}

pub fn append(
    store: &mut Store,
    expected_seq: u32,
    events: &[EventRow],
    link: Option<&ChainLink>,
) -> Result<(), AppendError> {
    let (visit_id, last_seq) = events.last().map_or((VISIT, 0), |event| (event.visit_id, event.seq));
    let mut projection = visit(visit_id, last_seq);
    projection.closed_utc_ms = link.map(|_| projection.changed_utc_ms);
    let (private, uses, clear_draft) = (&[], None, None);
    store.append(&Append {
        expected_seq,
        events,
        projection: &projection,
        lawns: &[],
        uses,
        private,
        link,
        clear_draft,
    })
}

pub fn edit(number: u128, field: &str, value: &str, at_utc_ms: i64) -> FieldOperation {
    FieldOperation {
        operation_id: Uuid::from_u128(number | 3 << 120),
        kind: "lawn".to_owned(),
        entry_id: LAWN,
        field: field.to_owned(),
        value: value.to_owned(),
        at_utc_ms,
        counter: 0,
        device_id: DEVICE,
    }
}
