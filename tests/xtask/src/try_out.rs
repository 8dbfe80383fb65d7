//! The verb `try`: the app on an invented firm, for a person or, without a display, by itself.
//!
//! The debug build is used: it is what `test` builds as well, it takes a third of the time of a
//! release build, and it opens in under a second. The data folder is made anew under `target/try/`
//! and named to the app, so that the operator's own file is never touched.

use std::path::Path;
use std::process::Command;

use crate::set_up::{self, Wants};
use crate::{children, place};

/// Sets up, builds, and opens the window or drives it.
///
/// # Errors
///
/// Says what could not be done; when the visit is driven, also that it did not reach its record.
pub fn try_out() -> Result<(), String> {
    let has_display = ["DISPLAY", "WAYLAND_DISPLAY"]
        .iter()
        .any(|name| std::env::var_os(name).is_some_and(|display| !display.is_empty()));
    set_up::set_up(if has_display { Wants::Window } else { Wants::Driving })?;
    eprintln!("try: building (a first build takes some minutes)");
    children::run_aside(place::cargo().args(["build", "--workspace"]))?;
    let out = place::emptied("try")?;
    if has_display { open(&out) } else { drive(&out) }
}

fn open(out: &Path) -> Result<(), String> {
    let data = out.join("data");
    fill(&data)?;
    eprintln!("try: opening the window; the invented firm's file lies in {}", data.display());
    children::run(Command::new(place::program("debug", "evensward")?).env("EVENSWARD_DATA", &data))
}

fn drive(out: &Path) -> Result<(), String> {
    eprintln!("try: there is no display, so a whole visit is driven on a virtual one");
    children::run(
        Command::new(place::program("debug", "evensward-window")?)
            .args(["visit", "--app"])
            .arg(place::program("debug", "evensward")?)
            .arg("--serve")
            .arg(place::program("debug", "evensward-serve")?)
            .arg("--out")
            .arg(out),
    )
}

/// Fills a fresh data folder with the invented firm.
///
/// # Errors
///
/// Says that the folder could not be made or filled.
pub fn fill(data: &Path) -> Result<(), String> {
    place::made(data)?;
    let mut serve = Command::new(place::program("debug", "evensward-serve")?);
    serve.arg("--data").arg(data).arg("--load").arg(place::root().join("demo-data/firm.json"));
    children::ask(serve.arg("--load-only")).map(|_said| ())
}
