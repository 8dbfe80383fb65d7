//! What happens to a visit when the disk fails under it, or somebody takes the file away: through the door, as a screen meets it.
//!
//! Each failure is met by a plain SQLite file first in `faults`. Here nothing that was answered may be lost, what is refused
//! leaves the screen as it was, each refusal has its own code and sentence, and work goes on afterwards to a signed record.
//! `EVENSWARD_LONG` lets the disk fail at every third change rather than at a few.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use evensward_companion::dto::ask::{Answer, Ask, FailureCode};
use evensward_companion::dto::figures::Argument;
use evensward_companion::dto::visit::Panel;
use evensward_store::{FILE_NAME, Store};
use rusqlite::Connection;
use tempfile::TempDir;
use uuid::Uuid;

use super::{Acknowledged, Hand, SetClock, copied, entered, firm_in, nothing_is_lost, plain};
use crate::faults_disk::{Failing, FaultyDisk};
use crate::faults_vfs::{VFS, register};

/// At how many changes apart the disk fails: about eight times over a visit, or at every third of its changes.
fn apart() -> usize {
    if std::env::var_os("EVENSWARD_LONG").is_some() { 3 } else { 97 }
}

fn firm() -> TempDir {
    let firm = tempfile::tempdir().unwrap();
    firm_in(firm.path());
    firm
}

/// A folder with the firm in it, on a disk that can be made to fail.
fn faulty(firm: &TempDir) -> (TempDir, FaultyDisk) {
    register();
    let folder = tempfile::tempdir().unwrap();
    copied(firm.path(), folder.path());
    let disk = FaultyDisk::under(folder.path());
    (folder, disk)
}

fn opens(folder: &Path) -> Hand {
    let clock = SetClock::at_noon();
    let companion = entered(Store::open_through(folder, Some(VFS)).unwrap(), folder, Arc::clone(&clock));
    Hand::opens(companion, clock).unwrap()
}

fn is_walking(hand: &Hand) -> bool {
    matches!(hand.view.panel, Panel::Walk(_))
}

#[test]
fn a_visit_survives_a_power_loss_at_any_change_of_the_disk() {
    let firm = firm();
    let mut n_losses = 0;
    for change_number in (1..).step_by(apart()) {
        let (folder, disk) = faulty(&firm);
        let mut hand = opens(folder.path());
        let mut last = Acknowledged::of(&hand.view);
        disk.fails_at(change_number, Failing::Off);
        while !hand.is_closed() {
            let act = plain(&hand.view);
            if hand.try_act(act).is_err() {
                break;
            }
            last = Acknowledged::of(&hand.view);
        }
        if !disk.has_failed() {
            break;
        }
        let in_flight = hand.asked;
        drop(hand);
        disk.lose_power(u64::from(change_number));
        let what = format!("change {change_number}");
        let (mut hand, _) = nothing_is_lost(folder.path(), last, in_flight, &what);
        hand.goes_until(|view| matches!(view.panel, Panel::Closed { .. }));
        n_losses += 1;
    }
    assert!(n_losses > 3, "the power went only {n_losses} times");
}

#[test]
fn a_disk_that_fills_up_at_any_write_of_a_visit_is_said_and_the_visit_goes_on_once_there_is_room() {
    let firm = firm();
    let mut n_refused = 0;
    for change_number in (1..).step_by(apart()) {
        let (folder, disk) = faulty(&firm);
        let mut hand = opens(folder.path());
        disk.fails_at(change_number, Failing::Full);
        while !hand.is_closed() && !disk.has_failed() {
            let before = Acknowledged::of(&hand.view);
            let (act, command) = (plain(&hand.view), Uuid::now_v7());
            let Err(failure) = hand.asks(command, act.clone()) else { continue };
            let what = format!("change {change_number}: {failure:?}");
            assert_eq!((failure.code, failure.said.code.as_str()), (FailureCode::NoRoom, "failure-no-room"), "{what}");
            assert_eq!(Acknowledged::of(&hand.view), before, "{what}");
            // What was answered can be read on a full disk, and is what it was.
            let visit_id = hand.view.visit_id.clone();
            let Ok(Answer::Visit(again)) = hand.companion.ask(Ask::Visit { visit_id }) else { panic!("{what}") };
            assert_eq!(Acknowledged::of(&again), before, "{what}");
            disk.fails(None);
            hand.asks(command, act).expect(&what);
            n_refused += 1;
            break;
        }
        if hand.is_closed() {
            break;
        }
        disk.fails(None);
        hand.goes_until(|view| matches!(view.panel, Panel::Closed { .. }));
        let last = Acknowledged::of(&hand.view);
        drop(hand);
        nothing_is_lost(folder.path(), last, Uuid::nil(), &format!("change {change_number}"));
    }
    assert!(n_refused > 1, "the full disk refused only {n_refused} taps");
}

#[test]
fn a_file_closed_to_writing_during_a_walk_refuses_the_tap_and_keeps_the_rest() {
    let (folder, disk) = faulty(&firm());
    let mut hand = opens(folder.path());
    hand.goes_until(|view| matches!(view.panel, Panel::Walk(_)));
    let before = Acknowledged::of(&hand.view);
    disk.fails(Some(Failing::Closed));
    let failure = hand.try_act(plain(&hand.view)).unwrap_err();
    assert_eq!((failure.code, failure.said.code.as_str()), (FailureCode::CannotWrite, "failure-cannot-write"));
    disk.fails(None);
    let in_flight = hand.asked;
    drop(hand);
    nothing_is_lost(folder.path(), before, in_flight, "closed to writing");
}

/// A visit on its walk, in a file on the plain disk, and the file's path.
fn walking(firm: &TempDir) -> (TempDir, PathBuf, Hand) {
    let folder = tempfile::tempdir().unwrap();
    copied(firm.path(), folder.path());
    let clock = SetClock::at_noon();
    let companion = entered(Store::open(folder.path()).unwrap(), folder.path(), Arc::clone(&clock));
    let mut hand = Hand::opens(companion, clock).unwrap();
    hand.goes_until(|view| matches!(view.panel, Panel::Walk(_)));
    assert!(is_walking(&hand));
    let path = folder.path().join(FILE_NAME);
    (folder, path, hand)
}

/// Refused with the same sentence twice; the copy that it names holds all that was answered, and the log of the file that is
/// gone is not left to be played into another one.
#[track_caller]
fn is_rescued(folder: &TempDir, mut hand: Hand) {
    let last = Acknowledged::of(&hand.view);
    let mut copies = Vec::new();
    for _ in 0..2 {
        let failure = hand.try_act(plain(&hand.view)).unwrap_err();
        assert_eq!((failure.code, failure.said.code.as_str()), (FailureCode::CannotWrite, "failure-replaced"));
        let Some(Argument::Text(copy)) = failure.said.args.get("path") else { panic!("{failure:?}") };
        copies.push(copy.clone());
    }
    assert_eq!(copies[0], copies[1], "it is copied once");
    // Until then the screen still shows what was answered.
    let visit_id = hand.view.visit_id.clone();
    let Ok(Answer::Visit(again)) = hand.companion.ask(Ask::Visit { visit_id }) else { panic!("not shown any more") };
    assert_eq!(Acknowledged::of(&again), last);
    drop(hand);
    assert!(!folder.path().join(format!("{FILE_NAME}-wal")).exists(), "the old log lies beside another file");
    let restored = tempfile::tempdir().unwrap();
    std::fs::copy(&copies[0], restored.path().join(FILE_NAME)).unwrap();
    let (mut hand, is_kept) = nothing_is_lost(restored.path(), last, Uuid::nil(), "the copy");
    assert!(!is_kept);
    hand.goes_until(|view| matches!(view.panel, Panel::Closed { .. }));
}

#[test]
fn a_file_that_is_replaced_under_the_running_app_is_seen_and_what_was_answered_is_copied_out() {
    let firm = firm();
    let (folder, path, hand) = walking(&firm);
    // An older copy is put in its place, as a file manager or a restored backup does it.
    let older = folder.path().join("older");
    std::fs::copy(firm.path().join(FILE_NAME), &older).unwrap();
    std::fs::rename(&older, &path).unwrap();
    is_rescued(&folder, hand);
    // The file that was put there is sound, and no log of another one was played into it.
    let opened = Store::open(folder.path()).unwrap();
    assert!(opened.store.visits_open().unwrap().is_empty());
}

#[test]
fn a_file_that_is_deleted_under_the_running_app_is_seen_and_what_was_answered_is_copied_out() {
    let (folder, path, hand) = walking(&firm());
    std::fs::remove_file(&path).unwrap();
    is_rescued(&folder, hand);
}

#[test]
fn a_file_that_is_cut_short_under_the_running_app_is_said_to_be_damaged_and_never_answered_from_again() {
    let firm = firm();
    for keeps in [0_u64, 100, 8_192] {
        let (folder, path, mut hand) = walking(&firm);
        let log = std::fs::read(folder.path().join(format!("{FILE_NAME}-wal"))).unwrap();
        std::fs::OpenOptions::new().write(true).open(&path).unwrap().set_len(keeps).unwrap();
        for _ in 0..2 {
            let failure = hand.try_act(plain(&hand.view)).unwrap_err();
            assert_eq!(failure.code, FailureCode::Damaged, "{keeps} bytes: {failure:?}");
            assert_eq!(failure.said.code, "failure-damaged", "{keeps} bytes");
        }
        drop(hand);
        // What was not in the cut part is still there for somebody to recover: nothing was tidied away.
        let after = std::fs::read(folder.path().join(format!("{FILE_NAME}-wal"))).unwrap_or_default();
        let is_log_kept = after == log;
        let is_file_whole = Connection::open(&path)
            .and_then(|file| file.query_row("PRAGMA quick_check(1)", (), |row| row.get::<_, String>(0)))
            .is_ok_and(|verdict| verdict == "ok");
        assert!(is_log_kept || is_file_whole, "{keeps} bytes: the log is gone and the file is not whole");
    }
}
