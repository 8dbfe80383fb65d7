//! What differs from one system to the next. So far that is only where the data lies.

use std::path::PathBuf;

use tauri::{App, Manager as _};

/// Names the folder of the data instead of the system's usual place: for tests, and for trying things out.
const FOLDER_VARIABLE: &str = "EVENSWARD_DATA";

/// The folder of the data: the one named by `EVENSWARD_DATA`, else where the system keeps a program's own data.
pub(crate) fn data_folder(app: &App) -> tauri::Result<PathBuf> {
    match std::env::var_os(FOLDER_VARIABLE) {
        Some(folder) => Ok(PathBuf::from(folder)),
        None => app.path().app_data_dir(),
    }
}
