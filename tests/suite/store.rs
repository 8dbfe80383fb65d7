//! The local file as its users see it: what was acknowledged is there, retries are harmless, and a file
//! that must not be touched is not touched.

use std::collections::BTreeMap;
use std::path::Path;

use evensward_format::chain::{ChainLink, verify};
use evensward_format::journal::StockUse;
use evensward_format::private::{PrivateText, Salt};
use evensward_format::register::{CALIBRATION, ImmutableEntry, REMOVED, STOCK_COUNT, Tick};
use evensward_store::{
    Append, AppendError, Condition, FILE_NAME, OpenError, Opened, RegisterChange, Store, StoreError, Unfit, VERSION,
};
use rusqlite::Connection;
use tempfile::TempDir;
use uuid::Uuid;

use crate::store_sample::{
    CLIENT, CONTAINER, DEVICE, LAWN, OPENED_UTC_MS, VISIT, append, edit, event, stock_use, tap, visit,
};

fn fresh() -> (TempDir, Store) {
    let folder = tempfile::tempdir().unwrap();
    let Opened { store, condition } = Store::open(folder.path()).unwrap();
    assert_eq!(condition, Condition::Made);
    (folder, store)
}

/// Every file of a folder with its bytes, but for what SQLite keeps in memory and spills beside it.
fn contents(folder: &Path) -> BTreeMap<String, Vec<u8>> {
    std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap())
        .map(|entry| (entry.file_name().into_string().unwrap(), std::fs::read(entry.path()).unwrap()))
        .filter(|(name, bytes)| !(name.ends_with("-shm") || name.ends_with("-wal") && bytes.is_empty()))
        .collect()
}

#[test]
fn what_was_acknowledged_is_read_back_byte_for_byte_after_reopening() {
    let (folder, mut store) = fresh();
    for seq in 0..3 {
        tap(&mut store, VISIT, seq).unwrap();
    }
    drop(store);
    let Opened { store, condition } = Store::open(folder.path()).unwrap();
    assert_eq!(condition, Condition::Current);
    assert_eq!(store.events(VISIT).unwrap(), [event(VISIT, 1), event(VISIT, 2), event(VISIT, 3)]);
    assert_eq!(store.visit(VISIT).unwrap(), Some(visit(VISIT, 3)));
    assert_eq!(store.events(Uuid::from_u128(5)).unwrap(), []);
}

#[test]
fn a_retried_command_is_answered_as_the_first_time_and_kept_once() {
    let (_folder, mut store) = fresh();
    tap(&mut store, VISIT, 0).unwrap();
    tap(&mut store, VISIT, 1).unwrap();
    for expected_seq in [0, 1, 2] {
        let mut retry = event(VISIT, expected_seq + 1);
        retry.command_id = event(VISIT, 1).command_id;
        retry.event_id = Uuid::from_u128(99);
        let answer = append(&mut store, expected_seq, &[retry], None).unwrap_err();
        assert!(
            matches!(answer, AppendError::AlreadyAnswered { visit_id: VISIT, first_seq: 1, last_seq: 1 }),
            "{answer:?}"
        );
    }
    assert_eq!(store.events(VISIT).unwrap().len(), 2);
    let answered = store.command(event(VISIT, 2).command_id).unwrap().unwrap();
    assert_eq!((answered.visit_id, answered.first_seq, answered.last_seq), (VISIT, 2, 2));
}

#[test]
fn a_stale_picture_is_refused_with_where_the_visit_stands() {
    let (_folder, mut store) = fresh();
    tap(&mut store, VISIT, 0).unwrap();
    tap(&mut store, VISIT, 1).unwrap();
    let mut late = event(VISIT, 2);
    late.command_id = Uuid::from_u128(98);
    assert!(matches!(append(&mut store, 1, &[late], None), Err(AppendError::Stale { actual_seq: 2 })));
    assert!(matches!(tap(&mut store, VISIT, 7), Err(AppendError::Stale { actual_seq: 2 })));
    assert_eq!(store.events(VISIT).unwrap(), [event(VISIT, 1), event(VISIT, 2)]);
}

#[test]
fn two_windows_on_one_file_never_write_over_each_other() {
    let (folder, mut one) = fresh();
    let Opened { store: mut two, .. } = Store::open(folder.path()).unwrap();
    tap(&mut one, VISIT, 0).unwrap();
    let mut other = event(VISIT, 1);
    other.command_id = Uuid::from_u128(97);
    assert!(matches!(append(&mut two, 0, &[other], None), Err(AppendError::Stale { actual_seq: 1 })));
    tap(&mut two, VISIT, 1).unwrap();
    assert_eq!(one.events(VISIT).unwrap(), two.events(VISIT).unwrap());
    assert_eq!(one.device_id(DEVICE).unwrap(), DEVICE);
    assert_eq!(two.device_id(Uuid::from_u128(3)).unwrap(), DEVICE, "the device's id is made once");
}

#[test]
fn rows_that_do_not_fit_together_are_refused_whole() {
    let (_folder, mut store) = fresh();
    let two = [event(VISIT, 1), event(VISIT, 2)];
    let mut same_command = two.clone();
    same_command[1].command_id = same_command[0].command_id;
    let mut gap = same_command.clone();
    gap[1].seq = 3;
    let mut visits = same_command.clone();
    visits[1].visit_id = LAWN;
    let link = ChainLink::close(None, DEVICE, VISIT, &two[..1]);
    let mut later = ChainLink::close(Some(&link), DEVICE, VISIT, &same_command);
    later.previous = link.hash;
    for (expected, events, link) in [
        (Unfit::Empty, &two[..0], None),
        (Unfit::Commands, &two[..], None),
        (Unfit::Gap, &gap[..], None),
        (Unfit::Visits, &visits[..], None),
        (Unfit::Behind, &same_command[..], Some(&link)),
        (Unfit::Chain, &same_command[..], Some(&later)),
    ] {
        let refused = append(&mut store, 0, events, link).unwrap_err();
        assert!(matches!(refused, AppendError::Unfit(unfit) if unfit == expected), "{expected:?}: {refused:?}");
    }
    assert_eq!(store.events(VISIT).unwrap(), []);
    append(&mut store, 0, &same_command, None).unwrap();
    assert_eq!(store.command(two[0].command_id).unwrap().unwrap().last_seq, 2);
}

#[test]
fn a_payload_that_is_no_json_is_refused_and_nothing_of_its_command_is_kept() {
    let (_folder, mut store) = fresh();
    let mut torn = event(VISIT, 1);
    torn.payload.pop();
    assert!(matches!(append(&mut store, 0, &[torn], None), Err(AppendError::Store(StoreError::Sqlite(_)))));
    assert_eq!(store.command(event(VISIT, 1).command_id).unwrap(), None);
    tap(&mut store, VISIT, 0).unwrap();
}

#[test]
fn lists_of_visits_hold_the_ones_asked_for_in_order() {
    let (_folder, mut store) = fresh();
    let of = |number: u128, opened_utc_ms: i64, closed: bool, look_back_on: Option<&str>| {
        let mut row = visit(Uuid::from_u128(number), 1);
        row.opened_utc_ms = opened_utc_ms;
        row.closed_utc_ms = closed.then_some(opened_utc_ms + 1);
        row.look_back_on = look_back_on.map(str::to_owned);
        row
    };
    let mut elsewhere = of(4, 400, false, None);
    elsewhere.lawn_id = CLIENT;
    for row in
        [of(1, 100, true, Some("2026-05-18")), of(2, 200, false, None), of(3, 300, true, Some("2026-05-04")), elsewhere]
    {
        let events = [event(row.visit_id, 1)];
        let (uses, private, link, clear_draft) = (None, &[], None, None);
        let append =
            Append { expected_seq: 0, events: &events, projection: &row, lawns: &[], uses, private, link, clear_draft };
        store.append(&append).unwrap();
    }
    let ids = |rows: Vec<evensward_format::journal::VisitRow>| -> Vec<u128> {
        rows.iter().map(|row| row.visit_id.as_u128()).collect()
    };
    assert_eq!(ids(store.visits_open().unwrap()), [2, 4]);
    assert_eq!(ids(store.visits_of_lawn(LAWN).unwrap()), [3, 2, 1]);
    assert_eq!(ids(store.visits_between(200, 400).unwrap()), [3, 2]);
    assert_eq!(ids(store.look_backs_due("2026-05-18").unwrap()), [3, 1]);
    assert_eq!(ids(store.look_backs_due("2026-05-17").unwrap()), [3]);
}

#[test]
fn what_a_visit_took_is_written_with_its_events_or_not_at_all() {
    let (_folder, mut store) = fresh();
    let mut seq = 0;
    let mut step = |store: &mut Store, uses: Option<&[StockUse]>| {
        let events = [event(VISIT, seq + 1)];
        let (row, private, link, clear_draft) = (visit(VISIT, seq + 1), &[], None, None);
        let append = Append {
            expected_seq: seq,
            events: &events,
            projection: &row,
            lawns: &[],
            uses,
            private,
            link,
            clear_draft,
        };
        let kept = store.append(&append);
        seq += u32::from(kept.is_ok());
        kept
    };
    let (one, two) = (stock_use(VISIT, 1), stock_use(VISIT, 2));
    step(&mut store, Some(&[one.clone(), two.clone()])).unwrap();
    step(&mut store, None).unwrap();
    assert_eq!(store.stock_uses().unwrap(), [one.clone(), two.clone()], "nothing said leaves them as they were");
    let of_another = step(&mut store, Some(&[stock_use(LAWN, 1)])).unwrap_err();
    assert!(matches!(of_another, AppendError::Unfit(Unfit::Visits)), "{of_another:?}");
    step(&mut store, Some(&[StockUse { unit: "kg".to_owned(), ..one.clone() }])).unwrap_err();
    assert_eq!(store.stock_uses().unwrap(), [one.clone(), two], "what failed took nothing away");
    assert_eq!(store.events(VISIT).unwrap().len(), 2);
    step(&mut store, Some(std::slice::from_ref(&one))).unwrap();
    assert_eq!(store.stock_uses_of(CONTAINER).unwrap(), [one], "a fill that was taken back leaves nothing");
    step(&mut store, Some(&[])).unwrap();
    assert_eq!(store.stock_uses().unwrap(), []);
}

#[test]
fn closed_records_form_a_chain_that_holds() {
    let (_folder, mut store) = fresh();
    let other = Uuid::from_u128(0xa1);
    for visit_id in [VISIT, other] {
        tap(&mut store, visit_id, 0).unwrap();
        let last = event(visit_id, 2);
        let mut events = store.events(visit_id).unwrap();
        events.push(last.clone());
        let end = store.last_link(DEVICE).unwrap();
        let link = ChainLink::close(end.as_ref(), DEVICE, visit_id, &events);
        append(&mut store, 1, &[last], Some(&link)).unwrap();
        assert_eq!(store.last_link(DEVICE).unwrap(), Some(link));
    }
    let (links, events) = (store.links().unwrap(), store.all_events().unwrap());
    assert_eq!((links.len(), events.len()), (2, 4));
    assert_eq!(verify(&links, &events), Ok(()));
}

#[test]
fn the_register_keeps_every_edit_and_shows_the_latest() {
    let (_folder, mut store) = fresh();
    let edits = [
        edit(1, "name", "\"Front\"", 10),
        edit(2, "slope", "{\"value\":2.5,\"unit\":\"%\"}", 11),
        edit(3, "name", "\"Front, left of the drive\"", 12),
    ];
    store.put_draft("lawn", "{\"name\":\"Fro\"}").unwrap();
    let change = RegisterChange { operations: &edits, clear_draft: Some("lawn"), ..RegisterChange::default() };
    store.change_register(&change).unwrap();
    store.change_register(&change).unwrap();
    let entry = store.entry("lawn", LAWN).unwrap().unwrap();
    assert_eq!(entry.fields["name"], "Front, left of the drive");
    assert_eq!(entry.fields["slope"]["value"], 2.5);
    assert_eq!(store.entries("lawn").unwrap(), [entry]);
    assert_eq!(store.entries("client").unwrap(), []);
    let history = store.field_history("lawn", LAWN, "name").unwrap();
    assert_eq!(history, [edits[2].clone(), edits[0].clone()]);
    assert_eq!(store.last_tick().unwrap(), Some(Tick { utc_ms: 12, counter: 0 }));
    assert_eq!(store.drafts().unwrap(), []);

    let removal = [edit(4, REMOVED, "true", 13)];
    store.change_register(&RegisterChange { operations: &removal, ..RegisterChange::default() }).unwrap();
    let removed = store.entry("lawn", LAWN).unwrap().unwrap();
    assert!(removed.removed && removed.fields.len() == 2, "taken out, and still readable");

    let mut other_words = edits[0].clone();
    other_words.value = "\"Back\"".to_owned();
    let clash = [edit(5, "slope", "1", 14), other_words];
    let refused = store.change_register(&RegisterChange { operations: &clash, ..RegisterChange::default() });
    assert!(matches!(refused, Err(StoreError::Differs { id }) if id == edits[0].operation_id), "{refused:?}");
    assert_eq!(store.field_history("lawn", LAWN, "slope").unwrap().len(), 1, "all of a change or nothing");
}

#[test]
fn an_immutable_entry_is_kept_once_and_never_replaced() {
    let (_folder, mut store) = fresh();
    let kit = Uuid::from_u128(0x71);
    let made = |number: u128, made_utc_ms: i64| ImmutableEntry {
        kind: CALIBRATION.to_owned(),
        entry_id: Uuid::from_u128(number),
        of: kit,
        made_utc_ms,
        device_id: DEVICE,
        body: "{\"flow_l_per_min\": 0.90}".to_owned(),
    };
    let both = [made(2, 20), made(1, 10)];
    let change = RegisterChange { immutables: &both, ..RegisterChange::default() };
    store.change_register(&change).unwrap();
    store.change_register(&change).unwrap();
    assert_eq!(store.immutables(CALIBRATION, kit).unwrap(), [made(1, 10), made(2, 20)]);
    let mut changed = made(1, 10);
    changed.body = "{}".to_owned();
    let changed = [changed];
    let refused = store.change_register(&RegisterChange { immutables: &changed, ..RegisterChange::default() });
    assert!(matches!(refused, Err(StoreError::Differs { .. })), "{refused:?}");
    assert_eq!(store.immutable(Uuid::from_u128(1)).unwrap(), Some(made(1, 10)));
}

#[test]
fn erased_words_are_nowhere_in_the_file_and_a_retry_does_not_bring_them_back() {
    let (folder, mut store) = fresh();
    let words = "Quillfeather, 4 Nowhere Lane ".repeat(400);
    let text = PrivateText::new(Uuid::from_u128(8), Salt([1; 16]), words);
    let texts = [text.clone()];
    let change = RegisterChange { private: &texts, ..RegisterChange::default() };
    store.change_register(&change).unwrap();
    assert_eq!(store.private_text(text.id).unwrap(), Some(text.clone()));
    let found = |folder: &Path| {
        contents(folder).values().any(|bytes| bytes.windows(12).any(|window| window == b"Quillfeather"))
    };
    assert!(found(folder.path()), "the search finds words that are there");

    store.erase_private(text.id).unwrap();
    assert!(!found(folder.path()));
    store.change_register(&change).unwrap();
    let left = store.private_text(text.id).unwrap().unwrap();
    assert_eq!((left.sha256, left.words.is_none()), (text.sha256, true));
    assert!(left.holds());
}

#[test]
fn a_draft_is_cleared_by_the_command_it_was_typed_for_and_by_no_failed_one() {
    let (_folder, mut store) = fresh();
    store.put_draft("ready", "{\"wind\":\"2\"}").unwrap();
    store.put_draft("ready", "{\"wind\":\"2.5\"}").unwrap();
    let (events, row) = ([event(VISIT, 1)], visit(VISIT, 1));
    let clear_draft = Some("ready");
    let (uses, private, link) = (None, &[], None);
    let ready =
        Append { expected_seq: 0, events: &events, projection: &row, lawns: &[], uses, private, link, clear_draft };
    store.append(&Append { expected_seq: 3, ..ready }).unwrap_err();
    assert_eq!(store.draft("ready").unwrap().as_deref(), Some("{\"wind\":\"2.5\"}"));
    store.append(&ready).unwrap();
    assert_eq!(store.draft("ready").unwrap(), None);
    store.clear_draft("ready").unwrap();
    assert!(store.put_draft("ready", "half").is_err(), "a draft is JSON");
}

#[test]
fn a_backup_is_a_whole_file_and_never_writes_over_another() {
    let (folder, mut store) = fresh();
    tap(&mut store, VISIT, 0).unwrap();
    let elsewhere = tempfile::tempdir().unwrap();
    let target = elsewhere.path().join(FILE_NAME);
    std::fs::write(elsewhere.path().join(format!("{FILE_NAME}.part")), "left by an earlier try").unwrap();
    store.backup_to(&target).unwrap();
    assert!(matches!(store.backup_to(&target), Err(StoreError::Exists { .. })));
    let Opened { store: copy, condition } = Store::open(elsewhere.path()).unwrap();
    assert_eq!(condition, Condition::Current);
    assert_eq!(copy.events(VISIT).unwrap(), store.events(VISIT).unwrap());
    drop(folder);
}

#[test]
fn a_file_of_a_newer_version_is_read_and_not_touched() {
    let (folder, mut store) = fresh();
    tap(&mut store, VISIT, 0).unwrap();
    drop(store);
    let raw = Connection::open(folder.path().join(FILE_NAME)).unwrap();
    raw.execute_batch("ALTER TABLE event ADD COLUMN later TEXT").unwrap();
    raw.pragma_update(None, "user_version", VERSION + 1).unwrap();
    // A second connection keeps the first one's closing from tidying the log away: the log, too, must stay.
    let before = contents(folder.path());
    assert!(before.len() == 2, "{:?}", before.keys());
    let Opened { mut store, condition } = Store::open(folder.path()).unwrap();
    assert_eq!(condition, Condition::Newer { version: VERSION + 1 });
    assert_eq!(store.events(VISIT).unwrap(), [event(VISIT, 1)]);
    let refused = tap(&mut store, VISIT, 1);
    assert!(matches!(refused, Err(AppendError::Store(StoreError::Newer { .. }))), "{refused:?}");
    assert!(matches!(store.put_draft("a", "{}"), Err(StoreError::Newer { .. })));
    drop(store);
    assert_eq!(contents(folder.path()), before);
}

/// Spoils a good file, and expects it to be left as it is, then to be put aside whole when asked.
fn check_damaged(spoil: impl FnOnce(&Path)) {
    let (folder, mut store) = fresh();
    for seq in 0..40 {
        tap(&mut store, VISIT, seq).unwrap();
    }
    drop(store);
    spoil(&folder.path().join(FILE_NAME));
    let before = contents(folder.path());
    for _ in 0..2 {
        let refused = Store::open(folder.path()).map(|opened| opened.condition);
        assert!(matches!(refused, Err(OpenError::Damaged { .. })), "{refused:?}");
        assert_eq!(contents(folder.path()), before, "left as it was");
    }
    let (Opened { condition, .. }, aside) = Store::put_aside_and_start_new(folder.path()).unwrap();
    assert_eq!(condition, Condition::Made);
    assert_eq!(contents(&aside.expect("a folder for the damaged file")), before, "put aside whole");
    let (Opened { condition, .. }, aside) = Store::put_aside_and_start_new(folder.path()).unwrap();
    assert_eq!((condition, aside), (Condition::Current, None), "a sound file is never put aside");
}

#[test]
fn a_damaged_file_is_left_as_it_is_until_it_is_put_aside() {
    let write_at = |path: &Path, offset: usize, bytes: &[u8]| {
        let mut all = std::fs::read(path).unwrap();
        all.splice(offset..offset + bytes.len(), bytes.iter().copied());
        std::fs::write(path, all).unwrap();
    };
    check_damaged(|path| std::fs::write(path, "not a database, but somebody's words\n".repeat(200)).unwrap());
    check_damaged(|path| write_at(path, 0, b"SQLite format 9"));
    check_damaged(|path| write_at(path, 4096 * 2, &[0xff; 4096]));
    check_damaged(|path| {
        let all = std::fs::read(path).unwrap();
        std::fs::write(path, &all[..all.len() / 2]).unwrap();
    });
    check_damaged(|path| {
        // Emptied, while the log beside it still holds what was written last.
        std::fs::write(path, "").unwrap();
        std::fs::write(path.with_extension("sqlite3-wal"), "what was written last").unwrap();
    });
    check_damaged(|path| {
        std::fs::remove_file(path).unwrap();
        Connection::open(path).unwrap().execute_batch("CREATE TABLE others (a)").unwrap();
    });
}

#[test]
fn a_first_start_that_was_broken_off_is_simply_a_first_start() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join(FILE_NAME), "").unwrap();
    assert_eq!(Store::open(folder.path()).unwrap().condition, Condition::Made);
    let folder = tempfile::tempdir().unwrap();
    let raw = Connection::open(folder.path().join(FILE_NAME)).unwrap();
    raw.pragma_update(None, "journal_mode", "WAL").unwrap();
    drop(raw);
    assert_eq!(Store::open(folder.path()).unwrap().condition, Condition::Made);
}

#[test]
fn a_folder_that_can_not_be_made_is_said_plainly() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("a-file");
    std::fs::write(&file, "").unwrap();
    let refused = Store::open(&file.join("below")).map(|opened| opened.condition);
    assert!(matches!(refused, Err(OpenError::CannotWrite { .. })), "{refused:?}");
}

#[test]
fn a_file_that_another_program_holds_is_busy_not_damaged() {
    let (folder, mut store) = fresh();
    tap(&mut store, VISIT, 0).unwrap();
    let holder = Connection::open(folder.path().join(FILE_NAME)).unwrap();
    holder.execute_batch("BEGIN IMMEDIATE").unwrap();
    let refused = tap(&mut store, VISIT, 1);
    assert!(matches!(refused, Err(AppendError::Store(StoreError::Busy))), "{refused:?}");
    holder.execute_batch("ROLLBACK").unwrap();
    tap(&mut store, VISIT, 1).unwrap();
}

/// Each released schema is kept as a dump, brought forward, and must still say what it said.
#[test]
fn a_file_of_each_released_version_is_brought_forward_with_all_it_holds() {
    let released = [
        (1, include_str!("../../demo-data/dumps/schema-1.sql")),
        (2, include_str!("../../demo-data/dumps/schema-2.sql")),
        (3, include_str!("../../demo-data/dumps/schema-3.sql")),
    ];
    assert_eq!(released.last().map(|(version, _)| *version), Some(VERSION), "this version has its dump");
    for (version, dump) in released {
        let folder = tempfile::tempdir().unwrap();
        let raw = Connection::open(folder.path().join(FILE_NAME)).unwrap();
        raw.execute_batch(dump).unwrap();
        drop(raw);
        let Opened { mut store, condition } = Store::open(folder.path()).unwrap();
        let brought = Condition::BroughtForward { from: version };
        assert_eq!(condition, if VERSION == version { Condition::Current } else { brought });
        let further = store.visits_of_lawn(Uuid::from_u128(0x5b)).unwrap();
        assert_eq!(further.len(), usize::from(version >= 3), "a further lawn of a visit finds it");
        holds_what_the_dumps_share(&mut store);
        let uses = store.stock_uses_of(CONTAINER).unwrap();
        if version < 2 {
            assert_eq!(uses, []);
        } else {
            assert_eq!(uses, [StockUse { amount: 250.5, ..stock_use(VISIT, 1) }]);
            assert_eq!(store.immutables(STOCK_COUNT, CONTAINER).unwrap().len(), 1);
            assert_eq!(store.entry("container", CONTAINER).unwrap().unwrap().fields["batch"], "INV-26-07");
        }
        store.put_stock_uses(VISIT, &[stock_use(VISIT, 2)]).unwrap();
        assert_eq!(store.stock_uses().unwrap(), [stock_use(VISIT, 2)]);
    }
}

fn holds_what_the_dumps_share(store: &mut Store) {
    let events = store.events(VISIT).unwrap();
    assert_eq!(events, [event(VISIT, 1), event(VISIT, 2)]);
    assert_eq!(verify(&store.links().unwrap(), &events), Ok(()));
    let row = store.visit(VISIT).unwrap().unwrap();
    assert_eq!((row.closed_utc_ms, row.look_back_on.as_deref()), (Some(OPENED_UTC_MS + 2000), Some("2026-05-18")));
    assert_eq!(store.command(events[1].command_id).unwrap().unwrap().last_seq, 2);
    let lawn = store.entry("lawn", LAWN).unwrap().unwrap();
    assert_eq!((&lawn.fields["name"], lawn.removed), (&"Front".into(), false));
    assert_eq!(store.immutables(CALIBRATION, Uuid::from_u128(0x71)).unwrap().len(), 1);
    assert!(store.private_text(Uuid::from_u128(0x90)).unwrap().unwrap().holds());
    assert!(store.private_text(Uuid::from_u128(0x91)).unwrap().unwrap().words.is_none());
    assert_eq!(store.draft("lawn:new").unwrap().as_deref(), Some("{\"name\":\"Ba\"}"));
    assert_eq!(store.device_id(Uuid::nil()).unwrap(), DEVICE);
    assert_eq!(store.setting("language").unwrap().as_deref(), Some("en"));
    tap(store, VISIT, 2).unwrap();
}
