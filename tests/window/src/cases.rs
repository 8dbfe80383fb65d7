//! The cases run in the real window, each with a data folder of its own, and their count.
//!
//! A case that fails says what the screen showed instead.

use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::{Duration, Instant};

use xtask::{children, place};

use crate::display::Size;
use crate::drive::Manner;
use crate::sought::the;
use crate::trouble::Trouble;
use crate::visit;
use crate::window::{Setting, Window};

/// A draft is written this soon after the last key (the promise is 300 ms), with room for a busy machine.
const DRAFT_KEPT_WITHIN: Duration = Duration::from_millis(900);

/// The programs under test.
#[derive(Clone, Debug)]
pub struct Programs {
    /// The app.
    pub app: PathBuf,
    /// The loopback server, which fills a data folder with the invented firm.
    pub serve: PathBuf,
}

/// Fills a fresh data folder with the invented firm.
///
/// # Errors
///
/// Says that the folder could not be made or filled.
pub fn fill(serve: &Path, data: &Path) -> Result<(), Trouble> {
    std::fs::create_dir_all(data).map_err(Trouble::with_file(data))?;
    let firm = place::root().join("demo-data/firm.json");
    let mut command = Command::new(serve);
    command.arg("--data").arg(data).arg("--load").arg(firm).arg("--load-only");
    children::ask(&mut command).map(|_said| ()).map_err(Trouble::Process)
}

/// The cases by name, in the order they are run.
const CASES: &[&str] = &[
    "it_opens_on_the_lawns_without_complaint",
    "it_carries_on_from_a_half_typed_lawn_after_a_kill",
    "a_whole_visit_reaches_its_record_on_a_small_phone",
    "a_whole_visit_survives_a_kill_after_every_step",
];

/// Kills that the last case must have survived at least.
const N_KILLS_LEAST: usize = 20;

async fn case(name: &str, programs: &Programs, folder: &Path) -> Result<(), Trouble> {
    let Programs { app, serve } = programs;
    match name {
        "it_opens_on_the_lawns_without_complaint" => {
            let window = open(programs, folder, Size::PHONE).await?;
            window.find(the("heading", "Lawns")).await?;
            no_complaints(&window).await
        }
        "it_carries_on_from_a_half_typed_lawn_after_a_kill" => {
            let window = open(programs, folder, Size::DESK).await?;
            half_typed(window).await
        }
        "a_whole_visit_reaches_its_record_on_a_small_phone" => {
            visit::drive_whole(app, serve, folder, Size::SMALL_PHONE, Manner::Pictures).await.map(|_drive| ())
        }
        "a_whole_visit_survives_a_kill_after_every_step" => {
            let drive = visit::drive_whole(app, serve, folder, Size::PHONE, Manner::Kills).await?;
            if drive.n_kills() >= N_KILLS_LEAST {
                Ok(())
            } else {
                Err(Trouble::Wrong(format!("there were only {} kills on the way", drive.n_kills())))
            }
        }
        unknown => Err(Trouble::Wrong(format!("there is no case {unknown}"))),
    }
}

async fn open(programs: &Programs, folder: &Path, size: Size) -> Result<Window, Trouble> {
    let data = folder.join("data");
    fill(&programs.serve, &data)?;
    Window::open(Setting { app: programs.app.clone(), data, size, dusk: false }).await
}

/// A form that was being typed when the phone died is found again as it was.
async fn half_typed(mut window: Window) -> Result<(), Trouble> {
    window.click(the("button", "Measure a new lawn")).await?;
    let name = the("textbox", "What you call this lawn");
    window.type_in(name, "Half a lawn (invented)").await?;
    window.type_in(the("textbox", "Width, along the front"), "7.5").await?;
    // What was typed is kept within 300 ms; this waits for the trade's answer to it, which comes no sooner.
    window.type_in(the("textbox", "Length, away from the front"), "4").await?;
    window.wait_for_words("30").await?;
    tokio::time::sleep(DRAFT_KEPT_WITHIN).await;
    window.kill().await?;
    window.reopen().await?;
    for (label, typed) in [
        ("What you call this lawn", "Half a lawn (invented)"),
        ("Width, along the front", "7.5"),
        ("Length, away from the front", "4"),
    ] {
        window.wait_for_value(the("textbox", label), typed).await?;
    }
    no_complaints(&window).await
}

/// Runs the cases whose names hold one of these words (all without any) and closes with
/// `N passed, N failed`.
///
/// # Errors
///
/// Says which cases failed.
pub async fn run(programs: &Programs, out: &Path, words: &[String]) -> Result<(), Trouble> {
    std::fs::create_dir_all(out).map_err(Trouble::with_file(out))?;
    let chosen = CASES.iter().filter(|name| words.is_empty() || words.iter().any(|word| name.contains(word.as_str())));
    let mut n_passed = 0;
    let mut failed = Vec::new();
    for name in chosen {
        let started_at = Instant::now();
        let end = case_in_a_fresh_folder(name, programs, &out.join(name)).await;
        let seconds = started_at.elapsed().as_secs_f64();
        match end {
            Ok(()) => {
                n_passed += 1;
                println!("test {name} ... ok ({seconds:.1} s)");
            }
            Err(why) => {
                failed.push(*name);
                println!("test {name} ... FAILED ({seconds:.1} s)\n{why}");
            }
        }
    }
    println!("{n_passed} passed, {} failed", failed.len());
    if failed.is_empty() {
        Ok(())
    } else {
        Err(Trouble::Wrong(format!("failed in the real window: {}", failed.join(", "))))
    }
}

async fn case_in_a_fresh_folder(name: &str, programs: &Programs, folder: &Path) -> Result<(), Trouble> {
    if folder.exists() {
        std::fs::remove_dir_all(folder).map_err(Trouble::with_file(folder))?;
    }
    std::fs::create_dir_all(folder).map_err(Trouble::with_file(folder))?;
    case(name, programs, folder).await
}

/// Holds that the page has complained of nothing.
///
/// # Errors
///
/// Says what the page complained of.
pub async fn no_complaints(window: &Window) -> Result<(), Trouble> {
    let complaints = window.complaints().await?;
    if complaints.is_empty() {
        Ok(())
    } else {
        Err(Trouble::Wrong(format!("the page complained: {}", complaints.join("; "))))
    }
}
