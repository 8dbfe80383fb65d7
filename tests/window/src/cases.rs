//! The cases run in the real window, each with a data folder of its own, and their count.
//!
//! A case that fails leaves a picture and the outline of what the screen showed.

use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::Instant;

use xtask::{children, place};

use crate::display::Size;
use crate::sought::like;
use crate::trouble::Trouble;
use crate::window::{Setting, Window};

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
const CASES: &[&str] = &["opens_on_the_round_without_complaint"];

async fn case(name: &str, window: &mut Window) -> Result<(), Trouble> {
    match name {
        "opens_on_the_round_without_complaint" => opens_without_complaint(window).await,
        unknown => Err(Trouble::Wrong(format!("there is no case {unknown}"))),
    }
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
        let end = in_a_window_of_its_own(name, programs, out).await;
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

async fn in_a_window_of_its_own(name: &str, programs: &Programs, out: &Path) -> Result<(), Trouble> {
    let data = out.join(name).join("data");
    if data.exists() {
        std::fs::remove_dir_all(&data).map_err(Trouble::with_file(&data))?;
    }
    fill(&programs.serve, &data)?;
    let setting = Setting { app: programs.app.clone(), data, size: Size::PHONE, dusk: false };
    let mut window = Window::open(setting).await?;
    let end = case(name, &mut window).await;
    if end.is_err() {
        // The case has failed already; a picture that cannot be taken must not hide why.
        let _shown = window.screenshot(&out.join(name).join("failed.png")).await;
    }
    end
}

async fn opens_without_complaint(window: &mut Window) -> Result<(), Trouble> {
    window.find(like("heading", "")).await?;
    no_complaints(window).await
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
