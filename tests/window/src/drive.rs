//! A drive through the app step by step: after each step the screen is let settle, and then either
//! a picture is taken or the app is killed and must show the very same screen when it opens again.
//!
//! What the screen shows is the judge: everything that can be seen, by role, name and value. The
//! app's file is never looked into.

use std::fmt::Write as _;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

use crate::hand::Hand;
use crate::sought::Sought;
use crate::trouble::Trouble;
use crate::window::Window;

/// How long the screen must stay as it is to count as settled.
const STILL_FOR: Duration = Duration::from_millis(160);
/// The same before a kill: what was typed is promised to be kept within 300 ms, and the machine may be busy with
/// other things.
const STILL_FOR_BEFORE_A_KILL: Duration = Duration::from_millis(900);
/// How long to wait for that, and for the same screen after a kill.
const PATIENCE: Duration = Duration::from_secs(20);

/// The app takes a second tap on its large button within half a second for a bounce.
const BETWEEN_TAPS: Duration = Duration::from_millis(550);

/// What is done after each step.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Manner {
    /// A picture of every step.
    Pictures,
    /// The app is killed after every step and opened again.
    Kills,
    /// Nothing, and nothing is said: the page must only not have complained.
    Onward,
}

/// A drive under way.
pub struct Drive {
    /// The window that is driven.
    pub window: Window,
    out: PathBuf,
    manner: Manner,
    hand: Hand,
    step_began_at: Instant,
    tapped_at: Option<Instant>,
    summary: String,
    n_steps: usize,
    n_kills: usize,
}

impl Drive {
    /// Begins on a window that is open; pictures and the summary go to this folder.
    #[must_use]
    pub fn new(window: Window, out: &Path, manner: Manner, hand: Hand) -> Self {
        Self {
            window,
            out: out.to_owned(),
            manner,
            hand,
            step_began_at: Instant::now(),
            tapped_at: None,
            summary: String::new(),
            n_steps: 0,
            n_kills: 0,
        }
    }

    /// Ends a step: says so, and takes its picture or kills the app and looks again.
    ///
    /// # Errors
    ///
    /// Says that the screen did not settle, that the page complained, or that another screen came
    /// up after the kill.
    pub async fn step(&mut self, name: &str) -> Result<(), Trouble> {
        self.n_steps += 1;
        let number = self.n_steps;
        let before = match self.manner {
            Manner::Pictures => self.settled().await?,
            Manner::Kills => self.settled_on_disk().await?,
            Manner::Onward => String::new(),
        };
        let complaints = self.window.complaints().await?;
        if !complaints.is_empty() {
            return Err(Trouble::Wrong(format!(
                "step {number}, {name}: the page complained: {}",
                complaints.join("; ")
            )));
        }
        match self.manner {
            Manner::Pictures => self.picture(name).await?,
            Manner::Kills => self.die_and_compare(name, &before).await?,
            Manner::Onward => {}
        }
        let seconds = self.step_began_at.elapsed().as_secs_f64();
        if self.manner != Manner::Onward {
            // Several drives may be under way at once: each line says whose it is.
            let whose = self.out.file_name().unwrap_or_default().to_string_lossy();
            println!("  {whose}: {number:>2}  {name} ({seconds:.1} s)");
        }
        // Writing to a String cannot fail.
        let _written = writeln!(self.summary, "{number:>2}  {seconds:>5.1} s  {name}");
        self.step_began_at = Instant::now();
        Ok(())
    }

    /// Takes a picture of something that is only open for a look and need not be there after a kill.
    ///
    /// # Errors
    ///
    /// Says that the screen did not settle or the picture could not be taken.
    pub async fn glance(&mut self, name: &str) -> Result<(), Trouble> {
        if self.manner != Manner::Pictures {
            return Ok(());
        }
        self.n_steps += 1;
        self.settled().await?;
        self.picture(name).await
    }

    async fn picture(&self, name: &str) -> Result<(), Trouble> {
        let name = name.replace(|sign: char| !sign.is_alphanumeric(), "-");
        self.window.screenshot(&self.out.join(format!("{:02}-{name}.png", self.n_steps))).await
    }

    /// Does something and kills the app at once, before it could be seen whether it was done. What
    /// shows afterwards must be the screen of before or that of the deed done. Answers whether it
    /// was done.
    ///
    /// # Errors
    ///
    /// Says that a third screen came up.
    pub async fn deed_cut_off(
        &mut self,
        name: &str,
        deed: impl AsyncFnOnce(&Window) -> Result<(), Trouble>,
        done: Sought<'_>,
    ) -> Result<bool, Trouble> {
        let before = self.settled().await?;
        deed(&self.window).await?;
        self.window.kill().await?;
        self.window.reopen().await?;
        self.n_kills += 1;
        let began_at = Instant::now();
        loop {
            let now = self.settled().await?;
            if self.window.shows(done).await? {
                return Ok(true);
            }
            if without_draft_note(&now) == without_draft_note(&before) {
                return Ok(false);
            }
            if began_at.elapsed() > PATIENCE {
                return Err(differs(name, &before, &now));
            }
        }
    }

    /// Waits until the last tap is long enough ago for the next to count.
    pub(crate) async fn rest_the_hand(&self) {
        if let Some(rest) = self.tapped_at.and_then(|at| BETWEEN_TAPS.checked_sub(at.elapsed())) {
            tokio::time::sleep(rest).await;
        }
    }

    /// Remembers when a button was tapped.
    pub(crate) fn tapped(&mut self, at: Instant) {
        self.tapped_at = Some(at);
    }

    async fn die_and_compare(&mut self, name: &str, before: &str) -> Result<(), Trouble> {
        self.window.kill().await?;
        self.window.reopen().await?;
        self.n_kills += 1;
        let began_at = Instant::now();
        loop {
            let now = self.settled().await?;
            if without_draft_note(&now) == without_draft_note(before) {
                return Ok(());
            }
            if began_at.elapsed() > PATIENCE {
                return Err(differs(name, before, &now));
            }
        }
    }

    /// Waits until the screen stays as it is, and answers what it shows.
    pub(crate) async fn settled(&self) -> Result<String, Trouble> {
        self.settled_for(STILL_FOR).await
    }

    /// As [`Drive::settled`], for so long that what was typed is kept.
    pub(crate) async fn settled_on_disk(&self) -> Result<String, Trouble> {
        self.settled_for(STILL_FOR_BEFORE_A_KILL).await
    }

    async fn settled_for(&self, still_for: Duration) -> Result<String, Trouble> {
        let began_at = Instant::now();
        let mut last = self.window.screen().await?;
        loop {
            tokio::time::sleep(still_for).await;
            let now = self.window.screen().await?;
            if now == last {
                return Ok(now);
            }
            if began_at.elapsed() > PATIENCE {
                return Err(Trouble::Wrong(format!("the screen does not come to rest:\n{now}")));
            }
            last = now;
        }
    }

    /// What is driven with.
    #[must_use]
    pub fn hand(&self) -> Hand {
        self.hand
    }

    /// Whether the app is killed after every step.
    #[must_use]
    pub fn kills(&self) -> bool {
        self.manner == Manner::Kills
    }

    /// How often the app was killed.
    #[must_use]
    pub fn n_kills(&self) -> usize {
        self.n_kills
    }

    /// The steps taken so far, a line each.
    #[must_use]
    pub fn summary(&self) -> &str {
        &self.summary
    }
}

/// After a kill a half-typed form says that it carries on from what was typed; nothing else may differ.
pub(crate) fn without_draft_note(screen: &str) -> Vec<&str> {
    const NOTE: [&str; 2] = ["This carries on from what you typed before.", "Throw it away"];
    screen.lines().filter(|line| !NOTE.iter().any(|note| line.contains(note))).collect()
}

/// Says in which lines two screens differ.
pub(crate) fn differs(name: &str, before: &str, now: &str) -> Trouble {
    let missing = before.lines().filter(|line| !now.lines().any(|other| other == *line));
    let extra = now.lines().filter(|line| !before.lines().any(|other| other == *line));
    let mut said = format!("after \"{name}\" and a kill another screen came up");
    for line in missing {
        let _written = write!(said, "\n  gone: {line}");
    }
    for line in extra {
        let _written = write!(said, "\n  new:  {line}");
    }
    Trouble::Wrong(said)
}
