//! What the window may call: one question with one answer. What may be asked stands in `companion`.

use evensward_companion::dto::ask::{Answer, Ask, Failure};

use crate::lifecycle::Door;

/// Asks the companion. It runs off the window's own thread, because an answer waits for the disk.
#[tauri::command]
pub(crate) async fn ask(ask: Ask, door: tauri::State<'_, Door>) -> Result<Answer, Failure> {
    door.ask(ask).await
}
