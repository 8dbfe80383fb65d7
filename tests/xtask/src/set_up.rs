//! The set-up that every verb shares. It may be run any number of times and does only what is owed.
//!
//! On Debian and Ubuntu it installs missing system packages by name and says what for; elsewhere it
//! prints the list and stops, for it must not guess at another system's names. The UI's packages are
//! installed only when the lock file changed, and the UI is built only when its sources did: both
//! are told by a hash kept in `target/set-up/`. All it says goes to standard error, since a verb's own
//! answer may be read from standard output.

use std::hash::{DefaultHasher, Hasher as _};
use std::path::Path;
use std::process::Command;

use crate::{children, place};

/// A verb's wants decide which system packages it needs.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Wants {
    /// To build and open the window.
    Window,
    /// Also to drive the window and a browser on a display of its own.
    Driving,
}

/// A system package and what it is for.
pub(crate) struct SystemPackage {
    name: &'static str,
    what_for: &'static str,
}

pub(crate) const fn package(name: &'static str, what_for: &'static str) -> SystemPackage {
    SystemPackage { name, what_for }
}

const TO_BUILD: &[SystemPackage] = &[
    package("build-essential", "the C compiler that builds SQLite"),
    package("pkg-config", "finds the libraries below"),
    package("libgtk-3-dev", "the window"),
    package("libwebkit2gtk-4.1-dev", "the web view in the window"),
    package("librsvg2-dev", "the window's icon"),
    package("libssl-dev", "wanted by the web view's headers"),
];

const TO_DRIVE: &[SystemPackage] = &[
    package("xvfb", "a display where there is none"),
    package("webkit2gtk-driver", "presses the buttons in the real window"),
    package("chromium", "browser tests and screenshots"),
    package("imagemagick", "the contact sheet of screenshots"),
    package("fonts-dejavu-core", "signs that the app's own typeface lacks"),
];

/// The oldest Node that builds the user interface.
const NODE_AT_LEAST: u32 = 20;

/// Brings the machine and `ui/` to where a verb can start.
///
/// # Errors
///
/// Says what is missing and what to do about it.
pub fn set_up(wants: Wants) -> Result<(), String> {
    let driving = if wants == Wants::Driving { TO_DRIVE } else { &[] };
    system_packages(TO_BUILD.iter().chain(driving))?;
    node()?;
    npm_packages()?;
    build_ui()
}

/// Installs those of these packages that are missing, after saying what each is for.
pub(crate) fn system_packages(wanted: impl IntoIterator<Item = &'static SystemPackage>) -> Result<(), String> {
    let wanted: Vec<&SystemPackage> = wanted.into_iter().collect();
    if !has_apt() {
        return elsewhere(&wanted);
    }
    let missing: Vec<&SystemPackage> = wanted.iter().copied().filter(|package| !is_installed(package.name)).collect();
    if missing.is_empty() {
        eprintln!("set-up: {} system packages are there", wanted.len());
        return Ok(());
    }
    eprintln!("set-up: installing these system packages:");
    for package in &missing {
        eprintln!("  {:<24} {}", package.name, package.what_for);
    }
    run_as_root(&["apt-get", "update"])?;
    let mut install = vec!["apt-get", "install", "--yes", "--no-install-recommends"];
    install.extend(missing.iter().map(|package| package.name));
    run_as_root(&install)
}

fn has_apt() -> bool {
    Path::new("/usr/bin/apt-get").exists() && Path::new("/usr/bin/dpkg-query").exists()
}

/// Away from Debian the names differ, so the person is told and the verb goes on only once the person
/// says that what stands for them was installed.
fn elsewhere(wanted: &[&SystemPackage]) -> Result<(), String> {
    let mut list = String::from(
        "This is neither Debian nor Ubuntu. Install what stands for these Debian packages, then run \
         this again with EVENSWARD_PACKAGES_ARE_THERE=1:\n",
    );
    for package in wanted {
        list.push_str(&format!("  {:<24} {}\n", package.name, package.what_for));
    }
    if std::env::var_os("EVENSWARD_PACKAGES_ARE_THERE").is_some() {
        eprintln!("set-up: system packages are taken to be there, as you say");
        return Ok(());
    }
    Err(list)
}

fn is_installed(name: &str) -> bool {
    children::ask(Command::new("dpkg-query").args(["-W", "-f", "${db:Status-Status}", name]))
        .is_ok_and(|status| status.trim() == "installed")
}

fn run_as_root(words: &[&str]) -> Result<(), String> {
    let mut command = if rustix::process::geteuid().is_root() {
        Command::new("env")
    } else {
        let mut sudo = Command::new("sudo");
        sudo.arg("env");
        sudo
    };
    command.arg("DEBIAN_FRONTEND=noninteractive").args(words);
    command.stdout(std::io::stderr());
    children::run_with_terminal(&mut command)
}

fn node() -> Result<(), String> {
    let what_to_do = format!("Install Node {NODE_AT_LEAST} or newer (it brings npm), then run this again.");
    let version = children::ask(Command::new("node").arg("--version")).map_err(|why| format!("{why}\n{what_to_do}"))?;
    match major(&version) {
        Some(major) if major >= NODE_AT_LEAST => {
            eprintln!("set-up: Node {} is there", version.trim());
            Ok(())
        }
        _ => Err(format!("Node here is {}. {what_to_do}", version.trim())),
    }
}

/// The first number of `v20.20.2`.
fn major(version: &str) -> Option<u32> {
    version.trim().trim_start_matches('v').split('.').next()?.parse().ok()
}

fn npm_packages() -> Result<(), String> {
    let lock = place::ui().join("package-lock.json");
    let mut hasher = DefaultHasher::new();
    add_file(&mut hasher, &lock)?;
    let stamp = Stamp::new("npm", hasher.finish());
    if stamp.holds() && place::ui().join("node_modules").is_dir() {
        eprintln!("set-up: the UI's packages are there");
        return Ok(());
    }
    eprintln!("set-up: installing the UI's packages (npm ci)");
    children::run_aside(place::npm().args(["ci", "--no-audit", "--no-fund"]))?;
    stamp.set()
}

fn build_ui() -> Result<(), String> {
    let mut hasher = DefaultHasher::new();
    add_folder(&mut hasher, &place::ui())?;
    let stamp = Stamp::new("ui", hasher.finish());
    if stamp.holds() && place::ui().join("dist/index.html").is_file() {
        eprintln!("set-up: the UI is built");
        return Ok(());
    }
    eprintln!("set-up: building the UI");
    children::run_aside(place::npm().args(["run", "build"]))?;
    stamp.set()
}

/// What is made from `ui/` rather than written, and so does not call for a new build.
const MADE: &[&str] = &["node_modules", "dist", "test-results", "playwright-report", "browser"];

fn add_folder(hasher: &mut DefaultHasher, folder: &Path) -> Result<(), String> {
    let unreadable = |why| format!("could not read {}: {why}", folder.display());
    let mut paths = Vec::new();
    for entry in std::fs::read_dir(folder).map_err(unreadable)? {
        paths.push(entry.map_err(unreadable)?.path());
    }
    paths.sort();
    for path in paths {
        let name = path.file_name().unwrap_or_default();
        if MADE.iter().any(|made| name == *made) {
            continue;
        }
        hasher.write(name.as_encoded_bytes());
        if path.is_dir() {
            add_folder(hasher, &path)?;
        } else {
            add_file(hasher, &path)?;
        }
    }
    Ok(())
}

pub(crate) fn add_file(hasher: &mut DefaultHasher, path: &Path) -> Result<(), String> {
    let bytes = std::fs::read(path).map_err(|why| format!("could not read {}: {why}", path.display()))?;
    hasher.write_usize(bytes.len());
    hasher.write(&bytes);
    Ok(())
}

/// A hash kept on disk: when it is the same, the step it stands for need not be done again.
pub(crate) struct Stamp {
    path: std::path::PathBuf,
    hash: String,
}

impl Stamp {
    pub(crate) fn new(step: &str, hash: u64) -> Self {
        Self { path: place::left_behind("set-up").join(step), hash: format!("{hash:016x}") }
    }

    pub(crate) fn holds(&self) -> bool {
        std::fs::read_to_string(&self.path).is_ok_and(|kept| kept == self.hash)
    }

    pub(crate) fn set(&self) -> Result<(), String> {
        place::made(&place::left_behind("set-up"))?;
        std::fs::write(&self.path, &self.hash).map_err(|why| format!("could not write {}: {why}", self.path.display()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_major_version_of_node_is_read() {
        assert_eq!(major("v20.20.2\n"), Some(20));
        assert_eq!(major("v9.1.0"), Some(9));
        assert_eq!(major("nonsense"), None);
    }

    #[test]
    fn a_changed_source_changes_the_stamp() {
        let folder = std::env::temp_dir().join(format!("evensward-stamp-{}", std::process::id()));
        std::fs::create_dir_all(folder.join("src")).unwrap();
        let hash = || {
            let mut hasher = DefaultHasher::new();
            add_folder(&mut hasher, &folder).unwrap();
            hasher.finish()
        };
        std::fs::write(folder.join("src/a.ts"), "one").unwrap();
        let first = hash();
        assert_eq!(hash(), first);
        std::fs::create_dir_all(folder.join("dist")).unwrap();
        std::fs::write(folder.join("dist/a.js"), "made").unwrap();
        assert_eq!(hash(), first, "what the build makes does not call for a build");
        std::fs::write(folder.join("src/a.ts"), "two").unwrap();
        assert_ne!(hash(), first);
        std::fs::remove_dir_all(folder).unwrap();
    }
}
