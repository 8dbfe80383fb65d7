//! Runs the fuzz targets of the importers for a while, from the corpus that is kept beside them.
//!
//! What is found new goes to `target/fuzz/found/`, and a case that fails to `target/fuzz/failed/`: nothing is written
//! into the checkout. A failed case that was mended is put into the kept corpus by hand, under a name that says what it is.

use std::process::Command;

use crate::{children, place};

/// The fuzz targets, as they are called in `src-tauri/crates/exchange/fuzz/`.
const TARGETS: &[&str] = &["geojson", "gpx"];
/// How long each target is run, in seconds.
const LASTS_S: u32 = 60;
/// An input that takes longer than this has hung, in seconds.
const LONGEST_S: u32 = 10;
/// An input that takes more memory than this has run away, in mebibytes.
const MOST_MEMORY_MIB: u32 = 2_048;

/// Installs `cargo-fuzz` where it is missing, and runs every target.
///
/// # Errors
///
/// Says which target failed, and where the failing case lies.
pub fn fuzz() -> Result<(), String> {
    install()?;
    let folder = place::root().join("src-tauri/crates/exchange/fuzz");
    let build = place::left_behind("fuzz/build");
    let failed = place::left_behind("fuzz/failed");
    place::made(&failed)?;
    for target in TARGETS {
        let found = place::left_behind("fuzz/found").join(target);
        place::made(&found)?;
        let mut command = place::cargo();
        // The sanitizer's flags are not open to a released compiler otherwise.
        command.env("RUSTC_BOOTSTRAP", "1").args(["fuzz", "run", "--fuzz-dir"]).arg(&folder);
        command.arg("--target-dir").arg(&build).arg(target).arg(&found).arg(folder.join("corpus").join(target));
        command.arg("--").args([
            format!("-max_total_time={LASTS_S}"),
            format!("-timeout={LONGEST_S}"),
            format!("-rss_limit_mb={MOST_MEMORY_MIB}"),
            "-print_final_stats=1".to_owned(),
            format!("-artifact_prefix={}/{target}-", failed.display()),
        ]);
        children::run(&mut command)
            .map_err(|why| format!("{why}\nThe fuzz target {target} failed; its case lies in {}.", failed.display()))?;
    }
    Ok(())
}

fn install() -> Result<(), String> {
    if children::ask(Command::new("cargo-fuzz").arg("--version")).is_ok() {
        eprintln!("set-up: cargo-fuzz is there");
        return Ok(());
    }
    eprintln!("set-up: installing cargo-fuzz");
    children::run_aside(place::cargo().args(["install", "--locked", "cargo-fuzz"]))
}
