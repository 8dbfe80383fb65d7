//! What happens to acknowledged taps when the disk fails at the worst moment.
//!
//! Each kind of failure is first shown on a plain SQLite file, where it does what it should: otherwise a
//! test that passes would only show that nothing failed.

use std::collections::BTreeMap;
use std::path::Path;

use evensward_store::{AppendError, Condition, FILE_NAME, OpenError, Opened, Store, StoreError, VERSION};
use rusqlite::{Connection, ErrorCode, OpenFlags};
use tempfile::TempDir;

use crate::faults_disk::{Failing, FaultyDisk};
use crate::faults_vfs::{VFS, register};
use crate::store_sample::{VISIT, event, tap};

fn faulty() -> (TempDir, FaultyDisk) {
    register();
    let folder = tempfile::tempdir().unwrap();
    let disk = FaultyDisk::under(folder.path());
    (folder, disk)
}

fn open(folder: &TempDir) -> Result<Opened, OpenError> {
    Store::open_through(folder.path(), Some(VFS))
}

/// A sound store with some taps in it.
fn with_taps(folder: &TempDir, n_taps: u32) -> Store {
    let Opened { mut store, .. } = open(folder).unwrap();
    for seq in 0..n_taps {
        tap(&mut store, VISIT, seq).unwrap();
    }
    store
}

fn plain(folder: &TempDir, synchronous: &str) -> Result<Connection, rusqlite::Error> {
    let flags = OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_CREATE;
    let connection = Connection::open_with_flags_and_vfs(folder.path().join("plain.sqlite3"), flags, VFS)?;
    connection.pragma_update(None, "synchronous", synchronous)?;
    connection.pragma_update(None, "journal_mode", "WAL")?;
    connection.execute_batch("CREATE TABLE IF NOT EXISTS t (a INTEGER) STRICT")?;
    Ok(connection)
}

fn contents(folder: &Path) -> BTreeMap<String, Vec<u8>> {
    std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap())
        .map(|entry| (entry.file_name().into_string().unwrap(), std::fs::read(entry.path()).unwrap()))
        .collect()
}

/// After whatever happened: the events are the acknowledged ones and at most the one in flight, and work goes on.
fn check_nothing_lost(store: &mut Store, n_acknowledged: u32, what: &str) {
    let events = store.events(VISIT).unwrap();
    let n_events = u32::try_from(events.len()).unwrap();
    assert!(n_events == n_acknowledged || n_events == n_acknowledged + 1, "{what}: {n_acknowledged} of {n_events}");
    for (seq, found) in (1..).zip(&events) {
        assert_eq!(*found, event(VISIT, seq), "{what}");
    }
    assert_eq!(store.visit(VISIT).unwrap().map_or(0, |visit| visit.last_seq), n_events, "{what}");
    match tap(store, VISIT, n_acknowledged) {
        Ok(()) => assert_eq!(n_events, n_acknowledged, "{what}"),
        Err(AppendError::AlreadyAnswered { last_seq, .. }) => assert_eq!(last_seq, n_events, "{what}"),
        Err(other) => panic!("{what}: {other:?}"),
    }
    tap(store, VISIT, n_acknowledged + 1).unwrap();
}

#[test]
fn the_faulty_disk_loses_what_a_careless_file_did_not_sync() {
    let n_left = |synchronous: &str| -> i64 {
        let (folder, disk) = faulty();
        let connection = plain(&folder, synchronous).unwrap();
        connection.execute_batch("PRAGMA wal_checkpoint(TRUNCATE)").unwrap();
        for number in 0..5 {
            connection.execute("INSERT INTO t (a) VALUES (?1)", [number]).unwrap();
        }
        disk.fails(Some(Failing::Off));
        drop(connection);
        disk.lose_power(0);
        let connection = Connection::open(folder.path().join("plain.sqlite3")).unwrap();
        connection
            .query_row("SELECT count(*) FROM sqlite_schema WHERE name = 't'", (), |row| row.get::<_, i64>(0))
            .map(|n_tables| match n_tables {
                0 => 0,
                _ => connection.query_row("SELECT count(*) FROM t", (), |row| row.get(0)).unwrap(),
            })
            .unwrap()
    };
    assert_eq!(n_left("OFF"), 0);
    assert_eq!(n_left("NORMAL"), 0, "in WAL mode NORMAL syncs only when the log is moved into the file");
    assert_eq!(n_left("FULL"), 0, "the journal of turning to WAL mode is back, and undoes the making of the file");
    assert_eq!(n_left("EXTRA"), 5);
}

#[test]
fn acknowledged_taps_survive_a_power_loss_at_any_change_of_the_disk() {
    let n_seeds = if std::env::var_os("EVENSWARD_LONG").is_some() { 40 } else { 4 };
    let mut n_losses = 0;
    for seed in 0..n_seeds {
        for change_number in 1.. {
            let (folder, disk) = faulty();
            disk.fails_at(change_number, Failing::Off);
            let mut n_acknowledged = 0;
            if let Ok(Opened { mut store, .. }) = open(&folder) {
                while n_acknowledged < 12 && tap(&mut store, VISIT, n_acknowledged).is_ok() {
                    n_acknowledged += 1;
                }
                if !disk.has_failed() {
                    break;
                }
            }
            disk.lose_power(seed);
            let what = format!("seed {seed}, change {change_number}");
            let Opened { mut store, condition } = Store::open(folder.path()).expect(&what);
            assert!(n_acknowledged == 0 || condition == Condition::Current, "{what}: {condition:?}");
            check_nothing_lost(&mut store, n_acknowledged, &what);
            n_losses += 1;
        }
    }
    assert!(n_losses > 50 * n_seeds, "the power went only {n_losses} times");
}

#[test]
fn a_power_loss_while_the_log_is_moved_into_the_file_loses_nothing() {
    for seed in 0..8 {
        for change_number in 1.. {
            let (folder, disk) = faulty();
            let mut store = with_taps(&folder, 6);
            disk.fails_at(change_number, Failing::Off);
            // Erasing empties the log, and closing moves it into the file.
            let _ = store.erase_private(VISIT);
            drop(store);
            if !disk.has_failed() {
                assert!(change_number > 3, "moving the log changes the disk");
                break;
            }
            disk.lose_power(seed);
            let what = format!("seed {seed}, change {change_number}");
            let Opened { mut store, .. } = Store::open(folder.path()).expect(&what);
            check_nothing_lost(&mut store, 6, &what);
        }
    }
}

#[test]
fn on_a_full_disk_a_plain_file_fails_and_ours_says_so_and_goes_on_once_there_is_room() {
    let (folder, disk) = faulty();
    let connection = plain(&folder, "EXTRA").unwrap();
    let mut store = with_taps(&folder, 2);
    disk.fails(Some(Failing::Full));
    let plainly = connection.execute("INSERT INTO t (a) VALUES (1)", ()).unwrap_err();
    assert_eq!(plainly.sqlite_error_code(), Some(ErrorCode::DiskFull));

    let refused = tap(&mut store, VISIT, 2);
    assert!(matches!(refused, Err(AppendError::Store(StoreError::NoRoom))), "{refused:?}");
    assert!(matches!(store.put_draft("lawn", "{}"), Err(StoreError::NoRoom)));
    assert_eq!(store.events(VISIT).unwrap().len(), 2, "what was acknowledged can be read on a full disk");
    disk.fails(None);
    tap(&mut store, VISIT, 2).unwrap();
}

#[test]
fn a_disk_that_fills_up_at_any_write_loses_nothing() {
    for change_number in 1.. {
        let (folder, disk) = faulty();
        let mut store = with_taps(&folder, 1);
        disk.fails_at(change_number, Failing::Full);
        let mut n_acknowledged = 1;
        while n_acknowledged < 12 && tap(&mut store, VISIT, n_acknowledged).is_ok() {
            n_acknowledged += 1;
        }
        if !disk.has_failed() {
            assert!(change_number > 20);
            break;
        }
        let what = format!("change {change_number}");
        disk.fails(None);
        check_nothing_lost(&mut store, n_acknowledged, &what);
        drop(store);
        assert_eq!(open(&folder).unwrap().condition, Condition::Current, "{what}");
    }
}

#[test]
fn a_first_start_on_a_full_disk_is_said_plainly_and_works_once_there_is_room() {
    for change_number in 0.. {
        let (folder, disk) = faulty();
        if change_number == 0 {
            disk.fails(Some(Failing::Full));
        } else {
            disk.fails_at(change_number, Failing::Full);
        }
        let opened = open(&folder).map(|opened| opened.condition);
        if !disk.has_failed() {
            assert!(change_number > 5);
            break;
        }
        if change_number > 0 && opened.is_err() {
            assert!(matches!(opened, Err(OpenError::NoRoom { .. })), "change {change_number}: {opened:?}");
        }
        disk.fails(None);
        // Broken off between two steps of the schema, it is brought forward by those that lack.
        let condition = open(&folder).unwrap().condition;
        let is_brought_forward = matches!(condition, Condition::BroughtForward { from } if from < VERSION);
        assert!(is_brought_forward || matches!(condition, Condition::Made | Condition::Current), "{condition:?}");
        assert_eq!(open(&folder).unwrap().condition, Condition::Current);
    }
}

#[test]
fn a_folder_closed_to_writing_is_said_plainly_and_left_as_it_is() {
    let (folder, disk) = faulty();
    drop(with_taps(&folder, 2));
    let before = contents(folder.path());
    disk.fails(Some(Failing::Closed));
    assert!(plain(&folder, "EXTRA").is_err(), "a plain file can't be made there");

    let refused = open(&folder).map(|opened| opened.condition);
    assert!(matches!(refused, Err(OpenError::CannotWrite { .. })), "{refused:?}");
    assert_eq!(contents(folder.path()), before);
    disk.fails(None);
    assert_eq!(open(&folder).unwrap().store.events(VISIT).unwrap().len(), 2);
}

#[test]
fn a_disk_closed_to_writing_while_the_file_is_open_refuses_the_tap_and_keeps_the_rest() {
    let (folder, disk) = faulty();
    let mut store = with_taps(&folder, 2);
    disk.fails(Some(Failing::Closed));
    let refused = tap(&mut store, VISIT, 2);
    assert!(matches!(refused, Err(AppendError::Store(StoreError::CannotWrite { .. }))), "{refused:?}");
    assert_eq!(store.events(VISIT).unwrap().len(), 2);
    disk.fails(None);
    check_nothing_lost(&mut store, 2, "open to writing again");
}

#[test]
fn one_error_of_the_drive_at_any_change_refuses_one_tap_and_no_other() {
    for change_number in 1..=40 {
        let (folder, disk) = faulty();
        let mut store = with_taps(&folder, 1);
        disk.fails_at(change_number, Failing::Once);
        let mut n_acknowledged = 1;
        let mut refused = None;
        while n_acknowledged < 12 && refused.is_none() {
            match tap(&mut store, VISIT, n_acknowledged) {
                Ok(()) => n_acknowledged += 1,
                Err(error) => refused = Some(error),
            }
        }
        if let Some(refused) = refused {
            assert!(matches!(refused, AppendError::Store(StoreError::CannotWrite { .. })), "{refused:?}");
            check_nothing_lost(&mut store, n_acknowledged, &format!("change {change_number}"));
        }
        drop(store);
        let file = Connection::open(folder.path().join(FILE_NAME)).unwrap();
        let verdict: String = file.query_row("PRAGMA integrity_check", (), |row| row.get(0)).unwrap();
        assert_eq!(verdict, "ok");
    }
}
