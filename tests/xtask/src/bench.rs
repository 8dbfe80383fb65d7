//! The verb `bench`: speed and size of release builds, as JSON on standard output.
//!
//! Ratios are taken against something measured in the same run on the same machine, since bare
//! times say little about another's. These are figures to look at, not a test that can fail.

use std::process::Command;

use serde_json::{Map, Value, json};

use crate::set_up::{self, Wants};
use crate::{children, place, reference};

/// How often each program is started.
const N_STARTS: &str = "9";

/// What to measure.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Part {
    /// Everything.
    All,
    /// Taps until they are committed, and replay.
    Journal,
    /// Measuring and planning, beside GEOS.
    Planning,
    /// Taps in the real window until they are painted, and the memory of a long walk.
    Walk,
    /// Starting the app, and an empty window beside it.
    Start,
    /// Sizes of the program and of the UI's script.
    Sizes,
}

/// Builds for release, measures, and prints one JSON object.
///
/// # Errors
///
/// Says which measurement could not be taken.
pub fn bench(part: Part) -> Result<(), String> {
    let is_wanted = |one| part == Part::All || part == one;
    set_up::set_up(Wants::Driving)?;
    if is_wanted(Part::Planning) {
        reference::set_up()?;
    }
    eprintln!("bench: building for release (some minutes when it is the first time)");
    if [Part::Walk, Part::Start, Part::Sizes].into_iter().any(is_wanted) {
        let app = ["build", "--release", "--package", "evensward", "--bin", "evensward", "--example", "empty_window"];
        children::run_aside(place::cargo().args(app))?;
        children::run_aside(place::cargo().args(["build", "--workspace"]))?;
    }
    if [Part::Journal, Part::Planning].into_iter().any(is_wanted) {
        let bench = ["build", "--release", "--package", "evensward-tests", "--bin", "bench"];
        children::run_aside(place::cargo().args(bench))?;
    }
    let mut report = Map::new();
    if is_wanted(Part::Journal) {
        eprintln!("bench: taps and replay");
        report.insert("journal".to_owned(), figures_of("journal")?);
    }
    if is_wanted(Part::Planning) {
        eprintln!("bench: measuring and planning, beside GEOS");
        report.insert("planning".to_owned(), figures_of("planning")?);
    }
    if is_wanted(Part::Walk) {
        eprintln!("bench: taps in the real window beside an empty one, then a long walk (some ten minutes)");
        report.insert("walk".to_owned(), walk()?);
    }
    if is_wanted(Part::Start) {
        eprintln!("bench: starting the app and an empty window, {N_STARTS} times each");
        report.insert("start".to_owned(), start()?);
    }
    if is_wanted(Part::Sizes) {
        eprintln!("bench: sizes");
        report.append(&mut sizes()?);
    }
    println!("{:#}", Value::Object(report));
    Ok(())
}

fn figures_of(name: &str) -> Result<Value, String> {
    let bench = place::program("release", "bench")?;
    answer(Command::new(bench).arg(name).arg(place::emptied(&format!("bench/{name}"))?))
}

fn walk() -> Result<Value, String> {
    let mut command = Command::new(place::program("debug", "evensward-window")?);
    command.args(["taps", "--app"]).arg(place::program("release", "evensward")?);
    command.arg("--serve").arg(place::program("debug", "evensward-serve")?);
    answer(command.arg("--empty").arg(place::program("release", "examples/empty_window")?))
}

fn start() -> Result<Value, String> {
    let app = starts("evensward", true)?;
    let empty = starts("examples/empty_window", false)?;
    let ratio = median(&app)? / median(&empty)?;
    Ok(json!({"app_ms": app, "empty_window_ms": empty, "ratio": ratio, "ratio_aim": 1.3}))
}

fn sizes() -> Result<Map<String, Value>, String> {
    let program = place::program("release", "evensward")?;
    let program_bytes =
        std::fs::metadata(&program).map_err(|why| format!("could not measure {}: {why}", program.display()))?.len();
    Ok(Map::from_iter([
        ("ui_script_gzipped_bytes".to_owned(), json!(script_bytes()?)),
        ("ui_script_gzipped_bytes_aim".to_owned(), json!(120_000)),
        ("program_bytes".to_owned(), json!(program_bytes)),
        ("program_bytes_aim".to_owned(), json!(15_000_000)),
    ]))
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
