//! Where things lie: the checkout, what cargo built, and what the verbs leave behind.
//!
//! Programs are looked for beside the running `xtask`, so that a target folder set by the caller is
//! found without asking. What a person is to look at always lies in the checkout's own `target/`.

use std::path::{Path, PathBuf};
use std::process::Command;

/// The folder with the workspace's `Cargo.toml`.
#[must_use]
pub fn root() -> PathBuf {
    // Cargo names the package's folder at run time; the one from compile time serves a bare start.
    let package =
        std::env::var_os("CARGO_MANIFEST_DIR").map_or_else(|| PathBuf::from(env!("CARGO_MANIFEST_DIR")), PathBuf::from);
    package.ancestors().nth(2).map_or_else(|| package.clone(), Path::to_path_buf)
}

/// The folder of the user interface.
#[must_use]
pub fn ui() -> PathBuf {
    root().join("ui")
}

/// What the verbs leave to be looked at: `target/NAME` in the checkout.
#[must_use]
pub fn left_behind(name: &str) -> PathBuf {
    root().join("target").join(name)
}

/// A fresh, empty folder `target/NAME`; what an earlier run left there is removed.
///
/// # Errors
///
/// Names the folder that could not be made or emptied.
pub fn emptied(name: &str) -> Result<PathBuf, String> {
    let folder = left_behind(name);
    if folder.exists() {
        std::fs::remove_dir_all(&folder).map_err(|why| format!("could not empty {}: {why}", folder.display()))?;
    }
    made(&folder)?;
    Ok(folder)
}

/// Makes a folder and those above it.
///
/// # Errors
///
/// Names the folder that could not be made.
pub fn made(folder: &Path) -> Result<(), String> {
    std::fs::create_dir_all(folder).map_err(|why| format!("could not make {}: {why}", folder.display()))
}

/// The folder with what cargo built: the one this program lies in, or its neighbour for `release`.
///
/// # Errors
///
/// Says that this program's own place is unknown.
pub fn built(profile: &str) -> Result<PathBuf, String> {
    let program = std::env::current_exe().map_err(|why| format!("could not find where this program lies: {why}"))?;
    program
        .parent()
        .and_then(Path::parent)
        .map(|target| target.join(profile))
        .ok_or_else(|| format!("{} has no folder around it", program.display()))
}

/// A built program by name.
///
/// # Errors
///
/// Says which program is missing and where it was looked for.
pub fn program(profile: &str, name: &str) -> Result<PathBuf, String> {
    let path = built(profile)?.join(name);
    if path.is_file() { Ok(path) } else { Err(format!("{} was not built", path.display())) }
}

/// The cargo that started us, set to work in the checkout.
#[must_use]
pub fn cargo() -> Command {
    let mut command = Command::new(std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into()));
    command.current_dir(root());
    command
}

/// The `npm` on the path, set to work in `ui/`.
#[must_use]
pub fn npm() -> Command {
    let mut command = Command::new("npm");
    command.current_dir(ui());
    command
}
