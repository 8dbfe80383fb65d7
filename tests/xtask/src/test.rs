//! The verb `test`: the one gate, the same for a person and for continuous integration.
//!
//! One selection (`--workspace`) and one feature set are used for building, linting and testing, so
//! that nothing is compiled a second time with other features.

use std::path::Path;
use std::process::Command;

use crate::counts::{self, Count};
use crate::lanes::{Lanes, Outcome};
use crate::set_up::{self, Wants};
use crate::{children, fuzz, place, reference};

/// How much to run.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Width {
    /// Format, lints and unit tests.
    Quick,
    /// Everything.
    Ci,
    /// Everything, with many more cases.
    Long,
}

/// Cases a property test runs in the long profile.
const N_CASES_LONG: &str = "10000";
/// What the drawn cases begin from outside the long profile.
const RNG_SEED: &str = "20261125";

/// Runs the lanes and prints the summary.
///
/// # Errors
///
/// Names the lanes that failed.
pub fn test(width: Width) -> Result<(), String> {
    let mut lanes = Lanes::default();
    // Even the unit tests build the shell, which wants the window's libraries and a built UI.
    let wants = if width == Width::Quick { Wants::Window } else { Wants::Driving };
    if !lanes.lane("set-up", || set_up::set_up(wants).and_then(|()| reference::set_up())) {
        return lanes.sum_up();
    }
    lanes.lane("format", format);
    lanes.lane("lints", lints);
    lanes.lane("UI lints", ui_lints);
    if width != Width::Quick {
        lanes.lane("build", || children::run(place::cargo().args(["build", "--workspace"])));
    }
    lanes.lane("Rust tests", || rust_tests(width));
    lanes.lane("UI unit tests", ui_unit_tests);
    if width != Width::Quick {
        lanes.lane("browser tests", || browser_tests(width));
        lanes.lane("real window", || real_window(width));
    }
    if width == Width::Long {
        lanes.lane("fuzz", fuzz::fuzz);
    }
    lanes.sum_up()
}

fn format() -> Result<(), String> {
    children::run(place::cargo().args(["fmt", "--all", "--check"]))
}

fn lints() -> Result<(), String> {
    children::run(place::cargo().args(["clippy", "--workspace", "--all-targets", "--", "--deny", "warnings"]))
}

fn ui_lints() -> Result<(), String> {
    children::run(place::npm().args(["run", "check"]))?;
    children::run(place::npm().args(["run", "lint"]))
}

/// The generated bindings are held fresh by a test of the companion, which is one of these.
fn rust_tests(width: Width) -> Outcome {
    let mut command = place::cargo();
    command.args(["test", "--workspace", "--no-fail-fast"]);
    if width == Width::Quick {
        command.args(["--lib", "--bins"]);
    }
    widened(&mut command, width);
    counted(children::run_and_read(&mut command), counts::of_cargo)
}

fn ui_unit_tests() -> Outcome {
    let report = place::left_behind("test").join("vitest.json");
    let mut command = place::npm();
    command.args(["test", "--", "--reporter=default", "--reporter=json"]);
    command.arg(format!("--outputFile.json={}", report.display()));
    with_report(&report, &mut command, counts::of_vitest)
}

fn browser_tests(width: Width) -> Outcome {
    let report = place::left_behind("test").join("browser.json");
    let mut command = place::npm();
    command.args(["run", "browser", "--", "--reporter=list,json"]);
    command.env("PLAYWRIGHT_JSON_OUTPUT_NAME", &report);
    match place::program("debug", "evensward-serve") {
        Ok(serve) => command.env("EVENSWARD_SERVE", serve),
        Err(why) => return Err(why).into(),
    };
    widened(&mut command, width);
    with_report(&report, &mut command, counts::of_playwright)
}

fn real_window(width: Width) -> Outcome {
    let command = || -> Result<Command, String> {
        let mut command = Command::new(place::program("debug", "evensward-window")?);
        command
            .arg("test")
            .arg("--app")
            .arg(place::program("debug", "evensward")?)
            .arg("--serve")
            .arg(place::program("debug", "evensward-serve")?)
            .arg("--out")
            .arg(place::emptied("test/window")?);
        widened(&mut command, width);
        Ok(command)
    };
    match command() {
        Ok(mut command) => counted(children::run_and_read(&mut command), counts::of_plain_line),
        Err(why) => Err(why).into(),
    }
}

/// Tells the tests of the long profile to run longer, or many more cases, drawn anew each time; the others draw the same
/// ones every time, so that a red gate can be run again.
fn widened(command: &mut Command, width: Width) {
    if width == Width::Long {
        command.env("EVENSWARD_LONG", "1").env("PROPTEST_CASES", N_CASES_LONG);
    } else {
        command.env("PROPTEST_RNG_SEED", RNG_SEED);
    }
}

fn counted(ran: Result<(String, Result<(), String>), String>, count: impl Fn(&str) -> Option<Count>) -> Outcome {
    match ran {
        Ok((text, end)) => held_to_its_count(count(&text), end),
        Err(why) => Err(why).into(),
    }
}

/// Runs a runner that writes a JSON report; one left by an earlier run must not be read as this one's.
fn with_report(report: &Path, command: &mut Command, count: impl Fn(&serde_json::Value) -> Option<Count>) -> Outcome {
    if report.exists()
        && let Err(why) = std::fs::remove_file(report)
    {
        return Err(format!("could not remove {}: {why}", report.display())).into();
    }
    let end = place::made(&place::left_behind("test")).and_then(|()| children::run(command));
    let count = std::fs::read(report)
        .ok()
        .and_then(|bytes| serde_json::from_slice(&bytes).ok())
        .and_then(|value| count(&value));
    held_to_its_count(count, end)
}

fn held_to_its_count(count: Option<Count>, end: Result<(), String>) -> Outcome {
    let ran_something = count.is_some_and(|count| count.n_passed + count.n_failed > 0);
    let end = end.and_then(|()| {
        if ran_something { Ok(()) } else { Err("The runner did not say that it ran any test.".to_owned()) }
    });
    Outcome { count, end }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_runner_that_ran_nothing_has_failed() {
        assert!(held_to_its_count(None, Ok(())).end.is_err());
        assert!(held_to_its_count(Some(Count::default()), Ok(())).end.is_err());
        let one = Count { n_passed: 1, n_failed: 0 };
        assert!(held_to_its_count(Some(one), Ok(())).end.is_ok());
    }
}
