//! Tests of the use cases: a file in a folder of its own, a clock that stands still, ids that count.
//!
//! Good forms are those of the invented firm in `demo-data`; a wrong one is a good one with a single value changed.

mod bad_lawns;
mod calibration;
mod course;
mod day;
mod home;
mod kept_ground;
mod kit;
mod label;
mod lawn;
mod mixing;
mod placed;
mod product;
mod register;
mod rest;
mod several;
mod spoiled;
mod stock;
mod stock_laws;
mod visit;
mod walk;

use std::sync::Arc;
use std::sync::atomic::{AtomicI64, AtomicU64, Ordering};

use evensward_format::journal::Stamp;
use evensward_format::private::Salt;
use evensward_store::Store;
use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::Value;
use tempfile::TempDir;
use uuid::Uuid;

use crate::Companion;
use crate::doorway::Doorway;
use crate::dto::ask::{Answer, Ask, Failure, FailureCode};
use crate::dto::figures::FieldProblem;
use crate::ports::{Clock, Ids, Ports};

/// 2026-11-24, noon in UTC.
const NOON_UTC_MS: i64 = 1_795_521_600_000;

struct StillClock(AtomicI64);

impl Clock for StillClock {
    fn now(&self) -> Stamp {
        Stamp {
            utc_ms: self.0.load(Ordering::Relaxed),
            offset_min: 0,
            zone: "Europe/London".into(),
            mono_ms: self.0.load(Ordering::Relaxed) - NOON_UTC_MS,
            run_id: Uuid::from_u128(7),
        }
    }
}

struct CountingIds(AtomicU64);

impl Ids for CountingIds {
    fn id(&self) -> Uuid {
        Uuid::from_u128((0x0190 << 112) + u128::from(self.0.fetch_add(1, Ordering::Relaxed)))
    }

    fn salt(&self) -> Salt {
        Salt([u8::try_from(self.0.fetch_add(1, Ordering::Relaxed) % 256).unwrap(); 16])
    }
}

fn ports() -> (Ports, Arc<StillClock>) {
    let clock = Arc::new(StillClock(AtomicI64::new(NOON_UTC_MS)));
    let ids = Arc::new(CountingIds(AtomicU64::new(1)));
    (Ports { clock: clock.clone(), ids }, clock)
}

/// A companion over a new file; the folder vanishes with it.
struct Trial {
    companion: Companion,
    clock: Arc<StillClock>,
    folder: TempDir,
}

impl Trial {
    fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let opened = Store::open(folder.path()).unwrap();
        let (ports, clock) = ports();
        let companion = Companion::new(opened.store, opened.condition, folder.path(), ports).unwrap();
        Self { companion, clock, folder }
    }

    /// Lets milliseconds go by.
    fn wait_ms(&self, ms: i64) {
        self.clock.0.fetch_add(ms, Ordering::Relaxed);
    }

    /// Lets days go by.
    fn wait_days(&self, days: i64) {
        self.clock.0.fetch_add(days * 86_400_000, Ordering::Relaxed);
    }

    /// With the whole invented firm in it.
    fn with_demo() -> Self {
        let mut trial = Self::new();
        for ask in demo() {
            trial.done(ask);
        }
        trial
    }

    /// With the invented firm, but with nothing on its shelf.
    fn with_demo_and_no_container() -> Self {
        let mut trial = Self::new();
        let is_of_shelf = |ask: &Ask| matches!(ask, Ask::SaveContainer { .. } | Ask::CountContainer { .. });
        for ask in demo().into_iter().filter(|ask| !is_of_shelf(ask)) {
            trial.done(ask);
        }
        trial
    }

    fn ask(&mut self, ask: Ask) -> Result<Answer, Failure> {
        self.companion.ask(ask)
    }

    fn done(&mut self, ask: Ask) -> Answer {
        let said = format!("{ask:?}");
        self.ask(ask).unwrap_or_else(|failure| panic!("{said}\nfailed: {failure:?}"))
    }

    /// How many edits of the register there are: none are ever taken out.
    fn n_edits(&self, kind: &str, entry_id: Uuid, fields: &[&str]) -> usize {
        let store = &self.companion.store;
        fields.iter().map(|field| store.field_history(kind, entry_id, field).unwrap().len()).sum()
    }
}

/// Everything the invented firm would type.
fn demo() -> Vec<Ask> {
    serde_json::from_str(include_str!("../../../../../demo-data/firm.json")).unwrap()
}

/// A form with one value changed: `at` is a JSON pointer such as `/parts/0/width/text`.
fn changed<T: Serialize + DeserializeOwned>(form: &T, at: &str, to: Value) -> T {
    let mut json = serde_json::to_value(form).unwrap();
    *json.pointer_mut(at).unwrap_or_else(|| panic!("the form has no {at}")) = to;
    serde_json::from_value(json).unwrap()
}

/// A length in metres as typed.
fn metres(text: &str) -> crate::dto::figures::Typed {
    crate::dto::figures::Typed { text: text.into(), unit: "m".into() }
}

/// Fields and codes, for comparing.
fn codes(problems: &[FieldProblem]) -> Vec<(&str, &str)> {
    problems.iter().map(|problem| (problem.field.as_str(), problem.said.code.as_str())).collect()
}

#[test]
fn the_invented_firm_is_kept_without_a_problem() {
    let mut trial = Trial::with_demo();
    let Answer::Home(home) = trial.done(Ask::Home) else { panic!("home") };
    assert_eq!(home.lawns.len(), 10);
    assert!(home.lawns.iter().all(|line| line.view.problems.is_empty() && line.view.drawing.is_some()));
    assert!(home.lawns.iter().all(|line| line.client.is_some()));
    assert_eq!((home.n_products, home.n_kits, home.n_calibrated), (6, 2, 1));
    let Answer::Products(products) = trial.done(Ask::Products) else { panic!("products") };
    for product in &products {
        assert_eq!(product.entry.problems, [], "{}", product.entry.input.name);
        assert_eq!(product.entry.notes, [], "{}", product.entry.input.name);
    }
    let Answer::Kits(kits) = trial.done(Ask::Kits) else { panic!("kits") };
    assert!(kits.iter().all(|kit| kit.entry.problems.is_empty()));
}

#[test]
fn the_invented_firm_may_be_asked_twice_and_comes_to_the_same() {
    let mut trial = Trial::with_demo();
    let lists = [Ask::Home, Ask::Operator, Ask::Clients, Ask::Products, Ask::Kits, Ask::Shelf];
    let once: Vec<Answer> = lists.iter().map(|list| trial.done(list.clone())).collect();
    for ask in demo() {
        trial.done(ask);
    }
    let twice: Vec<Answer> = lists.iter().map(|list| trial.done(list.clone())).collect();
    assert_eq!(twice, once);
}

#[test]
fn the_invented_firm_shows_a_season() {
    let mut trial = Trial::with_demo();
    let Answer::Kits(kits) = trial.done(Ask::Kits) else { panic!("kits") };
    let kit = kits.iter().find(|kit| kit.entry.input.name.contains("knapsack")).unwrap();
    let history = &kit.entry.history;
    assert_eq!(history.len(), 7);
    let by_nozzle = |said: &crate::dto::figures::Said| said.code == "calibration-ended-by-nozzle";
    let ended = history.iter().filter(|point| point.ended_by.as_ref().is_some_and(by_nozzle));
    assert_eq!(ended.count(), 1, "the nozzle was changed once");
    let flows: Vec<f64> = history.iter().map(|point| point.flow.value).collect();
    assert!(flows[..4].is_sorted() && flows[4..].is_sorted(), "each nozzle wears: {flows:?}");
}

#[test]
fn a_question_about_what_is_not_there_or_no_id_at_all_is_said_so() {
    let mut trial = Trial::new();
    let nobody = Uuid::from_u128(1).to_string();
    let failure = trial.ask(Ask::Lawn { lawn_id: nobody.clone() }).unwrap_err();
    assert_eq!((failure.code, failure.said.code.as_str()), (FailureCode::NotFound, "failure-not-found"));
    let failure = trial.ask(Ask::Kit { kit_id: nobody }).unwrap_err();
    assert_eq!(failure.code, FailureCode::NotFound);
    let failure = trial.ask(Ask::Product { product_id: "the blue one".into() }).unwrap_err();
    assert_eq!(failure.code, FailureCode::Malformed);
}

#[test]
fn a_damaged_file_is_said_so_and_put_aside_only_on_the_operators_word() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join(evensward_store::FILE_NAME);
    #[expect(clippy::disallowed_methods, reason = "the test spoils the file on purpose")]
    std::fs::write(&path, b"this is no database, and yet it may be all there is").unwrap();
    let mut door = Doorway::new(folder.path().to_owned(), ports().0);
    for _ in 0..2 {
        let failure = door.ask(Ask::Home).unwrap_err();
        assert_eq!((failure.code, failure.said.code.as_str()), (FailureCode::Damaged, "failure-open-damaged"));
        assert!(failure.said.args.contains_key("path"));
    }
    assert_eq!(door.ask(Ask::PutAsideDamaged).unwrap(), Answer::Done);
    assert!(matches!(door.ask(Ask::Home).unwrap(), Answer::Home(_)));
    assert!(folder.path().join("put-aside-1").join(evensward_store::FILE_NAME).exists());
    // Asked again of a sound file, nothing is moved.
    assert_eq!(door.ask(Ask::PutAsideDamaged).unwrap(), Answer::Done);
    assert!(!folder.path().join("put-aside-2").exists());
}
