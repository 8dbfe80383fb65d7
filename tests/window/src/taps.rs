//! What a tap costs in the real window until its answer is painted, and what a long walk leaves behind in memory, as JSON
//! for the bench.
//!
//! The tap is a real press of the pointer, timed inside the page from the event's own timestamp: it is committed before
//! it is answered, and drawn only when it is answered. Beside it, in lots that take turns, a tap in an empty window built
//! the same way, whose page changes a word and paints: what the web view and the machine cost by themselves.

use std::path::Path;
use std::time::{Duration, Instant};

use serde_json::{Value, json};
use xtask::{children, place};

use crate::cases::Programs;
use crate::clicker;
use crate::display::Size;
use crate::drive::{Drive, Manner};
use crate::hand::Hand;
use crate::prepared::Prepared;
use crate::sought::{Sought, like, the};
use crate::trouble::Trouble;
use crate::window::{LOOK_AGAIN, PATIENCE, Setting, Window};

const WATCH: &str = include_str!("taps.js");
const LONG_WALK: &str = include_str!("long_walk.js");

/// How many taps follow each other before the empty window has its turn.
const N_IN_A_LOT: usize = 20;
/// Taps that are timed once more after the long walk.
const N_TAPS_AFTER: usize = 40;
/// Rounds of the long walk in one call: the driver ends a script that takes longer than half a minute.
const N_ROUNDS: usize = 20;
/// How long the web view is left alone before its memory is looked at.
const AT_REST: Duration = Duration::from_secs(5);

/// One button, whose word changes when it is tapped.
const BARE_PAGE: &str = "
    document.body.innerHTML = '<button style=\"width: 100%; height: 200px\">Tap 0</button>';
    let n = 0;
    document.querySelector('button').onclick = (event) => { event.target.textContent = `Tap ${(n += 1)}`; };";

/// Takes the figures of so many taps and of a walk of so many events, and prints them as JSON.
///
/// # Errors
///
/// Says that a window did not open, or that a tap was not answered.
pub async fn measure(programs: &Programs, empty: &Path, n_taps: usize, n_events: u64) -> Result<(), Trouble> {
    let all = place::emptied("taps").map_err(Trouble::Process)?;
    let window = Prepared::default().open(programs, &all, &all.join("walk"), Size::PHONE).await?;
    let mut drive = Drive::new(window, &all, Manner::Onward, Hand::Pointer);
    clicker::until(&mut drive, "Walk").await?;
    let data = all.join("empty");
    std::fs::create_dir_all(&data).map_err(Trouble::with_file(&data))?;
    let bare = Window::open(Setting { app: empty.to_owned(), data, size: Size::PHONE, dusk: false }).await?;
    bare.run(BARE_PAGE, json!([])).await?;
    drive.window.run(WATCH, json!([true])).await?;
    bare.run(WATCH, json!([false])).await?;

    for _ in 0..n_taps.div_ceil(N_IN_A_LOT) {
        walk_taps(&mut drive, N_IN_A_LOT).await?;
        for _ in 0..N_IN_A_LOT {
            tap(&bare, like("button", "Tap")).await?;
        }
    }
    let (drawn, painted) = figures(&drive.window, 0).await?;
    let (_, bare_painted) = figures(&bare, 0).await?;
    drop(bare);

    tokio::time::sleep(AT_REST).await;
    let at_start = Memory::of(&drive.window)?;
    let first = long_walk(&drive.window, 0).await?;
    let began_at = Instant::now();
    let mut last = first;
    while last < first + n_events {
        last = long_walk(&drive.window, N_ROUNDS).await?;
    }
    let seconds = began_at.elapsed().as_secs_f64();
    tokio::time::sleep(AT_REST).await;
    let at_end = Memory::of(&drive.window)?;
    walk_taps(&mut drive, N_TAPS_AFTER).await?;
    let (_, painted_after) = figures(&drive.window, painted.len()).await?;
    crate::cases::no_complaints(&drive.window).await?;

    let median = |figures: &[f64]| quantile(figures, 0.5);
    let report = json!({
        "tap_to_painted_ms": spread(&painted),
        "tap_to_painted_ms_p95_aim": 50.0,
        "tap_to_answer_drawn_ms": spread(&drawn),
        "bare_tap_to_painted_ms": spread(&bare_painted),
        "ratio_to_a_bare_tap": median(&painted) / median(&bare_painted),
        "long_walk": {
            "n_events": last - first,
            "seconds": seconds,
            "tap_to_painted_ms_after": spread(&painted_after),
            "at_start_kib": at_start.told(),
            "at_end_kib": at_end.told(),
            "app_grown_to": at_end.app_kib / at_start.app_kib,
            "web_process_grown_to": at_end.web_kib / at_start.web_kib,
        },
    });
    println!("{report}");
    Ok(())
}

/// So many taps on the walk: a pass done, taken back, and so on.
async fn walk_taps(drive: &mut Drive, n_taps: usize) -> Result<(), Trouble> {
    for _ in 0..n_taps / 2 {
        drive.rest_the_hand().await;
        tap(&drive.window, like("button", " done")).await?;
        drive.tapped(Instant::now());
        tap(&drive.window, the("button", "Take back")).await?;
    }
    Ok(())
}

/// One tap, until the page has seen its answer painted.
async fn tap(window: &Window, sought: Sought<'_>) -> Result<(), Trouble> {
    let n_taps = |told: Value| told.as_u64().unwrap_or_default();
    let count = "return window.taps.length;";
    let before = n_taps(window.run(count, json!([])).await?);
    window.click(sought).await?;
    let since = Instant::now();
    while n_taps(window.run(count, json!([])).await?) == before {
        if since.elapsed() > PATIENCE {
            return Err(window.did_not_come(format!("the answer to a tap on {sought}")).await);
        }
        tokio::time::sleep(LOOK_AGAIN).await;
    }
    Ok(())
}

/// Milliseconds until each tap from this one on was drawn, and until it was painted.
async fn figures(window: &Window, from: usize) -> Result<(Vec<f64>, Vec<f64>), Trouble> {
    let taps = window.run("return window.taps.slice(arguments[0]);", json!([from])).await?;
    let taps = taps.as_array().into_iter().flatten();
    Ok(taps.filter_map(|tap| Some((tap.get(0)?.as_f64()?, tap.get(1)?.as_f64()?))).unzip())
}

/// Walks on for so many rounds; answers the number of the last event.
async fn long_walk(window: &Window, n_rounds: usize) -> Result<u64, Trouble> {
    let walked = window.client().execute_async(LONG_WALK, vec![json!(n_rounds)]).await;
    let told = walked.map_err(Trouble::while_doing("walking on"))?;
    told.as_u64().ok_or_else(|| Trouble::Wrong(format!("the long walk stopped: {told}")))
}

/// Resident memory of the app and of its web process, in KiB.
struct Memory {
    app_kib: f64,
    web_kib: f64,
}

impl Memory {
    fn of(window: &Window) -> Result<Self, Trouble> {
        let app = window.app_pid()?.as_raw_nonzero().get();
        let is_web = |pid: &i32| {
            std::fs::read_link(format!("/proc/{pid}/exe")).is_ok_and(|program| program.ends_with("WebKitWebProcess"))
        };
        let web = children::below(app).into_iter().find(is_web);
        let web = web.ok_or_else(|| Trouble::Process("the app has no web process".to_owned()))?;
        Ok(Self { app_kib: resident_kib(app)?, web_kib: resident_kib(web)? })
    }

    fn told(&self) -> Value {
        json!({ "app": self.app_kib, "web_process": self.web_kib })
    }
}

fn resident_kib(pid: i32) -> Result<f64, Trouble> {
    let path = format!("/proc/{pid}/status");
    let status = std::fs::read_to_string(&path).map_err(Trouble::with_file(&path))?;
    let line = status.lines().find_map(|line| line.strip_prefix("VmRSS:"));
    line.and_then(|line| line.trim().strip_suffix(" kB")?.parse().ok())
        .ok_or_else(|| Trouble::Wrong(format!("{path} says no resident memory")))
}

fn spread(figures: &[f64]) -> Value {
    json!({ "p50": quantile(figures, 0.5), "p95": quantile(figures, 0.95), "n": figures.len() })
}

/// The figure below which this part of the figures lie; not a number without any.
fn quantile(figures: &[f64], part: f64) -> f64 {
    let mut sorted = figures.to_vec();
    sorted.sort_by(f64::total_cmp);
    #[expect(
        clippy::cast_precision_loss,
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "an index"
    )]
    let idx = (sorted.len() as f64 * part) as usize;
    sorted.get(idx.min(sorted.len().saturating_sub(1))).copied().unwrap_or(f64::NAN)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn half_of_the_figures_lie_below_the_median_and_few_above_the_p95() {
        let figures: Vec<f64> = (0..100).rev().map(f64::from).collect();
        assert_eq!((quantile(&figures, 0.5), quantile(&figures, 0.95)), (50.0, 95.0));
        assert!(quantile(&[], 0.5).is_nan());
    }

    #[test]
    fn this_process_has_memory() {
        assert!(resident_kib(i32::try_from(std::process::id()).unwrap()).unwrap() > 0.0);
    }
}
