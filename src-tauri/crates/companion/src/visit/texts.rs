//! What a visit's view and its record both read out: erasable texts, the lawn's name, moments.

use evensward_core::checks::Check;
use evensward_core::visit::event::{At, NoteRef};
use evensward_core::visit::state::Passed;
use uuid::Uuid;

use crate::Companion;
use crate::dto::ask::Failure;
use crate::dto::figures::{Argument, CheckView};
use crate::register::LAWN;
use crate::show;

/// A moment, for the screen's own clock words.
pub(crate) fn instant(at: At) -> Argument {
    #[expect(clippy::cast_precision_loss, reason = "milliseconds since 1970 stay far below 2^53")]
    let utc_ms = at.utc_ms as f64;
    Argument::Instant { utc_ms, offset_min: at.offset_min }
}

/// The lawn's name as it is kept now; a lawn that this device has not got yet has none.
pub(crate) fn lawn_name(companion: &Companion, lawn_id: Uuid) -> Result<String, Failure> {
    match companion.entry(LAWN, lawn_id).and_then(|entry| companion.lawn_of(&entry)) {
        Ok(lawn) => Ok(lawn.name),
        Err(failure) if failure.is_of_one_entry() => Ok(String::new()),
        Err(failure) => Err(failure),
    }
}

/// An erasable text; nothing once it was erased.
pub(crate) fn words(companion: &Companion, note: &NoteRef) -> Result<Option<String>, Failure> {
    let text = companion.store.private_text(note.id)?;
    Ok(text.and_then(|text| text.words).map(|words| words.body))
}

/// An erasable text, where there is one.
pub(crate) fn optional_words(companion: &Companion, note: Option<&NoteRef>) -> Result<Option<String>, Failure> {
    note.map_or(Ok(None), |note| words(companion, note))
}

/// One value of an erasable JSON text; nothing once it was erased, or where it was left empty.
pub(crate) fn word(companion: &Companion, note: &NoteRef, key: &str) -> Result<Option<String>, Failure> {
    let Some(words) = words(companion, note)? else { return Ok(None) };
    let words: serde_json::Value =
        serde_json::from_str(&words).map_err(|error| Failure::unreadable(error.to_string()))?;
    Ok(words.get(key).and_then(|word| word.as_str()).filter(|word| !word.is_empty()).map(str::to_owned))
}

/// A check with the reason for which it was passed.
pub(crate) fn check(companion: &Companion, check: &Check, passed: Option<&Passed>) -> Result<CheckView, Failure> {
    let reason = optional_words(companion, passed.map(|passed| &passed.because))?;
    Ok(show::check(check, reason.as_deref()))
}
