//! What a use case needs from the world outside: what time it is, and ids and salts that nobody can guess.
//!
//! They come in as ports so that every use case is a function of its arguments and the file; a test hands in a clock
//! that stands still and ids that count. The real ones stand in `system`, and nowhere else is a clock read.

use std::fmt;
use std::sync::Arc;

use chrono::{DateTime, NaiveDate, TimeDelta};
use evensward_format::journal::Stamp;
use evensward_format::private::Salt;
use uuid::Uuid;

/// Tells the time.
pub trait Clock: Send + Sync {
    /// Now, on the wall clock with its zone and on the clock that is never set.
    fn now(&self) -> Stamp;
}

/// Makes ids and salts.
pub trait Ids: Send + Sync {
    /// A new id, of version 7, so that ids made later sort later.
    fn id(&self) -> Uuid;

    /// Sixteen bytes that nobody can guess.
    fn salt(&self) -> Salt;
}

/// The world outside, as a shell hands it in.
#[derive(Clone)]
pub struct Ports {
    /// Tells the time.
    pub clock: Arc<dyn Clock>,
    /// Makes ids and salts.
    pub ids: Arc<dyn Ids>,
}

impl fmt::Debug for Ports {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str("Ports")
    }
}

/// The local date of a moment: what intervals are counted in.
///
/// ```
/// use evensward_companion::ports::local_date;
/// use evensward_format::journal::Stamp;
/// let stamp = Stamp {
///     utc_ms: 1_790_896_200_000, // 2026-10-01 22:30 UTC
///     offset_min: 120,
///     zone: "Europe/Berlin".into(),
///     mono_ms: 0,
///     run_id: uuid::Uuid::nil(),
/// };
/// assert_eq!(local_date(&stamp).to_string(), "2026-10-02");
/// ```
#[must_use]
pub fn local_date(stamp: &Stamp) -> NaiveDate {
    DateTime::from_timestamp_millis(stamp.utc_ms)
        .and_then(|utc| utc.checked_add_signed(TimeDelta::minutes(stamp.offset_min.into())))
        .unwrap_or(DateTime::UNIX_EPOCH)
        .date_naive()
}
