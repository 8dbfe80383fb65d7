//! The first screen's order and counts, and the emergency words.

use evensward_format::journal::{EventRow, Stamp, VisitRow};
use evensward_store::Append;
use serde_json::json;
use uuid::Uuid;

use super::{NOON_UTC_MS, Trial, demo};
use crate::dto::ask::{Answer, Ask};
use crate::dto::home::HomeView;

const N_VISITS_ID: u128 = 900;

fn home(trial: &mut Trial) -> HomeView {
    match trial.done(Ask::Home) {
        Answer::Home(home) => home,
        other => panic!("{other:?}"),
    }
}

fn lawn_id(n: u32) -> Uuid {
    format!("01900000-0000-7000-8000-000000000{n}").parse().unwrap()
}

/// A visit's row as the visits would leave it.
struct Visit<'a> {
    n: u128,
    lawn: u32,
    stage: &'a str,
    closed: bool,
    look_back_on: Option<&'a str>,
    product_id: Option<Uuid>,
    summary: serde_json::Value,
}

fn add(trial: &mut Trial, visit: &Visit<'_>) {
    let visit_id = Uuid::from_u128(N_VISITS_ID + visit.n);
    let at_utc_ms = NOON_UTC_MS + i64::try_from(visit.n).unwrap();
    let run_id = Uuid::from_u128(7);
    let event = EventRow {
        event_id: Uuid::from_u128(N_VISITS_ID * 2 + visit.n),
        visit_id,
        seq: 1,
        device_id: trial.companion.device_id,
        command_id: Uuid::from_u128(N_VISITS_ID * 3 + visit.n),
        at: Stamp { utc_ms: at_utc_ms, offset_min: 0, zone: "Europe/London".into(), mono_ms: 0, run_id },
        kind: "opened".into(),
        version: 1,
        payload: "{}".into(),
    };
    let projection = VisitRow {
        visit_id,
        lawn_id: lawn_id(visit.lawn),
        client_id: Uuid::nil(),
        product_id: visit.product_id,
        kit_id: None,
        device_id: trial.companion.device_id,
        stage: visit.stage.into(),
        last_seq: 1,
        opened_utc_ms: at_utc_ms,
        changed_utc_ms: at_utc_ms,
        closed_utc_ms: visit.closed.then_some(at_utc_ms),
        look_back_on: visit.look_back_on.map(str::to_owned),
        summary: visit.summary.to_string(),
    };
    let append = Append {
        expected_seq: 0,
        events: &[event],
        projection: &projection,
        lawns: &[],
        private: &[],
        link: None,
        clear_draft: None,
        uses: None,
    };
    trial.companion.store.append(&append).unwrap();
}

fn closed(n: u128, lawn: u32, look_back_on: Option<&str>) -> Visit<'_> {
    let said = json!({"code": "visit-summary", "args": {"n": {"kind": "count", "value": n as u32}}});
    let summary = json!({"stage": "closed", "said": said, "next": [{"code": "water-trim", "args": {}}]});
    Visit { n, lawn, stage: "closed", closed: true, look_back_on, product_id: None, summary }
}

fn under_way(n: u128, lawn: u32) -> Visit<'static> {
    let summary = json!({"stage": "walk"});
    Visit { n, lawn, stage: "walk", closed: false, look_back_on: None, product_id: None, summary }
}

/// The three lawns that the visits of these tests are made for, in the order of the page.
fn order(home: &HomeView) -> Vec<&str> {
    let asked = ["Back lawn by the pond", "Corner piece", "Front lawn"];
    home.lawns.iter().map(|line| line.name.as_str()).filter(|name| asked.contains(name)).collect()
}

#[test]
fn an_empty_file_asks_for_nothing_and_says_where_it_lies() {
    let mut trial = Trial::new();
    let home = home(&mut trial);
    assert_eq!((home.operator, home.lawns, home.n_products, home.n_kits), (None, vec![], 0, 0));
    assert_eq!(home.today, "2026-11-24");
    assert_eq!(home.data_folder, trial.folder.path().display().to_string());
    assert_eq!(home.file, None);
}

#[test]
fn visits_under_way_come_first_then_look_backs_due_then_names() {
    let mut trial = Trial::with_demo();
    assert_eq!(order(&home(&mut trial)), ["Back lawn by the pond", "Corner piece", "Front lawn"]);
    add(&mut trial, &closed(1, 201, Some("2026-11-24")));
    assert_eq!(order(&home(&mut trial)), ["Front lawn", "Back lawn by the pond", "Corner piece"]);
    add(&mut trial, &closed(2, 203, Some("2026-11-20")));
    assert_eq!(order(&home(&mut trial)), ["Corner piece", "Front lawn", "Back lawn by the pond"], "longest owed first");
    add(&mut trial, &under_way(3, 202));
    assert_eq!(order(&home(&mut trial)), ["Back lawn by the pond", "Corner piece", "Front lawn"]);
    add(&mut trial, &under_way(4, 201));
    assert_eq!(
        order(&home(&mut trial)),
        ["Front lawn", "Back lawn by the pond", "Corner piece"],
        "latest touched first"
    );
}

#[test]
fn a_line_says_what_is_under_way_what_was_last_and_what_is_owed() {
    let mut trial = Trial::with_demo();
    add(&mut trial, &closed(1, 201, None));
    add(&mut trial, &closed(2, 201, Some("2026-11-25")));
    add(&mut trial, &under_way(3, 201));
    let home = home(&mut trial);
    let line = &home.lawns[0];
    let visit = |n: u128| Some(Uuid::from_u128(N_VISITS_ID + n).to_string());
    assert_eq!((line.open_visit_id.clone(), line.open_stage.as_deref()), (visit(3), Some("walk")));
    assert_eq!(line.last_visit_id, visit(2), "the latest closed one");
    assert_eq!(line.last.as_ref().unwrap().code, "visit-summary");
    assert_eq!(line.next[0].code, "water-trim");
    assert_eq!((line.look_back_on.as_deref(), line.is_look_back_due), (Some("2026-11-25"), false));
    assert_eq!(line.client.as_deref(), Some("Invented Client, Long Border"));
    assert!(home.lawns[1..].iter().all(|other| other.last.is_none() && other.open_visit_id.is_none()));
}

#[test]
fn an_emergency_shows_the_visits_product_or_all_that_may_be_in_the_tank() {
    let mut trial = Trial::with_demo();
    let ask = |visit_id: Option<u128>| Ask::Emergency {
        visit_id: visit_id.map(|n| Uuid::from_u128(N_VISITS_ID + n).to_string()),
    };
    let words = |answer: Answer| match answer {
        Answer::Emergency(view) => view,
        other => panic!("{other:?}"),
    };
    let all = words(trial.done(ask(None)));
    let names: Vec<&str> = all.products.iter().map(|product| product.name.as_str()).collect();
    let expected = ["Broadleaf", "Liquid Feed", "Moss Iron", "Spring Feed", "Sulphate of Iron", "Wetter"];
    assert_eq!(names, expected.map(|name| format!("Demo {name} (invented)")));
    assert_eq!(all.contacts.len(), 3);
    let product_id = Some(lawn_id(301));
    add(&mut trial, &Visit { product_id, ..under_way(1, 201) });
    add(&mut trial, &under_way(2, 202));
    let in_visit = words(trial.done(ask(Some(1))));
    assert_eq!(in_visit.products.len(), 1);
    let Some(Ask::SaveProduct { input, .. }) = demo().into_iter().find(|ask| matches!(ask, Ask::SaveProduct { .. }))
    else {
        panic!("a product")
    };
    let words_of = &in_visit.products[0];
    assert_eq!((&words_of.swallowed, &words_of.hazard), (&input.swallowed_words, &input.hazard_words));
    assert_eq!(words(trial.done(ask(Some(2)))).products.len(), 6, "none chosen yet");
}
