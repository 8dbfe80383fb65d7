//! The journal's figures: what a tap costs until it is on the disk, against the bare cost of one SQLite
//! commit of the same bytes in the same folder, and what it takes to read a long visit anew.
//!
//! A tap is answered with the whole screen; drawing that answer up is timed by asking for the same screen again, and
//! taken off, since it comes after the commit. "The same bytes" is measured in two ways: as the bytes of the rows, and
//! as the bytes that SQLite writes to its log for them (whole pages of each table and index that a tap touches).
//! Taps and bare commits take turns in small lots, so that a disk that grows slow grows slow for both. Works in
//! a folder that should be empty.

use std::path::Path;
use std::time::Instant;

use evensward_companion::doorway::Doorway;
use evensward_companion::dto::ask::{Answer, Ask};
use evensward_companion::dto::visit::{Panel, VisitView};
use evensward_companion::system;
use rusqlite::Connection;
use serde_json::{Value, json};
use uuid::Uuid;

use crate::{Outcome, quantile};

/// Events in the visit that is read anew.
const N_EVENTS: u32 = 2_000;
/// Taps, then bare commits, before the other's turn comes.
const N_IN_A_LOT: u32 = 20;
/// How often the long visit is read anew.
const N_READS: u32 = 15;

/// A page of SQLite's files.
const PAGE_BYTES: usize = 4_096;

const LAWN: &str = "01900000-0000-7000-8000-000000000201";
const PRODUCT: &str = "01900000-0000-7000-8000-000000000301";
const KIT: &str = "01900000-0000-7000-8000-000000000401";

/// A visit under way, and what it was answered with last.
struct Visit {
    door: Doorway,
    id: String,
    view: Box<VisitView>,
}

impl Visit {
    fn open(folder: &Path) -> Outcome<Self> {
        let mut door = Doorway::new(folder.to_owned(), system::ports());
        let firm = Path::new(env!("CARGO_MANIFEST_DIR")).join("../demo-data/firm.json");
        let asks: Vec<Ask> = serde_json::from_str(&std::fs::read_to_string(firm)?)?;
        for ask in asks {
            door.ask(ask).map_err(|failure| format!("{failure:?}"))?;
        }
        let id = Uuid::now_v7().to_string();
        let ask = json!({"ask": "open_visit", "visit_id": id, "command_id": Uuid::now_v7(), "lawn_id": LAWN});
        let view = visit_of(&mut door, ask)?;
        let mut visit = Self { door, id, view };
        let assess = json!({
            "target": "moss", "share": "some", "applied": "nothing", "applied_what": "", "applied_on": "", "survivors": ""
        });
        visit.act(json!({"act": "assess", "input": assess}))?;
        visit.act(json!({"act": "choose_product", "product_id": PRODUCT}))?;
        visit.act(json!({"act": "choose_kit", "kit_id": KIT}))?;
        let Panel::Plan { choice, .. } = &visit.view.panel else {
            return Err(format!("no plan is asked for: {:?}", visit.view.panel).into());
        };
        visit.act(json!({"act": "agree_plan", "choice": choice}))?;
        Ok(visit)
    }

    fn act(&mut self, act: Value) -> Outcome<()> {
        let ask = json!({
            "ask": "act", "visit_id": self.id, "command_id": Uuid::now_v7(), "expected_seq": self.view.seq, "act": act,
        });
        self.view = visit_of(&mut self.door, ask)?;
        Ok(())
    }

    /// Asks for the same screen again.
    fn look(&mut self) -> Outcome<()> {
        let view = visit_of(&mut self.door, json!({"ask": "visit", "visit_id": self.id}))?;
        if view.seq == self.view.seq { Ok(()) } else { Err("another screen came back".into()) }
    }

    /// One tap on the ready list, there and back again.
    fn tap(&mut self) -> Outcome<()> {
        let Panel::Ready { items, .. } = &self.view.panel else {
            return Err(format!("the ready list is not open: {:?}", self.view.panel).into());
        };
        let item = items.first().ok_or("the ready list is empty")?;
        self.act(json!({"act": "tick_ready", "item": item.item, "on": !item.is_ticked}))
    }
}

fn visit_of(door: &mut Doorway, ask: Value) -> Outcome<Box<VisitView>> {
    match door.ask(serde_json::from_value(ask)?) {
        Ok(Answer::Visit(view)) => Ok(view),
        other => Err(format!("no visit came back: {other:?}").into()),
    }
}

/// SQLite as bare as it goes: one table, one row a commit, as safe a commit as the app's.
struct Bare {
    connection: Connection,
    row: Vec<u8>,
}

impl Bare {
    fn open(file: &Path, n_bytes: usize) -> Outcome<Self> {
        let connection = Connection::open(file)?;
        connection.pragma_update(None, "journal_mode", "WAL")?;
        connection.pragma_update(None, "synchronous", "FULL")?;
        connection.execute_batch("CREATE TABLE row (id INTEGER PRIMARY KEY, bytes BLOB NOT NULL) STRICT")?;
        Ok(Self { connection, row: vec![b'x'; n_bytes] })
    }

    fn commit(&mut self) -> Outcome<()> {
        let transaction = self.connection.transaction_with_behavior(rusqlite::TransactionBehavior::Immediate)?;
        transaction.prepare_cached("INSERT INTO row (bytes) VALUES (?1)")?.execute([&self.row])?;
        Ok(transaction.commit()?)
    }
}

/// Bytes that a tap adds to the file: its event, its answered command and the visit's projection.
fn bytes_of_a_tap(file: &Path) -> Outcome<usize> {
    let connection = Connection::open_with_flags(file, rusqlite::OpenFlags::SQLITE_OPEN_READ_ONLY)?;
    let event: f64 = connection.query_row(
        "SELECT avg(length(payload) + length(kind) + length(zone) + 5 * 16 + 4 * 8) FROM event \
         WHERE seq > (SELECT max(seq) - 10 FROM event)",
        [],
        |row| row.get(0),
    )?;
    let visit: f64 =
        connection.query_row("SELECT avg(length(summary) + length(stage) + 6 * 16 + 5 * 8) FROM visit", [], |row| {
            row.get(0)
        })?;
    let command = 16.0 + 16.0 + 2.0 * 8.0;
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a few hundred bytes")]
    Ok((event + visit + command).round() as usize)
}

/// Bytes that SQLite writes to its log for a tap.
fn log_bytes_of_a_tap(visit: &mut Visit, file: &Path) -> Outcome<usize> {
    let connection = Connection::open(file)?;
    connection.query_row("PRAGMA wal_checkpoint(TRUNCATE)", [], |_row| Ok(()))?;
    for _ in 0..N_IN_A_LOT {
        visit.tap()?;
    }
    let log = file.with_extension("sqlite3-wal");
    Ok(usize::try_from(std::fs::metadata(log)?.len())? / usize::try_from(N_IN_A_LOT)?)
}

fn timed_us(work: impl FnOnce() -> Outcome<()>) -> Outcome<f64> {
    let started_at = Instant::now();
    work()?;
    Ok(started_at.elapsed().as_secs_f64() * 1e6)
}

/// Takes the figures in an empty folder.
pub fn figures(folder: &Path) -> Outcome<Value> {
    let mut visit = Visit::open(folder)?;
    for _ in 0..N_IN_A_LOT {
        visit.tap()?;
    }
    let file = folder.join(evensward_store::FILE_NAME);
    let n_bytes = bytes_of_a_tap(&file)?;
    let n_log_bytes = log_bytes_of_a_tap(&mut visit, &file)?;
    let mut bare = Bare::open(&folder.join("bare.sqlite3"), n_bytes)?;
    let mut bare_log = Bare::open(&folder.join("bare-log.sqlite3"), n_log_bytes.saturating_sub(PAGE_BYTES))?;
    let (mut taps_us, mut answers_us, mut bare_us, mut log_us) = (Vec::new(), Vec::new(), Vec::new(), Vec::new());
    while visit.view.seq < N_EVENTS {
        for _ in 0..N_IN_A_LOT {
            taps_us.push(timed_us(|| visit.tap())?);
        }
        for _ in 0..N_IN_A_LOT {
            answers_us.push(timed_us(|| visit.look())?);
        }
        for _ in 0..N_IN_A_LOT {
            bare_us.push(timed_us(|| bare.commit())?);
        }
        for _ in 0..N_IN_A_LOT {
            log_us.push(timed_us(|| bare_log.commit())?);
        }
    }
    let mut reads_ms = Vec::new();
    for _ in 0..N_READS {
        let mut door = Doorway::new(folder.to_owned(), system::ports());
        door.ask(Ask::Home).map_err(|failure| format!("{failure:?}"))?;
        let started_at = Instant::now();
        visit_of(&mut door, json!({"ask": "visit", "visit_id": visit.id}))?;
        reads_ms.push(started_at.elapsed().as_secs_f64() * 1e3);
    }
    let median = |figures: &mut [f64]| quantile(figures, 0.5).unwrap_or(f64::NAN);
    let (tap_us, answer_us) = (median(&mut taps_us), median(&mut answers_us));
    let committed_us = tap_us - answer_us;
    Ok(json!({
        "tap_to_answer_us": {"p50": tap_us, "p95": quantile(&mut taps_us, 0.95), "n": taps_us.len()},
        "answer_us": {"p50": answer_us, "p95": quantile(&mut answers_us, 0.95)},
        "tap_to_committed_us": committed_us,
        "bare_commit_us": {"p50": median(&mut bare_us), "p95": quantile(&mut bare_us, 0.95), "row_bytes": n_bytes},
        "bare_commit_of_log_bytes_us": {
            "p50": median(&mut log_us), "p95": quantile(&mut log_us, 0.95), "log_bytes": n_log_bytes,
        },
        "tap_ratio": committed_us / median(&mut log_us),
        "tap_ratio_to_row_bytes": committed_us / median(&mut bare_us),
        "tap_ratio_aim": 1.3,
        "replay_n_events": visit.view.seq,
        "replay_ms": median(&mut reads_ms),
        "replay_ms_aim": 5.0,
    }))
}
