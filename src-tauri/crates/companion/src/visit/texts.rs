//! What a visit's view and its record both read out: erasable texts, the lawn's name, moments.

use evensward_core::visit::event::{At, NoteRef};
use uuid::Uuid;

use crate::Companion;
use crate::dto::figures::Argument;

/// A moment, for the screen's own clock words.
pub(crate) fn instant(at: At) -> Argument {
    #[expect(clippy::cast_precision_loss, reason = "milliseconds since 1970 stay far below 2^53")]
    let utc_ms = at.utc_ms as f64;
    Argument::Instant { utc_ms, offset_min: at.offset_min }
}

/// The lawn's name as it is kept now; a lawn taken out still has its old one.
pub(crate) fn lawn_name(companion: &Companion, lawn_id: Uuid) -> String {
    companion.load_lawn(lawn_id).map(|(input, _)| input.name).unwrap_or_default()
}

/// An erasable text; nothing once it was erased.
pub(crate) fn words(companion: &Companion, note: &NoteRef) -> Option<String> {
    let text = companion.store.private_text(note.id).ok().flatten()?;
    text.words.map(|words| words.body)
}

/// One value of an erasable JSON text.
pub(crate) fn word(companion: &Companion, note: &NoteRef, key: &str) -> Option<String> {
    let words: serde_json::Value = serde_json::from_str(&words(companion, note)?).ok()?;
    words.get(key)?.as_str().filter(|word| !word.is_empty()).map(str::to_owned)
}
