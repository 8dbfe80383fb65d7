//! The process is killed at a random moment, inside a commit too, and started again on the same folder.
//!
//! The killed process is this very test program, started again to do nothing but tap. It says each tap that
//! was acknowledged; whatever it said must be in the file afterwards.

use std::io::{BufRead as _, BufReader, Write as _};
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use evensward_store::{AppendError, Opened, Store};

use crate::store_sample::{VISIT, event, tap};

const FOLDER: &str = "EVENSWARD_CRASH_FOLDER";

/// Taps until it is killed. Without a folder to tap in it has nothing to do: it is no test of its own.
#[test]
fn taps_until_killed() {
    let Some(folder) = std::env::var_os(FOLDER) else { return };
    let Opened { mut store, .. } = Store::open(folder.as_ref()).unwrap();
    let mut seq = u32::try_from(store.events(VISIT).unwrap().len()).unwrap();
    let mut out = std::io::stderr();
    writeln!(out, "started {seq}").unwrap();
    loop {
        tap(&mut store, VISIT, seq).unwrap();
        seq += 1;
        writeln!(out, "acknowledged {seq}").unwrap();
    }
}

#[test]
fn killed_at_any_moment_no_acknowledged_tap_is_lost() {
    let n_kills = if std::env::var_os("EVENSWARD_LONG").is_some() { 1000 } else { 30 };
    let folder = tempfile::tempdir().unwrap();
    let mut n_acknowledged_in_all = 0;
    for kill in 0..n_kills {
        let mut child = Command::new(std::env::current_exe().unwrap())
            .args(["--exact", "crash::taps_until_killed", "--nocapture"])
            .env(FOLDER, folder.path())
            .stdout(Stdio::null())
            .stderr(Stdio::piped())
            .spawn()
            .unwrap();
        let lines = BufReader::new(child.stderr.take().unwrap()).lines();
        let mut n_acknowledged = None;
        let mut kill_at = None;
        for line in lines {
            // The last line may be torn by the kill; a torn line acknowledged nothing.
            let Ok(line) = line else { break };
            if let Some(seq) = line.strip_prefix("started ").or_else(|| line.strip_prefix("acknowledged ")) {
                n_acknowledged = seq.parse::<u32>().ok().or(n_acknowledged);
                kill_at.get_or_insert_with(|| Instant::now() + Duration::from_micros(kill * 7919 % 30_000));
            }
            if kill_at.is_some_and(|kill_at| Instant::now() >= kill_at) {
                // More lines may still be in the pipe: they are read on until it ends.
                child.kill().unwrap();
            }
        }
        child.wait().unwrap();
        let n_acknowledged = n_acknowledged.expect("the child started");
        let Opened { store, .. } = Store::open(folder.path()).unwrap();
        let events = store.events(VISIT).unwrap();
        let n_events = u32::try_from(events.len()).unwrap();
        assert!(n_events == n_acknowledged || n_events == n_acknowledged + 1, "{n_acknowledged} of {n_events}");
        assert!((1..).zip(&events).all(|(seq, found)| *found == event(VISIT, seq)));
        n_acknowledged_in_all = n_events;
    }
    assert!(u64::from(n_acknowledged_in_all) > n_kills, "the child hardly got to work");
    let Opened { mut store, .. } = Store::open(folder.path()).unwrap();
    let again = tap(&mut store, VISIT, n_acknowledged_in_all - 1);
    assert!(matches!(again, Err(AppendError::AlreadyAnswered { .. })), "{again:?}");
}
