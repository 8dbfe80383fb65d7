//! Random taps from the first fill to the signature, and the app killed at random moments in the midst of them: before a
//! tap arrives, while it is written, after its answer was drawn.
//!
//! What shows when the app opens again must be the screen of before or that of the deed done, and the latter if its answer
//! had been drawn. Which it is, is held by doing: a deed that was done is taken back, which must show the screen of
//! before, and done again, which must show the very screen that came up after the kill.

use std::path::Path;
use std::time::{Duration, Instant};

use fantoccini::key::Key;

use crate::cases::Programs;
use crate::display::Size;
use crate::drive::{Drive, Manner, differs, without_draft_note};
use crate::hand::Hand;
use crate::prepared::Prepared;
use crate::sought::{like, the};
use crate::trouble::Trouble;
use crate::window::{LOOK_AGAIN, PATIENCE, Window};

/// What a tap is taken to last until its answer is drawn, before one was seen.
const A_TAP: Duration = Duration::from_millis(90);
/// Kills come within this many times what the last tap lasted.
const KILL_WITHIN: f64 = 1.2;
/// Something that is done with one tap and can be taken back.
#[derive(Clone, Debug)]
enum Deed {
    /// The one thing to do next, by a clicker's key.
    Forward,
    /// The last step is taken back, by a clicker's key.
    Back,
    /// A box among the steps is ticked or cleared.
    Tick(String),
    /// A small button on the walk.
    Button(&'static str),
}

/// What came of the kills.
#[derive(Default)]
struct Tally {
    n_kills: usize,
    n_done: usize,
    n_answered: usize,
    n_signed: usize,
}

/// A walk under way.
struct Round<'a> {
    programs: &'a Programs,
    prepared: &'a Prepared,
    all: &'a Path,
    folder: &'a Path,
    chance: fastrand::Rng,
    drive: Drive,
    n_between: usize,
    /// The screens before each step that can be taken back, the last one last.
    path: Vec<String>,
    /// What the last tap lasted until its answer was drawn: a busy machine has longer ones.
    tap_lasts: Duration,
    tally: Tally,
}

/// How much is tried.
pub(crate) struct Amount {
    /// Kills.
    pub(crate) n_kills: usize,
    /// Taps between two kills, at most.
    pub(crate) n_between: usize,
    /// What taps and moments are drawn from.
    pub(crate) seed: u64,
}

/// Kills the app at random moments.
pub(crate) async fn survive(
    programs: &Programs,
    prepared: &Prepared,
    (all, folder): (&Path, &Path),
    &Amount { n_kills, n_between, seed }: &Amount,
) -> Result<(), Trouble> {
    println!("  {n_kills} kills at moments drawn from the seed {seed}");
    let drive = begun(programs, prepared, all, folder).await?;
    let chance = fastrand::Rng::with_seed(seed);
    let (path, tally) = (Vec::new(), Tally::default());
    let mut round = Round { programs, prepared, all, folder, chance, drive, n_between, path, tap_lasts: A_TAP, tally };
    let mut end = Ok(());
    while end.is_ok() && round.tally.n_kills < n_kills {
        end = round.some_taps_and_a_kill().await;
    }
    let Tally { n_kills, n_done, n_answered, n_signed } = round.tally;
    println!(
        "  {n_kills} kills: {n_done} deeds stood afterwards, {n_answered} of them answered before the kill, {} had not \
         been done; {n_signed} records were signed on the way",
        n_kills - n_done
    );
    crate::visit::ended(round.drive, folder, end).await.map(|_drive| ())
}

async fn begun(programs: &Programs, prepared: &Prepared, all: &Path, folder: &Path) -> Result<Drive, Trouble> {
    let window = prepared.open(programs, all, folder, Size::PHONE).await?;
    Ok(Drive::new(window, folder, Manner::Onward, Hand::Pointer))
}

impl Round<'_> {
    async fn some_taps_and_a_kill(&mut self) -> Result<(), Trouble> {
        for _ in 0..self.chance.usize(0..=self.n_between) {
            if self.drive.heading().await? == "Sign the record" {
                return self.sign_and_kill().await;
            }
            let before = self.drive.settled().await?;
            let deed = self.draw(&before).await?;
            self.done(&deed, &before).await?;
        }
        if self.drive.heading().await? == "Sign the record" {
            return self.sign_and_kill().await;
        }
        self.kill().await
    }

    /// A legal tap on the page that is open; going on is the likeliest.
    async fn draw(&mut self, screen: &str) -> Result<Deed, Trouble> {
        if !self.path.is_empty() && self.chance.u8(0..8) == 0 {
            return Ok(Deed::Back);
        }
        let boxes: Vec<&str> = screen.lines().filter_map(|line| line.trim().strip_prefix("checkbox \"")).collect();
        let heading = self.drive.heading().await?;
        let is_list = heading.starts_with("Mix fill") || heading == "Wash";
        if is_list
            && self.chance.u8(0..6) == 0
            && let Some(name) = self.chance.choice(&boxes).and_then(|line| line.split('"').next())
        {
            return Ok(Deed::Tick(name.to_owned()));
        }
        if heading == "Walk" && self.chance.bool() {
            let name = if self.chance.bool() { "Pause" } else { "Tank differs" };
            if self.drive.window.shows(the("button", name)).await? {
                return Ok(Deed::Button(name));
            }
        }
        Ok(Deed::Forward)
    }

    /// One tap with a kill near it, and what it must have left behind.
    async fn kill(&mut self) -> Result<(), Trouble> {
        let before = self.drive.settled().await?;
        let deed = self.draw(&before).await?;
        let heading = self.drive.heading().await?;
        self.prepare(&deed).await?;
        self.drive.rest_the_hand().await;
        let is_answered = self.chance.u8(0..3) == 0;
        if is_answered {
            let prepared = self.drive.window.screen().await?;
            tap(&self.drive.window, &deed).await?;
            self.drive.window.wait_for_change(&prepared, &format!("{deed:?}")).await?;
            self.drive.window.kill().await?;
        } else {
            let after = self.moment();
            // The app may be gone before the tap has come to its end: that is what is tried.
            let cut_off = async || drop(tap(&self.drive.window, &deed).await);
            self.drive.window.kill_amid(cut_off, after).await?;
        }
        self.tally.n_kills += 1;
        let name = format!("kill {}, {deed:?} on \"{heading}\"", self.tally.n_kills);
        let now = self.reopened().await?;
        let is_done = !alike(&now, &before);
        if is_answered && !is_done {
            return Err(Trouble::Wrong(format!("{name}: its answer had been drawn, and it was lost")));
        }
        self.tally.n_done += usize::from(is_done);
        self.tally.n_answered += usize::from(is_answered);
        println!("  {name}: {}", if is_done { "it stands" } else { "it had not been done" });
        match (&deed, is_done) {
            (_, false) => self.done(&deed, &before).await,
            (Deed::Back, true) => self.is_back(&name, &now),
            (_, true) => {
                self.drive.rest_the_hand().await;
                self.take_back().await?;
                let back = self.drive.settled().await?;
                same(&format!("{name} and taking it back"), &before, &back)?;
                self.done(&deed, &before).await?;
                same(&format!("{name} and doing it again"), &now, &self.drive.settled().await?)
            }
        }
    }

    /// How long after a tap was begun the next kill comes: the sooner, the likelier, since most of what a tap lasts is
    /// seeing that its answer was drawn.
    fn moment(&mut self) -> Duration {
        self.tap_lasts.mul_f64(KILL_WITHIN * self.chance.f64().powi(3))
    }

    /// Does something to its end.
    async fn done(&mut self, deed: &Deed, before: &str) -> Result<(), Trouble> {
        self.prepare(deed).await?;
        self.drive.rest_the_hand().await;
        let prepared = self.drive.window.screen().await?;
        let tapped_at = Instant::now();
        tap(&self.drive.window, deed).await?;
        self.drive.tapped(Instant::now());
        self.drive.window.wait_for_change(&prepared, &format!("{deed:?}")).await?;
        self.tap_lasts = tapped_at.elapsed();
        if matches!(deed, Deed::Back) {
            let now = self.drive.settled().await?;
            return self.is_back("taking back", &now);
        }
        self.path.push(before.to_owned());
        Ok(())
    }

    /// What must be looked at again before a walk goes on is only ticked on the screen, until it goes on.
    async fn prepare(&mut self, deed: &Deed) -> Result<(), Trouble> {
        if matches!(deed, Deed::Forward) {
            while self.drive.window.shows(like("button", "Seen, it is all right")).await? {
                self.drive.tap(like("button", "Seen, it is all right")).await?;
            }
        }
        Ok(())
    }

    /// Holds a screen against the one before the last step, and forgets that one.
    fn is_back(&mut self, name: &str, now: &str) -> Result<(), Trouble> {
        match self.path.pop() {
            Some(before) => same(name, &before, now),
            None => Err(Trouble::Wrong(format!("{name}: there was no step to take back"))),
        }
    }

    async fn take_back(&mut self) -> Result<(), Trouble> {
        let before = self.drive.window.screen().await?;
        if self.drive.heading().await? == "Sign the record" {
            self.drive.press(like("button", "Take back:")).await?;
            self.drive.press(the("button", "Take back")).await?;
        } else {
            self.drive.window.press_keys([char::from(Key::PageUp)], None).await?;
        }
        self.drive.tapped(Instant::now());
        self.drive.window.wait_for_change(&before, "taking back").await
    }

    /// The last tap of a visit can't be taken back: signed or not, a fresh walk begins afterwards.
    async fn sign_and_kill(&mut self) -> Result<(), Trouble> {
        crate::walk::sign(&mut self.drive).await?;
        let before = self.drive.settled_on_disk().await?;
        let after = self.moment();
        let window = &self.drive.window;
        window.kill_amid(async || drop(window.click(the("button", "Sign and close")).await), after).await?;
        self.tally.n_kills += 1;
        let now = self.reopened().await?;
        let name = format!("kill {}, at the signature", self.tally.n_kills);
        let is_signed = self.drive.heading().await? == "The record";
        println!("  {name}: {}", if is_signed { "it stands" } else { "it had not been done" });
        if is_signed {
            self.tally.n_done += 1;
            self.tally.n_signed += 1;
            self.drive.window.wait_for_words("Closed and signed.").await?;
        } else {
            same(&name, &before, &now)?;
        }
        self.drive = begun(self.programs, self.prepared, self.all, self.folder).await?;
        self.path.clear();
        Ok(())
    }

    /// Opens the app again and answers the screen once the visit is there.
    async fn reopened(&mut self) -> Result<String, Trouble> {
        self.drive.window.reopen().await?;
        let since = Instant::now();
        let is_there = "const m = document.querySelector('main[data-ready=true]'); return m !== null;";
        while self.drive.window.run(is_there, serde_json::json!([])).await? != serde_json::Value::Bool(true) {
            if since.elapsed() > PATIENCE {
                return Err(self.drive.window.did_not_come("the visit after a kill".to_owned()).await);
            }
            tokio::time::sleep(LOOK_AGAIN).await;
        }
        self.drive.settled().await
    }
}

async fn tap(window: &Window, deed: &Deed) -> Result<(), Trouble> {
    match deed {
        Deed::Forward => window.press_keys([char::from(Key::PageDown)], None).await,
        Deed::Back => window.press_keys([char::from(Key::PageUp)], None).await,
        Deed::Tick(name) => window.click(the("checkbox", name)).await,
        Deed::Button(name) => window.click(the("button", name)).await,
    }
}

fn alike(one: &str, other: &str) -> bool {
    without_draft_note(one) == without_draft_note(other)
}

fn same(name: &str, expected: &str, found: &str) -> Result<(), Trouble> {
    if alike(expected, found) { Ok(()) } else { Err(differs(name, expected, found)) }
}
