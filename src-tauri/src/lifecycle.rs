//! Starting: the door to the companion, set up before the window asks its first question.
//!
//! Whatever is wrong with the file is no reason not to open the window: it becomes the companion's answer,
//! and the screen says what to do. Start-up may happen twice on one folder: both windows then work on the
//! same file, one step at a time, and nothing but that file holds anything that is true.

use std::sync::{Arc, Mutex, PoisonError};

use evensward_companion::doorway::Doorway;
use evensward_companion::dto::ask::{Answer, Ask, Failure};
use evensward_companion::system;
use tauri::{App, Manager};

use crate::platform;

/// The way to the companion, for whoever waits in the window.
pub(crate) struct Door(Arc<Mutex<Doorway>>);

impl Door {
    /// Asks on a thread that may wait for the disk.
    pub(crate) async fn ask(&self, ask: Ask) -> Result<Answer, Failure> {
        let doorway = Arc::clone(&self.0);
        let asked = tauri::async_runtime::spawn_blocking(move || {
            // A question that broke off midway left nothing behind but what the file holds, so the next one may go on.
            doorway.lock().unwrap_or_else(PoisonError::into_inner).ask(ask)
        });
        asked.await.unwrap_or_else(|error| Err(Failure::malformed(format!("the question broke off: {error}"))))
    }
}

/// Sends what is worth knowing to the terminal that started the program, if one did.
pub(crate) fn start_log() {
    tracing_subscriber::fmt().with_max_level(tracing::Level::INFO).with_writer(std::io::stderr).init();
}

/// Sets the companion to answer. The file is opened with the first question.
pub(crate) fn start(app: &App) -> tauri::Result<()> {
    let folder = platform::data_folder(app)?;
    tracing::info!(folder = %folder.display(), "the data lies here");
    app.manage(Door(Arc::new(Mutex::new(Doorway::new(folder, system::ports())))));
    Ok(())
}
