//! The process is killed at a random moment of random work on a visit, inside a commit too, and started again.
//!
//! The killed process is this very test program, started again to do nothing but work through the door of `companion`. It says
//! each command before it asks, and each answer once it has it; whatever was answered must be there afterwards, and what the
//! screen shows must be the fold of what is there. `EVENSWARD_LONG` makes it a thousand kills.

use std::io::{BufRead as _, BufReader, Write as _};
use std::path::Path;
use std::process::{Command, Stdio};
use std::sync::Arc;
use std::time::{Duration, Instant};

use evensward_store::Store;
use uuid::Uuid;

use super::{Acknowledged, Chance, Hand, SetClock, any, copied, entered, firm_in, nothing_is_lost};

const FOLDER: &str = "EVENSWARD_WALK_FOLDER";
const SEED: &str = "EVENSWARD_WALK_SEED";
/// So many kills happen to one file; then a new one is begun, so that its history does not stand in the way.
const KILLS_A_FILE: u64 = 12;

/// Works until it is killed. Without a folder to work in it has nothing to do: it is no test of its own.
#[test]
fn works_until_killed() {
    let Some(folder) = std::env::var_os(FOLDER) else { return };
    let folder = Path::new(&folder);
    let mut chance = Chance(std::env::var(SEED).unwrap().parse().unwrap());
    let mut out = std::io::stderr();
    loop {
        let opened = Store::open(folder).unwrap();
        let open = opened.store.visits_open().unwrap().first().map(|visit| visit.visit_id);
        let n_visits = opened.store.visits_between(i64::MIN, i64::MAX).unwrap().len();
        let clock = SetClock::at_noon();
        let companion = entered(opened, folder, Arc::clone(&clock));
        let mut hand = if let Some(visit_id) = open {
            Hand::takes_up(companion, clock, visit_id)
        } else {
            // Long enough after the last one that the label's interval is over.
            clock.goes_on(i64::try_from(n_visits).unwrap() * 90 * 86_400_000);
            Hand::opens(companion, clock).unwrap()
        };
        let told = |hand: &Hand, out: &mut std::io::Stderr| {
            let Acknowledged { visit_id, seq, shown } = Acknowledged::of(&hand.view);
            writeln!(out, "answered {visit_id} {seq} {shown}").unwrap();
        };
        told(&hand, &mut out);
        while !hand.is_closed() {
            let act = any(&hand.view, &mut chance);
            let command = Uuid::now_v7();
            writeln!(out, "asking {command}").unwrap();
            if hand.asks(command, act).is_ok() {
                told(&hand, &mut out);
            }
        }
    }
}

/// What a killed worker had said: its last answer, and the command that it asked last.
#[derive(Default)]
struct Heard {
    last: Option<Acknowledged>,
    asked: Uuid,
    n_answers: u32,
}

impl Heard {
    /// The last line may be torn by the kill; a torn line answered nothing.
    fn hears(&mut self, line: &str) -> Option<()> {
        let mut words = line.split(' ');
        match words.next()? {
            "asking" => self.asked = words.next()?.parse().ok()?,
            "answered" => {
                let (visit_id, seq) = (words.next()?.parse().ok()?, words.next()?.parse().ok()?);
                let shown = words.next()?.parse().ok()?;
                self.last = Some(Acknowledged { visit_id, seq, shown });
                self.n_answers += 1;
            }
            _ => {}
        }
        Some(())
    }
}

/// Starts a worker, kills it so long after its first answer and a moment after what it said then, and tells what it had said.
fn killed_after(wait: Duration, moment: Duration, folder: &Path, seed: u64) -> Heard {
    let mut child = Command::new(std::env::current_exe().unwrap())
        .args(["--exact", "door::crash::works_until_killed", "--nocapture"])
        .env(FOLDER, folder)
        .env(SEED, seed.to_string())
        .stdout(Stdio::null())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    let mut heard = Heard::default();
    let mut kill_at = None;
    let mut reader = BufReader::new(child.stderr.take().unwrap());
    let mut line = String::new();
    // Without a newline at its end a line is torn.
    while reader.read_line(&mut line).is_ok_and(|n_bytes| n_bytes > 0) && line.ends_with('\n') {
        heard.hears(line.trim_end());
        if heard.last.is_some() {
            let kill_at = *kill_at.get_or_insert_with(|| Instant::now() + wait);
            if Instant::now() >= kill_at {
                // Within the command that it says it asks, or after its answer.
                std::thread::sleep(moment);
                // More lines may still be in the pipe: they are read on until it ends.
                child.kill().unwrap();
            }
        }
        line.clear();
    }
    child.wait().unwrap();
    heard
}

#[test]
fn killed_at_any_moment_of_a_visit_nothing_that_was_answered_is_lost_and_the_screen_shows_what_is_there() {
    let n_kills = if std::env::var_os("EVENSWARD_LONG").is_some() { 1_000 } else { 60 };
    let firm = tempfile::tempdir().unwrap();
    firm_in(firm.path());
    let mut folder = tempfile::tempdir().unwrap();
    let mut chance = Chance(20_261_201);
    let (mut n_answers, mut n_kept) = (0, 0);
    for kill in 0..n_kills {
        if kill % KILLS_A_FILE == 0 {
            folder = tempfile::tempdir().unwrap();
            copied(firm.path(), folder.path());
        }
        let wait = Duration::from_micros(chance.below(120_000));
        let moment = Duration::from_micros(chance.below(4_000));
        let heard = killed_after(wait, moment, folder.path(), chance.next());
        let last = heard.last.expect("the worker began");
        let (_, is_kept) = nothing_is_lost(folder.path(), last, heard.asked, &format!("kill {kill}"));
        n_answers += heard.n_answers;
        n_kept += u32::from(is_kept);
    }
    assert!(u64::from(n_answers) > n_kills * 2, "the workers hardly got to work: {n_answers} answers");
    assert!(n_kills < 1_000 || n_kept > 0, "no kill came between a commit and its answer");
}
