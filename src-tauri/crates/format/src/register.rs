//! The register: clients, lawns, kits and the like, as documents that are edited field by field.
//!
//! An edit is an operation, and operations are only ever added. So two devices that edit different
//! fields both keep their edit, the later edit of one field wins, and the earlier one stays readable. A
//! figure and its unit are one field: they must never be merged from two edits. To take an entry out is
//! an operation too, and can be taken back. Label versions, calibrations, signed cleanings and counts of
//! containers are not edited at all: they are [`ImmutableEntry`]s, and only a field of the product or kit
//! says which one is current; of counts the latest is.
//!
//! The order of edits is that of a hybrid logical clock: S. Kulkarni and others, "Logical Physical
//! Clocks", OPODIS 2014, <https://doi.org/10.1007/978-3-319-14472-6_2>. The device's id decides a tie.

use std::cmp::Ordering;
use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};
use serde_json::Value;
use uuid::Uuid;

/// The field that says whether an entry was taken out: its value is `true` or `false`.
pub const REMOVED: &str = "removed";

/// The kind of entry a label version is.
pub const LABEL: &str = "label";

/// The kind of entry a calibration is.
pub const CALIBRATION: &str = "calibration";

/// The kind of entry a signed cleaning is.
pub const CLEANING: &str = "cleaning";

/// The kind of entry a count of a container is.
pub const STOCK_COUNT: &str = "stock_count";

/// A moment of the hybrid logical clock: it never goes back, even when the wall clock does.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Tick {
    /// Milliseconds since 1970-01-01 00:00 UTC.
    pub utc_ms: i64,
    /// Orders edits within one millisecond, or while the wall clock is behind.
    pub counter: u32,
}

impl Tick {
    /// The moment of the next edit, given the last one known and what the wall clock says.
    ///
    /// ```
    /// use evensward_format::register::Tick;
    /// let last = Tick { utc_ms: 2_000, counter: 3 };
    /// assert_eq!(Tick::next(Some(last), 2_001), Tick { utc_ms: 2_001, counter: 0 });
    /// // The clock was put back by a second: the order of edits still holds.
    /// assert_eq!(Tick::next(Some(last), 1_000), Tick { utc_ms: 2_000, counter: 4 });
    /// ```
    #[must_use]
    pub fn next(last: Option<Self>, now_utc_ms: i64) -> Self {
        match last {
            Some(last) if last.utc_ms >= now_utc_ms => match last.counter.checked_add(1) {
                Some(counter) => Self { utc_ms: last.utc_ms, counter },
                None => Self { utc_ms: last.utc_ms.saturating_add(1), counter: 0 },
            },
            _ => Self { utc_ms: now_utc_ms, counter: 0 },
        }
    }
}

/// One edit of one field of one entry.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct FieldOperation {
    /// The edit itself (UUIDv7).
    pub operation_id: Uuid,
    /// What kind of entry it is: `client`, `lawn`, `kit`, `product`, `container`, `operator`, `firm`.
    pub kind: String,
    /// The entry.
    pub entry_id: Uuid,
    /// The field's name. It is never used for another meaning.
    pub field: String,
    /// The field's new value as JSON text, with its unit where it has one.
    pub value: String,
    /// When it was edited, in UTC milliseconds of the hybrid logical clock.
    pub at_utc_ms: i64,
    /// The hybrid logical clock's counter.
    pub counter: u32,
    /// The device on which it was edited.
    pub device_id: Uuid,
}

impl FieldOperation {
    /// The moment of the edit.
    #[must_use]
    pub fn tick(&self) -> Tick {
        Tick { utc_ms: self.at_utc_ms, counter: self.counter }
    }

    /// Which of two edits of one field is the later: the greater one wins.
    ///
    /// The edit's own id comes last, so that no two edits are equal and every device agrees.
    #[must_use]
    pub fn later(&self, other: &Self) -> Ordering {
        (self.tick(), self.device_id, self.operation_id).cmp(&(other.tick(), other.device_id, other.operation_id))
    }
}

/// An entry as its edits leave it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Entry {
    /// What kind of entry it is.
    pub kind: String,
    /// The entry.
    pub entry_id: Uuid,
    /// Each field's latest value.
    pub fields: BTreeMap<String, Value>,
    /// The moment of the last edit, in UTC milliseconds.
    pub last_utc_ms: i64,
    /// The device of the last edit.
    pub last_device_id: Uuid,
    /// Whether it was taken out. It stays readable, because old records point to it.
    pub removed: bool,
}

/// An edit whose value can't be read.
#[derive(Debug, thiserror::Error)]
#[error("the edit {operation_id} of field {field} holds no JSON: {source}")]
pub struct Unreadable {
    /// The edit.
    pub operation_id: Uuid,
    /// Its field.
    pub field: String,
    /// What the reader met.
    pub source: serde_json::Error,
}

/// What a set of edits comes to, in any order and with any of them given twice: the entries by kind and id.
///
/// ```
/// use evensward_format::register::{FieldOperation, entries};
/// use uuid::Uuid;
/// let edit = |n: u128, field: &str, value: &str, at_utc_ms| FieldOperation {
///     operation_id: Uuid::from_u128(n), kind: "lawn".into(), entry_id: Uuid::from_u128(9), field: field.into(),
///     value: value.into(), at_utc_ms, counter: 0, device_id: Uuid::from_u128(1),
/// };
/// let edits = [edit(1, "name", "\"Front\"", 10), edit(2, "slope", "0.02", 11), edit(3, "name", "\"Back\"", 12)];
/// let found = entries(&edits).unwrap();
/// assert_eq!(found[0].fields["name"], "Back");
/// assert_eq!(found[0].fields["slope"], 0.02);
/// ```
///
/// # Errors
/// An edit whose value is not JSON.
pub fn entries<'a>(operations: impl IntoIterator<Item = &'a FieldOperation>) -> Result<Vec<Entry>, Unreadable> {
    let mut latest: BTreeMap<(&str, Uuid), BTreeMap<&str, &FieldOperation>> = BTreeMap::new();
    for operation in operations {
        let fields = latest.entry((operation.kind.as_str(), operation.entry_id)).or_default();
        let kept = fields.entry(operation.field.as_str()).or_insert(operation);
        if operation.later(kept) == Ordering::Greater {
            *kept = operation;
        }
    }
    latest.into_iter().map(|((kind, entry_id), fields)| entry(kind, entry_id, &fields)).collect()
}

fn entry(kind: &str, entry_id: Uuid, latest: &BTreeMap<&str, &FieldOperation>) -> Result<Entry, Unreadable> {
    let last = latest.values().copied().max_by(|one, other| one.later(other));
    let mut fields = BTreeMap::new();
    for (field, operation) in latest {
        let value: Value = serde_json::from_str(&operation.value).map_err(|source| Unreadable {
            operation_id: operation.operation_id,
            field: (*field).to_owned(),
            source,
        })?;
        fields.insert((*field).to_owned(), value);
    }
    let removed = fields.remove(REMOVED).is_some_and(|value| value == Value::Bool(true));
    Ok(Entry {
        kind: kind.to_owned(),
        entry_id,
        fields,
        last_utc_ms: last.map_or(0, |operation| operation.at_utc_ms),
        last_device_id: last.map_or_else(Uuid::nil, |operation| operation.device_id),
        removed,
    })
}

/// An entry that is made once and never edited: a label version, a calibration, a signed cleaning, a count of a container.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct ImmutableEntry {
    /// [`LABEL`], [`CALIBRATION`], [`CLEANING`] or [`STOCK_COUNT`].
    pub kind: String,
    /// The entry (UUIDv7).
    pub entry_id: Uuid,
    /// What it belongs to: a label's product, a calibration's or a cleaning's kit, a count's container.
    pub of: Uuid,
    /// When it was made, in UTC milliseconds.
    pub made_utc_ms: i64,
    /// The device on which it was made.
    pub device_id: Uuid,
    /// Its JSON text, exactly as first written.
    pub body: String,
}

#[cfg(test)]
mod tests {
    use super::*;

    fn edit(id: u128, field: &str, value: &str, at_utc_ms: i64, counter: u32, device: u128) -> FieldOperation {
        FieldOperation {
            operation_id: Uuid::from_u128(id),
            kind: "client".into(),
            entry_id: Uuid::from_u128(77),
            field: field.into(),
            value: value.into(),
            at_utc_ms,
            counter,
            device_id: Uuid::from_u128(device),
        }
    }

    #[test]
    fn the_order_in_which_edits_arrive_and_repeats_make_no_difference() {
        let edits = [
            edit(1, "name", "\"Hollin\"", 5, 0, 1),
            edit(2, "name", "\"Hollins\"", 5, 0, 2),
            edit(3, "gate", "\"1.5 m\"", 4, 9, 1),
            edit(4, REMOVED, "true", 6, 0, 1),
            edit(5, REMOVED, "false", 6, 1, 1),
        ];
        let expected = entries(&edits).unwrap();
        assert_eq!(expected.len(), 1);
        assert_eq!(expected[0].fields["name"], "Hollins", "the device's id decides a tie");
        assert!(!expected[0].removed, "taken out, then taken back");
        for start in 0..edits.len() {
            let turned = edits.iter().cycle().skip(start).take(edits.len() * 2);
            assert_eq!(entries(turned).unwrap(), expected);
        }
        assert_eq!(entries(edits.iter().rev()).unwrap(), expected);
    }

    #[test]
    fn a_value_that_is_no_json_is_named() {
        let error = entries(&[edit(8, "name", "Hollin", 1, 0, 1)]).unwrap_err();
        assert_eq!((error.operation_id, error.field.as_str()), (Uuid::from_u128(8), "name"));
    }

    #[test]
    fn a_full_counter_moves_to_the_next_millisecond() {
        let last = Tick { utc_ms: 7, counter: u32::MAX };
        assert_eq!(Tick::next(Some(last), 3), Tick { utc_ms: 8, counter: 0 });
    }
}
