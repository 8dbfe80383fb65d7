//! The reference libraries that our geometry is held against, and the real outlines and tracks it is tried on.
//!
//! All of it lies in `target/reference/`: a Python environment of its own with the pinned versions of
//! `tests/reference/requirements.txt`, and what `tests/reference/prepare.py` unpacks from the packages of
//! `sources.txt` and from the crate `gpx`. Made once, and again only when one of those files changed.

use std::hash::{DefaultHasher, Hasher as _};
use std::path::{Path, PathBuf};
use std::process::Command;

use serde_json::Value;

use crate::set_up::{Stamp, SystemPackage, add_file, package, system_packages};
use crate::{children, place};

const PACKAGES: &[SystemPackage] = &[
    package("python3", "runs the reference libraries"),
    package("python3-venv", "keeps them apart from the system's own"),
];

/// What the hash is made of, in `tests/reference/`.
const MADE_FROM: &[&str] = &["requirements.txt", "sources.txt", "prepare.py"];

/// Brings the reference libraries and the real outlines to `target/reference/`.
///
/// # Errors
///
/// Says what could not be installed or unpacked.
pub fn set_up() -> Result<(), String> {
    let from = place::root().join("tests/reference");
    let mut hasher = DefaultHasher::new();
    for name in MADE_FROM {
        add_file(&mut hasher, &from.join(name))?;
    }
    let tracks = tracks_of_crate()?;
    hasher.write(tracks.as_os_str().as_encoded_bytes());
    let stamp = Stamp::new("reference", hasher.finish());
    let folder = place::left_behind("reference");
    // A link to a Python that was taken away is no file.
    if stamp.holds() && python(&folder).is_file() && folder.join("outlines.json").is_file() {
        eprintln!("set-up: the reference libraries are there");
        return Ok(());
    }
    eprintln!("set-up: installing the reference libraries");
    system_packages(PACKAGES)?;
    let folder = place::emptied("reference")?;
    let downloads = folder.join("downloads");
    children::run_aside(Command::new("python3").args(["-m", "venv"]).arg(folder.join("venv")))?;
    let pip = || {
        let mut command = Command::new(python(&folder));
        command.args(["-m", "pip", "--quiet", "--disable-pip-version-check"]);
        command
    };
    let requirements = from.join("requirements.txt");
    children::run_aside(pip().args(["install", "--only-binary", ":all:", "--requirement"]).arg(requirements))?;
    let sources = from.join("sources.txt");
    children::run_aside(
        pip().args(["download", "--no-deps", "--dest"]).arg(&downloads).arg("--requirement").arg(sources),
    )?;
    children::run_aside(Command::new(python(&folder)).arg(from.join("prepare.py")).arg(&downloads).arg(&folder))?;
    copy_all(&tracks, &folder.join("gpx/crate"))?;
    stamp.set()
}

fn python(folder: &Path) -> PathBuf {
    folder.join("venv/bin/python")
}

/// The folder with the devices' tracks that the crate `gpx` carries for its own tests.
fn tracks_of_crate() -> Result<PathBuf, String> {
    let text = children::ask(place::cargo().args(["metadata", "--format-version", "1", "--locked"]))?;
    let metadata: Value =
        serde_json::from_str(&text).map_err(|why| format!("could not read what cargo says of the packages: {why}"))?;
    let packages = metadata.get("packages").and_then(Value::as_array).into_iter().flatten();
    packages
        .filter(|package| package.get("name").and_then(Value::as_str) == Some("gpx"))
        .filter_map(|package| Path::new(package.get("manifest_path")?.as_str()?).parent())
        .map(|folder| folder.join("tests/fixtures"))
        .find(|tracks| tracks.is_dir())
        .ok_or_else(|| "the crate `gpx` with its tests/fixtures is not among the packages".to_owned())
}

fn copy_all(from: &Path, to: &Path) -> Result<(), String> {
    place::made(to)?;
    let entries = std::fs::read_dir(from).map_err(|why| format!("could not look into {}: {why}", from.display()))?;
    for entry in entries {
        let entry = entry.map_err(|why| format!("could not look into {}: {why}", from.display()))?;
        std::fs::copy(entry.path(), to.join(entry.file_name()))
            .map_err(|why| format!("could not copy {}: {why}", entry.path().display()))?;
    }
    Ok(())
}
