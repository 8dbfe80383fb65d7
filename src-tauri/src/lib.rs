//! The shell: a window around the companion, and the only package that knows Tauri.
//!
//! It works nothing out and keeps nothing: a question from the window is handed to the companion, and the
//! answer handed back. So the window may be killed and opened again at any moment.

mod commands;
mod lifecycle;
mod platform;

/// Opens the window, and ends the program when it is closed.
pub fn run() {
    lifecycle::start_log();
    let builder = tauri::Builder::default();
    #[cfg(mobile)]
    let builder = builder.plugin(tauri_plugin_geolocation::init());
    let run = builder
        .setup(|app| Ok(lifecycle::start(app)?))
        .invoke_handler(tauri::generate_handler![commands::ask])
        .run(tauri::generate_context!());
    if let Err(error) = run {
        tracing::error!(%error, "the window could not be opened");
        std::process::exit(1);
    }
}
