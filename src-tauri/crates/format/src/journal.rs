//! The rows of the journal: what happened during a visit, in the words in which it was first written.
//!
//! An event is never changed and never taken out. Its payload is JSON text which is stored, sent and
//! hashed byte for byte as it was first written: nothing here parses it, because writing a parsed value
//! out again may change a byte and so break the chain of the closed records. The visit's row is a
//! projection: it can always be made anew from the events and must never know more than they do.

use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// When something happened, so that it can still be ordered and read after the clock was put right.
///
/// The wall clock tells the date that the law asks for; the monotonic clock tells how long something
/// took, and holds only within one run of the program.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Stamp {
    /// Milliseconds since 1970-01-01 00:00 UTC, leap seconds left out.
    pub utc_ms: i64,
    /// Minutes that the local clock was ahead of UTC then (summer time included).
    pub offset_min: i32,
    /// The zone's name in the IANA time zone database, such as `Europe/London`.
    pub zone: String,
    /// Milliseconds on a clock that is never set, since an arbitrary moment of this run.
    pub mono_ms: i64,
    /// The run of the program whose monotonic clock this is.
    pub run_id: Uuid,
}

/// One thing that happened during a visit.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct EventRow {
    /// The event itself (UUIDv7).
    pub event_id: Uuid,
    /// The visit during which it happened.
    pub visit_id: Uuid,
    /// Its place in the visit, from 1 and without gaps.
    pub seq: u32,
    /// The device that wrote it.
    pub device_id: Uuid,
    /// The command that it answers. A command may be answered by several events.
    pub command_id: Uuid,
    /// When it happened.
    pub at: Stamp,
    /// What kind of event it is. New kinds may be added; a kind's name is never used for another.
    pub kind: String,
    /// The version of this kind's payload.
    pub version: u16,
    /// The JSON text of the payload, exactly as first written.
    pub payload: String,
}

/// What the events of a visit come to, for lists that must not read every event.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct VisitRow {
    /// The visit.
    pub visit_id: Uuid,
    /// The lawn it treats.
    pub lawn_id: Uuid,
    /// The client whose lawn it is.
    pub client_id: Uuid,
    /// The product, once chosen.
    pub product_id: Option<Uuid>,
    /// The kit, once chosen.
    pub kit_id: Option<Uuid>,
    /// The device that owns the visit.
    pub device_id: Uuid,
    /// Where in the job the visit stands, in the words of the events.
    pub stage: String,
    /// The last event that this row knows.
    pub last_seq: u32,
    /// When the visit was opened, in UTC milliseconds.
    pub opened_utc_ms: i64,
    /// When its last event happened, in UTC milliseconds.
    pub changed_utc_ms: i64,
    /// When its record was closed, in UTC milliseconds; none while it is open.
    pub closed_utc_ms: Option<i64>,
    /// The local date of the look-back that is still owed, as `YYYY-MM-DD`.
    pub look_back_on: Option<String>,
    /// A small JSON text with what a list shows; it holds ids and figures, never personal data.
    pub summary: String,
}

/// What one fill of a visit took from one container, for the shelf that must not read every event.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct StockUse {
    /// The visit.
    pub visit_id: Uuid,
    /// Its fill, from 1.
    pub fill: u8,
    /// The container.
    pub container_id: Uuid,
    /// When the fill was made, in UTC milliseconds.
    pub utc_ms: i64,
    /// The local date on which it was made, as `YYYY-MM-DD`.
    pub used_on: String,
    /// How much was taken, in `unit`.
    pub amount: f64,
    /// `mL` or `g`.
    pub unit: String,
}

/// What the events of a visit come to on a lawn that it treats after the one it was opened on.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct VisitLawnRow {
    /// The lawn.
    pub lawn_id: Uuid,
    /// Its place in the order of the walk: 2 for the second.
    pub nth: u32,
    /// The local date of the look-back that is still owed on it, as `YYYY-MM-DD`.
    pub look_back_on: Option<String>,
    /// A small JSON text with what a list shows of it; it holds ids and figures, never personal data.
    pub summary: String,
}
