//! Visits of several lawns in the file: found on each lawn, and their rows made anew with every append.

use evensward_format::journal::VisitLawnRow;
use evensward_store::{Append, Store};
use uuid::Uuid;

use crate::store_sample::{LAWN, OPENED_UTC_MS, VISIT, event, visit};

#[test]
fn a_visit_of_several_lawns_is_found_on_each_and_its_rows_are_made_anew_with_it() {
    let folder = tempfile::tempdir().unwrap();
    let mut store = Store::open(folder.path()).unwrap().store;
    let (second, third) = (Uuid::from_u128(0x5b), Uuid::from_u128(0x5c));
    let further = |lawn_id, nth, look_back_on: Option<&str>| VisitLawnRow {
        lawn_id,
        nth,
        look_back_on: look_back_on.map(str::to_owned),
        summary: format!("{{\"nth\":{nth}}}"),
    };
    let keep = |store: &mut Store, seq: u32, closed: bool, lawns: &[VisitLawnRow]| {
        let mut row = visit(VISIT, seq);
        row.closed_utc_ms = closed.then_some(OPENED_UTC_MS);
        let events = [event(VISIT, seq)];
        let (uses, private, link, clear_draft) = (None, &[], None, None);
        let append = Append {
            expected_seq: seq - 1,
            events: &events,
            projection: &row,
            lawns,
            uses,
            private,
            link,
            clear_draft,
        };
        store.append(&append).unwrap();
    };
    let lawns_of =
        |rows: Vec<evensward_format::journal::VisitRow>| -> Vec<Uuid> { rows.iter().map(|row| row.lawn_id).collect() };
    keep(&mut store, 1, false, &[further(second, 2, None), further(third, 3, None)]);
    assert_eq!(lawns_of(store.visits_open().unwrap()), [LAWN], "a visit is one");
    assert_eq!(lawns_of(store.lawns_under_way().unwrap()).len(), 3);
    // The third is left out: its row goes, and it is free for a visit of its own.
    keep(&mut store, 2, false, &[further(second, 2, None)]);
    assert_eq!(store.visits_of_lawn(third).unwrap(), []);
    keep(&mut store, 3, true, &[further(second, 2, Some("2026-05-18"))]);
    let found = store.visits_of_lawn(second).unwrap();
    assert_eq!((found.len(), found[0].visit_id, found[0].lawn_id), (1, VISIT, second));
    assert_eq!((found[0].summary.as_str(), found[0].last_seq), ("{\"nth\":2}", 3));
    assert_eq!(lawns_of(store.look_backs_due("2026-05-18").unwrap()), [second]);
    assert_eq!(store.lawns_under_way().unwrap(), []);
}
