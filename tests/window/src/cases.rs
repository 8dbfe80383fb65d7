//! The cases run in the real window, each with a data folder of its own, and their count.
//!
//! A case that fails says what the screen showed instead.

use std::cell::{Cell, RefCell};
use std::collections::VecDeque;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::{Duration, Instant};

use xtask::{children, place};

use crate::display::Size;
use crate::drive::Manner;
use crate::hand::Hand;
use crate::kills;
use crate::prepared::Prepared;
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

/// The cases by name, in the order they are begun: the long ones first.
const CASES: &[&str] = &[
    "a_whole_visit_survives_a_kill_after_every_step",
    "a_whole_visit_by_the_keyboard_alone",
    "a_whole_visit_by_the_pointer_alone_on_a_small_phone",
    "from_the_first_fill_to_the_signature_by_a_clicker_alone",
    "random_taps_survive_kills_at_random_moments",
    "it_carries_on_from_a_half_typed_lawn_after_a_kill",
    "it_opens_on_the_lawns_without_complaint",
];

/// Kills that a drive which is killed after every step must have survived at least.
const N_KILLS_LEAST: usize = 20;
/// Kills amid random taps: a few, far apart, so that they come all along a visit.
const FEW_KILLS: kills::Amount = kills::Amount { n_kills: 6, n_between: 10, seed: 20_261_201 };
/// The same in the long profile, from another seed each time.
const N_KILLS_LONG: usize = 100;
const N_BETWEEN_LONG: usize = 2;

/// What the cases of a run share.
struct Run<'a> {
    programs: &'a Programs,
    out: &'a Path,
    prepared: Prepared,
}

async fn case(name: &str, run: &Run<'_>, folder: &Path) -> Result<(), Trouble> {
    let Run { programs, out, prepared } = run;
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
        "a_whole_visit_by_the_pointer_alone_on_a_small_phone" => {
            let (size, manner) = (Size::SMALL_PHONE, Manner::Pictures);
            visit::drive_whole(programs, folder, size, manner, Hand::Pointer).await.map(|_drive| ())
        }
        "a_whole_visit_by_the_keyboard_alone" => {
            let (size, manner) = (Size::PHONE, Manner::Onward);
            visit::drive_whole(programs, folder, size, manner, Hand::Keyboard).await.map(|_drive| ())
        }
        "from_the_first_fill_to_the_signature_by_a_clicker_alone" => {
            let window = prepared.open(programs, out, folder, Size::PHONE).await?;
            visit::drive_by_clicker(window, folder).await.map(|_drive| ())
        }
        "a_whole_visit_survives_a_kill_after_every_step" => {
            let drive = visit::drive_whole(programs, folder, Size::PHONE, Manner::Kills, Hand::Pointer).await?;
            if drive.n_kills() >= N_KILLS_LEAST {
                Ok(())
            } else {
                Err(Trouble::Wrong(format!("there were only {} kills on the way", drive.n_kills())))
            }
        }
        "random_taps_survive_kills_at_random_moments" => {
            let drawn_anew =
                || kills::Amount { n_kills: N_KILLS_LONG, n_between: N_BETWEEN_LONG, seed: fastrand::u64(..) };
            let amount = std::env::var_os("EVENSWARD_LONG").map_or(FEW_KILLS, |_long| drawn_anew());
            kills::survive(programs, prepared, (out, folder), &amount).await
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
    let waiting = RefCell::new(chosen.copied().collect::<VecDeque<&str>>());
    let failed = RefCell::new(Vec::new());
    let n_passed = Cell::new(0);
    let run = Run { programs, out, prepared: Prepared::default() };
    let lane = async || {
        // The next name is taken before the case is begun, so that no two lanes hold the list at once.
        while let Some(name) = { waiting.borrow_mut().pop_front() } {
            let started_at = Instant::now();
            let end = case_in_a_fresh_folder(name, &run, &out.join(name)).await;
            let seconds = started_at.elapsed().as_secs_f64();
            match end {
                Ok(()) => {
                    n_passed.set(n_passed.get() + 1);
                    println!("test {name} ... ok ({seconds:.1} s)");
                }
                Err(why) => {
                    failed.borrow_mut().push(name);
                    println!("test {name} ... FAILED ({seconds:.1} s)\n{why}");
                }
            }
        }
    };
    // Two at once: a drive mostly waits, for a bounce to be over or for a screen to have come to rest.
    tokio::join!(lane(), lane());
    let (n_passed, failed) = (n_passed.get(), failed.into_inner());
    println!("{n_passed} passed, {} failed", failed.len());
    if failed.is_empty() {
        Ok(())
    } else {
        Err(Trouble::Wrong(format!("failed in the real window: {}", failed.join(", "))))
    }
}

async fn case_in_a_fresh_folder(name: &str, run: &Run<'_>, folder: &Path) -> Result<(), Trouble> {
    if folder.exists() {
        std::fs::remove_dir_all(folder).map_err(Trouble::with_file(folder))?;
    }
    std::fs::create_dir_all(folder).map_err(Trouble::with_file(folder))?;
    case(name, run, folder).await
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
