//! The verb `bench`: speed and size of release builds, as JSON on standard output.
//!
//! Ratios are taken against something measured in the same run on the same machine, since bare
//! times say little about another's. These are figures to look at, not a test that can fail.

use std::process::Command;

use serde_json::{Value, json};

use crate::set_up::{self, Wants};
use crate::{children, place, reference};

/// How often each program is started.
const N_STARTS: &str = "9";

/// Builds for release, measures, and prints one JSON object.
///
/// # Errors
///
/// Says which measurement could not be taken.
pub fn bench() -> Result<(), String> {
    set_up::set_up(Wants::Driving)?;
    reference::set_up()?;
    eprintln!("bench: building for release (some minutes when it is the first time)");
    children::run_aside(place::cargo().args([
        "build",
        "--release",
        "--package",
        "evensward",
        "--bin",
        "evensward",
        "--example",
        "empty_window",
    ]))?;
    children::run_aside(place::cargo().args(["build", "--release", "--package", "evensward-tests", "--bin", "bench"]))?;
    children::run_aside(place::cargo().args(["build", "--workspace"]))?;

    eprintln!("bench: taps and replay");
    let bench = place::program("release", "bench")?;
    let journal = answer(Command::new(&bench).arg("journal").arg(place::emptied("bench/journal")?))?;
    eprintln!("bench: measuring and planning, beside GEOS");
    let planning = answer(Command::new(&bench).arg("planning").arg(place::emptied("bench/planning")?))?;
    eprintln!("bench: starting the app and an empty window, {N_STARTS} times each");
    let app = starts("evensward", true)?;
    let empty = starts("examples/empty_window", false)?;
    eprintln!("bench: sizes");
    let program = place::program("release", "evensward")?;
    let program_bytes =
        std::fs::metadata(&program).map_err(|why| format!("could not measure {}: {why}", program.display()))?.len();
    let report = json!({
        "journal": journal,
        "planning": planning,
        "start": {
            "app_ms": app,
            "empty_window_ms": empty,
            "ratio": median(&app)? / median(&empty)?,
            "ratio_aim": 1.3,
        },
        "ui_script_gzipped_bytes": script_bytes()?,
        "ui_script_gzipped_bytes_aim": 120_000,
        "program_bytes": program_bytes,
        "program_bytes_aim": 15_000_000,
    });
    println!("{report:#}");
    Ok(())
}

/// The JSON that a program answers on standard output.
fn answer(command: &mut Command) -> Result<Value, String> {
    let text = children::ask(command)?;
    serde_json::from_str(&text).map_err(|why| format!("no figures in \"{}\": {why}", text.trim()))
}

fn starts(program: &str, is_filled: bool) -> Result<Vec<f64>, String> {
    let mut command = Command::new(place::program("debug", "evensward-window")?);
    command.args(["start", "--runs", N_STARTS, "--app"]).arg(place::program("release", program)?);
    if is_filled {
        command.arg("--serve").arg(place::program("debug", "evensward-serve")?);
    }
    let report = answer(&mut command)?;
    let times = report.get("start_ms").and_then(Value::as_array).into_iter().flatten();
    Ok(times.filter_map(Value::as_f64).collect())
}

/// The middle figure, or the mean of the two in the middle.
fn median(figures: &[f64]) -> Result<f64, String> {
    let mut sorted = figures.to_vec();
    sorted.sort_by(f64::total_cmp);
    let middle = |idx: usize| sorted.get(idx).copied().ok_or("nothing was measured");
    let half = sorted.len() / 2;
    if sorted.len() % 2 == 1 {
        Ok(middle(half)?)
    } else {
        Ok(f64::midpoint(middle(half.wrapping_sub(1))?, middle(half)?))
    }
}

/// All scripts that the UI's build made, each gzipped as a server would.
fn script_bytes() -> Result<u64, String> {
    let folder = place::ui().join("dist/assets");
    let mut n_bytes = 0;
    let entries =
        std::fs::read_dir(&folder).map_err(|why| format!("could not look into {}: {why}", folder.display()))?;
    for entry in entries.flatten() {
        if entry.path().extension().is_some_and(|ending| ending == "js") {
            let mut gzip = Command::new("gzip");
            gzip.args(["-9", "--stdout"]).arg(entry.path());
            n_bytes += children::ask_bytes(&mut gzip)?.len() as u64;
        }
    }
    Ok(n_bytes)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_median_is_the_middle_figure() {
        assert_eq!(median(&[3.0, 1.0, 2.0]), Ok(2.0));
        assert_eq!(median(&[4.0, 1.0, 2.0, 3.0]), Ok(2.5));
        assert!(median(&[]).is_err());
    }
}
